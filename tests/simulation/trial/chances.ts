/** Repeatable chances. */
import { diceOf } from "../../support/foreign/dice";

export interface Chances {
  readonly from: (low: number, high: number) => number;
  readonly is: (share: number) => boolean;
  /** Of a list that is not empty. */
  readonly one: <T>(of: readonly T[]) => T;
  /** Standard normal, by twelve even ones. */
  readonly normal: () => number;
  readonly shuffled: <T>(of: readonly T[]) => readonly T[];
}

export function chancesOf(seed: number): Chances {
  // Spread over 21 bits, so that the dice's own product with it stays exact.
  const dice = diceOf(Math.imul(seed, 0x9e3779b1) >>> 11);
  const one = <T>(of: readonly T[]): T => {
    const found = of[Math.min(of.length - 1, Math.floor(dice.from(0, of.length)))];
    if (found === undefined) throw new Error("nothing to draw from");
    return found;
  };
  return {
    from: dice.from,
    is: dice.chance,
    one,
    normal: () => Array.from({ length: 12 }, () => dice.from(0, 1)).reduce((a, b) => a + b, -6),
    shuffled: (of) =>
      of
        .map((item) => ({ item, at: dice.from(0, 1) }))
        .toSorted((a, b) => a.at - b.at)
        .map(({ item }) => item),
  };
}
