/** The normal distribution, for how likely another pick was. */

/**
 * Probability that a standard normal value lies below z.
 *
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17; |error| < 7.5e-8
 */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = Math.exp((-z * z) / 2) * 0.3989422804014327 * poly;
  return z > 0 ? 1 - tail : tail;
}

/** Nine of ten normal values lie within this many standard deviations (Abramowitz and Stegun, table 26.5: Q(1.64485) = 0.05). */
export const NINE_OF_TEN = 1.64485;

/** Rate of the standard normal distribution in its middle: 1/√(2π). */
export const NORMAL_PEAK = 0.3989422804014327;

/** Points and weights of the Gauss–Legendre rule with 8 points on −1 to 1, the positive half (Abramowitz and Stegun, table 25.4). */
const GAUSS = [
  [0.18343464249565, 0.362683783378362],
  [0.525532409916329, 0.313706645877887],
  [0.796666477413627, 0.222381034453374],
  [0.960289856497536, 0.101228536290376],
] as const;

export interface WeighedPlace {
  readonly at: number;
  /** Rate of the normal distribution there, by what the place stands for: the weights of a whole line come to 1. */
  readonly weight: number;
}

/**
 * Places and weights that integrate a smooth function against a normal distribution over a stretch.
 *
 * @param from,to stretch, in the unit of the mean
 * @param finest  longest piece that one rule of 8 points is trusted with, in the same unit
 */
export function weighedPlaces(
  mean: number,
  spread: number,
  from: number,
  to: number,
  finest: number,
): readonly WeighedPlace[] {
  const count = Math.max(1, Math.ceil((to - from) / finest));
  const half = (to - from) / count / 2;
  const places: WeighedPlace[] = [];
  for (let i = 0; i < count; i += 1) {
    const middle = from + (2 * i + 1) * half;
    for (const [x, w] of GAUSS) {
      for (const at of [middle - x * half, middle + x * half]) {
        const z = (at - mean) / spread;
        places.push({ at, weight: (w * half * NORMAL_PEAK * Math.exp((-z * z) / 2)) / spread });
      }
    }
  }
  return places;
}

/**
 * What a normal value is to be expected above 0, all that lies below counted as nothing.
 *
 * @source E max(X, 0) = σ φ(m/σ) + m Φ(m/σ)
 */
export function expectedAbove(mean: number, spread: number): number {
  const z = mean / spread;
  return spread * NORMAL_PEAK * Math.exp((-z * z) / 2) + mean * normalBelow(z);
}
