/** The step Dress in words: its folds, her measures for it, and how numbers and lengths of cloth are told. */
import type { DressMeasure } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { DressPlan } from "../core/dress/dressPlan";
import type { Notion } from "../core/sewing/sewingStep";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { notionWords } from "./notions";
import { formatLength } from "./terms/length";
import { fixedDecimals } from "./terms/language";

export const DRESS_INTRO = "From the finished bodice to the whole dress.";

export type DressFold =
  | "skirt"
  | "measures"
  | "lining"
  | "neckline"
  | "closure"
  | "under"
  | "cloth"
  | "cutList"
  | "notions"
  | "sewing"
  | "checks";

export const FOLD_TITLES: Readonly<Record<DressFold, string>> = {
  skirt: "Skirt",
  measures: "Your measures for it",
  lining: "Lining",
  neckline: "Neckline, straps and edges",
  closure: "Getting in",
  under: "Under it",
  cloth: "Cloth to buy",
  cutList: "Cut list",
  notions: "Notions",
  sewing: "Order of sewing",
  checks: "Checks of the dress",
};

export interface DressMeasureWords {
  readonly name: string;
  readonly how: string;
}

/** Common practice, no source. */
export const DRESS_MEASURE_WORDS: Readonly<Record<DressMeasure, DressMeasureWords>> = {
  waistToHip: {
    name: "Waist to hip",
    how: "Down the side from the thread at the waist to the fullest part of the seat.",
  },
  waistToFloorFront: {
    name: "Waist to floor, front",
    how: "From the thread straight down to the floor, in the shoes you will wear.",
  },
  waistToFloorSide: { name: "Waist to floor, side", how: "Over the hip, then straight down." },
  waistToFloorBack: { name: "Waist to floor, back", how: "Over the seat, then straight down. Somebody else reads it." },
  shoulderGirth: {
    name: "Shoulder girth",
    how: "Round shoulders and upper arms with one arm raised, as you would go into a dress.",
  },
};

export const FLOOR_WHY = "Waist to floor, all three of them, makes the hem level over hip and seat.";

export const measuresOutcome = (entered: number, all: number): string =>
  entered === 0 ? "none yet; usual figures stand in" : `${entered} of ${all}`;

/** A number as it stands in a field: to hundredths. */
export const numberEntry = (value: number): string => String(Math.round(value * 100) / 100);

/** A length that counts where none is entered, as it stands in an empty field: rounded as lengths are told. */
export const usualLength = (mm: Mm, unit: LengthUnit): string =>
  formatLength(mm, unit)
    .replace(/ (?:cm|in)$/, "")
    .replace(/\.0$/, "");

/** What a text says as a plain number; null: none. */
export const readNumber = (text: string): number | null =>
  /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(text) ? Number(text.replace(",", ".")) : null;

export const notANumber = (text: string, isWhole: boolean): string =>
  `“${text.slice(0, 24)}” does not read as a number. Write it like ${isWhole ? "3" : "1.5"}.`;

export const outsideWords = (least: number, most: number): string =>
  `Between ${numberEntry(least)} and ${numberEntry(most)}.`;

const MM_PER_METRE = 100 * MM_PER_CM;
const MM_PER_YARD = 36 * MM_PER_INCH;

/** Cloth as it is asked for in a shop: "2.45 m", "2 5/8 yd". */
export function clothLength(mm: Mm, unit: LengthUnit): string {
  if (unit === "cm") return `${fixedDecimals(mm / MM_PER_METRE, 2)} m`;
  const eighths = Math.round((mm / MM_PER_YARD) * 8);
  const [whole, part] = [Math.floor(eighths / 8), eighths % 8];
  const fraction = part === 0 ? "" : part % 4 === 0 ? "1/2" : part % 2 === 0 ? `${part / 2}/4` : `${part}/8`;
  return `${[whole === 0 && fraction !== "" ? "" : String(whole), fraction].filter((text) => text !== "").join(" ")} yd`;
}

export interface FinishedFigure {
  readonly name: string;
  readonly figure: string;
}

/** What the dress measures once it is sewn. */
export function finishedFigures({ waist, skirt }: DressPlan, unit: LengthUnit): readonly FinishedFigure[] {
  const length = (mm: Mm): string => formatLength(mm, unit);
  const figures = [{ name: "Waist", figure: length(waist.whole) }];
  if (skirt?.ok !== true) return figures;
  const { front, side, back } = skirt.value.lengths;
  const isLevel = length(front) === length(side) && length(side) === length(back);
  return [
    ...figures,
    { name: "Hem all round", figure: length(skirt.value.hem) },
    ...(isLevel
      ? [{ name: "Waist to hem", figure: length(side) }]
      : [
          { name: "Length, front", figure: length(front) },
          { name: "Length, side", figure: length(side) },
          { name: "Length, back", figure: length(back) },
        ]),
  ];
}

/** "Zip, thread and hook and eye". */
export const notionsOutcome = (notions: readonly Notion[], unit: LengthUnit): string =>
  notions.length === 0
    ? "none"
    : notions
        .map((notion) => notionWords(notion, unit).what)
        .join(", ")
        .toLowerCase();

export const sewingOutcome = (count: number): string => `${count} steps`;
export const PRINT_DRESS = "Print the sheets of the dress";

export const drawnLabel = (side: "front" | "back"): string =>
  side === "front" ? "The finished dress from the front" : "The finished dress from behind";
