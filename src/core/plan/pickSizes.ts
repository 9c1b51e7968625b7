/** The first chapter of a plan: base size, cup and fractional sizes picked, and the pieces cut by them. */
import { levelSizes } from "../blend/blendPiece";
import type { SizeRow } from "../chart/sizeChart";
import { HALVES, type Half } from "../decisions/alteration";
import type { Ease } from "../decisions/pattern";
import type { Work } from "../decisions/work";
import { bodyOf, measuresOf } from "../measures/tape";
import type { Cup, GirthLevel, PatternPieces } from "../nest/patternPieces";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import { fail, invariant, ok, type Result } from "../result";
import { rankAlternatives } from "../sizing/alternatives";
import { bustOnHalves, cupOnHalf, ownPicksOf, pickSizing } from "../sizing/pickSizing";
import type { CupPick, Sizing } from "../sizing/sizing";
import { girthAt, settleLevel, solveLevel } from "../sizing/solveLevel";
import { styleOf } from "../style/index";
import type { FullBustFailure } from "../surgery/fullBust";
import { EXTRAPOLATION_STEPS } from "../tolerance";
import type { Mm } from "../units";
import { buildPieces, type Built } from "./buildPieces";
import { drawCutLines } from "./cutLines";
import { levelHalves, type HalfLevelled, type Levelled } from "./levelHalves";
import type { PlanFailure } from "./planFailure";
import type { CutLine } from "./plan";
import { offerOf } from "./printed";

/** All of a work that the picks stand on; the wearer's alterations come after them. */
export type PickInputs = Pick<Work, "pattern" | "tapes" | "age" | "picks" | "easeWanted"> & {
  readonly pieces: PatternPieces;
};

/** A level that is blended: the fractional size picked, and the finished girth of each size with the base size's darts. */
export interface PickedLevel {
  readonly size: number;
  /** The finished girth at that size. */
  readonly girth: Mm;
  readonly finished: readonly Mm[];
  readonly body: Mm;
  /** One standard deviation of the body girth. */
  readonly spread: Mm;
}

/** What the cup version decides: one for both halves of the body, or each half's own. */
export interface PickedHalf {
  readonly sizing: Sizing;
  readonly nest: Nest;
  readonly built: Built;
  /** What was let in at the centre front, so that it can be sewn to a fuller half; null: nothing. */
  readonly levelled: HalfLevelled | null;
  readonly cutLines: readonly CutLine[];
  /** Ease drafted into the base size. */
  readonly drafted: Ease;
}

export interface Picked extends PickedHalf {
  /** The very same object twice where the halves have one cup. */
  readonly halves: Readonly<Record<Half, PickedHalf>>;
  /** Levels at which the pieces have but one size. */
  readonly alike: ReadonlySet<GirthLevel>;
  /** The base size's row of the chart. */
  readonly row: SizeRow;
  readonly isEaseMeasured: boolean;
  readonly ease: Ease;
  readonly bust: Mm;
  /** The body's hip girth, wanted or not; undefined where it was not taken. */
  readonly bodyHip: Mm | undefined;
  readonly waist: PickedLevel;
  /** null where the pattern ends at the waist. */
  readonly hip: PickedLevel | null;
}

/** A drag changes alterations alone, so picks are worked out once for the very same inputs. */
export const pickSizes: (inputs: PickInputs) => Result<Picked, PlanFailure> = remember(
  ["pattern", "tapes", "age", "picks", "easeWanted", "pieces"],
  pickAndBuild,
  1,
);

function pickAndBuild({
  pattern,
  tapes,
  age,
  picks: asked,
  easeWanted,
  pieces,
}: PickInputs): Result<Picked, PlanFailure> {
  const measures = measuresOf(tapes);
  const taken = bodyOf(tapes);
  const { chart, picks } = offerOf(pieces, asked);
  const { bustGirth, waistGirth, hipGirth } = measures;
  const toHip = pattern.length === "hip";
  if (bustGirth === undefined || waistGirth === undefined || (toHip && hipGirth === undefined)) {
    const needed = ["bustGirth", "waistGirth", ...(toHip ? (["hipGirth"] as const) : [])] as const;
    return fail({ code: "plan/measure-missing", measures: needed.filter((name) => measures[name] === undefined) });
  }

  const bustTaken = invariant(taken.bustGirth, "bust");
  const own = ownPicksOf(chart, picks);
  if (!own.ok) return own;
  const together = pickSizing(chart, bustTaken, taken.upperChestGirth, picks);
  if (!together.ok) return together;
  const { baseSize, cup } = together.value;
  const cups = HALVES.map((half) => cupOnHalf(cup, chart, picks.halfCups?.[half]));
  const isOne = cups.every(({ label }) => label === cup.label);
  const bust = isOne ? together.value.bust : bustOnHalves(together.value.bust, cup, cups);

  const { index } = baseSize;
  const { nest } = pieces.printed(cup.label);
  if (pieces.alike.has("bust") && nest.traced?.[index] === false) return notTraced(nest, index);
  // Another size that cannot be made in this cup is no matter: its front is just not printed.
  for (const { label } of [cup, ...cups]) {
    const cannot = pieces.printed(label).refusedAt(index);
    if (cannot !== undefined) return undraftable(label, cannot);
  }
  const row = invariant(chart.sizes[index], "row of the base size");
  const drafted = pieces.easeOf(cup.label, index);
  const ease: Ease = { ...drafted, ...easeWanted };

  // Each half brings half of every whole girth.
  const [first = cup.label, second = cup.label] = cups.map(({ label }) => label);
  const onBoth = (girthOf: (cup: Cup) => Mm): Mm =>
    first === second ? girthOf(first) : (girthOf(first) + girthOf(second)) / 2;
  const waistTarget = waistGirth + ease.waist;
  const waistAt = (size: number): Mm => onBoth((label) => pieces.finishedWaistAt(label, index, size));
  const waists = chart.sizes.map((_, size) => waistAt(size));
  const waist = pickAndSettle("waist", waists, {
    target: waistTarget,
    base: index,
    own: pieces.alike.has("waist") ? index : picks.waist,
    measured: waistAt,
  });
  if (!waist.ok) return waist;
  const hips = pieces.finishedHips(cup.label);
  const isToHip = hips !== null && hipGirth !== undefined;
  const hipAt = (size: number): Mm => onBoth((label) => pieces.finishedHipAt(label, index, size));
  const hip = isToHip
    ? pickAndSettle("hip", hips, {
        target: hipGirth + ease.hip,
        base: index,
        own: pieces.alike.has("hip") ? index : picks.hip,
        measured: hipAt,
      })
    : null;
  if (hip !== null && !hip.ok) return hip;

  const at = levelSizes(index, waist.value, hip === null ? waist.value : hip.value);
  const alternatives = rankAlternatives({
    chart,
    girths: { bust: bustTaken, upperChest: taken.upperChestGirth ?? null },
    own: own.value,
    finished: { waist: pieces.printedWaists(cup.label), hip: hips },
    waistTarget,
    hipTarget: isToHip ? hipGirth + ease.hip : null,
    picked: { baseSize: index, cup: cup.label },
  });
  const buildIn = (version: CupPick): Result<PickedHalf, PlanFailure> => {
    const making = pieces.make(version.label, at);
    if (!making.ok) return undraftable(version.label, making.failure);
    const built = buildPieces({
      making: making.value,
      bustPiece: styleOf(pattern.style).bustPiece,
      cupDifference: version.drafted,
      asked: bust.asked,
      // What she set herself is made whole or not at all.
      asMuchAsCanBe: bust.chosenBy === "residual",
      residual: bust.residual,
      body: taken,
      age,
    });
    const printed = pieces.printed(version.label).nest;
    return ok({
      sizing: { baseSize, cup: version, bust: { ...bust, alteration: built.alteration }, alternatives },
      nest: printed,
      built,
      levelled: null,
      cutLines: drawCutLines(printed, built, at),
      drafted: pieces.easeOf(version.label, index),
    });
  };
  const one = buildIn(cup);
  if (!one.ok) return one;
  const halves = isOne
    ? ok({ left: one.value, right: one.value })
    : buildHalves(cups.map((version) => (version === cup ? one : buildIn(version))));
  if (!halves.ok) return halves;
  const { left, right } = halves.value;
  const alteration = (left.sizing.bust.alteration + right.sizing.bust.alteration) / 2;
  return ok({
    ...one.value,
    sizing: isOne ? one.value.sizing : { ...one.value.sizing, bust: { ...bust, alteration } },
    halves: halves.value,
    alike: pieces.alike,
    row,
    isEaseMeasured: pieces.isEaseMeasured,
    ease,
    bust: bustGirth,
    bodyHip: hipGirth,
    waist: {
      size: waist.value,
      girth: waistAt(waist.value),
      finished: waists,
      body: waistGirth,
      spread: taken.waistGirth?.spread ?? 0,
    },
    hip:
      isToHip && hip !== null
        ? {
            size: hip.value,
            girth: hipAt(hip.value),
            finished: hips,
            body: hipGirth,
            spread: taken.hipGirth?.spread ?? 0,
          }
        : null,
  });
}

/** Both halves, their centre fronts of one length. */
function buildHalves([left, right]: readonly Result<PickedHalf, PlanFailure>[]): Result<
  Readonly<Record<Half, PickedHalf>>,
  PlanFailure
> {
  const [ofLeft, ofRight] = [invariant(left, "left"), invariant(right, "right")];
  if (!ofLeft.ok) return ofLeft;
  if (!ofRight.ok) return ofRight;
  const level = levelHalves(ofLeft.value.built.blended, ofRight.value.built.blended, "front");
  const withLevel = (half: PickedHalf, { pieces, level: levelled }: Levelled): PickedHalf =>
    levelled === null ? half : { ...half, levelled, built: { ...half.built, blended: pieces } };
  return ok({ left: withLevel(ofLeft.value, level.left), right: withLevel(ofRight.value, level.right) });
}

/** One size alone was traced, and it is another. */
const notTraced = ({ labels, traced = [] }: Nest, index: number): Result<never, PlanFailure> =>
  fail({
    code: "plan/one-size-traced",
    picked: invariant(labels[index], "size"),
    traced: labels.filter((_, at) => traced[at] === true),
  });

function undraftable(cup: string | null, { most }: FullBustFailure): Result<never, PlanFailure> {
  return fail({ code: "plan/cup-undraftable", label: cup ?? "", least: 2 * most });
}

interface LevelWanted {
  readonly target: Mm;
  readonly base: number;
  readonly own: number | undefined;
  /** The finished girth at a fractional size, measured on the pieces. */
  readonly measured: (size: number) => Mm;
}

/** The fractional size at a level. */
function pickAndSettle(
  level: "waist" | "hip",
  finished: readonly Mm[],
  { target, base, own, measured }: LevelWanted,
): Result<number, PlanFailure> {
  const line = pickLevel(level, finished, target, base, own);
  return line.ok ? ok(own ?? settleLevel(line.value, finished, target, measured)) : line;
}

function pickLevel(
  level: "waist" | "hip",
  finished: readonly Mm[],
  target: Mm,
  base: number,
  own: number | undefined,
): Result<number, PlanFailure> {
  if (own !== undefined)
    return isReached(own, finished.length)
      ? ok(own)
      : fail({ code: "plan/outside-chart", level, ...girthsAbout(finished, own) });
  const solved = solveLevel(finished, target, base);
  return solved.ok ? solved : fail({ code: "plan/outside-chart", level, wanted: target, ...solved.failure });
}

const isReached = (size: number, count: number): boolean =>
  size >= -EXTRAPOLATION_STEPS && size <= count - 1 + EXTRAPOLATION_STEPS;

/** What a pick out of reach would give, and what can be reached. */
function girthsAbout(finished: readonly Mm[], size: number) {
  const reach = [girthAt(finished, -EXTRAPOLATION_STEPS), girthAt(finished, finished.length - 1 + EXTRAPOLATION_STEPS)];
  return { wanted: girthAt(finished, size), least: Math.min(...reach), most: Math.max(...reach) };
}
