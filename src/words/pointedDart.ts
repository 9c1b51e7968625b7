/** The pointed dart in words: what is asked of the wearer, each answer with its sum, and the warning against the usual mistake. */
import type { GiveBackPlace } from "../core/decisions/alteration";
import type {
  DartAnswer,
  NaiveShortening,
  PointedDartAnswers,
  PointedDartFailure,
  SeamTerm,
  SeenAtDart,
} from "../core/pointedDart/pointedDart";
import type { DartAnswerKey } from "../core/decisions/seenAtDart";
import type { OfferedAnswers } from "../core/plan/pointedDartOf";
import { liesAlongBust } from "../core/pattern/dartNames";
import type { DartRef } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { BUST_POINT_AGREEMENT, FULLNESS_NOTICED } from "../core/tolerance";
import { degreesFrom, type Mm } from "../core/units";
import { acrossWords, mouthSeamWords } from "./alterations/dartRedraw";
import { formatAngle, placeWords, seamProof } from "./terms/darts";
import { differenceTold, formatAmount, formatMost, markingStep } from "./terms/length";
import { capital, centreWords, dartRefWords, dartWords } from "./terms/names";
import { alterationFailureSentence } from "./planned";
import { listWords, fixedDecimals, percentWords } from "./terms/language";

export interface PointedDartQuestions {
  readonly heading: string;
  readonly how: string;
  readonly past: { readonly label: string; readonly hint: string };
  readonly aside: { readonly label: string; readonly hint: string };
  readonly pointed: {
    readonly label: string;
    readonly choices: readonly { readonly value: SeenAtDart["pointed"]; readonly label: string }[];
  };
}

/** What she is asked, standing in the toile. */
export function pointedDartQuestions(dart: DartRef): PointedDartQuestions {
  const along = liesAlongBust(dart.dart);
  return {
    heading: `What do you see at the ${dartWords(dart.dart)}?`,
    how:
      "Put the toile on, closed, and mark your bust point on it: the fullest point of the bust. Use a chalk or soft pencil cross, " +
      "not a pin against the body.",
    past: {
      label: "Its end lies past the bust point by",
      hint: "less than 0: it stops short of the bust point by so much",
    },
    aside: along
      ? { label: "It sits too low by", hint: "less than 0: too high" }
      : { label: "It sits too far to the side by", hint: `less than 0: too near the ${centreWords(dart.piece)}` },
    pointed: {
      label: "At its end it comes out",
      choices: [
        { value: "pointed", label: "pointed: it stands off the body" },
        { value: "right", label: "right" },
        { value: "flat", label: "too flat: it pulls or is pressed down" },
      ],
    },
  };
}

/** "It is to end 20 mm short of the bust point you marked: 40 mm shorter and 15 mm nearer the centre front than sewn." */
export function pointedDartAim({ stop, shorten, across }: PointedDartAnswers, dart: DartRef, unit: LengthUnit): string {
  const isSome = (amount: Mm): boolean => formatAmount(Math.abs(amount), unit) !== formatAmount(0, unit);
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  const moves = [
    ...(isSome(shorten) ? [`${amount(shorten)} ${shorten > 0 ? "shorter" : "longer"}`] : []),
    ...(isSome(across) ? [`${amount(across)} ${acrossWords(dart, across)}`] : []),
  ];
  const than = moves.length === 0 ? "where it ends now" : `${listWords(moves)} from where it was sewn`;
  return `It is to end ${amount(stop)} short of the bust point you marked: ${than}.`;
}

/** "Redraw it nearer the centre front; the side seam takes what is left over". */
export function answerTitle(answer: DartAnswer, dart: DartRef): string {
  const what = whatIsDone(answer, dart);
  const takes = answer.freed < 0 ? "gives what is needed" : "takes what is left over";
  switch (answer.key) {
    case "sideSeam":
      return liesAlongBust(dart.dart)
        ? `${what}; the side seam ${takes} at its waist end`
        : `${what}; the side seam ${takes}`;
    case "offCentre":
      return `Bring the whole front to the centre: take it off the ${centreWords(dart.piece)} seam; the side seam ${takes}`;
    case "sharedWithOther":
      return `${what}; the side seam and the ${placeWords("otherDart", dart.piece)} share what is ${answer.freed < 0 ? "needed" : "left over"}`;
    case "sharedAtCentre":
      return `${what}; the side seam and the ${centreWords(dart.piece)} seam share what is ${answer.freed < 0 ? "needed" : "left over"}`;
    case "sharedAtEnds":
      return `${what}; the side seam ${takes}, half at the underarm and half at the waist`;
    case "underarm":
      return `${what}; the side seam ${takes} at the underarm`;
  }
}

function whatIsDone({ alterations }: DartAnswer, dart: DartRef): string {
  const place = alterations.find((a) => a.kind === "dartPlace");
  if (place?.kind !== "dartPlace") return "Redraw it where it is";
  if (liesAlongBust(dart.dart)) return `Redraw it ${place.by > 0 ? "higher" : "lower"}`;
  return `Redraw it nearer the ${place.by > 0 ? centreWords(dart.piece) : "side seam"}`;
}

const THAN_ON_THE_TOILE = { pointed: "softer", flat: "fuller" } as const;

/** "Fullness 23 mm, softer than on the toile, where it was 25 mm." */
export function answerFullness(
  { figures: { before, after } }: DartAnswer,
  pointed: SeenAtDart["pointed"],
  unit: LengthUnit,
): string {
  const [is, was] = [formatAmount(after.fullness, unit), formatAmount(before.fullness, unit)];
  if (pointed === "right") return `Fullness ${is}, as on the toile${is === was ? "" : ` (${was})`}.`;
  return `Fullness ${is}, ${THAN_ON_THE_TOILE[pointed]} than on the toile, where it was ${was}.`;
}

/** Said where something was seen: it stands as it was said, of the toile that was sewn then. */
export const SEEN_AS_SEWN = "This stays what you saw of the toile as it was sewn then, whatever you take.";
export const SEWN_AGAIN = "Sewn again since: say afresh what you see";

/** The button that takes an answer. */
export function takeWords({ measureFirst }: Pick<OfferedAnswers, "measureFirst">, taken: DartAnswerKey | null): string {
  const all = measureFirst ? " all the same" : "";
  return taken === null ? `Take this one${all}` : `Take this one instead${all}`;
}

/** The sum that proves the seam, a line for each term; the amounts as shown add up. */
export function answerSum({ sum }: DartAnswer, dart: DartRef, unit: LengthUnit): readonly string[] {
  const seam = seamOnHalf(dart);
  const [before, after] = (["before", "after"] as const).map(
    (kind) => sum.find((term) => term.kind === kind)?.amount ?? 0,
  );
  const step = markingStep(unit);
  const shown = sum.filter(({ kind }) => kind === "mouth" || kind === "offCentre" || kind === "given");
  const left = -shown.reduce((steps, { amount }) => steps + Math.round(amount / step), 0) * step;
  const rest =
    Math.abs(left) < step / 2
      ? []
      : [`Rounding here, and curves drawn smooth, make the other ${formatAmount(Math.abs(left), unit)}.`];
  return [
    ...shown.flatMap((term) => termLine(term, dart, unit)),
    ...rest,
    `The ${seam}: ${seamProof(before ?? 0, after ?? 0, unit)}.`,
  ];
}

function seamOnHalf(dart: DartRef): string {
  const seam = mouthSeamWords(dart);
  return seam === "waist seam" && (dart.piece === "front" || dart.piece === "back")
    ? "finished waist seam of half the bodice"
    : `finished ${seam}`;
}

function termLine(term: SeamTerm, dart: DartRef, unit: LengthUnit): readonly string[] {
  const amount = formatAmount(Math.abs(term.amount), unit);
  const isNothing = amount === formatAmount(0, unit);
  switch (term.kind) {
    case "mouth": {
      const [from, to] = [formatAmount(term.from, unit), formatAmount(term.to, unit)];
      return isNothing
        ? [`The mouth stays ${to} wide.`]
        : [`The mouth goes from ${from} to ${to}: ${amount} ${term.amount > 0 ? "set free" : "taken up"}.`];
    }
    case "offCentre":
      return [`Off the ${centreWords(dart.piece)} seam: ${amount} taken.`];
    case "given":
      return isNothing
        ? []
        : [`${capital(placeWords(term.place, dart.piece))}: ${amount} ${givenWords(term.place, term.amount > 0)}.`];
    default:
      return [];
  }
}

/** The ends of a side seam are cut back or added to; all else is taken in or let out. */
function givenWords(place: GiveBackPlace, isMore: boolean): string {
  if (place === "underarm" || place === "waistEnd") return isMore ? "added" : "taken off";
  return isMore ? "let out" : "taken in";
}

/** What else an answer brings with it. */
export function answerNotes(
  { given, bustLoses, basqueDartOff, notes }: DartAnswer,
  dart: DartRef,
  unit: LengthUnit,
): readonly string[] {
  const loses =
    bustLoses === 0
      ? []
      : [`The whole bust girth loses ${formatAmount(bustLoses, unit)} of its ease: see that you can spare it.`];
  const cut = notes.some(({ code }) => code === "centreNowSeam")
    ? [`The ${centreWords(dart.piece)} is then a seam and can no longer be cut on the fold.`]
    : [];
  const atUnderarm = given.filter(({ place }) => place === "underarm").reduce((sum, { amount }) => sum + amount, 0);
  const armhole =
    formatAmount(Math.abs(atUnderarm), unit) === formatAmount(0, unit)
      ? []
      : [
          `The underarm moves ${formatAmount(Math.abs(atUnderarm), unit)} on the front: draw the armhole to it, and let the sleeve or the facing follow.`,
        ];
  const off = formatAmount(Math.abs(basqueDartOff), unit);
  const basque =
    off === formatAmount(0, unit)
      ? []
      : [
          `At the waist it then meets the seam ${off} nearer the ${basqueDartOff > 0 ? centreWords(dart.piece) : "side seam"} than the basque's dart: move that one alike if the two are to run on.`,
        ];
  return [...loses, ...cut, ...armhole, ...basque];
}

/** "Shortened by 30 mm with its mouth held it would become 4.8° wider and 3 mm fuller: more pointed, not less." */
export function naiveWarning(
  { shorten, figures: { before, after } }: NaiveShortening,
  wanted: Mm,
  seen: SeenAtDart["pointed"],
  unit: LengthUnit,
): string {
  const off = differenceTold(after.fullness, wanted, unit);
  const angle = `${fixedDecimals(Math.abs(degreesFrom(after.angle) - degreesFrom(before.angle)), 1)}°`;
  const full = formatAmount(Math.abs(differenceTold(after.fullness, before.fullness, unit)), unit);
  const by = formatAmount(Math.abs(shorten), unit);
  return shorten > 0
    ? `Shortened by ${by} with its mouth held it would become ${angle} wider and ${full} fuller: ${seen === "pointed" ? "more pointed, not less" : fullnessAgainst(off, wanted, unit)}.`
    : `Lengthened by ${by} with its mouth held it would become ${angle} narrower and ${full} less full: flatter, with less room for the bust.`;
}

const fullnessAgainst = (off: Mm, wanted: Mm, unit: LengthUnit): string =>
  Math.abs(off) <= FULLNESS_NOTICED
    ? `near enough to the ${formatAmount(wanted, unit)} wanted`
    : `${formatAmount(Math.abs(off), unit)} ${off > 0 ? "more" : "less"} than the ${formatAmount(wanted, unit)} wanted`;

/** What the naive way comes to, beside the figures of the answers: "19.2° wide, 26 mm full". */
export const naiveFigures = ({ figures: { after } }: NaiveShortening, unit: LengthUnit): string =>
  `${formatAngle(after.angle)} wide, ${formatAmount(after.fullness, unit)} full`;

/** Said where the bust point that is seen lies elsewhere than the measures say, by more than a tape is out. */
export const bustPointOffSentence = (
  { bustPointOff, measured }: Pick<OfferedAnswers, "bustPointOff" | "measured">,
  unit: LengthUnit,
): string | null =>
  bustPointOff <= BUST_POINT_AGREEMENT
    ? null
    : !measured
      ? `The bust point you marked lies ${formatAmount(bustPointOff, unit)} from the pattern's. Measure bust-point width and side neck point to bust point, too.`
      : `The bust point you marked lies ${formatAmount(bustPointOff, unit)} from where your measures put it. Take bust-point width and side neck ` +
        "point to bust point again; until they agree, the plan's own check of the dart's end goes by the measures.";

/** Why there is no answer, and the most that works. */
export function pointedDartFailureSentence(failure: PointedDartFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case "pointedDart/no-such-dart":
      return `This pattern has no ${dartRefWords(failure.dart)}.`;
    case "pointedDart/not-this-dart":
      return `This cannot be asked of the ${dartRefWords(failure.dart)}: it must be a sewn bust dart on a seam that can give back.`;
    case "pointedDart/too-much":
      return [mostSentence(failure, unit), ...because(failure, unit)].join(" ");
    case "pointedDart/together-too-much":
      return [
        `Length, place and fullness together are too much for this dart; ${percentWords(failure.share, Math.floor)} of all three can be had. Sew that, and look again.`,
        ...because(failure, unit),
      ].join(" ");
  }
}

function mostSentence(
  { what, asked, most }: Extract<PointedDartFailure, { code: "pointedDart/too-much" }>,
  unit: LengthUnit,
): string {
  const amount = formatAmount(Math.abs(asked), unit);
  switch (what) {
    case "length":
      return `The end cannot be ${asked > 0 ? "shortened" : "lengthened"} by ${amount}; ${formatMost(most, unit)} is the most that works.`;
    case "aside":
      return `The dart cannot be moved across by ${amount}; ${formatMost(most, unit)} is the most that works.`;
    case "fullness":
      return `A fullness of ${amount} cannot be had here; ${formatAmount(most, unit)} is the nearest that can.`;
  }
}

/** The reason, but for those that name a most of their own: it is told of one step, and the most here of the whole. */
const because = (
  { because: reason }: Extract<PointedDartFailure, { because: unknown }>,
  unit: LengthUnit,
): readonly string[] => (reason === null || "most" in reason ? [] : [alterationFailureSentence(reason, unit)]);
