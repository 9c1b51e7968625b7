/** The floors of the core, read from their table in DEVELOPERS.md: for the lint rule and for the test. */
import { readFileSync } from "node:fs";
import { posix } from "node:path";

/** @typedef {ReadonlyMap<string, number>} Floors by folder, such as "src/core/plan" */

/**
 * @param {string} markdown a table with rows such as "| 3 | `src/core/girth/` | …"
 * @returns {Floors}
 */
export function readFloors(markdown) {
  const rows = [...markdown.matchAll(/^\| (\d+) \| `(src\/core(?:\/[\w/]*)?)\/` \|/gm)];
  return new Map(rows.map(([, floor, folder]) => [folder ?? "", Number(floor)]));
}

const guide = new URL("../../DEVELOPERS.md", import.meta.url);
export const FLOORS = readFloors(readFileSync(guide, "utf8"));

/**
 * @param {Floors} floors
 * @param {string} file       path from the root, such as src/core/plan/plan.ts
 * @param {string} specifier  what it imports
 * @returns {string | null} what is wrong with that, as a sentence
 */
export function floorFault(floors, file, specifier) {
  if (!file.startsWith("src/core/") || !specifier.startsWith(".")) return null;
  const from = posix.dirname(file);
  const target = posix.join(from, specifier).replace(/\/$/, "");
  // A folder's index is named like any other file: else nobody can tell on which floor an import ends.
  if (floors.has(target) || /(?:^|\/)\.{1,2}$/.test(specifier)) return `${specifier}: name the file, not its folder.`;
  const to = posix.dirname(target);
  if (from === to || !to.startsWith("src/core")) return null;
  const [own, other] = [floors.get(from), floors.get(to)];
  if (own === undefined) return `${from} stands on no floor: give it a row in DEVELOPERS.md.`;
  if (other === undefined) return `${to} stands on no floor: give it a row in DEVELOPERS.md.`;
  return other < own ? null : `Floor ${own} (${from}) must not import from floor ${other} (${to}).`;
}
