/** The page of the printed sheet: its size, its margins, and the foot line where the browser can set one. */
import type { PaperSize } from "../core/decisions/paperChoice";
import type { Mm } from "../core/units";
import * as say from "../words/pageFoot";

/** White edges of the page, and how far below the last line the foot line stands. */
const MARGINS: Readonly<Record<"top" | "sides" | "foot", Mm>> = { top: 11, sides: 14, foot: 14 };
const FOOT_DOWN: Mm = 2;

/** A foot line holds about so many characters beside the page number. */
const LONGEST_NAME = 70;

/** Text as a CSS string: every character but letters and digits written as its code, so that none can end the string. */
export const cssString = (text: string): string =>
  `"${text.replaceAll(/[^A-Za-z0-9]/gu, (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `)}"`;

/** A text with the counters of the printed page in the place of their names. */
const counted = (text: string): string =>
  text
    .split(/\{(\w+)\}/u)
    .flatMap((piece, at) => (piece === "" ? [] : [at % 2 === 0 ? `"${piece}"` : `counter(${piece})`]))
    .join(" ");

function shortened(name: string): string {
  const characters = Array.from(name);
  return characters.length <= LONGEST_NAME
    ? name
    : `${characters
        .slice(0, LONGEST_NAME - 1)
        .join("")
        .trimEnd()}…`;
}

export function pageRule(paper: PaperSize, name: string, kind = say.alterationChecklist): string {
  const foot = `font: 8pt var(--pc-font, 'Source Sans 3 Variable', 'Source Sans 3', sans-serif); color: #000; vertical-align: top; padding-top: ${FOOT_DOWN}mm;`;
  return [
    `@page { size: ${paper === "A4" ? "A4" : "letter"}; margin: ${MARGINS.top}mm ${MARGINS.sides}mm ${MARGINS.foot}mm;`,
    `@bottom-left { content: ${cssString(`${kind} · ${shortened(name)}`)}; width: 80%; text-align: left; ${foot} }`,
    `@bottom-right { content: ${counted(say.pageOf)}; text-align: right; ${foot} } }`,
  ].join(" ");
}
