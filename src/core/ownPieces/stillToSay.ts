/** What is to be said of a file before the plan can be made on it: all of it, in its order, with what is done of it. */
import type { OwnPattern } from "../decisions/ownPattern";
import type { Pattern } from "../decisions/pattern";
import type { PieceName } from "../pattern/piece";
import { isCupSaid, writtenCup } from "./drawnCup";
import { namedBy } from "./nameOfPiece";
import type { Missing, OwnReading } from "./ownReading";

const SAY_STEPS = ["chart", "scale", "sizes", "cup", "pieces", "marks"] as const;
export type SayStep = (typeof SAY_STEPS)[number];

export type ToSay =
  | Missing
  | { readonly code: "missing/chart" }
  /** `proposed`: as the file's own writings have it. `gone`: what was said before, and is in the chart no more. */
  | { readonly code: "missing/cup"; readonly proposed: string | null; readonly gone: string | null };

export interface StepToSay {
  readonly step: SayStep;
  /** "later" also where nothing can be known of it yet. */
  readonly state: "done" | "next" | "later";
  readonly missing: readonly ToSay[];
}

const STEP_OF: Readonly<Record<ToSay["code"], SayStep>> = {
  "missing/chart": "chart",
  "missing/scale": "scale",
  "missing/sizes": "sizes",
  "missing/outlines": "sizes",
  "missing/second-size": "sizes",
  "missing/cup": "cup",
  "missing/piece": "pieces",
  "missing/piece-twice": "pieces",
  "missing/corner": "marks",
  "missing/bust-point": "marks",
  "missing/problem": "marks",
  "missing/too-much": "sizes",
  "own/seams-unlike": "marks",
  "own/girth-unlike": "marks",
};

/** All steps that this pattern has, one of them next unless nothing is missing. */
export function stillToSay(own: OwnPattern, { chart }: Pattern, reading: OwnReading): readonly StepToSay[] {
  const all: readonly ToSay[] = [
    ...(chart.sizes.length === 0 ? [{ code: "missing/chart" } as const] : []),
    ...(isCupSaid(own, chart)
      ? []
      : [{ code: "missing/cup", proposed: writtenCup(own, chart), gone: own.cup ?? null } as const]),
    ...each(reading.missing),
  ];
  let isNextFound = false;
  // What lies behind a step that is not done is known only as far as something of it is missing.
  let isInDoubt = false;
  return SAY_STEPS.filter((step) => step !== "cup" || chart.cups.length > 1).map((step) => {
    const missing = all.filter(({ code }) => STEP_OF[code] === step);
    if (missing.length === 0)
      return { step, state: isInDoubt && step !== "cup" && step !== "scale" ? "later" : "done", missing };
    const state = isNextFound ? "later" : "next";
    isNextFound = true;
    if (step !== "cup") isInDoubt = true;
    return { step, state, missing };
  });
}

/** What several pieces miss alike is said once. */
const each = (missing: readonly Missing[]): readonly Missing[] => [
  ...new Map(missing.map((one) => [JSON.stringify(one), one])).values(),
];

/** Basques that the file has, where the plan goes to the waist and takes none of them. */
export function basquesLeft(
  own: OwnPattern,
  { length }: Pattern,
  { outlines, pieces }: OwnReading,
): readonly PieceName[] {
  if (length === "hip") return [];
  return BASQUES.filter((basque) =>
    outlines.groups.some((group) => {
      const said = pieces.find(({ id }) => id === group.id)?.said;
      if (said === undefined || said.leftOut === true) return false;
      // What she calls it herself counts; a proposal goes by what the plan needs.
      const hers = own.pieces.find(({ id }) => id === group.id)?.name ?? null;
      if (hers !== null) return hers === basque;
      return [group.nameInFile, ...group.writings.map(({ text }) => text)].some(
        (text) => namedBy(text, BASQUES) === basque,
      );
    }),
  );
}

const BASQUES: readonly PieceName[] = ["frontBasque", "backBasque"];
