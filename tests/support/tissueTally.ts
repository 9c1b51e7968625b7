/**
 * Foreign nests measured by tape, and the stand-in brought to what was read: how near it comes to the truth, and whether what
 * is told of the doubt holds.
 */
import { blendPiece, levelSizes, neighbours } from "../../src/core/blend/blendPiece";
import type { Pattern } from "../../src/core/decisions/pattern";
import type { TissueLength } from "../../src/core/decisions/tissue";
import { levelWidth } from "../../src/core/girth/levelWidth";
import { seamLength } from "../../src/core/girth/seamLength";
import { draftBlocks, printNest } from "../../src/core/nest/printedNest";
import { pointNames, type Nest, type Piece, type PieceName, type PointName } from "../../src/core/pattern/piece";
import { setOf } from "../../src/core/pattern/pieceSet";
import { invariant } from "../../src/core/result";
import { anchorOf, fitToTissue, type FittedNest } from "../../src/core/tissue/fitToTissue";
import { tissuePlaces } from "../../src/core/tissue/placesToMeasure";
import { measureTissue } from "../../src/core/tissue/tapeWays";
import { chartOf, tracedOf } from "./foreign/asTraced";
import { diceOf } from "./foreign/dice";
import { foreignNest } from "./foreign/foreignNest";
import type { ForeignNest, ForeignOptions } from "./foreign/foreignTypes";

const TAPE_ERROR = 2;
export const COUNTS = [0, 10, 100] as const;
const FRONTS = ["side", "french", "side", "princessArmhole", "princessShoulder"] as const;

export interface Case {
  readonly seed: number;
  readonly foreign: ForeignNest;
  readonly pattern: Pattern;
  readonly standIn: Nest;
  readonly truth: Nest;
  readonly measured: number;
  readonly printed: boolean;
  /** In the order asked: what is there on both, with its reading. */
  readonly readings: readonly {
    readonly piece: PieceName;
    readonly length: TissueLength;
    readonly read: number;
    readonly true: number;
  }[];
}

/**
 * How a case is drafted: every second one with the darts of one intake. The second house is drafted for other bodies than any that
 * the spreads were held against, its grading uneven.
 */
export function houseOf(seed: number, isSecond: boolean): Omit<ForeignOptions, "seed"> {
  const darts = seed % 2 === 0 ? ({ darts: "one intake" } as const) : {};
  if (!isSecond) return darts;
  const dice = diceOf(seed * 17 + 3);
  const bust = dice.from(960, 1150);
  return {
    ...darts,
    grading: "uneven",
    side: "shaped",
    body: { bust, waist: bust - dice.from(90, 180), hip: bust + dice.from(-10, 120) },
  };
}

/** A wrong reading among all of them, by 8 to 30 mm. */
export function planted(c: Case) {
  const dice = diceOf(c.seed * 101 + 9);
  const open = c.readings.filter(({ length }) => !length.endsWith("Step") && !length.startsWith("bustDart"));
  const at = invariant(open[Math.floor(dice.from(0, open.length - 1e-6))], "reading");
  const by = dice.from(8, 30) * (dice.chance(0.5) ? 1 : -1);
  const readings = c.readings.map((one) => (one === at ? { ...one, read: Math.max(1, one.true + by) } : one));
  return { case: { ...c, readings }, at, by, isChecked: CHECKED.has(at.length) };
}

/** What another piece or another length of the same piece says too. */
const CHECKED = new Set<TissueLength>(["sideLength", "shoulderLength", "neckDepth", "sideNeckToWaist", "centreLength"]);

/**
 * What 2 mm of tape leaves of the waist, one standard deviation, mm: the base size's own by four readings (widths and mouths of
 * front and back) and twice for two halves, 2 · √4 · 2 = 8, or the rounding of a printed girth; and for each step the two steps of front and back,
 * 2 · √2 · 2 = 5.7.
 */
export const tapeBound = ({ printed }: Case, steps: number): number =>
  Math.hypot(printed ? 0 : 2 * Math.sqrt(4) * TAPE_ERROR, 2 * Math.sqrt(2) * TAPE_ERROR * Math.abs(steps));

type Dice = ReturnType<typeof diceOf>;

/** Normal, by twelve even ones. */
const normal = (dice: Dice): number => Array.from({ length: 12 }, () => dice.from(0, 1)).reduce((a, b) => a + b, -6);

export function caseOf(seed: number, more: Omit<ForeignOptions, "seed"> = {}): Case {
  const dice = diceOf(seed * 7919 + 13);
  const front = dice.one(FRONTS);
  const foreign = foreignNest({ seed, front, other: false, ...more });
  const printed = dice.chance(0.5);
  const pattern: Pattern = {
    name: "Foreign",
    chart: chartOf(foreign, printed),
    ease: { bust: 80, waist: 40, hip: 50 },
    length: foreign.options.basque ? "hip" : "waist",
    closure: { place: "centreBack", belowWaist: foreign.options.basque ? 180 : 0 },
    style: foreign.style,
    strap: "wide",
  };
  const { nest: standIn } = printNest(pattern, draftBlocks(pattern), 50);
  const traced = tracedOf(foreign);
  const truth: Nest = {
    source: "own",
    labels: traced.sizes.map(({ label }) => label),
    sizes: traced.sizes.map(({ pieces }) => pieces),
  };
  const measured = Math.min(truth.sizes.length - 2, Math.floor(dice.from(0, truth.sizes.length - 1)));
  const own = setOf(truth.sizes[measured] ?? []);
  const above = setOf(truth.sizes[measured + 1] ?? []);
  const readings = tissuePlaces({ pattern, nest: standIn, sizeIndex: measured }).flatMap(({ piece, length }) => {
    const on = own[piece];
    const value = on === undefined ? null : measureTissue(on, length, above[piece]);
    return value === null ? [] : [{ piece, length, true: value, read: value + TAPE_ERROR * normal(dice) }];
  });
  return { seed, foreign, pattern, standIn, truth, measured, printed, readings };
}

export function fitOf(c: Case, count: number, waistAt = c.measured): FittedNest {
  const pieces: Partial<Record<PieceName, Partial<Record<TissueLength, number>>>> = {};
  for (const { piece, length, read } of c.readings.slice(0, count))
    pieces[piece] = { ...pieces[piece], [length]: Math.max(0, read) };
  return fitToTissue({
    tissue: { size: c.standIn.labels[c.measured] ?? "", pieces },
    pattern: c.pattern,
    nest: c.standIn,
    sizeIndex: c.measured,
    waistAt,
  });
}

const bodice = (pieces: readonly Piece[]) => pieces.filter(({ name }) => !name.endsWith("Basque"));

export const finishedOf = (pieces: readonly Piece[], level: "bust" | "waist"): number =>
  2 * bodice(pieces).reduce((sum, piece) => sum + (levelWidth(piece, level) ?? 0), 0);

/** Finished waist of a blend at a fractional size, the base size's darts kept. */
function blendedWaist(nest: Nest, base: number, size: number): number {
  const names = bodice(nest.sizes[base] ?? []).map(({ name }) => name);
  return (
    2 *
    names.reduce((sum, name) => {
      const sizes = nest.sizes.flatMap((pieces) => pieces.filter((piece) => piece.name === name));
      return sum + seamLength(blendPiece(sizes, levelSizes(base, size, base), "waist"), "waist");
    }, 0)
  );
}

/** How much wider than the base size's body the wearer's waist is. */
function bodyMore({ pattern, measured }: Case, steps: number): number {
  const waists = pattern.chart.sizes.map(({ waist }) => waist);
  const { lower, share } = neighbours(measured + steps, waists.length);
  const [a = 0, b = 0] = [waists[lower], waists[lower + 1]];
  return a + share * (b - a) - (waists[measured] ?? 0);
}

interface PlannedWaist {
  /** Where the plan cuts, a fractional size. */
  readonly at: number;
  /** The finished waist of the true nest cut there, less the one that the plan tells. */
  readonly miss: number;
  /** Of it: the base size's own finished waist. */
  readonly ofBase: number;
  /** Of it: how far the side moves between the lines. */
  readonly ofStep: number;
}

/**
 * The waist planned on a nest for a body so many chart steps from the base size: told is the base size's finished waist (its ease
 * is measured on the pieces) and what the body is wider; cut is the true nest, at the share that the nest gives.
 */
export function planWaist(nest: Nest, c: Case, steps: number): PlannedWaist {
  const [base, more] = [c.measured, bodyMore(c, steps)];
  const own = blendedWaist(nest, base, base);
  // All but a straight line in the size: a secant is there in a few rounds.
  let [a, b] = [base, base + (steps === 0 ? 1 : steps)];
  let [fa, fb] = [-more, blendedWaist(nest, base, b) - own - more];
  for (let i = 0; i < 6 && Math.abs(fb) > 1e-6 && fa !== fb; i += 1) {
    const at = b - (fb * (b - a)) / (fb - fa);
    [a, fa] = [b, fb];
    [b, fb] = [at, blendedWaist(nest, base, at) - own - more];
  }
  const at = b;
  const trueOwn = blendedWaist(c.truth, base, base);
  const grown = blendedWaist(c.truth, base, at) - trueOwn;
  return { at, miss: trueOwn + grown - own - more, ofBase: trueOwn - own, ofStep: grown - more };
}

/** Steps of the chart from the base size to the wearer's waist: nearer than a size, or two sizes further. */
export function stepsOf(c: Case, isFar: boolean): number {
  const dice = diceOf(c.seed * 31 + 5);
  const share = dice.from(0.5, 0.9);
  const up = c.truth.sizes.length - 1 - c.measured;
  if (!isFar) return dice.chance(0.5) && c.measured > 0 ? -share : share;
  return c.measured > up ? -(Math.min(1, c.measured - 1) + share) : Math.min(1, up - 1) + share;
}

export interface CornerError {
  readonly name: string;
  readonly off: number;
  readonly spread: number;
}

const asOurs = (name: string): string => name.replace("frenchDart", "sideDart");
const SKIPPED = /^(bend|bustLine|underBustCentre|centreBust|sideBust)/;

/** Corners of the fitted pieces against the true ones, laid on each other by centre line and anchor. */
export function cornerErrors(c: Case, fit: FittedNest): readonly CornerError[] {
  const truth = setOf(c.truth.sizes[c.measured] ?? []);
  return (fit.nest.sizes[c.measured] ?? []).flatMap((piece) => {
    const own = truth[piece.name];
    const anchor = anchorOf(piece);
    if (own === undefined || anchor === undefined) return [];
    const there = new Map<string, { x: number; y: number }>(
      pointNames(own).map((name) => [asOurs(name), own.points[name]?.at ?? { x: 0, y: 0 }]),
    );
    const [a, b] = [piece.points[anchor]?.at, there.get(anchor)];
    if (a === undefined || b === undefined) return [];
    // The side front has no centre line: it is laid by its anchor both ways.
    const dx = piece.name === "sideFront" ? b.x - a.x : 0;
    return (pointNames(piece) as PointName[]).flatMap((name): CornerError[] => {
      const [p, q] = [piece.points[name]?.at, there.get(name)];
      const doubt = fit.doubt.corners[piece.name]?.[name];
      if (p === undefined || q === undefined || doubt === undefined || SKIPPED.test(name)) return [];
      return [
        { name: `${piece.name}.${name}.x`, off: p.x + dx - q.x, spread: doubt.x },
        { name: `${piece.name}.${name}.y`, off: p.y - a.y + b.y - q.y, spread: doubt.y },
      ].filter(({ spread, off }) => spread > 0.1 && off !== 0);
    });
  });
}
