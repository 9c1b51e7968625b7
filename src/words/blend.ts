/** The picks and the blend in words, and the sum behind each of them. */
import type { SumLine } from "./sumLine";
import type { Half } from "../core/decisions/alteration";
import type { CutLine, PlannedLevel } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import type { Alternative, BaseSizePick, BustPick, CupPick, PickMargin, Sizing } from "../core/sizing/sizing";
import { BUST_LEFT_ALONE, ON_THE_LINE, READS_AS_NOTHING, SAME_LINE } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatAmount, formatLength, formatSigned } from "./terms/length";
import { capital, levelWords } from "./terms/names";
import { ofHundred, timesWords } from "./sure";
import { listWords, plural, percentWords } from "./terms/language";

/** "40 % of the way from the 12 line to the 14 line", "on the 12 line", "30 % of a step beyond the 20 line". */
export function shareWords(between: readonly [string, string], share: number): string {
  const [lower, upper] = between;
  if (Math.abs(share) < ON_THE_LINE) return `on the ${lower} line`;
  if (Math.abs(share - 1) < ON_THE_LINE) return `on the ${upper} line`;
  if (share < 0) return `${percentWords(-share)} of a step inside the ${lower} line`;
  if (share > 1) return `${percentWords(share - 1)} of a step beyond the ${upper} line`;
  return `${percentWords(share)} of the way from the ${lower} line to the ${upper} line`;
}

/** The same as short as it can be told: "40 % from 12 to 14", "on 12", "30 % beyond 20". */
export function shortShareWords(between: readonly [string, string], share: number): string {
  const [lower, upper] = between;
  if (Math.abs(share) < ON_THE_LINE) return `on ${lower}`;
  if (Math.abs(share - 1) < ON_THE_LINE) return `on ${upper}`;
  if (share < 0) return `${percentWords(-share)} inside ${lower}`;
  return share > 1 ? `${percentWords(share - 1)} beyond ${upper}` : `${percentWords(share)} from ${lower} to ${upper}`;
}

/** "3 mm outside the 12 line", or nothing where the line lies on it. */
export function offsetWords(line: Pick<CutLine, "between" | "offset">, unit: LengthUnit): string {
  const amount = formatAmount(Math.abs(line.offset), unit);
  if (Math.abs(line.offset) < SAME_LINE || amount === formatAmount(0, unit))
    return `on the ${line.between[0]} line at the side seam`;
  return `${amount} ${line.offset > 0 ? "outside" : "inside"} the ${line.between[0]} line`;
}

/** "40 % of the way from the 12 line to the 14 line, 3 mm outside the 12 line." */
export const lineSentence = (level: PlannedLevel, cutLine: CutLine | undefined, unit: LengthUnit): string =>
  capital(whereWords(level, cutLine, unit));

function whereWords(level: PlannedLevel, cutLine: CutLine | undefined, unit: LengthUnit): string {
  const { between, share } = cutLine ?? level;
  const where = shareWords(between, share);
  const offset = cutLine === undefined || where.startsWith("on the") ? "" : `, ${offsetWords(cutLine, unit)}`;
  return `${where}${offset}.`;
}

/** What a line that the wearer set herself does to the garment. */
export function followsSentence(level: PlannedLevel, unit: LengthUnit): string {
  const gap = level.finished - level.target;
  return (
    `With your line the garment measures ${formatLength(level.finished, unit)}: ${formatAmount(Math.abs(gap), unit)} ` +
    `${gap > 0 ? "more" : "less"} than wanted, which leaves ${formatLength(level.finished - level.body, unit)} of ease.`
  );
}

/**
 * What it would take to change a pick; null where there is nothing else to pick.
 *
 * @param chance of the runner-up, everything considered that the pick stands on
 */
export function marginSentence(pick: PickMargin, chance: number, unit: LengthUnit): string | null {
  if (pick.runnerUp === null) return null;
  return `A tape out by ${formatAmount(pick.margin, unit)} would make it ${pick.runnerUp}; the chance of ${pick.runnerUp} is ${ofHundred(chance)}.`;
}

/** Why a chance at all: said once, behind the pick. `read`: the girths it stands on, how often each was read and what that is good to. */
export function chanceNote(
  read: readonly { readonly name: string; readonly readings: number; readonly spread: Mm }[],
  unit: LengthUnit,
): string {
  const names = listWords(read.map(({ name, readings }) => `${name} (read ${timesWords(readings)})`));
  const spreads = [...new Set(read.map(({ spread }) => formatAmount(spread, unit)))];
  const known = `${plural(read.length, { one: "it is", other: "they are" })} then right to within ${listWords(spreads)}`;
  return (
    `The chance follows from how often you read your ${names}: ${known} about two times in three ` +
    "(what one reading is good to is common practice, no source). More readings make it surer."
  );
}

const line = (words: string, figure: string): SumLine => ({ words, figure });
const total = (words: string, figure: string): SumLine => ({ words, figure, total: true });

export function baseSizeSum(pick: BaseSizePick, drafted: Mm, unit: LengthUnit): readonly SumLine[] {
  const length = (value: Mm): string => formatLength(value, unit);
  const own = pick.chosenBy === "wearer";
  const girth = pick.byBust ? "bust" : "upper chest";
  const printed = pick.byBust
    ? [line(`Size ${pick.label} is drafted for a bust of`, length(pick.chartValue))]
    : [
        line(`Bust of size ${pick.label} on the chart`, length(pick.chartValue + drafted)),
        line("less the difference it is drafted for", `− ${length(drafted)}`),
        line(`Upper chest of size ${pick.label}`, length(pick.chartValue)),
      ];
  const outside = Math.max(0, pick.lookedUp - pick.to, pick.from - pick.lookedUp);
  // Past the ends of the chart there is no nearer size, and how far is said beside the pick.
  const isTraded = pick.beyond === 0 && outside >= READS_AS_NOTHING;
  return [
    line(`Your ${girth}`, length(pick.lookedUp)),
    ...printed,
    line(
      own ? "The size found for you is the nearest from" : `Size ${pick.label} is the nearest from`,
      `${length(pick.from)} to ${length(pick.to)}`,
    ),
    ...(isTraded && !own
      ? [line("Taken though yours lies outside, for less to alter at the bust", formatAmount(outside, unit))]
      : []),
    total(own ? "The frame you took" : "So the frame is", pick.label),
  ];
}

export function cupSum(pick: CupPick, bust: Mm, unit: LengthUnit): readonly SumLine[] {
  const length = (value: Mm): string => formatLength(value, unit);
  if (pick.difference === null) {
    return [
      line("Your upper chest", "not measured"),
      total("So the pattern is taken as drafted for", length(pick.drafted)),
    ];
  }
  const difference = [
    line("Your bust", length(bust)),
    line("less your upper chest", `− ${length(bust - pick.difference)}`),
    line("Your difference", length(pick.difference)),
  ];
  return pick.label === null
    ? [...difference, total("The pattern has no cup versions; it is drafted for", length(pick.drafted))]
    : [
        ...difference,
        line(`Cup version ${pick.label} is drafted for`, length(pick.drafted)),
        total(pick.chosenBy === "wearer" ? "The cup you took" : "Picked together with the frame", pick.label),
      ];
}

/** What a difference is, and which of them the versions are drawn for. */
export function cupVersionsSentence(
  cups: readonly { readonly label: string; readonly difference: Mm }[],
  unit: LengthUnit,
): string {
  const versions = listWords(cups.map(({ label, difference }) => `${label} for ${formatLength(difference, unit)}`));
  return `That is how far your bust stands out. The pattern’s cups are drawn for bodies like that: ${versions}.`;
}

export function bustSum({ baseSize, cup, bust }: Sizing, girth: Mm, unit: LengthUnit): readonly SumLine[] {
  const length = (value: Mm): string => formatLength(value, unit);
  const left = bust.leftAlone && bust.chosenBy === "residual" && bust.residual !== 0;
  const version = cup.label === null ? "" : ` with cup ${cup.label}`;
  const own = bust.chosenBy === "wearer";
  const isWhole = bust.alteration === bust.asked;
  return [
    line("Your bust", length(girth)),
    line(`less the bust that size ${baseSize.label}${version} is drafted for`, `− ${length(bust.drafted)}`),
    line("What is over", formatSigned(bust.residual, unit)),
    ...(left ? [line("Left alone up to (common practice, no source)", formatAmount(BUST_LEFT_ALONE, unit))] : []),
    ...(isWhole
      ? []
      : [line(own ? "You set the bust alteration to" : "To be altered", formatSigned(bust.asked, unit))]),
    total(
      isWhole ? (own ? "You set the bust alteration to" : "So the bust alteration is") : "What can be made of it",
      formatSigned(bust.alteration, unit),
    ),
  ];
}

export function levelSum(level: PlannedLevel, unit: LengthUnit): readonly SumLine[] {
  const length = (value: Mm): string => formatLength(value, unit);
  const name = levelWords(level.level);
  return [
    line(`Your ${name}`, length(level.body)),
    line("with the ease wanted", `${level.ease < 0 ? "−" : "+"} ${length(Math.abs(level.ease))}`),
    line("The garment should measure", length(level.target)),
    line("The line that gives it", shareWords(level.between, level.share)),
    total("The pieces measure, darts closed", length(level.finished)),
  ];
}

/** What the bust needs, and what of it cannot be made. */
export function bustSentence(pick: BustPick, unit: LengthUnit): string {
  const short = bustShortOf(pick, unit);
  return [bustDoneWords(pick, unit), ...(short === null ? [] : [short])].join(" ");
}

type OfHalves = Readonly<Record<Half, { readonly sizing: Pick<Sizing, "cup" | "bust"> }>>;

/** "C", or where the halves have cups of their own "C left, D right"; null where the pattern has no versions. */
export function cupsWords({ left, right }: OfHalves): string | null {
  const [ofLeft, ofRight] = [left.sizing.cup.label, right.sizing.cup.label];
  if (ofLeft === ofRight || ofLeft === null || ofRight === null) return ofLeft ?? ofRight;
  return `${ofLeft} left, ${ofRight} right`;
}

/** What the bust needs; where it is not the same on the halves, what each gets. */
export function bustOfHalves(plan: OfHalves & { readonly sizing: Pick<Sizing, "bust"> }, unit: LengthUnit): string {
  const [left, right] = [plan.left.sizing.bust, plan.right.sizing.bust].map((pick) => bustHalfWords(pick, unit));
  return left === right ? bustSentence(plan.sizing.bust, unit) : `Left half: ${left}. Right half: ${right}.`;
}

function bustHalfWords({ alteration }: BustPick, unit: LengthUnit): string {
  const amount = formatAmount(Math.abs(alteration) / 2, unit);
  return amount === formatAmount(0, unit)
    ? "no bust adjustment"
    : `${alteration > 0 ? "full" : "small"} bust adjustment, ${amount} on the half front`;
}

function bustDoneWords(pick: BustPick, unit: LengthUnit): string {
  if (pick.alteration !== 0) {
    const half = formatAmount(Math.abs(pick.alteration) / 2, unit);
    return `${bustAdjustmentWords(pick.alteration, unit)} altogether, ${half} on the half front.`;
  }
  if (pick.asked !== 0) {
    return pick.chosenBy === "wearer"
      ? `The ${lower(bustAdjustmentWords(pick.asked, unit))} that you set cannot be made.`
      : "No bust alteration can be made here.";
  }
  if (formatAmount(pick.residual, unit) === formatAmount(0, unit))
    return "Drafted for a bust like yours: no bust alteration.";
  const over = `${formatAmount(Math.abs(pick.residual), unit)} ${pick.residual > 0 ? "more" : "less"} than drafted for`;
  return pick.leftAlone
    ? `${over}: too little to alter, so leave it.`
    : `${over}, left as it is because you set no alteration.`;
}

/** "Full bust adjustment of 30 mm". */
const bustAdjustmentWords = (amount: Mm, unit: LengthUnit): string =>
  `${amount > 0 ? "Full" : "Small"} bust adjustment of ${formatAmount(Math.abs(amount), unit)}`;

/** What of an alteration could not be made; null where all of it was. */
export function bustShortOf({ asked, alteration }: BustPick, unit: LengthUnit): string | null {
  const missing = Math.abs(asked - alteration);
  return missing < READS_AS_NOTHING ? null : bustShortSentence({ asked, made: alteration }, unit);
}

/** "14 mm of 30 mm let in; the garment stays 16 mm tighter at the bust than asked." */
export function bustShortSentence(
  { asked, made }: { readonly asked: Mm; readonly made: Mm },
  unit: LengthUnit,
): string {
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  const share = made === 0 ? `Nothing of ${amount(asked)}` : `${amount(made)} of ${amount(asked)}`;
  return (
    `${share} ${asked > 0 ? "let in" : "taken out"}; the garment stays ${amount(asked - made)} ` +
    `${asked > 0 ? "tighter" : "wider"} at the bust than asked.` +
    (asked > 0 ? " Look at a larger frame or another pattern." : "")
  );
}

/** "Frame 12, cup C". */
export const alternativeTitle = (way: Pick<Alternative, "baseSize" | "cup">): string =>
  way.cup === null ? `Size ${way.baseSize}` : `Size ${way.baseSize}, cup ${way.cup}`;

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What taking it costs, most costly part first. */
export function alternativeSentence(way: Alternative, unit: LengthUnit): string {
  const count =
    way.alterations === 0
      ? "Nothing to alter"
      : plural(way.alterations, { one: "One alteration", other: `${way.alterations} alterations` });
  const bust = way.alteration === 0 ? "bust as drafted" : lower(bustAdjustmentWords(way.alteration, unit));
  const baseSize =
    Math.abs(way.baseSizeMisfit) < READS_AS_NOTHING
      ? "frame spot on"
      : `frame ${formatAmount(Math.abs(way.baseSizeMisfit), unit)} ${way.baseSizeMisfit > 0 ? "small" : "large"} round the upper chest`;
  return `${count}: ${bust}; ${baseSize}; largest seam move ${formatAmount(way.largestMove, unit)}.`;
}
