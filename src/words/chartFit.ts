/** What a size chart fits, in words. Always of the chart, never of a body; and whose bodies are counted is said beside it. */
import { BRIDGES } from "../core/bodies/bridges";
import type { BesideChart, ChartShares, OffLine } from "../core/bodies/chartFit";
import type { Girth } from "../core/bodies/modelBodies";
import { SURVEY } from "../core/bodies/surveyModel";
import type { StandardSize } from "../core/chart/standardCharts";
import type { Measured, MeasuredBody } from "../core/measures/tape";
import type { LengthUnit } from "../core/decisions/work";
import { ALIKE_BY_TAPE } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";
import { capital } from "./terms/names";
import { listWords, plural } from "./terms/language";

const GIRTHS: readonly Girth[] = ["bust", "waist", "hip"];

export const CHART_FIT_TITLE = "What this chart fits";
export const BESIDE_IT = "Beside it";
export const NO_STANDARD = "no standard chart";

/** Of 100 women; "nearly all" and "hardly any" stand without a number. */
const women = (share: number): number => Math.round(share * 100);

/** What the chart fits among the surveyed women. */
export function sharesSentences(shares: ChartShares): readonly string[] {
  const placed = women(shares.placed);
  if (placed === 0) return ["Hardly any of the surveyed women find a frame in this chart: its sizes lie elsewhere."];
  const found =
    placed === 100
      ? "Nearly all of the surveyed women find a frame in this chart"
      : `Of 100 surveyed women about ${placed} find a frame in this chart`;
  return [`${found}; ${leftAloneWords(shares)}`, linesWords(shares), apartWords(shares)];
}

function leftAloneWords({ placed, bustLeftAlone, bustLeftAloneWithin }: ChartShares): string {
  const [at, least, most] = [women(bustLeftAlone), women(bustLeftAloneWithin.least), women(bustLeftAloneWithin.most)];
  const of = women(placed) === 100 ? "of 100" : "of them";
  if (most === 0) return "hardly any of them without a bust alteration.";
  const within =
    least === most
      ? ""
      : ` (the survey’s upper chest was taken lower than yours, so it may be anything from ${least} to ${most})`;
  return `about ${at} ${of} need no bust alteration${within}.`;
}

function linesWords({ waist, hip, unblended }: ChartShares): string {
  return (
    `The waist falls within half a size of the frame for ${women(waist.half)} of 100, within one size for ${women(waist.one)}; the hip for ${women(hip.half)} and ${women(hip.one)}. ` +
    `Both fall within half a size for ${women(unblended)}.`
  );
}

function apartWords({ apart }: ChartShares): string {
  const [none, one, two, more] = apart.map(women);
  return `Bust, waist and hip ask for one and the same size for ${none ?? 0} of 100, for sizes next to each other for ${one ?? 0}, two apart for ${two ?? 0}, further apart for ${more ?? 0}.`;
}

/** Where the chart lies beside the wearer. */
export function besideSentences(hers: BesideChart, body: MeasuredBody, unit: LengthUnit): readonly string[] {
  return [
    ...noBaseSizeWords(hers),
    ...baseSizeWords(hers, unit),
    ...lineWords("bust", "waist", hers.waistAtBust, unit),
    ...lineWords("waist", "hip", hers.hipAtWaist, unit),
    ...missingWords(body),
  ];
}

function noBaseSizeWords({ noBaseSize }: BesideChart): readonly string[] {
  if (noBaseSize === "larger") return ["The chart ends before it reaches a frame for you."];
  return noBaseSize === "smaller" ? ["The chart begins past the frame you need."] : [];
}

function baseSizeWords({ baseSize }: BesideChart, unit: LengthUnit): readonly string[] {
  if (baseSize === null) return [];
  const levels = (["waist", "hip"] as const).flatMap((level) =>
    baseSize[level] === null ? [] : [{ level, more: baseSize[level] }],
  );
  if (levels.length === 0) return [];
  const same = levels.filter(({ more }) => Math.abs(more) < ALIKE_BY_TAPE).map(({ level }) => level);
  const parts = [
    ...(same.length === 0 ? [] : [`like yours at the ${listWords(same)}`]),
    ...levels
      .filter(({ level }) => !same.includes(level))
      .map(
        ({ level, more }) =>
          `${formatLength(Math.abs(more), unit)} ${more > 0 ? "less" : "more"} than yours at the ${level}`,
      ),
  ];
  return [`Your frame, size ${baseSize.label}, was drawn for a body ${listWords(parts)}.`];
}

function lineWords(along: Girth, level: Girth, line: OffLine | null, unit: LengthUnit): readonly string[] {
  if (line === null) return [];
  const further = women(line.further);
  const from =
    further === 0
      ? "hardly any of the surveyed women"
      : further === 100
        ? "nearly all of the surveyed women"
        : `${further} of 100 surveyed women`;
  const at = `At your ${along} girth the chart’s ${level}`;
  if (Math.abs(line.off) < ALIKE_BY_TAPE) return [`${at} is yours; it is further from ${from}.`];
  return [
    `${at} is ${formatLength(Math.abs(line.off), unit)} ${line.off > 0 ? "less" : "more"} than yours; it is further from ${from}.`,
  ];
}

function missingWords(body: MeasuredBody): readonly string[] {
  const missing = GIRTHS.filter((girth) => takenOf(body, girth) === undefined);
  return missing.length === 0
    ? []
    : [
        `Not taken yet: ${listWords(missing)}. With ${plural(missing.length, { one: "it", other: "them" })} you are drawn in as well.`,
      ];
}

const takenOf = (body: MeasuredBody, girth: Girth): Measured | undefined => body[`${girth}Girth`];

/** Said where the chart has faults. */
export const CHART_UNREAD =
  "Once the chart is filled in and nothing in it is to be put right, its sizes are drawn in, and what it fits is counted.";

/** Whose bodies they are. */
export function whoseWords(unit: LengthUnit): string {
  const { ages, fitted, women: surveyed } = SURVEY;
  const moved = (["upperChestGirth", "waistGirth", "hipGirth"] as const).map((name) => {
    const shift = BRIDGES[name]?.shift ?? 0;
    const what = { upperChestGirth: "upper chest", waistGirth: "waist", hipGirth: "hip" }[name];
    return `${what} ${formatLength(Math.abs(shift), unit)} ${shift > 0 ? "more" : "less"}`;
  });
  return (
    `Whose bodies: soldiers, younger and leaner than most who sew. Counted on a model of ${fitted} of the ${surveyed} women of the US Army, ${ages.least} to ${ages.most}, surveyed in 1987 and 1988. ` +
    `Their girths are moved to where your tape runs (${listWords(moved)}: our own choice, and the waist’s may be ${formatLength(BRIDGES.waistGirth?.doubt ?? 0, unit)} out). A chart that fits few of them may fit many others.`
  );
}

/** What the marks mean, in the order in which they are listed. */
export const MARKS = {
  dots: "some surveyed bodies",
  half: "half of them lie inside",
  most: "nine in ten lie inside",
  sizes: "this pattern’s sizes",
  standard: "the standard chart",
  wearer: "you, and how far your tape may be out, nine times in ten",
} as const;

/** "Bust, cm" */
export const axisWords = (girth: Girth, unit: LengthUnit): string => `${capital(girth)}, ${unit}`;

export const plotTitle = (across: Girth, up: Girth): string => `${capital(up)} by ${across}`;

/** What one picture shows, for those who do not see it. */
export function plotWords(across: Girth, up: Girth, seen: PlotSeen, unit: LengthUnit): string {
  const { sizes, standard, body, half } = seen;
  const pair = (at: Readonly<Record<Girth, Mm>>): string =>
    `${across} ${formatLength(at[across], unit)}, ${up} ${formatLength(at[up], unit)}`;
  const lineFrom = (what: string, of: readonly StandardSize[]): string[] => {
    const [first, last] = [of[0], of.at(-1)];
    return first === undefined || last === undefined
      ? []
      : [`${what} runs from size ${first.label} (${pair(first)}) to size ${last.label} (${pair(last)}).`];
  };
  const [x, y] = [takenOf(body, across), takenOf(body, up)];
  const hers =
    x === undefined || y === undefined
      ? []
      : [`You: ${across} ${formatLength(x.value, unit)}, ${up} ${formatLength(y.value, unit)}.`];
  return [
    `${plotTitle(across, up)}.`,
    `Half of the surveyed women lie in a ring about ${across} ${formatLength(half.across[0], unit)} to ${formatLength(half.across[1], unit)}, ${up} ${formatLength(half.up[0], unit)} to ${formatLength(half.up[1], unit)}.`,
    ...lineFrom("This pattern", sizes),
    ...lineFrom("The standard chart", standard),
    ...hers,
  ].join(" ");
}

export interface PlotSeen {
  readonly sizes: readonly StandardSize[];
  readonly standard: readonly StandardSize[];
  readonly body: MeasuredBody;
  /** Least and most of the ring that holds half of the bodies. */
  readonly half: { readonly across: readonly [Mm, Mm]; readonly up: readonly [Mm, Mm] };
}
