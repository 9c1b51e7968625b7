/** What must not stand in a text of the program: sentences in the core, and lengths that are written out. */
import { isNode, parse, walk, type Node } from "./source";

/** Stands for what is only known when the program runs. */
const HOLE = "\u2026";

/** Texts that look like a written length and are none, or are no amount of anything. Each must still be somewhere in src. */
export const NO_LENGTHS: readonly { readonly text: string; readonly because: string }[] = [
  { text: "36 in roll", because: "the name of a paper, as it is sold and as works are saved with it" },
  { text: "36-in-roll", because: "the same name, as it is typed on the command line" },
  { text: "Write 88.5 in place of 88,5", because: "the word in, not inches" },
];

const FRACTION = String.raw`(?:\d+\s*[/⁄]\s*\d+|[½¼¾⅓⅔⅛⅜⅝⅞])`;
const NUMBER = String.raw`(?:\d+(?:[.,]\d+)?(?:\s*${FRACTION})?|${FRACTION})`;
const UNIT_WORD = String.raw`(?:inch(?:es)?|(?:centi|milli)met(?:re|er)s?)`;
const NUMBER_WORD = String.raw`(?:an?|half|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|few|some|several|quarters?|eighths?|sixteenths?|tenths?)`;
const LENGTH = new RegExp(
  [
    String.raw`(?<![\w.,])${NUMBER}[\s\u00a0-]?(?:mm|cm|in|${UNIT_WORD})(?!\w)`,
    String.raw`(?<![\w.,])${NUMBER}\s?[″]`,
    String.raw`\b${NUMBER_WORD}(?:\s(?:of\s)?an?)?[\s-]${UNIT_WORD}(?!\w)`,
  ].join("|"),
  "giu",
);

/** A text of a file: its words, with a hole for each thing only known at run time. */
interface Text {
  readonly node: Node;
  readonly text: string;
}

const isPlus = (node: Node | undefined): boolean => node?.type === "BinaryExpression" && node["operator"] === "+";

const nodesIn = (node: Node, field: string): Node[] => {
  const held = node[field];
  return Array.isArray(held) ? held.filter(isNode) : [];
};

/** What an expression reads as in a text: literals as they are, all else a hole. */
function readAs(node: unknown): string {
  if (!isNode(node)) return HOLE;
  switch (node.type) {
    case "Literal":
      return typeof node["value"] === "string" || typeof node["value"] === "number" ? String(node["value"]) : HOLE;
    case "TemplateLiteral": {
      const expressions = nodesIn(node, "expressions");
      return nodesIn(node, "quasis")
        .map((quasi, at) => cooked(quasi) + (at < expressions.length ? readAs(expressions[at]) : ""))
        .join("");
    }
    case "BinaryExpression":
      return isPlus(node) ? readAs(node["left"]) + readAs(node["right"]) : HOLE;
    case "JSXText":
      return typeof node["value"] === "string" ? node["value"] : "";
    case "JSXExpressionContainer":
      return readAs(node["expression"]);
    default:
      return HOLE;
  }
}

function cooked({ value }: Node): string {
  return typeof value === "object" && value !== null && "cooked" in value && typeof value.cooked === "string"
    ? value.cooked
    : "";
}

/** Every text of a file, each once: sums of strings and the children of an element are read as one. */
function textsOf(program: Node): readonly Text[] {
  const found: Text[] = [];
  walk(program, (node, parent, field) => {
    if (node.type === "JSXElement" || node.type === "JSXFragment") {
      found.push({ node, text: nodesIn(node, "children").map(readAs).join("") });
      return;
    }
    const isText = node.type === "TemplateLiteral" || (node.type === "Literal" && typeof node["value"] === "string");
    const isPart = isPlus(parent) || (parent?.type === "TemplateLiteral" && field === "expressions");
    if ((isText || isPlus(node)) && !isPart) found.push({ node, text: readAs(node) });
  });
  return found;
}

/** Lengths written out in the texts of a source file: a number, in figures or in words, and a unit. */
export const lengthsWritten = (file: string, source: string): readonly string[] => [
  ...new Set(
    textsOf(parse(file, source).program)
      .map(({ text }) => NO_LENGTHS.reduce((so, { text: known }) => so.replaceAll(known, ""), text))
      .flatMap((text) => [...text.matchAll(LENGTH)].map(([length]) => `${file}: ${length}`)),
  ),
];

/** The nodes of messages that only our own bugs are thrown with. */
function bugMessages(program: Node): ReadonlySet<Node> {
  const messages = new Set<Node>();
  const add = (node: Node | undefined): void => {
    if (node !== undefined) walk(node, (inner) => messages.add(inner));
  };
  walk(program, (node) => {
    const { callee } = node;
    if (!isNode(callee) || callee.type !== "Identifier") return;
    const given = nodesIn(node, "arguments");
    if (node.type === "CallExpression" && callee["name"] === "invariant") add(given[1]);
    if (node.type === "NewExpression" && callee["name"] === "CoreBug") given.forEach(add);
  });
  return messages;
}

/** Whether a text has two or more spaces between letters, and words on both sides of one: a hole may stand for a word. */
function isSentence(text: string): boolean {
  const spaces = [...text.matchAll(/[\p{L}\u2026][^\s\p{L}\u2026]*\s+(?=[^\s\p{L}\u2026]*[\p{L}\u2026])/gu)];
  const words = [...text.matchAll(/\p{L}{2,}/gu)];
  return spaces.length >= 2 && words.length >= 2;
}

/** Sentences in the texts of a source file, but for what our own bugs are thrown with. */
export function sentencesIn(file: string, source: string): readonly string[] {
  const { program } = parse(file, source);
  const messages = bugMessages(program);
  return textsOf(program)
    .filter(({ node, text }) => isSentence(text) && !messages.has(node))
    .map(({ text }) => `${file}: ${text}`);
}
