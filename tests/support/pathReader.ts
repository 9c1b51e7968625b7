/** Reads the path data of SVG by itself: absolute and relative moves, lines, curves and closings. */

export interface PathStep {
  readonly command: "M" | "L" | "C" | "Z";
  /** Pairs of x and y. */
  readonly numbers: readonly number[];
}

const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, Z: 0 };

/** Every step in absolute coordinates; level and upright lines become lines. Throws on anything that it does not know. */
export function readPath(data: string): PathStep[] {
  const tokens = [...data.matchAll(/[a-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi)].map(([token]) => token);
  if (data.replaceAll(/[a-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?|[\s,]/gi, "") !== "")
    throw new Error(`not path data: ${data}`);

  const steps: PathStep[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let letter = "";
  for (let i = 0; i < tokens.length;) {
    const token = tokens[i] ?? "";
    if (/[a-z]/i.test(token)) {
      letter = token;
      i += 1;
    } else if (letter === "M" || letter === "m") {
      letter = letter === "M" ? "L" : "l";
    }
    const upper = letter.toUpperCase();
    const count = TAKES[upper];
    if (count === undefined) throw new Error(`unknown path command ${letter}`);
    const raw = tokens.slice(i, i + count).map(Number);
    if (raw.length < count || raw.some(Number.isNaN)) throw new Error(`numbers missing after ${letter}`);
    i += count;
    const relative = letter !== upper;
    if (upper === "Z") {
      steps.push({ command: "Z", numbers: [] });
      [x, y] = [startX, startY];
      continue;
    }
    const [h = 0] = raw;
    const numbers =
      upper === "H"
        ? [relative ? x + h : h, y]
        : upper === "V"
          ? [x, relative ? y + h : h]
          : raw.map((value, j) => (relative ? value + (j % 2 === 0 ? x : y) : value));
    [x, y] = [numbers.at(-2) ?? x, numbers.at(-1) ?? y];
    if (upper === "M") [startX, startY] = [x, y];
    steps.push({ command: upper === "M" ? "M" : upper === "C" ? "C" : "L", numbers });
  }
  return steps;
}
