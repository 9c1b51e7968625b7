/**
 * What the trade would put for a measure that nobody took: a proportion to the bust girth (common practice, no source; the
 * widths and lengths are those that our own block is drafted by).
 */
import { proportionAt } from "../draft/draftMeasures";
import type { MeasureName } from "../measures/measure";
import type { Mm } from "../units";

/** By bust girth, mm. The trade has none for the height. */
const RULES: Readonly<Partial<Record<MeasureName, (bust: Mm) => Mm>>> = {
  upperChestGirth: (bust) => bust - 50,
  underBustGirth: (bust) => bust - 140,
  waistGirth: (bust) => bust - 180,
  hipGirth: (bust) => bust + 60,
  bustPointWidth: (bust) => proportionAt("bustPointWidth", bust),
  sideNeckToBustPoint: (bust) => proportionAt("sideNeckToBustPoint", bust),
  backWaistLength: (bust) => proportionAt("backWaistLength", bust),
  frontWaistLength: (bust) => proportionAt("frontWaistLength", bust),
  neckBaseGirth: (bust) => proportionAt("neckBaseGirth", bust),
  shoulderLength: (bust) => proportionAt("shoulderLength", bust),
  acrossBack: (bust) => proportionAt("acrossBack", bust),
  acrossFront: (bust) => proportionAt("acrossFront", bust),
};

/** The trade's proportion for this measure at this bust girth; null where it has none. */
export const tradeProportion = (measure: MeasureName, bust: Mm): Mm | null => RULES[measure]?.(bust) ?? null;
