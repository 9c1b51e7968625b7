/** What is said where true-scale paper is chosen: what there is, what stands in the way, how to print it. */
import { notLoadedRemedy } from "./offline";
import type { SheetFormat } from "../core/decisions/paperChoice";
import type { Half } from "../core/decisions/alteration";
import { TOILE_ALLOWANCE, USUAL_ALLOWANCES } from "../core/cutting/usualAllowances";
import { PIECE_ORDER } from "../core/pattern/pieceSet";
import { LIMITS } from "../core/decisions/limits";
import type { LengthUnit } from "../core/decisions/work";
import type { PrintedGroup } from "../core/cutting/trueParts";
import type { NestSource, PieceName, SeamName } from "../core/pattern/piece";
import { FORMATS } from "../core/sheets/formats";
import type { LayoutFailure } from "../core/sheets/layout";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { allowanceAmount } from "./allowances";
import { formatAmount, formatLength } from "./terms/length";
import { capital, pieceWords, seamWords } from "./terms/names";
import { TEST_SQUARES_MUST } from "./testSquares";
import { TOILE_SEAMS } from "./truePaper";
import { listWords, plural, percentWords } from "./terms/language";

export type PaperSheet = "checklist" | "pieces" | "overlay" | "dress" | "since" | "trial" | "measures";

export const SHEET_NAMES: Readonly<Record<PaperSheet, string>> = {
  checklist: "Checklist",
  pieces: "True-scale pieces",
  overlay: "Tissue overlay",
  dress: "Dress",
  since: "Alter your toile’s paper",
  trial: "Trial record",
  measures: "Measure sheet",
};

const SHEET_ABOUT: Readonly<Record<PaperSheet, string>> = {
  checklist: "The order of work, piece by piece, with boxes to tick. Lay it beside the pattern and cut with it.",
  pieces:
    "The pieces on the table in their true size, altered already: join the pages, cut out, and lay them on the cloth.",
  overlay:
    "Only the stretches that change, in their true size, with the printed points they are laid on: slide them under the tissue and trace.",
  dress:
    "The dress as a whole: what to cut and how, how the cloth is laid, what else to buy, and the order of sewing with boxes to tick.",
  since: "Only what changed since a toile was sewn: steps, and strips, on the paper that you have.",
  trial:
    "A sheet for the first fitting: what was sewn, what is seen on the body, what to change. Fill it in with the trial on.",
  measures: "Every measure drawn, with boxes to write in. Take it to the mirror, or to whoever holds the tape for you.",
};

const DRAFTED: Readonly<Record<Exclude<NestSource, "own">, string>> = {
  standIn: "the planner’s own draft from the chart",
  fitted: "the planner’s own draft, brought to what you measured on your tissue",
};

/** What a sheet is for, and what its pieces are. */
export function sheetAbout(sheet: PaperSheet, source: NestSource): string {
  const about = SHEET_ABOUT[sheet];
  if (sheet !== "pieces" && sheet !== "overlay") return about;
  if (source === "own") return `${about} ${sheet === "pieces" ? "They are" : "They follow"} your own pieces.`;
  return sheet === "pieces"
    ? `${about} They are ${DRAFTED[source]}, not a copy of what lies in the envelope.`
    : `${about} They follow ${DRAFTED[source]}: where your tissue has other lines, take the amounts from the checklist instead.`;
}

const unitless = (text: string): string => text.replace(/ (?:cm|mm|in)$/, "");

/** A length without its unit: whole centimetres without a nought behind. */
const bare = (mm: Mm, unit: LengthUnit): string => unitless(formatLength(mm, unit)).replace(/\.0$/, "");

/** "A4 (21 × 29.7 cm)", "36 in roll (91.4 cm wide)". */
export function formatWords(format: SheetFormat, unit: LengthUnit): string {
  const { width, height } = FORMATS[format];
  return height === null
    ? `${format} (${bare(width, unit)} ${unit} wide)`
    : `${format} (${bare(width, unit)} × ${bare(height, unit)} ${unit})`;
}

const isRoll = (format: SheetFormat): boolean => FORMATS[format].height === null;

/** The white edge that counts where none is set: home printers keep 3 to 6 mm, some more at the foot (common practice, no source). */
export const USUAL_MARGIN: Mm = 10;

/** As it stands in an empty field: near enough to be known again, since what counts is kept in millimetres. */
export const usualEntry = (mm: Mm, unit: LengthUnit): string => bare(mm, unit);

export function marginRefusal(value: Mm, unit: LengthUnit): string | null {
  const { least, most } = LIMITS.printerMargin;
  if (value >= least && value <= most) return null;
  return `A white edge can be from ${formatAmount(least, unit)} to ${formatAmount(most, unit)}.`;
}

export const allowanceRefusal = (value: Mm, unit: LengthUnit): string | null =>
  value <= LIMITS.allowance ? null : `An allowance can be ${formatLength(LIMITS.allowance, unit)} at the most.`;

/** One for the seam on all its pieces, so that what is sewn together matches. */
export const allowanceLabel = (seam: SeamName): string =>
  seam === "centre" ? "Centre seam" : capital(seamWords(seam, "front"));

export function usualAllowancesSentence(unit: LengthUnit): string {
  const told = (mm: Mm): string =>
    unit === "cm" ? formatLength(mm, unit) : `${mm} mm, about ${formatLength(mm, unit)},`;
  return `A field left empty has the usual: ${told(USUAL_ALLOWANCES.side)} at seams and ${told(USUAL_ALLOWANCES.hem)} at hems; along a strap never more than half its width. On the fold there is none.`;
}

/** What stands on the folded part: how many seams have her own. */
export const allowancesSummary = (own: number, waiting: number): string =>
  `Seam and hem allowances${waiting > 0 ? ": an entry is still to be put right" : own === 0 ? ": the usual" : plural(own, { one: ": one of your own", other: `: ${own} of your own` })}`;

/** What keeps paper from being made. The same shapes as the paper's own failures, which words do not know. */
export type PaperFailureLike =
  | LayoutFailure
  | { readonly code: "paper/outline-refused"; readonly piece: PieceName; readonly half: Half | null }
  | { readonly code: "paper/overlay-too-much"; readonly pieces: readonly PieceName[] }
  | { readonly code: "paper/nothing-changed" }
  | { readonly code: "paper/roll-too-long"; readonly length: Mm; readonly most: Mm }
  | { readonly code: "paper/overlay-no-dxf" };

export interface PaperFailureWords {
  readonly title: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** Keys of pieces to lay begin with the name of the piece. */
function keyWords(key: string): string {
  const named = PIECE_ORDER.filter((name) => new RegExp(`(?:^|-)${name}(?:-|$)`, "u").test(key));
  return named[0] === undefined ? "A piece" : `The ${pieceWords(named[0])}`;
}

export function paperFailureWords(failure: PaperFailureLike, unit: LengthUnit): PaperFailureWords {
  switch (failure.code) {
    case "sheet/nothing-to-lay":
      return { title: "No piece is chosen.", remedy: "Tick at least one of the pieces above." };
    case "sheet/piece-too-wide":
      return {
        title: `${keyWords(failure.key)} is too wide for this roll.`,
        remedy: `It needs ${formatLength(failure.least, unit)} and the roll has ${formatLength(failure.width, unit)} inside its white edges. Choose a wider roll or sheets to join, or leave that piece out.`,
      };
    case "sheet/page-too-small":
      return {
        title: "Too little of the page is left inside its white edge.",
        remedy: `It is ${unitless(formatLength(failure.width, unit))} × ${formatLength(failure.height, unit)}, and at least ${formatLength(failure.least, unit)} either way are needed to join pages by. Set a smaller white edge, or choose larger paper.`,
      };
    case "sheet/too-many-pages":
      return {
        title: `That would be ${failure.pages} pages; one file holds ${failure.most} at the most.`,
        remedy: "Choose larger paper or a roll, or make some of the pieces at a time.",
      };
    case "paper/outline-refused":
      return {
        title: `The ${pieceWords(failure.piece)}${failure.half === null ? "" : ` of the ${failure.half} half`} cannot be cut as it is drawn: its outline crosses itself.`,
        remedy: "Lessen or take out the alteration that spoils it, in the ledger, or leave that piece out.",
      };
    case "paper/overlay-too-much":
      return {
        title: `So much has moved on the ${listWords(failure.pieces.map(pieceWords))} that an overlay would be as large as the ${plural(failure.pieces.length, { one: "piece", other: "pieces" })}.`,
        remedy: "Take true-scale pieces instead, or leave that out here.",
      };
    case "paper/roll-too-long":
      return {
        title: `The roll would be ${formatLength(failure.length, unit)} long; a PDF holds ${formatLength(failure.most, unit)} at the most.`,
        remedy: "Choose a wider roll or sheets to join, or make some of the pieces at a time.",
      };
    case "paper/overlay-no-dxf":
      return {
        title: "Strips for tissue cannot be written as DXF.",
        remedy: "That format holds whole pieces: take true-scale pieces for it.",
      };
    case "paper/nothing-changed":
      return {
        title: "Nothing here differs from the printed line.",
        remedy:
          "There is nothing to lay over: trace the printed line as it is. An overlay shows what blending and alterations change.",
      };
  }
}

/** To clear a table or a floor by. */
const roughly = (mm: Mm, unit: LengthUnit): number => Math.round(mm / (unit === "cm" ? MM_PER_CM : MM_PER_INCH));

/** What the pages come to, before they are made: `pages` with pieces, `before` without. `width` and `height` are of the whole sheet, joined. */
export function previewSentence(
  pages: number,
  format: SheetFormat,
  width: Mm,
  height: Mm,
  unit: LengthUnit,
  kind: "pieces" | "overlay" = "pieces",
  before = 1,
): string {
  const first = plural(before, {
    one: "a first page with this map",
    other: `${before} pages before them, the last with this map`,
  });
  const joined = `${roughly(width, unit)} × ${roughly(height, unit)} ${unit}`;
  if (isRoll(format))
    return `One page for the roll. The pieces take about ${joined} of it; above them stands how to print it.`;
  const sheets = plural(pages, { one: "1 page with pieces", other: `${pages} pages with pieces` });
  if (kind === "overlay")
    return `${plural(pages, { one: "1 page with strips", other: `${pages} pages with strips` })}, and ${first}. Nothing is joined.`;
  return `${sheets}, and ${first}. ${plural(pages, { one: "The sheet is", other: "Joined they are" })} about ${joined}.`;
}

export type PaperFileName = "pdf" | "svg" | "dxf";

export const FILE_BUTTONS: Readonly<Record<PaperFileName, string>> = {
  pdf: "Make the PDF",
  svg: "Make the SVG",
  dxf: "Make the DXF",
};

export const FILE_NAMES: Readonly<Record<PaperFileName, string>> = { pdf: "PDF", svg: "SVG", dxf: "DXF" };

export function fileAbout(file: PaperFileName, format: SheetFormat, kind: "pieces" | "overlay" = "pieces"): string {
  switch (file) {
    case "pdf":
      return isRoll(format)
        ? "One long sheet for a plotter or a copy shop."
        : kind === "overlay"
          ? "Pages to print at home. Its first page says how the strips are used."
          : "Pages to print at home and to join. Its first page shows how they lie together.";
    case "svg":
      return "One drawing in millimetres, every piece or strip a group of its own: for a drawing program or a cutting machine.";
    case "dxf":
      return "Outlines, notches and grain in the apparel trade’s open exchange format (ASTM D6673): for pattern software.";
  }
}

const STAGES = { pieces: "Drawing the pieces", layout: "Laying them out", writing: "Writing the file" } as const;

export const progressWords = (stage: keyof typeof STAGES, share: number): string =>
  `${STAGES[stage]}: ${percentWords(share, Math.floor)}`;

export const madeSentence = (fileName: string, pages: number): string =>
  `${fileName} is made${plural(pages, { one: "", other: `: ${pages} pages` })}. Look for it among your downloads.`;

export const cancelledSentence = (file: PaperFileName): string =>
  `The ${FILE_NAMES[file]} was not made: you stopped it.`;

/** @param isKept whether all of the page should lie on the device */
export function brokenWords(why: "worker" | "typefaces" | "fault", isKept: boolean): PaperFailureWords {
  if (why === "worker") {
    return {
      title: "The part that makes paper could not be loaded.",
      remedy: isKept
        ? notLoadedRemedy(isKept)
        : "Your work is kept, and the rest of the page works. See whether you are connected, and try again.",
    };
  }
  if (why === "typefaces") {
    return {
      title: "The typefaces for the PDF could not be loaded.",
      remedy: isKept
        ? notLoadedRemedy(isKept)
        : "Look at your connection and try again. SVG and DXF need no typefaces.",
    };
  }
  return {
    title: "The paper could not be made: something is wrong in the planner, not in what you did.",
    remedy: "Nothing of your work is lost. Try again; if it fails again, try other paper, or fewer pieces at a time.",
  };
}

/** How to print what was made. Steps in order. */
export function howToPrint(format: SheetFormat, kind: "pieces" | "overlay" = "pieces"): readonly string[] {
  const measure = `Measure its test square with your tape before you cut anything: ${TEST_SQUARES_MUST}`;
  if (isRoll(format)) {
    return [
      "Ask for 100 % (“actual size”), never “fit to page”.",
      measure,
      "If the square is off, nothing on the sheet is true: have it printed anew.",
    ];
  }
  return [
    `Choose ${format} and 100 % (“actual size”) in the print dialogue, never “fit to page”.`,
    `Print the first page alone. ${measure}`,
    kind === "pieces"
      ? "Then print the rest, and join the pages at their marks, row by row."
      : "Then print the rest, and cut the strips apart: nothing is joined.",
  ];
}

export const OVERLAY_HAS_NO_ALLOWANCES = "Strips show stitch lines, without allowances: add yours to the tracing.";

/** What is printed of a dress, by what it belongs to. */
export const PART_GROUP_WORDS: Readonly<Record<PrintedGroup, string>> = {
  skirt: "Skirt",
  bodiceLining: "Lining of the bodice",
  skirtLining: "Lining of the skirt",
  facing: "Facings",
  strap: "Straps",
  underlining: "Underlining",
};

/** "Left out, since your dress has another in its place: front basque and back basque." */
export const replacedSentence = (pieces: readonly PieceName[]): string =>
  `Left out, since the dress has something else there: ${listWords(pieces.map(pieceWords))}.`;

export const MEASURED_PARTS =
  "Tiers, straps and circles are not printed: cut them by their measures on the sheet Dress.";

export const NEST_HAS_NO_ALLOWANCES =
  "The pattern as it is printed: stitch lines of all sizes, without allowances and without what you alter.";

/** The browser's own print command prints no true-scale pieces. */
export const BROWSER_PRINTS_CHECKLIST =
  "The print command of your browser gives the checklist. Pieces in true size come as a file, which is then printed.";

export const beforeCuttingSentence = (count: number): string =>
  `${plural(count, { one: "One check does not hold yet", other: `${count} checks do not hold yet` })}; the PDF says so too. Look at ${plural(count, { one: "it", other: "them" })} before you cut.`;

/** Said of a file that was begun before she chose anew. */
export const STALE_FILE = "It shows what was chosen before your last change.";

/** Said while the sheet is laid out. */
export const LAYING = "Laying the pieces out…";

/** "For a toile: at least 30 mm to let out at shoulder, sides, waist and centre seams". */
export const toileTick = (unit: LengthUnit): string =>
  `For a toile: at least ${allowanceAmount(TOILE_ALLOWANCE[unit], unit)} to let out at ${TOILE_SEAMS}`;

/** On the checklist: what is cut by it first is a toile. */
export const toileNote = (unit: LengthUnit): string =>
  `For a toile, allow at least ${formatAmount(TOILE_ALLOWANCE[unit], unit)} at ${TOILE_SEAMS}, so that it can be let out.`;
