import { describe, expect, it } from "vitest";
import { readArguments } from "../../src/cli/args";
import { COLUMNS, hanging, withAmount, wrap } from "../../src/cli/layout";

describe("wrap", () => {
  it("keeps every word in order within the width", () => {
    const text = "the quick dressmaker walks the side seam before she cuts anything at all";
    const lines = wrap(text, 20);
    expect(lines.join(" ")).toBe(text);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(20);
  });

  it("breaks a word longer than a line, losing none of it", () => {
    const lines = wrap(`a ${"x".repeat(25)} b`, 10);
    expect(lines.join("").replaceAll(" ", "")).toBe(`a${"x".repeat(25)}b`);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(10);
  });

  it("gives no line for no words", () => {
    expect(wrap("  ", 10)).toEqual([]);
  });
});

describe("columns", () => {
  it("sets further lines under the first word", () => {
    expect(hanging("[ ] ", "one two three", 11)).toEqual(["[ ] one two", "    three"]);
  });

  it("sets the amount out at the right edge", () => {
    const [first] = withAmount("[ ] ", "Shorten the dart", "15 mm", 16);
    expect(first).toHaveLength(COLUMNS);
    expect(first?.endsWith(" 15 mm")).toBe(true);
  });

  it("puts an amount too long for its column under the text", () => {
    const lines = withAmount("[ ] ", "Shorten the dart", "15 mm and then some across", 16);
    expect(lines).toHaveLength(2);
    expect(lines[1]?.trim()).toBe("15 mm and then some across");
  });
});

describe("readArguments", () => {
  it("reads a file, with or without --json on either side", () => {
    expect(readArguments(["a.json"])).toEqual({
      ok: true,
      value: { kind: "plan", file: "a.json", json: false, widths: [] },
    });
    expect(readArguments(["--json", "a.json"])).toEqual({
      ok: true,
      value: { kind: "plan", file: "a.json", json: true, widths: [] },
    });
    expect(readArguments(["a.json", "--json"])).toEqual({
      ok: true,
      value: { kind: "plan", file: "a.json", json: true, widths: [] },
    });
  });

  it.each([
    ["1140", [1140]],
    ["1500, 900,1500", [900, 1500]],
  ])("takes widths of cloth: %s", (given, widths) => {
    expect(readArguments(["a.json", "--json", "--widths", given])).toMatchObject({ ok: true, value: { widths } });
  });

  it.each([["114 cm"], ["90,"], ["150"], ["-1140"], ["5000"]])("says what widths are for %j", (given) => {
    const read = readArguments(["a.json", "--json", "--widths", given]);
    expect(read.ok ? "" : read.failure).toContain("widths of cloth in mm");
  });

  it("takes a name after -- as it is", () => {
    expect(readArguments(["--", "--json"])).toEqual({
      ok: true,
      value: { kind: "plan", file: "--json", json: false, widths: [] },
    });
  });

  it.each([[["--help"]], [["-h"]], [["a.json", "--help"]]])("shows help for %j", (args) => {
    expect(readArguments(args)).toEqual({ ok: true, value: { kind: "help" } });
  });

  it.each([
    [[], /Name the work file/],
    [[""], /Name the work file/],
    [["--jsn", "a.json"], /Unknown option --jsn/],
    [["-x"], /Unknown option -x/],
    [["a.json", "b.json"], /b\.json is one too many/],
  ])("refuses %j", (args, reason) => {
    const read = readArguments(args);
    expect(read.ok ? "" : read.failure).toMatch(reason);
  });
});
