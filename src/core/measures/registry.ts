/**
 * What is known of each measure: the range it can have, what it is needed for, and the misreadings that put it out of range.
 *
 * What lies beyond `least` and `most` is far outside any adult body: a misreading, and refused. Beyond `usualLeast` and
 * `usualMost` it only asks for a second look. The ranges are our own choice, set around two surveys (2208 women of 1988,
 * 600 women of a national sample) with room for bodies that such surveys miss.
 */
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";
import type { MeasureName, MeasureRange } from "./measure";

const range = (least: Mm, usualLeast: Mm, usualMost: Mm, most: Mm): MeasureRange => ({
  least,
  usualLeast,
  usualMost,
  most,
});

/** mm, in the order in which the tape takes them. */
export const MEASURE_RANGES: Readonly<Record<MeasureName, MeasureRange>> = {
  bustGirth: range(550, 700, 1500, 2000),
  upperChestGirth: range(520, 680, 1450, 1900),
  underBustGirth: range(480, 580, 1350, 1800),
  waistGirth: range(450, 540, 1500, 2000),
  hipGirth: range(600, 760, 1650, 2200),
  height: range(1000, 1350, 2000, 2300),
  bustPointWidth: range(100, 120, 280, 400),
  sideNeckToBustPoint: range(150, 195, 400, 550),
  backWaistLength: range(240, 280, 500, 600),
  frontWaistLength: range(260, 290, 580, 720),
  neckBaseGirth: range(240, 285, 480, 650),
  shoulderLength: range(70, 90, 185, 240),
  acrossBack: range(190, 265, 490, 620),
  acrossFront: range(180, 245, 490, 620),
};

/** Without it: no plan; no plan that reaches the hip; no telling the cup; or the pattern's own proportions are taken. */
export type MeasureNeed = "always" | "toHip" | "forCup" | "welcome";

export const MEASURE_NEEDS: Readonly<Record<MeasureName, MeasureNeed>> = {
  bustGirth: "always",
  upperChestGirth: "forCup",
  underBustGirth: "welcome",
  waistGirth: "always",
  hipGirth: "toHip",
  height: "welcome",
  bustPointWidth: "welcome",
  sideNeckToBustPoint: "welcome",
  backWaistLength: "welcome",
  frontWaistLength: "welcome",
  neckBaseGirth: "welcome",
  shoulderLength: "welcome",
  acrossBack: "welcome",
  acrossFront: "welcome",
};

/** How a value can have come about that should have been another: read in the other unit, or half of it taken. */
export interface MeasureMisreading {
  readonly kind: "inchesAsCentimetres" | "centimetresAsInches" | "half";
  /** What the value would be without the misreading; mm, within the usual range. */
  readonly meant: Mm;
}

export type MeasureVerdict =
  | { readonly state: "ok" }
  | {
      readonly state: "unusual" | "impossible";
      /** Bounds of the range it lies outside of. */
      readonly least: Mm;
      readonly most: Mm;
      /** Misreadings that would explain it, most likely first. */
      readonly misreadings: readonly MeasureMisreading[];
    };

const MISREADINGS: readonly { readonly kind: MeasureMisreading["kind"]; readonly times: number }[] = [
  { kind: "inchesAsCentimetres", times: MM_PER_INCH / MM_PER_CM },
  { kind: "centimetresAsInches", times: MM_PER_CM / MM_PER_INCH },
  { kind: "half", times: 2 },
];

/** Whether a measure can be what it says: `impossible` is refused, `unusual` only remarked on. */
export function checkMeasure(name: MeasureName, value: Mm): MeasureVerdict {
  const { least, usualLeast, usualMost, most } = MEASURE_RANGES[name];
  if (value >= usualLeast && value <= usualMost) return { state: "ok" };
  const misreadings = MISREADINGS.map(({ kind, times }) => ({
    kind,
    meant: Math.round(value * times * 10) / 10,
  })).filter(({ meant }) => meant >= usualLeast && meant <= usualMost);
  // NaN and the infinities are outside of everything.
  return value >= least && value <= most
    ? { state: "unusual", least: usualLeast, most: usualMost, misreadings }
    : { state: "impossible", least, most, misreadings };
}
