/** Finds colours that are written out. The page's own are named in tokens.css alone; what may write others stands here. */
import { parse, walk } from "./source";

export const TOKENS = "src/ui/styles/tokens.css";
export const OPENING = "public/opening.css";

/** By the beginning of a path; each must still write one. */
export const MAY_WRITE_COLOURS: readonly { readonly path: string; readonly because: string }[] = [
  { path: TOKENS, because: "they are named there" },
  { path: OPENING, because: "it stands before anything else has come; held against tokens.css" },
  { path: "index.html", because: "the browser's own bar knows no stylesheet; held against tokens.css" },
  { path: "public/favicon.svg", because: "a picture by itself" },
  { path: "public/floors.svg", because: "a picture by itself" },
  { path: "src/print/", because: "what is printed is black on white, whatever the page is" },
  { path: "src/drawing/inkLook.ts", because: "ink of the printer" },
  { path: "src/drawing/readableOnPaper.ts", because: "what stands in for a colour of a file that has none" },
  { path: "src/ui/sewn/paint.ts", because: "tones of cloth between two of the tokens" },
  { path: "src/reading/colours.ts", because: "the colours of files" },
];

const HEX = /(?<![\w&/-])#(?:[\da-f]{8}|[\da-f]{6}|[\da-f]{3,4})(?![\w-])/giu;
const FUNCTION = /\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color|light-dark)\(/giu;
/** Names that read as colours wherever they are a value of a stylesheet. */
const NAME =
  /(?<=[:\s,(])(?:black|white|gr[ae]y|silver|red|maroon|green|lime|olive|navy|blue|teal|aqua|cyan|yellow|orange|purple|pink|brown|beige|ivory|gold|tan)(?=[\s,;)])/giu;

/** Every colour that a file writes out: a stylesheet or a page anywhere, a script in what it says. */
export function coloursWritten(file: string, source: string): string[] {
  if (file.endsWith(".css")) {
    const plain = source.replaceAll(/\/\*[\s\S]*?\*\//gu, "").replaceAll(/url\([^)]*\)/gu, "");
    const values = [...plain.matchAll(/:[^;{}]*;/gu)].map(([value]) => value);
    return values.flatMap((value) => found(value, HEX, FUNCTION, NAME));
  }
  if (/\.(?:html|svg)$/u.test(file)) return found(source.replaceAll(/url\([^)]*\)/gu, ""), HEX, FUNCTION);
  // To read a script takes its time, and hardly any has one.
  if (found(source, HEX, FUNCTION).length === 0) return [];
  const written: string[] = [];
  walk(parse(file, source).program, (node) => {
    if (node.type === "Literal" && typeof node["value"] === "string") written.push(node["value"]);
    if (node.type === "TemplateElement" && isCooked(node["value"])) written.push(node["value"].cooked);
  });
  return written.flatMap((text) => found(text, HEX, FUNCTION));
}

const found = (text: string, ...kinds: readonly RegExp[]): string[] => kinds.flatMap((kind) => text.match(kind) ?? []);

const isCooked = (value: unknown): value is { readonly cooked: string } =>
  typeof value === "object" && value !== null && "cooked" in value && typeof value.cooked === "string";
