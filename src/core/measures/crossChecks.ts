/**
 * How measures agree with each other. Each check holds one measure against another and only ever asks to measure again:
 * bounds are wide enough that nearly every body passes (our own choice, set around the same surveys as the ranges), and
 * close enough that swapped, halved and misread values mostly do not.
 */
import type { Mm } from "../units";
import { MEASURE_NAMES, type MeasureName, type Measures } from "./measure";
import { checkMeasure, type MeasureSlip } from "./registry";

type CrossCheckCode =
  | "measure/under-bust-not-below-bust"
  | "measure/under-bust-against-upper-chest"
  | "measure/upper-chest-above-bust"
  | "measure/waist-against-bust"
  | "measure/waist-against-hip"
  | "measure/hip-against-bust"
  | "measure/bust-point-below-waist"
  | "measure/front-against-back-length"
  | "measure/bust-point-width-against-bust"
  | "measure/across-back-against-bust"
  | "measure/across-front-against-back"
  | "measure/neck-against-bust"
  | "measure/shoulder-against-back";

/** A bound on one measure: a share of another, and so many mm. */
interface Bound {
  readonly share: number;
  readonly plus: Mm;
}

export interface CrossCheck {
  readonly code: CrossCheckCode;
  /** The measure held, and the one it is held against. */
  readonly involves: readonly [MeasureName, MeasureName];
  readonly least: Bound | null;
  readonly most: Bound | null;
}

const shareOf = (share: number): Bound => ({ share, plus: 0 });
const moreThan = (plus: Mm): Bound => ({ share: 1, plus });

/** mm. The tape's own smallest mark: below means below by at least this. */
const ONE_MARK: Mm = 1;

export const CROSS_CHECKS: readonly CrossCheck[] = [
  {
    code: "measure/under-bust-not-below-bust",
    involves: ["underBustGirth", "bustGirth"],
    least: shareOf(0.55),
    most: moreThan(-ONE_MARK),
  },
  {
    code: "measure/under-bust-against-upper-chest",
    involves: ["underBustGirth", "upperChestGirth"],
    least: shareOf(0.6),
    most: moreThan(30),
  },
  {
    code: "measure/upper-chest-above-bust",
    involves: ["upperChestGirth", "bustGirth"],
    least: shareOf(0.65),
    most: moreThan(20),
  },
  { code: "measure/waist-against-bust", involves: ["waistGirth", "bustGirth"], least: shareOf(0.55), most: shareOf(1.2) },
  { code: "measure/waist-against-hip", involves: ["waistGirth", "hipGirth"], least: shareOf(0.5), most: shareOf(1.2) },
  { code: "measure/hip-against-bust", involves: ["hipGirth", "bustGirth"], least: shareOf(0.75), most: shareOf(1.5) },
  {
    code: "measure/bust-point-below-waist",
    involves: ["sideNeckToBustPoint", "frontWaistLength"],
    least: shareOf(0.4),
    most: moreThan(-20),
  },
  {
    code: "measure/front-against-back-length",
    involves: ["frontWaistLength", "backWaistLength"],
    least: moreThan(-70),
    most: moreThan(160),
  },
  {
    code: "measure/bust-point-width-against-bust",
    involves: ["bustPointWidth", "bustGirth"],
    least: shareOf(0.12),
    most: shareOf(0.33),
  },
  { code: "measure/across-back-against-bust", involves: ["acrossBack", "bustGirth"], least: shareOf(0.25), most: shareOf(0.6) },
  { code: "measure/across-front-against-back", involves: ["acrossFront", "acrossBack"], least: shareOf(0.65), most: shareOf(1.25) },
  { code: "measure/neck-against-bust", involves: ["neckBaseGirth", "bustGirth"], least: shareOf(0.24), most: shareOf(0.55) },
  { code: "measure/shoulder-against-back", involves: ["shoulderLength", "acrossBack"], least: shareOf(0.2), most: shareOf(0.55) },
];

/** Something to look at once more; never a refusal. */
export type MeasureNote =
  | {
      readonly code: "measure/unusual";
      readonly involves: readonly [MeasureName];
      readonly value: Mm;
      readonly least: Mm;
      readonly most: Mm;
      readonly slips: readonly MeasureSlip[];
    }
  | {
      readonly code: CrossCheckCode;
      readonly involves: readonly [MeasureName, MeasureName];
      readonly value: Mm;
      readonly against: Mm;
      /** Where the value was expected, given the other: from `least` (null: no bound) to `most`. */
      readonly least: Mm | null;
      readonly most: Mm | null;
    };

/** What is unusual about these measures, each alone and with the others. Measures not taken are passed over. */
export function measureNotes(measures: Measures): readonly MeasureNote[] {
  const notes: MeasureNote[] = [];
  for (const name of MEASURE_NAMES) {
    const value = measures[name];
    if (value === undefined) continue;
    const verdict = checkMeasure(name, value);
    if (verdict.state === "ok") continue;
    const { least, most, slips } = verdict;
    notes.push({ code: "measure/unusual", involves: [name], value, least, most, slips });
  }
  for (const { code, involves, least: lower, most: upper } of CROSS_CHECKS) {
    const value = measures[involves[0]];
    const against = measures[involves[1]];
    if (value === undefined || against === undefined) continue;
    const least = boundAt(lower, against);
    const most = boundAt(upper, against);
    if ((least === null || value >= least) && (most === null || value <= most)) continue;
    notes.push({ code, involves, value, against, least, most });
  }
  return notes;
}

const boundAt = (bound: Bound | null, against: Mm): Mm | null => (bound === null ? null : bound.share * against + bound.plus);
