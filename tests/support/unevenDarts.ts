/** What a work makes of darts, for one half, the other or both by turns. */
import type { Work } from "../../src/core/decisions/work";

const TURNS = ["left", "right", null] as const;

export const unevenDarts = (work: Work, turn: number): Work => ({
  ...work,
  alterations: work.alterations.map((alteration, index) => {
    const half = TURNS[(index + turn) % TURNS.length] ?? null;
    return alteration.kind === "fit" || half === null ? alteration : { ...alteration, half };
  }),
});

/** Another cup version on one half, where the pattern has more than one. */
export function unevenCup(work: Work, turn: number): Work {
  const { cups } = work.pattern.chart;
  const other = cups[turn % Math.max(1, cups.length)];
  if (cups.length < 2 || other === undefined) return work;
  const half = turn % 2 === 0 ? "right" : "left";
  return { ...work, picks: { ...work.picks, halfCups: { [half]: other.label } } };
}
