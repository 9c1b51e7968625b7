/** Where a tape lies, on pieces of round numbers: every length is a Pythagoras of what is written in them. */
import { describe, expect, it } from "vitest";
import { TISSUE_LENGTHS, type TissueLength } from "../../../src/core/decisions/tissue";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { dartFromBelow, dartToBust, isStep, measureTissue, tapeWay } from "../../../src/core/tissue/tapeWays";
import {
  dart,
  handBack,
  handBand,
  handBasque,
  handCentreFront,
  handCup,
  handFront,
  handSideFront,
  pieceOf,
} from "./handPieces";

const { hypot } = Math;

/** All lengths that a piece has. */
function lengths(piece: Piece, next?: Piece): Partial<Record<TissueLength, number>> {
  const found: Partial<Record<TissueLength, number>> = {};
  for (const length of TISSUE_LENGTHS) {
    const value = measureTissue(piece, length, next);
    if (value !== null) found[length] = Math.round(value * 1e6) / 1e6;
  }
  return found;
}

const rounded = (all: Partial<Record<TissueLength, number>>): Partial<Record<TissueLength, number>> =>
  Object.fromEntries(Object.entries(all).map(([name, value]) => [name, Math.round(value * 1e6) / 1e6]));

const FRONT = {
  waistDartMouth: 40,
  waistDartLength: 120,
  waistDartFromCentre: 90,
  bustDartMouth: hypot(4, 30),
  // From (125, 255) to the middle of (234, 240) and (230, 270).
  bustDartLength: 107,
  bustDartFromUnderarm: 2 * hypot(3, 20),
  bustPointFromCentre: 100,
  bustPointFromSideNeck: hypot(30, 255),
  centreLength: 320,
  sideNeckToWaist: 400,
  sideLength: 2 * hypot(3, 20) + hypot(10, 130),
  shoulderLength: hypot(100, 40),
  neckWidth: 70,
  neckDepth: 80,
  acrossWidth: 160,
  // Across the dart's open mouth, half way down it.
  bustWidth: 232,
  waistWidth: 220,
};

describe("the lengths", () => {
  it("of a front with two darts are these and no others", () => {
    expect(lengths(handFront())).toEqual(rounded(FRONT));
  });

  it("to the next size up are straight across, and negative where that is narrower", () => {
    const next = handFront({ bust: 6, waist: 5, mouth: 3 });
    expect(lengths(handFront(), next)).toEqual(
      rounded({ ...FRONT, bustStep: 6, waistStep: 5, waistDartMouthNext: 43 }),
    );
    const narrower = handFront({ bust: -6, waist: -5, mouth: -3 });
    expect(lengths(handFront(), narrower)).toMatchObject({ bustStep: -6, waistStep: -5, waistDartMouthNext: 37 });
  });

  it("of a back are counted from its centre line, wherever that lies", () => {
    expect(lengths(handBack(), handBack())).toEqual(
      rounded({
        centreLength: 400,
        sideNeckToWaist: 420,
        sideLength: hypot(20, 220),
        shoulderLength: hypot(100, 30),
        neckWidth: 70,
        neckDepth: 20,
        acrossWidth: 160,
        // 60 of 220 down the side: 250 - 20 · 60/220, less 10.
        bustWidth: 240 - (20 * 60) / 220,
        waistWidth: 220,
        bustStep: 0,
        waistStep: 0,
      }),
    );
  });

  it("of a centre front with a princess seam end at that seam", () => {
    expect(lengths(handCentreFront(), handCentreFront())).toEqual(
      rounded({
        centreLength: 320,
        shoulderLength: hypot(50, 20),
        neckWidth: 70,
        neckDepth: 80,
        bustWidth: 100,
        waistWidth: 90,
      }),
    );
  });

  it("of a side front begin at that seam", () => {
    expect(lengths(handSideFront(), handSideFront())).toEqual(
      rounded({
        sideLength: hypot(20, 200),
        shoulderLength: hypot(50, 20),
        // At the height of the seam's bust point, 50 of 200 down the side.
        bustWidth: 235 - 100,
        waistWidth: 90,
      }),
    );
  });

  it("of a cup are those of its under-bust", () => {
    expect(lengths(handCup())).toEqual(
      rounded({
        waistDartMouth: 40,
        waistDartLength: 60,
        waistDartFromCentre: hypot(80, 10),
        bustPointFromCentre: 100,
        centreLength: 140,
        sideLength: hypot(15, 100),
        // 30 of 100 down the side.
        bustWidth: 240 - 15 * 0.3,
        underBustWidth: 225,
      }),
    );
  });

  it("of a band and a basque are these", () => {
    expect(lengths(handBand(), handBand())).toEqual(
      rounded({
        centreLength: 100,
        sideLength: hypot(10, 100),
        waistWidth: 200,
        underBustWidth: 210,
        waistStep: 0,
      }),
    );
    expect(lengths(handBasque("backBasque"), handBasque("backBasque"))).toEqual(
      rounded({
        waistDartMouth: 20,
        waistDartLength: 100,
        waistDartFromCentre: 80,
        centreLength: 240,
        sideLength: hypot(50, 200) + hypot(5, 40),
        waistWidth: 200,
        hipWidth: 250,
        waistStep: 0,
        hipStep: 0,
        waistDartMouthNext: 20,
      }),
    );
  });
});

describe("the way", () => {
  const ends = (piece: Piece, length: TissueLength, next?: Piece): unknown =>
    tapeWay(piece, length, next)?.map(({ a, b }) => [a.x, a.y, b.x, b.y]);

  it("goes from end to end as it is written", () => {
    const front = handFront();
    expect(ends(front, "neckDepth")).toEqual([[0, 0, 0, 80]]);
    expect(ends(front, "acrossWidth")).toEqual([[0, 140, 160, 140]]);
    expect(ends(front, "bustWidth")).toEqual([[0, 255, 232, 255]]);
    expect(ends(front, "sideNeckToWaist")).toEqual([[70, 0, 70, 400]]);
    expect(ends(front, "bustDartFromUnderarm")).toEqual([
      [240, 200, 237, 220],
      [237, 220, 234, 240],
    ]);
    expect(ends(front, "waistStep", handFront({ bust: 0, waist: 7, mouth: 0 }))).toEqual([[220, 400, 227, 400]]);
    expect(ends(handSideFront(), "bustWidth")).toEqual([[100, 250, 235, 250]]);
  });

  it("goes down across a dart's open mouth too", () => {
    // The neck point above the mouth: 110 lies between 90 and 130.
    const front = handFront();
    const wide = {
      ...front,
      points: { ...front.points, sideNeck: { at: piecePoint(110, 0), level: "neck" as const } },
    };
    expect(ends(wide, "sideNeckToWaist")).toEqual([[110, 0, 110, 400]]);
  });

  it("goes to where the armhole is hollowest, between its corners too", () => {
    const back = handBack();
    const curved = {
      ...back,
      edges: back.edges.map((edge) =>
        edge.from === "shoulderTip" ? { ...edge, curve: { c1: piecePoint(160, 50), c2: piecePoint(130, 120) } } : edge,
      ),
    };
    // x(t) = 180 (1-t)³ + 480 t (1-t)² + 390 t² (1-t) + 170 t³; its least is searched on a fine grid.
    const least = Math.min(
      ...Array.from({ length: 10_001 }, (_, i) => {
        const t = i / 10_000;
        return 180 * (1 - t) ** 3 + 480 * t * (1 - t) ** 2 + 390 * t * t * (1 - t) + 170 * t ** 3;
      }),
    );
    expect(least).toBeLessThan(160);
    expect(measureTissue(curved, "acrossWidth")).toBeCloseTo(least - 10, 4);
  });

  it("is none from the underarm to a dart that opens elsewhere, or above which a dart lies", () => {
    const french = (seam: "side" | "armhole") => {
      const front = handFront();
      return { ...front, darts: front.darts.map((one) => (one.name === "sideDart" ? { ...one, seam } : one)) };
    };
    expect(measureTissue(french("side"), "bustDartFromUnderarm")).not.toBeNull();
    expect(measureTissue(french("armhole"), "bustDartFromUnderarm")).toBeNull();
    const twice = pieceOf(
      "front",
      [
        ["underarm", 240, 200, "side"],
        ["sideDartInner", 240, 220, "side", "sideDart"],
        ["sideDartOuter", 240, 230, "side"],
        ["frenchDartInner", 240, 300, "side", "frenchDart"],
        ["frenchDartOuter", 240, 320, "side"],
        ["sideWaist", 240, 400, "waist"],
        ["centreWaist", 0, 400, "centre"],
      ],
      [["frenchDartApex", 120, 250]],
      [dart("frenchDart", "side", "bustPoint")],
    );
    expect(measureTissue(twice, "bustDartFromUnderarm")).toBeNull();
    // Without an underarm there is nothing to lay it from.
    const renamed = pieceOf(
      "front",
      [
        ["shoulderTip", 240, 200, "side"],
        ["sideDartInner", 240, 220, "side", "sideDart"],
        ["sideDartOuter", 240, 230, "side"],
        ["sideWaist", 240, 400, "waist"],
        ["centreWaist", 0, 400, "centre"],
      ],
      [["sideDartApex", 120, 250]],
      [dart("sideDart", "side", "bustPoint")],
    );
    expect(measureTissue(renamed, "bustDartFromUnderarm")).toBeNull();
  });
});

describe("darts", () => {
  it("from below are told from those to the bust", () => {
    expect(dartFromBelow(handFront())?.name).toBe("waistDart");
    expect(dartToBust(handFront())?.name).toBe("sideDart");
    expect(dartFromBelow(handCup())?.name).toBe("underBustDart");
    expect(dartToBust(handCup())).toBeUndefined();
    // One in a shoulder that serves no bust point is neither.
    const back = { ...handBack(), darts: [dart("shoulderDart", "shoulder", null)] };
    expect(dartFromBelow(back)).toBeUndefined();
    expect(dartToBust(back)).toBeUndefined();
  });

  it("of the next size are a step, as growths of widths are", () => {
    expect(TISSUE_LENGTHS.filter((length) => isStep(length))).toEqual([
      "bustStep",
      "waistStep",
      "hipStep",
      "waistDartMouthNext",
    ]);
  });
});
