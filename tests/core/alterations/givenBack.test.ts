/** What a redrawn dart gives back at each end of its seam, on straight pieces: which corner goes, which lengths stay. */
import { describe, expect, it } from "vitest";
import { mouthForAngle } from "../../../src/core/alterations/redraw/moveDartEnd";
import { redrawDart } from "../../../src/core/alterations/redraw/redrawDart";
import type { GiveBack } from "../../../src/core/decisions/alteration";
import { angleAt } from "../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf, type DartName, type Piece, type PointName, type SeamName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";

/** A front with a dart in each of its seams, each square to its seam and 60 mm long. */
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 50, "neck"],
  ["neckDartInner", 30, 50, "neck", "neckDart"],
  ["neckDartOuter", 40, 50, "neck"],
  ["sideNeck", 60, 50, "shoulder"],
  ["shoulderDartInner", 60, 30, "shoulder", "shoulderDart"],
  ["shoulderDartOuter", 60, 20, "shoulder"],
  ["shoulderTip", 60, 0, "armhole"],
  ["armholeDartInner", 120, 0, "armhole", "armholeDart"],
  ["armholeDartOuter", 130, 0, "armhole"],
  ["underarm", 200, 0, "side"],
  ["sideBust", 200, 100, "side"],
  ["sideDartInner", 200, 140, "side", "sideDart"],
  ["sideDartOuter", 200, 150, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreDartOuter", 0, 210, "centre", "centreDart"],
  ["centreDartInner", 0, 200, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const SEAMS = {
  neckDart: "neck",
  shoulderDart: "shoulder",
  armholeDart: "armhole",
  sideDart: "side",
  centreDart: "centre",
} as const;
const DARTS = ["neckDart", "shoulderDart", "armholeDart", "sideDart", "centreDart"] as const;
const front = cornerPiece({
  corners: CORNERS,
  inside: {
    bustPoint: [100, 130],
    neckDartApex: [35, 110],
    shoulderDartApex: [120, 25],
    armholeDartApex: [125, 60],
    sideDartApex: [140, 145],
    centreDartApex: [60, 205],
  },
  darts: DARTS.map((name) => dartFor(name, SEAMS[name])),
});
const back = cornerPiece({ name: "back", corners: CORNERS.filter(([name]) => !name.includes("Dart")) });

function wider(dart: DartName, by: number, giveBack: GiveBack): Piece {
  const done = redrawDart(setOf([front, back]), {
    kind: "dartMouth",
    id: "a",
    dart: { piece: "front", dart },
    inner: by,
    outer: by,
    giveBack,
  });
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return pieceIn(done.value.pieces, "front");
}
const far = (piece: Piece, name: PointName): readonly [number, number] => [
  Math.round(pointOf(piece, name).x - pointOf(front, name).x) + 0,
  Math.round(pointOf(piece, name).y - pointOf(front, name).y) + 0,
];

describe("a dart 4 mm wider", () => {
  it.each([
    ["sideDart", "waistEnd", "sideWaist", [0, 4], "waist"],
    ["sideDart", "underarm", "underarm", [0, -4], "waist"],
    ["shoulderDart", "armholeEnd", "shoulderTip", [0, -4], "armhole"],
    ["shoulderDart", "neckEnd", "sideNeck", [0, 4], "neck"],
    ["armholeDart", "armholeEnd", "shoulderTip", [-4, 0], "shoulder"],
    ["neckDart", "neckEnd", "sideNeck", [4, 0], "shoulder"],
    ["centreDart", "centreEnd", "centreWaist", [0, 4], "waist"],
  ] as const)(
    "in %s gives back at %s: %s goes on by as much, what it meets there as long as it was",
    (dart, place, corner, way, other) => {
      const piece = wider(dart, 2, { [place]: 1 });
      expect(far(piece, corner)).toEqual(way);
      for (const seam of [SEAMS[dart], other])
        expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(front, seam), 3);
      const moved = CORNERS.map(([name]) => name).filter((name) => {
        const [dx, dy] = far(piece, name);
        return Math.hypot(dx, dy) > 1;
      });
      expect(moved.toSorted()).toEqual([corner, `${dart}Inner`, `${dart}Outer`].toSorted());
    },
  );

  it("is given back by halves at both ends of its seam", () => {
    const piece = wider("shoulderDart", 4, { armholeEnd: 0.5, neckEnd: 0.5 });
    expect([far(piece, "shoulderTip"), far(piece, "sideNeck")]).toEqual([
      [0, -4],
      [0, 4],
    ]);
    expect(seamByBezierJs(piece, "shoulder")).toBeCloseTo(40, 3);
  });

  it("of 4 mm less takes as much, and no more than the last stretch of its seam has", () => {
    expect(far(wider("shoulderDart", -2, { armholeEnd: 1 }), "shoulderTip")).toEqual([0, 4]);
    const short = {
      ...front,
      points: {
        ...front.points,
        underarm: { ...invariant(front.points.underarm, "underarm"), at: { ...pointOf(front, "underarm"), y: 95 } },
      },
    };
    const done = redrawDart(setOf([short, back]), {
      kind: "dartMouth",
      id: "a",
      dart: { piece: "front", dart: "sideDart" },
      inner: -3.4,
      outer: -3.4,
      giveBack: { underarm: 1 },
    });
    // 6.8 to be taken of 5 mm, of which 2 stay.
    expect(done.ok ? null : done.failure).toEqual({ code: "alteration/not-given-back", left: expect.closeTo(3.8, 1) });
  });
});

describe("a dart's end moved", () => {
  const moved = (shorten: number, across: number, hold: "mouth" | "fullness") => {
    const done = redrawDart(setOf([front, back]), {
      kind: "dartEnd",
      id: "a",
      dart: { piece: "front", dart: "sideDart" },
      shorten,
      across,
      hold,
      giveBack: { waistEnd: 1 },
    });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    return { piece: pieceIn(done.value.pieces, "front"), trace: done.value.trace };
  };
  const angleOf = (piece: Piece): number =>
    angleAt(pointOf(piece, "sideDartApex"), pointOf(piece, "sideDartInner"), pointOf(piece, "sideDartOuter"));

  it("goes along its axis and across it, the mouth as it was or the angle", () => {
    const held = moved(15, 0, "mouth").piece;
    expect([far(held, "sideDartApex"), far(held, "sideDartInner"), far(held, "sideDartOuter")]).toEqual([
      [15, 0],
      [0, 0],
      [0, 0],
    ]);
    const full = moved(15, 0, "fullness").piece;
    expect(far(full, "sideDartApex")).toEqual([15, 0]);
    // By the quarter shorter, the mouth is a quarter narrower: 7.5 of 10.
    expect(Math.abs(pointOf(full, "sideDartOuter").y - pointOf(full, "sideDartInner").y - 7.5)).toBeLessThan(0.05);
    expect(angleOf(full)).toBeCloseTo(angleOf(front), 4);
    const longer = moved(-20, 0, "fullness").piece;
    expect(Math.abs(pointOf(longer, "sideDartOuter").y - pointOf(longer, "sideDartInner").y - 40 / 3)).toBeLessThan(
      0.05,
    );
    expect(far(moved(0, 6, "mouth").piece, "sideDartApex")).toEqual([0, -6]);
  });

  it("aside has its legs trued, which is told where it is more than can be seen", () => {
    // Legs from 60 across: 1 and 11 beside, half of their difference each.
    const { trace } = moved(0, 6, "mouth");
    const half = (Math.hypot(60, 11) - Math.hypot(60, 1)) / 2;
    expect(half).toBeGreaterThan(0.49);
    expect(trace.notes.map(({ code }) => code)).toEqual(half > 0.5 ? ["legsTrued"] : []);
    const further = moved(0, 12, "mouth").trace.notes;
    expect(further).toEqual([
      { code: "legsTrued", amount: expect.closeTo((Math.hypot(60, 17) - Math.hypot(60, 7)) / 2, 6) },
    ]);
  });

  it("keeps its angle by a mouth of w = tan θ (ℓ² + a² − w²/4) / ℓ", () => {
    for (const [length, aside] of [
      [60, 0],
      [45, 0],
      [60, 25],
      [80, 40],
    ] as const) {
      const width = mouthForAngle(radians(0.3), length, aside);
      // The two legs from the end to the mouth's ends, by their directions.
      expect(Math.atan((aside + width / 2) / length) - Math.atan((aside - width / 2) / length)).toBeCloseTo(0.3, 12);
    }
  });
});

describe("a neckline off a slanting centre", () => {
  const waisted = (curves: Parameters<typeof cornerPiece>[0]["curves"] = {}, drawnTurn?: number): Piece => {
    const seam: SeamName = "waist";
    const piece = cornerPiece({
      curves,
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 80, -60, "shoulder"],
        ["underarm", 200, 0, "side"],
        ["sideBust", 200, 100, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["waistDartOuter", 110, 300, "waist", "waistDart"],
        ["waistDartInner", 90, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
        ["underBustCentre", 0, 200, "centre"],
        ["centreBust", 0, 100, "centre"],
      ],
      inside: { bustPoint: [100, 130], waistDartApex: [100, 150] },
      darts: [dartFor("waistDart", seam)],
    });
    return drawnTurn === undefined ? piece : { ...piece, drawnTurns: { centreNeck: drawnTurn } };
  };
  const neckOf = (piece: Piece): number => {
    const done = redrawDart(setOf([piece]), {
      kind: "dartPlace",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      by: 10,
      how: "offCentreSeam",
      giveBack: { sideSeam: 1 },
    });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const made = pieceIn(done.value.pieces, "front");
    const c1 = invariant(made.edges.find(({ from }) => from === "centreNeck")?.curve, "curve").c1;
    return Math.atan2(c1.y, c1.x);
  };

  it("leaves it squarely again, or as the pattern drew it", () => {
    // The centre comes in by 10 over 100 from neck to bust line: square to it is 10 up over 100.
    const curves = {
      centreNeck: [
        [30, 0],
        [60, -20],
      ],
    } as const;
    expect(neckOf(waisted(curves))).toBeCloseTo(-Math.atan(0.1), 9);
    expect(neckOf(waisted(curves, 90))).toBeCloseTo(-Math.atan(0.1), 9);
    expect(Math.abs(neckOf(waisted(curves, 80)) + Math.atan(0.1))).toBeCloseTo((10 * Math.PI) / 180, 9);
  });
});

describe("a waist given back at the centre", () => {
  const [x, y] = [60, 300];
  /** A bodice below which the centre runs up to the bust line, or a basque where it runs down to the hip. */
  const half = (below: boolean, drawnTurn?: number): Piece => {
    const to = below ? 500 : 100;
    const [bust, hip] = below ? (["centreHip", "sideHip"] as const) : (["centreBust", "sideBust"] as const);
    const piece = cornerPiece({
      name: below ? "frontBasque" : "front",
      corners: [
        ["centreWaist", 0, y, "waist"],
        ["waistDartInner", x, y, "waist", "waistDart"],
        ["waistDartOuter", x + 20, y, "waist"],
        ["sideWaist", 160, y, "side"],
        [hip, 160, to, "hem"],
        [bust, 0, to, "centre"],
      ],
      curves: {
        centreWaist: [
          [20, y],
          [40, y],
        ],
      },
      inside: { waistDartApex: [x + 10, (y + to) / 2] },
      darts: [dartFor("waistDart", "waist")],
    });
    return drawnTurn === undefined ? piece : { ...piece, drawnTurns: { centreWaist: drawnTurn } };
  };
  /** Between the waist and the centre line at their corner, degrees. */
  const cornerOf = (piece: Piece): number => {
    const done = redrawDart(setOf([piece]), {
      kind: "dartMouth",
      id: "a",
      dart: { piece: piece.name, dart: "waistDart" },
      inner: -4,
      outer: -4,
      giveBack: { centreSeam: 1 },
    });
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const made = pieceIn(done.value.pieces, piece.name);
    const at = pointOf(made, "centreWaist");
    expect(Math.abs(at.x - 8)).toBeLessThan(0.7);
    expect(at.y).toBe(y);
    const end = pointOf(made, piece.name === "front" ? "centreBust" : "centreHip");
    const { c1 } = invariant(made.edges.find(({ from }) => from === "centreWaist")?.curve, "curve");
    const turn = Math.atan2(c1.y - at.y, c1.x - at.x) - Math.atan2(end.y - at.y, end.x - at.x);
    return Math.abs((((turn * 180) / Math.PI + 540) % 360) - 180);
  };

  it.each([false, true])("leaves the slanting centre line squarely again (below the waist: %s)", (below) => {
    expect(cornerOf(half(below))).toBeCloseTo(90, 6);
    expect(cornerOf(half(below, 90))).toBeCloseTo(90, 6);
    // As the pattern drew it: 5 degrees off.
    expect(Math.abs(cornerOf(half(below, 85)) - 90)).toBeCloseTo(5, 6);
  });
});
