import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { useWork } from "../../../src/ui/session/useWork";
import { LengthField } from "../../../src/ui/fields/LengthField";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

function WaistField() {
  const value = useWork((work) => measuresOf(work.tapes).waistGirth);
  return (
    <LengthField
      label="Waist"
      field="measure.waistGirth"
      value={value}
      set={(length) => ({ kind: "setMeasure", measure: "waistGirth", value: length })}
      clear={{ kind: "clearMeasure", measure: "waistGirth" }}
      refuse={(length) => (length > 2000 ? "Longer than that cannot be." : null)}
    />
  );
}

const waist = (): HTMLInputElement => screen.getByRole("textbox", { name: "Waist" });
const at = (waistGirth: number, unit: Work["unit"] = "cm"): Partial<Work> => ({
  unit,
  tapes: tapesOf({ ...measuresOf(sampleWork.tapes), waistGirth }),
});

describe("LengthField", () => {
  // Millimetres worked out by hand: 1 in is 25.4 mm.
  it.each([
    ["cm", "87.6", 876],
    ["cm", "87,6", 876],
    ["cm", "876mm", 876],
    ["cm", "34 1/2in", 876.3],
    ["in", "34 1/2", 876.3],
    ["in", "34½", 876.3],
    ["in", "34-1/2", 876.3],
    ["in", "34.5", 876.3],
    ["in", "87.6cm", 876],
    ["in", "34 5/8", 879.5],
  ] as const)("in %s takes “%s” as %d mm", async (unit, text, mm) => {
    const { user, work } = await renderWork(<WaistField />, at(700, unit));
    await user.clear(waist());
    await user.type(waist(), `${text}{Enter}`);
    expect(measuresOf(work().tapes).waistGirth).toBeCloseTo(mm, 6);
    expect(work().unread).toEqual({});
  });

  it("is in the work at every key, each time from what was there before, and one step once it is left", async () => {
    const { user, work, store } = await renderWork(<WaistField />, at(700));
    const seen: unknown[] = [];
    await user.clear(waist());
    for (const key of "74.x5") {
      await user.keyboard(key);
      seen.push([measuresOf(work().tapes).waistGirth, work().unread["measure.waistGirth"]]);
      expect(waist().getAttribute("aria-invalid")).toBe("false");
    }
    // 7 cm and 74 cm read as lengths, and so does a point after them.
    expect(seen).toEqual([
      [70, undefined],
      [740, undefined],
      [740, undefined],
      [700, "74.x"],
      [700, "74.x5"],
    ]);
    expect(store.getState().past).toHaveLength(0);
    await user.keyboard("{Backspace}{Backspace}");
    await user.tab();
    expect(measuresOf(work().tapes).waistGirth).toBe(740);
    expect(store.getState().past).toHaveLength(1);
  });

  it("says of an entry in the unit of before that Enter takes it", async () => {
    const { user, work } = await renderWork(<WaistField />, {
      ...at(700),
      unread: { "measure.waistGirth": "29 1/2" },
    });
    const said = (): string =>
      document.getElementById(waist().getAttribute("aria-describedby") ?? "")?.textContent ?? "";
    // 295 mm: it reads, though it did not when it was typed.
    expect(said()).toBe("This is not taken yet. Enter takes it.");
    expect(waist().getAttribute("aria-invalid")).toBe("false");
    await user.click(waist());
    await user.keyboard("{Enter}");
    expect([measuresOf(work().tapes).waistGirth, work().unread]).toEqual([295, {}]);
    expect(said()).toBe("");
  });

  it("keeps what it cannot read as typed, says why beside it, and goes on with the old value", async () => {
    const { user, work } = await renderWork(<WaistField />, at(700));
    await user.clear(waist());
    await user.type(waist(), "seventy{Enter}");
    expect(waist().value).toBe("seventy");
    expect(waist().getAttribute("aria-invalid")).toBe("true");
    const said = document.getElementById(waist().getAttribute("aria-describedby") ?? "");
    expect(said?.textContent).toContain("“seventy”");
    expect(said?.textContent).toContain("Until then 70 cm counts");
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
    expect(work().unread).toEqual({ "measure.waistGirth": "seventy" });
  });

  it("shows an entry that could not be read again after a reload, with its reason", async () => {
    await renderWork(<WaistField />, { unread: { "measure.waistGirth": "seventy" } });
    expect(waist().value).toBe("seventy");
    expect(screen.getByRole("alert").textContent).toContain("“seventy”");
  });

  it("forgets the unread entry once a good one is there", async () => {
    const { user, work } = await renderWork(<WaistField />, { unread: { "measure.waistGirth": "seventy" } });
    await user.clear(waist());
    await user.type(waist(), "71{Enter}");
    expect(work().unread).toEqual({});
    expect(measuresOf(work().tapes).waistGirth).toBe(710);
    expect(screen.queryByRole("alert")).toBeNull();
  });

  it("says why a length that reads well cannot be taken", async () => {
    const { user, work } = await renderWork(<WaistField />, at(700));
    await user.clear(waist());
    await user.type(waist(), "300{Enter}");
    expect(screen.getByRole("alert").textContent).toContain("Longer than that cannot be.");
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
    expect(waist().value).toBe("300");
  });

  it("goes back to the value on Escape", async () => {
    const { user, work } = await renderWork(<WaistField />, at(700));
    await user.clear(waist());
    await user.type(waist(), "99{Escape}");
    expect(waist().value).toBe("70");
    await user.tab();
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
  });

  it("does not round a value by merely passing through the field in the other unit", async () => {
    const { user, work } = await renderWork(<WaistField />, at(701.3, "in"));
    await user.click(waist());
    await user.tab();
    expect(measuresOf(work().tapes).waistGirth).toBe(701.3);
  });

  it("clears the measure when emptied", async () => {
    const { user, work } = await renderWork(<WaistField />, at(700));
    await user.clear(waist());
    await user.tab();
    expect(measuresOf(work().tapes).waistGirth).toBeUndefined();
  });

  it.each([
    ["cm", "{ArrowUp}", 700, 701],
    ["cm", "{ArrowDown}", 700, 699],
    ["cm", "{Shift>}{ArrowUp}{/Shift}", 700, 710],
    ["cm", "{ArrowUp}", 700.4, 701],
    ["in", "{ArrowUp}", 711.2, 712.79],
    ["in", "{Shift>}{ArrowDown}{/Shift}", 711.2, 698.5],
  ] as const)("in %s steps with %s from %d to %d mm", async (unit, keys, from, to) => {
    const { user, work } = await renderWork(<WaistField />, at(from, unit));
    await user.click(waist());
    await user.keyboard(keys);
    expect(measuresOf(work().tapes).waistGirth).toBeCloseTo(to, 2);
  });

  it("goes on from mark to mark of a tape in inches, to and fro", async () => {
    // A sixteenth is 1.5875 mm, by the inch of 25.4 mm.
    const { user, work } = await renderWork(<WaistField />, at(914.4, "in"));
    await user.click(waist());
    await user.keyboard("{ArrowUp}{ArrowUp}{ArrowUp}{ArrowUp}{ArrowUp}");
    expect(measuresOf(work().tapes).waistGirth).toBeCloseTo(914.4 + 5 * 1.5875, 5);
    await user.keyboard("{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}");
    expect(measuresOf(work().tapes).waistGirth).toBeCloseTo(914.4 - 2 * 1.5875, 5);
  });

  it("shows the stepped value, not what could not be read before", async () => {
    const { user, work } = await renderWork(<WaistField />, at(700));
    await user.clear(waist());
    await user.type(waist(), "seventy{Enter}");
    await user.clear(waist());
    await user.type(waist(), "71{ArrowUp}");
    expect(measuresOf(work().tapes).waistGirth).toBe(711);
    expect(waist().value).toBe("71.1");
    expect(waist().getAttribute("aria-invalid")).toBe("false");
  });

  it("makes one step of undo of a key held down", async () => {
    const { user, work, store } = await renderWork(<WaistField />, at(700));
    await user.click(waist());
    await user.keyboard("{ArrowUp>4}{/ArrowUp}");
    expect(measuresOf(work().tapes).waistGirth).toBe(704);
    act(() => undo(store));
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
  });
});
