/**
 * Loops of the core that are not counted. A loop over a collection, or one that counts up or down to a bound, ends; any other
 * has to say why it does. Solvers go through `src/core/geometry/iterate.ts`.
 */

/** A loop let pass: its head as it is written, and why it ends. */
interface LoopLetPass {
  readonly file: string;
  readonly head: string;
  readonly why: string;
}

export const LOOPS_LET_PASS: readonly LoopLetPass[] = [
  {
    file: "src/core/chart/pasteCells.ts",
    head: "while (at <= text.length)",
    why: "every round goes on by a character at the least, and a text pasted is of limited length",
  },
  {
    file: "src/core/chart/pasteCells.ts",
    head: 'while (end < text.length && text[end] !== mark && text[end] !== "\\n")',
    why: "goes on by a character a round",
  },
  {
    file: "src/core/cloth/laySearch.ts",
    head: "while (step.done !== true)",
    why: "a search for lays goes through lists: widths that are sold, steps of what can be given up",
  },
  {
    file: "src/core/cloth/packCloth.ts",
    head: "while (passed < runs && left <= span)",
    why: "every look either passes a run, or goes right by a cell at the least and begins to pass them anew",
  },
  {
    file: "src/core/ownPieces/matchSizes.ts",
    head: "for (let i = rows, j = columns; i > 0 && j > 0;)",
    why: "either counts down in every round",
  },
  {
    file: "src/core/ownPieces/curvesMeant.ts",
    head: "for (let from = 0; from < turned.length;)",
    why: "every round goes on to the end of a line, by an edge at the least",
  },
  {
    file: "src/core/ownPieces/curvesMeant.ts",
    head: "while ( to < turned.length && turned[to - 1]?.curve === null && turned[to]?.curve === null && isCorner[(start + to) % ring.length] !== true )",
    why: "goes on by an edge a round",
  },
  {
    file: "src/core/geometry/pathData.ts",
    head: "while (at < path.length)",
    why: "every round goes on by a letter at the least, or ends it",
  },
  {
    file: "src/core/plan/setDart.ts",
    head: "for (;;)",
    why: "what is sought goes through a counted number of plans",
  },
  {
    file: "src/core/sewn/flatRing.ts",
    head: "while (reached + next < length)",
    why: "steps only grow, and no piece reaches further than FURTHEST_POINT",
  },
  {
    file: "src/core/sewn/stitch.ts",
    head: "for (let next = sewnTo[at]; next !== undefined && next !== at; next = sewnTo[at])",
    why: "every node points to an earlier one or to itself",
  },
  {
    file: "src/core/sheets/cover.ts",
    head: "while (cell + 1 < at.length && (at[cell + 1] ?? Infinity) <= value)",
    why: "counts up to the number of cells",
  },
  {
    file: "src/core/sureness/ruleRegions.ts",
    head: "for (let isFine = isRough; !isFine;)",
    why: "every round halves what it cuts, down to NARROWEST_CELL, or cuts nothing",
  },
  {
    file: "src/core/sureness/ruleRegions.ts",
    head: "while (way !== there)",
    why: "goes on towards the other end every round, and the way there is the one looked for",
  },
  {
    file: "src/core/sizing/pickInterval.ts",
    head: "while (index + 1 < values.length && wanted >= intervalOf(values, index).to)",
    why: "counts up to the number of sizes",
  },
];

/** A function of the core that calls itself, and what it counts down. */
interface RecursionLetPass {
  readonly file: string;
  readonly name: string;
  readonly why: string;
}

export const RECURSIONS_LET_PASS: readonly RecursionLetPass[] = [
  {
    file: "src/core/plan/commands.ts",
    name: "areNumbersKept",
    why: "goes into what a command holds, which is plain data of few levels",
  },
  {
    file: "src/core/geometry/bezierLength.ts",
    name: "cubicLengthBetween",
    why: "turned round once, so that its ends are in order",
  },
  {
    file: "src/core/geometry/bezierLength.ts",
    name: "integrate",
    why: "halvings are counted down; only the half beside a near cusp is halved again",
  },
  { file: "src/core/geometry/bezierNearest.ts", name: "search", why: "halvings are counted down" },
  { file: "src/core/geometry/bezierPair.ts", name: "meet", why: "cuts, and looks of the whole search, are counted" },
  {
    file: "src/core/girth/roundLevels.ts",
    name: "bendsOf",
    why: "once for each piece that is joined to the one before",
  },
  {
    file: "src/core/girth/roundLevels.ts",
    name: "levelAt",
    why: "once for each piece that is joined to the one before",
  },
  { file: "src/core/plan/halves.ts", name: "inTenths", why: "as deep as what it tells, which is plain data" },
  { file: "src/core/same.ts", name: "isSame", why: "as deep as what it compares, which is plain data" },
];

/** The head of a bracket that opens at `from`, to the one that closes it. */
function bracketed(source: string, from: number): string {
  let depth = 0;
  for (let at = from; at < source.length; at += 1) {
    if (source[at] === "(" || source[at] === "{") depth += 1;
    if (source[at] === ")" || source[at] === "}") depth -= 1;
    if (depth === 0) return source.slice(from, at + 1);
  }
  return source.slice(from);
}

/** The source without its comments. */
const bare = (source: string): string => source.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");

/** Counted: `x < bound` or the like in its condition, and `x` moved by a fixed step or a share at each round. */
function isCounted(head: string): boolean {
  const parts = head.slice(1, -1).split(";");
  if (parts.length !== 3) return false;
  const [, condition = "", step = ""] = parts;
  const moved = /^\s*(\w+)\s*(?:\+\+|--|[+*-]=|=\s*Math\.floor)/.exec(step)?.[1];
  // Where the bound is met there is another part of the loop that moves it.
  return moved !== undefined && new RegExp(`\\b${moved}\\b[^;]*[<>]|[<>][^;]*\\b${moved}\\b`).test(condition);
}

/** Heads of all loops of a source that neither run over a collection nor count. */
export function uncountedLoops(source: string): readonly string[] {
  const code = bare(source);
  return [...code.matchAll(/\b(while|for)\s*(\()|\bdo\s*\{/g)].flatMap((match) => {
    if (match[1] === undefined) return ["do"];
    const head = bracketed(code, match.index + match[0].length - 1);
    if (match[1] === "for" && (/^\(\s*(?:const|let) .+? of /s.test(head) || isCounted(head))) return [];
    return [`${match[1]} ${head.replace(/\s+/g, " ")}`];
  });
}

/** Names of the functions of a source that call themselves. */
export function recursions(source: string): readonly string[] {
  const code = bare(source);
  return [...code.matchAll(/\bfunction (\w+)(?:<[^(]*>)?\(/g)].flatMap(([text, name = ""]) => {
    const at = code.indexOf(text);
    const parameters = bracketed(code, at + text.length - 1);
    const after = at + text.length - 1 + parameters.length;
    const body = bracketed(code, code.indexOf("{\n", after));
    return new RegExp(`(?<![.\\w])${name}(?:<[^(]*>)?\\(`).test(body) ? [name] : [];
  });
}
