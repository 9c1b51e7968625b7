/** Alterations in words: what is asked for, and why one could not be made. */
import type { SlipFailure } from "../core/plan/plan";
import type { Alteration, LengthUnit } from "../core/plan/work";
import type { DartRef } from "../core/pattern/piece";
import type { Mm } from "../core/units";
import { formatAmount, formatMost } from "./length";
import { centreWords, dartRefWords, dartWords } from "./names";

const SEAM_OF_DART = { waistDart: "waist seam", sideDart: "side seam", shoulderDart: "shoulder seam" } as const;

/** The seam a dart opens on: where its end moves towards when it is shortened. */
export const mouthSeamWords = (dart: DartRef): string => SEAM_OF_DART[dart.dart];

/** Across a dart: towards the centre for darts that stand upright, up or down for those that lie along the bust line. */
export function acrossWords(dart: DartRef, across: Mm): string {
  if (dart.dart === "sideDart") return across > 0 ? "up" : "down";
  return across > 0 ? `towards the ${centreWords(dart.piece)}` : "towards the side seam";
}

/** "Shorten the waist dart by 15 mm, its mouth held". */
export function alterationTitle(alteration: Alteration, unit: LengthUnit): string {
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
