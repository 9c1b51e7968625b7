/**
 * A quarter of a fitted skirt and the pieces that it is cut as, on figures that are read off squared paper: darts of 3, 4 and 5,
 * panels that lean out by 7 in 25.
 */
import { Bezier } from "bezier-js";
import { describe, expect, it } from "vitest";
import { lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { quarterPieces, type QuarterCut } from "../../../src/core/skirts/quarterPieces";
import {
  alongSide,
  drawQuarter,
  hemLine,
  panelLine,
  sideLine,
  widthAt,
  type Quarter,
  type QuarterAsked,
} from "../../../src/core/skirts/skirtQuarter";
import { radians } from "../../../src/core/units";

type Place = readonly [number, number];
const p = ([x, y]: Place) => piecePoint(x, y);
const near = ([x, y]: Place) => ({ x: expect.closeTo(x, 6) as number, y: expect.closeTo(y, 6) as number });
const straight = (from: Place, to: Place) => lineEdge(p(from), p(to));
const NONE = radians(0);
/** 7, 24 and 25. */
const LEAN = radians(Math.atan2(7, 24));

const ASKED: QuarterAsked = {
  waist: 120,
  suppression: 100,
  atSide: 20,
  places: [60],
  takenBy: "darts",
  dartLength: 80,
  hipDepth: 200,
  sideLength: 600,
  centreLength: 600,
  flare: NONE,
  panelFlare: NONE,
};
/** One dart, 80 wide and 80 long, in the middle of the waist of 200; the side leans out by 20. */
const QUARTER: Quarter = {
  asked: ASKED,
  gaps: [{ x: 100, intake: 80, y: 0, lean: radians(Math.atan2(1, 2)) }],
  waist: [straight([0, 0], [60, 0]), straight([140, 0], [200, 0])],
  side: straight([200, 0], [220, 200]),
  hip: p([220, 200]),
  sideHem: p([220, 600]),
  centreLength: 600,
  atSide: 20,
};
const CUT: QuarterCut = { side: "front", shaping: "darts", centreOnFold: true };

const pointsOf = ({ points }: Piece) =>
  Object.fromEntries(Object.entries(points).map(([name, { at, level }]) => [name, [at.x, at.y, level]]));
const placed = (of: Readonly<Record<string, readonly [number, number, string]>>) =>
  Object.fromEntries(
    Object.entries(of).map(([name, [x, y, level]]) => [name, [expect.closeTo(x, 6), expect.closeTo(y, 6), level]]),
  );
const edge = (from: string, to: string, seam: string, more: object = {}) => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf: null,
  ...more,
});

describe("a quarter with darts", () => {
  it("is one piece, its darts down to their length, straight from the hip to the hem", () => {
    const [piece, ...more] = quarterPieces(QUARTER, CUT);
    expect(more).toEqual([]);
    expect(piece).toMatchObject({ name: "skirtFront", centreOnFold: true });
    expect(piece === undefined ? null : pointsOf(piece)).toEqual(
      placed({
        centreWaist: [0, 0, "waist"],
        waistDartInner: [60, 0, "waist"],
        waistDartOuter: [140, 0, "waist"],
        waistDartApex: [100, 80, "hip"],
        sideWaist: [200, 0, "waist"],
        sideHip: [220, 200, "hip"],
        sideHem: [220, 600, "hip"],
        centreHem: [0, 600, "hip"],
        centreHip: [0, 200, "hip"],
      }),
    );
    expect(piece?.edges).toEqual([
      edge("centreWaist", "waistDartInner", "waist"),
      edge("waistDartInner", "waistDartOuter", "waist", { mouthOf: "waistDart" }),
      edge("waistDartOuter", "sideWaist", "waist"),
      edge("sideWaist", "sideHip", "side"),
      edge("sideHip", "sideHem", "side"),
      edge("sideHem", "centreHem", "hem"),
      edge("centreHem", "centreHip", "centre"),
      edge("centreHip", "centreWaist", "centre"),
    ]);
    expect(piece?.darts).toEqual([
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
      },
    ]);
    expect(piece?.levelLines).toEqual([
      { level: "waist", along: { seam: "waist" } },
      { level: "hip", along: { points: ["centreHip", "sideHip"] } },
    ]);
  });

  it("is pleated 60 deep in place of them, and folded nowhere below", () => {
    const [piece] = quarterPieces(QUARTER, { side: "back", shaping: "pleats", centreOnFold: false });
    expect(piece).toMatchObject({ name: "skirtBack", centreOnFold: false });
    expect(piece?.points.waistDartApex?.at).toEqual(near([100, 60]));
    expect(piece?.darts.map(({ gathered }) => gathered)).toEqual([true]);
    expect(quarterPieces(QUARTER, CUT)[0]?.darts[0]).not.toHaveProperty("gathered");
  });

  it("without any is as it is drawn, however it is to be shaped", () => {
    const plain: Quarter = { ...QUARTER, gaps: [], waist: [straight([0, 0], [200, 0])] };
    for (const shaping of ["darts", "pleats", "shut"] as const) {
      const [piece, ...more] = quarterPieces(plain, { ...CUT, shaping });
      expect(more).toEqual([]);
      expect(piece?.darts).toEqual([]);
      expect(piece?.edges[0]).toEqual(edge("centreWaist", "sideWaist", "waist"));
    }
    const panelled = quarterPieces({ ...plain, asked: { ...ASKED, takenBy: "panel" } }, CUT);
    expect(panelled.map(({ name }) => name)).toEqual(["skirtFront"]);
  });
});

/** Turned about a place by as much as a dart of 80 by 80 takes in: 3, 4 and 5, upwards at its right. */
const shutAbout =
  ([cx, cy]: Place) =>
  ([x, y]: Place): Place => [cx + 0.6 * (x - cx) + 0.8 * (y - cy), cy - 0.8 * (x - cx) + 0.6 * (y - cy)];
/** By half of it. */
const halfShutAbout =
  ([cx, cy]: Place) =>
  ([x, y]: Place): Place => [
    cx + (2 * (x - cx) + (y - cy)) / Math.sqrt(5),
    cy + (2 * (y - cy) - (x - cx)) / Math.sqrt(5),
  ];
const span = ([ax, ay]: Place, [bx, by]: Place): number => Math.hypot(bx - ax, by - ay);
/** From a place a third of the way to another, in a direction that is told by its cosine and sine. */
const third = (from: Place, to: Place, [cos, sin]: Place, way: 1 | -1): Place => {
  const by = (way * span(from, to)) / 3;
  return way === 1 ? [from[0] + by * cos, from[1] + by * sin] : [to[0] + by * cos, to[1] + by * sin];
};

describe("a quarter whose darts are shut", () => {
  it("is turned about their ends, outside of them, and has its hem through the middle of the arc that opens", () => {
    const [piece] = quarterPieces(QUARTER, { ...CUT, shaping: "shut" });
    // (140, 0) comes to (60, 0); (200, 0) to (96, -48).
    const middle = halfShutAbout([100, 80])([100, 600]);
    const hem: Place = [588, 296];
    expect(piece === undefined ? null : pointsOf(piece)).toEqual(
      placed({
        centreWaist: [0, 0, "waist"],
        bend000: [60, 0, "waist"],
        sideWaist: [96, -48, "waist"],
        sideHip: [268, 56, "hip"],
        sideHem: [...hem, "hip"],
        bend001: [...middle, "hip"],
        centreHem: [0, 600, "hip"],
        centreHip: [0, 200, "hip"],
      }),
    );
    expect(piece?.darts).toEqual([]);
    const [cos, sin] = [2 / Math.sqrt(5), -1 / Math.sqrt(5)];
    expect(piece?.edges).toEqual([
      edge("centreWaist", "bend000", "waist"),
      edge("bend000", "sideWaist", "waist"),
      edge("sideWaist", "sideHip", "side"),
      edge("sideHip", "sideHem", "side"),
      edge("sideHem", "bend001", "hem", {
        curve: {
          c1: near(third(middle, hem, [0.6, -0.8], -1)),
          c2: near(third(middle, hem, [cos, sin], 1)),
        },
      }),
      edge("bend001", "centreHem", "hem", {
        curve: {
          c1: near(third([0, 600], middle, [cos, sin], -1)),
          c2: near(third([0, 600], middle, [1, 0], 1)),
        },
      }),
      edge("centreHem", "centreHip", "centre"),
      edge("centreHip", "centreWaist", "centre"),
    ]);
  });

  it("arrives at a side that leans out by its flare less", () => {
    const leaning: Quarter = { ...QUARTER, asked: { ...ASKED, flare: LEAN } };
    const [piece] = quarterPieces(leaning, { ...CUT, shaping: "shut" });
    const middle = halfShutAbout([100, 80])([100, 600]);
    // Twice the half angle and the lean: cos (a + b), sin (a + b).
    const [cos, sin] = [0.6 * 0.96 - 0.8 * 0.28, -(0.8 * 0.96 + 0.6 * 0.28)];
    const hem = piece?.edges.find(({ from }) => from === "sideHem");
    expect(hem?.curve?.c1).toEqual(near(third(middle, [588, 296], [cos, sin], -1)));
  });

  it("of two has what lies outside of both turned by both, the outer one first", () => {
    const two: Quarter = {
      ...QUARTER,
      gaps: [
        { x: 100, intake: 80, y: 0, lean: NONE },
        { x: 300, intake: 80, y: 0, lean: NONE },
      ],
      waist: [straight([0, 0], [60, 0]), straight([140, 0], [260, 0]), straight([340, 0], [400, 0])],
      side: straight([400, 0], [420, 200]),
      hip: p([420, 200]),
      sideHem: p([420, 600]),
    };
    const [piece] = quarterPieces(two, { ...CUT, shaping: "shut" });
    const [inner, outer] = [shutAbout([100, 80]), shutAbout([300, 80])];
    const both = (at: Place): Place => inner(outer(at));
    expect(piece === undefined ? null : pointsOf(piece)).toEqual(
      placed({
        centreWaist: [0, 0, "waist"],
        bend000: [60, 0, "waist"],
        bend001: [...inner([260, 0]), "waist"],
        sideWaist: [...both([400, 0]), "waist"],
        sideHip: [...both([420, 200]), "hip"],
        sideHem: [...both([420, 600]), "hip"],
        bend002: [...halfShutAbout([100, 80])([100, 600]), "hip"],
        bend003: [...inner(halfShutAbout([300, 80])([300, 600])), "hip"],
        centreHem: [0, 600, "hip"],
        centreHip: [0, 200, "hip"],
      }),
    );
    expect(piece?.edges.map(({ from }) => from)).toEqual([
      "centreWaist",
      "bend000",
      "bend001",
      "sideWaist",
      "sideHip",
      "sideHem",
      "bend003",
      "bend002",
      "centreHem",
      "centreHip",
    ]);
    // The hem has turned by three halves of a dart there: a whole one and a half.
    const arriving = piece?.edges.find(({ from }) => from === "bend003")?.curve?.c1;
    const at = inner(halfShutAbout([300, 80])([300, 600]));
    const [half, whole] = [Math.atan2(1, 2), Math.atan2(4, 3)];
    const way = Math.atan2(at[1] - (arriving?.y ?? 0), at[0] - (arriving?.x ?? 0));
    expect(way).toBeCloseTo(-half - whole, 6);
  });
});

describe("a quarter of two panels", () => {
  // 100 below the hip they are 28 further out on either side of the seam, and 96 down.
  const panelled: Quarter = {
    ...QUARTER,
    asked: { ...ASKED, takenBy: "panel", sideLength: 300, panelFlare: LEAN },
    gaps: [{ x: 100, intake: 40, y: 0, lean: LEAN }],
    waist: [straight([0, 0], [80, 0]), straight([120, 0], [200, 0])],
    sideHem: p([220, 300]),
    centreLength: 300,
  };
  const d = Math.hypot(20, 200);
  const out = (of: number): Place => [of * d * 0.28, of * d * 0.96];
  const line = {
    c1: near([80 + out(0.33)[0], out(0.33)[1]]),
    c2: near([100 - out(0.4)[0], 200 - out(0.4)[1]]),
  };

  it("is cut along the edges of their seam, which mirror each other", () => {
    const [inner, outer, ...more] = quarterPieces(panelled, CUT);
    expect(more).toEqual([]);
    expect([inner?.name, inner?.centreOnFold, outer?.name, outer?.centreOnFold]).toEqual([
      "skirtFront",
      true,
      "skirtSideFront",
      false,
    ]);
    expect(inner === undefined ? null : pointsOf(inner)).toEqual(
      placed({
        centreWaist: [0, 0, "waist"],
        panelWaist: [80, 0, "waist"],
        panelHip: [100, 200, "hip"],
        panelHem: [128, 296, "hip"],
        centreHem: [0, 300, "hip"],
        centreHip: [0, 200, "hip"],
      }),
    );
    expect(outer === undefined ? null : pointsOf(outer)).toEqual(
      placed({
        panelWaist: [120, 0, "waist"],
        sideWaist: [200, 0, "waist"],
        sideHip: [220, 200, "hip"],
        sideHem: [220, 300, "hip"],
        panelHem: [72, 296, "hip"],
        panelHip: [100, 200, "hip"],
      }),
    );
    // The hem turns up by 4 over 4 / 0.28 along its square.
    const turn = (4 / 0.28) * 0.96;
    expect(inner?.edges).toEqual([
      edge("centreWaist", "panelWaist", "waist"),
      edge("panelWaist", "panelHip", "panel", { curve: line }),
      edge("panelHip", "panelHem", "panel"),
      edge("panelHem", "centreHem", "hem", { curve: { c1: near([128 - turn, 300]), c2: near([128 / 3, 300]) } }),
      edge("centreHem", "centreHip", "centre"),
      edge("centreHip", "centreWaist", "centre"),
    ]);
    expect(outer?.edges).toEqual([
      edge("panelWaist", "sideWaist", "waist"),
      edge("sideWaist", "sideHip", "side"),
      edge("sideHip", "sideHem", "side"),
      edge("sideHem", "panelHem", "hem", {
        curve: { c1: near([220 - 148 / 3, 300]), c2: near([72 + turn, 300]) },
      }),
      edge("panelHem", "panelHip", "panel"),
      edge("panelHip", "panelWaist", "panel", {
        curve: {
          c1: near([100 + out(0.4)[0], 200 - out(0.4)[1]]),
          c2: near([120 - out(0.33)[0], out(0.33)[1]]),
        },
      }),
    ]);
    expect([inner, outer].map((one) => one?.darts)).toEqual([[], []]);
    expect([inner, outer].map((one) => one?.levelLines[1]?.along)).toEqual([
      { points: ["centreHip", "panelHip"] },
      { points: ["panelHip", "sideHip"] },
    ]);
    const back = quarterPieces(panelled, { ...CUT, side: "back", centreOnFold: false });
    expect(back.map(({ name, centreOnFold }) => [name, centreOnFold])).toEqual([
      ["skirtBack", false],
      ["skirtSideBack", false],
    ]);
  });

  it("is as wide as its side less what the seam takes in, and widens at it below the hip", () => {
    const [gap] = panelled.gaps;
    if (gap === undefined) throw new Error("no gap");
    expect(panelLine(panelled, gap)).toEqual({ a: near([80, 0]), b: near([100, 200]), curve: line });
    // At the waist the seam takes in all 40.
    expect(widthAt(panelled, -200, false)).toBeCloseTo(160, 6);
    expect(widthAt(panelled, 0, false)).toBeCloseTo(220, 6);
    expect(widthAt(panelled, 48, false)).toBeCloseTo(220 + 2 * 14, 6);
    // Half-way down the edge is where that cubic is; what it lies aside is taken in on both.
    const [from, c1, c2, to] = [80, 80 + out(0.33)[0], 100 - out(0.4)[0], 100];
    const [v1, v2] = [out(0.33)[1], 200 - out(0.4)[1]];
    const cubic = new Bezier(from, 0, c1, v1, c2, v2, to, 200);
    const [at] = cubic.intersects({ p1: { x: -500, y: 100 }, p2: { x: 500, y: 100 } });
    expect(widthAt(panelled, -100, false)).toBeCloseTo(210 - 2 * (100 - cubic.get(Number(at)).x), 3);
  });
});

describe("how wide a quarter is", () => {
  it("is its side less its darts, which end, or open on below their ends where they are shut", () => {
    const at = (belowHip: number, isShut = false): number => widthAt(QUARTER, belowHip, isShut);
    expect(at(-200)).toBeCloseTo(200 - 80, 6);
    expect(at(-160)).toBeCloseTo(204 - 40, 6);
    expect(at(-120)).toBeCloseTo(208, 6);
    expect(at(-100)).toBeCloseTo(210, 6);
    expect(at(-160, true)).toBeCloseTo(204 - 40, 6);
    expect(at(-100, true)).toBeCloseTo(210 + 20, 6);
    // Above its upper end the side goes on as it began, and the dart takes no more than it does there.
    expect(at(-210)).toBeCloseTo(120, 6);
    expect(at(0)).toBeCloseTo(220, 6);
    expect(at(200)).toBeCloseTo(220, 6);
    const flared: Quarter = { ...QUARTER, asked: { ...ASKED, flare: LEAN } };
    expect(widthAt(flared, 240, false)).toBeCloseTo(220 + 70, 6);
  });

  it("and how far along the side that is", () => {
    const slant = Math.hypot(20, 200);
    expect(alongSide(QUARTER, -200)).toBeCloseTo(0, 6);
    expect(alongSide(QUARTER, -210)).toBeCloseTo(0, 6);
    expect(alongSide(QUARTER, -100)).toBeCloseTo(slant / 2, 6);
    // The hip is as deep along the side as it was asked to be.
    expect(alongSide(QUARTER, 0)).toBe(200);
    expect(alongSide(QUARTER, 100)).toBe(300);
    expect(alongSide({ ...QUARTER, asked: { ...ASKED, flare: LEAN } }, 96)).toBeCloseTo(300, 6);
  });
});

describe("a line from the waist to the hip", () => {
  it("leaves leaning and goes over into the flare, by a third and two fifths of its chord", () => {
    // 30 and 40 of 50, ten times.
    const lean = radians(Math.atan2(3, 4));
    expect(sideLine(p([0, 0]), lean, p([300, 400]), LEAN)).toEqual({
      a: near([0, 0]),
      b: near([300, 400]),
      curve: { c1: near([165 * 0.6, 165 * 0.8]), c2: near([300 - 200 * 0.28, 400 - 200 * 0.96]) },
    });
    expect(sideLine(p([0, 0]), lean, p([-300, 400]), LEAN, -1).curve).toEqual({
      c1: near([-165 * 0.6, 165 * 0.8]),
      c2: near([-300 + 200 * 0.28, 400 - 200 * 0.96]),
    });
  });
});

describe("a hem", () => {
  const hem = (from: Place, fromLean: number, to: Place, toLean: number): EdgeCurve<"piece">["curve"] =>
    hemLine(p(from), radians(fromLean), p(to), radians(toLean)).curve;

  it("is straight between uprights, whatever their heights", () => {
    expect(hemLine(p([0, 600]), NONE, p([200, 590]), NONE)).toEqual(straight([0, 600], [200, 590]));
  });

  it("is level from an upright, and turns up squarely to a side that leans", () => {
    expect(hem([0, 600], 0, [200, 596], LEAN)).toEqual({
      c1: near([200 / 3, 600]),
      c2: near([200 - (4 / 0.28) * 0.96, 600]),
    });
    // No further than to the middle, and no nearer than 10 (our own choice).
    expect(hem([0, 600], 0, [200, 560], LEAN)?.c2).toEqual(near([200 - 96, 560 + 28]));
    expect(hem([0, 600], 0, [200, 599.5], LEAN)?.c2).toEqual(near([200 - 9.6, 599.5 + 2.8]));
    // From the lower one, where the side ends lower.
    expect(hem([0, 600], 0, [200, 604], LEAN)?.c2).toEqual(near([200 - 9.6, 604 + 2.8]));
  });

  it("between two that lean is as deep as either turns up over 40 (our own choice)", () => {
    const [first, second] = [LEAN, 2 * LEAN];
    const level = 600 + 40 * LEAN;
    const along = [first, second].map((lean) => (level - 600) / Math.sin(lean));
    expect(hem([0, 600], first, [200, 600], second)).toEqual({
      c1: near([(along[0] ?? 0) * 0.96, level]),
      c2: near([200 - (along[1] ?? 0) * Math.cos(second), level]),
    });
    expect(hem([0, 600], second, [200, 600], first)).toEqual({
      c1: near([(along[1] ?? 0) * Math.cos(second), level]),
      c2: near([200 - (along[0] ?? 0) * 0.96, level]),
    });
    // To an upright: level with it.
    expect(hem([0, 596], LEAN, [200, 600], 0)).toEqual({
      c1: near([(4 / 0.28) * 0.96, 600]),
      c2: near([200 - 200 / 3, 600]),
    });
  });
});

describe("a quarter drawn", () => {
  const draw = (more: Partial<QuarterAsked> = {}): Quarter =>
    drawQuarter({ ...ASKED, suppression: 40, places: [], atSide: 40, ...more });
  const lengthOf = ({ a, b, curve }: EdgeCurve<"piece">): number =>
    curve === null
      ? span([a.x, a.y], [b.x, b.y])
      : new Bezier(a.x, a.y, curve.c1.x, curve.c1.y, curve.c2.x, curve.c2.y, b.x, b.y).length();
  const leaving = ({ a, curve }: EdgeCurve<"piece">): number =>
    Math.atan2((curve?.c1.y ?? 0) - a.y, (curve?.c1.x ?? 0) - a.x);
  const arriving = ({ b, curve }: EdgeCurve<"piece">): number =>
    Math.atan2(b.y - (curve?.c2.y ?? 0), b.x - (curve?.c2.x ?? 0));
  /** Off the upright, towards the side. */
  const leanOf = (line: EdgeCurve<"piece">): number => Math.PI / 2 - leaving(line);

  it("is as long at the waist as asked, as deep to the hip along its side, and as wide there", () => {
    for (const quarter of [draw(), draw({ places: [60], atSide: 15 }), draw({ places: [40, 80], atSide: 10 })]) {
      const { waist, side, hip, gaps, asked } = quarter;
      const lengths = waist.map(lengthOf);
      expect(lengths.reduce((sum, length) => sum + length, 0)).toBeCloseTo(120, 4);
      asked.places.forEach((place, i) =>
        expect(lengths.slice(0, i + 1).reduce((sum, length) => sum + length, 0)).toBeCloseTo(place, 4),
      );
      expect(lengthOf(side)).toBeCloseTo(200, 4);
      expect(hip).toEqual({ x: 160, y: expect.closeTo(200, 9) });
      expect(side.b).toEqual(hip);
      // All of it is taken in by the side and the darts, with what bending made the waist longer by.
      const taken = gaps.reduce((sum, { intake }) => sum + intake, 0) + quarter.atSide;
      expect(taken).toBeCloseTo(160 - (side.a.x - gaps.reduce((sum, { intake }) => sum + intake, 0)), 6);
      expect(quarter.atSide).toBeCloseTo(160 - side.a.x, 9);
    }
  });

  it("has a side that leaves the waist as steeply as brings it into its flare, up to half as much again as its chord", () => {
    const lean = (flare: number) => {
      const quarter = draw({ flare: radians(flare) });
      return [leanOf(quarter.side), Math.atan2(quarter.atSide, 200)] as const;
    };
    const [plain, chord] = lean(0);
    expect(plain).toBeCloseTo(1.5 * chord, 6);
    const [even, its] = lean(0.2);
    expect(even).toBeCloseTo(2 * its - 0.2, 6);
    expect(even).toBeGreaterThan(0.01);
    expect(lean(0.6)[0]).toBeCloseTo(0, 9);
    // Where the hip is no wider it goes straight down.
    expect(leanOf(draw({ suppression: 0, atSide: 0 }).side)).toBeCloseTo(0, 9);
  });

  it("hangs by its flare below the hip, so far as its side is long", () => {
    const { sideHem, hip } = draw({ flare: LEAN });
    expect(sideHem).toEqual(near([hip.x + 400 * 0.28, hip.y + 400 * 0.96]));
  });

  it("meets its centre, its darts and its side squarely", () => {
    const { waist, gaps, side } = draw({ places: [40, 80], atSide: 10, centreLength: null });
    const [first, second, last] = waist;
    const [inner, outer] = gaps;
    if (first === undefined || second === undefined || last === undefined || inner === undefined || outer === undefined)
      throw new Error("two darts");
    // A dart leans by half of what it takes in over its length.
    const lean = Math.atan2(inner.intake / 2, 80);
    expect(inner.intake).toBeCloseTo(outer.intake, 9);
    expect([inner.lean, outer.lean]).toEqual([expect.closeTo(lean, 9), expect.closeTo(lean, 9)]);
    expect(leaving(first)).toBeCloseTo(0, 9);
    expect(arriving(first)).toBeCloseTo(-lean, 9);
    expect(leaving(second)).toBeCloseTo(lean, 9);
    expect(arriving(second)).toBeCloseTo(-lean, 9);
    expect(leaving(last)).toBeCloseTo(lean, 9);
    expect(arriving(last)).toBeCloseTo(-leanOf(side), 9);
    // Each stretch rises by what lies in the middle of its two ends' ways.
    expect(inner.y).toBeCloseTo(-first.b.x * Math.tan(lean / 2), 9);
    expect(outer.y).toBeCloseTo(inner.y, 9);
    const rises = (last.b.x - last.a.x) * Math.tan((lean - leanOf(side)) / 2);
    expect(side.a.y).toBeCloseTo(outer.y + rises, 9);
  });

  it("as it lies by itself is level, the hip as far below the centre as below the side's upper end", () => {
    const { centreLength, hip, side } = draw({ centreLength: null });
    expect(hip.y).toBeCloseTo(centreLength - 400, 9);
    // It rises from the centre to the side, by the half of how the side leans.
    expect(side.a.y).toBeCloseTo(-side.a.x * Math.tan(leanOf(side) / 2), 9);
  });

  it("between panels has edges that lean as a side does, over the hip's depth", () => {
    const quarter = draw({ takenBy: "panel", places: [60], atSide: 20, panelFlare: radians(0.04) });
    const [gap] = quarter.gaps;
    const chord = Math.atan2((gap?.intake ?? 0) / 2, 200);
    expect(gap?.lean).toBeCloseTo(Math.min(2 * chord - 0.04, 1.5 * chord), 9);
    expect(2 * chord - 0.04).toBeLessThan(1.5 * chord);
  });
});
