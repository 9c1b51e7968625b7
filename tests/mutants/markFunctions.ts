/** Which functions of a file there are, and a text of it in which each notes that it was reached. */
import { parseSync } from "vite";

export interface FunctionRange {
  readonly from: number;
  readonly to: number;
  readonly isExpression: boolean;
}

declare global {
  // The marked text writes here: one number a function, by file.
  // oxlint-disable-next-line no-var
  var reachedFunctions: Record<string, Uint8Array>;
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

/** Bodies of all functions of a file, in the order in which they begin. */
export function functionsOf(file: string, text: string): FunctionRange[] {
  const { program } = parseSync(file, text);
  const found: FunctionRange[] = [];
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) {
      for (const one of node) visit(one);
      return;
    }
    if (!isObject(node)) return;
    const { type, body } = node;
    const isFunction =
      type === "ArrowFunctionExpression" || type === "FunctionExpression" || type === "FunctionDeclaration";
    if (isFunction && isObject(body) && typeof body["start"] === "number" && typeof body["end"] === "number")
      found.push({
        from: body["start"],
        to: body["end"],
        isExpression:
          type === "ArrowFunctionExpression" && body["type"] !== "BlockStatement" && body["type"] !== "FunctionBody",
      });
    for (const [key, value] of Object.entries(node)) if (key !== "parent") visit(value);
  };
  visit(program);
  return found.toSorted((a, b) => a.from - b.from || b.to - a.to);
}

export function markFunctions(file: string, text: string): string {
  const functions = functionsOf(file, text);
  const notes: { at: number; text: string; rank: number }[] = functions.flatMap(({ from, to, isExpression }, index) =>
    isExpression
      ? [
          { at: from, text: `(__reached[${index}]=1,(`, rank: index },
          { at: to, text: "))", rank: -index },
        ]
      : [{ at: from + 1, text: `__reached[${index}]=1;`, rank: index }],
  );
  notes.sort((a, b) => a.at - b.at || a.rank - b.rank);
  let marked = "";
  let at = 0;
  for (const note of notes) {
    marked += text.slice(at, note.at) + note.text;
    at = note.at;
  }
  const own = JSON.stringify(file);
  // On the first line, since functions may be called while the module runs.
  return `const __reached=(globalThis.reachedFunctions[${own}]??=new Uint8Array(${functions.length}));${marked}${text.slice(at)}`;
}
