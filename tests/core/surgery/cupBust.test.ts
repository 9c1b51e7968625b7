/** A cup of straight lines made fuller and smaller: its parts turn by chords about hinges that can be seen. */
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { pointNames, pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { adjustCup, smoothSeamEnds, type CupBust } from "../../../src/core/surgery/cupBust";
import { bentOff, withBends } from "../../support/bentPieces";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";

const CORNERS: readonly CornerOf[] = [
  ["centreBust", 0, 80, "neck"],
  ["strapInner", 100, 0, "strap"],
  ["strapOuter", 130, 0, "armhole"],
  ["underarm", 200, 90, "side"],
  ["sideUnderBust", 200, 200, "underBust"],
  ["underBustDartOuter", 110, 200, "underBust", "underBustDart"],
  ["underBustDartInner", 90, 200, "underBust"],
  ["underBustCentre", 0, 200, "centre"],
];
const [HINGE, BUST, ARMHOLE] = [piecePoint(100, 0), piecePoint(100, 120), piecePoint(180, 30)];
const cupOf = (
  corners: readonly CornerOf[] = CORNERS,
  curves: Parameters<typeof cornerPiece>[0]["curves"] = {},
): Piece =>
  cornerPiece({
    name: "cup",
    corners,
    curves,
    inside: {
      bustPoint: [100, 120],
      bustLineInner: [100, 120],
      bustLineOuter: [100, 120],
      underBustDartApex: [100, 120],
      armholeHinge: [180, 30],
    },
    darts: [dartFor("underBustDart", "underBust", "bustPoint")],
  });
const cup = cupOf();
function adjusted(piece: Piece, spread: number): CupBust {
  const done = adjustCup(piece, spread);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
}
interface Place {
  readonly x: number;
  readonly y: number;
}
const round = ({ x, y }: Place, about: Place, angle: number): Place => ({
  x: about.x + (x - about.x) * Math.cos(angle) - (y - about.y) * Math.sin(angle),
  y: about.y + (x - about.x) * Math.sin(angle) + (y - about.y) * Math.cos(angle),
});
const near = ({ x, y }: Place) => ({ x: expect.closeTo(x, 8), y: expect.closeTo(y, 8) });
const apart = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);
/** On the circle about the hinge of the armhole, 80 to its right and 90 above: moved across by a spread it drops. */
const dropOf = (spread: number): number => 30 + Math.sqrt(80 * 80 + 90 * 90 - (spread - 80) ** 2) - 120;

describe("a cup made fuller", () => {
  it.each([10, 24, -6])(
    "by %d mm turns its side about the strap's inner end until the cut stands open so far",
    (spread) => {
      const { piece, turn, drop, trace } = adjusted(cup, spread);
      // A chord at 120 mm; outward turns +y towards +x.
      const angle = -2 * Math.asin(spread / 240);
      expect(turn).toBeCloseTo(angle, 12);
      expect(drop).toBeCloseTo(dropOf(spread), 9);
      const outer = round(BUST, HINGE, angle);
      expect(apart(outer, BUST)).toBeCloseTo(Math.abs(spread), 9);
      const sideEnd = round({ x: 200, y: 200 }, HINGE, angle);
      // The two parts below turn about the ends of the seam by chords as long as the drop, 90 mm from them each.
      const down = 2 * Math.asin(drop / 180);
      const places: Readonly<Partial<Record<PointName, Place>>> = {
        centreBust: { x: 0, y: 80 },
        strapInner: HINGE,
        strapOuter: round({ x: 130, y: 0 }, HINGE, angle),
        underarm: round({ x: 200, y: 90 }, HINGE, angle),
        sideUnderBust: sideEnd,
        underBustDartOuter: round(round({ x: 110, y: 200 }, HINGE, angle), sideEnd, -down),
        underBustDartInner: round({ x: 90, y: 200 }, { x: 0, y: 200 }, down),
        underBustCentre: { x: 0, y: 200 },
        bustLineInner: BUST,
        bustLineOuter: outer,
        bustPoint: { x: (BUST.x + outer.x) / 2, y: (BUST.y + outer.y) / 2 },
        underBustDartApex: { x: (BUST.x + outer.x) / 2, y: (BUST.y + outer.y) / 2 },
        armholeHinge: ARMHOLE,
      };
      for (const name of pointNames(cup)) expect(pointOf(piece, name)).toEqual(near(invariant(places[name], name)));
      for (const name of ["bustPoint", "underBustDartApex"] as const) expect(piece.points[name]?.level).toBe("bust");
      for (const seam of ["neck", "strap", "armhole", "side", "underBust", "centre"] as const)
        expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(cup, seam), 9);
      expect(trace.cuts).toEqual([
        [piecePoint(100, 200), BUST, HINGE],
        [BUST, piecePoint(0, 200)],
        [BUST, piecePoint(200, 200)],
      ]);
      expect(trace.hinges).toEqual([HINGE, piecePoint(0, 200), piecePoint(200, 200)]);
      expect(trace.parts.map(({ before }) => before.map(({ a }) => [a.x, a.y]))).toEqual([
        [
          [100, 0],
          [130, 0],
          [200, 90],
          [200, 200],
          [100, 120],
        ],
        [
          [200, 200],
          [110, 200],
          [100, 120],
        ],
        [
          [90, 200],
          [0, 200],
          [100, 120],
        ],
      ]);
    },
  );

  it("in two steps is as in one, and taken back is as it was", () => {
    const [twice, once] = [adjusted(adjusted(cup, 9).piece, 7), adjusted(cup, 16)];
    for (const name of pointNames(cup)) expect(pointOf(twice.piece, name)).toEqual(near(pointOf(once.piece, name)));
    expect(twice.drop).toBeCloseTo(dropOf(16) - dropOf(9), 9);
    expect(twice.turn).toBeCloseTo(-2 * Math.asin(16 / 240) + 2 * Math.asin(9 / 240), 12);
    const back = adjusted(once.piece, -16);
    for (const name of pointNames(cup)) expect(pointOf(back.piece, name)).toEqual(near(pointOf(cup, name)));
    // From a lap over to a gap, too.
    const lapped = adjusted(adjusted(cup, -5).piece, 11);
    for (const name of pointNames(cup))
      expect(pointOf(lapped.piece, name)).toEqual(near(pointOf(adjusted(cup, 6).piece, name)));
  });
});

describe("a cup that cannot be made so", () => {
  const refusedAt = (piece: Piece, spread: number) => {
    const done = adjustCup(piece, spread);
    if (done.ok) throw new Error("made");
    return done.failure;
  };
  const mouth = (piece: Piece): number => {
    const [a, b] = [pointOf(piece, "underBustDartInner"), pointOf(piece, "underBustDartOuter")];
    return Math.sign(b.x - a.x) * apart(a, b);
  };

  it("has a dart under 3 mm wide: the smallest is told", () => {
    const { code, most } = refusedAt(cup, -40);
    expect([code, most < 0]).toEqual(["fullBust/dart-vanishes", true]);
    expect(mouth(adjusted(cup, most).piece)).toBeCloseTo(3, 3);
    expect(refusedAt(cup, most - 0.001).code).toBe("fullBust/dart-vanishes");
  });

  it("opens at the bust point by more than 75 degrees: the largest is told", () => {
    const { code, most } = refusedAt(cup, 130);
    expect(code).toBe("fullBust/out-of-reach");
    const { piece } = adjusted(cup, most);
    const [a, b] = [pointOf(piece, "underBustDartInner"), pointOf(piece, "underBustDartOuter")];
    const [i, o] = [pointOf(piece, "bustLineInner"), pointOf(piece, "bustLineOuter")];
    const opening = Math.atan2(a.y - i.y, a.x - i.x) - Math.atan2(b.y - o.y, b.x - o.x);
    expect((opening * 180) / Math.PI).toBeCloseTo(75, 3);
    expect(adjustCup(cup, most + 0.001).ok).toBe(false);
  });

  it("leaves no dart of 25 mm ended 10 short of the bust point, or a seam that cannot come up so far", () => {
    const shallow = (depth: number): Piece =>
      cupOf(
        CORNERS.map(([name, x, y, seam, dart]): CornerOf => {
          const at = y === 200 ? 120 + depth : y;
          return dart === undefined ? [name, x, at, seam] : [name, x, at, seam, dart];
        }),
      );
    expect([adjustCup(shallow(35), 0).ok, adjustCup(shallow(34.99), 0).ok]).toEqual([true, false]);
    expect(refusedAt(shallow(34.99), 0)).toEqual({ code: "fullBust/dart-vanishes", most: 0 });
    // Stretches of 1 mm beside the dart cannot turn it down by more than 2.
    const short = cupOf(
      CORNERS.map(([name, x, y, seam, dart]): CornerOf => {
        const at = name === "underBustDartOuter" ? 199 : name === "underBustDartInner" ? 1 : x;
        return dart === undefined ? [name, at, y, seam] : [name, at, y, seam, dart];
      }),
    );
    expect(refusedAt(short, 30).code).toBe("fullBust/out-of-reach");
  });
});

describe("the seam under a cup let down", () => {
  const curves = {
    sideUnderBust: [
      [170, 206],
      [140, 203],
    ],
    underBustDartInner: [
      [60, 204],
      [30, 208],
    ],
  } as const;
  const leaving = (piece: Piece): number => {
    const at = pointOf(piece, "sideUnderBust");
    const edge = invariant(
      piece.edges.find(({ from }) => from === "sideUnderBust"),
      "side",
    );
    const to = edge.curve?.c1 ?? pointOf(piece, edge.to);
    return Math.atan2(to.y - at.y, to.x - at.x);
  };
  const arriving = (piece: Piece): number => {
    const at = pointOf(piece, "underBustCentre");
    const edge = invariant(
      piece.edges.find(({ to }) => to === "underBustCentre"),
      "centre",
    );
    const from = edge.curve?.c2 ?? pointOf(piece, edge.from);
    return Math.atan2(at.y - from.y, at.x - from.x);
  };

  it.each([12, -5])(
    "by a spread of %d mm leaves both its ends as it did, the rest of its handles where they came to lie",
    (spread) => {
      const before = cupOf(CORNERS, curves);
      const { piece, turn } = adjusted(before, spread);
      const smooth = smoothSeamEnds(piece);
      expect(Math.abs(leaving(piece) - leaving(before) - turn)).toBeGreaterThan(0.01);
      expect(leaving(smooth)).toBeCloseTo(leaving(before) + turn, 9);
      expect(Math.abs(arriving(piece) - arriving(before))).toBeGreaterThan(0.01);
      expect(arriving(smooth)).toBeCloseTo(arriving(before), 9);
      expect(smooth.points).toBe(piece.points);
      const curvesOf = (of: Piece, from: PointName) =>
        invariant(of.edges.find((edge) => edge.from === from)?.curve, from);
      expect(curvesOf(smooth, "sideUnderBust").c2).toEqual(curvesOf(piece, "sideUnderBust").c2);
      expect(curvesOf(smooth, "underBustDartInner").c1).toEqual(curvesOf(piece, "underBustDartInner").c1);
      const long = ({ c1, c2 }: { readonly c1: PiecePoint; readonly c2: PiecePoint }, a: Place, b: Place) => [
        apart(c1, a),
        apart(c2, b),
      ];
      const [side, mouthEnd] = [pointOf(piece, "sideUnderBust"), pointOf(piece, "underBustDartOuter")];
      expect(long(curvesOf(smooth, "sideUnderBust"), side, mouthEnd)).toEqual(
        long(curvesOf(piece, "sideUnderBust"), side, mouthEnd).map((one) => expect.closeTo(one, 9)),
      );
    },
  );

  it("does so with bends on both sides of the dart, or on one", () => {
    const plain = cupOf(CORNERS, curves);
    const both = withBends(plain, 0.5);
    // The side's half of the seam with its bend, or the centre's.
    const atSide: Piece = { ...both, edges: [...both.edges.slice(0, 6), ...plain.edges.slice(5)] };
    const atCentre: Piece = { ...both, edges: [...plain.edges.slice(0, 5), ...both.edges.slice(6)] };
    const plainly = smoothSeamEnds(adjusted(plain, 12).piece);
    for (const before of [both, atSide, atCentre]) {
      const { piece, turn } = adjusted(before, 12);
      const smooth = smoothSeamEnds(piece);
      expect(bentOff(plainly, smooth, { corner: 0.001, seam: 0.05, line: 0.1 })).toEqual([]);
      expect(leaving(smooth)).toBeCloseTo(leaving(before) + turn, 5);
      expect(arriving(smooth)).toBeCloseTo(arriving(before), 5);
      for (const name of ["sideUnderBust", "underBustCentre", "underBustDartInner", "underBustDartOuter"] as const)
        expect(pointOf(smooth, name)).toEqual(near(pointOf(piece, name)));
    }
  });

  it("is left where it is straight, and where it was not let down", () => {
    const { piece } = adjusted(cup, 12);
    expect(smoothSeamEnds(piece)).toEqual(piece);
    const plain = cupOf(CORNERS, curves);
    expect(smoothSeamEnds(plain).edges).toEqual(plain.edges);
  });
});
