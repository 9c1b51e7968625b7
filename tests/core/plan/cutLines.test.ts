/**
 * Where the new cutting lines run, read off the pieces themselves: a line on each piece that has a side at a level, as far
 * from the printed line below it as the traced piece's own side is.
 */
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan, PlanHalf } from "../../../src/core/plan/plan";
import { invariant } from "../../../src/core/result";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyAmount } from "../../support/amounts";
import { anyChainWork } from "../../support/anyChainWork";
import { planOf, testWork } from "../../support/works";

const RUNS = 20;
/** ms. A busy machine is slow. */
const PATIENCE = 240_000;
/** mm. Two ways of adding up the same differ by rounding only. */
const ROUNDING = 1e-9;

/** Any chain, the lines picked by the planner or by hand, beyond the printed sizes too. */
const anyPicked = (style: StyleName): fc.Arbitrary<Work> =>
  fc
    .record({
      work: anyChainWork(style),
      waist: fc.option(anyAmount(-2, 13), { nil: undefined }),
      hip: fc.option(fc.constantFrom(-1.5, 0, 3, 4.25, 11, 12.5), { nil: undefined }),
    })
    .map(({ work, waist, hip }) => ({
      ...work,
      picks: { ...(waist === undefined ? {} : { waist }), ...(hip === undefined ? {} : { hip }) },
    }));

const pieceIn = (pieces: readonly Piece[], name: PieceName): Piece | undefined =>
  pieces.find((piece) => piece.name === name);
const xOf = (piece: Piece, level: "waist" | "hip"): number =>
  invariant(piece.points[level === "hip" ? "sideHip" : "sideWaist"], level).at.x;

/** The pieces as they are traced: before any bust adjustment, which moves the side as well. */
function tracedIn(plan: Plan): readonly Piece[] {
  const bust = plan.ledger.find(({ source }) => source === "bust");
  return plan.blended.map((piece) =>
    bust?.outcome.ok === true ? (bust.outcome.value.before[piece.name] ?? piece) : piece,
  );
}

interface Line {
  readonly piece: PieceName;
  readonly level: string;
  readonly figures: readonly number[];
  readonly between: readonly string[];
}

/** Every line of one half, found on the pieces. */
function linesOn(plan: Plan, half: PlanHalf): readonly Line[] {
  return tracedIn(plan).flatMap((traced) =>
    (["waist", "hip"] as const).flatMap((level): readonly Line[] => {
      const found = plan.levels.find((one) => one.level === level);
      if (found === undefined || traced.points[level === "hip" ? "sideHip" : "sideWaist"] === undefined) return [];
      const { labels, sizes } = plan.nest;
      // Beyond the printed sizes the last two lines carry on.
      const lower = Math.min(Math.max(Math.floor(found.size), 0), labels.length - 2);
      const printed = pieceIn(sizes[lower] ?? [], traced.name);
      const next = pieceIn(sizes[lower + 1] ?? [], traced.name);
      const blended = invariant(pieceIn(plan.blended, traced.name), traced.name);
      // A front that a seam made two pieces of has its side on the outer one.
      const after = pieceIn(half.pieces, traced.name) ?? invariant(pieceIn(half.pieces, "sideFront"), "side front");
      const x = xOf(blended, level);
      return [
        {
          piece: traced.name,
          level,
          between: labels.slice(lower, lower + 2),
          figures: [
            // The piece's own share: a band whose dart is shut does not carry the frame's.
            printed === undefined || next === undefined
              ? found.size - lower
              : (xOf(traced, level) - xOf(printed, level)) / (xOf(next, level) - xOf(printed, level)),
            printed === undefined ? 0 : xOf(traced, level) - xOf(printed, level),
            xOf(after, level) - x,
            x,
            invariant(blended.points[level === "hip" ? "sideHip" : "sideWaist"], level).at.y,
          ],
        },
      ];
    }),
  );
}

const nameOf = ({ piece, level, between }: Line): string => `${piece} ${level} ${between.join(" ")}`;
const sorted = (lines: readonly Line[]): readonly Line[] => lines.toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));

describe.each(STYLE_NAMES)("the cutting lines of any chain on the style %s", { timeout: PATIENCE }, (style) => {
  it("run where the sides of the pieces lie, and tell how far alterations moved them", () => {
    let outside = 0;
    fc.assert(
      fc.property(anyPicked(style), (work) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        const plan = derived.value;
        for (const half of [plan.left, plan.right]) {
          const expected = sorted(linesOn(plan, half));
          const found = sorted(
            half.cutLines.map(({ piece, level, between, share, offset, alterationMove, at }) => ({
              piece,
              level,
              between,
              figures: [share, offset, alterationMove, at.x, at.y],
            })),
          );
          expect(found.map(nameOf)).toEqual(expected.map(nameOf));
          const off = found.flatMap(({ figures }, i) =>
            figures.map((figure, j) => Math.abs(figure - (expected[i]?.figures[j] ?? NaN))),
          );
          expect(off.filter((one) => !(one <= ROUNDING))).toEqual([]);
        }
        outside += plan.levels.filter(({ extrapolated }) => extrapolated).length;
      }),
      { numRuns: RUNS },
    );
    expect(outside).toBeGreaterThan(0);
  });
});

it("lie by a share of the step between two printed lines outside the lower one, a quarter of the girth on each piece", () => {
  // Sizes of the test's chart are 40 mm apart at waist and hip: 10 mm on each of the four quarters.
  const picks = { baseSize: "14", waist: 4.3, hip: 5.75, bustAlteration: 0 };
  const { left } = planOf({ ...testWork, picks });
  const offsets = left.cutLines.map(({ piece, level, between, offset }) => [piece, level, between.join(), offset]);
  expect(offsets.map(([piece, level, between]) => [piece, level, between])).toEqual([
    ["front", "waist", "14,16"],
    ["back", "waist", "14,16"],
    ["frontBasque", "waist", "14,16"],
    ["frontBasque", "hip", "16,18"],
    ["backBasque", "waist", "14,16"],
    ["backBasque", "hip", "16,18"],
  ]);
  offsets.forEach(([, level, , offset]) => expect(Number(offset)).toBeCloseTo(level === "waist" ? 3 : 7.5, 1));
});
