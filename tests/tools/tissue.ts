/** `npm run tissue -- --count 500 --seed 1`: the stand-in brought to tapes of foreign nests, held against the truth. */
import { parseArgs } from "node:util";
import { NINE_OF_TEN } from "../../src/core/statistics/normal";
import { caseOf, COUNTS, cornerErrors, finishedOf, fitOf, waistMiss } from "../support/tissueTally";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "100" },
    seed: { type: "string", default: "1" },
    corners: { type: "boolean", default: false },
  },
});
const [count, first] = [Number(values.count), Number(values.seed)];

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
const spreadOut = (misses: readonly number[]): string => {
  const sorted = misses.map(Math.abs).toSorted((a, b) => a - b);
  return [0.5, 0.9, 1].map((share) => at(sorted, share).toFixed(1).padStart(6)).join(" ");
};
interface Held {
  in: number;
  all: number;
  z2: number;
}
const tally = new Map<string, Held>();
const hold = (key: string, off: number, spread: number): void => {
  const held = tally.get(key) ?? { in: 0, all: 0, z2: 0 };
  held.all += 1;
  held.z2 += (off / spread) ** 2;
  if (Math.abs(off) <= NINE_OF_TEN * spread) held.in += 1;
  tally.set(key, held);
};
const line = (key: string): string => {
  const held = tally.get(key);
  return held === undefined
    ? "–"
    : `${((100 * held.in) / held.all).toFixed(1)} % (${held.all}), rms ${Math.sqrt(held.z2 / held.all).toFixed(2)}`;
};

const misses = new Map<string, number[]>();
const add = (key: string, value: number): void => {
  misses.set(key, [...(misses.get(key) ?? []), value]);
};
let [beyond, within, answers] = [0, 0, 0];
const saved = { told: 0, real: 0, n: 0 };
const start = performance.now();
for (let seed = first; seed < first + count; seed += 1) {
  const c = caseOf(seed);
  const truth = c.truth.sizes[c.measured] ?? [];
  const share = ((seed * 37) % 100) / 50 - 1;
  const kind = c.printed ? "printed" : "unprinted";
  add(`${kind} plain waist`, waistMiss(c.standIn, c, share));
  add(`${kind} plain girth`, finishedOf(c.standIn.sizes[c.measured] ?? [], "waist") - finishedOf(truth, "waist"));
  for (const n of COUNTS) {
    const fit = fitOf(c, n);
    const own = fit.nest.sizes[c.measured] ?? [];
    for (const level of ["bust", "waist"] as const) {
      const off = finishedOf(own, level) - finishedOf(truth, level);
      const spread = fit.doubt.finished[level] ?? NaN;
      hold(`${n} ${level}`, off, spread);
      hold(`${n} ${level} ${kind}`, off, spread);
      add(`${n} ${level} told`, spread);
      add(`${n} ${level} off`, off);
      const [next] = fit.next;
      if (level === "waist" && next !== undefined && n > 0 && n < 100) {
        const after = fitOf(
          {
            ...c,
            readings: [
              ...c.readings.slice(0, n),
              ...c.readings.slice(n).toSorted((a) => (a.piece === next.piece && a.length === next.length ? -1 : 0)),
            ],
          },
          n + 1,
        );
        saved.told += spread ** 2 - (after.doubt.finished.waist ?? 0) ** 2;
        saved.real +=
          off ** 2 - (finishedOf(after.nest.sizes[c.measured] ?? [], "waist") - finishedOf(truth, "waist")) ** 2;
        saved.n += 1;
      }
    }
    for (const { name, off, spread } of cornerErrors(c, fit)) {
      hold(`${n} corners`, off, spread);
      hold(`${n} corner ${name}`, off, spread);
      add(`${n} corner off`, off);
    }
    if (n > 0) {
      add(`${kind} ${n} fitted waist`, waistMiss(fit.nest, c, share));
      answers += Math.min(n, c.readings.length);
      beyond += fit.misfits.filter(({ withinTape }) => !withinTape).length;
      within += fit.misfits.filter(({ withinTape }) => withinTape).length;
      add("moves", Math.max(...fit.moves.here.map(Math.abs)));
    }
  }
}
const seconds = (performance.now() - start) / 1000;
console.log(`${count} nests from seed ${first}, ${seconds.toFixed(0)} s. Held at nine of ten:`);
for (const n of COUNTS) {
  console.log(
    `  ${n} answers: corners ${line(`${n} corners`)}; waist ${line(`${n} waist`)}; bust ${line(`${n} bust`)}`,
  );
  console.log(
    `      printed: waist ${line(`${n} waist printed`)} bust ${line(`${n} bust printed`)}; unprinted: waist ${line(`${n} waist unprinted`)} bust ${line(`${n} bust unprinted`)}`,
  );
  console.log(
    `      off (median, 90th, worst) waist ${spreadOut(misses.get(`${n} waist off`) ?? [])} told ${spreadOut(misses.get(`${n} waist told`) ?? [])}; bust ${spreadOut(misses.get(`${n} bust off`) ?? [])} told ${spreadOut(misses.get(`${n} bust told`) ?? [])}; corners ${spreadOut(misses.get(`${n} corner off`) ?? [])}`,
  );
}
console.log("The plan's finished waist misses (median, 90th, worst, mm):");
for (const kind of ["printed", "unprinted"]) {
  console.log(`  ${kind}: plain ${spreadOut(misses.get(`${kind} plain waist`) ?? [])}`);
  for (const n of COUNTS)
    if (n > 0) console.log(`  ${kind}: ${n} answers ${spreadOut(misses.get(`${kind} ${n} fitted waist`) ?? [])}`);
}
console.log(
  `next: told ${Math.sqrt(Math.max(0, saved.told / saved.n)).toFixed(2)}, real ${Math.sqrt(Math.max(0, saved.real / saved.n)).toFixed(2)} mm of waist (root of mean square saved, ${saved.n})`,
);
console.log(
  `misfits beyond a tape's doubt ${beyond}, within it ${within}, of ${answers} answers; furthest freedom ${spreadOut(misses.get("moves") ?? [])}`,
);
if (values.corners) {
  for (const [key, held] of [...tally]
    .filter(([key]) => / corner /.test(key))
    .toSorted(([a], [b]) => a.localeCompare(b)))
    if (held.all > count / 20) console.log(key.padEnd(50), line(key));
}
