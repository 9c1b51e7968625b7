/** How a wearer likes her garments: the ease and the ends of the darts in those that fit. */
import type { DartRef } from "../pattern/piece";
import { isSameDart } from "../pattern/piece";
import { planOf } from "../plan/planOf";
import type { PlannedLevel } from "../plan/plan";
import type { Mm } from "../units";
import type { KeptGarment } from "./keptGarments";

/** What can be forgotten. */
export type LearntOf = "ease" | "dartEnds";

export interface LearntEase {
  readonly level: PlannedLevel["level"];
  /** Finished girth less body, the mean, rounded to a whole mm. */
  readonly ease: Mm;
  readonly garments: number;
}

export interface LearntDartEnd {
  readonly dart: DartRef;
  /** As `DartEndReading`, the means over both halves, rounded to a whole mm. */
  readonly along: Mm;
  readonly across: Mm;
  readonly garments: number;
}

export interface Learnt {
  readonly ease: readonly LearntEase[];
  readonly dartEnds: readonly LearntDartEnd[];
}

/** What stands in a list of what is forgotten: of one trial, so that garments kept later are learnt from again. */
export const forgottenKey = (of: LearntOf, { trial }: KeptGarment): string => `${of} ${trial.id}`;

/** @param forgotten keys of what is not to be learnt from */
export function learntFrom(garments: readonly KeptGarment[], forgotten: readonly string[]): Learnt {
  const counted = (of: LearntOf) =>
    garments
      .filter((garment) => !forgotten.includes(forgottenKey(of, garment)))
      .flatMap(({ kept }) => {
        const plan = planOf(kept);
        return plan.ok ? [plan.value] : [];
      });
  const levels = counted("ease").flatMap((plan) => plan.levels);
  const ends = counted("dartEnds").map(({ left, right }) => {
    const read = (half: typeof left) =>
      half.darts.flatMap(({ ref, drawn: { end } }) => (end === null ? [] : [{ ref, end }]));
    return left === right ? [read(left)] : [read(left), read(right)];
  });
  const refs = ends.flat(2).map(({ ref }) => ref);
  const darts = refs.filter((ref, at) => refs.findIndex((other) => isSameDart(other, ref)) === at);
  return {
    ease: (["bust", "waist", "hip"] as const).flatMap((level) => {
      const eases = levels.filter((one) => one.level === level).map(({ finished, body }) => finished - body);
      return eases.length === 0 ? [] : [{ level, ease: mean(eases), garments: eases.length }];
    }),
    dartEnds: darts.map((dart) => {
      const of = ends.flatMap((halves) => {
        const own = halves.flat().filter(({ ref }) => isSameDart(ref, dart));
        return own.length === 0
          ? []
          : [{ along: average(own.map(({ end }) => end.along)), across: average(own.map(({ end }) => end.across)) }];
      });
      return {
        dart,
        along: mean(of.map(({ along }) => along)),
        across: mean(of.map(({ across }) => across)),
        garments: of.length,
      };
    }),
  };
}

const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const mean = (values: readonly number[]): number => Math.round(average(values)) + 0;
