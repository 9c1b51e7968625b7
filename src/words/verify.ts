/** What to measure when the work is done, and what it should come to. */
import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { seamLength } from "../core/girth/seamLength";
import { SEWN_AGREEMENT } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatAmount, formatLength, markingStep } from "./length";
import { capital, dartRefWords, levelWords, pieceWords, seamWords } from "./names";

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

/** Four side seam edges, each marked to the nearest step, may be out by half a step each, on top of the sewing. */
const girthAllowance = (unit: LengthUnit): Mm => 4 * (markingStep(unit) / 2) + SEWN_AGREEMENT;

/** A length to be measured on the tissue: as fine as it was marked. */
const marked = (value: Mm, unit: LengthUnit): string => (unit === "in" ? formatAmount(value, unit) : formatLength(value, unit));

function girths(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    title: "Round the body",
    how: "On the tissue, darts folded, seam line to seam line: front half and back half together, times two.",
    rows: plan.levels.map((level) => {
      const half = `halves together ${formatLength(level.finished / 2, unit)}`;
      const asked = formatLength(level.target, unit);
      return {
        what: capital(levelWords(level.level)),
        how: asked === formatLength(level.finished, unit) ? half : `${half}; you asked for ${asked}`,
        expected: formatLength(level.finished, unit),
        allowed: formatAmount(girthAllowance(unit), unit),
      };
    }),
  };
}

function seams(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    title: "Seams to walk",
    how: "One piece along the other, seam line on seam line, darts folded.",
    rows: plan.checks.flatMap((check): VerifyRow[] => {
      const { name, seam } = check;
      if (name !== "seamsWalk" || seam === undefined) return [];
      const found = plan.pieces.filter((piece) => check.pieces.includes(piece.name));
      const [first] = found;
      if (first === undefined) return [];
      const lengths = found.map((piece) => seamLength(piece, seam));
      const longer = check.pieces[0];
      const ease = check.expected;
      return [
        {
          what: `${capital(seamWords(seam, first.name))}, ${found.map((piece) => pieceWords(piece.name)).join(" and ")}`,
          how: longer === undefined || ease === 0 ? null : `${pieceWords(longer)} eased in by ${formatAmount(ease, unit)}`,
          expected:
            ease === 0 && check.ok
              ? marked(lengths.reduce((sum, length) => sum + length, 0) / lengths.length, unit)
              : lengths.map((length) => marked(length, unit)).join(" and "),
          allowed: formatAmount(check.tolerance, unit),
        },
      ];
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
      expected: marked((dart.drawn.legInner + dart.drawn.legOuter) / 2, unit),
      allowed: formatAmount(SEWN_AGREEMENT, unit),
    })),
  };
}

export function verifyGroups(plan: Plan, unit: LengthUnit): readonly VerifyGroup[] {
  return [girths(plan, unit), seams(plan, unit), dartLegs(plan, unit)].filter((group) => group.rows.length > 0);
}
