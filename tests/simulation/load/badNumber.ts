/** Looks through all that a plan holds, traces and whatever else is only made when it is read too, for numbers that are none. */

/** A level that nothing could carry past the next line has all the room there is. */
const MAY_BE_ENDLESS: ReadonlySet<string> = new Set(["margin"]);

/** Where the first number stands that is none, or null. What hangs in several places is looked at once. */
export function badNumber(root: unknown): string | null {
  const seen = new Set<object>();
  const path: string[] = [];
  const look = (value: unknown, key: string): boolean => {
    if (typeof value === "number") return !Number.isFinite(value) && !(value === Infinity && MAY_BE_ENDLESS.has(key));
    if (typeof value === "string") return value === "NaN" || value === "undefined";
    if (typeof value !== "object" || value === null || seen.has(value)) return false;
    seen.add(value);
    for (const [name, inner] of value instanceof Map ? value : Object.entries(value)) {
      path.push(String(name));
      if (look(inner, String(name))) return true;
      path.pop();
    }
    return false;
  };
  return look(root, "") ? path.join(".") : null;
}
