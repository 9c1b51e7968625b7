/** A box as a piece: its centre at x = 0 and no fold, its upper edge, side and lower edge straight. Invented. */
import type { Piece, PieceName, SeamName } from "../../src/core/pattern/piece";
import { cornerPiece } from "./cornerPiece";

export function boxPiece(
  name: PieceName,
  width: number,
  height: number,
  [upper, lower]: readonly [SeamName, SeamName] = ["neck", "waist"],
): Piece {
  const piece = cornerPiece({
    name,
    corners: [
      ["centreNeck", 0, 0, upper],
      ["underarm", width, 0, "side"],
      ["sideWaist", width, height, lower],
      ["centreWaist", 0, height, "centre"],
    ],
  });
  return { ...piece, centreOnFold: false };
}
