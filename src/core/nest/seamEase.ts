/**
 * What the pattern's own seams differ by where they are sewn together: read off its printed pieces, kept on them, and kept when
 * pieces are blended.
 */
import { neighbours } from "../blend/blendPiece";
import { moveMouthEnd } from "../dart/mouthEnd";
import { dartCorners } from "../dart/moveMouth";
import { directionOf, distance, polar } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { isBasque } from "../pattern/pieceGroups";
import { pieceIn, piecesOf, setOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { dartOf, type DartName, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { seamPairsOf } from "../pattern/sewnTogether";
import { takeUpSide } from "../surgery/walkAgain";
import { invariant } from "../result";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { trueToBodice } from "./trueToBodice";

/** Seams that are sewn to another piece's. */
const SEWN: readonly SeamName[] = ["shoulder", "princess", "side", "underBust", "waist"];

const sewn = (set: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(set, name), seam), 0);

function legsTakenUp(piece: Piece, base: Piece): Piece {
  return piece.darts.reduce((drawn, { name }) => {
    const drift = legDifference(drawn, name) - legDifference(base, name);
    if (Math.abs(drift) < SOLVER_ACCURACY) return drawn;
    const { apex, inner, outer } = dartCorners(drawn, name);
    const dart = dartOf(drawn, name);
    const longer = moveMouthEnd(drawn, dart.inner, polar(inner, directionOf(apex, inner), drift / 2));
    return moveMouthEnd(longer, dart.outer, polar(outer, directionOf(apex, outer), -drift / 2));
  }, piece);
}

/** Outer leg less inner leg. */
function legDifference(piece: Piece, name: DartName): Mm {
  const { apex, inner, outer } = dartCorners(piece, name);
  return distance(apex, outer) - distance(apex, inner);
}

/** The pieces of one size, each with the ease that is printed in its seams. */
export function withSeamEase(pieces: readonly Piece[]): readonly Piece[] {
  const set = setOf(pieces);
  const eases = new Map<PieceName, Partial<Record<SeamName, Mm>>>();
  for (const { seam, first, second } of seamPairsOf(set)) {
    const [name] = first;
    if (name === undefined) continue;
    eases.set(name, { ...eases.get(name), [seam]: sewn(set, first, seam) - sewn(set, second, seam) });
  }
  return pieces.map((piece) => ({ ...piece, seamEase: eases.get(piece.name) ?? {} }));
}

/** A blended piece with the ease of its base size. */
export function blendedEase(piece: Piece, sizes: readonly Piece[], baseSize: number): Piece {
  if (sizes.every(({ seamEase }) => seamEase === undefined)) return piece;
  const { lower, share } = neighbours(baseSize, sizes.length);
  const low = invariant(sizes[lower], "size").seamEase ?? {};
  const high = sizes[lower + 1]?.seamEase ?? {};
  return {
    ...piece,
    seamEase: Object.fromEntries(
      SEWN.flatMap((seam) => {
        const [from, to] = [low[seam], high[seam]];
        return from === undefined ? [] : [[seam, to === undefined ? from : from + share * (to - from)]];
      }),
    ),
  };
}

/**
 * Blended to several sizes, legs of darts, side seams, and a basque and its bodice drift apart by fractions of a millimetre: taken
 * up.
 *
 * @param base the same pieces all of the base size: what they differ by there is the pattern's own
 */
export function walkBlended(pieces: PieceSet, base: PieceSet): PieceSet {
  let set = pieces;
  for (const piece of piecesOf(pieces)) {
    const legs = legsTakenUp(piece, pieceIn(base, piece.name));
    if (legs !== piece) set = withPiece(set, legs);
  }
  for (const { seam, first, second, ease } of seamPairsOf(pieces)) {
    if (seam !== "waist" || !second.every(isBasque)) continue;
    for (const name of second) set = withPiece(set, trueToBodice(pieceIn(set, name), sewn(set, first, seam) - ease));
  }
  for (const pair of seamPairsOf(set)) {
    if (pair.seam !== "side") continue;
    set = takeUpSide(set, pair, sewn(set, pair.first, "side") - sewn(set, pair.second, "side") - pair.ease);
  }
  return set;
}
