/**
 * Which measure is worth taking next: for each that the plan stands on, how sure the best way is now, and how sure the
 * then-best way is to be expected after two more readings. What a reading will say is not known beforehand, so it is
 * weighed over all that it may say.
 */
import { remember } from "../remember";
import { TAPE_SPREAD } from "../measures/repeatability";
import { bodyOf } from "../measures/tape";
import { LIMITS } from "../decisions/limits";
import type { Work } from "../decisions/work";
import { LINE_BAND_WIDE, NEARLY_SURE, WORTH_READING } from "../tolerance";
import type { Mm } from "../units";
import { onOffer } from "../plan/printed";
import { howSure, type Girths } from "./howSure";
import { chancesOf } from "./ruleRegions";
import { ownPicksOf } from "../sizing/pickSizing";
import { weighedPlaces } from "../statistics/normal";
import type { Taken } from "../sizing/sizing";

/** Readings that are asked for at once: one could be as far out as the first. */
const MORE = 2;

/** Base size and cup stand on these. */
type BaseSizeGirth = "bustGirth" | "upperChestGirth";

export type NextMeasure =
  /** Probability of the likeliest way, now and to be expected afterwards. */
  | {
      readonly settles: "pick";
      readonly measures: readonly BaseSizeGirth[];
      readonly taken: boolean;
      readonly before: number;
      readonly after: number;
    }
  /** Half the band of the line in mm at one side seam, now and afterwards. */
  | {
      readonly settles: "line";
      readonly measures: readonly ["waistGirth" | "hipGirth"];
      readonly taken: true;
      readonly before: Mm;
      readonly after: Mm;
    };

/** Ease does not come into it. */
type Asked = Pick<Work, "tapes" | "pattern" | "age" | "picks">;

/**
 * The measures worth taking next, the most telling first.
 *
 * @returns null where all is settled (or there is no chart or bust to go by); none where more readings would tell little
 */
export const nextMeasure: (asked: Asked) => readonly NextMeasure[] | null = remember(
  ["tapes", "pattern", "age", "picks"],
  worthTaking,
);

function worthTaking(work: Asked): readonly NextMeasure[] | null {
  const sure = howSure({ ...work, easeWanted: {} });
  if (!sure.ok) return null;
  const { girths, lines } = sure.value;
  const before = bestChance(work, girths.bust, chestOf(girths));
  if (before < NEARLY_SURE) return forPick(work, girths, before);
  const found = forLine(work, lines);
  return found.length === 0 ? null : found;
}

/** As taken, else as it probably is. */
const chestOf = ({ upperChest, estimate }: Girths): Taken | null => upperChest ?? estimate;

/** Probability of the likeliest way. */
function bestChance(work: Asked, bust: Taken, upperChest: Taken | null, isRough = false): number {
  const offer = onOffer(work);
  if (!offer.ok) return 0;
  const { chart, picks } = offer.value;
  const own = ownPicksOf(chart, picks);
  return own.ok ? Math.max(...chancesOf(chart, { bust, upperChest }, own.value, isRough).chances) : 0;
}

/** Both together are asked for only where that gains so many times what the better one gains alone. */
const TOGETHER = 2;

function forPick(work: Asked, girths: Girths, before: number): readonly NextMeasure[] {
  const candidate = (measures: readonly BaseSizeGirth[]): NextMeasure[] => {
    if (measures.some((measure) => thenSpread(work, girths, measure) === null)) return [];
    const taken = measures.every((measure) => readingsOf(work, measure) > 0);
    return [{ settles: "pick", measures, taken, before, after: expectedBest(work, girths, measures) }];
  };
  const single = [...candidate(["bustGirth"]), ...candidate(["upperChestGirth"])].toSorted((a, b) => b.after - a.after);
  const gain = Math.max(0, (single[0]?.after ?? before) - before);
  const both =
    girths.upperChest === null
      ? []
      : candidate(["bustGirth", "upperChestGirth"]).filter(({ after }) => after - before >= TOGETHER * gain);
  return [...both, ...single].filter(({ after }) => after - before >= WORTH_READING);
}

function forLine(
  work: Asked,
  lines: readonly { readonly level: "waist" | "hip"; readonly side: Mm }[],
): readonly NextMeasure[] {
  const found: NextMeasure[] = [];
  for (const { level, side } of lines) {
    const measure = level === "waist" ? "waistGirth" : "hipGirth";
    const count = readingsOf(work, measure);
    if (side <= LINE_BAND_WIDE || count + MORE > LIMITS.readings) continue;
    found.push({ settles: "line", measures: [measure], taken: true, before: side, after: spreadAfter(side, count) });
  }
  return found.toSorted((a, b) => b.before - b.after - (a.before - a.after));
}

const readingsOf = (work: Asked, measure: "bustGirth" | "upperChestGirth" | "waistGirth" | "hipGirth"): number =>
  bodyOf(work.tapes)[measure]?.readings.length ?? 0;

/** The spread of a mean after more readings that differ as the ones taken do: the variance over the number. */
const spreadAfter = (spread: Mm, count: number): Mm => spread * Math.sqrt(count / (count + MORE));

/** The spread of a girth of the base size after more readings; null where there is no room for them, or nothing to compare with. */
function thenSpread(work: Asked, girths: Girths, measure: BaseSizeGirth): Mm | null {
  const now = measure === "bustGirth" ? girths.bust : chestOf(girths);
  const count = readingsOf(work, measure);
  if (now === null || count + MORE > LIMITS.readings) return null;
  return count === 0 ? Math.min(now.spread, TAPE_SPREAD[measure] / Math.sqrt(MORE)) : spreadAfter(now.spread, count);
}

/** Standard deviations that what a reading may say is weighed over, either way; into how many pieces that is cut for one girth, and for each of two. */
const REACH = 3.5;
const PIECES = { one: 8, two: 3 };

/**
 * What the likeliest way's probability is to be expected to be once some girths are known better: where a new mean will
 * lie is normal about the present one, with the variance that the readings take away.
 *
 * @source preposterior analysis of a normal mean, as in any textbook of statistical decisions
 */
function expectedBest(work: Asked, girths: Girths, measures: readonly BaseSizeGirth[]): number {
  const pieces = measures.length === 1 ? PIECES.one : PIECES.two;
  const means = (
    measure: BaseSizeGirth,
    now: Taken | null,
  ): readonly { readonly girth: Taken | null; readonly weight: number }[] => {
    const spread = measures.includes(measure) ? thenSpread(work, girths, measure) : null;
    if (now === null || spread === null || spread >= now.spread) return [{ girth: now, weight: 1 }];
    const gone = Math.sqrt(now.spread ** 2 - spread ** 2);
    const reach = REACH * gone;
    return weighedPlaces(now.value, gone, now.value - reach, now.value + reach, (2 * reach) / pieces).map(
      ({ at, weight }) => ({ girth: { value: at, spread }, weight }),
    );
  };
  const chests = means("upperChestGirth", chestOf(girths));
  let sum = 0;
  let total = 0;
  for (const bust of means("bustGirth", girths.bust)) {
    for (const chest of chests) {
      const weight = bust.weight * chest.weight;
      sum += weight * bestChance(work, bust.girth ?? girths.bust, chest.girth, true);
      total += weight;
    }
  }
  return sum / total;
}
