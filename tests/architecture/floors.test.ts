import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { FLOORS, floorFault, readFloors } from "../lint/floors.mjs";
import { floorsPicture } from "../support/floorsPicture";
import { circlesOf, folderGraph, importGraph } from "./importGraph";
import { importsOf } from "./importRules";
import { readProjectFile, sourceFiles } from "./source";

const files = sourceFiles();
const core = files.filter((file) => file.startsWith("src/core/"));

describe("the floors of the core", () => {
  it("hold every folder of the core, and no other", () => {
    const folders = [...new Set(core.map((file) => posix.dirname(file)))];
    expect([...FLOORS.keys()].toSorted()).toEqual(folders.toSorted());
  });

  it("are imported downwards only, types too", () => {
    const faults = core.flatMap((file) =>
      importsOf(file, readProjectFile(file)).map((specifier) => floorFault(FLOORS, file, specifier ?? ".")),
    );
    expect(faults.filter((fault) => fault !== null)).toEqual([]);
  });
});

describe("the picture of the floors", () => {
  it("is drawn from the imports as they are now (npm run floors)", () => {
    expect(readProjectFile("public/floors.svg")).toBe(floorsPicture(FLOORS, importGraph(core)));
  });
});

describe("src", () => {
  const graph = importGraph(files, true);

  it("has imports to follow", () => {
    expect(graph.get("src/core/plan/derivePlan.ts")).toContain("src/core/result.ts");
    expect(graph.get("src/main.tsx")?.length).toBeGreaterThan(2);
  });

  it("has no circle of files, type imports included", () => {
    expect(circlesOf(graph)).toEqual([]);
  });

  it("has no circle of folders, type imports included", () => {
    expect(circlesOf(folderGraph(graph))).toEqual([]);
  });
});

describe("the scanners of floors and circles", () => {
  const floors = readFloors("| 0 | `src/core/` | a |\n| 1 | `src/core/low/` | b |\n| 2 | `src/core/low/deep/` | c |\n");

  it("read the table", () => {
    expect([...floors]).toEqual([
      ["src/core", 0],
      ["src/core/low", 1],
      ["src/core/low/deep", 2],
    ]);
  });

  it.each([
    ["src/core/low/a.ts", "./deep/b", "Floor 1 (src/core/low) must not import from floor 2 (src/core/low/deep)."],
    ["src/core/a.ts", "./low/b", "Floor 0 (src/core) must not import from floor 1 (src/core/low)."],
    ["src/core/low/a.ts", "../new/b", "src/core/new stands on no floor: give it a row in DEVELOPERS.md."],
    ["src/core/low/a.ts", "./deep", "./deep: name the file, not its folder."],
    ["src/core/low/a.ts", "./deep/", "./deep/: name the file, not its folder."],
    ["src/core/low/deep/a.ts", "..", "..: name the file, not its folder."],
    ["src/core/low/a.ts", ".", ".: name the file, not its folder."],
    ["src/core/new/a.ts", "../low/b", "src/core/new stands on no floor: give it a row in DEVELOPERS.md."],
  ])("refuse that %s imports %s", (file, specifier, fault) => {
    expect(floorFault(floors, file, specifier)).toBe(fault);
  });

  it.each([
    ["src/core/low/deep/a.ts", "../b"],
    ["src/core/low/deep/a.ts", "../../result"],
    ["src/core/low/a.ts", "./b"],
    ["src/ui/a.ts", "../core/low/b"],
    ["src/core/low/a.ts", "clipper2-ts"],
  ])("allow that %s imports %s", (file, specifier) => {
    expect(floorFault(floors, file, specifier)).toBeNull();
  });

  it("see a circle, and only what is in it", () => {
    const graph = new Map([
      ["a", ["b"]],
      ["b", ["c", "d"]],
      ["c", ["a"]],
      ["d", []],
      ["e", ["a"]],
    ]);
    expect(circlesOf(graph)).toEqual([["a", "b", "c"]]);
  });

  it("see a circle of folders that is none of files", () => {
    const graph = new Map([
      ["src/x/a.ts", ["src/y/b.ts"]],
      ["src/y/b.ts", []],
      ["src/y/c.ts", ["src/x/d.ts"]],
      ["src/x/d.ts", []],
    ]);
    expect(circlesOf(graph)).toEqual([]);
    expect(circlesOf(folderGraph(graph))).toEqual([["src/x", "src/y"]]);
  });
});
