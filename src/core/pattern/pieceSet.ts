/** The pieces of one garment by name. */
import { invariant } from "../result";
import { isSame } from "../same";
import { DRESS_PIECES, type OtherPiece, type Piece, type PieceName } from "./piece";

export type PieceSet = Readonly<Partial<Record<PieceName, Piece>>>;

export const OTHER_PIECES: readonly OtherPiece[] = ["other1", "other2", "other3", "other4", "other5", "other6"];

/** What the pieces of a bought pattern can be: all that are not drafted for the rest of the dress. */
export const PATTERN_PIECES: readonly PieceName[] = [
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

export const PIECE_ORDER: readonly PieceName[] = [
  ...PATTERN_PIECES.slice(0, PATTERN_PIECES.length - OTHER_PIECES.length),
  ...DRESS_PIECES,
  ...OTHER_PIECES,
];

export const pieceIn = (pieces: PieceSet, name: PieceName): Piece => invariant(pieces[name], name);

const PLACES: ReadonlyMap<PieceName, number> = new Map(PIECE_ORDER.map((name, place) => [name, place]));
const placeOf = ({ name }: Piece): number => PLACES.get(name) ?? 0;

/** In the order of `PIECE_ORDER`, whatever the order in which they were put together. */
export function piecesOf(pieces: PieceSet): readonly Piece[] {
  const found = Object.values(pieces);
  for (let i = 1; i < found.length; i += 1) {
    const [before, piece] = [found[i - 1], found[i]];
    if (before !== undefined && piece !== undefined && placeOf(before) > placeOf(piece))
      return found.toSorted((a, b) => placeOf(a) - placeOf(b));
  }
  return found;
}

export const withPiece = (pieces: PieceSet, piece: Piece): PieceSet => ({ ...pieces, [piece.name]: piece });

/** Pieces by their names. */
export const setOf = (pieces: readonly Piece[]): PieceSet =>
  Object.fromEntries(pieces.map((piece) => [piece.name, piece]));

/** Whether two pieces are the same in all that they hold: halves that were made apart can be. */
export const isSamePiece = (a: Piece | undefined, b: Piece | undefined): boolean => isSame(a, b);
