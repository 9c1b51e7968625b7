import { describe, expect, it } from "vitest";
import { blocksOf, rooms } from "../support/tokens";
import { coloursWritten, MAY_WRITE_COLOURS, OPENING, TOKENS } from "./colourRules";
import { projectFiles, readProjectFile } from "./source";

const files = projectFiles().filter((file) =>
  /^(?:src\/.*\.(?:css|tsx?)|public\/.*\.(?:css|svg)|index\.html)$/u.test(file),
);

describe("colours", () => {
  it("are written out in tokens.css alone", () => {
    const written = files
      .filter((file) => !MAY_WRITE_COLOURS.some(({ path }) => file.startsWith(path)))
      .flatMap((file) => coloursWritten(file, readProjectFile(file)).map((colour) => `${file}: ${colour}`));
    expect(written).toEqual([]);
  });

  it("are still written by all that may", () => {
    const idle = MAY_WRITE_COLOURS.filter(
      ({ path }) =>
        !files.some((file) => file.startsWith(path) && coloursWritten(file, readProjectFile(file)).length > 0),
    );
    expect(idle).toEqual([]);
  });

  it("have one name each wherever they are used", () => {
    const named = new Set(blocksOf(readProjectFile(TOKENS)).flatMap(({ declared }) => [...declared.keys()]));
    const unknown = files
      .filter((file) => file.startsWith("src/ui/") && file.endsWith(".css"))
      .flatMap((file) =>
        [
          ...readProjectFile(file).matchAll(
            /(?:color|background|fill|stroke|border[\w-]*|outline[\w-]*|shadow):[^;]*;/gu,
          ),
        ]
          .flatMap(([value]) => value.match(/var\(--[\w-]+/gu) ?? [])
          .map((name) => name.slice("var(".length))
          .filter((name) => !named.has(name) && !/^--(?:s\d|thumb|bar-height)$/u.test(name))
          .map((name) => `${file}: ${name}`),
      );
    expect(unknown).toEqual([]);
  });

  it("are the same before the page has come as after it", () => {
    const { day, night } = rooms();
    const early = blocksOf(readProjectFile(OPENING));
    expect(early.map(({ within }) => within)).toEqual([[], ["@media screen and (prefers-color-scheme: dark)"]]);
    const other = early.flatMap(({ within, declared }) =>
      [...declared].filter(([name, value]) => (within.length === 0 ? day : night).get(name) !== value),
    );
    expect(other).toEqual([]);
  });

  it("are those of the page on the browser's own bar", () => {
    const { day, night } = rooms();
    const bars = [
      ...readProjectFile("index.html").matchAll(/<meta name="theme-color" content="(.*?)" media="(.*?)" \/>/gu),
    ].map(([, colour, media]) => [media, colour]);
    expect(bars).toEqual([
      ["(prefers-color-scheme: light)", day.get("--paper")],
      ["(prefers-color-scheme: dark)", night.get("--paper")],
    ]);
  });
});

describe("the scanner of colours", () => {
  it.each([
    ["x.css", "a { color: #fff; }"],
    ["x.css", "a { background: linear-gradient(#fbf7ef80 1px, transparent); }"],
    ["x.css", "a { box-shadow: 0 0 2px rgb(0 0 0 / 20%); }"],
    ["x.css", "a { border: 1px solid black; }"],
    ["x.css", "a { --mine: oklch(0.5 0.1 200); }"],
    ["x.tsx", `export const a = "#1f2a37";`],
    ["x.tsx", "export const a = `fill:#fff;stroke:none`;"],
    ["x.tsx", `export const A = () => <path fill="#abc" />;`],
    ["x.html", `<meta content="#FBF7EF" />`],
  ])("sees one in %s: %s", (file, source) => {
    expect(coloursWritten(file, source)).toHaveLength(1);
  });

  it.each([
    ["x.css", "/* #fff */ a { color: var(--ink); fill: url(#add); border: 1px solid currentColor; }"],
    ["x.css", "a { background: color-mix(in srgb, var(--paper) 88%, transparent); }"],
    ["x.css", "#face { color: Highlight; }"],
    ["x.ts", `export class A { #face = 1; get face() { return this.#face; } }`],
    ["x.tsx", `export const A = () => <a href="#darts">White and black</a>;`],
    ["x.tsx", "export const say = (a: number) => `rgb ${a}`;"],
  ])("sees none in %s: %s", (file, source) => {
    expect(coloursWritten(file, source)).toEqual([]);
  });
});
