/**
 * One work for each seed, of all that works are made of: bodies, charts, styles, chains of alterations on either half, whole
 * dresses, pieces from a file, answers to trials, garments begun from a base. The same work for the same seed.
 */
import * as fc from "fast-check";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES, type Pattern } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { workFromBase } from "../../../src/core/standing/fromBase";
import { anyAmount } from "../../support/amounts";
import { anyFit, anyOnDart } from "../../support/anyChainWork";
import { anyDressedWork } from "../../support/anyDressedWork";
import { anyDress, anyDressWork } from "../../support/arbitraryDress";
import { chartOf } from "../../support/foreign/asTraced";
import { drawingOf } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import { bodyOfSize, dartsOf } from "../../support/foreign/foreignWork";
import { harshChainWork } from "../../support/harshChainWork";
import { testWork } from "../../support/works";
import { ADVISORS } from "../trial/advisors";
import { chancesOf } from "../trial/chances";
import { residualsOf } from "../trial/body";
import { lookInMirror } from "../trial/mirror";
import { wearerOf } from "../trial/wearers";

type LoadKind = "dressed" | "harsh" | "demo" | "own" | "trial";

interface LoadCase {
  readonly seed: number;
  readonly kind: LoadKind;
  readonly work: Work;
}

/** How many in a hundred are of each kind; the rest is a wearer's chain with a dress. */
const SHARES = [
  ["harsh", 30],
  ["demo", 8],
  ["own", 8],
  ["trial", 2],
] as const;

export function loadCase(seed: number): LoadCase {
  const kind = kindOf(seed);
  return { seed, kind, work: WORK_OF[kind](seed) };
}

/** Seeds that follow each other are spread over the kinds, so that any stretch of them has all. */
function kindOf(seed: number): LoadKind {
  let left = (((seed * 37) % 100) + 100) % 100;
  for (const [kind, share] of SHARES) {
    if (left < share) return kind;
    left -= share;
  }
  return "dressed";
}

const drawnFrom =
  (arbitrary: fc.Arbitrary<Work>) =>
  (seed: number): Work => {
    const [work = testWork] = fc.sample(arbitrary, { seed, numRuns: 1 });
    return work;
  };

/** Rising rows as somebody might print them: in centimetres, inches or millimetres, steps even or growing, cups or none. */
const anyChart: fc.Arbitrary<SizeChart> = fc
  .record({
    first: fc.integer({ min: 700, max: 900 }),
    steps: fc.array(fc.integer({ min: 10, max: 80 }), { minLength: 0, maxLength: 14 }),
    waist: fc.integer({ min: 120, max: 260 }),
    hip: fc.integer({ min: -20, max: 130 }),
    lean: fc.integer({ min: -8, max: 8 }),
    to: fc.constantFrom(1, 5, 10, 12.7, 25.4),
    drafted: fc.integer({ min: 10, max: 90 }),
    cups: fc.array(fc.integer({ min: 5, max: 40 }), { maxLength: 4 }),
  })
  .map(({ first, steps, waist, hip, lean, to, drafted, cups }) => {
    const round = (value: number): number => Math.round(value / to) * to;
    let bust = first;
    const rows = [0, ...steps].map((step, at) => {
      bust += step;
      return {
        label: String(at + 1),
        bust: round(bust),
        waist: round(bust - waist + lean * at),
        hip: round(bust + hip),
      };
    });
    let difference = drafted - 15;
    return {
      sizes: rows,
      draftedDifference: drafted,
      cups: cups.map((more, at) => {
        difference += more;
        return { label: "ABCDE"[at] ?? "F", difference };
      }),
    };
  });

const anyEase = fc.record({ bust: anyAmount(-20, 160), waist: anyAmount(-20, 160), hip: anyAmount(-20, 160) });

/** Now and then another chart, another ease, picks of her own, a half's own cup, inches. */
const varied = (works: fc.Arbitrary<Work>): fc.Arbitrary<Work> =>
  fc
    .record({
      work: works,
      chart: fc.option(anyChart, { freq: 1, nil: undefined }),
      ease: fc.option(anyEase, { freq: 1, nil: undefined }),
      unit: fc.constantFrom("cm" as const, "in" as const),
      wanted: fc.option(anyEase, { freq: 1, nil: undefined }),
      cup: fc.option(fc.constantFrom(0, 1, 2), { freq: 1, nil: undefined }),
      half: fc.constantFrom("left" as const, "right" as const),
      more: fc.record({
        bustPointWidth: fc.option(fc.integer({ min: 140, max: 260 }), { nil: undefined }),
        sideNeckToBustPoint: fc.option(fc.integer({ min: 210, max: 370 }), { nil: undefined }),
        backWaistLength: fc.option(fc.integer({ min: 340, max: 470 }), { nil: undefined }),
        underBustGirth: fc.option(fc.integer({ min: 620, max: 1100 }), { nil: undefined }),
      }),
      bustRadius: fc.option(anyAmount(40, 160), { nil: undefined }),
      age: fc.option(fc.integer({ min: 14, max: 95 }), { nil: undefined }),
    })
    .map(({ work, chart, ease, unit, wanted, cup, half, more, bustRadius, age }): Work => {
      const pattern = {
        ...work.pattern,
        ...(chart === undefined ? {} : { chart }),
        ...(ease === undefined ? {} : { ease }),
      };
      const label = cup === undefined ? undefined : pattern.chart.cups[cup]?.label;
      const [tape = { readings: {} }, ...older] = work.tapes;
      const readings = { ...tape.readings };
      for (const [name, value] of Object.entries(more))
        if (value !== undefined) Object.assign(readings, { [name]: [value] });
      const picks = chart === undefined ? work.picks : onOtherChart(work.picks);
      return {
        ...work,
        unit,
        pattern,
        tapes: [{ ...tape, readings }, ...older],
        picks: { ...picks, ...(label === undefined ? {} : { halfCups: { [half]: label } }) },
        easeWanted: wanted ?? work.easeWanted,
        ...(bustRadius === undefined ? {} : { bustRadius }),
        ...(age === undefined ? {} : { age }),
      };
    });

/** Picks name lines of their chart. */
const onOtherChart = ({ bustAlteration }: Work["picks"]): Work["picks"] =>
  bustAlteration === undefined ? {} : { bustAlteration };

/** Chains on a side's worth of hard cases may wear a dress too. */
const harsh = fc
  .record({
    work: fc.constantFrom(...STYLE_NAMES).chain(harshChainWork),
    dress: fc.option(anyDress, { nil: undefined, freq: 1 }),
  })
  .map(({ work, dress }): Work => (dress === undefined ? work : { ...work, dress }));

/** Patterns of other houses that are drawn as files: few, since each has to be read. */
const FILES = 10;

interface OwnFile {
  readonly pattern: Pattern;
  readonly foreign: ReturnType<typeof foreignNest>;
}

const read = new Map<number, OwnFile>();

function ownFile(number: number): OwnFile {
  const known = read.get(number);
  if (known !== undefined) return known;
  const foreign = foreignNest({ seed: 500 + number });
  const { drawing } = drawingOf(foreign, { seed: number, titles: true, darts: number % 3 === 0 ? "cut" : "inside" });
  const pattern: Pattern = {
    ...testWork.pattern,
    name: `File ${number} (invented)`,
    chart: chartOf(foreign, number % 2 === 0),
    ease: foreign.ease,
    style: foreign.style,
    length: foreign.options.basque ? "hip" : "waist",
    own: { file: `file-${number}.svg`, drawing, pieces: [], inUse: true },
  };
  const file = { pattern, foreign };
  read.set(number, file);
  return file;
}

const own = fc.nat(FILES - 1).chain((number) => {
  const { pattern, foreign } = ownFile(number);
  const [first, ...rest] = dartsOf(foreign);
  const onDarts = first === undefined ? anyFit : fc.constantFrom(first, ...rest).chain(anyOnDart);
  return fc
    .record({
      size: fc.nat(foreign.chart.length - 1),
      more: fc.record({
        bust: anyAmount(-30, 30),
        out: anyAmount(-40, 80),
        waist: anyAmount(-60, 90),
        hip: anyAmount(-60, 90),
      }),
      alterations: fc.array(fc.oneof({ weight: 3, arbitrary: anyFit }, { weight: 2, arbitrary: onDarts }), {
        maxLength: 8,
      }),
      dress: fc.option(anyDress, { nil: undefined, freq: 1 }),
    })
    .map(({ size, more, alterations, dress }): Work => ({
      ...testWork,
      name: pattern.name,
      tapes: bodyOfSize(foreign, size, more),
      pattern,
      alterations: numbered(alterations),
      ...(dress === undefined ? {} : { dress }),
    }));
});

const numbered = (alterations: readonly Alteration[]): readonly Alteration[] =>
  alterations.map((one, at) => ({ ...one, id: `${at}-${one.id}` }));

/** Fittings that are played. */
const MOST_TRIALS = 2;
const MOST_TRUTHS = 3;

/** A wearer's trials, answered by the planner; now and then kept, and the next garment begun from it. */
function tried(seed: number): Work {
  const chances = chancesOf(seed);
  const wearer = wearerOf(seed, 1 + (seed % MOST_TRUTHS));
  const { plan, truths, needs } = wearer;
  let work: Work = wearer.work;
  const count = 1 + Math.floor(chances.from(0, MOST_TRIALS));
  for (let number = 1; number <= count; number += 1) {
    const seen = { work, plan, residuals: residualsOf(needs, plan), truths, id: `trial-${number}`, chances };
    const trial = lookInMirror(seen);
    const recorded: Work = { ...work, trials: [trial, ...(work.trials ?? [])] };
    work = ADVISORS.planner?.(trial, recorded) ?? recorded;
  }
  const [last] = work.trials ?? [];
  if (last === undefined || !chances.is(0.5)) return work;
  const kept = applyCommand(work, { kind: "setVerdict", trial: last.id, verdict: "keep" });
  const base = applyCommand(kept, { kind: "setBase", trial: last.id, isBase: true });
  const [trial = last] = base.trials ?? [];
  const begun = workFromBase(base, trial, `${base.name} again`);
  const [dress = {}] = fc.sample(anyDress, { seed, numRuns: 1 });
  return { ...begun, dress: { ...begun.dress, ...dress } };
}

const WORK_OF: Readonly<Record<LoadKind, (seed: number) => Work>> = {
  dressed: drawnFrom(varied(anyDressedWork(8))),
  harsh: drawnFrom(varied(harsh)),
  demo: drawnFrom(anyDressWork),
  own: drawnFrom(own),
  trial: tried,
};
