/** How sure the picks are, in words: chances rounded to twentieths, and always said of what. */
import type { SumLine } from "./sumLine";
import type { LengthUnit } from "../core/decisions/work";
import type { MeasureName } from "../core/measures/measure";
import type { MeasuredBody } from "../core/measures/tape";
import type { Chance, HowSure, LineBand } from "../core/sureness/howSure";
import type { BustDone, WayTaken } from "../core/sureness/ruleRegions";
import type { NextMeasure } from "../core/sureness/nextMeasure";
import { LIKELY, NEARLY_SURE } from "../core/tolerance";
import { formatAmount, formatLength } from "./terms/length";
import { measureWords } from "./measures";
import { capital } from "./terms/names";
import { listWords, plural, orWords } from "./terms/language";

/** Finer than a twentieth no chance is known: what one reading is good to is a rule of thumb itself. */
const STEP = 5;
const rounded = (chance: number): number => Math.round((chance * 100) / STEP) * STEP;

/** "about 45 of 100", "more than 95 of 100", "fewer than 5 of 100". */
export function ofHundred(chance: number): string {
  const of = rounded(chance);
  if (of >= 100) return "more than 95 of 100";
  return of <= 0 ? "fewer than 5 of 100" : `about ${of} of 100`;
}

/** The same without "of 100", where that was just said. */
const figure = (chance: number): string => ofHundred(chance).replace(/^about | of 100$/g, "");

const TIMES = ["never", "once", "twice", "three times", "four times", "five times"] as const;
export const timesWords = (times: number): string => TIMES[times] ?? `${times} times`;

/** "Size 12, nearly sure (about 95 of 100)." Without an upper chest the base size stands on the bust alone, and that is said. */
export function sizeSentence({ sizes, girths, picked, own, doubted }: HowSure): string {
  if (own.baseSize) return `Size ${picked.size ?? ""}: your own pick.`;
  const what = girths.upperChest === null ? "By the bust alone, size" : "Size";
  if (doubted.includes("baseSize"))
    return picked.size === null ? `${what}: not on this chart; doubted.` : `${what} ${picked.size}: doubted.`;
  return `${chanceWords(what, sizes, picked.size)}.${offWords(sizes)}`;
}

/** Without an upper chest: what base size it would probably pick. Null where that is nearly surely the same, or nothing tells it. */
export function chestBaseSizeSentence({ sizes, sizesGuessed, doubted }: HowSure): string | null {
  if (doubted.includes("baseSize")) return null;
  const [first] = sizesGuessed;
  if (first === undefined || (first.label === sizes[0]?.label && rounded(first.probability) >= NEARLY_SURE * 100))
    return null;
  const frames = sizesGuessed
    .filter(({ probability }, at) => at === 0 || (at < 3 && rounded(probability) > STEP))
    .map(
      ({ label, probability }, at) =>
        `${label === null ? "none on this chart" : `size ${label}`} (${at === 0 ? ofHundred(probability) : figure(probability)})`,
    );
  return `The frame goes by the upper chest once that is taken. Guessed from your other measures it would be ${orWords(frames)}.`;
}

function offWords(sizes: readonly Chance[]): string {
  const off = sizes.find(({ label }) => label === null)?.probability ?? 0;
  return rounded(off) === 0 ? "" : ` That this chart does not reach you at all: ${ofHundred(off)}.`;
}

/** What the cup is, or probably is; null where there are no versions or nothing tells them. */
export function cupSentence({ cups, cupsGuessed, picked, own, doubted }: HowSure): string | null {
  if (own.cup) return `Cup ${picked.cup ?? ""}: your own pick.`;
  if (doubted.includes("cup")) return picked.cup === null ? null : `Cup ${picked.cup}: doubted.`;
  const told = cups.filter(({ label }) => label !== null);
  if (told.length === 0) return null;
  if (!cupsGuessed) return `${chanceWords("Cup", told, picked.cup)}.`;
  const worth = told.filter(({ probability }, at) => at === 0 || (at < 3 && rounded(probability) > STEP));
  const guesses = worth.map(
    ({ label, probability }, at) => `${label ?? ""} (${at === 0 ? ofHundred(probability) : figure(probability)})`,
  );
  return `Without an upper chest the cup can only be guessed from your other measures: cup ${orWords(guesses)}. The plan does not go by that: measure the upper chest.`;
}

/** "Size 12, likely (about 80 of 100), else 14"; "Size 12 (about 55 of 100), or 14 (40)". What is picked stands first. */
function chanceWords(what: string, chances: readonly Chance[], picked: string | null): string {
  const own = chances.find(({ label }) => label !== null && label === picked);
  if (own === undefined) return `${what}: not on this chart`;
  const [other] = chances.filter((one) => one.label !== null && one !== own);
  const of = rounded(own.probability);
  const name = `${what} ${own.label ?? ""}`;
  if (of >= NEARLY_SURE * 100) return `${name}, nearly sure (${ofHundred(own.probability)})`;
  if (other === undefined) return `${name} (${ofHundred(own.probability)})`;
  if (of >= LIKELY * 100) return `${name}, likely (${ofHundred(own.probability)}), else ${other.label ?? ""}`;
  return `${name} (${ofHundred(own.probability)}), or ${other.label ?? ""} (${figure(other.probability)})`;
}

const DONE: Readonly<Record<BustDone, string>> = {
  nothing: "no bust alteration",
  full: "a full bust adjustment",
  small: "a small bust adjustment",
};

const BUST: Readonly<Record<BustDone, string>> = { nothing: "as printed", full: "made fuller", small: "made smaller" };

/** What is done at the bust, and what else it may have to be; null where nearly surely nothing is, or she set it herself. */
export function bustDoneSentence({ bust, picked, own, doubted }: HowSure): string | null {
  // Off the chart nothing is asked of the bust, and nothing is not "no alteration".
  if (own.bust || picked.size === null) return null;
  const done = picked.bust;
  if (doubted.includes("bust")) return `${capital(DONE[done])}: doubted.`;
  const others = (["nothing", "full", "small"] as const).filter((other) => other !== done && rounded(bust[other]) > 0);
  if (done === "nothing" && rounded(bust.nothing) >= NEARLY_SURE * 100) return null;
  const said = `${capital(DONE[done])}: ${ofHundred(bust[done])}`;
  const rest = others.map((other) => `${DONE[other]} ${figure(bust[other])}`);
  return rest.length === 0 ? `${said}.` : `${said}; ${orWords(rest)}.`;
}

/** Why the likeliest way, or the likeliest size, cup or bust by itself, is not the one that is cut; null where all are. */
export function besideLikeliestSentence(sure: HowSure): string | null {
  return sure.doubted.includes("baseSize") ? null : (besideWaySentence(sure) ?? besidePartSentence(sure));
}

function besideWaySentence({ ways, picked, own }: HowSure): string | null {
  const [first] = ways;
  const cut = ways.find((way) => isSameWay(way, picked));
  if (first === undefined || first.size === null || picked.size === null || isSameWay(first, picked)) return null;
  if (rounded(first.probability) <= rounded(cut?.probability ?? 0)) return null;
  const [taken, other] = [wayWords(picked, own.bust), wayWords(first, own.bust)];
  return (
    `As your girths were read, ${taken} asks least of the cloth, so it is cut; over all that they may truly be, ` +
    `${other} comes up more often (${figure(first.probability)} of 100).`
  );
}

/** Together likeliest, and yet one of them by itself is not: its chances, read alone, would speak against the pick. */
function besidePartSentence({ sizes, cups, cupsGuessed, bust, picked, own }: HowSure): string | null {
  if (picked.size === null) return null;
  const done = (["nothing", "full", "small"] as const).toSorted((a, b) => bust[b] - bust[a])[0] ?? picked.bust;
  const others = [
    ...(own.baseSize ? [] : likelierThan(sizes, picked.size).map((label) => `size ${label}`)),
    ...(own.cup || cupsGuessed ? [] : likelierThan(cups, picked.cup).map((label) => `cup ${label}`)),
    ...(own.bust || rounded(bust[done]) <= rounded(bust[picked.bust]) ? [] : [DONE[done]]),
  ];
  if (others.length === 0) return null;
  return (
    `${capital(listWords(others))} ${plural(others.length, { one: "comes", other: "come" })} up more often over all that your girths may be; ` +
    `as they were read, ${wayWords(picked, own.bust)} asks least of the cloth, so it is cut.`
  );
}

/** The likeliest, where that is not the one picked. */
function likelierThan(chances: readonly Chance[], picked: string | null): readonly string[] {
  const own = chances.find(({ label }) => label === picked)?.probability ?? 0;
  const [first] = chances.filter(({ label }) => label !== null).toSorted((a, b) => b.probability - a.probability);
  return first === undefined || first.label === null || picked === null || rounded(first.probability) <= rounded(own)
    ? []
    : [first.label];
}

const isSameWay = (one: WayTaken, other: WayTaken): boolean =>
  one.size === other.size && one.cup === other.cup && one.bust === other.bust;

/** "size 12, cup C with no bust alteration". */
const wayWords = ({ size, cup, bust }: WayTaken, isBustOwn: boolean): string =>
  `size ${size ?? ""}${cup === null ? "" : `, cup ${cup}`}${isBustOwn ? "" : ` with ${DONE[bust]}`}`;

/** "Size 12, cup D instead: about 25 of 100"; null where nothing else is likely enough to be told. */
export function runnerUpWords({ runnerUp, doubted }: HowSure): string | null {
  if (runnerUp === null || doubted.includes("baseSize") || rounded(runnerUp.probability) === 0) return null;
  const { size, cup, probability } = runnerUp;
  return `Size ${size}${cup === null ? "" : `, cup ${cup}`} instead: ${ofHundred(probability)}`;
}

/** Of the lines on the frame that is cut: what another frame would do to them is told with the size. */
export function linesSentence(lines: readonly LineBand[], unit: LengthUnit): string | null {
  if (lines.length === 0) return null;
  const [first, second] = lines;
  const amounts = lines.map(({ side }) => formatAmount(side, unit));
  const where = "either way of where your measures put it";
  const ends = "at each side seam, nine times in ten";
  if (first === undefined) return null;
  if (second === undefined)
    return `On this frame the true ${first.level} line lies within ${amounts[0] ?? ""} ${where}, ${ends}.`;
  if (amounts[0] === amounts[1])
    return `On this frame the true ${first.level} and ${second.level} lines lie within ${amounts[0] ?? ""} either way of where your measures put them, ${ends}.`;
  return `On this frame the true ${first.level} line lies within ${amounts[0] ?? ""} ${where}, the ${second.level} line within ${amounts[1] ?? ""}, ${ends}.`;
}

/** "Waist line: doubted."; null where no line that is drawn rests on a doubted reading. */
export function doubtedLinesSentence({ surety }: HowSure): string | null {
  const levels = (["waist", "hip"] as const).filter((level) => surety[level] === "doubted");
  if (levels.length === 0) return null;
  return `${capital(listWords(levels))} ${plural(levels.length, { one: "line", other: "lines" })}: doubted.`;
}

/** What to measure next, and what that settles; the chances say of what they are. */
export interface NextWords {
  /** "Measure the bust and the upper chest twice more" */
  readonly ask: string;
  readonly why: string;
}

export function nextWords(next: NextMeasure, hasCups: boolean, unit: LengthUnit): NextWords {
  const names = listWords(next.measures.map((name) => `the ${measureWords(name).short}`));
  const ask = `Measure ${names}${next.taken ? " twice more" : ", twice"}`;
  if (next.settles === "line") {
    const level = measureWords(next.measures[0]).short;
    return {
      ask,
      why: `the ${level} line is then within ${formatAmount(next.after, unit)} at each side seam, not ${formatAmount(next.before, unit)}.`,
    };
  }
  const what = hasCups ? "size, cup and bust alteration together" : "size and bust alteration together";
  return {
    ask,
    why: `that settles most. The likeliest way (${what}) goes from ${ofHundred(next.before)} to ${ofHundred(next.after)}, as far as can be foretold.`,
  };
}

/** Said where nothing is settled and yet readings would tell little. */
export const NOTHING_NEXT =
  "Two more readings of any measure would settle little more. Cut it this way, and let the toile decide.";

/** One bar: a way to cut it, or what is only guessed. */
interface SureBar {
  readonly label: string;
  readonly chance: number;
  /** Of 100, as the caption says. */
  readonly said: string;
  /** What the planner takes. */
  readonly picked: boolean;
}

export interface SureBars {
  readonly caption: string;
  readonly bars: readonly SureBar[];
}

const MOST_BARS = 4;

/** The ways as bars, the likeliest first, what is left over last. */
export function sureBars(sure: HowSure): readonly SureBars[] {
  const { ways, picked, cups, cupsGuessed, doubted } = sure;
  if (doubted.includes("baseSize")) return [];
  const tellsBust = cups.length === 0 && sure.girths.upperChest !== null;
  const labelOf = (way: WayTaken): string => {
    if (way.size === null) return "off this chart";
    if (cups.length > 0 && !cupsGuessed) return `Size ${way.size}, cup ${way.cup ?? ""}`;
    return tellsBust ? `Size ${way.size}, bust ${BUST[way.bust]}` : `Size ${way.size}`;
  };
  const sums = new Map<string, number>();
  for (const way of ways) sums.set(labelOf(way), (sums.get(labelOf(way)) ?? 0) + way.probability);
  const main = {
    caption: sure.girths.upperChest === null ? "Size, by the bust: of 100, about" : "Ways to cut it: of 100, about",
    bars: barsOf([...sums], labelOf(picked)),
  };
  if (!cupsGuessed || cups.length === 0) return [main];
  const guessed = cups.map(({ label, probability }): [string, number] => [
    label === null ? "off this chart" : `Cup ${label}`,
    probability,
  ]);
  return [main, { caption: "Cup, guessed from your other measures: of 100, about", bars: barsOf(guessed, null) }];
}

const barFigure = (chance: number): string =>
  figure(chance).replace("more than", "over").replace("fewer than", "under");

function barsOf(sums: readonly (readonly [string, number])[], picked: string | null): readonly SureBar[] {
  const sorted = sums.toSorted((a, b) => b[1] - a[1]);
  const shown = sorted.filter(([label, chance], at) => label === picked || (at < MOST_BARS && rounded(chance) > 0));
  const left = 1 - shown.reduce((sum, [, chance]) => sum + chance, 0);
  const bars = shown.map(([label, chance]) => ({ label, chance, said: barFigure(chance), picked: label === picked }));
  return rounded(left) === 0
    ? bars
    : [...bars, { label: "Any other", chance: left, said: barFigure(left), picked: false }];
}

/** Why: what each girth is good to, two times in three. */
export function sureSum(sure: HowSure, body: MeasuredBody, unit: LengthUnit): readonly SumLine[] {
  const read = (["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"] as const).flatMap((name) =>
    readLine(name, body, unit),
  );
  const { bust, upperChest, estimate } = sure.girths;
  const difference =
    upperChest === null
      ? []
      : [
          {
            words: "Bust less upper chest, both errors together",
            figure: `± ${formatAmount(Math.hypot(bust.spread, upperChest.spread), unit)}`,
          },
        ];
  const guess =
    estimate === null
      ? []
      : [
          {
            words: `Your upper chest, guessed at ${formatLength(estimate.value, unit)} from the others`,
            figure: `± ${formatAmount(estimate.spread, unit)}`,
          },
        ];
  return [...read, ...difference, ...guess];
}

function readLine(name: MeasureName, body: MeasuredBody, unit: LengthUnit): readonly SumLine[] {
  const taken = body[name];
  if (taken === undefined) return [];
  return [
    {
      words: `Your ${measureWords(name).short}, read ${timesWords(taken.readings.length)}`,
      figure: `± ${formatAmount(taken.spread, unit)}`,
    },
  ];
}

export const SURE_NOTE =
  "Two times in three the true girth lies no further from what you read. What a single reading is good to is common practice, no source; " +
  "readings that agree make their mean surer, by the square root of their number. The chances are what the planner would pick over all that your girths may be.";
