/** Cloth as it is usually sold, and what is usual of it. mm. */
import type { Cloth, ClothName, Dress } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";

/** Widths sold (common practice, no source). */
export const SOLD_WIDTHS: Readonly<Record<LengthUnit, readonly Mm[]>> = {
  cm: [900, 1100, 1140, 1400, 1500],
  in: [1143, 1371.6, 1524],
};

const USUAL_WIDTH: Readonly<Record<LengthUnit, Mm>> = { cm: 1400, in: 1371.6 };

/** mm. What shops cut by: 5 cm, an eighth of a yard (common practice, no source). */
const CUT_BY: Readonly<Record<LengthUnit, Mm>> = { cm: 50, in: 114.3 };

/** mm. No part is cut out of a selvage: it is woven more tightly (common practice, no source). */
export const SELVAGE: Mm = 10;

/** Her own, else the usual. */
export const clothWidthOf = (dress: Dress, cloth: ClothName, unit: LengthUnit): Mm =>
  widthOf(dress.cloths?.[cloth] ?? {}, unit);

export const widthOf = (cloth: Cloth, unit: LengthUnit): Mm => cloth.width ?? USUAL_WIDTH[unit];

/** What parts can lie on: without selvages; of cloth on the fold one of the two layers. */
export const usableWidth = (width: Mm, onFold: boolean): Mm => (onFold ? width / 2 - SELVAGE : width - 2 * SELVAGE);

/** Per cent: what loses more is another cloth afterwards (common practice, no source). None grows. */
export const MOST_SHRINKAGE = 25;

/** What is left of each millimetre once it has been washed; what a file says beyond that is read as the nearest that can be. */
const leftOf = ({ shrinkage = 0 }: Cloth): number => 1 - Math.min(Math.max(shrinkage, 0), MOST_SHRINKAGE) / PER_CENT;

/** What is left of a length once it has been washed. */
export const shrunk = (length: Mm, cloth: Cloth): Mm => length * leftOf(cloth);

/** The length that is left so long once it has been washed. */
export const beforeWashing = (length: Mm, cloth: Cloth): Mm => length / leftOf(cloth);

/** So much has to be bought that `length` is left once it has been washed, rounded up to what shops cut. */
export function lengthToBuy(length: Mm, cloth: Cloth, unit: LengthUnit): Mm {
  const step = CUT_BY[unit];
  return step * Math.ceil((beforeWashing(length, cloth) - SAME_POINT) / step);
}

const PER_CENT = 100;
