/** A length as it is typed, and the keys of our own that change a part of it. */

/** What a tape in inches is read to. */
export const EIGHTHS = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"] as const;

/** The text without the part of an inch at its end, however that is written, and without its sign of inches. */
const WHOLE =
  /^(?<sign>\s*[-−+]?\s*)(?<whole>\d*?)\s*(?:(?<part>(?<!\d)\d+\s*\/\s*\d+|[¼½¾⅛⅜⅝⅞])|[.,]\d*)?\s*(?:"|″|in\.?)?\s*$/u;

/** The part of an inch that stands in a text as one of the keys has it; null: none. */
export function partOf(text: string): string | null {
  const part = WHOLE.exec(text)?.groups?.["part"];
  // A sign of its own, as ½, comes apart into its two numbers.
  return part === undefined ? null : part.normalize("NFKD").replace("⁄", "/").replaceAll(/\s/gu, "");
}

/** The text with this part of an inch in place of the one it has, and without it where it has it already. Another unit's is left. */
export function withPart(text: string, part: string): string {
  const groups = WHOLE.exec(text)?.groups;
  if (groups === undefined) return text;
  const { sign = "", whole = "" } = groups;
  const kept = partOf(text) === part ? "" : part;
  return `${sign}${[whole, kept].filter((some) => some !== "").join(" ")}`;
}

/** The text with the other sign. */
export const withOtherSign = (text: string): string =>
  /^\s*[-−]/u.test(text) ? text.replace(/^\s*[-−]\s*/u, "") : `−${text.replace(/^\s*\+?\s*/u, "")}`;
