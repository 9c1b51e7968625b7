/** Lengths of seams and of centres, on pieces of straight edges whose lengths are read off their corners. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { centreOff, centreSeams } from "../../../src/core/girth/centreSeams";
import { squareAt, squareWithin, straightAt, turnWithin } from "../../../src/core/girth/cornerAngle";
import { seamLength, seamLengthDownTo } from "../../../src/core/girth/seamLength";
import type { DartName, Edge, Piece, PieceName, PointName, SeamName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";

type Leg = readonly [to: PointName, x: number, y: number, seam: SeamName, mouthOf?: DartName];

/** A ring through places, each with the edge that comes to it. */
function ring(name: PieceName, legs: readonly Leg[]): Piece {
  return {
    name,
    points: Object.fromEntries(legs.map(([to, x, y]) => [to, { at: piecePoint(x, y), level: "waist" as const }])),
    edges: legs.map(([to, , , seam, mouthOf], at): Edge => ({
      from: legs.at(at - 1)?.[0] ?? to,
      to,
      seam,
      curve: null,
      mouthOf: mouthOf ?? null,
    })),
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

/** 100 wide; its side slants out by 30 mm to 40 below and in again to 80 below; the centre has a mouth of 6 mm. */
const front = ring("front", [
  ["centreNeck", 0, 0, "centre"],
  ["underarm", 100, 0, "neck"],
  ["sideBust", 130, 40, "side"],
  ["sideDartOuter", 130, 52, "side", "sideDart"],
  ["sideWaist", 109, 80, "side"],
  ["centreWaist", 0, 80, "waist"],
  ["centreDartInner", 0, 50, "centre"],
  ["centreDartOuter", 0, 44, "centre", "centreDart"],
]);

describe("a seam's length", () => {
  it("is that of its edges without the mouths of darts", () => {
    // 30-40-50 and 21-28-35; 30 and 44 at the centre.
    expect(seamLength(front, "side")).toBe(85);
    expect(seamLength(front, "centre")).toBe(74);
    expect(seamLength(front, "waist")).toBe(109);
    expect(seamLength(front, "hem")).toBe(0);
  });

  it("down to a point is that of what lies above it, the mouths left out", () => {
    expect(seamLengthDownTo(front, "side", "underarm")).toBe(0);
    expect(seamLengthDownTo(front, "side", "sideBust")).toBe(50);
    expect(seamLengthDownTo(front, "side", "sideDartOuter")).toBe(50);
    expect(seamLengthDownTo(front, "side", "sideWaist")).toBe(85);
    // The centre runs upwards: its lower part comes first.
    expect(seamLengthDownTo(front, "centre", "centreDartOuter")).toBe(44);
    expect(seamLengthDownTo(front, "centre", "centreWaist")).toBe(74);
    expect(seamLengthDownTo(front, "hem", "centreWaist")).toBe(0);
  });
});

describe("the centre seams of two halves", () => {
  /** A piece with a centre of so many millimetres. */
  const withCentre = (name: PieceName, length: number): Piece =>
    ring(name, [
      ["centreNeck", 0, 0, "centre"],
      ["sideNeck", 50, 0, "neck"],
      ["sideWaist", 50, length, "side"],
      ["centreWaist", 0, length, "waist"],
    ]);
  const without = (name: PieceName): Piece =>
    ring(name, [
      ["princessTop", 0, 0, "princess"],
      ["sideNeck", 50, 0, "neck"],
      ["sideWaist", 50, 70, "side"],
      ["princessWaist", 0, 70, "waist"],
    ]);

  it("are compared piece by piece, from the front's neck to the back's hem", () => {
    const names = ["backBasque", "frontBasque", "backBand", "back", "frontBand", "front"] as const;
    const left = setOf(names.map((name, at) => withCentre(name, 100 + at)));
    const right = setOf(names.map((name) => withCentre(name, 100)));
    expect(centreSeams(left, right)).toEqual(
      [
        ["front", 5],
        ["frontBand", 4],
        ["back", 3],
        ["backBand", 2],
        ["frontBasque", 1],
        ["backBasque", 0],
      ].map(([of, off]) => ({ of, off, left: left[nameOf(of)], right: right[nameOf(of)] })),
    );
    expect(centreOff(left, right, "back")).toBe(3);
    expect(centreOff(right, left, "back")).toBe(-3);
  });

  it("are of whichever piece has the centre, by the name of the whole one", () => {
    const whole = setOf([withCentre("front", 120)]);
    const parted = setOf([without("sideFront"), withCentre("centreFront", 118)]);
    const cup = setOf([withCentre("cup", 60)]);
    expect(centreSeams(whole, parted)).toEqual([{ of: "front", left: whole.front, right: parted.centreFront, off: 2 }]);
    expect(centreSeams(cup, parted)).toEqual([{ of: "front", left: cup.cup, right: parted.centreFront, off: -58 }]);
    expect(centreOff(cup, whole, "front")).toBe(-60);
    // What a front stands for is no name of a centre seam.
    expect(centreOff(cup, whole, "cup")).toBe(0);
  });

  it("are none where a half has none; one piece of both is no further off than itself", () => {
    const one = setOf([withCentre("front", 120), withCentre("back", 110)]);
    expect(centreSeams(one, setOf([without("front"), withCentre("back", 110)]))).toHaveLength(1);
    expect(centreSeams(setOf([without("front")]), one)).toEqual([]);
    expect(centreSeams({}, {})).toEqual([]);
    expect(centreOff({}, one, "front")).toBe(0);
    expect(centreOff(one, one, "strap")).toBe(0);
    expect(centreSeams(one, one).map(({ off }) => off)).toEqual([0, 0]);
  });
});

const nameOf = (text: string | number | undefined): PieceName =>
  (["front", "frontBand", "back", "backBand", "frontBasque", "backBasque"] as const).find((name) => name === text) ??
  "strap";

describe("corners as they ought to be", () => {
  const drawn: Piece = { ...front, drawnTurns: { centreWaist: 92, sideBust: 4, underarm: 85, centreNeck: 89 } };
  const other: Piece = { ...front, name: "back", drawnTurns: { underarm: 98, sideNeck: 10 } };

  it("are square at the centre and straight when sewn, on a draft of ours", () => {
    expect(turnWithin(front, "sideBust")).toBe(0);
    expect(squareAt(front, "centreWaist")).toBe(90);
    expect(squareWithin(front, "centreWaist")).toBe(1);
    expect(straightAt(front, other, "underarm")).toBe(180);
    expect(straightAt(other, front, "underarm")).toBe(180);
  });

  it("are as drawn on a pattern that is not ours", () => {
    expect(turnWithin(drawn, "sideBust")).toBe(4);
    // A turn of 92 leaves a corner of 88.
    expect(squareAt(drawn, "centreWaist")).toBe(88);
    expect(squareAt(drawn, "centreHem")).toBe(90);
    // Corners of 95 and 82 make 177.
    expect(straightAt(drawn, other, "underarm")).toBe(177);
    expect(straightAt(drawn, other, "centreWaist")).toBe(180);
    expect(straightAt(drawn, other, "sideNeck")).toBe(180);
  });

  it("are held to a degree where a square was meant, else to what still looks smooth", () => {
    // 88 is two from square: 5 degrees; 91 is one, and taken for a square one.
    expect(squareWithin(drawn, "centreWaist")).toBe(5);
    expect(squareWithin(drawn, "centreNeck")).toBe(1);
    const sharp: Piece = { ...front, drawnTurns: { centreNeck: 88.9, centreWaist: 91.1, centreHem: 91 } };
    expect(squareWithin(sharp, "centreNeck")).toBe(5);
    expect(squareWithin(sharp, "centreWaist")).toBe(5);
    expect(squareWithin(sharp, "centreHem")).toBe(1);
  });
});
