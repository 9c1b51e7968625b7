/** Writing fitted into a box: broken into lines, made smaller where need be, the least needed left out last of all. */
import type { Mm } from "../core/units";

export interface FittedLine {
  readonly text: string;
  readonly size: Mm;
  /** From the middle of the box down to the foot of the line, mm. */
  readonly down: Mm;
  readonly bold: boolean;
}

/** Mean width of a letter, in sizes of its type: a little too wide, so that nothing runs out of its box. */
const LETTER = 0.5;
const BOLD_LETTER = 0.62;
const LEADING = 1.25;
/** Sizes of type tried, mm: the last is about 6.5 points, as small as can be read at the cutting table. */
const SIZES: readonly Mm[] = [4.4, 4, 3.6, 3.2, 2.9, 2.6, 2.3];
/** The first line is the name of the piece, and larger. */
const NAME = 1.6;

/** About how wide writing comes out, rather too wide than too narrow, mm. */
export const textWidth = (text: string, size: Mm, bold = false): Mm =>
  text.length * size * (bold ? BOLD_LETTER : LETTER);

/** Words put into lines no wider than `width`; a word that is too wide for one is broken. */
export function wrapped(text: string, width: Mm, size: Mm, bold = false): readonly string[] {
  const lines: string[] = [];
  const longest = Math.max(1, Math.floor(width / textWidth("m", size, bold)));
  for (const word of text.split(" ").flatMap((one) => piecesOf(one, longest))) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size, bold) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A word in pieces of so many letters at the most. */
const piecesOf = (word: string, longest: number): readonly string[] => {
  const letters = Array.from(word);
  return letters.length <= longest
    ? [word]
    : Array.from({ length: Math.ceil(letters.length / longest) }, (_, i) =>
        letters.slice(i * longest, (i + 1) * longest).join(""),
      );
};

/** Cut off with dots where it is wider than `width`. */
export function shortened(text: string, width: Mm, size: Mm): string {
  if (textWidth(text, size) <= width) return text;
  return `${Array.from(text)
    .slice(0, Math.max(0, Math.floor(width / textWidth("m", size)) - 1))
    .join("")
    .trimEnd()}…`;
}

/** @param lines the most needed first; the first one is set large and bold */
export function fitLines(lines: readonly string[], width: Mm, height: Mm): readonly FittedLine[] {
  for (let kept = lines.length; kept > 0; kept -= 1) {
    for (const size of SIZES) {
      const all = lines.slice(0, kept).flatMap((line, index) => {
        const own = index === 0 ? size * NAME : size;
        return wrapped(line, width, own, index === 0).map((text) => ({ text, size: own, bold: index === 0 }));
      });
      const tall = all.reduce((sum, line) => sum + line.size * LEADING, 0);
      if (tall <= height && all.every(({ text, size: own, bold }) => textWidth(text, own, bold) <= width))
        return set(all, tall);
    }
  }
  // No room even for the name: it is set small and runs over.
  const [name = ""] = lines;
  return [{ text: name, size: 2.3, down: 0.8, bold: true }];
}

function set(
  lines: readonly { readonly text: string; readonly size: Mm; readonly bold: boolean }[],
  tall: Mm,
): readonly FittedLine[] {
  let down = -tall / 2;
  return lines.map((line) => {
    down += line.size * LEADING;
    return { ...line, down: down - line.size * 0.3 };
  });
}
