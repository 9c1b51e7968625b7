/** Every woman of the survey of 1988 from every demo chart: what comes of it, and how long it takes. */
import type { Pattern } from "../../src/core/decisions/pattern";
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { conditionOn, type Known } from "../../src/core/bodies/bodyModel";
import { TAPED_BODIES } from "../../src/core/bodies/bridges";
import { estimatesOf, knownOf } from "../../src/core/bodies/estimate";
import { suspicionsOf } from "../../src/core/bodies/suspicion";
import type { MeasureName } from "../../src/core/measures/measure";
import { bodyOf, tapesOf, type MeasuredBody } from "../../src/core/measures/tape";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { howSure } from "../../src/core/sureness/howSure";
import { nextMeasure } from "../../src/core/sureness/nextMeasure";
import { women1988 } from "../support/surveys";
import {
  demoPatterns,
  doubtsOf,
  tallyBodies,
  TALLY_HEAD,
  tallyRow,
  tapedBy,
  withoutUpperChest,
} from "../support/surveyTally";
import { testWork } from "../support/works";
import { median, print, quickest, time } from "./table";

/** Runs of a whole chart, and of what is quick. */
const RUNS = 3;
const QUICK_RUNS = 9;

/** Of what is slow, each so many women are asked. */
const SOME = 64;

export function benchBodies(): void {
  const bodies = women1988.map(tapedBy);
  const byBust = women1988.map(withoutUpperChest);
  const cases = demoPatterns().flatMap((pattern) => [
    {
      what: `${pattern.style}, ${pattern.name.replace(" (invented)", "")}, to the ${pattern.length}`,
      pattern,
      of: bodies,
    },
    ...(pattern.style === "sideDart" ? [{ what: "  the same, upper chest left out", pattern, of: byBust }] : []),
  ]);
  const done = cases.map(({ what, pattern, of }) => {
    const times: number[] = [];
    const tally = tallyBodies(pattern, of);
    for (let run = 0; run < RUNS; run += 1) {
      const start = performance.now();
      tallyBodies(pattern, of);
      times.push(performance.now() - start);
    }
    return { what, tally, times };
  });
  print(
    `${bodies.length} surveyed women from each demo chart (upper chest bridged by −30 mm): what comes of it; mm`,
    ["chart", ...TALLY_HEAD],
    done.map(({ what, tally }) => [what, ...tallyRow(tally)]),
  );
  print(
    "Checks that do not hold, share of the women planned",
    ["chart", "checks"],
    done.map(({ what, tally }) => [what, doubtsOf(tally)]),
  );
  print(
    `The time for all ${bodies.length}, ${RUNS} runs`,
    ["chart", "median, s", "worst, s", "quickest, s", "µs a woman, median", "quickest"],
    done.map(({ what, tally, times }) => [
      what,
      ...[median(times), Math.max(...times), quickest(times)].map((ms) => ms / 1000),
      ...[median(times), quickest(times)].map((ms) => Math.round((ms * 1000) / tally.asked)),
    ]),
  );

  const few = bodies.map(({ bustGirth = NaN, waistGirth = NaN, hipGirth = NaN, height = NaN }) =>
    bodyOf(tapesOf({ bustGirth, waistGirth, hipGirth, height })),
  );
  const all = bodies.map((body) => bodyOf(tapesOf(body)));
  const each = (what: string, of: readonly MeasuredBody[], action: (body: MeasuredBody) => unknown) => {
    const times = time(() => of.forEach(action), QUICK_RUNS).map((ms) => (ms * 1000) / of.length);
    return [what, median(times), Math.max(...times), quickest(times)];
  };
  print(
    `What the body model costs, µs a woman over all ${bodies.length}, ${QUICK_RUNS} runs`,
    ["what", "median", "worst", "quickest"],
    [
      each("estimatesOf, given bust, waist, hip, height", few, (body) => estimatesOf(body)),
      each("suspicionsOf, given these", few, (body) => suspicionsOf(body)),
      each("suspicionsOf, given all 13", all, (body) => suspicionsOf(body)),
      each("conditional of all measures given 4: ours", few, (body) => byOurs(knownOf(body))),
      each("the same by ml-matrix", few, (body) => byLibrary(knownOf(body))),
      each("conditional of all measures given 13: ours", all, (body) => byOurs(knownOf(body))),
      each("the same by ml-matrix", all, (body) => byLibrary(knownOf(body))),
    ],
  );
  let apart = 0;
  for (const body of [...few, ...all]) {
    const theirs = byLibrary(knownOf(body));
    for (const [at, { middle, scale }] of byOurs(knownOf(body)).entries()) {
      const other = invariant(theirs[at], "answer");
      apart = Math.max(apart, Math.abs(middle - other.middle), Math.abs(scale ** 2 - other.scale ** 2));
    }
  }
  print(
    "  how far the two are apart at the most (of logarithms; scales squared)",
    ["apart"],
    [[apart.toExponential(1)]],
  );

  const some = bodies.filter((_, at) => at % SOME === 0);
  const worksOf = (pattern: Pattern): readonly Work[] =>
    some.map((body) => ({ ...testWork, pattern, tapes: tapesOf(body) }));
  const sure = demoPatterns()
    .filter(({ style, length }) => style === "sideDart" && length === "hip")
    .flatMap((pattern) =>
      (
        [
          ["howSure", howSure],
          ["nextMeasure", nextMeasure],
        ] as const
      ).map(([what, action]) => {
        const times = time(() => worksOf(pattern).forEach((work) => action(work)), QUICK_RUNS).map(
          (ms) => ms / some.length,
        );
        return [
          `${what}, ${pattern.name.replace(" (invented)", "")}`,
          median(times),
          Math.max(...times),
          quickest(times),
        ];
      }),
    );
  print(
    `What saying how sure costs, ms a woman over ${some.length} of them, ${QUICK_RUNS} runs`,
    ["what", "median", "worst", "quickest"],
    sure,
  );
}

interface Said {
  readonly middle: number;
  readonly scale: number;
}

function byOurs(given: readonly Known[]): readonly Said[] {
  const { of } = conditionOn(TAPED_BODIES, given);
  return TAPED_BODIES.measures.map(of);
}

const scatter = new Matrix(TAPED_BODIES.scatter.map((row) => [...row]));
const places = new Map<MeasureName, number>(TAPED_BODIES.measures.map((name, at) => [name, at]));
const everywhere = TAPED_BODIES.measures.map((_, at) => at);

/** The same conditional with the library's own factoring and solving, all right sides at once. */
function byLibrary(given: readonly Known[]): readonly Said[] {
  const at = given.map(({ measure }) => invariant(places.get(measure), "place"));
  const own = scatter.selection(at, at);
  for (const [i, { variance }] of given.entries()) own.set(i, i, own.get(i, i) + variance);
  const off = Matrix.columnVector(
    given.map(({ log }, i) => log - invariant(TAPED_BODIES.middle[invariant(at[i], "place")], "middle")),
  );
  const across = scatter.selection(at, everywhere);
  const factored = new CholeskyDecomposition(own);
  const [weighed, weights] = [factored.solve(off), factored.solve(across)];
  const distance = off.transpose().mmul(weighed).get(0, 0);
  const freedom = TAPED_BODIES.freedom + given.length;
  const shift = across.transpose().mmul(weighed);
  return everywhere.map((place) => {
    const left = scatter.get(place, place) - across.getColumnVector(place).dot(weights.getColumnVector(place));
    return {
      middle: invariant(TAPED_BODIES.middle[place], "middle") + shift.get(place, 0),
      scale: Math.sqrt((Math.max(0, left) * (TAPED_BODIES.freedom + distance)) / freedom),
    };
  });
}
