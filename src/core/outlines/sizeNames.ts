/** Labels of sizes found in what a file calls its layers, groups, blocks and line types. */

/** Letters and figures alone, small. */
const bare = (text: string): string => text.normalize("NFKC").toLowerCase().trim();

/** Words and numbers of a name: "T38_outline" is t, 38, outline. */
const wordsOf = (text: string): readonly string[] => bare(text).match(/\d+(?:[.,]\d+)?|[\p{L}]+/gu) ?? [];

/** Words that stand before a size and say that it is one. */
const SIZE_WORDS = new Set([
  "size",
  "sz",
  "gr",
  "groesse",
  "größe",
  "groesze",
  "taille",
  "t",
  "talla",
  "taglia",
  "maat",
  "eu",
  "us",
  "uk",
  "de",
  "fr",
  "s",
  "g",
]);

/**
 * How surely a name names a size: 0 not at all; 3 it is the label itself, 2 the label stands behind a word for size, 1 it
 * stands somewhere in it by itself.
 */
function namesSize(name: string, label: string): number {
  const [inName, inLabel] = [wordsOf(name), wordsOf(label)];
  if (inLabel.length === 0) return 0;
  if (inName.join(" ") === inLabel.join(" ")) return 3;
  const places = inName.flatMap((_, at) => (inLabel.every((word, i) => inName[at + i] === word) ? [at] : []));
  if (places.length === 0) return 0;
  if (places.some((at) => SIZE_WORDS.has(inName[at - 1] ?? ""))) return 2;
  // A single letter by itself may be anything.
  return inLabel.every((word) => word.length === 1 && !/\d/.test(word)) && inName.length > 2 ? 0 : 1;
}

/**
 * The label that a name names, where it is but one; null: none, or several that are as likely.
 *
 * @param name of a layer, of groups joined by " / " (the innermost counts first), of a line type
 */
export function sizeNamed(name: string, labels: readonly string[]): string | null {
  for (const part of name.split(" / ").toReversed()) {
    const found = labels.map((label) => ({ label, surety: namesSize(part, label), words: wordsOf(label).length }));
    const best = Math.max(0, ...found.map(({ surety }) => surety));
    if (best === 0) continue;
    // Of labels that hold one another the longer: "2 XL" before "XL".
    const sure = found.filter(({ surety }) => surety === best);
    const longest = Math.max(...sure.map(({ words }) => words));
    const named = sure.filter(({ words }) => words === longest);
    if (named.length === 1) return named[0]?.label ?? null;
    return null;
  }
  return null;
}

/** What a writing says: "Size: 12" gives 12. null: it says no size. */
export const sizeSaid = (text: string): string | null => /^\s*size\s*[:=]\s*(.+?)\s*$/iu.exec(text)?.[1] ?? null;

/** "Piece Name: Front" gives Front. */
export const pieceSaid = (text: string): string | null =>
  /^\s*piece\s*(?:name)?\s*[:=]\s*(.+?)\s*$/iu.exec(text)?.[1] ?? null;
