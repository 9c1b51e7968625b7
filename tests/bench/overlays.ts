/** How long the overlay of an altered plan takes: a wearer's chains of alterations, and heavier ones than any would make. */
import * as fc from "fast-check";
import type { Work } from "../../src/core/decisions/work";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import { overlayOf } from "../../src/core/overlay/overlayOf";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { anyChainWork } from "../support/anyChainWork";
import { harshChainWork } from "../support/harshChainWork";
import { median, print, quantile } from "./table";

const SEED = 11;
const WORKS = 12;
/** Longer side of what a printer puts on Letter and A4, and of a small page. */
const LONGEST = [150, 259.4, 271];

/** Chains of three works made one after the other: some thirty alterations. */
function heavyWorks(style: (typeof STYLE_NAMES)[number]): readonly Work[] {
  const [first = [], second = [], third = []] = [SEED, SEED + 1, SEED + 2].map((seed) =>
    fc.sample(harshChainWork(style), { seed, numRuns: WORKS }),
  );
  return first.map((work, at) => ({
    ...work,
    alterations: [work, second[at], third[at]]
      .flatMap((one) => one?.alterations ?? [])
      .map((alteration, index) => ({ ...alteration, id: String(index) })),
  }));
}

function timesOf(works: readonly Work[]): readonly number[] {
  return works.flatMap((work, at) => {
    const plan = derivePlan(work);
    if (!plan.ok) return [];
    const names = [...new Set([...plan.value.left.pieces, ...plan.value.right.pieces].map(({ name }) => name))];
    const start = performance.now();
    overlayOf(plan.value, names, LONGEST[at % LONGEST.length] ?? 271);
    return [performance.now() - start];
  });
}

export function benchOverlays(): void {
  const rows = STYLE_NAMES.flatMap((style) =>
    (
      [
        ["a wearer's chain", fc.sample(anyChainWork(style), { seed: SEED, numRuns: WORKS })],
        ["a heavy one", heavyWorks(style)],
      ] as const
    ).map(([what, works]) => {
      const times = timesOf(works);
      return [style, what, times.length, median(times), quantile(times, 0.95), Math.max(...times)];
    }),
  );
  print(
    "The overlay of an altered plan, all pieces, each for the first time, ms (aim: at most 2000)",
    ["style", "what", "plans", "median", "95 %", "longest"],
    rows,
  );
}
