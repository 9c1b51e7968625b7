/** Reads source files as syntax trees, for the tests that watch over src. */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseSync } from "vite";

export const root = fileURLToPath(new URL("../..", import.meta.url));

/** The files that are, or would be, under version control, as paths from the root with forward slashes. */
export function projectFiles(): string[] {
  const listing = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
    cwd: root,
    encoding: "utf8",
  });
  const names = listing.split("\0").filter((name) => name !== "");
  return [...new Set(names)].filter((name) => existsSync(join(root, name))).toSorted();
}

export const sourceFiles = (): string[] =>
  projectFiles().filter((name) => /^src\/.*\.(ts|tsx|mts|cts|js|jsx|mjs|cjs)$/.test(name));

export const readProjectFile = (name: string): string => readFileSync(join(root, name), "utf8");

/** A node of the tree: its type, and whatever else it holds. */
export interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}

export const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && "type" in value && typeof value.type === "string";

export interface Parsed {
  readonly program: Node;
  readonly comments: readonly string[];
}

/** The tree that was asked for last: several scans of one file in a row take one parse, and no tree is kept for longer. */
let last: { readonly file: string; readonly source: string; readonly parsed: Parsed } | null = null;

export function parse(file: string, source: string): Parsed {
  if (last?.file !== file || last.source !== source) last = { file, source, parsed: parsedNow(file, source) };
  return last.parsed;
}

function parsedNow(file: string, source: string): Parsed {
  const { program, comments, errors } = parseSync(file, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${file} cannot be parsed: ${error.message}`);
  const tree: unknown = program;
  if (!isNode(tree)) throw new Error(`${file} gave no tree`);
  return { program: tree, comments: comments.map((comment) => comment.value) };
}

/** Calls `visit` for each node with the node that holds it and the name of the field it is held in. */
export function walk(
  node: Node,
  visit: (node: Node, parent: Node | undefined, field: string) => void,
  parent?: Node,
  field = "",
): void {
  visit(node, parent, field);
  for (const [name, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child)) walk(child, visit, node, name);
    }
  }
}
