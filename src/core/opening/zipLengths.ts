/** Zips as they are sold, and the one to buy. */
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";
import type { ZipLength } from "./gettingIn";

/** Lengths sold, in centimetres and in inches (common practice, no source). */
const SOLD: Readonly<Record<ZipLength["unit"], readonly number[]>> = {
  cm: [18, 20, 23, 25, 30, 35, 40, 46, 51, 56, 60],
  in: [7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24],
};

const MM_PER: Readonly<Record<ZipLength["unit"], Mm>> = { cm: MM_PER_CM, in: MM_PER_INCH };

/** How far an invisible zip goes on below the opening that it closes: its last part cannot be sewn, mm (common practice, no source: 25 to 30). */
const INVISIBLE_BELOW: Mm = 25;

/** How long a zip has to be for an opening. */
export const zipNeeded = (opening: Mm, zip: "invisible" | "lapped"): Mm =>
  opening + (zip === "invisible" ? INVISIBLE_BELOW : 0);

/** How long an opening a zip closes at the most. */
export const openingClosedBy = ({ length }: ZipLength, zip: "invisible" | "lapped"): Mm => length - zipNeeded(0, zip);

/** The longest one that is sold. */
export function longestZip(unit: ZipLength["unit"]): ZipLength {
  return { length: Math.max(...SOLD[unit]) * MM_PER[unit], unit };
}

/** The next longer one that is sold, never the nearest; null: none is as long. */
export function nextLongerZip(needed: Mm, unit: ZipLength["unit"]): ZipLength | null {
  const length = SOLD[unit].map((label) => label * MM_PER[unit]).find((sold) => sold >= needed);
  return length === undefined ? null : { length, unit };
}
