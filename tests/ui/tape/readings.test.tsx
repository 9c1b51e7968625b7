/** More than one reading of a measure, the day of the first, and heights in feet. */
import { act, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { undo } from "../../../src/store/workStore";
import { showTape } from "./showTape";

const field = (name: RegExp | string): HTMLInputElement => screen.getByRole("textbox", { name });
const button = (name: string): HTMLElement => screen.getByRole("button", { name });
const described = (input: HTMLElement): string =>
  (input.getAttribute("aria-describedby") ?? "")
    .split(" ")
    .map((id) => document.getElementById(id)?.textContent ?? "")
    .join(" ")
    // A number and its unit are held together.
    .replaceAll("\u00A0", " ");
const two = {
  tapes: [{ taken: "2026-03-01", readings: { bustGirth: [930, 938], waistGirth: [738], hipGirth: [985] } }],
};

describe("taking it again", () => {
  it("opens one field more, takes whoever works by keys there, and no further one before it is asked for", async () => {
    const { user, work } = await showTape({ tapes: tapesOf({ waistGirth: 738 }) });
    await user.click(button("Take waist again"));
    expect(document.activeElement).toBe(field("Waist girth, reading 2"));
    expect(screen.queryByRole("button", { name: "Take waist again" })).toBeNull();
    await user.keyboard("74.6{Enter}");
    expect(work().tapes[0]?.readings.waistGirth).toEqual([738, 746]);
    expect(screen.queryByRole("textbox", { name: "Waist girth, reading 3" })).toBeNull();
    expect(button("Take waist again")).toBeTruthy();
  });

  it("puts a field away again that was not needed", async () => {
    const { user, store } = await showTape({ tapes: tapesOf({ waistGirth: 738 }) });
    await user.click(button("Take waist again"));
    await user.click(button("Remove reading 2 of waist"));
    expect(screen.queryByRole("textbox", { name: "Waist girth, reading 2" })).toBeNull();
    expect(document.activeElement).not.toBe(document.body);
    expect(store.getState().past).toHaveLength(0);
  });

  it("stops at five", async () => {
    await showTape({ tapes: [{ readings: { waistGirth: [738, 740, 741, 739, 738] } }] });
    expect(field("Waist girth, reading 5")).toBeTruthy();
    expect(screen.queryByRole("button", { name: "Take waist again" })).toBeNull();
  });

  it("asks for a third where two do not agree", async () => {
    // At the waist two agree within 2.77 × 10 mm.
    await showTape({ tapes: [{ readings: { waistGirth: [738, 770] } }] });
    expect(screen.getByText(/^These two do not agree: they are 3\.2 cm apart.*Take it a third time\./)).toBeTruthy();
  });

  it("takes any of them out, as one step", async () => {
    const { user, work, store } = await showTape(two);
    await user.click(button("Remove reading 1 of bust"));
    expect(work().tapes[0]?.readings.bustGirth).toEqual([938]);
    expect(field(/^Bust girth/).value).toBe("93.8");
    act(() => undo(store));
    expect(work().tapes[0]?.readings.bustGirth).toEqual([930, 938]);
  });

  it("keeps a second reading that cannot be read, through a reload, and moves it up with the others", async () => {
    const unread = { "measure.bustGirth.2": "ninety" };
    const { user, work } = await showTape({ ...two, unread });
    expect(field("Bust girth, reading 3").value).toBe("ninety");
    await user.click(button("Remove reading 1 of bust"));
    expect(work().unread).toEqual({ "measure.bustGirth.1": "ninety" });
    expect(field("Bust girth, reading 2").value).toBe("ninety");
    await user.click(button("Remove reading 2 of bust"));
    expect(work().unread).toEqual({});
    expect(work().tapes[0]?.readings.bustGirth).toEqual([938]);
  });
});

describe("a doubt about several readings", () => {
  const wild = { bustGirth: [930], upperChestGirth: [860], underBustGirth: [790], hipGirth: [738, 744] };

  it("is let go where they agree: it is said softly and nothing is to be set right", async () => {
    await showTape({ tapes: [{ readings: { ...wild, waistGirth: [985, 987] } }] });
    expect(described(field("Waist girth"))).toContain("You took it more than once, so it stands.");
    expect(screen.queryByRole("button", { name: "Swap them" })).toBeNull();
    expect(screen.getByText(/measured, \d+ guessed\./).textContent).not.toContain("To take again");
  });

  it("swaps all readings of two measures in each other's place", async () => {
    const { user, work, store } = await showTape({
      tapes: [{ readings: { ...wild, waistGirth: [985], hipGirth: [738] } }],
    });
    expect(screen.getByText(/To take again: .*waist/)).toBeTruthy();
    // Asked beside one of the two, the other sends there.
    expect(screen.getAllByRole("button", { name: "Swap them" })).toHaveLength(1);
    expect(screen.getByText(/^See the question at the (waist|hip)\.$/)).toBeTruthy();
    await user.click(button("Swap them"));
    expect(measuresOf(work().tapes)).toMatchObject({ waistGirth: 738, hipGirth: 985 });
    act(() => undo(store));
    expect(measuresOf(work().tapes)).toMatchObject({ waistGirth: 985, hipGirth: 738 });
  });
});

describe("the day of the first reading", () => {
  beforeEach(() => {
    vi.setSystemTime(new Date(2026, 9, 3, 12));
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("is today where the arrow keys end what was typed, in one step with the reading too", async () => {
    const { user, work, store } = await showTape({ invented: false, tapes: [{ readings: {} }] });
    await user.type(field(/^Bust girth/), "93{ArrowUp>3}{/ArrowUp}");
    expect(work().tapes).toEqual([{ taken: "2026-10-03", readings: { bustGirth: [933] } }]);
    expect(store.getState().past).toHaveLength(1);
  });

  it("is today, in one step with the reading", async () => {
    const { user, work, store } = await showTape({ invented: false, tapes: [{ readings: {} }] });
    await user.type(field(/^Bust girth/), "93{Enter}");
    expect(work().tapes).toEqual([{ taken: "2026-10-03", readings: { bustGirth: [930] } }]);
    expect(store.getState().past).toHaveLength(1);
    await user.type(field(/^Waist girth/), "73.8{Enter}");
    expect(store.getState().past).toHaveLength(2);
  });

  it.each([
    ["a demonstration", { invented: true, tapes: [{ readings: {} }] }, undefined],
    [
      "a set that has readings of a day not said",
      { invented: false, tapes: [{ readings: { waistGirth: [738] } }] },
      undefined,
    ],
    ["a set whose day was said", { invented: false, tapes: [{ taken: "2026-09-30", readings: {} }] }, "2026-09-30"],
  ])("is left alone in %s", async (_, change, taken) => {
    const { user, work } = await showTape(change);
    await user.type(field(/^Bust girth/), "93{Enter}");
    expect(work().tapes[0]?.readings.bustGirth).toEqual([930]);
    expect(work().tapes[0]?.taken).toBe(taken);
  });
});

describe("a height", () => {
  it("is taken in feet and inches, and told in them beside the inches", async () => {
    const { user, work } = await showTape({ unit: "in", tapes: [{ readings: {} }] });
    expect(described(field("Height"))).toContain("64 or 5 ft 4, as you like.");
    await user.type(field("Height"), "5'4½\"{Enter}");
    // 64.5 × 25.4
    expect(measuresOf(work().tapes).height).toBe(1638.3);
    expect(field("Height").value).toBe("64 ½");
    expect(described(field("Height"))).toContain("5 ft 4 ½ in");
  });

  it("alone is: feet round the waist are a slip", async () => {
    const { user, work } = await showTape({ unit: "in", tapes: [{ readings: {} }] });
    await user.type(field(/^Waist girth/), "3 ft{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBeUndefined();
    expect(described(field(/^Waist girth/))).toContain("“3 ft” is in feet");
  });
});
