/** Whether truing came to an end: seams that still do not walk, and corners that it moved out of all sense. */
import { distance } from "../geometry/point";
import { pointNames, pointOf, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf } from "../pattern/sewnTogether";
import { seamLength } from "../girth/seamLength";
import { HAND_AGREEMENT, TRUED_AT_MOST } from "../tolerance";
import type { Mm } from "../units";

/** What is left over at a seam: what it and its partner still differ by, or how far its end would have to be moved. */
export interface TruingLeft {
  readonly piece: PieceName;
  readonly seam: SeamName;
  readonly off: Mm;
}

/** null where every seam walks and no corner was moved further than truing ever should. */
export function leftOf(before: PieceSet, after: PieceSet): TruingLeft | null {
  for (const piece of piecesOf(after)) {
    const old = before[piece.name];
    const far = old === undefined || old === piece ? null : farMoved(old, piece);
    if (far !== null) return far;
  }
  for (const { seam, first, second, ease } of seamPairsOf(after)) {
    const length = (names: readonly PieceName[]): Mm =>
      names.reduce((sum, name) => sum + seamLength(pieceIn(after, name), seam), 0);
    const off = Math.abs(length(first) - length(second) - ease);
    const [piece] = first;
    if (piece !== undefined && !(off <= HAND_AGREEMENT)) return { piece, seam, off };
  }
  return null;
}

function farMoved(before: Piece, after: Piece): TruingLeft | null {
  for (const name of pointNames(after)) {
    const at = before.points[name]?.at;
    const off = at === undefined ? 0 : distance(at, pointOf(after, name));
    if (off <= TRUED_AT_MOST) continue;
    const seam = after.edges.find(({ from, to }) => from === name || to === name)?.seam ?? "side";
    return { piece: after.name, seam, off };
  }
  return null;
}
