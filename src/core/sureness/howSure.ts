/**
 * How sure the picks are: the planner's own rule, asked of all that the body may measure given what the tape read
 * (`ruleRegions.ts`). So it can say how often another way would have been picked, and never argues with the one that is.
 */
import type { PlanFailure } from "../plan/planFailure";
import { estimatesOf } from "../bodies/estimate";
import type { SizeChart } from "../chart/sizeChart";
import { bodyOf } from "../measures/tape";
import { onOffer, printedGirths, type OnOffer } from "../plan/printed";
import type { Work } from "../decisions/work";
import { fail, ok, type Result } from "../result";
import { LINE_BAND_WIDE } from "../tolerance";
import type { Mm } from "../units";
import { NINE_OF_TEN, normalBelow } from "../statistics/normal";
import { ownPicksOf, outsideOf } from "../sizing/pickSizing";
import { pickWay, type OwnPicks } from "../sizing/pickWay";
import type { Taken } from "../sizing/sizing";
import { solveLevel } from "../sizing/solveLevel";
import { waysOf, wayOf, type BustDone, type Way, type WayTaken } from "./ruleRegions";
import { suretyOf, type Surety } from "./surety";

export interface Chance {
  readonly label: string | null;
  readonly probability: number;
}

/** How far a line at the waist or the hip may lie from where it is drawn, nine times in ten. */
export interface LineBand {
  readonly level: "waist" | "hip";
  /** One standard deviation of the girth. */
  readonly spread: Mm;
  /** Fractional sizes; null where the chart does not reach so far. */
  readonly from: number | null;
  readonly to: number | null;
  /** Either way at each of the four side-seam edges: a quarter of what the girth may be out. */
  readonly side: Mm;
}

export interface HowSure {
  /** Most likely first; they add up to 1. Without an upper chest they go by the bust alone, as the plan does. */
  readonly ways: readonly Way[];
  readonly sizes: readonly Chance[];
  /** Where no upper chest was taken: the base sizes that what it probably is would pick; empty where nothing tells it. */
  readonly sizesGuessed: readonly Chance[];
  /** Empty where the pattern has no cup versions. */
  readonly cups: readonly Chance[];
  readonly bust: Readonly<Record<BustDone, number>>;
  /** No upper chest was taken: `cups` go by what it probably is, and the plan does not. */
  readonly cupsGuessed: boolean;
  /** What the wearer set herself: that is not in doubt, and the rest is told around it. */
  readonly own: { readonly baseSize: boolean; readonly cup: boolean; readonly bust: boolean };
  /** What the plan cuts, going by the measures as they were read. */
  readonly picked: WayTaken;
  /** The likeliest other size and cup; null where there is none. */
  readonly runnerUp: RunnerUp | null;
  readonly lines: readonly LineBand[];
  /** Of each pick by itself. */
  readonly surety: Sureties;
  /** What rests on a reading that is doubted; none until the doubts are asked (`withDoubts`). */
  readonly doubted: readonly (keyof Sureties)[];
  /** What it all stands on. */
  readonly girths: Girths;
}

interface RunnerUp {
  readonly size: string;
  readonly cup: string | null;
  /** Whatever is then done at the bust. */
  readonly probability: number;
}

/** How sure each pick is; null where there is nothing to pick, nothing tells it, or the wearer set it herself. */
export interface Sureties {
  readonly baseSize: Surety | null;
  readonly cup: Surety | null;
  readonly bust: Surety | null;
  readonly waist: Surety | null;
  readonly hip: Surety | null;
}

export interface Girths {
  readonly bust: Taken;
  /** null: not taken. */
  readonly upperChest: Taken | null;
  /** What the other measures say of the upper chest; null where it was taken, or where they say nothing. */
  readonly estimate: Taken | null;
}

/** What the picks stand on. */
export type SureInputs = Pick<Work, "pattern" | "tapes" | "age" | "easeWanted" | "picks">;

/** How sure the picks of a work are. */
export function howSure(work: SureInputs): Result<HowSure, PlanFailure> {
  const offer = onOffer(work);
  if (!offer.ok) return offer;
  const { chart, picks } = offer.value;
  const girths = girthsOf(work);
  if (girths === null) return fail({ code: "plan/measure-missing", measures: ["bustGirth"] });
  const known = ownPicksOf(chart, picks);
  if (!known.ok) return known;
  const own = known.value;
  const { estimate } = girths;
  const ways = waysOf(chart, girths, own);
  // Taken as independent, though the estimate leans on the bust too: it is much the wider of the two, so little is lost.
  const told = estimate === null ? ways : waysOf(chart, { ...girths, upperChest: estimate }, own);
  const picked = pickedOf(chart, girths, own);
  const sizes = marginal(ways, ({ size }) => size);
  const cups = chart.cups.length === 0 ? [] : marginal(told, ({ cup }) => cup);
  const bust = { nothing: shareOf(ways, "nothing"), full: shareOf(ways, "full"), small: shareOf(ways, "small") };
  const lines = linesOf(work, offer.value, girths, own);
  const isOff = picked.size === null;
  return ok({
    ways,
    sizes,
    sizesGuessed: estimate === null ? [] : marginal(told, ({ size }) => size),
    cups,
    bust,
    cupsGuessed: estimate !== null,
    own: { baseSize: own.baseSize !== undefined, cup: own.cup !== undefined, bust: own.bustAlteration !== undefined },
    picked,
    runnerUp: runnerUpOf(ways, picked),
    lines,
    surety: {
      baseSize: own.baseSize === undefined ? suretyAmong(sizes, picked.size) : null,
      cup: own.cup === undefined ? suretyAmong(cups, picked.cup) : null,
      bust: isOff || own.bustAlteration !== undefined ? null : suretyOf(bust[picked.bust]),
      waist: picks.waist === undefined ? suretyOfLine(lines, "waist") : null,
      hip: picks.hip === undefined ? suretyOfLine(lines, "hip") : null,
    },
    doubted: [],
    girths,
  });
}

/** What the plan cuts. */
function pickedOf(chart: SizeChart, girths: Girths, own: OwnPicks): WayTaken {
  if (own.baseSize === undefined && outsideOf(chart, girths) !== null)
    return { size: null, cup: null, bust: "nothing" };
  const { offer, alteration } = pickWay(chart, girths, own);
  return wayOf(chart, offer, alteration);
}

/** Of the other sizes and cups the likeliest, whatever is done at their bust. */
function runnerUpOf(ways: readonly Way[], picked: WayTaken): RunnerUp | null {
  const others = new Map<string, RunnerUp>();
  for (const { size, cup, probability } of ways) {
    if (size === null || (size === picked.size && cup === picked.cup)) continue;
    const key = JSON.stringify([size, cup]);
    others.set(key, { size, cup, probability: (others.get(key)?.probability ?? 0) + probability });
  }
  return [...others.values()].toSorted((a, b) => b.probability - a.probability)[0] ?? null;
}

function suretyAmong(chances: readonly Chance[], label: string | null): Surety | null {
  if (label === null) return null;
  return suretyOf(chances.find((chance) => chance.label === label)?.probability ?? 0);
}

/** A line is as sure as it is that it lies within `LINE_BAND_WIDE` of where it is drawn, at each of four side-seam edges. */
function suretyOfLine(lines: readonly LineBand[], level: LineBand["level"]): Surety | null {
  const line = lines.find((one) => one.level === level);
  return line === undefined ? null : suretyOf(1 - 2 * normalBelow((-4 * LINE_BAND_WIDE) / line.spread));
}

/** The girths that base size and cup stand on; null without a bust. */
function girthsOf({ tapes, age }: SureInputs): Girths | null {
  const body = bodyOf(tapes);
  const { bustGirth, upperChestGirth } = body;
  if (bustGirth === undefined) return null;
  const bust = { value: bustGirth.value, spread: bustGirth.spread };
  if (upperChestGirth !== undefined) {
    return { bust, upperChest: { value: upperChestGirth.value, spread: upperChestGirth.spread }, estimate: null };
  }
  const told = estimatesOf(body, age).upperChestGirth;
  return {
    bust,
    upperChest: null,
    estimate: told === undefined ? null : { value: told.value, spread: (told.most - told.least) / (2 * NINE_OF_TEN) },
  };
}

/** Probability of each label, the likeliest first. */
function marginal(ways: readonly Way[], labelOf: (way: Way) => string | null): readonly Chance[] {
  const sums = new Map<string | null, number>();
  for (const way of ways) sums.set(labelOf(way), (sums.get(labelOf(way)) ?? 0) + way.probability);
  return [...sums]
    .map(([label, probability]) => ({ label, probability }))
    .toSorted((a, b) => b.probability - a.probability);
}

const shareOf = (ways: readonly Way[], done: BustDone): number =>
  ways.reduce((sum, way) => sum + (way.bust === done ? way.probability : 0), 0);

/** The lines at waist and hip, on the base size that is cut. */
function linesOf(work: SureInputs, { pieces, chart }: OnOffer, girths: Girths, own: OwnPicks): readonly LineBand[] {
  if (own.baseSize === undefined && outsideOf(chart, girths) !== null) return [];
  const { index, cup } = pickWay(chart, girths, own).offer;
  const label = cup?.label ?? null;
  const body = bodyOf(work.tapes);
  const ease = {
    ...pieces.easeOf(label, index),
    ...work.easeWanted,
  };
  const printed = printedGirths(pieces, label, index);
  const lines: LineBand[] = [];
  for (const level of ["waist", "hip"] as const) {
    const girth = level === "waist" ? body.waistGirth : body.hipGirth;
    const finished = printed[level];
    if (girth === undefined || finished === null || pieces.alike.has(level)) continue;
    const out = NINE_OF_TEN * girth.spread;
    const [from, to] = [-out, out].map((by) => {
      const solved = solveLevel(finished, girth.value + ease[level] + by, index);
      return solved.ok ? solved.value : null;
    });
    lines.push({ level, spread: girth.spread, from: from ?? null, to: to ?? null, side: out / 4 });
  }
  return lines;
}
