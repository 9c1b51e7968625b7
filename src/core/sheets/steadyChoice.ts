/** A row of choices that look arbitrary and are the same every time: the search wants variety, the core wants one answer. */

/** Whole numbers from 0 on, below the bound given at each call. */
export type Chooser = (below: number) => number;

/** @source the "minimal standard" linear congruential generator, multiplier 48271, modulus 2³¹ - 1 */
export function steadyChooser(): Chooser {
  let state = 1;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return Math.floor((state / 2_147_483_647) * below);
  };
}

/** The same things in another order. */
export function shuffled<T>(things: readonly T[], choose: Chooser): readonly T[] {
  const left = [...things];
  return things.flatMap(() => left.splice(choose(left.length), 1));
}
