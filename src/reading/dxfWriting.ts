/** What is written in a DXF file. */
import { LIMITS } from "../core/decisions/limits";
import { numberAt, textAt, type DxfRecord } from "./dxfRecords";

const SIGNS: Readonly<Record<string, string>> = { c: "⌀", d: "°", p: "±" };

/** Letters that are looked at: far more than are kept. */
const LONGEST = 5 * LIMITS.text;

const unescaped = (text: string): string =>
  text
    .replaceAll(/%%([cdp])/giu, (_, sign: string) => SIGNS[sign.toLowerCase()] ?? "")
    .replaceAll(/%%[ou]/giu, "")
    .replaceAll(/\\U\+([\dA-F]{4})/giu, (_, digits: string) => String.fromCodePoint(Number.parseInt(digits, 16)));

/** One line of writing. */
export const lineOf = (record: DxfRecord): string => unescaped((textAt(record, 1) ?? "").slice(0, LONGEST));

/** Writing of several lines, its codes for typefaces, heights and colours left out; its lines are joined by spaces. */
export function paragraphOf(record: DxfRecord): string {
  const text = record.values.filter((_, i) => record.codes[i] === 3 || record.codes[i] === 1).join("");
  return unescaped(text.slice(0, LONGEST))
    .replaceAll(/\\[Pp](?![a-z0-9]*[;,])|\\~/gu, " ")
    .replaceAll(/\\[ACcFfHQTWp][^;\\{}]*;/gu, "")
    .replaceAll(/\\[LlOoKk]/gu, "")
    .replaceAll(/\\S([^;\\{}^/#]*)[\^/#]([^;\\{}]*);/gu, "$1/$2")
    .replaceAll(/\\([\\{}])|[{}]/gu, "$1")
    .replaceAll(/\s+/gu, " ");
}

/** Writing that is placed otherwise than from its lower left corner has a second place, which is where it stands. */
export function writtenAt(record: DxfRecord): { readonly x: number; readonly y: number } {
  const isPlaced = numberAt(record, 72) !== 0 || numberAt(record, 73) !== 0;
  const code = isPlaced && textAt(record, 11) !== undefined ? 11 : 10;
  return { x: numberAt(record, code), y: numberAt(record, code + 10) };
}
