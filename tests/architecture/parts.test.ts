/** What of the page is loaded later: only in files named for it, and all of it fetched ahead. */
import { describe, expect, it } from "vitest";
import { parse, readProjectFile, sourceFiles, walk } from "./source";

/** Loads what it needs when it is asked to make a file, which is no part of the page. */
const WORKER = "src/ui/paper/paperWorker.ts";
const PARTS = /^src\/ui\/\w+\/(?:parts|\w+Part)\.ts$/;
const files = sourceFiles().filter((file) => file.startsWith("src/") && !file.startsWith("src/cli/"));

/** How often a file imports when it is running. */
function importsLater(file: string): number {
  let found = 0;
  walk(parse(file, readProjectFile(file)).program, (node) => {
    if (node.type === "ImportExpression") found += 1;
  });
  return found;
}

describe("parts of the page", () => {
  it("are imported by files named for it", () => {
    const found = files.filter((file) => file !== WORKER && importsLater(file) > 0);
    expect(found.filter((file) => !PARTS.test(file))).toEqual([]);
    expect(found.length).toBeGreaterThan(3);
  });

  it("are all fetched ahead", () => {
    const declared = files.filter((file) => PARTS.test(file)).reduce((sum, file) => sum + importsLater(file), 0);
    const list = /AHEAD[^=]*=\s*\[([^\]]*)\]/.exec(readProjectFile("src/ui/app/parts.ts"))?.[1] ?? "";
    const names = list.split(",").flatMap((name) => (name.trim() === "" ? [] : [name.trim()]));
    expect(new Set(names).size).toBe(declared);
  });
});
