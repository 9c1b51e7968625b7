/**
 * The surveyed women of 1988 as a dressmaker's tape would have measured them: moved by the middle of each bridge, each
 * reading off by as much as a tape usually is. The same women and the same errors in every run.
 */
import { BRIDGES } from "../../src/core/bodies/bridges";
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import { TAPE_SPREAD } from "../../src/core/measures/repeatability";
import { bodyOf, tapesOf, type MeasuredBody } from "../../src/core/measures/tape";
import { invariant } from "../../src/core/result";
import type { SurveyedWoman } from "./surveys";

export type TapeValues = Readonly<Record<MeasureName, number>>;

export interface TapedWoman {
  /** One reading of each measure, whole mm. */
  readonly values: TapeValues;
  /** Her waist taken at the navel, with an error of its own. */
  readonly waistAtNavel: number;
  readonly age: number;
}

/** The survey has no across front: by the proportion that the planner assumes, and as uncertain as it assumes. */
const ACROSS_FRONT = { share: 0.94, spread: 0.05 };

/**
 * @param seed  other errors of the tape
 * @param moved by how many doubts the bridges are off; the survey cannot say that they are not
 */
export function tapedWomen(women: readonly SurveyedWoman[], seed = 1, moved = 0): readonly TapedWoman[] {
  const error = normals(seed);
  return women.map(({ measures, age, waistAtNavel }) => {
    const bridgeOf = (name: MeasureName): number => {
      const bridge = BRIDGES[name];
      return bridge === undefined ? 0 : bridge.shift + moved * bridge.doubt;
    };
    const body = (name: MeasureName): number => invariant(measures[name], name) + bridgeOf(name);
    const trueOf = (name: MeasureName): number =>
      name === "acrossFront"
        ? body("acrossBack") * ACROSS_FRONT.share * Math.exp(ACROSS_FRONT.spread * error())
        : body(name);
    const values = Object.fromEntries(
      MEASURE_NAMES.map((name) => [name, Math.round(trueOf(name) + TAPE_SPREAD[name] * error())]),
    );
    return {
      values: allOf(values),
      waistAtNavel: Math.round(
        invariant(waistAtNavel, "waist at the navel") + bridgeOf("waistGirth") + TAPE_SPREAD.waistGirth * error(),
      ),
      age,
    };
  });
}

const allOf = (values: Readonly<Record<string, number>>): TapeValues => ({
  bustGirth: invariant(values["bustGirth"], "bust"),
  upperChestGirth: invariant(values["upperChestGirth"], "upper chest"),
  underBustGirth: invariant(values["underBustGirth"], "under-bust"),
  waistGirth: invariant(values["waistGirth"], "waist"),
  hipGirth: invariant(values["hipGirth"], "hip"),
  height: invariant(values["height"], "height"),
  bustPointWidth: invariant(values["bustPointWidth"], "bust point width"),
  sideNeckToBustPoint: invariant(values["sideNeckToBustPoint"], "side neck to bust point"),
  backWaistLength: invariant(values["backWaistLength"], "back waist length"),
  frontWaistLength: invariant(values["frontWaistLength"], "front waist length"),
  neckBaseGirth: invariant(values["neckBaseGirth"], "neck"),
  shoulderLength: invariant(values["shoulderLength"], "shoulder"),
  acrossBack: invariant(values["acrossBack"], "across back"),
  acrossFront: invariant(values["acrossFront"], "across front"),
});

/** Those measures of hers, each read once. */
export const bodyWith = (
  values: Readonly<Partial<Record<MeasureName, number>>>,
  names: readonly MeasureName[] = MEASURE_NAMES,
): MeasuredBody =>
  bodyOf(
    tapesOf(Object.fromEntries(names.flatMap((name) => (values[name] === undefined ? [] : [[name, values[name]]])))),
  );

/** Standard normal numbers, the same for the same seed (a linear congruential generator and Box and Muller's formula). */
function normals(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  for (let warm = 0; warm < 8; warm += 1) uniform();
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
