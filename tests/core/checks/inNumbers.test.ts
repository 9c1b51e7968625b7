/** Every check on oblong pieces, so that all that it says can be worked out by hand: whole results, and both sides of each bound. */
import { describe, expect, it } from "vitest";
import type { CheckName, CheckResult } from "../../../src/core/checks/check";
import type { CheckContext } from "../../../src/core/checks/context";
import { CHECKS, runChecks } from "../../../src/core/checks/index";
import type { DartFigures } from "../../../src/core/dart/dartFigures";
import { piecePoint } from "../../../src/core/geometry/point";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { NamedPoint, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { radians } from "../../../src/core/units";

/** 200 wide and 400 long, the neck its upper edge, the side in two at the bust line. */
function oblong(name: PieceName, more: Partial<Piece> = {}): Piece {
  return {
    name,
    points: {
      centreNeck: named(0, 0, "neck"),
      underarm: named(200, 0, "underarm"),
      sideBust: named(200, 200, "bust"),
      sideWaist: named(200, 400, "waist"),
      centreWaist: named(0, 400, "waist"),
      centreBust: named(0, 200, "bust"),
    },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideBust", "side"),
      straight("sideBust", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreBust", "centre"),
      straight("centreBust", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: false,
    ...more,
  };
}

/** Below it, 200 wide and 150 deep. */
const basque = (name: "frontBasque" | "backBasque"): Piece => ({
  name,
  points: {
    centreWaist: named(0, 0, "waist"),
    sideWaist: named(200, 0, "waist"),
    sideHip: named(200, 100, "hip"),
    sideHem: named(200, 150, "hip"),
    centreHem: named(0, 150, "hip"),
  },
  edges: [
    straight("centreWaist", "sideWaist", "waist"),
    straight("sideWaist", "sideHip", "side"),
    straight("sideHip", "sideHem", "side"),
    straight("sideHem", "centreHem", "hem"),
    straight("centreHem", "centreWaist", "centre"),
  ],
  darts: [],
  levelLines: [
    { level: "waist", along: { seam: "waist" } },
    { level: "hip", along: { points: ["centreHem", "sideHem"] } },
  ],
  centreOnFold: false,
});

const at = (piece: Piece, name: PointName, x: number, y: number): Piece => {
  const level = piece.points[name]?.level ?? "bust";
  const point: NamedPoint = { at: piecePoint(x, y), level };
  return { ...piece, points: { ...piece.points, [name]: point } };
};

/** The same with a waist dart 40 wide at the middle of the waist and 100 deep. */
function darted(name: PieceName, more: Partial<Piece["darts"][number]> = {}): Piece {
  const plain = oblong(name);
  return {
    ...plain,
    points: {
      ...plain.points,
      waistDartInner: named(80, 400, "bust"),
      waistDartOuter: named(120, 400, "bust"),
      waistDartApex: named(100, 300, "bust"),
    },
    edges: plain.edges.flatMap((edge) =>
      edge.seam === "waist"
        ? [
            straight("sideWaist", "waistDartOuter", "waist"),
            mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
            straight("waistDartInner", "centreWaist", "waist"),
          ]
        : [edge],
    ),
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
        ...more,
      },
    ],
  };
}

const bodice = setOf([oblong("front"), oblong("back")]);
const dressed = setOf([oblong("front"), oblong("back"), basque("frontBasque"), basque("backBasque")]);

const contextOf = (pieces: PieceSet, more: Partial<CheckContext> = {}): CheckContext => ({
  pieces,
  halves: [pieces, pieces],
  levels: [],
  darts: [],
  alterations: [],
  closure: { place: "centreBack", belowWaist: 0 },
  body: { bust: 900, hip: 1000 },
  ...more,
});

const asked = (name: CheckName, pieces: PieceSet, more: Partial<CheckContext> = {}): readonly CheckResult[] =>
  CHECKS[name](contextOf(pieces, more));

const figures = (more: Partial<DartFigures>): DartFigures => ({
  apex: piecePoint(100, 300),
  inner: piecePoint(80, 400),
  outer: piecePoint(120, 400),
  legInner: 102,
  legOuter: 102,
  intake: 40,
  angle: radians(0.4),
  fullness: 20,
  end: null,
  ...more,
});
const waistDart = { piece: "front", dart: "waistDart" } as const;

describe("corners at the centre line", () => {
  it("are square at neck and waist, and at the hem of what goes on below", () => {
    const of = (piece: PieceName, point: PointName): CheckResult => ({
      name: "cornersSquare",
      ok: true,
      measured: expect.closeTo(90, 9),
      expected: 90,
      tolerance: 1,
      unit: "degrees",
      pieces: [piece],
      point,
    });
    expect(asked("cornersSquare", setOf([oblong("front"), basque("frontBasque")]))).toEqual([
      of("front", "centreNeck"),
      of("front", "centreWaist"),
      of("frontBasque", "centreWaist"),
      of("frontBasque", "centreHem"),
    ]);
  });

  // 1° of 200 mm is 3.491 mm.
  it.each([
    [3.48, true],
    [3.5, false],
    [-3.48, true],
    [-3.5, false],
  ])("a waist that falls by %d mm to the side: %s", (fall, ok) => {
    const [, waist] = asked("cornersSquare", setOf([at(oblong("front"), "sideWaist", 200, 400 + fall)]));
    expect(waist).toMatchObject({ ok, measured: expect.closeTo(90 + (Math.atan(fall / 200) * 180) / Math.PI, 9) });
  });

  it("go by what was drawn, and then within 5°: a turn of 80 is a corner of 100", () => {
    const drawn = oblong("front", { drawnTurns: { centreWaist: 80 } });
    expect(asked("cornersSquare", setOf([drawn]))[1]).toMatchObject({ expected: 100, tolerance: 5, ok: false });
    // A fall of 200 tan 6° makes 96°, of 200 tan 4° 94°.
    const fallen = (degrees: number): PieceSet =>
      setOf([at(drawn, "sideWaist", 200, 400 + 200 * Math.tan((degrees * Math.PI) / 180))]);
    expect(asked("cornersSquare", fallen(5.1))[1]?.ok).toBe(true);
    expect(asked("cornersSquare", fallen(4.9))[1]?.ok).toBe(false);
  });
});

describe("seams that walk", () => {
  const side = (measured: number, ok: boolean, expected = 0): CheckResult => ({
    name: "seamsWalk",
    ok,
    measured: expect.closeTo(measured, 6),
    expected,
    tolerance: 0.05,
    unit: "mm",
    pieces: ["back", "front"],
    seam: "side",
  });

  it.each([
    [0, true],
    [0.04, true],
    [-0.04, true],
    [0.06, false],
    [-0.06, false],
  ])("the side of the back %d mm longer", (by, ok) => {
    // Its armpit so much higher, straight up.
    const back = at(oblong("back"), "underarm", 200, -by);
    expect(asked("seamsWalk", setOf([oblong("front"), back]))).toEqual([side(by, ok)]);
  });

  it("but for the ease that the pattern itself has there", () => {
    const back = at(oblong("back", { seamEase: { side: 7 } }), "underarm", 200, -7);
    expect(asked("seamsWalk", setOf([oblong("front"), back]))).toEqual([side(7, true, 7)]);
    expect(asked("seamsWalk", setOf([oblong("front"), oblong("back", { seamEase: { side: 7 } })]))).toEqual([
      side(0, false, 7),
    ]);
  });

  it("over all the pieces of a side: a basque against both parts of a front", () => {
    const half = (name: "centreFront" | "sideFront", width: number): Piece => ({
      ...basque("frontBasque"),
      name,
      points: {
        centreWaist: named(0, 0, "waist"),
        sideWaist: named(width, 0, "waist"),
        sideHip: named(width, 100, "hip"),
        sideHem: named(width, 150, "hip"),
        centreHem: named(0, 150, "hip"),
      },
    });
    const pieces = setOf([half("centreFront", 80), half("sideFront", 125), basque("frontBasque")]);
    expect(asked("seamsWalk", pieces).find(({ seam }) => seam === "waist")).toEqual({
      name: "seamsWalk",
      ok: false,
      measured: expect.closeTo(5, 6),
      expected: 0,
      tolerance: 0.05,
      unit: "mm",
      pieces: ["centreFront", "sideFront", "frontBasque"],
      seam: "waist",
    });
  });
});

describe("halves that walk", () => {
  const walked = (left: PieceSet, right: PieceSet): readonly CheckResult[] =>
    CHECKS.halvesWalk(contextOf(left, { halves: [left, right] }));
  const centre = (pieces: readonly PieceName[], measured: number, ok: boolean): CheckResult => ({
    name: "halvesWalk",
    ok,
    measured: expect.closeTo(measured, 6),
    expected: 0,
    tolerance: 0.5,
    unit: "mm",
    pieces,
    seam: "centre",
  });
  const fold = (measured: number, ok: boolean): CheckResult => ({
    name: "halvesWalk",
    ok,
    measured: expect.closeTo(measured, 6),
    expected: 0,
    tolerance: 0.05,
    unit: "mm",
    pieces: ["front"],
  });

  it("are not asked where both halves are one", () => {
    expect(walked(bodice, bodice)).toEqual([]);
  });

  it.each([
    [0.4, true],
    [0.6, false],
    [-0.4, true],
    [-0.6, false],
  ])("the left centre %d mm longer", (by, ok) => {
    const left = setOf([at(oblong("front"), "centreWaist", 0, 400 + by), oblong("back")]);
    expect(walked(left, bodice)).toEqual([centre(["front"], by, ok), centre(["back"], 0, true)]);
  });

  it("name both pieces where a half is cut in two", () => {
    const right = setOf([oblong("centreFront")]);
    expect(walked(setOf([oblong("front")]), right)).toEqual([centre(["front", "centreFront"], 0, true)]);
  });

  it("lie straight on a fold: as far off as the corner, or the handle, that is furthest from the line of the ends", () => {
    const onFold = oblong("front", { centreOnFold: true });
    const folded = (left: Piece, right: Piece): CheckResult | undefined => walked(setOf([left]), setOf([right]))[1];
    expect(folded(onFold, { ...onFold })).toEqual(fold(0, true));
    expect(folded(at(onFold, "centreBust", 0.04, 200), onFold)).toEqual(fold(0.04, true));
    expect(folded(onFold, at(onFold, "centreBust", -3, 200))).toEqual(fold(3, false));
    const bowed: Piece = {
      ...onFold,
      edges: onFold.edges.map((edge) =>
        edge.from === "centreWaist" ? { ...edge, curve: { c1: piecePoint(1, 330), c2: piecePoint(-2, 260) } } : edge,
      ),
    };
    expect(folded(bowed, onFold)).toEqual(fold(2, false));
    // A slanting fold is straight too: no point lies off the line from end to end.
    const slanting = at(at(onFold, "centreWaist", 20, 400), "centreBust", 10, 200);
    expect(folded(slanting, slanting)).toEqual(fold(0, true));
  });

  it("and not where one half has a seam there", () => {
    const onFold = oblong("front", { centreOnFold: true });
    expect(walked(setOf([onFold]), setOf([at(oblong("front"), "centreBust", 5, 200)]))).toHaveLength(1);
  });
});

describe("legs of a dart", () => {
  const pieces = (drawnLegs?: number): PieceSet =>
    setOf([darted("front", drawnLegs === undefined ? {} : { drawnLegs })]);
  const legs = (by: number, set: PieceSet): readonly CheckResult[] =>
    asked("dartLegsEqual", set, { darts: [{ ref: waistDart, drawn: figures({ legOuter: 102 + by }) }] });

  it.each([
    [0.04, undefined, true],
    [-0.04, undefined, true],
    [0.06, undefined, false],
    [-0.06, undefined, false],
    [3.04, 3, true],
    [0, 3, false],
  ])("the outer %d mm longer, drawn longer by %s", (by, drawn, ok) => {
    expect(legs(by, pieces(drawn))).toEqual([
      {
        name: "dartLegsEqual",
        ok,
        measured: expect.closeTo(by, 9),
        expected: drawn ?? 0,
        tolerance: 0.05,
        unit: "mm",
        pieces: ["front"],
        dart: "waistDart",
      },
    ]);
  });

  it("are as each dart was drawn, and not as another", () => {
    const [dart] = darted("front").darts;
    if (dart === undefined) throw new Error("no dart");
    const both = setOf([
      {
        ...darted("front"),
        darts: [
          { ...dart, name: "waistDart2", drawnLegs: 7, gathered: true },
          { ...dart, drawnLegs: 3 },
        ],
      },
      darted("back", { drawnLegs: 5 }),
    ]);
    const darts = (["front", "back"] as const).map((piece) => ({
      ref: { piece, dart: "waistDart" } as const,
      drawn: figures({}),
    }));
    expect(asked("dartLegsEqual", both, { darts }).map(({ expected }) => expected)).toEqual([3, 5]);
  });

  it("are asked of no gathers", () => {
    expect(legs(9, setOf([darted("front", { gathered: true })]))).toEqual([]);
  });
});

describe("a dart's end against the bust point", () => {
  const ended = (name: CheckName, along: number, across: number): readonly CheckResult[] =>
    asked(name, bodice, { darts: [{ ref: waistDart, drawn: figures({ end: { along, across } }) }] });

  it.each([
    [9.9, 10, false],
    [10, 10, true],
    [35, 35, true],
    [60, 60, true],
    [60.1, 60, false],
  ])("%d mm short of it", (along, expected, ok) => {
    expect(ended("dartEndShortOfBustPoint", along, 0)).toEqual([
      {
        name: "dartEndShortOfBustPoint",
        ok,
        measured: along,
        expected,
        tolerance: 0,
        unit: "mm",
        pieces: ["front"],
        dart: "waistDart",
      },
    ]);
  });

  it.each([
    [25, true],
    [25.1, false],
    [-25, true],
    [-25.1, false],
  ])("%d mm beside it", (across, ok) => {
    expect(ended("dartPointsAtBustPoint", 20, across)).toEqual([
      {
        name: "dartPointsAtBustPoint",
        ok,
        measured: across,
        expected: 0,
        tolerance: 25,
        unit: "mm",
        pieces: ["front"],
        dart: "waistDart",
      },
    ]);
  });

  it("is not asked of a dart that serves no bust", () => {
    const darts = [{ ref: waistDart, drawn: figures({}) }];
    expect(asked("dartEndShortOfBustPoint", bodice, { darts })).toEqual([]);
    expect(asked("dartPointsAtBustPoint", bodice, { darts })).toEqual([]);
  });
});

describe("corners that come together", () => {
  const joined = (point: PointName, measured: number, ok: boolean): CheckResult => ({
    name: "joinedCornersStraight",
    ok,
    measured: expect.closeTo(measured, 9),
    expected: 180,
    tolerance: 3,
    unit: "degrees",
    pieces: ["front", "back"],
    point,
  });
  const steep = (degrees: number): number => 200 * Math.tan((degrees * Math.PI) / 180);

  it.each([
    [2.9, true],
    [3.1, false],
    [-2.9, true],
    [-3.1, false],
  ])("an armpit cut %d° sharper in front", (degrees, ok) => {
    // The neck edge rises to the centre by that: between it and the side it is wider below, so the corner is smaller by it.
    const front = at(oblong("front"), "centreNeck", 0, steep(degrees));
    expect(asked("joinedCornersStraight", setOf([front, oblong("back")]))).toEqual([
      joined("underarm", 180 - degrees, ok),
      joined("sideWaist", 180, true),
    ]);
  });

  it("go by what both were drawn with: turns of 95 and 88 leave 85 and 92, in all 177", () => {
    const front = oblong("front", { drawnTurns: { underarm: 95 } });
    const back = oblong("back", { drawnTurns: { underarm: 88 } });
    expect(asked("joinedCornersStraight", setOf([front, back]))[0]).toMatchObject({ expected: 177, ok: true });
    // One alone says nothing of the two.
    expect(asked("joinedCornersStraight", setOf([front, oblong("back")]))[0]).toMatchObject({ expected: 180 });
  });

  it("across a shut dart: a level seam and legs of 20 over 100 leave 90° and the half angle on either side", () => {
    const half = (Math.atan(20 / 100) * 180) / Math.PI;
    const across = (drawnTurn?: number): readonly CheckResult[] =>
      asked("joinedCornersStraight", setOf([darted("front", drawnTurn === undefined ? {} : { drawnTurn })]));
    const dart: CheckResult = {
      name: "joinedCornersStraight",
      ok: false,
      measured: expect.closeTo(180 + 2 * half, 9),
      expected: 180,
      tolerance: 3,
      unit: "degrees",
      pieces: ["front"],
      seam: "waist",
      dart: "waistDart",
    };
    expect(across()).toEqual([dart]);
    expect(across(-20)).toEqual([{ ...dart, ok: true, expected: expect.closeTo(200, 9) }]);
    expect(asked("joinedCornersStraight", setOf([darted("front", { gathered: true })]))).toEqual([]);
  });
});

describe("corners within a seam", () => {
  const smooth = (piece: Piece): readonly CheckResult[] => asked("seamsSmooth", setOf([piece]));
  const worst = (seam: "side" | "centre", point: PointName, degrees: number, ok: boolean): CheckResult => ({
    name: "seamsSmooth",
    ok,
    measured: expect.closeTo(degrees, 9),
    expected: 0,
    tolerance: 5,
    unit: "degrees",
    pieces: ["front"],
    seam,
    point,
  });
  /** Aside by so much in the middle of 400: it turns by twice the slope. */
  const turn = (aside: number): number => (2 * Math.atan(aside / 200) * 180) / Math.PI;

  // 2.5° of 200 mm is 8.732 mm.
  it.each([
    [8.7, true],
    [8.8, false],
    [-8.7, true],
    [-8.8, false],
  ])("the side %d mm further out at the bust", (out, ok) => {
    expect(smooth(at(oblong("front"), "sideBust", 200 + out, 200))).toEqual([
      worst("side", "sideBust", Math.abs(turn(out)), ok),
      worst("centre", "centreBust", 0, true),
    ]);
  });

  it("less what was drawn", () => {
    const drawn = at(oblong("front", { drawnTurns: { sideBust: turn(20) } }), "sideBust", 220, 200);
    expect(smooth(drawn)[0]).toEqual(worst("side", "sideBust", 0, true));
  });

  it("the sharpest of each seam, the seam that the ring begins in too; none over a dart, and none of an unnamed edge", () => {
    const front = at(oblong("front"), "sideBust", 204, 200);
    const [, ...rest] = front.edges;
    const long: Piece = {
      ...front,
      points: { ...front.points, sideHip: named(203, 300, "hip") },
      edges: [
        straight("sideBust", "sideHip", "side"),
        straight("sideHip", "sideWaist", "side"),
        ...rest.slice(2),
        straight("centreNeck", "underarm", "neck"),
        straight("underarm", "sideBust", "side"),
      ],
    };
    // At the bust: out by 4 over 200, back by 1 over 100. At the hip: from 1 over 100 to 3 over 100.
    const slope = (across: number, along: number): number => (Math.atan(across / along) * 180) / Math.PI;
    expect(slope(4, 200) + slope(1, 100)).toBeGreaterThan(slope(3, 100) - slope(1, 100));
    expect(smooth(long)[0]).toEqual(worst("side", "sideBust", slope(4, 200) + slope(1, 100), true));
    const sharperLater = { ...long, points: { ...long.points, sideHip: named(206, 300, "hip") } } satisfies Piece;
    expect(smooth(sharperLater)[0]).toEqual(worst("side", "sideHip", slope(2, 100) + slope(6, 100), true));
    expect(smooth(darted("front")).map(({ seam }) => seam)).toEqual(["side", "centre"]);
    const unnamed = { ...front, edges: front.edges.map((edge) => ({ ...edge, seam: "edge" as const })) };
    expect(smooth(unnamed)).toEqual([]);
  });
});

describe("straps", () => {
  /** The strap's seam 30 wide, `reach` below the shoulder. */
  const foot = (name: "cup" | "back", reach: number, width = 30): Piece => ({
    ...oblong(name),
    points: {
      ...oblong(name).points,
      strapInner: named(100, 0, "bust"),
      strapOuter: named(100 + width, 0, "bust"),
      strapAim: named(100 + width / 2, -reach, "shoulder"),
    },
    edges: [straight("strapInner", "strapOuter", "strap")],
  });
  const strapOf = (length: number): Piece => ({
    ...oblong("strap"),
    points: {
      strapFrontInner: named(0, 0, "shoulder"),
      strapFrontOuter: named(30, 0, "shoulder"),
      strapBackOuter: named(30, length, "shoulder"),
      strapBackInner: named(0, length, "shoulder"),
    },
    edges: [
      straight("strapFrontInner", "strapFrontOuter", "strap"),
      straight("strapFrontOuter", "strapBackOuter", "edge"),
      straight("strapBackOuter", "strapBackInner", "strap"),
      straight("strapBackInner", "strapFrontInner", "edge"),
    ],
  });
  const base = { name: "strapsReach", unit: "mm", seam: "strap" } as const;
  const reached = (strap: Piece, width = 30): readonly CheckResult[] =>
    asked("strapsReach", setOf([strap, foot("cup", 100, width), foot("back", 120)]));

  // 100 and 120 of way, of which a strap gives 20, measured by hand to 1.
  it.each([
    [220, true],
    [199.01, true],
    [199, true],
    [198.99, false],
  ])("of %d mm, over a way of 220", (length, ok) => {
    const width = { ...base, ok: true, measured: 30, expected: 30, tolerance: 0.05 };
    expect(reached(strapOf(length))).toEqual([
      { ...base, ok, measured: length, expected: 200, tolerance: 1, pieces: ["strap"] },
      { ...width, pieces: ["strap", "cup"] },
      { ...width, pieces: ["strap", "back"] },
    ]);
  });

  it.each([
    [30.04, true],
    [30.06, false],
    [29.94, false],
  ])("as wide as their seam of %d mm", (width, ok) => {
    expect(reached(strapOf(220), width)[1]).toMatchObject({ measured: 30, expected: expect.closeTo(width, 9), ok });
  });

  it("are asked of nothing that has none", () => {
    const all = { strap: strapOf(220), cup: foot("cup", 100), back: foot("back", 120) };
    for (const gone of ["strap", "cup", "back"] as const) {
      const { [gone]: _, ...rest } = all;
      expect(asked("strapsReach", rest)).toEqual([]);
    }
  });
});

describe("the rest", () => {
  it("an outline that crosses itself once has one fault; each piece is told by itself", () => {
    const closed = (piece: PieceName, measured: number): CheckResult => ({
      name: "outlineClosed",
      ok: measured === 0,
      measured,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: [piece],
    });
    expect(asked("outlineClosed", bodice)).toEqual([closed("front", 0), closed("back", 0)]);
    const bow: Piece = {
      ...basque("frontBasque"),
      points: { ...basque("frontBasque").points, sideHem: named(0, 150, "hip"), centreHem: named(200, 150, "hip") },
    };
    const [crossed] = asked("outlineClosed", setOf([bow]));
    expect(crossed?.ok).toBe(false);
    expect(crossed?.measured).toBeGreaterThanOrEqual(1);
  });

  it("alterations that were refused are counted, their pieces named once", () => {
    const refused = { ok: false, failure: null } as const;
    const made = { ok: true, value: null } as const;
    const of = (...alterations: CheckContext["alterations"]): readonly CheckResult[] =>
      asked("alterationsMade", bodice, { alterations });
    const base = { name: "alterationsMade", expected: 0, tolerance: 0, unit: "faults" } as const;
    expect(of()).toEqual([{ ...base, ok: true, measured: 0, pieces: [] }]);
    expect(of({ piece: "back", outcome: made })).toEqual([{ ...base, ok: true, measured: 0, pieces: [] }]);
    expect(
      of(
        { piece: "front", outcome: refused },
        { piece: "back", outcome: made },
        { piece: "front", outcome: refused },
        { piece: "back", outcome: refused },
      ),
    ).toEqual([{ ...base, ok: false, measured: 3, pieces: ["front", "back"] }]);
  });

  it.each([
    [0.04, true],
    [-0.04, true],
    [0.06, false],
    [-0.06, false],
  ])("a girth %d mm off its claim; the pieces that it is measured on", (by, ok) => {
    const levels = (["bust", "waist", "hip"] as const).map((level) => ({ level, claim: 800, finished: 800 + by }));
    const of = (level: "bust" | "waist" | "hip", pieces: readonly PieceName[]): CheckResult => ({
      name: "girthAsClaimed",
      ok,
      measured: 800 + by,
      expected: 800,
      tolerance: 0.05,
      unit: "mm",
      pieces,
      level,
    });
    expect(asked("girthAsClaimed", { ...dressed, other1: oblong("other1", { levelLines: [] }) }, { levels })).toEqual([
      of("bust", ["front", "back"]),
      of("waist", ["front", "back"]),
      of("hip", ["frontBasque", "backBasque"]),
    ]);
  });

  it("all are run in the order in which they are shown, but for one that is left out", () => {
    const context = contextOf(dressed, {
      levels: [{ level: "bust", claim: 800, finished: 800 }],
      darts: [{ ref: waistDart, drawn: figures({ end: { along: 20, across: 0 } }) }],
      closure: { place: "side", belowWaist: 0 },
    });
    const order: readonly CheckName[] = [
      "alterationsMade",
      "girthAsClaimed",
      "seamsWalk",
      "dartLegsEqual",
      "dartEndShortOfBustPoint",
      "dartPointsAtBustPoint",
      "cornersSquare",
      "joinedCornersStraight",
      "seamsSmooth",
      "openingPasses",
      "outlineClosed",
    ];
    const namesOf = (results: readonly CheckResult[]): readonly CheckName[] => [
      ...new Set(results.map(({ name }) => name)),
    ];
    expect(namesOf(runChecks(context))).toEqual(order);
    expect(namesOf(runChecks(context, "cornersSquare"))).toEqual(order.filter((name) => name !== "cornersSquare"));
    expect(runChecks(context, "cornersSquare")).toEqual(
      runChecks(context).filter(({ name }) => name !== "cornersSquare"),
    );
  });
});
