import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { edgePointAt, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { moveRigidly } from "../../../src/core/geometry/rigid";
import { pointNames, pointOf, type Piece } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { withArmholeDart } from "../../../src/core/style/princessStyle";
import { adjustPrincessBust, takenAtBust, type PrincessBust } from "../../../src/core/surgery/princessBust";
import { drawPrincess, walkPrincess } from "../../../src/core/surgery/princessSeam";
import { splitAtBustPoint, type PrincessPieces } from "../../../src/core/surgery/splitAtBustPoint";
import { anyAmount } from "../../support/amounts";
import { polygonOf, seamByBezierJs } from "../../support/independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };
const blockOf = (bust: number, waist = bust - 180): Piece =>
  draftFrontBlock(draftMeasuresFor({ label: "x", bust, waist, hip: bust + 60 }, chart, ease));

type Line = "armhole" | "shoulder";
const splitFor = (line: Line, block: Piece): PrincessPieces =>
  line === "armhole"
    ? splitAtBustPoint(withArmholeDart(block), "armholeDart")
    : splitAtBustPoint(block, "shoulderDart");
const piecesFor = (line: Line, block: Piece): PrincessPieces => drawPrincess(splitFor(line, block));

function adjusted(pieces: PrincessPieces, spread: number): PrincessBust {
  const done = adjustPrincessBust(pieces, spread);
  return invariant(done.ok ? done.value : null, "an adjustment within reach");
}

interface Place {
  readonly x: number;
  readonly y: number;
}
const apart = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Law of cosines: the angle at `corner` of a triangle, from its three sides. */
function angleOf(corner: Place, p: Place, q: Place): number {
  const [a, b, c] = [apart(corner, p), apart(corner, q), apart(p, q)];
  return Math.acos((a * a + b * b - c * c) / (2 * a * b));
}

const ringOf = (edges: readonly EdgeCurve<"piece">[]): Place[] =>
  edges.flatMap((edge) => Array.from({ length: 100 }, (_, i) => edgePointAt(edge, i / 100)));

/** Everything that a piece is drawn from: its points and controls, as one row of numbers. */
const numbersOf = (piece: Piece): number[] => [
  ...pointNames(piece)
    .toSorted()
    .flatMap((name) => [pointOf(piece, name).x, pointOf(piece, name).y]),
  ...piece.edges.flatMap(({ curve }) => (curve === null ? [] : [curve.c1.x, curve.c1.y, curve.c2.x, curve.c2.y])),
];

function furthest(one: PrincessPieces, other: PrincessPieces): number {
  const [a, b] = [one, other].map(({ centreFront, sideFront }) => [...numbersOf(centreFront), ...numbersOf(sideFront)]);
  return Math.max(
    ...invariant(a, "first").map((value, i) => Math.abs(value - invariant(invariant(b, "second")[i], "number"))),
  );
}

const anyLine = fc.constantFrom<Line>("armhole", "shoulder");
const anyBlock = fc
  .tuple(fc.integer({ min: 740, max: 1250 }), fc.integer({ min: 60, max: 280 }))
  .map(([bust, less]) => blockOf(bust, bust - less));

describe("a princess seam drawn smooth and walked", () => {
  it("leaves the side front's points where they are, and of the centre front all but its length", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, (line, block) => {
        const split = splitFor(line, block);
        const drawn = drawPrincess(split);
        for (const name of pointNames(split.sideFront))
          expect(pointOf(drawn.sideFront, name)).toEqual(pointOf(split.sideFront, name));
        for (const name of pointNames(split.centreFront)) {
          expect(pointOf(drawn.centreFront, name).x).toBeCloseTo(pointOf(split.centreFront, name).x, 9);
        }
        for (const seam of ["neck", "shoulder", "armhole", "waist"] as const) {
          expect(seamByBezierJs(drawn.centreFront, seam)).toBeCloseTo(seamByBezierJs(split.centreFront, seam), 9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("does not depend on how the seam was drawn before", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, (line, block) => {
        const drawn = piecesFor(line, block);
        expect(furthest(drawPrincess(drawn), drawn)).toBeLessThan(1e-5);
      }),
      { numRuns: 30 },
    );
  });

  it("says so where the side front's seam is shorter than the centre front's is wide, so that no lowering makes them walk", () => {
    const { centreFront, sideFront } = splitFor("armhole", blockOf(880));
    const bust = pointOf(sideFront, "princessBust");
    const top = invariant(sideFront.points.princessTop, "top");
    const short: Piece = {
      ...sideFront,
      points: { ...sideFront.points, princessTop: { ...top, at: piecePoint(bust.x + 12, bust.y - 12) } },
    };
    expect(pointOf(centreFront, "princessTop").x - bust.x).toBeGreaterThan(40);
    expect(walkPrincess({ centreFront, sideFront: short })).toBeNull();
  });
});

describe("a princess-line front adjusted to a bust", () => {
  it("turns each strip until it aims at the mark on the bust line: the angle in the triangle hinge, bust point, mark", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, anyAmount(1, 40), (line, block, spread) => {
        const { sideFront } = piecesFor(line, block);
        const { traces, turn } = adjusted({ ...piecesFor(line, block) }, spread);
        const [top, bust, waist] = [
          pointOf(sideFront, "princessTop"),
          pointOf(sideFront, "princessBust"),
          pointOf(sideFront, "princessWaist"),
        ];
        const mark = { x: bust.x - spread, y: bust.y };
        const [lower, upper] = invariant(traces[0], "side front").parts;
        // Both ends swing towards the centre: the one below its hinge clockwise on screen, the one above its own against it.
        expect(turn).toBeCloseTo(angleOf(top, bust, mark), 6);
        expect(invariant(upper, "upper").motion.angle).toBeCloseTo(angleOf(top, bust, mark), 6);
        expect(invariant(lower, "lower").motion.angle).toBeCloseTo(-angleOf(waist, bust, mark), 6);
        expect(apart(moveRigidly(invariant(upper, "upper").motion, top), top)).toBeLessThan(1e-9);
        expect(apart(moveRigidly(invariant(lower, "lower").motion, waist), waist)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it("moves its parts without stretching them", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, anyAmount(-8, 40), (line, block, spread) => {
        const { traces } = adjusted(piecesFor(line, block), spread);
        const parts = traces.flatMap((trace) => trace.parts);
        expect(parts).toHaveLength(3);
        for (const { before, after } of parts) {
          expect(Math.abs(polygonOf(ringOf(after)).area() - polygonOf(ringOf(before)).area())).toBeLessThan(1e-3);
          expect(after.map((edge) => apart(edge.a, edge.b))).toEqual(
            before.map((edge) => expect.closeTo(apart(edge.a, edge.b), 6)),
          );
        }
      }),
      { numRuns: 25 },
    );
  });

  it("lets in two triangles on the side front and a strip across the centre front, to the square millimetre", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, anyAmount(-8, 40), (line, block, spread) => {
        const pieces = piecesFor(line, block);
        const { traces, drop } = adjusted(pieces, spread);
        const [top, waist] = [pointOf(pieces.sideFront, "princessTop"), pointOf(pieces.sideFront, "princessWaist")];
        // Base: the spread along the bust line. Heights: up to one hinge and down to the other.
        expect(invariant(traces[0], "side").area).toBeCloseTo((spread * (waist.y - top.y)) / 2, 5);
        expect(invariant(traces[1], "centre").area).toBeCloseTo(
          drop * pointOf(pieces.centreFront, "princessBust").x,
          5,
        );
      }),
      { numRuns: 40 },
    );
  });

  it("gives the side front the spread and the centre front the length, and no other seam anything", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, anyAmount(-8, 40), (line, block, spread) => {
        const old = piecesFor(line, block);
        const { pieces, drop } = adjusted(old, spread);
        const widthOf = ({ sideFront }: PrincessPieces): number =>
          pointOf(sideFront, "sideBust").x - pointOf(sideFront, "princessBust").x;
        expect(widthOf(pieces)).toBeCloseTo(widthOf(old) + spread, 9);
        expect(pointOf(pieces.sideFront, "princessBust").y).toBe(pointOf(old.sideFront, "princessBust").y);
        expect(pointOf(pieces.centreFront, "princessBust").x).toBeCloseTo(
          pointOf(old.centreFront, "princessBust").x,
          9,
        );
        for (const seam of ["neck", "shoulder", "armhole", "side", "waist"] as const) {
          expect(seamByBezierJs(pieces.sideFront, seam)).toBeCloseTo(seamByBezierJs(old.sideFront, seam), 9);
          expect(seamByBezierJs(pieces.centreFront, seam)).toBeCloseTo(seamByBezierJs(old.centreFront, seam), 9);
        }
        expect(seamByBezierJs(pieces.centreFront, "centre") - seamByBezierJs(old.centreFront, "centre")).toBeCloseTo(
          drop,
          6,
        );
        expect(pointOf(pieces.centreFront, "bustPoint")).toEqual(pointOf(pieces.centreFront, "princessBust"));
        expect(Math.sign(drop)).toBe(Math.sign(spread));
      }),
      { numRuns: 40 },
    );
  });

  it("taken back, gives the old pieces; in two steps, the same as in one", () => {
    fc.assert(
      fc.property(anyLine, anyBlock, anyAmount(1, 20), anyAmount(1, 20), (line, block, first, second) => {
        const old = piecesFor(line, block);
        const once = adjusted(old, first).pieces;
        expect(furthest(adjusted(once, -first).pieces, old)).toBeLessThan(1e-4);
        expect(furthest(adjusted(once, second).pieces, adjusted(old, first + second).pieces)).toBeLessThan(1e-4);
      }),
      { numRuns: 25 },
    );
  });
});

/** How far a seam's straight lines turn at the bust point. */
const bendOf = (piece: Piece): number =>
  Math.PI - angleOf(pointOf(piece, "princessBust"), pointOf(piece, "princessTop"), pointOf(piece, "princessWaist"));

describe("a bust that a princess-line front cannot be adjusted to", () => {
  it.each(["armhole", "shoulder"] as const)(
    "is refused with the least that leaves a dart's worth of shape: %s",
    (line) => {
      const pieces = piecesFor(line, blockOf(800, 760));
      const refused = adjustPrincessBust(pieces, -60);
      expect(refused).toEqual({ ok: false, failure: { code: "fullBust/dart-vanishes", most: expect.any(Number) } });
      const most = refused.ok ? 0 : refused.failure.most;
      const [within, beyond] = [adjustPrincessBust(pieces, most), adjustPrincessBust(pieces, most - 0.001)];
      expect([within.ok, beyond.ok]).toEqual([true, false]);
      const { sideFront } = invariant(within.ok ? within.value.pieces : null, "within");
      const legs = (["princessTop", "princessWaist"] as const).map((end) =>
        apart(pointOf(sideFront, end), pointOf(sideFront, "princessBust")),
      );
      // A dart 3 mm wide (the narrowest that can be sewn) on the shorter of the two stretches.
      expect(takenAtBust(invariant(within.ok ? within.value.pieces : null, "within"))).toBeCloseTo(
        2 * Math.asin(1.5 / Math.min(...legs)),
        5,
      );
    },
  );

  it.each(["armhole", "shoulder"] as const)(
    "is refused with the most at which the side front bends no more than squarely: %s",
    (line) => {
      const pieces = piecesFor(line, blockOf(880));
      const refused = adjustPrincessBust(pieces, 300);
      expect(refused).toEqual({ ok: false, failure: { code: "fullBust/out-of-reach", most: expect.any(Number) } });
      const most = refused.ok ? 0 : refused.failure.most;
      expect(bendOf(adjusted(pieces, most).pieces.sideFront)).toBeCloseTo(Math.PI / 2, 5);
      // In reach: the fullest cup of the demo patterns and an adjustment on top of it.
      expect(most).toBeGreaterThan(37.5 + 40);
    },
  );

  it("takes up at the bust what the two darts of the block took there", () => {
    const block = blockOf(880);
    const at = pointOf(block, "bustPoint");
    const angle = (dart: "shoulderDart" | "waistDart"): number =>
      angleOf(at, pointOf(block, `${dart}Inner`), pointOf(block, `${dart}Outer`));
    // Before the seam is drawn smooth: four rays out of one point.
    expect(takenAtBust(splitFor("shoulder", block))).toBeCloseTo(angle("shoulderDart") + angle("waistDart"), 9);
    expect(takenAtBust(splitFor("armhole", block))).toBeCloseTo(angle("shoulderDart") + angle("waistDart"), 9);
  });
});
