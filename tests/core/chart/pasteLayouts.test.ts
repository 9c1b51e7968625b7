/** A chart written out in many ways, as sheets do it, is read back as it is, or refused: never as another chart. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pasteChart } from "../../../src/core/chart/pasteChart";
import type { SizeRow } from "../../../src/core/chart/sizeChart";
import { runsOf } from "../../support/share";

type Unit = "cm" | "in";
type Girth = "bust" | "waist" | "hip" | "finishedBust" | "finishedWaist" | "finishedHip" | "other";

interface Column {
  readonly girth: Girth;
  readonly head: string;
  /** Half units: whole ones and halves, as charts print them. */
  readonly halves: readonly number[];
}

interface Sheet {
  readonly unit: Unit;
  readonly labels: readonly string[];
  readonly columns: readonly Column[];
}

const HEADS: Readonly<Record<Girth, readonly string[]>> = {
  bust: ["Bust", "Chest", "Bust/Chest", "Bust girth", "Full bust", "To fit bust"],
  waist: ["Waist", "Waistline", "Waist girth"],
  hip: ["Hip", "Hips", "Full hip", "Hips/Seat", 'Hip - 9" below waist', "Hip (20 cm below waist)"],
  finishedBust: ["Finished bust", "Bust finished", "Finished garment bust"],
  finishedWaist: ["Finished waist", "Garment waist"],
  finishedHip: ["Finished hip", "Hip (finished)"],
  other: ["Height", "Back length", "High hip", "Under bust", "Back waist length", "High bust", "Waist to hip"],
};

const sheetOf = fc
  .record({
    unit: fc.constantFrom<Unit>("cm", "in"),
    labels: fc.constantFrom(
      ["8", "10", "12", "14"],
      ["XS", "S", "M", "L"],
      ["34", "36", "38", "40"],
      ["6", "8", "10"],
      ["12W", "14W"],
      ["1X", "2X", "3X"],
    ),
    start: fc.integer({ min: 0, max: 24 }),
    step: fc.integer({ min: 2, max: 5 }),
    drops: fc.tuple(fc.integer({ min: 20, max: 40 }), fc.integer({ min: 2, max: 14 }), fc.integer({ min: 3, max: 14 })),
    sewn: fc.uniqueArray(fc.constantFrom("finishedBust", "finishedWaist", "finishedHip"), { maxLength: 3 }),
    other: fc.boolean(),
    heads: fc.array(fc.nat(99), { minLength: 7, maxLength: 7 }),
    order: fc.array(fc.nat(99), { minLength: 7, maxLength: 7 }),
  })
  .map(({ unit, labels, start, step, drops, sewn, other, heads, order }): Sheet => {
    const [drop, rise, ease] = drops;
    const share = unit === "cm" ? 1 : 0.4;
    const halves = (of: number): readonly number[] =>
      labels.map((_, at) => Math.round((150 + 2 * start + of) * share) + at * step);
    const values: Readonly<Record<Girth, readonly number[]>> = {
      bust: halves(0),
      waist: halves(-drop),
      hip: halves(rise),
      finishedBust: halves(ease),
      finishedWaist: halves(ease - drop),
      finishedHip: halves(ease + rise),
      other: halves(-120),
    };
    const girths: readonly Girth[] = ["bust", "waist", "hip", ...sewn, ...(other ? (["other"] as const) : [])];
    const columns = girths.map((girth, at): Column => {
      const names = HEADS[girth];
      return { girth, head: names[(heads[at] ?? 0) % names.length] ?? "", halves: values[girth] };
    });
    const sorted = columns.map((column, at) => ({ column, key: order[at] ?? 0 })).toSorted((a, b) => a.key - b.key);
    return { unit, labels, columns: sorted.map(({ column }) => column) };
  });

const layoutOf = fc.record({
  mark: fc.constantFrom("\t", ";", "   ", " "),
  across: fc.boolean(),
  corner: fc.constantFrom("Size", "UK size", "UK", "", "Sizes"),
  /** Where the unit is told: nowhere, above, in every heading in two ways, behind every number. */
  unitAt: fc.constantFrom("nowhere", "title", "heads", "brackets", "cells", "both"),
  title: fc.boolean(),
  footnote: fc.boolean(),
  fraction: fc.constantFrom("glyph", "space", "dash", "decimal", "comma"),
  given: fc.constantFrom<Unit>("cm", "in"),
});

type Layout = typeof layoutOf extends fc.Arbitrary<infer L> ? L : never;

function written(half: number, unit: Unit, fraction: string): string {
  const whole = Math.floor(half / 2);
  if (half % 2 === 0) return String(whole);
  if (unit === "cm") return `${whole}${fraction === "comma" ? "," : "."}5`;
  if (fraction === "glyph") return `${whole}½`;
  return fraction === "space" ? `${whole} 1/2` : fraction === "dash" ? `${whole}-1/2` : `${whole}.5`;
}

/** The same girth in the other unit, to the half. */
const otherHalf = (half: number, unit: Unit): number => Math.round(unit === "cm" ? half / 2.54 : half * 2.54);

function write({ unit, labels, columns }: Sheet, layout: Layout): string {
  const other = unit === "cm" ? "in" : "cm";
  const words = { cm: "cm", in: "inches" };
  const cell = (half: number): string => {
    const own = written(half, unit, layout.fraction);
    if (layout.unitAt === "cells") return `${own} ${unit}`;
    if (layout.unitAt !== "both") return own;
    return `${own} ${unit} (${written(otherHalf(half, unit), other, layout.fraction)} ${other})`;
  };
  const head = (text: string): string =>
    layout.unitAt === "heads" ? `${text} in ${words[unit]}` : layout.unitAt === "brackets" ? `${text} (${unit})` : text;
  const noted = (text: string, at: number): string => (layout.footnote && at === 1 ? `${text}*` : text);
  const table = [
    [layout.corner, ...labels],
    ...columns.map((column) => [head(column.head), ...column.halves.map((half, at) => noted(cell(half), at))]),
  ];
  const lines = layout.across ? table : [0, ...labels.keys()].map((_, at) => table.map((column) => column[at] ?? ""));
  const rows = layout.across
    ? lines
    : [0, ...labels.map((_, at) => at + 1)].map((at) => table.map((one) => one[at] ?? ""));
  return [
    ...(layout.unitAt === "title" ? [`Body measurements in ${words[unit]}`] : layout.title ? ["Size chart"] : []),
    ...rows.map((cells) => cells.join(layout.mark).trim()),
    ...(layout.footnote ? ["* cut on the fold"] : []),
  ].join("\n");
}

const mm = (half: number, unit: Unit): number => Math.round((half / 2) * (unit === "cm" ? 100 : 254)) / 10;

function rowsOf({ unit, labels, columns }: Sheet, layout: Layout): readonly SizeRow[] {
  const other = unit === "cm" ? "in" : "cm";
  return labels.map((label, at): SizeRow => {
    const girths = columns.flatMap(({ girth, halves }) => {
      const half = halves[at] ?? 0;
      if (girth === "other") return [];
      // Of a girth printed in two units the given one's figure is taken.
      const value =
        layout.unitAt === "both" && layout.given === other ? mm(otherHalf(half, unit), other) : mm(half, unit);
      return [[girth, value] as const];
    });
    return { label, bust: 0, waist: 0, hip: 0, ...Object.fromEntries(girths) };
  });
}

/** A chart whose sizes were only numbered, since no heading named them, is told to be so. */
const unnamed = (rows: readonly SizeRow[]): readonly SizeRow[] =>
  rows.map((row, at) => ({ ...row, label: String(at + 1) }));

const outcome = (sheet: Sheet, layout: Layout): "read" | "refused" | "another" => {
  const { rows, findings } = pasteChart(write(sheet, layout), layout.given);
  const wanted = rowsOf(sheet, layout);
  const codes = findings.map(({ code }) => code);
  const expected = codes.includes("paste/names-made") ? unnamed(wanted) : wanted;
  const alike = (row: SizeRow): boolean =>
    expected.some((one) => JSON.stringify(sorted(one)) === JSON.stringify(sorted(row)));
  if (!rows.every(alike)) return "another";
  if (rows.length === wanted.length) return "read";
  return findings.some(({ severity }) => severity === "blocks") ? "refused" : "another";
};

const sorted = (row: SizeRow): readonly (readonly [string, unknown])[] =>
  Object.entries(row).toSorted(([a], [b]) => (a < b ? -1 : 1));

describe("a chart in any layout", () => {
  it("is read back exactly, or refused", () => {
    const counts = { read: 0, refused: 0, another: 0 };
    fc.assert(
      fc.property(sheetOf, layoutOf, (sheet, layout) => {
        const what = outcome(sheet, layout);
        counts[what] += 1;
        expect(
          what === "another" ? [write(sheet, layout), pasteChart(write(sheet, layout), layout.given)] : what,
        ).not.toBeInstanceOf(Array);
      }),
      { numRuns: runsOf(1500) },
    );
    // Refusing everything would be no reading.
    expect(counts.read / (counts.read + counts.refused)).toBeGreaterThan(0.85);
  }, 240_000);
});
