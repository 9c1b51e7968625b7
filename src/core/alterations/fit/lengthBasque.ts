/** Length of the basque between waist and hip, front and back alike. */
import { pointOf, type Piece } from "../../pattern/piece";
import { fail } from "../../result";
import { acrossAt } from "../../surgery/lengthenAcross";
import { lengthenAll, type Line } from "./lengthenAll";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

/** Where the cut is wanted between the end of the longer dart and the hip (our own choice). */
const BELOW_DARTS = 0.4;

const basques = ({ frontBasque, backBasque }: PieceSet): Piece[] =>
  [frontBasque, backBasque].filter((piece) => piece !== undefined);

/** How far below the waist its lowest dart ends; 0 where it has none. */
const lowestEnd = (piece: Piece): Mm =>
  Math.max(
    0,
    ...piece.darts
      .flatMap(({ apex, inner, outer }) => [apex, inner, outer])
      .map((name) => pointOf(piece, name).y - pointOf(piece, "centreWaist").y),
  );

/** Below the ends of all darts and above the hip, equally far below the waist on front and back. */
function hipLine(pieces: PieceSet): Line {
  const both = basques(pieces);
  const hip = Math.min(...both.map((piece) => pointOf(piece, "sideHip").y - pointOf(piece, "centreWaist").y));
  const darts = Math.max(...both.map(lowestEnd));
  const below = darts < hip ? darts + (hip - darts) * BELOW_DARTS : hip / 2;
  return both.flatMap((piece) => {
    const across = acrossAt(piece, pointOf(piece, "centreWaist").y + below);
    return across === null ? [] : [[piece.name, across] as const];
  });
}

export const lengthBasque: FitDefinition = {
  range: { least: -60, most: 80 },
  madeOn: ["frontBasque", "backBasque"],
  applies: (pieces) => basques(pieces).length > 0,
  apply: (pieces, amount) => {
    const line = hipLine(pieces);
    if (line.length < basques(pieces).length) return fail({ code: "alteration/too-much", most: 0 });
    return lengthenAll(pieces, line, amount);
  },
};
