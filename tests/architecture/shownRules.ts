/** What must not stand outside src/words: texts that somebody reads, and texts made of numbers, days or lists by hand. */
import { isNode, parse, walk, type Node } from "./source";

/** Attributes whose text is seen or spoken. */
const READ = new Set([
  "alt",
  "aria-description",
  "aria-label",
  "aria-roledescription",
  "aria-valuetext",
  "children",
  "content",
  "heading",
  "hint",
  "label",
  "legend",
  "note",
  "placeholder",
  "summary",
  "title",
  "unit",
  "what",
  "words",
]);

/** Attributes whose text is for the browser or for the code. */
const UNREAD =
  /^(?:className|id|key|d|fill|stroke.*|style|transform|viewBox|points|href|type|role|accept|rel|data-.*)$/;

const LETTER = /\p{L}/u;
/** Two words with a space between. */
const WORDS = /\p{L}{2,}[^\p{L}\s]*\s+(?:\S+\s+)*?[^\p{L}\s]*\p{L}{2,}/u;

const nodesIn = (node: Node, field: string): Node[] => {
  const held = node[field];
  return Array.isArray(held) ? held.filter(isNode) : [];
};

const cooked = ({ value }: Node): string =>
  typeof value === "object" && value !== null && "cooked" in value && typeof value.cooked === "string"
    ? value.cooked
    : "";

/** The texts that an expression can come to: its literals, and those of what it chooses between. */
function outcomes(node: unknown): readonly string[] {
  if (!isNode(node)) return [];
  switch (node.type) {
    case "Literal":
      return typeof node["value"] === "string" ? [node["value"]] : [];
    case "TemplateLiteral":
      return [nodesIn(node, "quasis").map(cooked).join("\u2026"), ...nodesIn(node, "expressions").flatMap(outcomes)];
    case "ConditionalExpression":
      return [...outcomes(node["consequent"]), ...outcomes(node["alternate"])];
    case "LogicalExpression":
      return [...outcomes(node["left"]), ...outcomes(node["right"])];
    case "BinaryExpression":
      return node["operator"] === "+" ? [...outcomes(node["left"]), ...outcomes(node["right"])] : [];
    case "JSXExpressionContainer":
    case "ParenthesizedExpression":
    case "TSAsExpression":
    case "TSSatisfiesExpression":
      return outcomes(node["expression"]);
    default:
      return [];
  }
}

/** What is thrown or asked of the code alone. */
function forProgrammers(program: Node): ReadonlySet<Node> {
  const nodes = new Set<Node>();
  const add = (node: Node): void => walk(node, (inner) => nodes.add(inner));
  walk(program, (node) => {
    const { callee } = node;
    if (/^(?:ImportDeclaration|Export(?:Named|All)Declaration)$/.test(node.type) && isNode(node["source"]))
      add(node["source"]);
    if (
      node.type.startsWith("TS") &&
      node.type !== "TSAsExpression" &&
      node.type !== "TSSatisfiesExpression" &&
      node.type !== "TSNonNullExpression"
    )
      add(node);
    if (node.type === "JSXAttribute" && isNode(node["name"]) && UNREAD.test(String(node["name"]["name"]))) add(node);
    if (!isNode(callee)) return;
    const name = String(callee["name"]);
    if (node.type === "CallExpression" && name === "invariant") nodesIn(node, "arguments").slice(1).forEach(add);
    if (node.type === "NewExpression" && /^(?:CoreBug|\w*Error)$/.test(name)) nodesIn(node, "arguments").forEach(add);
  });
  return nodes;
}

/** The texts of a file that somebody reads. */
export function shownIn(file: string, source: string): readonly string[] {
  const { program } = parse(file, source);
  const unread = forProgrammers(program);
  const found = new Map<Node, string>();
  walk(program, (node, parent) => {
    if (unread.has(node)) return;
    const isChild = parent?.type === "JSXElement" || parent?.type === "JSXFragment";
    if (node.type === "JSXText" && LETTER.test(String(node["value"]))) found.set(node, String(node["value"]).trim());
    if (node.type === "JSXExpressionContainer" && isChild) {
      const text = outcomes(node).find((one) => LETTER.test(one));
      if (text !== undefined) found.set(node, `{${text}}`);
    }
    if (node.type === "JSXAttribute" && isNode(node["name"]) && READ.has(String(node["name"]["name"]))) {
      const text = outcomes(node["value"]).find((one) => LETTER.test(one));
      if (text !== undefined) found.set(node, `${String(node["name"]["name"])}: ${text}`);
    }
    if (node.type === "Literal" && typeof node["value"] === "string" && WORDS.test(node["value"]))
      found.set(node, node["value"]);
    if (node.type === "TemplateLiteral" && nodesIn(node, "quasis").some((quasi) => WORDS.test(cooked(quasi))))
      found.set(node, nodesIn(node, "quasis").map(cooked).join("\u2026"));
  });
  return [...found.values()].map((text) => `${file}: ${text.replaceAll(/\s+/g, " ")}`);
}
