/** The bench: prints tables, asserts nothing. Run with `npm run bench`. */
import { Bezier } from "bezier-js";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Alteration, Work } from "../../src/core/plan/work";
import { outlinePath } from "../../src/core/geometry/svgPath";
import { outlineOf } from "../../src/core/surgery/ring";
import { demoWorks } from "../../src/document/demo";
import { benchBrowser } from "./browser";
import { median, print, quantile, time } from "./table";

const [demo] = demoWorks();
if (demo === undefined) throw new Error("no demo work");

/** The whole answer, and the paths of all pieces of all sizes. */
function replan(work: Work): number {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  let letters = 0;
  for (const piece of [...plan.value.nest.sizes.flat(), ...plan.value.pieces]) letters += outlinePath(outlineOf(piece)).length;
  return letters;
}

/** A pattern object never seen before, so that nothing is remembered. */
const fresh = (work: Work): Work => ({ ...work, pattern: { ...work.pattern } });

/** What an independent library takes only to measure the arcs of the same outlines, its curves made beforehand. */
function arcsOnly(work: Work): () => number {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  const curves = [...plan.value.nest.sizes.flat(), ...plan.value.pieces].flatMap((piece) =>
    outlineOf(piece).flatMap(({ a, b, curve }) => (curve === null ? [] : [[a, curve.c1, curve.c2, b] as const])),
  );
  return () => curves.reduce((sum, [a, c1, c2, b]) => sum + new Bezier(a, c1, c2, b).length(), 0);
}

function withSizes(work: Work, count: number): Work {
  const sizes = Array.from({ length: count }, (_, i) => {
    const bust = 880 + (i - Math.floor(count / 2)) * 24;
    return { label: `s${i}`, bust, waist: bust - 180, hip: bust + 60 };
  });
  return { ...work, picks: { frame: `s${Math.floor(count / 2)}`, waist: Math.min(1, count - 1), hip: 1 }, pattern: { ...work.pattern, chart: { ...work.pattern.chart, sizes } } };
}

function withSlips(work: Work, count: number): Work {
  const alterations = Array.from({ length: count }, (_, i): Alteration => {
    const dart = { piece: i % 2 === 0 ? "front" : "back", dart: "waistDart" } as const;
    return { kind: "dartEnd", id: `s${i}`, dart, shorten: i % 4 < 2 ? 1 : -1, across: 0, hold: "fullness", giveBack: {} };
  });
  return { ...work, alterations };
}

const cold = time(() => replan(fresh(demo)), 400);
const warm = time(() => replan({ ...demo }), 400);
const arcs = time(arcsOnly(demo), 200);
print("A full replan of the demo work in Node, ms (aim: median at most 2)", ["what", "median", "95 %", "× bezier-js arcs"], [
  ["nothing remembered: draft, nest, pick, blend, darts, checks, all paths", median(cold), quantile(cold, 0.95), median(cold) / median(arcs)],
  ["nest remembered, as in a drag", median(warm), quantile(warm, 0.95), median(warm) / median(arcs)],
  ["bezier-js: only the arc lengths of the same outlines", median(arcs), quantile(arcs, 0.95), 1],
]);

print("Cost against the number of sizes, nothing remembered, ms", ["sizes", "median", "per size"], [2, 5, 10, 15, 20].map((count) => {
  const work = withSizes(demo, count);
  const m = median(time(() => replan(fresh(work)), 150));
  return [count, m, m / count];
}));

print("Cost against the number of slips, nest remembered, ms", ["slips", "median", "per slip over none"], (() => {
  const none = median(time(() => replan(withSlips(demo, 0)), 150));
  return [0, 5, 10, 20, 35, 50].map((count) => {
    const work = withSlips(demo, count);
    const m = median(time(() => replan({ ...work }), 150));
    return [count, m, count === 0 ? 0 : (m - none) / count];
  });
})());

await benchBrowser();
