/**
 * The side seam let out or taken in at the bust: a quarter of the amount at each edge of front and back, from the
 * underarm to the bust line; below it the change runs out to nothing at the waist, or where a cup ends.
 */
import { edgeLength } from "../../geometry/edgeCurve";
import { directionOf, polar, type PiecePoint } from "../../geometry/point";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { trueLegs } from "../../dart/trueLegs";
import { trueSeamEvenly } from "../../dart/trueSeamEvenly";
import { seamLength } from "../../girth/seamLength";
import { isBend, pointOf, type Edge, type Piece, type PieceName, type PointName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { controlsOf } from "../../surgery/fitHandles";
import { curveOf } from "../../pattern/ring";
import { underarmPieces } from "../../surgery/shoulderLine";
import { withSeamEnd } from "../../surgery/walkAgain";
import type { Mm, Radians } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { QUARTER } from "./quarter";

/** No more than this share of the piece's own width is taken in (our own choice). */
const SHARE = 0.15;

/** The points that the bust line runs between at the side end. */
function bustLine(piece: Piece): { readonly from: PiecePoint; readonly side: PiecePoint } | null {
  const line = piece.levelLines.find(({ level }) => level === "bust");
  if (line === undefined || !("points" in line.along) || piece.points.sideBust === undefined) return null;
  const before = line.along.points.at(-2);
  return before === undefined || line.along.points.at(-1) !== "sideBust"
    ? null
    : { from: pointOf(piece, before), side: pointOf(piece, "sideBust") };
}

const isSidePiece = (piece: Piece): boolean =>
  bustLine(piece) !== null && piece.edges.some(({ from }) => from === "sideBust");

/** The piece with its side moved out by an amount at the bust line. */
function letOut(piece: Piece, amount: Mm): Piece {
  const { from, side } = invariant(bustLine(piece), "bust line");
  const outward = directionOf(from, side);
  const run = piece.edges.filter(({ seam }) => seam === "side");
  const start = run.findIndex((edge) => edge.from === "sideBust");
  const below = run.slice(start);
  const total = below.reduce((sum, edge) => sum + sewn(piece, edge), 0);
  let moved = withCurves(piece, below);
  for (const corner of ["underarm", "sideBust"] as const)
    moved = moveMouthEnd(moved, corner, polar(pointOf(piece, corner), outward, amount));
  let gone = 0;
  for (const edge of below.slice(0, -1)) {
    gone += sewn(piece, edge);
    // A bend goes with the corners of its stretch.
    if (isBend(edge.to)) continue;
    moved = moveMouthEnd(moved, edge.to, shifted(piece, edge.to, amount * (1 - gone / total), outward));
  }
  return below.reduce((done, { mouthOf }) => {
    const dart = piece.darts.find(({ name }) => name === mouthOf);
    return dart === undefined || dart.gathered === true
      ? done
      : trueSeamEvenly(trueLegs(done, dart.name).piece, dart.name, seamLength(done, "side"));
  }, moved);
}

const sewn = (piece: Piece, edge: Edge): Mm => (edge.mouthOf === null ? edgeLength(curveOf(piece, edge)) : 0);

/** Straight stretches get handles, so that they stay in line with what they join while their ends move by different amounts. */
const withCurves = (piece: Piece, run: readonly Edge[]): Piece => ({
  ...piece,
  edges: piece.edges.map((edge): Edge =>
    run.includes(edge) && edge.mouthOf === null ? { ...edge, curve: controlsOf(piece, edge) } : edge,
  ),
});

/** An end of a dart's mouth moves along its leg, so that both legs grow alike; any other corner as the bust line's end does. */
function shifted(piece: Piece, corner: PointName, by: Mm, outward: Radians): PiecePoint {
  const dart = piece.darts.find(({ inner, outer }) => inner === corner || outer === corner);
  const at = pointOf(piece, corner);
  return polar(at, dart === undefined ? outward : directionOf(pointOf(piece, dart.apex), at), by);
}

export const sideSeamBust: FitDefinition = {
  range: { least: -60, most: 60 },
  isWhole: true,
  madeOn: ["front", "sideFront", "cup", "back"],
  applies: (pieces) => underarmPieces(pieces).filter((name) => isSidePiece(pieceIn(pieces, name))).length === 2,
  apply: (pieces, amount) => {
    const names = underarmPieces(pieces);
    const widths = names.map((name) => invariant(bustLine(pieceIn(pieces, name)), "bust line").side.x);
    const most = (-SHARE * Math.min(...widths)) / QUARTER;
    if (amount < most) return fail({ code: "alteration/too-much", most });
    const set = names.reduce((done, name) => withPiece(done, letOut(pieceIn(done, name), amount * QUARTER)), pieces);
    const after = walked(pieces, set, names);
    return ok({
      pieces: after,
      traces: [],
      values: { quarter: Math.abs(amount) * QUARTER },
      girths: { bust: amount },
    });
  },
};

/** Slopes differ a little between front and back: both take the mean of what they add, at the underarm. */
function walked(before: PieceSet, after: PieceSet, names: readonly PieceName[]): PieceSet {
  const longer = names.map(
    (name): Mm => seamLength(pieceIn(after, name), "side") - seamLength(pieceIn(before, name), "side"),
  );
  const mean = longer.reduce((sum, one) => sum + one, 0) / names.length;
  return names.reduce((set, name) => {
    const length = seamLength(pieceIn(before, name), "side") + mean;
    return withPiece(set, withSeamEnd(pieceIn(set, name), "side", "underarm", length));
  }, after);
}
