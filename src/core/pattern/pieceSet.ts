/** The pieces of one garment by name. */
import { invariant } from "../result";
import { isSame } from "../same";
import type { OtherPiece, Piece, PieceName } from "./piece";

export type PieceSet = Readonly<Partial<Record<PieceName, Piece>>>;

export const OTHER_PIECES: readonly OtherPiece[] = ["other1", "other2", "other3", "other4", "other5", "other6"];

export const PIECE_ORDER: readonly PieceName[] = [
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "back",
  "backBand",
  "frontBasque",
  "backBasque",
  "strap",
  ...OTHER_PIECES,
];

export const pieceIn = (pieces: PieceSet, name: PieceName): Piece => invariant(pieces[name], name);

export function piecesOf(pieces: PieceSet): readonly Piece[] {
  const found: Piece[] = [];
  for (const name of PIECE_ORDER) {
    const piece = pieces[name];
    if (piece !== undefined) found.push(piece);
  }
  return found;
}

export const withPiece = (pieces: PieceSet, piece: Piece): PieceSet => ({ ...pieces, [piece.name]: piece });

/** Pieces by their names. */
export const setOf = (pieces: readonly Piece[]): PieceSet =>
  Object.fromEntries(pieces.map((piece) => [piece.name, piece]));

/** Whether two pieces are the same in all that they hold: halves that were made apart can be. */
export const isSamePiece = (a: Piece | undefined, b: Piece | undefined): boolean => isSame(a, b);
