import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pieceIn, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftMeasuresFor, type DraftMeasures } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { validateOutline } from "../../../src/core/geometry/outline";
import { levelWidth } from "../../../src/core/girth/levelWidth";
import { pointOf, type Edge, type Piece, type PointName, type SeamName } from "../../../src/core/pattern/piece";
import { invariant, type Result } from "../../../src/core/result";
import { princessArmholeStyle, princessShoulderStyle } from "../../../src/core/style/princessStyle";
import type { Style } from "../../../src/core/style/style";
import { outlineOf } from "../../../src/core/pattern/ring";
import { anyAmount } from "../../support/amounts";
import { crossesItself, seamByBezierJs } from "../../support/independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };
const options = { strap: "thin" } as const;
/** Back shoulder longer than front: eased over the shoulder blade (common practice: 3 to 6 mm). */
const SHOULDER_EASE = { least: 3, most: 6 };

const rowOf = (bust: number, waist: number): DraftMeasures =>
  draftMeasuresFor({ label: "x", bust, waist, hip: bust + 60 }, chart, ease);

/** Any size, from a straight figure to a curvy one. */
const anyRow = fc
  .tuple(fc.integer({ min: 740, max: 1250 }), fc.integer({ min: 40, max: 280 }))
  .map(([bust, less]) => rowOf(bust, bust - less));
const anyStyle = fc.constantFrom(princessArmholeStyle, princessShoulderStyle);
const anyDifference = fc.constantFrom(50, 75, 100, 125);

const valueOf = <T, F>(result: Result<T, F>): T => invariant(result.ok ? result.value : null, "a value");
const opened = (style: Style, row: DraftMeasures, difference: number): PieceSet =>
  valueOf(style.open(draftFrontBlock(row), draftBackBlock(row), difference, options));

const fronts = (pieces: PieceSet): { centre: Piece; side: Piece } => ({
  centre: pieceIn(pieces, "centreFront"),
  side: pieceIn(pieces, "sideFront"),
});
const lengthOf = (pieces: PieceSet, seam: SeamName): number => {
  const { centre, side } = fronts(pieces);
  return seamByBezierJs(centre, seam) + seamByBezierJs(side, seam);
};

/** The two stretches of the princess seam, by an independent library. */
const stretches = (piece: Piece): { above: number; below: number } => {
  const only = (end: PointName): Piece => ({
    ...piece,
    edges: piece.edges.filter((e) => e.seam === "princess" && (e.from === end || e.to === end)),
  });
  return {
    above: seamByBezierJs(only("princessTop"), "princess"),
    below: seamByBezierJs(only("princessWaist"), "princess"),
  };
};

/** Directions in and out at a corner, from the control points alone; degrees. */
function directionsAt(piece: Piece, corner: PointName): { into: number; out: number } {
  const find = (test: (edge: Edge) => boolean): Edge => invariant(piece.edges.find(test), corner);
  const before = find((edge) => edge.to === corner);
  const after = find((edge) => edge.from === corner);
  const at = pointOf(piece, corner);
  const from = before.curve?.c2 ?? pointOf(piece, before.from);
  const to = after.curve?.c1 ?? pointOf(piece, after.to);
  const degrees = (dx: number, dy: number): number => (Math.atan2(dy, dx) * 180) / Math.PI;
  return { into: degrees(at.x - from.x, at.y - from.y), out: degrees(to.x - at.x, to.y - at.y) };
}
const turnAt = (piece: Piece, corner: PointName): number => {
  const { into, out } = directionsAt(piece, corner);
  return ((out - into + 540) % 360) - 180;
};
/** Inner corner; the outline goes clockwise on screen. */
const cornerAt = (piece: Piece, corner: PointName): number => 180 - turnAt(piece, corner);

function expectPrincessLine(pieces: PieceSet, row: DraftMeasures, spread: number): void {
  const block = draftFrontBlock(row);
  const { centre, side } = fronts(pieces);
  const back = pieceIn(pieces, "back");
  const [one, other] = [stretches(centre), stretches(side)];
  expect(Math.abs(one.above - other.above)).toBeLessThan(1e-3);
  expect(Math.abs(one.below - other.below)).toBeLessThan(1e-3);
  expect(seamByBezierJs(side, "side")).toBeCloseTo(seamByBezierJs(back, "side"), 2);
  for (const seam of ["shoulder", "armhole", "neck", "waist"] as const) {
    expect(lengthOf(pieces, seam)).toBeCloseTo(seamByBezierJs(block, seam), 6);
  }
  const easeAtShoulder = seamByBezierJs(back, "shoulder") - lengthOf(pieces, "shoulder");
  expect(easeAtShoulder).toBeGreaterThan(SHOULDER_EASE.least - 1e-6);
  expect(easeAtShoulder).toBeLessThan(SHOULDER_EASE.most + 1e-6);
  // The half bust line of the block, straight from the centre to the side seam, and the spread.
  const widths =
    pointOf(centre, "princessBust").x -
    pointOf(centre, "centreBust").x +
    pointOf(side, "sideBust").x -
    pointOf(side, "princessBust").x;
  expect(widths).toBeCloseTo(pointOf(block, "sideBust").x + spread, 9);
  expect(invariant(levelWidth(centre, "bust"), "bust") + invariant(levelWidth(side, "bust"), "bust")).toBeCloseTo(
    widths,
    9,
  );
  for (const piece of [centre, side]) {
    expect(validateOutline(outlineOf(piece))).toEqual([]);
    expect(Math.abs(turnAt(piece, "princessBust"))).toBeLessThan(1e-6);
  }
  expect(cornerAt(centre, "princessTop") + cornerAt(side, "princessTop")).toBeCloseTo(180, 3);
  expect(cornerAt(centre, "princessWaist") + cornerAt(side, "princessWaist")).toBeCloseTo(180, 3);
  expect(pointOf(centre, "bustPoint")).toEqual(pointOf(centre, "princessBust"));
}

describe("a princess-line front opened from the block", () => {
  it("walks, fits the block's waist, shoulder and armhole, and lies smooth over the bust, in any size and cup", () => {
    fc.assert(
      fc.property(anyStyle, anyRow, anyDifference, (style, row, difference) => {
        expectPrincessLine(opened(style, row, difference), row, (difference - 50) / 2);
      }),
      { numRuns: 60 },
    );
  });

  it("still does after a full or small bust adjustment", () => {
    fc.assert(
      fc.property(anyStyle, anyRow, anyDifference, anyAmount(-10, 40), (style, row, difference, spread) => {
        const done = valueOf(style.adjustBust(opened(style, row, difference), spread));
        expectPrincessLine(done.pieces, row, (difference - 50) / 2 + spread);
        expect(done.traces.map(({ piece }) => piece)).toEqual(["sideFront", "centreFront"]);
      }),
      { numRuns: 60 },
    );
  });

  it("is left as it is by finishing: there is no dart to end", () => {
    fc.assert(
      fc.property(anyStyle, anyRow, anyDifference, (style, row, difference) => {
        const open = opened(style, row, difference);
        const finished = style.finish(open, pointOf(pieceIn(open, "centreFront"), "bustPoint"), difference);
        for (const piece of ["centreFront", "sideFront"] as const) {
          const [a, b] = [pieceIn(open, piece), pieceIn(finished, piece)];
          for (const seam of ["princess", "waist", "shoulder", "armhole"] as const) {
            expect(seamByBezierJs(b, seam)).toBeCloseTo(seamByBezierJs(a, seam), 4);
          }
        }
        expect(pieceIn(finished, "back")).toBe(pieceIn(open, "back"));
      }),
      { numRuns: 20 },
    );
  });

  it("crosses itself nowhere, by a count of all chords", () => {
    fc.assert(
      fc.property(anyStyle, anyRow, anyDifference, (style, row, difference) => {
        const { centre, side } = fronts(opened(style, row, difference));
        expect([crossesItself(centre), crossesItself(side)]).toEqual([false, false]);
      }),
      { numRuns: 20 },
    );
  });
});

describe.each([princessArmholeStyle, princessShoulderStyle])(
  "$name looks like a princess line (common practice, no source)",
  (style) => {
    const row = rowOf(880, 700);

    it.each([50, 100])(
      "with its side front full over the bust and its centre front nearly straight there: cup %d",
      (difference) => {
        const { centre, side } = fronts(opened(style, row, difference));
        const bust = pointOf(side, "princessBust");
        const into = directionsAt(side, "princessBust").into;
        const bend = (piece: Piece): number => {
          const [top, at, waist] = [
            pointOf(piece, "princessTop"),
            pointOf(piece, "princessBust"),
            pointOf(piece, "princessWaist"),
          ];
          const turn = Math.atan2(waist.y - at.y, waist.x - at.x) - Math.atan2(at.y - top.y, at.x - top.x);
          return (-turn * 180) / Math.PI;
        };
        expect(bend(side)).toBeGreaterThan(bend(centre) + 20);
        // Fullest near the bust line: the seam passes it within 15 degrees of square.
        expect(Math.abs(into + 90)).toBeLessThan(15);
        expect(bust.x).toBeLessThan(Math.min(pointOf(side, "princessTop").x, pointOf(side, "princessWaist").x));
      },
    );
  },
);

describe("where the seam begins", () => {
  const row = rowOf(880, 700);

  it("in the middle of the shoulder: each piece has half of it", () => {
    const { centre, side } = fronts(opened(princessShoulderStyle, row, 50));
    expect(seamByBezierJs(centre, "shoulder")).toBeCloseTo(122 / 2, 6);
    expect(seamByBezierJs(side, "shoulder")).toBeCloseTo(122 / 2, 6);
    expect(seamByBezierJs(centre, "armhole")).toBe(0);
  });

  it("in the armhole: the centre front has the whole shoulder and a third to a half of the armhole", () => {
    const { centre, side } = fronts(opened(princessArmholeStyle, row, 50));
    expect(seamByBezierJs(centre, "shoulder")).toBeCloseTo(122, 6);
    expect(seamByBezierJs(side, "shoulder")).toBe(0);
    const share =
      seamByBezierJs(centre, "armhole") / (seamByBezierJs(centre, "armhole") + seamByBezierJs(side, "armhole"));
    expect(share).toBeGreaterThan(1 / 3);
    expect(share).toBeLessThan(1 / 2);
  });
});

it("refuses a cup smaller than the darts can give up, with the most that works as a spread", () => {
  const row = rowOf(760, 740);
  const refused = princessArmholeStyle.open(draftFrontBlock(row), draftBackBlock(row), 0, options);
  expect(refused).toMatchObject({ ok: false, failure: { code: "fullBust/dart-vanishes" } });
  const most = refused.ok ? 0 : refused.failure.most;
  expect(most).toBeLessThan(0);
  expect(princessArmholeStyle.open(draftFrontBlock(row), draftBackBlock(row), 50 + 2 * most, options).ok).toBe(true);
});
