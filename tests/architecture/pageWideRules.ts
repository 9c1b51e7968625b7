/** Finds stores that are made when a module is loaded, and so are there once for the whole page. */
import { isNode, parse, walk, type Node } from "./source";

/** What gives a store to each showing of a work, whatever module calls it. */
const OF_WORK = "storeOfWork";

const FUNCTIONS = new Set(["ArrowFunctionExpression", "FunctionExpression", "FunctionDeclaration"]);

const nameOf = (node: unknown): string | undefined =>
  isNode(node) && node.type === "Identifier" && typeof node["name"] === "string" ? node["name"] : undefined;

/** The names that zustand's makers of stores have in a file; `*` before a name of the whole package. */
function makersFromZustand(program: Node): ReadonlySet<string> {
  const names = new Set<string>();
  walk(program, (node) => {
    if (node.type !== "ImportDeclaration" || !isNode(node["source"])) return;
    if (!/^zustand(?:\/|$)/.test(String(node["source"]["value"]))) return;
    const { specifiers } = node;
    for (const specifier of Array.isArray(specifiers) ? specifiers : []) {
      if (!isNode(specifier)) continue;
      const local = nameOf(specifier["local"]);
      const imported = nameOf(specifier["imported"]);
      if (local === undefined) continue;
      if (specifier.type === "ImportNamespaceSpecifier") names.add(`*${local}`);
      else if (imported === "create" || imported === "createStore") names.add(local);
    }
  });
  return names;
}

/** The maker that a call calls, if it calls one. */
function makerCalled(call: Node, fromZustand: ReadonlySet<string>, makers: ReadonlySet<string>): string | undefined {
  const { callee } = call;
  const plain = nameOf(callee);
  if (plain !== undefined)
    return fromZustand.has(plain) || (makers.has(plain) && plain !== OF_WORK) ? plain : undefined;
  if (!isNode(callee) || callee.type !== "MemberExpression") return undefined;
  const [object, property] = [nameOf(callee["object"]), nameOf(callee["property"])];
  if (object === undefined || property === undefined || !fromZustand.has(`*${object}`)) return undefined;
  return property === "create" || property === "createStore" ? property : undefined;
}

/** Calls `visit` for each node that is run when the module is loaded; a function called where it stands is. */
function walkAtLoad(node: Node, visit: (node: Node) => void, isCalled = false): void {
  if (FUNCTIONS.has(node.type) && !isCalled) return;
  visit(node);
  const passesOn = node.type === "ParenthesizedExpression" && isCalled;
  for (const [field, value] of Object.entries(node)) {
    const callsChild = passesOn || (node.type === "CallExpression" && field === "callee");
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child)) walkAtLoad(child, visit, callsChild);
    }
  }
}

/** The makers of stores that a file calls when it is loaded. */
export function storesAtModuleLevel(file: string, source: string, makers: ReadonlySet<string>): string[] {
  const { program } = parse(file, source);
  const fromZustand = makersFromZustand(program);
  const found: string[] = [];
  walkAtLoad(program, (node) => {
    const maker = node.type === "CallExpression" ? makerCalled(node, fromZustand, makers) : undefined;
    if (maker !== undefined) found.push(maker);
  });
  return found;
}

/** The functions of a file in which a store is made. */
export function storeMakersIn(file: string, source: string): string[] {
  const { program } = parse(file, source);
  const fromZustand = makersFromZustand(program);
  const found = new Set<string>();
  walk(program, (node, parent) => {
    if (!FUNCTIONS.has(node.type)) return;
    const name = nameOf(node["id"]) ?? (parent?.type === "VariableDeclarator" ? nameOf(parent["id"]) : undefined);
    if (name === undefined) return;
    walk(node, (inner) => {
      if (inner.type === "CallExpression" && makerCalled(inner, fromZustand, new Set()) !== undefined) found.add(name);
    });
  });
  return [...found];
}

/** Names at the head of a file that hold something that can change: variables, and containers made empty to be filled. */
export function changingAtModuleLevel(file: string, source: string): string[] {
  const found: string[] = [];
  const body = parse(file, source).program["body"];
  for (const statement of Array.isArray(body) ? body.filter(isNode) : []) {
    const declared = statement.type === "ExportNamedDeclaration" ? statement["declaration"] : statement;
    if (!isNode(declared) || declared.type !== "VariableDeclaration") continue;
    for (const one of Array.isArray(declared["declarations"]) ? declared["declarations"].filter(isNode) : []) {
      const { id, init } = one;
      const name = isNode(id) && typeof id["name"] === "string" ? id["name"] : "?";
      if (declared["kind"] !== "const" || (isNode(init) && isEmptyContainer(init))) found.push(name);
    }
  }
  return found;
}

const isEmptyContainer = (node: Node): boolean =>
  node.type === "NewExpression" &&
  isNode(node["callee"]) &&
  ["Map", "Set", "WeakMap", "WeakSet"].includes(String(node["callee"]["name"])) &&
  Array.isArray(node["arguments"]) &&
  node["arguments"].length === 0;
