/**
 * Plants small faults in the core, one at a time, and counts how many the tests of the core notice:
 * `npm run mutants` tries all, `-- dart girth` those of these folders, `-- --sample 60 --seed 3` as many of each folder by
 * chance. `--budget 4` is how many seconds of tests are asked for a mutant at most, `--show` lists those nobody noticed.
 *
 * What each test reaches, and how long it takes, is measured first and kept for as long as nothing that it depends on is
 * changed; `--stale` keeps it for as long as the test itself is not, which is quick and not quite exact.
 *
 * The golden outlines (tests/golden) are never asked: they would notice nearly everything and prove nothing.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import * as z from "zod/mini";
import { equivalentOf, readEquivalents } from "../mutants/equivalents";
import { testsAskedFor } from "../mutants/askedTests";
import { listMutants, type Mutant } from "../mutants/listMutants";
import { functionsOf } from "../mutants/markFunctions";
import { ModuleShop } from "../mutants/moduleShop";
import { doAll, type Work } from "../mutants/pool";
import type { MeasuredFile, Outcome } from "../mutants/protocol";
import { notCompiling } from "../mutants/typedMutants";

const root = fileURLToPath(new URL("../..", import.meta.url));
process.chdir(root);

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: "string" },
    seed: { type: "string", default: "1" },
    budget: { type: "string", default: "4" },
    workers: { type: "string", default: String(Math.min(cpus().length, 8)) },
    stale: { type: "boolean", default: false },
    show: { type: "boolean", default: false },
    out: { type: "string", default: join("test-results", "mutants.json") },
  },
});

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => join(entry.parentPath, entry.name))
    .toSorted();

/** The room of a file; what stands in the core itself is a room too. */
const roomOf = (file: string): string => {
  const [, , room = "", ...more] = file.split("/");
  return more.length === 0 ? "core" : room;
};

/** Numbers by chance, the same for the same seed (a xorshift of 32 bits). */
function chance(seed: number): () => number {
  let state = (seed * 2_654_435_761) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}

/** As many by chance, in their order. */
function sampled<T>(all: readonly T[], count: number, random: () => number): T[] {
  const places = all.map((_, at) => ({ at, by: random() })).toSorted((a, b) => a.by - b.by);
  const kept = new Set(places.slice(0, count).map(({ at }) => at));
  return all.filter((_, at) => kept.has(at));
}

const isAsked = (file: string): boolean =>
  positionals.length === 0 || positionals.some((asked) => roomOf(file) === asked || file.includes(`src/core/${asked}`));

const coreFiles = filesIn(join("src", "core")).filter(isAsked);
if (coreFiles.length === 0) throw new Error(`there is no folder of the core named ${positionals.join(" or ")}`);
const workers = Number(options.workers);
const budget = Number(options.budget) * 1000;

// What the runner itself stands in for (`vi.mock`) has no stand-in here.
const testFiles = filesIn(join("tests", "core")).filter(
  (file) => file.endsWith(".test.ts") && !readFileSync(file, "utf8").includes("vi.mock("),
);

const shop = new ModuleShop(root, false, new Map());
const begin = performance.now();
const seconds = (): string => `${Math.round((performance.now() - begin) / 1000)} s`;

const all = await listMutants(root, coreFiles);
const equivalents = readEquivalents();
const random = chance(Number(options.seed));
const byRoom = new Map<string, Mutant[]>();
for (const mutant of all) {
  const room = byRoom.get(roomOf(mutant.file)) ?? [];
  byRoom.set(roomOf(mutant.file), room);
  room.push(mutant);
}
const chosen = [...byRoom.values()].flatMap((some) =>
  options.sample === undefined ? some : sampled(some, Number(options.sample), random),
);
process.stderr.write(`${all.length} mutants, ${chosen.length} of them to be tried (${seconds()})\n`);

// ── what tests reach, and how long they take ──

const Measured = z.object({
  file: z.string(),
  hash: z.string(),
  sources: z.record(z.string(), z.string()),
  ms: z.number(),
  reached: z.record(z.string(), z.string()),
  tests: z.array(
    z.object({
      name: z.string(),
      ms: z.number(),
      reached: z.record(z.string(), z.string()),
      left: z.optional(z.enum(["slow", "failing"])),
    }),
  ),
  failed: z.optional(z.string()),
});

const cache = join("node_modules", ".cache", "mutants");
mkdirSync(cache, { recursive: true });
const cached = (file: string): string => join(cache, `${file.replaceAll(/[/\\]/g, ".")}.json`);

function known(file: string): MeasuredFile | null {
  try {
    const measured = Measured.parse(JSON.parse(readFileSync(cached(file), "utf8")));
    const isSame = options.stale ? measured.sources[file] === shop.digest(file) : measured.hash === shop.hash(file);
    return isSame ? measured : null;
  } catch {
    return null;
  }
}

const touched = new Set(chosen.map(({ file }) => file));
const wanted = testFiles.filter((file) => [...shop.deep(file)].some((one) => touched.has(one)));
const measured: MeasuredFile[] = [];
const unknown: string[] = [];
for (const file of wanted) {
  const found = known(file);
  if (found === null) unknown.push(file);
  else measured.push(found);
}
process.stderr.write(`${wanted.length} test files, ${unknown.length} of them to be measured\n`);
await doAll(
  unknown.map((file) => ({
    job: { kind: "measure", file },
    patience: 600_000,
    done: (answer) => {
      if (answer?.kind !== "measured") process.stderr.write(`${file} could not be measured\n`);
      else {
        measured.push(answer.measured);
        writeFileSync(cached(file), JSON.stringify(answer.measured));
        if (answer.measured.failed !== undefined) process.stderr.write(`${file}: ${answer.measured.failed}\n`);
      }
    },
  })),
  workers,
);
const slow = measured.flatMap((one) => one.tests.filter(({ left }) => left !== undefined)).length;
process.stderr.write(`measured (${seconds()}); ${slow} tests are too slow, or fail here, and are not asked\n`);

// ── the mutants ──

interface Tried {
  readonly mutant: Mutant;
  readonly end: Outcome["end"] | "unreached" | "equivalent" | "not compiling";
  readonly by?: string;
  readonly why?: string;
  /** Of the processor. */
  readonly ms?: number;
}

const functions = new Map([...touched].map((file) => [file, functionsOf(file, shop.source(file).text)]));
const tried: Tried[] = [];
let told = 0;
/** One at a time: which tests are asked for all mutants would fill the memory. */
function* works(): Generator<Work> {
  for (const mutant of chosen) {
    told += 1;
    if (told % 500 === 0) process.stderr.write(`${told} of ${chosen.length} (${seconds()})\n`);
    const why = equivalentOf(equivalents, mutant, shop.source(mutant.file).text);
    if (why !== null) {
      tried.push({ mutant, end: "equivalent", why });
      continue;
    }
    const asked = testsAskedFor(mutant, functions.get(mutant.file) ?? [], measured, shop, budget);
    if (asked.length === 0) {
      tried.push({ mutant, end: "unreached" });
      continue;
    }
    yield {
      job: { kind: "try", mutant, asked },
      patience: 30_000 + asked.reduce((sum, one) => sum + one.ms, 0) * 10,
      done: (answer) => {
        if (answer?.kind !== "tried") {
          tried.push({ mutant, end: "timeout", by: "the process ended" });
          return;
        }
        const { outcome, ms } = answer;
        tried.push({
          mutant,
          end: outcome.end,
          ms: Math.round(ms),
          ...(outcome.end === "survived" ? {} : { by: outcome.by }),
          ...(outcome.end === "killed" ? { why: outcome.why } : {}),
        });
      },
    };
  }
}
await doAll(works(), workers);

const unnoticed = tried.filter(({ end }) => end === "survived" || end === "unreached");
const refused = notCompiling(
  root,
  unnoticed.map(({ mutant }) => mutant),
);
const results = tried.map((one): Tried =>
  refused.has(one.mutant) ? { mutant: one.mutant, end: "not compiling" } : one,
);

// ── the table ──

const share = (part: number, whole: number): string => (whole === 0 ? "–" : `${((100 * part) / whole).toFixed(1)} %`);

/** Half of the range that holds the true share in 95 of 100 samples (normal approximation, of a part of a finite whole). */
function doubt(part: number, whole: number, population: number): string {
  if (whole === 0 || whole >= population) return "";
  const p = part / whole;
  const finite = Math.sqrt((population - whole) / Math.max(1, population - 1));
  return ` ± ${(196 * Math.sqrt((p * (1 - p)) / whole) * finite).toFixed(1)}`;
}

const count = (some: readonly Tried[], ...ends: Tried["end"][]): number =>
  some.filter(({ end }) => ends.includes(end)).length;

function row(room: string, some: readonly Tried[], population: number): string {
  const noticed = count(some, "killed", "timeout");
  const missed = count(some, "survived", "unreached");
  const equivalent = count(some, "equivalent");
  return `| ${room} | ${population} | ${some.length} | ${noticed} | ${count(some, "survived")} | ${count(some, "unreached")} | ${count(some, "not compiling")} | ${equivalent} (${share(equivalent, some.length)}) | ${share(noticed, noticed + missed)}${doubt(noticed, noticed + missed, population)} |`;
}

process.stdout.write(
  "| folder | mutants | tried | noticed | unnoticed | unreached | not compiling | equivalent | score |\n",
);
process.stdout.write("| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
for (const [room, some] of [...byRoom].toSorted(([a], [b]) => a.localeCompare(b)))
  process.stdout.write(
    `${row(
      room,
      results.filter(({ mutant }) => roomOf(mutant.file) === room),
      some.length,
    )}\n`,
  );
process.stdout.write(`${row("all", results, all.length)}\n`);

const textOf = ({ mutant }: Tried): string => {
  const { text } = shop.source(mutant.file);
  return text.slice(mutant.from, mutant.to);
};
mkdirSync(join(options.out, ".."), { recursive: true });
writeFileSync(
  options.out,
  JSON.stringify(
    results.map((one) => ({
      ...one.mutant,
      original: textOf(one),
      end: one.end,
      by: one.by,
      why: one.why,
      ms: one.ms,
    })),
    null,
    1,
  ),
);
if (options.show)
  for (const one of results.filter(({ end }) => end === "survived" || end === "unreached")) {
    const { file, line, mutator, replacement } = one.mutant;
    process.stdout.write(`\n${file}:${line} ${mutator}${one.end === "unreached" ? " (no test reaches it)" : ""}\n`);
    process.stdout.write(`- ${textOf(one).slice(0, 300)}\n+ ${replacement.slice(0, 300)}\n`);
  }
process.stderr.write(`done (${seconds()}); every mutant in ${options.out}\n`);
