/** Upper edges by hand: each shape by its corners and handles, ends moved along straight lines, clearances, limits, the gape. mm; proportions are common practice, no source. */
import { describe, expect, it } from "vitest";
import type { Neckline } from "../../../src/core/decisions/dress";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { isClear, nearestTo } from "../../../src/core/neckline/clearances";
import { drawShape, roundLine, type Between } from "../../../src/core/neckline/edgeShapes";
import { gapeOver, shapedAbout } from "../../../src/core/neckline/gapeOfEdge";
import { endMoved, neckRunOf, roomBeside } from "../../../src/core/neckline/neckRun";
import { redrawNeckline } from "../../../src/core/neckline/redrawNeckline";
import { curved, mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Dart, Edge, NamedPoint, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";

const close = (value: number): unknown => expect.closeTo(value, 6);
const spot = (x: number, y: number): unknown => ({ x: close(x), y: close(y) });
const degrees = (value: number) => radians((value * Math.PI) / 180);
const UP = degrees(-90);

describe("a shape", () => {
  /** 80 wide and 100 high, upright at its end. */
  const way: Between = {
    centre: piecePoint(0, 100),
    up: UP,
    end: piecePoint(80, 0),
    arriving: UP,
    bounds: null,
  };

  it("round has handles of 0.58 of the way to where its tangents meet", () => {
    expect(drawShape("scoop", way, false)).toEqual({
      curves: [{ a: way.centre, b: way.end, curve: { c1: spot(0.58 * 80, 100), c2: spot(80, 0.58 * 100) } }],
      corners: [],
    });
    // Coming in at 60°, its tangents meet 80 − 100 / tan 60° out, which is 22.3: too near the centre, so it comes from 0.65 × 80.
    const [curve] = drawShape("scoop", { ...way, arriving: degrees(-60) }, false).curves;
    expect(curve?.curve).toEqual({ c1: spot(0.58 * 52, 100), c2: spot(80 - 0.58 * 28, 58) });
    // At 80° they meet 62.4 out, and it stays as told.
    const out = 80 - 100 / Math.tan((80 * Math.PI) / 180);
    const [steep] = drawShape("scoop", { ...way, arriving: degrees(-80) }, false).curves;
    expect(steep?.curve).toEqual({ c1: spot(0.58 * out, 100), c2: spot(80 - 0.58 * (80 - out), 58) });
  });

  it("round comes in no steeper and no flatter than it may", () => {
    // From 0.65 of its width it would come in at 74.4°.
    const arriving = (first: number, last: number): number => {
      const [curve] = drawShape(
        "scoop",
        { ...way, arriving: degrees(-30), bounds: [degrees(first), degrees(last)] },
        false,
      ).curves;
      const from = curve?.curve?.c2 ?? way.centre;
      return Math.round((Math.atan2(-from.y, 80 - from.x) * 1800) / Math.PI) / 10;
    };
    expect(arriving(-60, -20)).toBe(-60);
    expect(arriving(-85, -80)).toBe(-80);
    expect(arriving(-90, 0)).toBe(-74.4);
  });

  it("round and too flat turns just below its end, and the wider at its foot the flatter", () => {
    // At 60° its tangents meet 22.265 out of the 52 there should be: 42.8 % of the way from a turn of 0.35 of its height.
    const out = 80 - 100 / Math.tan(Math.PI / 3);
    const handle = 35 + (out / 52) * (0.58 * (100 / Math.sin(Math.PI / 3)) - 35);
    const { curve } = roundLine({ ...way, arriving: degrees(-60) });
    expect(curve).toEqual({
      c1: spot(0.58 * out + 52 - out, 100),
      c2: spot(80 - handle * Math.cos(Math.PI / 3), handle * Math.sin(Math.PI / 3)),
    });
    // At 30° they meet behind the centre: the turn alone is left.
    expect(roundLine({ ...way, arriving: degrees(-30) }).curve).toEqual({
      c1: spot(52, 100),
      c2: spot(80 - 35 * Math.cos(Math.PI / 6), 35 * Math.sin(Math.PI / 6)),
    });
  });

  it("round of hardly any height has handles of a third", () => {
    const long = Math.hypot(80, 1) / 3;
    expect(roundLine({ ...way, end: piecePoint(80, 99), arriving: degrees(0) }).curve).toEqual({
      c1: spot(long, 100),
      c2: spot(80 - long, 99),
    });
    // Falling to its end its tangents meet beyond its width: it is round.
    expect(roundLine({ ...way, end: piecePoint(80, 120), arriving: degrees(90) }).curve).toEqual({
      c1: spot(0.58 * 80, 100),
      c2: spot(80, 120 - 0.58 * 20),
    });
  });

  it("of a V is straight, but hollow where it would meet the shoulder too aslant", () => {
    const line = { a: way.centre, b: way.end, curve: null };
    expect(drawShape("vee", way, false)).toEqual({ curves: [line], corners: [] });
    // It comes in at −51.34°.
    const within = (first: number, last: number) =>
      drawShape("vee", { ...way, bounds: [degrees(first), degrees(last)] }, false).curves;
    expect(within(-52, -51)).toEqual([line]);
    const third = Math.hypot(80, 100) / 3;
    const hollow = (angle: number) => [
      {
        ...line,
        curve: {
          c1: spot(80 / 3, 100 - 100 / 3),
          c2: spot(80 - third * Math.cos(angle), -third * Math.sin(angle)),
        },
      },
    ];
    expect(within(-40, 0)).toEqual(hollow((-40 * Math.PI) / 180));
    expect(within(-90, -70)).toEqual(hollow((-70 * Math.PI) / 180));
  });

  it("of a square has its corner below the end, where there is height for one", () => {
    expect(drawShape("square", way, false)).toEqual({
      curves: [
        { a: way.centre, b: spot(80, 100), curve: null },
        { a: spot(80, 100), b: way.end, curve: null },
      ],
      corners: [{ name: "neckCorner", at: spot(80, 100) }],
    });
    const corners = (x: number, y: number) =>
      drawShape("square", { ...way, end: piecePoint(x, y) }, false).corners.length;
    expect([corners(80, 97.9), corners(80, 98.1), corners(2.1, 0), corners(1.9, 0)]).toEqual([1, 0, 1, 0]);
    // Aslant where the shoulder wants it so: down from the end at 80° it is 100 / tan 80° nearer the centre.
    const [aslant] = drawShape("square", { ...way, bounds: [degrees(-80), degrees(-20)] }, false).corners;
    expect(aslant?.at).toEqual(spot(80 - 100 / Math.tan((80 * Math.PI) / 180), 100));
  });

  it("of a sweetheart rises from its peak by 0.45 of its width, or 0.6 of its height, and falls 8° to its corner", () => {
    const heart = (height: number) => drawShape("sweetheart", { ...way, end: piecePoint(80, 100 - height) }, false);
    const of = (height: number, rise: number) => {
      const corner = piecePoint(80, 100 - rise);
      const span = Math.hypot(80, rise);
      const steep = Math.atan((2.4 * rise) / 80);
      const falls = (8 * Math.PI) / 180;
      return {
        curves: [
          {
            a: way.centre,
            b: spot(corner.x, corner.y),
            curve: {
              c1: spot(0.4 * span * Math.cos(steep), 100 - 0.4 * span * Math.sin(steep)),
              c2: spot(80 - 0.45 * span * Math.cos(falls), corner.y - 0.45 * span * Math.sin(falls)),
            },
          },
          { a: spot(corner.x, corner.y), b: piecePoint(80, 100 - height), curve: null },
        ],
        corners: [{ name: "neckCorner", at: spot(corner.x, corner.y) }],
      };
    };
    expect(heart(100)).toEqual(of(100, 36));
    expect(heart(40)).toEqual(of(40, 24));
  });

  it("of a sweetheart to a strap is one full curve, 24° off the straight at both ends", () => {
    const third = Math.hypot(80, 100) / 3;
    const line = Math.atan2(-100, 80);
    const off = (24 * Math.PI) / 180;
    const full = {
      curves: [
        {
          a: way.centre,
          b: way.end,
          curve: {
            c1: spot(third * Math.cos(line - off), 100 + third * Math.sin(line - off)),
            c2: spot(80 - third * Math.cos(line + off), -third * Math.sin(line + off)),
          },
        },
      ],
      corners: [],
    };
    expect(drawShape("sweetheart", way, true)).toEqual(full);
    expect(drawShape("sweetheart", { ...way, end: piecePoint(80, 99) }, false).corners).toEqual([]);
  });
});

/** Neck straight from the centre to (70, 0), a shoulder 130 long falling 5 in 13, an armhole, a side, a waist at 420. */
function plain(name: PieceName, depth: number, more: Partial<Piece> = {}): Piece {
  return {
    name,
    points: {
      centreNeck: named(0, depth, "neck"),
      sideNeck: named(70, 0, "neck"),
      shoulderTip: named(190, 50, "shoulder"),
      underarm: named(230, 220, "underarm"),
      sideWaist: named(220, 420, "waist"),
      centreWaist: named(0, 420, "waist"),
    },
    edges: [
      straight("centreNeck", "sideNeck", "neck"),
      straight("sideNeck", "shoulderTip", "shoulder"),
      straight("shoulderTip", "underarm", "armhole"),
      straight("underarm", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
    ...more,
  };
}

const runOf = (piece: Piece) => invariant(neckRunOf(piece), "neck");

/** The centre in two edges, 100 and 240 long, and the shoulder in 39 and 91. */
const bent = (() => {
  const piece = plain("front", 80);
  return {
    ...piece,
    points: { ...piece.points, bend000: named(0, 180, "neck"), bend001: named(106, 15, "shoulder") },
    edges: [
      ...piece.edges.slice(0, 1),
      straight("sideNeck", "bend001", "shoulder"),
      straight("bend001", "shoulderTip", "shoulder"),
      ...piece.edges.slice(2, 5),
      straight("centreWaist", "bend000", "centre"),
      straight("bend000", "centreNeck", "centre"),
    ],
  };
})();

describe("the run of an edge", () => {
  it("goes from the centre to shoulder, strap or princess seam, over bends and its own corner, and over no dart", () => {
    const piece = plain("front", 80);
    expect(neckRunOf(piece)).toEqual({ piece, end: "sideNeck", edges: [piece.edges[0]] });
    const through = (name: PointName, seam: Edge["seam"] = "neck") => {
      const edges = [straight("centreNeck", name, seam), straight(name, "sideNeck", "neck"), ...piece.edges.slice(1)];
      return neckRunOf({ ...piece, points: { ...piece.points, [name]: named(20, 60, "neck") }, edges })?.edges.length;
    };
    expect([through("bend000"), through("neckCorner"), through("sideBust"), through("bend000", "centre")]).toEqual([
      2,
      2,
      undefined,
      undefined,
    ]);
    const darted = [
      straight("centreNeck", "bend000", "neck"),
      mouth("bend000", "sideNeck", "neck", "waistDart"),
      ...piece.edges.slice(1),
    ];
    expect([neckRunOf({ ...piece, edges: darted }), neckRunOf(undefined)]).toEqual([null, null]);
    expect(neckRunOf({ ...piece, edges: piece.edges.slice(1) })).toBeNull();
  });

  it("begins wherever the ring does", () => {
    const edges = [...bent.edges.slice(3), ...bent.edges.slice(0, 3)];
    const turned = { ...bent, edges };
    expect(roomBeside(runOf(turned), "centre")).toEqual({ length: 340, to: "centreWaist" });
    expect(roomBeside(runOf(turned), "shoulder")).toEqual({ length: close(130), to: "shoulderTip" });
  });

  it("has room beside it as far as the next corner, or a dart", () => {
    expect(roomBeside(runOf(bent), "centre")).toEqual({ length: 340, to: "centreWaist" });
    const darted = {
      ...bent,
      edges: bent.edges.map((edge) =>
        edge.from === "centreWaist" ? { ...edge, mouthOf: "waistDart" as const } : edge,
      ),
    };
    expect(roomBeside(runOf(darted), "centre")).toEqual({ length: 100, to: "bend000" });
    const none = {
      ...bent,
      edges: bent.edges.map((edge) => ({ ...edge, ...(edge.seam === "centre" ? { seam: "side" as const } : {}) })),
    };
    expect(roomBeside(runOf(none), "centre")).toEqual({ length: 0, to: null });
    expect(endMoved(runOf(none), "centre", 10)).toBeNull();
  });

  it("is moved into the centre: the bends that it passes are gone", () => {
    const moved = (by: number) => {
      const end = endMoved(runOf(bent), "centre", by);
      return end === null ? null : [end.at.y, end.kept.map(({ from, to }) => `${from} ${to}`), end.gone];
    };
    const both = ["bend000 centreNeck", "centreWaist bend000"];
    const one = ["centreWaist centreNeck"];
    expect([moved(0), moved(30), moved(98)]).toEqual([
      [80, both, []],
      [close(110), both, []],
      [close(178), both, []],
    ]);
    // Less than 2 is left of the upper edge: the lower one is drawn on to there.
    expect(moved(98.5)).toEqual([close(178.5), one, ["bend000"]]);
    expect([moved(100), moved(150)]).toEqual([
      [close(180), one, ["bend000"]],
      [close(230), one, ["bend000"]],
    ]);
    expect([moved(338), moved(338.5)]).toEqual([[close(418), one, ["bend000"]], null]);
  });

  it("is moved along the shoulder, 5 down for 12 out", () => {
    const moved = (by: number) => {
      const end = endMoved(runOf(bent), "shoulder", by);
      return end === null
        ? null
        : [
            end.at.x,
            end.at.y,
            Math.round((end.direction * 1800) / Math.PI) / 10,
            end.kept.map(({ from, to }) => [from, to]),
          ];
    };
    const rest = ["bend001", "shoulderTip"];
    expect(moved(13)).toEqual([close(82), close(5), 22.6, [["sideNeck", "bend001"], rest]]);
    expect(moved(52)).toEqual([close(118), close(20), 22.6, [["sideNeck", "shoulderTip"]]]);
    expect(moved(38)).toEqual([close(70 + (38 * 12) / 13), close((38 * 5) / 13), 22.6, [["sideNeck", "shoulderTip"]]]);
    // Beyond its end it goes straight on.
    expect(moved(-13)).toEqual([close(58), close(-5), 22.6, [["sideNeck", "bend001"], rest]]);
    expect(endMoved(runOf(bent), "shoulder", 13)?.replaced).toHaveLength(2);
  });

  it("is raised with the handle of a curve beside it, which keeps its way there", () => {
    const piece = plain("front", 80);
    const arched = {
      ...piece,
      edges: [
        ...piece.edges.slice(0, 1),
        curved("sideNeck", "shoulderTip", "shoulder", piecePoint(110, 30), piecePoint(150, 45)),
        ...piece.edges.slice(2, 5),
        curved("centreWaist", "centreNeck", "centre", piecePoint(-3, 300), piecePoint(0, 180)),
      ],
    };
    // Out by 3 for 4 across; the far handle stays.
    const shoulder = invariant(endMoved(runOf(arched), "shoulder", -10), "end");
    expect(shoulder.at).toEqual(spot(62, -6));
    expect(shoulder.kept.map(({ curve }) => curve)).toEqual([{ c1: spot(102, 24), c2: piecePoint(150, 45) }]);
    const centre = invariant(endMoved(runOf(arched), "centre", -10), "end");
    expect(centre.at).toEqual(spot(0, 70));
    expect(centre.kept.map(({ curve }) => curve)).toEqual([{ c1: piecePoint(-3, 300), c2: spot(0, 170) }]);
    expect(endMoved(runOf(piece), "centre", -10)?.kept).toEqual([{ ...piece.edges[5], curve: null }]);
  });
});

describe("an edge keeps clear", () => {
  const line = (...places: readonly (readonly [number, number])[]): readonly PiecePoint[] =>
    places.map(([x, y]) => piecePoint(x, y));

  it("by the nearest of its stretches", () => {
    expect(nearestTo(line([0, 0], [100, 0], [100, 100]), piecePoint(60, 30))).toBe(30);
    expect(nearestTo(line([0, 0], [100, 0], [100, 100]), piecePoint(90, 30))).toBe(10);
    expect(nearestTo(line([0, 0], [100, 0]), piecePoint(130, 40))).toBe(50);
  });

  const level = (y: number) => line([0, y], [60, y], [70, 0]);

  it("of the bust point by 30, of a princess seam's too", () => {
    const about = (name: "bustPoint" | "princessBust", y: number) => {
      const piece = plain("front", 80);
      return isClear({ ...piece, points: { ...piece.points, [name]: named(40, 200, "bust") } }, level(y));
    };
    expect([about("bustPoint", 170), about("bustPoint", 170.1)]).toEqual([true, false]);
    expect([about("princessBust", 170), about("princessBust", 170.1)]).toEqual([true, false]);
  });

  it("of a dart by 12, and crosses none of its legs", () => {
    const dart: Dart = {
      name: "waistDart",
      seam: "waist",
      inner: "waistDartInner",
      outer: "waistDartOuter",
      apex: "waistDartApex",
      aimsAt: null,
    };
    const beside = (y: number, apex = 200) => {
      const piece = plain("front", 80);
      const points = {
        ...piece.points,
        waistDartApex: named(40, apex, "bust"),
        waistDartInner: named(30, 420, "waist"),
        waistDartOuter: named(50, 420, "waist"),
      };
      return isClear({ ...piece, points, darts: [dart] }, level(y));
    };
    expect([beside(188), beside(188.1)]).toEqual([true, false]);
    // Far from all of its ends: across its legs.
    expect(beside(310)).toBe(false);
  });

  it("of a seam by 20, of a princess seam by 12; not of those that it ends at, nor of one that it crosses", () => {
    const above = (seam: Edge["seam"], y: number, crossed: Edge["seam"] | null = null) => {
      const piece = plain("front", 80);
      const edges = piece.edges.map((edge) => (edge.from === "sideWaist" ? { ...edge, seam } : edge));
      return isClear({ ...piece, edges }, level(y), crossed);
    };
    expect([above("waist", 400), above("waist", 400.1)]).toEqual([true, false]);
    expect([above("princess", 408), above("princess", 408.1), above("princess", 415, "princess")]).toEqual([
      true,
      false,
      true,
    ]);
    expect([above("shoulder", 415), above("neck", 415), above("centre", 415), above("strap", 415)]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    // Near its own end it may come as near as the armhole's top lies.
    const toTip = line([0, 80], [150, 60], [180, 50 - 50 / 12]);
    expect(isClear(plain("front", 80), toTip)).toBe(true);
    expect(isClear(plain("front", 80), line([0, 80], [190, 60], [130, 20]))).toBe(false);
  });
});

describe("a redrawn edge", () => {
  const pieces = (more: Partial<Piece> = {}): PieceSet => setOf([plain("front", 80, more), plain("back", 20)]);
  const redraw = (neckline: Neckline, more: Partial<Piece> = {}) => redrawNeckline(pieces(more), neckline);
  const made = (neckline: Neckline, more: Partial<Piece> = {}) => {
    const done = redraw(neckline, more);
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    return { ...done.value, front: invariant(done.value.pieces.front, "front"), gape: done.value.front };
  };

  it("has its corners by design noted, and those of the pattern there forgotten", () => {
    const drawnTurns = { centreNeck: 7, sideNeck: 5, underarm: 3 };
    // From straight up the centre to (70, −80 − 40): atan(70 / 120).
    const turn = (Math.atan2(70, 120) * 180) / Math.PI;
    expect(made({ shape: "vee", deeper: 40 }).front.drawnTurns).toEqual({ centreNeck: close(turn) });
    expect(made({ shape: "vee", deeper: 40 }, { drawnTurns }).front.drawnTurns).toEqual({
      centreNeck: close(turn),
      underarm: 3,
    });
    expect(made({ shape: "scoop", deeper: 40 }, { drawnTurns }).front.drawnTurns).toEqual({ underarm: 3 });
    expect("drawnTurns" in made({ shape: "scoop", deeper: 40 }).front).toBe(false);
    // A right angle cut into the cloth.
    expect(made({ shape: "square", deeper: 40 }).front.drawnTurns).toEqual({ neckCorner: close(-90) });
    const heart = made({ shape: "sweetheart", deeper: 40 }).front;
    expect(Object.keys(heart.drawnTurns ?? {}).toSorted()).toEqual(["centreNeck", "neckCorner"]);
  });

  it("tells how long the edge was and is, on the half", () => {
    const { before, after, gape, back, under, pieces: drawn } = made({ shape: "vee", deeper: 40 });
    expect(before).toBeCloseTo(Math.hypot(70, 80) + Math.hypot(70, 20), 6);
    // The back's is turned at the shoulder to meet the front's.
    expect(after).toBeCloseTo(Math.hypot(70, 120) + seamByBezierJs(invariant(drawn.back, "back"), "neck"), 3);
    expect(after).toBeGreaterThan(Math.hypot(70, 120) + Math.hypot(70, 20));
    expect([gape, back, under]).toEqual([{ gape: 0, pinched: 0 }, { gape: 0, pinched: 0 }, pieces()]);
  });

  it("leaves 25 of the shoulder, 15 of the centre, and is raised by 20", () => {
    const at = (neckline: Omit<Neckline, "shape">) => {
      const done = redraw({ shape: "vee", ...neckline });
      if (done.ok) return null;
      const { failure } = done;
      // Told to a quarter of a millimetre, on the side that works.
      return "most" in failure ? { ...failure, most: Math.ceil(4 * failure.most - 1e-6) / 4 } : failure;
    };
    expect([at({ wider: 105 }), at({ deeper: -20 }), at({ wider: -20 }), at({ backDeeper: -20 })]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(at({ wider: 106 })).toEqual({ code: "neckline/too-wide", most: 105 });
    expect(at({ deeper: -21 })).toEqual({ code: "neckline/too-high", most: 20 });
    expect(at({ backDeeper: -21 })).toEqual({ code: "neckline/too-high", most: 20 });
    // 20 above the waist, which lies 340 and 400 below the edge.
    expect(at({ deeper: 330 })).toEqual({ code: "neckline/too-deep", most: 320, of: "front" });
    expect(at({ backDeeper: 390 })).toEqual({ code: "neckline/too-deep", most: 380, of: "back" });
    expect(at({ deeper: 40, wider: 106 })).toEqual({ code: "neckline/too-wide", most: 105 });
  });

  it("leaves the very same back where it meets that as the pattern's did", () => {
    const behind = plain("back", 20);
    // It comes up to the shoulder at 74°, at a corner of 83°; a shallow scoop meets that in a line.
    const back = {
      ...behind,
      edges: [
        curved("centreNeck", "sideNeck", "neck", piecePoint(40, 20), piecePoint(66, 14)),
        ...behind.edges.slice(1),
      ],
    };
    const kept = redrawNeckline(setOf([plain("front", 25), back]), { shape: "scoop" });
    expect(kept.ok && kept.value.pieces.back).toBe(back);
    const deeper = redrawNeckline(setOf([plain("front", 25), back]), { shape: "scoop", backDeeper: 10 });
    expect(deeper.ok && deeper.value.pieces.back?.points.centreNeck?.at).toEqual(spot(0, 30));
  });

  it("that has to begin higher than the pattern's own is told by how much", () => {
    // 25 below the line from (0, 80) to (70, 0): 20 higher at the centre it is 32 off.
    const near = plain("front", 80);
    const piece = { ...near, points: { ...near.points, bustPoint: named(53.8, 56.5, "bust") } };
    const at = (deeper: number) => redrawNeckline(setOf([piece, plain("back", 20)]), { shape: "vee", deeper });
    const refused = at(0);
    if (refused.ok || refused.failure.code !== "neckline/too-deep") throw new Error("too deep");
    expect(refused.failure.of).toBe("front");
    expect(refused.failure.most).toBeLessThan(0);
    expect(refused.failure.most).toBeGreaterThan(-20);
    expect([at(refused.failure.most).ok, at(refused.failure.most + 0.5).ok]).toEqual([true, false]);
  });

  it("is not to be had where there is none, or a front without a back", () => {
    const refused = { ok: false, failure: { code: "neckline/not-on-style" } };
    expect(redrawNeckline(setOf([plain("front", 80)]), { shape: "vee" })).toEqual(refused);
    expect(redrawNeckline(setOf([plain("back", 80)]), { shape: "vee" })).toEqual(refused);
    const kept = redrawNeckline(setOf([plain("back", 80)]), { shape: "asPattern" });
    expect(kept).toMatchObject({ ok: true, value: { before: 0, after: 0 } });
  });
});

describe("the gape", () => {
  it("is counted by how far each edge is in each direction; beside its end the pattern's end counts", () => {
    const line = (y: number) => [piecePoint(-50, y), piecePoint(0, y), piecePoint(50, y)];
    // Level lines 100 and 60 above the bust point: the nearer spans 2 atan (50/60), the farther ends at atan (50/100).
    const half = Math.atan(50 / 60);
    const steps = 20_000;
    const mean =
      Array.from({ length: steps }, (_, i) => ((i + 0.5) / steps) * half).reduce((sum, off) => {
        const own = off <= Math.atan(0.5) ? 100 / Math.cos(off) : Math.hypot(50, 100);
        return sum + Math.max(0, own - 60 / Math.cos(off));
      }, 0) / steps;
    const gape = gapeOver(piecePoint(0, 0), radians(0.5), line(-100), line(-60));
    expect(gape).toBeCloseTo((0.5 * 2 * half * mean) / (2 * Math.PI), 2);
    expect(gapeOver(piecePoint(0, 0), radians(0.5), line(-100).toReversed(), line(-60).toReversed())).toBeCloseTo(
      gape,
      9,
    );
    expect(gapeOver(piecePoint(0, 0), radians(0.5), line(-100), [])).toBe(0);
  });

  const dart = (name: "waistDart" | "sideDart", aimsAt: Dart["aimsAt"] = "bustPoint"): Dart => ({
    name,
    seam: "waist",
    inner: `${name}Inner`,
    outer: `${name}Outer`,
    apex: `${name}Apex`,
    aimsAt,
  });
  const darted = (mouths: readonly number[], more: Partial<Piece["points"]> = {}): Piece => {
    const names = ["waistDart", "sideDart"] as const;
    return plain("front", 80, {
      points: {
        bustPoint: named(100, 200, "bust"),
        ...Object.fromEntries(
          mouths.flatMap((wide, at): readonly (readonly [string, NamedPoint])[] => [
            [`${names[at] ?? ""}Inner`, named(100 - wide / 2, 300, "waist")],
            [`${names[at] ?? ""}Outer`, named(100 + wide / 2, 300, "waist")],
          ]),
        ),
        ...more,
      },
      darts: mouths.map((_, at) => dart(names[at] ?? "waistDart")),
    });
  };

  it("is shaped by all that the darts take up about the bust point, to a quarter of a turn", () => {
    const shaped = (piece: Piece) => shapedAbout(piece, setOf([piece]));
    // 20 and 10 wide, 100 from it.
    expect(shaped(darted([20]))).toBeCloseTo(2 * Math.atan(0.1), 9);
    expect(shaped(darted([20, 10]))).toBeCloseTo(2 * Math.atan(0.1) + 2 * Math.atan(0.05), 9);
    expect(shaped(darted([200, 200]))).toBeCloseTo(Math.PI / 2, 9);
    expect([shaped(darted([])), shaped(plain("front", 80))]).toEqual([0, 0]);
    const other = { ...darted([20]), darts: [dart("waistDart", null)] };
    expect(shaped(other)).toBe(0);
  });

  it("is shaped by what a princess seam takes up: a turn less both its corners", () => {
    const seam = (name: PieceName, top: readonly [number, number], foot: readonly [number, number]): Piece =>
      plain(name, 80, {
        points: {
          bustPoint: named(100, 200, "bust"),
          princessBust: named(100, 200, "bust"),
          princessTop: named(...top, "shoulder"),
          princessWaist: named(...foot, "waist"),
        },
      });
    // Each leans away from the other by 10 in 100 above or below.
    const lean = Math.atan(0.1);
    const shaped = (centre: Piece, side: Piece) => shapedAbout(centre, setOf([centre, side]));
    const upright = seam("centreFront", [100, 100], [100, 300]);
    expect(shaped(upright, seam("sideFront", [110, 100], [110, 300]))).toBeCloseTo(2 * lean, 9);
    expect(shaped(seam("centreFront", [90, 100], [90, 300]), seam("sideFront", [110, 100], [100, 300]))).toBeCloseTo(
      3 * lean,
      9,
    );
    expect(shaped(upright, seam("sideFront", [90, 100], [90, 300]))).toBe(0);
    expect(shapedAbout(upright, setOf([upright]))).toBe(0);
  });
});
