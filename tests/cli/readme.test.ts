/** README tells of both commands what they do: no more, no less. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readArguments, USAGE } from "../../src/cli/args";
import { PAPER_USAGE, readPaperArguments } from "../../src/cli/paperArgs";
import { planReport } from "../../src/cli/report";
import type { Work } from "../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import { planOf, withAlterations } from "../support/works";
import { invariant } from "../../src/core/result";
import { OPEN_TRIALS } from "../support/openTrials";
import { DEMO_FILES, HALVES_FILE, planJson, root } from "../support/doors";

const readme = readFileSync(join(root, "README.md"), "utf8");

/** What is measured on one half alone comes out otherwise there. */
const unevenLength = withAlterations({ kind: "fit", id: "a", fit: "lengthAboveBust", amount: 10, half: "left" });

/** Half of the under-bust: the tape is doubted. */
const misread = { ...unevenLength, tapes: tapesOf({ ...measuresOf(unevenLength.tapes), underBustGirth: 400 }) };

/** Sectors of a ring, and edges bound on the bias. */
const round: Work = {
  ...unevenLength,
  dress: { skirt: { kind: "circle", share: 0.5, length: 600 }, edges: { neck: "binding", armhole: "binding" } },
};

/** From a heading to the next of its own rank or a higher one. */
const section = (title: string, rank: number): string =>
  invariant(
    readme
      .split(new RegExp(`^(?=#{1,${rank}} )`, "mu"))
      .find((part) => part.startsWith(`${"#".repeat(rank)} ${title}\n`)),
    title,
  );

/** The cells of all rows of a table, without its head. */
const rows = (text: string): string[][] =>
  text
    .split("\n")
    .filter((line) => line.startsWith("|") && !/^\| (?:-|key |option )/u.test(line))
    .map((line) =>
      line
        .split("|")
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

/** The way to every key of the JSON; names of corners are no keys. Both halves have the same. */
function keysOf(value: unknown, way = ""): string[] {
  if (Array.isArray(value)) return value.flatMap((one) => keysOf(one, `${way}[]`));
  if (typeof value !== "object" || value === null || way.endsWith("corners_mm")) return [];
  return Object.entries(value).flatMap(([key, one]) => {
    const here = way === "" ? key : `${way}.${key}`;
    return [here, ...keysOf(one, here)];
  });
}

const isOneOf = (commands: readonly string[]) => (line: string) =>
  commands.some((name) => line.includes(` ${name} -- `));

describe("the table of the JSON in README", () => {
  const table = [...rows(section("The plan as JSON", 3)), ...rows(section("The rest of the dress in the JSON", 3))];
  const told = table.map(([key = ""]) => key.replaceAll("`", ""));
  const found = new Set(
    [
      ...[...DEMO_FILES, HALVES_FILE].map(planJson),
      ...[unevenLength, misread, round, ...OPEN_TRIALS].map((work) => planReport(work, planOf(work))),
    ]
      .flatMap((report) => keysOf(report))
      .map((key) => key.replace(/^pieces\.right\[\]/u, "pieces.left[]")),
  );

  it("tells every key that occurs, and none that never does, once each", () => {
    expect(told.toSorted()).toEqual([...found].toSorted());
  });

  it("gives each a meaning, and a unit to all that is measured", () => {
    expect(table.filter(([, meaning = ""]) => meaning === "")).toEqual([]);
    const unitOf = (key: string): string => (key.endsWith("_deg") ? "degrees" : key.endsWith("_mm") ? "mm" : "");
    const off = table.filter(([key = "", , unit = ""]) => {
      const due = unitOf(key.replaceAll("`", ""));
      return due === "" ? unit === "mm" || unit === "degrees" : unit !== due;
    });
    expect(off).toEqual([]);
  });
});

describe("the examples and options in README", () => {
  const text = section("From the command line", 2);
  const examples = [...text.matchAll(/^npm run --silent (plan|paper) -- ([^#>\n]*)/gmu)].map(
    ([, name = "", args = ""]) => [name, args.trim().split(/\s+/u)] as const,
  );

  it("has examples of both", () => {
    expect(text.split("\n").filter(isOneOf(["plan", "paper"]))).toHaveLength(examples.length);
    expect(new Set(examples.map(([name]) => name))).toEqual(new Set(["plan", "paper"]));
  });

  it.each(examples)("%s %j is understood", (name, args) => {
    expect((name === "plan" ? readArguments(args) : readPaperArguments(args)).ok).toBe(true);
    expect(args[0]).toMatch(/^demo-data\//);
    expect(() => readFileSync(join(root, args[0] ?? ""))).not.toThrow();
  });

  it.each([
    ["Paper", PAPER_USAGE, "--as"],
    ["One turn of a trial", USAGE, "--take"],
  ])("tells under %s the options that --help tells", (title, usage, one) => {
    const named = (lines: readonly string[]): string[] =>
      [...new Set(lines.flatMap((line) => /^\W*(--[a-z-]+)/u.exec(line)?.[1] ?? []))].toSorted();
    const helped = named(usage.split("\n").filter((line) => line.startsWith("  --")));
    const told = named(rows(section(title, 3)).map(([option = ""]) => option));
    expect(helped).toContain(one);
    expect([...told, "--help"].toSorted()).toEqual(helped);
  });
});
