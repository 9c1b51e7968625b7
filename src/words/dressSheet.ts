/** The printed sheets of the dress: their headings, and what is said beside their tables. */
import type { ClothName } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { ClothLay, LaidPart } from "../core/cloth/cutting";
import type { RectanglePart, SectorPart } from "../core/parts/part";
import { degreesFrom } from "../core/units";
import { clothName } from "./dressParts";
import { clothLength } from "./dressStep";
import { formatAmount, formatLength } from "./terms/length";
import { capital } from "./terms/names";

export const DRESS_SHEET = {
  kind: "Dress",
  doubts: "Before you cut",
  cutList: "Cut list",
  rectangles: "To be torn or cut along a thread",
  rectanglesHint:
    "In this order, the longest first: snip the selvage and tear right across, or cut along a drawn thread. Measures are as cut, allowances included.",
  sectors: "To be drawn with string and pin",
  cloth: "Cloth to buy",
  notions: "Notions",
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
  allowances: "Of that allowances",
  step: "Step",
  seam: "Seam",
  allowance: "Allowance",
  from: "From the selvage",
  along: "Along",
  box: "Its room",
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

/** How a share of a ring is drawn: stitch lines first, then what is cut. */
export function stringSteps(part: SectorPart, unit: LengthUnit): readonly string[] {
  const length = (mm: number): string => formatLength(mm, unit);
  const { inner, outer, angle, allowances, cut, foldSides } = part;
  const turn = Math.round(degreesFrom(angle));
  return [
    `Pin the string at the ${cut.onFold || foldSides > 0 ? "corner of the fold" : "corner"}, and draw the waist ${length(inner)} from the pin, as sewn. Cut it at ${length(inner - allowances.inner)}.`,
    `With the same pin draw the hem ${length(outer)} from it. Cut it at ${length(outer + allowances.outer)}.`,
    `Between its straight sides it turns by ${turn}°${allowances.sides === 0 ? "" : `; add ${formatAmount(allowances.sides, unit)} at each side that is sewn`}.`,
  ];
}

/** "Main cloth, 140.0 cm wide: 3.45 m". */
export const layTitle = ({ cloth, width, toBuy }: ClothLay, unit: LengthUnit): string =>
  `${capital(clothName(cloth))}, ${formatLength(width, unit)} wide: ${clothLength(toBuy, unit)}`;

export function layHint({ onFold, oneWay, length, leastByArea, leastByLongest }: ClothLay, unit: LengthUnit): string {
  return [
    onFold ? "Folded along its length, selvages together." : "Laid single.",
    oneWay ? "All parts one way." : "Parts may lie either way up.",
    `They take ${formatLength(length, unit)}; no lay can take less than ${formatLength(Math.max(leastByArea, leastByLongest), unit)}.`,
  ].join(" ");
}

export const noLayWords = (cloth: ClothName): string =>
  `${capital(clothName(cloth))}: no lay yet. Open “Cloth to buy” on the step Dress.`;

export const copyWords = ({ copy }: LaidPart, name: string): string => (copy === 1 ? name : `${name}, copy ${copy}`);
