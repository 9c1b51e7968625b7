import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { answer } from "../../src/cli/answer";
import { widthOf } from "../../src/cli/layout";
import { planReport } from "../../src/cli/report";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { bundledDoor } from "../support/bundledDoor";
import { root } from "../support/doors";
import { sampleWork } from "../support/sampleWork";
import { shareOf } from "../support/share";

const folder = mkdtempSync(join(tmpdir(), "bodicewright-cli-"));
const demos = readdirSync(join(root, "demo-data")).filter((name) => name.endsWith(".json"));
/** A process starts for each run: slow on a busy machine. */
const PATIENCE = 240_000;

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const compiled = ["--import", "tsx", join(root, "src/cli/plan.ts")];
const bundled = bundledDoor("plan");

interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The command itself, as a process of its own. */
function plan(command: readonly string[], ...args: readonly string[]): Ran {
  return spawnSync(process.execPath, [...command, ...args], { cwd: root, encoding: "utf8" });
}

function printed(...args: readonly string[]): string {
  const said = answer(args);
  if (!said.ok) throw new Error(said.failure);
  return said.value;
}

function fileWith(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

const ONE_LINE = /^[^\n]+$/;
const OF_A_BUG = /undefined|\bat .*\.ts|Error:/;

/** The line a refusal gives; null where nothing was refused. */
function refusal(...args: readonly string[]): string | null {
  const said = answer(args);
  return said.ok ? null : said.failure;
}

const BAD: readonly (readonly [string, string, RegExp])[] = [
  ["empty.json", "", /does not read|not a work file/],
  ["half.json", writeWorkFile(sampleWork).slice(0, 400), /does not read|not a work file/],
  ["foreign.json", '{"type":"FeatureCollection","features":[]}', /something else|not a saved work/],
  ["newer.json", '{"bodicewright":"work","version":999,"work":{}}', /newer version/],
  [
    "damaged.json",
    writeWorkFile(sampleWork).replace(/("waistGirth": \[\s*)738/, '$1"wide"'),
    /damaged at .*waistGirth/,
  ],
  ["no-waist.json", writeWorkFile({ ...sampleWork, tapes: tapesOf({ bustGirth: 900 }) }), /still needs your waist/],
  [
    "outside.json",
    writeWorkFile({ ...sampleWork, tapes: tapesOf({ ...measuresOf(sampleWork.tapes), waistGirth: 1500 }) }),
    /does not reach your waist/,
  ],
];

describe("npm run plan, as a process", { timeout: PATIENCE }, () => {
  it("prints text with exit code 0", () => {
    const { status, stdout, stderr } = plan(compiled, join("demo-data", demos[0] ?? ""));
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout.startsWith("ALTERATION CHECKLIST\n")).toBe(true);
  });

  it("prints nothing but JSON where it is asked to", () => {
    const file = join("demo-data", demos[0] ?? "");
    const { status, stdout, stderr } = plan([bundled], file, "--json");
    expect([status, stderr]).toEqual([0, ""]);
    expect(JSON.parse(stdout)).toHaveProperty("frame.size");
  });

  it.each([
    ["no file", [], /Name the work file/],
    [
      "a damaged file",
      [fileWith("broken.json", '{"bodicewright":"work","version":1,"work":{"name":7}}')],
      /damaged at/,
    ],
  ])("refuses %s with exit code 2 and one line on standard error alone", (_, args, reason) => {
    const { status, stdout, stderr } = plan([bundled], ...args);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(reason);
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).not.toMatch(OF_A_BUG);
  });

  it("is silent when its reader goes away early", async () => {
    const child = spawn(process.execPath, [bundled, join("demo-data", demos[0] ?? ""), "--json"], {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
    });
    child.stdout.destroy();
    let errors = "";
    child.stderr.setEncoding("utf8").on("data", (text: string) => (errors += text));
    const status = await new Promise((resolve) => child.on("close", resolve));
    expect([status, errors]).toEqual([0, ""]);
  });
});

describe("what it answers", () => {
  it.each(demos)("to %s: the checklist as text, at most 80 columns wide", (demo) => {
    const text = printed(join(root, "demo-data", demo));
    expect(text.endsWith("\n")).toBe(true);
    expect(Math.max(...text.split("\n").map((line) => widthOf(line)))).toBeLessThanOrEqual(80);
    expect(text).toContain("Invented demo");
    for (const title of ["SIZES", "TAKE CARE", "ORDER OF WORK: BACK", "MEASURE AFTER"])
      expect(text).toContain(`\n${title}\n`);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  });

  // To lay the cloth of a dress takes some seconds, and twice that to do it for both: one of those in `npm test`.
  const laid = demos.filter((demo) => readFileSync(join(root, "demo-data", demo), "utf8").includes('"cloths"'));
  const compared = [...demos.filter((demo) => !laid.includes(demo)), ...shareOf(laid, laid.length)];

  it.each(compared)("to %s with --json: the plan that the core works out", (demo) => {
    const file = join(root, "demo-data", demo);
    const work = readWorkFile(readFileSync(file, "utf8"));
    if (!work.ok) throw new Error(work.failure.code);
    const derived = derivePlan(work.value);
    if (!derived.ok) throw new Error(derived.failure.code);
    expect(JSON.parse(printed("--json", file))).toEqual(
      JSON.parse(JSON.stringify(planReport(work.value, derived.value))),
    );
  });

  it("has the keys that it promises", () => {
    const report: unknown = JSON.parse(printed(fileWith("sample.json", writeWorkFile(sampleWork)), "--json"));
    const number: unknown = expect.any(Number);
    const pair = [number, number];
    const level = {
      between: [expect.any(String), expect.any(String)],
      share: number,
      target_mm: number,
      finished_mm: number,
    };
    expect(report).toMatchObject({
      frame: { size: "14", cup: "B" },
      levels: { bust: level, waist: level, hip: level },
      bust: { difference_mm: 70, residual_mm: 10 },
    });
    expect(report).toHaveProperty("darts.0", {
      piece: expect.any(String),
      name: expect.any(String),
      apex_mm: pair,
      mouth_mm: [pair, pair],
      legs_mm: pair,
      intake_mm: number,
      angle_deg: number,
      fullness_mm: number,
      apex_to_bust_point_mm: number,
      short_of_bust_point_mm: number,
      bust_point_beside_mm: number,
    });
    expect(report).toHaveProperty("cut_lines.0", {
      piece: expect.any(String),
      level: "waist",
      between: ["12", "14"],
      share: number,
      offset_mm: number,
    });
    expect(report).toHaveProperty("checklist.0", { piece: "front", text: expect.any(String), amount_mm: 0 });
    for (const key of ["name", "ok", "measured", "expected", "tolerance"])
      expect(report).toHaveProperty(`checks.0.${key}`);
  });

  it("to --help: its usage", () => {
    expect(printed("--help")).toContain("Usage: npm run --silent plan -- FILE [--json]");
  });

  it("lets nothing in a name steer the terminal", () => {
    const name = "Blue \u001B[31mred\u202E bodice";
    expect(printed(fileWith("names.json", writeWorkFile({ ...sampleWork, name })))).toContain(
      "\nBlue [31mred bodice\n",
    );
  });

  it.each([
    [[], /Name the work file/],
    [["--jason", "x.json"], /Unknown option --jason/],
    [[join(folder, "none.json")], /none\.json: there is no such file/],
    [[folder], /it is a folder/],
    [["no\nsuch\nfile"], /^no such file: there is no such file/],
  ])("refuses %j, which it cannot read", (args, reason) => {
    expect(refusal(...args)).toMatch(reason);
    expect(refusal(...args)).toMatch(ONE_LINE);
  });

  it.each(BAD)("refuses %s in one line", (name, text, reason) => {
    const line = refusal(fileWith(name, text));
    expect(line).toMatch(reason);
    expect(line).toMatch(ONE_LINE);
    expect(line).not.toMatch(OF_A_BUG);
  });
});
