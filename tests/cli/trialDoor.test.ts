/** The loop of trial garments from outside: what was seen goes in by a file, an answer is taken, the next work is written. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { answer } from "../../src/cli/answer";
import { readArguments } from "../../src/cli/args";
import type { PlanReport } from "../../src/cli/report";
import type { Observation, Trial } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import { decidedIn } from "../../src/core/plan/trialCommands";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";

/** Nothing altered yet. */
const bare: Work = { ...sampleWork, alterations: [] };

const folder = mkdtempSync(join(tmpdir(), "bodicewright-trial-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const TODAY = "2026-11-28";

function fileWith(name: string, content: string): string {
  const file = join(folder, name);
  writeFileSync(file, content);
  return file;
}

const workFile = (name: string, work: Work): string => fileWith(name, writeWorkFile(work));

const said = (...args: readonly string[]): string => {
  const result = answer(args, TODAY);
  if (!result.ok) throw new Error(result.failure);
  return result.value;
};

/** The line a refusal gives; null where nothing was refused. */
function refusal(...args: readonly string[]): string | null {
  const result = answer(args, TODAY);
  return result.ok ? null : result.failure;
}

function readBack(file: string): Work {
  const read = readWorkFile(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error(read.failure.code);
  return read.value;
}

const reported = (...args: readonly string[]): PlanReport => JSON.parse(said(...args, "--json")) as PlanReport;

const out = (name: string): string => join(folder, name);

/** A fold across the back above the waist, 6 mm deep, and a hem that drops behind: twice the fold is to come out. */
const SWAY: readonly Observation[] = [
  { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6 },
  { id: "hem", place: "backHem", sign: "drops" },
];

const trialOf = (observations: readonly Observation[], rest: Partial<Trial> = {}): Trial => ({
  id: "first",
  day: "2026-11-07",
  sewn: decidedIn(bare),
  observations,
  ...rest,
});

const withTrials = (...trials: readonly Trial[]): Work => ({ ...bare, trials });

/** The alterations that stand, by what they are, on which half and how much. */
const standing = ({ alterations }: Work): readonly (readonly [string, string, number])[] =>
  alterations.flatMap((one) => (one.kind === "fit" ? [[one.fit, one.half ?? "both", one.amount] as const] : []));

describe("a whole loop from outside", () => {
  const first = workFile("loop.json", bare);

  it("begins, puts down what was seen, takes the answer, closes, and begins again, the file it reads untouched", () => {
    const before = readFileSync(first, "utf8");
    const sewn = out("loop-1.json");
    expect(said(first, "--begin-trial", "--day", "2026-11-07", "--out", sewn)).toBe(
      `${sewn}: a trial of 7 November 2026 begun.\n`,
    );
    expect(readBack(sewn).trials).toEqual([
      { id: "trial-1", day: "2026-11-07", sewn: decidedIn(readBack(first)), observations: [] },
    ]);

    const seen = fileWith("seen.json", JSON.stringify(SWAY.map((line) => ({ ...line, id: undefined }))));
    expect(reported(sewn, "--seen", seen).trial?.seen.map(({ line, id, place }) => [line, id, place])).toEqual([
      [1, "seen-1", "backAboveWaist"],
      [2, "seen-2", "backHem"],
    ]);
    const next = out("loop-2.json");
    const turn = ["--seen", seen, "--take", "1", "--close", "again", "--begin-trial", "--out", next];
    expect(said(sewn, ...turn)).toBe(
      `${next}: 2 lines put down; answer 1 of the trial of 7 November 2026 taken; the trial of 7 November 2026 closed; ` +
        `a trial of 28 November 2026 begun.\n`,
    );
    const after = readBack(next);
    // 2 × 6 mm of cloth come out of the centre back.
    expect(standing(after)).toEqual([["swayBack", "both", 12]]);
    expect(after.trials?.map(({ id, day, verdict }) => [id, day, verdict])).toEqual([
      ["trial-2", TODAY, undefined],
      ["trial-1", "2026-11-07", "again"],
    ]);
    expect(after.trials?.[0]?.sewn.alterations).toEqual(after.alterations);
    expect(after.trials?.[1]?.sewn.alterations).toEqual([]);
    expect(after.trials?.[1]?.taken?.[0]).toMatchObject({ because: ["seen-1", "seen-2"] });
    expect(reported(next).trial).toMatchObject({ id: "trial-2", seen: [], answers: [], unexplained: [] });

    const base = out("loop-3.json");
    expect(said(next, "--close", "keep", "--base", "--out", base)).toBe(
      `${base}: the trial of 28 November 2026 closed and kept as the base.\n`,
    );
    expect(readBack(base).trials?.[0]).toMatchObject({ verdict: "keep", base: true });
    expect(reported(base).trial).toBeNull();
    expect(readFileSync(first, "utf8")).toBe(before);
  });

  it("prints the next work where that is asked for, and the same as it writes", () => {
    const printed = said(first, "--begin-trial", "--out", "-");
    const written = out("printed.json");
    said(first, "--begin-trial", "--out", written);
    expect(printed).toBe(readFileSync(written, "utf8"));
  });
});

describe("what was seen", () => {
  const file = workFile("open.json", withTrials(trialOf(SWAY)));

  it("stands in the report with the answers to it, and the halves", () => {
    const { trial, halves } = reported(file);
    expect(trial?.seen[0]).toEqual({
      id: "fold",
      line: 1,
      place: "backAboveWaist",
      sign: "foldAcross",
      way: "pinched",
      amount_mm: 6,
      read: true,
    });
    expect(trial?.answers[0]).toMatchObject({
      answer: 1,
      explains: ["fold", "hem"],
      leaves: [],
      bust_alteration_mm: null,
    });
    expect(trial?.answers[0]?.causes[0]).toMatchObject({ name: "swayBack", amount_mm: 12, amount_by: "measured" });
    expect(trial?.answers[0]?.alterations[0]).toMatchObject({ kind: "swayBack", amount_mm: 12 });
    expect(halves).toEqual({ same: true, both: [], left: [], right: [], cups: { left: "B", right: "B" } });
  });

  it("of a file takes the place of lines with the same ids, goes behind the others, and takes what was ticked and measured", () => {
    const seen = fileWith(
      "more.json",
      JSON.stringify({
        observations: [
          { id: "fold", place: "backAboveWaist", sign: "foldAcross" },
          { place: "strap", sign: "slips" },
        ],
        checks: { hemLevel: false },
        measured: { waistGirth: 700 },
      }),
    );
    const next = out("more-next.json");
    said(file, "--seen", seen, "--out", next);
    const [trial] = readBack(next).trials ?? [];
    expect(trial?.observations).toEqual([
      { id: "fold", place: "backAboveWaist", sign: "foldAcross" },
      SWAY[1],
      { id: "seen-1", place: "strap", sign: "slips" },
    ]);
    expect(trial?.checks).toEqual({ hemLevel: false });
    // The plan's own waist is near 778.
    expect(reported(next).trial?.sewn_off.map(({ length, sewn_mm }) => [length, sewn_mm])).toEqual([
      ["waistGirth", 700],
    ]);
  });

  it.each([
    ["nothing", "", /does not read as lines of a trial's record\./],
    ["a place that is none", '[{"place":"elbow"}]', /record at observations\.0\.place\./],
    ["a key that is none", '[{"place":"bust","depth":6}]', /record at observations\.0\.depth\./],
    ["a number beyond all cloth", '[{"amount":5000}]', /record at observations\.0\.amount\./],
    ["a whole work", writeWorkFile(sampleWork), /does not read as lines of a trial's record/],
    ["too many lines", JSON.stringify(Array.from({ length: 59 }, () => ({}))), /60 lines at most, .* it would be 61/],
  ])("of a file with %s is refused in one line", (name, content, reason) => {
    const line = refusal(file, "--seen", fileWith(`${name}.json`, content), "--json");
    expect(line).toMatch(reason);
    expect(line).toMatch(/^[^\n]+$/);
  });

  it("is refused where its file is not there", () => {
    expect(refusal(file, "--seen", out("none.json"))).toMatch(/none\.json: there is no such file/);
  });
});

describe("which trial is open", () => {
  const closed = trialOf(SWAY, { verdict: "again" });
  it("the newest without a verdict, whatever was closed after it", () => {
    const older = trialOf([], { id: "older" });
    const newer = trialOf([], { id: "newer", verdict: "keep" });
    expect(reported(workFile("three.json", withTrials(newer, trialOf(SWAY), older))).trial?.id).toBe("first");
  });

  it("none where all are closed, and nothing can be taken or put down then", () => {
    const file = workFile("closed.json", withTrials(closed));
    expect(reported(file).trial).toBeNull();
    const seen = fileWith("empty-list.json", "[]");
    for (const args of [
      ["--take", "1"],
      ["--close", "keep"],
      ["--seen", seen],
    ])
      expect(refusal(file, ...args, "--out", out("never.json"))).toMatch(
        /no trial is open in this work: --begin-trial begins one/,
      );
    expect(() => readFileSync(out("never.json"))).toThrow(/ENOENT/);
  });

  it("and while one is, no other begins", () => {
    const file = workFile("still.json", withTrials(trialOf(SWAY)));
    expect(refusal(file, "--begin-trial", "--out", out("never.json"))).toMatch(
      /the trial of 7 November 2026 is still open/,
    );
    expect(refusal(file, "--close", "again", "--begin-trial", "--out", out("begun.json"))).toBeNull();
  });

  it("names a new trial as no other of the work is named", () => {
    const file = workFile("named.json", withTrials({ ...closed, id: "trial-1" }));
    said(file, "--begin-trial", "--out", out("named-next.json"));
    expect(readBack(out("named-next.json")).trials?.map(({ id }) => id)).toEqual(["trial-2", "trial-1"]);
  });
});

describe("an answer", () => {
  const file = workFile("answers.json", withTrials(trialOf(SWAY)));

  it("is tried on one half alone", () => {
    // Drag lines from the neck point to the armhole, pinned out at the shoulder's end by 6 mm: lower it by as
    // much; of a shoulder's slope up is counted as more.
    const both = withTrials(
      trialOf([
        { id: "drag", place: "neckPoint", sign: "dragLines", towards: "frontArmhole" },
        { id: "fold", place: "frontArmhole", sign: "foldAcross" },
        { id: "pin", place: "shoulder", sign: "dragLines", way: "pinched", amount: 6 },
      ]),
    );
    const next = out("left.json");
    said(workFile("sloping.json", both), "--take", "1", "--half", "left", "--out", next);
    expect(standing(readBack(next))).toEqual([["shoulderSlope", "left", -6]]);
    expect(readBack(next).trials?.[0]?.taken?.[0]).toMatchObject({ half: "left" });
    const { halves } = reported(next);
    expect([halves.same, halves.both, halves.right]).toEqual([false, [], []]);
    expect(halves.left).toMatchObject([{ kind: "shoulderSlope", half: "left", amount_mm: -6 }]);
  });

  it("of the centre line is refused on one half, as the page does not offer it", () => {
    expect(refusal(file, "--take", "1", "--half", "left", "--out", out("never.json"))).toMatch(
      /answer 1 cannot be tried on one half alone/,
    );
  });

  it("that there is not is refused by name, and nothing is written", () => {
    expect(refusal(file, "--take", "99", "--out", out("no-answer.json"))).toMatch(
      /this trial has no answer 99: there (?:is|are) \d+/,
    );
    const empty = workFile("nothing-seen.json", withTrials(trialOf([])));
    expect(refusal(empty, "--take", "1", "--out", out("no-answer.json"))).toMatch(
      /this trial has no answer 1: nothing that was seen has one/,
    );
    expect(() => readFileSync(out("no-answer.json"))).toThrow(/ENOENT/);
  });

  it("is written where it can be, never over the work itself", () => {
    expect(refusal(file, "--take", "1", "--out", file)).toMatch(/it is the work file itself/);
    expect(refusal(file, "--take", "1", "--out", folder)).toMatch(/it is a folder/);
    expect(refusal(file, "--take", "1", "--out", join(folder, "none", "x.json"))).toMatch(/there is no such folder/);
    expect(refusal(out("nowhere.json"), "--take", "1", "--out", out("x.json"))).toMatch(
      /nowhere\.json: there is no such file/,
    );
  });
});

describe("one half kept for both", () => {
  const apart = (left: number, right: number | null): Work => ({
    ...bare,
    alterations: [
      { kind: "fit", id: "l", fit: "lengthAboveBust", amount: left, half: "left" },
      ...(right === null
        ? []
        : [{ kind: "fit", id: "r", fit: "lengthAboveBust", amount: right, half: "right" } as const]),
    ],
  });

  it.each([
    ["left", 6],
    ["right", 10],
    // Halfway between 6 and 10.
    ["mean", 8],
  ])("%s: both have %d", (half, amount) => {
    const file = workFile("apart.json", apart(6, 10));
    const next = out("kept.json");
    said(file, "--keep-half", half, "--out", next);
    expect(standing(readBack(next))).toEqual([["lengthAboveBust", "both", amount]]);
    expect(reported(next).halves).toMatchObject({ same: true, left: [], right: [] });
  });

  it("is refused in words where there is no mean, and where the halves are alike", () => {
    const single = refusal(workFile("single.json", apart(6, null)), "--keep-half", "mean", "--out", out("never.json"));
    expect(single).toMatch(/single\.json: \S/);
    expect(single).not.toMatch(/keep\//);
    const alike = refusal(workFile("alike.json", bare), "--keep-half", "left", "--out", out("never.json"));
    expect(alike).toMatch(/alike\.json: \S/);
    expect(alike).not.toMatch(/keep\//);
  });
});

describe("the options", () => {
  it.each([
    [["--take", "1"], /Name the work file to read/],
    [["a.json", "--take", "1"], /--take makes another work: say where to write it with --out/],
    [["a.json", "--begin-trial"], /--begin-trial makes another work/],
    [["a.json", "--take", "--out", "b.json"], /--take needs something behind it/],
    [["a.json", "--take", "0", "--out", "b.json"], /0 is no number of an answer/],
    [["a.json", "--take", "first", "--out", "b.json"], /first is no number of an answer/],
    [["a.json", "--take", "1", "--take", "2", "--out", "b.json"], /--take is there twice/],
    [["a.json", "--take", "1", "--half", "both", "--out", "b.json"], /--half is left or right, not both/],
    [["a.json", "--half", "left", "--out", "b.json"], /--half goes with --take alone/],
    [["a.json", "--day", "2026-11-01", "--out", "b.json"], /--day goes with --begin-trial alone/],
    [["a.json", "--begin-trial", "--day", "2026-02-30", "--out", "b.json"], /2026-02-30 is no day/],
    [["a.json", "--base", "--out", "b.json"], /--base goes with --close alone/],
    [["a.json", "--close", "again", "--base", "--out", "b.json"], /Only a trial that is kept is a base/],
    [["a.json", "--close", "soon", "--out", "b.json"], /--close is keep or again, not soon/],
    [["a.json", "--keep-half", "upper", "--out", "b.json"], /--keep-half is left, right or mean, not upper/],
    [["a.json", "--out", "b.json"], /Say what to do before --out writes it/],
    [["a.json", "--json", "--take", "1", "--out", "b.json"], /--json prints a plan and --out writes a work/],
  ])("refuse %j in one line", (args, reason) => {
    const line = refusal(...args);
    expect(line).toMatch(reason);
    expect(line).toMatch(/^[^\n]+$/);
  });

  it("are read with = too, and files behind -- whatever they look like", () => {
    expect(readArguments(["--take=2", "--half=right", "--out=b.json", "--", "--odd.json"])).toMatchObject({
      ok: true,
      value: { kind: "turn", file: "--odd.json", out: "b.json", turn: { take: { answer: 2, half: "right" } } },
    });
  });
});
