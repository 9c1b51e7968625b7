/**
 * Which layer of src may import what, and what the core may not touch. Type-only imports, re-exports and dynamic
 * imports count like any other.
 */
import { posix } from "node:path";
import { isNode, parse, walk, type Node } from "./source";

interface LayerRule {
  /** Other layers it may import; a layer may always import itself. */
  readonly layers: readonly string[];
  /** Packages it may import, "any", or "node" for Node's own modules. */
  readonly packages: readonly string[] | "any" | "node";
  /** What else single folders in it may import: their path from src, and the packages. */
  readonly inFolders?: Readonly<Record<string, readonly string[]>>;
  /** Whether it may import files outside src, and then only the demonstration plans. */
  readonly demoData?: true;
}

export const LAYERS: Readonly<Record<string, LayerRule>> = {
  core: { layers: [], packages: [], inFolders: { "core/allowance": ["clipper2-ts"], "core/cutting": ["clipper2-ts"] } },
  words: { layers: ["core"], packages: [] },
  reading: { layers: ["core"], packages: ["saxes"] },
  document: { layers: ["core"], packages: ["zod"], demoData: true },
  drawing: { layers: ["core", "words"], packages: [] },
  store: { layers: ["core", "document", "words"], packages: ["zustand", "idb"] },
  print: { layers: ["core", "drawing", "words"], packages: ["react"] },
  paper: { layers: ["core", "drawing", "words"], packages: ["jspdf"] },
  cli: { layers: ["core", "document", "drawing", "paper", "reading", "words"], packages: "node" },
  ui: {
    layers: ["core", "document", "drawing", "paper", "print", "reading", "store", "words"],
    packages: "any",
    demoData: true,
  },
  main: {
    layers: ["core", "document", "drawing", "paper", "print", "reading", "store", "ui", "words"],
    packages: "any",
    demoData: true,
  },
};

/** Names that would make an answer of the core depend on the time, on chance or on the page. */
export const CORE_BANS: ReadonlySet<string> = new Set([
  "Date",
  "Intl",
  "XMLHttpRequest",
  "cancelAnimationFrame",
  "crypto",
  "document",
  "fetch",
  "globalThis",
  "indexedDB",
  "localStorage",
  "navigator",
  "performance",
  "process",
  "queueMicrotask",
  "requestAnimationFrame",
  "self",
  "sessionStorage",
  "setInterval",
  "setTimeout",
  "window",
]);

/** "core" for src/core/units.ts, "main" for src/main.tsx. */
function layerOf(path: string): string | undefined {
  const [top, first, ...rest] = path.split("/");
  if (top !== "src" || first === undefined) return undefined;
  return rest.length > 0 ? first : first.replace(/\.[a-z]+$/, "");
}

function packageOf(specifier: string): string {
  const parts = specifier.split("/");
  return parts.slice(0, specifier.startsWith("@") ? 2 : 1).join("/");
}

const stringOf = (node: unknown): string | undefined =>
  isNode(node) && node.type === "Literal" && typeof node["value"] === "string" ? node["value"] : undefined;

const isIdentifier = (node: unknown, name: string): boolean =>
  isNode(node) && node.type === "Identifier" && node["name"] === name;

/** The specifiers a file imports from; `undefined` stands for one that is not a plain string. */
export function importsOf(file: string, source: string): (string | undefined)[] {
  const { program, comments } = parse(file, source);
  const found: (string | undefined)[] = [];
  walk(program, (node) => {
    switch (node.type) {
      case "ImportDeclaration":
      case "ExportAllDeclaration":
      case "ImportExpression":
      case "TSImportType":
        found.push(stringOf(node["source"]));
        break;
      case "ExportNamedDeclaration":
        if (node["source"] !== null && node["source"] !== undefined) found.push(stringOf(node["source"]));
        break;
      case "TSExternalModuleReference":
        found.push(stringOf(node["expression"]));
        break;
      case "CallExpression": {
        const [first] = Array.isArray(node["arguments"]) ? (node["arguments"] as unknown[]) : [];
        if (isIdentifier(node["callee"], "require")) found.push(stringOf(first));
        break;
      }
      default:
    }
  });
  for (const comment of comments) {
    const reference = /^\/\s*<reference\s+(?:path|types|lib)\s*=\s*["']([^"']+)["']/.exec(comment);
    if (reference !== null) found.push(reference[1]);
  }
  return found;
}

/** What is wrong with the imports of one file, as sentences; `file` is a path such as src/core/units.ts. */
export function importFaults(file: string, source: string): string[] {
  const layer = layerOf(file);
  const rule = layer === undefined ? undefined : LAYERS[layer];
  if (layer === undefined || rule === undefined) return [`${file} is in no known layer of src`];

  const folder = posix.dirname(file).replace(/^src\//, "");
  const faults: string[] = [];
  for (const specifier of importsOf(file, source)) {
    if (specifier === undefined) {
      faults.push(`${file} imports something that is not a plain string`);
    } else if (specifier.startsWith(".")) {
      const target = posix.join(posix.dirname(file), specifier.replace(/\?.*$/, ""));
      const targetLayer = layerOf(target);
      const allowed =
        targetLayer === undefined
          ? rule.demoData === true && target.startsWith("demo-data/")
          : targetLayer === layer || rule.layers.includes(targetLayer);
      if (!allowed) faults.push(`${file} (${layer}) must not import ${specifier}`);
    } else {
      const allowed =
        rule.packages === "any"
          ? /^[@a-z]/.test(specifier)
          : rule.packages === "node"
            ? specifier.startsWith("node:")
            : [...rule.packages, ...(rule.inFolders?.[folder] ?? [])].includes(packageOf(specifier));
      if (!allowed) faults.push(`${file} (${layer}) must not import ${specifier}`);
    }
  }
  return faults;
}

/** True where an identifier is only the name of a member, as `document` in `plan.document` or `{ document: 1 }`. */
function isMemberName(parent: Node | undefined, field: string): boolean {
  if (parent === undefined) return false;
  if (parent["shorthand"] === true) return false;
  if (field === "property") return parent.type === "MemberExpression" && parent["computed"] !== true;
  if (field === "key") return parent["computed"] !== true;
  return parent.type === "TSQualifiedName" && field === "right";
}

/** What a file of the core uses that it must not: time, chance, the page, storage or the network. */
export function impurityFaults(file: string, source: string): string[] {
  const faults: string[] = [];
  walk(parse(file, source).program, (node, parent, field) => {
    if (node.type !== "Identifier" || typeof node["name"] !== "string") return;
    if (isMemberName(parent, field)) return;
    const { name } = node;
    if (CORE_BANS.has(name)) faults.push(`${file} uses ${name}`);
    if (name !== "Math") return;
    // Math is to be used as Math.something only, so that random cannot be reached by another way.
    const plain = parent?.type === "MemberExpression" && field === "object" && parent["computed"] !== true;
    if (!plain) faults.push(`${file} uses Math in another way than Math.name`);
    else if (isIdentifier(parent["property"], "random")) faults.push(`${file} uses Math.random`);
  });
  return faults;
}
