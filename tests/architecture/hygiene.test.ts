import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { pathsNamed, placesNamed, scriptsNamed, scriptsOf, typeEscapes } from "./hygieneRules";
import { projectFiles, readProjectFile, root, sourceFiles } from "./source";

const isText = (file: string): boolean => !readFileSync(join(root, file)).includes(0);

describe("the project's files", () => {
  it("name no path of a machine and no registry host", () => {
    const files = projectFiles().filter(isText);
    expect(files).toContain("package-lock.json");
    const found = files.flatMap((file) => placesNamed(readProjectFile(file)).map((place) => `${file}: ${place}`));
    expect(found).toEqual([]);
  });

  it("leave where packages come from out of the lock file", () => {
    expect(readProjectFile("package-lock.json")).not.toContain('"resolved"');
  });

  it("pin every dependency to one version", () => {
    const { dependencies, devDependencies } = JSON.parse(readProjectFile("package.json")) as Record<
      string,
      Record<string, string>
    >;
    const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/.test(version),
    );
    expect(loose).toEqual([]);
  });

  it("do not go round the type checker in src", () => {
    expect(sourceFiles().flatMap((file) => typeEscapes(file, readProjectFile(file)))).toEqual([]);
  });
});

// Once the README is there, both documents have to be.
describe.runIf(existsSync(join(root, "README.md")))("README.md and DEVELOPERS.md", () => {
  it.each(["README.md", "DEVELOPERS.md"])("%s names only commands that package.json has", (file) => {
    const scripts = scriptsOf(readProjectFile("package.json"));
    const named = scriptsNamed(readProjectFile(file));
    expect(named).not.toEqual([]);
    expect(named.filter((name) => !scripts.includes(name))).toEqual([]);
  });

  it.each(["README.md", "DEVELOPERS.md"])("%s names only paths that exist", (file) => {
    expect(pathsNamed(readProjectFile(file)).filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});

describe("the hygiene scanners", () => {
  // Put together here, so that this file passes its own test.
  const slash = "/";
  const dot = ".";
  const at = "@";
  it.each([
    `see ${slash}work/main/src`,
    `"${slash}root/.cache"`,
    `cd ${slash}home/someone`,
    `file:${slash}${slash}${slash}home/someone/x`,
    `(${slash}Users/someone)`,
    `https://registry${dot}npmjs.org/react`,
    `http://deb${dot}debian.org/debian`,
  ])("see a place in %j", (text) => {
    expect(placesNamed(text)).toHaveLength(1);
  });

  it.each(["paper/work/sheet", "./home/page", "/usr/bin/chromium", "../root/x", "https://example.org/home/x"])(
    "see none in %j",
    (text) => {
      expect(placesNamed(text)).toEqual([]);
    },
  );

  it.each([
    "export const a = (x: any) => x;",
    "export const a = {} as any;",
    "export type A = Record<string, any>;",
    "export const a = <any>{};",
    `// ${at}ts-ignore\nexport const a = 1;`,
    `/* ${at}ts-expect-error: because */ export const a = 1;`,
    `// ${at}ts-nocheck\nexport const a = 1;`,
  ])("see the way round types in %j", (source) => {
    expect(typeEscapes("src/core/x.ts", source)).toHaveLength(1);
  });

  it("see none in words that only look like it", () => {
    const source = `// note: any size will do\nexport const a = "x: any, as any";`;
    expect(typeEscapes("src/core/x.ts", source)).toEqual([]);
  });

  it("read the commands of a document", () => {
    const text = [
      "Run `npm start`, then `npm test`; npm run prose is no code.",
      "```sh",
      "npm run --silent plan -- FILE",
      "npm --silent run size && npm ci",
      "npm install",
      "```",
      "and `npm run test:e2e -- --headed`.",
    ].join("\n");
    expect(scriptsNamed(text)).toEqual(["plan", "size", "start", "test", "test:e2e"]);
  });

  it("read the paths of a document", () => {
    const text = "`src/core/units.ts`, `tests/e2e/`, src/prose.ts, `node tests/tools/ensure.mjs --quiet`, `src/*.ts`";
    expect(pathsNamed(text)).toEqual(["src/core/units.ts", "tests/e2e", "tests/tools/ensure.mjs"]);
  });

  it("read the scripts of a package.json", () => {
    expect(scriptsOf(`{ "scripts": { "start": "x", "type": "y" } }`)).toEqual(["start", "type"]);
    expect(scriptsOf(`{}`)).toEqual([]);
  });
});
