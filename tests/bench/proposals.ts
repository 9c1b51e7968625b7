/** What the lengths and widths of surveyed women ask for, from every demo pattern: how many proposals, and which. */
import { TAPE_SPREAD } from "../../src/core/measures/repeatability";
import { tapesOf } from "../../src/core/measures/tape";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { proposalsOf } from "../../src/core/proposals/proposals";
import { demoWorks } from "../../src/document/demo";
import { heldBack1988 } from "../support/surveys";
import { tapedWomen } from "../support/tapedWomen";
import { testWork } from "../support/works";
import { print } from "./table";

const percent = (part: number, of: number): string => `${Math.round((100 * part) / of)} %`;

export function benchProposals(): void {
  const women = tapedWomen(heldBack1988);
  const rows = demoWorks().map((demo) => {
    const counts: number[] = [];
    const times = new Map<string, number>();
    let spent = 0;
    for (const { values } of women) {
      const work = { ...demo, tapes: tapesOf(values), picks: {}, easeWanted: {}, alterations: [] };
      const plan = derivePlan(work);
      if (!plan.ok) continue;
      const start = performance.now();
      const { proposals } = proposalsOf(work, plan.value);
      spent += performance.now() - start;
      counts.push(proposals.length);
      for (const { altered } of proposals) {
        const name = altered.kind === "fit" ? altered.fit : "bust darts out or in";
        times.set(name, (times.get(name) ?? 0) + 1);
      }
    }
    counts.sort((a, b) => a - b);
    const at = (share: number): number => counts[Math.floor(share * (counts.length - 1))] ?? 0;
    return [
      demo.pattern.name.replace(" (invented)", ""),
      String(counts.length),
      percent(counts.filter((count) => count === 0).length, counts.length),
      `${at(0.5)}, ${at(0.95)}`,
      [...times]
        .toSorted(([, a], [, b]) => b - a)
        .map(([name, count]) => `${name} ${percent(count, counts.length)}`)
        .join(", "),
      `${(spent / counts.length).toFixed(1)} ms`,
    ];
  });
  print(
    "Proposals from lengths and widths, women held back, each measure read once",
    ["pattern", "women", "asked for nothing", "proposals: middle, 95 %", "which", "each takes"],
    rows,
  );
  print(
    "In vain: a body with just the lengths of the block, each read with a tape's usual scatter",
    ["the pattern prints them", "readings of each", "asked for nothing", "proposals, mean"],
    [false, true].flatMap((isPrinted) => [1, 2, 3].map((readings) => askedInVain(isPrinted, readings))),
  );
}

const BODIES = 400;

function askedInVain(isPrinted: boolean, readings: number): readonly string[] {
  const lengths = Object.fromEntries(Object.entries(LENGTHS).map(([name, value]) => [name, { all: value }]));
  const pattern = isPrinted ? { ...testWork.pattern, lengths } : testWork.pattern;
  const counts = Array.from({ length: BODIES }, (_, at) => {
    // The tape's errors of that many women of no body in particular.
    const taken = Array.from({ length: readings }, (__, reading) => errorsOf(at * readings + reading));
    const read = Object.fromEntries(
      Object.entries(LENGTHS).map(([name, value], column) => [
        name,
        taken.map((errors) => value + (errors[column] ?? 0) * (TAPE_SPREAD_OF[name] ?? 0)),
      ]),
    );
    const tapes = [
      { readings: { bustGirth: [880], upperChestGirth: [830], waistGirth: [700], hipGirth: [940], ...read } },
    ];
    const work = { ...testWork, pattern, tapes };
    const plan = derivePlan(work);
    return plan.ok ? proposalsOf(work, plan.value).proposals.length : 0;
  });
  const none = counts.filter((count) => count === 0).length;
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return [isPrinted ? "yes" : "no", String(readings), percent(none, counts.length), mean.toFixed(2)];
}

/** The block's own at bust 880 mm. */
const LENGTHS = {
  backWaistLength: 410,
  frontWaistLength: 432,
  acrossBack: 345,
  acrossFront: 325,
  shoulderLength: 122,
  bustPointWidth: 190,
  sideNeckToBustPoint: 265,
};

const TAPE_SPREAD_OF: Readonly<Record<string, number>> = TAPE_SPREAD;

/** Standard normal numbers, the same in every run: sums of twelve of a plain generator, less six. */
function errorsOf(seed: number): readonly number[] {
  let state = (seed * 2654435761 + 1) >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  for (let warm = 0; warm < 8; warm += 1) next();
  return Array.from({ length: 7 }, () => Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, -6));
}
