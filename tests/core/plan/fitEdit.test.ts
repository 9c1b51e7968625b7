import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { amountCommand, appliesTo, halvesCommands, useOn, usesOf, type Halves } from "../../../src/core/plan/fitEdit";
import { planOf, testWork } from "../../support/works";

const use = (amount: number, half?: "left" | "right"): FitAlteration => ({
  kind: "fit",
  id: half === undefined ? "fit-swayBack" : `fit-swayBack-${half}`,
  fit: "swayBack",
  amount,
  ...(half === undefined ? {} : { half }),
});

const workWith = (...alterations: readonly FitAlteration[]): Work => ({ ...testWork, alterations });
const after = (work: Work, from: Halves, to: Halves) =>
  halvesCommands(usesOf(work, "swayBack"), "swayBack", from, to).reduce(applyCommand, work).alterations;

describe("asking for other halves", () => {
  it.each([
    ["both to left: the amount goes along", [use(8)], "both", "left", [use(8, "left")]],
    ["both to right: the amount goes along", [use(8)], "both", "right", [use(8, "right")]],
    [
      "left to both: the amount goes along, and the right's goes",
      [use(8, "left"), use(5, "right")],
      "left",
      "both",
      [use(8)],
    ],
    [
      "right to both: the amount goes along, and the left's goes",
      [use(8, "left"), use(5, "right")],
      "right",
      "both",
      [use(5)],
    ],
    [
      "left to right: each keeps its own",
      [use(8, "left"), use(5, "right")],
      "left",
      "right",
      [use(8, "left"), use(5, "right")],
    ],
    ["none to left: there is nothing to go along", [], "both", "left", []],
  ] as const)("%s", (_what, before, from, to, then) => {
    expect(after(workWith(...before), from, to)).toEqual(then);
  });

  it("leaves other fits alone, lengths standing before widths", () => {
    const other: FitAlteration = { kind: "fit", id: "c", fit: "chestWidth", amount: 4, half: "right" };
    expect(after(workWith(other, use(8)), "both", "left")).toEqual([use(8, "left"), other]);
  });
});

describe("an amount", () => {
  it("of nothing leaves the ledger; any other is put", () => {
    expect(amountCommand(use(8), 0)).toEqual({ kind: "removeAlteration", id: "fit-swayBack" });
    expect(amountCommand(use(8), -3)).toEqual({ kind: "putAlteration", alteration: use(-3) });
  });

  it("begins at none, on the halves asked for", () => {
    expect(useOn([], "swayBack", "right")).toEqual(use(0, "right"));
    expect(useOn([use(8), use(2, "right")], "swayBack", "right")).toEqual(use(2, "right"));
  });
});

describe("a fit", () => {
  it.each([
    ["swayBack", "sideDart", true],
    ["strapWidth", "sideDart", false],
    ["strapWidth", "midriff", true],
    ["bandDepth", "midriff", true],
    ["lengthBelowBust", "midriff", false],
  ] as const)("%s on the style %s: %s", (fit, style, applies) => {
    const work: Work = { ...testWork, pattern: { ...testWork.pattern, style } };
    expect(appliesTo(planOf(work), fit)).toBe(applies);
  });
});
