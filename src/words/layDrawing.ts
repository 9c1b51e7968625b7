/** What is written on the drawing of a lay. */
import type { ClothLay, LaidPart } from "../core/cloth/cutting";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";

/** Of the cloth's edges, the left one first. */
export const clothEdgeWords = (onFold: boolean): readonly [string, string] =>
  onFold ? ["fold", "selvages"] : ["selvage", "selvage"];

export const START_OF_CLOTH = "cut end";
export const GOES_ON = "goes on at the right";

/** Along a ruler, where the unit is known: "40", "12 1/2". */
export const rulerWords = (mm: Mm, unit: LengthUnit): string =>
  formatLength(mm, unit)
    .replace(/ (?:cm|in)$/u, "")
    .replace(/\.0$/u, "");

/** "skirt front", "skirt front (2)". */
export const copyWords = (name: string, copy: number): string => (copy <= 1 ? name : `${name} (${copy})`);

/** "one layer, turned over"; empty: as it is printed, through all layers. */
export const howLaidWords = (onFold: boolean, { layers, isPaperDown }: LaidPart): string =>
  [...(onFold && layers === 1 ? ["one layer"] : []), ...(isPaperDown ? ["turned over"] : [])].join(", ");

/** What "one layer" is; null: all is cut through all layers. */
export const oneLayerWords = ({ onFold, parts }: ClothLay): string | null =>
  onFold && parts.some(({ layers }) => layers === 1)
    ? "“One layer” is cut from the upper layer alone, the right side of the cloth up."
    : null;

/** In a list: "Skirt back (2), one layer". */
export const laidNameWords = (name: string, copy: number, how: string): string =>
  [copyWords(name, copy), ...(how === "" ? [] : [how])].join(", ");

/** Under a name on the drawing: "12 · 40", "12 · 40 · one layer". */
export const laidAtWords = (across: Mm, along: Mm, how: string, unit: LengthUnit): string =>
  [rulerWords(across, unit), rulerWords(along, unit), ...(how === "" ? [] : [how])].join(" · ");

/** What the two numbers under a name are. */
export const layLegend = (onFold: boolean, unit: LengthUnit): string =>
  `Under each name: ${unit} from the ${onFold ? "fold" : "left selvage"} · ${unit} from the cut end, to its nearest corner.`;
