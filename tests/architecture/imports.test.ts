import { describe, expect, it } from "vitest";
import { CORE_BANS, importFaults, importsOf, impurityFaults, LAYERS } from "./importRules";
import { readProjectFile, sourceFiles } from "./source";

describe("src", () => {
  const files = sourceFiles();

  it("has files to scan", () => {
    expect(files).toContain("src/main.tsx");
    expect(files.some((file) => file.startsWith("src/core/"))).toBe(true);
  });

  it("imports in the allowed directions only", () => {
    expect(files.flatMap((file) => importFaults(file, readProjectFile(file)))).toEqual([]);
  });

  it("keeps time, chance, the page, storage and the network out of the core", () => {
    const core = files.filter((file) => file.startsWith("src/core/"));
    expect(core.flatMap((file) => impurityFaults(file, readProjectFile(file)))).toEqual([]);
  });
});

describe("the import scanner", () => {
  it.each([
    ["an import", `import { a } from "../ui/a";`],
    ["an import for its effects", `import "../ui/a";`],
    ["a type import", `import type { A } from "../ui/a";`],
    ["an inline type import", `import { type A } from "../ui/a";`],
    ["an import type", `export type A = import("../ui/a").A;`],
    ["a typeof import", `export type A = typeof import("../ui/a");`],
    ["a re-export", `export { a } from "../ui/a";`],
    ["a type re-export", `export type { A } from "../ui/a";`],
    ["an export of everything", `export * from "../ui/a";`],
    ["a named export of everything", `export * as a from "../ui/a";`],
    ["a dynamic import", `export const load = () => import("../ui/a");`],
    ["an import assignment", `import a = require("../ui/a");`],
    ["a require", `const a = require("../ui/a");`],
    ["a reference comment", `/// <reference path="../ui/a" />`],
    ["an import over several lines", `import {\n  a,\n  b,\n} from "../ui/a";`],
  ])("sees %s", (_kind, source) => {
    expect(importsOf("src/core/x.ts", source)).toEqual(["../ui/a"]);
    expect(importFaults("src/core/x.ts", source)).toEqual(["src/core/x.ts (core) must not import ../ui/a"]);
  });

  it("is not misled by comments and strings", () => {
    const source = `// import "../ui/a";\n/* export * from "../ui/b" */\nexport const text = 'import "../ui/c"';`;
    expect(importFaults("src/core/x.ts", source)).toEqual([]);
  });

  it.each(["import(name)", "import(`../ui/${name}`)", "require(name)"])("refuses %s", (call) => {
    expect(importFaults("src/ui/x.ts", `export const load = (name: string) => ${call};`)).toEqual([
      "src/ui/x.ts imports something that is not a plain string",
    ]);
  });

  it.each([
    ["src/core/a/x.ts", "zod"],
    ["src/core/a/x.ts", "node:fs"],
    ["src/core/a/x.ts", "react"],
    ["src/core/a/x.ts", "../../document/y"],
    ["src/core/a/x.ts", "../../words/y"],
    ["src/core/a/x.ts", "../../../tests/support/y"],
    ["src/core/cutting/x.ts", "jspdf"],
    ["src/core/cutting/x.ts", "../../paper/y"],
    ["src/core/sheets/x.ts", "clipper2-ts"],
    ["src/core/cutting/deeper/x.ts", "clipper2-ts"],
    ["src/core/x.ts", "clipper2-ts"],
    ["src/core/x.ts", "../core2/y"],
    ["src/core/x.ts", "../../demo-data/y.json"],
    ["src/core/x.ts", "/src/ui/y"],
    ["src/words/x.ts", "../document/y"],
    ["src/words/x.ts", "../drawing/y"],
    ["src/words/x.ts", "zod"],
    ["src/document/x.ts", "../words/y"],
    ["src/document/x.ts", "../store/y"],
    ["src/document/x.ts", "zod-other"],
    ["src/document/x.ts", "idb"],
    ["src/drawing/x.ts", "../document/y"],
    ["src/drawing/x.ts", "react"],
    ["src/store/x.ts", "../drawing/y"],
    ["src/store/x.ts", "../ui/y"],
    ["src/store/x.ts", "react"],
    ["src/print/x.tsx", "../store/y"],
    ["src/print/x.tsx", "../ui/y"],
    ["src/print/x.tsx", "zod/mini"],
    ["src/paper/x.ts", "clipper2-ts"],
    ["src/paper/x.ts", "jspdf-other"],
    ["src/paper/x.ts", "react"],
    ["src/paper/x.ts", "../document/y"],
    ["src/paper/x.ts", "../print/y"],
    ["src/paper/x.ts", "../ui/y"],
    ["src/print/x.tsx", "../paper/y"],
    ["src/paper/x.ts", "../cli/y"],
    ["src/cli/x.ts", "../print/y"],
    ["src/cli/x.ts", "../store/y"],
    ["src/cli/x.ts", "../ui/y"],
    ["src/cli/x.ts", "zod"],
    ["src/cli/x.ts", "jspdf"],
    ["src/reading/x.ts", "../words/y"],
    ["src/reading/x.ts", "../document/y"],
    ["src/reading/x.ts", "../ui/y"],
    ["src/reading/x.ts", "saxes-other"],
    ["src/reading/x.ts", "zod"],
    ["src/core/x.ts", "../reading/y"],
    ["src/words/x.ts", "../reading/y"],
    ["src/document/x.ts", "../reading/y"],
    ["src/store/x.ts", "../reading/y"],
    ["src/drawing/x.ts", "../reading/y"],
    ["src/print/x.tsx", "../reading/y"],
    ["src/paper/x.ts", "../reading/y"],
    ["src/cli/x.ts", "saxes"],
    ["src/ui/x.tsx", "../cli/y"],
    ["src/ui/x.tsx", "../main"],
    ["src/ui/x.tsx", "/src/core/y"],
    ["src/ui/x.tsx", "../../tests/support/y"],
    ["src/main.tsx", "./cli/y"],
  ])("refuses that %s imports %s", (file, specifier) => {
    expect(importFaults(file, `import type { Y } from "${specifier}";`)).toHaveLength(1);
  });

  it.each([
    ["src/core/a/x.ts", "../b/y"],
    ["src/core/x.ts", "./y"],
    ["src/words/x.ts", "../core/y"],
    ["src/document/x.ts", "zod/mini"],
    ["src/document/x.ts", "../core/a/y"],
    ["src/drawing/x.ts", "../words/y"],
    ["src/store/x.ts", "zustand/vanilla"],
    ["src/store/x.ts", "idb"],
    ["src/store/x.ts", "../document/y"],
    ["src/print/x.tsx", "react"],
    ["src/print/x.tsx", "../drawing/y"],
    ["src/core/allowance/x.ts", "clipper2-ts"],
    ["src/core/cutting/x.ts", "clipper2-ts"],
    ["src/paper/x.ts", "jspdf"],
    ["src/paper/x.ts", "../core/a/y"],
    ["src/paper/x.ts", "../drawing/y"],
    ["src/paper/x.ts", "../words/y"],
    ["src/reading/x.ts", "../core/a/y"],
    ["src/reading/x.ts", "saxes"],
    ["src/cli/x.ts", "../reading/y"],
    ["src/ui/a/x.tsx", "../../reading/y"],
    ["src/ui/a/x.tsx", "../../paper/y"],
    ["src/cli/x.ts", "node:fs/promises"],
    ["src/cli/x.ts", "../document/y"],
    ["src/cli/x.ts", "../drawing/y"],
    ["src/cli/x.ts", "../paper/y"],
    ["src/ui/a/x.tsx", "../../print/y"],
    ["src/ui/a/x.tsx", "./x.css"],
    ["src/ui/a/x.tsx", "../../../demo-data/y.json?raw"],
    ["src/ui/x.tsx", "@scope/package/part"],
    ["src/main.tsx", "./ui/y"],
    ["src/main.tsx", "react-dom/client"],
  ])("allows that %s imports %s", (file, specifier) => {
    expect(importFaults(file, `import type { Y } from "${specifier}";`)).toEqual([]);
  });

  it.each(["src/helpers/x.ts", "src/other.ts"])("refuses %s, which is in no layer", (file) => {
    expect(importFaults(file, "export {};")).toEqual([`${file} is in no known layer of src`]);
  });

  it("says so when a file cannot be parsed", () => {
    expect(() => importFaults("src/core/x.ts", "import {")).toThrow("cannot be parsed");
  });

  it("allows no circle of layers", () => {
    const reaches = (from: string, to: string): boolean =>
      (LAYERS[from]?.layers ?? []).some((next) => next === to || reaches(next, to));
    expect(Object.keys(LAYERS).filter((layer) => reaches(layer, layer))).toEqual([]);
  });
});

describe("the purity scanner", () => {
  it.each([...CORE_BANS])("refuses %s", (name) => {
    expect(impurityFaults("src/core/x.ts", `export const a = () => ${name};`)).toEqual([`src/core/x.ts uses ${name}`]);
  });

  it.each([
    ["a call", "export const a = Date.now();", "uses Date"],
    ["a new object", "export const a = new Date();", "uses Date"],
    ["a type", "export type A = { readonly when: Date };", "uses Date"],
    ["a shorthand", "export const a = { document };", "uses document"],
    ["a computed member", "export const a = {}[window];", "uses window"],
    ["chance", "export const a = Math.random();", "uses Math.random"],
    ["chance by its name", `export const a = Math["random"]();`, "uses Math in another way"],
    ["chance taken out", "export const { random } = Math;", "uses Math in another way"],
    ["Math renamed", "const m = Math; export const a = m.random();", "uses Math in another way"],
  ])("refuses %s", (_kind, source, fault) => {
    expect(impurityFaults("src/core/x.ts", source)[0]).toContain(fault);
  });

  it.each([
    "export const a = Math.sqrt(2) + Math.PI;",
    "export const a = (plan: { document: number }) => plan.document;",
    "export interface A { readonly window: number; readonly document?: string }",
    "// A new Date() or window would be wrong here.\nexport const a = 'Math.random()';",
  ])("allows %s", (source) => {
    expect(impurityFaults("src/core/x.ts", source)).toEqual([]);
  });
});
