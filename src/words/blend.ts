/** The picks and the blend in words, and the sum behind each of them. */
import type { SumLine } from "./sumLine";
import type { CutLine, PlannedLevel } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import type { Alternative, BustPick, CupPick, BaseSizePick, PickMargin, Sizing } from "../core/sizing/sizing";
import { BUST_LEFT_ALONE, ON_THE_LINE, READS_AS_NOTHING, SAME_LINE } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatAmount, formatLength, formatSigned } from "./terms/length";
import { capital, levelWords, listWords } from "./terms/names";
import { ofHundred, timesWords } from "./sure";

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** "40 % of the way from the 12 line to the 14 line", "on the 12 line", "30 % of a step beyond the 20 line". */
export function shareWords(between: readonly [string, string], share: number): string {
  const [lower, upper] = between;
  if (Math.abs(share) < ON_THE_LINE) return `on the ${lower} line`;
  if (Math.abs(share - 1) < ON_THE_LINE) return `on the ${upper} line`;
  if (share < 0) return `${percent(-share)} of a step inside the ${lower} line`;
  if (share > 1) return `${percent(share - 1)} of a step beyond the ${upper} line`;
  return `${percent(share)} of the way from the ${lower} line to the ${upper} line`;
}

/** "3 mm outside the 12 line", or nothing where the line lies on it. */
export function offsetWords(line: Pick<CutLine, "between" | "offset">, unit: LengthUnit): string {
  const amount = formatAmount(Math.abs(line.offset), unit);
  if (Math.abs(line.offset) < SAME_LINE) return `on the ${line.between[0]} line at the side seam`;
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

/** Why a chance at all: said once, behind the pick. `read`: the girths it stands on, and how often each was read. */
export function chanceNote(
  read: readonly { readonly name: string; readonly readings: number }[],
  spread: Mm,
  unit: LengthUnit,
): string {
  const names = listWords(read.map(({ name, readings }) => `${name} (read ${timesWords(readings)})`));
  const known = read.length > 1 ? "their difference is then right" : "it is then right";
  return (
    `The chance follows from how often you read your ${names}: ${known} to within ${formatAmount(spread, unit)} about two times in three ` +
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
    ? [line(`Size ${pick.label} is printed for a bust of`, length(pick.chartValue))]
    : [
        line(`Bust of size ${pick.label} on the chart`, length(pick.chartValue + drafted)),
        line("less the difference it is drafted for", `− ${length(drafted)}`),
        line(`Upper chest of size ${pick.label}`, length(pick.chartValue)),
      ];
  return [
    line(`Your ${girth}`, length(pick.lookedUp)),
    ...printed,
    line(
      own ? "The size found for you is the nearest from" : `Size ${pick.label} is the nearest from`,
      `${length(pick.from)} to ${length(pick.to)}`,
    ),
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
    : [...difference, total(`Cup version ${pick.label} is drafted for`, length(pick.drafted))];
}

export function bustSum({ baseSize, cup, bust }: Sizing, girth: Mm, unit: LengthUnit): readonly SumLine[] {
  const length = (value: Mm): string => formatLength(value, unit);
  const left = bust.leftAlone && bust.chosenBy === "residual" && bust.residual !== 0;
  return [
    ...bustOver(baseSize, cup, bust, girth, length),
    line("What is over", formatSigned(bust.residual, unit)),
    ...(left ? [line("Left alone up to (common practice, no source)", formatAmount(BUST_LEFT_ALONE, unit))] : []),
    total(
      bust.chosenBy === "wearer" ? "You set the bust alteration to" : "So the bust alteration is",
      formatSigned(bust.alteration, unit),
    ),
  ];
}

/** What the bust is held against: on another base size its own bust, else the cup, unless the base size was picked by the bust itself. */
function bustOver(
  baseSize: BaseSizePick,
  cup: CupPick,
  bust: BustPick,
  girth: Mm,
  length: (value: Mm) => string,
): readonly SumLine[] {
  const version = cup.label === null ? "" : ` with cup ${cup.label}`;
  if (baseSize.index !== baseSize.found) {
    return [
      line("Your bust", length(girth)),
      line(`less the bust of size ${baseSize.label}${version}`, `− ${length(girth - bust.residual)}`),
    ];
  }
  if (baseSize.byBust || bust.difference === null) {
    return [
      line("The frame was picked by your bust", length(girth)),
      line("and the pattern’s ease covers the size", `${length(baseSize.from)} to ${length(baseSize.to)}`),
    ];
  }
  return [
    line("Your difference", length(bust.difference)),
    line("less what the pattern is drafted for", `− ${length(cup.drafted)}`),
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

/** What the bust needs, in one sentence. */
export function bustSentence(pick: BustPick, unit: LengthUnit): string {
  if (pick.difference === null && pick.alteration === 0) {
    return "Without an upper chest the cup cannot be told: the frame is picked by the bust, and nothing is altered there.";
  }
  const size = formatAmount(Math.abs(pick.alteration), unit);
  if (pick.alteration === 0) {
    if (pick.residual === 0) return "Drafted for a bust like yours: no bust alteration.";
    const over = `${formatAmount(Math.abs(pick.residual), unit)} ${pick.residual > 0 ? "more" : "less"} than drafted for`;
    return pick.leftAlone
      ? `${over}: too little to alter, so leave it.`
      : `${over}, left as it is because you set no alteration.`;
  }
  return pick.alteration > 0
    ? `Full bust adjustment of ${size} in all, ${formatAmount(pick.alteration / 2, unit)} on the half front.`
    : `Small bust adjustment of ${size} in all, ${formatAmount(-pick.alteration / 2, unit)} on the half front.`;
}

/** "Frame 12, cup C". */
export const alternativeTitle = (way: Pick<Alternative, "baseSize" | "cup">): string =>
  way.cup === null ? `Size ${way.baseSize}` : `Size ${way.baseSize}, cup ${way.cup}`;

/** Why the planner's own pick is not the first of the list; null where it is. */
export function besideRankSentence(ways: readonly Alternative[], byBust: boolean): string | null {
  const first = ways[0];
  const pick = ways.find(({ picked }) => picked);
  if (first === undefined || pick === undefined || first === pick) return null;
  const [nearer, farther] = [first, pick].map(({ residual }) => Math.abs(residual));
  const moved = [first, pick].map(({ waistMove, hipMove }) => Math.abs(waistMove) + Math.abs(hipMove));
  const because = [
    ...((farther ?? 0) > BUST_LEFT_ALONE && (nearer ?? 0) <= BUST_LEFT_ALONE ? ["it needs no bust alteration"] : []),
    ...(Math.abs(first.baseSizeMisfit) < Math.abs(pick.baseSizeMisfit)
      ? ["its frame lies nearer your upper chest"]
      : []),
    ...((moved[0] ?? 0) < (moved[1] ?? 0) ? ["its side seams move less"] : []),
  ];
  const cup = pick.cup === null || byBust ? "" : ", then the cup by how far the bust stands out beyond it";
  const rule = `picks the frame by the ${byBust ? "bust" : "upper chest"} alone${cup}`;
  const reason = because.length === 0 ? "disturbs less in all" : `disturbs less in all: ${listWords(because)}`;
  return (
    `The planner ${rule}, and so took ${lower(alternativeTitle(pick))}. With everything weighed together, as in this list, ` +
    `${lower(alternativeTitle(first))} ${reason}. Either can be cut: take it if you would rather.`
  );
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What taking it costs, most costly part first. */
export function alternativeSentence(way: Alternative, unit: LengthUnit): string {
  const count =
    way.alterations === 0
      ? "Nothing to alter"
      : way.alterations === 1
        ? "One alteration"
        : `${way.alterations} alterations`;
  const bust =
    Math.abs(way.residual) <= BUST_LEFT_ALONE
      ? "bust as drafted"
      : `${way.residual > 0 ? "full" : "small"} bust adjustment of ${formatAmount(Math.abs(way.residual), unit)}`;
  const baseSize =
    Math.abs(way.baseSizeMisfit) < READS_AS_NOTHING
      ? "frame spot on"
      : `frame ${formatAmount(Math.abs(way.baseSizeMisfit), unit)} ${way.baseSizeMisfit > 0 ? "small" : "large"} round the upper chest`;
  return `${count}: ${bust}; ${baseSize}; largest seam move ${formatAmount(way.largestMove, unit)}.`;
}
