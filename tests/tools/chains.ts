/**
 * Plans many random chains of alterations and tells what is slow or makes no sense:
 * `npm run chains -- --count 30000 --seed 7`. `--show "harsh midriff 8 31"` prints the work of a line that was told.
 * Half of the chains are a wearer's (`anyChainWork`), half harsher; they are spread evenly over the styles.
 */
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { derivePlan } from "../../src/core/plan/derivePlan";
import * as fc from "fast-check";
import { anyChainWork } from "../support/anyChainWork";
import { faultsOfPlan } from "../support/faultsOfPlan";
import { harshChainWork } from "../support/harshChainWork";

const KINDS = { usual: anyChainWork, harsh: harshChainWork } as const;
const KIND_NAMES = ["usual", "harsh"] as const;

/** Chains drawn at a time from one seed. */
const SLICE = 250;
/** ms. A plan that takes longer is felt in a drag. */
const SLOW = 50;

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

/** Patterns that are alike are made one object, so that their nest is drafted once, as on the page. */
const patterns = new Map<string, Work["pattern"]>();
function withSharedPattern(work: Work): Work {
  const key = JSON.stringify(work.pattern);
  const pattern = patterns.get(key) ?? work.pattern;
  patterns.set(key, pattern);
  return { ...work, pattern };
}

/**
 * ms that a plan takes when a measure changed: sizes are picked and every alteration is made again. The processor's own
 * time where that is less: what others on the machine took is no part of it.
 */
function timed(work: Work): number {
  const again = { ...work, tapes: [...work.tapes] };
  const [start, cpu] = [performance.now(), process.cpuUsage()];
  derivePlan(again);
  const own = process.cpuUsage(cpu);
  return Math.min(performance.now() - start, (own.user + own.system) / 1000);
}

/** Others may share the machine: the best of three says what the plan itself takes. */
const bestOfThree = (work: Work): number => Math.min(timed(work), timed(work), timed(work));

function slice(kind: keyof typeof KINDS, style: (typeof STYLE_NAMES)[number], seed: number, count: number) {
  return fc.sample(KINDS[kind](style), { seed, numRuns: count }).map(withSharedPattern);
}

const shown = argument("show")?.split(" ");
if (shown !== undefined) {
  const [kind, style, seed, at] = shown;
  const works = slice(
    KIND_NAMES.find((name) => name === kind) ?? "usual",
    STYLE_NAMES.find((name) => name === style) ?? "sideDart",
    Number(seed),
    SLICE,
  );
  console.log(JSON.stringify(works[Number(at)], null, 2));
} else {
  planMany(Number(argument("count") ?? 30_000), Number(argument("seed") ?? 7));
}

function planMany(count: number, seed: number): void {
  const groups = KIND_NAMES.flatMap((kind) => STYLE_NAMES.map((style) => ({ kind, style })));
  const told = new Map<string, string[]>();
  const tell = (what: string, where: string): void => void told.set(what, [...(told.get(what) ?? []), where]);
  const refused = new Map<string, number>();
  const times: number[] = [];
  let slow = 0;
  let slowest = { ms: 0, where: "" };
  let done = 0;
  console.log(`${count} chains, seed ${seed}`);
  for (let piece = 0; done < count; piece += 1) {
    for (const { kind, style } of groups) {
      const sliceSeed =
        (seed * 1000 + piece) * groups.length + groups.findIndex((one) => one.kind === kind && one.style === style);
      const begun = performance.now();
      for (const [at, work] of slice(kind, style, sliceSeed, SLICE).entries()) {
        if (done >= count) break;
        done += 1;
        const where = `${kind} ${style} ${sliceSeed} ${at}`;
        const start = performance.now();
        try {
          const plan = derivePlan(work);
          let ms = performance.now() - start;
          if (ms > SLOW) ms = Math.min(ms, bestOfThree(work));
          times.push(ms);
          if (ms > SLOW) {
            slow += 1;
            console.log(`  ${ms.toFixed(0)} ms: ${where}`);
          }
          if (ms > slowest.ms) slowest = { ms, where };
          for (const fault of faultsOfPlan(plan)) {
            tell(fault, where);
            if ((told.get(fault) ?? []).length <= 3) console.log(`  ${fault}: ${where}`);
          }
          const codes = plan.ok
            ? plan.value.ledger.flatMap(({ outcome }) => (outcome.ok ? [] : [outcome.failure.code]))
            : [plan.failure.code];
          for (const code of codes) refused.set(code, (refused.get(code) ?? 0) + 1);
        } catch (error) {
          const message = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
          tell(`thrown: ${message}`, where);
          console.log(`  thrown: ${message}: ${where}`);
        }
      }
      console.log(
        `  ${done} done; ${kind} ${style} ${sliceSeed}: ${((performance.now() - begun) / 1000).toFixed(1)} s`,
      );
    }
  }
  const sorted = times.toSorted((a, b) => a - b);
  const quantile = (share: number): string => (sorted[Math.floor(share * sorted.length)] ?? 0).toFixed(1);
  console.log(`\nplans: ${done}; ms: median ${quantile(0.5)}, 99 % ${quantile(0.99)}, 99.9 % ${quantile(0.999)}`);
  console.log(`slowest: ${slowest.ms.toFixed(1)} ms (${slowest.where}); over ${SLOW} ms: ${slow}`);
  for (const [what, places] of told) console.log(`${what}: ${places.length} (${places.slice(0, 5).join("; ")})`);
  if (told.size === 0) console.log("no throw, no number that is none, no absurd girth, no crossing outline untold");
  for (const [code, times_] of [...refused].toSorted((a, b) => b[1] - a[1])) console.log(`  ${code}: ${times_}`);
  if (told.size > 0 || slow > 0) process.exitCode = 1;
}
