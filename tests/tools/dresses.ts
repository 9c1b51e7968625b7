/**
 * Hangs many random dresses on random bodies and bodices and tells what is wrong with any: `npm run dresses -- --count 2000
 * --seed 1`. Works whose bodice is itself at fault are passed over.
 */
import * as fc from "fast-check";
import { anyDressedWork } from "../support/anyDressedWork";
import { faultsOfDress } from "../support/faultsOfDress";

function argument(name: string, usual: number): number {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
}

const count = argument("count", 500);
const seed = argument("seed", 1);
const most = argument("alterations", 3);

const tally = new Map<string, number[]>();
let held = 0;
let passedOver = 0;
for (const [at, work] of fc.sample(anyDressedWork(most), { seed, numRuns: count }).entries()) {
  let faults: readonly string[] | null;
  try {
    faults = faultsOfDress(work);
  } catch (error) {
    faults = [`throws: ${error instanceof Error ? error.message : String(error)}`];
  }
  if (faults === null) passedOver += 1;
  else held += 1;
  for (const fault of new Set(faults)) tally.set(fault, [...(tally.get(fault) ?? []), at]);
}
console.log(
  `${held} dresses held against their rules, ${passedOver} works without a sound bodice passed over (seed ${seed})`,
);
for (const [fault, where] of [...tally].toSorted(([, a], [, b]) => b.length - a.length))
  console.log(`${String(where.length).padStart(5)}  ${fault}  (${where.slice(0, 5).join(", ")})`);
process.exitCode = tally.size === 0 ? 0 : 1;
