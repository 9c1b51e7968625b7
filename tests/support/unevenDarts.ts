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
