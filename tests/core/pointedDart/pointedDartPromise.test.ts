/**
 * What an answer must keep, both sides of each bound: on a front of straight seams (160 of waist beside a dart 40 wide, 300 of
 * side) whose corners are moved by hand. The bounds are common practice and our own choice, no source.
 */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece, PieceName, PointName, SeamName } from "../../../src/core/pattern/piece";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import { isAsSaid } from "../../../src/core/pointedDart/pointedDartPromise";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { ref } from "../../support/works";

const WAIST = ref("front", "waistDart");
const SIDE = ref("front", "sideDart");

function bodicePiece(name: PieceName, lower: SeamName = "waist"): Piece {
  return cornerPiece({
    name,
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 0, "side"],
      ["sideDartInner", 200, 100, "side", "sideDart"],
      ["sideDartOuter", 200, 120, "side"],
      ["sideWaist", 200, 320, lower],
      ["waistDartOuter", 120, 320, lower, "waistDart"],
      ["waistDartInner", 80, 320, lower],
      ["centreWaist", 0, 320, "centre"],
    ],
    inside: { waistDartApex: [100, 160], sideDartApex: [120, 110] },
    darts: [dartFor("waistDart", lower, "bustPoint"), dartFor("sideDart", "side", "bustPoint")],
  });
}

const moved = (piece: Piece, name: PointName, x: number, y: number): Piece => {
  const point = piece.points[name];
  if (point === undefined) throw new Error(name);
  return {
    ...piece,
    points: { ...piece.points, [name]: { ...point, at: piecePoint(point.at.x + x, point.at.y + y) } },
  };
};

const front = bodicePiece("front");
const back = bodicePiece("back");
const base: PieceSet = { front, back };
const sound = {
  pieces: base,
  figures: { legInner: 160, legOuter: 160, end: { along: 20, across: 0 } },
  fullnessOff: 0,
  stop: 20,
};
const kept = (more: Partial<typeof sound>, dart = WAIST, from = base): boolean =>
  isAsSaid(from, dart, { ...sound, ...more });
const withEnd = (along: number, across: number): boolean =>
  kept({ figures: { ...sound.figures, end: { along, across } } });

describe("an answer is as said", () => {
  it("where nothing moved, and not where nobody knows how it ends", () => {
    expect(kept({})).toBe(true);
    expect(isAsSaid(base, WAIST, { ...sound, figures: { ...sound.figures, end: null } })).toBe(false);
  });

  it("its seam as long as it was to less than half a tenth, longer or shorter", () => {
    const waist = (by: number): boolean => kept({ pieces: { ...base, front: moved(front, "centreWaist", by, 0) } });
    expect([-0.051, -0.049, 0.049, 0.051].map(waist)).toEqual([false, true, true, false]);
  });

  it("the seam is that of front and back together, where both have a dart for it", () => {
    const wider = moved(front, "centreWaist", -5, 0);
    expect(kept({ pieces: { front: wider, back } })).toBe(false);
    expect(kept({ pieces: { front: wider, back: moved(back, "centreWaist", 5, 0) } })).toBe(true);
    const plain: Piece = { ...back, darts: [] };
    const alone = { front, back: plain };
    expect(kept({ pieces: { front: wider, back: moved(plain, "centreWaist", 5, 0) } }, WAIST, alone)).toBe(false);
  });

  it("its legs alike to less than half a tenth", () => {
    const legs = (legInner: number, legOuter: number): boolean =>
      kept({ figures: { ...sound.figures, legInner, legOuter } });
    expect([legs(160, 159.951), legs(160, 160.049)]).toEqual([true, true]);
    expect([legs(160, 159.949), legs(160, 160.051), legs(0.05, 0), legs(0, 0.05)]).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it("its end within half a millimetre of the stop, and the bust point no more than 10 beside its axis", () => {
    expect([withEnd(19.51, 0), withEnd(20.49, 0), withEnd(20, 10), withEnd(20, -10)]).toEqual([true, true, true, true]);
    expect([withEnd(19.5, 0), withEnd(20.5, 0), withEnd(20, 10.01), withEnd(20, -10.01)]).toEqual([
      false,
      false,
      false,
      false,
    ]);
    // Short of the stop that was aimed at, whichever that is.
    expect([kept({ stop: 30 }), kept({ stop: 20.4 })]).toEqual([false, true]);
  });

  it("its fullness within half a millimetre", () => {
    expect([-0.5, -0.49, 0.49, 0.5].map((fullnessOff) => kept({ fullnessOff }))).toEqual([false, true, true, false]);
  });

  it("all other seams to other pieces as long as they were: the side, and for a side dart the waist", () => {
    const side = (by: number): boolean => kept({ pieces: { ...base, front: moved(front, "underarm", 0, by) } });
    expect([-0.051, -0.049, 0.049, 0.051].map(side)).toEqual([false, true, true, false]);
    const waist = (by: number): boolean =>
      kept({ pieces: { ...base, front: moved(front, "centreWaist", by, 0) } }, SIDE);
    expect([-0.051, -0.049, 0.049, 0.051].map(waist)).toEqual([false, true, true, false]);
    // Of the piece behind as well.
    expect(kept({ pieces: { front, back: moved(back, "underarm", 0, 1) } })).toBe(false);
    const cup = bodicePiece("cup", "underBust");
    const sewn = { ...base, cup };
    expect(kept({ pieces: { ...sewn, cup: moved(cup, "centreWaist", 1, 0) } }, WAIST, sewn)).toBe(false);
    expect(kept({ pieces: { ...sewn, cup: moved(cup, "centreNeck", 1, 0) } }, WAIST, sewn)).toBe(true);
    // A basque's waist goes with the bodice's, its side does not.
    const frontBasque = bodicePiece("frontBasque");
    const long = { ...base, frontBasque };
    expect(kept({ pieces: { ...long, frontBasque: moved(frontBasque, "centreWaist", 5, 0) } }, WAIST, long)).toBe(true);
    expect(kept({ pieces: { ...long, frontBasque: moved(frontBasque, "underarm", 0, 5) } }, WAIST, long)).toBe(false);
  });

  it("every piece can be cut: no line crosses another, but where one did before", () => {
    // The centre line runs out across the side seam and back.
    const crossed = moved(front, "centreNeck", 250, 150);
    expect(kept({ pieces: { ...base, front: crossed } })).toBe(false);
    expect(
      kept({ pieces: { ...base, front: moved(crossed, "centreNeck", 1, 0) } }, WAIST, { front: crossed, back }),
    ).toBe(true);
  });
});
