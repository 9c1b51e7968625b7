/** Where a redrawn dart gives back: how much there is room for, and which way corners and lines go. */
import { describe, expect, it } from "vitest";
import { giveBackPlaces } from "../../../../src/core/alterations/redraw/giveBack";
import { redrawDart } from "../../../../src/core/alterations/redraw/redrawDart";
import type { DartRedraw, GiveBack } from "../../../../src/core/decisions/alteration";
import { angleAt } from "../../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../../src/core/pattern/pieceSet";
import { pointOf, type DartName, type Piece, type PointName } from "../../../../src/core/pattern/piece";
import { withBends } from "../../../support/bentPieces";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";
import { cornerAt } from "../../../support/garments";
import { seamByBezierJs } from "../../../support/independent";

function redrawn(piece: Piece, alteration: DartRedraw): Piece {
  const done = redrawDart(setOf([piece]), alteration);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return pieceIn(done.value.pieces, piece.name);
}
const wider = (piece: Piece, dart: DartName, by: number, giveBack: GiveBack): DartRedraw => ({
  kind: "dartMouth",
  id: "a",
  dart: { piece: piece.name, dart },
  inner: by,
  outer: by,
  giveBack,
});
const far = (is: Piece, was: Piece, name: PointName): readonly [number, number] => [
  pointOf(is, name).x - pointOf(was, name).x,
  pointOf(is, name).y - pointOf(was, name).y,
];

describe("at the end of a shoulder", () => {
  const front = (end: number): Piece =>
    cornerPiece({
      corners: [
        ["centreNeck", 0, 50, "neck"],
        ["sideNeck", 60, 50, "shoulder"],
        ["shoulderDartInner", 90, 50, "shoulder", "shoulderDart"],
        ["shoulderDartOuter", 100, 50, "shoulder"],
        ["shoulderTip", end, 50, "armhole"],
        ["underarm", 200, 150, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
      inside: { shoulderDartApex: [95, 120] },
      darts: [dartFor("shoulderDart", "shoulder")],
    });

  it("no more is taken than its last stretch has, of which 2 mm stay", () => {
    // The end of the mouth comes in by 3.4: of 8.4 mm then, 6.4 can go.
    const short = front(105);
    expect(redrawDart(setOf([short]), wider(short, "shoulderDart", -3.4, { armholeEnd: 1 }))).toEqual({
      ok: false,
      failure: { code: "alteration/not-given-back", left: expect.closeTo(0.4, 1) },
    });
  });
});

describe("at the side of a basque, a bodice and a cup", () => {
  /** Narrowing by 20 from one end of its side to the other, its waist above or below. */
  const half = (name: "frontBasque" | "front" | "cup"): Piece => {
    const seam = name === "cup" ? "underBust" : "waist";
    const [centre, side] =
      name === "cup" ? (["underBustCentre", "sideUnderBust"] as const) : (["centreWaist", "sideWaist"] as const);
    const dart = name === "cup" ? "underBustDart" : "waistDart";
    const below: readonly CornerOf[] = [
      [centre, 0, 100, seam],
      [`${dart}Inner`, 60, 100, seam, dart],
      [`${dart}Outer`, 80, 100, seam],
      [side, 160, 100, "side"],
      ["sideHip", 180, 300, "hem"],
      ["centreHip", 0, 300, "centre"],
    ];
    const above: readonly CornerOf[] = [
      ["centreBust", 0, 0, "neck"],
      ["underarm", 180, -100, "side"],
      [side, 160, 100, seam],
      [`${dart}Outer`, 80, 100, seam, dart],
      [`${dart}Inner`, 60, 100, seam],
      [centre, 0, 100, "centre"],
    ];
    return cornerPiece({
      name,
      corners: name === "frontBasque" ? below : above,
      inside: name === "cup" ? { underBustDartApex: [70, 20] } : { waistDartApex: [70, name === "front" ? 20 : 180] },
      darts: [dartFor(dart, seam)],
    });
  };

  it.each(["frontBasque", "front", "cup"] as const)("the corner goes in, and the side stays as long: %s", (name) => {
    const piece = half(name);
    const [dart, side] =
      name === "cup" ? (["underBustDart", "sideUnderBust"] as const) : (["waistDart", "sideWaist"] as const);
    const made = redrawn(piece, wider(piece, dart, -3, { sideSeam: 1 }));
    // 6 mm less in the dart; the side leans: the corner rises or falls by a tenth of that.
    const [across, down] = far(made, piece, side);
    expect(Math.abs(across + 6)).toBeLessThan(0.3);
    expect(Math.abs(down - (name === "frontBasque" ? 0.6 : -0.6))).toBeLessThan(0.2);
    expect(seamByBezierJs(made, "side")).toBeCloseTo(seamByBezierJs(piece, "side"), 4);
    expect(seamByBezierJs(made, name === "cup" ? "underBust" : "waist")).toBeCloseTo(140, 3);
    expect(made.centreOnFold).toBe(true);
  });
});

describe("at the centre, as the pattern was drawn", () => {
  const bodice = (drawnTurn: number | null): Piece => {
    const piece = cornerPiece({
      corners: [
        ["centreBust", 0, 100, "neck"],
        ["sideBust", 160, 100, "side"],
        ["sideWaist", 160, 300, "waist"],
        ["waistDartOuter", 80, 300, "waist", "waistDart"],
        ["waistDartInner", 60, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
      curves: {
        waistDartInner: [
          [40, 300],
          [20, 300],
        ],
      },
      inside: { waistDartApex: [70, 200] },
      darts: [dartFor("waistDart", "waist")],
    });
    return drawnTurn === null ? piece : { ...piece, drawnTurns: { centreWaist: drawnTurn } };
  };
  const basque = (drawnTurn: number | null): Piece => {
    const piece = cornerPiece({
      name: "frontBasque",
      corners: [
        ["centreWaist", 0, 300, "waist"],
        ["waistDartInner", 60, 300, "waist", "waistDart"],
        ["waistDartOuter", 80, 300, "waist"],
        ["sideWaist", 160, 300, "side"],
        ["sideHip", 160, 500, "hem"],
        ["centreHip", 0, 500, "centre"],
      ],
      curves: {
        centreWaist: [
          [20, 300],
          [40, 300],
        ],
      },
      inside: { waistDartApex: [70, 400] },
      darts: [dartFor("waistDart", "waist")],
    });
    return drawnTurn === null ? piece : { ...piece, drawnTurns: { centreWaist: drawnTurn } };
  };

  it.each([
    [null, 90],
    [90, 90],
    [85, 95],
    [97, 83],
  ])("the waist meets it by a turn of %j: a corner of %d degrees", (drawnTurn, corner) => {
    for (const piece of [
      bodice(drawnTurn),
      basque(drawnTurn),
      withBends(bodice(drawnTurn), 0.5),
      withBends(basque(drawnTurn), 0.5),
    ]) {
      const made = redrawn(piece, wider(piece, "waistDart", -4, { centreSeam: 1 }));
      expect(cornerAt(made, "centreWaist")).toBeCloseTo(corner, 3);
      expect(made.centreOnFold).toBe(false);
      expect(Math.abs(far(made, piece, "centreWaist")[0] - 8)).toBeLessThan(0.7);
      expect(seamByBezierJs(made, "waist")).toBeCloseTo(140, 3);
    }
  });
});

describe("a dart's end moved on a curved seam, its fullness held", () => {
  const curved = cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 0, "side"],
      ["sideWaist", 200, 280, "waist"],
      ["waistDartOuter", 120, 300, "waist", "waistDart"],
      ["waistDartInner", 80, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ],
    curves: {
      sideWaist: [
        [180, 290],
        [150, 303],
      ],
      waistDartInner: [
        [60, 304],
        [30, 300],
      ],
    },
    inside: { waistDartApex: [100, 150] },
    darts: [dartFor("waistDart", "waist")],
  });
  const angleOf = (piece: Piece): number =>
    angleAt(pointOf(piece, "waistDartApex"), pointOf(piece, "waistDartInner"), pointOf(piece, "waistDartOuter"));

  it.each([40, -30])("%d mm shorter, opens by the angle that it had", (shorten) => {
    const made = redrawn(curved, {
      kind: "dartEnd",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      shorten,
      across: 0,
      hold: "fullness",
      giveBack: { sideSeam: 1 },
    });
    expect(pointOf(made, "waistDartApex")).toEqual({ x: expect.closeTo(100, 9), y: expect.closeTo(150 + shorten, 9) });
    // But for truing legs and seam, which comes after.
    expect(Math.abs(angleOf(made) - angleOf(curved))).toBeLessThan(0.002);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(seamByBezierJs(curved, "waist"), 3);
  });
});

describe("a dart brought nearer the centre off its seam", () => {
  it("leaves a straight neckline straight", () => {
    const piece = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 160, 0, "side"],
        ["sideWaist", 160, 300, "waist"],
        ["waistDartOuter", 80, 300, "waist", "waistDart"],
        ["waistDartInner", 60, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
        ["centreBust", 0, 100, "centre"],
      ],
      inside: { waistDartApex: [70, 200] },
      darts: [dartFor("waistDart", "waist")],
    });
    const made = redrawn(piece, {
      kind: "dartPlace",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      by: 6,
      how: "offCentreSeam",
      giveBack: { sideSeam: 1 },
    });
    expect(made.edges[0]).toEqual(piece.edges[0]);
    expect([pointOf(made, "centreBust"), pointOf(made, "centreNeck")]).toEqual([
      { x: 6, y: 100 },
      { x: 0, y: 0 },
    ]);
  });
});

describe("the other bodice piece", () => {
  const half = (name: "front" | "back", ...darts: readonly DartName[]): Piece => ({
    ...cornerPiece({
      name,
      corners: [
        ["underarm", 100, 0, "side"],
        ["sideWaist", 100, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
    }),
    darts: darts.map((dart) => dartFor(dart, dart.startsWith("waist") ? "waist" : "side")),
  });
  const places = (other: Piece) =>
    giveBackPlaces(setOf([half("front", "waistDart"), other]), { piece: "front", dart: "waistDart" });

  it("can take over at its waist dart, whatever other darts it has", () => {
    const [own, both] = [
      ["sideSeam", "centreSeam"],
      ["sideSeam", "centreSeam", "otherDart"],
    ];
    expect(places(half("back", "waistDart"))).toEqual(both);
    expect(places(half("back", "sideDart", "waistDart"))).toEqual(both);
    expect(places(half("back", "sideDart"))).toEqual(own);
    expect(places(half("back"))).toEqual(own);
  });
});
