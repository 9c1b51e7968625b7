/** Necklines by turns: works with one of every shape, for the proofs that are held over many plans. */
import { NECKLINE_SHAPES, type Neckline } from "../../src/core/decisions/dress";
import type { Work } from "../../src/core/decisions/work";

const AMOUNTS: readonly Omit<Neckline, "shape">[] = [
  { deeper: 40 },
  { deeper: 25, wider: 15 },
  { deeper: 70, wider: 30, backDeeper: 45 },
  { deeper: 60, wider: 20, pinched: true },
  { backDeeper: 80 },
  { deeper: -10, wider: 6 },
  { deeper: 90, wider: 10, backDeeper: 20, pinched: true },
  // Over a princess seam in the shoulder.
  { deeper: 20, wider: 78 },
  { deeper: 50, wider: 85, backDeeper: 30, pinched: true },
];

/** On cups there is nothing beside a strap to widen into, and less depth. */
const ON_CUPS: readonly Omit<Neckline, "shape">[] = [
  {},
  { deeper: 6 },
  { deeper: 10, pinched: true },
  { deeper: -12, backDeeper: 10 },
  { deeper: 45 },
];

/** A work with the neckline of that turn. */
export function withNeckline(work: Work, turn: number): Work {
  const shapes = NECKLINE_SHAPES.filter((shape) => shape !== "asPattern");
  const amounts = work.pattern.style === "midriff" ? ON_CUPS : AMOUNTS;
  const shape = shapes[turn % shapes.length] ?? "scoop";
  const amount = amounts[Math.floor(turn / shapes.length) % amounts.length] ?? {};
  return { ...work, dress: { ...work.dress, neckline: { shape, ...amount } } };
}
