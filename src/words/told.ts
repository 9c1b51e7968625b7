/** What a step did, as it is told once to who does not see the page. */
import type { Alteration } from "../core/decisions/alteration";
import { dartOfAlteration } from "../core/decisions/alteration";
import type { LengthUnit, Work } from "../core/decisions/work";
import { isSameDart } from "../core/pattern/piece";
import { halvesOf, type Plan } from "../core/plan/plan";
import { isSame } from "../core/same";
import { alterationFailureSentence, alterationTitle } from "./planned";
import { figuresWords } from "./terms/darts";

export interface StepTold {
  readonly way: "done" | "undone" | "redone";
  readonly without: Work;
  readonly with: Work;
}

/** Parts of a work, as undo names them. The order is that in which they are looked for. */
const PARTS: readonly (readonly [keyof Work, string])[] = [
  ["name", "the name of this work"],
  ["wearer", "whom it is for"],
  ["unit", "the unit"],
  ["tapes", "your measures"],
  ["trusted", "a reading that is right"],
  ["age", "your age"],
  ["pattern", "the pattern"],
  ["easeWanted", "the ease you want"],
  ["bustRadius", "the radius of the bust"],
  ["picks", "your size"],
  ["seen", "what you see of a dart"],
  ["trials", "the trial"],
  ["standingLeft", "what is left out of this dress"],
  ["dress", "the dress"],
  ["allowances", "the seam allowances"],
  ["sheetFormat", "the paper"],
  ["paper", "the paper"],
  ["printerMargin", "the printer’s margin"],
];

const keyOf = ({ id, half }: Alteration): string => `${id} ${half ?? ""}`;

/** Those of some alterations that are not among others as they are. */
const notAmong = (own: readonly Alteration[], others: readonly Alteration[]): readonly Alteration[] => {
  const there = new Map(others.map((one) => [keyOf(one), one]));
  return own.filter((one) => !isSame(there.get(keyOf(one)), one));
};

const titles = (alterations: readonly Alteration[], unit: LengthUnit): string =>
  alterations.map((one) => alterationTitle(one, unit)).join("; ");

/** Why one was left out; null: it was made. */
function leftOutSentence({ id }: Alteration, plan: Plan | null, unit: LengthUnit): string | null {
  const planned = plan?.ledger.find((one) => one.id === id && !one.outcome.ok);
  return planned === undefined || planned.outcome.ok ? null : alterationFailureSentence(planned.outcome.failure, unit);
}

/** Where a dart came to, in its figures. */
function cameTo(alteration: Alteration, plan: Plan | null, unit: LengthUnit): string {
  const of = dartOfAlteration(alteration);
  const [half] = plan === null ? [] : alteration.half === undefined ? halvesOf(plan) : [plan[alteration.half]];
  const dart = of === null ? undefined : half?.darts.find(({ ref }) => isSameDart(ref, of));
  return dart === undefined ? "" : ` ${figuresWords(dart.drawn, unit)}.`;
}

export interface StepSentence {
  readonly text: string;
  /** Why it was left out, where it was: a field may say that itself. */
  readonly leftOut: string | null;
}

const said = (text: string): StepSentence => ({ text, leftOut: null });

/**
 * "In the ledger: Shorten the waist dart by 8 mm, its mouth held. Mouth 38 mm, angle 22.0°, fullness 31 mm.", "Undone: …".
 * Nothing is told of what is done in a field that tells it itself.
 *
 * @param plan of the work as it is now; null: there is none
 */
export function stepSentence({ way, without, with: made }: StepTold, plan: Plan | null): StepSentence | null {
  const { unit } = made;
  const put = notAmong(made.alterations, without.alterations);
  const keys = new Set(made.alterations.map(keyOf));
  const gone = without.alterations.filter((one) => !keys.has(keyOf(one)));
  if (way === "done") {
    const [first, second] = put;
    if (first === undefined) return gone.length === 0 ? null : said(`Taken out: ${titles(gone, unit)}.`);
    if (second !== undefined) return said(`In the ledger: ${titles(put, unit)}.`);
    const leftOut = leftOutSentence(first, plan, unit);
    const title = alterationTitle(first, unit);
    return leftOut === null
      ? said(`In the ledger: ${title}.${cameTo(first, plan, unit)}`)
      : { text: `Left out: ${title}. ${leftOut}`, leftOut };
  }
  const changed = put.length > 0 ? put : gone;
  const part =
    changed.length > 0
      ? titles(changed, unit)
      : made.alterations.some((one, at) => one !== without.alterations[at])
        ? "the order of the slips"
        : PARTS.find(([key]) => made[key] !== without[key])?.[1];
  return said(`${way === "undone" ? "Undone" : "Done again"}: ${part ?? "the last step"}.`);
}
