/** The published standard charts in words: their names, where their figures come from, and how far they are to be trusted. */
import type { StandardName } from "../core/chart/standardCharts";
import type { LengthUnit } from "../core/decisions/work";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { formatLength } from "./terms/length";

const TITLES: Readonly<Record<StandardName, string>> = {
  en13402: "European size designation (EN 13402-3)",
  ps42: "US product standard, 1970 (PS 42-70)",
  d5585: "US body measurements, 1995 (ASTM D5585)",
};

export const standardTitle = (name: StandardName): string => TITLES[name];

/** The bust up to which the bounds of the European sizes were read; and what hips of the older US chart may be out by. */
const BOUNDS_READ: Mm = 131 * MM_PER_CM;
const HIPS_OUT: Mm = MM_PER_INCH;

function trustWords(name: StandardName, unit: LengthUnit): string {
  switch (name) {
    case "en13402":
      return `The bounds of its bust sizes up to ${formatLength(BOUNDS_READ, unit)} were read; its waists, its hips and which of them stand in one row with which bust are from memory.`;
    case "ps42":
      return `Misses’ sizes. From memory, not read again; its hips are least sure, and may be ${formatLength(HIPS_OUT, unit)} less.`;
    case "d5585":
      return "Misses’ sizes. From memory, not read again; that all its sizes have the same shape agrees with it.";
  }
}

/** Where the figures of a standard chart are from. */
export const standardWords = (name: StandardName, unit: LengthUnit): string =>
  `${standardTitle(name)}. ${trustWords(name, unit)} It is another chart, no measure of what a body should be.`;
