/** The page of the printed sheet: its size, its margins, and the foot line where the browser can set one. */

/** A foot line holds about so many characters beside the page number. */
const LONGEST_NAME = 70;

/** Text as a CSS string: every character but letters and digits written as its code, so that none can end the string. */
import type { PaperSize } from "../core/decisions/paperChoice";
export const cssString = (text: string): string =>
  `"${text.replaceAll(/[^A-Za-z0-9]/gu, (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `)}"`;

function shortened(name: string): string {
  const characters = Array.from(name);
  return characters.length <= LONGEST_NAME
    ? name
    : `${characters
        .slice(0, LONGEST_NAME - 1)
        .join("")
        .trimEnd()}…`;
}

export function pageRule(paper: PaperSize, name: string, kind = "Alteration checklist"): string {
  const foot =
    "font: 8pt var(--pc-font, 'Source Sans 3 Variable', 'Source Sans 3', sans-serif); color: #000; vertical-align: top; padding-top: 2mm;";
  return [
    `@page { size: ${paper === "A4" ? "A4" : "letter"}; margin: 11mm 14mm 14mm;`,
    `@bottom-left { content: ${cssString(`${kind} · ${shortened(name)}`)}; width: 80%; text-align: left; ${foot} }`,
    `@bottom-right { content: "Page " counter(page) " of " counter(pages); text-align: right; ${foot} } }`,
  ].join(" ");
}
