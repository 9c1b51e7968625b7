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

/** What is left of a length once it has been washed. */
export const shrunk = (length: Mm, { shrinkage = 0 }: Cloth): Mm => length * (1 - shrinkage / PER_CENT);

/** So much has to be bought that `length` is left once it has been washed, rounded up to what shops cut. */
export function lengthToBuy(length: Mm, { shrinkage = 0 }: Cloth, unit: LengthUnit): Mm {
  const step = CUT_BY[unit];
  return step * Math.ceil((length / (1 - shrinkage / PER_CENT) - SAME_POINT) / step);
}

const PER_CENT = 100;
