/** Alterations on a garment of straight lines: where every point comes to lie, and what is refused, by Pythagoras and circles. */
import { describe, expect, it } from "vitest";
import type { FitName } from "../../../src/core/decisions/fitNames";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { bustLineKept } from "../../../src/core/alterations/dartSurgery/bustLine";
import { atLength, hasHome, placeOfDart, sewnLengthTo } from "../../../src/core/alterations/dartSurgery/places";
import { fitOf } from "../../../src/core/alterations/fit/index";
import type { FitApplied } from "../../../src/core/alterations/outcome/definition";
import { giveBackPlaces, sewn } from "../../../src/core/alterations/redraw/giveBack";
import { redrawDart } from "../../../src/core/alterations/redraw/redrawDart";
import type { DartRedraw } from "../../../src/core/decisions/alteration";
import { piecePoint } from "../../../src/core/geometry/point";
import { DART_HOMES } from "../../../src/core/pattern/dartNames";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { pointOf, type DartHome, type Piece, type PieceName, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";
import { straightNest } from "../../support/straightNest";

const [front, back] = invariant(
  straightNest([{ label: "", front: { bust: 200, waist: 200, dart: 20 }, back: { bust: 200, waist: 200, dart: 20 } }])
    .sizes[0],
  "size",
).pieces;
if (front === undefined || back === undefined) throw new Error("pieces");
const basque = (name: "frontBasque" | "backBasque", dartEnd: number | null = null): Piece =>
  cornerPiece({
    name,
    corners: [
      ["centreWaist", 0, 0, "waist"],
      ...(dartEnd === null
        ? []
        : ([
            ["waistDartInner", 80, 0, "waist", "waistDart"],
            ["waistDartOuter", 90, 0, "waist"],
          ] as const)),
      ["sideWaist", 180, 0, "side"],
      ["sideHip", 180, 200, "side"],
      ["sideHem", 180, 240, "hem"],
      ["centreHem", 0, 240, "centre"],
    ],
    ...(dartEnd === null
      ? {}
      : { inside: { waistDartApex: [85, dartEnd] as const }, darts: [dartFor("waistDart", "waist")] }),
  });
const garment = setOf([front, back, basque("frontBasque"), basque("backBasque")]);
const context = { bustPoint: piecePoint(95, 250) };

const made = (fit: FitName, amount: number, pieces: PieceSet = garment): FitApplied => {
  const done = fitOf(fit).apply(pieces, amount, context);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
};
const refused = (fit: FitName, amount: number, pieces: PieceSet = garment): unknown => {
  const done = fitOf(fit).apply(pieces, amount, context);
  return done.ok ? null : done.failure;
};
const placesOf = (piece: Piece): Record<string, readonly [number, number]> =>
  Object.fromEntries(
    Object.entries(piece.points).map(([name, { at }]) => [
      name,
      [Math.round(at.x * 1e5) / 1e5 + 0, Math.round(at.y * 1e5) / 1e5 + 0],
    ]),
  );
const places = (pieces: PieceSet, name: PieceName) => placesOf(pieceIn(pieces, name));
const near = (x: number, y: number): readonly [number, number] => [
  Math.round(x * 1e5) / 1e5 + 0,
  Math.round(y * 1e5) / 1e5 + 0,
];
const movedTo = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { ...invariant(piece.points[name], name), at: piecePoint(x, y) } },
});
const downBelow = (piece: Piece, y: number, by: number): Record<string, readonly [number, number]> =>
  Object.fromEntries(
    Object.entries(placesOf(piece)).map(([name, [x, at]]) => [
      name,
      at > y ? [x, Math.round((at + by) * 1e5) / 1e5] : [x, at],
    ]),
  );

describe("lengths", () => {
  it("above the bust: cut three quarters of the way from the shoulder's end to where the armhole turns", () => {
    const { pieces, values, traces } = made("lengthAboveBust", 20);
    expect(values).toEqual({ down: 75, walked: 0 });
    expect(traces.map(({ piece, cuts }) => [piece, cuts[0]?.[0]?.y])).toEqual([
      ["front", 115],
      ["back", 115],
    ]);
    expect(places(pieces, "front")).toEqual(downBelow(front, 115, 20));
    expect(places(pieces, "back")).toEqual(downBelow(back, 115, 20));
    // An armhole that turns in after 50 mm: of those, 20 stay.
    const short = setOf([movedTo(front, "armholeTouch", 160, 90), back]);
    expect(refused("lengthAboveBust", -35, short)).toEqual({ code: "alteration/too-much", most: -30 });
    expect(made("lengthAboveBust", -30, short).values).toEqual({ down: 37.5, walked: 0 });
    expect(fitOf("lengthAboveBust").applies(setOf([front]))).toBe(false);
    expect(fitOf("lengthAboveBust").applies(setOf([back]))).toBe(false);
  });

  it("below the bust: at two fifths of the way up, or half-way to a mouth in the side that lies lower", () => {
    const { pieces, values } = made("lengthBelowBust", 20);
    // The lower mouth end lies 90 above the waist.
    expect(values).toEqual({ height: 45, walked: 0 });
    expect(places(pieces, "front")).toMatchObject({
      sideWaist: [200, 420],
      centreWaist: [0, 420],
      sideDartOuter: [200, 310],
    });
    expect(places(pieces, "back")).toMatchObject({
      sideWaist: [200, 420],
      centreWaist: [0, 420],
      sideBust: [200, 250],
    });
    const plain: Piece = { ...front, darts: front.darts.filter(({ seam }) => seam === "waist") };
    expect(made("lengthBelowBust", 20, setOf([plain, back])).values.height).toBe(60);
    expect(fitOf("lengthBelowBust").applies(setOf([front]))).toBe(false);
    expect(fitOf("lengthBelowBust").applies(setOf([front, back, { ...front, name: "frontBand" }]))).toBe(false);
  });

  it("of the basque: two fifths of the way from the lowest dart's end to the hip, or half-way where darts reach it", () => {
    const cutAt = (one: number | null, other: number | null): number | undefined =>
      made("lengthBasque", 10, setOf([basque("frontBasque", one), basque("backBasque", other)])).traces[0]?.cuts[0]?.[0]
        ?.y;
    expect([cutAt(null, null), cutAt(100, 120), cutAt(120, null), cutAt(200, 50)]).toEqual([80, 152, 152, 100]);
    const { pieces } = made("lengthBasque", 10);
    expect(places(pieces, "frontBasque")).toEqual({
      centreWaist: [0, 0],
      sideWaist: [180, 0],
      sideHip: [180, 210],
      sideHem: [180, 250],
      centreHem: [0, 250],
    });
  });

  it("of the straps: cut in the middle; 20 mm of each edge stay", () => {
    const strap = cornerPiece({
      name: "strap",
      corners: [
        ["strapBackInner", 0, 0, "strap"],
        ["strapBackOuter", 12, 0, "armhole"],
        ["strapFrontOuter", 12, 100, "strap"],
        ["strapFrontInner", 0, 100, "neck"],
      ],
    });
    const { pieces, traces } = made("strapLength", 30, setOf([strap]));
    expect(places(pieces, "strap")).toMatchObject({
      strapBackInner: [0, 0],
      strapFrontOuter: [12, 130],
      strapFrontInner: [0, 130],
    });
    expect(traces[0]?.cuts[0]?.[0]?.y).toBe(50);
    expect(refused("strapLength", -81, setOf([strap]))).toEqual({ code: "alteration/too-much", most: -80 });
  });
});

describe("armholes and shoulders", () => {
  it("armhole depth: both underarms down their sides, of which 2 mm stay", () => {
    const { pieces } = made("armholeDepth", 10);
    expect(places(pieces, "front")).toEqual({ ...placesOf(front), underarm: [200, 210] });
    expect(places(pieces, "back")).toEqual({ ...placesOf(back), underarm: [200, 210] });
    const short = setOf([movedTo(front, "sideBust", 200, 220), back]);
    expect(refused("armholeDepth", 19, short)).toEqual({ code: "alteration/too-much", most: expect.closeTo(18, 3) });
  });

  it("width across chest and back: the fullest turn goes by half, all else stays", () => {
    const chest = made("chestWidth", 12);
    expect(places(chest.pieces, "front")).toEqual({ ...placesOf(front), armholeTouch: [166, 140] });
    // Three tenths down the lower armhole, from (160, 140) to (200, 200): 28 and 42 from the underarm.
    expect(chest.values).toEqual({ half: 6, apart: expect.closeTo(Math.hypot(28, 42), 9) });
    expect(chest.traces[0]?.cuts).toEqual(
      [
        [piecePoint(120, 20), piecePoint(120, 158), piecePoint(172, 158)].map(({ x, y }) => ({
          x: expect.closeTo(x, 9),
          y: expect.closeTo(y, 9),
        })),
      ].map((cut) => cut.map((corner) => expect.objectContaining(corner))),
    );
    const behind = made("backWidth", -8);
    expect(places(behind.pieces, "back")).toEqual({ ...placesOf(back), armholeTouch: [166, 140] });
    expect(behind.pieces.front).toBe(front);
  });

  it("shoulder width: the end goes straight on, and a hollow armhole starts flatter where it goes in", () => {
    const out = made("shoulderWidth", 10).pieces;
    const unit = Math.hypot(100, 40);
    expect(places(out, "front")).toEqual({ ...placesOf(front), shoulderTip: near(170 + 1000 / unit, 40 + 400 / unit) });
    const behind = Math.hypot(105, 40);
    expect(places(out, "back")).toEqual({
      ...placesOf(back),
      shoulderTip: near(175 + 1050 / behind, 40 + 400 / behind),
    });
    const hollow: Piece = {
      ...front,
      edges: front.edges.map((edge) =>
        edge.from === "shoulderTip" ? { ...edge, curve: { c1: piecePoint(165, 70), c2: piecePoint(155, 110) } } : edge,
      ),
    };
    const c1Of = (amount: number) => {
      const piece = pieceIn(made("shoulderWidth", amount, setOf([hollow, back])).pieces, "front");
      const tip = pointOf(piece, "shoulderTip");
      const { c1 } = invariant(piece.edges.find(({ from }) => from === "shoulderTip")?.curve, "curve");
      return [c1.x - tip.x, c1.y - tip.y];
    };
    // Of (−5, 30), a fiftieth less for each millimetre.
    for (const [amount, share] of [
      [-10, 0.8],
      [10, 1],
    ] as const) {
      expect(c1Of(amount)[0]).toBeCloseTo(-5 * share, 6);
      expect(c1Of(amount)[1]).toBeCloseTo(30 * share, 6);
    }
    expect(refused("shoulderWidth", -106)).toEqual({ code: "alteration/too-much", most: expect.closeTo(2 - unit, 3) });
  });

  it("slope: the shoulder's end rises on its circle, the armhole and the side with it", () => {
    const { pieces, values } = made("shoulderSlope", 10);
    expect(values).toEqual({ top: 0, within: 3 });
    const across = (run: number): number => Math.sqrt(run * run + 1600 - 900);
    expect(places(pieces, "front")).toEqual({
      ...placesOf(front),
      shoulderTip: near(70 + across(100), 30),
      armholeTouch: [160, 130],
      underarm: [200, 190],
    });
    expect(places(pieces, "back")).toEqual({
      ...placesOf(back),
      shoulderTip: near(70 + across(105), 30),
      armholeTouch: [170, 130],
      underarm: [200, 190],
    });
    expect(refused("shoulderSlope", -48.1)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-48, 3) });
  });

  it("forward shoulder: the ends go by a chord of the amount, down in front and up behind, by a quarter of the shoulder at most", () => {
    const { pieces, values } = made("forwardShoulder", 10);
    expect(values).toEqual({ top: 0, within: 2 });
    for (const [name, run, sign] of [
      ["front", 100, 1],
      ["back", 105, -1],
    ] as const) {
      const turn = sign * 2 * Math.asin(5 / Math.hypot(run, 40));
      const before = name === "front" ? front : back;
      expect(places(pieces, name)).toEqual({
        ...placesOf(before),
        shoulderTip: near(70 + run * Math.cos(turn) - 40 * Math.sin(turn), run * Math.sin(turn) + 40 * Math.cos(turn)),
      });
    }
    const most = Math.hypot(100, 40) / 4;
    expect(refused("forwardShoulder", 27)).toEqual({ code: "alteration/too-much", most: expect.closeTo(most, 9) });
    expect(refused("forwardShoulder", -27)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-most, 9) });
  });
});

describe("the back", () => {
  it("round: the neck turns about the armhole level with the blades, the centre opens by the amount", () => {
    const { pieces, values, traces } = made("roundBack", 10);
    // A fifth of 60 above the turn at 140; the armhole runs from (175, 40) to (170, 140).
    expect(values).toEqual({ below: 108 });
    const hinge = [175 - 5 * 0.88, 128] as const;
    const turn = 2 * Math.asin(5 / hinge[0]);
    const round = (x: number, y: number) =>
      near(
        hinge[0] + (x - hinge[0]) * Math.cos(turn) - (y - hinge[1]) * Math.sin(turn),
        hinge[1] + (x - hinge[0]) * Math.sin(turn) + (y - hinge[1]) * Math.cos(turn),
      );
    expect(places(pieces, "back")).toEqual({
      ...placesOf(back),
      centreNeck: round(0, 20),
      sideNeck: round(70, 0),
      shoulderTip: round(175, 40),
    });
    expect(pieceIn(pieces, "back").centreOnFold).toBe(false);
    expect(traces[0]?.hinges.map(({ x, y }) => near(x, y))).toEqual([near(...hinge)]);
    expect(pointOf(pieceIn(pieces, "back"), "centreNeck").y).toBeLessThan(20);
  });

  it("neck gape: half of it off each half, no more than bends the centre by 5 degrees", () => {
    const { pieces, values } = made("backNeckGape", 10);
    expect(values).toEqual({ half: 5 });
    const neck = Math.hypot(70, 20);
    expect(places(pieces, "back")).toEqual({ ...placesOf(back), centreNeck: near(350 / neck, 20 - 100 / neck) });
    expect(refused("backNeckGape", 41)).toEqual({
      code: "alteration/too-much",
      most: expect.closeTo(2 * 230 * Math.sin((5 * Math.PI) / 180), 9),
    });
    // A neck of 20 mm: half of it less 2.
    const small = setOf([front, movedTo(back, "sideNeck", 20, 20)]);
    expect(refused("backNeckGape", 17, small)).toEqual({ code: "alteration/too-much", most: expect.closeTo(16, 3) });
  });

  it.each([
    ["waistDropBack", "back", 10, 10],
    ["waistDropFront", "front", -8, -8],
    ["swayBack", "back", 10, -10],
  ] as const)("%s: the waist of the %s at the centre by %d, nothing at the side", (fit, name, amount, down) => {
    const { pieces, values } = made(fit, amount);
    expect(values).toEqual({
      above: 20,
      aboveAtSide: 20,
      square: 20,
      ...(fit === "swayBack" ? {} : { below: 20, belowAtSide: 20 }),
    });
    const piece = pieceIn(pieces, name);
    expect(pointOf(piece, "centreWaist").y).toBeCloseTo(400 + down, 6);
    expect(Math.hypot(pointOf(piece, "sideWaist").x - 200, pointOf(piece, "sideWaist").y - 400)).toBeLessThan(1.2);
    for (const seam of ["waist", "side"] as const)
      expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(name === "front" ? front : back, seam), 2);
    const other = pieces[name === "front" ? "frontBasque" : "backBasque"];
    const lowered = fit === "swayBack" ? 0 : down;
    expect(pointOf(invariant(other, "basque"), "centreWaist").y).toBeCloseTo(lowered, 6);
  });
});

describe("side seams", () => {
  it("at the hip: a quarter at each edge, of hip and hem alike", () => {
    const { pieces, values, girths } = made("sideSeamHip", 40);
    expect([values, girths]).toEqual([{ quarter: 10 }, { hip: 40 }]);
    for (const name of ["frontBasque", "backBasque"] as const)
      expect(places(pieces, name)).toMatchObject({ sideHip: [190, 200], sideHem: [190, 240], sideWaist: [180, 0] });
    expect(refused("sideSeamHip", -181)).toEqual({ code: "alteration/too-much", most: -180 });
    expect(made("sideSeamHip", -40).values).toEqual({ quarter: 10 });
  });

  it("at the waist: a quarter at each edge, the sides as long as they were", () => {
    const { pieces, values, girths } = made("sideSeamWaist", 40);
    expect([values, girths]).toEqual([{ quarter: 10 }, { waist: 40 }]);
    for (const piece of [front, back, basque("frontBasque")]) {
      const after = pieceIn(pieces, piece.name);
      expect(seamByBezierJs(after, "waist")).toBeCloseTo(seamByBezierJs(piece, "waist") + 10, 4);
      expect(seamByBezierJs(after, "side")).toBeCloseTo(seamByBezierJs(piece, "side"), 4);
      expect(pointOf(after, "sideWaist").x).toBeGreaterThan(pointOf(piece, "sideWaist").x);
    }
    // Between dart and side 95 mm lie, of which 2 stay.
    expect(refused("sideSeamWaist", -373)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-372, 2) });
  });

  it("at the bust: a quarter at each edge, nothing at the waist", () => {
    const { pieces, values, girths } = made("sideSeamBust", 24);
    expect([values, girths]).toEqual([{ quarter: 6 }, { bust: 24 }]);
    for (const name of ["front", "back"] as const)
      expect(places(pieces, name)).toMatchObject({
        sideBust: [206, 250],
        sideWaist: [200, 400],
        centreWaist: [0, 400],
      });
    // 15 in 100 of 200 mm.
    expect(refused("sideSeamBust", -121)).toEqual({ code: "alteration/too-much", most: expect.closeTo(-120, 9) });
  });
});

describe("any alteration", () => {
  const fit = (name: FitName, amount: number, half?: "left" | "right") =>
    applyAlteration(
      garment,
      { kind: "fit", id: "a", fit: name, amount, ...(half === undefined ? {} : { half }) },
      context,
    );
  const tooMuch = (most: number) => ({ ok: false, failure: { code: "alteration/too-much", most } });

  it("beyond what is ever sensible is refused with what is, and at it is made", () => {
    expect(fit("chestWidth", 31)).toEqual(tooMuch(30));
    expect(fit("chestWidth", -31)).toEqual(tooMuch(-30));
    expect([fit("chestWidth", 30).ok, fit("chestWidth", -30).ok]).toEqual([true, true]);
    // What is told of the whole body is half of it on one half; what is told of a half is that.
    expect(fit("chestWidth", 15.5, "left")).toEqual(tooMuch(15));
    expect(fit("armholeDepth", 31, "left")).toEqual(tooMuch(30));
    expect(fit("backNeckGape", 15.1, "right")).toEqual(tooMuch(15));
  });

  it("of nothing leaves all as it was", () => {
    expect(fit("chestWidth", 0)).toEqual({
      ok: true,
      value: {
        pieces: garment,
        truing: { inner: 0, outer: 0 },
        girths: {},
        trace: {
          piece: "front",
          surgery: [],
          values: {},
          before: {},
          after: {},
          moved: [],
          seam: null,
          seamBefore: 0,
          seamUngiven: 0,
          seamAfter: 0,
          given: [],
          notes: [],
        },
      },
    });
  });

  it("tells the pieces before and after, and what moved by more than half a millimetre", () => {
    const done = fit("armholeDepth", 10);
    if (!done.ok) throw new Error(done.failure.code);
    const { trace, pieces } = done.value;
    expect(Object.keys(trace.before)).toEqual(["front", "back"]);
    expect([trace.before.front, trace.after.front, trace.after.back]).toEqual([front, pieces.front, pieces.back]);
    expect(trace.moved).toEqual([
      { piece: "front", from: piecePoint(200, 200), to: piecePoint(200, 210) },
      { piece: "back", from: piecePoint(200, 200), to: piecePoint(200, 210) },
    ]);
    const little = fit("armholeDepth", 0.4);
    expect(little.ok && little.value.trace.moved).toEqual([]);
  });

  it("is refused on what the garment has not, and on a dart that is not there", () => {
    expect(fit("strapLength", 10)).toEqual({ ok: false, failure: { code: "alteration/not-on-this-style" } });
    const dart = { piece: "front", dart: "neckDart" } as const;
    expect(applyAlteration(garment, { kind: "dartGather", id: "a", dart }, context)).toEqual({
      ok: false,
      failure: { code: "alteration/no-such-dart", dart },
    });
    const elsewhere = { piece: "cup", dart: "waistDart" } as const;
    expect(applyAlteration(garment, { kind: "dartGather", id: "a", dart: elsewhere }, context)).toEqual({
      ok: false,
      failure: { code: "alteration/no-such-dart", dart: elsewhere },
    });
  });

  it("that would reach out of any bodice is refused, and so is an outline that crosses itself", () => {
    const far = setOf([movedTo(front, "centreWaist", 0, 3500), back]);
    expect(applyAlteration(far, { kind: "fit", id: "a", fit: "armholeDepth", amount: 5 }, context)).toMatchObject({
      ok: false,
      failure: { code: "alteration/out-of-reach", piece: "front", reach: 3500, furthest: 3000 },
    });
    const crossed = setOf([movedTo(front, "centreNeck", 120, -30), back]);
    expect(applyAlteration(crossed, { kind: "fit", id: "a", fit: "armholeDepth", amount: 5 }, context)).toEqual({
      ok: false,
      failure: { code: "alteration/outline-spoilt", piece: "front" },
    });
  });
});

describe("a dart redrawn", () => {
  const waistDart = { piece: "front", dart: "waistDart" } as const;
  const redraw = (alteration: DartRedraw, pieces: PieceSet = garment): unknown => {
    const done = redrawDart(pieces, alteration);
    return done.ok ? "made" : done.failure;
  };
  const end = (shorten: number, across = 0): DartRedraw => ({
    kind: "dartEnd",
    id: "a",
    dart: waistDart,
    shorten,
    across,
    hold: "mouth",
    giveBack: {},
  });
  const mouth = (inner: number, outer: number, giveBack = {}): DartRedraw => ({
    kind: "dartMouth",
    id: "a",
    dart: waistDart,
    inner,
    outer,
    giveBack,
  });
  const place = (by: number, how: "redraw" | "offCentreSeam"): DartRedraw => ({
    kind: "dartPlace",
    id: "a",
    dart: waistDart,
    by,
    how,
    giveBack: {},
  });

  it("is refused where too little is left of it, by the most that works", () => {
    // 125 mm long, of which 25 stay.
    expect(redraw(end(100.1))).toEqual({ code: "alteration/too-short", most: 100 });
    expect(redraw(end(100))).toBe("made");
    // 20 wide, of which 3 stay.
    expect(redraw(mouth(-9, -8.5))).toEqual({ code: "alteration/dart-vanishes", smallest: 3, would: 2.5 });
    expect(redraw(mouth(-8.5, -8.5))).toBe("made");
    // 95 mm to the side, 85 to the centre; 2 stay.
    expect(redraw(mouth(0, 93.1))).toEqual({ code: "alteration/off-the-seam", most: 93 });
    expect(redraw(mouth(83.1, 0))).toEqual({ code: "alteration/off-the-seam", most: 83 });
    expect(redraw(place(-85, "offCentreSeam"))).toEqual({ code: "alteration/off-the-seam", most: 85 });
    expect(redraw(place(85, "offCentreSeam"))).toEqual({ code: "alteration/off-the-seam", most: 85 });
  });

  it("is refused where it would end off the piece: as far as the shoulder above it", () => {
    // From 275 up to the shoulder's 10 at 95 across.
    expect(redraw(end(-300))).toEqual({ code: "alteration/end-outside-piece", most: expect.closeTo(265, 1) });
    expect(redraw(end(0, 96))).toEqual({ code: "alteration/end-outside-piece", most: expect.closeTo(95, 1) });
  });

  it("is refused where it is not there, is gathered, or its shares are no whole", () => {
    const noDart = { piece: "back", dart: "sideDart" } as const;
    expect(redraw({ ...end(5), dart: noDart })).toEqual({ code: "alteration/no-such-dart", dart: noDart });
    const gathered = setOf([
      { ...front, darts: front.darts.map((dart) => ({ ...dart, gathered: true as const })) },
      back,
    ]);
    expect(redraw(end(5), gathered)).toEqual({ code: "alteration/not-this-dart", dart: waistDart });
    expect(redraw(mouth(2, 2, { sideSeam: 0.5 }))).toEqual({ code: "alteration/shares-not-whole", sum: 0.5 });
    expect(redraw(mouth(2, 2, { sideSeam: 0.7, otherDart: 0.302 }))).toMatchObject({
      code: "alteration/shares-not-whole",
    });
    expect(redraw(mouth(2, 2, { sideSeam: 0.7, otherDart: 0.3005 }))).toBe("made");
    const side = { piece: "front", dart: "sideDart" } as const;
    expect(redraw({ kind: "dartPlace", id: "a", dart: side, by: 5, how: "offCentreSeam", giveBack: {} })).toEqual({
      code: "alteration/not-this-dart",
      dart: side,
    });
  });

  it("gives back at its side, and tells the seam before, without it, and after", () => {
    const done = redrawDart(garment, mouth(4, 4));
    if (!done.ok) throw new Error(done.failure.code);
    const { trace, truing, pieces } = done.value;
    expect([trace.seam, trace.piece, trace.notes]).toEqual(["waist", "front", []]);
    // Of front and back together, since the other dart could take it.
    expect(trace.seamBefore).toBeCloseTo(360, 6);
    expect(Math.abs(trace.seamUngiven - 352)).toBeLessThan(0.5);
    expect(trace.seamAfter).toBeCloseTo(360, 4);
    expect(trace.given).toEqual([{ place: "sideSeam", piece: "front", amount: expect.closeTo(-8, 0) }]);
    expect([truing.inner, truing.outer]).toEqual([0, 0]);
    expect(pointOf(pieceIn(pieces, "front"), "sideWaist").x).toBeGreaterThan(207);
    expect(seamByBezierJs(pieceIn(pieces, "front"), "side")).toBeCloseTo(170, 4);
    expect(pieces.back).toBe(back);
  });

  it("gives back at the other's dart, the basques' with it, or in the centre, which is a seam then", () => {
    const wide = setOf([front, back, basque("frontBasque", 100), basque("backBasque", 100)]);
    const other = redrawDart(wide, mouth(2, 2, { otherDart: 1 }));
    if (!other.ok) throw new Error(other.failure.code);
    const width = (name: PieceName): number => {
      const piece = pieceIn(other.value.pieces, name);
      return pointOf(piece, "waistDartOuter").x - pointOf(piece, "waistDartInner").x;
    };
    // 4 mm more on the front: as much less on the back, and the same below.
    for (const [name, wanted] of [
      ["front", 24],
      ["back", 16],
      ["frontBasque", 14],
      ["backBasque", 6],
    ] as const)
      expect(Math.abs(width(name) - wanted)).toBeLessThan(0.4);
    const centre = redrawDart(garment, mouth(-4, -4, { centreSeam: 1 }));
    if (!centre.ok) throw new Error(centre.failure.code);
    const piece = pieceIn(centre.value.pieces, "front");
    expect(piece.centreOnFold).toBe(false);
    expect(centre.value.trace.notes).toEqual([{ code: "centreNowSeam" }]);
    expect(Math.abs(pointOf(piece, "centreWaist").x - 8)).toBeLessThan(0.5);
    expect(pointOf(piece, "centreWaist").y).toBe(400);
    expect(pointOf(piece, "sideWaist")).toEqual(piecePoint(200, 400));
    // A back dart that cannot become so much narrower.
    expect(redraw(mouth(9, 9, { otherDart: 1 }), wide)).toMatchObject({
      code: "alteration/dart-vanishes",
      dart: { piece: "back", dart: "waistDart" },
    });
  });

  it("moved along its seam goes with its end, towards the centre where positive", () => {
    const done = redrawDart(garment, place(6, "redraw"));
    if (!done.ok) throw new Error(done.failure.code);
    const piece = pieceIn(done.value.pieces, "front");
    expect(placesOf(piece)).toMatchObject({ waistDartApex: [89, 275] });
    expect(Math.abs(pointOf(piece, "waistDartInner").x - 79)).toBeLessThan(0.1);
    expect(Math.abs(pointOf(piece, "waistDartOuter").x - 99)).toBeLessThan(0.1);
    const under = { at: piecePoint(0, 320), level: "bust" } as const;
    const off = redrawDart(
      setOf([{ ...front, points: { ...front.points, underBustCentre: under } }, back]),
      place(6, "offCentreSeam"),
    );
    if (!off.ok) throw new Error(off.failure.code);
    expect(placesOf(pieceIn(off.value.pieces, "front"))).toMatchObject({
      centreNeck: [0, 80],
      centreBust: [6, 250],
      centreWaist: [6, 400],
    });
    expect(off.value.girths).toEqual({ bust: expect.closeTo(-12, 6) });
    expect(off.value.trace.notes).toEqual([{ code: "centreNowSeam" }, { code: "bustLoses", amount: 12 }]);
  });

  it("can give back where its seam has a place for it", () => {
    const at = (dart: Parameters<typeof giveBackPlaces>[1]["dart"], seam: Piece["darts"][number]["seam"]) =>
      giveBackPlaces(setOf([{ ...front, darts: [dartFor(dart, seam)] }, back]), { piece: "front", dart });
    expect(at("sideDart", "side")).toEqual(["waistEnd", "underarm"]);
    expect(at("shoulderDart", "shoulder")).toEqual(["armholeEnd", "neckEnd"]);
    expect(at("armholeDart", "armhole")).toEqual(["armholeEnd"]);
    expect(at("neckDart", "neck")).toEqual(["neckEnd"]);
    expect(at("centreDart", "centre")).toEqual(["centreEnd"]);
    expect(at("waistDart", "waist")).toEqual(["sideSeam", "centreSeam", "otherDart"]);
    expect(giveBackPlaces(setOf([front]), waistDart)).toEqual(["sideSeam", "centreSeam"]);
    expect(
      giveBackPlaces(setOf([basque("frontBasque", 100), back]), { piece: "frontBasque", dart: "waistDart" }),
    ).toEqual(["sideSeam", "centreSeam"]);
    expect([sewn(garment, waistDart), sewn(setOf([front]), waistDart)]).toEqual([360, 180]);
  });
});

describe("where a dart is opened", () => {
  const at = (home: DartHome, point = piecePoint(95, 250)) => {
    const { edge, t } = placeOfDart(front, home, point, radians(Math.PI / 2));
    return [front.edges[edge]?.from, t];
  };
  const of = (from: PointName, t: number) => [from, expect.closeTo(t, 9)];

  it("is by the trade's places on each seam, 8 mm clear of its corners", () => {
    // Sewn side: 50, 30 and 90 mm. 45 below the bust line: 15 of the last; four fifths of 170: 56 of it.
    expect(at("side")).toEqual(of("sideDartOuter", 15 / 90));
    expect(at("french")).toEqual(of("sideDartOuter", 56 / 90));
    const [upper, lower] = [Math.hypot(10, 100), Math.hypot(40, 60)];
    expect(at("armhole")).toEqual(of("armholeTouch", (((upper + lower) * 2) / 3 - upper) / lower));
    expect(at("shoulder")).toEqual(of("sideNeck", 0.5));
    expect(at("neck")).toEqual(of("centreNeck", 0.5));
    // 5 below the bust line, kept 8 clear: from the waist 142 of 150.
    expect(at("centre")).toEqual(of("centreWaist", 142 / 150));
    expect(at("centre", piecePoint(95, 300))).toEqual(of("centreWaist", 95 / 150));
    // Plumb below; in the mouth of a dart the middle of the seam: 90 of the first 95, kept 8 clear.
    expect(at("waist", piecePoint(150, 250))).toEqual(of("sideWaist", 50 / 95));
    expect(at("waist")).toEqual(of("sideWaist", 87 / 95));
  });

  it("is counted along what is sewn", () => {
    expect(sewnLengthTo(front, "side", "sideBust")).toBe(50);
    expect(sewnLengthTo(front, "side", "sideWaist")).toBe(170);
    expect(sewnLengthTo(front, "side", "centreNeck")).toBe(0);
    const edgeAt = (length: number) => {
      const { edge, t } = atLength(front, "side", length);
      return [front.edges[edge]?.from, Math.round(t * 1e6) / 1e6];
    };
    expect([edgeAt(20), edgeAt(1), edgeAt(49), edgeAt(65), edgeAt(500)]).toEqual([
      ["underarm", 0.4],
      ["underarm", 0.16],
      ["underarm", 0.84],
      ["sideBust", 0.5],
      ["sideDartOuter", Math.round((82 / 90) * 1e6) / 1e6],
    ]);
    // Of an edge of 12 mm a third, of one of 3 the shortest edge there is: 2.
    const short = cornerPiece({
      corners: [
        ["underarm", 0, 0, "side"],
        ["sideBust", 0, 12, "side"],
        ["sideWaist", 0, 27, "waist"],
      ],
    });
    expect(atLength(short, "side", 1).t).toBeCloseTo(1 / 3, 9);
  });

  it("is on a seam that the piece has", () => {
    expect(DART_HOMES.filter((home) => hasHome(front, home))).toEqual([
      "side",
      "french",
      "waist",
      "shoulder",
      "armhole",
      "neck",
      "centre",
    ]);
  });
});

describe("the bust line after a part was turned", () => {
  const at = { at: piecePoint(95, 250), level: "bust" } as const;
  const over: Piece = {
    ...front,
    points: { ...front.points, bustLineInner: at, bustLineOuter: at },
    levelLines: [{ level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } }],
  };

  it("is led by one place so that it is as long as it was", () => {
    const after = bustLineKept(movedTo(over, "sideBust", 196, 252), over);
    const [inner, outer] = [pointOf(after, "bustLineInner"), pointOf(after, "bustLineOuter")];
    expect(inner).toEqual(outer);
    expect(Math.hypot(inner.x, inner.y - 250) + Math.hypot(196 - inner.x, 252 - inner.y)).toBeCloseTo(200, 6);
    // No nearer place does it: of those at a distance from the bust point, straight up or down is the longest way.
    expect(Math.hypot(inner.x - 95, inner.y - 250)).toBeLessThan(25);
  });

  it("is the straight line where that is too long already", () => {
    const after = bustLineKept(movedTo(over, "sideBust", 210, 250), over);
    expect(pointOf(after, "bustLineInner").y).toBeCloseTo(250, 9);
    expect(pointOf(after, "bustLineInner").x).toBeCloseTo(95, 9);
  });

  it("is left where it is as long, or where there is none over the bust point", () => {
    expect(bustLineKept(over, over)).toBe(over);
    const moved = movedTo(front, "sideBust", 196, 252);
    expect(bustLineKept(moved, front)).toBe(moved);
  });
});
