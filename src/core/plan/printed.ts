/** The pattern as it is printed: its blocks drafted, its pieces in every size and cup. */
import { chartFaults } from "../chart/chartFaults";
import type { Pattern } from "../decisions/pattern";
import type { Work } from "../decisions/work";
import { bodyOf } from "../measures/tape";
import { differenceOf, draftBlocks, printNest, type Blocks, type PrintedNest } from "../nest/printedNest";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import { fail, ok, type Result } from "../result";
import { ownPicksOf, pickSizing } from "../sizing/pickSizing";
import { draftedCup } from "../sizing/pickWay";
import type { Mm } from "../units";
import { finishedHips, finishedWaists } from "./buildPieces";
import type { PlanFailure } from "./planFailure";

interface InCup {
  readonly pattern: Pattern;
  /** null: the pattern has no cup versions. */
  readonly cup: string | null;
}

/** The blocks of every size. */
export const blocksOf: (of: Pick<InCup, "pattern">) => Blocks = remember(
  ["pattern"],
  ({ pattern }: Pick<InCup, "pattern">) => draftBlocks(pattern),
);

/** The nest in one cup version. */
export const printedIn: (of: InCup) => PrintedNest = remember(["pattern", "cup"], ({ pattern, cup }: InCup) =>
  printNest(pattern, blocksOf({ pattern }), differenceOf(pattern, cup)),
);

/** What the cup is picked by, and the pattern it is picked from. */
export type NestInputs = Pick<Work, "pattern" | "tapes" | "picks">;

/** The printed pieces in all sizes, in the cup version picked (or the drafted one): shown even before there is a plan. */
export function derivePrintedNest({ pattern, tapes, picks }: NestInputs): Result<Nest, PlanFailure> {
  const faults = chartFaults(pattern.chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const { bustGirth, upperChestGirth } = bodyOf(tapes);
  const own = ownPicksOf(pattern.chart, picks);
  if (!own.ok) return own;
  const sizing = bustGirth === undefined ? null : pickSizing(pattern.chart, bustGirth, upperChestGirth, picks);
  const cup =
    sizing?.ok === true ? sizing.value.cup.label : (own.value.cup ?? draftedCup(pattern.chart)?.label ?? null);
  return ok(printedIn({ pattern, cup }).nest);
}

/** Finished waists and hips of the printed sizes on the planner's own frame: what the lines at those levels run between. */
export const printedGirths = (
  pattern: Pattern,
  baseSize: number,
): { readonly waist: readonly Mm[]; readonly hip: readonly Mm[] | null } => ({
  waist: finishedWaists(blocksOf({ pattern }), baseSize),
  hip: finishedHips(blocksOf({ pattern })),
});
