/** Cloth to buy, in words. */
import type { ClothName } from "../core/decisions/dress";
import type { Mm } from "../core/units";
import { clothName } from "./dressParts";
import { listWords } from "./terms/names";

/** Narrower is a ribbon, wider is not woven (common practice, no source). */
export const LEAST_CLOTH: Mm = 200;
export const MOST_CLOTH: Mm = 4000;
/** Per cent: what loses more is another cloth afterwards (common practice, no source). */
export const MOST_SHRINKAGE = 25;

export const clothsOutcome = (cloths: readonly ClothName[]): string => listWords(cloths.map(clothName));
