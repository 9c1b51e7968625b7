/** A process that measures test files and tries mutants, one job after another. */
import { Script } from "node:vm";
import * as fc from "fast-check";
import { collect, standInForVitest, type CollectedTest } from "./collectTests";
import { ModuleShop } from "./moduleShop";
import type { Answer, Asked, Job, MeasuredFile, MeasuredTest, Outcome, Reached } from "./protocol";
import type { Mutant } from "./listMutants";

/** ms of the processor. A test that takes longer is not asked for a mutant. */
const SLOW = 4000;
/** ms by the clock after which it is broken off, on a machine that may have more to do. */
const PATIENCE = 20_000;
/** Property tests draw the same cases in every run, and are not asked for their smallest failure. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_261_125, endOnFailure: true });

const root = process.cwd();
const standIns = new Map([["vitest", standInForVitest]]);

class TookTooLong extends Error {}

declare global {
  // oxlint-disable-next-line no-var
  var boundedCall: (() => unknown) | undefined;
}

const bounded = new Script("globalThis.boundedCall()");

const isTimeout = (error: unknown): boolean =>
  typeof error === "object" && error !== null && "code" in error && error.code === "ERR_SCRIPT_EXECUTION_TIMEOUT";

/** Calls a function, breaking it off after a time, even where it goes round for ever. */
function within<T>(ms: number, call: () => T): T {
  let result: { readonly value: T } | undefined;
  globalThis.boundedCall = () => {
    result = { value: call() };
  };
  try {
    bounded.runInThisContext({ timeout: Math.max(1, Math.ceil(ms)) });
  } catch (error) {
    if (isTimeout(error)) throw new TookTooLong();
    throw error;
  }
  if (result === undefined) throw new TookTooLong();
  return result.value;
}

const isPromise = (value: unknown): value is Promise<unknown> => value instanceof Promise;

async function runTest(test: CollectedTest, ms: number): Promise<void> {
  const result = within(ms, () => test.run());
  if (!isPromise(result)) return;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new TookTooLong()), ms);
  });
  try {
    await Promise.race([result, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** ms of the processor that this process has taken. */
const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const wordOf = (error: unknown): string => (error instanceof Error ? error.message : String(error)).slice(0, 300);

globalThis.reachedFunctions = {};

/** What was reached since the last time. */
function takeReached(): Reached {
  const reached: Reached = {};
  for (const [file, functions] of Object.entries(globalThis.reachedFunctions))
    if (functions.includes(1)) {
      reached[file] = packed(functions);
      functions.fill(0);
    }
  return reached;
}

function packed(functions: Uint8Array): string {
  const bytes = new Uint8Array(Math.ceil(functions.length / 8));
  for (const [at, value] of functions.entries())
    if (value === 1) bytes[at >> 3] = (bytes[at >> 3] ?? 0) | (1 << (at & 7));
  return Buffer.from(bytes).toString("base64");
}

async function measure(file: string): Promise<MeasuredFile> {
  // What is remembered between files would hide what a test reaches: everything is run anew.
  const shop = new ModuleShop(root, true, standIns);
  globalThis.reachedFunctions = {};
  const hash = shop.hash(file);
  await shop.bringPackages(file);
  const begin = spent();
  let tests: CollectedTest[];
  try {
    tests = within(60_000, () => collect(() => void shop.load(file)));
  } catch (error) {
    return { file, hash, sources: {}, ms: 0, reached: {}, tests: [], failed: wordOf(error) };
  }
  const ms = spent() - begin;
  const reached = takeReached();
  const measured: MeasuredTest[] = [];
  for (const test of tests) {
    const from = spent();
    let left: { left?: "slow" | "failing" } = {};
    try {
      await runTest(test, PATIENCE);
      if (spent() - from > SLOW) left = { left: "slow" };
    } catch (error) {
      left = { left: error instanceof TookTooLong ? "slow" : "failing" };
      if (left.left === "failing") process.stderr.write(`${file}: ${test.name}: ${wordOf(error)}\n`);
    }
    measured.push({ name: test.name, ms: spent() - from, reached: takeReached(), ...left });
  }
  const sources = Object.fromEntries(
    [...shop.deep(file)]
      .filter((one) => one === file || one.startsWith("src/core/"))
      .map((one) => [one, shop.digest(one)]),
  );
  return { file, hash, sources, ms, reached, tests: measured };
}

const shop = new ModuleShop(root, false, standIns);
const known = new Set<string>();

async function tryMutant(mutant: Mutant, asked: readonly Asked[]): Promise<Outcome> {
  for (const { file } of asked)
    if (!known.has(file)) {
      known.add(file);
      shop.deep(file);
      await shop.bringPackages(file);
      // Without a mutant first: what stands from run to run is then as it should be.
      collect(() => void shop.load(file));
    }
  const { text } = shop.source(mutant.file);
  const planted = { file: mutant.file, text: text.slice(0, mutant.from) + mutant.replacement + text.slice(mutant.to) };
  let load: (file: string) => unknown;
  try {
    load = shop.plant(planted);
  } catch (error) {
    return { end: "killed", by: "no module", why: wordOf(error) };
  }
  let count = 0;
  for (const one of asked) {
    const limit = 2000 + one.ms * 10;
    let by = one.file;
    try {
      const tests = within(limit, () => collect(() => void load(one.file)));
      const wanted = one.tests === "all" || tests.length !== one.count ? tests.keys() : one.tests;
      for (const at of wanted) {
        const test = tests[at];
        if (test === undefined) continue;
        by = `${one.file} > ${test.name}`;
        count += 1;
        await runTest(test, limit);
      }
    } catch (error) {
      if (!(error instanceof TookTooLong)) return { end: "killed", by, why: wordOf(error) };
      shop.forget();
      return { end: "timeout", by };
    }
  }
  return { end: "survived", asked: count };
}

async function answer(job: Job): Promise<Answer> {
  if (job.kind === "measure") return { kind: "measured", measured: await measure(job.file) };
  const from = spent();
  const outcome = await tryMutant(job.mutant, job.asked);
  return { kind: "tried", outcome, ms: spent() - from };
}

process.on("message", (job: Job) => {
  answer(job).then(
    (told) => process.send?.(told),
    (error: unknown) => {
      process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
      process.exit(1);
    },
  );
});
// A test that was broken off may still fail when nobody waits for it.
process.on("unhandledRejection", () => undefined);
process.send?.("ready");
