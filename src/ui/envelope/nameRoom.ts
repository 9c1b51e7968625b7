/** Letters that a name may have in the narrow column, and in the wider one; a longer one takes a line of its own. */
const NARROW = 5;
const WIDE = 8;

/** How much room the longest of the names takes in its column. */
export function nameRoom(names: readonly string[]): "wide" | "line" | undefined {
  const longest = Math.max(0, ...names.map((name) => name.length));
  return longest > WIDE ? "line" : longest > NARROW ? "wide" : undefined;
}
