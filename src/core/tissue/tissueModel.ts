/**
 * The pieces of one size as a function of the freedoms: what is sewn together, the lengths that can be measured, the finished
 * girths and the corners, each with how it answers to every freedom. Freedoms are counted in their own spreads, so that all
 * are alike: normal, about 0, of spread 1.
 */
import type { TissueLength } from "../decisions/tissue";
import { levelWidth } from "../girth/levelWidth";
import { seamLength } from "../girth/seamLength";
import { distance } from "../geometry/point";
import { piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { isBasque } from "../pattern/pieceGroups";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { pointOf, type Dart, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import { FREEDOMS, type Grade, type Moves } from "./freedoms";
import { reshapePiece } from "./reshapePiece";
import { measureTissue } from "./tapeWays";

/** How many steps of each girth a size lies above the one that was measured. */
export type Graded = Readonly<Record<Grade, number>>;

export const AS_MEASURED: Graded = { bust: 0, waist: 0, hip: 0 };

/** What is measured of the pieces: a number that answers to the freedoms of some of them. */
export interface Quantity {
  readonly of: readonly PieceName[];
  /** Of the size measured and the one above it. */
  readonly value: (pieces: PieceSet, next: PieceSet) => Mm;
  readonly usesNext: boolean;
}

export interface Model {
  readonly pieces: PieceSet;
  readonly next: PieceSet;
  readonly moves: readonly (readonly CompiledMoves[])[];
}

interface CompiledMoves {
  readonly piece: PieceName;
  readonly grade: Grade | null;
  /** For one spread of the freedom. */
  readonly by: readonly (readonly [PointName, number, number])[];
}

export const FREEDOM_COUNT = FREEDOMS.length;

/** Whether the chart prints the finished girth: then pieces are drafted to it, and little of it is left to doubt. */
export type Printed = Readonly<Record<FinishedLevel, boolean>>;

/** How much of a girth's spread is left where the chart prints what it comes to (our own choice). */
const WHERE_PRINTED = 0.2;

/** By freedom: what it does to each of these pieces. */
function compile(pieces: PieceSet, printed: Printed): readonly (readonly CompiledMoves[])[] {
  return FREEDOMS.map(({ movesOf, spread: usual, grade, girth }) => {
    const spread = girth !== null && printed[girth] ? usual * WHERE_PRINTED : usual;
    return piecesOf(pieces).flatMap((piece): CompiledMoves[] => {
      const moves = movesOf(piece);
      const by = moves === null ? [] : namesOf(moves).flatMap((name) => scaled(piece, name, moves[name], spread));
      return by.length === 0 ? [] : [{ piece: piece.name, grade, by }];
    });
  });
}

const namesOf = (moves: Moves): readonly PointName[] => Object.keys(moves) as PointName[];

const scaled = (
  piece: Piece,
  name: PointName,
  move: readonly [number, number] | undefined,
  spread: Mm,
): (readonly [PointName, number, number])[] =>
  move === undefined || piece.points[name] === undefined ? [] : [[name, move[0] * spread, move[1] * spread]];

export const modelOf = (pieces: readonly Piece[], next: readonly Piece[] | undefined, printed: Printed): Model => {
  const set = setOf(pieces);
  return { pieces: set, next: setOf(next ?? []), moves: compile(set, printed) };
};

/** The pieces with every freedom set; only those named, where some are. */
export function reshaped(
  pieces: PieceSet,
  moves: Model["moves"],
  z: readonly number[],
  graded: Graded,
  only?: ReadonlySet<PieceName>,
): PieceSet {
  const shifts = new Map<PieceName, Map<PointName, [number, number]>>();
  for (const [at, compiled] of moves.entries()) {
    const own = z[at] ?? 0;
    if (own === 0) continue;
    for (const { piece, grade, by } of compiled) {
      const share = grade === null ? own : own * graded[grade];
      if (share === 0 || (only !== undefined && !only.has(piece))) continue;
      const ofPiece = shifts.get(piece) ?? new Map<PointName, [number, number]>();
      shifts.set(piece, ofPiece);
      for (const [name, dx, dy] of by) {
        const sum = ofPiece.get(name) ?? [0, 0];
        ofPiece.set(name, [sum[0] + share * dx, sum[1] + share * dy]);
      }
    }
  }
  return setOf(
    piecesOf(pieces)
      .filter(({ name }) => only === undefined || only.has(name))
      .map((piece) => {
        const by = shifts.get(piece.name);
        return by === undefined ? piece : reshapePiece(piece, by);
      }),
  );
}

const sumOf = (pieces: PieceSet, names: readonly PieceName[], of: (piece: Piece) => Mm): Mm =>
  names.reduce((sum, name) => sum + of(invariant(pieces[name], name)), 0);

export interface Sewn extends Quantity {
  readonly wanted: Mm;
  /** What it is: two seams, or a dart's legs. */
  readonly pair: SeamPair | null;
}

/** What must stay as it is whatever is measured: seams that are sewn together, legs of darts. */
export function sewnOf(pieces: PieceSet): readonly Sewn[] {
  const seams = seamPairsOf(pieces).map((pair): Sewn => ({
    of: [...pair.first, ...pair.second],
    usesNext: false,
    wanted: pair.ease,
    pair,
    value: (set) =>
      sumOf(set, pair.first, (piece) => seamLength(piece, pair.seam)) -
      sumOf(set, pair.second, (piece) => seamLength(piece, pair.seam)),
  }));
  const legs = piecesOf(pieces).flatMap((piece) =>
    piece.darts.map((dart): Sewn => ({
      of: [piece.name],
      usesNext: false,
      wanted: legsApart(piece, dart),
      pair: null,
      value: (set) => legsApart(invariant(set[piece.name], piece.name), dart),
    })),
  );
  return [...seams, ...legs];
}

const legsApart = (piece: Piece, { apex, inner, outer }: Dart): Mm =>
  distance(pointOf(piece, apex), pointOf(piece, inner)) - distance(pointOf(piece, apex), pointOf(piece, outer));

/** A length of a piece as a quantity; null where the pieces have none. */
export function lengthQuantity({ pieces, next }: Model, name: PieceName, length: TissueLength): Quantity | null {
  const piece = pieces[name];
  if (piece === undefined || measureTissue(piece, length, next[name]) === null) return null;
  return {
    of: [name],
    usesNext: next[name] !== undefined && (length.endsWith("Step") || length === "waistDartMouthNext"),
    value: (set, above) => measureTissue(invariant(set[name], name), length, above[name]) ?? NaN,
  };
}

export type FinishedLevel = "bust" | "waist" | "hip";

/** Whole finished girths: of the bodice at bust and waist, of the basque at the hip; null where the pieces have no such level. */
export function finishedQuantity(pieces: PieceSet, level: FinishedLevel): Quantity | null {
  const names = piecesOf(pieces).flatMap((piece) =>
    isBasque(piece.name) === (level === "hip") && levelWidth(piece, level) !== null ? [piece.name] : [],
  );
  if (names.length === 0) return null;
  return {
    of: names,
    usesNext: false,
    value: (set) => 2 * sumOf(set, names, (piece) => levelWidth(piece, level) ?? 0),
  };
}

/** Values of quantities as the freedoms are set. */
export function valuesOf(
  model: Model,
  quantities: readonly Quantity[],
  z: readonly number[],
  graded = AS_MEASURED,
): number[] {
  const set = reshaped(model.pieces, model.moves, z, graded);
  const above = reshaped(model.next, model.moves, z, stepUp(graded));
  return quantities.map(({ value }) => value(set, above));
}

const stepUp = ({ bust, waist, hip }: Graded): Graded => ({ bust: bust + 1, waist: waist + 1, hip: hip + 1 });

/** Half a step of a difference quotient, in spreads: some tenths of a millimetre. */
const HALF_STEP = 0.02;

/** How each quantity answers to each freedom, a row for each; by differences to both sides. */
export function answersOf(
  model: Model,
  quantities: readonly Quantity[],
  z: readonly number[],
  graded = AS_MEASURED,
): number[][] {
  const rows = quantities.map(() => Array.from({ length: FREEDOM_COUNT }, () => 0));
  const [setNow, aboveNow] = [
    reshaped(model.pieces, model.moves, z, graded),
    reshaped(model.next, model.moves, z, stepUp(graded)),
  ];
  for (let k = 0; k < FREEDOM_COUNT; k += 1) {
    const touched = new Set((model.moves[k] ?? []).map(({ piece }) => piece));
    if (touched.size === 0) continue;
    const concerned = quantities.flatMap((quantity, row) =>
      quantity.of.some((name) => touched.has(name)) ? [row] : [],
    );
    if (concerned.length === 0) continue;
    const usesNext = concerned.some((row) => quantities[row]?.usesNext === true);
    const isSame = (model.moves[k] ?? []).every(({ grade }) => grade !== null && graded[grade] === 0);
    const [low, high] = [-HALF_STEP, HALF_STEP].map((step) => {
      const at = z.map((value, index) => (index === k ? value + step : value));
      const set = isSame ? setNow : { ...setNow, ...reshaped(model.pieces, model.moves, at, graded, touched) };
      const above = usesNext
        ? { ...aboveNow, ...reshaped(model.next, model.moves, at, stepUp(graded), touched) }
        : aboveNow;
      return concerned.map((row) => invariant(quantities[row], "quantity").value(set, above));
    });
    for (const [index, row] of concerned.entries()) {
      const slope = (invariant(high?.[index], "high") - invariant(low?.[index], "low")) / (2 * HALF_STEP);
      invariant(rows[row], "row")[k] = slope;
    }
  }
  return rows;
}
