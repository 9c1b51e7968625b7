/** Trials in the file: merged part by part, salvaged line by line, and the drawing they were sewn by written once. */
import { describe, expect, it } from "vitest";
import type { OwnPattern } from "../../src/core/decisions/ownPattern";
import type { Observation, Trial } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand, type Command } from "../../src/core/plan/commands";
import { mergeWorks } from "../../src/document/mergeWorks";
import { salvageWork } from "../../src/document/salvageWork";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { parseWork, readWorkFile, workInOrder, writeWorkFile } from "../../src/document/workFile";
import { readWorksFile, writeWorksFile } from "../../src/document/worksFile";
import { createBackup } from "../../src/store/backup";
import { readSavedWork } from "../../src/store/readSavedWork";
import { collisionWords } from "../../src/words/collisions";
import { sampleWork } from "../support/sampleWork";

const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);
const copyOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const line = (id: string, more: Partial<Observation> = {}): Observation => ({
  id,
  place: "blades",
  sign: "tight",
  ...more,
});
const seeing = (trial: string, observation: Observation): Command => ({ kind: "putObservation", trial, observation });

const base = run(
  sampleWork,
  { kind: "beginTrial", id: "t1", day: "2026-11-20" },
  seeing("t1", line("a", { amount: 4 })),
  seeing("t1", line("b")),
);
const trialOf = (work: Work, id = "t1"): Trial | undefined => work.trials?.find((one) => one.id === id);

describe("two tabs at one trial", () => {
  const merged = (mine: readonly Command[], theirs: readonly Command[]) =>
    mergeWorks(base, run(base, ...mine), run(base, ...theirs));

  it("keep what each of them wrote: other lines, other parts, ticks and lengths of the toile", () => {
    const { work, collisions } = merged(
      [
        seeing("t1", line("c", { amount: 9 })),
        { kind: "setTrialText", trial: "t1", of: "bra", text: "the new one" },
        { kind: "setTrialCheck", trial: "t1", check: "canSit", is: false },
        { kind: "setToileLength", trial: "t1", length: "shoulder", value: 120 },
      ],
      [
        seeing("t1", line("a", { amount: 6 })),
        { kind: "removeObservation", trial: "t1", id: "b" },
        { kind: "setTrialText", trial: "t1", of: "shoes", text: "flat" },
        { kind: "setTrialCheck", trial: "t1", check: "hemLevel", is: true },
        { kind: "setToileLength", trial: "t1", length: "bustGirth", value: 950 },
      ],
    );
    expect(collisions).toEqual([]);
    expect(trialOf(work)).toEqual({
      ...trialOf(base),
      observations: [line("a", { amount: 6 }), line("c", { amount: 9 })],
      bra: "the new one",
      shoes: "flat",
      checks: { canSit: false, hemLevel: true },
      measured: { shoulder: 120, bustGirth: 950 },
    });
    expect(parseWork(work).ok).toBe(true);
  });

  it("collide where both wrote the same line otherwise, and only there, in words", () => {
    const { work, collisions } = merged(
      [seeing("t1", line("a", { amount: 5 })), seeing("t1", line("b", { amount: 1 }))],
      [seeing("t1", line("a", { amount: 6 }))],
    );
    expect(trialOf(work)?.observations).toEqual([line("a", { amount: 6 }), line("b", { amount: 1 })]);
    expect(collisions.map(collisionWords)).toEqual(["what was seen in the trial of 2026-11-20"]);
  });

  it("name the part that both set otherwise", () => {
    const cloth = (text: string): Command => ({ kind: "setTrialText", trial: "t1", of: "cloth", text });
    const { work, collisions } = merged([cloth("calico")], [cloth("an old sheet")]);
    expect(trialOf(work)?.cloth).toBe("an old sheet");
    expect(collisions.map(collisionWords)).toEqual(["the cloth of the trial of 2026-11-20"]);
  });

  it("keep both answers that were taken, theirs first", () => {
    const taking = (cause: string): Command => ({
      kind: "takeTrialAnswer",
      trial: "t1",
      answer: { causes: [cause], because: ["a"], alterations: [] },
      alterations: [],
    });
    const { work, collisions } = merged([taking("swayBack")], [taking("roundBack")]);
    expect(collisions).toEqual([]);
    expect(trialOf(work)?.taken?.map(({ causes }) => causes)).toEqual([["roundBack"], ["swayBack"]]);
  });

  it("never make a base of a trial that is open again", () => {
    const closed = run(base, { kind: "setVerdict", trial: "t1", verdict: "keep" });
    const { work, collisions } = mergeWorks(
      closed,
      run(closed, { kind: "setBase", trial: "t1", isBase: true }),
      run(closed, { kind: "setVerdict", trial: "t1", verdict: null }),
    );
    expect(trialOf(work)).not.toHaveProperty("base");
    expect(collisions.map(collisionWords)).toEqual(["whether it is kept as the base of the trial of 2026-11-20"]);
  });

  it("put trials of their own in the order of their days, the newest first", () => {
    const { work, collisions } = merged(
      [{ kind: "beginTrial", id: "mine", day: "2026-11-26" }],
      [{ kind: "beginTrial", id: "theirs", day: "2026-11-25" }],
    );
    expect(work.trials?.map(({ id }) => id)).toEqual(["mine", "theirs", "t1"]);
    expect(collisions).toEqual([]);
  });
});

describe("a damaged trial", () => {
  const two = run(base, { kind: "beginTrial", id: "t2", day: "2026-11-24" }, seeing("t2", line("x")));
  const saved = (change: (trials: readonly Record<string, unknown>[]) => unknown) => {
    const data = copyOf(two) as { trials: Record<string, unknown>[] };
    return salvageWork({ ...data, trials: change(data.trials) }, CURRENT_VERSION);
  };

  it("loses only itself where what was sewn cannot be read", () => {
    const done = saved(([first, second]) => [{ ...first, sewn: { tapes: "none" } }, second]);
    expect(done?.work).toEqual({ ...two, trials: [trialOf(two, "t1")] });
    expect(done?.lost).toEqual(["trials.0"]);
  });

  it("loses only its damaged line, or the damaged figure of it", () => {
    const done = saved(([first, second]) => [
      first,
      { ...second, observations: [7, { ...line("a"), amount: "much" }, line("b")] },
    ]);
    expect(trialOf(done?.work ?? sampleWork)?.observations).toEqual([line("a"), line("b")]);
    expect(done?.lost).toEqual(["trials.1.observations.0", "trials.1.observations.1.amount"]);
  });

  it("loses only what was seen of a dart once more when it was sewn", () => {
    const seen = {
      piece: "front",
      dart: "waistDart",
      half: "left",
      pastBustPoint: 5,
      tooFarToSide: 0,
      pointed: "right",
    };
    const done = saved(([first, second]) => [
      { ...first, sewn: { ...Object(first?.["sewn"]), seen: [seen, seen] } },
      second,
    ]);
    expect(trialOf(done?.work ?? sampleWork, "t2")?.sewn.seen).toEqual([seen]);
    expect(done?.lost).toEqual(["trials.0.sewn.seen.1"]);
  });

  it("keeps the first of two trials, and of two lines, that have one id", () => {
    const done = saved(([first, second]) => [
      first,
      { ...second, observations: [line("a"), line("a", { amount: 3 }), line("b")] },
      { ...first, observations: [] },
    ]);
    expect(done?.work.trials?.map(({ id, observations }) => [id, observations.map((one) => one.id)])).toEqual([
      ["t2", ["x"]],
      ["t1", ["a", "b"]],
    ]);
    expect(done?.lost).toEqual(["trials.1.observations.1", "trials.2"]);
  });
});

/** About half a million characters. */
const drawing: OwnPattern["drawing"] = {
  format: "svg",
  unit: { mm: 1, saidBy: "size" },
  lines: [
    {
      look: { layer: "12", group: "", colour: "#000000", dash: "", width: 0.5 },
      paths: Array.from({ length: 400 }, (_, at) => `M${at} 0${"L12.345 67.891".repeat(85)}`),
    },
  ],
  points: [],
  writings: [],
  hiddenLayers: [],
};
const CHARACTERS = JSON.stringify(drawing).length;
const other: OwnPattern["drawing"] = { ...drawing, format: "dxf" };
const withFile = (of: OwnPattern["drawing"]): Work => ({
  ...sampleWork,
  pattern: { ...sampleWork.pattern, own: { file: "mine.svg", drawing: of, pieces: [] } },
});
const setOwn = (of: OwnPattern["drawing"]): Command => ({
  kind: "setOwnPattern",
  own: { file: "mine.svg", drawing: of, pieces: [] },
});
const begun = Array.from({ length: 12 }, (_, at): Command => ({ kind: "beginTrial", id: `t${at}`, day: "2026-11-20" }));
/** Twelve trials, ten sewn by one file and two by another that is the work's no longer. */
const drawn = run(withFile(other), ...begun.slice(0, 2), setOwn(drawing), ...begun.slice(2), {
  kind: "setName",
  name: "Drawn",
});
const drawingsOf = ({ pattern, trials = [] }: Work) =>
  new Set([pattern, ...trials.map(({ sewn }) => sewn.pattern)].map(({ own }) => own?.drawing));

describe("the drawing that trials were sewn by", () => {
  it("is written once in a file, and read as one object", () => {
    const text = writeWorkFile(drawn);
    expect(text.length).toBeLessThan(2.6 * CHARACTERS);
    const read = readWorkFile(text);
    expect(read).toEqual({ ok: true, value: drawn });
    if (!read.ok) return;
    expect(drawingsOf(read.value).size).toBe(2);
    expect(read.value.trials?.[0]?.sewn.pattern).toBe(read.value.pattern);
    expect(read.value.trials?.[0]?.sewn.tapes).toBe(read.value.tapes);
    expect(writeWorkFile(read.value)).toBe(text);
  });

  it("is written once for each work of a file of many", () => {
    const text = writeWorksFile([{ work: drawn }, { work: drawn }]);
    expect(text.length).toBeLessThan(5.2 * CHARACTERS);
    expect(readWorksFile(text)).toMatchObject({ ok: true, value: { works: [{ work: drawn }, { work: drawn }] } });
  });

  it("may stand in every trial, as a hand may have written it", () => {
    const text = JSON.stringify({ bodicewright: "work", version: CURRENT_VERSION, work: drawn });
    const read = readWorkFile(text);
    expect(read).toEqual({ ok: true, value: drawn });
    expect(read.ok && drawingsOf(read.value).size).toBe(2);
  });

  it("is damaged where it is told from a place at which there is none", () => {
    for (const as of [1, 0.5]) {
      const [first, ...others] = drawn.trials ?? [];
      const sewn = { ...first?.sewn, pattern: { ...drawn.pattern, own: { ...drawn.pattern.own, drawing: { as } } } };
      const work = { ...drawn, trials: [{ ...first, sewn }, ...others] };
      expect(parseWork(work).ok).toBe(false);
      const kept = salvageWork(copyOf(work), CURRENT_VERSION);
      expect(kept?.lost).toEqual(["trials.0.sewn.pattern.own"]);
      expect(kept?.work.trials?.slice(1)).toEqual(others);
    }
  }, 240_000);

  it("keeps its place in a work that is put in order", () => {
    expect(workInOrder(drawn)).toEqual(drawn);
    expect(Object.keys(workInOrder(drawn)).at(-1)).toBe("unread");
  });

  it("is one object over all the steps of a history, and so are trials that did not change", () => {
    const past = Array.from({ length: 5 }, (_, at) => run(drawn, { kind: "setName", name: `before ${at}` }));
    const record: unknown = structuredClone({ version: CURRENT_VERSION, stamp: "s", work: drawn });
    const history: unknown = structuredClone({ version: CURRENT_VERSION, past, future: [] });
    const read = readSavedWork("id", record, history);
    if (!read.ok) throw new Error("not read");
    expect(read.value.work).toEqual(drawn);
    expect(read.value.past).toEqual(past);
    const all = [read.value.work, ...read.value.past];
    expect(new Set(all.flatMap((one) => [...drawingsOf(one)])).size).toBe(2);
    expect(new Set(read.value.past.map(({ trials }) => trials)).size).toBe(1);
    expect(Object.keys(read.value.past[1] ?? {})).toEqual(Object.keys(read.value.past[0] ?? {}));
  });

  it("is left behind once with all the steps of a history, and found again", () => {
    const kept = new Map<string, string>();
    const storage: Storage = {
      get length() {
        return kept.size;
      },
      key: (at) => [...kept.keys()][at] ?? null,
      getItem: (key) => kept.get(key) ?? null,
      setItem: (key, text) => void kept.set(key, text),
      removeItem: (key) => void kept.delete(key),
      clear: () => kept.clear(),
    };
    const past = Array.from({ length: 40 }, (_, at) => run(drawn, { kind: "setName", name: `before ${at}` }));
    const saved = { id: "id", stamp: "s", work: drawn, past, future: [] };
    createBackup(storage, "tab").write({ saved, base: past[0] ?? null, begun: 1 }, true);
    expect([...kept.values()].join("").length).toBeLessThan(3 * CHARACTERS);
    const [left] = createBackup(storage, "next").all();
    expect(left?.saved.work).toEqual(drawn);
    expect(left?.saved.past).toEqual(past);
    expect(left?.base).toEqual(past[0]);
  });
});
