/** Plain text in columns, for a terminal or a printer of 80 characters a line. */

export const COLUMNS = 80;

const segmenter = new Intl.Segmenter("en-GB");

/** The characters of a text as they are seen: a letter with its accent is one. */
const letters = (text: string): readonly string[] => Array.from(segmenter.segment(text), ({ segment }) => segment);
export const widthOf = (text: string): number => letters(text).length;

/** Breaks a text into lines of at most `width` characters; a longer word is broken. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((one) => one !== "")) {
    let rest = letters(word);
    if (line !== "" && widthOf(line) + 1 + rest.length <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== "") lines.push(line);
    for (; rest.length > width; rest = rest.slice(width)) lines.push(rest.slice(0, width).join(""));
    line = rest.join("");
  }
  return line === "" ? lines : [...lines, line];
}

/** The text behind a mark, its further lines set under its first. */
export function hanging(mark: string, text: string, width = COLUMNS): readonly string[] {
  const indent = " ".repeat(widthOf(mark));
  return wrap(text, width - indent.length).map((line, index) => `${index === 0 ? mark : indent}${line}`);
}

/** Blanks at the least between a text and its amount, so that the one does not read on into the other. */
const APART = 2;

/** The text behind a mark, with an amount set out at the right: beside its first line, or under it where it is too long. */
export function withAmount(mark: string, text: string, amount: string, right: number): readonly string[] {
  const lines = hanging(mark, text, COLUMNS - right - 1);
  const [first = mark, ...others] = lines;
  if (amount === "") return lines;
  return widthOf(amount) > right || widthOf(first) + APART + widthOf(amount) > COLUMNS
    ? [...lines, ...wrap(amount, COLUMNS).map((line) => line.padStart(COLUMNS))]
    : [`${first}${" ".repeat(COLUMNS - widthOf(first) - widthOf(amount))}${amount}`, ...others];
}

/** One line, whatever a file or an argument was called. */
export const oneLine = (text: string): string => text.replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, " ").trim();
