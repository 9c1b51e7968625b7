/** The lining in words. */
import type { Lining } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { LiningFailure, LiningNote, SkirtLiningFigures } from "../core/lining/liningDraft";
import type { Mm } from "../core/units";
import type { SumLine } from "./sumLine";
import { formatAmount, formatLength } from "./terms/length";

export type Lined = "nothing" | "bodice" | "skirt" | "both";

export const LINED_WORDS: Readonly<Record<Lined, string>> = {
  nothing: "nothing",
  bodice: "the bodice",
  skirt: "the skirt",
  both: "bodice and skirt",
};

export const linedOf = (lining: Lining | undefined): Lined => {
  const { bodice = false, skirt = false } = lining ?? {};
  return bodice ? (skirt ? "both" : "bodice") : skirt ? "skirt" : "nothing";
};

export const SHAPING_WORDS: Readonly<Record<NonNullable<Lining["shaping"]>, string>> = {
  darts: "darts",
  pleats: "pleats, left open below",
};

export const SKIRT_LINING_ABOUT =
  "A-line on the same waist, caught in the waist seam alone, its ends left free of the closure.";

export const NOTHING_TO_LINE = "There is no skirt to line.";

export function liningFailureWords(failure: LiningFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case "lining/hip-missing":
      return "The skirt’s lining is drafted from the hip, which is not measured yet.";
    case "lining/length-missing":
      return "The skirt’s lining has no length while the skirt has none.";
    case "lining/waist-over-hip":
      return `The finished waist, ${formatLength(failure.waist, unit)}, leaves nothing to take in to a hip of ${formatLength(failure.hip, unit)}.`;
    case "lining/too-short":
      return `The skirt’s lining would be ${formatLength(failure.length, unit)} long; ${formatLength(failure.least, unit)} is the least for an A-line.`;
    case "lining/too-long":
      return `Hanging level, the skirt’s lining would be ${formatLength(failure.length, unit)} long at the centre; ${formatLength(failure.most, unit)} is the most for an A-line.`;
    case "lining/darts-too-wide":
      return `The darts of the skirt’s lining would have to take in ${formatAmount(failure.intake, unit)} each; ${formatAmount(failure.most, unit)} is the most that lies flat. Pleats take in more.`;
  }
}

/** Whether it is a doubt or is as it should be. */
export const isLiningDoubt = (note: LiningNote): boolean => note.code !== "lining/over-hips" || !note.passes;

export function liningNoteWords(note: LiningNote, unit: LengthUnit): string {
  const length = (mm: Mm): string => formatLength(mm, unit);
  switch (note.code) {
    case "lining/over-hips":
      return note.passes
        ? `It passes over the hips: it lets ${length(note.lets)} through, ${length(note.needed)} is needed.`
        : `It does not pass over the hips: it lets ${length(note.lets)} through, ${length(note.needed)} is needed.`;
    case "lining/no-step":
      return `${length(note.girth)} at its hem is too narrow to step; ${length(note.needed)} lets you walk.`;
    case "lining/longer-than-skirt":
      return `It would hang out by ${formatAmount(note.by, unit)}.`;
  }
}

export function liningFigures(figures: SkirtLiningFigures, unit: LengthUnit): readonly SumLine[] {
  const length = (mm: Mm): string => formatLength(mm, unit);
  const { waist, hip, hipDepth, hem, lengths, free } = figures;
  return [
    { words: "Its waist, as it is sewn in", figure: length(waist) },
    { words: `Its hip, ${length(hipDepth)} below`, figure: length(hip) },
    { words: "Waist to hem, side", figure: length(lengths.side) },
    ...(free === null
      ? []
      : [
          {
            words: "Left free of the closure",
            figure: `${formatAmount(free.beside, unit)} each side, down to ${length(free.below)}`,
          },
        ]),
    { words: "Its hem all round", figure: length(hem), total: true },
  ];
}
