/**
 * The measures a demo block is drafted from, for one row of a size chart.
 *
 * A chart prints girths only. The rest (lengths, widths, neck) is filled in by proportion to the bust, about the
 * block's worked size (bust 880 mm). The steps are common practice, no source, set beside two outside figures: a
 * textbook's grade (memory: neck +10, across back +10, shoulder +2.5, armhole depth +4 a 40 mm bust step) and straight
 * lines through a public-domain survey of 2208 women (neck base +6, across back +10, bust-point separation +5.4, side
 * neck to bust point +8.9, front less back waist length +3.1; shoulder +0.5), whose largest bust is 1176 mm.
 */
import type { Ease } from "../decisions/pattern";
import type { SizeChart, SizeRow } from "../chart/sizeChart";
import { radiansFromDegrees, type Mm, type Radians } from "../units";

export interface DraftMeasures {
  /** Bust girth of the body at the block's own difference (`BLOCK_DIFFERENCE`), and the ease over it. */
  readonly bust: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
  readonly ease: Ease;
  readonly backWaistLength: Mm;
  readonly frontWaistLength: Mm;
  readonly neckBaseGirth: Mm;
  readonly acrossBack: Mm;
  readonly acrossFront: Mm;
  readonly shoulderLength: Mm;
  readonly bustPointWidth: Mm;
  readonly sideNeckToBustPoint: Mm;
  readonly scyeDepth: Mm;
  readonly waistToHip: Mm;
  readonly bustDart: Radians;
}

/** mm. Bust − upper chest the block is drafted for; other differences are made from it by a bust alteration. */
export const BLOCK_DIFFERENCE: Mm = 50;

const WORKED_BUST: Mm = 880;
const STEP: Mm = 40;

/**
 * At bust 880 mm; the change for each 40 mm of bust; and a further change for each 40 mm that slackens as sizes grow. Neck,
 * shoulders and chest are bone before they are flesh, and the front gains less on the back where the whole body is larger:
 * run on straight to a bust of 1520, the neck would be 65 mm over the survey's, and the arms' width more than the shoulders'.
 */
const PROPORTIONS = {
  backWaistLength: [410, 3, 0],
  frontWaistLength: [432, 3, 2.6],
  neckBaseGirth: [370, 0, 6.5],
  acrossBack: [345, 0, 9],
  acrossFront: [325, 0, 8],
  shoulderLength: [122, 0, 2.5],
  bustPointWidth: [190, 5.5, 0],
  sideNeckToBustPoint: [265, 7, 0],
  scyeDepth: [210, 4, 0],
  waistToHip: [200, 1, 0],
} as const satisfies Partial<Record<keyof DraftMeasures, readonly [Mm, Mm, Mm]>>;

/** After so many steps of 40 mm a slackening change is down to 1/e, about a third, of what it is at bust 880. */
const SLACKENING = 20;

const stepsTo = (bust: Mm): number => (bust - WORKED_BUST) / STEP;
const slackening = (steps: number): number => SLACKENING * (1 - Math.exp(-steps / SLACKENING));

/** What a draft goes by for one bust girth (mm, at the block's own difference): the trade's proportions, body measures alone. */
export function proportionAt(name: keyof typeof PROPORTIONS, bust: Mm): Mm {
  const proportion = PROPORTIONS[name];
  const steps = stepsTo(bust);
  return proportion[0] + proportion[1] * steps + proportion[2] * slackening(steps);
}

/**
 * Degrees at bust 880, and the slackening change for each 40 mm. Two textbooks (memory) give 16.1 and 19.5° there; in the
 * largest sizes it keeps beside the flatter of the two.
 */
const BUST_DART = { worked: 17.5, slack: 0.8 };

/**
 * Measures to draft one size of a chart from.
 *
 * @param row   the size; girths in mm
 * @param chart its chart, for the difference its bust column is drafted for
 * @param ease  ease drafted in where the row prints no finished girth; mm
 */
export function draftMeasuresFor(row: SizeRow, chart: SizeChart, ease: Ease): DraftMeasures {
  const bust = row.bust - chart.draftedDifference + BLOCK_DIFFERENCE;
  const at = (name: keyof typeof PROPORTIONS): Mm => proportionAt(name, bust);
  const dart = BUST_DART.worked + BUST_DART.slack * slackening(stepsTo(bust));
  return {
    bust,
    waist: row.waist,
    hip: row.hip,
    ease: easeOfRow(row, ease),
    backWaistLength: at("backWaistLength"),
    frontWaistLength: at("frontWaistLength"),
    neckBaseGirth: at("neckBaseGirth"),
    acrossBack: at("acrossBack"),
    acrossFront: at("acrossFront"),
    shoulderLength: at("shoulderLength"),
    bustPointWidth: at("bustPointWidth"),
    sideNeckToBustPoint: at("sideNeckToBustPoint"),
    scyeDepth: at("scyeDepth"),
    waistToHip: at("waistToHip"),
    bustDart: radiansFromDegrees(dart),
  };
}

/** The smallest and the largest of what the sizes of a pattern are drafted by; null where it has none, or the draft no such measure. */
export function draftedFigures(
  { chart }: { readonly chart: SizeChart },
  measure: string,
): { readonly least: Mm; readonly most: Mm } | null {
  if (!isProportion(measure) || chart.sizes.length === 0) return null;
  const all = chart.sizes.map(({ bust }) => proportionAt(measure, bust - chart.draftedDifference + BLOCK_DIFFERENCE));
  return { least: Math.min(...all), most: Math.max(...all) };
}

const isProportion = (measure: string): measure is keyof typeof PROPORTIONS => Object.hasOwn(PROPORTIONS, measure);

/** The ease of one size: finished girth less body girth where printed, else the pattern's. */
export function easeOfRow(row: SizeRow, ease: Ease): Ease {
  return {
    bust: row.finishedBust === undefined ? ease.bust : row.finishedBust - row.bust,
    waist: row.finishedWaist === undefined ? ease.waist : row.finishedWaist - row.waist,
    hip: row.finishedHip === undefined ? ease.hip : row.finishedHip - row.hip,
  };
}
