/**
 * `npm run trials -- --count 2000 --seed 1`: simulated wearers with hidden truths of their bodies, and what becomes of their
 * garments in up to three fittings, by advisor. `--advisor` plays one alone; `--truths` lists every truth; `--quiet-mirror` lets
 * the mirror show all, and rightly.
 */
import { parseArgs } from "node:util";
import { ADVISORS } from "../simulation/trial/advisors";
import { isLoose, play, type Played } from "../simulation/trial/loop";
import { NO_NOISE, USUAL_NOISE } from "../simulation/trial/mirror";
import { tallyOf, tallyTruths } from "../simulation/trial/tally";
import { wearerOf } from "../simulation/trial/wearers";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "300" },
    seed: { type: "string", default: "1" },
    advisor: { type: "string" },
    truths: { type: "boolean", default: false },
    "quiet-mirror": { type: "boolean", default: false },
    /** Stops after so long, and reports on what it came to. */
    seconds: { type: "string", default: "100000" },
  },
});
const [count, first] = [Number(values.count), Number(values.seed)];
const TRIALS = 3;
const MOST_TRUTHS = 3;

const names = Object.keys(ADVISORS).filter((name) => values.advisor === undefined || name === values.advisor);
const played = new Map<string, Played[]>(names.map((name) => [name, []]));
const spent = new Map<string, number>();
const start = performance.now();
let done = 0;
for (; done < count && performance.now() - start < 1000 * Number(values.seconds); done += 1) {
  const wearer = wearerOf(first + done, 1 + (done % MOST_TRUTHS));
  for (const name of names) {
    const advisor = ADVISORS[name];
    if (advisor === undefined) continue;
    const before = performance.now();
    played.get(name)?.push(play(wearer, advisor, TRIALS, values["quiet-mirror"] ? NO_NOISE : USUAL_NOISE));
    spent.set(name, (spent.get(name) ?? 0) + performance.now() - before);
  }
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`.padStart(6);
const row = (cells: readonly string[]): void => console.log(cells.join("  "));
console.log(`${done} wearers from ${first}, ${((performance.now() - start) / 1000).toFixed(0)} s`);
console.log(
  "right: every truth that can be known within 8 mm of cloth; worse: all that is off has grown by more than 8 mm",
);
for (const name of names) {
  const all = played.get(name) ?? [];
  // Who has nothing that can be known is right from the first.
  const some = all.filter(({ wearer }) => !wearer.truths.every(isLoose));
  row([
    `\n${name}`.padEnd(26),
    "wearers",
    "right at first, after 1, 2, 3",
    "",
    "worse after 2",
    "off, mm: at first, after 1, 2, 3",
  ]);
  const parts: readonly (readonly [string, readonly Played[]])[] = [
    ...[1, 2, 3].map(
      (truths) =>
        [
          `  ${truths} truth${truths > 1 ? "s" : ""}`,
          some.filter(({ wearer }) => wearer.truths.length === truths),
        ] as const,
    ),
    ["  all, each with a row", some.filter(({ wearer }) => !wearer.truths.some(isLoose))],
    ["  all", some],
    ["  none with a row", all.filter(({ wearer }) => wearer.truths.every(isLoose))],
  ];
  for (const [what, part] of parts) {
    const tally = tallyOf(part, TRIALS);
    row([
      what.padEnd(25),
      String(tally.wearers).padStart(7),
      tally.right.map(percent).join(" "),
      percent(tally.rightUnharmed[2] ?? 0).padStart(11),
      percent(tally.worse[2] ?? 0).padStart(14),
      tally.sum.map((mm) => mm.toFixed(0).padStart(6)).join(" "),
    ]);
  }
  const { loose, unexplained, failed } = tallyOf(all, TRIALS);
  console.log(
    `  without a row: ${loose} wearers, of them ${percent(unexplained).trim()} end with nothing altered in vain`,
  );
  console.log(
    `  failed answers: ${failed}; ${((spent.get(name) ?? 0) / Math.max(1, TRIALS * all.length)).toFixed(1)} ms a trial`,
  );
  if (!values.truths) continue;
  console.log("  by truth: answered at first, after 1, 2, 3 (without a row: nothing altered in vain)");
  for (const { name: truth, count: of, answered } of tallyTruths(all, TRIALS).toSorted((a, b) =>
    a.name.localeCompare(b.name),
  ))
    row([`    ${truth}`.padEnd(25), String(of).padStart(7), answered.map(percent).join(" ")]);
}
