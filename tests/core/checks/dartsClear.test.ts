/** Darts on a square of 300 mm, their legs straight, so that what they cross can be seen from their corners. */
import { describe, expect, it } from "vitest";
import type { CheckContext } from "../../../src/core/checks/context";
import { dartsClear } from "../../../src/core/checks/dartsClear";
import type { Piece } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { cornerPiece, dartFor } from "../../support/cornerPiece";

type Place = readonly [number, number];

/** A waist dart from 100 to 140 across, and a side dart from 100 to 120 down, each to its end. */
const square = (waistEnd: Place, sideEnd: Place, notch: Place = [150, 0]): Piece =>
  cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["sideNeck", ...notch, "shoulder"],
      ["underarm", 300, 0, "side"],
      ["sideDartOuter", 300, 100, "side", "sideDart"],
      ["sideDartInner", 300, 120, "side"],
      ["sideWaist", 300, 300, "waist"],
      ["waistDartOuter", 140, 300, "waist", "waistDart"],
      ["waistDartInner", 100, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ],
    inside: { waistDartApex: waistEnd, sideDartApex: sideEnd },
    darts: [dartFor("sideDart", "side"), dartFor("waistDart", "waist")],
  });

const asked = (piece: Piece) => {
  const pieces = setOf([piece]);
  const context: CheckContext = {
    pieces,
    halves: [pieces, pieces],
    levels: [],
    darts: [],
    alterations: [],
    closure: { place: "side", belowWaist: 0 },
    body: { bust: 900, hip: null },
  };
  return dartsClear(context);
};

const faults = (piece: Piece): Record<string, number> =>
  Object.fromEntries(asked(piece).map(({ dart = "", measured }) => [dart, measured]));

describe("darts", () => {
  it("that end inside, apart from each other, are clear", () => {
    const of = (dart: "sideDart" | "waistDart") => ({
      name: "dartsClear",
      ok: true,
      measured: 0,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: ["front"],
      dart,
    });
    expect(asked(square([120, 150], [200, 110]))).toEqual([of("sideDart"), of("waistDart")]);
  });

  it("that end at one point, or within a pencil's line of it, are clear", () => {
    expect(faults(square([150, 150], [150, 150]))).toEqual({ sideDart: 0, waistDart: 0 });
    // Each goes on past the other: by a fifth and three tenths of a millimetre, and by two millimetres.
    expect(faults(square([150, 149.8], [149.7, 150]))).toEqual({ sideDart: 0, waistDart: 0 });
    expect(faults(square([150, 148], [148, 150]))).toEqual({ sideDart: 1, waistDart: 1 });
  });

  it("that cross are told of both", () => {
    // The side dart at 110 down reaches to 80, beyond the waist dart that goes up to 60.
    expect(faults(square([120, 60], [80, 110]))).toEqual({ sideDart: 1, waistDart: 1 });
    // By 30 mm short of it they do not.
    expect(faults(square([120, 60], [160, 110]))).toEqual({ sideDart: 0, waistDart: 0 });
  });

  it("that end outside are told: over the neck, both legs and the end", () => {
    expect(faults(square([120, -20], [250, 110]))).toEqual({ sideDart: 0, waistDart: 3 });
  });

  it("of which legs pass over a notch of the outline, and end inside again, are told by the leg", () => {
    // The neck goes down to a corner at (150, 200). Its line from (0, 0) lies at 133 down where x is 100, at 187 where it is 140.
    expect(faults(square([145, 100], [280, 110], [150, 200]))).toEqual({ sideDart: 0, waistDart: 3 });
    expect(faults(square([60, 120], [280, 110], [150, 200]))).toEqual({ sideDart: 0, waistDart: 0 });
  });

  it("whose end falls on the seam they come from are outside of nothing and cross nothing", () => {
    expect(faults(square([120, 299], [200, 110]))).toEqual({ sideDart: 0, waistDart: 0 });
  });

  it("that are drawn up as gathers have no legs", () => {
    const piece = square([120, -20], [250, 110]);
    const gathered = { ...piece, darts: piece.darts.map((dart) => ({ ...dart, gathered: true as const })) };
    expect(asked(gathered)).toEqual([]);
  });

  it("told piece by piece", () => {
    const [front, back] = [
      square([120, -20], [250, 110]),
      { ...square([120, 150], [200, 110]), name: "back" as const },
    ];
    const pieces = setOf([front, back]);
    const context = { pieces, halves: [pieces, pieces] } as const;
    expect(
      dartsClear({
        ...context,
        levels: [],
        darts: [],
        alterations: [],
        closure: { place: "side", belowWaist: 0 },
        body: { bust: 900, hip: null },
      })
        .filter(({ ok }) => !ok)
        .map(({ pieces: of, dart }) => [of, dart]),
    ).toEqual([[["front"], "waistDart"]]);
  });
});
