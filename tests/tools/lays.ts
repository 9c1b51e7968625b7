/**
 * `npm run lays -- --seed 1 --count 20 --minutes 60`: lays of invented dresses held against the best of a long random search, and
 * against the bounds that no lay can go below. The long search goes on from other random orders again and again, one to four times
 * as long as the planner's each time; the minutes are for all dresses together.
 */
import { parseArgs } from "node:util";
import { layPrepared } from "../../src/core/cloth/layPrepared";
import { prepareLay } from "../../src/core/cloth/layCloth";
import { askedOf, inventedDress } from "../support/clothParts";
import { longSearch } from "../support/longSearch";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
    /** For all dresses together. */
    minutes: { type: "string", default: "10" },
  },
});
const [count, first, minutes] = [Number(values.count), Number(values.seed), Number(values.minutes)];

console.log("dress                     width     laid   took    best of a long search   over   by area  by longest");
const over: number[] = [];
let slowest = 0;
for (let seed = first; over.length < count; seed++) {
  const dress = inventedDress(seed);
  const prepared = prepareLay(askedOf(dress));
  // Half a circle does not go on every folded cloth: said by name, and another dress is taken.
  if (!prepared.ok) continue;
  const start = performance.now();
  const lay = layPrepared(prepared.value);
  const took = performance.now() - start;
  slowest = Math.max(slowest, took);
  const best = longSearch(prepared.value, (minutes * 60_000) / count, seed);
  over.push(lay.length / Math.min(best, lay.length) - 1);
  const cells = [
    dress.name.padEnd(24),
    `${lay.width}${lay.onFold ? "f" : ""}${lay.oneWay ? "↑" : ""}`.padStart(8),
    `${lay.length.toFixed(0)} mm`.padStart(9),
    `${took.toFixed(0)} ms`.padStart(8),
    `${best.toFixed(0)} mm`.padStart(12),
    percent(over.at(-1) ?? 0).padStart(18),
    lay.leastByArea.toFixed(0).padStart(9),
    lay.leastByLongest.toFixed(0).padStart(9),
  ];
  console.log(cells.join(" "));
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

const mean = over.reduce((sum, share) => sum + share, 0) / over.length;
console.log(
  `over the long search: ${percent(mean)} in the mean, ${percent(Math.max(...over))} at the most; slowest lay ${slowest.toFixed(0)} ms`,
);
