/**
 * Large samples: `npm test` looks at a share of each, `npm run whole` at all of it. The share is drawn evenly, one of so many
 * that follow each other, and is the same in every run; `SEED=random`, or `SEED` and a number, draws another.
 */
const { SEED, WHOLE } = process.env;
const seed = SEED === undefined ? 20_261_125 : SEED === "random" ? Date.now() : Number(SEED);

/** How many random cases of a property are looked at: a quarter of all, or all where the whole is asked for. */
export const runsOf = (all: number): number => (WHOLE === undefined ? Math.ceil(all / 4) : all);

/** A number from 0 up to 1, the same for the same two whole numbers: their bits stirred by multiplying and shifting. */
function drawn(turn: number, block: number): number {
  const first = Math.imul(seed ^ Math.imul(turn + 1, 0x9e3779b1), 0x85ebca6b);
  const second = Math.imul((first ^ (first >>> 15)) + Math.imul(block + 1, 0x27d4eb2f), 0xc2b2ae35);
  return ((second ^ (second >>> 13)) >>> 0) / 2 ** 32;
}

/**
 * One of each `so` that follow each other, or all of them where the whole is asked for.
 *
 * @param turn others for each of several tests that share a sample
 */
export function shareOf<T>(all: readonly T[], so: number, turn = 0): readonly T[] {
  if (WHOLE !== undefined) return all;
  return Array.from({ length: Math.ceil(all.length / so) }, (_, block) => {
    const from = all.slice(block * so, (block + 1) * so);
    return from.slice(Math.floor(drawn(turn, block) * from.length)).slice(0, 1);
  }).flat();
}
