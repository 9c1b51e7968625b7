/** Checks of the dress in words: what each claims, and what is the matter where one does not hold. */
import type { LengthUnit } from "../core/decisions/work";
import type { DressCheck } from "../core/dress/dressPlan";
import { formatLength } from "./terms/length";

const CLAIMS: Readonly<Record<DressCheck["name"], string>> = {
  waistWalks: "The skirt’s waist is as long as the bodice’s",
  liningWaistWalks: "The lining’s waist fits the waist seam",
  skirtSidesWalk: "Seams of the skirt are as long as each other",
  liningSidesWalk: "Seams of the lining are as long as each other",
  tiersGather: "Every tier gathers to what it hangs on",
  facingsWalk: "Facings are as long as their edges",
  hemLevel: "The hem is level",
  liningOverHip: "The lining has room over the hips",
  opensEnough: "The opening lets you in",
};

export const dressClaim = (name: DressCheck["name"]): string => CLAIMS[name];

/** At least so much, rather than just so much. */
const AT_LEAST: ReadonlySet<DressCheck["name"]> = new Set(["liningOverHip", "opensEnough"]);

export function dressCheckFigures({ name, measured, expected }: DressCheck, unit: LengthUnit): string {
  const least = AT_LEAST.has(name) ? "at least " : "";
  return `is ${formatLength(measured, unit)}, should be ${least}${formatLength(expected, unit)}`;
}

export const checksCount = (failing: number): string => (failing === 0 ? "all hold" : `${failing} to look at`);
