/**
 * Follows the printed sheets of many random plans with tissue, ruler and pencil, and tells how far off they lead:
 * `npm run follow -- --count 2000 --seed 7`; with `--own` those on pieces of another house, their sizes as read from a file; with `--uneven` what is made of darts is for one
 * half, for the other, or for both by turns; with `--cups` one half has another cup version; with `--necklines` a neckline is redrawn; with `--since` what is printed of the way from one version to another, with the old pieces.
 */
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { LengthUnit, Work } from "../../src/core/decisions/work";
import * as fc from "fast-check";
import { arrivalOf, tooFar, type Arrival } from "../follower/arrival";
import { arrivalOnForeign, FOREIGN_FRONTS } from "../follower/foreign";
import { wayFrom } from "../follower/since";
import { anyChainWork } from "../support/anyChainWork";
import { withNeckline } from "../support/necklines";
import { unevenCup, unevenDarts } from "../support/unevenDarts";
import { anyForeignWork } from "../support/foreign/foreignWork";

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

const count = Number(argument("count") ?? 400);
const seed = Number(argument("seed") ?? 7);
const most = Number(argument("most") ?? 6);

const found = { plans: 0, arrived: 0, corners: 0, corner: 0, seams: 0, seam: 0 };
const told = new Map<string, { count: number; example: string }>();
const tell = (what: string, example: string): void => {
  const known = told.get(what);
  told.set(what, { count: (known?.count ?? 0) + 1, example: known?.example ?? example });
};

function add(arrival: Arrival | null, of: string, { alterations }: Work): void {
  if (arrival === null) return;
  const where = `${of}: ${alterations.map((one) => (one.kind === "fit" ? one.fit : one.kind)).join(", ")}`;
  const far = tooFar(arrival);
  found.plans += 1;
  for (const line of arrival.notCovered) tell(`not covered: ${line}`, where);
  for (const line of arrival.atFault) tell(`the sheet is at fault: ${line.replaceAll(/\d+/g, "#")}`, where);
  for (const { what, by, allowed } of far)
    tell(`too far: ${what}`, `${by.toFixed(2)} of ${allowed.toFixed(2)} ${where}`);
  if (far.length + arrival.notCovered.length + arrival.atFault.length === 0) found.arrived += 1;
  found.corners += arrival.corners.length;
  found.seams += arrival.seams.length;
  found.corner = Math.max(found.corner, ...arrival.corners.map(({ by }) => by));
  found.seam = Math.max(found.seam, ...arrival.seams.map(({ by }) => by));
}

const dressed = (work: Work, index: number): Work =>
  process.argv.includes("--necklines") ? withNeckline(work, index) : work;

function addTurned(work: Work, of: string, index: number): void {
  const darts = process.argv.includes("--uneven") ? unevenDarts(work, index) : work;
  const asked = process.argv.includes("--cups") ? unevenCup(darts, index) : darts;
  add(arrivalOf(dressed(asked, index)), of, asked);
}

const unitOf = (index: number): LengthUnit => (index % 3 === 0 ? "in" : "cm");

/** A version before: the last few alterations not made yet, one of those before at another amount. */
function versionBefore(work: Work, index: number): Work {
  const fewer = index % 4;
  const kept = work.alterations.slice(0, Math.max(0, work.alterations.length - fewer));
  const alterations = kept.map((one, at) =>
    one.kind === "fit" && at === index % 3 ? { ...one, amount: one.amount * 0.6 } : one,
  );
  return { ...work, alterations };
}

if (process.argv.includes("--since"))
  for (const style of STYLE_NAMES) {
    const numRuns = Math.ceil(count / STYLE_NAMES.length);
    for (const [index, work] of fc.sample(anyChainWork(style), { seed, numRuns }).entries()) {
      const before = versionBefore(work, index);
      // By turns the neckline is another, new, or gone again.
      const [from, to] = [index % 3 === 0 ? before : dressed(before, index), dressed(work, index + (index % 2))];
      const way = wayFrom(from, index % 3 === 2 ? work : to, unitOf(index));
      add(way === null ? null : way.arrival, `${style} ${index}`, work);
    }
  }
else if (process.argv.includes("--own"))
  for (const front of FOREIGN_FRONTS) {
    const numRuns = Math.ceil(count / FOREIGN_FRONTS.length);
    for (const [index, made] of fc.sample(anyForeignWork({ front }, most), { seed, numRuns }).entries())
      add(
        arrivalOnForeign({ ...made, work: dressed(made.work, index) }, unitOf(index)),
        `${front} ${index}, nest ${made.foreign.options.seed}`,
        made.work,
      );
  }
else
  for (const style of STYLE_NAMES) {
    const numRuns = Math.ceil(count / STYLE_NAMES.length);
    for (const [index, work] of fc.sample(anyChainWork(style), { seed, numRuns }).entries())
      addTurned({ ...work, unit: unitOf(index) }, `${style} ${index}`, index);
  }

console.log(
  `${found.plans} plans, ${found.arrived} arrived; ${found.corners} corners, the worst ${found.corner.toFixed(2)} mm off; ` +
    `${found.seams} seams walked, the worst ${found.seam.toFixed(2)} mm apart`,
);
for (const [what, { count: times, example }] of [...told].toSorted((a, b) => b[1].count - a[1].count))
  console.log(`${times} × ${what}\n    ${example}`);
if (found.arrived < found.plans) process.exitCode = 1;
