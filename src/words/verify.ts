/** What to measure when the work is done, and what it should come to. */
import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { SEWN_AGREEMENT } from "../core/tolerance";
import { formatAmount, formatLength } from "./length";
import { capital, dartRefWords, levelWords, listWords, pieceWords, seamWords } from "./names";

export interface VerifyRow {
  readonly what: string;
  /** How to measure it, where that is not plain. */
  readonly how: string | null;
  readonly expected: string;
  readonly allowed: string;
}

export interface VerifyGroup {
  readonly title: string;
  readonly how: string;
  readonly rows: readonly VerifyRow[];
}

function girths(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    title: "Round the body",
    how: "On the tissue, darts folded, seam line to seam line: front and back halves together, times two.",
    rows: plan.levels.map((level) => ({
      what: capital(levelWords(level.level)),
      how: `half: ${formatLength(level.finished / 2, unit)}`,
      expected: formatLength(level.finished, unit),
      allowed: formatAmount(SEWN_AGREEMENT, unit),
    })),
  };
}

function seams(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    title: "Seams to walk",
    how: "One piece along the other, seam line on seam line, darts folded.",
    rows: plan.checks
      .filter((check) => check.name === "seamsWalk" && check.seam !== undefined)
      .map((check) => {
        const [first] = check.pieces;
        const seam = check.seam === undefined || first === undefined ? "seam" : seamWords(check.seam, first);
        return {
          what: `${capital(seam)}: ${listWords(check.pieces.map(pieceWords))}`,
          how: null,
          expected: formatAmount(check.expected, unit),
          allowed: formatAmount(check.tolerance, unit),
        };
      }),
  };
}

function dartLegs(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    title: "Dart legs",
    how: "From the end of the dart to each end of its mouth: both the same.",
    rows: plan.darts.map((dart) => ({
      what: capital(dartRefWords(dart.ref)),
      how: `mouth ${formatAmount(dart.drawn.intake, unit)}`,
      expected: formatAmount((dart.drawn.legInner + dart.drawn.legOuter) / 2, unit),
      allowed: formatAmount(SEWN_AGREEMENT, unit),
    })),
  };
}

export function verifyGroups(plan: Plan, unit: LengthUnit): readonly VerifyGroup[] {
  return [girths(plan, unit), seams(plan, unit), dartLegs(plan, unit)].filter((group) => group.rows.length > 0);
}
