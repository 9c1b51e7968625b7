/** Darts opened, shut, pivoted and folded on straight pieces, and shoulders turned: places by trigonometry. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { rigidMotion } from "../../../src/core/geometry/rigid";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { CoreBug, invariant } from "../../../src/core/result";
import { moveBeyondCut, trueDartAgain } from "../../../src/core/surgery/beyondCut";
import { closeWedgeIntoDart, takesWedge } from "../../../src/core/surgery/closeWedge";
import { adjustFullBust, hingeTurn, withArmholeHinge } from "../../../src/core/surgery/fullBust";
import {
  carriedBy,
  closingTurn,
  drawnTo,
  endedShortOf,
  joinedUp,
  mouthOf,
  openingAt,
  partedFor,
  pointServed,
  renamedDart,
  stopShortOf,
  truedOver,
} from "../../../src/core/surgery/openDart";
import { pivotDart } from "../../../src/core/surgery/pivotDart";
import {
  fitUpperArmhole,
  hasShoulders,
  roomAtUnderarm,
  shiftCorners,
  shoulderFall,
  shoulderLength,
  shoulderPieces,
  tiltAtTip,
  turnShoulder,
  underarmPieces,
} from "../../../src/core/surgery/shoulderLine";
import { splitAtBustPoint } from "../../../src/core/surgery/splitAtBustPoint";
import { edgeTurned, smoothedAt } from "../../../src/core/surgery/straightThrough";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";
import { straightNest } from "../../support/straightNest";

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

/** 200 wide, 300 high; a shoulder dart 40 wide, 120 long over the bust point; a waist dart 30 wide, to it too. */
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderDartInner", 80, 0, "shoulder", "shoulderDart"],
  ["shoulderDartOuter", 120, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["waistDartOuter", 115, 300, "waist", "waistDart"],
  ["waistDartInner", 85, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const front = cornerPiece({
  corners: CORNERS,
  inside: {
    bustPoint: [100, 120],
    bustLineInner: [100, 120],
    bustLineOuter: [100, 120],
    underBustCentre: [0, 200],
    shoulderDartApex: [100, 120],
    waistDartApex: [100, 120],
  },
  darts: [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")],
  levelLines: [{ level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } }],
});
const back = cornerPiece({
  name: "back",
  corners: CORNERS.filter(([name]) => !name.startsWith("shoulderDart") && !name.startsWith("waistDart")),
});

describe("a dart read on its piece", () => {
  it("has its mouth as the outline meets it, and a point that it serves", () => {
    expect([mouthOf(front, "shoulderDart"), mouthOf(front, "waistDart")]).toEqual([
      { first: "shoulderDartInner", second: "shoulderDartOuter" },
      { first: "waistDartOuter", second: "waistDartInner" },
    ]);
    const [shoulder] = front.darts;
    if (shoulder === undefined) throw new Error("dart");
    const ended = {
      ...front,
      points: { ...front.points, shoulderDartApex: { at: piecePoint(100, 90), level: "bust" } },
    } as const;
    expect(pointServed(ended, shoulder)).toEqual(piecePoint(100, 120));
    expect(pointServed(ended, { ...shoulder, aimsAt: null })).toEqual(piecePoint(100, 90));
    expect(pointServed(ended, { ...shoulder, aimsAt: "princessBust" })).toEqual(piecePoint(100, 90));
    expect(() => mouthOf(front, "sideDart")).toThrow("mouth of sideDart");
  });

  it("stands open at a point by the angle of its legs, and ends short of it along its middle", () => {
    // 20 beside and 120 up on both sides.
    expect(openingAt(front, "shoulderDart", piecePoint(100, 120))).toBeCloseTo(2 * Math.atan(20 / 120), 12);
    const passed = {
      ...front,
      points: { ...front.points, shoulderDartInner: { at: piecePoint(130, 0), level: "bust" } },
    } as const;
    expect(openingAt(passed, "shoulderDart", piecePoint(100, 120))).toBeLessThan(0);
    const ended = {
      ...front,
      points: { ...front.points, shoulderDartApex: { at: piecePoint(103, 90), level: "bust" } },
    } as const;
    expect(stopShortOf(ended, "shoulderDart", piecePoint(100, 120))).toBeCloseTo(30, 9);
    expect(stopShortOf(ended, "shoulderDart", piecePoint(100, 60))).toBeCloseTo(-30, 9);
    // A mouth aslant: 3 : 4 over 50; the end square to its middle.
    const slanting = cornerPiece({
      corners: [
        ["sideDartInner", 0, 0, "side", "sideDart"],
        ["sideDartOuter", 30, 40, "side"],
        ["centreWaist", -60, 90, "centre"],
      ],
      inside: { sideDartApex: [15 - 40, 20 + 30] },
      darts: [dartFor("sideDart", "side")],
    });
    expect(stopShortOf(slanting, "sideDart", piecePoint(15 - 64, 20 + 48))).toBeCloseTo(30, 9);
  });

  it("turns a part one way onward and the other way back", () => {
    expect([closingTurn(true, radians(0.3)), closingTurn(false, radians(0.3))]).toEqual([-0.3, 0.3]);
  });
});

describe("a seam parted for a dart, and joined where it has gone", () => {
  it("has a corner and a second in the same place, at the waist the outer one first", () => {
    const side = partedFor(front, { edge: 6, t: 0.25 }, "sideDart");
    expect(side.edges.slice(6, 9)).toEqual([
      { from: "sideBust", to: "sideDartInner", seam: "side", curve: null, mouthOf: null },
      { from: "sideDartInner", to: "sideDartOuter", seam: "side", curve: null, mouthOf: "sideDart" },
      { from: "sideDartOuter", to: "sideWaist", seam: "side", curve: null, mouthOf: null },
    ]);
    expect(pointOf(side, "sideDartOuter")).toEqual(piecePoint(200, 165));
    for (const [edge, name] of [
      [7, "waistDart2"],
      [7, "underBustDart"],
      [11, "centreDart"],
    ] as const)
      expect(mouthOf(partedFor(front, { edge, t: 0.5 }, name), name).first).toBe(`${name}Outer`);
    for (const [edge, name] of [
      [0, "neckDart"],
      [4, "armholeDart"],
      [6, "frenchDart"],
    ] as const)
      expect(mouthOf(partedFor(front, { edge, t: 0.5 }, name), name).first).toBe(`${name}Inner`);
  });

  it("takes the corner that an older dart left, where it lies within 6 mm", () => {
    const [a, b, ...rest] = CORNERS;
    if (a === undefined || b === undefined) throw new Error("corners");
    const left = cornerPiece({ corners: [a, ["cut8", 30, 0, "neck"], b, ...rest] });
    const near = partedFor(left, { edge: 1, t: 5 / 30 }, "neckDart");
    expect([pointOf(near, "neckDartInner"), near.points.cut8]).toEqual([piecePoint(30, 0), undefined]);
    const far = partedFor(left, { edge: 1, t: 7 / 30 }, "neckDart");
    expect(pointOf(far, "neckDartInner").x).toBeCloseTo(37, 9);
    expect(far.points.cut8).toBeDefined();
    const before = partedFor(left, { edge: 0, t: 25 / 30 }, "neckDart");
    expect(pointOf(before, "neckDartInner")).toEqual(piecePoint(30, 0));
  });

  const shut = (corners: readonly CornerOf[], curves: Parameters<typeof cornerPiece>[0]["curves"] = {}): Piece =>
    cornerPiece({ corners, curves, inside: { waistDartApex: [100, 200] }, darts: [dartFor("waistDart", "waist")] });

  it("is one line again where it was one", () => {
    const piece = shut([
      ["sideWaist", 200, 300, "waist"],
      ["waistDartOuter", 120, 300, "waist", "waistDart"],
      ["waistDartInner", 120, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreNeck", 0, 0, "neck"],
    ]);
    expect(joinedUp(piece, "waistDart")).toEqual(
      cornerPiece({
        corners: [
          ["sideWaist", 200, 300, "waist"],
          ["centreWaist", 0, 300, "centre"],
          ["centreNeck", 0, 0, "neck"],
        ],
      }),
    );
  });

  it("is one curve again where the two are the halves of one, by de Casteljau", () => {
    // From (200, 300) by (150, 340) and (50, 340) to (0, 300), halved: the middle at (100, 330).
    const piece = shut(
      [
        ["sideWaist", 200, 300, "waist"],
        ["waistDartOuter", 100, 330, "waist", "waistDart"],
        ["waistDartInner", 100, 330, "waist"],
        ["centreWaist", 0, 300, "centre"],
        ["centreNeck", 0, 0, "neck"],
      ],
      {
        sideWaist: [
          [175, 320],
          [137.5, 330],
        ],
        waistDartInner: [
          [62.5, 330],
          [25, 320],
        ],
      },
    );
    const joined = joinedUp(piece, "waistDart");
    expect([joined.edges.length, joined.darts.length, Object.keys(joined.points).toSorted()]).toEqual([
      3,
      0,
      ["centreNeck", "centreWaist", "sideWaist"],
    ]);
    const { c1, c2 } = invariant(joined.edges[0]?.curve, "curve");
    expect(Math.hypot(c1.x - 150, c1.y - 340)).toBeLessThan(0.01);
    expect(Math.hypot(c2.x - 50, c2.y - 340)).toBeLessThan(0.01);
  });

  it("keeps a corner where no one curve follows both", () => {
    const piece = shut([
      ["sideWaist", 200, 300, "waist"],
      ["waistDartOuter", 120, 330, "waist", "waistDart"],
      ["waistDartInner", 120, 330, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreNeck", 0, 0, "neck"],
    ]);
    const joined = joinedUp(piece, "waistDart");
    expect(joined).toEqual(
      cornerPiece({
        corners: [
          ["sideWaist", 200, 300, "waist"],
          ["cut8", 120, 330, "waist"],
          ["centreWaist", 0, 300, "centre"],
          ["centreNeck", 0, 0, "neck"],
        ],
      }),
    );
    const again = joinedUp(
      { ...piece, points: { ...piece.points, cut8: { at: piecePoint(1, 1), level: "bust" } } },
      "waistDart",
    );
    expect(again.edges.map(({ from }) => from)).toEqual(["sideWaist", "cut7", "centreWaist", "centreNeck"]);
  });

  it("gives a dart another name, its points with it", () => {
    const renamed = renamedDart(front, "waistDart", "waistDart2");
    expect(renamed.darts).toEqual([front.darts[0], { ...dartFor("waistDart2", "waist", "bustPoint") }]);
    expect(mouthOf(renamed, "waistDart2")).toEqual({ first: "waistDart2Outer", second: "waistDart2Inner" });
    expect(placesOf(renamed)).toMatchObject({ waistDart2Apex: [100, 120], waistDart2Inner: [85, 300] });
    expect(renamed.points.waistDartOuter).toBeUndefined();
    expect(renamed.edges.filter(({ mouthOf: dart }) => dart !== null)).toHaveLength(2);
  });
});

describe("what lies on a part that moves", () => {
  const inside = [piecePoint(100, 120)];
  const sorted = (from: PointName, to: PointName, piece = front) =>
    // The bust point itself lies on the corner of every part.
    carriedBy(piece, { from, to, inside })
      .filter((name) => name !== "bustPoint")
      .toSorted();

  it("is a dart whose mouth lies on it, the bust line with its end, and all within it", () => {
    const held: Piece = {
      ...front,
      points: { ...front.points, strapAim: { at: piecePoint(160, 200), level: "bust" } },
    };
    expect(sorted("shoulderDartOuter", "waistDartOuter", held)).toEqual(["bustLineOuter", "strapAim"]);
    expect(sorted("sideWaist", "centreNeck")).toEqual(["bustLineInner", "underBustCentre", "waistDartApex"]);
    expect(sorted("waistDartInner", "centreNeck")).toEqual(["bustLineInner", "underBustCentre"]);
    expect(sorted("sideNeck", "shoulderTip")).toEqual(["shoulderDartApex"]);
  });
});

describe("a dart pivoted", () => {
  it("closes as it opens: each point of the part turns about the bust point by the dart's angle", () => {
    const { piece, turn, trace } = pivotDart(front, {
      close: "shoulderDart",
      open: "sideDart",
      edgeFrom: "sideBust",
      t: 0.25,
      pivot: "bustPoint",
    });
    const angle = 2 * Math.atan(20 / 120);
    expect(turn).toBeCloseTo(-angle, 12);
    expect(trace.hinges).toEqual([piecePoint(100, 120)]);
    expect(trace.cuts).toEqual([[piecePoint(100, 120), piecePoint(200, 165)]]);
    expect(trace.parts.map(({ before }) => before.map(({ a }) => [a.x, a.y]))).toEqual([
      [
        [120, 0],
        [160, 0],
        [200, 100],
        [200, 120],
        [200, 165],
        [100, 120],
      ],
    ]);
    const about = (x: number, y: number): readonly [number, number] => [
      100 + (x - 100) * Math.cos(angle) + (y - 120) * Math.sin(angle),
      120 - (x - 100) * Math.sin(angle) + (y - 120) * Math.cos(angle),
    ];
    for (const [name, x, y] of [
      ["shoulderTip", 160, 0],
      ["underarm", 200, 100],
      ["sideBust", 200, 120],
      ["sideDartInner", 200, 165],
    ] as const) {
      expect(pointOf(piece, name).x).toBeCloseTo(about(x, y)[0], 9);
      expect(pointOf(piece, name).y).toBeCloseTo(about(x, y)[1], 9);
    }
    expect(pointOf(piece, "sideDartOuter")).toEqual(piecePoint(200, 165));
    expect(piece.darts).toEqual([dartFor("waistDart", "waist", "bustPoint"), dartFor("sideDart", "side", "bustPoint")]);
    expect(piece.points.sideDartApex).toEqual({ at: piecePoint(100, 120), level: "bust" });
    expect(piece.edges.map(({ from, to, mouthOf: dart }) => [from, to, dart])).toEqual([
      ["centreNeck", "sideNeck", null],
      ["sideNeck", "shoulderTip", null],
      ["shoulderTip", "underarm", null],
      ["underarm", "sideBust", null],
      ["sideBust", "sideDartInner", null],
      ["sideDartInner", "sideDartOuter", "sideDart"],
      ["sideDartOuter", "sideWaist", null],
      ["sideWaist", "waistDartOuter", null],
      ["waistDartOuter", "waistDartInner", "waistDart"],
      ["waistDartInner", "centreWaist", null],
      ["centreWaist", "centreBust", null],
      ["centreBust", "centreNeck", null],
    ]);
  });

  it.each([
    {
      sideNeck: [
        [65, 5],
        [75, 5],
      ],
    },
    {
      shoulderDartOuter: [
        [130, 5],
        [150, 5],
      ],
    },
  ] as const)("is our own mistake where its seam is curved: it cannot be joined up", (curves) => {
    const curved = cornerPiece({
      corners: CORNERS,
      curves,
      inside: { bustPoint: [100, 120], shoulderDartApex: [100, 120] },
      darts: [dartFor("shoulderDart", "shoulder", "bustPoint")],
    });
    expect(() =>
      pivotDart(curved, { close: "shoulderDart", open: "sideDart", edgeFrom: "sideBust", t: 0.25, pivot: "bustPoint" }),
    ).toThrow(CoreBug);
  });
});

describe("a front split over the bust point", () => {
  it("gives two rings that share the seam, each with what lies on it", () => {
    const { centreFront, sideFront } = splitAtBustPoint(front, "shoulderDart");
    const ring = (piece: Piece) => piece.edges.map(({ from, seam }) => [from, seam]);
    expect(ring(centreFront)).toEqual([
      ["centreNeck", "neck"],
      ["sideNeck", "shoulder"],
      ["princessTop", "princess"],
      ["princessBust", "princess"],
      ["princessWaist", "waist"],
      ["centreWaist", "centre"],
      ["centreBust", "centre"],
    ]);
    expect(ring(sideFront)).toEqual([
      ["princessTop", "shoulder"],
      ["shoulderTip", "armhole"],
      ["underarm", "side"],
      ["sideBust", "side"],
      ["sideWaist", "waist"],
      ["princessWaist", "princess"],
      ["princessBust", "princess"],
    ]);
    expect(placesOf(centreFront)).toEqual({
      princessTop: [80, 0],
      princessBust: [100, 120],
      princessWaist: [85, 300],
      centreWaist: [0, 300],
      centreBust: [0, 120],
      centreNeck: [0, 0],
      sideNeck: [60, 0],
      bustPoint: [100, 120],
      underBustCentre: [0, 200],
    });
    expect(placesOf(sideFront)).toEqual({
      princessTop: [120, 0],
      princessBust: [100, 120],
      princessWaist: [115, 300],
      shoulderTip: [160, 0],
      underarm: [200, 100],
      sideBust: [200, 120],
      sideWaist: [200, 300],
    });
    expect([centreFront.levelLines, sideFront.levelLines]).toEqual([
      [
        { level: "bust", along: { points: ["centreBust", "princessBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
      [
        { level: "bust", along: { points: ["princessBust", "sideBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
    ]);
    expect([centreFront.centreOnFold, sideFront.centreOnFold, centreFront.darts, sideFront.darts]).toEqual([
      true,
      false,
      [],
      [],
    ]);
  });

  it("brings the centre's bust line level with the bust point, and leaves other darts where they open", () => {
    const other = cornerPiece({
      corners: CORNERS.flatMap((corner): CornerOf[] =>
        corner[0] === "sideBust"
          ? [corner, ["sideDartInner", 200, 150, "side", "sideDart"], ["sideDartOuter", 200, 170, "side"]]
          : [corner],
      ),
      inside: {
        bustPoint: [100, 125],
        shoulderDartApex: [100, 125],
        waistDartApex: [100, 125],
        sideDartApex: [120, 150],
      },
      darts: [...front.darts, dartFor("sideDart", "side", "bustPoint")],
    });
    const { centreFront, sideFront } = splitAtBustPoint(other, "shoulderDart");
    expect(pointOf(centreFront, "centreBust")).toEqual(piecePoint(0, 125));
    expect(centreFront.points.underBustCentre).toBeUndefined();
    expect([centreFront.darts, sideFront.darts]).toEqual([[], [dartFor("sideDart", "side", "bustPoint")]]);
    expect(pointOf(sideFront, "sideDartApex")).toEqual(piecePoint(120, 150));
  });
});

describe("a direction turned at one end of an edge", () => {
  it("takes its control round the end, on a line one of a third", () => {
    const quarter = radians(Math.PI / 2);
    const start = edgeTurned(front, 7, "start", quarter).edges[7]?.curve;
    // From (200, 300) to (115, 300): a third of 85 along −x, a quarter on: −y.
    expect(start?.c1.x).toBeCloseTo(200, 9);
    expect(start?.c1.y).toBeCloseTo(300 - 85 / 3, 9);
    expect(start?.c2.x).toBeCloseTo(115 + 85 / 3, 9);
    const end = edgeTurned(front, 7, "end", quarter).edges[7]?.curve;
    expect(end?.c2.x).toBeCloseTo(115, 9);
    expect(end?.c2.y).toBeCloseTo(300 + 85 / 3, 9);
    expect(edgeTurned(front, 7, "end", radians(0))).toBe(front);
  });

  it("makes a corner smooth, half of it on each side, both as long as they were", () => {
    const bent = cornerPiece({
      corners: [
        ["sideWaist", 200, 0, "waist"],
        ["waistMiddle", 100, 20, "waist"],
        ["centreWaist", 0, 0, "centre"],
        ["centreNeck", 0, -100, "neck"],
      ],
      curves: {
        sideWaist: [
          [170, 30],
          [130, 30],
        ],
        waistMiddle: [
          [70, 30],
          [30, 30],
        ],
      },
    });
    const made = smoothedAt(bent, "waistMiddle");
    const [into, out] = [invariant(made.edges[0]?.curve, "into").c2, invariant(made.edges[1]?.curve, "out").c1];
    // A mirror image: level at the middle.
    expect(into.y).toBeCloseTo(20, 6);
    expect(out.y).toBeCloseTo(20, 6);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(seamByBezierJs(bent, "waist"), 3);
    const smooth = cornerPiece({
      corners: [
        ["sideWaist", 200, 0, "waist"],
        ["waistMiddle", 100, 20, "waist"],
        ["centreWaist", 0, 0, "centre"],
        ["centreNeck", 0, -100, "neck"],
      ],
      curves: {
        sideWaist: [
          [170, 30],
          [130, 20],
        ],
        waistMiddle: [
          [70, 20],
          [30, 30],
        ],
      },
    });
    expect(smoothedAt(smooth, "waistMiddle")).toBe(smooth);
  });
});

describe("the hinge of an armhole", () => {
  const armhole = (corners: readonly CornerOf[]): Piece =>
    cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ...corners,
        ["sideWaist", 200, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
    });

  it("lies a fifth down the edge from its touch, where that runs to the underarm", () => {
    const piece = armhole([
      ["shoulderTip", 150, 0, "armhole"],
      ["armholeTouch", 150, 100, "armhole"],
      ["underarm", 200, 100, "side"],
    ]);
    const hinged = withArmholeHinge(piece);
    expect(pointOf(hinged, "armholeHinge")).toEqual(piecePoint(160, 100));
    expect(hinged.points.armholeHinge?.level).toBe("shoulder");
    expect(withArmholeHinge(hinged)).toBe(hinged);
  });

  it("lies a third of the whole armhole up from the underarm elsewhere, over corners and past a dart's mouth", () => {
    const plain = armhole([
      ["shoulderTip", 150, 0, "armhole"],
      ["underarm", 150, 150, "side"],
    ]);
    expect(pointOf(withArmholeHinge(plain), "armholeHinge")).toEqual(piecePoint(150, 100));
    // 90 down, a mouth of 20, 30 down, 30 across: 50 of 150 up from the underarm, so 20 above the corner.
    const dart = armhole([
      ["shoulderTip", 150, 0, "armhole"],
      ["armholeDartInner", 150, 90, "armhole", "armholeDart"],
      ["armholeDartOuter", 150, 110, "armhole"],
      ["corner01", 150, 140, "armhole"],
      ["underarm", 180, 140, "side"],
    ]);
    expect(pointOf(withArmholeHinge(dart), "armholeHinge").y).toBeCloseTo(120, 9);
    const past = armhole([
      ["shoulderTip", 150, 0, "armhole"],
      ["armholeDartInner", 150, 120, "armhole", "armholeDart"],
      ["armholeDartOuter", 150, 140, "armhole"],
      ["underarm", 180, 140, "side"],
    ]);
    // A third of 150 is 50: 30 across, and past the mouth 20 up.
    expect(pointOf(withArmholeHinge(past), "armholeHinge").y).toBeCloseTo(100, 9);
  });

  it("is found where the ring begins with the armhole", () => {
    const first = cornerPiece({
      corners: [
        ["shoulderTip", 150, 0, "armhole"],
        ["underarm", 150, 150, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
        ["centreNeck", 0, 0, "neck"],
      ],
    });
    expect(pointOf(withArmholeHinge(first), "armholeHinge")).toEqual(piecePoint(150, 100));
  });

  it("is none where there is no armhole above the underarm", () => {
    const strap = armhole([["underarm", 150, 150, "side"]]);
    expect(withArmholeHinge(strap)).toBe(strap);
  });
});

describe("a turn about the hinge", () => {
  it.each([
    // R = 50, from (30, 40) beside the hinge: to 40 across is to (40, 30), to 14 to (14, 48).
    [10, -10],
    [-16, 8],
    [0, 0],
  ])("of a spread of %d mm drops by %d", (spread, drop) => {
    const found = hingeTurn(piecePoint(30, 40), piecePoint(0, 0), spread);
    if (!found.ok) throw new Error(found.failure.code);
    expect(found.value.drop).toBeCloseTo(drop, 9);
    expect(found.value.turn).toBeCloseTo(Math.atan2(40 + drop, 30 + spread) - Math.atan2(40, 30), 9);
  });

  it.each([
    [20.1, 20],
    [-80.1, -80],
  ])("reaches the circle's own sides and no further: %d mm", (spread, most) => {
    expect(hingeTurn(piecePoint(30, 40), piecePoint(0, 0), most).ok).toBe(true);
    const found = hingeTurn(piecePoint(30, 40), piecePoint(0, 0), spread);
    expect(found.ok ? 0 : found.failure.most).toBeCloseTo(most, 9);
  });
});

const straight = invariant(
  straightNest([{ label: "", front: { bust: 200, waist: 200, dart: 20 }, back: { bust: 200, waist: 200, dart: 20 } }])
    .sizes[0]?.pieces[0],
  "front",
);
/** The straight front with its darts reaching the bust point, without some of them. */
function openFront(...without: readonly string[]): Piece {
  const at = { at: piecePoint(95, 250), level: "bust" } as const;
  return {
    ...straight,
    points: { ...straight.points, bustLineInner: at, bustLineOuter: at, waistDartApex: at, sideDartApex: at },
    darts: straight.darts.map((dart) => (without.includes(dart.name) ? { ...dart, aimsAt: null } : dart)),
  };
}

describe("a front spread at darts that it does not have", () => {
  const bare = cornerPiece({
    corners: [
      ["centreNeck", 0, 80, "neck"],
      ["sideNeck", 70, 0, "shoulder"],
      ["shoulderTip", 170, 40, "armhole"],
      ["armholeTouch", 160, 140, "armhole"],
      ["underarm", 200, 200, "side"],
      ["sideBust", 200, 250, "side"],
      ["sideWaist", 200, 400, "waist"],
      ["centreWaist", 0, 400, "centre"],
      ["centreBust", 0, 250, "centre"],
    ],
    inside: { bustPoint: [95, 250], bustLineInner: [95, 250], bustLineOuter: [95, 250] },
  });

  it("gets one from the side 35 mm below its bust line, and one straight below the bust point", () => {
    const done = adjustFullBust(bare, 12);
    if (!done.ok) throw new Error(done.failure.code);
    const { piece, drop } = done.value;
    expect(gap(piece, "sideBust", "sideDartInner")).toBeCloseTo(35, 9);
    // The lower side part slides by the spread and the drop, the centre by the drop: the waist dart is as wide as the spread.
    expect(pointOf(piece, "sideDartOuter").x).toBeCloseTo(212, 9);
    expect(pointOf(piece, "sideDartOuter").y).toBeCloseTo(285 + drop, 9);
    expect(pointOf(piece, "waistDartOuter").x).toBeCloseTo(107, 9);
    expect(pointOf(piece, "waistDartInner").x).toBeCloseTo(95, 9);
    expect(pointOf(piece, "bustPoint").x).toBeCloseTo(101, 9);
    expect(pointOf(piece, "bustPoint").y).toBeCloseTo(250 + drop / 2, 9);
    expect(piece.darts.map(({ name, seam, aimsAt }) => [name, seam, aimsAt])).toEqual([
      ["sideDart", "side", "bustPoint"],
      ["waistDart", "waist", "bustPoint"],
    ]);
  });

  it("has it a third down a short side, or from the underarm where it has no bust line's end", () => {
    const short = cornerPiece({
      corners: [
        ["centreNeck", 0, 80, "neck"],
        ["sideNeck", 70, 0, "shoulder"],
        ["shoulderTip", 170, 40, "armhole"],
        ["armholeTouch", 160, 140, "armhole"],
        ["underarm", 200, 200, "side"],
        ["sideWaist", 200, 290, "waist"],
        ["centreWaist", 0, 290, "centre"],
        ["centreBust", 0, 250, "centre"],
      ],
      inside: { bustPoint: [95, 250], bustLineInner: [95, 250], bustLineOuter: [95, 250] },
    });
    const done = adjustFullBust(short, 12);
    if (!done.ok) throw new Error(done.failure.code);
    expect(gap(done.value.piece, "underarm", "sideDartInner")).toBeCloseTo(30, 9);
  });

  it("cannot be made smaller: neither dart could be sewn; and the smallest that can is told", () => {
    expect(adjustFullBust(bare, -5)).toEqual({ ok: false, failure: { code: "fullBust/dart-vanishes", most: 0 } });
    expect(adjustFullBust(bare, 2.9).ok).toBe(false);
  });

  it("keeps a dart that serves the bust, and opens the other beside one that does not", () => {
    const both = adjustFullBust(openFront(), 10);
    if (!both.ok) throw new Error(both.failure.code);
    expect(both.value.piece.darts).toHaveLength(2);
    expect(pointOf(both.value.piece, "waistDartOuter").x).toBeCloseTo(115, 9);
    expect(pointOf(both.value.piece, "waistDartInner").x).toBeCloseTo(85, 9);
    const { turn, drop, smoothed } = both.value;
    // Both mouth ends of the side dart lie apart by what the lower part slid, less what the upper part turned.
    expect(turn).toBeLessThan(0);
    expect(drop).toBeGreaterThan(0);
    expect(Math.abs(smoothed)).toBeGreaterThan(0);
  });

  it("opens none at the waist where a corner of it lies plumb below the bust point", () => {
    const cornered: Piece = {
      ...bare,
      points: { ...bare.points, waistMiddle: { at: piecePoint(95, 400), level: "bust" } },
      edges: bare.edges.flatMap((edge) =>
        edge.seam === "waist"
          ? [
              { ...edge, to: "waistMiddle" as const },
              { ...edge, from: "waistMiddle" as const },
            ]
          : [edge],
      ),
    };
    expect(adjustFullBust(cornered, 12)).toEqual({
      ok: false,
      failure: { code: "fullBust/out-of-reach", most: expect.closeTo(0, 5) },
    });
  });

  it("has no room for one where it has no side and no waist", () => {
    const none = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["shoulderTip", 150, 0, "armhole"],
        ["underarm", 150, 150, "underBust"],
        ["centreBust", 0, 150, "centre"],
      ],
      inside: { bustPoint: [95, 100], bustLineInner: [95, 100], bustLineOuter: [95, 100] },
    });
    expect(adjustFullBust(none, 5)).toEqual({ ok: false, failure: { code: "fullBust/out-of-reach", most: 0 } });
  });
});

describe("a wedge that a piece can take", () => {
  it("is one of a seam that it has, with a bust dart that leaves the centre where it is, or a princess seam", () => {
    expect([takesWedge(front, "neck"), takesWedge(front, "armhole"), takesWedge(front, "hem")]).toEqual([
      true,
      true,
      false,
    ]);
    expect(takesWedge(back, "neck")).toBe(false);
    const noAim = { ...front, darts: front.darts.map((dart) => ({ ...dart, aimsAt: null })) };
    expect(takesWedge(noAim, "armhole")).toBe(false);
    expect(takesWedge(splitAtBustPoint(front, "shoulderDart").centreFront, "neck")).toBe(true);
    expect(takesWedge(splitAtBustPoint(front, "shoulderDart").centreFront, "hem")).toBe(false);
  });

  it("is none without a dart", () => {
    const wedge = { seam: "armhole", amount: 5, point: piecePoint(100, 120) } as const;
    expect(closeWedgeIntoDart(back, wedge)).toEqual({ ok: false, failure: { code: "wedge/no-dart" } });
    const none = closeWedgeIntoDart(front, { ...wedge, seam: "hem" });
    expect(none).toEqual({ ok: false, failure: { code: "wedge/too-much", most: 0 } });
  });

  it("goes into the nearest dart by the angle of its chord, the edge shorter by its width", () => {
    const wedge = { seam: "armhole", amount: 5, point: piecePoint(100, 120) } as const;
    const done = closeWedgeIntoDart(front, wedge);
    if (!done.ok) throw new Error(done.failure.code);
    // From (160, 0) to (200, 100), the foot of the plumb from (100, 120): |−60 · 100 − 120 · 40| over the length away.
    const radius = 10_800 / Math.hypot(40, 100);
    const angle = 2 * Math.asin(2.5 / radius);
    expect(done.value.turn).toBeCloseTo(angle, 9);
    // Back to the shoulder dart is nearer than on to the waist's.
    expect(done.value.dart).toBe("shoulderDart");
    const { piece, trace } = done.value;
    expect(trace.hinges).toEqual([piecePoint(100, 120)]);
    expect(seamByBezierJs(piece, "armhole")).toBeCloseTo(Math.hypot(40, 100) - 5, 1);
    expect(
      Math.abs(openingAt(piece, "shoulderDart", piecePoint(100, 120)) - 2 * Math.atan(20 / 120) - angle),
    ).toBeLessThan(0.001);
    expect(seamByBezierJs(piece, "shoulder")).toBeCloseTo(60, 3);
    for (const seam of ["neck", "side", "waist", "centre"] as const)
      expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(front, seam), 9);
    expect(placesOf(piece)).toMatchObject({ centreNeck: [0, 0], underarm: [200, 100], waistDartApex: [100, 120] });
  });

  it("is taken by no edge under 40 mm, nor one under three times as long as it is wide", () => {
    const neck = (width: number, amount: number): boolean =>
      closeWedgeIntoDart(
        cornerPiece({
          corners: CORNERS.map((corner): CornerOf =>
            corner[0] === "centreNeck" ? ["centreNeck", 60 - width, 0, "neck"] : corner,
          ),
          inside: { bustPoint: [100, 120], shoulderDartApex: [100, 120], waistDartApex: [100, 120] },
          darts: front.darts,
        }),
        { seam: "neck", amount, point: piecePoint(40, 120) },
      ).ok;
    expect([neck(39.9, 1), neck(40.1, 1), neck(45, 14.9), neck(45, 15.1)]).toEqual([false, true, true, false]);
  });
});

describe("a gathered mouth", () => {
  const gathered: Piece = {
    ...front,
    darts: front.darts.map((dart) => (dart.name === "waistDart" ? { ...dart, gathered: true as const } : dart)),
  };

  it("is drawn up and not folded: only the length of its seam is seen to, half at each end", () => {
    const made = trueDartAgain(gathered, front, { ...dartFor("waistDart", "waist"), gathered: true }, 160);
    expect(placesOf(made)).toEqual({ ...placesOf(front), waistDartInner: [80, 300], waistDartOuter: [120, 300] });
    const over = truedOver(gathered, "waistDart", 160);
    expect(pointOf(over, "waistDartInner").x).toBeCloseTo(80, 3);
    expect(pointOf(over, "waistDartOuter").x).toBeCloseTo(120, 3);
    // Straight into the mouth: level.
    const curve = invariant(over.edges.find(({ to }) => to === "waistDartOuter")?.curve, "curve");
    expect(curve.c2.y).toBeCloseTo(300, 9);
    expect(curve.c2.x).toBeGreaterThan(120);
  });

  it("is left as it is by a cut across it", () => {
    const { piece } = moveBeyondCut(gathered, {
      into: { index: 6, t: 0.5 },
      outOf: { index: 10, t: 0.5 },
      motion: rigidMotion(piecePoint(200, 210), radians(0), 0, 10),
    });
    expect(placesOf(piece)).toMatchObject({
      waistDartInner: [85, 310],
      waistDartOuter: [115, 310],
      waistDartApex: [100, 120],
    });
  });
});

describe("a shoulder", () => {
  const set = setOf([front, back]);

  it("is found from the neck outwards, whole on both sides or not at all", () => {
    expect([shoulderPieces(set, "front"), shoulderPieces(set, "back")]).toEqual([["front"], ["back"]]);
    const { centreFront, sideFront } = splitAtBustPoint(front, "shoulderDart");
    const princess = setOf([centreFront, sideFront, back]);
    expect(shoulderPieces(princess, "front")).toEqual(["centreFront", "sideFront"]);
    expect([hasShoulders(set), hasShoulders(princess), hasShoulders(setOf([front]))]).toEqual([true, true, false]);
    expect(shoulderPieces(setOf([sideFront, back]), "front")).toEqual([]);
    expect(shoulderPieces(setOf([centreFront, back]), "front")).toEqual([]);
    expect(shoulderLength(princess, ["centreFront", "sideFront"])).toBeCloseTo(60, 9);
    expect([shoulderLength(set, ["front"]), shoulderLength(set, ["back"])]).toEqual([60, 100]);
    expect(underarmPieces(princess)).toEqual(["sideFront", "back"]);
    expect(underarmPieces(set)).toEqual(["front", "back"]);
  });

  it("falls by the direction in which it leaves the neck", () => {
    expect(shoulderFall(front)).toBe(0);
    expect(shoulderFall(straight)).toBeCloseTo(Math.atan(0.4), 12);
  });

  it("turns about the side neck as if its dart were shut", () => {
    const turn = radians(0.1);
    const turned = pieceIn(turnShoulder(set, "front", turn), "front");
    const round = (x: number): readonly [number, number] => [60 + (x - 60) * Math.cos(0.1), (x - 60) * Math.sin(0.1)];
    expect(pointOf(turned, "shoulderDartInner").x).toBeCloseTo(round(80)[0], 9);
    expect(pointOf(turned, "shoulderDartInner").y).toBeCloseTo(round(80)[1], 9);
    // Shut, the end of the shoulder lies 60 mm from the neck, turned on by the dart; the turn is about the same place shut.
    const shutAt = (piece: Piece): readonly [number, number] => {
      const angle = -2 * Math.atan(20 / 120);
      const { x, y } = pointOf(piece, "shoulderTip");
      return [
        100 + (x - 100) * Math.cos(angle) - (y - 120) * Math.sin(angle),
        120 + (x - 100) * Math.sin(angle) + (y - 120) * Math.cos(angle),
      ];
    };
    const [was, is] = [shutAt(front), shutAt(turned)];
    expect(is[0]).toBeCloseTo(60 + (was[0] - 60) * Math.cos(0.1) - was[1] * Math.sin(0.1), 6);
    expect(is[1]).toBeCloseTo((was[0] - 60) * Math.sin(0.1) + was[1] * Math.cos(0.1), 6);
    const behind = pieceIn(turnShoulder(set, "back", turn), "back");
    expect(placesOf(behind)).toEqual({
      ...placesOf(back),
      shoulderTip: [round(160)[0], round(160)[1]].map((one) => Math.round(one * 1e6) / 1e6),
    });
  });

  it("stands tilted at its end by the darts on the way", () => {
    expect(tiltAtTip(set, "back")).toBe(0);
    expect(tiltAtTip(set, "front")).toBeCloseTo(2 * Math.atan(20 / 120), 9);
  });

  it("leaves of the side what is sewn above the bust line, less the shortest edge", () => {
    // 20 mm, less 2 and a hair.
    expect(roomAtUnderarm(set)).toBeCloseTo(18, 3);
    const short = {
      ...front,
      points: { ...front.points, underarm: { at: piecePoint(200, 119), level: "bust" } },
    } as const;
    expect(roomAtUnderarm(setOf([short, back]))).toBe(0);
  });

  it("has its corners shifted alike, and an armhole brought to a length", () => {
    expect(placesOf(shiftCorners(front, ["shoulderTip", "underarm"], 3, -4))).toEqual({
      ...placesOf(front),
      shoulderTip: [163, -4],
      underarm: [203, 96],
    });
    const curved = cornerPiece({
      corners: CORNERS,
      curves: {
        shoulderTip: [
          [160, 40],
          [160, 100],
        ],
      },
    });
    const long = seamByBezierJs(curved, "armhole");
    expect(seamByBezierJs(fitUpperArmhole(curved, "shoulderTip", long - 1.5), "armhole")).toBeCloseTo(long - 1.5, 3);
    // No further than handles of 0.6 and 1.5.
    const curve = (length: number) =>
      invariant(fitUpperArmhole(curved, "shoulderTip", length).edges[4]?.curve, "curve").c1.y;
    expect(curve(500)).toBeCloseTo(60, 6);
    expect(curve(10)).toBeCloseTo(24, 6);
  });
});

describe("an armhole over its hinge", () => {
  const curved = cornerPiece({
    corners: [
      ["centreNeck", 0, 80, "neck"],
      ["sideNeck", 70, 0, "shoulder"],
      ["shoulderTip", 170, 40, "armhole"],
      ["armholeTouch", 160, 140, "armhole"],
      ["underarm", 200, 200, "side"],
      ["sideBust", 200, 250, "side"],
      ["sideWaist", 200, 400, "waist"],
      ["centreWaist", 0, 400, "centre"],
      ["centreBust", 0, 250, "centre"],
    ],
    curves: {
      shoulderTip: [
        [165, 70],
        [160, 110],
      ],
      armholeTouch: [
        [160, 170],
        [175, 195],
      ],
    },
    inside: { bustPoint: [95, 250], bustLineInner: [95, 250], bustLineOuter: [95, 250], underBustCentre: [0, 320] },
  });

  it("is drawn smooth where the side part turned, both handles sharing the turn and as long as they were", () => {
    const done = adjustFullBust(curved, 12);
    if (!done.ok) throw new Error(done.failure.code);
    const { piece, turn, drop, smoothed, trace } = done.value;
    expect(smoothed).toBeCloseTo(turn, 9);
    const hinged = withArmholeHinge(curved);
    const hinge = pointOf(hinged, "armholeHinge");
    const handles = (of: Piece) => {
      const into = invariant(of.edges.find(({ to }) => to === "armholeHinge")?.curve, "into").c2;
      const out = invariant(of.edges.find(({ from }) => from === "armholeHinge")?.curve, "out").c1;
      return {
        into: Math.atan2(hinge.y - into.y, hinge.x - into.x),
        out: Math.atan2(out.y - hinge.y, out.x - hinge.x),
        lengths: [Math.hypot(hinge.x - into.x, hinge.y - into.y), Math.hypot(out.x - hinge.x, out.y - hinge.y)],
      };
    };
    const [was, is] = [handles(hinged), handles(piece)];
    expect(is.into).toBeCloseTo(is.out, 9);
    expect(is.into).toBeCloseTo(was.into + turn / 2, 9);
    expect(is.lengths).toEqual(was.lengths.map((one) => expect.closeTo(one, 9)));
    expect(pointOf(piece, "armholeHinge")).toEqual(hinge);
    expect(pointOf(piece, "underBustCentre")).toEqual({ x: 0, y: expect.closeTo(320 + drop, 9) });
    expect(trace.hinges).toEqual([hinge]);
    expect(trace.cuts.map((cut) => cut.at(-1))).toEqual([hinge, piecePoint(95, 250), piecePoint(0, 250)]);
    expect(trace.parts).toHaveLength(3);
    expect(trace.area).toBeGreaterThan(0);
  });
});

describe("a dart drawn to its point and ended short of it", () => {
  it("has legs alike from there, its seam as long as before", () => {
    const drawn = drawnTo(front, "waistDart", piecePoint(110, 130));
    expect(pointOf(drawn, "waistDartApex")).toEqual(piecePoint(110, 130));
    expect(gap(drawn, "waistDartApex", "waistDartInner")).toBeCloseTo(gap(drawn, "waistDartApex", "waistDartOuter"), 3);
    expect(seamByBezierJs(drawn, "waist")).toBeCloseTo(170, 3);
    const ended = endedShortOf(front, "waistDart", piecePoint(100, 120), 30, 160);
    const apex = pointOf(ended, "waistDartApex");
    expect(apex.x).toBeCloseTo(100, 3);
    expect(apex.y).toBeCloseTo(150, 3);
    expect(seamByBezierJs(ended, "waist")).toBeCloseTo(160, 3);
    const whole = endedShortOf(front, "waistDart", piecePoint(100, 110), 0, 170);
    expect(pointOf(whole, "waistDartApex")).toEqual(piecePoint(100, 110));
  });
});
