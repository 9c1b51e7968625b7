/** A seam trued over a dart by its curves or by its mouth, on pieces whose seam stands square to both legs. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { carriedBy, endedShortOf, joinedUp, stopShortOf, truedOver } from "../../../src/core/surgery/openDart";
import { bentOff, withBends } from "../../support/bentPieces";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";

/** Ends of the mouth 20 to both sides, 150 below the end; the seam leaves them square to the legs, by handles of 30 times the scale. */
const LEG = Math.hypot(20, 150);
const [UX, UY] = [150 / LEG, 20 / LEG];
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 200, 0, "side"],
  ["sideWaist", 200, 260, "waist"],
  ["waistDartOuter", 120, 300, "waist", "waistDart"],
  ["waistDartInner", 80, 300, "waist"],
  ["centreWaist", 0, 260, "centre"],
];
const skirted = (scale: number, gathered?: true): Piece =>
  cornerPiece({
    corners: CORNERS,
    curves: {
      sideWaist: [
        [200 - 25 * scale, 260 + 40 * scale],
        [120 + 30 * UX * scale, 300 - 30 * UY * scale],
      ],
      waistDartInner: [
        [80 - 30 * UX * scale, 300 - 30 * UY * scale],
        [25 * scale, 260 + 40 * scale],
      ],
    },
    inside: { waistDartApex: [100, 150] },
    darts: [{ ...dartFor("waistDart", "waist"), ...(gathered === undefined ? {} : { gathered }) }],
  });
const plain = skirted(1);
const lengthAt = (scale: number): number => seamByBezierJs(skirted(scale), "waist");
const mouthOf = (piece: Piece): readonly number[] =>
  (["waistDartInner", "waistDartOuter"] as const).flatMap((name) => [pointOf(piece, name).x, pointOf(piece, name).y]);
const MOUTH = [80, 300, 120, 300].map((one) => expect.closeTo(one, 3));
const ended = (piece: Piece, length: number): Piece =>
  endedShortOf(piece, "waistDart", piecePoint(100, 120), 30, length);

describe("the length of a seam over a dart", () => {
  it("is as it was: nothing moves", () => {
    const made = ended(plain, lengthAt(1));
    expect(mouthOf(made)).toEqual(MOUTH);
    expect(pointOf(made, "waistDartApex")).toEqual({ x: expect.closeTo(100, 9), y: expect.closeTo(150, 9) });
    expect(made.edges.map(({ curve }) => curve !== null)).toEqual([false, false, true, false, true, false]);
  });

  it.each([0.86, 0.95, 1.1, 1.19])("is made up by the curves beside the mouth, drawn %d as full", (scale) => {
    const made = ended(plain, lengthAt(scale));
    expect(mouthOf(made)).toEqual(MOUTH);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(lengthAt(scale), 3);
    for (const [index, edge] of skirted(scale).edges.entries())
      for (const control of ["c1", "c2"] as const) {
        const [is, wanted] = [made.edges[index]?.curve?.[control], edge.curve?.[control]];
        expect(Math.hypot((is?.x ?? 0) - (wanted?.x ?? 0), (is?.y ?? 0) - (wanted?.y ?? 0))).toBeLessThan(0.01);
      }
  });

  it.each([0.84, 1.21])(
    "is made up by the mouth where they would have to be drawn %d as full (0.85 to 1.2, our own choice)",
    (scale) => {
      const made = ended(plain, lengthAt(scale));
      expect(seamByBezierJs(made, "waist")).toBeCloseTo(lengthAt(scale), 3);
      const [inner, , outer] = mouthOf(made);
      // Half at each end.
      expect(Math.abs((inner ?? 0) - 80)).toBeGreaterThan(0.5);
      expect((inner ?? 0) + (outer ?? 0)).toBeCloseTo(200, 3);
      expect((outer ?? 0) - (inner ?? 0) < 40).toBe(scale > 1);
    },
  );

  it.each([0.95, 1.1])("is made up by stretches with bends as a whole, drawn %d as full", (scale) => {
    const made = ended(withBends(plain, 0.45), lengthAt(scale));
    expect(mouthOf(made)).toEqual(MOUTH);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(lengthAt(scale), 3);
  });

  it("is made up by the mouth where these cannot", () => {
    const long = lengthAt(1) + 200;
    const made = ended(withBends(plain, 0.45), long);
    const [inner, , outer] = mouthOf(made);
    expect((outer ?? 0) - (inner ?? 0)).toBeLessThan(30);
    expect((inner ?? 0) + (outer ?? 0)).toBeCloseTo(200, 1);
  });
});

describe("a gathered mouth", () => {
  const handles = (piece: Piece) => {
    const into = invariant(piece.edges.find(({ to }) => to === "waistDartOuter")?.curve, "into").c2;
    const out = invariant(piece.edges.find(({ from }) => from === "waistDartInner")?.curve, "out").c1;
    const [a, b] = [pointOf(piece, "waistDartOuter"), pointOf(piece, "waistDartInner")];
    return { into: Math.atan2(into.y - a.y, into.x - a.x), out: Math.atan2(out.y - b.y, out.x - b.x) };
  };

  it("is run straight into from both sides, with or without bends, on the one or the other", () => {
    const whole = skirted(1, true);
    const cut = withBends(whole, 0.45);
    // Of both, its first half or its second: edges and points of the seam before the mouth or after it.
    const beforeOnly: Piece = { ...cut, edges: [...cut.edges.slice(0, 5), ...whole.edges.slice(4)] };
    const afterOnly: Piece = { ...cut, edges: [...whole.edges.slice(0, 4), ...cut.edges.slice(5)] };
    const plainly = truedOver(whole, "waistDart", seamByBezierJs(whole, "waist"));
    for (const piece of [whole, cut, beforeOnly, afterOnly]) {
      const made = truedOver(piece, "waistDart", seamByBezierJs(piece, "waist"));
      expect(bentOff(plainly, made, { corner: 0.2, seam: 0.001, line: 0.35 })).toEqual([]);
      expect(Math.abs(handles(made).into)).toBeLessThan(1e-5);
      expect(Math.abs(Math.abs(handles(made).out) - Math.PI)).toBeLessThan(1e-5);
      expect(seamByBezierJs(made, "waist")).toBeCloseTo(seamByBezierJs(piece, "waist"), 3);
    }
  });
});

describe("how far a dart ends short", () => {
  it("does not hang on where the piece lies", () => {
    const at = (dx: number, dy: number): number =>
      stopShortOf(
        cornerPiece({
          corners: [
            ["sideDartInner", dx, dy, "side", "sideDart"],
            ["sideDartOuter", dx + 30, dy + 40, "side"],
            ["centreWaist", dx - 60, dy + 90, "centre"],
          ],
          inside: { sideDartApex: [dx + 15 - 40, dy + 20 + 30] },
          darts: [dartFor("sideDart", "side")],
        }),
        "sideDart",
        piecePoint(dx + 15 - 64, dy + 20 + 48),
      );
    // 80 from the middle of the mouth, square to it; its end 50.
    for (const [dx, dy] of [
      [0, 0],
      [500, 0],
      [0, 500],
      [-700, 300],
    ] as const)
      expect(at(dx, dy)).toBeCloseTo(30, 9);
  });
});

describe("a seam joined up where a dart has gone", () => {
  const gone = (dy: number, curved: boolean): Piece =>
    joinedUp(
      cornerPiece({
        corners: [
          ["sideWaist", 200, 300, "waist"],
          ["waistDartOuter", 100, 300 + dy, "waist", "waistDart"],
          ["waistDartInner", 100, 300 + dy, "waist"],
          ["centreWaist", 0, 300, "centre"],
          ["centreNeck", 0, 0, "neck"],
        ],
        curves: curved
          ? {
              sideWaist: [
                [175, 300 + 0.664 * dy],
                [137.5, 300 + dy],
              ],
              waistDartInner: [
                [62.5, 300 + dy],
                [25, 300 + 0.664 * dy],
              ],
            }
          : {},
        inside: { waistDartApex: [100, 200] },
        darts: [dartFor("waistDart", "waist")],
      }),
      "waistDart",
    );

  it("is straight where it bends by less than can be seen, and else a curve as long as both were", () => {
    expect(gone(0, false).edges.map(({ from, curve }) => [from, curve])).toEqual([
      ["sideWaist", null],
      ["centreWaist", null],
      ["centreNeck", null],
    ]);
    const before = cornerPiece({
      corners: [
        ["sideWaist", 200, 300, "waist"],
        ["waistMiddle", 100, 304, "waist"],
        ["centreWaist", 0, 300, "centre"],
        ["centreNeck", 0, 0, "neck"],
      ],
      curves: {
        sideWaist: [
          [175, 302.656],
          [137.5, 304],
        ],
        waistMiddle: [
          [62.5, 304],
          [25, 302.656],
        ],
      },
    });
    const joined = gone(4, true);
    expect(joined.edges).toHaveLength(3);
    expect(seamByBezierJs(joined, "waist")).toBeCloseTo(seamByBezierJs(before, "waist"), 3);
    const { c1, c2 } = invariant(joined.edges[0]?.curve, "curve");
    // The same image seen in a mirror, in the directions that its ends had.
    expect(c1.x + c2.x).toBeCloseTo(200, 6);
    expect((c1.y - 300) / (200 - c1.x)).toBeCloseTo(2.656 / 25, 6);
    expect(c2.y).toBeCloseTo(c1.y, 6);
  });
});

describe("what lies on a part", () => {
  const piece = cornerPiece({
    corners: CORNERS,
    inside: { waistDartApex: [100, 150], bustPoint: [150, 100], strapAim: [50, 100], underBustCentre: [90, 200] },
    darts: [dartFor("waistDart", "waist")],
  });

  it("is within its stretch of the outline and the cut", () => {
    const within = (x: number) =>
      carriedBy(piece, { from: "underarm", to: "waistDartOuter", inside: [piecePoint(x, 150)] }).toSorted();
    // From (x, 150) up to the underarm at (200, 0): at 100 down it passes a third of the way.
    expect([within(100), within(20), within(180)]).toEqual([["bustPoint"], ["bustPoint"], []]);
  });

  it("goes by its owner on the outline, and by where it lies where that is not on it", () => {
    // The waist's middle owns the under-bust level at the centre; without that corner it goes by its place.
    const part = { from: "waistDartInner", to: "centreNeck", inside: [piecePoint(100, 150)] } as const;
    expect(carriedBy(piece, part).toSorted()).toEqual(["strapAim", "underBustCentre"]);
    const other = { from: "underarm", to: "waistDartOuter", inside: [piecePoint(60, 150)] } as const;
    expect(carriedBy(piece, other)).not.toContain("underBustCentre");
  });
});
