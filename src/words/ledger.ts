/** The alterations of the ledger: what, how much, why. */
import type { Alteration } from "../core/decisions/alteration";
import type { AlterationNote } from "../core/alterations/outcome/trace";
import type { LevelName, PieceName } from "../core/pattern/piece";
import type { PlannedAlteration } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { bustShortSentence, shareWords } from "./blend";
import type { Mm } from "../core/units";
import { formatAmount, formatAsked } from "./terms/length";
import { centreWords } from "./terms/names";
import { alterationTitle } from "./planned";
import { percentWords } from "./terms/language";

function lineRun(between: readonly [string, string], share: number): string {
  const where = shareWords(between, share);
  return share < 0 || share > 1 || where.startsWith("on the")
    ? where
    : `${percentWords(share)} from ${between[0]} to ${between[1]}`;
}

/**
 * Alterations that say the same of several pieces share one line of the ledger: the blend at a level is the same on
 * all. What comes out otherwise on the halves has one for each.
 */
export const ledgerGroup = ({ id, what, half }: PlannedAlteration): string =>
  what.kind === "blend" ? blendGroup(what.level) : half === undefined ? id : `${id} ${half}`;
export const blendGroup = (level: LevelName): string => `blend-${level}`;

/** "Waist: 40 % from 12 to 14", "Full bust adjustment", "Shorten the waist dart by 15 mm, its mouth held". */
export function plannedTitle({ what }: Pick<PlannedAlteration, "what">, unit: LengthUnit): string {
  switch (what.kind) {
    case "blend":
      return `${what.level === "waist" ? "Waist" : "Hip"}: ${lineRun(what.cutLine.between, what.cutLine.share)}`;
    case "bust":
      return what.amount >= 0 ? "Full bust adjustment" : "Small bust adjustment";
    case "alteration":
      return alterationTitle(what.alteration, unit);
  }
}

/** How much, in the wearer's unit. */
export function plannedAmount({ what }: PlannedAlteration, unit: LengthUnit): string {
  switch (what.kind) {
    case "blend": {
      const { offset, between, share } = what.cutLine;
      if (shareWords(between, share) === `on the ${between[1]} line`) return `on ${between[1]}`;
      if (formatAmount(Math.abs(offset), unit) === formatAmount(0, unit)) return `on ${between[0]}`;
      return `${formatAmount(Math.abs(offset), unit)} ${offset < 0 ? "inside" : "outside"} ${between[0]}`;
    }
    case "bust":
      return `${formatAmount(Math.abs(what.spread), unit)} on the half`;
    case "alteration": {
      const { alteration } = what;
      return alterationAmount(alteration, unit);
    }
  }
}

function alterationAmount(alteration: Alteration, unit: LengthUnit): string {
  switch (alteration.kind) {
    case "dartEnd":
      return formatAmount(Math.hypot(alteration.shorten, alteration.across), unit);
    case "dartMouth":
      return movedOr(alteration.inner + alteration.outer, alteration.outer, unit);
    case "dartPlace":
      return formatAmount(Math.abs(alteration.by), unit);
    // Which way is said by the title.
    case "fit":
      return formatAsked(Math.abs(alteration.amount), unit);
    case "dartLegs":
      return formatAmount(Math.abs(alteration.bow), unit);
    case "dartPivot":
      return alteration.share >= 1 ? "whole" : percentWords(alteration.share);
    case "dartSplit":
      return alteration.into === 2 ? "in two" : "in three";
    case "dartGather":
    case "dartSeam":
      return "";
  }
}

/** What a mouth is wider or narrower by, or where that is nothing, what it is moved by. */
function movedOr(by: Mm, moved: Mm, unit: LengthUnit): string {
  const amount = formatAmount(Math.abs(by), unit);
  return amount === formatAmount(0, unit) ? formatAmount(Math.abs(moved), unit) : amount;
}

/** Why it is there. */
export function alterationWhy({ what }: PlannedAlteration): string {
  switch (what.kind) {
    case "blend":
      return `so that the finished ${what.level} is your girth and the ease you want`;
    case "bust":
      return "because your bust differs from what this size and cup are drafted for";
    case "alteration":
      return "your own slip";
  }
}

export function alterationNoteSentence(note: AlterationNote, piece: PieceName, unit: LengthUnit): string {
  switch (note.code) {
    case "centreNowSeam":
      return `The ${centreWords(piece)} no longer lies on a fold: cut it with a seam.`;
    case "bustLoses":
      return `The garment loses ${formatAmount(note.amount, unit)} round the bust as well.`;
    case "cupLengthened":
      return `The under-bust seam lies ${formatAmount(Math.abs(note.amount), unit)} ${note.amount > 0 ? "lower" : "higher"} at the dart, and as it was at the centre and the side.`;
    case "bustShort":
      return bustShortSentence(note, unit);
    case "legsTrued":
      return `The mouth ends were trued by ${formatAmount(note.amount, unit)} each, so that the legs sew together.`;
    case "armholeSmoothed":
      return "Draw the armhole smooth where it bends at the hinge.";
    case "centreLengthened":
      return note.amount >= 0
        ? `The ${centreWords(piece)} part is lengthened by ${formatAmount(note.amount, unit)}.`
        : `The ${centreWords(piece)} part is shortened by ${formatAmount(-note.amount, unit)}.`;
  }
}
