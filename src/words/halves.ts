/** The halves of the body, and trying one thing on the left and another on the right. */
import type { Alteration, Half } from "../core/decisions/alteration";
import type { LengthUnit } from "../core/decisions/work";
import type { KeepFailure } from "../core/plan/halfEdit";
import { halfWords } from "./fits";
import { alterationTitle } from "./planned";
import { listWords } from "./terms/language";

export const ON_WHICH_HALF = "On which half";

export const WHICH_HALVES = [
  { value: "both", label: "both" },
  { value: "left", label: "left" },
  { value: "right", label: "right" },
] as const;

export const anotherWayWords = (other: Half): string => `Try another way on your ${halfWords(other)}`;
/** The same on a slip of the ledger, where there is little room. */
export const OTHER_WAY = "Other half another way";

export const KEEP_HEAD = "Keep one half’s way for both";
export const keepWords = (which: Half | "mean"): string =>
  which === "mean" ? "The mean of both" : `The ${which} is right`;

/** Why neither half nor a mean can be kept. */
export function keepFailureSentence(failure: KeepFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case "keep/halves-alike":
      return "Both halves are alike already.";
    case "keep/on-one-half":
      return `There is no mean of what only one half has: ${listed(failure.alterations, unit)}. Keep one half.`;
    case "keep/another-way":
      return `There is no mean of two ways: ${listed(failure.alterations, unit)}. Keep one half.`;
    case "keep/cups-unlike":
      return `There is no mean of cup ${failure.left ?? "as drafted"} and cup ${failure.right ?? "as drafted"}. Keep one half.`;
  }
}

const listed = (alterations: readonly Alteration[], unit: LengthUnit): string =>
  listWords(alterations.map((alteration) => lowerStart(alterationTitle(alteration, unit))));
const lowerStart = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export const HALF_CUP_HEAD = "Another cup on one half";
export const halfCupLabel = (half: Half): string => `Your ${half}`;
export const CUP_AS_BOTH = "(as above)";
export const HALF_CUP_NOTE = "Where one breast is fuller. The halves still sew together at the centre front.";
