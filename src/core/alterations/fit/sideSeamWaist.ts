/** The side seam let out or taken in at the waist: a quarter of the amount at each edge, bodice and basque alike. */
import { edgeLength } from "../../geometry/edgeCurve";
import { seamLength } from "../../girth/seamLength";
import type { Piece } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
import { fitCorner } from "../../surgery/fitCorner";
import { curveOf } from "../../pattern/ring";
import { SAME_POINT, SHORTEST_EDGE } from "../../tolerance";
import type { Mm } from "../../units";
import { piecesOf, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { QUARTER } from "./quarter";
import { hasDartIn, toldFor, type Steps } from "./told";

const hasSideWaist = (piece: Piece): boolean =>
  piece.edges.some((edge) => edge.seam === "waist") && piece.edges.some(({ from }) => from === "sideWaist");

/** How much the stretch of waist next to the side seam can give up on every piece. */
const roomOf = (pieces: PieceSet): Mm =>
  Math.min(
    ...piecesOf(pieces)
      .filter(hasSideWaist)
      .map((piece) => {
        const edge = must(
          piece.edges.find((e) => e.seam === "waist" && (e.from === "sideWaist" || e.to === "sideWaist")),
          "waist edge",
        );
        return edgeLength(curveOf(piece, edge)) - SHORTEST_EDGE - SAME_POINT;
      }),
  );

const OUT = "Stick paper to the side. Carry the waist seam on by {quarter} beyond the side seam and mark there.";
const IN = "Mark {quarter} in from the side seam, along the waist seam.";
const drawTo = (end: string): string => `Draw the side seam anew from there, smoothly into the old line at the ${end}.`;
const ALIKE =
  "Lay front and back together: the side seams are as long as they were, and the waist runs across the seam without a corner.";
const WALK = "Walk the waist of the basque along the waist of the bodice.";

/** Where the stretch of the side seam that is drawn anew begins on a piece. */
function beginningOf(piece: Piece): string {
  if (piece.points.sideHip !== undefined) return "hip line";
  if (hasDartIn(piece, "side")) return "lower leg of the dart in the side";
  return piece.points.sideBust === undefined ? "under-bust seam" : "bust line";
}

const stepsFor = (piece: Piece, mark: string): readonly string[] => [
  mark,
  drawTo(beginningOf(piece)),
  piece.points.sideHip === undefined ? ALIKE : WALK,
];

/** For pieces without a dart in the side seam. */
const steps = (mark: string): Steps => {
  const bodice = [mark, drawTo("bust line"), ALIKE];
  const band = [mark, drawTo("under-bust seam"), ALIKE];
  const basque = [mark, drawTo("hip line"), WALK];
  return {
    front: bodice,
    sideFront: bodice,
    frontBand: band,
    back: bodice,
    backBand: band,
    frontBasque: basque,
    backBasque: basque,
  };
};

export const sideSeamWaist: FitDefinition = {
  phase: "widths",
  words: {
    name: "Side seams at the waist",
    seen: "The waist is tight or loose all round while bust and hip are right.",
    amount: "Let the waist out by, all round",
    hint: "less than 0 takes it in",
    more: { title: "Let the side seams out at the waist, {amount} all round", steps: steps(OUT) },
    less: { title: "Take the side seams in at the waist, {amount} all round", steps: steps(IN) },
  },
  range: { least: -80, most: 80 },
  applies: (pieces) => piecesOf(pieces).some(hasSideWaist),
  apply: (pieces, amount) => {
    const most = -roomOf(pieces) / QUARTER;
    if (amount < most) return fail({ code: "slip/too-much", most });
    let set = pieces;
    for (const piece of piecesOf(pieces).filter(hasSideWaist)) {
      const drawn = fitCorner(piece, "sideWaist", [
        { seam: "waist", length: seamLength(piece, "waist") + amount * QUARTER },
        { seam: "side", length: seamLength(piece, "side") },
      ]);
      if (drawn === null) return fail({ code: "slip/outline-spoilt", piece: piece.name });
      set = withPiece(set, drawn);
    }
    const tell = toldFor(pieces, set, (piece) => stepsFor(piece, amount > 0 ? OUT : IN));
    return ok({
      pieces: set,
      steps: tell,
      traces: [],
      values: { quarter: Math.abs(amount) * QUARTER },
      girths: { waist: amount },
    });
  },
};
