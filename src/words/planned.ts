/** Alterations in words: what is asked for, and why one could not be made. */
import { isRedraw, type Alteration } from "../core/decisions/alteration";
import type { AlterationFailure } from "../core/alterations/outcome/alterationFailure";
import { type LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { redrawTitle } from "./alterations/dartRedraw";
import { dartSurgeryTitle } from "./alterations/dartSurgery/index";
import { fitTitle, halfWords } from "./fits";
import { formatAmount, formatMost } from "./terms/length";
import { capital, dartRefWords, pieceWords, seamWords } from "./terms/names";
import { percentWords } from "./terms/language";

/** "Shorten the waist dart by 15 mm, its mouth held". */
export function alterationTitle(alteration: Alteration, unit: LengthUnit): string {
  if (alteration.kind === "fit") return fitTitle(alteration, unit);
  const title = isRedraw(alteration) ? redrawTitle(alteration, unit) : dartSurgeryTitle(alteration, unit);
  return alteration.half === undefined ? title : `${title}, on the ${halfWords(alteration.half)} only`;
}

/** Why an alteration was left out, with the most that would work. */
export function alterationFailureSentence(failure: AlterationFailure, unit: LengthUnit): string {
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  switch (failure.code) {
    case "alteration/not-on-this-style":
      return "This style has no place for it.";
    case "alteration/too-much":
      return formatAmount(Math.abs(failure.most), unit) === formatAmount(0, unit)
        ? "There is no room for any of it here: what would have to take it up is at its limit already."
        : `${capital(formatMost(failure.most, unit))} is the most that can be made here.`;
    case "alteration/outline-spoilt":
      return `The outline of the ${pieceWords(failure.piece)} would cross itself: nobody could cut it.`;
    case "alteration/out-of-reach":
      return Number.isFinite(failure.reach)
        ? `A point of the ${pieceWords(failure.piece)} would lie ${amount(failure.reach)} out: none of a bodice lies further than ${amount(failure.furthest)}.`
        : `The ${pieceWords(failure.piece)} could not be drawn any more.`;
    case "alteration/not-trued":
      return `The ${seamWords(failure.seam, failure.piece)} of the ${pieceWords(failure.piece)} could not be trued after it: ${amount(failure.off)} would be left over.`;
    case "alteration/halves-apart":
      return `Made on one half alone, it leaves the ${seamWords(failure.seam, failure.piece)} ${amount(failure.off)} longer or shorter than the other half’s: they could not be sewn together.`;
    case "alteration/other-pieces":
      return `Made on one half alone, it gives that half a ${pieceWords(failure.piece)} that the other half does not have. Both halves are cut from the same pieces: make it on both.`;
    case "alteration/too-many-darts":
      return "There is no room on that seam for one more dart.";
    case "alteration/no-such-dart":
      return `This pattern has no ${dartRefWords(failure.dart)}.`;
    case "alteration/dart-vanishes":
      return `The ${failure.dart === undefined ? "dart" : dartRefWords(failure.dart)} would vanish: nothing narrower than ${amount(failure.smallest)} can be sewn.`;
    case "alteration/end-outside-piece":
      return `The dart's end would leave the piece; ${formatMost(failure.most, unit)} is the most that stays on it.`;
    case "alteration/too-short":
      return `The dart would be too short to sew; ${formatMost(failure.most, unit)} is the most it can be shortened.`;
    case "alteration/off-the-seam":
      return `The mouth${failure.dart === undefined ? "" : ` of the ${dartRefWords(failure.dart)}`} would run off its seam; ${formatMost(failure.most, unit)} is the most it can move.`;
    case "alteration/shares-not-whole":
      return `The shares of what is given back add up to ${percentWords(failure.sum)}, not to ${percentWords(1)}.`;
    case "alteration/not-given-back":
      return `The seam cannot give that much back where you asked: ${amount(failure.left)} would be left over. Share it among more places, or move less.`;
    case "alteration/not-this-dart":
      return `This cannot be done with the ${dartRefWords(failure.dart)}.`;
    case "alteration/bust-too-much": {
      const done = failure.asked > 0 ? "let in" : "taken out";
      return formatMost(failure.most, unit) === formatMost(0, unit)
        ? `Nothing can be ${done} at the bust of this size and cup.`
        : `${formatMost(failure.most, unit)} is the most that can be ${done} at the bust. Set that or less on Blend.`;
    }
  }
}
