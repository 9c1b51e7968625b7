/** Words of the sheets that true-scale pieces are printed on. */
import type { SheetFormat } from "../core/decisions/paperChoice";
import { allowanceOf, allowanceOn } from "../core/cutting/usualAllowances";
import type { Allowances } from "../core/decisions/allowances";
import type { CutCount, TruePiece } from "../core/cutting/truePiece";
import type { Piece, SeamName } from "../core/pattern/piece";
import type { LengthUnit, Work } from "../core/decisions/work";
import { FORMATS } from "../core/sheets/formats";
import { allowanceAmount } from "./allowances";
import { formatAmount, formatLength } from "./terms/length";
import { seamWords } from "./terms/names";
import { testSquareWords } from "./testSquares";
import { cutWords, pieceNamed } from "./truePaper";
import { listWords, plural } from "./terms/language";

/** "page 3 of 12 · Ann · Wren bodice"; a long name of a person in short. */
export const pageWords = (number: number, of: number, name: string, wearer?: string): string =>
  [`page ${number} of ${of}`, ...(wearer === undefined ? [] : [inShort(wearer)]), name].join(" · ");

/** Letters of a person's name on each page. */
const LONGEST_WEARER = 24;
const inShort = (name: string): string => {
  const letters = Array.from(name.trim());
  return letters.length <= LONGEST_WEARER
    ? letters.join("")
    : `${letters
        .slice(0, LONGEST_WEARER - 1)
        .join("")
        .trimEnd()}…`;
};

/** Stands on every page of a tiled sheet, the first among them. */
const FRAME_WHOLE =
  "The thin frame round each page must be whole: if a side of it is missing, this is the wrong paper.";
export const joinWords = ([one, other]: readonly [string, string]): string => `${one} / ${other}`;

/** Strips laid on pieces that were sewn before. */
export const OLD_OVERLAY_KIND = "Overlay for the paper you have";

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
  const measure = `Print this page alone at 100 % (“actual size”) on ${format} and measure: ${square}. If it is not, scaling is on: set it right and print this page again. ${FRAME_WHOLE}`;
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
  "panel",
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
  if (sorted.length === 1 && strapWords(pieces, allowances, unit).length === 0)
    return `Allowances included: ${most} all round.`;
  const others = sorted.slice(1).map(([amount, of]) => `${amount} at the ${placesWords(of)}`);
  others.push(...strapWords(pieces, allowances, unit));
  return own.length > seams.length / 2
    ? `Allowances included: ${most}, but ${listWords(others)}.`
    : `Allowances included: ${[`${most} at the ${placesWords(own)}`, ...others].join("; ")}.`;
}

/** Along a narrow strap there is less than at the edges of the same name elsewhere. */
const strapWords = (pieces: readonly Piece[], allowances: Allowances, unit: LengthUnit): readonly string[] =>
  pieces.flatMap((piece): string[] => {
    const along = allowanceOn(piece, allowances, "neck");
    return piece.name === "strap" && along < allowanceOf(allowances, "neck")
      ? [`${allowanceAmount(along, unit)} along the strap`]
      : [];
  });

/** Pieces that are folds all round do not exist; a piece that is not of this plan has none to tell. */
const NOTHING_ALLOWED = "Allowances included.";

export const NO_ALLOWANCES = "No allowances: the heavy line is the stitch line. Add them when you cut.";
export const TOILE_WORDS =
  "For a toile: sew on the stitch line, and leave what is beyond it so that it can be let out.";
/** Which half of a sewn toile is which. */
export const TACKING_WORDS =
  "Left and right are your own, and differ. Tack through the cloth along the straight grain where dashes show it: one line on your left, two on your right.";
export const ALL_CHECKS_HOLD = (checks: number): string => `All ${checks} checks on this plan hold.`;
export const doubtsTitle = (count: number): string =>
  plural(count, {
    one: "Before you cut: one thing does not hold",
    other: `Before you cut: ${count} things do not hold`,
  });

/** What each kind of line means. */
const LINES = [
  { role: "cutting", words: "cut" },
  { role: "stitch", words: "sew, or turn up" },
  { role: "fold", words: "fold of the cloth" },
  { role: "dartLeg", words: "dart leg" },
  { role: "dartFold", words: "dart or vent fold" },
  { role: "level", words: "balance line" },
  { role: "lengthen", words: "lengthen or shorten" },
] as const;
const PAGE_LINE = { role: "frame", words: "edge of a page" } as const;
const JOIN_LINE = { role: "overlap", words: "next page’s edge" } as const;

/** How many pages a sheet has, as far as its key goes: a roll has no frame, a single page nothing to join. */
export type Paged = "roll" | "single" | "joined";

export const lineKey = (paged: Paged) => [
  ...LINES,
  ...(paged === "roll" ? [] : [PAGE_LINE]),
  ...(paged === "joined" ? [JOIN_LINE] : []),
];
export const OVERLAY_LINES = [
  { role: "changed", words: "your stitch line" },
  { role: "layOn", words: "your size, printed" },
  { role: "printed", words: "sizes beside it" },
  { role: "frame", words: "cut the strip here" },
] as const;
/** Of strips that are laid on a piece as it was before. */
export const OLD_OVERLAY_LINES = OVERLAY_LINES.flatMap((line) =>
  line.role === "printed" ? [] : [line.role === "layOn" ? { ...line, words: "the old line" } : line],
);
export const BEFORE_KEY = "before alterations";
export const printedKey = (label: string): string => `size ${label}`;

/** What each mark means. */
export const markKey = (paged: Paged): readonly string[] => [
  "Arrow with two heads: straight grain. Bracket: place on the fold.",
  "Triangle: notch; those with one number meet. Two side by side: a back. Without a number, on an armhole: front single, back double; named “strap”: there the middle of the strap comes. Tick: end of a dart leg, or centre. Snip no deeper than they are.",
  "Small circle: end of a dart. Circle with a cross: bust point. Black dot: match before you pin the seam.",
  ...(paged === "joined" ? ["Diamond: where two pages meet."] : []),
];
export const OLD_OVERLAY_MARKS: readonly string[] = [
  "Crosses: points of the old piece.",
  "Arrows: towards the neck or waist, and to the centre line.",
];
export const OVERLAY_MARKS: readonly string[] = [
  "Crosses: points printed on your tissue.",
  "Arrows: towards the neck or waist, and to the centre line.",
];

/** A letter of a script that the typeface of the files is not made for. */
const OTHER_SCRIPT = /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\P{L}]/u;

/** Said where some of these names have letters that the file cannot show. */
export const missingLettersWords = (names: readonly string[]): readonly string[] =>
  names.some((name) => OTHER_SCRIPT.test(name))
    ? ["An empty box in a name stands for a letter that the typeface of this file does not have."]
    : [];

/** "Opens at the centre back, 180 mm below the waist seam." Which side is common practice: the left. */
export function opensWords({ pattern, unit }: Pick<Work, "pattern" | "unit">, isSkirted: boolean): string {
  const { place, belowWaist, buttons } = pattern.closure;
  const where = place === "centreBack" ? "at the centre back" : "at the left side";
  const how = buttons === undefined ? "" : ", with buttons";
  return (pattern.length === "hip" || isSkirted) && belowWaist > 0
    ? `Opens ${where}${how}, down to ${formatLength(belowWaist, unit)} below the waist seam.`
    : `Opens ${where}${how}, down to the waist.`;
}

/** Facings follow the edge that they finish, so they are drawn from it once it is right. */
export const NO_FACINGS =
  "Facings are not drawn: trace them from the edges of these pieces. Lining and interfacing are cut by the pieces themselves; tick on each what you need.";

/** "Pieces: front, cut 1 on the fold; back, cut 2, one turned over." */
export const pieceListWords = (
  pieces: readonly (Pick<TruePiece, "name" | "half" | "part"> & { readonly cut: CutCount })[],
): string => `Pieces: ${pieces.map((piece) => `${pieceNamed(piece)}: ${cutWords(piece).toLowerCase()}`).join("; ")}.`;
