/** Seams that walked before an alteration walk after it: what cutting across slanting seams made them differ is taken up. */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { comeNear } from "../geometry/iterate";
import { polar } from "../geometry/point";
import { moveMouthEnd } from "../dart/mouthEnd";
import { seamLength } from "../girth/seamLength";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { pointOf, type Piece, type PieceName, type PointName, type SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { pieceIn, piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { runBeside } from "../pattern/runBeside";
import { SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { drawPrincess } from "./princessSeam";

/** Rounds in which a corner settles; each leaves under a hundredth of the error. */
const ROUNDS = 4;

/** The corners at which a side seam is made longer or shorter, the first that a piece has. */
const SIDE_ENDS: readonly PointName[] = ["sideWaist", "sideUnderBust"];

/**
 * The pieces with their side seams and princess seams walked: each pair differs by as much as it did before. A princess
 * seam is drawn anew, smooth; side seams share the difference at their lower corner (by tenths of a millimetre).
 */
export function walkAgain(before: PieceSet, after: PieceSet): PieceSet {
  const set = walkPrincess(before, after);
  return seamPairsOf(set).reduce(
    (walked, pair) => (pair.seam === "side" ? walkSide(before, walked, pair) : walked),
    set,
  );
}

function walkPrincess(before: PieceSet, after: PieceSet): PieceSet {
  const { centreFront, sideFront } = after;
  if (centreFront === undefined || sideFront === undefined) return after;
  if (centreFront === before.centreFront && sideFront === before.sideFront) return after;
  const drawn = drawPrincess({ centreFront, sideFront });
  return withPiece(withPiece(after, drawn.centreFront), drawn.sideFront);
}

function walkSide(before: PieceSet, after: PieceSet, pair: SeamPair): PieceSet {
  const { seam, first, second } = pair;
  const gap = (set: PieceSet): Mm => sewnOf(set, first, seam) - sewnOf(set, second, seam);
  return takeUpSide(after, pair, gap(after) - gap(before));
}

/** A side seam whose first half is too long by so much, against the second, walked: both give at their lower corner. */
export function takeUpSide(after: PieceSet, { first, second }: SeamPair, drift: Mm): PieceSet {
  if (Math.abs(drift) < SOLVER_ACCURACY) return after;
  const one = sidePieceOf(after, first);
  const other = sidePieceOf(after, second);
  return withPiece(withPiece(after, withSideLength(one, -drift / 2)), withSideLength(other, drift / 2));
}

const sewnOf = (set: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(set, name), seam), 0);

const sidePieceOf = (set: PieceSet, names: readonly PieceName[]): Piece =>
  invariant(
    piecesOf(set).find((piece) => names.includes(piece.name) && piece.edges.some(({ seam }) => seam === "side")),
    "piece of the side seam",
  );

/** The side seam made longer at its lower corner, and the waist that ends there, if any, kept as long as it was. */
function withSideLength(piece: Piece, longer: Mm): Piece {
  const corner = invariant(
    SIDE_ENDS.find((name) => piece.points[name] !== undefined),
    "end of the side seam",
  );
  const [side, waist] = [seamLength(piece, "side") + longer, seamLength(piece, "waist")];
  let drawn = withSeamEnd(piece, "side", corner, side);
  if (waist === 0) return drawn;
  // Each moves the corner along its own seam; they meet squarely, so that neither undoes much of the other.
  for (let round = 0; round < ROUNDS; round += 1) {
    drawn = withSeamEnd(withSeamEnd(drawn, "waist", corner, waist), "side", corner, side);
  }
  return drawn;
}

/** The seam brought to a length by moving one end of it along its own direction there. */
export function withSeamEnd(piece: Piece, seam: SeamName, corner: PointName, length: Mm): Piece {
  const { run, seamOutside, withRun } = runBeside(piece, corner, corner);
  const left = length - seamOutside(seam);
  const { value } = comeNear(run, {
    missOf: (drawn) => left - seamLength(drawn, seam),
    correct: (drawn, longer) =>
      moveMouthEnd(drawn, corner, polar(pointOf(drawn, corner), onward(drawn, seam, corner), longer)),
    rounds: ROUNDS,
    accuracy: SOLVER_ACCURACY,
  });
  return value === run ? piece : withRun(value);
}

/** The direction in which the seam would run on beyond its end. */
function onward(piece: Piece, seam: SeamName, corner: PointName) {
  const into = invariant(piece.edges[edgeTo(piece, corner)], "edge");
  if (into.seam === seam) return edgeTangentAt(curveOf(piece, into), 1);
  const out = invariant(piece.edges[edgeFrom(piece, corner)], "edge");
  return radians(edgeTangentAt(curveOf(piece, out), 0) + Math.PI);
}
