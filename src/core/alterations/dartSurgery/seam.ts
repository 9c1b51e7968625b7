/** Two darts of the bust joined into one seam, from the shoulder or the armhole over the bust point to the waist. */
import type { DartSeamAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { homeOf } from "../../pattern/dartNames";
import { dartOf, pointOf, type Dart, type DartName, type Piece } from "../../pattern/piece";
import { fail, ok, type Result } from "../../result";
import { noSurgery, type SurgeryTrace } from "../../surgery/cutAndMove";
import { drawnTo, mouthOf, pointServed } from "../../surgery/openDart";
import { walkPrincess } from "../../surgery/princessSeam";
import { mouthMiddle } from "../../pattern/ring";
import { splitAtBustPoint } from "../../surgery/splitAtBustPoint";
import type { FitApplied } from "../outcome/definition";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";

/**
 * The front cut in two along an upper dart and its waist dart. Their legs, drawn on to the bust point, become the seam,
 * which is drawn smooth and walked; both pieces keep every other line, and darts that open elsewhere.
 */
export function joinIntoSeam(
  pieces: PieceSet,
  { dart: ref }: DartSeamAlteration,
): Result<FitApplied, AlterationFailure> {
  const { front, ...others } = pieces;
  if (ref.piece !== "front" || front === undefined || !aimsAtBust(front, "waistDart"))
    return fail({ code: "alteration/not-on-this-style" });
  const isUpper = homeOf(ref.dart) === "shoulder" || homeOf(ref.dart) === "armhole";
  if (!isUpper || !aimsAtBust(front, ref.dart)) return fail({ code: "alteration/not-this-dart", dart: ref });
  const point = pointServed(front, dartOf(front, ref.dart));
  const drawn = drawnTo(drawnTo(front, ref.dart, point), "waistDart", point);
  const walked = walkPrincess(splitAtBustPoint(drawn, ref.dart));
  if (walked === null) return fail({ code: "alteration/not-this-dart", dart: ref });
  const { centreFront, sideFront, drop } = walked;
  return ok({
    pieces: withPiece(withPiece(others, centreFront.piece), aimingAtSeam(sideFront)),
    traces: [cutTrace(front, ref.dart), centreFront.trace],
    values: { drop: Math.abs(drop) },
  });
}

const aimsAtBust = (front: Piece, name: DartName): boolean =>
  front.darts.some((dart) => dart.name === name && dart.aimsAt === "bustPoint");

/** The bust point itself goes with the centre front; on the side front it is the bust corner of the seam. */
const aimingAtSeam = (sideFront: Piece): Piece => ({
  ...sideFront,
  darts: sideFront.darts.map((dart): Dart =>
    dart.aimsAt === "bustPoint" ? { ...dart, aimsAt: "princessBust" } : dart,
  ),
});

function cutTrace(front: Piece, upper: DartName): SurgeryTrace {
  const middle = (name: DartName) => mouthMiddle(front, mouthOf(front, name).first, mouthOf(front, name).second);
  const bust = pointOf(front, "bustPoint");
  return { ...noSurgery(front), cuts: [[middle(upper), bust, middle("waistDart")]] };
}
