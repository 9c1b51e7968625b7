/** The mechanism on rectangles and triangles, whose results are sums and Pythagoras. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { rigidMotion, shiftMotion } from "../../../src/core/geometry/rigid";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { CoreBug, invariant } from "../../../src/core/result";
import { moveBeyondCut } from "../../../src/core/surgery/beyondCut";
import { cutAndMove, noSurgery, partAt, rejoin } from "../../../src/core/surgery/cutAndMove";
import { fitCorner } from "../../../src/core/surgery/fitCorner";
import { controlsOf, fitHandles } from "../../../src/core/surgery/fitHandles";
import { acrossAt, lengthenBetween } from "../../../src/core/surgery/lengthenAcross";
import { walkAgain, withSeamEnd } from "../../../src/core/surgery/walkAgain";
import { walkBasques } from "../../../src/core/surgery/walkBasques";
import { alongFrom, isSeamOf, placeFrom, pointAt, wedgeTurn, withLengthsOf } from "../../../src/core/surgery/wedge";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";
import { straightNest } from "../../support/straightNest";

const shifted = (dx: number, dy: number) => shiftMotion(piecePoint(0, 0), piecePoint(dx, dy));
const placesOf = (piece: Piece): Record<string, readonly [number, number]> =>
  Object.fromEntries(
    Object.entries(piece.points).map(([name, { at }]) => [
      name,
      [Math.round(at.x * 1e6) / 1e6 + 0, Math.round(at.y * 1e6) / 1e6 + 0],
    ]),
  );
const gap = (piece: Piece, from: PointName, to: PointName): number => {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  return Math.hypot(a.x - b.x, a.y - b.y);
};

/** 100 wide and 200 high. */
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 100, 0, "side"],
  ["sideWaist", 100, 200, "waist"],
  ["centreWaist", 0, 200, "centre"],
];
const box = cornerPiece({ corners: CORNERS, inside: { bustPoint: [50, 60], strapAim: [50, 160] } });

describe("a piece cut across and lengthened", () => {
  it("is cut where the outline comes down through a level, and where it comes up", () => {
    expect(acrossAt(box, 50)).toEqual({ down: { index: 1, t: 0.25 }, up: { index: 3, t: 0.75 } });
    expect(acrossAt(box, 250)).toBeNull();
    expect(acrossAt(box, -1)).toBeNull();
  });

  it("is not cut through a mouth, nor where the level meets the outline four times", () => {
    const [a, b, c, d] = CORNERS;
    if (a === undefined || b === undefined || c === undefined || d === undefined) throw new Error("corners");
    const withMouth = cornerPiece({
      corners: [a, b, ["sideDartInner", 100, 80, "side", "sideDart"], ["sideDartOuter", 100, 120, "side"], c, d],
    });
    expect(acrossAt(withMouth, 100)).toBeNull();
    expect(acrossAt(withMouth, 60)?.down.t).toBeCloseTo(0.75, 12);
    const notched = cornerPiece({
      corners: [
        a,
        b,
        c,
        ["corner01", 60, 200, "waist"],
        ["corner02", 50, 100, "waist"],
        ["corner03", 40, 200, "waist"],
        d,
      ],
    });
    expect(acrossAt(notched, 150)).toBeNull();
    expect(acrossAt(notched, 50)).not.toBeNull();
  });

  it("has all below the cut down by the amount, and tells what it did", () => {
    const done = lengthenBetween(box, invariant(acrossAt(box, 100), "across"), 30);
    if (!done.ok) throw new Error(done.failure.code);
    expect(placesOf(done.value.piece)).toEqual({
      centreNeck: [0, 0],
      underarm: [100, 0],
      sideWaist: [100, 230],
      centreWaist: [0, 230],
      bustPoint: [50, 60],
      strapAim: [50, 190],
    });
    expect(done.value.piece.edges).toEqual(box.edges);
    const { trace } = done.value;
    expect([trace.piece, trace.cuts, trace.hinges]).toEqual([
      "front",
      [[piecePoint(100, 100), piecePoint(0, 100)]],
      [],
    ]);
    expect(trace.area).toBeCloseTo(3000, 9);
    expect(trace.parts).toHaveLength(1);
    const corners = (edges: readonly { readonly a: { readonly x: number; readonly y: number } }[]) =>
      edges.map(({ a }) => [a.x, a.y]);
    expect(corners(trace.parts[0]?.before ?? [])).toEqual([
      [100, 100],
      [100, 200],
      [0, 200],
      [0, 100],
    ]);
    expect(corners(trace.parts[0]?.after ?? [])).toEqual([
      [100, 130],
      [100, 230],
      [0, 230],
      [0, 130],
    ]);
    // Both bridges stay with the rest: each begins where the outline was cut.
    expect(corners(trace.rest)).toEqual([
      [0, 0],
      [100, 0],
      [100, 100],
      [100, 100],
      [0, 100],
      [0, 100],
    ]);
  });

  it("leaves 20 mm of the edges that are cut", () => {
    const across = invariant(acrossAt(box, 100), "across");
    expect(lengthenBetween(box, across, -180).ok).toBe(true);
    expect(lengthenBetween(box, across, -180.1)).toEqual({
      ok: false,
      failure: { code: "length/no-room", least: -180 },
    });
    const low = cornerPiece({
      corners: CORNERS.map(([name, x, y, seam]): CornerOf => [name, x, y / 20, seam]),
    });
    // 10 high: nothing can come out.
    const refused = lengthenBetween(low, invariant(acrossAt(low, 5), "across"), -1);
    expect(refused.ok ? null : Math.abs(refused.failure.least)).toBe(0);
    expect(lengthenBetween(low, invariant(acrossAt(low, 5), "across"), 11).ok).toBe(true);
  });

  const dartAt = (apex: number): Piece =>
    cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 100, 0, "side"],
        ["sideWaist", 100, 200, "waist"],
        ["waistDartOuter", 60, 200, "waist", "waistDart"],
        ["waistDartInner", 40, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      inside: { waistDartApex: [50, apex] },
      darts: [dartFor("waistDart", "waist")],
    });

  it("leaves three fifths of a dart that is crossed, and 25 mm of it", () => {
    const least = (apex: number, y: number): number => {
      const piece = dartAt(apex);
      const done = lengthenBetween(piece, invariant(acrossAt(piece, y), "across"), -199);
      return done.ok ? Number.NaN : done.failure.least;
    };
    // 140 long: 56 can go; 35 long: 10.
    expect(least(60, 100)).toBeCloseTo(-56, 9);
    expect(least(165, 180)).toBeCloseTo(-10, 9);
    // Above its end, and just at it, nothing is crossed.
    expect(least(120, 100)).toBeCloseTo(-180, 9);
    expect(least(99.9, 100)).toBeCloseTo(-0.4 * 100.1, 9);
  });

  it("has a dart that was crossed trued: legs alike, its seam as long", () => {
    const piece = dartAt(60);
    const done = lengthenBetween(piece, invariant(acrossAt(piece, 100), "across"), 20);
    if (!done.ok) throw new Error(done.failure.code);
    const made = done.value.piece;
    expect(pointOf(made, "waistDartApex")).toEqual(piecePoint(50, 60));
    expect(gap(made, "waistDartApex", "waistDartInner")).toBeCloseTo(gap(made, "waistDartApex", "waistDartOuter"), 5);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(80, 4);
    expect(seamByBezierJs(made, "side")).toBeCloseTo(220, 9);
  });
});

describe("what lies beyond a cut", () => {
  const cutAt = (t: number) => ({ into: { index: 1, t }, outOf: { index: 3, t: 1 - t } });

  it("turned about its near end opens a wedge, and the hinge is told", () => {
    const quarter = radians(Math.PI / 2);
    const { piece, trace } = moveBeyondCut(box, { ...cutAt(0.5), motion: rigidMotion(piecePoint(100, 100), quarter) });
    // A quarter turn about (100, 100) takes +x to +y: (x, y) to (200 − y, x).
    expect(placesOf(piece)).toMatchObject({ sideWaist: [0, 100], centreWaist: [0, 0], strapAim: [40, 50] });
    expect(trace.hinges).toEqual([piecePoint(100, 100)]);
    const other = moveBeyondCut(box, { ...cutAt(0.5), motion: rigidMotion(piecePoint(0, 100), radians(0.1)) });
    expect(other.trace.hinges).toEqual([piecePoint(0, 100)]);
    expect(pointOf(other.piece, "centreWaist").y).toBeCloseTo(100 + 100 * Math.cos(0.1), 9);
  });

  it("goes round the corners of the cut: what they take from it stays", () => {
    const corners = [piecePoint(20, 180), piecePoint(80, 180)];
    const { piece, trace } = moveBeyondCut(box, { ...cutAt(0.5), corners, motion: shifted(0, 10) });
    // The point at 160 lies above the corners now.
    expect(placesOf(piece)).toMatchObject({ strapAim: [50, 160], sideWaist: [100, 210], bustPoint: [50, 60] });
    expect(trace.cuts).toEqual([[piecePoint(100, 100), piecePoint(80, 180), piecePoint(20, 180), piecePoint(0, 100)]]);
  });

  it("draws the edges that were cut in one, each control with its own end, and moves whole those between", () => {
    const curved = cornerPiece({
      corners: CORNERS,
      curves: {
        centreNeck: [
          [30, 5],
          [70, 5],
        ],
        underarm: [
          [110, 60],
          [110, 140],
        ],
        sideWaist: [
          [70, 210],
          [30, 210],
        ],
        centreWaist: [
          [-10, 140],
          [-10, 60],
        ],
      },
    });
    const { piece } = moveBeyondCut(curved, { ...cutAt(0.5), motion: shifted(0, 10) });
    expect(piece.edges.map(({ curve }) => curve)).toEqual([
      { c1: piecePoint(30, 5), c2: piecePoint(70, 5) },
      { c1: piecePoint(110, 60), c2: piecePoint(110, 150) },
      { c1: piecePoint(70, 220), c2: piecePoint(30, 220) },
      { c1: piecePoint(-10, 150), c2: piecePoint(-10, 60) },
    ]);
    // The other part, round the beginning of the ring.
    const upper = moveBeyondCut(curved, {
      into: { index: 3, t: 0.5 },
      outOf: { index: 1, t: 0.5 },
      motion: shifted(0, -10),
    }).piece;
    expect(upper.edges.map(({ curve }) => curve)).toEqual([
      { c1: piecePoint(30, -5), c2: piecePoint(70, -5) },
      { c1: piecePoint(110, 50), c2: piecePoint(110, 140) },
      { c1: piecePoint(70, 210), c2: piecePoint(30, 210) },
      { c1: piecePoint(-10, 140), c2: piecePoint(-10, 50) },
    ]);
    expect(placesOf(upper)).toEqual({
      centreNeck: [0, -10],
      underarm: [100, -10],
      sideWaist: [100, 200],
      centreWaist: [0, 200],
    });
  });
});

describe("parts of a piece", () => {
  const parted = partAt(box, "sideWaist", "cut1", "waistDart");

  it("are parted by an edge of no length, a dart's mouth or seam, and joined again", () => {
    expect(parted.edges).toEqual([
      ...box.edges.slice(0, 2),
      { from: "sideWaist", to: "cut1", seam: "waist", curve: null, mouthOf: "waistDart" },
      { from: "cut1", to: "centreWaist", seam: "waist", curve: null, mouthOf: null },
      ...box.edges.slice(3),
    ]);
    expect(pointOf(parted, "cut1")).toEqual(pointOf(box, "sideWaist"));
    expect(partAt(box, "sideWaist", "cut1", null).edges[2]?.mouthOf).toBeNull();
    expect(rejoin(parted, "sideWaist", "cut1")).toEqual(box);
  });

  it("cannot be joined where they lie apart, or do not follow each other", () => {
    const apart = {
      ...parted,
      points: { ...parted.points, cut1: { at: piecePoint(99, 200), level: "bust" } },
    } as const;
    expect(() => rejoin(apart, "sideWaist", "cut1")).toThrow(CoreBug);
    expect(() => rejoin(box, "sideWaist", "underarm")).toThrow(CoreBug);
  });

  it("are not torn: a shared corner that both move otherwise is our own mistake, and so is a curve stretched", () => {
    const move = (from: PointName, to: PointName, dx: number) =>
      ({ from, to, inside: [], carries: [], motion: shifted(dx, 0) }) as const;
    const none = { cuts: [], hinges: [] };
    expect(() =>
      cutAndMove(box, [move("underarm", "sideWaist", 5), move("sideWaist", "centreWaist", 6)], none),
    ).toThrow("torn at sideWaist");
    const alike = cutAndMove(box, [move("underarm", "sideWaist", 5), move("sideWaist", "centreWaist", 5)], none).piece;
    expect(placesOf(alike)).toMatchObject({ underarm: [105, 0], centreWaist: [5, 200], centreNeck: [0, 0] });
    const curved = cornerPiece({
      corners: CORNERS,
      curves: {
        centreNeck: [
          [30, 5],
          [70, 5],
        ],
      },
    });
    expect(() => cutAndMove(curved, [move("underarm", "sideWaist", 5)], none)).toThrow("stretched");
    expect(() => cutAndMove(curved, [move("centreWaist", "centreNeck", 5)], none)).toThrow("stretched");
    expect(() => cutAndMove(box, [move("underarm", "cut8", 5)], none)).toThrow(CoreBug);
  });

  it("leave no trace where nothing was done", () => {
    const { rest, ...others } = noSurgery(box);
    expect(others).toEqual({ piece: "front", cuts: [], hinges: [], parts: [], area: 0 });
    expect(rest.map(({ a }) => [a.x, a.y])).toEqual([
      [0, 0],
      [100, 0],
      [100, 200],
      [0, 200],
    ]);
  });
});

describe("a corner fitted to two seams", () => {
  const wedge = cornerPiece({
    corners: [
      ["centreWaist", 0, 0, "waist"],
      ["sideWaist", 20, 30, "side"],
      ["underarm", 50, 0, "centre"],
    ],
  });
  const fitted = (one: number, other: number): Piece | null =>
    fitCorner(wedge, "sideWaist", [
      { seam: "waist", length: one },
      { seam: "side", length: other },
    ]);

  it("lies where both come out: 30 and 40 over 50", () => {
    expect(placesOf(invariant(fitted(30, 40), "fitted"))).toEqual({
      centreWaist: [0, 0],
      sideWaist: [18, 24],
      underarm: [50, 0],
    });
    expect(fitted(Math.hypot(20, 30), Math.hypot(30, 30))).toBe(wedge);
  });

  it("is found from far, where the seams turn on the way", () => {
    // At (-10, 60), as both circles say.
    const [one, other] = [Math.hypot(10, 60), Math.hypot(60, 60)];
    const place = pointOf(invariant(fitted(one, other), "fitted"), "sideWaist");
    expect([place.x, place.y]).toEqual([expect.closeTo(-10, 4), expect.closeTo(60, 4)]);
    const low = pointOf(invariant(fitted(Math.hypot(42, 9), Math.hypot(8, 9)), "fitted"), "sideWaist");
    expect([low.x, low.y]).toEqual([expect.closeTo(42, 4), expect.closeTo(9, 4)]);
  });

  it("is none where no place gives both, or where the seams run along each other", () => {
    expect(fitted(10, 10)).toBeNull();
    const flat = cornerPiece({
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["sideWaist", 20, 0.05, "side"],
        ["underarm", 50, 0, "centre"],
      ],
    });
    expect(
      fitCorner(flat, "sideWaist", [
        { seam: "waist", length: 30 },
        { seam: "side", length: 40 },
      ]),
    ).toBeNull();
  });
});

describe("handles made longer or shorter", () => {
  const arch = cornerPiece({
    corners: [
      ["centreWaist", 0, 0, "waist"],
      ["sideWaist", 100, 0, "side"],
      ["underarm", 100, -100, "centre"],
    ],
    curves: {
      centreWaist: [
        [0, 40],
        [100, 40],
      ],
    },
  });
  const handles = (piece: Piece) => invariant(piece.edges[0]?.curve, "curve");

  it.each([110, 120, 128.5, 140])("bring a curve to %d mm, its ends and directions as they were", (length) => {
    const made = fitHandles(arch, [0], length);
    const { c1, c2 } = handles(made);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(length, 4);
    expect([c1.x, c2.x]).toEqual([0, 100]);
    expect(c1.y).toBeCloseTo(c2.y, 9);
    expect(c1.y > 0).toBe(true);
    expect(made.edges.slice(1)).toEqual(arch.edges.slice(1));
  });

  it("go no further than they may: 0.4 to 1.9 of what they were, or as is said", () => {
    expect(handles(fitHandles(arch, [0], 500))).toEqual({ c1: piecePoint(0, 76), c2: piecePoint(100, 76) });
    expect(handles(fitHandles(arch, [0], 50))).toEqual({ c1: piecePoint(0, 16), c2: piecePoint(100, 16) });
    const reach = { shortest: 0.5, longest: 1.25 };
    expect(handles(fitHandles(arch, [0], 500, reach))).toEqual({ c1: piecePoint(0, 50), c2: piecePoint(100, 50) });
    expect(handles(fitHandles(arch, [0], 50, reach))).toEqual({ c1: piecePoint(0, 20), c2: piecePoint(100, 20) });
  });

  it("are left where the curve is as long as wanted", () => {
    expect(fitHandles(arch, [0], seamLength(arch, "waist"))).toBe(arch);
  });

  it("of two edges are scaled alike, the length shared as it comes", () => {
    const two = cornerPiece({
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["cut1", 100, 0, "waist"],
        ["sideWaist", 300, 0, "side"],
        ["underarm", 100, -100, "centre"],
      ],
      curves: {
        centreWaist: [
          [0, 40],
          [100, 40],
        ],
        cut1: [
          [100, 80],
          [300, 80],
        ],
      },
    });
    const made = fitHandles(two, [0, 1], 400);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(400, 4);
    // The second is the first twice as large.
    expect(invariant(made.edges[1]?.curve, "curve").c1.y).toBeCloseTo(2 * handles(made).c1.y, 9);
  });

  it("of a stretch with a bend are scaled as a whole, the bend smooth", () => {
    const bent = cornerPiece({
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["bend001", 50, 30, "waist"],
        ["sideWaist", 100, 0, "side"],
        ["underarm", 100, -100, "centre"],
      ],
      // The arch cut in halves by de Casteljau.
      curves: {
        centreWaist: [
          [0, 20],
          [25, 30],
        ],
        bend001: [
          [75, 30],
          [100, 20],
        ],
      },
    });
    expect(seamByBezierJs(bent, "waist")).toBeCloseTo(seamByBezierJs(arch, "waist"), 6);
    const made = fitHandles(bent, [0], 128);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(128, 3);
    expect(pointOf(made, "sideWaist")).toEqual(piecePoint(100, 0));
    expect(fitHandles(bent, [0], seamLength(bent, "waist"))).toBe(bent);
    const [into, out] = [invariant(made.edges[0]?.curve, "c").c2, invariant(made.edges[1]?.curve, "c").c1];
    const at = pointOf(made, "bend001");
    expect((at.x - into.x) * (out.y - at.y) - (at.y - into.y) * (out.x - at.x)).toBeCloseTo(0, 2);
  });

  it("of a line are a third of it each", () => {
    const { c1, c2 } = controlsOf(box, invariant(box.edges[1], "side"));
    expect([c1.x, c2.x]).toEqual([100, 100]);
    expect(c1.y).toBeCloseTo(200 / 3, 9);
    expect(c2.y).toBeCloseTo(400 / 3, 9);
  });
});

const [front, back] = invariant(
  straightNest([{ label: "", front: { bust: 200, waist: 200, dart: 20 }, back: { bust: 200, waist: 200, dart: 20 } }])
    .sizes[0],
  "size",
).pieces;
if (front === undefined || back === undefined) throw new Error("pieces");
const movedTo = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { ...invariant(piece.points[name], name), at: piecePoint(x, y) } },
});

describe("seams walked again", () => {
  it("has each give half at its lower corner, waists as long as they were", () => {
    const before = setOf([front, back]);
    const after = walkAgain(before, setOf([movedTo(front, "sideWaist", 200, 410), back]));
    const [one, other] = [pieceIn(after, "front"), pieceIn(after, "back")];
    // 10 more on the front: 5 of it go, and come on the back.
    expect(gap(one, "sideDartOuter", "sideWaist")).toBeCloseTo(95, 4);
    expect(gap(other, "sideBust", "sideWaist")).toBeCloseTo(155, 4);
    expect(gap(other, "waistDartOuter", "sideWaist")).toBeCloseTo(95, 4);
    expect(gap(one, "waistDartOuter", "sideWaist")).toBeCloseTo(Math.hypot(95, 10), 4);
    const same = setOf([front, back]);
    expect(walkAgain(before, same)).toBe(same);
  });

  it("moves an end along its own seam, on either side of it", () => {
    const side = withSeamEnd(front, "side", "underarm", 180);
    expect(placesOf(side)).toEqual({ ...placesOf(front), underarm: [200, 190] });
    const lower = withSeamEnd(front, "side", "sideWaist", 160);
    expect(placesOf(lower)).toEqual({ ...placesOf(front), sideWaist: [200, 390] });
    const waist = withSeamEnd(front, "waist", "sideWaist", 187);
    expect(placesOf(waist)).toEqual({ ...placesOf(front), sideWaist: [207, 400] });
    expect(withSeamEnd(front, "waist", "sideWaist", 180)).toBe(front);
  });
});

describe("basques walked", () => {
  const basque = (name: "frontBasque" | "backBasque", waist: number, height: number): Piece =>
    cornerPiece({
      name,
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["sideWaist", waist, 0, "side"],
        ["sideHip", waist, height, "side"],
        ["sideHem", waist, height + 40, "hem"],
        ["centreHem", 0, height + 40, "centre"],
      ],
    });

  it("have their bodices' waists, and side seams of one length: the mean", () => {
    const { front: one, back: other } = walkBasques(
      { piece: basque("frontBasque", 170, 180), waist: 175 },
      { piece: basque("backBasque", 160, 184), waist: 158 },
    );
    expect(seamByBezierJs(one, "waist")).toBeCloseTo(175, 4);
    expect(seamByBezierJs(other, "waist")).toBeCloseTo(158, 4);
    expect(seamByBezierJs(one, "side")).toBeCloseTo(seamByBezierJs(other, "side"), 4);
    expect(Math.abs(seamByBezierJs(one, "side") - 222)).toBeLessThan(0.2);
    for (const [piece, before] of [
      [one, basque("frontBasque", 170, 180)],
      [other, basque("backBasque", 160, 184)],
    ] as const)
      for (const name of ["sideHip", "sideHem", "centreHem", "centreWaist"] as const)
        expect(pointOf(piece, name)).toEqual(pointOf(before, name));
  });
});

describe("wedges", () => {
  it.each([
    [60, true, 1],
    [60, false, -1],
    [-60, true, -1],
  ])("of %d mm at 50 mm from the hinge, up %s: a chord of 2 R sin(angle / 2)", (amount, up, sign) => {
    expect(wedgeTurn(piecePoint(0, 0), piecePoint(30, 40), amount, up)).toBeCloseTo(sign * 2 * Math.asin(0.6), 12);
  });

  it("begin so far along a seam from its end, or half-way where it is short", () => {
    expect(placeFrom(box, "sideWaist", "before", 50)).toEqual({ index: 1, t: 0.75 });
    expect(placeFrom(box, "underarm", "after", 50)).toEqual({ index: 1, t: 0.25 });
    expect(placeFrom(box, "sideWaist", "before", 150)).toEqual({ index: 1, t: 0.5 });
    expect([alongFrom(box, "sideWaist", "before", 99), alongFrom(box, "sideWaist", "after", 99)]).toEqual([99, 50]);
    expect(pointAt(box, { index: 1, t: 0.75 })).toEqual(piecePoint(100, 150));
    expect([isSeamOf(box, "waist"), isSeamOf(box, "hem"), isSeamOf(undefined, "waist")]).toEqual([true, false, false]);
  });

  it("leave waist and side seam as long as they were, at a dart where there is one", () => {
    const longer = movedTo(front, "centreWaist", -6, 400);
    const made = withLengthsOf(longer, front, "sideWaist");
    // The dart takes the 6 mm, half at each end.
    expect(pointOf(made, "waistDartInner").x).toBeCloseTo(82, 1);
    expect(pointOf(made, "waistDartOuter").x).toBeCloseTo(108, 1);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(180, 4);
    const plain = withLengthsOf(movedTo(box, "centreWaist", -6, 200), box, "sideWaist");
    expect(pointOf(plain, "sideWaist").x).toBeCloseTo(94, 4);
    expect(seamByBezierJs(plain, "side")).toBeCloseTo(200, 4);
  });
});
