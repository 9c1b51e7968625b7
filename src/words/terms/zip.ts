/** The zip to buy, as it stands on the packet. */
import type { LengthUnit } from "../../core/decisions/work";
import type { ClosureReading, ZipLength } from "../../core/opening/gettingIn";
import { formatLength } from "./length";

/** The next longer sold, first in her unit, then in the other, where some run longer; null: none is long enough. */
export const zipToBuy = (zip: ClosureReading["zip"], unit: LengthUnit): ZipLength | null =>
  zip[unit] ?? zip[unit === "cm" ? "in" : "cm"];

/** "40 cm", "24 in": zips are sold by whole lengths. */
export const zipWords = ({ length, unit }: ZipLength): string => formatLength(length, unit).replace(/\.0 /u, " ");
