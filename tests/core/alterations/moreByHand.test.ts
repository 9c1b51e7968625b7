/** Darts moved and split on straight pieces; straps, bands and princess waists of drafted garments, by their lengths. */
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { fitOf } from "../../../src/core/alterations/fit/index";
import type { FitApplied } from "../../../src/core/alterations/outcome/definition";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { angleAt, piecePoint } from "../../../src/core/geometry/point";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { pointOf, type DartHome, type DartName, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { bustPointOf, changedPieces, garment, STYLE_NAMES } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderDartInner", 90, 0, "shoulder", "shoulderDart"],
  ["shoulderDartOuter", 110, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 320, "waist"],
  ["waistDartOuter", 112, 320, "waist", "waistDart"],
  ["waistDartInner", 88, 320, "waist"],
  ["centreWaist", 0, 320, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const front = cornerPiece({
  corners: CORNERS,
  inside: {
    bustPoint: [100, 120],
    bustLineInner: [100, 120],
    bustLineOuter: [100, 120],
    shoulderDartApex: [100, 90],
    waistDartApex: [100, 145],
  },
  darts: [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")],
  levelLines: [{ level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } }],
});
const bust = piecePoint(100, 120);
const applied = (alteration: Alteration, pieces: PieceSet = setOf([front])) => {
  const done = applyAlteration(pieces, alteration, { bustPoint: bust });
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
};
const refusal = (alteration: Alteration, pieces: PieceSet = setOf([front])): unknown => {
  const done = applyAlteration(pieces, alteration, { bustPoint: bust });
  return done.ok ? null : done.failure;
};
const openingOf = (piece: Piece, dart: DartName): number =>
  angleAt(bust, pointOf(piece, `${dart}Inner`), pointOf(piece, `${dart}Outer`));
const apart = (piece: Piece, a: PointName, b: PointName): number =>
  Math.hypot(pointOf(piece, a).x - pointOf(piece, b).x, pointOf(piece, a).y - pointOf(piece, b).y);
const shoulderDart = { piece: "front", dart: "shoulderDart" } as const;
const waistDart = { piece: "front", dart: "waistDart" } as const;

describe("a dart moved to the side", () => {
  const pivot = (
    share: number,
    dart: typeof shoulderDart | typeof waistDart = shoulderDart,
    to: DartHome = "side",
  ): Alteration => ({ kind: "dartPivot", id: "a", dart, to, share });
  const whole = 2 * Math.atan(10 / 120);

  it.each([1, 0.5, 0.25])("has its share of the angle there, about the bust point: %d", (share) => {
    const { pieces, trace } = applied(pivot(share));
    const piece = pieceIn(pieces, "front");
    expect(Math.abs(openingOf(piece, "sideDart") - share * whole)).toBeLessThan(0.002);
    const names = piece.darts.map(({ name }) => name).toSorted();
    expect(names).toEqual(share === 1 ? ["sideDart", "waistDart"] : ["shoulderDart", "sideDart", "waistDart"]);
    // A mouth of 20; 45 mm below the bust line of a side of 220.
    const { closed, left, opened, stop, fromStart, fromEnd } = trace.values;
    expect([closed, left, fromStart, fromEnd]).toEqual(
      [20 * share, 20 * (1 - share), 65, 155].map((n) => expect.closeTo(n, 6)),
    );
    expect(opened).toBeCloseTo(apart(piece, "sideDartInner", "sideDartOuter"), 6);
    expect(opened).toBeCloseTo(2 * Math.hypot(100, 45) * Math.sin((share * whole) / 2), 1);
    const apex = pointOf(piece, "sideDartApex");
    expect(Math.abs(Math.hypot(apex.x - 100, apex.y - 120) - (stop ?? 0))).toBeLessThan(0.05);
    for (const seam of ["shoulder", "side", "neck", "armhole", "waist"] as const)
      expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(front, seam), 2);
    expect(trace.surgery[0]?.hinges).toEqual([bust]);
    // The waist and the centre do not turn.
    for (const name of ["centreNeck", "centreWaist", "waistDartInner", "waistDartApex"] as const)
      expect(pointOf(piece, name)).toEqual(pointOf(front, name));
  });

  it("adds to the dart that it finds there", () => {
    const once = applied(pivot(1)).pieces;
    const { pieces, trace } = applied(pivot(0.5, waistDart), once);
    const [before, after] = [pieceIn(once, "front"), pieceIn(pieces, "front")];
    const half = Math.atan(12 / 200);
    expect(Math.abs(openingOf(after, "sideDart") - whole - half)).toBeLessThan(0.003);
    expect(Math.abs(openingOf(after, "waistDart") - half)).toBeLessThan(0.003);
    expect(trace.values.opened).toBeCloseTo(
      apart(after, "sideDartInner", "sideDartOuter") - apart(before, "sideDartInner", "sideDartOuter"),
      6,
    );
    expect(after.darts).toHaveLength(2);
  });

  it("is refused where it, or what stays, would be under 3 mm wide", () => {
    // 3 of the 20 of the mouth stay at 0.85.
    const narrow = refusal(pivot(0.9));
    expect(narrow).toEqual({ code: "alteration/dart-vanishes", smallest: 3, would: expect.closeTo(2, 1) });
    expect(refusal(pivot(0.1))).toEqual({
      code: "alteration/dart-vanishes",
      smallest: 3,
      would: expect.closeTo(2 * Math.hypot(100, 45) * Math.sin(whole / 20), 1),
    });
    expect(refusal(pivot(0))).toEqual({ code: "alteration/dart-vanishes", smallest: 3, would: 0 });
    expect(refusal(pivot(1, shoulderDart, "underBust"))).toEqual({ code: "alteration/not-on-this-style" });
    expect(refusal(pivot(1, shoulderDart, "shoulder"))).toEqual({
      code: "alteration/not-this-dart",
      dart: shoulderDart,
    });
  });
});

describe("a dart split", () => {
  const split = (into: 2 | 3): Alteration => ({ kind: "dartSplit", id: "a", dart: waistDart, into });

  it.each([2, 3] as const)(
    "into %d: equal angles, 28 mm apart (common practice: 25 to 30), each 5 mm shorter for one more",
    (into) => {
      const { pieces, trace } = applied(split(into));
      const piece = pieceIn(pieces, "front");
      const names = (["waistDart", "waistDart2", "waistDart3"] as const).slice(0, into);
      expect(
        piece.darts
          .map(({ name }) => name)
          .filter((name) => name.startsWith("waist"))
          .toSorted(),
      ).toEqual(names);
      const each = (2 * Math.atan(12 / 200)) / into;
      for (const name of names) expect(Math.abs(openingOf(piece, name) - each)).toBeLessThan(0.003);
      const { strip, aside, stop, each: width, whole } = trace.values;
      // The one ended 25 mm short.
      expect([strip, aside, stop, whole]).toEqual(
        [28, 14 * (into - 1), 25 + 5 * (into - 1), 24].map((n) => expect.closeTo(n, 6)),
      );
      expect(width).toBeCloseTo(apart(piece, "waistDartInner", "waistDartOuter"), 6);
      expect(trace.surgery).toHaveLength(2);
      expect(seamByBezierJs(piece, "waist")).toBeCloseTo(176, 2);
      // From the centre on: the first lies nearest to it.
      const middles = names.map((name) => (pointOf(piece, `${name}Inner`).x + pointOf(piece, `${name}Outer`).x) / 2);
      expect(middles).toEqual(middles.toSorted((a, b) => a - b));
    },
  );

  it("is refused where the seam has no room for strips of 15 mm, or each would be under 3 mm", () => {
    const moved = cornerPiece({
      corners: CORNERS.map(([name, x, y, seam, mouth]): CornerOf => {
        const at = name === "waistDartOuter" ? 186 : name === "waistDartInner" ? 162 : x;
        return mouth === undefined ? [name, at, y, seam] : [name, at, y, seam, mouth];
      }),
      inside: { bustPoint: [100, 120], shoulderDartApex: [100, 90], waistDartApex: [174, 200] },
      darts: [dartFor("shoulderDart", "shoulder"), dartFor("waistDart", "waist")],
    });
    // 14 mm to the side, of which 10 stay: twice 4 for two.
    expect(refusal(split(2), setOf([moved]))).toEqual({ code: "alteration/off-the-seam", most: expect.closeTo(8, 0) });
    const narrow = cornerPiece({
      corners: CORNERS.map(([name, x, y, seam, mouth]): CornerOf => {
        const at = name === "waistDartOuter" ? 102.5 : name === "waistDartInner" ? 97.5 : x;
        return mouth === undefined ? [name, at, y, seam] : [name, at, y, seam, mouth];
      }),
      inside: { bustPoint: [100, 120], shoulderDartApex: [100, 90], waistDartApex: [100, 145] },
      darts: front.darts,
    });
    expect(refusal(split(2), setOf([narrow]))).toEqual({
      code: "alteration/dart-vanishes",
      smallest: 3,
      would: expect.closeTo(2.5, 2),
    });
    const thrice = applied(split(3)).pieces;
    expect(refusal(split(2), thrice)).toEqual({ code: "alteration/too-many-darts" });
  });
});

describe("fit alterations and what they are made on", () => {
  const all = STYLE_NAMES.map((style) => garment({ style }));

  it.each(FIT_NAMES)("%s: beyond what is ever sensible is refused with that, both ways", (fit) => {
    const pieces = all.find((one) => fitOf(fit).applies(one));
    if (pieces === undefined) throw new Error(fit);
    const context = { bustPoint: bustPointOf(pieces) };
    const { least, most } = fitOf(fit).range;
    expect(least <= 0 && most > 0).toBe(true);
    for (const [amount, to] of [
      [least - 1, least],
      [most + 1, most],
    ] as const)
      expect(applyAlteration(pieces, { kind: "fit", id: "a", fit, amount }, context)).toEqual({
        ok: false,
        failure: { code: "alteration/too-much", most: to },
      });
    // Nothing by hand is more than a hand's breadth and a half.
    expect(most - least).toBeLessThanOrEqual(250);
    const little = applyAlteration(pieces, { kind: "fit", id: "a", fit, amount: 2 }, context);
    if (!little.ok) throw new Error(JSON.stringify(little.failure));
    const changed = changedPieces(pieces, little.value.pieces);
    expect(changed.length).toBeGreaterThan(0);
    expect(fitOf(fit).madeOn).toEqual(expect.arrayContaining([...changed]));
  });

  const BY_STYLE: Readonly<Record<(typeof STYLE_NAMES)[number], readonly FitName[]>> = {
    sideDart: ["edgeGape", "bandDepth", "strapLength", "strapPlace", "strapWidth", "sideSeamUnderBust"],
    princessArmhole: ["edgeGape", "bandDepth", "strapLength", "strapPlace", "strapWidth", "sideSeamUnderBust"],
    princessShoulder: ["edgeGape", "bandDepth", "strapLength", "strapPlace", "strapWidth", "sideSeamUnderBust"],
    midriff: [
      "necklineGape",
      "lengthAboveBust",
      "lengthBelowBust",
      "shoulderSlope",
      "shoulderWidth",
      "forwardShoulder",
      "roundBack",
      "backNeckGape",
      "chestWidth",
      "backWidth",
    ],
  };
  it.each(STYLE_NAMES)("are all offered on %s but those of what it has not", (style) => {
    const pieces = garment({ style });
    expect(FIT_NAMES.filter((fit) => !fitOf(fit).applies(pieces)).toSorted()).toEqual(BY_STYLE[style].toSorted());
  });
});

describe("straps and bands", () => {
  const pieces = garment({ style: "midriff" });
  const context = { bustPoint: bustPointOf(pieces) };
  const made = (fit: FitName, amount: number): FitApplied => {
    const done = fitOf(fit).apply(pieces, amount, context);
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    return done.value;
  };
  const failure = (fit: FitName, amount: number): unknown => {
    const done = fitOf(fit).apply(pieces, amount, context);
    return done.ok ? null : done.failure;
  };
  /** Of neckline and armhole 15 mm stay on both pieces. */
  const room = (seam: "neck" | "armhole"): number =>
    Math.min(...(["cup", "back"] as const).map((name) => seamByBezierJs(pieceIn(pieces, name), seam) - 15));

  it("go towards the neck or the shoulder's end, as far as there is edge", () => {
    const { pieces: after, values } = made("strapPlace", 8);
    expect(values).toEqual({});
    for (const name of ["cup", "back"] as const) {
      const [was, is] = [pieceIn(pieces, name), pieceIn(after, name)];
      expect(apart(is, "strapInner", "strapOuter")).toBeCloseTo(40, 6);
      for (const corner of ["strapInner", "strapOuter", "strapAim"] as const) {
        const [a, b] = [pointOf(was, corner), pointOf(is, corner)];
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(8, 6);
        expect(b.x).toBeLessThan(a.x);
      }
    }
    expect(after.strap).toBe(pieces.strap);
    expect(failure("strapPlace", room("neck") + 1)).toEqual({
      code: "alteration/too-much",
      most: expect.closeTo(room("neck"), 2),
    });
    expect(failure("strapPlace", -room("armhole") - 1)).toEqual({
      code: "alteration/too-much",
      most: expect.closeTo(-room("armhole"), 2),
    });
  });

  it("are wider by half at each edge, and never under 6 mm", () => {
    const { pieces: after, values } = made("strapWidth", -10);
    expect(values).toEqual({ half: 5 });
    for (const name of ["cup", "back"] as const) {
      expect(apart(pieceIn(after, name), "strapInner", "strapOuter")).toBeCloseTo(30, 6);
      expect(pointOf(pieceIn(after, name), "strapAim")).toEqual(pointOf(pieceIn(pieces, name), "strapAim"));
    }
    expect(apart(pieceIn(after, "strap"), "strapBackInner", "strapBackOuter")).toBeCloseTo(30, 6);
    expect(apart(pieceIn(after, "strap"), "strapFrontInner", "strapFrontOuter")).toBeCloseTo(30, 6);
    expect(failure("strapWidth", -34.1)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-34, 6) });
    expect(failure("strapWidth", -33.9)).toBeNull();
    const most = 2 * Math.min(room("neck"), room("armhole"));
    expect(failure("strapWidth", most + 1)).toEqual({ code: "alteration/too-much", most: expect.closeTo(most, 2) });
  });

  it("of the midriff are deeper by the amount at centre and side, their seams as they were", () => {
    const { pieces: after } = made("bandDepth", 12);
    for (const name of ["frontBand", "backBand"] as const) {
      const [was, is] = [pieceIn(pieces, name), pieceIn(after, name)];
      expect(seamByBezierJs(is, "centre")).toBeCloseTo(seamByBezierJs(was, "centre") + 12, 4);
      for (const seam of ["underBust", "waist"] as const)
        expect(seamByBezierJs(is, seam)).toBeCloseTo(seamByBezierJs(was, seam), 2);
    }
  });

  it("at the under-bust are let out by a quarter at each edge, and refused at what leans too far", () => {
    const { pieces: after, values, girths } = made("sideSeamUnderBust", 16);
    expect([values, girths]).toEqual([{ quarter: 4 }, undefined]);
    for (const name of ["cup", "frontBand", "back", "backBand"] as const)
      expect(seamByBezierJs(pieceIn(after, name), "underBust")).toBeCloseTo(
        seamByBezierJs(pieceIn(pieces, name), "underBust") + 4,
        4,
      );
    const far = fitOf("sideSeamUnderBust").apply(pieces, -400, context);
    const most = far.ok || far.failure.code !== "alteration/too-much" ? Number.NaN : far.failure.most;
    expect(most).toBeLessThan(-20);
    expect(fitOf("sideSeamUnderBust").apply(pieces, most, context).ok).toBe(true);
    expect(fitOf("sideSeamUnderBust").apply(pieces, most - 0.2, context).ok).toBe(false);
  });
});

describe("a princess waist lowered at the centre", () => {
  it("is cut 20 mm above it on both pieces, laid together over 40, and the basque 20 below", () => {
    const pieces = garment({ style: "princessShoulder" });
    const done = fitOf("waistDropFront").apply(pieces, 10, { bustPoint: bustPointOf(pieces) });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const { values, traces, pieces: after } = done.value;
    expect(values).toEqual({ above: 20, aboveAtSide: 20, square: 20, together: 40, below: 20, belowAtSide: 20 });
    expect(traces.map(({ piece }) => piece)).toEqual(["centreFront", "sideFront", "frontBasque"]);
    const lower =
      pointOf(pieceIn(after, "centreFront"), "centreWaist").y -
      pointOf(pieceIn(pieces, "centreFront"), "centreWaist").y;
    expect(Math.abs(lower - 10)).toBeLessThan(0.3);
    expect(seamByBezierJs(pieceIn(after, "sideFront"), "side")).toBeCloseTo(
      seamByBezierJs(pieceIn(pieces, "sideFront"), "side"),
      1,
    );
    for (const name of ["centreFront", "sideFront"] as const)
      expect(
        Math.abs(seamByBezierJs(pieceIn(after, name), "waist") - seamByBezierJs(pieceIn(pieces, name), "waist")),
      ).toBeLessThan(0.1);
  });
});

describe("the height of the bust point", () => {
  const lying = cornerPiece({
    corners: CORNERS.flatMap((corner): CornerOf[] =>
      corner[0] === "sideBust"
        ? [corner, ["sideDartInner", 200, 150, "side", "sideDart"], ["sideDartOuter", 200, 170, "side"]]
        : [corner],
    ),
    inside: { bustPoint: [100, 160], waistDartApex: [100, 185], sideDartApex: [130, 160] },
    darts: [dartFor("waistDart", "waist", "bustPoint"), dartFor("sideDart", "side", "bustPoint")],
  });
  const context = { bustPoint: piecePoint(100, 160) };
  const pieces = setOf([lying]);
  const level = fitOf("bustPointLevel");

  it("goes with the ends of its darts, and with the mouth of one in the side", () => {
    const done = level.apply(pieces, 5, context);
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const piece = pieceIn(done.value.pieces, "front");
    for (const [name, x, y] of [
      ["bustPoint", 100, 165],
      ["waistDartApex", 100, 190],
      ["sideDartApex", 130, 165],
    ] as const)
      expect(pointOf(piece, name)).toEqual(piecePoint(x, y));
    // The dart lies level: its mouth slides straight down.
    expect(Math.abs(pointOf(piece, "sideDartInner").y - 155)).toBeLessThan(0.05);
    expect(Math.abs(pointOf(piece, "sideDartOuter").y - 175)).toBeLessThan(0.05);
    expect(Math.abs(pointOf(piece, "waistDartInner").x - 88)).toBeLessThan(0.2);
    for (const seam of ["side", "waist"] as const)
      expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(lying, seam), 4);
    expect(done.value.values.walked).toBe(0);
  });

  it("leaves 22 mm of the side beside a mouth, and three quarters of a dart whose mouth stays", () => {
    const most = (amount: number): unknown => {
      const done = level.apply(pieces, amount, context);
      return done.ok ? null : done.failure;
    };
    // 30 mm of side above the mouth; a waist dart of 135 mm below.
    expect(most(-8.1)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-8, 9) });
    expect(most(-7.9)).toBeNull();
    expect(most(34)).toEqual({ code: "alteration/too-much", most: expect.closeTo(33.75, 9) });
    const short = setOf([
      { ...lying, points: { ...lying.points, waistDartApex: { at: piecePoint(100, 290), level: "bust" } } } as const,
    ]);
    // 30 mm long, of which 25 stay.
    const done = level.apply(short, 6, context);
    expect(done.ok ? null : done.failure).toEqual({ code: "alteration/too-much", most: expect.closeTo(5, 9) });
  });

  it("is asked of a front or a cup whose darts aim at it", () => {
    expect(level.applies(pieces)).toBe(true);
    expect(level.applies(setOf([{ ...lying, name: "cup" }]))).toBe(true);
    expect(level.applies(setOf([{ ...lying, name: "back" }]))).toBe(false);
    expect(level.applies(setOf([{ ...lying, darts: lying.darts.map((dart) => ({ ...dart, aimsAt: null })) }]))).toBe(
      false,
    );
  });
});

describe("legs bowed and darts joined", () => {
  it("bows the one dart that is meant, by an eighth of its mouth inwards at most and 6 mm outwards", () => {
    const bow = (by: number): Alteration => ({ kind: "dartLegs", id: "a", dart: waistDart, bow: by });
    const { pieces, trace } = applied(bow(2));
    expect(pieceIn(pieces, "front").darts.map(({ name, bow: has }) => [name, has])).toEqual([
      ["shoulderDart", undefined],
      ["waistDart", 2],
    ]);
    expect(trace.values).toEqual({ bow: 2 });
    // A mouth of 24.
    expect(refusal(bow(3.1))).toEqual({ code: "alteration/too-much", most: 3 });
    expect(refusal(bow(-6.1))).toEqual({ code: "alteration/too-much", most: -6 });
    expect(applied(bow(0)).trace.values).toEqual({});
  });

  it("joins an upper dart and the waist dart, a third one in the side then aiming at the seam", () => {
    const three = cornerPiece({
      corners: CORNERS.flatMap((corner): CornerOf[] =>
        corner[0] === "sideBust"
          ? [corner, ["sideDartInner", 200, 150, "side", "sideDart"], ["sideDartOuter", 200, 160, "side"]]
          : [corner],
      ),
      inside: {
        bustPoint: [100, 120],
        shoulderDartApex: [100, 90],
        waistDartApex: [100, 145],
        sideDartApex: [140, 140],
      },
      darts: [...front.darts, dartFor("sideDart", "side", "bustPoint")],
    });
    const joined = applied({ kind: "dartSeam", id: "a", dart: shoulderDart }, setOf([three]));
    expect(Object.keys(joined.pieces).toSorted()).toEqual(["centreFront", "sideFront"]);
    expect(pieceIn(joined.pieces, "sideFront").darts).toEqual([dartFor("sideDart", "side", "princessBust")]);
    expect(joined.trace.surgery[0]?.cuts).toEqual([[piecePoint(100, 0), piecePoint(100, 120), piecePoint(100, 320)]]);
    expect(refusal({ kind: "dartSeam", id: "a", dart: waistDart }, setOf([three]))).toEqual({
      code: "alteration/not-this-dart",
      dart: waistDart,
    });
    const noWaist = setOf([{ ...three, darts: three.darts.filter(({ name }) => name !== "waistDart") }]);
    expect(refusal({ kind: "dartSeam", id: "a", dart: shoulderDart }, noWaist)).toEqual({
      code: "alteration/not-on-this-style",
    });
  });
});
