/**
 * Follows the printed sheets of many random plans with tissue, ruler and pencil, and tells how far off they lead:
 * `npm run follow -- --count 2000 --seed 7`.
 */
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import * as fc from "fast-check";
import { arrivalOf, tooFar } from "../follower/arrival";
import { anyChainWork } from "../support/anyChainWork";

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

const count = Number(argument("count") ?? 400);
const seed = Number(argument("seed") ?? 7);
const each = Math.ceil(count / STYLE_NAMES.length);

const found = { plans: 0, arrived: 0, corners: 0, corner: 0, seams: 0, seam: 0 };
const told = new Map<string, { count: number; example: string }>();
const tell = (what: string, example: string): void => {
  const known = told.get(what);
  told.set(what, { count: (known?.count ?? 0) + 1, example: known?.example ?? example });
};

for (const style of STYLE_NAMES) {
  for (const [index, work] of fc.sample(anyChainWork(style), { seed, numRuns: each }).entries()) {
    const arrival = arrivalOf({ ...work, unit: index % 3 === 0 ? "in" : "cm" });
    if (arrival === null) continue;
    const where = `${style} ${index}: ${work.alterations.map((one) => (one.kind === "fit" ? one.fit : one.kind)).join(", ")}`;
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
}

console.log(
  `${found.plans} plans, ${found.arrived} arrived; ${found.corners} corners, the worst ${found.corner.toFixed(2)} mm off; ` +
    `${found.seams} seams walked, the worst ${found.seam.toFixed(2)} mm apart`,
);
for (const [what, { count: times, example }] of [...told].toSorted((a, b) => b[1].count - a[1].count))
  console.log(`${times} × ${what}\n    ${example}`);
if (found.arrived < found.plans) process.exitCode = 1;
