/** What to measure when the work is done, and what it should come to. */
import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import type { PieceSet } from "../core/alterations/pieceSet";
import type { PieceName, SeamName } from "../core/pattern/piece";
import { seamPairsOf } from "../core/pattern/sewnTogether";
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
    rows: seamPairsOf(setOf(plan)).flatMap(({ seam, first, second, ease }): VerifyRow[] => {
      const [longer, shorter] = [sideOf(plan, first, seam), sideOf(plan, second, seam)];
      const lead = first[0];
      if (lead === undefined) return [];
      const off = Math.abs(longer.length - shorter.length - ease);
      return [
        {
          what: `${capital(seamWords(seam, lead))}, ${longer.words} and ${shorter.words}`,
          how: ease === 0 ? null : `${longer.words} eased in by ${formatAmount(ease, unit)}`,
          expected:
            ease === 0 && off <= SEWN_AGREEMENT
              ? marked((longer.length + shorter.length) / 2, unit)
              : `${marked(longer.length, unit)} and ${marked(shorter.length, unit)}`,
          allowed: formatAmount(SEWN_AGREEMENT, unit),
        },
      ];
    }),
  };
}

const setOf = ({ pieces }: Plan): PieceSet => Object.fromEntries(pieces.map((piece) => [piece.name, piece]));

/** The pieces of one side of a seam: their names, and the length of it over all of them. */
function sideOf({ pieces }: Plan, names: readonly PieceName[], seam: SeamName): { readonly words: string; readonly length: Mm } {
  const own = pieces.filter(({ name, edges }) => names.includes(name) && edges.some((edge) => edge.seam === seam));
  return {
    words: own.map(({ name }) => pieceWords(name)).join(" with "),
    length: own.reduce((sum, piece) => sum + seamLength(piece, seam), 0),
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
