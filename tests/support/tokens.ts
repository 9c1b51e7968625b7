/** The colours of the page as src/ui/styles/tokens.css names them, room by room, and the contrast of two. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export type Tokens = ReadonlyMap<string, string>;

interface Block {
  /** The conditions it stands under, outermost first, and its selectors. */
  readonly within: readonly string[];
  readonly selectors: readonly string[];
  readonly declared: Tokens;
}

/** The blocks of a stylesheet that hold nothing but declarations. */
export function blocksOf(css: string): readonly Block[] {
  const plain = css.replaceAll(/\/\*[\s\S]*?\*\//g, "");
  const blocks: Block[] = [];
  const open: string[] = [];
  let text = "";
  for (const sign of plain) {
    if (sign === "{") {
      open.push(text.trim());
      text = "";
    } else if (sign === "}") {
      const selector = open.pop();
      const declared = [...text.matchAll(/(--[\w-]+):\s*([^;]+);/g)].map(([, name, value]): [string, string] => [
        name ?? "",
        (value ?? "").trim(),
      ]);
      if (selector !== undefined && declared.length > 0)
        blocks.push({
          within: [...open],
          selectors: selector.split(",").map((one) => one.trim()),
          declared: new Map(declared),
        });
      text = "";
    } else text += sign;
  }
  return blocks;
}

/** What the tokens are on `selector` where the conditions are `met`: later blocks over earlier ones, and names looked up. */
function tokensOn(css: string, selector: string, met: (condition: string) => boolean): Tokens {
  const said = new Map(
    blocksOf(css)
      .filter(({ within, selectors }) => within.every(met) && selectors.includes(selector))
      .flatMap(({ declared }) => [...declared]),
  );
  const value = (name: string): string => {
    const written = said.get(name) ?? "";
    const other = /^var\((--[\w-]+)\)$/.exec(written)?.[1];
    return other === undefined ? written : value(other);
  };
  return new Map([...said.keys()].map((name) => [name, value(name)]));
}

const TOKENS = fileURLToPath(new URL("../../src/ui/styles/tokens.css", import.meta.url));

const isDark = (condition: string): boolean => condition.includes("prefers-color-scheme: dark");
const asksMore = (condition: string): boolean => condition.includes("prefers-contrast: more");

/** The rooms of the page that have colours of their own. */
export function rooms(): Readonly<Record<"day" | "night" | "lamplight", Tokens>> {
  const css = readFileSync(TOKENS, "utf8");
  return {
    day: tokensOn(css, ":root", () => false),
    night: tokensOn(css, ":root", isDark),
    lamplight: tokensOn(css, ".light-paper", isDark),
  };
}

/** The same where more contrast is asked for. */
export function roomsOfMore(): ReturnType<typeof rooms> {
  const css = readFileSync(TOKENS, "utf8");
  return {
    day: tokensOn(css, ":root", asksMore),
    night: tokensOn(css, ":root", (condition) => isDark(condition) || asksMore(condition)),
    lamplight: tokensOn(css, ".light-paper", (condition) => isDark(condition) || asksMore(condition)),
  };
}

/** Contrast by the formula of WCAG 2.2 (definitions “contrast ratio” and “relative luminance”), of colours as #rrggbb. */
export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].toSorted((a, b) => b - a);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

export function luminance(colour: string): number {
  const parts = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(colour)?.slice(1);
  if (parts === undefined) throw new Error(`${colour} is not written #rrggbb`);
  const [red = 0, green = 0, blue = 0] = parts.map((part) => {
    const share = Number.parseInt(part, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
