/** Measures that lie far out, given all the others: to be taken again, never a judgement of a body. */
import { isTrusted, type Trusted } from "../decisions/trusted";
import type { TypedUnit } from "../measures/length";
import type { MeasureName } from "../measures/measure";
import { readingsAgree } from "../measures/repeatability";
import type { MeasuredBody } from "../measures/tape";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { Known } from "./bodyModel";
import { rangeOf } from "./estimate";
import type { LikelyMisreading } from "./misreading";
import { foretell, readOf, readingOf, type Reading } from "./openBodies";
import { hypothesesOf, type Hypothesis } from "./misreadingHypotheses";
import { outOfKeeping } from "./outOfKeeping";

export interface Suspicion {
  readonly measure: MeasureName;
  readonly value: Mm;
  /** What the other measures lead one to expect, and between what nine of ten lie. */
  readonly expected: Mm;
  readonly least: Mm;
  readonly most: Mm;
  /** The most likely mistake, where one explains it well. */
  readonly misreading: LikelyMisreading | null;
  /** Taken more than once already, with readings that agree: said more softly. */
  readonly takenAgain: boolean;
  /** She said that it is right. */
  readonly saidRight: boolean;
  /** Merely out of keeping with the others: one more reading is asked for, and no mistake is thought of. */
  readonly onceMore: boolean;
}

/**
 * Odds of being wrong above which a measure is named: to take one more reading costs a twentieth of what a wrong one does.
 * With these odds, of a hundred women one is asked for a measure that was right (DEVELOPERS.md).
 */
const DOUBTED = 1 / 20;

/** A measure is never doubted that lies nearer than this to what the others foretell, in their own scale. */
const NEVER_WITHIN = 2.3;

/** A misreading is named where it has this share of all explanations of what is wrong. */
const NAMED = 0.6;

/** More than this many wrong at once, and nobody can tell which. */
const AT_MOST = 3;

/**
 * What to measure again, the most doubtful first. A single wrong value makes others look wrong beside it: so the measure
 * (or the pair that may have been swapped) whose being wrong explains most is taken out, and the rest looked at again.
 *
 * @param body what was taken; mm. Values that are not positive and finite are passed over
 * @param age  years, where she says
 * @param unit what the tape is marked in: tens and digits are slipped in whole marks of it
 * @param trusted readings that she said are right
 */
export function suspicionsOf(
  body: MeasuredBody,
  age?: number,
  unit: TypedUnit = "cm",
  trusted?: Trusted,
): readonly Suspicion[] {
  const found: Suspicion[] = [];
  let read = readOf(body);
  for (let round = 0; round < AT_MOST && read.length > 0; round += 1) {
    const reading = readingOf(read, age);
    const worst = worstOf(reading, unit);
    if (worst === null) break;
    const rest = read.filter((_, at) => !worst.likeliest.at.some((wrong) => wrong === at));
    for (const at of worst.likeliest.at) {
      const known = invariant(read[at], "read");
      const range = rangeOf(foretell(known, [...rest, ...partners(read, at, worst)], age));
      const { value, readings } = invariant(body[known.measure], "measure");
      // A mean of readings that do not agree is no number that anybody wrote down.
      const misreading = allAgree(body, reading, worst) ? misreadingOf(reading, at, worst) : null;
      found.push({
        measure: known.measure,
        value,
        expected: range.value,
        least: range.least,
        most: range.most,
        misreading,
        takenAgain: agree(known.measure, readings),
        saidRight: isTrusted(trusted, known.measure, value),
        onceMore: false,
      });
    }
    read = rest;
  }
  const isAnswered = found.every(({ takenAgain, saidRight }) => takenAgain || saidRight);
  return isAnswered ? [...found, ...onceMoreOf(body, read, trusted)] : found;
}

/** Where nothing is likely to be wrong, what is out of keeping all the same. */
function onceMoreOf(body: MeasuredBody, read: readonly Known[], trusted?: Trusted): readonly Suspicion[] {
  const stands = (measure: MeasureName): boolean => {
    const { value, readings } = invariant(body[measure], "measure");
    return agree(measure, readings) || isTrusted(trusted, measure, value);
  };
  const out = outOfKeeping(read, stands);
  if (out === null) return [];
  const { measure } = invariant(read[out.at], "read");
  const { value } = invariant(body[measure], "measure");
  const { value: expected, least, most } = rangeOf(out.foretold);
  return [
    { measure, value, expected, least, most, misreading: null, takenAgain: false, saidRight: false, onceMore: true },
  ];
}

interface Worst {
  /** The likeliest of all that explains it by the same measure or pair. */
  readonly likeliest: Hypothesis;
  /** Whether it is likely enough to be said. */
  readonly named: boolean;
}

/** The measure, or pair, whose being wrong explains most; null where all may well be right. */
function worstOf(reading: Reading, unit: TypedUnit): Worst | null {
  const farOut = reading.foretold.map(
    ({ middle, scale }, at) => Math.abs(invariant(reading.logs[at], "log") - middle) > NEVER_WITHIN * scale,
  );
  const all = hypothesesOf(reading, unit).filter(({ at }) => at.some((one) => farOut[one]));
  if (all.length === 0) return null;
  const heaviest = Math.max(...all.map(({ weight }) => weight));
  /** Odds of some of them together, in units of the heaviest. */
  const odds = (some: readonly Hypothesis[]): number =>
    some.reduce((sum, { weight }) => sum + Math.exp(weight - heaviest), 0);
  const suspects = [...new Set(all.map(({ at }) => at.join()))].map((key) => all.filter(({ at }) => at.join() === key));
  const suspect = suspects.reduce((a, b) => (odds(b) > odds(a) ? b : a));
  if (heaviest + Math.log(odds(suspect)) < Math.log(DOUBTED)) return null;
  const best = suspect.reduce((a, b) => (b.weight > a.weight ? b : a));
  return { likeliest: best, named: odds([best]) >= NAMED * odds(all) };
}

/** What a measure may have been swapped with helps to say what is to be expected of it: as it would have been, if that is named. */
function partners(read: readonly Known[], at: number, { likeliest, named }: Worst): readonly Known[] {
  return likeliest.at.flatMap((place, which) => {
    if (place === at) return [];
    const partner = invariant(read[place], "read");
    return [named ? { ...partner, log: invariant(likeliest.meant[which], "meant") } : partner];
  });
}

function misreadingOf(reading: Reading, at: number, { likeliest, named }: Worst): LikelyMisreading | null {
  if (!named || likeliest.kind === null) return null;
  const { kind } = likeliest;
  const which = likeliest.at.findIndex((place) => place === at);
  const meant = Math.round(Math.exp(invariant(likeliest.meant[which], "meant")) * 10) / 10;
  const otherAt = likeliest.at[1 - which];
  return otherAt === undefined
    ? { kind, meant }
    : { kind, meant, other: invariant(reading.measures[otherAt], "other") };
}

const allAgree = (body: MeasuredBody, { measures }: Reading, { likeliest }: Worst): boolean =>
  likeliest.at.every((place) => {
    const measure = invariant(measures[place], "measure");
    return readingsAgree(measure, invariant(body[measure], "measure").readings);
  });

const agree = (measure: MeasureName, readings: readonly Mm[]): boolean =>
  readings.length > 1 && readingsAgree(measure, readings);
