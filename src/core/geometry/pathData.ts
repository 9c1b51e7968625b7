/** The letter and numbers of path data, one step after the other; it knows no curve, so that a reader of files stays small. */

const NUMBER = String.raw`-?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?`;
const STEP = new RegExp(String.raw`([MLCZ])((?:[\s,]*${NUMBER})*)[\s,]*`, "y");
const NUMBERS = new RegExp(NUMBER, "g");
const COUNT: Readonly<Record<string, number>> = { M: 2, L: 2, C: 6, Z: 0 };

export interface PathStep {
  readonly letter: string;
  readonly numbers: readonly number[];
}

/** The steps of one unbroken line: one M, then L and C, then a Z or none; null where it is anything else. */
export function pathSteps(path: string): readonly PathStep[] | null {
  const steps: PathStep[] = [];
  let at = 0;
  while (at < path.length) {
    STEP.lastIndex = at;
    const [found, letter = "", behind = ""] = STEP.exec(path) ?? [];
    if (found === undefined || steps.at(-1)?.letter === "Z") return null;
    at += found.length;
    const numbers = (behind.match(NUMBERS) ?? []).map(Number);
    const count = COUNT[letter] ?? 0;
    const isWhole = letter === "Z" ? numbers.length === 0 : numbers.length > 0 && numbers.length % count === 0;
    const isInPlace = (letter === "M") === (steps.length === 0) && (letter !== "M" || numbers.length === 2);
    if (!isWhole || !isInPlace || !numbers.every(Number.isFinite)) return null;
    steps.push({ letter, numbers });
  }
  return steps.length === 0 ? null : steps;
}
