/** Why an edge cannot be drawn, and the most that can. mm. */
import { halve } from "../geometry/iterate";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import { HIGHER_AT_MOST } from "./clearances";
import { drawnOn, type Asked } from "./drawEdges";
import type { NecklineFailure } from "./necklineFailure";

/** Limits are told to so much, on the side that works. */
const TOLD_TO: Mm = 0.25;

/** So many amounts are tried on the way down from what was asked. */
const STEPS = 16;

type Amount = "deeper" | "wider" | "backDeeper";

/**
 * Which amount is too much, and the most of it that works with the others as they are; where no one of them alone is at fault, with
 * the others at nothing.
 */
export function whyNot(pieces: PieceSet, asked: Asked): NecklineFailure {
  const works = (tried: Asked): boolean => drawnOn(pieces, tried) !== null;
  const mostOf = (amount: Amount, of: Asked, least: Mm): Mm => {
    const worksAt = (value: Mm): boolean => works({ ...of, [amount]: value });
    // Beside a seam in the shoulder there may be less that works, and more that does not: the most is sought from above.
    const step = (asked[amount] - least) / STEPS;
    const steps = Array.from({ length: STEPS }, (_, at) => asked[amount] - step * (at + 1));
    const holding = steps.find((value, at) => at === STEPS - 1 || worksAt(value)) ?? least;
    return halve(holding, holding + step, TOLD_TO, worksAt).holding;
  };
  const found = (amount: Amount, of: Asked, holding: Mm = 0): NecklineFailure => {
    const most = mostOf(amount, of, holding);
    if (amount === "wider") return { code: "neckline/too-wide", most };
    if (asked[amount] < 0) return { code: "neckline/too-high", most: -most };
    return { code: "neckline/too-deep", most, of: amount === "deeper" ? "front" : "back" };
  };
  const amounts = (["deeper", "wider", "backDeeper"] as const).filter((amount) => asked[amount] !== 0);
  for (const amount of amounts) if (works({ ...asked, [amount]: 0 })) return found(amount, asked);
  // The shape may have to begin higher than the pattern's own edge.
  if (works({ ...asked, deeper: -HIGHER_AT_MOST })) return found("deeper", asked, -HIGHER_AT_MOST);
  const nothing = { ...asked, deeper: 0, wider: 0, backDeeper: 0 };
  const alone = amounts.find((amount) => works(nothing) && !works({ ...nothing, [amount]: asked[amount] }));
  return alone === undefined ? { code: "neckline/not-on-style" } : found(alone, nothing);
}
