/** Alterations in words: what is asked for, and why one could not be made. */
import type { SlipFailure } from "../core/plan/plan";
import { isRedraw, type Alteration, type DartRedraw, type LengthUnit } from "../core/plan/work";
import { homeOf, liesAlongBust } from "../core/pattern/dartNames";
import type { DartHome, DartRef } from "../core/pattern/piece";
import type { Mm } from "../core/units";
import { formatAmount, formatMost } from "./length";
import { dartSurgeryTitle } from "./alterations/dartSurgery/index";
import { fitTitle } from "./fits";
import { capital, centreWords, dartRefWords, dartWords, pieceWords } from "./names";

const SEAM_OF_HOME: Readonly<Record<DartHome, string>> = {
  waist: "waist seam",
  underBust: "under-bust seam",
  side: "side seam",
  french: "side seam",
  shoulder: "shoulder seam",
  armhole: "armhole",
  neck: "neck edge",
  centre: "centre front",
};

/** The seam a dart opens on: where its end moves towards when it is shortened. */
export const mouthSeamWords = (dart: DartRef): string => SEAM_OF_HOME[homeOf(dart.dart)];

/** Across a dart: towards the centre for darts that stand upright, up or down for those that lie along the bust line. */
export function acrossWords(dart: DartRef, across: Mm): string {
  if (liesAlongBust(dart.dart)) return across > 0 ? "up" : "down";
  return across > 0 ? `towards the ${centreWords(dart.piece)}` : "towards the side seam";
}

/** "Shorten the waist dart by 15 mm, its mouth held". */
export function alterationTitle(alteration: Alteration, unit: LengthUnit): string {
  if (alteration.kind === "fit") return fitTitle(alteration, unit);
  return isRedraw(alteration) ? redrawTitle(alteration, unit) : dartSurgeryTitle(alteration, unit);
}

function redrawTitle(alteration: DartRedraw, unit: LengthUnit): string {
  const dart = dartWords(alteration.dart.dart);
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  switch (alteration.kind) {
    case "dartEnd": {
      const moves: string[] = [];
      if (alteration.shorten !== 0) {
        moves.push(`${alteration.shorten > 0 ? "shorten" : "lengthen"} the ${dart} by ${amount(alteration.shorten)}`);
      }
      if (alteration.across !== 0) {
        const what = moves.length > 0 ? "its end" : `the end of the ${dart}`;
        moves.push(`move ${what} ${amount(alteration.across)} ${acrossWords(alteration.dart, alteration.across)}`);
      }
      if (moves.length === 0) moves.push(`leave the end of the ${dart} where it is`);
      const held = alteration.hold === "mouth" ? "its mouth held" : "its fullness held";
      return sentenceStart(`${moves.join(" and ")}, ${held}`);
    }
    case "dartMouth": {
      const by = alteration.inner + alteration.outer;
      if (by === 0) return sentenceStart(`move the mouth of the ${dart} by ${amount(alteration.outer)}`);
      return `${by > 0 ? "Widen" : "Narrow"} the ${dart} by ${amount(by)}`;
    }
    case "dartPlace": {
      const way = alteration.how === "offCentreSeam" ? `, taken off the ${centreWords(alteration.dart.piece)}` : "";
      return `Move the whole ${dart} ${amount(alteration.by)} ${acrossWords(alteration.dart, alteration.by)}${way}`;
    }
  }
}

const sentenceStart = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Why a slip was left out, with the most that would work. */
export function slipFailureSentence(failure: SlipFailure, unit: LengthUnit): string {
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  switch (failure.code) {
    case "slip/not-on-this-style":
      return "This style has no place for it.";
    case "slip/too-much":
      return formatAmount(Math.abs(failure.most), unit) === formatAmount(0, unit)
        ? "There is no room for any of it here: what would have to take it up is at its limit already."
        : `${capital(formatMost(failure.most, unit))} is the most that can be made here.`;
    case "slip/outline-spoilt":
      return `The outline of the ${pieceWords(failure.piece)} would cross itself: nobody could cut it.`;
    case "slip/too-many-darts":
      return "There is no room on that seam for one more dart.";
    case "slip/no-such-dart":
      return `This pattern has no ${dartRefWords(failure.dart)}.`;
    case "slip/dart-vanishes":
      return `The ${failure.dart === undefined ? "dart" : dartRefWords(failure.dart)} would vanish: nothing narrower than ${amount(failure.smallest)} can be sewn.`;
    case "slip/end-outside-piece":
      return `The dart's end would leave the piece; ${formatMost(failure.most, unit)} is the most that stays on it.`;
    case "slip/too-short":
      return `The dart would be too short to sew; ${formatMost(failure.most, unit)} is the most it can be shortened.`;
    case "slip/off-the-seam":
      return `The mouth${failure.dart === undefined ? "" : ` of the ${dartRefWords(failure.dart)}`} would run off its seam; ${formatMost(failure.most, unit)} is the most it can move.`;
    case "slip/shares-not-whole":
      return `The shares of what is given back add up to ${Math.round(failure.sum * 100)} %, not to 100 %.`;
    case "slip/not-given-back":
      return `The seam cannot give that much back where you asked: ${amount(failure.left)} would be left over. Share it among more places, or move less.`;
    case "slip/not-this-dart":
      return `This cannot be done with the ${dartRefWords(failure.dart)}.`;
    case "slip/bust-reduction-too-large":
      return `A dart would vanish; ${formatMost(failure.most, unit)} is the most that can be taken out at the bust. Set that or less on Blend.`;
  }
}
