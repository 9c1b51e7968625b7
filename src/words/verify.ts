/** What to measure when the work is done, and what it should come to. */
import type { Half } from "../core/decisions/alteration";
import type { Plan, PlanHalf } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { setOf } from "../core/pattern/pieceSet";
import type { Piece, PieceName, SeamName } from "../core/pattern/piece";
import { isBasque } from "../core/pattern/pieceGroups";
import { seamPairsOf } from "../core/pattern/sewnTogether";
import { levelWidth } from "../core/girth/levelWidth";
import { seamLength } from "../core/girth/seamLength";
import { HAND_AGREEMENT } from "../core/tolerance";
import type { Mm } from "../core/units";
import { halfWords } from "./fits";
import { formatAlong, formatAmount, formatLength, markingStep } from "./terms/length";
import { capital, dartRefWords, levelWords, pieceWords, seamWords } from "./terms/names";

interface VerifyRow {
  readonly what: string;
  /** How to measure it, where that is not plain. */
  readonly how: string | null;
  readonly expected: string;
  readonly allowed: string;
}

export interface VerifyGroup {
  /** Jobs to tick off, not only lengths to write down. */
  readonly walked: boolean;
  readonly title: string;
  readonly how: string;
  readonly rows: readonly VerifyRow[];
}

/** Four side seam edges, each marked to the nearest step, may be out by half a step each, on top of the sewing. */
const girthAllowance = (unit: LengthUnit): Mm => 4 * (markingStep(unit) / 2) + HAND_AGREEMENT;

type Level = Plan["levels"][number];

/** Half round the body at a level: front half and back half together; the waist is the bodice's, not the basque's. */
const halfGirth = (pieces: readonly Piece[], level: Level["level"]): Mm =>
  pieces.reduce(
    (sum, piece) => sum + (level === "waist" && isBasque(piece.name) ? 0 : (levelWidth(piece, level) ?? 0)),
    0,
  );

function halvesWords(plan: Plan, { level, finished }: Level, unit: LengthUnit): string {
  // In inches twice a half as it is told is the girth as it is told.
  if (plan.left === plan.right) return `halves together ${formatAlong(finished / 2, unit)}`;
  const [left, right] = [plan.left, plan.right].map(({ pieces }) => formatAlong(halfGirth(pieces, level), unit));
  return left === right ? `each half ${left ?? ""}` : `left half ${left ?? ""}, right half ${right ?? ""}`;
}

function girths(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    walked: false,
    title: "Round the body",
    how:
      plan.left === plan.right
        ? "On the tissue, darts folded, seam line to seam line: front half and back half together, times two."
        : "On the tissue, darts folded, seam line to seam line: the left half’s front and back, then the right half’s.",
    rows: plan.levels.map((level) => {
      const half = halvesWords(plan, level, unit);
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

/** Seams to walk when each piece is done, with the length each should have. */
function seamsToWalk(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    walked: true,
    title: "Seams to walk",
    how: "One piece along the other, seam line on seam line, darts folded.",
    rows: onHalves(plan, (half) => seamRows(half, unit)),
  };
}

const seamRows = (plan: PlanHalf, unit: LengthUnit): readonly VerifyRow[] =>
  seamPairsOf(setOf(plan.pieces)).flatMap(({ seam, first, second, ease }): VerifyRow[] => {
    const [longer, shorter] = [sideOf(plan, first, seam), sideOf(plan, second, seam)];
    const lead = first[0];
    if (lead === undefined) return [];
    const off = Math.abs(longer.length - shorter.length - ease);
    return [
      {
        what: `${capital(seamWords(seam, lead))}, ${longer.words} and ${shorter.words}`,
        how: ease === 0 ? null : `${longer.words} eased in by ${formatAmount(ease, unit)}`,
        expected:
          ease === 0 && off <= HAND_AGREEMENT
            ? formatAlong((longer.length + shorter.length) / 2, unit)
            : `${formatAlong(longer.length, unit)} and ${formatAlong(shorter.length, unit)}`,
        allowed: formatAmount(HAND_AGREEMENT, unit),
      },
    ];
  });

/** Rows alike on both halves stand once; the others say whose they are. */
function onHalves(plan: Plan, rowsOf: (half: PlanHalf) => readonly VerifyRow[]): readonly VerifyRow[] {
  const left = rowsOf(plan.left);
  if (plan.left === plan.right) return left;
  const right = rowsOf(plan.right);
  const isIn = (rows: readonly VerifyRow[], row: VerifyRow): boolean =>
    rows.some((one) => one.what === row.what && one.how === row.how && one.expected === row.expected);
  const named = (row: VerifyRow, half: Half): VerifyRow => ({ ...row, what: `${row.what} (${halfWords(half)})` });
  return [
    ...left.map((row) => (isIn(right, row) ? row : named(row, "left"))),
    ...right.filter((row) => !isIn(left, row)).map((row) => named(row, "right")),
  ];
}

/** The pieces of one side of a seam: their names, and the length of it over all of them. */
function sideOf(
  { pieces }: PlanHalf,
  names: readonly PieceName[],
  seam: SeamName,
): { readonly words: string; readonly length: Mm } {
  const own = pieces.filter(({ name, edges }) => names.includes(name) && edges.some((edge) => edge.seam === seam));
  return {
    words: own.map(({ name }) => pieceWords(name)).join(" with "),
    length: own.reduce((sum, piece) => sum + seamLength(piece, seam), 0),
  };
}

function dartLegs(plan: Plan, unit: LengthUnit): VerifyGroup {
  return {
    walked: false,
    title: "Dart legs",
    how: "From the end of the dart to each end of its mouth: both the same.",
    rows: onHalves(plan, ({ darts }) =>
      darts.map((dart) => ({
        what: capital(dartRefWords(dart.ref)),
        how: `mouth ${formatAmount(dart.drawn.intake, unit)}`,
        expected: formatAlong((dart.drawn.legInner + dart.drawn.legOuter) / 2, unit),
        allowed: formatAmount(HAND_AGREEMENT, unit),
      })),
    ),
  };
}

/** The seams first: they are the last job of the order of work, and only what walks is worth measuring. */
export function verifyGroups(plan: Plan, unit: LengthUnit): readonly VerifyGroup[] {
  return [seamsToWalk(plan, unit), girths(plan, unit), dartLegs(plan, unit)].filter((group) => group.rows.length > 0);
}
