/** The printed sheets of the dress: their headings, and what is said beside their tables. */
import { shrunk } from "../core/cloth/usualCloth";
import type { Cloth, ClothName } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { ClothLay } from "../core/cloth/cutting";
import type { RectanglePart } from "../core/parts/part";
import type { Mm } from "../core/units";
import type { DressPlan } from "../core/dress/dressPlan";
import { dressCheckFigures, dressClaim } from "./dressChecks";
import { boundsWords, NOT_LAID } from "./dressCloth";
import { openingWords, showingWords } from "./dressClosure";
import { coverNotes } from "./dressEdges";
import { oneLayerWords } from "./layDrawing";
import { isLiningDoubt, liningFailureWords, liningNoteWords } from "./dressLining";
import { clothName } from "./dressParts";
import { skirtFailureWords, skirtNoteWords } from "./dressSkirt";
import { clothLength } from "./dressStep";
import { formatAmount, formatLength } from "./terms/length";
import { capital } from "./terms/names";

export const DRESS_SHEET = {
  kind: "Dress",
  print: "Print the sheets of the dress",
  doubts: "Before you cut",
  front: "From the front",
  back: "From behind",
  cutList: "Cut list",
  rectangles: "To be torn or cut along a thread",
  rectanglesHint:
    "In this order, the longest first: snip the selvage and tear right across, or cut along a drawn thread. Measures are as cut, allowances included.",
  interfacingHint: "Interfacing is not torn: rule it and cut.",
  sectors: "To be drawn with string and pin",
  buy: "To buy",
  lays: "How it is laid",
  sewing: "Order of sewing",
  printed: "true-scale paper",
  measured: "measured, below",
  strung: "string and pin, below",
} as const;

/** Heads of the columns. */
export const DRESS_COLUMNS = {
  part: "Part",
  cut: "Cut",
  by: "By",
  grain: "Grain",
  across: "Across",
  down: "Down",
  allowances: "Allowances in that",
  step: "Step",
  seam: "Seam",
  allowance: "Allowance",
} as const;

const GRAINS: Readonly<Record<RectanglePart["grain"], string>> = {
  along: "along the cloth",
  across: "across the cloth",
  bias: "on the bias",
};
export const grainWords = (grain: RectanglePart["grain"]): string => GRAINS[grain];

/** "15 mm above, 30 mm below, 15 mm each side". */
export function allowancesOfRectangle({ allowances: { top, bottom, sides } }: RectanglePart, unit: LengthUnit): string {
  const amount = (mm: number): string => formatAmount(mm, unit);
  if (top === bottom && bottom === sides) return `${amount(top)} all round`;
  return [
    top === bottom ? `${amount(top)} above and below` : `${amount(top)} above, ${amount(bottom)} below`,
    ...(sides === 0 ? [] : [`${amount(sides)} each side`]),
  ].join(", ");
}

/** "Main cloth, 140.0 cm wide: 3.45 m". */
export const layTitle = ({ cloth, width, toBuy }: ClothLay, unit: LengthUnit): string =>
  `${capital(clothName(cloth))}, ${formatLength(width, unit)} wide: ${clothLength(toBuy, unit)}`;

export function layHint(lay: ClothLay, cloth: Cloth, unit: LengthUnit): string {
  const { onFold, oneWay, length } = lay;
  const oneLayer = oneLayerWords(lay);
  const { length: has, shrinkage = 0 } = cloth;
  const had =
    has === undefined
      ? []
      : [
          `You have ${clothLength(has, unit)}: ${shrunk(has, cloth) >= length ? "it goes" : "too little for this lay"}.`,
        ];
  return [
    onFold ? "Folded along its length, selvages together." : "Laid single.",
    oneWay ? "All parts one way." : "Parts may lie either way up.",
    boundsWords(lay, unit),
    ...(oneLayer === null ? [] : [oneLayer]),
    ...(shrinkage > 0 ? ["Wash it first: what is bought allows for what it shrinks."] : []),
    ...had,
  ].join(" ");
}

export const unlaidWords = (cloth: ClothName): string =>
  `${capital(clothName(cloth))}: still being laid out. Print again when its lay stands here.`;

export const brokenWords = (cloth: ClothName): string => `${capital(clothName(cloth))}: not laid out. ${NOT_LAID}`;

/** In the list to buy, of a cloth that is not laid. */
export const NOT_YET_KNOWN = "not known yet: see “How it is laid”";

/** To its nearest corner: "12.0 cm from the fold, 40.0 cm along". */
export const laidWords = (across: Mm, along: Mm, onFold: boolean, unit: LengthUnit): string =>
  `${formatLength(across, unit)} from the ${onFold ? "fold" : "selvage"}, ${formatLength(along, unit)} along`;

/** What stands in the way, or does not hold: to be put right before anything is cut. */
export function dressDoubts({ skirt, lining, closure, checks }: DressPlan, unit: LengthUnit): readonly string[] {
  return [
    ...(skirt?.ok === false ? [skirtFailureWords(skirt.failure, unit).text] : []),
    ...(lining?.ok === false ? [liningFailureWords(lining.failure, unit)] : []),
    ...(closure !== null && !closure.passes ? [openingWords(closure, unit)] : []),
    ...checks
      .filter((check) => !check.ok && check.name !== "opensEnough")
      .map((check) => `${dressClaim(check.name)}: ${dressCheckFigures(check, unit)}.`),
    ...(lining?.ok === true ? lining.value.notes.filter(isLiningDoubt).map((note) => liningNoteWords(note, unit)) : []),
  ];
}

/** What to know of it beside. */
export function dressNotes({ skirt, closure, under, edges }: DressPlan, unit: LengthUnit): readonly string[] {
  const all = [
    ...(skirt?.ok === true ? skirt.value.notes.map((note) => skirtNoteWords(note, skirt.value, unit)) : []),
    closure !== null && closure.passes ? openingWords(closure, unit) : null,
    showingWords(under),
    ...(edges.strap === null ? [] : coverNotes(edges.strap, unit)),
  ];
  return all.filter((text) => text !== null);
}
