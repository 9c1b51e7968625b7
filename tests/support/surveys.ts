/**
 * The surveyed women of the reference data, in millimetres, by the names of our measures. Source, licence and cautions:
 * tests/reference-data/README.md. What the survey measured elsewhere than a dressmaker does is said there and bridged in
 * `src/core/bodies/bridges.ts`; here it stands as it was measured.
 */
import { readFileSync } from "node:fs";
import type { MeasureName } from "../../src/core/measures/measure";
import { invariant } from "../../src/core/result";

export interface SurveyedWoman {
  readonly measures: Readonly<Partial<Record<MeasureName, number>>>;
  readonly age: number;
  /** Girth at the navel, where the 1988 survey took it too. */
  readonly waistAtNavel: number | null;
}

/** The front waist length is made up: the survey has no length over the bust point to the waist. */
const OVER_THE_BUST = 1.05;

const MM = 10;

function rowsOf(file: string): readonly Readonly<Record<string, number>>[] {
  const [head, ...lines] = readFileSync(new URL(`../reference-data/${file}`, import.meta.url), "utf8")
    .trim()
    .split("\n");
  const columns = invariant(head, "head").split(",");
  return lines.map((line) =>
    Object.fromEntries(line.split(",").map((cell, at) => [invariant(columns[at], "column"), Number(cell)])),
  );
}

const mm = (row: Readonly<Record<string, number>>, column: string): number =>
  Math.round(invariant(row[column], column) * MM * 10) / 10;

/** 2208 women, 1988. Her upper chest is the survey's horizontal girth at mid-armhole level. */
export const women1988: readonly SurveyedWoman[] = rowsOf("women-1988.csv").map((row) => ({
  measures: {
    bustGirth: mm(row, "bust"),
    upperChestGirth: mm(row, "high_bust"),
    underBustGirth: mm(row, "under_bust"),
    waistGirth: mm(row, "waist"),
    hipGirth: mm(row, "hip"),
    height: mm(row, "stature"),
    bustPointWidth: mm(row, "bust_point_breadth"),
    sideNeckToBustPoint: mm(row, "neck_side_to_bust_point"),
    backWaistLength: mm(row, "back_waist_length"),
    // From the side neck over the bust point, and from there down to the waist, a little aslant.
    frontWaistLength:
      mm(row, "neck_side_to_bust_point") + OVER_THE_BUST * (mm(row, "chest_height") - mm(row, "waist_height")),
    neckBaseGirth: mm(row, "neck_base"),
    shoulderLength: mm(row, "shoulder_length"),
    acrossBack: mm(row, "interscye"),
  },
  age: invariant(row.age_y, "age"),
  waistAtNavel: mm(row, "waist_navel"),
}));

/** 1986 women, 2012: no natural waist, no under-bust, no bust points. */
export const women2012: readonly SurveyedWoman[] = rowsOf("women-2012.csv").map((row) => ({
  measures: {
    bustGirth: mm(row, "bust"),
    hipGirth: mm(row, "hip"),
    height: mm(row, "stature"),
    shoulderLength: mm(row, "shoulder_length"),
    acrossBack: mm(row, "interscye"),
    neckBaseGirth: mm(row, "neck_base"),
  },
  age: invariant(row.age_y, "age"),
  waistAtNavel: null,
}));

/** The fixed split: every fourth woman is held back from the fit. */
const isHeldBack = (_: SurveyedWoman, at: number): boolean => at % 4 === 3;

export const heldBack1988 = women1988.filter(isHeldBack);
export const fitted1988 = women1988.filter((woman, at) => !isHeldBack(woman, at));
