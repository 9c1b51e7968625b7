/**
 * The stand-in brought to what she measured on her tissue by the least moves that meet every answer exactly, seams that are
 * sewn together and legs of darts kept; answers that contradict are named, never averaged away; and how well the pieces are
 * then known.
 */
import type { Pattern } from "../decisions/pattern";
import { TISSUE_LENGTHS, type Tissue, type TissueLength } from "../decisions/tissue";
import { PIECE_ORDER, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { pointNames, pointOf, type Nest, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { distance } from "../geometry/point";
import { invariant } from "../result";
import { dot, entry, type Matrix } from "../statistics/linear";
import {
  PRINTED_GIRTH_DOUBT,
  SEAM_EASE_DOUBT,
  TISSUE_BEARS_ON,
  TISSUE_CONTRADICTS,
  TISSUE_MET,
  TISSUE_NOTHING_NEW,
  TISSUE_ROOM,
  TISSUE_SOLVED,
  TISSUE_TAPE,
} from "../tolerance";
import type { Mm } from "../units";
import { acrossRows, factored, gram, varianceLeft } from "./leastMoves";
import {
  answersOf,
  AS_MEASURED,
  finishedQuantity,
  FREEDOM_COUNT,
  lengthQuantity,
  modelOf,
  reshaped,
  sewnOf,
  valuesOf,
  type FinishedLevel,
  type Graded,
  type Model,
  type Quantity,
  type Sewn,
} from "./tissueModel";

/** Which length of which piece. */
export interface TissueRef {
  readonly piece: PieceName;
  readonly length: TissueLength;
}

/** An answer that the pieces do not meet, because others say otherwise. */
export interface Misfit extends TissueRef {
  readonly measured: Mm;
  /** Measured less what the pieces have, as the other answers leave it. */
  readonly by: Mm;
  /** The answers that it contradicts, the one that bears most on it first. */
  readonly against: readonly TissueRef[];
  /** The finished girths printed in the chart that bear on it. */
  readonly againstPrinted: readonly FinishedLevel[];
  /** Whether so little is no more than a tape's own doubt. */
  readonly withinTape: boolean;
}

export interface TissueChange extends TissueRef {
  readonly measured: Mm;
  readonly standIn: Mm;
  /** Measured less the stand-in's. */
  readonly by: Mm;
  /** What this answer alone moves, the point that it moves most first. */
  readonly moved: readonly { readonly point: PointName; readonly by: Mm }[];
}

/** What knowing one more length would save, one standard deviation, mm. */
export interface NextTissue extends TissueRef {
  readonly saves: Readonly<Record<FinishedLevel, Mm>>;
}

/** One standard deviation, mm. */
export interface CornerDoubt {
  readonly x: Mm;
  readonly y: Mm;
}

export interface TissueDoubt {
  /** Of the finished girths in the size asked for; null where the pieces have no such level. */
  readonly finished: Readonly<Record<FinishedLevel, Mm | null>>;
  /** Of corners, pieces laid on each other at the centre line and their anchor: the lowest corner of the centre line. */
  readonly corners: Readonly<Partial<Record<PieceName, Readonly<Partial<Record<PointName, CornerDoubt>>>>>>;
}

export interface FittedNest {
  readonly nest: Nest;
  /** Index of the size that was measured; null where the chart has no such size any more: then nothing is fitted. */
  readonly measured: number | null;
  readonly misfits: readonly Misfit[];
  readonly changed: readonly TissueChange[];
  /** Answers to lengths that the pieces do not have. */
  readonly unused: readonly TissueRef[];
  readonly doubt: TissueDoubt;
  /** For each length not measured, what matters most first. */
  readonly next: readonly NextTissue[];
  /** How far each freedom is moved, for the nests of other cups. */
  readonly moves: readonly number[];
}

export interface TissueInputs {
  readonly tissue: Tissue;
  readonly pattern: Pick<Pattern, "chart">;
  /** As printed: the style's pieces in every size, in one cup. */
  readonly nest: Nest;
  /** The size whose finished girths the doubt is stated for. */
  readonly sizeIndex: number;
}

interface Row {
  readonly quantity: Quantity;
  readonly wanted: Mm;
  /** Variance. */
  readonly doubt: number;
  readonly answer: TissueRef | null;
  /** Set on a finished girth that the chart prints. */
  readonly level?: FinishedLevel;
}

/** Brings a nest to what was measured on the tissue. */
export function fitToTissue(inputs: TissueInputs): FittedNest {
  const { tissue, nest, pattern, sizeIndex } = inputs;
  const measured = nest.labels.indexOf(tissue.size);
  const pieces = nest.sizes[measured];
  if (pieces === undefined) return unfitted(inputs);
  const model = modelOf(pieces, nest.sizes[measured + 1]);
  const refs = refsOf(tissue);
  const answers = refs.flatMap(({ piece, length }): Row[] => {
    const quantity = lengthQuantity(model, piece, length);
    const wanted = tissue.pieces[piece]?.[length];
    if (quantity === null || wanted === undefined) return [];
    return [{ quantity, wanted, doubt: TISSUE_TAPE ** 2, answer: { piece, length } }];
  });
  const rows = [...sewnRows(sewnOf(model.pieces), refs), ...printedRows(model.pieces, pattern, measured), ...answers];
  const { z, met, misfits } = solve(model, rows);
  const fittedNest = ontoNest(nest, pattern, measured, z, refs);
  const at = answersOf(
    model,
    met.map(({ quantity }) => quantity),
    z,
  );
  const known: Known = { rows: at, doubts: met.map(({ doubt }) => doubt) };
  return {
    nest: fittedNest,
    measured,
    misfits,
    changed: changesOf(model, answers, met, at),
    unused: refs.filter((ref) => !answers.some(({ answer }) => isSame(answer, ref))),
    doubt: doubtOf(inputs, measured, model, z, known),
    next: nextOf(inputs, measured, model, z, known, refs),
    moves: z,
  };
}

const isSame = (a: TissueRef | null, b: TissueRef): boolean =>
  a !== null && a.piece === b.piece && a.length === b.length;

/** The nest of another cup of the same pattern, moved alike. */
export function alsoFitted(fit: FittedNest, { nest, pattern, tissue }: Omit<TissueInputs, "sizeIndex">): Nest {
  return fit.measured === null ? nest : ontoNest(nest, pattern, fit.measured, fit.moves, refsOf(tissue));
}

/** The answers, in the order of pieces and of lengths. */
const refsOf = (tissue: Tissue): readonly TissueRef[] =>
  PIECE_ORDER.flatMap((piece) =>
    TISSUE_LENGTHS.flatMap((length): TissueRef[] =>
      tissue.pieces[piece]?.[length] === undefined ? [] : [{ piece, length }],
    ),
  );

/** What must stay. How much a shoulder is eased is hers, where she measured both sides of it. */
function sewnRows(sewn: readonly Sewn[], refs: readonly TissueRef[]): Row[] {
  return sewn.flatMap(({ pair, wanted, ...quantity }): Row[] => {
    const isEased = pair !== null && pair.seam === "shoulder";
    if (isEased && quantity.of.every((piece) => refs.some((ref) => isSame(ref, { piece, length: "shoulderLength" }))))
      return [];
    return [{ quantity, wanted, doubt: isEased ? SEAM_EASE_DOUBT ** 2 : 0, answer: null }];
  });
}

interface Solved {
  readonly z: readonly number[];
  readonly met: readonly Row[];
  readonly misfits: readonly Misfit[];
}

/** Rounds of bringing pieces to answers; each leaves a small part of the error. */
const ROUNDS = 12;
/** Rounds in which it is settled where the answers lie together, their doubts counted. */
const ROUGH_ROUNDS = 3;
/** Such a doubt of what is exact lets it be factored. */
const NEARLY_EXACT = 1e-4;

function solve(model: Model, rows: readonly Row[]): Solved {
  const rough = roughly(model, rows);
  const contradicting = contradictions(rows, rough.answers, rough.residuals);
  const kept = independent(rows, rough.answers, rough.residuals, contradicting);
  const { z, met } = exactly(model, kept, rough.z);
  const values = valuesOf(
    model,
    rows.map(({ quantity }) => quantity),
    z,
  );
  const precision = factored(
    gram(
      rough.answers,
      rows.map(({ doubt }) => Math.max(doubt, NEARLY_EXACT)),
    ),
  ).inverse();
  const misfits = rows.flatMap((row, at): Misfit[] => {
    const by = row.wanted - (values[at] ?? row.wanted);
    if (row.answer === null || Math.abs(by) <= TISSUE_MET) return [];
    return [
      {
        ...row.answer,
        measured: row.wanted,
        by,
        ...bearingOn(at, precision, rows),
        withinTape: !contradicting.has(at),
      },
    ];
  });
  return { z, met, misfits };
}

/** The freedoms where all answers lie together best, doubts counted; how the rows answer there, and what is left as a line. */
function roughly(model: Model, rows: readonly Row[]) {
  const quantities = rows.map(({ quantity }) => quantity);
  const doubts = rows.map(({ doubt }) => Math.max(doubt, NEARLY_EXACT));
  let z: number[] = Array.from({ length: FREEDOM_COUNT }, () => 0);
  let answers = answersOf(model, quantities, z);
  let residuals: number[] = [];
  for (let round = 0; round < ROUGH_ROUNDS; round += 1) {
    if (round > 0) answers = answersOf(model, quantities, z);
    const values = valuesOf(model, quantities, z);
    // What a straight line through here leaves at the stand-in.
    residuals = rows.map(({ wanted }, i) => wanted - (values[i] ?? 0) + dot(invariant(answers[i], "row"), z));
    const to = acrossRows(answers, factored(gram(answers, doubts)).solve(residuals), FREEDOM_COUNT);
    z = [...towards(model, quantities, z, to, AS_MEASURED)];
  }
  return { z, answers, residuals };
}

/**
 * Answers that lie further from what all others leave them than tapes do, where the others say much of it at all. The one that
 * is furthest out goes first, then it is looked again.
 */
function contradictions(rows: readonly Row[], answers: Matrix, residuals: readonly number[]): ReadonlySet<number> {
  const out = new Set<number>();
  for (;;) {
    const left = rows.flatMap((_, at) => (out.has(at) ? [] : [at]));
    const part = left.map((at) => invariant(answers[at], "row"));
    const doubts = left.map((at) => Math.max(invariant(rows[at], "row").doubt, NEARLY_EXACT));
    const system = factored(gram(part, doubts));
    const inverse = system.inverse();
    const weights = system.solve(left.map((at) => residuals[at] ?? 0));
    let worst: { at: number; out: number } | null = null;
    for (const [i, at] of left.entries()) {
      const row = invariant(rows[at], "row");
      if (row.answer === null) continue;
      const precision = entry(inverse, i, i);
      const own = dot(invariant(part[i], "row"), invariant(part[i], "row"));
      const foretold = 1 / precision - row.doubt;
      // Where the others hardly speak of it, it is only unlike the stand-in.
      if (foretold > own / 2) continue;
      const far = Math.abs(weights[i] ?? 0) / Math.sqrt(precision);
      if (far > TISSUE_CONTRADICTS && (worst === null || far > worst.out)) worst = { at, out: far };
    }
    if (worst === null) return out;
    out.add(worst.at);
  }
}

/**
 * The rows that can be met exactly, one after the other: each must have room beside those before it, or it would be met by
 * moves without measure.
 */
function independent(
  rows: readonly Row[],
  answers: Matrix,
  residuals: readonly number[],
  left: ReadonlySet<number>,
): readonly Row[] {
  const base: { readonly direction: readonly number[]; readonly value: number }[] = [];
  return rows.filter((row, at) => {
    if (left.has(at)) return false;
    let rest = [...invariant(answers[at], "row")];
    const whole = Math.sqrt(dot(rest, rest));
    let miss = residuals[at] ?? 0;
    for (const { direction, value } of base) {
      const share = dot(rest, direction);
      rest = rest.map((x, k) => x - share * (direction[k] ?? 0));
      miss -= share * value;
    }
    const room = Math.sqrt(dot(rest, rest));
    if (room <= TISSUE_NOTHING_NEW * whole) return false;
    if (row.answer !== null && room < TISSUE_ROOM && Math.abs(miss) > TISSUE_CONTRADICTS * room) return false;
    base.push({ direction: rest.map((x) => x / room), value: miss / room });
    return true;
  });
}

function exactly(
  model: Model,
  rows: readonly Row[],
  start: readonly number[],
): { z: readonly number[]; met: readonly Row[] } {
  let met = rows;
  for (;;) {
    const { z, misses } = brought(model, met, start);
    const worst = misses.reduce((most, miss) => Math.max(most, miss), 0);
    if (worst <= TISSUE_MET) return { z, met };
    // What cannot be reached at all is left out, the furthest first; what is sewn together stays.
    let out = -1;
    for (const [at, miss] of misses.entries())
      if (met[at]?.answer !== null && (out < 0 || miss > (misses[out] ?? 0))) out = at;
    if (out < 0) return { z: Array.from({ length: FREEDOM_COUNT }, () => 0), met };
    met = met.filter((_, at) => at !== out);
  }
}

/** Least moves that meet the rows, by Newton's rounds. */
function brought(
  model: Model,
  rows: readonly Row[],
  start: readonly number[],
  graded: Graded = AS_MEASURED,
): { z: readonly number[]; misses: readonly number[] } {
  const quantities = rows.map(({ quantity }) => quantity);
  let z = [...start];
  let misses: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const values = valuesOf(model, quantities, z, graded);
    misses = rows.map(({ wanted }, i) => Math.abs(wanted - (values[i] ?? NaN)));
    if (round > 1 && misses.every((miss) => miss <= TISSUE_SOLVED)) break;
    const answers = answersOf(model, quantities, z, graded);
    const residuals = rows.map(({ wanted }, i) => wanted - (values[i] ?? 0) + dot(invariant(answers[i], "row"), z));
    const to = acrossRows(answers, factored(gram(answers, [])).solve(residuals), FREEDOM_COUNT);
    z = [...towards(model, quantities, z, to, graded)];
  }
  return { z, misses: misses.map((miss) => (Number.isFinite(miss) ? miss : Infinity)) };
}

/** As far on the way as all can still be measured. */
function towards(
  model: Model,
  quantities: readonly Quantity[],
  from: readonly number[],
  to: readonly number[],
  graded: Graded,
): readonly number[] {
  for (let share = 1; share > TISSUE_NOTHING_NEW; share /= 2) {
    const z = from.map((value, k) => value + share * ((to[k] ?? value) - value));
    if (valuesOf(model, quantities, z, graded).every(Number.isFinite)) return z;
  }
  return from;
}

/** What bears on an answer: others, and girths that the chart prints. */
function bearingOn(at: number, precision: Matrix, rows: readonly Row[]): Pick<Misfit, "against" | "againstPrinted"> {
  const bearing = rows
    .flatMap((row, other) => {
      const share =
        Math.abs(entry(precision, at, other)) / Math.sqrt(entry(precision, at, at) * entry(precision, other, other));
      return other !== at && share > TISSUE_BEARS_ON ? [{ row, share }] : [];
    })
    .toSorted((a, b) => b.share - a.share)
    .map(({ row }) => row);
  return {
    against: bearing.flatMap(({ answer }) => answer ?? []),
    againstPrinted: bearing.flatMap(({ level }) => level ?? []),
  };
}

// Every size.

/** Steps of each girth from the measured size, the one up from it counted as 1; by the number of sizes where girths stand still. */
function gradedAt({ chart }: Pick<Pattern, "chart">, measured: number, index: number): Graded {
  const stepsOf = (girth: "bust" | "waist" | "hip"): number => {
    const of = (at: number): Mm | undefined => chart.sizes[at]?.[girth];
    const [own, here] = [of(measured), of(index)];
    const step = (of(measured + 1) ?? NaN) - (own ?? NaN) || (own ?? NaN) - (of(measured - 1) ?? NaN);
    if (own === undefined || here === undefined || !(step > 0)) return index - measured;
    return (here - own) / step;
  };
  return { bust: stepsOf("bust"), waist: stepsOf("waist"), hip: stepsOf("hip") };
}

/** The finished girths that the chart prints for a size: the stand-in is drafted to them, and stays so. */
function printedRows(pieces: PieceSet, { chart }: Pick<Pattern, "chart">, index: number): Row[] {
  const row = chart.sizes[index];
  const printed = { bust: row?.finishedBust, waist: row?.finishedWaist, hip: row?.finishedHip };
  return LEVELS.flatMap((level): Row[] => {
    const wanted = printed[level];
    const quantity = wanted === undefined ? null : finishedQuantity(pieces, level);
    return wanted === undefined || quantity === null
      ? []
      : [{ quantity, wanted, doubt: PRINTED_GIRTH_DOUBT ** 2, answer: null, level }];
  });
}

function ontoNest(
  nest: Nest,
  pattern: Pick<Pattern, "chart">,
  measured: number,
  z: readonly number[],
  refs: readonly TissueRef[],
): Nest {
  const own = nest.sizes[measured];
  // Shoulders that she measured both may be eased otherwise than ours; they are then in every size.
  const easeAt = own === undefined ? null : setOf(own);
  const sizes = nest.sizes.map((pieces, index): readonly Piece[] => {
    const graded = gradedAt(pattern, measured, index);
    const model = modelOf(pieces, undefined);
    const rows = [
      ...sewnRows(sewnOf(model.pieces), easeAt === null ? [] : refs),
      ...printedRows(model.pieces, pattern, index),
    ];
    const walked = walkedFrom(model, rows, z, graded);
    return inOrderOf(pieces, reshaped(model.pieces, model.moves, walked, graded));
  });
  return { ...nest, source: "fitted", sizes };
}

const inOrderOf = (pieces: readonly Piece[], set: PieceSet): readonly Piece[] =>
  pieces.map(({ name }) => invariant(set[name], name));

/** The freedoms changed as little as can be so that what is sewn together matches. */
function walkedFrom(model: Model, rows: readonly Row[], start: readonly number[], graded: Graded): readonly number[] {
  const quantities = rows.map(({ quantity }) => quantity);
  let z = [...start];
  let answers: number[][] | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const values = valuesOf(model, quantities, z, graded);
    const misses = rows.map(({ wanted }, i) => wanted - (values[i] ?? wanted));
    if (misses.every((miss) => Math.abs(miss) <= TISSUE_SOLVED)) break;
    answers ??= answersOf(model, quantities, z, graded);
    const change = acrossRows(answers, factored(gram(answers, [])).solve(misses), FREEDOM_COUNT);
    z = z.map((value, k) => value + (change[k] ?? 0));
  }
  return z;
}

// What is told of it.

/** What is met, as far as doubts go. */
interface Known {
  readonly rows: Matrix;
  readonly doubts: readonly number[];
}

/** What each answer changed: measured alone beside what is sewn together. */
function changesOf(model: Model, answers: readonly Row[], met: readonly Row[], at: Matrix): readonly TissueChange[] {
  const zero = Array.from({ length: FREEDOM_COUNT }, () => 0);
  const before = valuesOf(
    model,
    answers.map(({ quantity }) => quantity),
    zero,
  );
  const sewn = met.flatMap(({ answer }, i) => (answer === null ? [invariant(at[i], "row")] : []));
  return answers.flatMap(({ answer, wanted }, i): TissueChange[] => {
    const place = met.findIndex((row) => row.answer !== null && answer !== null && isSame(row.answer, answer));
    if (answer === null || place < 0) return [];
    const by = wanted - (before[i] ?? wanted);
    const rows = [...sewn, invariant(at[place], "row")];
    const weights = factored(gram(rows, [])).solve(rows.map((_, row) => (row === rows.length - 1 ? by : 0)));
    const z = acrossRows(rows, weights, FREEDOM_COUNT);
    return [{ ...answer, measured: wanted, standIn: wanted - by, by, moved: movedMost(model, answer.piece, z) }];
  });
}

const MOST_POINTS = 3;

function movedMost(model: Model, name: PieceName, z: readonly number[]): TissueChange["moved"] {
  const piece = invariant(model.pieces[name], name);
  const moved = invariant(reshaped(model.pieces, model.moves, z, AS_MEASURED)[name], name);
  return pointNames(piece)
    .map((point) => ({ point, by: distance(pointOf(piece, point), pointOf(moved, point)) }))
    .filter(({ by }) => by > TISSUE_MET)
    .toSorted((a, b) => b.by - a.by)
    .slice(0, MOST_POINTS);
}

const LEVELS: readonly FinishedLevel[] = ["bust", "waist", "hip"];

/** How the finished girths of a size answer to the freedoms; null where the pieces have no such level. */
function finishedAnswers({ nest, pattern, sizeIndex }: TissueInputs, measured: number, z: readonly number[]) {
  const pieces = nest.sizes[sizeIndex] ?? nest.sizes[measured] ?? [];
  const model = modelOf(pieces, undefined);
  const graded = gradedAt(pattern, measured, nest.sizes[sizeIndex] === undefined ? measured : sizeIndex);
  return LEVELS.map((level): readonly number[] | null => {
    const quantity = finishedQuantity(model.pieces, level);
    return quantity === null ? null : invariant(answersOf(model, [quantity], z, graded)[0], "row");
  });
}

/** How corners answer: points move along straight lines, so no difference is needed. */
function cornerAnswers(
  model: Model,
  piece: Piece,
): ReadonlyMap<PointName, { readonly x: number[]; readonly y: number[] }> {
  const found = new Map<PointName, { x: number[]; y: number[] }>();
  const none = (): number[] => Array.from({ length: FREEDOM_COUNT }, () => 0);
  for (const name of pointNames(piece)) found.set(name, { x: none(), y: none() });
  for (const [k, compiled] of model.moves.entries()) {
    for (const { piece: of, grade, by } of compiled) {
      if (of !== piece.name || grade !== null) continue;
      for (const [name, dx, dy] of by) {
        const both = found.get(name);
        if (both === undefined) continue;
        both.x[k] = (both.x[k] ?? 0) + dx;
        both.y[k] = (both.y[k] ?? 0) + dy;
      }
    }
  }
  return found;
}

const ANCHORS: readonly PointName[] = ["centreWaist", "underBustCentre", "princessWaist", "strapBackInner"];

/** The corner that a piece is laid on another of its kind by, for heights: low on the centre line. */
export function anchorOf(piece: Piece): PointName | undefined {
  return ANCHORS.find((name) => piece.edges.some(({ from }) => from === name));
}

function doubtOf(
  inputs: TissueInputs,
  measured: number,
  model: Model,
  z: readonly number[],
  known: Known,
): TissueDoubt {
  const system = factored(gram(known.rows, []));
  const spreadOf = (answers: readonly number[]): Mm =>
    Math.sqrt(varianceLeft(answers, known.rows, known.doubts, system));
  const [bust, waist, hip] = finishedAnswers(inputs, measured, z).map((row) => (row === null ? null : spreadOf(row)));
  const corners: Partial<Record<PieceName, Partial<Record<PointName, CornerDoubt>>>> = {};
  for (const piece of piecesOf(model.pieces)) {
    const all = cornerAnswers(model, piece);
    const anchor = anchorOf(piece);
    const fixed = anchor === undefined ? undefined : all.get(anchor)?.y;
    const own: Partial<Record<PointName, CornerDoubt>> = {};
    for (const [name, { x, y }] of all)
      own[name] = { x: spreadOf(x), y: spreadOf(y.map((value, k) => value - (fixed?.[k] ?? 0))) };
    corners[piece.name] = own;
  }
  return { finished: { bust: bust ?? null, waist: waist ?? null, hip: hip ?? null }, corners };
}

/** What one more answer is worth beside a girth's own doubt: how far bust point and darts are off counts by this (our own choice). */
const OTHERS_COUNT = 0.25;

function nextOf(
  inputs: TissueInputs,
  measured: number,
  model: Model,
  z: readonly number[],
  known: Known,
  refs: readonly TissueRef[],
): readonly NextTissue[] {
  const open = placesIn(model).filter((ref) => !refs.some((known) => isSame(known, ref)));
  const quantities = open.map(({ piece, length }) => invariant(lengthQuantity(model, piece, length), length));
  const rows = answersOf(model, quantities, z);
  const girths = finishedAnswers(inputs, measured, z);
  const told = girths.map((row) => row ?? Array.from({ length: FREEDOM_COUNT }, () => 0));
  const left = covarianceLeft([...told, ...rows], known);
  const list = open.map((ref, i) => {
    const at = i + LEVELS.length;
    const own = entry(left, at, at);
    const savedOf = (level: number): Mm => {
      const before = Math.max(0, entry(left, level, level));
      const after = Math.max(0, before - entry(left, level, at) ** 2 / (own + TISSUE_TAPE ** 2));
      return Math.sqrt(before) - Math.sqrt(after);
    };
    const saves = { bust: savedOf(0), waist: savedOf(1), hip: savedOf(2) };
    const worth = LEVELS.reduce((sum, _, level) => sum + entry(left, level, at) ** 2 / (own + TISSUE_TAPE ** 2), 0);
    return { ...ref, saves, worth: worth + OTHERS_COUNT * others(ref, own) };
  });
  return list.toSorted((a, b) => b.worth - a.worth).map(({ worth: _, ...next }) => next);
}

/** What of a length's own doubt counts by itself: the bust point and the darts go on the plan as they are. */
const BY_ITSELF = new Set<TissueLength>([
  "bustPointFromCentre",
  "bustPointFromSideNeck",
  "waistDartLength",
  "bustDartLength",
  "bustDartMouth",
  "bustDartFromUnderarm",
  "waistDartFromCentre",
]);
const others = ({ length }: TissueRef, variance: number): number => (BY_ITSELF.has(length) ? variance : 0);

/** All lengths that the pieces have, in the order of pieces and lengths. */
export const placesIn = (model: Model): readonly TissueRef[] =>
  piecesOf(model.pieces).flatMap(({ name }) =>
    TISSUE_LENGTHS.flatMap((length): TissueRef[] =>
      lengthQuantity(model, name, length) === null ? [] : [{ piece: name, length }],
    ),
  );

/** Of things that answer to the freedoms, once the rows are known to their doubts. */
function covarianceLeft(things: Matrix, { rows, doubts }: Known): number[][] {
  const system = factored(
    gram(
      rows,
      doubts.map((doubt) => Math.max(doubt, NEARLY_EXACT)),
    ),
  );
  const toRows = things.map((thing) => rows.map((row) => dot(row, thing)));
  const solved = toRows.map((right) => system.solve(right));
  return things.map((a, i) =>
    things.map((b, j) => dot(a, b) - dot(invariant(toRows[i], "row"), invariant(solved[j], "row"))),
  );
}

/**
 * In which order lengths are asked for when none is measured: each the one that saves most beside those before it.
 */
export function orderOfPlaces(inputs: Omit<TissueInputs, "tissue">): readonly TissueRef[] {
  const { nest, sizeIndex } = inputs;
  const pieces = nest.sizes[sizeIndex];
  if (pieces === undefined) return [];
  const model = modelOf(pieces, nest.sizes[sizeIndex + 1]);
  const z = Array.from({ length: FREEDOM_COUNT }, () => 0);
  const sewn = [...sewnRows(sewnOf(model.pieces), []), ...printedRows(model.pieces, inputs.pattern, sizeIndex)];
  const places = placesIn(model);
  const quantities = places.map(({ piece, length }) => invariant(lengthQuantity(model, piece, length), length));
  const girths = finishedAnswers({ ...inputs, tissue: { size: "", pieces: {} } }, sizeIndex, z).map(
    (row) => row ?? Array.from({ length: FREEDOM_COUNT }, () => 0),
  );
  const left = covarianceLeft([...girths, ...answersOf(model, quantities, z)], {
    rows: answersOf(
      model,
      sewn.map(({ quantity }) => quantity),
      z,
    ),
    doubts: sewn.map(({ doubt }) => doubt),
  });
  const order: TissueRef[] = [];
  const rest = new Set(places.keys());
  while (rest.size > 0) {
    let best = -1;
    let most = -Infinity;
    for (const i of rest) {
      const at = i + LEVELS.length;
      const own = entry(left, at, at);
      const worth =
        LEVELS.reduce((sum, _, level) => sum + entry(left, level, at) ** 2 / (own + TISSUE_TAPE ** 2), 0) +
        OTHERS_COUNT * others(invariant(places[i], "place"), own);
      if (worth > most) [best, most] = [i, worth];
    }
    order.push(invariant(places[best], "place"));
    rest.delete(best);
    const taken = best + LEVELS.length;
    const column = left.map((row) => row[taken] ?? 0);
    const whole = (column[taken] ?? 0) + TISSUE_TAPE ** 2;
    for (const [i, row] of left.entries())
      for (const j of row.keys()) row[j] = (row[j] ?? 0) - ((column[i] ?? 0) * (column[j] ?? 0)) / whole;
  }
  return order;
}

function unfitted({ nest }: TissueInputs): FittedNest {
  return {
    nest,
    measured: null,
    misfits: [],
    changed: [],
    unused: [],
    doubt: { finished: { bust: null, waist: null, hip: null }, corners: {} },
    next: [],
    moves: [],
  };
}
