/**
 * The side seam let out or taken in where a midriff band begins: a quarter of the amount at each edge, of the upper part and of
 * the band alike. It runs out to nothing at the bust line, or at a dart in the side, and at the waist.
 */
import { edgeLength, edgeTangentAt, type EdgeCurve } from "../../geometry/edgeCurve";
import { halve } from "../../geometry/iterate";
import { directionOf, turnBetween } from "../../geometry/point";
import { seamLength } from "../../girth/seamLength";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { Piece, SeamName } from "../../pattern/piece";
import { curveOf } from "../../pattern/ring";
import { joinsOf, type Join } from "../../pattern/sewnTogether";
import { fail, invariant, ok } from "../../result";
import { fitCorner } from "../../surgery/fitCorner";
import { withSeamEnd } from "../../surgery/walkAgain";
import { SAME_POINT, SHORTEST_EDGE, WALKED_AGREEMENT } from "../../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../../units";
import type { FitDefinition } from "../outcome/definition";
import { QUARTER } from "./quarter";

const CORNER = "sideUnderBust";

/** A stretch of side seam that leaves its own direction by more than this looks bent, not shaped (our own choice). */
const MOST_LEAN = radiansFromDegrees(25);

/** The two pairs of pieces whose side seams end at the under-bust: above it, and the band. */
const pairsOf = (pieces: PieceSet): readonly Join[] => joinsOf(pieces).filter(({ point }) => point === CORNER);

const ending = (pieces: PieceSet): readonly Piece[] =>
  pairsOf(pieces).flatMap(({ first, second }) => [pieceIn(pieces, first), pieceIn(pieces, second)]);

/** The stretch of a seam that ends at the side of the under-bust. */
function stretchOf(piece: Piece, seam: SeamName): EdgeCurve<"piece"> {
  const edge = piece.edges.find((one) => one.seam === seam && (one.from === CORNER || one.to === CORNER));
  return curveOf(piece, invariant(edge, `${piece.name}: ${seam}`));
}

/** How far the side seams stand, at most, from the straight line between their ends. */
function leanOf(pieces: PieceSet): Radians {
  const leans = ending(pieces).flatMap((piece) => {
    const curve = stretchOf(piece, "side");
    const straight = directionOf(curve.a, curve.b);
    return [0, 1].map((t) => Math.abs(turnBetween(edgeTangentAt(curve, t), straight)));
  });
  return radians(Math.max(...leans));
}

/** Every edge moved along the under-bust seam; null where a piece cannot be drawn so. */
function moved(pieces: PieceSet, by: Mm): PieceSet | null {
  let set = pieces;
  for (const { first, second } of pairsOf(pieces)) {
    const pair = [pieceIn(pieces, first), pieceIn(pieces, second)];
    const slid = pair.map((piece) => withSeamEnd(piece, "underBust", CORNER, seamLength(piece, "underBust") + by));
    // The slope of the seam differs a little between front and back: both take the mean of what it adds.
    const added = slid.map((piece, i): Mm => seamLength(piece, "side") - seamLength(pair[i] ?? piece, "side"));
    const mean = added.reduce((sum, one) => sum + one, 0) / pair.length;
    for (const [i, piece] of pair.entries()) {
      const drawn = fitCorner(slid[i] ?? piece, CORNER, [
        { seam: "underBust", length: seamLength(piece, "underBust") + by },
        { seam: "side", length: seamLength(piece, "side") + mean },
      ]);
      if (drawn === null) return null;
      set = withPiece(set, drawn);
    }
  }
  return set;
}

/** The pieces with each edge moved; null where the side seam would be no smooth line, or nothing left of the under-bust. */
function shaped(pieces: PieceSet, by: Mm): PieceSet | null {
  const left = Math.min(...ending(pieces).map((piece) => edgeLength(stretchOf(piece, "underBust"))));
  if (by < SHORTEST_EDGE + SAME_POINT - left) return null;
  const set = moved(pieces, by);
  return set !== null && leanOf(set) <= Math.max(MOST_LEAN, leanOf(pieces)) ? set : null;
}

export const sideSeamUnderBust: FitDefinition = {
  range: { least: -160, most: 80 },
  isWhole: true,
  madeOn: ["cup", "frontBand", "back", "backBand"],
  applies: (pieces) => pairsOf(pieces).length === 2,
  apply: (pieces, amount) => {
    const set = shaped(pieces, amount * QUARTER);
    if (set === null) {
      const { holding } = halve(0, amount, WALKED_AGREEMENT, (some) => shaped(pieces, some * QUARTER) !== null);
      return fail({ code: "alteration/too-much", most: holding });
    }
    return ok({ pieces: set, traces: [], values: { quarter: Math.abs(amount) * QUARTER } });
  },
};
