/** What keeps the page from opening everywhere: calls that plain http lacks, and anything that would connect or be refused. */
import { isNode, parse, walk, type Node } from "./source";

/** What browsers leave out where an address is not secure, by the object that has it. */
const SECURE_ONLY: Readonly<Record<string, ReadonlySet<string>>> = {
  crypto: new Set(["randomUUID", "subtle"]),
  navigator: new Set([
    "clipboard",
    "credentials",
    "locks",
    "mediaDevices",
    "serviceWorker",
    "share",
    "storage",
    "usb",
    "wakeLock",
  ]),
  window: new Set(["caches", "showOpenFilePicker", "showSaveFilePicker", "showDirectoryPicker"]),
};

/** What would connect to somewhere. */
const CONNECTS = new Set([
  "fetch",
  "XMLHttpRequest",
  "WebSocket",
  "WebTransport",
  "EventSource",
  "RTCPeerConnection",
  "sendBeacon",
]);

/** What the policy of the built page refuses: code made of text. Text set as HTML is no code, but a style or script in it is. */
const REFUSED = new Set([
  "eval",
  "Function",
  "dangerouslySetInnerHTML",
  "innerHTML",
  "outerHTML",
  "insertAdjacentHTML",
]);

const nameOf = (node: unknown): string | undefined => {
  if (!isNode(node)) return undefined;
  if (node.type === "Identifier" || node.type === "JSXIdentifier")
    return typeof node["name"] === "string" ? node["name"] : undefined;
  if (node.type === "MemberExpression" && node["computed"] !== true) return nameOf(node["property"]);
  return node.type === "Literal" && typeof node["value"] === "string" ? node["value"] : undefined;
};

interface Access {
  readonly object: string;
  readonly property: string;
  /** Whether it is asked here if it is there at all. */
  readonly isGuard: boolean;
}

const ASKS = new Set(["===", "!==", "==", "!="]);

/** Each look at something that only secure addresses have. */
function accessesIn(program: Node): readonly Access[] {
  const found: Access[] = [];
  const note = (object: unknown, property: unknown, isGuard: boolean): void => {
    const [of, what] = [nameOf(object), nameOf(property)];
    if (of !== undefined && what !== undefined && SECURE_ONLY[of]?.has(what) === true)
      found.push({ object: of, property: what, isGuard });
  };
  walk(program, (node, parent) => {
    if (node.type === "MemberExpression") {
      const asked =
        (parent?.type === "BinaryExpression" && ASKS.has(String(parent["operator"]))) ||
        (parent?.type === "UnaryExpression" && parent["operator"] === "typeof") ||
        (parent?.type === "MemberExpression" && parent["optional"] === true && parent["object"] === node) ||
        (parent?.type === "CallExpression" && parent["optional"] === true && parent["callee"] === node);
      note(node["object"], node["property"], asked);
    }
    if (node.type === "BinaryExpression" && node["operator"] === "in") note(node["right"], node["left"], true);
    if (node.type === "VariableDeclarator" && isNode(node["id"]) && node["id"].type === "ObjectPattern") {
      const { properties } = node["id"];
      for (const property of Array.isArray(properties) ? properties : [])
        if (isNode(property)) note(node["init"], property["key"], false);
    }
  });
  return found;
}

/** What in a file of the page asks for more than the page may count on. */
export function openFaults(file: string, source: string): string[] {
  const { program } = parse(file, source);
  const faults = new Set<string>();
  const accesses = accessesIn(program);
  for (const { object, property, isGuard } of accesses) {
    const isGuarded = accesses.some((other) => other.isGuard && other.property === property);
    if (!isGuard && !isGuarded) faults.add(`${file}: ${object}.${property} is missing over plain http`);
  }
  walk(program, (node, parent, field) => {
    if (node.type !== "Identifier" && node.type !== "JSXIdentifier") return;
    const name = nameOf(node) ?? "";
    // A key of an object, or a member of something else, may have any name.
    if (parent?.type === "Property" && field === "key" && parent["computed"] !== true && !REFUSED.has(name)) return;
    if (CONNECTS.has(name)) faults.add(`${file}: ${name} would connect to somewhere`);
    if (REFUSED.has(name)) faults.add(`${file}: ${name} is refused by the policy of the page`);
  });
  return [...faults];
}
