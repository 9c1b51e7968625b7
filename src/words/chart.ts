/** What was found in a size chart, in words: said beside its row. */
import type { PasteFinding } from "../core/chart/pasteChart";
import type { PastedUnit } from "../core/chart/pasteWords";
import type { ChartColumn, ChartFinding } from "../core/chart/readChart";
import type { MeasureMisreading } from "../core/measures/registry";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength, formatSigned } from "./terms/length";
import { measureWords, misreadingSentence } from "./measures";
import { capital } from "./terms/names";
import { listWords } from "./terms/language";

const COLUMNS: Readonly<Record<ChartColumn, string>> = {
  label: "name of the size",
  bust: "bust",
  waist: "waist",
  hip: "hip",
  finishedBust: "finished bust",
  finishedWaist: "finished waist",
  finishedHip: "finished hip",
};

/** As it stands inside a sentence. */
export const columnWords = (column: ChartColumn): string => COLUMNS[column];

/** What is the matter with one cell, row or list of the chart. */
export function chartFindingSentence(finding: ChartFinding, unit: LengthUnit): string {
  const length = (value: Mm): string => formatLength(value, unit);
  const cell = finding.column === null ? "difference" : COLUMNS[finding.column];
  const kind = finding.list === "cups" ? "cup version" : "size";
  const before = (label: string): string => (label.trim() === "" ? `the ${kind} before` : `${kind} ${label}`);
  switch (finding.code) {
    case "chart/too-few-sizes":
      return `A blend runs between sizes: enter at least ${finding.least}.`;
    case "chart/too-many-sizes":
      return `These are ${finding.count} sizes; ${finding.most} is the most. Leave out some far from yours.`;
    case "chart/label-empty":
      return `This ${kind} has no name. Write what is printed on the pattern.`;
    case "chart/label-twice":
      return `${capital(kind)} ${finding.label} is in the list twice. Each needs a name of its own.`;
    case "chart/not-a-girth":
      return `The ${cell} is missing.`;
    case "chart/implausible":
      return withMisreadings(
        `The ${cell} of ${length(finding.value)} cannot be right: it should be from ${length(finding.least)} to ${length(finding.most)}.`,
        finding.misreadings,
        finding.value,
        unit,
      );
    case "chart/unusual":
      return withMisreadings(
        `The ${cell} of ${length(finding.value)} is seldom printed.`,
        finding.misreadings,
        finding.value,
        unit,
      );
    case "chart/out-of-order":
      return `The bust (${length(finding.value)}) is smaller than that of ${before(finding.beforeLabel)} above (${length(finding.before)}). Put the sizes in order, the smallest first.`;
    case "chart/repeated":
      return `All its measures are those of ${before(finding.beforeLabel)} above. Remove one of the two.`;
    case "chart/falling":
      return `The ${cell} (${length(finding.value)}) is smaller than that of ${before(finding.beforeLabel)} above (${length(finding.before)}). Look at both again.`;
    case "chart/not-growing":
      return finding.severity === "blocks"
        ? `The ${cell} is the same as that of ${before(finding.beforeLabel)} above, so the two cannot be told apart.`
        : `The ${cell} is the same as that of ${before(finding.beforeLabel)} above. Some charts are so; look once more.`;
    case "chart/large-step":
      return `The bust grows by ${length(finding.step)} from ${before(finding.beforeLabel)} above. Is a size missing between them?`;
    case "chart/finished-impossible":
      return finding.half
        ? `The ${cell} (${length(finding.value)}) is about half of the body’s ${length(finding.body)}. Was it measured flat? Then double it.`
        : `The ${cell} (${length(finding.value)}) does not go with the body’s ${length(finding.body)}. Look at both again.`;
    case "chart/finished-below-body":
      return `The ${cell} (${length(finding.value)}) is smaller than the body’s ${length(finding.body)}. That is right only for cloth that stretches, or a bodice held up by its fit.`;
    case "chart/finished-not-growing":
      return `The ${cell} (${length(finding.value)}) is no larger than that of ${before(finding.beforeLabel)} above (${length(finding.before)}).`;
    case "chart/difference-not-a-length":
      return "The difference is missing: bust less upper chest.";
    case "chart/difference-impossible":
      return `A difference of ${difference(finding.value, unit)} cannot be drafted: it should be from ${difference(finding.least, unit)} to ${difference(finding.most, unit)}.`;
    case "chart/difference-unusual":
      return `A difference of ${difference(finding.value, unit)} is unusual: bust less upper chest is mostly from ${length(finding.least)} to ${length(finding.most)}.`;
    case "chart/difference-not-growing":
      return `The difference (${difference(finding.value, unit)}) is no larger than that of ${before(finding.beforeLabel)} above (${difference(finding.before, unit)}). List them from the flattest to the fullest.`;
  }
}

const difference = (value: Mm, unit: LengthUnit): string =>
  value < 0 ? formatSigned(value, unit) : formatLength(value, unit);

function withMisreadings(
  sentence: string,
  misreadings: readonly MeasureMisreading[],
  value: Mm,
  unit: LengthUnit,
): string {
  const advice = misreadingSentence(misreadings, value, unit);
  return advice === "" ? sentence : `${sentence} ${advice}`;
}

const PASTED_UNITS: Readonly<Record<PastedUnit, string>> = { mm: "millimetres", cm: "centimetres", in: "inches" };

/** How a pasted chart was read, and what of it could not be. */
export function pasteFindingSentence(finding: PasteFinding, unit: LengthUnit): string {
  const sentence = pasteFaultSentence(finding, unit);
  const where = finding.line === null ? "" : ` (line ${finding.line})`;
  return where === "" ? sentence : `${sentence.slice(0, -1)}${where}.`;
}

function pasteFaultSentence(finding: PasteFinding, unit: LengthUnit): string {
  const cell = finding.column === null ? "cell" : COLUMNS[finding.column];
  const of = finding.size === null ? "" : ` of size ${finding.size}`;
  switch (finding.code) {
    case "paste/empty":
      return "There is nothing to read yet. Copy the chart with its headings and paste it here.";
    case "paste/too-long":
      return "This is much more than a size chart. Copy the chart alone and paste it again.";
    case "paste/no-columns":
      return "No sizes were found. Each needs a bust, a waist and a hip, best under headings that say so.";
    case "paste/column-missing":
      return `No column is headed ${listWords(finding.missing.map((column) => `“${COLUMNS[column]}”`))}. Add its heading and paste again.`;
    case "paste/labels-uncertain":
      return "There are not as many sizes as measures, so it is not sure which belongs to which. See that every line holds as many.";
    case "paste/headings-uncertain":
      return "It is not sure which heading stands over which numbers. Put tabs or semicolons between the cells, or copy from the table itself.";
    case "paste/column-several":
      return `More than one column gives the ${COLUMNS[finding.several]}: ${listWords(finding.texts.map((text) => `“${short(text)}”`))}. Keep the one your chart goes by.`;
    case "paste/bust-by-cup":
      return `The bust is printed for cups ${listWords(finding.cups)}. Keep the column of one cup, and add the others as cup versions below.`;
    case "paste/unit-uncertain":
      return "The numbers could be centimetres or inches. Write “cm” or “inches” above them.";
    case "paste/commas-ambiguous":
      return "These commas could stand between the measures or in them. Write 88.5 in place of 88,5, or put semicolons between.";
    case "paste/too-many-lines":
      return `More than ${finding.most} sizes: the rest was left out.`;
    case "paste/cell-missing":
      return `The ${cell}${of} is missing, so that size was left out.`;
    case "paste/cell-unreadable":
      return finding.severity === "blocks"
        ? `The ${cell}${of}, “${short(finding.text)}”, does not read as a length, so that size was left out.`
        : `The ${cell}${of}, “${short(finding.text)}”, does not read as a length and was left out.`;
    case "paste/range-middle":
      return `The ${cell}${of} is the range ${short(finding.text)}: its middle, ${formatLength(finding.taken, unit)}, was taken.`;
    case "paste/cells-uncertain":
      return `Size ${finding.size ?? ""} has ${finding.count} cells for ${finding.columns} columns, so it is not sure which is which, and it was left out. Type it in, or put a dash where nothing is printed.`;
    case "paste/line-ignored":
      return `“${short(finding.text)}” holds no measures and was passed over.`;
    case "paste/heading-ignored":
      return `The column “${short(finding.text)}” is not needed and was passed over.`;
    case "paste/heading-twice":
      return `The column “${short(finding.text)}” says again what another one says and was passed over.`;
    case "paste/lengths-read":
      return `Read by size too: ${listWords(finding.lengths.map((measure) => measureWords(measure).short))}. They go under “What the pattern says of lengths”.`;
    case "paste/length-uncertain":
      return `“${short(finding.text)}” could not be read for certain and was passed over. Enter it under “What the pattern says of lengths”.`;
    case "paste/columns-assumed":
      return `There are no headings: the columns were taken as ${listWords(finding.columns.map((column) => COLUMNS[column]))}.`;
    case "paste/sizes-along-top":
      return "The sizes run along the top; the chart was turned to read it.";
    case "paste/names-made":
      return "There is no column of sizes: they were numbered. Write in what is printed on the pattern.";
    case "paste/unit-assumed":
      return `The numbers were taken as ${PASTED_UNITS[finding.unit]}, since only then are they girths of bodies.`;
  }
}

const MOST_SHOWN = 40;
const short = (text: string): string => (text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text);
