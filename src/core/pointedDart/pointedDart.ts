/**
 * The pointed dart: from what is seen on the sewn toile to whole answers. A dart that ends past the bust point, sits too far
 * to the side and stands off as a point asks for three things at once (its end, its place, its mouth), and the seam it opens
 * on must stay as long as it is sewn. Each answer is a set of redraws that does all of it, made and measured before it is
 * offered; beside them stands what shortening alone, the mouth held, would do.
 */
import type { DartEndAlteration, GiveBack } from "../decisions/alteration";
import type { DartAnswerKey } from "../decisions/seenAtDart";
import { giveBackPlaces } from "../alterations/redraw/giveBack";
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { applyAlteration } from "../alterations/applyAlteration";
import type { PiecePoint } from "../geometry/point";
import { dartOf, type DartRef } from "../pattern/piece";
import { fail, ok, type Result } from "../result";
import { SAME_LINE } from "../tolerance";
import type { DartFigures } from "../dart/dartFigures";
import type { Mm } from "../units";
import { measureDart } from "../dart/measureDart";
import { aimAt, aimOf, bustPointSeen, figuresSeen, sewnAs, type Aim, type AsSewn } from "./pointedDartAim";
import { makeAnswer, type Way } from "./pointedDartAnswer";
import { mostThatWorks } from "./pointedDartMost";
import type {
  DartAnswer,
  NaiveShortening,
  PointedDartAnswers,
  PointedDartContext,
  PointedDartFailure,
  SeenAtDart,
} from "./pointedDartTypes";

export type {
  DartAnswer,
  NaiveShortening,
  PointedDartAnswers,
  PointedDartContext,
  PointedDartFailure,
  SeamTerm,
  SeenAtDart,
} from "./pointedDartTypes";

/**
 * Answers what is seen of a bust dart.
 *
 * @param pieces the pieces after the wearer's other alterations, without this dart's own redraws
 * @param ref    a bust dart of the waist, side or under-bust seam
 * @returns whole answers, best first, each made and measured: the sewn seam within 0.05 mm, the legs equal, the end at the
 *          usual stop, the fullness within half a millimetre of what is wanted; or which number is too much, and the most
 */
export function answerPointedDart(
  pieces: PieceSet,
  ref: DartRef,
  seen: SeenAtDart,
  context: PointedDartContext,
): Result<PointedDartAnswers, PointedDartFailure> {
  const piece = pieces[ref.piece];
  if (piece === undefined || !piece.darts.some((d) => d.name === ref.dart))
    return fail({ code: "pointedDart/no-such-dart", dart: ref });
  if (!canBeAnswered(pieces, ref)) return fail({ code: "pointedDart/not-this-dart", dart: ref });
  const sewn = sewnAs(pieces, ref, context);
  const aim = aimOf(sewn, seen, context);
  const answers = answersTo(sewn, aim, context);
  if (answers.length === 0)
    return fail(mostThatWorks(sewn, (alteration) => waysOf(pieces, ref, alteration), aim, context));
  const at = bustPointSeen(sewn, seen);
  return ok({
    answers: withoutTwins(answers),
    naive: naiveShortening(sewn, aim, at, context),
    wantedFullness: aim.fullness,
    shorten: aim.shorten,
    across: aim.across,
    stop: aim.stop,
    bustPointSeen: at,
    bustPointOff: Math.hypot(at.x - context.bustPoint.x, at.y - context.bustPoint.y),
  });
}

/** Every way that works, best first. */
const answersTo = (sewn: AsSewn, aim: Aim, context: PointedDartContext): readonly DartAnswer[] =>
  waysOf(sewn.base, sewn.ref, aim)
    .map((way) => makeAnswer(sewn, way, aim, context))
    .flatMap((made) => (made.ok ? [made.value] : []))
    .toSorted((a, b) => a.cost - b.cost);

/** Whole ways to make a dart as the wearer's cup asks: as full, and ended as usual short of the plan's bust point; best first. */
export function answersForCup(pieces: PieceSet, ref: DartRef, context: PointedDartContext): readonly DartAnswer[] {
  if (!canBeAnswered(pieces, ref)) return [];
  const sewn = sewnAs(pieces, ref, context);
  const aim = aimOf(sewn, figuresSeen(sewn, context.bustPoint), context);
  const { stop, shorten, across } = aim;
  return answersTo(sewn, aimAt(sewn, { stop, shorten, across, fullness: context.wantedFullness }), context);
}

/** What to ask from: the dart as sewn, judged by the plan's bust point, with nothing said to be amiss. */
export const seenAsSewn = (pieces: PieceSet, ref: DartRef, context: PointedDartContext): SeenAtDart =>
  figuresSeen(sewnAs(pieces, ref, context), context.bustPoint);

function canBeAnswered(pieces: PieceSet, ref: DartRef): boolean {
  const piece = pieceIn(pieces, ref.piece);
  const { aimsAt, gathered, seam } = dartOf(piece, ref.dart);
  if (aimsAt === null || gathered === true) return false;
  return seam === "waist" || seam === "side" || seam === "underBust";
}

/** mm. More than this off the centre front is no longer an alteration: the whole bust loses twice as much (our own choice). */
const OFF_CENTRE_MOST: Mm = 20;

const redraw = (key: DartAnswerKey, giveBack: GiveBack): Way => ({ key, how: "redraw", giveBack });

/** The ways that this dart has, all at the usual place first; those with another piece's dart only where there is one. */
function waysOf(pieces: PieceSet, ref: DartRef, { toCentre }: Pick<Aim, "toCentre">): readonly Way[] {
  const places = giveBackPlaces(pieces, ref);
  if (places.includes("waistEnd")) {
    return [
      redraw("sideSeam", { waistEnd: 1 }),
      redraw("sharedAtEnds", { waistEnd: 0.5, underarm: 0.5 }),
      redraw("underarm", { underarm: 1 }),
    ];
  }
  const hasOther = places.includes("otherDart");
  const canComeToCentre = ref.dart === "waistDart" && toCentre > SAME_LINE && toCentre <= OFF_CENTRE_MOST;
  return [
    redraw("sideSeam", { sideSeam: 1 }),
    hasOther
      ? redraw("sharedWithOther", { sideSeam: 0.5, otherDart: 0.5 })
      : redraw("sharedAtCentre", { sideSeam: 0.5, centreSeam: 0.5 }),
    ...(canComeToCentre ? [{ key: "offCentre", how: "offCentreSeam", giveBack: { sideSeam: 1 } } as const] : []),
    ...(hasOther && !canComeToCentre ? [redraw("sharedAtCentre", { sideSeam: 0.5, centreSeam: 0.5 })] : []),
  ];
}

const isTwin = ({ key, given }: DartAnswer): boolean =>
  key !== "offCentre" && given.every(({ amount }) => Math.abs(amount) <= SAME_LINE);

/** Where there is next to nothing to give back, sharing it another way is no other answer: the usual one stands for them. */
function withoutTwins(answers: readonly DartAnswer[]): readonly DartAnswer[] {
  const twins = answers.filter(isTwin);
  const kept = twins.find(({ key }) => key === "sideSeam") ?? twins[0];
  return answers.filter((answer) => answer === kept || !isTwin(answer));
}

function naiveShortening(
  sewn: AsSewn,
  aim: Aim,
  at: PiecePoint,
  { bustPoint, radius }: PointedDartContext,
): NaiveShortening | null {
  const { ref } = sewn;
  const shorten = aim.shorten;
  if (Math.abs(shorten) < SAME_LINE) return null;
  const alteration: DartEndAlteration = {
    kind: "dartEnd",
    id: `dartEnd-${ref.piece}-${ref.dart}`,
    dart: ref,
    shorten,
    across: 0,
    hold: "mouth",
    giveBack: {},
  };
  const made = applyAlteration(sewn.pieces, alteration, { bustPoint });
  if (!made.ok) return null;
  const read = (pieces: PieceSet): DartFigures => measureDart(pieceIn(pieces, ref.piece), ref.dart, at, radius);
  return { alterations: [alteration], shorten, figures: { before: read(sewn.pieces), after: read(made.value.pieces) } };
}
