/**
 * Many random works through the whole core: `npm run load -- --seed 1 --count 100000`. Each seed is one work of its own
 * (`tests/simulation/load`): planned, dressed, a share of them cut, laid on pages and told in words. Tells every fault with its
 * seed, how often what was refused, how long plans take and each over 50 ms. `--only 1234` looks at the work of one seed and
 * writes it as a file to open on the page; `--workers 1` takes one process, `--seconds 600` stops after so long.
 */
import { fork } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import { writeWorkFile } from "../../src/document/workFile";
import { ASKED_ALL, loaded, planTime } from "../simulation/load/loadFaults";
import { loadCase } from "../simulation/load/loadWork";
import { SLOW, toldSchema, type Told } from "../simulation/load/told";

const { values } = parseArgs({
  options: {
    seed: { type: "string", default: "1" },
    count: { type: "string", default: "100000" },
    only: { type: "string" },
    workers: { type: "string", default: String(availableParallelism()) },
    seconds: { type: "string", default: "1000000" },
  },
});

/** Faults of one name that are told as they are found. */
const TOLD_AT_ONCE = 3;
/** Works between two lines of progress. */
const PROGRESS = 200;

/** All that the processes have told. */
class Found {
  readonly #count: number;
  readonly #begun = performance.now();
  readonly #times: number[] = [];
  readonly #faults = new Map<string, number[]>();
  readonly #slow: Told["slow"] = [];
  readonly #refused = new Map<string, number>();
  #done = 0;
  #planned = 0;

  constructor(count: number) {
    this.#count = count;
  }

  add({ done, planned, times, slow, faults, refused }: Told): void {
    const before = this.#done;
    this.#done += done;
    this.#planned += planned;
    this.#times.push(...times);
    this.#slow.push(...slow);
    for (const { seed, kind, ms } of slow) console.log(`  ${ms.toFixed(0)} ms: seed ${seed} (${kind})`);
    for (const { seed, kind, fault } of faults) {
      const seeds = this.#faults.get(fault) ?? [];
      this.#faults.set(fault, [...seeds, seed]);
      if (seeds.length < TOLD_AT_ONCE) console.log(`  ${fault}: seed ${seed} (${kind})`);
    }
    for (const [code, times_] of Object.entries(refused))
      this.#refused.set(code, (this.#refused.get(code) ?? 0) + times_);
    if (Math.floor(this.#done / PROGRESS) === Math.floor(before / PROGRESS)) return;
    console.log(`  ${this.#done} of ${this.#count}, ${(this.#done / this.#seconds).toFixed(1)} works a second`);
  }

  get #seconds(): number {
    return (performance.now() - this.#begun) / 1000;
  }

  tell(): void {
    const sorted = this.#times.toSorted((a, b) => a - b);
    const at = (share: number): string =>
      (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0).toFixed(1);
    console.log(`\n${this.#done} works in ${this.#seconds.toFixed(0)} s, ${this.#planned} with a plan`);
    console.log(`a plan, ms: median ${at(0.5)}, 99 % ${at(0.99)}, 99.9 % ${at(0.999)}, worst ${at(1)}`);
    console.log(`over ${SLOW} ms, the least of three: ${this.#slow.length}`);
    for (const { seed, kind, ms } of this.#slow.toSorted((a, b) => b.ms - a.ms))
      console.log(`  ${ms.toFixed(1)} ms: seed ${seed} (${kind})`);
    for (const [fault, seeds] of this.#faults)
      console.log(`${fault}: ${seeds.length} (seeds ${seeds.slice(0, 6).join(", ")})`);
    if (this.#faults.size === 0) console.log("no fault");
    for (const [code, times] of [...this.#refused].toSorted((a, b) => b[1] - a[1])) console.log(`  ${code}: ${times}`);
    if (this.#faults.size > 0) process.exitCode = 1;
  }
}

if (values.only !== undefined) lookAtOne(Number(values.only));
else await shareOut(Number(values.seed), Number(values.count), Math.max(1, Number(values.workers)));

function lookAtOne(seed: number): void {
  const { kind, work } = loadCase(seed);
  mkdirSync("test-results", { recursive: true });
  const file = `test-results/load-${seed}.json`;
  writeFileSync(file, writeWorkFile({ ...work, name: `Load ${seed}` }));
  const { faults, refused, isPlanned } = loaded(work, ASKED_ALL);
  const ms = Math.min(...Array.from({ length: 20 }, () => planTime(work)));
  console.log(`${seed}: ${kind}, ${isPlanned ? "planned" : "no plan"}; ${file}`);
  console.log(`  ${ms.toFixed(1)} ms; refused: ${refused.join(", ") || "nothing"}`);
  for (const fault of faults) console.log(`  ${fault}`);
  if (faults.length > 0) process.exitCode = 1;
}

/** Each process takes every so manieth seed. */
async function shareOut(seed: number, count: number, workers: number): Promise<void> {
  const outfile = `node_modules/.cache/bodicewright-load-${process.pid}/worker.mjs`;
  const entry = fileURLToPath(new URL("loadWorker.ts", import.meta.url));
  // The survey is found from where it is asked for.
  const define = { "import.meta.url": JSON.stringify(new URL("../support/surveys.ts", import.meta.url).href) };
  await build({
    entryPoints: [entry],
    outfile,
    define,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
  });
  const found = new Found(count);
  console.log(`${count} works from seed ${seed}, ${workers} processes`);
  await Promise.all(
    Array.from({ length: workers }, (_, part) => {
      const child = fork(outfile, [seed + part, count - part, workers, values.seconds].map(String), { execArgv: [] });
      child.on("message", (message) => found.add(toldSchema.parse(message)));
      return new Promise<void>((resolve) => {
        child.on("exit", (code) => {
          // What was found until then is told all the same.
          if (code !== 0) {
            console.log(`  a process ended with ${code ?? "a signal"}`);
            process.exitCode = 1;
          }
          resolve();
        });
      });
    }),
  );
  found.tell();
}
