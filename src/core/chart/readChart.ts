/** Reading a size chart for what is wrong with it, row by row. What blocks keeps it from being drafted from. */
import { checkMeasure, type MeasureMisreading } from "../measures/registry";
import type { MeasureName } from "../measures/measure";
import type { Mm } from "../units";
import { FEWEST_SIZES, MOST_SIZES, type CupVersion, type SizeChart, type SizeRow } from "./sizeChart";

export type BodyColumn = "bust" | "waist" | "hip";
export type FinishedColumn = "finishedBust" | "finishedWaist" | "finishedHip";
export type ChartColumn = "label" | BodyColumn | FinishedColumn;

export const BODY_COLUMNS: readonly BodyColumn[] = ["bust", "waist", "hip"];
/** Each finished column and the body column it is sewn for. */
export const FINISHED_COLUMNS: readonly { readonly column: FinishedColumn; readonly body: BodyColumn }[] = [
  { column: "finishedBust", body: "bust" },
  { column: "finishedWaist", body: "waist" },
  { column: "finishedHip", body: "hip" },
];

const MEASURE_OF: Readonly<Record<BodyColumn, MeasureName>> = {
  bust: "bustGirth",
  waist: "waistGirth",
  hip: "hipGirth",
};

/** What was found, and its numbers. */
type ChartFault =
  | { readonly code: "chart/too-few-sizes"; readonly count: number; readonly least: number }
  | { readonly code: "chart/too-many-sizes"; readonly count: number; readonly most: number }
  | { readonly code: "chart/label-empty" }
  | { readonly code: "chart/label-twice"; readonly label: string; readonly firstRow: number }
  | { readonly code: "chart/not-a-girth"; readonly value: number }
  | {
      readonly code: "chart/implausible" | "chart/unusual";
      readonly value: Mm;
      readonly least: Mm;
      readonly most: Mm;
      readonly misreadings: readonly MeasureMisreading[];
    }
  | { readonly code: "chart/out-of-order"; readonly value: Mm; readonly before: Mm; readonly beforeLabel: string }
  | { readonly code: "chart/repeated"; readonly beforeLabel: string }
  | {
      readonly code: "chart/not-growing" | "chart/falling";
      readonly value: Mm;
      readonly before: Mm;
      readonly beforeLabel: string;
    }
  | { readonly code: "chart/large-step"; readonly step: Mm; readonly most: Mm; readonly beforeLabel: string }
  | { readonly code: "chart/finished-impossible"; readonly value: Mm; readonly body: Mm; readonly half: boolean }
  | { readonly code: "chart/finished-below-body"; readonly value: Mm; readonly body: Mm }
  | {
      readonly code: "chart/finished-not-growing";
      readonly value: Mm;
      readonly before: Mm;
      readonly beforeLabel: string;
    }
  | { readonly code: "chart/difference-not-a-length"; readonly value: number }
  | {
      readonly code: "chart/difference-impossible" | "chart/difference-unusual";
      readonly value: Mm;
      readonly least: Mm;
      readonly most: Mm;
    }
  | {
      readonly code: "chart/difference-not-growing";
      readonly value: Mm;
      readonly before: Mm;
      readonly beforeLabel: string;
    };

export type ChartFinding = ChartFault & {
  readonly severity: "blocks" | "warns";
  /** What it is about: the sizes, the cup versions, or the difference the chart is drafted for. */
  readonly list: "sizes" | "cups" | "draftedDifference";
  /** Index in that list; null: the list as a whole. */
  readonly row: number | null;
  /** The cell; null: the row as a whole, or the difference of a cup version. */
  readonly column: ChartColumn | null;
};

/** mm of bust from one size to the next above which a size seems to be missing (our own choice). */
const LARGE_STEP: Mm = 150;

/** Finished girth over body girth outside of which no bodice is sewn: a flat half, or another unit (our own choice). */
const FINISHED_SHARE = { least: 0.7, most: 2 };
/** Twice a finished girth laid flat comes to this share of the body girth, at the least. */
const WHOLE_SHARE = 0.95;

/** mm. Bust less upper chest: what can be on a body, and what patterns are drafted for (our own choice). */
const DIFFERENCE = { least: -100, usualLeast: 0, usualMost: 250, most: 400 };

/** Everything found in a chart. */
export function readChart({ sizes, cups, draftedDifference }: SizeChart): readonly ChartFinding[] {
  const drafted = differenceFault(draftedDifference);
  return [
    ...readSizes(sizes),
    ...readCups(cups),
    ...(drafted === null ? [] : [{ ...drafted, list: "draftedDifference", row: null, column: null } as const]),
  ];
}

type Judged = ChartFault & Pick<ChartFinding, "severity">;

/** What was found about the sizes; `row` is the index of the size. */
export function readSizes(sizes: readonly SizeRow[]): readonly ChartFinding[] {
  const findings: ChartFinding[] = [];
  const whole = countFault(sizes.length);
  if (whole !== null) findings.push({ ...whole, list: "sizes", row: null, column: null });
  const firstRows = new Map<string, number>();
  sizes.forEach((size, row) => {
    const add = (column: ChartColumn | null, fault: Judged | null): void => {
      if (fault !== null) findings.push({ ...fault, list: "sizes", row, column });
    };
    add("label", labelFault(size.label, row, firstRows));
    const before = sizes[row - 1];
    for (const column of BODY_COLUMNS) add(column, girthFault(column, size[column]));
    for (const { column, body } of FINISHED_COLUMNS) {
      const value = size[column];
      if (value !== undefined) add(column, finishedFault(value, size[body], before?.[column], before?.label ?? ""));
    }
    if (before !== undefined) for (const [column, fault] of stepFaults(size, before)) add(column, fault);
  });
  return findings;
}

/** What was found about the cup versions; `row` is the index of the version. */
export function readCups(cups: readonly CupVersion[]): readonly ChartFinding[] {
  const findings: ChartFinding[] = [];
  const firstRows = new Map<string, number>();
  cups.forEach((cup, row) => {
    const add = (column: "label" | null, fault: Judged | null): void => {
      if (fault !== null) findings.push({ ...fault, list: "cups", row, column });
    };
    add("label", labelFault(cup.label, row, firstRows));
    add(null, differenceFault(cup.difference));
    const before = cups[row - 1];
    if (before !== undefined && cup.difference <= before.difference) {
      add(null, {
        code: "chart/difference-not-growing",
        severity: "blocks",
        value: cup.difference,
        before: before.difference,
        beforeLabel: before.label,
      });
    }
  });
  return findings;
}

const rank = (value: number): number => (Number.isFinite(value) ? value : Number.MAX_VALUE);

/** The sizes from the smallest to the largest. Girths that are no numbers go last. */
export function sortRows(sizes: readonly SizeRow[]): readonly SizeRow[] {
  return sizes.toSorted(
    (a, b) => rank(a.bust) - rank(b.bust) || rank(a.waist) - rank(b.waist) || rank(a.hip) - rank(b.hip),
  );
}

function countFault(count: number): Judged | null {
  if (count < FEWEST_SIZES) return { code: "chart/too-few-sizes", severity: "blocks", count, least: FEWEST_SIZES };
  if (count > MOST_SIZES) return { code: "chart/too-many-sizes", severity: "blocks", count, most: MOST_SIZES };
  return null;
}

/** Picks and cut lines go by label, so each needs its own. */
function labelFault(label: string, row: number, firstRows: Map<string, number>): Judged | null {
  const plain = label.trim();
  if (plain === "") return { code: "chart/label-empty", severity: "blocks" };
  const firstRow = firstRows.get(plain);
  if (firstRow !== undefined) return { code: "chart/label-twice", severity: "blocks", label: plain, firstRow };
  firstRows.set(plain, row);
  return null;
}

const isGirth = (value: number): boolean => Number.isFinite(value) && value > 0;

function girthFault(column: BodyColumn, value: Mm): Judged | null {
  if (!isGirth(value)) return { code: "chart/not-a-girth", severity: "blocks", value };
  const verdict = checkMeasure(MEASURE_OF[column], value);
  if (verdict.state === "ok") return null;
  const { least, most, misreadings } = verdict;
  return verdict.state === "impossible"
    ? { code: "chart/implausible", severity: "blocks", value, least, most, misreadings }
    : { code: "chart/unusual", severity: "warns", value, least, most, misreadings };
}

function finishedFault(value: Mm, body: Mm, before: Mm | undefined, beforeLabel: string): Judged | null {
  if (!isGirth(value)) return { code: "chart/not-a-girth", severity: "blocks", value };
  if (isGirth(body)) {
    if (value < FINISHED_SHARE.least * body || value > FINISHED_SHARE.most * body) {
      const half = value < body && 2 * value >= WHOLE_SHARE * body;
      return { code: "chart/finished-impossible", severity: "blocks", value, body, half };
    }
    if (value < body) return { code: "chart/finished-below-body", severity: "warns", value, body };
  }
  if (before !== undefined && value <= before) {
    return { code: "chart/finished-not-growing", severity: "warns", value, before, beforeLabel };
  }
  return null;
}

/** What is wrong with the step from one size to the next. */
function stepFaults(size: SizeRow, before: SizeRow): readonly (readonly [ChartColumn | null, Judged])[] {
  const beforeLabel = before.label;
  if (![size, before].every((row) => BODY_COLUMNS.every((column) => isGirth(row[column])))) return [];
  if (BODY_COLUMNS.every((column) => size[column] === before[column])) {
    return [[null, { code: "chart/repeated", severity: "blocks", beforeLabel }]];
  }
  if (size.bust < before.bust) {
    return [
      ["bust", { code: "chart/out-of-order", severity: "blocks", value: size.bust, before: before.bust, beforeLabel }],
    ];
  }
  const faults: (readonly [ChartColumn, Judged])[] = [];
  for (const column of BODY_COLUMNS) {
    const value = size[column];
    const last = before[column];
    // Two sizes may share a waist or a hip, but the bust tells them apart.
    if (value < last)
      faults.push([column, { code: "chart/falling", severity: "blocks", value, before: last, beforeLabel }]);
    else if (value === last) {
      const severity = column === "bust" ? "blocks" : "warns";
      faults.push([column, { code: "chart/not-growing", severity, value, before: last, beforeLabel }]);
    }
  }
  const step = size.bust - before.bust;
  if (step > LARGE_STEP)
    faults.push(["bust", { code: "chart/large-step", severity: "warns", step, most: LARGE_STEP, beforeLabel }]);
  return faults;
}

function differenceFault(value: Mm): Judged | null {
  if (!Number.isFinite(value)) return { code: "chart/difference-not-a-length", severity: "blocks", value };
  const { least, usualLeast, usualMost, most } = DIFFERENCE;
  if (value < least || value > most)
    return { code: "chart/difference-impossible", severity: "blocks", value, least, most };
  if (value < usualLeast || value > usualMost) {
    return { code: "chart/difference-unusual", severity: "warns", value, least: usualLeast, most: usualMost };
  }
  return null;
}
