/**
 * Two versions of a work made one: what two tabs, or two copies of a file, changed since they were the same. Every decision
 * is merged by itself; one that both took differently is named, and the caller keeps the version that gave way.
 */
import type { OwnPattern } from "../core/decisions/ownPattern";
import type { Tissue } from "../core/decisions/tissue";
import type { CupVersion, SizeChart, SizeRow } from "../core/chart/sizeChart";
import { isClash, type Alteration } from "../core/decisions/alteration";
import type { Allowances } from "../core/decisions/allowances";
import type { Dress, DressPart } from "../core/decisions/dress";
import type { Collision } from "../core/decisions/collision";
import { LIMITS } from "../core/decisions/limits";
import {
  type Closure,
  type Ease,
  type Pattern,
  type PrintedFigure,
  type PrintedLength,
  type PrintedLengths,
} from "../core/decisions/pattern";
import { compareSeen, isSeenOf, type SeenOfDart } from "../core/decisions/seenAtDart";
import { isBefore } from "../core/decisions/tradeOrder";
import type { Observation, Trial } from "../core/decisions/trial";
import type { Trusted } from "../core/decisions/trusted";
import type { Picks } from "../core/decisions/decided";
import type { Work } from "../core/decisions/work";
import type { MeasureName } from "../core/measures/measure";
import type { MeasureSet, Readings, Tapes } from "../core/measures/tape";
import type { SeamName } from "../core/pattern/piece";
import { pickOn, relabelled } from "../core/plan/commands";
import { isSame } from "../core/same";
import type { Mm } from "../core/units";
import {
  collided,
  dictionary,
  fields,
  keyedList,
  remembering,
  sharedWith,
  threeWay,
  whole,
  type Entries,
  type Merge,
  type Merging,
  type Parts,
  type Versions,
} from "./threeWay";

export interface MergedWorks {
  /** Where both sides changed something differently, theirs. */
  readonly work: Work;
  readonly collisions: readonly Collision[];
}

/**
 * @param base   what both set out from
 * @param mine   base with changes
 * @param theirs base with others
 * @returns a work that can be saved, with the changes of both, and what they changed differently. All that is not merged
 *          stays the very same object as in `mine` or `theirs`.
 */
export function mergeWorks(base: Work, mine: Work, theirs: Work): MergedWorks {
  const collisions: Collision[] = [];
  const collide = (collision: Collision): void => {
    if (!collisions.some((one) => isSame(one, collision))) collisions.push(collision);
  };
  const work = mergeOfWorks((merge) => merge)({ base, mine, theirs }, { prefers: "theirs", collide });
  return { work, collisions };
}

/**
 * The steps of a history with a change put under them, as if it had been made before them all: undoing them leaves it be.
 *
 * @param base   the work before the change
 * @param steps  the history, any versions of the work
 * @param theirs the work with the change
 * @returns as many steps. Where a step and the change collide, the step's own value stands. Neighbours share what they
 *          have alike, and are one object where they do not differ.
 */
export function rebaseHistory(base: Work, steps: readonly Work[], theirs: Work): readonly Work[] {
  if (isSame(base, theirs)) return steps;
  const merge = remembering(mergeOfWorks(remembering));
  return steps.map((mine) => merge({ base, mine, theirs }, { prefers: "mine", collide: () => {} }));
}

/** The same for the steps of a history: what each keeps of entries that could not be read is its own. */
export const rebaseSteps = (base: Work, steps: readonly Work[], theirs: Work): readonly Work[] =>
  rebaseHistory(base, steps, theirs).map((one, at) => {
    const { unread } = steps[at] ?? one;
    return one.unread === unread ? one : { ...one, unread };
  });

type Wrap = <T>(merge: Merge<T>) => Merge<T>;

function mergeOfWorks(wrap: Wrap): Merge<Work> {
  const others = fields<Omit<Work, "pattern" | "picks">>({
    name: whole({ of: "name" }),
    wearer: whole({ of: "wearer" }),
    invented: whole({ of: "invented" }),
    unit: whole({ of: "unit" }),
    paper: whole({ of: "paper" }),
    age: whole({ of: "age" }),
    bustRadius: whole({ of: "bustRadius" }),
    sheetFormat: whole({ of: "sheetFormat" }),
    printerMargin: whole({ of: "printerMargin" }),
    tapes: wrap(present(mergeTapes)),
    trusted: mergeTrusted,
    easeWanted: present(easeWanted),
    alterations: wrap(present(mergeAlterations)),
    seen: wrap(mergeSeen),
    allowances: mergeAllowances,
    dress: mergeDress,
    trials: wrap(mergeTrials),
    begunFrom: whole<Work["begunFrom"]>({ of: "begunFrom" }),
    standingLeft: mergeStandingLeft,
    unread: wrap(present(mergeUnread)),
  });
  const chosen = wrap(mergePattern);
  return (versions, merging) =>
    threeWay(versions, () => {
      const { pattern, picks } = chosen(each(versions, patternAndPicks), merging);
      const merged: Work = { ...others(versions, merging), pattern, picks };
      return sharedWith(sharedWith(merged, versions.theirs), versions.mine);
    });
}

const each = <T, U>({ base, mine, theirs }: Versions<T>, part: (of: T) => U): Versions<U> => ({
  base: part(base),
  mine: part(mine),
  theirs: part(theirs),
});

/** For a field that is always there. */
const present =
  <T>(merge: Merge<T>): Merge<T | undefined> =>
  ({ base, mine, theirs }, merging) =>
    base === undefined || mine === undefined || theirs === undefined ? theirs : merge({ base, mine, theirs }, merging);

const level = (of: "patternEase" | "easeWanted", name: keyof Ease): Collision => ({ of, level: name });

const easeWanted = fields<Work["easeWanted"]>({
  bust: whole(level("easeWanted", "bust")),
  waist: whole(level("easeWanted", "waist")),
  hip: whole(level("easeWanted", "hip")),
});

/** Sets of readings go by their place, as long as both sides have as many as before. */
const mergeTapes: Merge<Tapes> = (versions, merging) =>
  threeWay(versions, () => {
    const { base, mine, theirs } = versions;
    if (mine.length !== base.length || theirs.length !== base.length)
      return collided(versions, merging, { of: "tapes" });
    return theirs.map((set, at) => {
      const [before, own] = [base[at], mine[at]];
      return before === undefined || own === undefined
        ? set
        : mergeSet(at)({ base: before, mine: own, theirs: set }, merging);
    });
  });

const mergeSet = (set: number): Merge<MeasureSet> =>
  fields<MeasureSet>({ taken: whole({ of: "taken", set }), readings: present(mergeReadings(set)) });

function mergeReadings(set: number): Merge<Readings> {
  const of = (measure: MeasureName) => whole<Readings[MeasureName]>({ of: "measure", set, measure });
  return fields<Readings>({
    bustGirth: of("bustGirth"),
    upperChestGirth: of("upperChestGirth"),
    underBustGirth: of("underBustGirth"),
    waistGirth: of("waistGirth"),
    hipGirth: of("hipGirth"),
    height: of("height"),
    bustPointWidth: of("bustPointWidth"),
    sideNeckToBustPoint: of("sideNeckToBustPoint"),
    backWaistLength: of("backWaistLength"),
    frontWaistLength: of("frontWaistLength"),
    neckBaseGirth: of("neckBaseGirth"),
    shoulderLength: of("shoulderLength"),
    acrossBack: of("acrossBack"),
    acrossFront: of("acrossFront"),
  });
}

interface PatternAndPicks {
  readonly pattern: Pattern;
  readonly picks: Picks;
}

const patternAndPicks = ({ pattern, picks }: Work): PatternAndPicks => ({ pattern, picks });

/** Picks of sizes name lines of the chart, so the two are merged together. */
const mergePattern: Merge<PatternAndPicks> = (versions, merging) =>
  threeWay(versions, () => {
    const { base, mine, theirs } = versions;
    // Of two patterns mixed nobody could cut: one side's other pattern stands or falls as a whole.
    if ([mine, theirs].some(({ pattern }) => isAnother(base.pattern, pattern)))
      return collided(versions, merging, { of: "pattern" });
    const patterns = each(versions, (one) => one.pattern);
    const sizes = isRenamedBySome(patterns) ? chartOf(patterns, merging)?.sizes : undefined;
    const pattern = mergeParts(
      each(patterns, (own) => withLengthsOn(own, sizes)),
      merging,
    );
    const picks = carryPicks(versions, pattern.chart.sizes);
    const { prefers, collide } = merging;
    if (picks.lost[prefers].length > 0) {
      // The lines that the pick lies between are no longer neighbours.
      collide({ of: "sizes" });
      return versions[prefers];
    }
    for (const pick of picks.lost[prefers === "mine" ? "theirs" : "mine"]) collide({ of: "pick", pick });
    return { pattern, picks: mergePicks(picks.carried, merging) };
  });

/** The chart that three patterns come to, asked for beforehand: what collides in it is told when they are merged. */
const chartOf = (patterns: Versions<Pattern>, merging: Merging): SizeChart | undefined =>
  mergeChart(
    each(patterns, ({ chart }) => chart),
    { ...merging, collide: () => {} },
  );

/** Whether a side has as many sizes as before and calls one otherwise; else what one took out and the other put in is no rename. */
const isRenamedBySome = ({ base, mine, theirs }: Versions<Pattern>): boolean =>
  [mine, theirs].some(
    ({ chart: { sizes } }) =>
      sizes.length === base.chart.sizes.length && sizes.some(({ label }, at) => label !== base.chart.sizes[at]?.label),
  );

/** What a pattern says of lengths goes by the labels of its sizes: as they are on the merged chart. */
function withLengthsOn(pattern: Pattern, sizes: readonly SizeRow[] | undefined): Pattern {
  if (pattern.lengths === undefined || sizes === undefined) return pattern;
  const lengths = relabelled(pattern.lengths, pattern.chart.sizes, sizes);
  return lengths === pattern.lengths ? pattern : { ...pattern, lengths };
}

/** Whether a pattern was put in place of another: by another name, and with none of its lines. */
const isAnother = (base: Pattern, now: Pattern): boolean =>
  base.name !== now.name &&
  base.chart.sizes.length > 0 &&
  !base.chart.sizes.some((row) => now.chart.sizes.some((other) => isSame(row, other)));

interface CarriedPicks {
  readonly carried: Versions<Picks>;
  /** The picks that a side made and that have no place among the merged lines. */
  readonly lost: { readonly mine: readonly ("waist" | "hip")[]; readonly theirs: readonly ("waist" | "hip")[] };
}

/** Picks of lines go by where a line stands: each side's as it is on the merged chart. */
function carryPicks(versions: Versions<PatternAndPicks>, sizes: readonly SizeRow[]): CarriedPicks {
  const carry = ({ pattern, picks: { waist, hip, ...others } }: PatternAndPicks): Picks => {
    const before = pattern.chart.sizes;
    return { ...others, ...pickOn("waist", waist, before, sizes), ...pickOn("hip", hip, before, sizes) };
  };
  const carried = each(versions, (one) => sharedWith(carry(one), one.picks));
  const { base } = versions;
  const lostOf = (side: "mine" | "theirs"): readonly ("waist" | "hip")[] =>
    (["waist", "hip"] as const).filter((pick) => {
      const { pattern, picks } = versions[side];
      if (picks[pick] === undefined || carried[side][pick] !== undefined) return false;
      // One that only went along with that side's own lines was not made by it.
      const along = pickOn(pick, base.picks[pick], base.pattern.chart.sizes, pattern.chart.sizes)[pick];
      return picks[pick] !== along;
    });
  return { carried, lost: { mine: lostOf("mine"), theirs: lostOf("theirs") } };
}

const mergePicks = fields<Picks>({
  baseSize: whole({ of: "pick", pick: "baseSize" }),
  cup: whole({ of: "pick", pick: "cup" }),
  halfCups: whole<Picks["halfCups"]>({ of: "pick", pick: "halfCups" }),
  waist: whole({ of: "pick", pick: "waist" }),
  hip: whole({ of: "pick", pick: "hip" }),
  bustAlteration: whole({ of: "pick", pick: "bustAlteration" }),
});

const sizeLine = (label: string): Parts<SizeRow> => {
  const of = (column: keyof SizeRow): Collision => ({ of: "size", label, column });
  return {
    label: whole(of("label")),
    bust: whole(of("bust")),
    waist: whole(of("waist")),
    hip: whole(of("hip")),
    finishedBust: whole(of("finishedBust")),
    finishedWaist: whole(of("finishedWaist")),
    finishedHip: whole(of("finishedHip")),
  };
};

const cupLine = (label: string): Parts<CupVersion> => ({
  label: whole({ of: "cup", label, column: "label" }),
  difference: whole({ of: "cup", label, column: "difference" }),
});

interface Lines<T> {
  readonly list: Collision;
  readonly line: (label: string) => Collision;
  readonly parts: (label: string) => Parts<T>;
  readonly isBefore: (a: T, b: T) => boolean;
}

const sizeLines: Lines<SizeRow> = {
  list: { of: "sizes" },
  line: (label) => ({ of: "size", label, column: null }),
  parts: sizeLine,
  isBefore: (a, b) => a.bust < b.bust,
};

const cupLines: Lines<CupVersion> = {
  list: { of: "cups" },
  line: (label) => ({ of: "cup", label, column: null }),
  parts: cupLine,
  isBefore: (a, b) => a.difference < b.difference,
};

/** Lines of a chart: each by its label, or by its place where it was renamed, and every figure in it. */
const mergeLines =
  <T extends { readonly label: string }>({ list, line, parts, isBefore: comesBefore }: Lines<T>): Merge<readonly T[]> =>
  (versions, merging) =>
    threeWay(versions, () => {
      const { base, mine, theirs } = versions;
      const keyed = keyedLines(versions);
      if (keyed === null) return collided(versions, merging, list);
      const labels = new Map([...keyed.mine, ...keyed.theirs, ...keyed.base].map(([key, { label }]) => [key, label]));
      const merged = keyedList<T>({
        order: list,
        isBefore: comesBefore,
        item: (key) => (one, on) => {
          const label = labels.get(key) ?? "";
          return one.base === undefined || one.mine === undefined || one.theirs === undefined
            ? whole<T | undefined>(line(label))(one, on)
            : fields(parts(label))({ base: one.base, mine: one.mine, theirs: one.theirs }, on);
        },
      })(keyed, merging).map(([, row]) => row);
      const isTwice = !areLabelsOwn(merged) && [base, mine, theirs].every(areLabelsOwn);
      return merged.length > LIMITS.rows || isTwice
        ? collided(versions, merging, list)
        : sharedList(sharedList(merged, mine), theirs);
    });

const areLabelsOwn = (rows: readonly { readonly label: string }[]): boolean =>
  new Set(rows.map(({ label }) => label)).size === rows.length;

/** What each line is found by; null where lines cannot be told apart. */
function keyedLines<T extends { readonly label: string }>(
  versions: Versions<readonly T[]>,
): Versions<Entries<T>> | null {
  const { base, mine, theirs } = versions;
  const lists = [base, mine, theirs];
  if (!lists.every(areLabelsOwn))
    return lists.every(({ length }) => length === base.length)
      ? each(versions, (rows) => rows.map((row, at) => [String(at), row] as const))
      : null;
  const known = new Set(base.map(({ label }) => label));
  return each(versions, (rows) => {
    const now = new Set(rows.map(({ label }) => label));
    return rows.map((row, at) => {
      if (known.has(row.label)) return [`old ${row.label}`, row] as const;
      const before = rows.length === base.length ? base[at] : undefined;
      const isRenamed = before !== undefined && !now.has(before.label);
      return [isRenamed ? `old ${before.label}` : `new ${row.label}`, row] as const;
    });
  });
}

const sharedList = <T>(made: readonly T[], other: readonly T[]): readonly T[] =>
  made.length === other.length && made.every((one, at) => one === other[at]) ? other : made;

/** What the pattern says of one length: for all sizes, and for each. */
function mergePrinted(measure: PrintedLength): Merge<PrintedFigure | undefined> {
  const of = (size: string | null) => whole<Mm | undefined>({ of: "printedLength", measure, size });
  const bySize: Merge<PrintedFigure["bySize"]> = (versions, merging) => {
    const merged = dictionary<Mm>(of)(
      each(versions, (own) => own ?? {}),
      merging,
    );
    if (Object.keys(merged).length > LIMITS.rows)
      return collided(versions, merging, { of: "printedLength", measure, size: null });
    return Object.keys(merged).length === 0 ? undefined : merged;
  };
  const parts = fields<PrintedFigure>({ all: of(null), bySize });
  return (versions, merging) =>
    threeWay(versions, () => {
      const merged = parts(
        each(versions, (own) => own ?? {}),
        merging,
      );
      return Object.keys(merged).length === 0 ? undefined : merged;
    });
}

const printedLengths = fields<PrintedLengths>({
  backWaistLength: mergePrinted("backWaistLength"),
  frontWaistLength: mergePrinted("frontWaistLength"),
  shoulderLength: mergePrinted("shoulderLength"),
  acrossBack: mergePrinted("acrossBack"),
  acrossFront: mergePrinted("acrossFront"),
  neckBaseGirth: mergePrinted("neckBaseGirth"),
  bustPointWidth: mergePrinted("bustPointWidth"),
  sideNeckToBustPoint: mergePrinted("sideNeckToBustPoint"),
  underBustGirth: mergePrinted("underBustGirth"),
  height: mergePrinted("height"),
});

const mergePrintedLengths: Merge<PrintedLengths | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const merged = printedLengths(
      each(versions, (own) => own ?? {}),
      merging,
    );
    return Object.keys(merged).length === 0 ? undefined : merged;
  });

const mergeChart = present(
  fields<SizeChart>({
    sizes: present(mergeLines(sizeLines)),
    draftedDifference: whole({ of: "draftedDifference" }),
    cups: present(mergeLines(cupLines)),
  }),
);

const mergeParts = fields<Pattern>({
  name: whole({ of: "patternName" }),
  chart: mergeChart,
  ease: present(
    fields<Ease>({
      bust: whole(level("patternEase", "bust")),
      waist: whole(level("patternEase", "waist")),
      hip: whole(level("patternEase", "hip")),
    }),
  ),
  length: whole({ of: "length" }),
  closure: whole<Closure | undefined>({ of: "closure" }),
  style: whole({ of: "style" }),
  strap: whole({ of: "strap" }),
  lengths: mergePrintedLengths,
  tissue: whole<Tissue | undefined>({ of: "tissue" }),
  own: whole<OwnPattern | undefined>({ of: "own" }),
});

type Alterations = readonly Alteration[];

const mergeAlterations: Merge<Alterations> = (versions, merging) =>
  threeWay(versions, () => {
    const { base, mine, theirs } = versions;
    const byId = each(versions, (list): Entries<Alteration> => list.map((one) => [one.id, one]));
    if (![base, mine, theirs].every(areIdsOwn)) return collided(versions, merging, { of: "alterations" });
    const all = keyedList<Alteration>({ item: () => mergeAlteration, order: { of: "alterations" }, isBefore })(
      byId,
      merging,
    ).map(([, one]) => one);
    const merged = all.filter((one) => !givesWay(one, all, versions, merging));
    const isTwice = merged.some((one) => merged.some((other) => isNewTwin(one, other, mine, theirs)));
    return merged.length > LIMITS.alterations || isTwice
      ? collided(versions, merging, { of: "alterations" })
      : sharedList(sharedList(merged, mine), theirs);
  });

const mergeAlteration: Merge<Alteration | undefined> = (versions, merging) => {
  const { base, mine, theirs } = versions;
  const alteration = theirs ?? mine ?? base;
  return alteration === undefined
    ? undefined
    : whole<Alteration | undefined>({ of: "alteration", alteration })(versions, merging);
};

const areIdsOwn = (list: Alterations): boolean => new Set(list.map(({ id }) => id)).size === list.length;

/** Whether two cannot both stand, and neither side had them both. */
const isNewTwin = (a: Alteration, b: Alteration, mine: Alterations, theirs: Alterations): boolean =>
  a !== b && isClash(a, b) && ![mine, theirs].some((list) => list.includes(a) && list.includes(b));

/** Both sides made the same alteration anew: but one of the two can stand, and where they are not alike they collide. */
function givesWay(
  one: Alteration,
  all: Alterations,
  versions: Versions<Alterations>,
  { prefers, collide }: Merging,
): boolean {
  const { mine, theirs } = versions;
  const preferred = versions[prefers];
  if (preferred.includes(one)) return false;
  const other = all.find((twin) => isNewTwin(one, twin, mine, theirs) && preferred.includes(twin));
  if (other === undefined) return false;
  if (!isSame({ ...one, id: "" }, { ...other, id: "" })) collide({ of: "alteration", alteration: other });
  return true;
}

const mergeSeen: Merge<readonly SeenOfDart[] | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const lists = each(versions, (list) => list ?? []);
    const all = [...lists.theirs, ...lists.mine];
    const darts = all.filter((one, at) => all.findIndex((other) => isSeenOf(other, one, one.half)) === at);
    const merged = darts.flatMap((one) => {
      const { piece, dart, half } = one;
      const parts = each(lists, (list) => list.find((other) => isSeenOf(other, one, half)));
      const said = whole<SeenOfDart | undefined>({ of: "seen", dart: { piece, dart, half } })(parts, merging);
      return said === undefined ? [] : [said];
    });
    if (merged.length > LIMITS.seen) return collided(versions, merging, { of: "seen", dart: null });
    return merged.length === 0 ? undefined : merged.toSorted(compareSeen);
  });

/** Each trial by its id, the newest first, and each of its parts by itself. */
const mergeTrials: Merge<readonly Trial[] | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const lists = each(versions, (list) => list ?? []);
    const merged = keyedList<Trial>({
      item: () => mergeTrial,
      order: { of: "trial", trial: null, part: null },
      isBefore: (a, b) => (a.day ?? "") > (b.day ?? ""),
    })(
      each(lists, (list): Entries<Trial> => list.map((one) => [one.id, one])),
      merging,
    ).map(([, one]) => one);
    if (merged.length > LIMITS.trials) return collided(versions, merging, { of: "trial", trial: null, part: null });
    return merged.length === 0 ? undefined : sharedList(sharedList(merged, lists.mine), lists.theirs);
  });

const mergeTrial: Merge<Trial | undefined> = (versions, merging) => {
  const { base, mine, theirs } = versions;
  const trial = theirs ?? mine ?? base ?? null;
  if (trial === null) return undefined;
  if (base === undefined || mine === undefined || theirs === undefined)
    return whole<Trial | undefined>({ of: "trial", trial, part: null })(versions, merging);
  return threeWay<Trial>({ base, mine, theirs }, () => {
    const merged = mergeParted(trial)({ base, mine, theirs }, merging);
    if (merged.base === undefined || merged.verdict === "keep") return merged;
    // One side kept it as her base while the other opened it again: but a trial that is kept is one.
    merging.collide({ of: "trial", trial, part: "base" });
    const { verdict: _verdict, base: _base, ...others } = merged;
    const preferred = { mine, theirs }[merging.prefers];
    return {
      ...others,
      ...(preferred.verdict === undefined ? {} : { verdict: preferred.verdict }),
      ...(preferred.base === undefined ? {} : { base: preferred.base }),
    };
  });
};

function mergeParted(trial: Trial): Merge<Trial> {
  const part = <K extends keyof Trial>(name: K) => whole<Trial[K] | undefined>({ of: "trial", trial, part: name });
  return fields<Trial>({
    id: part("id"),
    day: part("day"),
    sewn: part("sewn"),
    cloth: part("cloth"),
    pinnedBy: part("pinnedBy"),
    bra: part("bra"),
    shoes: part("shoes"),
    measured: mergeMeasured(trial),
    observations: present(mergeObservations(trial)),
    checks: mergeChecks(trial),
    taken: mergeTaken(trial),
    verdict: part("verdict"),
    because: part("because"),
    base: part("base"),
  });
}

/** What either side leaves out of this garment, or takes in again; nothing of it can collide. */
const mergeStandingLeft: Merge<Work["standingLeft"]> = (versions, merging) =>
  threeWay(versions, () => {
    const record = each(versions, (list = []) => Object.fromEntries(list.map((key): [string, true] => [key, true])));
    const merged = Object.keys(dictionary<true>(() => whole<true | undefined>({ of: "name" }))(record, merging));
    return merged.length === 0 ? undefined : merged.toSorted().slice(0, LIMITS.alterations);
  });

type Measured = NonNullable<Trial["measured"]>;
type Checks = NonNullable<Trial["checks"]>;

/** A record that holds nothing is absent. */
const orNone =
  <T extends object>(merge: Merge<T>, none: T): Merge<T | undefined> =>
  (versions, merging) =>
    threeWay(versions, () => {
      const merged = merge(
        each(versions, (own) => own ?? none),
        merging,
      );
      return Object.keys(merged).length === 0 ? undefined : merged;
    });

function mergeMeasured(trial: Trial): Merge<Measured | undefined> {
  const measured = whole<Mm | undefined>({ of: "trial", trial, part: "measured" });
  const parts = fields<Measured>({
    bustGirth: measured,
    waistGirth: measured,
    hipGirth: measured,
    centreFront: measured,
    centreBack: measured,
    shoulder: measured,
  });
  return orNone(parts, {});
}

function mergeChecks(trial: Trial): Merge<Checks | undefined> {
  const check = whole<boolean | undefined>({ of: "trial", trial, part: "checks" });
  const parts = fields<Checks>({
    centresUpright: check,
    sideSeamsUpright: check,
    hemLevel: check,
    waistOnWaist: check,
    shouldersStay: check,
    canSit: check,
    canReach: check,
    canBreathe: check,
  });
  return orNone(parts, {});
}

const mergeObservations =
  (trial: Trial): Merge<readonly Observation[]> =>
  (versions, merging) =>
    threeWay(versions, () => {
      const merged = keyedList<Observation>({
        item: () => mergeObservation(trial),
        order: { of: "trial", trial, part: "observations" },
        isBefore: () => false,
      })(
        each(versions, (list): Entries<Observation> => list.map((one) => [one.id, one])),
        merging,
      ).map(([, one]) => one);
      return merged.length > LIMITS.observations
        ? collided(versions, merging, { of: "trial", trial, part: "observations" })
        : sharedList(sharedList(merged, versions.mine), versions.theirs);
    });

const mergeObservation =
  (trial: Trial): Merge<Observation | undefined> =>
  (versions, merging) => {
    const { base, mine, theirs } = versions;
    const observation = theirs ?? mine ?? base;
    // A place with another line's sign would say what nobody saw: a line is one thing seen.
    return observation === undefined
      ? undefined
      : whole<Observation | undefined>({ of: "observation", trial, observation })(versions, merging);
  };

/** Answers are only ever added: theirs, then what was taken here since. */
const mergeTaken =
  (trial: Trial): Merge<Trial["taken"]> =>
  (versions, merging) =>
    threeWay(versions, () => {
      const { base = [], mine = [], theirs = [] } = versions;
      const isGrown = [mine, theirs].every((list) => base.every((one, at) => isSame(one, list[at])));
      return isGrown && mine.length + theirs.length - base.length <= LIMITS.observations
        ? [...theirs, ...mine.slice(base.length).filter((one) => !theirs.some((other) => isSame(one, other)))]
        : collided(versions, merging, { of: "trial", trial, part: "taken" });
    });

const allowance = (seam: SeamName) => whole<Allowances[SeamName]>({ of: "allowance", seam });

const allowanceFields = fields<Allowances>({
  centre: allowance("centre"),
  neck: allowance("neck"),
  shoulder: allowance("shoulder"),
  armhole: allowance("armhole"),
  side: allowance("side"),
  waist: allowance("waist"),
  hem: allowance("hem"),
  princess: allowance("princess"),
  underBust: allowance("underBust"),
  strap: allowance("strap"),
  panel: allowance("panel"),
  edge: allowance("edge"),
});

const dressPart = (part: DressPart): Collision => ({ of: "dress", part });

const dressFields = fields<Dress>({
  measures: whole<Dress["measures"]>(dressPart("measures")),
  skirt: whole<Dress["skirt"]>(dressPart("skirt")),
  lining: whole<Dress["lining"]>(dressPart("lining")),
  neckline: whole<Dress["neckline"]>(dressPart("neckline")),
  straps: whole<Dress["straps"]>(dressPart("straps")),
  edges: whole<Dress["edges"]>(dressPart("edges")),
  zip: whole<Dress["zip"]>(dressPart("zip")),
  opacity: whole<Dress["opacity"]>(dressPart("opacity")),
  under: whole<Dress["under"]>(dressPart("under")),
  cloths: whole<Dress["cloths"]>(dressPart("cloths")),
});

/** Each part by itself; with none left there is none. */
const mergeDress: Merge<Dress | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const merged = dressFields(
      each(versions, (own) => own ?? {}),
      merging,
    );
    return Object.keys(merged).length === 0 ? undefined : merged;
  });

const mergeAllowances: Merge<Allowances | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const merged = allowanceFields(
      each(versions, (own) => own ?? {}),
      merging,
    );
    return Object.keys(merged).length === 0 ? undefined : merged;
  });

const trusted = (measure: MeasureName) => whole<Trusted[MeasureName]>({ of: "trusted", measure });

const trustedFields = fields<Trusted>({
  bustGirth: trusted("bustGirth"),
  upperChestGirth: trusted("upperChestGirth"),
  underBustGirth: trusted("underBustGirth"),
  waistGirth: trusted("waistGirth"),
  hipGirth: trusted("hipGirth"),
  height: trusted("height"),
  bustPointWidth: trusted("bustPointWidth"),
  sideNeckToBustPoint: trusted("sideNeckToBustPoint"),
  backWaistLength: trusted("backWaistLength"),
  frontWaistLength: trusted("frontWaistLength"),
  neckBaseGirth: trusted("neckBaseGirth"),
  shoulderLength: trusted("shoulderLength"),
  acrossBack: trusted("acrossBack"),
  acrossFront: trusted("acrossFront"),
});

const mergeTrusted: Merge<Trusted | undefined> = (versions, merging) =>
  threeWay(versions, () => {
    const merged = trustedFields(
      each(versions, (own) => own ?? {}),
      merging,
    );
    return Object.keys(merged).length === 0 ? undefined : merged;
  });

const mergeUnread: Merge<Work["unread"]> = (versions, merging) =>
  threeWay(versions, () => {
    const merged = dictionary<string>((field) => whole<string | undefined>({ of: "unread", field }))(versions, merging);
    return Object.keys(merged).length > LIMITS.unread
      ? collided(versions, merging, { of: "unread", field: null })
      : merged;
  });
