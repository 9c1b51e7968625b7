/** Cloth as it is usually sold. mm. */
import type { ClothName, Dress } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import type { Mm } from "../units";

/** Widths sold (common practice, no source). */
export const SOLD_WIDTHS: Readonly<Record<LengthUnit, readonly Mm[]>> = {
  cm: [900, 1100, 1140, 1400, 1500],
  in: [1143, 1371.6, 1524],
};

const USUAL_WIDTH: Readonly<Record<LengthUnit, Mm>> = { cm: 1400, in: 1371.6 };

/** Her own, else the usual. */
export const clothWidthOf = (dress: Dress, cloth: ClothName, unit: LengthUnit): Mm =>
  dress.cloths?.[cloth]?.width ?? USUAL_WIDTH[unit];
