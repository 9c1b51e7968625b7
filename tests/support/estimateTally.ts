/**
 * How far estimates of body measures are out, for women whom the fit has not seen: what `npm run bench -- estimates` prints,
 * the tests bound and DEVELOPERS.md shows. Beside the model stand a single line on the bust alone and the trade's proportion.
 */
import { Matrix, solve } from "ml-matrix";
import { conditionOn, type BodyModel, type Foretold } from "../../src/core/bodies/bodyModel";
import { SURVEYED_BODIES } from "../../src/core/bodies/bridges";
import { estimatesOf, rangeOf } from "../../src/core/bodies/estimate";
import { studentQuantile } from "../../src/core/statistics/student";
import { tradeProportion } from "../../src/core/bodies/tradeProportions";
import { MEASURE_NAMES, type MeasureName, type Measures } from "../../src/core/measures/measure";
import { TAPE_SPREAD } from "../../src/core/measures/repeatability";
import type { MeasuredBody } from "../../src/core/measures/tape";
import { invariant } from "../../src/core/result";
import type { Mm } from "../../src/core/units";
import { fitStudent, logsOf, meanLogDensity } from "./fitBodies";
import { fitted1988, heldBack1988, type SurveyedWoman } from "./surveys";
import { SURVEYED } from "./surveyModelText";

interface Range {
  readonly value: Mm;
  readonly least: Mm;
  readonly most: Mm;
}

/** What is said of a measure, given others; null where nothing is. */
export type Foreteller = (given: Measures, age: number) => (measure: MeasureName) => Range | null;

/** A woman as she is told of, and as she is. */
export interface Judged {
  readonly given: Measures;
  readonly truth: Measures;
  readonly age: number;
}

export const asMeasured = (women: readonly SurveyedWoman[]): readonly Judged[] =>
  women.map(({ measures, age }) => ({ given: measures, truth: measures, age }));

export interface Errors {
  readonly women: number;
  /** Mean |error|, mean error (said − true), mean half-width of the range of nine in ten; mm. */
  readonly mean: Mm;
  readonly bias: Mm;
  readonly half: Mm;
  /** Share of women whose measure lies within the range. */
  readonly covered: number;
}

/** Given which measures: these, or all but the one asked for. */
export type GivenSet = readonly MeasureName[] | "others";

export const GIVEN_SETS: Readonly<Record<"bust" | "girths" | "girthsAndHeight" | "others", GivenSet>> = {
  bust: ["bustGirth"],
  girths: ["bustGirth", "waistGirth", "hipGirth"],
  girthsAndHeight: ["bustGirth", "waistGirth", "hipGirth", "height"],
  others: "others",
};

const picked = (measures: Measures, names: readonly MeasureName[]): Measures =>
  Object.fromEntries(names.flatMap((name) => (measures[name] === undefined ? [] : [[name, measures[name]]])));

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** How far the estimates of each measure are out; measures that are given, or of which nothing is said, are left out. */
export function errorsOf(
  women: readonly Judged[],
  given: GivenSet,
  foretell: Foreteller,
): ReadonlyMap<MeasureName, Errors> {
  const said = new Map<MeasureName, { readonly range: Range; readonly truth: Mm }[]>();
  for (const { given: known, truth, age } of women) {
    const names = MEASURE_NAMES.filter(
      (name) => truth[name] !== undefined && (given === "others" || !given.includes(name)),
    );
    const fromAll = given === "others" ? null : foretell(picked(known, given), age);
    for (const name of names) {
      const range = (
        fromAll ??
        foretell(
          picked(
            known,
            MEASURE_NAMES.filter((other) => other !== name),
          ),
          age,
        )
      )(name);
      if (range === null) continue;
      said.set(name, [...(said.get(name) ?? []), { range, truth: invariant(truth[name], name) }]);
    }
  }
  return new Map([...said].map(([name, all]) => [name, summed(all)]));
}

const summed = (all: readonly { readonly range: Range; readonly truth: Mm }[]): Errors => ({
  women: all.length,
  mean: meanOf(all.map(({ range, truth }) => Math.abs(range.value - truth))),
  bias: meanOf(all.map(({ range, truth }) => range.value - truth)),
  half: meanOf(all.map(({ range }) => (range.most - range.least) / 2)),
  covered: all.filter(({ range, truth }) => truth >= range.least && truth <= range.most).length / all.length,
});

/** The whole of some measures in one figure: the mean of each column. */
export function overAll(errors: ReadonlyMap<MeasureName, Errors>): Errors {
  const all = [...errors.values()];
  return {
    women: Math.max(...all.map(({ women }) => women)),
    mean: meanOf(all.map(({ mean }) => mean)),
    bias: meanOf(all.map(({ bias }) => bias)),
    half: meanOf(all.map(({ half }) => half)),
    covered: meanOf(all.map(({ covered }) => covered)),
  };
}

/** Of logarithms. `homeTape`: the given values are one reading each, as unsure as a home tape. */
export const byModel =
  (model: BodyModel, homeTape = false): Foreteller =>
  (given) => {
    const known = Object.entries(given).flatMap(([name, value]) => {
      const measure = MEASURE_NAMES.find((one) => one === name);
      if (measure === undefined || value === undefined) return [];
      return [{ measure, log: Math.log(value), variance: homeTape ? (TAPE_SPREAD[measure] / value) ** 2 : 0 }];
    });
    const { of } = conditionOn(model, known);
    return (measure) => (model.measures.includes(measure) ? rangeOf(of(measure)) : null);
  };

/** Standard normal: nine of ten lie within this many standard deviations. */
const NINE_OF_TEN = 1.6448536269514722;

/** The same of plain millimetres, in place of logarithms. */
const byModelOfMm =
  (model: BodyModel): Foreteller =>
  (given) => {
    const known = model.measures.flatMap((measure) =>
      given[measure] === undefined ? [] : [{ measure, log: given[measure], variance: 0 }],
    );
    const { of } = conditionOn(model, known);
    return (measure) => (model.measures.includes(measure) ? plainRange(of(measure)) : null);
  };

function plainRange({ middle, scale, freedom }: Foretold): Range {
  const reach = studentQuantile(NINE_OF_TEN, freedom) * scale;
  return { value: middle, least: middle - reach, most: middle + reach };
}

/** As the page says it. `exact`: the given values are known to the millimetre. */
export const byEstimates =
  (exact: boolean, withAge: boolean): Foreteller =>
  (given, age) => {
    const body: MeasuredBody = Object.fromEntries(
      MEASURE_NAMES.flatMap((name) =>
        given[name] === undefined
          ? []
          : [[name, { value: given[name], spread: exact ? 0 : TAPE_SPREAD[name], readings: [given[name]], set: 0 }]],
      ),
    );
    const estimates = estimatesOf(body, withAge ? age : undefined);
    return (measure) => estimates[measure] ?? null;
  };

/** The trade's proportion to the bust, less a shift that makes it right on average for the women of the fit where `shifted`. */
export function byTrade(shifted: boolean): Foreteller {
  const shifts = shifted ? errorsOf(asMeasured(fitted1988), ["bustGirth"], byTrade(false)) : null;
  return ({ bustGirth }) =>
    (measure) => {
      const rule = bustGirth === undefined ? null : tradeProportion(measure, bustGirth);
      if (rule === null) return null;
      const value = rule - (shifts?.get(measure)?.bias ?? 0);
      return { value, least: value, most: value };
    };
}

/** A straight line on the bust for each measure, through the women of the fit (least squares, by the library). */
export function byBustLine(): Foreteller {
  const busts = fitted1988.map(({ measures }) => invariant(measures.bustGirth, "bust"));
  const lines = new Map(
    SURVEYED.map((name) => {
      const values = fitted1988.map(({ measures }) => invariant(measures[name], name));
      const solution = solve(new Matrix(busts.map((bust) => [1, bust])), Matrix.columnVector(values), true);
      const [from, slope] = [solution.get(0, 0), solution.get(1, 0)];
      const left = values.map((value, at) => (value - from - slope * invariant(busts[at], "bust")) ** 2);
      return [name, { from, slope, reach: NINE_OF_TEN * Math.sqrt(meanOf(left)) }] as const;
    }),
  );
  return ({ bustGirth }) =>
    (measure) => {
      const line = lines.get(measure);
      if (line === undefined || bustGirth === undefined) return null;
      const value = line.from + line.slope * bustGirth;
      return { value, least: value - line.reach, most: value + line.reach };
    };
}

/** Degrees of freedom that make Student's t the normal distribution in all but name. */
const NORMAL = 1e7;

const mmOf = (women: readonly SurveyedWoman[]): number[][] =>
  women.map(({ measures }) => SURVEYED.map((name) => invariant(measures[name], name)));

export interface Choice {
  readonly name: string;
  readonly foretell: Foreteller;
  /** Mean log density of the women held back, per woman, of their millimetres: the higher, the less they surprise it. */
  readonly density: number;
}

/** The shipped choice and the others, each fitted to the same women. */
export function choices(): readonly Choice[] {
  const { freedom } = SURVEYED_BODIES;
  const [logs, mm] = [logsOf(heldBack1988, SURVEYED), mmOf(heldBack1988)];
  // A density of logarithms is one of millimetres after dividing by each value.
  const perMm = -meanOf(logs.map((row) => row.reduce((sum, log) => sum + log, 0)));
  const ofLogs = fitStudent(logsOf(fitted1988, SURVEYED), Infinity);
  const [mmNormal, mmStudent] = [fitStudent(mmOf(fitted1988), Infinity), fitStudent(mmOf(fitted1988), freedom)];
  return [
    {
      name: `logarithms, Student's t (${freedom})`,
      foretell: byModel(SURVEYED_BODIES),
      density: perMm + meanLogDensity(logs, SURVEYED_BODIES, freedom),
    },
    {
      name: "logarithms, normal",
      foretell: byModel({ measures: SURVEYED, ...ofLogs, freedom: NORMAL }),
      density: perMm + meanLogDensity(logs, ofLogs, NORMAL),
    },
    {
      name: `millimetres, Student's t (${freedom})`,
      foretell: byModelOfMm({ measures: SURVEYED, ...mmStudent, freedom }),
      density: meanLogDensity(mm, mmStudent, freedom),
    },
    {
      name: "millimetres, normal",
      foretell: byModelOfMm({ measures: SURVEYED, ...mmNormal, freedom: NORMAL }),
      density: meanLogDensity(mm, mmNormal, NORMAL),
    },
  ];
}

const NOISE_SEED = 1988;

/** Numbers in (0, 1), the same in every run. @source the mixing of "mulberry32" (public domain; from memory) */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Each woman read once by a home tape: normal errors of the usual spread (simulated; the same in every run). */
export function readAtHome(
  women: readonly SurveyedWoman[],
): readonly { readonly read: Measures; readonly truth: Measures; readonly age: number }[] {
  const random = randomFrom(NOISE_SEED);
  const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
  return women.map(({ measures, age }) => ({
    read: Object.fromEntries(
      MEASURE_NAMES.flatMap((name) =>
        measures[name] === undefined ? [] : [[name, measures[name] + TAPE_SPREAD[name] * normal()]],
      ),
    ),
    truth: measures,
    age,
  }));
}
