/** Two versions of a work held side by side: what was decided otherwise, what came of it, and what asked for it. */
import type { Half } from "../decisions/alteration";
import type { Observation, TakenAnswer, Trial } from "../decisions/trial";
import type { Decided } from "../decisions/decided";
import type { DartFigures } from "../dart/dartFigures";
import { coneHeight } from "../dart/fullness";
import type { MeasureName } from "../measures/measure";
import { MEASURE_NAMES } from "../measures/measure";
import { measuresOf } from "../measures/tape";
import type { Ease } from "../decisions/pattern";
import { isSameDart, type DartRef } from "../pattern/piece";
import type { Plan, PlannedDart, PlannedLevel } from "../plan/plan";
import { isSame } from "../same";
import { READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";
import { alterationRows, type AlterationRow } from "./alterationRows";

/** One thing before and after; null: not there. */
interface Pair<T> {
  readonly before: T | null;
  readonly after: T | null;
}

/** A girth round the whole garment. */
interface LevelRow extends Pair<PlannedLevel> {
  readonly level: PlannedLevel["level"];
  /** Finished girth, after less before; null where one of them has none. */
  readonly by: Mm | null;
}

interface DartRow extends Pair<DartFigures> {
  readonly ref: DartRef;
  /** Where the halves differ in either version. */
  readonly half: Half | null;
  readonly isChanged: boolean;
}

interface MeasureRow extends Pair<Mm> {
  readonly measure: MeasureName;
}

/** What is compared: the decisions, and the plan that follows from them. */
interface Compared {
  readonly decided: Decided;
  readonly plan: Plan;
}

export interface Comparison {
  readonly alterations: readonly AlterationRow[];
  /** Sizes by their labels. */
  readonly baseSize: Pair<string>;
  /** One for each half where they are not of one cup in either version. */
  readonly cups: readonly (Pair<string> & { readonly half: Half | null })[];
  /** Whole change of the bust by alteration, as it is made. */
  readonly bust: { readonly before: Mm; readonly after: Mm };
  /** Bust, waist and hip. */
  readonly levels: readonly LevelRow[];
  /** Measures that are not the same. */
  readonly measures: readonly MeasureRow[];
  /** Levels at which another ease is wanted; null: the pattern's. */
  readonly ease: readonly (Pair<Mm> & { readonly level: keyof Ease })[];
  /** By their names; it is another too where its chart, its style or its lines are. */
  readonly pattern: { readonly before: string; readonly after: string; readonly isChanged: boolean };
  readonly darts: readonly DartRow[];
}

export function compareVersions(from: Compared, to: Compared): Comparison {
  const sizes = [from, to].map(({ plan }) => plan.sizing);
  return {
    alterations: alterationRows(from.decided.alterations, to.decided.alterations),
    baseSize: { before: from.plan.sizing.baseSize.label, after: to.plan.sizing.baseSize.label },
    cups: cupRows(from.plan, to.plan),
    bust: { before: sizes[0]?.bust.alteration ?? 0, after: sizes[1]?.bust.alteration ?? 0 },
    levels: (["bust", "waist", "hip"] as const).flatMap((level) => {
      const [before, after] = [from, to].map(({ plan }) => plan.levels.find((one) => one.level === level) ?? null);
      if (before == null && after == null) return [];
      const by = before == null || after == null ? null : after.finished - before.finished;
      return [{ level, before: before ?? null, after: after ?? null, by }];
    }),
    measures: measureRows(from.decided, to.decided),
    ease: easeRows(from.decided, to.decided),
    pattern: {
      before: from.decided.pattern.name,
      after: to.decided.pattern.name,
      isChanged: !isSame(from.decided.pattern, to.decided.pattern),
    },
    darts: dartRows(from.plan, to.plan),
  };
}

function cupRows(from: Plan, to: Plan): Comparison["cups"] {
  const on = (half: Half) => ({
    before: from[half].sizing.cup.label,
    after: to[half].sizing.cup.label,
  });
  const [left, right] = [on("left"), on("right")];
  return isSame(left, right)
    ? [{ half: null, ...left }]
    : [
        { half: "left", ...left },
        { half: "right", ...right },
      ];
}

function measureRows(from: Decided, to: Decided): readonly MeasureRow[] {
  const [was, is] = [measuresOf(from.tapes), measuresOf(to.tapes)];
  return MEASURE_NAMES.flatMap((measure) => {
    const [before, after] = [was[measure] ?? null, is[measure] ?? null];
    const isAlike = before === null || after === null ? before === after : Math.abs(after - before) < READS_AS_NOTHING;
    return isAlike ? [] : [{ measure, before, after }];
  });
}

const easeRows = (from: Decided, to: Decided): Comparison["ease"] =>
  (["bust", "waist", "hip"] as const).flatMap((level) => {
    const [before, after] = [from.easeWanted[level] ?? null, to.easeWanted[level] ?? null];
    return before === after ? [] : [{ level, before, after }];
  });

function dartRows(from: Plan, to: Plan): readonly DartRow[] {
  const isAlike = from.left === from.right && to.left === to.right;
  const onHalf = (half: Half): readonly DartRow[] => {
    const [was, is] = [from[half].darts, to[half].darts];
    const refs = [...is, ...was]
      .map(({ ref }) => ref)
      .filter((ref, index, all) => all.findIndex((one) => isSameDart(one, ref)) === index);
    return refs.map((ref) => {
      const [one, other] = [was, is].map((darts) => darts.find((dart) => isSameDart(dart.ref, ref)) ?? null);
      // Fullness is told at one radius, or it would differ where the dart does not.
      const radius = Math.min(one?.coneRadius ?? Infinity, other?.coneRadius ?? Infinity);
      const [before = null, after = null] = [one, other].map((dart) => (dart == null ? null : statedAt(dart, radius)));
      return { ref, half: isAlike ? null : half, before, after, isChanged: !isDrawnAlike(before, after) };
    });
  };
  if (isAlike) return onHalf("left");
  // Alike on both halves in both versions: told once.
  const [left, right] = [onHalf("left"), onHalf("right")];
  const told = left.map((row): { readonly row: DartRow; readonly twin: DartRow | undefined } => ({
    row,
    twin: right.find(({ ref }) => isSameDart(ref, row.ref)),
  }));
  return [
    ...told.flatMap(({ row, twin }): readonly DartRow[] => {
      if (twin === undefined) return [row];
      const isTwin = isDrawnAlike(row.before, twin.before) && isDrawnAlike(row.after, twin.after);
      return isTwin ? [{ ...row, half: null }] : [row, twin];
    }),
    ...right.filter(({ ref }) => !left.some((row) => isSameDart(row.ref, ref))),
  ];
}

const statedAt = ({ drawn }: PlannedDart, radius: Mm): DartFigures => ({
  ...drawn,
  fullness: coneHeight(drawn.angle, radius),
});

const near = (one: Mm, other: Mm): boolean => Math.abs(one - other) < READS_AS_NOTHING;

function isDrawnAlike(a: DartFigures | null, b: DartFigures | null): boolean {
  if (a === null || b === null) return a === b;
  return (
    near(a.intake, b.intake) &&
    near(a.fullness, b.fullness) &&
    near(a.legInner, b.legInner) &&
    near(a.legOuter, b.legOuter) &&
    near(a.apex.x, b.apex.x) &&
    near(a.apex.y, b.apex.y) &&
    near(a.inner.x, b.inner.x) &&
    near(a.inner.y, b.inner.y)
  );
}

/** A taken answer that asked for a change, with the lines of the record that spoke for it. */
export interface Reason {
  readonly trial: Trial;
  /** Of the work's trials, counted from 1. */
  readonly number: number;
  readonly taken: TakenAnswer;
  readonly half: Half | null;
  readonly because: readonly Observation[];
}

/**
 * Answers that were taken between two versions, the older first, by what they changed.
 *
 * @param trials all trials, the newest first
 * @param from index of the trial that is the older version
 * @param to index of the one that is the newer; -1: now
 * @param ids the alteration in either version; "bust": that of the picks
 */
export function reasonsFor(
  trials: readonly Trial[],
  [from, to]: readonly [number, number],
  ids: readonly string[],
): readonly Reason[] {
  return trials
    .flatMap((trial, index) => {
      if (index > from || index <= to) return [];
      return (trial.taken ?? [])
        .filter(({ alterations }) => alterations.some((id) => ids.includes(id)))
        .map((taken): Reason => ({
          trial,
          number: trials.length - index,
          taken,
          half: taken.half ?? null,
          because: trial.observations.filter(({ id }) => taken.because.includes(id)),
        }));
    })
    .toReversed();
}
