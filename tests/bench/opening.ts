/** How long it takes to open a work file, stage by stage. What comes before the plan is done in a worker on the page. */
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { demoStories, demoWorks } from "../../src/document/demo";
import { withDrawingsAgain } from "../../src/document/drawingsOnce";
import { checkText, holdsTooMuch } from "../../src/document/readLimits";
import { workSchema } from "../../src/document/schema";
import { readAnyFile } from "../../src/document/worksFile";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { median, print, quantile } from "./table";
import { wholePlan } from "./wholePlan";

const RUNS = 15;

/** So many trials of a work on its own pieces, each sewn by its own copy of the file's lines. */
function withTrials(work: Work, count: number): Work {
  const trial = invariant(demoStories().flatMap(({ trials }) => trials ?? [])[0], "a trial");
  const { tapes, picks, pattern } = work;
  return {
    ...work,
    trials: Array.from({ length: count }, (_, at) => ({
      ...trial,
      id: `t${at}`,
      sewn: { ...trial.sewn, tapes, picks, pattern },
    })),
  };
}

const withAlterations = (work: Work, count: number): Work => ({
  ...work,
  alterations: Array.from({ length: count }, (_, i) => ({
    kind: "dartEnd" as const,
    id: `s${i}`,
    dart: { piece: i % 2 === 0 ? ("front" as const) : ("back" as const), dart: "waistDart" as const },
    shorten: i % 4 < 2 ? 1 : -1,
    across: 0,
    hold: "fullness" as const,
    giveBack: {},
  })),
});

/** The file as it was written before drawings were written once. */
const written = (work: Work): string => JSON.stringify({ bodicewright: "work", version: 9, work }, null, 2);

export function benchOpening(): void {
  const demos = demoWorks();
  const usual = invariant(demos[0], "demo work");
  const own = invariant(
    demos.find(({ pattern }) => pattern.own?.inUse === true),
    "demo work on its own pieces",
  );
  const files = [
    ["a usual one", writeWorkFile(usual)],
    ["on its own pieces", writeWorkFile(own)],
    ["20 trials with their drawings", writeWorkFile(withTrials(own, 20))],
    ["the same, each drawing in full", written(withTrials(own, 20))],
    ["200 alterations", writeWorkFile(withAlterations(usual, 200))],
  ] as const;
  const rows = files.flatMap(([name, text]) => {
    const stages = new Map<string, number[]>();
    const timed = <T>(stage: string, action: () => T): T => {
      const start = performance.now();
      const result = action();
      stages.set(stage, [...(stages.get(stage) ?? []), performance.now() - start]);
      return result;
    };
    for (let run = 0; run < RUNS; run += 1) {
      timed("size and depth of the text", () => checkText(text));
      const data: unknown = timed("parsed", () => JSON.parse(text));
      const work: unknown = Object.entries(data ?? {}).find(([key]) => key === "work")?.[1];
      timed("how much it holds", () => holdsTooMuch(work));
      timed("all by the schema, nothing shared", () => workSchema.safeParse(withDrawingsAgain(work)));
      timed("all of it, in the worker", () => readAnyFile(text));
      const read = readWorkFile(text);
      if (!read.ok) throw new Error(read.failure.code);
      timed("handed to the page", () => structuredClone(read.value));
      timed("the first plan", () => wholePlan(read.value));
    }
    return [...stages].map(([stage, times], index) => [
      index === 0 ? name : "",
      index === 0 ? text.length / 1000 : "",
      stage,
      times[0] ?? NaN,
      median(times),
      quantile(times, 0.95),
    ]);
  });
  print("Opening a work file, in Node, ms", ["file", "kB", "stage", "the first", "median", "95 %"], rows);
}
