/** What the three gapes at a front's edge have in common: a wedge closed into a dart or into the princess seam. */
import type { AlterationFailure } from "../outcome/alterationFailure";
import { distance } from "../../geometry/point";
import { levelWidth } from "../../girth/levelWidth";
import { dartOf, pointOf, type DartName, type Piece, type SeamName } from "../../pattern/piece";
import { fail, ok, type Result } from "../../result";
import { closeWedgeIntoDart, closeWedgeIntoPrincess, takesWedge, type WedgeFailure } from "../../surgery/closeWedge";
import { WALKED_AGREEMENT } from "../../tolerance";
import type { Mm } from "../../units";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitApplied, FitContext } from "../outcome/definition";

/** The piece of the front that a gape at a seam is closed on; undefined where there is none. */
export function gapePiece(pieces: PieceSet, seam: "neck" | "armhole"): Piece | undefined {
  const { front, centreFront, sideFront } = pieces;
  const princess = seam === "neck" ? centreFront : sideFront;
  return [front, princess].find((piece) => piece !== undefined && takesWedge(piece, seam));
}

/** The cup where a gape can be closed on it at its armhole. */
export const gapeCup = ({ cup }: PieceSet): Piece | undefined =>
  cup !== undefined && takesWedge(cup, "armhole") ? cup : undefined;

/** Closes the gape on a piece. `wider`: what the dart's mouth, or the princess seam's upper end, opens by. */
export function closeGape(
  pieces: PieceSet,
  piece: Piece | undefined,
  seam: SeamName,
  amount: Mm,
  { bustPoint }: FitContext,
): Result<FitApplied, AlterationFailure> {
  if (piece === undefined) return fail({ code: "alteration/not-on-this-style" });
  if (piece.points.princessBust !== undefined) {
    const done = closeWedgeIntoPrincess(piece, seam, amount);
    if (!done.ok) return refused(done.failure);
    const wider = distance(pointOf(piece, "princessTop"), pointOf(done.value.piece, "princessTop"));
    return ok({ pieces: withPiece(pieces, done.value.piece), traces: [done.value.trace], values: { wider } });
  }
  const done = closeWedgeIntoDart(piece, { seam, amount, point: bustPoint });
  if (!done.ok) return refused(done.failure);
  const { dart, trace } = done.value;
  const wider = Math.abs(mouthOf(done.value.piece, dart) - mouthOf(piece, dart));
  // Off the bust point's own height, turning a part about it alters the width there by a fraction of the amount.
  const bust = 2 * ((levelWidth(done.value.piece, "bust") ?? 0) - (levelWidth(piece, "bust") ?? 0));
  return ok({ pieces: withPiece(pieces, done.value.piece), traces: [trace], values: { wider }, girths: { bust } });
}

/** A dart that is as wide as can be sewn smooth takes no more: then the most is 0. */
const refused = (failure: WedgeFailure): Result<never, AlterationFailure> =>
  fail(
    failure.code === "wedge/no-dart"
      ? { code: "alteration/not-on-this-style" }
      : { code: "alteration/too-much", most: failure.most < WALKED_AGREEMENT ? 0 : failure.most },
  );

function mouthOf(piece: Piece, name: DartName): Mm {
  const { inner, outer } = dartOf(piece, name);
  return distance(pointOf(piece, inner), pointOf(piece, outer));
}
