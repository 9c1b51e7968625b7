/** What is promised of every answer, measured on its pieces. */
import { sewn as sewnLength } from "../alterations/redraw/giveBack";
import type { DartFigures } from "../dart/dartFigures";
import { validateOutline } from "../geometry/outline";
import { seamLength } from "../girth/seamLength";
import { dartOf, type DartRef, type PieceName, type SeamName } from "../pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { outlineOf } from "../pattern/ring";
import { DART_ASIDE_USUAL, SAME_LINE, SEAM_KEPT, SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";

/** What came out, and the stop that was aimed at. */
interface CameOut {
  readonly pieces: PieceSet;
  readonly figures: Pick<DartFigures, "legInner" | "legOuter" | "end">;
  readonly fullnessOff: Mm;
  readonly stop: Mm;
}

/**
 * Whether an answer is as said.
 *
 * @param base the pieces before this dart's own redraws
 */
export function isAsSaid(base: PieceSet, ref: DartRef, { pieces, figures, fullnessOff, stop }: CameOut): boolean {
  const { end, legInner, legOuter } = figures;
  return (
    Math.abs(sewnLength(pieces, ref) - sewnLength(base, ref)) < SEAM_KEPT &&
    Math.abs(legInner - legOuter) < SEWN_AGREEMENT &&
    end !== null &&
    Math.abs(end.along - stop) < SAME_LINE &&
    Math.abs(end.across) <= DART_ASIDE_USUAL &&
    Math.abs(fullnessOff) < SAME_LINE &&
    piecesOf(pieces).every(({ name }) => base[name] === pieces[name] || isSound(base, pieces, ref, name))
  );
}

/** Seams that are sewn to other pieces' and that no answer may change in length. */
const KEPT_SEAMS: readonly SeamName[] = ["side", "waist", "underBust"];

/** A piece that can be cut, its seams to other pieces as long as they were. */
function isSound(base: PieceSet, pieces: PieceSet, ref: DartRef, name: PieceName): boolean {
  const [was, is] = [pieceIn(base, name), pieceIn(pieces, name)];
  const own = dartOf(pieceIn(base, ref.piece), ref.dart).seam;
  // The dart's own seam is summed over the pieces that share it; the basque's waist goes with the bodice's.
  const kept = KEPT_SEAMS.filter((seam) => seam !== own);
  return (
    validateOutline(outlineOf(is)).length <= validateOutline(outlineOf(was)).length &&
    kept.every((seam) => Math.abs(seamLength(is, seam) - seamLength(was, seam)) < SEAM_KEPT)
  );
}
