/** What must not stand outside src/words: texts that somebody reads, and texts made of numbers, days, lists or plurals by hand. */
import { isNode, parse, walk, type Node } from "./source";

interface Passed {
  readonly file: RegExp;
  readonly text: RegExp;
  readonly because: string;
}

/** Texts that are no words of the language. Each must still be somewhere. */
export const NOT_SHOWN: readonly Passed[] = [
  { file: /^src\/paper\/svg\.ts$/, text: /^<|^fill="|^'Source Sans 3'/, because: "markup of a file" },
  { file: /^src\/paper\/dxf\.ts$/, text: /^Solid line$/, because: "the format's own name of a line" },
  {
    file: /^src\/paper\/dxf\.ts$/,
    text: /^(?:(?:Piece|Style) Name|Creation Date|Author|Sample Size|Units): /,
    because: "keys of the exchange standard, which other programs look for",
  },
  { file: /^src\/print\/pageRule\.ts$/, text: /^(?:font:|@page|@bottom-)/, because: "a stylesheet" },
  { file: /^src\/print\/OrderOfWork\.tsx$/, text: /^pc-job /, because: "names of classes" },
  {
    file: /^src\/cli\/piecesReport\.ts$/,
    text: /^test square$/,
    because: "a value of the JSON, the same in every language",
  },
  {
    file: /^src\/ui\/offline\/take\.ts$/,
    text: /^take over$/,
    because: "what the page and its worker tell each other",
  },
  { file: /^src\/ui\/session\/useScreen\.ts$/, text: /^\(/, because: "a query of the screen" },
  { file: /^src\/ui\/app\/PhoneBar\.tsx$/, text: /^0px /, because: "a margin of what is in sight" },
  { file: /^src\/store\/sharedDrawing\.ts$/, text: /^as in the work$/, because: "a mark in what is saved" },
  {
    file: /^src\/ui\/(?:app\/(?:Messages|useKeyboardRoom)|darts\/DartsPanel|ownPattern\/OwnAnswer|table\/(?:TableMenu|useHeldFocus)|tape\/TapeDays|trial\/RecordLines|works\/WorkSessionProvider)\.tsx?$/,
    text: /^[.:]|^(?:button|input|select), /,
    because: "a selector",
  },
];

/** Figures and lists that are made by hand and shown to nobody as words. */
export const NOT_WORDS: readonly Passed[] = [
  { file: /^src\/ui\/blend\/HowSurePanel\.tsx$/, text: /toFixed/, because: "a length of a stylesheet" },
  { file: /^src\/print\/TrialRecord\.tsx$/, text: /toFixed/, because: "an attribute of a drawing" },
  { file: /^src\/cli\/layout\.ts$/, text: /Intl/, because: "counts characters of a line, in no language" },
];

/** Attributes whose text is seen or spoken, of elements and of our own components. */
const READ = new Set([
  "alt",
  "aria-description",
  "aria-label",
  "aria-roledescription",
  "aria-valuetext",
  "heading",
  "hint",
  "label",
  "legend",
  "note",
  "placeholder",
  "question",
  "summary",
  "title",
  "unit",
  "valueText",
]);

/** Attributes whose text is for the browser or the code. */
const UNREAD =
  /^(?:className|id|key|d|fill|stroke.*|style|transform|patternTransform|viewBox|points|href|role|accept|rel|data-.*)$/;

const LETTER = /\p{L}/u;
/** Two words with a space between. */
const WORDS = /\p{L}{2,}[^\p{L}\s]*\s+(?:\S+\s+)*?[^\p{L}\s]*\p{L}{2,}/u;

const nodesIn = (node: Node, field: string): Node[] => {
  const held = node[field];
  return Array.isArray(held) ? held.filter(isNode) : [];
};

const nameOf = (node: unknown): string => (isNode(node) ? String(node["name"]) : "");

const cooked = ({ value }: Node): string =>
  typeof value === "object" && value !== null && "cooked" in value && typeof value.cooked === "string"
    ? value.cooked
    : "";

const templateText = (node: Node): string => nodesIn(node, "quasis").map(cooked).join("\u2026");

/** The texts that an expression can come to: its literals, and those of what it chooses between. */
function outcomes(node: unknown): readonly string[] {
  if (!isNode(node)) return [];
  switch (node.type) {
    case "Literal":
      return typeof node["value"] === "string" ? [node["value"]] : [];
    case "TemplateLiteral":
      return [templateText(node), ...nodesIn(node, "expressions").flatMap(outcomes)];
    case "ConditionalExpression":
      return [...outcomes(node["consequent"]), ...outcomes(node["alternate"])];
    case "LogicalExpression":
      return [...outcomes(node["left"]), ...outcomes(node["right"])];
    case "BinaryExpression":
      return node["operator"] === "+" ? [...outcomes(node["left"]), ...outcomes(node["right"])] : [];
    case "JSXExpressionContainer":
      return outcomes(node["expression"]);
    default:
      return [];
  }
}

/** What names a module, a type or a class, or is thrown at the code alone. */
function unreadNodes(program: Node): ReadonlySet<Node> {
  const nodes = new Set<Node>();
  const add = (node: unknown): void => {
    if (isNode(node)) walk(node, (inner) => nodes.add(inner));
  };
  walk(program, (node) => {
    const callee = nameOf(node["callee"]);
    if (node.type === "ImportDeclaration" || node.type.startsWith("Export")) add(node["source"]);
    if (node.type === "TSLiteralType") add(node);
    if (node.type === "JSXAttribute" && UNREAD.test(nameOf(node["name"]))) add(node);
    if (node.type === "CallExpression" && callee === "invariant") nodesIn(node, "arguments").slice(1).forEach(add);
    if (node.type === "NewExpression" && /^(?:CoreBug|\w*Error)$/.test(callee)) nodesIn(node, "arguments").forEach(add);
  });
  return nodes;
}

/** The text of a node that somebody reads; null: nobody does, or it is found elsewhere. */
function shownText(node: Node, parent: Node | undefined): string | null {
  const lettered = (held: unknown): string | null => outcomes(held).find((text) => LETTER.test(text)) ?? null;
  switch (node.type) {
    case "JSXText":
      return LETTER.test(String(node["value"])) ? String(node["value"]).trim() : null;
    case "JSXExpressionContainer":
      return parent?.type === "JSXElement" || parent?.type === "JSXFragment" ? lettered(node) : null;
    case "JSXAttribute": {
      const name = nameOf(node["name"]);
      const isOfPart =
        name === "name" && /^Part(?:Place|Boundary)$/.test(nameOf(isNode(parent) ? parent["name"] : undefined));
      return READ.has(name) || isOfPart ? lettered(node["value"]) : null;
    }
    case "Literal":
      return typeof node["value"] === "string" && WORDS.test(node["value"]) ? node["value"] : null;
    case "TemplateLiteral":
      return nodesIn(node, "quasis").some((quasi) => WORDS.test(cooked(quasi))) ? templateText(node) : null;
    default:
      return null;
  }
}

/** The texts of a file that somebody reads, each once. */
export function shownIn(file: string, source: string): readonly string[] {
  const { program } = parse(file, source);
  const unread = unreadNodes(program);
  const found = new Set<string>();
  walk(program, (node, parent) => {
    const text = unread.has(node) ? null : shownText(node, parent);
    if (text !== null) found.add(text.replaceAll(/\s+/g, " "));
  });
  return [...found].filter((text) => !NOT_SHOWN.some((one) => one.file.test(file) && one.text.test(text)));
}

const isOne = (node: Node): boolean =>
  node.type === "BinaryExpression" &&
  /^(?:===|!==|>|>=|<)$/.test(String(node["operator"])) &&
  isNode(node["right"]) &&
  node["right"].type === "Literal" &&
  node["right"]["value"] === 1 &&
  // What is left over of a division is no count.
  !(isNode(node["left"]) && node["left"]["operator"] === "%");

const isText = (node: unknown): boolean =>
  isNode(node) && (node.type === "TemplateLiteral" || (node.type === "Literal" && typeof node["value"] === "string"));

/** What src/words/terms/language.ts is for, done by hand: decimals, dates and lists of the platform, plurals of our own. */
export function madeByHand(file: string, source: string): readonly string[] {
  const found = new Set<string>();
  const { program } = parse(file, source);
  const numbers = new Set<Node>();
  walk(program, (node) => {
    // A figure that stays one is nothing that is shown.
    if (node.type === "CallExpression" && nameOf(node["callee"]) === "Number")
      nodesIn(node, "arguments").forEach((given) => numbers.add(given));
    if (node.type === "MemberExpression") {
      const property = nameOf(node["property"]);
      if (/^toLocale\w*String$/.test(property)) found.add(property);
      if (nameOf(node["object"]) === "Intl") found.add(`Intl.${property}`);
    }
    if (
      node.type === "CallExpression" &&
      isNode(node["callee"]) &&
      nameOf(node["callee"]["property"]) === "toFixed" &&
      !numbers.has(node)
    )
      found.add("toFixed");
    const test = node["test"];
    if (node.type === "ConditionalExpression" && isNode(test) && isOne(test))
      if (isText(node["consequent"]) && isText(node["alternate"]) && String(test["operator"]) === "===")
        found.add("a plural");
  });
  return [...found].filter((what) => !NOT_WORDS.some((one) => one.file.test(file) && one.text.test(what)));
}
