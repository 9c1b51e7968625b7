/** The legs of a dart bowed: into the dart for a rounder cup, or out of it to take more in the middle. */
import type { DartLegsAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { distance } from "../../geometry/point";
import { dartOf, pointOf } from "../../pattern/piece";
import { seamLength } from "../../girth/seamLength";
import { trueSeamEvenly } from "../../dart/trueSeamEvenly";
import { mostBow } from "../../dart/bowedLegs";
import { fail, ok, type Result } from "../../result";
import { noSurgery } from "../../surgery/cutAndMove";
import type { FitApplied } from "../outcome/definition";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";

/** The pieces with the bow set on the dart; end and sewn seam stay. */
export function bowLegs(
  pieces: PieceSet,
  { dart: ref, bow }: DartLegsAlteration,
): Result<FitApplied, AlterationFailure> {
  const piece = pieceIn(pieces, ref.piece);
  const dart = dartOf(piece, ref.dart);
  if (dart.gathered === true) return fail({ code: "alteration/not-this-dart", dart: ref });
  if (bow === (dart.bow ?? 0)) return ok({ pieces, traces: [], values: {} });
  const mouth = distance(pointOf(piece, dart.inner), pointOf(piece, dart.outer));
  const { least, most } = mostBow(mouth);
  if (bow > most || bow < least) return fail({ code: "alteration/too-much", most: bow > most ? most : least });
  const { bow: _bow, ...straight } = dart;
  const bowed = bow === 0 ? straight : { ...straight, bow };
  const done = { ...piece, darts: piece.darts.map((d) => (d === dart ? bowed : d)) };
  // Bowed legs come to the seam at another angle: it is drawn smooth over the shut dart, as long as it was.
  const trued = trueSeamEvenly(done, ref.dart, seamLength(piece, dart.seam));
  return ok({ pieces: withPiece(pieces, trued), traces: [noSurgery(piece)], values: { bow: Math.abs(bow) } });
}
