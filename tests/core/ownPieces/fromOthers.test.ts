/** What one piece says of the others, and what a place that is pointed at means on its outline. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { OutlineReading } from "../../../src/core/outlines/outlineReading";
import { NOTHING_KNOWN, type BuiltPiece } from "../../../src/core/ownPieces/buildPiece";
import { contextOf } from "../../../src/core/ownPieces/fromOthers";
import { alongOutline, onOutline } from "../../../src/core/ownPieces/pointedPlaces";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import type { Piece } from "../../../src/core/pattern/piece";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { groupedOutlines } from "../../support/outlineGroups";
import { sampleWork } from "../../support/sampleWork";
import { drawnNest, ownOf } from "./drawnNest";
import { lying } from "./tracedByHand";

const STRAP = {
  "10": [
    [0, 0],
    [40, 0],
    [40, 300],
    [0, 300],
  ],
} as const;
const made = (piece: Piece, label = "10"): BuiltPiece => ({
  pieces: [piece],
  traced: lying("strap", { [label]: STRAP["10"] }, { style: "midriff" }).sizes,
  bustPoints: [],
  derived: [],
  deviations: [],
  problems: [],
});

describe("what a piece says of others", () => {
  it("is how far down its side the bust line lies, without the mouths of darts, and where the bust point is", () => {
    const front = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 200, 100, "side"],
        ["sideDartInner", 200, 120, "side", "sideDart"],
        ["sideDartOuter", 200, 150, "side"],
        ["sideBust", 203, 154, "side"],
        ["sideWaist", 200, 400, "waist"],
        ["centreWaist", 0, 400, "centre"],
      ],
      inside: { bustPoint: [95, 150], sideDartApex: [120, 140] },
      darts: [dartFor("sideDart", "side")],
    });
    // 20 above the mouth and 5 below it.
    expect(contextOf({ made: made(front), others: NOTHING_KNOWN })).toEqual({
      ...NOTHING_KNOWN,
      sideDepth: new Map([["10", 25]]),
      bustPoint: new Map([["10", piecePoint(95, 150)]]),
    });
  });

  it("is how far down its seam from the princess line its bust point lies, and how long a strap is", () => {
    const centre = cornerPiece({
      name: "centreFront",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["princessTop", 100, 0, "princess"],
        ["princessBust", 130, 40, "princess"],
        ["princessWaist", 100, 400, "waist"],
        ["centreWaist", 0, 400, "centre"],
      ],
    });
    const after = contextOf({ made: made(centre), others: NOTHING_KNOWN });
    expect(after).toEqual({ ...NOTHING_KNOWN, princessUpper: new Map([["10", 50]]) });
    const strap = cornerPiece({
      name: "strap",
      corners: [
        ["strapBackInner", 0, 0, "strap"],
        ["strapBackOuter", 40, 0, "armhole"],
        ["strapFrontOuter", 100, 80, "strap"],
        ["strapFrontInner", 0, 80, "neck"],
      ],
    });
    // On top of what was known; √(60² + 80²).
    expect(contextOf({ made: made(strap), others: after })).toEqual({ ...after, strapLength: new Map([["10", 100]]) });
    // One without all of its corners says nothing.
    const bare = cornerPiece({
      corners: [
        ["underarm", 0, 0, "side"],
        ["sideWaist", 0, 100, "waist"],
        ["centreWaist", -50, 100, "centre"],
      ],
    });
    expect(contextOf({ made: made(bare), others: after })).toEqual(after);
    expect(contextOf({ made: { ...made(bare), traced: [] }, others: NOTHING_KNOWN })).toEqual(NOTHING_KNOWN);
  });
});

describe("a place that is pointed at", () => {
  const { group, outlines } = groupedOutlines({
    "10": [
      [0, 0],
      [100, 0],
      [100, 60],
      [0, 60],
    ],
    "12": [
      [0, 0],
      [120, 0],
      [120, 60],
      [0, 60],
    ],
  });
  const empty = readOwn({ own: ownOf(drawnNest([])), pattern: sampleWork.pattern }).outlines;
  const reading = (mm: number | null): OutlineReading => ({
    ...empty,
    scale: { ...empty.scale, mm },
    outlines: [...outlines.values()],
    groups: [group],
  });

  it("is the nearest on the outline of its size, in units of the file", () => {
    expect(onOutline(reading(1), group, "10", { x: 110, y: 30 })).toEqual({ x: 100, y: 30 });
    expect(onOutline(reading(1), group, "12", { x: 110, y: 30 })).toEqual({ x: 120, y: 30 });
    expect(onOutline(reading(10), group, "10", { x: 11, y: 3 })).toEqual({ x: 10, y: 3 });
    expect(onOutline(reading(null), group, "10", { x: 110, y: 30 })).toEqual({ x: 100, y: 30 });
    // Of a size that it has not, the first there is; of none, the very place.
    expect(onOutline(reading(1), group, "14", { x: 110, y: 30 })).toEqual({ x: 100, y: 30 });
    expect(onOutline({ ...reading(1), outlines: [] }, group, "10", { x: 110, y: 30 })).toEqual({ x: 110, y: 30 });
  });

  it("is moved by millimetres along it", () => {
    expect(alongOutline(reading(10), group, "10", { x: 9, y: 0 }, 25)).toEqual({ x: 10, y: 1.5 });
    expect(alongOutline(reading(10), group, "12", { x: 11, y: 0 }, -20)).toEqual({ x: 9, y: 0 });
    expect(alongOutline({ ...reading(10), outlines: [] }, group, "10", { x: 9, y: 0 }, 25)).toEqual({ x: 9, y: 0 });
  });
});
