/** How a foreign house drafts: everything that is drawn by lot for a nest, and the numbers of each of its sizes. */
import { diceOf } from "./dice";
import type { DrawnOptions, ForeignChartRow, ForeignOptions } from "./foreignTypes";

export interface Habit {
  readonly options: DrawnOptions;
  readonly ease: { readonly bust: number; readonly waist: number; readonly hip: number };
  readonly shoulderEase: number;
  /** Front wider than back at the bust, each half of it. */
  readonly frontMore: number;
  readonly frontMoreAtWaist: number;
  readonly lean: number;
  readonly scoopParts: number;
  readonly armholeParts: number;
  readonly sizes: readonly SizeNumbers[];
}

export interface SizeNumbers {
  readonly row: ForeignChartRow;
  readonly index: number;
  readonly neckWidth: number;
  readonly neckDepth: number;
  readonly backNeckDepth: number;
  readonly shoulder: number;
  readonly slope: number;
  readonly acrossFront: number;
  readonly acrossBack: number;
  /** Bust point: from the centre, and below the side neck. */
  readonly bustPointOut: number;
  readonly bustPointDown: number;
  readonly bustToWaist: number;
  readonly underarmAboveBust: number;
  readonly frontDart: number;
  readonly backDart: number;
  /** Mouth of the side or French dart; 0 where there is none. */
  readonly bustDart: number;
  /** Along the side seam from the bust line to the dart. */
  readonly bustDartDown: number;
  readonly waistToHip: number;
  readonly hemBelowHip: number;
}

export function habitOf({ body, ...given }: ForeignOptions): Habit {
  const dice = diceOf(given.seed);
  const drawn: DrawnOptions = {
    seed: given.seed,
    sizes: Math.round(dice.from(3, 6)),
    front: dice.one(["side", "french", "waist", "princessArmhole", "princessShoulder", "side", "french"]),
    neck: dice.one(["scoop", "round", "v", "square", "sweetheart"]),
    darts: dice.one(["one intake", "graded"]),
    grading: dice.one(["even", "uneven"]),
    basque: dice.chance(0.5),
    hem: dice.chance(0.8) ? "plain" : "scalloped",
    side: dice.one(["straight", "curved", "shaped"]),
    unlike: dice.chance(0.5),
    other: dice.chance(0.3),
  };
  const options = { ...drawn, ...given };
  const uneven = options.grading === "uneven";
  let [bust, waist, hip] = [dice.from(780, 900), 0, 0];
  waist = bust - dice.from(170, 230);
  hip = bust + dice.from(30, 90);
  if (body !== undefined) [bust, waist, hip] = [body.bust, body.waist, body.hip];
  const first = dice.one([4, 8, 34, 40]);
  const rows: ForeignChartRow[] = [];
  for (let i = 0; i < options.sizes; i += 1) {
    rows.push({ label: String(first + 2 * i), bust, waist, hip });
    const step = uneven ? dice.from(25, 65) : 45;
    bust += step;
    waist += uneven ? step * dice.from(0.8, 1.25) : step;
    hip += uneven ? step * dice.from(0.75, 1.15) : step;
  }
  const ease = {
    bust: Math.round(dice.from(50, 100)),
    waist: Math.round(dice.from(25, 60)),
    hip: Math.round(dice.from(40, 70)),
  };
  const h = {
    neck: dice.from(60, 95),
    neckDepth: dice.from(75, 130),
    backNeck: dice.from(15, 40),
    shoulder: dice.from(85, 125),
    slope: dice.from(0.3, 0.42),
    across: dice.from(0.36, 0.385),
    bustOut: dice.from(82, 98),
    bustDown: dice.from(245, 275),
    bustToWaist: dice.from(150, 185),
    underarm: dice.from(40, 60),
    frontDart: dice.from(22, 38),
    backDart: dice.from(20, 32),
    bustDart: dice.from(22, 45),
    down: dice.from(15, 45),
    hip: dice.from(190, 215),
    hem: dice.from(10, 60),
  };
  const hasBustDart = options.front === "side" || options.front === "french";
  const sizes = rows.map((row, index): SizeNumbers => {
    const grown = row.bust - (rows[0]?.bust ?? row.bust);
    const graded = options.darts === "graded" ? grown * 0.03 : 0;
    const own = uneven ? dice.from(-1.5, 1.5) : 0;
    const bustDart = hasBustDart ? h.bustDart + grown * 0.04 : 0;
    return {
      row,
      index,
      neckWidth: h.neck + grown * 0.03 + own,
      neckDepth: h.neckDepth + grown * 0.03,
      backNeckDepth: h.backNeck + grown * 0.006,
      shoulder: h.shoulder + grown * 0.02 + own,
      slope: h.slope,
      acrossFront: (row.bust * h.across) / 2 + own,
      acrossBack: (row.bust * h.across) / 2 + 8,
      bustPointOut: h.bustOut + grown * 0.06,
      bustPointDown: h.bustDown + grown * 0.06,
      bustToWaist: h.bustToWaist + grown * 0.01,
      underarmAboveBust: h.underarm,
      frontDart: options.front === "none" ? 0 : h.frontDart + graded,
      backDart: h.backDart + graded,
      bustDart,
      bustDartDown: options.front === "french" ? h.bustToWaist * 0.62 : h.down,
      waistToHip: h.hip + grown * 0.01,
      hemBelowHip: h.hem,
    };
  });
  return {
    options,
    ease,
    shoulderEase: dice.one([0, 4, 6, 8]),
    frontMore: dice.from(-4, 12),
    frontMoreAtWaist: dice.from(-4, 12),
    lean: dice.from(-8, 8),
    scoopParts: dice.one([2, 3]),
    armholeParts: dice.one([1, 2, 3]),
    sizes,
  };
}

/** Quarters of the finished girths, front and back. */
export const quarters = ({ ease, frontMore, frontMoreAtWaist }: Habit, { row }: SizeNumbers) => ({
  bust: { front: (row.bust + ease.bust) / 4 + frontMore, back: (row.bust + ease.bust) / 4 - frontMore },
  waist: {
    front: (row.waist + ease.waist) / 4 + frontMoreAtWaist,
    back: (row.waist + ease.waist) / 4 - frontMoreAtWaist,
  },
  hip: { front: (row.hip + ease.hip) / 4 + 4, back: (row.hip + ease.hip) / 4 - 4 },
});
