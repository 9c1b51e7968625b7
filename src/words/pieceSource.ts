/** Where the pieces come from. */
import type { Pattern } from "../core/decisions/pattern";
import type { Work } from "../core/decisions/work";
import type { Plan } from "../core/plan/plan";
import { sourceLine, sourceNotes } from "./source";
import { TISSUE_LENGTHS } from "../core/decisions/tissue";
import type { NestSource } from "../core/pattern/piece";
import { PIECE_ORDER } from "../core/pattern/pieceSet";
import { pieceWords } from "./terms/names";
import { lowerStart, tissueLengthWords } from "./tissue";
import { listWords } from "./terms/language";

/** In a word, and what else is said of it where there is room. */
const SOURCES: Readonly<Record<NestSource, readonly [string, string]>> = {
  standIn: ["Stand-in", ""],
  fitted: ["Stand-in, fitted", " to your tissue"],
  own: ["Your own pieces", ""],
};
export const sourceParts = (source: NestSource): readonly [string, string] => SOURCES[source];
export const sourceWords = (source: NestSource): string => SOURCES[source].join("");

const ABOUT: Readonly<Record<NestSource, string>> = {
  standIn: "We drafted them from the chart. Yours have lines of their own: say what they measure.",
  fitted: "We drafted them from the chart, and brought them to what you measured. The rest is still ours.",
  own: "As they were drawn in your file.",
};
export const sourceAbout = (source: NestSource): string => ABOUT[source];

/** "Measured on your tissue along size 12: front (waist dart’s mouth, side seam). The rest is the stand-in’s." Else null. */
export function measuredOnTissue(
  { tissue, style }: Pick<Pattern, "tissue" | "style">,
  source: NestSource,
): string | null {
  if (source !== "fitted" || tissue === undefined) return null;
  const pieces = PIECE_ORDER.flatMap((piece) => {
    const measured = tissue.pieces[piece];
    const lengths = TISSUE_LENGTHS.filter((length) => measured?.[length] !== undefined);
    const names = lengths.map((length) => lowerStart(tissueLengthWords({ piece, length }, style).name));
    return names.length === 0 ? [] : [`${pieceWords(piece)} (${names.join(", ")})`];
  });
  return `Measured on your tissue along size ${tissue.size}: ${listWords(pieces)}. The rest is the stand-in’s.`;
}

/** What the pieces of a plan are, what was measured of them, and what is worked out: for the sheet with the amounts. */
export function piecesSentences(
  plan: PiecesTold,
  { pattern, unit }: Pick<Work, "pattern" | "unit">,
): readonly string[] {
  const measured = measuredOnTissue(pattern, plan.nest.source);
  return [sourceLine(plan), ...(measured === null ? [] : [measured]), ...sourceNotes(plan, unit)];
}

type PiecesTold = Pick<Plan, "nest" | "levels" | "drafted" | "isEaseMeasured">;

/** What the pieces on a sheet are, said where it is cut from. */
const CUT_FROM: Readonly<Record<"pieces" | "overlay", Readonly<Record<NestSource, string>>>> = {
  pieces: {
    standIn:
      "The planner’s own draft from the pattern’s chart, not a copy of the pattern in the envelope: sew a trial first.",
    fitted:
      "The planner’s own draft from the pattern’s chart, brought to what was measured on the tissue, not a copy of it: sew a trial first.",
    own: "Your own pieces, as they were read from your file.",
  },
  overlay: {
    standIn:
      "The strips follow the planner’s own draft. Where a dashed line and its crosses do not lie on your tissue’s, put that strip away and take the amounts from the checklist.",
    fitted:
      "The strips follow the planner’s own draft, brought to what you measured. Where a dashed line and its crosses do not lie on your tissue’s, put that strip away and take the amounts from the checklist.",
    own: "The strips follow your own pieces: dashed lines and crosses lie on your tissue’s.",
  },
};

export const cutFromWords = (
  kind: "pieces" | "overlay",
  pattern: Pick<Pattern, "tissue" | "style">,
  source: NestSource,
): readonly string[] => {
  const measured = measuredOnTissue(pattern, source);
  return [CUT_FROM[kind][source], ...(measured === null ? [] : [measured])];
};
