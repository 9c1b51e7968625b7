/** The pattern as it is printed, in every size and cup: what the picks are made from. */
import { chartFaults } from "../chart/chartFaults";
import type { SizeChart } from "../chart/sizeChart";
import type { Pattern } from "../decisions/pattern";
import type { Picks } from "../decisions/decided";
import type { Work } from "../decisions/work";
import { bodyOf } from "../measures/tape";
import type { Cup, PatternPieces } from "../nest/patternPieces";
import { piecesOfPattern } from "../nest/piecesOfPattern";
import type { Nest } from "../pattern/piece";
import { fail, ok, type Result } from "../result";
import { ownPicksOf, pickSizing } from "../sizing/pickSizing";
import { draftedCup } from "../sizing/pickWay";
import type { Mm } from "../units";
import type { PlanFailure } from "./planFailure";

/** What the cup is picked by, and the pattern it is picked from. */
export type NestInputs = Pick<Work, "pattern" | "tapes" | "picks">;

/** What a pattern has to be picked from: its pieces, and the picks that these leave open. */
export interface OnOffer {
  readonly pieces: PatternPieces;
  readonly chart: SizeChart;
  readonly picks: Picks;
}

/** The pieces of a pattern whose chart can be read. */
export function soundPieces(pattern: Pattern): Result<PatternPieces, PlanFailure> {
  const faults = chartFaults(pattern.chart);
  return faults > 0 ? fail({ code: "plan/chart-unusable", faults }) : piecesOfPattern({ pattern });
}

/** What there is to pick from. Of her own pieces there is the cup version that she has, and no other can be taken. */
export function onOffer({ pattern, picks }: Pick<Work, "pattern" | "picks">): Result<OnOffer, PlanFailure> {
  const found = soundPieces(pattern);
  if (!found.ok) return found;
  return ok(offerOf(found.value, picks));
}

export const offerOf = (pieces: PatternPieces, picks: Picks): OnOffer => ({
  pieces,
  chart: pieces.chart,
  picks: picksLeft(pieces, picks),
});

/** The picks without those that the pieces leave no choice of. */
function picksLeft({ source, alike }: PatternPieces, picks: Picks): Picks {
  const { cup, halfCups, waist, hip, ...others } = picks;
  return {
    ...others,
    ...(cup === undefined || source === "own" ? {} : { cup }),
    ...(halfCups === undefined || source === "own" ? {} : { halfCups }),
    ...(waist === undefined || alike.has("waist") ? {} : { waist }),
    ...(hip === undefined || alike.has("hip") ? {} : { hip }),
  };
}

/** The printed pieces in all sizes, in the cup version picked (or the drafted one): shown even before there is a plan. */
export function derivePrintedNest({ pattern, tapes, picks: asked }: NestInputs): Result<Nest, PlanFailure> {
  const offer = onOffer({ pattern, picks: asked });
  if (!offer.ok) return offer;
  const { pieces, chart, picks } = offer.value;
  const { bustGirth, upperChestGirth } = bodyOf(tapes);
  const own = ownPicksOf(chart, picks);
  if (!own.ok) return own;
  const sizing = bustGirth === undefined ? null : pickSizing(chart, bustGirth, upperChestGirth, picks);
  const cup = sizing?.ok === true ? sizing.value.cup.label : (own.value.cup ?? draftedCup(chart)?.label ?? null);
  return ok(pieces.printed(cup).nest);
}

/** Finished waist of each size at the waist, all else of the base size. */
const finishedWaists = (pieces: PatternPieces, cup: Cup, baseSize: number): readonly Mm[] =>
  pieces.chart.sizes.map((_, size) => pieces.finishedWaistAt(cup, baseSize, size));

/** Finished waists and hips of the printed sizes on the planner's own frame: what the lines at those levels run between. */
export const printedGirths = (
  pieces: PatternPieces,
  cup: Cup,
  baseSize: number,
): { readonly waist: readonly Mm[]; readonly hip: readonly Mm[] | null } => ({
  waist: finishedWaists(pieces, cup, baseSize),
  hip: pieces.finishedHips(cup),
});
