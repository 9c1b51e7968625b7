/**
 * How well a few causes together explain what was seen: each cause shows its signs as likely as the table says, any sign may be
 * seen falsely, and what is there may be missed. Causes are weighed by the probability of the whole record, amounts included.
 *
 * @source noisy-or, as in networks of causes and findings; amounts by weighted least squares. The probabilities are our own choice.
 */
import { HALVES, type Half } from "../decisions/alteration";
import type { TrialCheck, TrialPlace, TrialSign } from "../decisions/trial";
import { invariant } from "../result";
import { cholesky, entry, solveLower } from "../statistics/linear";
import { CLOTH_READ, CLOTH_WORTH_ALTERING } from "../tolerance";
import type { Mm } from "../units";
import type { ReadLine } from "./recordLines";
import { RULES, type Rule, type Shown } from "./rules";

/** A row of the table supposed on one half or on both. */
export interface Supposed {
  readonly rule: Rule;
  readonly halves: readonly Half[];
}

export interface Weighed {
  readonly causes: readonly Supposed[];
  /** Of each cause: cloth on one half, mm, and whether anything measured tells it. */
  readonly amounts: readonly Mm[];
  readonly measured: readonly boolean[];
  /** Logarithm of a probability, up to a constant that is the same for all sets of causes. */
  readonly score: number;
}

/** How probable each thing is before anything was seen. */
const PRIOR = {
  /** What was pinned, slit or marked is seen falsely less often than what was only looked at: by so much. */
  falseMeasured: 0.65,
  /** One cause more, as a logarithm; and that it is on one half alone. */
  cause: -2.2,
  oneHalf: -0.4,
  /** That she ticks a thing as right that is not. */
  wrongTick: 0.25,
  /** How much a sign that was not told counts as one that is not there: she does not look at everything. */
  lookedFor: 1,
  /** That a cause is still there though it was altered for; and that what was altered was not so, and shows the other way. */
  altered: -0.7,
  undone: 0.5,
} as const;

/** Signs that a tick says are not there. */
export const DENIED_BY: Readonly<Partial<Record<TrialCheck, readonly (readonly [TrialPlace, TrialSign])[]>>> = {
  hemLevel: [
    ["frontHem", "drops"],
    ["frontHem", "ridesUp"],
    ["backHem", "drops"],
    ["backHem", "ridesUp"],
  ],
  waistOnWaist: [
    ["frontWaist", "drops"],
    ["frontWaist", "ridesUp"],
    ["backWaist", "drops"],
    ["backWaist", "ridesUp"],
  ],
  sideSeamsUpright: [
    ["sideSeam", "leansForward"],
    ["sideSeam", "leansBack"],
  ],
  // A seam that lies too far back or out can stay there: only what slips does not stay.
  shouldersStay: [["strap", "slips"]],
};

/** Where no cause shows a sign. */
const UNHIDDEN: Readonly<Record<Half, number>> = { left: 1, right: 1 };

/**
 * Signs that none of the causes shows: seen falsely where all is as the table has it, and more of them, most of all on one half,
 * where something else is amiss that the table does not know.
 */
const WORLDS = [
  { share: 0.75, onBoth: 0.003, onOne: 0.003 },
  { share: 0.25, onBoth: 0.02, onOne: 0.025 },
] as const;
type World = (typeof WORLDS)[number];

const keyOf = (place: TrialPlace, sign: TrialSign): string => `${place} ${sign}`;

/** All places and signs that any row knows of, numbered. */
const KNOWN: ReadonlyMap<string, number> = new Map(
  [...new Set(RULES.flatMap(({ shows }) => shows.map(({ place, sign }) => keyOf(place, sign))))].map((key, at) => [
    key,
    at,
  ]),
);
const NUMBER_OF: ReadonlyMap<Shown, number> = new Map(
  RULES.flatMap(({ shows }) => shows.map((shown) => [shown, KNOWN.get(keyOf(shown.place, shown.sign)) ?? 0] as const)),
);

/** One place and sign: on which halves it was seen, whether a tick denies it, and how likely it is missed whatever is supposed. */
interface Slot {
  readonly seen: Readonly<Record<Half, boolean>>;
  readonly isMeasured: boolean;
  readonly isDenied: boolean;
  readonly miss: Readonly<Record<Half, number>>;
  /** What it says where nothing more is supposed, in each world. */
  readonly ofNothing: readonly number[];
}

/** A garment looked at: this trial's, or an earlier one's of the same work. */
export interface Look {
  readonly lines: readonly ReadLine[];
  readonly checks: Readonly<Partial<Record<TrialCheck, boolean>>>;
  /** What has been altered since: it was amiss then, and is so no more. */
  readonly altered: readonly Supposed[];
}

interface Looked {
  readonly lines: readonly ReadLine[];
  readonly slots: readonly Slot[];
}

/** All that was looked at. */
export interface Findings {
  /** Of the trial that is read. */
  readonly lines: readonly ReadLine[];
  readonly looks: readonly Looked[];
  /** What it all says where nothing that the table knows is amiss, in each world. */
  readonly ofNothing: readonly number[];
  /** Lines that tell an amount: of this trial, and of earlier ones where nothing altered since shows there. */
  readonly measured: readonly { readonly line: ReadLine; readonly cloth: Mm }[];
  readonly perAmount: Map<Supposed, readonly number[]>;
  /** What was altered since an earlier trial. */
  readonly altered: readonly Supposed[];
}

function looked({ lines, checks, altered }: Look): Looked & { readonly unknown: readonly Slot[] } {
  const denied = new Set(
    Object.entries(DENIED_BY).flatMap(([check, signs]) =>
      Object.entries(checks).some(([name, is]) => name === check && is)
        ? signs.map(([place, sign]) => keyOf(place, sign))
        : [],
    ),
  );
  const missed = new Map<string, Record<Half, number>>();
  for (const { rule, halves } of altered)
    for (const { place, sign, likely, marked } of rule.shows) {
      if (marked !== undefined && isSeenOtherWay(marked, lines, place, sign)) continue;
      const miss = missed.get(keyOf(place, sign)) ?? { left: 1, right: 1 };
      for (const half of halves) miss[half] *= 1 - likely;
      missed.set(keyOf(place, sign), miss);
    }
  const slotOf = (key: string): Slot => {
    const here = lines.filter((line) => keyOf(line.place, line.sign) === key);
    const seenOn = (half: Half): boolean => here.some(({ halves }) => halves.includes(half));
    const slot = {
      isMeasured: here.some(({ measured, mark }) => measured !== null || mark !== null),
      seen: { left: seenOn("left"), right: seenOn("right") },
      isDenied: denied.has(key),
      miss: missed.get(key) ?? UNHIDDEN,
    };
    return { ...slot, ofNothing: WORLDS.map((world) => toldBy(slot, slot.miss.left, slot.miss.right, world)) };
  };
  const unknown = [...new Set(lines.map(({ place, sign }) => keyOf(place, sign)))].filter((key) => !KNOWN.has(key));
  return { lines, slots: [...KNOWN.keys()].map(slotOf), unknown: unknown.map(slotOf) };
}

/**
 * What was seen and what was not, ready to be weighed.
 *
 * @param look    this trial
 * @param earlier earlier trials of the same work
 */
export function findingsOf(look: Look, earlier: readonly Look[] = []): Findings {
  const looks = [look, ...earlier].map(looked);
  const all = looks.flatMap(({ slots, unknown }) => [...slots, ...unknown]);
  const then = earlier.flatMap(({ lines, altered }) =>
    lines.filter((line) => !altered.some((cause) => isShownBy(cause, line) !== null)),
  );
  return {
    lines: look.lines,
    looks,
    ofNothing: WORLDS.map((_, at) => all.reduce((sum, slot) => sum + invariant(slot.ofNothing[at], "world"), 0)),
    measured: [...look.lines, ...then].flatMap((line) => {
      const cloth = clothOf(line);
      return cloth === null ? [] : [{ line, cloth }];
    }),
    perAmount: new Map(),
    altered: earlier.flatMap(({ altered }) => altered),
  };
}

const shownAt = (rule: Rule, line: ReadLine): Shown | undefined =>
  rule.shows.find(({ place, sign, marked }) => place === line.place && sign === line.sign && isThatWay(marked, line));

const isThatWay = (marked: Shown["marked"], { mark }: ReadLine): boolean =>
  marked === undefined || mark === null || (marked === "down" ? mark.down : -mark.down) >= CLOTH_WORTH_ALTERING;

function isSeenOtherWay(way: "down" | "up", lines: readonly ReadLine[], place: TrialPlace, sign: TrialSign): boolean {
  const here = lines.filter((line) => line.place === place && line.sign === sign);
  return here.length > 0 && !here.some((line) => isThatWay(way, line));
}

/** Whether a cause, where it is supposed, shows what a line tells. */
export const isShownBy = ({ rule, halves }: Supposed, line: ReadLine): Shown | null =>
  halves.some((half) => line.halves.includes(half)) ? (shownAt(rule, line) ?? null) : null;

/** Cloth by a line as it was measured: a fold has its depth twice; of a mark how far down it lies. */
function clothOf({ measured, mark }: ReadLine): Mm | null {
  if (mark !== null) return mark.down;
  if (measured === null) return null;
  return measured.way === "pinched" ? 2 * measured.amount : measured.amount;
}

/** What each mm of a cause shows of cloth at a line; null: the line does not tell its amount. */
function clothPerAmount(shown: Shown, line: ReadLine): number | null {
  if (line.mark !== null) return shown.marked === undefined ? null : shown.marked === "down" ? 1 : -1;
  if (line.measured === null) return null;
  const { way } = line.measured;
  const times = shown.tells?.[way];
  return times === undefined ? null : (way === "pinched" ? 2 : 1) / times;
}

/** Of a cause, what each mm of it shows at each measured line. */
function perAmountOf(cause: Supposed, { measured, perAmount }: Findings): readonly number[] {
  const known = perAmount.get(cause);
  if (known !== undefined) return known;
  const found = measured.map(({ line }) => {
    const shown = isShownBy(cause, line);
    return shown === null ? 0 : (clothPerAmount(shown, line) ?? 0);
  });
  perAmount.set(cause, found);
  return found;
}

/** Amounts of a set by all that was measured of it: what is seen at one place is what all causes show there together. */
function amountsOf(
  causes: readonly Supposed[],
  findings: Findings,
): { readonly amounts: readonly Mm[]; readonly measured: readonly boolean[]; readonly misfit: number } {
  const columns = causes.map((cause) => perAmountOf(cause, findings));
  const rows = findings.measured.flatMap(({ cloth }, line) => {
    const coefficients = columns.map((column) => column[line] ?? 0);
    return coefficients.some((one) => one !== 0) ? [{ coefficients, cloth }] : [];
  });
  // What nothing tells stays at the usual first try, held by a weak tie.
  const tie = (CLOTH_READ / USUAL_SPREAD) ** 2;
  const normal = causes.map((_, i) =>
    causes.map((__, j) =>
      rows.reduce((sum, { coefficients }) => sum + (coefficients[i] ?? 0) * (coefficients[j] ?? 0), i === j ? tie : 0),
    ),
  );
  const right = causes.map((cause, i) =>
    rows.reduce((sum, { coefficients, cloth }) => sum + (coefficients[i] ?? 0) * cloth, tie * cause.rule.usual),
  );
  const amounts = solve(normal, right);
  const misfit = rows.reduce((sum, { coefficients, cloth }) => {
    const shown = coefficients.reduce((total, one, at) => total + one * (amounts[at] ?? 0), 0);
    return sum + Math.min(((shown - cloth) / CLOTH_READ) ** 2 / 2, WORST_MISFIT);
  }, 0);
  const measured = causes.map((_, i) => rows.some(({ coefficients }) => (coefficients[i] ?? 0) !== 0));
  // Each amount beyond what it takes to find the causes' own could have been any other: that it agrees speaks for them.
  const agreeing = Math.max(0, rows.length - measured.filter(Boolean).length);
  return { amounts, measured, misfit: misfit - agreeing * AGREES };
}

/** How far from the usual first try an amount may be where hardly anything tells it, mm (our own choice). */
const USUAL_SPREAD: Mm = 30;
/** What an amount that was to be expected says, as a logarithm: of amounts up to about 30 mm that are as likely as each other. */
const AGREES = Math.log(30 / (CLOTH_READ * Math.sqrt(2 * Math.PI)));
/** No one line speaks louder against a set of causes than a sign that is missing. */
const WORST_MISFIT = 3;

function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const lower = cholesky(matrix);
  const half = solveLower(lower, right);
  const solution = half.map(() => 0);
  for (let row = half.length - 1; row >= 0; row -= 1) {
    let sum = invariant(half[row], "entry");
    for (let k = row + 1; k < half.length; k += 1) sum -= entry(lower, k, row) * invariant(solution[k], "entry");
    solution[row] = sum / entry(lower, row, row);
  }
  return solution;
}

/** Small causes show less: of their signs hardly any at what is left alone, all where it cannot be missed (our own choice). */
const seenShare = (amount: Mm): number =>
  Math.min(Math.max((amount - CLOTH_WORTH_ALTERING / 2) / (2 * CLOTH_WORTH_ALTERING), 0.1), 1);

/** The probability of the record where these causes are there and no others; null where an amount is none. */
export function weigh(causes: readonly Supposed[], findings: Findings): Weighed | null {
  const { amounts, measured, misfit } = amountsOf(causes, findings);
  const marked = causes.map(({ rule }) => rule.usual === 0);
  if (amounts.some((amount, at) => marked[at] !== true && amount < CLOTH_WORTH_ALTERING)) return null;
  const prior = causes.reduce(
    (sum, cause) =>
      sum + PRIOR.cause + (cause.halves.length === HALVES.length ? 0 : PRIOR.oneHalf) + since(cause, findings),
    0,
  );
  const shares = amounts.map((amount, at) => (marked[at] === true ? 1 : seenShare(amount)));
  const worlds = WORLDS.map((world, at) => Math.log(world.share) + invariant(findings.ofNothing[at], "world"));
  for (const look of findings.looks) addTold(worlds, causes, shares, look);
  return { causes, amounts, measured, score: prior + logOfSum(worlds) - misfit };
}

/** What speaks against a cause that was altered for already, and for one that undoes what was altered. */
function since({ rule, halves }: Supposed, { altered }: Findings): number {
  const on = altered.filter((one) => one.halves.some((half) => halves.includes(half)));
  if (on.some((one) => one.rule.name === rule.name)) return PRIOR.altered;
  return on.some((one) => isOpposite(one.rule, rule)) ? PRIOR.undone : 0;
}

const isOpposite = (a: Rule, b: Rule): boolean =>
  a.changes.some((one) =>
    b.changes.some(
      (other) =>
        "by" in one &&
        "by" in other &&
        one.by === -other.by &&
        one.of === other.of &&
        (one.of !== "fit" || other.of !== "fit" || one.fits[0] === other.fits[0]),
    ),
  );

/** Adds, in each world, what a look says of these causes beyond what it says of nothing. */
function addTold(
  worlds: number[],
  causes: readonly Supposed[],
  shares: readonly number[],
  { lines, slots }: Looked,
): void {
  const [left, right] = [new Float64Array(slots.length).fill(1), new Float64Array(slots.length).fill(1)];
  const touched = new Set<number>();
  for (const [at, { rule, halves }] of causes.entries()) {
    const share = invariant(shares[at], "share");
    const [onLeft, onRight] = [halves.includes("left"), halves.includes("right")];
    for (const shown of rule.shows) {
      const { place, sign, likely, marked: way } = shown;
      // A mark that lies the other way is none that this cause shows.
      if (way !== undefined && isSeenOtherWay(way, lines, place, sign)) continue;
      const number = invariant(NUMBER_OF.get(shown), "sign");
      const miss = 1 - likely * share;
      if (onLeft) left[number] = entryOf(left, number) * miss;
      if (onRight) right[number] = entryOf(right, number) * miss;
      touched.add(number);
    }
  }
  for (const number of touched) {
    const slot = invariant(slots[number], "sign");
    const [missLeft, missRight] = [slot.miss.left * entryOf(left, number), slot.miss.right * entryOf(right, number)];
    for (const [at, world] of WORLDS.entries())
      worlds[at] =
        invariant(worlds[at], "world") +
        toldBy(slot, missLeft, missRight, world) -
        invariant(slot.ofNothing[at], "world");
  }
}

const entryOf = (values: Float64Array, at: number): number => invariant(values[at], "entry");

/** The logarithm of a sum of what these are the logarithms of. */
function logOfSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

/** What a slot adds: both halves alike are one thing seen or not seen. */
function toldBy(slot: Omit<Slot, "ofNothing" | "miss">, missLeft: number, missRight: number, world: World): number {
  const { seen, isMeasured } = slot;
  const isAlike = seen.left === seen.right;
  const falseSign = (isAlike ? world.onBoth : world.onOne) * (isMeasured ? PRIOR.falseMeasured : 1);
  const left = toldOn(seen.left, slot.isDenied, missLeft, falseSign);
  if (isAlike && missLeft === missRight) return left;
  const both = left + toldOn(seen.right, slot.isDenied, missRight, falseSign);
  // Seen on both, and shown on one alone: still one thing seen. Where it is not seen, the half that should show it speaks for itself.
  return isAlike && seen.left ? both / HALVES.length : both;
}

function toldOn(isSeen: boolean, isDenied: boolean, miss: number, falseSign: number): number {
  const hidden = (1 - falseSign) * miss;
  if (isSeen) return Math.log(1 - hidden);
  return PRIOR.lookedFor * Math.log(hidden) + (isDenied ? Math.log(1 - (1 - PRIOR.wrongTick) * (1 - miss)) : 0);
}
