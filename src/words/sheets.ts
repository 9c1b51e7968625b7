/** Words of the sheets that true-scale pieces are printed on. */
import type { SheetFormat } from "../core/decisions/paperChoice";
import { allowanceOf } from "../core/cutting/usualAllowances";
import type { Allowances } from "../core/decisions/allowances";
import type { CutCount, TruePiece } from "../core/cutting/truePiece";
import type { Piece, SeamName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { FORMATS } from "../core/sheets/formats";
import { allowanceAmount } from "./allowances";
import { formatAmount } from "./terms/length";
import { listWords, seamWords } from "./terms/names";
import { testSquareWords } from "./testSquares";
import { cutWords, pieceTitle } from "./truePaper";

/** "Page 3 of 12. Wren bodice". */
export const pageWords = (number: number, of: number, name: string): string => `page ${number} of ${of} · ${name}`;
export const joinWords = ([one, other]: readonly [string, string]): string => `${one} / ${other}`;

export const SHEET_KIND = { pieces: "True-scale pieces", overlay: "Tissue overlay" } as const;

/** A roll sold by its inches is called by them; else its width is told as all lengths are. */
const rollWidth = (format: SheetFormat, unit: LengthUnit): string =>
  formatAmount(FORMATS[format].width, format === "36 in roll" ? "in" : unit);

/** How to print and join them; `pages` without the map. */
export function joiningSteps(format: SheetFormat, pages: number, unit: LengthUnit): readonly string[] {
  const square = testSquareWords(unit);
  if (format.endsWith("roll")) {
    return [
      `One page, ${rollWidth(format, unit)} wide, printed at 100 %. Measure first: ${square}. If it is not, stop: it was scaled.`,
      CUT_OUT,
    ];
  }
  const measure = `Print this page alone at 100 % (“actual size”) on ${format} and measure: ${square}. If it is not, scaling is on: set it right and print this page again.`;
  if (pages === 1) return [measure, "Print the page with the pieces.", CUT_OUT];
  return [
    measure,
    "Print the others, and lay them out as on the map: letters go across, numbers down.",
    "Where a page has a neighbour at its left or above, cut along its thin frame on that side.",
    "Join each row from left to right: lay the cut edge on the dotted line of the page before, so that the diamonds fall on one another, and tape. Then join the rows, from the top.",
    CUT_OUT,
  ];
}

const CUT_OUT = "Cut the pieces out along the heavy line, the blade away from your hand.";

/** Seams in the order they are told. */
const TOLD: readonly SeamName[] = [
  "shoulder",
  "side",
  "princess",
  "underBust",
  "waist",
  "centre",
  "armhole",
  "neck",
  "strap",
  "hem",
];

const placesWords = (seams: readonly SeamName[]): string =>
  listWords(seams.map((seam) => (seam === "centre" ? "centre seams" : seamWords(seam, "front"))));

/** "Allowances included: 15 mm, but 30 mm at the hem." One amount for most, and what differs; seams that no piece has are left out. */
export function allowanceWords(pieces: readonly Piece[], allowances: Allowances, unit: LengthUnit): string {
  const has = (seam: SeamName): boolean =>
    pieces.some(
      ({ edges, centreOnFold }) => edges.some((edge) => edge.seam === seam) && !(seam === "centre" && centreOnFold),
    );
  const seams = TOLD.filter(has);
  const groups = new Map<string, SeamName[]>();
  for (const seam of seams) {
    const amount = allowanceAmount(allowanceOf(allowances, seam), unit);
    groups.set(amount, [...(groups.get(amount) ?? []), seam]);
  }
  const sorted = [...groups].toSorted(([, a], [, b]) => b.length - a.length);
  const [first] = sorted;
  if (first === undefined) return NOTHING_ALLOWED;
  const [most, own] = first;
  if (sorted.length === 1) return `Allowances included: ${most} all round.`;
  const others = sorted.slice(1).map(([amount, of]) => `${amount} at the ${placesWords(of)}`);
  return own.length > seams.length / 2
    ? `Allowances included: ${most}, but ${listWords(others)}.`
    : `Allowances included: ${[`${most} at the ${placesWords(own)}`, ...others].join("; ")}.`;
}

/** Pieces that are folds all round do not exist; a piece that is not of this plan has none to tell. */
const NOTHING_ALLOWED = "Allowances included.";

/** What the sheet is not, said where it is cut from. */
export const OWN_DRAFT = {
  pieces:
    "The planner’s own draft from the pattern’s chart, not a copy of the pattern in the envelope: sew a trial first.",
  overlay:
    "The strips follow the planner’s own draft. Where a dashed line and its crosses do not lie on your tissue’s, put that strip away and take the amounts from the checklist.",
} as const;
export const NO_ALLOWANCES = "No allowances: the heavy line is the stitch line. Add them when you cut.";
export const ALL_CHECKS_HOLD = (checks: number): string => `All ${checks} checks on this plan hold.`;
export const doubtsTitle = (count: number): string =>
  count === 1 ? "Before you cut: one thing does not hold" : `Before you cut: ${count} things do not hold`;
export const INVENTED_SHEET = "Invented demo: no real person and no real pattern.";

/** What each kind of line means. */
export const LINE_KEY = [
  { role: "cutting", words: "cut" },
  { role: "stitch", words: "sew, or turn up" },
  { role: "fold", words: "fold of the cloth" },
  { role: "dartLeg", words: "dart leg" },
  { role: "dartFold", words: "dart fold" },
  { role: "level", words: "balance line" },
  { role: "frame", words: "edge of a page" },
  { role: "overlap", words: "next page’s edge" },
] as const;
export const OVERLAY_LINES = [
  { role: "changed", words: "your stitch line" },
  { role: "layOn", words: "your size, printed" },
  { role: "printed", words: "sizes beside it" },
  { role: "frame", words: "cut the strip here" },
] as const;
export const BEFORE_KEY = "before alterations";
export const printedKey = (label: string): string => `size ${label}`;

/** What each mark means. */
export const MARK_KEY = {
  pieces: [
    "Arrow with two heads: straight grain. Bracket: place on the fold.",
    "Triangle: notch; those with one number meet. Tick: end of a dart leg, or centre. Snip no deeper than they are.",
    "Small circle: end of a dart. Circle with a cross: bust point. Black dot: match before you pin the seam.",
    "Diamond: where two pages meet.",
  ],
  overlay: ["Crosses: points printed on your tissue.", "Arrows: towards the neck or waist, and to the centre line."],
} as const;

/** "Pieces: front, cut 1 on the fold; back, cut 2, one turned over." */
export const pieceListWords = (
  pieces: readonly (Pick<TruePiece, "name" | "half"> & { readonly cut: CutCount })[],
): string =>
  `Pieces: ${pieces.map((piece) => `${pieceTitle(piece).toLowerCase()}: ${cutWords(piece).toLowerCase()}`).join("; ")}.`;
