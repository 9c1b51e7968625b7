import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { planReport } from "../../src/cli/report";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "bodicewright-cli-"));
const demos = readdirSync(join(root, "demo-data")).filter((name) => name.endsWith(".json"));
/** A process and a compiler start for each run: slow on a busy machine. */
const PATIENCE = 60_000;

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const command = ["--import", "tsx", join(root, "src/cli/plan.ts")];

function plan(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...command, ...args], { cwd: root, encoding: "utf8" });
  return { status, stdout, stderr };
}

function fileWith(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

function expectRefusal({ status, stdout, stderr }: ReturnType<typeof plan>, reason: RegExp): void {
  expect(status).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(/^[^\n]+\n$/);
  expect(stderr).toMatch(reason);
  expect(stderr).not.toMatch(/undefined|\bat .*\.ts|Error:/);
}

describe("npm run plan", { timeout: PATIENCE }, () => {
  it.each(demos)("prints the checklist of %s as text, at most 80 columns wide", (demo) => {
    const { status, stdout, stderr } = plan(join("demo-data", demo));
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout.startsWith("ALTERATION CHECKLIST\n")).toBe(true);
    expect(stdout.endsWith("\n")).toBe(true);
    expect(Math.max(...stdout.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(80);
    expect(stdout).toContain("Invented demo");
    for (const title of ["SIZES", "TAKE CARE", "ORDER OF WORK: FRONT", "MEASURE AFTER"]) expect(stdout).toContain(`\n${title}\n`);
    expect(stdout).not.toMatch(/undefined|NaN|\[object/);
  });

  it.each(demos)("prints the plan of %s as JSON, the same as the core works out", (demo) => {
    const file = join(root, "demo-data", demo);
    const { status, stdout, stderr } = plan("--json", file);
    expect([status, stderr]).toEqual([0, ""]);
    const work = readWorkFile(readFileSync(file, "utf8"));
    if (!work.ok) throw new Error(work.failure.code);
    const derived = derivePlan(work.value);
    if (!derived.ok) throw new Error(derived.failure.code);
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(planReport(work.value, derived.value))));
  });

  it("has the keys that it promises", () => {
    const { stdout } = plan(fileWith("sample.json", writeWorkFile(sampleWork)), "--json");
    const report: unknown = JSON.parse(stdout);
    const number: unknown = expect.any(Number);
    const pair = [number, number];
    const level = { between: [expect.any(String), expect.any(String)], share: number, target_mm: number, finished_mm: number };
    expect(report).toMatchObject({
      frame: { size: "14", cup: "C" },
      levels: { bust: level, waist: level, hip: level },
      bust: { difference_mm: 70, residual_mm: -5 },
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
    });
    expect(report).toHaveProperty("cut_lines.0", {
      piece: expect.any(String),
      level: "waist",
      between: ["12", "14"],
      share: number,
      offset_mm: number,
    });
    expect(report).toHaveProperty("checklist.0", { piece: "front", text: expect.any(String), amount_mm: 0 });
    for (const key of ["name", "ok", "measured", "expected", "tolerance"]) expect(report).toHaveProperty(`checks.0.${key}`);
  });

  it("shows its usage, and nothing is wrong with that", () => {
    const { status, stdout, stderr } = plan("--help");
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("Usage: npm run --silent plan -- FILE [--json]");
  });

  it("refuses what it is not told or cannot read", () => {
    expectRefusal(plan(), /Name the work file/);
    expectRefusal(plan("--jason", "x.json"), /Unknown option --jason/);
    expectRefusal(plan(join(folder, "none.json")), /none\.json: there is no such file/);
    expectRefusal(plan(folder), /it is a folder/);
    expectRefusal(plan(`no\nsuch\nfile`), /no such file/);
  });

  it.each([
    ["empty.json", "", /does not read|not a work file/],
    ["half.json", writeWorkFile(sampleWork).slice(0, 400), /does not read|not a work file/],
    ["foreign.json", '{"type":"FeatureCollection","features":[]}', /something else|not a saved work/],
    ["newer.json", '{"bodicewright":"work","version":999,"work":{}}', /newer version/],
    ["damaged.json", writeWorkFile(sampleWork).replace('"waistGirth": 738', '"waistGirth": "wide"'), /damaged at .*waistGirth/],
    ["no-waist.json", writeWorkFile({ ...sampleWork, measures: { bustGirth: 900 } }), /still needs your waist/],
    ["outside.json", writeWorkFile({ ...sampleWork, measures: { ...sampleWork.measures, waistGirth: 1500 } }), /does not reach your waist/],
  ])("refuses %s in one line", (name, text, reason) => {
    expectRefusal(plan(fileWith(name, text)), reason);
  });

  it("is silent when its reader goes away early", async () => {
    const child = spawn(process.execPath, [...command, join("demo-data", demos[0] ?? ""), "--json"], {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
    });
    child.stdout.destroy();
    let errors = "";
    child.stderr.setEncoding("utf8").on("data", (text: string) => (errors += text));
    const status = await new Promise((resolve) => child.on("close", resolve));
    expect(errors).toBe("");
    expect(status).toBe(0);
  });
});
