/** A dart 40 wide and 100 deep in a level seam, and its like: figures, ends, mouths, caps and truing worked out by trigonometry. */
import { describe, expect, it } from "vitest";
import { legsOf, mostBow } from "../../../src/core/dart/bowedLegs";
import { dartCap, dartCapOf } from "../../../src/core/dart/dartCap";
import { aimDart, drawnStop, endDart, usualStop } from "../../../src/core/dart/dartEnd";
import { straightToBustPoint } from "../../../src/core/dart/dartEndReading";
import { apexAfter, apexOffset, axisLength, mouthOffset, mouthPointAt } from "../../../src/core/dart/dartFrame";
import { foldDisc } from "../../../src/core/dart/foldedDisc";
import { coneRadius, coneRim } from "../../../src/core/dart/fullness";
import { measureDart } from "../../../src/core/dart/measureDart";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { moveMouth } from "../../../src/core/dart/moveMouth";
import { evenLegs, trueLegs } from "../../../src/core/dart/trueLegs";
import { mouthOf, seamCornerAtDart, trueSeamAtDart, trueSeamKeepingLength } from "../../../src/core/dart/trueSeam";
import { trueSeamEvenly } from "../../../src/core/dart/trueSeamEvenly";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { DART_NAMES } from "../../../src/core/pattern/dartNames";
import { curved, mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import { pointOf, type Dart, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { degreesFrom, radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";

const LEG = Math.hypot(20, 100);
/** Half of the dart's angle. */
const HALF = Math.atan(20 / 100);

/** Clockwise: the side, the waist with its dart in the middle, the centre. The waist is level at 400, 80 either side of the mouth. */
function level(dart: Partial<Dart> = {}, more: Partial<Piece> = {}): Piece {
  return {
    name: "front",
    points: {
      centreNeck: named(0, 0, "neck"),
      underarm: named(200, 0, "underarm"),
      sideWaist: named(200, 400, "waist"),
      waistDartOuter: named(120, 400, "waist"),
      waistDartInner: named(80, 400, "waist"),
      waistDartApex: named(100, 300, "bust"),
      centreWaist: named(0, 400, "waist"),
    },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideWaist", "side"),
      straight("sideWaist", "waistDartOuter", "waist"),
      mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
      straight("waistDartInner", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
        ...dart,
      },
    ],
    levelLines: [],
    centreOnFold: false,
    ...more,
  };
}

/** The same piece gone round the other way: the mouth's inner end comes first. */
const turnedRound = (piece: Piece): Piece => ({
  ...piece,
  edges: piece.edges
    .map((edge): Edge => ({
      ...edge,
      from: edge.to,
      to: edge.from,
      curve: edge.curve && { c1: edge.curve.c2, c2: edge.curve.c1 },
    }))
    .toReversed(),
});

const at = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { at: piecePoint(x, y), level: piece.points[name]?.level ?? "bust" } },
});

const near = (x: number, y: number, digits = 6): unknown => ({
  x: expect.closeTo(x, digits),
  y: expect.closeTo(y, digits),
});
const span = (a: PiecePoint, b: PiecePoint): number => Math.hypot(a.x - b.x, a.y - b.y);
const edgeBetween = (piece: Piece, from: PointName, to: PointName): Edge | undefined =>
  piece.edges.find((edge) => edge.from === from && edge.to === to);

describe("figures", () => {
  it("are read off whole", () => {
    const angle = 2 * HALF;
    const expected = {
      apex: piecePoint(100, 300),
      inner: piecePoint(80, 400),
      outer: piecePoint(120, 400),
      legInner: LEG,
      legOuter: LEG,
      intake: 40,
      angle: expect.closeTo(angle, 12),
      // A disc of 80 less the sector of the angle.
      fullness: expect.closeTo(80 * Math.sqrt(1 - (1 - angle / (2 * Math.PI)) ** 2), 9),
    };
    expect(measureDart(level(), "waistDart", null, 80)).toEqual({ ...expected, end: null });
    // 30 above the end, 8 towards the centre.
    expect(measureDart(level(), "waistDart", piecePoint(92, 270), 80)).toEqual({
      ...expected,
      end: { along: expect.closeTo(30, 9), across: expect.closeTo(8, 9) },
    });
  });

  it("of the disc that a right angle is taken out of: a rim of three quarters", () => {
    const right = radians(Math.PI / 2);
    expect(coneRim(right, 80)).toBeCloseTo(60, 9);
    const root = Math.SQRT1_2;
    expect(foldDisc(right, 80, 100)).toEqual({
      radius: 80,
      cut: near(80 * root, 80 * root),
      mouth: near(100 * root, 100 * root),
      angle: right,
      height: expect.closeTo(Math.sqrt(80 ** 2 - 60 ** 2), 9),
      rim: expect.closeTo(60, 9),
    });
  });

  it("are stated at the bust radius, or at the shortest leg of any dart", () => {
    const dart = (legInner: number, legOuter: number) => ({ legInner, legOuter });
    expect(coneRadius(80, [])).toBe(80);
    expect(coneRadius(80, [null, dart(90, 100)])).toBe(80);
    expect(coneRadius(80, [dart(90, 70), null, dart(85, 95)])).toBe(70);
    expect(coneRadius(80, [dart(90, 100), dart(60, 95)])).toBe(60);
  });
});

describe("axes of a dart that has none", () => {
  it("of no length: down is along", () => {
    const flat = { apex: piecePoint(100, 400), inner: piecePoint(80, 400), outer: piecePoint(120, 400) };
    expect(axisLength(flat)).toBe(0);
    expect(apexAfter(flat, { shorten: 10, across: 5 })).toEqual(piecePoint(95, 410));
    expect(apexOffset(flat, piecePoint(95, 410))).toEqual({ shorten: 10, across: 5 });
  });

  it("of no mouth: nothing lies along it", () => {
    const shut = { apex: piecePoint(100, 300), inner: piecePoint(100, 400), outer: piecePoint(100, 400) };
    expect(mouthOffset(shut, "inner", piecePoint(70, 400))).toBe(0);
    expect(mouthPointAt(shut, "outer", 9)).toEqual(piecePoint(100, 400));
    // Neither end is nearer: to the left of the way from the end to the mouth.
    expect(apexAfter(shut, { shorten: 0, across: 5 })).toEqual(piecePoint(95, 300));
  });
});

describe("bowed legs", () => {
  it("to 6 mm, and into the dart no further than an eighth of its mouth (common practice, no source)", () => {
    expect([30, 48, 60].map((width) => mostBow(width))).toEqual([
      { least: -6, most: 3.75 },
      { least: -6, most: 6 },
      { least: -6, most: 6 },
    ]);
  });

  it("are straight where the dart says nothing", () => {
    const line = (x: number) => ({
      curve: { a: piecePoint(x, 400), b: piecePoint(100, 300), curve: null },
      length: LEG,
    });
    expect(legsOf(level(), "waistDart")).toEqual({ inner: line(80), outer: line(120) });
    expect(legsOf(level({ bow: 0 }), "waistDart")).toEqual({ inner: line(80), outer: line(120) });
    const none = legsOf(at(level({ bow: 3 }), "waistDartApex", 80, 400), "waistDart");
    expect(none.inner).toEqual({ curve: { a: piecePoint(80, 400), b: piecePoint(80, 400), curve: null }, length: 0 });
  });

  it.each([3, -4])("are parabolas with their middle %d mm off, both into the dart or both out of it", (bow) => {
    const { inner, outer } = legsOf(level({ bow }), "waistDart");
    // Square to the leg, towards the other: the leg's direction is (20, -100) or (-20, -100).
    const [across, up] = [(bow * 100) / LEG, (bow * 20) / LEG];
    expect(edgePointAt(inner.curve, 0.5)).toEqual(near(90 + across, 350 + up));
    expect(edgePointAt(outer.curve, 0.5)).toEqual(near(110 - across, 350 + up));
    expect(edgePointAt(inner.curve, 0)).toEqual(near(80, 400));
    expect(edgePointAt(inner.curve, 1)).toEqual(near(100, 300));
    // Arc of a parabola with chord L and height s: ½√(L² + 16 s²) + L²/8s · asinh(4 s/L).
    const s = Math.abs(bow);
    const arc = Math.sqrt(LEG ** 2 + 16 * s * s) / 2 + (LEG ** 2 / (8 * s)) * Math.asinh((4 * s) / LEG);
    expect(inner.length).toBeCloseTo(arc, 4);
    expect(outer.length).toBeCloseTo(arc, 4);
  });
});

it("legs of a slanting dart are bowed each towards the other", () => {
  const slanting = at(at(level({ bow: 3 }), "waistDartInner", 150, 390), "waistDartOuter", 190, 360);
  const { inner, outer } = legsOf(slanting, "waistDart");
  // From (100, 300) to (150, 390), and to (190, 360): square to each, towards the other's mouth end.
  const [long, wide] = [Math.hypot(50, 90), Math.hypot(90, 60)];
  expect(edgePointAt(inner.curve, 0.5)).toEqual(near(125 + (3 * 90) / long, 345 - (3 * 50) / long));
  expect(edgePointAt(outer.curve, 0.5)).toEqual(near(145 - (3 * 60) / wide, 330 + (3 * 90) / wide));
});

it("abreast of the bust point and beside it, the way to it is no way past it", () => {
  expect([
    straightToBustPoint({ along: 0, across: 5 }),
    straightToBustPoint({ along: -3, across: 4 }),
    straightToBustPoint({ along: 3, across: -4 }),
  ]).toEqual([5, -5, 5]);
});

describe("where darts end", () => {
  it("15 to 25 short of the bust point from below, else 20 to 40 (common practice, no source)", () => {
    for (const name of DART_NAMES) {
      const isFromBelow = name.startsWith("waist") || name.startsWith("underBust");
      expect(usualStop(name)).toEqual(isFromBelow ? { least: 15, most: 25 } : { least: 20, most: 40 });
    }
  });

  it("drawn 20 short, or 30 and a fifth of what the cup is over 50", () => {
    expect([-20, 0, 25, 50, 55, 100, 105].map((difference) => drawnStop("sideDart", difference))).toEqual([
      20, 20, 25, 30, 31, 40, 40,
    ]);
    expect([0, 50, 200].map((difference) => drawnStop("underBustDart", difference))).toEqual([20, 20, 20]);
  });

  it("aimed straight up at it, nothing else moves", () => {
    const aimed = aimDart(at(level(), "waistDartApex", 100, 350), "waistDart", piecePoint(100, 280), 20);
    expect(aimed).toEqual({
      ...level(),
      points: { ...level().points, waistDartApex: { at: near(100, 300), level: "bust" } },
    });
    // Never nearer the mouth than 25.
    expect(pointOf(aimDart(level(), "waistDart", piecePoint(100, 280), 96), "waistDartApex")).toEqual(near(100, 375));
    expect(pointOf(aimDart(level(), "waistDart", piecePoint(100, 280), 94), "waistDartApex")).toEqual(near(100, 374));
  });

  it.each([
    [60, 0],
    [140, 0],
    [100, 12],
    [100, -12],
    [70, 9],
    [130, -9],
  ])("aimed at a bust point at %d, to lie %d beside its axis: legs equal, its end 20 short along it", (x, across) => {
    const bust = piecePoint(x, 280);
    const aimed = aimDart(level(), "waistDart", bust, 20, across);
    const [end, inner, outer] = [
      pointOf(aimed, "waistDartApex"),
      pointOf(aimed, "waistDartInner"),
      pointOf(aimed, "waistDartOuter"),
    ];
    expect(span(end, inner)).toBeCloseTo(span(end, outer), 4);
    const middle = { x: (inner.x + outer.x) / 2, y: (inner.y + outer.y) / 2 };
    const length = Math.hypot(end.x - middle.x, end.y - middle.y);
    const [ux, uy] = [(end.x - middle.x) / length, (end.y - middle.y) / length];
    const [dx, dy] = [bust.x - end.x, bust.y - end.y];
    expect(dx * ux + dy * uy).toBeCloseTo(20, 3);
    // Left of the way up is towards the centre.
    expect(dx * uy - dy * ux).toBeCloseTo(across, 3);
    // The seams beside it go along and stay lines from corner to corner.
    expect(aimed.edges).toEqual(level().edges);
    expect(aimed.points.sideWaist).toEqual(level().points.sideWaist);
  });

  it("abreast of a bust point that lies nearer than it should lie aside: as far as it is, its end 25 from the mouth", () => {
    const aimed = aimDart(level(), "waistDart", piecePoint(100, 390), 20, 500);
    const [end, inner, outer] = [
      pointOf(aimed, "waistDartApex"),
      pointOf(aimed, "waistDartInner"),
      pointOf(aimed, "waistDartOuter"),
    ];
    expect(span(end, piecePoint((inner.x + outer.x) / 2, (inner.y + outer.y) / 2))).toBeCloseTo(25, 3);
  });

  it("with legs as unlike as they were drawn", () => {
    const aimed = aimDart(level({ drawnLegs: 4 }), "waistDart", piecePoint(100, 280), 20);
    const end = pointOf(aimed, "waistDartApex");
    expect(span(end, pointOf(aimed, "waistDartOuter")) - span(end, pointOf(aimed, "waistDartInner"))).toBeCloseTo(4, 4);
  });

  it("and not at all where its mouth is none", () => {
    const { waistDartInner: _, ...rest } = level().points;
    const open = { ...level(), points: rest };
    expect(aimDart(open, "waistDart", piecePoint(100, 280), 20)).toBe(open);
    expect(endDart(open, "waistDart", piecePoint(100, 280), 20)).toBe(open);
  });

  it("on its own axis, whichever side of the mouth the bust point lies on", () => {
    const ended = (bust: PiecePoint, stop: number): PiecePoint =>
      pointOf(endDart(level(), "waistDart", bust, stop), "waistDartApex");
    expect(ended(piecePoint(130, 280), 20)).toEqual(near(100, 300));
    expect(ended(piecePoint(70, 520), 20)).toEqual(near(100, 500));
    expect(ended(piecePoint(70, 360), 20)).toEqual(near(100, 375));
    expect(endDart(level(), "waistDart", piecePoint(130, 280), 40)).toEqual({
      ...level(),
      points: { ...level().points, waistDartApex: { at: near(100, 320), level: "bust" } },
    });
  });
});

describe("moving a mouth end", () => {
  const bowed: Piece = {
    ...level(),
    edges: level().edges.map((edge) =>
      edge.from === "waistDartInner"
        ? curved("waistDartInner", "centreWaist", "waist", piecePoint(50, 405), piecePoint(30, 406))
        : edge.to === "waistDartOuter"
          ? curved("sideWaist", "waistDartOuter", "waist", piecePoint(180, 404), piecePoint(150, 402))
          : edge,
    ),
  };

  it("takes the handle beside it along and no other", () => {
    expect(moveMouthEnd(bowed, "waistDartInner", piecePoint(76, 403))).toEqual({
      ...bowed,
      points: { ...bowed.points, waistDartInner: named(76, 403, "waist") },
      edges: bowed.edges.map((edge) =>
        edge.from === "waistDartInner"
          ? curved("waistDartInner", "centreWaist", "waist", piecePoint(46, 408), piecePoint(30, 406))
          : edge,
      ),
    });
    expect(moveMouthEnd(bowed, "waistDartOuter", piecePoint(125, 398))).toEqual({
      ...bowed,
      points: { ...bowed.points, waistDartOuter: named(125, 398, "waist") },
      edges: bowed.edges.map((edge) =>
        edge.to === "waistDartOuter"
          ? curved("sideWaist", "waistDartOuter", "waist", piecePoint(180, 404), piecePoint(155, 400))
          : edge,
      ),
    });
  });

  it("nowhere gives the very same piece; along one axis alone it moves", () => {
    expect(moveMouthEnd(bowed, "waistDartInner", piecePoint(80, 400))).toBe(bowed);
    expect(pointOf(moveMouthEnd(bowed, "waistDartInner", piecePoint(80, 401)), "waistDartInner").y).toBe(401);
    expect(pointOf(moveMouthEnd(bowed, "waistDartInner", piecePoint(81, 400)), "waistDartInner").x).toBe(81);
  });

  describe.each([
    ["one way round", level()],
    ["the other way", turnedRound(level())],
  ])("%s", (_, piece) => {
    const moved = (inner: number, outer: number) => {
      const made = moveMouth(piece, "waistDart", inner, outer);
      if (!made.ok) return made.failure;
      const [a, b] = [pointOf(made.value, "waistDartInner"), pointOf(made.value, "waistDartOuter")];
      return [a.x, a.y, b.x, b.y].map((number) => Math.round(number * 1e4) / 1e4);
    };

    it("out along the seam, in along the mouth", () => {
      expect(moved(10, 5)).toEqual([70, 400, 125, 400]);
      expect(moved(-10, -5)).toEqual([90, 400, 115, 400]);
      expect(moved(10, -5)).toEqual([70, 400, 115, 400]);
      expect(moved(-10, 0)).toEqual([90, 400, 120, 400]);
      expect(moved(0, 7)).toEqual([80, 400, 127, 400]);
    });

    it("refuses a mouth under 3 mm, and what leaves less than 2 mm of the seam", () => {
      expect(moved(-20, -17)).toEqual([100, 400, 103, 400]);
      expect(moved(-20, -17.5)).toEqual({ code: "alteration/dart-vanishes", smallest: 3, would: 2.5 });
      expect(moved(78, 0)).toEqual([2, 400, 120, 400]);
      expect(moved(0, 78)).toEqual([80, 400, 198, 400]);
      expect(moved(78.1, 0)).toEqual({ code: "alteration/off-the-seam", most: 78 });
      expect(moved(0, 78.1)).toEqual({ code: "alteration/off-the-seam", most: 78 });
      const short = moveMouth(at(piece, "centreWaist", 78.5, 400), "waistDart", 0.5, 0);
      expect(short).toEqual({ ok: false, failure: { code: "alteration/off-the-seam", most: 0 } });
    });

    it("nowhere is no other piece", () => {
      const made = moveMouth(piece, "waistDart", 0, 0);
      expect(made.ok && made.value).toBe(piece);
    });

    it("follows a seam that bends, and drops the bends that it passes", () => {
      const corner: Piece = {
        ...piece,
        points: { ...piece.points, bend001: named(50, 400, "waist"), centreWaist: named(50, 450, "waist") },
        edges: piece.edges.flatMap((edge) => {
          const isForth = edge.from === "waistDartInner" && edge.mouthOf === null;
          const isBack = edge.to === "waistDartInner" && edge.mouthOf === null;
          if (isForth)
            return [straight("waistDartInner", "bend001", "waist"), straight("bend001", "centreWaist", "waist")];
          if (isBack)
            return [straight("centreWaist", "bend001", "waist"), straight("bend001", "waistDartInner", "waist")];
          return [edge];
        }),
      };
      const slid = (by: number) => moveMouth(corner, "waistDart", by, 0);
      const [before, after] = [slid(20), slid(40)];
      if (!before.ok || !after.ok) throw new Error("refused");
      expect(pointOf(before.value, "waistDartInner")).toEqual(near(60, 400, 3));
      expect(before.value.edges).toEqual(corner.edges);
      expect(before.value.points.bend001).toEqual(named(50, 400, "waist"));
      // 30 along and 10 down.
      expect(pointOf(after.value, "waistDartInner")).toEqual(near(50, 410, 3));
      expect(after.value.points.bend001).toBeUndefined();
      expect(after.value.edges).toEqual(piece.edges);
      expect(slid(78).ok).toBe(true);
      expect(slid(78.1)).toEqual({
        ok: false,
        failure: { code: "alteration/off-the-seam", most: expect.closeTo(78, 6) },
      });
    });

    it("follows a curve, which keeps its far end and loses just what was passed", () => {
      const curve = curved("waistDartInner", "centreWaist", "waist", piecePoint(55, 420), piecePoint(25, 400));
      const onCurve = (of: Piece): Piece => ({
        ...of,
        edges: of.edges.map((edge) =>
          edge.mouthOf === null && edge.from === "waistDartInner"
            ? curve
            : edge.mouthOf === null && edge.to === "waistDartInner"
              ? { ...edge, curve: { c1: piecePoint(25, 400), c2: piecePoint(55, 420) } }
              : edge,
        ),
      });
      const whole = onCurve(piece);
      const made = moveMouth(whole, "waistDart", 20, 0);
      if (!made.ok) throw new Error("refused");
      expect(seamByBezierJs(whole, "waist") - seamByBezierJs(made.value, "waist")).toBeCloseTo(20, 3);
      const end =
        edgeBetween(made.value, "waistDartInner", "centreWaist") ??
        edgeBetween(made.value, "centreWaist", "waistDartInner");
      const handle = end?.from === "centreWaist" ? end.curve?.c1 : end?.curve?.c2;
      // At the centre it still comes in level.
      expect(handle?.y).toBeCloseTo(400, 6);
      expect(pointOf(made.value, "waistDartInner").y).toBeGreaterThan(404);
    });
  });
});

describe("legs", () => {
  it("that are of one length, or as drawn, leave the very piece; others meet half-way", () => {
    const even = level();
    expect(trueLegs(even, "waistDart")).toEqual({ piece: even, inner: 0, outer: 0 });
    expect(trueLegs(even, "waistDart").piece).toBe(even);
    const [longer, shorter] = [Math.hypot(30, 100), Math.hypot(10, 100)];
    const uneven = (dart: Partial<Dart> = {}): Piece => at(level(dart), "waistDartApex", 110, 300);
    const half = (shorter - longer) / 2;
    const { piece, inner, outer } = trueLegs(uneven(), "waistDart");
    expect([inner, outer]).toEqual([expect.closeTo(half, 9), expect.closeTo(-half, 9)]);
    const mean = (shorter + longer) / 2;
    expect(pointOf(piece, "waistDartInner")).toEqual(near(110 - (30 / longer) * mean, 300 + (100 / longer) * mean));
    expect(pointOf(piece, "waistDartOuter")).toEqual(near(110 + (10 / shorter) * mean, 300 + (100 / shorter) * mean));
    const drawn = uneven({ drawnLegs: shorter - longer });
    expect(trueLegs(drawn, "waistDart").piece).toBe(drawn);
  });

  it("are told even within a millionth", () => {
    const ends = [piecePoint(0, 0), piecePoint(0, 10), piecePoint(10 + 1.9e-6, 0)] as const;
    expect(evenLegs(...ends)).toEqual({ inner: ends[1], outer: ends[2], half: 0 });
    const off = evenLegs(piecePoint(0, 0), piecePoint(0, 10), piecePoint(10.02, 0));
    expect(off).toEqual({ inner: near(0, 10.01), outer: near(10.01, 0), half: expect.closeTo(0.01, 9) });
  });
});

describe("the seam over the shut dart", () => {
  it("of a level seam turns by the dart's angle, more by what bowed legs add at the mouth", () => {
    expect(degreesFrom(seamCornerAtDart(level(), "waistDart"))).toBeCloseTo(degreesFrom(radians(-2 * HALF)), 9);
    // A parabola 3 high over its chord leaves it at a slope of 4 · 3 / L.
    const slope = Math.atan((4 * 3) / LEG);
    expect(seamCornerAtDart(level({ bow: 3 }), "waistDart")).toBeCloseTo(-2 * (HALF + slope), 9);
    expect(seamCornerAtDart(level({ bow: -3 }), "waistDart")).toBeCloseTo(-2 * (HALF - slope), 9);
  });

  it("is drawn square to both legs, a third of each side handled, the far handles level", () => {
    const trued = trueSeamAtDart(level(), "waistDart");
    const third = 80 / 3;
    const [c, s] = [third * Math.cos(HALF), third * Math.sin(HALF)];
    expect(trued).toEqual({
      ...level(),
      edges: level().edges.map((edge) =>
        edge.to === "waistDartOuter"
          ? { ...edge, curve: { c1: near(200 - third, 400), c2: near(120 + c, 400 - s) } }
          : edge.from === "waistDartInner"
            ? { ...edge, curve: { c1: near(80 - c, 400 - s), c2: near(third, 400) } }
            : edge,
      ),
    });
  });

  it("with bowed legs is square to them as they come to the mouth; as drawn, it stays", () => {
    const slope = Math.atan((4 * 3) / LEG);
    const handle = edgeBetween(trueSeamAtDart(level({ bow: 3 }), "waistDart"), "waistDartInner", "centreWaist")?.curve
      ?.c1;
    expect(handle).toEqual(near(80 - (80 / 3) * Math.cos(HALF + slope), 400 - (80 / 3) * Math.sin(HALF + slope)));
    const kept = trueSeamAtDart(level({ drawnTurn: (-2 * HALF * 180) / Math.PI }), "waistDart");
    const still = edgeBetween(kept, "waistDartInner", "centreWaist")?.curve?.c1 ?? piecePoint(80 - 80 / 3, 400);
    expect(still).toEqual(near(80 - 80 / 3, 400));
  });

  it.each([
    ["straight legs", {}],
    ["bowed legs", { bow: 3 }],
  ])("is brought to any length near by, both mouth ends alike: %s", (_, dart) => {
    for (const length of [156, 160, 163]) {
      const even = trueSeamEvenly(level(dart), "waistDart", length);
      expect(seamByBezierJs(even, "waist")).toBeCloseTo(length, 3);
      expect(Math.abs(seamCornerAtDart(even, "waistDart"))).toBeLessThan(1e-6);
      const [inner, outer] = [pointOf(even, "waistDartInner"), pointOf(even, "waistDartOuter")];
      expect(inner.x + outer.x).toBeCloseTo(200, 6);
      expect([inner.y, outer.y]).toEqual([expect.closeTo(400, 6), expect.closeTo(400, 6)]);
      expect([pointOf(even, "waistDartApex"), pointOf(even, "centreWaist"), pointOf(even, "sideWaist")]).toEqual([
        piecePoint(100, 300),
        piecePoint(0, 400),
        piecePoint(200, 400),
      ]);
      const kept = trueSeamKeepingLength(level(dart), "waistDart", length);
      expect(seamByBezierJs(kept, "waist")).toBeCloseTo(length, 3);
      expect(Math.abs(seamCornerAtDart(kept, "waistDart"))).toBeLessThan(1e-3);
    }
  });

  it("counts what lies beyond the corners, and no other seam", () => {
    // The side-waist half of the waist parted by a corner: its first 40 mm are no part of the run.
    const parted: Piece = {
      ...level(),
      points: { ...level().points, waistMiddle: named(160, 400, "waist") },
      edges: level().edges.flatMap((edge) =>
        edge.from === "sideWaist"
          ? [straight("sideWaist", "waistMiddle", "waist"), straight("waistMiddle", "waistDartOuter", "waist")]
          : [edge],
      ),
    };
    const trued = trueSeamEvenly(parted, "waistDart", 158);
    expect(seamByBezierJs(trued, "waist")).toBeCloseTo(158, 3);
    expect(trued.points.waistMiddle).toEqual(parted.points.waistMiddle);
  });

  it("is of the dart's own seam alone where another begins at the mouth", () => {
    const cornered: Piece = {
      ...level(),
      edges: level().edges.map((edge): Edge => (edge.from === "waistDartInner" ? { ...edge, seam: "centre" } : edge)),
    };
    expect(seamByBezierJs(trueSeamEvenly(cornered, "waistDart", 79), "waist")).toBeCloseTo(79, 3);
  });

  it("lies between the ends of the mouth, the way the edges go; without one it is a fault of ours", () => {
    expect(mouthOf(level(), "waistDart")).toEqual(["waistDartOuter", "waistDartInner"]);
    expect(mouthOf(turnedRound(level()), "waistDart")).toEqual(["waistDartInner", "waistDartOuter"]);
    expect(() => mouthOf(level(), "sideDart")).toThrow("front has no mouth of sideDart");
  });
});

describe("the cap", () => {
  /** The law of sines: at the end the half angle, at the mouth what the seam makes with the leg. */
  const tipAt = (seam: number): number => (LEG * Math.sin(seam)) / Math.sin(seam + HALF);
  const LEVEL = Math.PI / 2 + HALF;

  it("of a level seam: folded to the centre, 100 / cos of the whole angle from the end", () => {
    expect(tipAt(LEVEL)).toBeCloseTo(100 / Math.cos(2 * HALF), 9);
    const { halves, beyond, apex } = dartCapOf(level(), "waistDart");
    const tip = near(100, 300 + tipAt(LEVEL));
    expect(dartCap(level(), "waistDart")).toEqual([piecePoint(80, 400), tip, piecePoint(120, 400)]);
    expect(halves).toEqual([
      [{ a: near(80, 400), b: tip, curve: null }],
      [{ a: tip, b: piecePoint(120, 400), curve: null }],
    ]);
    expect(apex).toEqual(piecePoint(100, 300));
    // The rest of the seam, mirrored in the leg: as far from the end as the centre was, on the leg's other side.
    const leg = Math.PI / 2 + HALF;
    const centre = Math.atan2(100, -100);
    const mirrored = 2 * leg - centre;
    const far = Math.hypot(100, 100);
    expect(beyond).toEqual([
      { a: tip, b: near(100 + far * Math.cos(mirrored), 300 + far * Math.sin(mirrored)), curve: null },
    ]);
  });

  it("goes by the seam beside the leg that it is folded onto, and by no other", () => {
    const fallen = at(level(), "sideWaist", 200, 440);
    expect(dartCap(fallen, "waistDart")).toEqual([
      piecePoint(80, 400),
      near(100, 300 + tipAt(LEVEL)),
      piecePoint(120, 400),
    ]);
    // The centre 20 lower over 80: by that slope further from the leg.
    const seam = LEVEL + Math.atan(20 / 80);
    expect(dartCap(at(level(), "centreWaist", 0, 420), "waistDart")[1]).toEqual(near(100, 300 + tipAt(seam)));
    expect(dartCap(turnedRound(at(level(), "centreWaist", 0, 420)), "waistDart")[1]).toEqual(
      near(100, 300 + tipAt(seam)),
    );
  });

  it("ends in the very corners, whatever mirroring leaves of them", () => {
    const odd = at(at(level(), "waistDartApex", 101.3, 297.7), "waistDartInner", 79.9, 400.3);
    for (const piece of [odd, turnedRound(odd)]) {
      const { halves } = dartCapOf(piece, "waistDart");
      expect(halves[1].at(-1)?.b).toEqual(piecePoint(120, 400));
      expect(halves[1][0]?.a).toEqual(halves[0].at(-1)?.b);
      expect(halves[0][0]?.a).toEqual(near(79.9, 400.3));
    }
  });

  it("of a dart in an upright seam is folded down", () => {
    // The same dart turned: its end at (100, 100), its mouth from (200, 80) to (200, 120).
    const side = (lower: number): Piece => ({
      ...level(),
      points: {
        centreNeck: named(0, 0, "neck"),
        underarm: named(200 - 20, 0, "underarm"),
        sideDartInner: named(200, 80, "bust"),
        sideDartOuter: named(200, 120, "bust"),
        sideDartApex: named(100, 100, "bust"),
        sideWaist: named(lower, 200, "waist"),
        centreWaist: named(0, 200, "waist"),
      },
      edges: [
        straight("centreNeck", "underarm", "neck"),
        straight("underarm", "sideDartInner", "side"),
        mouth("sideDartInner", "sideDartOuter", "side", "sideDart"),
        straight("sideDartOuter", "sideWaist", "side"),
        straight("sideWaist", "centreWaist", "waist"),
        straight("centreWaist", "centreNeck", "centre"),
      ],
      darts: [
        {
          name: "sideDart",
          seam: "side",
          inner: "sideDartInner",
          outer: "sideDartOuter",
          apex: "sideDartApex",
          aimsAt: null,
        },
      ],
    });
    const tip = near(100 + tipAt(LEVEL), 100);
    const { halves, beyond } = dartCapOf(side(200), "sideDart");
    expect(halves).toEqual([
      [{ a: piecePoint(200, 80), b: tip, curve: null }],
      [{ a: tip, b: near(200, 120), curve: null }],
    ]);
    // How the inner half would go on: from the tip, below the middle.
    expect(beyond[0]?.a).toEqual(tip);
    expect(beyond[0]?.b.y).toBeGreaterThan(100);
    // 20 further out over 80: by that slope further from the leg.
    expect(dartCap(side(220), "sideDart")[1]).toEqual(near(100 + tipAt(LEVEL + Math.atan(20 / 80)), 100));
  });

  it("goes straight on from a seam that ends too soon, but not far out", () => {
    // 10 mm of level seam, then the centre.
    const short = at(level(), "centreWaist", 70, 400);
    const { halves, beyond } = dartCapOf(short, "waistDart");
    expect(dartCap(short, "waistDart")[1]).toEqual(near(100, 300 + tipAt(LEVEL)));
    expect(halves.map((half) => half.length)).toEqual([2, 2]);
    expect(beyond).toEqual([]);
    // 10 mm at 150° from the leg: straight on it would come to 1.5 of the leg; it is left off square to the fold.
    const seam = (150 * Math.PI) / 180;
    const way = Math.atan2(-100, 20) - seam;
    const steep = at(level(), "centreWaist", 80 + 10 * Math.cos(way), 400 + 10 * Math.sin(way));
    expect(tipAt(seam)).toBeGreaterThan(1.25 * LEG);
    const far = Math.hypot(LEG - 10 * Math.cos(seam), 10 * Math.sin(seam));
    const aside = Math.asin((10 * Math.sin(seam)) / far);
    expect(dartCap(steep, "waistDart")[1]).toEqual(near(100, 300 + far * Math.cos(HALF - aside)));
  });

  it("is straight where the seam never meets the middle, and of gathers", () => {
    const seam = (170 * Math.PI) / 180;
    const way = Math.atan2(-100, 20) - seam;
    const along = at(level(), "centreWaist", 80 + 60 * Math.cos(way), 400 + 60 * Math.sin(way));
    const straightCap = {
      halves: [
        [{ a: piecePoint(80, 400), b: piecePoint(100, 400), curve: null }],
        [{ a: piecePoint(100, 400), b: piecePoint(120, 400), curve: null }],
      ],
      beyond: [],
      apex: piecePoint(100, 300),
    };
    expect(dartCapOf(along, "waistDart")).toEqual(straightCap);
    expect(dartCapOf(level({ gathered: true }), "waistDart")).toEqual(straightCap);
  });

  it("follows a seam of several lines round its corner, and stops at another dart", () => {
    const parted: Piece = {
      ...level(),
      points: { ...level().points, waistMiddle: named(70, 400, "waist") },
      edges: level().edges.flatMap((edge) =>
        edge.from === "waistDartInner"
          ? [straight("waistDartInner", "waistMiddle", "waist"), straight("waistMiddle", "centreWaist", "waist")]
          : [edge],
      ),
    };
    for (const piece of [parted, turnedRound(parted)]) {
      const { halves, beyond } = dartCapOf(piece, "waistDart");
      expect(dartCap(piece, "waistDart")[1]).toEqual(near(100, 300 + tipAt(LEVEL)));
      expect(halves.map((half) => half.length)).toEqual([2, 2]);
      expect(beyond).toHaveLength(1);
    }
    const stopped = {
      ...parted,
      edges: parted.edges.map((edge): Edge =>
        edge.from === "waistMiddle" ? { ...edge, mouthOf: "waistDart2" } : edge,
      ),
    };
    expect(dartCapOf(stopped, "waistDart").beyond).toEqual([]);
    const other = {
      ...parted,
      edges: parted.edges.map((edge): Edge => (edge.from === "waistMiddle" ? { ...edge, seam: "centre" } : edge)),
    };
    expect(dartCapOf(other, "waistDart").beyond).toEqual([]);
  });
});
