/** What is written and drawn on what, in every room of the page, has the contrast that WCAG 2.2 asks for. */
import { describe, expect, it } from "vitest";
import { projectFiles, readProjectFile } from "./source";
import { contrast, rooms, roomsOfMore, type Tokens } from "../support/tokens";

/** Success criteria 1.4.3 (text) and 1.4.11 (edges of controls, lines that carry meaning). */
const TEXT = 4.5;
const LINE = 3;

const GROUNDS = ["--paper", "--paper-lit"];
const WASHES = ["--carbon-wash", "--madder-wash", "--olive-wash", "--ochre-wash"];

/** Writing, and all that it stands on. */
const WRITTEN: Readonly<Record<string, readonly string[]>> = {
  "--ink": [...GROUNDS, "--paper-fold", "--paper-shade", ...WASHES],
  "--ink-soft": [...GROUNDS, "--paper-fold", ...WASHES],
  "--carbon": [...GROUNDS, "--paper-fold", ...WASHES],
  "--carbon-deep": [...GROUNDS, "--paper-fold", ...WASHES],
  "--madder-deep": [...GROUNDS, "--madder-wash", "--ochre-wash"],
  "--olive": GROUNDS,
  "--ochre": GROUNDS,
  "--ochre-deep": [...GROUNDS, "--ochre-wash"],
  "--printed-words": GROUNDS,
  // What is filled: the button that matters most, what is chosen, a message that passes.
  "--paper-lit": ["--carbon", "--carbon-deep", "--ink", "--ink-soft"],
};

/** Lines that carry meaning, edges of controls, the ring of the focus. */
const DRAWN: Readonly<Record<string, readonly string[]>> = {
  "--ink": [...GROUNDS, "--paper-fold", "--paper-shade", ...WASHES],
  "--ink-soft": [...GROUNDS, "--paper-fold"],
  "--edge": [...GROUNDS, ...WASHES],
  "--carbon": [...GROUNDS, "--paper-fold", ...WASHES],
  "--carbon-deep": [...GROUNDS, "--carbon-wash"],
  "--madder-deep": GROUNDS,
  "--madder": [...GROUNDS, "--madder-wash", "--paper-fold"],
  "--olive": [...GROUNDS, "--olive-wash"],
  "--ochre": [...GROUNDS, "--ochre-wash"],
  "--printed": GROUNDS,
  "--printed-base": GROUNDS,
  "--printed-words": GROUNDS,
};

/** Only to part and to fill: whatever they show is told by words or by another line. */
const DECORATION = ["--rule", "--shadow"];

/** On the page by night there is no pattern: it lies on paper, by lamplight. */
const isHere = (room: string, fore: string): boolean => room !== "night" || !fore.startsWith("--printed");

function tooFaint(
  room: string,
  tokens: Tokens,
  pairs: Readonly<Record<string, readonly string[]>>,
  least: number,
): string[] {
  const here = Object.entries(pairs).filter(([fore]) => isHere(room, fore));
  return here.flatMap(([fore, grounds]) =>
    grounds.flatMap((ground) => {
      const found = contrast(tokens.get(fore) ?? "", tokens.get(ground) ?? "");
      return found < least ? [`${fore} on ${ground}: ${found.toFixed(2)}`] : [];
    }),
  );
}

describe.each(Object.entries(rooms()))("by %s", (room, tokens) => {
  it("writing has 4.5 : 1 on all that it stands on", () => {
    expect(tooFaint(room, tokens, WRITTEN, TEXT)).toEqual([]);
  });

  it("lines that carry meaning and edges of controls have 3 : 1", () => {
    expect(tooFaint(room, tokens, DRAWN, LINE)).toEqual([]);
  });
});

describe.each(Object.entries(roomsOfMore()))("by %s, with more contrast asked for", (room, tokens) => {
  it("soft ink is ink, and what only parts is an edge", () => {
    expect(tokens.get("--ink-soft")).toBe(tokens.get("--ink"));
    expect(tokens.get("--rule")).toBe(tokens.get("--edge"));
    expect(tooFaint(room, tokens, { "--printed": GROUNDS }, TEXT)).toEqual([]);
  });
});

describe("the stylesheets of the page", () => {
  const sheets = projectFiles().filter((file) => /^src\/ui\/.*\.css$/.test(file) && !file.endsWith("tokens.css"));
  const used = (property: RegExp): Set<string> =>
    new Set(
      sheets.flatMap((file) =>
        [...readProjectFile(file).matchAll(property)].flatMap(([said]) => said.match(/--[a-z][\w-]*(?=[),\s])/g) ?? []),
      ),
    );
  const colours = new Set(rooms().day.keys());
  const unknown = (names: Set<string>, known: readonly string[]): string[] =>
    [...names].filter((name) => colours.has(name) && !known.includes(name));

  it("write in nothing that is not held above", () => {
    expect(unknown(used(/(?<![\w-])color:[^;]+;/g), Object.keys(WRITTEN))).toEqual([]);
  });

  it("draw in nothing that is not held above", () => {
    const drawn = used(/(?<![\w-])(?:stroke|outline(?:-color)?|border[\w-]*):[^;]+;/g);
    // Halos round writing, and dashes of the ground on a line.
    const known = [...Object.keys(DRAWN), ...DECORATION, "--paper", "--paper-lit", "--paper-shade", "--sheet"];
    expect(unknown(drawn, known)).toEqual([]);
  });

  it("stand on nothing that is not held above", () => {
    const grounds = [...new Set(Object.values(WRITTEN).flat()), "--sheet", ...Object.keys(DRAWN)];
    expect(unknown(used(/(?<![\w-])background(?:-color)?:[^;]+;/g), grounds)).toEqual([]);
  });
});
