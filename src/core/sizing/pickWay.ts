/**
 * The one rule for base size, cup and bust: of all that a chart offers, the base size and cup of least expected harm, picked
 * together; of near ties the one with the smaller alteration.
 *
 * Nothing can make the finished bust smaller as the bust grows: a mm left unaltered always harms at least what altering it
 * would (`tests/core/sizing/pickWay.test.ts`).
 */
import type { CupVersion, SizeChart } from "../chart/sizeChart";
import { remember } from "../remember";
import { invariant } from "../result";
import { HARM_ALIKE, HARM_TIE } from "../tolerance";
import type { Mm } from "../units";
import { alterationFor, bustHarm, frameHarm, type SizeInterval } from "./harm";
import { intervalOf, pickInterval } from "./pickInterval";
import type { Taken } from "./sizing";

/** A base size and a cup of a chart. */
export interface Offer extends SizeInterval {
  /** Place of the base size in the chart. */
  readonly index: number;
  /** null: the pattern has no cup versions. */
  readonly cup: CupVersion | null;
  /** What it is drafted for: bust less upper chest. */
  readonly drafted: Mm;
  /** The bust that it is drafted for: chart bust − drafted difference + cup difference. */
  readonly bust: Mm;
}

/** What the wearer set herself. */
export interface OwnPicks {
  /** Place of the base size in the chart. */
  readonly baseSize?: number | undefined;
  readonly cup?: string | undefined;
  /** Whole change of the bust girth. */
  readonly bustAlteration?: Mm | undefined;
}

export interface TakenGirths {
  readonly bust: Taken;
  /** null: not taken, so that the base size goes by the bust. */
  readonly upperChest: Taken | null;
}

export interface WeighedWay {
  readonly offer: Offer;
  /** Body bust less the offer's. */
  readonly residual: Mm;
  readonly alteration: Mm;
  readonly harm: number;
}

/** All that a chart offers, from the smallest size, in each size from the smallest cup. */
const offersOf: (of: { readonly chart: SizeChart }) => readonly Offer[] = remember(["chart"], listOffers);

function listOffers({ chart }: { readonly chart: SizeChart }): readonly Offer[] {
  const upperChests = chart.sizes.map(({ bust }) => bust - chart.draftedDifference);
  const cups = chart.cups.length === 0 ? [null] : chart.cups;
  return upperChests.flatMap((upperChest, index) =>
    cups.map((cup) => {
      const drafted = cup?.difference ?? chart.draftedDifference;
      return { ...intervalOf(upperChests, index), index, cup, drafted, upperChest, bust: upperChest + drafted };
    }),
  );
}

/** The version that the chart's bust column stands for: the nearest to the drafted difference; null without cup versions. */
export function draftedCup({ cups, draftedDifference }: SizeChart): CupVersion | null {
  const differences = cups.map(({ difference }) => difference);
  return cups.length === 0 ? null : invariant(cups[pickInterval(differences, draftedDifference).index], "cup");
}

/** What is left of a chart's offers by the wearer's own picks. Without an upper chest nothing tells the cup: the drafted one is taken. */
export function offersFor(chart: SizeChart, own: OwnPicks, byBust: boolean): readonly Offer[] {
  const cup = own.cup ?? (byBust ? draftedCup(chart)?.label : undefined);
  return offersOf({ chart }).filter(
    (offer) =>
      (own.baseSize === undefined || offer.index === own.baseSize) && (cup === undefined || offer.cup?.label === cup),
  );
}

/** Expected harm of each offer's base size. Without an upper chest she is taken to have the difference that the offer is drafted for. */
export function frameHarms(offers: readonly Offer[], { bust, upperChest }: TakenGirths): readonly number[] {
  const harms: number[] = [];
  let [index, harm] = [-1, 0];
  for (const offer of offers) {
    // Where an upper chest was taken all cups of a size harm alike.
    if (upperChest === null) harm = frameHarm({ value: bust.value - offer.drafted, spread: bust.spread }, offer);
    else if (offer.index !== index) harm = frameHarm(upperChest, offer);
    index = offer.index;
    harms.push(harm);
  }
  return harms;
}

/**
 * The offer of least harm at a bust.
 *
 * @param frames expected harm of each offer's base size
 * @param own    the wearer's own alteration
 * @returns its place; of near ties the one with the smaller alteration, of ways alike the larger
 */
export function leastHarm(offers: readonly Offer[], frames: readonly number[], bust: Taken, own?: Mm): number {
  const { value, spread } = bust;
  const harms: number[] = [];
  let least = Infinity;
  for (let i = 0; i < offers.length; i += 1) {
    const residual = value - (offers[i]?.bust ?? 0);
    const frame = frames[i] ?? 0;
    // The sum over the toile costs most, and is at least nothing.
    const harm =
      frame > least + HARM_TIE ? Infinity : frame + bustHarm(residual, own ?? alterationFor(residual), spread);
    harms.push(harm);
    if (harm < least) least = harm;
  }
  let best = -1;
  let bestAmount = Infinity;
  for (let i = 0; i < offers.length; i += 1) {
    const harm = harms[i] ?? Infinity;
    if (harm > least + HARM_TIE) continue;
    const amount = own === undefined ? Math.abs(alterationFor(value - (offers[i]?.bust ?? 0))) : 0;
    const isLess = amount < bestAmount || (amount === bestAmount && harm <= (harms[best] ?? Infinity) + HARM_ALIKE);
    if (!isLess) continue;
    best = i;
    bestAmount = amount;
  }
  return best;
}

/** One offer weighed for a body. */
export function weighWay(offer: Offer, girths: TakenGirths, own?: Mm): WeighedWay {
  const residual = girths.bust.value - offer.bust;
  const alteration = own ?? alterationFor(residual);
  const [frame] = frameHarms([offer], girths);
  return {
    offer,
    residual,
    alteration,
    harm: invariant(frame, "frame") + bustHarm(residual, alteration, girths.bust.spread),
  };
}

/** The way that the planner cuts a body, the wearer's own picks obeyed and the rest chosen around them. */
export function pickWay(chart: SizeChart, girths: TakenGirths, own: OwnPicks = {}): WeighedWay {
  const offers = offersFor(chart, own, girths.upperChest === null);
  return weighWay(pickOffer(offers, girths, own.bustAlteration), girths, own.bustAlteration);
}

/** The offer of least harm to a body. */
export const pickOffer = (offers: readonly Offer[], girths: TakenGirths, own?: Mm): Offer =>
  invariant(offers[leastHarm(offers, frameHarms(offers, girths), girths.bust, own)], "offer");
