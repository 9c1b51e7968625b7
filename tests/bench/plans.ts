/** How long a plan takes, and what one more size or alteration costs. */
import type { Alteration } from "../../src/core/decisions/alteration";
import { Bezier } from "bezier-js";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import type { Cubic } from "../../src/core/geometry/bezier";
import { cubicLength } from "../../src/core/geometry/bezierLength";
import { outlinePath } from "../../src/core/geometry/svgPath";
import { outlineOf } from "../../src/core/pattern/ring";
import { demoWorks } from "../../src/document/demo";
import { median, print, quantile, quickest, slope, time } from "./table";
import { wholePlan } from "./wholePlan";

const demo = invariant(demoWorks()[0], "demo work");

/** The whole answer, and the paths of all pieces of all sizes. */
function replan(work: Work): number {
  const plan = wholePlan(work);
  let letters = plan.checks.length + plan.checklist.length;
  for (const piece of [...plan.nest.sizes.flat(), ...plan.left.pieces]) letters += outlinePath(outlineOf(piece)).length;
  return letters;
}

/** A pattern object never seen before, so that nothing is remembered. */
const fresh = (work: Work): Work => ({ ...work, pattern: { ...work.pattern } });

/** Every curve of the outlines of a plan: of all sizes printed, and of what is cut. */
function curvesOf(work: Work): readonly Cubic<"piece">[] {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return [...plan.value.nest.sizes.flat(), ...plan.value.left.pieces].flatMap((piece) =>
    outlineOf(piece).flatMap(({ a, b, curve }) => (curve === null ? [] : [{ a, c1: curve.c1, c2: curve.c2, b }])),
  );
}

/** What an independent library takes only to measure the arcs of the same outlines, its curves made beforehand. */
function arcsOnly(work: Work): () => number {
  const curves = curvesOf(work).map(({ a, c1, c2, b }) => new Bezier(a, c1, c2, b));
  return () => curves.reduce((sum, curve) => sum + curve.length(), 0);
}

/** Steps of the sum that lengths are held against: halved once more it changes by less than 1e-11 mm on these curves. */
const FINE_STEPS = 4096;

/** The arc length by Simpson's rule on the speed, by many small steps. */
function fineLength({ a, c1, c2, b }: Cubic<"piece">): number {
  const speed = (t: number): number => {
    const s = 1 - t;
    const derivative = (p: number, q: number, r: number, u: number): number =>
      3 * (s * s * (q - p) + 2 * s * t * (r - q) + t * t * (u - r));
    return Math.hypot(derivative(a.x, c1.x, c2.x, b.x), derivative(a.y, c1.y, c2.y, b.y));
  };
  let sum = speed(0) + speed(1);
  for (let i = 1; i < FINE_STEPS; i += 1) sum += (i % 2 === 1 ? 4 : 2) * speed(i / FINE_STEPS);
  return sum / (3 * FINE_STEPS);
}

/** Ours and the library's on the very same curves, made beforehand for both, by turns: how quick, and how exact. */
function printArcs(works: readonly (readonly [string, Work])[]): void {
  const rows = works.flatMap(([what, work]) => {
    const ours = curvesOf(work);
    const theirs = ours.map(({ a, c1, c2, b }) => new Bezier(a, c1, c2, b));
    const fine = ours.map(fineLength);
    const offBy = (lengths: readonly number[]): string =>
      Math.max(...lengths.map((length, at) => Math.abs(length - (fine[at] ?? NaN)))).toExponential(1);
    const own = time(() => ours.reduce((sum, curve) => sum + cubicLength(curve), 0), 400);
    const library = time(() => theirs.reduce((sum, curve) => sum + curve.length(), 0), 400);
    const each = (times: readonly number[]): number => (1e6 * quickest(times)) / ours.length;
    return [
      [what, ours.length, "ours", each(own), 1, offBy(ours.map(cubicLength))],
      [
        what,
        ours.length,
        "bezier-js",
        each(library),
        quickest(library) / quickest(own),
        offBy(theirs.map((c) => c.length())),
      ],
    ] as const;
  });
  print(
    "Arc lengths of the very same curves, each in ns by the quickest of 400 rounds, and the most that any is off a fine sum, mm",
    ["what", "curves", "by", "ns each", "× ours", "off, mm"],
    rows,
  );
}

function withSizes(work: Work, count: number): Work {
  const sizes = Array.from({ length: count }, (_, i) => {
    const bust = 880 + (i - Math.floor(count / 2)) * 24;
    return { label: `s${i}`, bust, waist: bust - 180, hip: bust + 60 };
  });
  return {
    ...work,
    picks: { baseSize: `s${Math.floor(count / 2)}`, waist: Math.min(1, count - 1), hip: 1 },
    pattern: { ...work.pattern, chart: { ...work.pattern.chart, sizes } },
  };
}

function withAlterations(work: Work, count: number): Work {
  const alterations = Array.from({ length: count }, (_, i): Alteration => {
    const dart = { piece: i % 2 === 0 ? "front" : "back", dart: "waistDart" } as const;
    return {
      kind: "dartEnd",
      id: `s${i}`,
      dart,
      shorten: i % 4 < 2 ? 1 : -1,
      across: 0,
      hold: "fullness",
      giveBack: {},
    };
  });
  return { ...work, alterations };
}

/** The same work on pieces read from a file and on the stand-in. */
function printOwn(own: Work, standIn: Work): void {
  const dragged = (work: Work) => {
    let amount = 3;
    return (): number => {
      amount += 0.001;
      return replan({ ...work, alterations: [{ kind: "fit", id: "drag", fit: "armholeDepth", amount }] });
    };
  };
  const typed = (work: Work) => {
    const [tape] = work.tapes;
    let waist = 740;
    return (): number => {
      waist += 0.01;
      const readings = { ...tape?.readings, waistGirth: [waist] };
      return replan({ ...work, tapes: [{ ...invariant(tape, "tape"), readings }] });
    };
  };
  print(
    "A replan on pieces read from a file, and of the same work on the stand-in, ms (aim: no slower)",
    ["what", "own, median", "stand-in, median"],
    [
      ["a handle dragged", median(time(dragged(own), 100)), median(time(dragged(standIn), 100))],
      ["a waist typed", median(time(typed(own), 100)), median(time(typed(standIn), 100))],
    ],
  );
}

/** One line of times for each count, and what one more costs: by the quickest runs, and over the upper half of the counts. */
function printCosts(
  title: string,
  one: string,
  counts: readonly number[],
  replanOf: (count: number) => () => unknown,
): void {
  const rows = counts.map((count) => {
    const times = time(replanOf(count), 150);
    return [count, median(times), quickest(times)] as const;
  });
  const points = rows.map(([count, , least]) => [count, least] as const);
  print(title, [`${one}s`, "median", "quickest"], rows);
  const upper = points.slice(Math.floor(points.length / 2));
  print(
    `  each ${one} more costs, ms by the quickest runs (no worse than linear: the second no larger than the first)`,
    ["over all", "over the upper half"],
    [[slope(points), slope(upper)]],
  );
}

/** Eight alterations on cups on a midriff band: fits, redraws and what makes another thing of a dart. */
const CHAIN: readonly Alteration[] = [
  { kind: "fit", id: "a", fit: "waistDropFront", amount: 6 },
  { kind: "fit", id: "b", fit: "bandDepth", amount: 8 },
  {
    kind: "dartEnd",
    id: "c",
    dart: { piece: "cup", dart: "underBustDart" },
    shorten: 5,
    across: 2,
    hold: "fullness",
    giveBack: {},
  },
  { kind: "dartMouth", id: "d", dart: { piece: "back", dart: "underBustDart" }, inner: 1, outer: 1, giveBack: {} },
  { kind: "fit", id: "e", fit: "edgeGape", amount: 6 },
  { kind: "fit", id: "f", fit: "swayBack", amount: 6 },
  { kind: "fit", id: "g", fit: "strapPlace", amount: 5 },
  { kind: "fit", id: "h", fit: "armholeDepth", amount: 4 },
];
export function benchPlans(): void {
  const cold = time(() => replan(fresh(demo)), 400);
  const warm = time(() => replan({ ...demo }), 400);
  const measured = time(() => replan({ ...demo, tapes: [...demo.tapes] }), 400);
  const arcs = time(arcsOnly(demo), 400);
  const row = (what: string, times: readonly number[]) => [
    what,
    median(times),
    quantile(times, 0.95),
    quickest(times),
    median(times) / median(arcs),
    quickest(times) / quickest(arcs),
  ];
  print(
    "A full replan of the demo work in Node, ms (aim: median at most 2)",
    ["what", "median", "95 %", "quickest", "× bezier-js arcs", "quickest × quickest"],
    [
      row("nothing remembered: draft, nest, pick, blend, darts, checks, all paths", cold),
      row("nest remembered, as when a measure changes", measured),
      row("picks remembered too, as in a drag", warm),
      row("bezier-js: only the arc lengths of the same outlines", arcs),
    ],
  );

  const midriff = invariant(
    demoWorks().find(({ pattern }) => pattern.style === "midriff"),
    "demo work of that style",
  );
  const midriffCold = time(() => replan(fresh(midriff)), 400);
  print(
    "A full replan with nothing remembered, ms (aim: median at most 2 on the hip demo)",
    ["demo", "sizes", "median", "95 %", "quickest"],
    (
      [
        ["bodice and basque to the hip", demo, cold],
        ["cups on a midriff band", midriff, midriffCold],
      ] as const
    ).map(([what, { pattern }, times]) => [
      what,
      pattern.chart.sizes.length,
      median(times),
      quantile(times, 0.95),
      quickest(times),
    ]),
  );
  printArcs([
    ["hip demo", demo],
    ["midriff demo", midriff],
  ]);

  const own = invariant(
    demoWorks().find(({ pattern: { own: pieces } }) => pieces?.inUse === true),
    "demo work on its own pieces",
  );
  const { own: _, ...chartAlone } = own.pattern;
  printOwn(own, { ...own, pattern: chartAlone });

  printCosts("Cost against the number of sizes, nothing remembered, ms", "size", [2, 5, 8, 11, 14, 17, 20], (count) => {
    const work = withSizes(demo, count);
    return () => replan(fresh(work));
  });

  printCosts(
    "Cost against the number of slips, picks remembered, every slip made again, ms",
    "alteration",
    [0, 5, 10, 20, 30, 40, 50],
    (count) => {
      const work = withAlterations(demo, count);
      return () => replan({ ...work, alterations: work.alterations.map((a) => ({ ...a })) });
    },
  );

  const chained: Work = { ...midriff, alterations: CHAIN };
  const refused = derivePlan(chained);
  if (!refused.ok) throw new Error(refused.failure.code);
  for (const { id, outcome } of refused.value.ledger)
    if (!outcome.ok) console.log(`  slip ${id} is refused: ${outcome.failure.code}`);
  const again = (of: Alteration): Alteration => ({ ...of });
  print(
    `Eight alterations on cups on a band, ${midriff.pattern.chart.sizes.length} sizes, ms (aim: median at most 4)`,
    ["what", "median", "95 %", "quickest"],
    (
      [
        ["picks remembered, all eight made again", () => ({ ...chained, alterations: CHAIN.map(again) })],
        [
          "the last one changed, as in a drag",
          () => ({ ...chained, alterations: CHAIN.map((a, i) => (i === CHAIN.length - 1 ? again(a) : a)) }),
        ],
        ["the first one changed", () => ({ ...chained, alterations: CHAIN.map((a, i) => (i === 0 ? again(a) : a)) })],
        ["a measure changed too", () => ({ ...chained, tapes: [...chained.tapes], alterations: CHAIN.map(again) })],
        ["nothing remembered", () => fresh({ ...chained, alterations: CHAIN.map(again) })],
      ] as const
    ).map(([what, workOf]) => {
      const times = time(() => derivePlan(workOf()), 150);
      return [what, median(times), quantile(times, 0.95), quickest(times)];
    }),
  );
  printCosts(
    "Cost against the length of that chain, picks remembered, every slip made again, ms",
    "alteration",
    [0, 1, 2, 3, 4, 5, 6, 7, 8],
    (count) => () => derivePlan({ ...chained, alterations: CHAIN.slice(0, count).map(again) }),
  );
}
