/**
 * A process that looks at every so manieth work and tells what it finds: `node loadWorker.mjs <first> <count> <step> <seconds>`.
 * It runs as one bundled file, since what a compiler puts into each function would be timed along.
 */
import { askedOf, loaded, planTime } from "../simulation/load/loadFaults";
import { loadCase } from "../simulation/load/loadWork";
import { REPORTED, SLOW, type Told } from "../simulation/load/told";

const [first = 1, count = 0, step = 1, seconds = 0] = process.argv.slice(2).map(Number);

const bestOf = (seed: number): number => {
  const { work } = loadCase(seed);
  return Math.min(planTime(work), planTime(work), planTime(work));
};

const end = performance.now() + 1000 * seconds;
const nothing = (): Told => ({ done: 0, planned: 0, faults: [], slow: [], refused: {}, times: [] });
let told = nothing();
/** Looked at again once the process has run in: a first plan is slow because it is the first. */
const early: { readonly seed: number; readonly kind: string }[] = [];
/** Works until then. */
const RUN_IN = 300;
let all = 0;

function timedAgain(seed: number, kind: string): void {
  const ms = bestOf(seed);
  told.times.push(ms);
  if (ms > SLOW) told.slow.push({ seed, kind, ms });
}

function tell(): void {
  process.send?.(told);
  told = nothing();
}

for (let seed = first; seed < first + count && performance.now() < end; seed += step) {
  const { kind, work } = loadCase(seed);
  const { faults, refused, isPlanned, ms } = loaded(work, askedOf(seed));
  all += 1;
  if (ms <= SLOW) told.times.push(ms);
  else if (all < RUN_IN) early.push({ seed, kind });
  else timedAgain(seed, kind);
  told.faults.push(...faults.map((fault) => ({ seed, kind, fault })));
  for (const code of refused) told.refused[code] = (told.refused[code] ?? 0) + 1;
  told.done += 1;
  if (isPlanned) told.planned += 1;
  if (told.done >= REPORTED) tell();
}
for (const { seed, kind } of early) timedAgain(seed, kind);
tell();
