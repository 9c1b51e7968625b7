/** Fits on pieces of straight lines where pieces differ: the smaller room counts, each cut lies by its own piece. */
import { describe, expect, it } from "vitest";
import { armholeGape } from "../../../../src/core/alterations/fit/armholeGape";
import { backWidth } from "../../../../src/core/alterations/fit/backWidth";
import { edgeGape } from "../../../../src/core/alterations/fit/edgeGape";
import { forwardShoulder } from "../../../../src/core/alterations/fit/forwardShoulder";
import { lengthAboveBust } from "../../../../src/core/alterations/fit/lengthAboveBust";
import { lengthBasque } from "../../../../src/core/alterations/fit/lengthBasque";
import { necklineGape } from "../../../../src/core/alterations/fit/necklineGape";
import { shoulderSlope } from "../../../../src/core/alterations/fit/shoulderSlope";
import { sideSeamHip } from "../../../../src/core/alterations/fit/sideSeamHip";
import { sideSeamUnderBust } from "../../../../src/core/alterations/fit/sideSeamUnderBust";
import { sideSeamWaist } from "../../../../src/core/alterations/fit/sideSeamWaist";
import { roomForStrap, strapBearers, strapSeam } from "../../../../src/core/alterations/fit/strapEnds";
import { strapWidth } from "../../../../src/core/alterations/fit/strapWidth";
import type { FitDefinition } from "../../../../src/core/alterations/outcome/definition";
import { piecePoint } from "../../../../src/core/geometry/point";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../../../src/core/pattern/pieceSet";
import { levelWidth } from "../../../../src/core/girth/levelWidth";
import { pointOf, type DartName, type Piece, type PieceName, type PointName } from "../../../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";
import { bustPointOf, garment } from "../../../support/garments";
import { seamByBezierJs } from "../../../support/independent";

const context = { bustPoint: piecePoint(95, 250) };
const made = (fit: FitDefinition, pieces: PieceSet, amount: number) => {
  const done = fit.apply(pieces, amount, context);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
};
const refused = (fit: FitDefinition, pieces: PieceSet, amount: number): unknown => {
  const done = fit.apply(pieces, amount, context);
  return done.ok ? null : done.failure;
};
const tooMuch = (most: number, digits = 3) => ({ code: "alteration/too-much", most: expect.closeTo(most, digits) });
const without = (piece: Piece, name: PointName): Piece => {
  const { [name]: _name, ...points } = piece.points;
  return { ...piece, points };
};

describe("basques", () => {
  const basque = (name: "frontBasque" | "backBasque", top: number, width: number, dartEnd?: number): Piece => {
    const mouth: readonly CornerOf[] = [
      ["waistDartInner", 80, top, "waist", "waistDart"],
      ["waistDartOuter", 90, top, "waist"],
    ];
    return cornerPiece({
      name,
      corners: [
        ["centreWaist", 0, top, "waist"],
        ...(dartEnd === undefined ? [] : mouth),
        ["sideWaist", width, top, "side"],
        ["sideHip", width, top + 200, "side"],
        ["sideHem", width, top + 240, "hem"],
        ["centreHem", 0, top + 240, "centre"],
      ],
      ...(dartEnd === undefined
        ? {}
        : { inside: { waistDartApex: [85, dartEnd] as const }, darts: [dartFor("waistDart", "waist")] }),
    });
  };

  it("are cut as far below the waist on both, wherever that lies", () => {
    const cuts = (one: Piece, other: Piece): readonly (number | undefined)[] =>
      made(lengthBasque, setOf([one, other]), 10).traces.map(({ cuts: [cut] }) => cut?.[0]?.y);
    expect(cuts(basque("frontBasque", 20, 180), basque("backBasque", 50, 180))).toEqual([100, 130]);
    // The longer dart ends 100 below its waist: two fifths of the way on to the hip.
    expect(cuts(basque("frontBasque", 0, 180, 60), basque("backBasque", 50, 180, 150))).toEqual([140, 190]);
    // As far as the higher hip, half-way where a dart reaches below it.
    const low = basque("frontBasque", 0, 180);
    const high: Piece = {
      ...low,
      points: { ...low.points, sideHip: { at: piecePoint(180, 150), level: "bust" } },
    };
    expect(cuts(high, basque("backBasque", 0, 180))).toEqual([60, 60]);
  });

  it("are taken in at the hip by a quarter of the narrower one's width, and need hip and hem on both", () => {
    const [one, other] = [basque("frontBasque", 0, 180), basque("backBasque", 0, 160)];
    expect(refused(sideSeamHip, setOf([one, other]), -161)).toEqual(tooMuch(-160, 9));
    expect(refused(sideSeamHip, setOf([one, other]), -160)).toBeNull();
    const noHip = (piece: Piece): Piece => ({
      ...piece,
      edges: piece.edges.flatMap((edge) =>
        edge.from === "sideHip" ? [] : [edge.to === "sideHip" ? { ...edge, to: "sideHem" as const } : edge],
      ),
    });
    const noHem = (piece: Piece): Piece => ({
      ...piece,
      edges: piece.edges.map((edge) => ({
        ...edge,
        from: edge.from === "sideHem" ? ("corner01" as const) : edge.from,
        to: edge.to === "sideHem" ? ("corner01" as const) : edge.to,
      })),
    });
    expect(sideSeamHip.applies(setOf([one, other]))).toBe(true);
    for (const piece of [noHip(one), noHem(one)]) expect(sideSeamHip.applies(setOf([piece, other]))).toBe(false);
    expect(sideSeamHip.applies(setOf([one]))).toBe(false);
  });

  it("slanting differently share what their sides gain", () => {
    const slanting = (name: "frontBasque" | "backBasque", hip: number): Piece => {
      const piece = basque(name, 0, 180);
      return {
        ...piece,
        points: {
          ...piece.points,
          sideHip: { at: piecePoint(hip, 200), level: "bust" },
          sideHem: { at: piecePoint(hip, 240), level: "bust" },
        },
      };
    };
    const before = setOf([slanting("frontBasque", 240), slanting("backBasque", 190)]);
    const after = made(sideSeamHip, before, 40).pieces;
    const gained = (hip: number): number => Math.hypot(hip + 10 - 180, 200) - Math.hypot(hip - 180, 200);
    const mean = (gained(240) + gained(190)) / 2;
    for (const name of ["frontBasque", "backBasque"] as const)
      expect(seamByBezierJs(pieceIn(after, name), "side") - seamByBezierJs(pieceIn(before, name), "side")).toBeCloseTo(
        mean,
        4,
      );
  });

  it("and bodices give at the waist what the narrowest stretch beside the side has, less 2 mm", () => {
    // 90 mm between dart and side on one, 180 on the other.
    const set = setOf([basque("frontBasque", 0, 180, 100), basque("backBasque", 0, 180)]);
    expect(refused(sideSeamWaist, set, -353)).toEqual(tooMuch(-352, 2));
    expect(sideSeamWaist.applies(set)).toBe(true);
    const noWaist: Piece = {
      ...basque("frontBasque", 0, 180),
      edges: basque("frontBasque", 0, 180).edges.map((edge) =>
        edge.seam === "waist" ? { ...edge, seam: "underBust" as const } : edge,
      ),
    };
    expect(sideSeamWaist.applies(setOf([noWaist]))).toBe(false);
    expect(sideSeamWaist.applies(setOf([without(noWaist, "sideHip")]))).toBe(false);
  });
});

describe("straps", () => {
  const bearer = (name: "cup" | "back", neck: number, armhole: number, width: number): Piece =>
    cornerPiece({
      name,
      corners: [
        ["centreBust", 0, 0, "neck"],
        ["strapInner", neck, 0, "strap"],
        ["strapOuter", neck + width, 0, "armhole"],
        ["underarm", neck + width + armhole, 0, "side"],
        ["sideUnderBust", neck + width + armhole, 100, "underBust"],
        ["underBustCentre", 0, 100, "centre"],
      ],
    });
  const strap = cornerPiece({
    name: "strap",
    corners: [
      ["strapBackInner", 0, 0, "strap"],
      ["strapBackOuter", 20, 0, "armhole"],
      ["strapFrontOuter", 20, 300, "strap"],
      ["strapFrontInner", 0, 300, "neck"],
    ],
  });
  const [cup, back] = [bearer("cup", 40, 70, 20), bearer("back", 60, 30, 24)];

  it("are borne by the pieces that have both ends of their seam", () => {
    expect(strapBearers(setOf([cup, back, strap])).map(({ name }) => name)).toEqual(["cup", "back"]);
    expect(strapBearers(setOf([without(cup, "strapOuter"), back]))).toEqual([back]);
    expect(strapBearers(setOf([cup, without(back, "strapInner")]))).toEqual([cup]);
    expect(strapBearers(setOf([strap]))).toEqual([]);
    expect([strapSeam(cup), strapSeam(back)]).toEqual([20, 24]);
  });

  it("can go as far as the piece with least beside them lets, of which 15 mm stay", () => {
    expect(roomForStrap(setOf([cup, back]))).toEqual({ inward: 25, outward: 15 });
    expect(roomForStrap(setOf([bearer("cup", 10, 12, 20), back]))).toEqual({ inward: 0, outward: 0 });
    // Half at each edge: 30 in all.
    const set = setOf([cup, back, strap]);
    expect(refused(strapWidth, set, 31)).toEqual(tooMuch(30, 9));
    const wide = made(strapWidth, set, 30);
    expect(wide.values).toEqual({ half: 15 });
    const at = (name: PieceName, point: PointName) => pointOf(pieceIn(wide.pieces, name), point);
    expect([at("cup", "strapInner").x, at("cup", "strapOuter").x]).toEqual([25, 75]);
    expect([at("back", "strapInner").x, at("back", "strapOuter").x]).toEqual([45, 99]);
    expect([at("strap", "strapFrontOuter").x, at("strap", "strapBackOuter").x]).toEqual([50, 50]);
    // The narrower of the two seams, 20 mm, to 6.
    expect(refused(strapWidth, set, -14.1)).toEqual(tooMuch(-14, 9));
    expect(refused(strapWidth, set, -14)).toBeNull();
    const narrow = setOf([bearer("cup", 40, 70, 5), back, strap]);
    expect(refused(strapWidth, narrow, -1)).toEqual(tooMuch(0, 9));
    expect([
      strapWidth.applies(set),
      strapWidth.applies(setOf([cup, back])),
      strapWidth.applies(setOf([strap])),
    ]).toEqual([true, false, false]);
  });
});

describe("the side at the under-bust", () => {
  const pair = (wide: number, narrow: number): PieceSet => {
    const upper = (name: "cup" | "back"): Piece =>
      cornerPiece({
        name,
        corners: [
          ["strapInner", 60, 0, "armhole"],
          ["underarm", wide, 60, "side"],
          ["sideUnderBust", wide, 200, "underBust"],
          ["underBustCentre", 0, 200, "centre"],
        ],
      });
    const band = (name: "frontBand" | "backBand", mouth: number): Piece =>
      cornerPiece({
        name,
        corners: [
          ["underBustCentre", 0, 200, "underBust"],
          ["corner01", wide - mouth, 200, "underBust"],
          ["sideUnderBust", wide, 200, "side"],
          ["sideWaist", wide, 300, "waist"],
          ["centreWaist", 0, 300, "centre"],
        ],
      });
    return setOf([upper("cup"), upper("back"), band("frontBand", wide), band("backBand", narrow)]);
  };

  it("leaves 2 mm of the shortest stretch of under-bust beside it", () => {
    const set = pair(180, 12);
    // 12 mm on the back's band: 10 at each edge can go, and no lean stops that before.
    const refusal = refused(sideSeamUnderBust, set, -60);
    expect(refusal).toMatchObject({ code: "alteration/too-much" });
    expect(refused(sideSeamUnderBust, set, -39.8)).toBeNull();
    expect(refused(sideSeamUnderBust, set, -40.2)).not.toBeNull();
    expect(refused(sideSeamUnderBust, pair(180, 180), -40.2)).toBeNull();
    // The same on a cup, whose ring comes to its side seam first.
    const cup = cornerPiece({
      name: "cup",
      corners: [
        ["strapInner", 60, 0, "armhole"],
        ["underarm", 180, 60, "side"],
        ["sideUnderBust", 180, 200, "underBust"],
        ["corner01", 168, 200, "underBust"],
        ["underBustCentre", 0, 200, "centre"],
      ],
    });
    const short = setOf([...piecesOf(pair(180, 180)).filter(({ name }) => name !== "cup"), cup]);
    expect(refused(sideSeamUnderBust, short, -39.8)).toBeNull();
    expect(refused(sideSeamUnderBust, short, -40.2)).not.toBeNull();
  });
});

describe("a princess line lengthened above the bust", () => {
  it.each(["princessShoulder", "princessArmhole"] as const)(
    "tells what its centre front was walked by, where its seam is cut: %s",
    (style) => {
      const pieces = garment({ style });
      const { values, pieces: after, traces } = made(lengthAboveBust, pieces, 17);
      const gained =
        pointOf(pieceIn(after, "centreFront"), "centreWaist").y -
        pointOf(pieceIn(pieces, "centreFront"), "centreWaist").y;
      const isCut = traces.some(({ piece }) => piece === "sideFront");
      expect(isCut).toBe(style === "princessShoulder");
      expect(traces.map(({ piece }) => piece).toSorted()).toEqual(
        isCut ? ["back", "centreFront", "sideFront"] : ["back", "centreFront"],
      );
      expect(values.walked).toBeCloseTo(isCut ? Math.abs(gained - 17) : 0, 9);
    },
  );

  it("is cut on both fronts where they meet: as far down the seam on the one as on the other", () => {
    const pieces = garment({ style: "princessShoulder" });
    const { traces } = made(lengthAboveBust, pieces, 17);
    const down = (name: PieceName, way: 1 | -1): number => {
      const top = pointOf(pieceIn(pieces, name), "princessTop");
      const cut = traces.find(({ piece }) => piece === name)?.cuts[0] ?? [];
      // The seam is the outer edge of the one and the inner edge of the other.
      const [onSeam = top] = cut.toSorted((a, b) => way * (b.x - a.x));
      return Math.hypot(onSeam.x - top.x, onSeam.y - top.y);
    };
    // The seam is nearly straight up there.
    expect(Math.abs(down("centreFront", 1) - down("sideFront", -1))).toBeLessThan(0.3);
  });

  it("is cut on the front and back alone that end in a shoulder", () => {
    const pieces = garment({ style: "sideDart" });
    const { back, front } = pieces;
    if (back === undefined || front === undefined) throw new Error("pieces");
    expect(lengthAboveBust.applies(setOf([front, back]))).toBe(true);
    expect(lengthAboveBust.applies(setOf([without(front, "shoulderTip"), back]))).toBe(false);
    expect(lengthAboveBust.applies(setOf([front, without(back, "shoulderTip")]))).toBe(false);
    expect(lengthAboveBust.apply(setOf([front]), 5, context)).toEqual({
      ok: false,
      failure: { code: "alteration/not-on-this-style" },
    });
  });
});

describe("armholes", () => {
  // Where the princess seam ends in the armhole, each part is too short to be drawn so much fuller.
  it.each([
    ["sideDart", 0.01],
    ["princessShoulder", 0.01],
    ["princessArmhole", 0.5],
  ] as const)("stay as long, nearly, when the shoulder slopes less or more: %s", (style, least) => {
    const pieces = garment({ style });
    for (const amount of [10, -10]) {
      const done = shoulderSlope.apply(pieces, amount, { bustPoint: bustPointOf(pieces) });
      if (!done.ok) throw new Error(JSON.stringify(done.failure));
      const off = (["front", "centreFront", "sideFront", "back"] as const).flatMap((name) => {
        const [was, is] = [pieces[name], done.value.pieces[name]];
        return was === undefined || is === undefined
          ? []
          : [Math.abs(seamByBezierJs(is, "armhole") - seamByBezierJs(was, "armhole"))];
      });
      // What is eased in unseen: 3 mm in all; each here is solved for, within what looks right.
      expect(Math.max(...off)).toBeLessThan(3);
      expect(Math.min(...off)).toBeLessThan(least);
    }
  });

  it("give and take what the end of the shoulder goes forward by", () => {
    const pieces = garment({ style: "sideDart" });
    const after = made(forwardShoulder, pieces, 5).pieces;
    const gained = (name: PieceName): number =>
      seamByBezierJs(pieceIn(after, name), "armhole") - seamByBezierJs(pieceIn(pieces, name), "armhole");
    expect([gained("front"), gained("back")]).toEqual([expect.closeTo(-5, 2), expect.closeTo(5, 2)]);
  });

  it("of a back are moved on a back that has a shoulder's end, a fullest turn and an underarm", () => {
    const { back } = garment({ style: "sideDart" });
    if (back === undefined) throw new Error("back");
    expect(backWidth.applies(setOf([back]))).toBe(true);
    for (const name of ["shoulderTip", "armholeTouch", "underarm"] as const)
      expect(backWidth.applies(setOf([without(back, name)]))).toBe(false);
    const done = made(backWidth, setOf([back]), -8);
    expect([backWidth.madeOn, done.values.half]).toEqual([["back"], 4]);
    const trace = done.traces[0];
    const out = trace?.cuts[0]?.at(-1);
    // Plumb from the shoulder, and out level.
    const [from, corner] = trace?.cuts[0] ?? [];
    expect(trace?.cuts[0]).toHaveLength(3);
    expect(corner).toEqual({ x: expect.closeTo(from?.x ?? 0, 9), y: expect.closeTo(out?.y ?? 0, 9) });
    // As far from the underarm, straight, as the cut comes out on the armhole.
    const [dx, dy] = [(out?.x ?? 0) - pointOf(back, "underarm").x, (out?.y ?? 0) - pointOf(back, "underarm").y];
    expect(done.values.apart).toBeCloseTo(Math.hypot(dx, dy), 9);
    expect(pointOf(pieceIn(done.pieces, "back"), "armholeTouch").x).toBeCloseTo(pointOf(back, "armholeTouch").x - 4, 9);
  });
});

describe("a gape closed off the height of the bust line", () => {
  it.each([
    ["neck", necklineGape],
    ["armhole", armholeGape],
  ] as const)("at the %s tells what the girth there gained, and how much wider its dart became", (_seam, fit) => {
    const pieces = garment({ style: "sideDart" });
    const front = pieceIn(pieces, "front");
    const { x, y } = pointOf(front, "bustPoint");
    const done = fit.apply(pieces, 10, { bustPoint: piecePoint(x, y + 25) });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const after = pieceIn(done.value.pieces, "front");
    const width = (piece: Piece): number => levelWidth(piece, "bust") ?? Number.NaN;
    const gained = 2 * (width(after) - width(front));
    expect(Math.abs(gained)).toBeGreaterThan(0.01);
    expect(done.value.girths).toEqual({ bust: expect.closeTo(gained, 9) });
    const mouth = (piece: Piece, name: DartName): number => {
      const [a, b] = [pointOf(piece, `${name}Inner`), pointOf(piece, `${name}Outer`)];
      return Math.hypot(a.x - b.x, a.y - b.y);
    };
    const wider = front.darts.map(({ name }) => Math.abs(mouth(after, name) - mouth(front, name)));
    expect(done.value.values).toEqual({ wider: expect.closeTo(Math.max(...wider), 9) });
  });

  it("into a princess seam tells how far its top went, and what was turned", () => {
    const pieces = garment({ style: "princessShoulder" });
    const done = necklineGape.apply(pieces, 5, { bustPoint: bustPointOf(pieces) });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const [was, is] = [pieces, done.value.pieces].map((set) => pointOf(pieceIn(set, "centreFront"), "princessTop"));
    expect(done.value.values).toEqual({
      wider: expect.closeTo(Math.hypot((is?.x ?? 0) - (was?.x ?? 0), (is?.y ?? 0) - (was?.y ?? 0)), 9),
    });
    expect(done.value.traces.map(({ piece, parts }) => [piece, parts.length])).toEqual([["centreFront", 1]]);
    expect(done.value.girths).toBeUndefined();
  });

  it("is refused on what has no such edge, and with 0 where the dart is as wide as can be", () => {
    const { cup } = garment({ style: "midriff" });
    if (cup === undefined) throw new Error("cup");
    expect(necklineGape.apply(setOf([cup]), 5, context)).toEqual({
      ok: false,
      failure: { code: "alteration/not-on-this-style" },
    });
    expect(edgeGape.apply(setOf([]), 5, context)).toEqual({
      ok: false,
      failure: { code: "alteration/not-on-this-style" },
    });
  });
});
