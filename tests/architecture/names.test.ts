/** One word for one thing, the field's own, and no two files of a layer with one name. */
import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, readProjectFile, sourceFiles, walk } from "./source";

/** Words that another one stands for. In code they are heard in identifiers and names of files. */
const OTHER_WORDS: readonly { readonly word: RegExp; readonly say: string; readonly where: RegExp }[] = [
  // On the page the ledger's lines are slips of paper; what draws those may say so.
  { word: /slip(?!per)/i, say: "alteration, or misreading", where: /^src\/(?!ui\/(?:ledger|table)\/)/ },
  { word: /wish/i, say: "alteration, or request", where: /^src\// },
  { word: /keeper|parting(?!s)/i, say: "autosave, backup or work session", where: /^src\// },
  { word: /^must$/, say: "invariant", where: /^src\// },
  // A frame is one of coordinates.
  { word: /^(?:pick|sizing|base)?frame(?:Pick|Size|Sum|Index|Label)$/i, say: "base size", where: /^src\// },
];

/** The names that a file gives or uses, and its own. */
function namesIn(file: string, source: string): ReadonlySet<string> {
  const names = new Set([posix.basename(file).replace(/\.\w+$/, "")]);
  walk(parse(file, source).program, (node) => {
    const isName = node.type === "Identifier" || node.type === "JSXIdentifier";
    if (isName && typeof node["name"] === "string") names.add(node["name"]);
  });
  return names;
}

const otherWords = (file: string, source: string): string[] =>
  [...namesIn(file, source)].flatMap((name) =>
    OTHER_WORDS.filter(({ word, where }) => where.test(file) && word.test(name)).map(
      ({ say }) => `${file}: ${name} (say ${say})`,
    ),
  );

describe("the names of src", () => {
  const files = sourceFiles();

  it("are the field's own, one for one thing", () => {
    expect(files.flatMap((file) => otherWords(file, readProjectFile(file)))).toEqual([]);
  });

  it("are given to one file of a layer alone, but for index", () => {
    const byName = new Map<string, string[]>();
    for (const file of files) {
      const [, layer = ""] = file.split("/");
      const key = `${layer}/${posix.basename(file).toLowerCase()}`;
      byName.set(key, [...(byName.get(key) ?? []), file]);
    }
    const twice = [...byName].filter(([key, found]) => found.length > 1 && !/\/index\.tsx?$/.test(key));
    expect(twice).toEqual([]);
  });

  it.each([
    ["src/core/plan/slips.ts", "export const a = 1;"],
    ["src/core/plan/a.ts", "export const applySlips = 1;"],
    ["src/words/a.ts", "export const a = (b: { slip: number }) => b.slip;"],
    ["src/ui/darts/a.tsx", "export const A = () => <Slip />;"],
    ["src/core/a.ts", "export const a = must(b);"],
    ["src/store/a.ts", "export const createKeeper = 1;"],
    ["src/core/sizing/a.ts", "export type FramePick = 1;"],
  ])("are found wanting in %s: %s", (file, source) => {
    expect(otherWords(file, source)).not.toEqual([]);
  });

  it.each([
    ["src/ui/ledger/SlipOfPaper.tsx", "export const SlipOfPaper = () => <li className='slip' />;"],
    ["src/words/a.ts", "export const a = 'the straps slip'; // a slip"],
    ["src/core/geometry/a.ts", "export const frame = 1;"],
    ["src/ui/app/a.ts", "requestAnimationFrame(() => {}); export const mustard = 1;"],
  ])("are in order in %s: %s", (file, source) => {
    expect(otherWords(file, source)).toEqual([]);
  });
});
