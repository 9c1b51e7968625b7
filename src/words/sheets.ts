/** Words of the sheets that true-scale pieces are printed on. */
import type { Allowances } from "../core/cutting/allowances";
import { allowanceOf } from "../core/cutting/allowances";
import type { PieceName, SeamName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import type { SheetFormat } from "../core/sheets/formats";
import type { Mm } from "../core/units";
import { formatAmount, formatLength } from "./length";
import { listWords, seamWords } from "./names";

/** "Page 3 of 12. Wren bodice". */
export const pageWords = (number: number, of: number, name: string): string => `page ${number} of ${of} · ${name}`;
export const joinWords = ([one, other]: readonly [string, string]): string => `${one} / ${other}`;

export const SHEET_KIND = { pieces: "True-scale pieces", overlay: "Tissue overlay" } as const;

/** How to print and join them; `pages` without the map. */
export function joiningSteps(format: SheetFormat, pages: number, unit: LengthUnit): readonly string[] {
  const square = unit === "cm" ? "the inner test square must be 100 mm" : "the outer test square must be 4 in";
  if (format.endsWith("roll")) {
    return [`Printed at 100 %, one page ${format === "A0 roll" ? "841 mm" : "36 in"} wide. Measure first: ${square} each way.`, "Cut the pieces out along the heavy line."];
  }
  const measure = `Print at 100 % (“actual size”) on ${format}. Measure on this page first: ${square} each way.`;
  if (pages === 1) return [measure, "Cut the pieces out along the heavy line."];
  return [
    measure,
    "Lay the pages out as on the map: letters go across, numbers down.",
    "Where a page has a neighbour at its left or above, cut along its thin frame on that side.",
    "Lay the cut edge on the dotted line of that neighbour; the round marks must fall on one another. Tape.",
    "Then cut the pieces out along the heavy line, and keep the blade away from your hand.",
  ];
}

/** In inches the exact millimetres too: 15 mm is what the trade calls 5/8 in, and is a little less. */
const amountWords = (mm: Mm, unit: LengthUnit): string => (unit === "cm" ? formatAmount(mm, unit) : `${Math.round(mm * 10) / 10} mm (about ${formatLength(mm, unit)})`);

/** Seams in the order they are told. */
const TOLD: readonly SeamName[] = ["shoulder", "side", "princess", "underBust", "waist", "centre", "armhole", "neck", "strap", "hem"];

/** "Allowances: 15 mm; hem 30 mm." One amount for most, and what differs; seams that no piece has are left out. */
export function allowanceWords(plan: Plan, names: readonly PieceName[], allowances: Allowances, unit: LengthUnit): string {
  const pieces = plan.pieces.filter(({ name }) => names.includes(name));
  const has = (seam: SeamName): boolean => pieces.some(({ edges, centreOnFold }) => edges.some((edge) => edge.seam === seam) && !(seam === "centre" && centreOnFold));
  const seams = TOLD.filter(has);
  const groups = new Map<string, SeamName[]>();
  for (const seam of seams) {
    const amount = amountWords(allowanceOf(allowances, seam), unit);
    groups.set(amount, [...(groups.get(amount) ?? []), seam]);
  }
  const sorted = [...groups].toSorted(([, a], [, b]) => b.length - a.length);
  const told = sorted.map(([amount, own], index) => (index === 0 && sorted.length > 1 ? `${amount} all round` : `${amount} at the ${listWords(own.map((seam) => (seam === "centre" ? "centre seams" : seamWords(seam, "front"))))}`));
  const [first] = sorted;
  if (first !== undefined && sorted.length === 1) return `Allowances included: ${first[0]} all round.`;
  return `Allowances included: ${told.join("; ")}.`;
}

/** What the sheet is not, said where it is cut from. */
export const OWN_DRAFT = {
  pieces: "The planner’s own draft from the pattern’s chart, not a copy of the pattern in the envelope: sew a trial first.",
  overlay:
    "The strips follow the planner’s own draft. Where a dashed line and its crosses do not lie on your tissue’s, put that strip away and take the amounts from the checklist.",
} as const;
export const NO_ALLOWANCES = "No allowances: the heavy line is the stitch line. Add them when you cut.";
export const ALL_CHECKS_HOLD = (checks: number): string => `All ${checks} checks on this plan hold.`;
export const doubtsTitle = (count: number): string => (count === 1 ? "Before you cut: one thing does not hold" : `Before you cut: ${count} things do not hold`);
export const moreDoubts = (count: number): string => `… and ${count} more: see the checklist.`;
export const INVENTED_SHEET = "Invented demo: no real person and no real pattern.";

/** What each kind of line means. */
export const LINE_KEY = [
  { role: "cutting", words: "cut" },
  { role: "stitch", words: "sew" },
  { role: "fold", words: "fold of the cloth" },
  { role: "dartLeg", words: "dart leg" },
  { role: "dartFold", words: "dart fold" },
  { role: "level", words: "balance line" },
] as const;
export const OVERLAY_LINES = [
  { role: "changed", words: "your own line" },
  { role: "layOn", words: "your size as printed" },
  { role: "printed", words: "sizes beside it" },
  { role: "mark", words: "printed points (crosses)" },
] as const;
export const BEFORE_KEY = "before your alterations";
export const NOTCH_KEY = "Notches with one number meet. A circle with a point is the end of a dart.";
export const printedKey = (label: string): string => `size ${label}`;
