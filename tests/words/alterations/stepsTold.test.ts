/** What is printed for a piece is true of that very piece: of its seams, its darts and what was done on it. */
import type { StyleName } from "../../../src/core/decisions/pattern";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { describe, expect, test } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { piecesOf } from "../../../src/core/pattern/pieceSet";
import type { PieceName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { FIT_WORDS } from "../../../src/words/alterations/index";
import { bustPointOf, garment, STYLE_NAMES } from "../../support/garments";

/** Steps and values on an invented garment, lengths still by their names. */
function told(fit: FitName, style: StyleName, amount: number) {
  const pieces = garment({ style });
  const done = applyAlteration(pieces, { kind: "fit", id: "a", fit, amount }, { bustPoint: bustPointOf(pieces) });
  const { trace, girths } = invariant(done.ok ? done.value : null, `${fit} on ${style}`);
  const steps = (name: PieceName): readonly string[] =>
    FIT_WORDS[fit]
      .steps({ piece: invariant(trace.before[name], name), amount, trace })
      .filter((step) => step !== false);
  return {
    pieces,
    trace,
    girths,
    of: (piece: PieceName): string => steps(piece).join(" "),
    pieceNames: piecesOf(trace.before).map(({ name }) => name),
  };
}

const amounts = (fit: FitName): readonly number[] => (fitOf(fit).range.least < 0 ? [8, -8] : [8]);
const CASES = FIT_NAMES.flatMap((fit) =>
  STYLE_NAMES.filter((style) => fitOf(fit).applies(garment({ style }))).flatMap((style) =>
    amounts(fit).map((amount) => ({ fit, style, amount })),
  ),
);

test.each(CASES)(
  "$fit by $amount on $style: no conditions are left to the reader, and each value named is given",
  ({ fit, style, amount }) => {
    const { trace, of, pieceNames } = told(fit, style, amount);
    expect(pieceNames.length).toBeGreaterThan(0);
    for (const name of pieceNames) {
      expect(of(name)).not.toMatch(
        /only where|where the princess seam begins|on the princess styles|any armhole|a dart on the way|where the line crosses|above a midriff|but not through it/iu,
      );
      const named = [...of(name).matchAll(/\{(\w+)(?::round)?\}/gu)].map(([, value]) => value ?? "");
      expect(named.filter((value) => value !== "amount" && trace.values[value] === undefined)).toEqual([]);
    }
  },
);

test.each(CASES)(
  "$fit by $amount on $style: an edge is named only on a piece that has it",
  ({ fit, style, amount }) => {
    const { pieces, of, pieceNames } = told(fit, style, amount);
    const has = (name: PieceName, seam: string): boolean =>
      invariant(pieces[name], name).edges.some((edge) => edge.seam === seam);
    const wrong = pieceNames.flatMap((name) => [
      ...(/draw the neckline/iu.test(of(name)) && !has(name, "neck") ? [`${name}: neckline`] : []),
      ...(/(draw|trace) the armhole/iu.test(of(name)) && !has(name, "armhole") ? [`${name}: armhole`] : []),
      ...(/rule the shoulder/iu.test(of(name)) && !has(name, "shoulder") ? [`${name}: shoulder`] : []),
      ...(/the princess seam/iu.test(of(name)) && !has(name, "princess") ? [`${name}: princess seam`] : []),
      ...(/dart/iu.test(of(name)) && invariant(pieces[name], name).darts.length === 0 ? [`${name}: dart`] : []),
    ]);
    expect(wrong).toEqual([]);
  },
);

describe("a piece that is not cut is not told to be cut", () => {
  test.each(["lengthAboveBust", "lengthBelowBust"] as const)("%s", (fit) => {
    for (const style of ["sideDart", "princessArmhole", "princessShoulder"] as const) {
      const { trace, of, pieceNames } = told(fit, style, 8);
      const cut = new Set(trace.surgery.map(({ piece }) => piece));
      expect(pieceNames.filter((name) => of(name).includes("Cut along it") !== cut.has(name))).toEqual([]);
    }
  });
});

test("a longer upper bodice deepens the armhole on each piece that has the end of the shoulder", () => {
  expect(told("lengthAboveBust", "princessArmhole", 8).of("centreFront")).toContain("The armhole is {amount} deeper");
  expect(told("lengthAboveBust", "princessShoulder", 8).of("sideFront")).toContain("The armhole is {amount} deeper");
  expect(told("lengthAboveBust", "princessShoulder", 8).of("centreFront")).not.toContain("armhole is");
});

test("the change round the bust is told where it is more than 1 mm, and only there", () => {
  const dart = told("bustPointLevel", "sideDart", 8);
  expect(invariant(dart.girths.bust, "bust")).toBeLessThan(-1);
  expect(dart.of("front")).toContain("loses {girth} round the bust");
  expect(told("bustPointLevel", "sideDart", -8).of("front")).toContain("gains {girth} round the bust");
  const princess = told("bustPointLevel", "princessArmhole", 8);
  expect(Math.abs(invariant(princess.girths.bust, "bust"))).toBeLessThan(1);
  expect(princess.of("centreFront") + princess.of("sideFront")).not.toContain("{girth}");
});

test("what walking takes out of the centre front is told there, as much as its centre lost", () => {
  const { pieces, trace, of } = told("bustPointLevel", "princessArmhole", 8);
  const waist = (set: typeof pieces): number => invariant(set.centreFront?.points.centreWaist, "waist").at.y;
  expect(of("centreFront")).toContain("{walked} too long");
  expect(trace.values["walked"]).toBeCloseTo(waist(pieces) - waist(trace.after), 9);
});
