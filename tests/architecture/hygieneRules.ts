/** What must not be in the project's text files, and what its documents may name. */
import { parse, walk } from "./source";

const MACHINE_PATH = /(?<![\w.~-]|[^/]\/)\/(?:work|root|home|Users)\/[\w.-]+/g;
const REGISTRY_HOST =
  /\b(?:registry\.(?:npmjs|yarnpkg|npmmirror)\.\w+|npm\.pkg\.github\.com|deb\.debian\.org|proxy\.golang\.org)/g;

/** Places of this machine and hosts of registries named in a text. */
export const placesNamed = (text: string): string[] => [
  ...(text.match(MACHINE_PATH) ?? []),
  ...(text.match(REGISTRY_HOST) ?? []),
];

/** Ways round the type checker in a source file: the type any and comments that silence errors. */
export function typeEscapes(file: string, source: string): string[] {
  const { program, comments } = parse(file, source);
  const found: string[] = [];
  walk(program, (node) => {
    if (node.type === "TSAnyKeyword") found.push(`${file} uses the type any`);
  });
  for (const comment of comments) {
    for (const [escape] of comment.matchAll(/@ts-(?:ignore|expect-error|nocheck)/g)) {
      found.push(`${file} uses ${escape}`);
    }
  }
  return found;
}

/** The code of a Markdown text: its fenced blocks and its spans in backticks. */
function codeOf(markdown: string): string[] {
  const fence = /^(```+|~~~+)[^\n]*\n([\s\S]*?)^\1\s*$/gm;
  const blocks = [...markdown.matchAll(fence)].map((match) => match[2] ?? "");
  const spans = [...markdown.replaceAll(fence, "").matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? "");
  return [...blocks, ...spans];
}

/** The npm scripts that a Markdown text tells people to run. */
export function scriptsNamed(markdown: string): string[] {
  const names = codeOf(markdown).flatMap((code) =>
    [
      ...code.matchAll(/\bnpm((?: +-[-\w]+(?:=\S+)?)*) +([a-z][-\w:]*)((?: +-[-\w]+(?:=\S+)?)*)(?: +([a-z][-\w:]*))?/g),
    ].flatMap(([, , verb = "", , next]) => {
      if (verb === "run" || verb === "run-script") return next === undefined ? [] : [next];
      if (verb === "t") return ["test"];
      return ["start", "test", "stop", "restart"].includes(verb) ? [verb] : [];
    }),
  );
  return [...new Set(names)];
}

/** The paths of the project that a Markdown text names in code, such as src/core/units.ts or tests/e2e/. */
export function pathsNamed(markdown: string): string[] {
  const paths = codeOf(markdown).flatMap((code) =>
    [...code.matchAll(/(?<![\w./@-])(?:src|tests|demo-data|public)\/[\w./@-]*(?![\w*<{[])/g)].map(([path]) =>
      path.replace(/[./]+$/, ""),
    ),
  );
  return [...new Set(paths)];
}

/** The names of the scripts in the text of a package.json. */
export function scriptsOf(packageJson: string): string[] {
  const parsed: unknown = JSON.parse(packageJson);
  if (typeof parsed !== "object" || parsed === null || !("scripts" in parsed)) return [];
  const { scripts } = parsed;
  return typeof scripts === "object" && scripts !== null ? Object.keys(scripts) : [];
}
