/** What is written on the drawing of a lay. */
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

/** What the two numbers under a name are. */
export const layLegend = (onFold: boolean, unit: LengthUnit): string =>
  `Under each name: ${unit} from the ${onFold ? "fold" : "left selvage"} · ${unit} from the cut end, to its nearest corner.`;
