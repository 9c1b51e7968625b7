/**
 * `npm run tissue -- --count 500 --seed 1`: the stand-in brought to tapes of foreign nests, held against the truth. `--house second`
 * drafts them by other proportions; `--corners` lists every corner.
 */
import { parseArgs } from "node:util";
import { NINE_OF_TEN } from "../../src/core/statistics/normal";
import {
  caseOf,
  cornerErrors,
  COUNTS,
  finishedOf,
  fitOf,
  houseOf,
  planted,
  planWaist,
  stepsOf,
  tapeBound,
} from "../support/tissueTally";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "100" },
    seed: { type: "string", default: "1" },
    house: { type: "string", default: "first" },
    corners: { type: "boolean", default: false },
    /** Stops after so long, and reports on what it came to. */
    seconds: { type: "string", default: "100000" },
    json: { type: "boolean", default: false },
  },
});
const [count, first] = [Number(values.count), Number(values.seed)];

const misses: Record<string, number[]> = {};
const add = (key: string, value: number): void => {
  (misses[key] ??= []).push(value);
};
/** Off, in spreads told. */
const held: Record<string, number[]> = {};
const hold = (key: string, off: number, spread: number): void => {
  (held[key] ??= []).push(off / spread);
};
const start = performance.now();
let done = 0;
for (let seed = first; seed < first + count && performance.now() - start < 1000 * Number(values.seconds); seed += 1) {
  done += 1;
  const c = caseOf(seed, houseOf(seed, values.house === "second"));
  const truth = c.truth.sizes[c.measured] ?? [];
  const kind = c.printed ? "printed" : "not printed";
  for (const isFar of [false, true]) {
    const steps = stepsOf(c, isFar);
    const where = `${kind}, ${isFar ? "two sizes further" : "within a size"}`;
    add(`${where}: stand-in`, planWaist(c.standIn, c, steps).miss);
    add(`${where}: tape's bound`, tapeBound(c, steps));
    for (const n of COUNTS) {
      const before = performance.now();
      const fit = fitOf(c, n, c.measured + steps);
      add("ms", performance.now() - before);
      const plan = planWaist(fit.nest, c, steps);
      const told = fit.doubt.finished.waist ?? NaN;
      if (n > 0) add(`${where}: ${n} answers`, plan.miss);
      if (n > 0) add(`${where}: ${n} answers, of base`, plan.ofBase);
      if (n > 0) add(`${where}: ${n} answers, of step`, plan.ofStep);
      hold(`waist as cut, ${n} answers`, plan.miss, told);
      hold(`waist as cut, ${n} answers, ${where}`, plan.miss, told);
      if (isFar) continue;
      const off = finishedOf(truth, "bust") - finishedOf(fit.nest.sizes[c.measured] ?? [], "bust");
      hold(`bust, ${n} answers, ${kind}`, off, fit.doubt.finished.bust ?? NaN);
      for (const corner of cornerErrors(c, fit)) {
        const cut =
          c.foreign.options.front === "french" && /front\.sideDart/.test(corner.name)
            ? "corner of a French dart"
            : "corner";
        hold(`${cut}s, ${n} answers`, corner.off, corner.spread);
        hold(`${cut} ${corner.name}, ${n} answers`, corner.off, corner.spread);
      }
      if (n === 0) continue;
      const beyond = fit.misfits.filter(({ withinTape }) => !withinTape).length;
      add(`false alarms, ${n} answers`, beyond > 0 ? 1 : 0);
      const next = fit.next.find(({ piece, length }) =>
        c.readings.some((r) => r.piece === piece && r.length === length),
      );
      if (next !== undefined && n < 100) {
        const isNext = (r: (typeof c.readings)[number]): boolean => r.piece === next.piece && r.length === next.length;
        const rest = c.readings.slice(n);
        const readings = [...c.readings.slice(0, n), ...rest.filter(isNext), ...rest.filter((r) => !isNext(r))];
        const after = planWaist(fitOf({ ...c, readings }, n + 1).nest, c, steps).miss;
        add("next told", told ** 2 - (told - next.saves.waist) ** 2);
        add("next real", plan.miss ** 2 - after ** 2);
      }
    }
    if (!isFar && seed % 5 < 2) {
      const wrong = planted(c);
      const { misfits } = fitOf(wrong.case, 100);
      const beyond = misfits.filter(({ withinTape }) => !withinTape);
      const isIt = ({ piece, length }: { piece: string; length: string }): boolean =>
        piece === wrong.at.piece && length === wrong.at.length;
      const size = Math.abs(wrong.by) < 15 ? "8 to 15 mm" : "15 to 30 mm";
      const isChecked = wrong.isChecked ? "checked by another" : "alone";
      add(`wrong by ${size}, ${isChecked}: named`, beyond.some((m) => isIt(m) || m.against.some(isIt)) ? 1 : 0);
      add(
        `wrong by ${size}, ${isChecked}: named, within a tape's doubt too`,
        misfits.some((m) => isIt(m) || m.against.some(isIt)) ? 1 : 0,
      );
    }
  }
}
if (values.json) console.log(JSON.stringify({ misses, held }));
else
  report(
    misses,
    held,
    values.corners,
    `${done} nests from ${first}, ${((performance.now() - start) / 1000).toFixed(0)} s`,
  );

function report(
  all: Readonly<Record<string, readonly number[]>>,
  told: Readonly<Record<string, readonly number[]>>,
  withCorners: boolean,
  title: string,
): void {
  console.log(title);
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  for (const [key, list] of Object.entries(all).toSorted(([a], [b]) => a.localeCompare(b))) {
    const sorted = list.map(Math.abs).toSorted((a, b) => a - b);
    const [half, nine, worst] = [0.5, 0.9, 1].map(
      (s) => sorted[Math.min(sorted.length - 1, Math.floor(s * sorted.length))],
    );
    const shown =
      key.startsWith("wrong") || key.startsWith("false")
        ? `${(100 * mean(list)).toFixed(1)} %`
        : key.startsWith("next")
          ? `mean of squares ${mean(list).toFixed(2)} mm²`
          : [half, nine, worst].map((x) => (x ?? NaN).toFixed(1)).join(" / ");
    console.log(`  ${key.padEnd(60)} ${String(list.length).padStart(5)}  ${shown}`);
  }
  console.log("Held at nine of ten (share, count, root of mean square in spreads):");
  for (const [key, list] of Object.entries(told).toSorted(([a], [b]) => a.localeCompare(b))) {
    if (!withCorners && / ?corner .*\./.test(key)) continue;
    const share = list.filter((x) => Math.abs(x) <= NINE_OF_TEN).length / list.length;
    console.log(
      `  ${key.padEnd(60)} ${(100 * share).toFixed(1)} %  ${list.length}  ${Math.sqrt(mean(list.map((x) => x * x))).toFixed(2)}`,
    );
  }
}
