/** How lines of an SVG file look: attributes, style attributes, and the plain rules of its style sheets. */
import type { XmlElement } from "./xmlTree";

const KNOWN = [
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "fill",
  "color",
  "display",
  "visibility",
  "vector-effect",
] as const;
type Property = (typeof KNOWN)[number];

/** What is not said here comes from around it. */
const INHERITED: ReadonlySet<Property> = new Set([
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "fill",
  "color",
  "visibility",
]);

export type Style = Readonly<Partial<Record<Property, string>>>;

/** What an element is asked for by a selector. */
interface Compound {
  readonly name: string | null;
  readonly id: string | null;
  readonly classes: readonly string[];
}

interface Rule {
  /** Outermost first; each lies in the one before, at whatever depth. */
  readonly compounds: readonly Compound[];
  readonly weight: number;
  readonly declared: Style;
}

export interface StyleSheet {
  /** By the id, class or name that the last compound asks for. */
  readonly rules: ReadonlyMap<string, readonly Rule[]>;
}

const MOST_RULES = 5000;
const MOST_DECLARED = 200;

/** The text of the comments taken out, in one pass. */
function withoutComments(text: string): string {
  let plain = "";
  for (let at = 0; ;) {
    const begin = text.indexOf("/*", at);
    if (begin === -1) return plain + text.slice(at);
    plain += text.slice(at, begin);
    const end = text.indexOf("*/", begin + 2);
    if (end === -1) return plain;
    at = end + 2;
  }
}

function declarationsIn(text: string): Style {
  const declared: Partial<Record<Property, string>> = {};
  for (const one of text.split(";", MOST_DECLARED)) {
    const colon = one.indexOf(":");
    const name = one.slice(0, colon).trim().toLowerCase();
    const property = KNOWN.find((known) => known === name);
    if (colon === -1 || property === undefined) continue;
    const value = one
      .slice(colon + 1)
      .replace("!important", "")
      .trim();
    if (value !== "inherit" && value !== "") declared[property] = value;
  }
  return declared;
}

const COMPOUND = /^(\*|[A-Za-z][\w-]*)?((?:[.#][^\s.#:[\]>+~*,(){}]+)*)$/u;

function compoundIn(text: string): Compound | null {
  const [found, name, behind = ""] = COMPOUND.exec(text) ?? [];
  if (found === undefined || found === "") return null;
  const marks = behind.match(/[.#][^.#]+/gu) ?? [];
  return {
    name: name === undefined || name === "*" ? null : name,
    id: marks.findLast((mark) => mark.startsWith("#"))?.slice(1) ?? null,
    classes: marks.filter((mark) => mark.startsWith(".")).map((mark) => mark.slice(1)),
  };
}

const keyOf = ({ id, classes: [first], name }: Compound): string =>
  id !== null ? `#${id}` : first !== undefined ? `.${first}` : (name ?? "*");

const LONGEST_SELECTOR = 300;

/** Rules of elements, classes, ids and one inside another; any other kind of selector, and all @-rules, are passed over. */
export function styleSheetOf(text: string): StyleSheet {
  const css = withoutComments(text);
  const rules = new Map<string, Rule[]>();
  let count = 0;
  let at = 0;
  while (at < css.length && count < MOST_RULES) {
    const open = css.indexOf("{", at);
    if (open === -1) break;
    const before = css.slice(at, open);
    const head = before.slice(before.lastIndexOf(";") + 1).trim();
    if (head.startsWith("@")) {
      at = behindBlock(css, open);
      continue;
    }
    const close = css.indexOf("}", open);
    if (close === -1) break;
    const declared = declarationsIn(css.slice(open + 1, close));
    for (const selector of head.split(",", MOST_RULES)) {
      const said = selector.trim();
      if (said.length > LONGEST_SELECTOR) continue;
      const compounds = said.split(/\s+/u).map(compoundIn);
      const known = compounds.filter((compound) => compound !== null);
      const last = known.at(-1);
      if (last === undefined || known.length < compounds.length) continue;
      count += 1;
      const weight = known.reduce(
        (sum, { id, classes, name }) =>
          sum + (id === null ? 0 : 10_000) + 100 * classes.length + (name === null ? 0 : 1),
        0,
      );
      const key = keyOf(last);
      const held = rules.get(key);
      const rule = { compounds: known, weight, declared };
      if (held === undefined) rules.set(key, [rule]);
      else held.push(rule);
    }
    at = close + 1;
  }
  return { rules };
}

/** Behind the brace that closes the one there. */
function behindBlock(css: string, open: number): number {
  const brace = /[{}]/gu;
  brace.lastIndex = open;
  let depth = 0;
  for (let found = brace.exec(css); found !== null; found = brace.exec(css)) {
    depth += found[0] === "{" ? 1 : -1;
    if (depth === 0) return brace.lastIndex;
  }
  return css.length;
}

const MOST_CLASSES = 50;

const classesOf = ({ attributes }: XmlElement): readonly string[] =>
  (attributes.get("class") ?? "").split(/\s+/u, MOST_CLASSES).filter((name) => name !== "");

function fits(element: XmlElement, { name, id, classes }: Compound): boolean {
  if (name !== null && name !== element.name) return false;
  if (id !== null && element.attributes.get("id") !== id) return false;
  const own = classes.length === 0 ? [] : classesOf(element);
  return classes.every((one) => own.includes(one));
}

/**
 * @param around the elements that it lies in, outermost first
 * @param outer how the one around it looks
 * @param spend is called for each rule tried
 */
export function styleOf(
  element: XmlElement,
  around: readonly XmlElement[],
  outer: Style,
  { rules }: StyleSheet,
  spend: (steps: number) => void,
): Style {
  const id = element.attributes.get("id");
  const keys = [
    "*",
    element.name,
    ...classesOf(element).map((name) => `.${name}`),
    ...(id === undefined ? [] : [`#${id}`]),
  ];
  const tried = rules.size === 0 ? [] : keys.flatMap((key) => rules.get(key) ?? []);
  spend(tried.length);
  const won = tried
    .filter(({ compounds }) => liesSo(element, around, compounds, spend))
    .toSorted((p, q) => p.weight - q.weight);
  const attributes: Partial<Record<Property, string>> = {};
  for (const property of KNOWN) {
    const value = element.attributes.get(property)?.trim();
    if (value !== undefined && value !== "" && value !== "inherit") attributes[property] = value;
  }
  const inherited: Partial<Record<Property, string>> = {};
  for (const property of KNOWN) {
    const value = outer[property];
    if (value !== undefined && INHERITED.has(property)) inherited[property] = value;
  }
  return Object.assign(
    inherited,
    attributes,
    ...won.map(({ declared }) => declared),
    declarationsIn(element.attributes.get("style") ?? ""),
  );
}

function liesSo(
  element: XmlElement,
  around: readonly XmlElement[],
  compounds: readonly Compound[],
  spend: (steps: number) => void,
): boolean {
  const last = compounds.at(-1);
  if (last === undefined || !fits(element, last)) return false;
  let at = around.length;
  return compounds.slice(0, -1).every((_, i) => {
    const compound = compounds[compounds.length - 2 - i];
    for (at -= 1; at >= 0; at -= 1) {
      spend(1);
      const one = around[at];
      if (one !== undefined && compound !== undefined && fits(one, compound)) return true;
    }
    return false;
  });
}
