/** Where the pieces of a plan come from, and what of them is worked out. */
import type { Plan } from "../core/plan/plan";
import type { TypedUnit } from "../core/measures/length";
import { formatAmount } from "./terms/length";
import { levelWords } from "./terms/names";
import { listWords, plural } from "./terms/language";

/** In one line: "Your own pieces, sizes 10 and 14." */
export function sourceLine({ nest }: Pick<Plan, "nest">): string {
  switch (nest.source) {
    case "standIn":
      return "Stand-in, drafted from the chart.";
    case "fitted":
      return "Stand-in, fitted to your tissue.";
    case "own": {
      const sizes = nest.labels.filter((_, at) => nest.traced?.[at] === true);
      return `Your own, ${plural(sizes.length, { one: "size", other: "sizes" })} ${listWords(sizes)}.`;
    }
  }
}

/** What is measured on the pieces, and what stands on lines that are not there; none of our own draft. */
export function sourceNotes(
  plan: Pick<Plan, "levels" | "drafted" | "isEaseMeasured">,
  unit: TypedUnit,
): readonly string[] {
  if (!plan.isEaseMeasured) return [];
  const ease = plan.levels.map(({ level }) => `${levelWords(level)} ${formatAmount(plan.drafted[level], unit)}`);
  const missing = [...new Set(plan.levels.flatMap(({ untraced }) => untraced ?? []))];
  const held = plan.levels.filter(({ isHeld }) => isHeld === true).map(({ level }) => levelWords(level));
  return [
    `Ease, measured: ${ease.join(", ")}.`,
    ...(missing.length === 0 ? [] : [`No outline of ${listWords(missing)}: worked out.`]),
    ...(held.length === 0 ? [] : [`Only one size: ${listWords(held)} not blended.`]),
  ];
}
