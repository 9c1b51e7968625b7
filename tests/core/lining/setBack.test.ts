/** Edges drawn inside where they were, on pieces of straight lines and arcs whose parallels are known by hand. mm. */
import { describe, expect, it } from "vitest";
import { edgeFlatten } from "../../../src/core/geometry/edgeCurve";
import { setBack } from "../../../src/core/lining/setBack";
import { pointNames, pointOf, type Piece, type PointName, type SeamName } from "../../../src/core/pattern/piece";
import { curveOf } from "../../../src/core/pattern/ring";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { closePoints, turned } from "../../support/turnedPiece";

type By = Readonly<Partial<Record<SeamName, number>>>;

const set = (piece: Piece, by: By): Piece | null => setBack(piece, ({ seam }) => by[seam] ?? 0);

/** That it is no piece fails at its first corner. */
const placesOf = (piece: Piece | null): Readonly<Partial<Record<PointName, readonly [number, number]>>> =>
  piece === null
    ? {}
    : Object.fromEntries(pointNames(piece).map((name) => [name, [pointOf(piece, name).x, pointOf(piece, name).y]]));

const near = (x: number, y: number): unknown => [expect.closeTo(x, 5), expect.closeTo(y, 5)];

/** Along an edge of a piece, by where it begins. */
const alongFrom = (piece: Piece | null, from: PointName): readonly { readonly x: number; readonly y: number }[] =>
  piece === null
    ? []
    : piece.edges.filter((edge) => edge.from === from).flatMap((edge) => edgeFlatten(curveOf(piece, edge), 0.001));

/** 100 wide above, 60 deep; the side leans out by `lean` on its way down. */
const trapezoid = (lean: number): Piece =>
  cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 100, 0, "side"],
      ["sideWaist", 100 + lean, 60, "waist"],
      ["centreWaist", 0, 60, "centre"],
    ],
  });

describe("straight edges set back", () => {
  it("lie inside by as much as each is to, and end where their neighbours now do; all else is as it was", () => {
    const piece = trapezoid(0);
    const moved = set(piece, { neck: 3, side: 5, centre: 2 });
    expect(moved).toEqual({
      ...piece,
      points: {
        centreNeck: { at: { x: expect.closeTo(2, 5), y: expect.closeTo(3, 5) }, level: "bust" },
        underarm: { at: { x: expect.closeTo(95, 5), y: expect.closeTo(3, 5) }, level: "bust" },
        sideWaist: { at: { x: expect.closeTo(95, 5), y: expect.closeTo(60, 5) }, level: "bust" },
        centreWaist: { at: { x: expect.closeTo(2, 5), y: expect.closeTo(60, 5) }, level: "bust" },
      },
    });
    expect(set(piece, {})).toEqual(piece);
    expect(placesOf(set(piece, { neck: 3, centre: 2 })).sideWaist).toEqual([100, 60]);
  });

  it("go on from corners that are not square", () => {
    // A line that goes 30 across on 60 lies, set back by 5, 5 × √(1 + 1/4) further in at any height.
    const moved = placesOf(set(trapezoid(30), { neck: 3, side: 5 }));
    const further = 5 * Math.sqrt(1.25);
    expect(moved.underarm).toEqual(near(101.5 - further, 3));
    expect(moved.sideWaist).toEqual(near(130 - further, 60));
    expect(moved.centreNeck).toEqual(near(0, 3));
  });

  it("run on beyond their ends where the outline turns inwards", () => {
    // An L: 100 wide and 40 deep above, 60 wide and 80 deep at the centre.
    const piece = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 100, 0, "side"],
        ["sideBust", 100, 40, "armhole"],
        ["shoulderTip", 60, 40, "shoulder"],
        ["sideWaist", 60, 80, "waist"],
        ["centreWaist", 0, 80, "centre"],
      ],
    });
    expect(placesOf(set(piece, { neck: 4, side: 4, armhole: 4, shoulder: 4, waist: 4, centre: 4 }))).toEqual({
      centreNeck: near(4, 4),
      underarm: near(96, 4),
      sideBust: near(96, 36),
      shoulderTip: near(56, 36),
      sideWaist: near(56, 76),
      centreWaist: near(4, 76),
    });
    expect(placesOf(set(piece, { armhole: 4, shoulder: 7 })).shoulderTip).toEqual(near(53, 36));
  });

  it("end along the legs of a dart that opens in them", () => {
    const piece = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 100, 0, "side"],
        ["sideWaist", 100, 200, "waist"],
        ["waistDartOuter", 60, 200, "waist", "waistDart"],
        ["waistDartInner", 40, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      inside: { waistDartApex: [50, 100] },
      darts: [dartFor("waistDart", "waist")],
    });
    const moved = set(piece, { waist: 4 });
    // 4 of 100 up the legs, each of which goes 10 across.
    expect(placesOf(moved)).toEqual({
      centreNeck: [0, 0],
      underarm: [100, 0],
      sideWaist: near(100, 196),
      waistDartOuter: near(59.6, 196),
      waistDartInner: near(40.4, 196),
      centreWaist: near(0, 196),
      waistDartApex: [50, 100],
    });
    expect(moved?.edges).toEqual(piece.edges);
  });
});

it("a piece that is turned is set back as it was before, turned", () => {
  const by: By = { neck: 3, side: 5, waist: 2, centre: 4 };
  const moved = setBack(trapezoid(30), ({ seam }) => by[seam] ?? 0);
  for (const degrees of [25, -70, 160]) {
    const other = set(turned(trapezoid(30), degrees), by);
    expect(moved === null || other === null ? null : turned(moved, degrees).points).toEqual(
      other === null ? "moved" : closePoints(other),
    );
  }
});

describe("where a line runs smooth on", () => {
  /** The upper edge in two, the second of which turns down by so much. */
  const bent = (turn: number): Piece =>
    cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 50, 0, "armhole"],
        ["underarm", 100, 50 * Math.tan(turn), "side"],
        ["sideWaist", 100, 100, "waist"],
        ["centreWaist", 0, 100, "centre"],
      ],
    });

  it("its corner lies in the middle of what both come to", () => {
    expect(placesOf(set(bent(0), { neck: 4, armhole: 4 })).sideNeck).toEqual(near(50, 4));
    expect(placesOf(set(bent(0), { neck: 2, armhole: 6 })).sideNeck).toEqual(near(50, 4));
    expect(placesOf(set(bent(0), { armhole: 6 })).sideNeck).toEqual(near(50, 3));
    // Half a degree is 0.0087, and runs smooth.
    expect(placesOf(set(bent(0.0088), { neck: 2, armhole: 6 })).sideNeck).toEqual([
      expect.closeTo(50, 1),
      expect.closeTo(4, 3),
    ]);
  });

  it("and beyond that they hardly meet", () => {
    // 4 apart, at 0.0095 they would meet 420 further on.
    for (const turn of [0.0095, -0.0095]) expect(set(bent(turn), { neck: 2, armhole: 6 })).toBeNull();
    // Alike, their corner is at half of the turn.
    expect(placesOf(set(bent(0.04), { neck: 4, armhole: 4 })).sideNeck).toEqual(near(50 - 4 * Math.tan(0.02), 4));
  });
});

describe("an edge that cannot be set back", () => {
  it("is used up by what its neighbours take", () => {
    expect(placesOf(set(trapezoid(0), { side: 49.9, centre: 49.9 }))).toMatchObject({
      centreNeck: near(49.9, 0),
      underarm: near(50.1, 0),
    });
    expect(set(trapezoid(0), { side: 50.01, centre: 50.01 })).toBeNull();
    expect(set(trapezoid(0), { side: 60, centre: 60 })).toBeNull();
  });

  it("hardly meets its neighbour: no corner goes further than five times what it is set back by", () => {
    /** An upright wedge of an angle at its tip. */
    const wedge = (degrees: number): Piece => {
      const half = 300 * Math.tan((degrees * Math.PI) / 360);
      const corners: readonly CornerOf[] = [
        ["centreNeck", 0, 0, "side"],
        ["sideWaist", half, 300, "waist"],
        ["centreWaist", -half, 300, "centre"],
      ];
      return cornerPiece({ corners });
    };
    // Both by 4: 4 / sin of half of the angle; 20 at 23.07 degrees.
    expect(placesOf(set(wedge(23.2), { side: 4, centre: 4 })).centreNeck).toEqual(
      near(0, 4 / Math.sin((11.6 * Math.PI) / 180)),
    );
    expect(set(wedge(22.9), { side: 4, centre: 4 })).toBeNull();
    // One alone by 4: 4 / sin of the angle; 20 at 11.54 degrees.
    const along = 4 / Math.sin((11.6 * Math.PI) / 180);
    const half = (5.8 * Math.PI) / 180;
    expect(placesOf(set(wedge(11.6), { side: 4 })).centreNeck).toEqual(
      near(-along * Math.sin(half), along * Math.cos(half)),
    );
    expect(placesOf(set(wedge(11.6), { centre: 4 })).centreNeck).toEqual(
      near(along * Math.sin(half), along * Math.cos(half)),
    );
    expect(set(wedge(11.5), { side: 4 })).toBeNull();
    expect(set(wedge(11.5), { centre: 4 })).toBeNull();
  });
});

/** Of a quarter of a circle by one cubic: the length of its handles, by radius. */
const HANDLE = (4 / 3) * (Math.SQRT2 - 1);

describe("an arc set back", () => {
  const quarter = cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["shoulderTip", 80, 0, "armhole"],
      ["centreWaist", 0, 80, "centre"],
    ],
    curves: {
      shoulderTip: [
        [80, 80 * HANDLE],
        [80 * HANDLE, 80],
      ],
    },
  });
  const radii = (piece: Piece | null): readonly number[] =>
    alongFrom(piece, "shoulderTip").map(({ x, y }) => Math.hypot(x, y));

  it("is the arc of a radius so much less, one cubic for one", () => {
    const moved = set(quarter, { armhole: 5 });
    expect(placesOf(moved)).toEqual({ centreNeck: [0, 0], shoulderTip: near(75, 0), centreWaist: near(0, 75) });
    for (const radius of radii(moved)) expect(Math.abs(radius - 75)).toBeLessThan(0.06);
    expect(radii(moved).length).toBeGreaterThan(10);
    const curve = moved?.edges[1]?.curve;
    // It leaves and arrives as the edge did, with handles in proportion.
    expect(curve?.c1).toEqual({ x: expect.closeTo(75, 4), y: expect.closeTo(75 * HANDLE, 1) });
    expect(curve?.c2).toEqual({ x: expect.closeTo(75 * HANDLE, 1), y: expect.closeTo(75, 4) });
    expect(moved?.edges.map((edge) => edge.curve === null)).toEqual([true, false, true]);
  });

  it("ends where its neighbours now lie, and keeps the directions it has there", () => {
    const moved = set(quarter, { armhole: 5, neck: 10, centre: 20 });
    const [top, foot] = [
      { x: Math.sqrt(75 ** 2 - 10 ** 2), y: 10 },
      { x: 20, y: Math.sqrt(75 ** 2 - 20 ** 2) },
    ];
    expect(placesOf(moved)).toEqual({
      centreNeck: near(20, 10),
      shoulderTip: [expect.closeTo(top.x, 1), expect.closeTo(top.y, 4)],
      centreWaist: [expect.closeTo(foot.x, 4), expect.closeTo(foot.y, 1)],
    });
    for (const radius of radii(moved)) expect(Math.abs(radius - 75)).toBeLessThan(0.06);
    const { c1, c2 } = moved?.edges[1]?.curve ?? { c1: { x: 0, y: 0 }, c2: { x: 0, y: 0 } };
    // Square to the radius at either end, on and back.
    const leaving = Math.atan2(c1.y - top.y, c1.x - top.x);
    expect(leaving).toBeCloseTo(Math.atan2(top.x, -top.y), 2);
    const arriving = Math.atan2(foot.y - c2.y, foot.x - c2.x);
    expect(arriving).toBeCloseTo(Math.atan2(foot.x, -foot.y), 2);
  });

  it("that stays where it was keeps its line, as far as its neighbours leave it", () => {
    const moved = set(quarter, { neck: 10 });
    expect(placesOf(moved).shoulderTip).toEqual([expect.closeTo(Math.sqrt(6300), 1), expect.closeTo(10, 4)]);
    for (const radius of radii(moved)) expect(Math.abs(radius - 80)).toBeLessThan(0.03);
  });

  it("into a piece is that of a radius so much more; where its neighbour lies askew it runs straight on to it", () => {
    /** A notch of a radius of 40 about (100, 0), its upper edge from (0, −up). */
    const notched = (up: number): Piece =>
      cornerPiece({
        corners: [
          ["centreNeck", 0, -up, "neck"],
          ["shoulderTip", 60, 0, "armhole"],
          ["underarm", 100, 40, "side"],
          ["sideWaist", 100, 160, "waist"],
          ["centreWaist", 0, 160, "centre"],
        ],
        curves: {
          shoulderTip: [
            [60, 40 * HANDLE],
            [100 - 40 * HANDLE, 40],
          ],
        },
      });
    const level = set(notched(0), { armhole: 5, side: 3 });
    expect(placesOf(level).shoulderTip).toEqual(near(55, 0));
    expect(placesOf(level).underarm).toEqual([expect.closeTo(97, 4), expect.closeTo(Math.sqrt(45 ** 2 - 9), 1)]);
    for (const { x, y } of alongFrom(level, "shoulderTip"))
      expect(Math.abs(Math.hypot(x - 100, y) - 45)).toBeLessThan(0.06);
    // At 55 across the upper edge lies 20 × 5 / 60 above its end.
    const askew = set(notched(20), { armhole: 5 });
    expect(placesOf(askew).shoulderTip).toEqual(near(55, -5 / 3));
    expect(askew?.edges[1]?.curve?.c1.x).toBeCloseTo(55, 5);
    for (const { x, y } of alongFrom(askew, "shoulderTip"))
      expect(Math.abs(Math.hypot(x - 100, Math.max(0, y)) - 45)).toBeLessThan(0.2);
  });
});
