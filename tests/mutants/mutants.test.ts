import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { functionAround, testsAskedFor } from "./askedTests";
import { collect, standInForVitest } from "./collectTests";
import { equivalentOf, readEquivalents } from "./equivalents";
import { listMutants, type Mutant } from "./listMutants";
import { functionsOf, markFunctions } from "./markFunctions";
import { ModuleShop } from "./moduleShop";
import type { MeasuredFile } from "./protocol";

const root = mkdtempSync(join(tmpdir(), "bodicewright-mutants-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

function write(file: string, text: string): void {
  mkdirSync(dirname(join(root, file)), { recursive: true });
  writeFileSync(join(root, file), text);
}

const HALF = `export const half = (whole: number): number => whole / 2;
export function twice(one: number): number { return one * 2; }
`;
write("src/core/halves/half.ts", HALF);
write("src/core/halves/other.ts", `export const started = { times: 0 };\nstarted.times += 1;\n`);
write(
  "src/core/girth/quarter.ts",
  `import { half } from "../halves/half";\nimport { started } from "../halves/other";\nexport const quarter = (w: number): number => half(half(w));\nexport { started };\n`,
);
write(
  "tests/core/girth/quarter.test.ts",
  `import { expect, it } from "vitest";\nimport { quarter } from "../../../src/core/girth/quarter";\nit("is a fourth", () => { expect(quarter(8)).toBe(2); });\nit.each([[4, 1], [2, 0.5]])("of %s", (w, q) => { expect(quarter(w)).toBe(q); });\n`,
);

const mutantAt = (file: string, text: string, original: string, replacement: string): Mutant => {
  const from = text.indexOf(original);
  return { file, mutator: "ArithmeticOperator", from, to: from + original.length, replacement, line: 1 };
};

describe("mutants", () => {
  it("are faults at their place in the text, and none of a text", async () => {
    write("src/core/halves/named.ts", `export const name = (deep: boolean): string => (deep ? "front" : "back");\n`);
    const mutants = await listMutants(root, ["src/core/halves/half.ts", "src/core/halves/named.ts"]);
    const found = mutants.map(({ file, from, to, replacement }) => [
      file.endsWith("half.ts") ? HALF.slice(from, to) : "named",
      replacement,
    ]);
    expect(found).toContainEqual(["whole / 2", "whole * 2"]);
    expect(found).toContainEqual(["one * 2", "one / 2"]);
    expect(mutants.find(({ replacement }) => replacement === "one / 2")?.line).toBe(2);
    expect(mutants.filter(({ mutator }) => mutator === "StringLiteral")).toEqual([]);
  });
});

describe("functions of a file", () => {
  it("are told by their bodies, and the innermost is a mutant's own", () => {
    const text = "const a = (x: number) => (y: number) => x + y;\nfunction b() { return { c() { return 1; } }; }\n";
    const functions = functionsOf("a.ts", text);
    expect(functions.map(({ from, to }) => text.slice(from, to).trim())).toEqual([
      "(y: number) => x + y",
      "x + y",
      "{ return { c() { return 1; } }; }",
      "{ return 1; }",
    ]);
    expect(functionAround(functions, mutantAt("a.ts", text, "x + y", "x - y"))).toBe(1);
    expect(functionAround(functions, mutantAt("a.ts", text, "a =", "b ="))).toBeNull();
  });

  it("note that they were reached, and do what they did", () => {
    globalThis.reachedFunctions = {};
    const shop = new ModuleShop(root, true, new Map());
    const { half } = shop.load("src/core/halves/half.ts");
    expect([...(globalThis.reachedFunctions["src/core/halves/half.ts"] ?? [])]).toEqual([0, 0]);
    expect(typeof half === "function" ? Reflect.apply(half, undefined, [6]) : null).toBe(3);
    expect([...(globalThis.reachedFunctions["src/core/halves/half.ts"] ?? [])]).toEqual([1, 0]);
  });

  it("keep an object that is the body of an arrow", () => {
    expect(markFunctions("a.ts", "const f = () => ({ a: 1 });")).toContain("=> (__reached[0]=1,(({ a: 1 })));");
  });
});

const standIns = new Map([["vitest", standInForVitest]]);
const test = "tests/core/girth/quarter.test.ts";

/** Which of the tests of a file fail. */
const failing = (load: (file: string) => unknown): string[] =>
  collect(() => void load(test)).flatMap(({ name, run }) => {
    try {
      run();
      return [];
    } catch {
      return [name];
    }
  });

describe("a module shop", () => {
  it("runs tests as they are, and with a fault planted far below them", () => {
    const shop = new ModuleShop(root, false, standIns);
    const asItIs = (file: string): unknown => shop.load(file);
    expect(failing(asItIs)).toEqual([]);
    const planted = { file: "src/core/halves/half.ts", text: HALF.replace("whole / 2", "whole * 2") };
    expect(failing(shop.plant(planted))).toEqual(["is a fourth", "of %s 0", "of %s 1"]);
    expect(failing(asItIs)).toEqual([]);
  });

  it("runs the file that is asked for each time", () => {
    const shop = new ModuleShop(root, false, standIns);
    const names = (): string[] => collect(() => void shop.load(test)).map(({ name }) => name);
    expect([names(), names()]).toEqual([
      ["is a fourth", "of %s 0", "of %s 1"],
      ["is a fourth", "of %s 0", "of %s 1"],
    ]);
  });

  it("runs anew what depends on the fault, and lets the rest stand", () => {
    const shop = new ModuleShop(root, false, standIns);
    const planted = { file: "src/core/halves/half.ts", text: HALF };
    const first = shop.plant(planted)("src/core/girth/quarter.ts");
    const second = shop.plant(planted)("src/core/girth/quarter.ts");
    expect(second["quarter"]).not.toBe(first["quarter"]);
    expect(second["started"]).toBe(first["started"]);
    expect(second["started"]).toEqual({ times: 1 });
  });

  it("runs what depends on one fault once for all the files that are asked for, and these each time", () => {
    const shop = new ModuleShop(root, false, standIns);
    write("src/core/girth/eighth.ts", `export { half } from "../halves/half";\nexport { quarter } from "./quarter";\n`);
    write("src/core/girth/sixteenth.ts", `export { quarter } from "./quarter";\n`);
    const load = shop.plant({ file: "src/core/halves/half.ts", text: HALF });
    const eighth = load("src/core/girth/eighth.ts");
    expect(load("src/core/girth/sixteenth.ts")["quarter"]).toBe(eighth["quarter"]);
    expect(load("src/core/girth/eighth.ts")).not.toBe(eighth);
  });

  it("tells another text by its hash, of all that is below a file", () => {
    const before = new ModuleShop(root, false, standIns).hash(test);
    expect(new ModuleShop(root, false, standIns).hash(test)).toBe(before);
    write("src/core/halves/half.ts", `${HALF}\n`);
    expect(new ModuleShop(root, false, standIns).hash(test)).not.toBe(before);
    write("src/core/halves/half.ts", HALF);
  });
});

describe("the tests asked for a mutant", () => {
  const shop = new ModuleShop(root, false, standIns);
  const functions = functionsOf("half.ts", HALF);
  const file = "src/core/halves/half.ts";
  const bit = (at: number): string => Buffer.from([1 << at]).toString("base64");
  const measured = (reached: Record<string, string>, ...ms: number[]): MeasuredFile => ({
    file: test,
    hash: "",
    sources: { [file]: shop.digest(file) },
    ms: 10,
    reached: {},
    tests: ms.map((one, at) => ({ name: String(at), ms: one, reached })),
  });

  it("are those that reach its function, the quickest first, as far as the time goes", () => {
    const mutant = mutantAt(file, HALF, "whole / 2", "whole * 2");
    expect(testsAskedFor(mutant, functions, [measured({ [file]: bit(0) }, 30, 20, 500)], shop, 400)).toEqual([
      { file: test, tests: [1, 0], count: 3, ms: 60 },
    ]);
    expect(testsAskedFor(mutant, functions, [measured({ [file]: bit(1) }, 30)], shop, 400)).toEqual([]);
    expect(testsAskedFor(mutant, functions, [measured({}, 30)], shop, 400)).toEqual([]);
  });

  it("of other rooms have a quarter of the time, those named for the file all of it", () => {
    const mutant = mutantAt(file, HALF, "whole / 2", "whole * 2");
    const named = "tests/core/girth/half.test.ts";
    write(named, `import "../../../src/core/halves/half";\n`);
    const far = measured({ [file]: bit(0) }, 16, 17, 60);
    const asked = testsAskedFor(mutant, functions, [far, { ...far, file: named }], shop, 400);
    expect(asked.map((one) => [one.file, one.tests])).toEqual([
      [named, [0, 1, 2]],
      [test, [0, 1]],
    ]);
  });

  it("are all that load the file, for a fault in what runs when it is loaded", () => {
    const mutant = mutantAt(file, HALF, "half =", "halve =");
    expect(testsAskedFor(mutant, functions, [measured({}, 30)], shop, 400)).toHaveLength(1);
  });
});

describe("equivalents", () => {
  it("are each in the code as they are told, so that none outlives what it was told of", async () => {
    const project = fileURLToPath(new URL("../..", import.meta.url));
    const told = readEquivalents();
    const files = [...new Set(told.map(({ file }) => file))];
    const mutants = await listMutants(project, files);
    const shop = new ModuleShop(project, false, standIns);
    const kept = new Set(
      mutants.map((mutant) => equivalentOf(told, mutant, shop.source(mutant.file).text)).filter((one) => one !== null),
    );
    expect(told.filter(({ reason }) => !kept.has(reason))).toEqual([]);
  });

  it("are known by their line, what stands there and what is put there", () => {
    const told = [{ file: "a.ts", line: "a > b;", original: "a > b", replacement: "a >= b", reason: "never alike" }];
    const mutant = { ...mutantAt("a.ts", "  a > b;", "a > b", "a >= b"), line: 1 };
    expect(equivalentOf(told, mutant, "  a > b;")).toBe("never alike");
    expect(equivalentOf(told, { ...mutant, replacement: "a < b" }, "  a > b;")).toBeNull();
    expect(equivalentOf(told, mutant, "  a > b; // c")).toBeNull();
  });
});
