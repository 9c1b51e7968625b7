/**
 * The stand-in brought to what she measured on her tissue by the least moves that meet every answer exactly, seams that are
 * sewn together and legs of darts kept; answers that contradict are named, never averaged away; and how well the pieces are
 * then known.
 */
import { blendPiece, levelSizes, neighbours } from "../blend/blendPiece";
import type { Pattern } from "../decisions/pattern";
import { TISSUE_LENGTHS, type Tissue, type TissueLength } from "../decisions/tissue";
import { PIECE_ORDER, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { pointNames, pointOf, type Nest, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { distance } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { isBasque } from "../pattern/pieceGroups";
import { invariant } from "../result";
import { entry, type Matrix } from "../statistics/linear";
import {
  PRINTED_GIRTH_DOUBT,
  SEAM_EASE_DOUBT,
  TISSUE_ACROSS,
  TISSUE_BEARS_ON,
  TISSUE_CONTRADICTS,
  TISSUE_FORETOLD,
  TISSUE_LOW_DART,
  TISSUE_MET,
  TISSUE_NEARLY_EXACT,
  TISSUE_NOTHING_NEW,
  TISSUE_ROOM,
  TISSUE_SOLVED,
  TISSUE_TAPE,
} from "../tolerance";
import type { Mm } from "../units";
import { dartToBust, isStep, measureTissue } from "./tapeWays";
import { evenlyTaken, takenQuantities } from "./evenDarts";
import { FREEDOMS } from "./freedoms";
import { acrossRows, dot, factored, gram, varianceLeft, type Factored } from "./leastMoves";
import { reshapePiece } from "./reshapePiece";
import {
  answersOf,
  AS_MEASURED,
  finishedQuantity,
  FREEDOM_COUNT,
  lengthQuantity,
  modelOf,
  reshaped,
  sewnOf,
  STEP,
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
interface CornerDoubt {
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
  /** Answers to a dart that is another than the stand-in's, one low on the side: nothing is fitted to them. */
  readonly otherCut: readonly TissueRef[];
  readonly doubt: TissueDoubt;
  /** For each length not measured, what matters most first. */
  readonly next: readonly NextTissue[];
  /** How far each freedom is moved, for the nests of other cups. */
  readonly moves: Moved;
  /** null where nothing is fitted. */
  readonly basis: Basis | null;
}

/** How far each freedom is moved. */
interface Moved {
  /** In the size measured and the next one up: what was measured is met there. */
  readonly here: readonly number[];
  /** In the other sizes: what a step is off by the tape does not grow with each of them. */
  readonly elsewhere: readonly number[];
}

export interface TissueInputs {
  readonly tissue: Tissue;
  readonly pattern: Pick<Pattern, "chart">;
  /** As printed: the style's pieces in every size, in one cup. */
  readonly nest: Nest;
  /** The size whose finished girths the doubt is stated for. */
  readonly sizeIndex: number;
  /** Where the waist is cut, the darts of the size above kept; left out: on that size's own line. */
  readonly waistAt?: number;
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
  const { tissue, pattern } = inputs;
  const measured = inputs.nest.labels.indexOf(tissue.size);
  const pieces = inputs.nest.sizes[measured];
  if (pieces === undefined) return unfitted(inputs);
  const nest = refsOf(tissue).length === 0 ? inputs.nest : evened(inputs.nest, pattern, measured);
  const model = modelOf(pieces, nest.sizes[measured + 1]);
  const refs = refsOf(tissue);
  const others = otherDarts(tissue, model.pieces);
  const otherCut = refs.filter(({ piece, length }) => others.has(piece) && BUST_DART.has(length));
  const answers = refs.flatMap(({ piece, length }): Row[] => {
    if (others.has(piece) && BUST_DART.has(length)) return [];
    const quantity = lengthQuantity(model, piece, length);
    const wanted = tissue.pieces[piece]?.[length];
    if (quantity === null || wanted === undefined) return [];
    return [{ quantity, wanted, doubt: tapeDoubt(length), answer: { piece, length } }];
  });
  const rows = [
    ...sewnRows(sewnOf(model.pieces), refs),
    ...printedRows(model.pieces, pattern, measured),
    ...printedAbove(model, pattern, measured + 1),
    ...answers,
  ];
  const solved = solve(model, rows);
  const { z, met } = solved;
  const usable = rows.filter((row) => met.includes(row) || !solved.contradicting.has(row));
  const quantities = usable.map(({ quantity }) => quantity);
  const known: Known = {
    rows: answersOf(model, quantities, z),
    doubts: usable.map(({ doubt }) => doubt),
    isMet: usable.map((row) => met.includes(row)),
  };
  const moves = { here: z, elsewhere: withLikelySteps(model, usable, known, z) };
  const fittedNest = ontoNest(nest, pattern, measured, moves, refs, met);
  const basis: Basis = { inputs: { ...inputs, nest }, fitted: fittedNest, measured, model, known, refs, others, z };
  return {
    nest: fittedNest,
    measured,
    misfits: solved.misfits,
    changed: changesOf(
      model,
      answers,
      usable.filter((row) => met.includes(row)),
      known.rows.filter((_, at) => known.isMet[at]),
    ),
    unused: refs.filter((ref) => !otherCut.includes(ref) && !answers.some(({ answer }) => isSame(answer, ref))),
    otherCut,
    ...toldOf(basis),
    moves,
    basis,
  };
}

/** What the doubt is told by. */
interface Basis {
  readonly inputs: TissueInputs;
  readonly fitted: Nest;
  readonly measured: number;
  readonly model: Model;
  readonly known: Known;
  readonly refs: readonly TissueRef[];
  readonly others: ReadonlySet<PieceName>;
  readonly z: readonly number[];
}

function toldOf({
  inputs,
  fitted,
  measured,
  model,
  known,
  refs,
  others,
  z,
}: Basis): Pick<FittedNest, "doubt" | "next"> {
  const aims = aimsOf(inputs, fitted, measured, model, z);
  return { doubt: doubtOf(aims, model, known, others), next: nextOf(aims, model, z, known, refs) };
}

/** The same fit, its doubt and what the next length saves told for pieces that are cut elsewhere. */
export function toldAt(fit: FittedNest, at: Pick<TissueInputs, "sizeIndex" | "waistAt">): FittedNest {
  return fit.basis === null ? fit : { ...fit, ...toldOf({ ...fit.basis, inputs: { ...fit.basis.inputs, ...at } }) };
}

/**
 * The freedoms for the sizes that were not measured: steps as they most likely are, the tape's own doubt weighed against what
 * patterns have. Met exactly they would carry twice or three times what the tape is off by into a size two or three steps away.
 */
function withLikelySteps(model: Model, rows: readonly Row[], known: Known, z: readonly number[]): readonly number[] {
  const values = valuesOf(
    model,
    rows.map(({ quantity }) => quantity),
    z,
  );
  const residuals = rows.map(
    ({ wanted }, i) => wanted - (values[i] ?? wanted) + dot(invariant(known.rows[i], "row"), z),
  );
  const likely = acrossRows(
    known.rows,
    factored(gram(known.rows, weighed(known.doubts))).solve(residuals),
    FREEDOM_COUNT,
  );
  return z.map((value, k) => (isGrade(k) ? (likely[k] ?? value) : value));
}

const isGrade = (k: number): boolean => FREEDOMS[k]?.grade !== null;

/** Doubts that a system can be factored with. */
const weighed = (doubts: readonly number[]): number[] => doubts.map((doubt) => Math.max(doubt, TISSUE_NEARLY_EXACT));

const BUST_DART = new Set<TissueLength>(["bustDartMouth", "bustDartLength", "bustDartFromUnderarm"]);

/** The pieces whose dart to the bust opens so low on the side that it is another than the stand-in's. */
function otherDarts(tissue: Tissue, pieces: PieceSet): ReadonlySet<PieceName> {
  const low = piecesOf(pieces).filter((piece) => {
    const own = tissue.pieces[piece.name];
    const long = own?.sideLength ?? measureTissue(piece, "sideLength");
    const down = own?.bustDartFromUnderarm;
    return down !== undefined && long !== null && down > TISSUE_LOW_DART * long;
  });
  return new Set(low.map(({ name }) => name));
}

/** Variance of a reading. */
const tapeDoubt = (length: TissueLength): number => (length === "acrossWidth" ? TISSUE_ACROSS : TISSUE_TAPE) ** 2;

const isSame = (a: TissueRef | null, b: TissueRef): boolean =>
  a !== null && a.piece === b.piece && a.length === b.length;

/** The nest of another cup of the same pattern, moved alike. */
export function alsoFitted(fit: FittedNest, { nest, pattern, tissue }: Omit<TissueInputs, "sizeIndex">): Nest {
  if (fit.measured === null) return nest;
  const own = refsOf(tissue).length === 0 ? nest : evened(nest, pattern, fit.measured);
  return ontoNest(own, pattern, fit.measured, fit.moves, refsOf(tissue), []);
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
  /** Answers that lie further from what the others say than a tape is off. */
  readonly contradicting: ReadonlySet<Row>;
  readonly misfits: readonly Misfit[];
}

/** Rounds of bringing pieces to answers; each leaves a small part of the error. */
const ROUNDS = 12;
/** Rounds in which it is settled where the answers lie together, their doubts counted. */
const ROUGH_ROUNDS = 2;

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
      rows.map(({ doubt }) => Math.max(doubt, TISSUE_NEARLY_EXACT)),
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
        withinTape: !contradicting.has(at) && Math.abs(by) <= TISSUE_CONTRADICTS / Math.sqrt(entry(precision, at, at)),
      },
    ];
  });
  return { z, met, misfits, contradicting: new Set(rows.filter((_, at) => contradicting.has(at))) };
}

/** The freedoms where all answers lie together best, doubts counted; how the rows answer there, and what is left as a line. */
function roughly(model: Model, rows: readonly Row[]) {
  const quantities = rows.map(({ quantity }) => quantity);
  const doubts = rows.map(({ doubt }) => Math.max(doubt, TISSUE_NEARLY_EXACT));
  let z: number[] = Array.from({ length: FREEDOM_COUNT }, () => 0);
  let answers = answersOf(model, quantities, z);
  let residuals: number[] = [];
  for (let round = 0; round < ROUGH_ROUNDS; round += 1) {
    if (round > 0) answers = answersOf(model, quantities, z);
    const values = valuesOf(model, quantities, z);
    // What a straight line through here leaves at the stand-in.
    residuals = rows.map(({ wanted }, i) => wanted - (values[i] ?? 0) + dot(invariant(answers[i], "row"), z));
    const to = acrossRows(answers, factored(gram(answers, doubts)).solve(residuals), FREEDOM_COUNT);
    z = [...towards(model, quantities, z, to)];
  }
  return { z, answers, residuals };
}

/**
 * Answers that lie further from what all others leave them than tapes do, where the others say much of it at all. The one that
 * is furthest out goes first, then it is looked again.
 */
function contradictions(rows: readonly Row[], answers: Matrix, residuals: readonly number[]): ReadonlySet<number> {
  const out = new Set<number>();
  for (let count = 0; count < rows.length; count += 1) {
    const left = rows.flatMap((_, at) => (out.has(at) ? [] : [at]));
    const part = left.map((at) => invariant(answers[at], "row"));
    const doubts = left.map((at) => Math.max(invariant(rows[at], "row").doubt, TISSUE_NEARLY_EXACT));
    const system = factored(gram(part, doubts));
    const inverse = system.inverse();
    const weights = system.solve(left.map((at) => residuals[at] ?? 0));
    let worst: { at: number; out: number } | null = null;
    for (const [i, at] of left.entries()) {
      const row = invariant(rows[at], "row");
      if (row.answer === null) continue;
      const precision = entry(inverse, i, i);
      const foretold = 1 / precision - row.doubt;
      // Where the others say it no better than so, it is only unlike the stand-in.
      if (foretold > TISSUE_FORETOLD ** 2) continue;
      const far = Math.abs(weights[i] ?? 0) / Math.sqrt(precision);
      if (far > TISSUE_CONTRADICTS && (worst === null || far > worst.out)) worst = { at, out: far };
    }
    if (worst === null) break;
    out.add(worst.at);
  }
  return out;
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
  for (let count = 0; count <= rows.length; count += 1) {
    const { z, misses, answers } = brought(model, met, start);
    const worst = misses.reduce((most, miss) => Math.max(most, miss), 0);
    if (worst <= TISSUE_MET) return { z, met };
    // What has the least room beside the others is left out; what is sewn together stays.
    const inverse = factored(gram(answers, [])).inverse();
    let out = -1;
    for (const at of met.keys())
      if (met[at]?.answer !== null && (out < 0 || entry(inverse, at, at) > entry(inverse, out, out))) out = at;
    if (out < 0) break;
    met = met.filter((_, at) => at !== out);
  }
  return { z: Array.from({ length: FREEDOM_COUNT }, () => 0), met };
}

/** Least moves that meet the rows, by Newton's rounds. */
function brought(
  model: Model,
  rows: readonly Row[],
  start: readonly number[],
): { z: readonly number[]; misses: readonly number[]; answers: Matrix } {
  const quantities = rows.map(({ quantity }) => quantity);
  const missesAt = (z: readonly number[]): readonly number[] => {
    const values = valuesOf(model, quantities, z);
    return rows.map(({ wanted }, i) => wanted - (values[i] ?? NaN));
  };
  let z: readonly number[] = start;
  let misses = missesAt(z);
  let answers: Matrix = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    if (round > 1 && misses.every((miss) => Math.abs(miss) <= TISSUE_SOLVED)) break;
    answers = answersOf(model, quantities, z);
    const residuals = misses.map((miss, i) => miss + dot(invariant(answers[i], "row"), z));
    const to = acrossRows(answers, factored(gram(answers, [])).solve(residuals), FREEDOM_COUNT);
    const before = dot(misses, misses);
    let next = z;
    // A whole step, or as much of it as brings them nearer.
    for (let halved = 0; halved < HALVINGS; halved += 1) {
      const share = 0.5 ** halved;
      next = z.map((value, k) => value + share * ((to[k] ?? value) - value));
      misses = missesAt(next);
      const after = dot(misses, misses);
      if (after < before || after <= TISSUE_SOLVED) break;
    }
    z = next;
  }
  return { z, misses: misses.map((miss) => (Number.isFinite(miss) ? Math.abs(miss) : Infinity)), answers };
}

/** How often a step that does not come nearer is halved: less of it brings nothing. */
const HALVINGS = 4;
/** And one after which something could no longer be measured. */
const HALVINGS_TO_MEASURE = 10;

/** As far on the way as all can still be measured. */
function towards(
  model: Model,
  quantities: readonly Quantity[],
  from: readonly number[],
  to: readonly number[],
): readonly number[] {
  for (let halved = 0; halved < HALVINGS_TO_MEASURE; halved += 1) {
    const share = 0.5 ** halved;
    const z = from.map((value, k) => value + share * ((to[k] ?? value) - value));
    if (valuesOf(model, quantities, z).every(Number.isFinite)) return z;
  }
  return from;
}

/**
 * What bears on an answer: others, and girths that the chart prints. A girth is printed for the size measured and for the next one:
 * both together bear on it, and each alone hardly, since the other says nearly the same.
 *
 * @source partial correlation with one or several others, from the inverse of what all vary by together
 */
function bearingOn(at: number, precision: Matrix, rows: readonly Row[]): Pick<Misfit, "against" | "againstPrinted"> {
  const shareOf = (together: readonly number[]): number => {
    const toward = together.map((other) => entry(precision, at, other));
    const among = factored(together.map((i) => together.map((j) => entry(precision, i, j))));
    return Math.sqrt(dot(toward, among.solve(toward)) / entry(precision, at, at));
  };
  const answers = rows.flatMap(({ answer }, other) =>
    answer === null || other === at ? [] : [{ what: answer, share: shareOf([other]) }],
  );
  const printed = LEVELS.map((level) => ({
    what: level,
    share: shareOf(rows.flatMap((row, other) => (row.level === level ? [other] : []))),
  }));
  return { against: bearingMost(answers), againstPrinted: bearingMost(printed) };
}

/** What bears enough, that which bears most first. */
const bearingMost = <T>(some: readonly { readonly what: T; readonly share: number }[]): readonly T[] =>
  some
    .filter(({ share }) => share > TISSUE_BEARS_ON)
    .toSorted((a, b) => b.share - a.share)
    .map(({ what }) => what);

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

/** Those of the next size up, in terms of the size measured: steps are held against them too. */
const printedAbove = (model: Model, pattern: Pick<Pattern, "chart">, index: number): Row[] =>
  printedRows(model.next, pattern, index).map((row) => ({
    ...row,
    quantity: { ...row.quantity, usesNext: true, value: (_, above) => row.quantity.value(above, above) },
  }));

function ontoNest(
  nest: Nest,
  pattern: Pick<Pattern, "chart">,
  measured: number,
  moves: Moved,
  refs: readonly TissueRef[],
  met: readonly Row[],
): Nest {
  const own = nest.sizes[measured] ?? [];
  const slopes = slopesOf(modelOf(own, undefined), moves.here);
  const shapedAt = (pieces: readonly Piece[], index: number, more: readonly Row[]): readonly Piece[] => {
    const graded = gradedAt(pattern, measured, index);
    const model = modelOf(pieces, undefined);
    // Shoulders that she measured both may be eased otherwise than ours; they are then in every size.
    const sewn = sewnRows(sewnOf(model.pieces), refs);
    const printed = printedRows(model.pieces, pattern, index);
    const z = movesAt(moves, measured, index);
    // Steps that contradict what the chart prints are not met, rather than met by moves without measure.
    const walked =
      walkedFrom(model, [...sewn, ...printed, ...more], z, graded, slopes) ??
      walkedFrom(model, [...sewn, ...printed], z, graded, slopes) ??
      walkedFrom(model, sewn, z, graded, slopes) ??
      z;
    return inOrderOf(pieces, reshaped(model.pieces, model.moves, walked, graded));
  };
  const shaped = setOf(shapedAt(own, measured, []));
  const sizes = nest.sizes.map((pieces, index) => {
    const isNext = index === measured + 1;
    return shapedAt(pieces, index, isNext ? stepRows(met, shaped, setOf(pieces)) : []);
  });
  return { ...nest, source: "fitted", sizes };
}

/** The stand-in with what its darts take at the waist made even over the sizes; the size measured as it is. */
function evened(nest: Nest, pattern: Pick<Pattern, "chart">, measured: number): Nest {
  const slopes = slopesOf(modelOf(nest.sizes[measured] ?? [], undefined), nothing());
  const sizes = nest.sizes.map((pieces, index) => {
    if (index === measured) return pieces;
    const model = modelOf(pieces, undefined);
    const taken = evenlyTaken(nest, measured, index, (at) => gradedAt(pattern, measured, at).bust);
    const rows = [
      ...sewnRows(sewnOf(model.pieces), []),
      ...taken.map(({ quantity, wanted }): Row => ({ quantity, wanted, doubt: 0, answer: null })),
    ];
    const walked = walkedFrom(model, rows, nothing(), AS_MEASURED, slopes);
    return walked === null ? pieces : inOrderOf(pieces, reshaped(model.pieces, model.moves, walked, AS_MEASURED));
  });
  return { ...nest, sizes };
}

const movesAt = ({ here, elsewhere }: Moved, measured: number, index: number): readonly number[] =>
  isHere(measured, index) ? here : elsewhere;

const isHere = (measured: number, index: number): boolean => index === measured || index === measured + 1;

/** How what is sewn together and the finished girths answer, by what they are; freedoms that grow with the size counted as one step. */
type Slopes = ReadonlyMap<string, readonly number[]>;

const ONE_STEP: Graded = { bust: 1, waist: 1, hip: 1 };

function slopesOf(model: Model, z: readonly number[]): Slopes {
  const levels = LEVELS.flatMap((level) => {
    const quantity = finishedQuantity(model.pieces, level);
    return quantity === null ? [] : [{ ...quantity, key: level }];
  });
  const all = [...sewnOf(model.pieces), ...levels, ...takenQuantities(model.pieces)];
  // Freedoms of steps stand at nothing in the size measured: their slopes alone are asked for.
  const still = z.map((value, k) => (isGrade(k) ? 0 : value));
  const rows = answersOf(model, all, still, ONE_STEP);
  return new Map(all.map(({ key }, i) => [key, invariant(rows[i], "row")]));
}

const scaledTo = (row: readonly number[], graded: Graded): readonly number[] =>
  row.map((value, k) => {
    const grade = FREEDOMS[k]?.grade ?? null;
    return grade === null ? value : value * graded[grade];
  });

/** In the size above the one measured: the steps to it stay as they were answered. */
const stepRows = (met: readonly Row[], own: PieceSet, next: PieceSet): Row[] =>
  met.flatMap((row): Row[] => {
    if (row.answer === null || !isStep(row.answer.length)) return [];
    const { piece, length } = row.answer;
    const below = own[piece];
    if (below === undefined || next[piece] === undefined) return [];
    const value = (set: PieceSet): Mm => measureTissue(below, length, set[piece]) ?? NaN;
    return [{ ...row, quantity: { of: [piece], usesNext: false, value } }];
  });

const inOrderOf = (pieces: readonly Piece[], set: PieceSet): readonly Piece[] =>
  pieces.map(({ name }) => invariant(set[name], name));

/** The freedoms changed as little as can be so that what is sewn together matches; null where it cannot be brought to. */
function walkedFrom(
  model: Model,
  rows: readonly Row[],
  start: readonly number[],
  graded: Graded,
  slopes: Slopes,
): readonly number[] | null {
  const quantities = rows.map(({ quantity }) => quantity);
  const lent = quantities.map(({ key }) => (key === undefined ? undefined : slopes.get(key)));
  const borrowed = lent.every((row) => row !== undefined) ? lent.map((row) => scaledTo(row, graded)) : null;
  const by = (rowsAt: Matrix): readonly number[] | null => {
    const system = factored(gram(rowsAt, []));
    let z = [...start];
    for (let round = 0; round < ROUNDS; round += 1) {
      const values = valuesOf(model, quantities, z, graded);
      const misses = rows.map(({ wanted }, i) => wanted - (values[i] ?? wanted));
      if (misses.every((miss) => Math.abs(miss) <= TISSUE_SOLVED)) return z;
      const change = acrossRows(rowsAt, system.solve(misses), FREEDOM_COUNT);
      z = z.map((value, k) => value + (change[k] ?? 0));
    }
    return null;
  };
  return (borrowed === null ? null : by(borrowed)) ?? by(answersOf(model, quantities, start, graded));
}

// What is told of it.

/** What is known, and of it what is met exactly. */
interface Known {
  readonly rows: Matrix;
  readonly doubts: readonly number[];
  readonly isMet: readonly boolean[];
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

/**
 * What is told a doubt of, as it answers to the freedoms: apart those set as in the size measured, and those of steps as they are
 * set elsewhere.
 */
interface Aim {
  readonly here: readonly number[];
  readonly elsewhere: readonly number[];
  /** Variance that the girths printed in the chart bring. */
  readonly printed: number;
}
type Aims = Readonly<Record<FinishedLevel, Aim | null>>;

const nothing = (): number[] => Array.from({ length: FREEDOM_COUNT }, () => 0);
const plus = (a: readonly number[], b: readonly number[]): number[] => a.map((value, k) => value + (b[k] ?? 0));

/** How the finished girths of the pieces as they are cut answer; null where the pieces have no such level. */
function aimsOf(
  inputs: Pick<TissueInputs, "nest" | "pattern" | "sizeIndex" | "waistAt">,
  fitted: Nest,
  measured: number,
  own: Model,
  z: readonly number[],
): Aims {
  const { nest, pattern } = inputs;
  const base = nest.sizes[inputs.sizeIndex] === undefined ? measured : inputs.sizeIndex;
  const slopes = slopesOf(modelOf(nest.sizes[measured] ?? [], undefined), z);
  /** An answer in one size, apart by how its freedoms are set there; what walking that size takes out of it is left out. */
  const inSize = (row: readonly number[], index: number): Aim => {
    const pieces = nest.sizes[index] ?? [];
    const graded = gradedAt(pattern, measured, index);
    const level = printedRows(setOf(pieces), pattern, index).map(({ quantity }) => quantity.key);
    const fixed = [...sewnOf(setOf(pieces)).map(({ key }) => key), ...level].flatMap((key) => {
      const found = key === undefined ? undefined : slopes.get(key);
      return found === undefined ? [] : [scaledTo(found, graded)];
    });
    const shares = factored(gram(fixed, [])).solve(fixed.map((one) => dot(one, row)));
    const taken = acrossRows(fixed, shares, FREEDOM_COUNT);
    const printed = shares
      .slice(fixed.length - level.length)
      .reduce((sum, share) => sum + (share * PRINTED_GIRTH_DOUBT) ** 2, 0);
    const left = row.map((value, k) => value - (taken[k] ?? 0));
    return isHere(measured, index)
      ? { here: left, elsewhere: nothing(), printed }
      : {
          here: left.map((value, k) => (isGrade(k) ? 0 : value)),
          elsewhere: left.map((value, k) => (isGrade(k) ? value : 0)),
          printed,
        };
  };
  const girthOf = (level: "bust" | "hip"): Aim | null => {
    const row = slopes.get(level);
    return row === undefined ? null : inSize(scaledTo(row, gradedAt(pattern, measured, base)), base);
  };
  const waist = (): Aim | null => {
    if (slopes.get("waist") === undefined) return null;
    const at = inputs.waistAt ?? base;
    const { lower, share } = neighbours(at, nest.sizes.length);
    const points = waistSlopes(fitted, base, at);
    const part = (which: "atWaist" | "kept", index: number, times: number): Aim | null => {
      if (times === 0 || nest.sizes[index] === undefined) return null;
      const graded = gradedAt(pattern, measured, index);
      const row = nothing();
      for (const [k, compiled] of own.moves.entries())
        for (const { piece, grade, by } of compiled)
          for (const [name, dx, dy] of by) {
            const slope = points.get(piece)?.get(name);
            if (slope === undefined) continue;
            const [x, y] =
              which === "atWaist" ? [slope.isAtWaist ? slope.x : 0, 0] : [slope.isAtWaist ? 0 : slope.x, slope.y];
            row[k] = (row[k] ?? 0) + times * (grade === null ? 1 : graded[grade]) * (dx * x + dy * y);
          }
      return inSize(row, index);
    };
    return [part("kept", base, 1), part("atWaist", lower, 1 - share), part("atWaist", lower + 1, share)].reduce<Aim>(
      (sum, one) =>
        one === null
          ? sum
          : {
              here: plus(sum.here, one.here),
              elsewhere: plus(sum.elsewhere, one.elsewhere),
              printed: sum.printed + one.printed,
            },
      { here: nothing(), elsewhere: nothing(), printed: 0 },
    );
  };
  return { bust: girthOf("bust"), waist: waist(), hip: girthOf("hip") };
}

interface Slope {
  /** Of the whole finished waist, for each millimetre. */
  readonly x: number;
  readonly y: number;
  /** Whether its place across is that of the waist's size, not of the base size. */
  readonly isAtWaist: boolean;
}

/** How the finished waist, cut at a place, answers to the points of its pieces. */
function waistSlopes({ sizes }: Nest, base: number, at: number): ReadonlyMap<PieceName, ReadonlyMap<PointName, Slope>> {
  const names = (sizes[base] ?? []).filter(
    (piece) => !isBasque(piece.name) && piece.edges.some(({ seam }) => seam === "waist"),
  );
  return new Map(
    names.map(({ name }) => {
      const piece = blendPiece(
        sizes.flatMap((pieces) => pieces.filter((one) => one.name === name)),
        levelSizes(base, at, base),
      );
      const long = seamLength(piece, "waist");
      const ends = new Set(piece.edges.flatMap(({ seam, from, to }) => (seam === "waist" ? [from, to] : [])));
      const moved = (point: PointName, by: readonly [number, number]): number =>
        (2 * (seamLength(reshapePiece(piece, new Map([[point, by]])), "waist") - long)) / STEP;
      return [
        name,
        new Map(
          [...ends].map((point) => [
            point,
            {
              x: moved(point, [STEP, 0]),
              y: moved(point, [0, STEP]),
              isAtWaist: piece.points[point]?.level === "waist",
            },
          ]),
        ),
      ];
    }),
  );
}

/** What is known, factored once: what is met exactly, and all of it as far as it is weighed. */
interface Factors {
  readonly known: Known;
  readonly met: readonly number[];
  readonly exact: Factored;
  readonly likely: Factored;
}

function factorsOf(known: Known): Factors {
  const met = [...known.rows.keys()].filter((i) => known.isMet[i]);
  return {
    known,
    met,
    exact: factored(gram(rowsAt(known.rows, met), [])),
    likely: factored(gram(known.rows, weighed(known.doubts))),
  };
}

const rowsAt = (rows: Matrix, places: readonly number[]): Matrix => places.map((at) => invariant(rows[at], "row"));

/** Shares of each row in what something is taken to be: exactly, and as likely. */
function sharesOf({ known, met, exact, likely }: Factors, answers: readonly number[]) {
  return {
    exact: exact.solve(rowsAt(known.rows, met).map((row) => dot(row, answers))),
    likely: likely.solve(known.rows.map((row) => dot(row, answers))),
  };
}

/** One more row that would be met, and how those before it share in it. */
interface More {
  readonly row: readonly number[];
  readonly doubt: number;
  readonly shares: ReturnType<typeof sharesOf>;
}

/**
 * Variance of what the pieces have of an aim, less the truth: what is met taken exactly, and steps elsewhere as likely.
 *
 * @source one more row borders what is factored: its own share is what is left of it once the others have theirs
 */
function varianceOf({ here, elsewhere, printed }: Aim, factors: Factors): (more?: More) => number {
  const { known, met } = factors;
  const [ofHere, ofElsewhere] = [sharesOf(factors, here), sharesOf(factors, elsewhere)];
  const metRows = rowsAt(known.rows, met);
  return (more) => {
    const bordered = (
      own: readonly number[],
      rows: Matrix,
      of: readonly number[],
      shares: readonly number[],
      doubt: number,
    ) => {
      if (more === undefined) return { last: 0, shares };
      const through = rows.map((row) => dot(row, more.row));
      const room = dot(more.row, more.row) + doubt - dot(through, own);
      const last = room > TISSUE_NEARLY_EXACT ? (dot(more.row, of) - dot(through, shares)) / room : 0;
      return { last, shares: shares.map((share, i) => share - last * (own[i] ?? 0)) };
    };
    const exact = bordered(more?.shares.exact ?? [], metRows, here, ofHere.exact, 0);
    const likely = bordered(more?.shares.likely ?? [], known.rows, elsewhere, ofElsewhere.likely, more?.doubt ?? 0);
    const weights = [...likely.shares];
    for (const [i, at] of met.entries()) weights[at] = (weights[at] ?? 0) + (exact.shares[i] ?? 0);
    const last = exact.last + likely.last;
    const carried = acrossRows(known.rows, weights, FREEDOM_COUNT);
    const off = carried.map((value, k) => (here[k] ?? 0) + (elsewhere[k] ?? 0) - value - last * (more?.row[k] ?? 0));
    const ofRows = weights.reduce((sum, weight, i) => sum + weight * weight * (known.doubts[i] ?? 0), 0);
    return printed + dot(off, off) + ofRows + last * last * (more?.doubt ?? 0);
  };
}

const none = (): number[] => Array.from({ length: FREEDOM_COUNT }, () => 0);

/** How corners answer: points move along straight lines, so no difference is needed. */
function cornerAnswers(
  model: Model,
  piece: Piece,
): ReadonlyMap<PointName, { readonly x: number[]; readonly y: number[] }> {
  const found = new Map<PointName, { x: number[]; y: number[] }>();
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

function doubtOf(aims: Aims, model: Model, known: Known, others: ReadonlySet<PieceName>): TissueDoubt {
  const factors = factorsOf(known);
  const rows = known.rows.filter((_, i) => known.isMet[i]);
  const doubts = known.doubts.filter((_, i) => known.isMet[i]);
  const spreadOf = (answers: readonly number[]): Mm => Math.sqrt(varianceLeft(answers, rows, doubts, factors.exact));
  const told = (aim: Aim | null): Mm | null => (aim === null ? null : Math.sqrt(varianceOf(aim, factors)()));
  const corners: Partial<Record<PieceName, Partial<Record<PointName, CornerDoubt>>>> = {};
  for (const piece of piecesOf(model.pieces)) {
    const all = cornerAnswers(model, piece);
    const anchor = anchorOf(piece);
    const fixed = anchor === undefined ? undefined : all.get(anchor)?.y;
    // A piece without a centre line is laid by its anchor both ways.
    const hasCentre = piece.edges.some(({ seam }) => seam === "centre");
    const across = hasCentre || anchor === undefined ? undefined : all.get(anchor)?.x;
    const own: Partial<Record<PointName, CornerDoubt>> = {};
    const dart = others.has(piece.name) ? dartToBust(piece) : undefined;
    for (const [name, { x, y }] of all) {
      // What a dart of another kind has there is not known at all.
      if (dart !== undefined && [dart.inner, dart.outer, dart.apex].includes(name)) continue;
      own[name] = {
        x: spreadOf(x.map((value, k) => value - (across?.[k] ?? 0))),
        y: spreadOf(y.map((value, k) => value - (fixed?.[k] ?? 0))),
      };
    }
    corners[piece.name] = own;
  }
  return { finished: { bust: told(aims.bust), waist: told(aims.waist), hip: told(aims.hip) }, corners };
}

/** What one more answer is worth beside a girth's own doubt: how far bust point and darts are off counts by this (our own choice). */
const OTHERS_COUNT = 0.05;

function nextOf(
  aims: Aims,
  model: Model,
  z: readonly number[],
  known: Known,
  refs: readonly TissueRef[],
): readonly NextTissue[] {
  const open = placesIn(model).filter((ref) => !refs.some((one) => isSame(one, ref)));
  const quantities = open.map(({ piece, length }) => invariant(lengthQuantity(model, piece, length), length));
  const rows = answersOf(model, quantities, z);
  const factors = factorsOf(known);
  const asked = LEVELS.map((level) => {
    const aim = aims[level];
    const variance = aim === null ? null : varianceOf(aim, factors);
    return { level, variance, before: variance?.() ?? 0 };
  });
  const list = open.map((ref, i) => {
    const row = invariant(rows[i], "row");
    const more: More = { row, doubt: tapeDoubt(ref.length), shares: sharesOf(factors, row) };
    const gains = asked.map(({ level, variance, before }) => ({ level, before, after: variance?.(more) ?? 0 }));
    const saves = { bust: 0, waist: 0, hip: 0 };
    for (const { level, before, after } of gains) saves[level] = Math.max(0, Math.sqrt(before) - Math.sqrt(after));
    return { ...ref, saves };
  });
  const girths = LEVELS.map((level) => {
    const aim = aims[level];
    return aim === null ? nothing() : plus(aim.here, aim.elsewhere);
  });
  const isMet = (_: unknown, i: number): boolean => known.isMet[i] === true;
  const met = { ...known, rows: known.rows.filter(isMet), doubts: known.doubts.filter(isMet) };
  return mostTellingFirst(covarianceLeft([...girths, ...rows], met), open).map((i) => invariant(list[i], "next"));
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
const placesIn = (model: Model): readonly TissueRef[] =>
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
      doubts.map((doubt) => Math.max(doubt, TISSUE_NEARLY_EXACT)),
    ),
  );
  const toRows = things.map((thing) => rows.map((row) => dot(row, thing)));
  const solved = toRows.map((right) => system.solve(right));
  return things.map((a, i) =>
    things.map((b, j) => dot(a, b) - dot(invariant(toRows[i], "row"), invariant(solved[j], "row"))),
  );
}

/**
 * In which order lengths are asked for when none is measured: by what each is worth to the plan, the others known.
 */
export function orderOfPlaces(inputs: Omit<TissueInputs, "tissue">): readonly TissueRef[] {
  const { nest, sizeIndex } = inputs;
  const pieces = nest.sizes[sizeIndex];
  if (pieces === undefined) return [];
  const model = modelOf(pieces, nest.sizes[sizeIndex + 1]);
  const z = Array.from({ length: FREEDOM_COUNT }, () => 0);
  const sewn = [
    ...sewnRows(sewnOf(model.pieces), []),
    ...printedRows(model.pieces, inputs.pattern, sizeIndex),
    ...printedAbove(model, inputs.pattern, sizeIndex + 1),
  ];
  const places = placesIn(model);
  const quantities = places.map(({ piece, length }) => invariant(lengthQuantity(model, piece, length), length));
  const aims = aimsOf({ waistAt: sizeIndex + USUAL_STEP, ...inputs }, nest, sizeIndex, model, z);
  const girths = LEVELS.map((level) => {
    const aim = aims[level];
    return aim === null ? nothing() : plus(aim.here, aim.elsewhere);
  });
  const left = covarianceLeft([...girths, ...answersOf(model, quantities, z)], {
    rows: answersOf(
      model,
      sewn.map(({ quantity }) => quantity),
      z,
    ),
    doubts: sewn.map(({ doubt }) => doubt),
    isMet: sewn.map(() => true),
  });
  return mostTellingFirst(left, places).map((i) => invariant(places[i], "place"));
}

/**
 * Places in the order of what each is worth, the others known: a mouth and the width that it is part of tell nothing of a waist
 * one by one, and all of it together. From all of them the one is left out that costs least, again and again; what is left out
 * last comes first.
 *
 * @param left covariance of the girths (`LEVELS`) and then of the lengths at the places, before any of these is measured; mm²
 * @source leaving a variable out of a regression costs its coefficient squared by its entry of the inverse
 */
function mostTellingFirst(left: Matrix, places: readonly TissueRef[]): readonly number[] {
  const girths = LEVELS.length;
  const doubts = places.map(({ length }) => tapeDoubt(length));
  const known = factored(
    places.map((_, i) =>
      places.map((__, j) => entry(left, girths + i, girths + j) + (i === j ? invariant(doubts[i], "doubt") : 0)),
    ),
  );
  const inverse = places.map((_, i) => known.solve(places.map((__, j) => (i === j ? 1 : 0))));
  const rest = new Set(places.keys());
  const order: number[] = [];
  for (const _ of places) {
    let [least, cost] = [-1, Infinity];
    for (const i of rest) {
      const own = entry(inverse, i, i);
      const told = LEVELS.reduce((sum, __, level) => {
        let coefficient = 0;
        for (const j of rest) coefficient += entry(inverse, i, j) * entry(left, level, girths + j);
        return sum + coefficient ** 2 / own;
      }, 0);
      const alone = OTHERS_COUNT * others(invariant(places[i], "place"), 1 / own - invariant(doubts[i], "doubt"));
      if (told + alone < cost) [least, cost] = [i, told + alone];
    }
    order.push(least);
    rest.delete(least);
    const column = places.map((__, i) => entry(inverse, i, least));
    const whole = invariant(column[least], "entry");
    for (const i of rest) {
      const row = invariant(inverse[i], "row");
      for (const j of rest) row[j] = (row[j] ?? 0) - ((column[i] ?? 0) * (column[j] ?? 0)) / whole;
    }
  }
  return order.toReversed();
}

/** Steps of the chart. How far from the base size a waist is usually cut, where nothing is planned yet (our own choice). */
const USUAL_STEP = 0.7;

function unfitted({ nest }: TissueInputs): FittedNest {
  return {
    nest,
    measured: null,
    misfits: [],
    changed: [],
    unused: [],
    otherCut: [],
    doubt: { finished: { bust: null, waist: null, hip: null }, corners: {} },
    next: [],
    moves: { here: [], elsewhere: [] },
    basis: null,
  };
}
