/** What is remembered at module level outlives the work that is open: only what is about the page may. */
import { describe, expect, it } from "vitest";
import { changingAtModuleLevel, storeMakersIn, storesAtModuleLevel } from "./pageWideRules";
import { readProjectFile, sourceFiles } from "./source";

/** Each says in its head why what it keeps is about the page. */
const PAGE_WIDE = ["src/ui/session/pageState.ts"];

/** What can change at module level, and why no work is in it. */
const CHANGING: readonly { readonly name: string; readonly because: string }[] = [
  { name: "src/ui/paper/paperWorker.ts: fetched", because: "the typefaces, in a worker of its own" },
  { name: "src/ui/parts/restoreStyles.ts: failed", because: "stylesheets that did not come" },
];

const files = sourceFiles().filter((file) => file.startsWith("src/ui/"));
const sources = files.map((file) => [file, readProjectFile(file)] as const);
const makers = new Set(sources.flatMap(([file, source]) => storeMakersIn(file, source)));

describe("src/ui", () => {
  it("has stores at module level only where they are about the page", () => {
    const found = sources.filter(([file, source]) => storesAtModuleLevel(file, source, makers).length > 0);
    expect(found.map(([file]) => file)).toEqual(PAGE_WIDE);
  });

  it("has nothing else at module level that can change, but for what is about the page", () => {
    const found = sources.flatMap(([file, source]) =>
      changingAtModuleLevel(file, source).map((name) => `${file}: ${name}`),
    );
    expect(found.toSorted()).toEqual(CHANGING.map(({ name }) => name).toSorted());
  });

  it("knows what makes a store", () => {
    expect([...makers]).toEqual(expect.arrayContaining(["storeOfWork", "createPaperRoom"]));
  });
});

describe("the scanner of stores", () => {
  const zustand = `import { create, createStore } from "zustand";\n`;
  const none: ReadonlySet<string> = new Set();

  it.each([
    ["a hook", `${zustand}export const useSeen = create(() => ({}));`],
    ["a hook with its type", `${zustand}export const useSeen = create<{ a: 1 }>()((set) => ({ a: 1 }));`],
    ["a store", `${zustand}const seen = createStore(() => ({}));`],
    [
      "a store of the vanilla kind",
      `import { createStore } from "zustand/vanilla";\nexport const s = createStore(() => 1);`,
    ],
    ["another name", `import { create as make } from "zustand";\nexport const useSeen = make(() => ({}));`],
    ["the whole package", `import * as z from "zustand";\nexport const useSeen = z.create(() => ({}));`],
    ["one in a list", `${zustand}export const all = { seen: [createStore(() => 1)] };`],
    ["one made at once", `${zustand}export const s = (() => createStore(() => 1))();`],
  ])("sees %s at module level", (_kind, source) => {
    expect(storesAtModuleLevel("src/ui/x.ts", source, none)).toHaveLength(1);
  });

  it("sees what makes a store called at module level, wherever it was written", () => {
    const source = `import { createRoom } from "./room";\nexport const RoomContext = createContext(createRoom());`;
    expect(storesAtModuleLevel("src/ui/x.ts", source, new Set(["createRoom"]))).toEqual(["createRoom"]);
    expect(storesAtModuleLevel("src/ui/x.ts", source, none)).toEqual([]);
  });

  it.each([
    ["in a function", `${zustand}export const make = () => createStore(() => 1);`],
    ["in a function of old", `${zustand}export function make() { return createStore(() => 1); }`],
    [
      "of the open work",
      `${zustand}import { storeOfWork } from "./ofWork";\nexport const useA = storeOfWork(() => ({}));`,
    ],
    ["of somebody else", `import { create } from "elsewhere";\nexport const a = create();`],
  ])("lets pass what is made %s", (_kind, source) => {
    expect(storesAtModuleLevel("src/ui/x.ts", source, new Set(["storeOfWork"]))).toEqual([]);
  });

  it.each([
    ["let last = null;", ["last"]],
    ["export let last: string | null = null;", ["last"]],
    ["const known = new Map<string, number>();", ["known"]],
    ["export const known = new WeakMap();", ["known"]],
    ["const ORDER = new Set(['a']); const make = () => new Map(); export function f() { let a = 1; return a; }", []],
  ])("sees what can change in %j", (source, names) => {
    expect(changingAtModuleLevel("src/ui/x.ts", source)).toEqual(names);
  });

  it("names the functions that make stores", () => {
    const source = `${zustand}export function createRoom() { return { s: createStore(() => 1) }; }\nexport const other = () => createStore(() => 1);\nconst no = () => 1;`;
    expect(storeMakersIn("src/ui/x.ts", source)).toEqual(["createRoom", "other"]);
  });
});
