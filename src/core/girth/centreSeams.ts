/** The centre seams of two halves of the body, which are sewn to each other or lie on one fold. */
import type { Piece, PieceName } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import { seamLength } from "./seamLength";

/** Pieces that take each other's place: a front may be one piece on one half and two on the other. */
const AT_CENTRE: readonly (readonly PieceName[])[] = [
  ["front", "centreFront", "cup"],
  ["frontBand"],
  ["back"],
  ["backBand"],
  ["frontBasque"],
  ["backBasque"],
];

export interface CentreSeam {
  /** Whichever pieces have it: the name of the whole one. */
  readonly of: PieceName;
  readonly left: Piece;
  readonly right: Piece;
  /** How much longer the left one is sewn, darts closed; negative: shorter. */
  readonly off: Mm;
}

/** From the neck to the hem, front and back; where a half has no such seam, there is nothing to compare. */
export const centreSeams = (left: PieceSet, right: PieceSet): readonly CentreSeam[] =>
  AT_CENTRE.flatMap((names) => centreSeam(left, right, names) ?? []);

function centreSeam(left: PieceSet, right: PieceSet, names: readonly PieceName[]): CentreSeam | null {
  const [a, b] = [left, right].map((pieces) => names.flatMap((name) => pieces[name] ?? []).find(hasCentre));
  if (a === undefined || b === undefined) return null;
  const [of = a.name] = names;
  return { of, left: a, right: b, off: seamLength(a, "centre") - seamLength(b, "centre") };
}

const hasCentre = (piece: Piece): boolean => piece.edges.some(({ seam }) => seam === "centre");

/** How much longer a centre seam is on the left; 0 where a half has none. */
export function centreOff(left: PieceSet, right: PieceSet, of: PieceName): Mm {
  const names = AT_CENTRE.find(([whole]) => whole === of);
  return names === undefined ? 0 : (centreSeam(left, right, names)?.off ?? 0);
}
