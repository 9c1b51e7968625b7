/** The rest of the dress is decided by choices and fields: each is one step of undo, and one tap is a whole skirt. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { DressStep } from "../../../src/ui/dress/DressStep";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

const withDress = (dress: NonNullable<Work["dress"]>): Work => ({ ...testWork, dress });
const shape = (name: string): HTMLElement =>
  within(screen.getByRole("group", { name: "Shape of the skirt" })).getByRole("radio", { name });
const foldOf = (title: string): HTMLDetailsElement => {
  const fold = screen.getByRole("heading", { level: 3, name: title }).closest("details");
  if (fold === null) throw new Error(`no fold ${title}`);
  return fold;
};

describe("the skirt", () => {
  it("is chosen with one tap, and taken away with another; each is one step of undo", async () => {
    const { user, work, store } = await renderWork(<DressStep />, testWork);
    expect(work().dress).toBeUndefined();
    await user.click(shape("Tiers"));
    expect(work().dress).toEqual({ skirt: { kind: "tiers" } });
    await user.click(shape("None"));
    expect(work().dress).toBeUndefined();
    act(() => undo(store));
    expect(work().dress).toEqual({ skirt: { kind: "tiers" } });
    act(() => undo(store));
    expect(work().dress).toBeUndefined();
  });

  it("keeps what was said of another shape, so that nothing is lost by trying", async () => {
    const { user, work } = await renderWork(
      <DressStep />,
      withDress({ skirt: { kind: "circle", share: 0.5, length: 640 } }),
    );
    await user.click(shape("A-line"));
    expect(work().dress?.skirt).toEqual({ kind: "aLine", share: 0.5, length: 640 });
    await user.click(shape("Circle"));
    expect(screen.getByRole<HTMLInputElement>("radio", { name: "half" }).checked).toBe(true);
  });

  it("is asked only for what its shape needs", async () => {
    const { user } = await renderWork(<DressStep />, withDress({ skirt: { kind: "straight" } }));
    expect(screen.queryByRole("textbox", { name: "Vent above the hem" })).not.toBeNull();
    expect(screen.queryByRole("group", { name: "Tiers" })).toBeNull();
    await user.click(shape("Tiers"));
    expect(screen.queryByRole("textbox", { name: "Vent above the hem" })).toBeNull();
    expect(screen.queryByRole("group", { name: "Tiers" })).not.toBeNull();
    await user.click(shape("Peplum"));
    expect(screen.queryByRole("textbox", { name: "Length of the peplum" })).not.toBeNull();
    expect(screen.queryByRole("textbox", { name: "Waist to hem, side" })).toBeNull();
  });

  it("has as many tiers as are chosen, those that were there as they were", async () => {
    const { user, work } = await renderWork(
      <DressStep />,
      withDress({ skirt: { kind: "tiers", tiers: [{ depth: 200 }, { ratio: 1.8 }] } }),
    );
    const tiers = within(screen.getByRole("group", { name: "Tiers" }));
    await user.click(tiers.getByRole("radio", { name: "4" }));
    expect(work().dress?.skirt?.tiers).toEqual([{ depth: 200 }, { ratio: 1.8 }, {}, {}]);
    await user.click(tiers.getByRole("radio", { name: "2" }));
    expect(work().dress?.skirt?.tiers).toEqual([{ depth: 200 }, { ratio: 1.8 }]);
  });

  it("has its parts called as they are: no tier where it is gathered in one, no dart where a seam runs", async () => {
    const { user } = await renderWork(<DressStep />, withDress({ skirt: { kind: "gathered" } }));
    expect(screen.queryByText("The opening runs through the skirt: put a join there.")).not.toBeNull();
    await user.click(shape("Tiers"));
    expect(screen.queryByText("The opening runs through tier 1: put a join there.")).not.toBeNull();
    await user.click(shape("A-line"));
    const figures = (): string => screen.getByLabelText("What the skirt comes to").textContent;
    expect(figures()).toMatch(/in (?:a dart|darts) /);
    await user.click(within(screen.getByRole("group", { name: "Panels all round" })).getByRole("radio", { name: "6" }));
    expect(figures()).toContain("in the panel seam");
    expect(figures()).not.toContain("dart");
    expect(figures()).toContain("leans out");
    await user.click(shape("Straight"));
    expect(figures()).not.toContain("leans out");
  });

  it("is measured in inches where those are hers", async () => {
    const { user, work } = await renderWork(<DressStep />, { ...withDress({ skirt: { kind: "circle" } }), unit: "in" });
    await user.type(screen.getByRole("textbox", { name: "Waist to hem, side" }), "24 1/2{Enter}");
    expect(work().dress?.skirt).toEqual({ kind: "circle", length: 622.3 });
  });
});

describe("a plain number", () => {
  const times = (): HTMLInputElement => screen.getByRole("textbox", { name: "Gathered, times the waist" });

  it("is read with a point or a comma, stepped with the arrows, and given up by emptying", async () => {
    const { user, work } = await renderWork(<DressStep />, withDress({ skirt: { kind: "gathered" } }));
    await user.type(times(), "1,6{Enter}");
    expect(work().dress?.skirt).toEqual({ kind: "gathered", ratio: 1.6 });
    await user.type(times(), "{ArrowUp}");
    expect(work().dress?.skirt).toEqual({ kind: "gathered", ratio: 1.7 });
    await user.clear(times());
    await user.tab();
    expect(work().dress?.skirt).toEqual({ kind: "gathered" });
  });

  it.each(["twice", "1/2", "0.4", "-2", "1e3"])("that is none stays as typed, beside the reason: %s", async (typed) => {
    const { user, work } = await renderWork(<DressStep />, withDress({ skirt: { kind: "gathered", ratio: 2 } }));
    await user.clear(times());
    await user.type(times(), `${typed}{Enter}`);
    expect(work().dress?.skirt).toEqual({ kind: "gathered", ratio: 2 });
    expect(times().value).toBe(typed);
    expect(times().getAttribute("aria-invalid")).toBe("true");
  });
});

describe("a part of the dress", () => {
  it("that is as usual again is no decision any more", async () => {
    const { user, work } = await renderWork(<DressStep />, withDress({ measures: { waistToHip: 210 } }));
    const field = screen.getByRole("textbox", { name: "Waist to hip" });
    await user.clear(field);
    await user.tab();
    expect(work().dress).toBeUndefined();
  });

  it("opens its fold where an entry of it could not be read", async () => {
    await renderWork(<DressStep />, {
      ...withDress({ lining: { skirt: true } }),
      unread: { "dress.lining.shorter": "a bit" },
    });
    expect(foldOf("Lining").open).toBe(true);
    expect(foldOf("Your measures for it").open).toBe(false);
    expect(screen.getByRole<HTMLInputElement>("textbox", { name: "Shorter than the skirt by" }).value).toBe("a bit");
  });

  it("tells its outcome in the line of its fold", async () => {
    const { user } = await renderWork(<DressStep />, testWork);
    expect(foldOf("Lining").querySelector("summary")?.textContent).toBe("Lining nothing");
    await user.click(screen.getByRole("radio", { name: "bodice and skirt" }));
    expect(foldOf("Lining").querySelector("summary")?.textContent).toBe("Lining bodice and skirt");
  });
});

describe("the closure", () => {
  it("is the pattern’s own, as on Envelope", async () => {
    const { user, work } = await renderWork(<DressStep />, {
      ...testWork,
      pattern: { ...testWork.pattern, closure: { place: "centreBack", belowWaist: 180 } },
    });
    await user.click(screen.getByRole("radio", { name: "Left side" }));
    expect(work().pattern.closure).toEqual({ place: "side", belowWaist: 180 });
    const field = screen.getByRole("textbox", { name: "Opening runs below the waist seam by" });
    await user.clear(field);
    await user.type(field, "21{Enter}");
    expect(work().pattern.closure).toEqual({ place: "side", belowWaist: 210 });
  });

  it("has a zip, of one kind or the other, only where no buttons close it", async () => {
    const { user, work } = await renderWork(<DressStep />, {
      ...testWork,
      pattern: { ...testWork.pattern, closure: { place: "centreBack", belowWaist: 180 } },
    });
    await user.click(screen.getByRole("radio", { name: "lapped" }));
    expect(work().dress).toEqual({ zip: "lapped" });
    await user.click(screen.getByRole("radio", { name: "invisible" }));
    expect(work().dress).toBeUndefined();
    await user.type(screen.getByRole("textbox", { name: "Buttons down the centre back" }), "7{Enter}");
    expect(screen.queryByRole("radio", { name: "lapped" })).toBeNull();
  });
});

describe("cloth", () => {
  it("is of a width that is sold, or of her own", async () => {
    const { user, work } = await renderWork(<DressStep />, testWork);
    const cloth = within(screen.getByRole("group", { name: "Width of the main cloth" }));
    await user.click(cloth.getByRole("radio", { name: "150.0 cm" }));
    expect(work().dress?.cloths).toEqual({ main: { width: 1500 } });
    const own = screen.getByRole("textbox", { name: "Main cloth: or your own width" });
    await user.clear(own);
    await user.type(own, "132{Enter}");
    expect(work().dress?.cloths).toEqual({ main: { width: 1320 } });
  });
});

describe("the order of sewing", () => {
  it("says along what each seam runs, and by how much a waist is cut lower", async () => {
    // Floor to waist 1030, 1040 and 1020: front 10 and back 20 less than the side.
    await renderWork(
      <DressStep />,
      withDress({
        measures: { waistToFloorFront: 1030, waistToFloorSide: 1040, waistToFloorBack: 1020 },
        skirt: { kind: "tiers", tiers: [{}, {}] },
      }),
    );
    const order = within(foldOf("Order of sewing"));
    const lower = order.getByText(/^Mark centres and sides on the upper edge of tier 1, and cut it lower/);
    expect(lower.textContent).toMatch(
      /lower in one even curve: nothing at the sides, 10\smm at the centre front, 20\smm at the centre back\. The hem is level then\./u,
    );
    expect(lower.textContent.match(/10\smm/gu)).toHaveLength(1);
    expect(order.getByText(/^Sew the skirt to the bodice/).textContent).toMatch(/\d\d\.\d cm\./);
  });
});
