/** How a round skirt is drawn on the cloth with a string. */
import type { LengthUnit } from "../core/decisions/work";
import type { SectorPart } from "../core/parts/part";
import type { Mm } from "../core/units";
import { formatAmount, formatLength } from "./terms/length";

export const STRAIGHT_GRAIN = "straight grain";
export const sideWords = (onFold: boolean): string => (onFold ? "fold" : "selvage");

/** "hem 71.5 cm": the string from the pin. */
export const radiusWords = (line: "waist" | "hem", radius: Mm, unit: LengthUnit): string =>
  `${line} ${formatLength(radius, unit)}`;

interface Sketched {
  readonly part: SectorPart;
  readonly radii: { readonly waist: Mm; readonly hem: Mm; readonly waistCut: Mm; readonly hemCut: Mm };
  readonly pin: { readonly along: Mm; readonly across: Mm };
}

/** Steps in order, each a sentence. */
export function circleSteps({ part, radii, pin }: Sketched, unit: LengthUnit): readonly string[] {
  const { allowances, foldSides } = part;
  const long = (mm: Mm): string => formatLength(mm, unit);
  return [
    foldSides === 1
      ? "Fold the cloth once along its length, right sides together."
      : "Lay the cloth out single, a selvage at your left.",
    `Push a pin in ${foldSides === 1 ? "on the fold" : pin.across > 0 ? `${long(pin.across)} from the selvage` : "at the selvage"}, ${pin.along > 0 ? `${long(pin.along)} from the cut end` : "at the cut end"}.`,
    `Tie a string to the pin and a chalk to the string. Draw the waist at ${long(radii.waist)} and the hem at ${long(radii.hem)} from the pin.`,
    `Cut at ${long(radii.waistCut)} and at ${long(radii.hemCut)} from the pin${allowances.sides > 0 ? `, and ${formatAmount(allowances.sides, unit)} outside each straight side that is sewn` : ""}.`,
  ];
}
