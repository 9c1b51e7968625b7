/** The first chapter of a plan: base size, cup and fractional sizes picked, and the pieces cut by them. */
import { levelSizes } from "../blend/blendPiece";
import { chartFaults } from "../chart/chartFaults";
import type { SizeRow } from "../chart/sizeChart";
import type { Ease } from "../decisions/pattern";
import type { Work } from "../decisions/work";
import { easeOfRow } from "../draft/draftMeasures";
import { levelWidth } from "../girth/levelWidth";
import { bodyOf, measuresOf } from "../measures/tape";
import type { Blocks } from "../nest/printedNest";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import { fail, invariant, ok, type Result } from "../result";
import { rankAlternatives } from "../sizing/alternatives";
import { ownPicksOf, pickSizing } from "../sizing/pickSizing";
import type { Sizing } from "../sizing/sizing";
import { girthAt, settleLevel, solveLevel } from "../sizing/solveLevel";
import { styleOf } from "../style/index";
import type { FullBustFailure } from "../surgery/fullBust";
import { EXTRAPOLATION_STEPS } from "../tolerance";
import type { Mm } from "../units";
import { buildPieces, finishedHips, finishedWaistAt, finishedWaists, type Built } from "./buildPieces";
import { drawCutLines } from "./cutLines";
import type { PlanFailure } from "./planFailure";
import type { CutLine } from "./plan";
import { blocksOf, printedIn } from "./printed";

/** All of a work that the picks stand on; the wearer's alterations come after them. */
export type PickInputs = Pick<Work, "pattern" | "tapes" | "age" | "picks" | "easeWanted">;

/** A level that is blended: the fractional size picked, and the finished girth of each size with the base size's darts. */
export interface PickedLevel {
  readonly size: number;
  /** The finished girth at that size. */
  readonly girth: Mm;
  readonly finished: readonly Mm[];
  readonly body: Mm;
  /** One standard deviation of the body girth. */
  readonly spread: Mm;
}

export interface Picked {
  readonly sizing: Sizing;
  readonly nest: Nest;
  readonly built: Built;
  readonly cutLines: readonly CutLine[];
  /** The base size's row of the chart, and the ease drafted into it. */
  readonly row: SizeRow;
  readonly drafted: Ease;
  readonly ease: Ease;
  readonly bust: Mm;
  /** The body's hip girth, wanted or not; undefined where it was not taken. */
  readonly bodyHip: Mm | undefined;
  readonly waist: PickedLevel;
  /** null where the pattern ends at the waist. */
  readonly hip: PickedLevel | null;
}

/** A drag changes alterations alone, so picks are worked out once for the very same inputs. */
export const pickSizes: (inputs: PickInputs) => Result<Picked, PlanFailure> = remember(
  ["pattern", "tapes", "age", "picks", "easeWanted"],
  pickAndBuild,
  1,
);

function pickAndBuild({ pattern, tapes, age, picks, easeWanted }: PickInputs): Result<Picked, PlanFailure> {
  const measures = measuresOf(tapes);
  const taken = bodyOf(tapes);
  const { chart } = pattern;
  const faults = chartFaults(chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const { bustGirth, waistGirth, hipGirth } = measures;
  const toHip = pattern.length === "hip";
  if (bustGirth === undefined || waistGirth === undefined || (toHip && hipGirth === undefined)) {
    const needed = ["bustGirth", "waistGirth", ...(toHip ? (["hipGirth"] as const) : [])] as const;
    return fail({ code: "plan/measure-missing", measures: needed.filter((name) => measures[name] === undefined) });
  }

  const bustTaken = invariant(taken.bustGirth, "bust");
  const own = ownPicksOf(chart, picks);
  if (!own.ok) return own;
  const together = pickSizing(chart, bustTaken, taken.upperChestGirth, picks);
  if (!together.ok) return together;
  const { baseSize, cup, bust } = together.value;

  const blocks = blocksOf({ pattern });
  const { nest, refused } = printedIn({ pattern, cup: cup.label });
  const { index } = baseSize;
  // Another size that cannot be made in this cup is no matter: its front is just not printed.
  const cannot = refused.get(index);
  if (cannot !== undefined) return undraftable(cup.label, cannot);
  const row = invariant(chart.sizes[index], "row of the base size");
  const drafted = easeOfRow(row, pattern.ease);
  const ease: Ease = { ...drafted, ...easeWanted };

  const waists = finishedWaists(blocks, index);
  const waistTarget = waistGirth + ease.waist;
  const waistLine = pickLevel("waist", waists, waistTarget, index, picks.waist);
  if (!waistLine.ok) return waistLine;
  const waistAt = (size: number): Mm => finishedWaistAt(blocks, index, size);
  const waist = picks.waist ?? settleLevel(waistLine.value, waists, waistTarget, waistAt);
  const hips = finishedHips(blocks);
  const isToHip = hips !== null && hipGirth !== undefined;
  const hip = isToHip ? pickLevel("hip", hips, hipGirth + ease.hip, index, picks.hip) : null;
  if (hip !== null && !hip.ok) return hip;

  const at = levelSizes(index, waist, hip === null ? waist : hip.value);
  const built = buildPieces({
    blocks,
    style: styleOf(pattern.style),
    options: { strap: pattern.strap },
    at,
    cupDifference: cup.drafted,
    asked: bust.asked,
    // What she set herself is made whole or not at all.
    asMuchAsCanBe: bust.chosenBy === "residual",
    residual: bust.residual,
    body: taken,
    age,
  });
  if (!built.ok) return undraftable(cup.label, built.failure);

  return ok({
    sizing: {
      baseSize,
      cup,
      bust: { ...bust, alteration: built.value.alteration },
      alternatives: rankAlternatives({
        chart,
        girths: { bust: bustTaken, upperChest: taken.upperChestGirth ?? null },
        own: own.value,
        finished: { waist: printedWaists(blocks), hip: hips },
        waistTarget,
        hipTarget: isToHip ? hipGirth + ease.hip : null,
        picked: { baseSize: index, cup: cup.label },
      }),
    },
    nest,
    built: built.value,
    cutLines: drawCutLines(nest, built.value, at),
    row,
    drafted,
    ease,
    bust: bustGirth,
    bodyHip: hipGirth,
    waist: {
      size: waist,
      girth: waistAt(waist),
      finished: waists,
      body: waistGirth,
      spread: taken.waistGirth?.spread ?? 0,
    },
    hip:
      isToHip && hip !== null
        ? {
            size: hip.value,
            girth: girthAt(hips, hip.value),
            finished: hips,
            body: hipGirth,
            spread: taken.hipGirth?.spread ?? 0,
          }
        : null,
  });
}

function undraftable(cup: string | null, { most }: FullBustFailure): Result<never, PlanFailure> {
  return fail({ code: "plan/cup-undraftable", label: cup ?? "", least: 2 * most });
}

function pickLevel(
  level: "waist" | "hip",
  finished: readonly Mm[],
  target: Mm,
  base: number,
  own: number | undefined,
): Result<number, PlanFailure> {
  if (own !== undefined)
    return isReached(own, finished.length)
      ? ok(own)
      : fail({ code: "plan/outside-chart", level, ...girthsAbout(finished, own) });
  const solved = solveLevel(finished, target, base);
  return solved.ok ? solved : fail({ code: "plan/outside-chart", level, wanted: target, ...solved.failure });
}

const isReached = (size: number, count: number): boolean =>
  size >= -EXTRAPOLATION_STEPS && size <= count - 1 + EXTRAPOLATION_STEPS;

/** What a pick out of reach would give, and what can be reached. */
function girthsAbout(finished: readonly Mm[], size: number) {
  const reach = [girthAt(finished, -EXTRAPOLATION_STEPS), girthAt(finished, finished.length - 1 + EXTRAPOLATION_STEPS)];
  return { wanted: girthAt(finished, size), least: Math.min(...reach), most: Math.max(...reach) };
}

const printedWaists = (blocks: Blocks): readonly Mm[] =>
  blocks.front.map(
    (front, size) =>
      2 *
      (invariant(levelWidth(front, "waist"), "waist") +
        invariant(levelWidth(invariant(blocks.back[size], "size"), "waist"), "waist")),
  );
