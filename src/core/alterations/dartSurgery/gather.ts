/** A dart drawn up as gathers over its mouth in place of being folded. */
import type { DartGatherAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { distance } from "../../geometry/point";
import { seamLength } from "../../girth/seamLength";
import { dartOf, pointOf } from "../../pattern/piece";
import { ok, type Result } from "../../result";
import { noSurgery } from "../../surgery/cutAndMove";
import { truedOver } from "../../surgery/openDart";
import type { Mm } from "../../units";
import type { FitApplied } from "../outcome/definition";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";

/** How far beyond each end of the mouth the gathers spread, so that they lie softly (common practice, no source). */
const BEYOND: Mm = 30;

/** The pieces with the dart marked to be gathered, and its seam drawn smooth over the open mouth; its sewn length stays. */
export function gatherDart(
  pieces: PieceSet,
  { dart: ref }: DartGatherAlteration,
): Result<FitApplied, AlterationFailure> {
  const piece = pieceIn(pieces, ref.piece);
  const dart = dartOf(piece, ref.dart);
  if (dart.gathered === true) return ok({ pieces, traces: [], values: {} });
  const { bow: _bow, ...plain } = dart;
  const marked = { ...piece, darts: piece.darts.map((d) => (d === dart ? { ...plain, gathered: true as const } : d)) };
  const done = truedOver(marked, dart.name, seamLength(piece, dart.seam));
  const mouth = distance(pointOf(done, dart.inner), pointOf(done, dart.outer));
  return ok({ pieces: withPiece(pieces, done), traces: [noSurgery(piece)], values: { mouth, beyond: BEYOND } });
}
