/** Repeatable draws of the foreign nests' own. */
export interface Dice {
  /** From low to high. */
  readonly from: (low: number, high: number) => number;
  readonly one: <T>(of: readonly [T, ...T[]]) => T;
  readonly chance: (share: number) => boolean;
}

/** @source mulberry32, a public-domain generator of 32 bits */
export function diceOf(seed: number): Dice {
  let state = seed * 2654435761 + 1;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const from = (low: number, high: number): number => low + (high - low) * next();
  return {
    from,
    one: (of) => of[Math.floor(next() * of.length)] ?? of[0],
    chance: (share) => next() < share,
  };
}
