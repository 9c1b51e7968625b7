/**
 * The whole pick and blend over surveyed women, counted: what the test asserts, the bench times and DEVELOPERS.md shows.
 *
 * A woman's waist and hip are taken as they were measured: she is a real body, whatever the survey's frequencies. Where its
 * tape ran elsewhere than a dressmaker's (`tests/reference-data/README.md`), the figure is shifted by its bridge.
 */
import type { Pattern, PatternLength } from "../../src/core/decisions/pattern";
import { conditionOn } from "../../src/core/bodies/bodyModel";
import { BRIDGES, SURVEYED_BODIES } from "../../src/core/bodies/bridges";
import { estimatesOf } from "../../src/core/bodies/estimate";
import type { CheckName } from "../../src/core/checks/check";
import { MEASURE_NAMES, type MeasureName, type Measures } from "../../src/core/measures/measure";
import { bodyOf, tapesOf } from "../../src/core/measures/tape";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { demoWorks } from "../../src/document/demo";
import { quantile } from "../bench/table";
import type { SurveyedWoman } from "./surveys";
import { testWork } from "./works";

/** Measured on another line than a dressmaker's tape takes. */
const ELSEWHERE: readonly MeasureName[] = [
  "upperChestGirth",
  "bustPointWidth",
  "backWaistLength",
  "frontWaistLength",
  "neckBaseGirth",
  "shoulderLength",
  "acrossBack",
];

/** Her measures as a dressmaker's tape would read them; mm to 0.1. */
export const tapedBy = ({ measures }: SurveyedWoman): Measures =>
  Object.fromEntries(
    MEASURE_NAMES.flatMap((name) => {
      const value = measures[name];
      if (value === undefined) return [];
      const shift = ELSEWHERE.includes(name) ? (BRIDGES[name]?.shift ?? 0) : 0;
      return [[name, Math.round((value + shift) * 10) / 10]];
    }),
  );

/** The same without her upper chest: the frame then goes by bust. */
export function withoutUpperChest(woman: SurveyedWoman): Measures {
  const { upperChestGirth: _, ...others } = tapedBy(woman);
  return others;
}

/**
 * A woman of the survey of 2012, which has no natural waist: the one expected of her bust, hip and height stands in, and the
 * upper chest expected where it is asked for. Her bust, hip and height are real, the rest of her is made up.
 */
export function filledIn(woman: SurveyedWoman, upperChest: boolean): Measures {
  const { bustGirth = NaN, hipGirth = NaN, height = NaN } = woman.measures;
  const { waistGirth, upperChestGirth } = estimatesOf(bodyOf(tapesOf({ bustGirth, hipGirth, height })));
  return {
    ...tapedBy(woman),
    waistGirth: invariant(waistGirth, "waist").value,
    ...(upperChest ? { upperChestGirth: invariant(upperChestGirth, "upper chest").value } : {}),
  };
}

/** Her squared distance from the middle of the fit in these measures. */
const distanceOf = ({ measures }: SurveyedWoman, by: readonly MeasureName[]): number =>
  conditionOn(
    SURVEYED_BODIES,
    by.map((measure) => ({ measure, log: Math.log(invariant(measures[measure], measure)), variance: 0 })),
  ).distance;

/** The bodies furthest from the middle, in these measures together. */
export const furthestOut = (
  women: readonly SurveyedWoman[],
  count: number,
  by = SURVEYED_BODIES.measures,
): readonly SurveyedWoman[] =>
  women
    .map((woman) => ({ woman, distance: distanceOf(woman, by) }))
    .toSorted((a, b) => b.distance - a.distance)
    .slice(0, count)
    .map(({ woman }) => woman);

const LENGTHS: readonly PatternLength[] = ["waist", "hip"];

/** Every chart and style of the demo works, to the waist and to the hip. Of two alike, the first: its opening reaches below the waist. */
export const demoPatterns = (): readonly Pattern[] =>
  [
    ...new Map(
      demoWorks()
        .toReversed()
        .map(({ pattern }) => [JSON.stringify([pattern.chart, pattern.style]), pattern]),
    ).values(),
  ]
    .toReversed()
    .flatMap((pattern) => LENGTHS.map((length) => ({ ...pattern, length })));

export interface BodyTally {
  readonly asked: number;
  readonly planned: number;
  /** Outside the chart, by the measure that is. */
  readonly outside: ReadonlyMap<string, number>;
  /** Failures of any other kind, by their code. */
  readonly failed: ReadonlyMap<string, number>;
  /** Of those planned: nothing to alter at the bust; an alteration asked for; asked for and not to be made. */
  readonly unaltered: number;
  readonly altered: number;
  readonly refused: number;
  /** Bust difference left over, mm, of each woman planned. */
  readonly residuals: readonly number[];
  /** How far the waist line runs from the frame, in sizes, of each woman planned. */
  readonly waistMoves: readonly number[];
  /** Largest |finished − target|, mm. */
  readonly worst: Readonly<Record<"waist" | "hip", number>>;
  /** Women with a check that does not hold, by its name. */
  readonly doubts: ReadonlyMap<CheckName, number>;
  /** Numbers that are no numbers, and what `look` found. */
  readonly faults: readonly string[];
}

const count = <K>(map: Map<K, number>, key: K): unknown => map.set(key, (map.get(key) ?? 0) + 1);

/**
 * Plans every body on one pattern.
 *
 * @param look called with every plan; what it gives back is added to the faults
 */
export function tallyBodies(
  pattern: Pattern,
  bodies: readonly Measures[],
  look: (plan: Plan, at: number) => readonly string[] = () => [],
): BodyTally {
  const [outside, failed, doubts] = [
    new Map<string, number>(),
    new Map<string, number>(),
    new Map<CheckName, number>(),
  ];
  const [residuals, waistMoves, faults]: [number[], number[], string[]] = [[], [], []];
  const worst = { waist: 0, hip: 0 };
  let [unaltered, altered, refused] = [0, 0, 0];
  for (const [at, body] of bodies.entries()) {
    const work: Work = { ...testWork, pattern, tapes: tapesOf(body) };
    const answer = derivePlan(work);
    if (!answer.ok) {
      if (answer.failure.code === "plan/outside-chart") count(outside, answer.failure.level);
      else count(failed, answer.failure.code);
      continue;
    }
    const plan = answer.value;
    const { bust, baseSize } = plan.sizing;
    residuals.push(bust.residual);
    if (bust.alteration === 0) unaltered += 1;
    else altered += 1;
    if (plan.ledger.some(({ outcome }) => !outcome.ok)) refused += 1;
    for (const { level, size, finished, target } of plan.levels) {
      if (!Number.isFinite(finished)) faults.push(`${at}: ${level} is ${finished}`);
      if (level === "waist") waistMoves.push(Math.abs(size - baseSize.index));
      if (level !== "bust") worst[level] = Math.max(worst[level], Math.abs(finished - target));
    }
    for (const name of new Set(plan.checks.flatMap((check) => (check.ok ? [] : [check.name])))) count(doubts, name);
    faults.push(...look(plan, at).map((fault) => `${at}: ${fault}`));
  }
  return {
    asked: bodies.length,
    planned: residuals.length,
    outside,
    failed,
    unaltered,
    altered,
    refused,
    residuals,
    waistMoves,
    worst,
    doubts,
    faults,
  };
}

const shareOf = (values: readonly number[], is: (value: number) => boolean): number =>
  values.filter(is).length / values.length;
export const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
const listed = (map: ReadonlyMap<string, number>, of: number | null): string =>
  [...map].map(([name, women]) => `${name} ${of === null ? women : percent(women / of)}`).join(", ") || "none";

export const TALLY_HEAD = [
  "planned",
  "outside",
  "no bust alteration",
  "one asked for",
  "one refused",
  "bust left over 5 %",
  "median",
  "95 %",
  "waist line within ½ size",
  "1",
  "2",
  "worst waist",
  "worst hip",
] as const;

export const tallyRow = ({
  planned,
  outside,
  unaltered,
  altered,
  refused,
  residuals,
  waistMoves,
  worst,
}: BodyTally): readonly (string | number)[] => [
  planned,
  listed(outside, null),
  percent(unaltered / planned),
  percent(altered / planned),
  percent(refused / planned),
  ...[0.05, 0.5, 0.95].map((share) => Math.round(quantile(residuals, share))),
  ...[0.5, 1, 2].map((sizes) => percent(shareOf(waistMoves, (value) => value <= sizes))),
  worst.waist.toFixed(4),
  worst.hip.toFixed(4),
];

export const doubtsOf = ({ doubts, planned }: BodyTally): string => listed(doubts, planned);
