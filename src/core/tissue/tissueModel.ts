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
  /** What it is, the same in every size; for what every size has. */
  readonly key?: string;
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

/** By freedom: what it does to each of these pieces. */
function compile(pieces: PieceSet): readonly (readonly CompiledMoves[])[] {
  return FREEDOMS.map(({ movesOf, spread, grade }) =>
    piecesOf(pieces).flatMap((piece): CompiledMoves[] => {
      const moves = movesOf(piece);
      const by = moves === null ? [] : namesOf(moves).flatMap((name) => scaled(piece, name, moves[name], spread));
      return by.length === 0 ? [] : [{ piece: piece.name, grade, by }];
    }),
  );
}

const namesOf = (moves: Moves): readonly PointName[] => Object.keys(moves) as PointName[];

const scaled = (
  piece: Piece,
  name: PointName,
  move: readonly [number, number] | undefined,
  spread: Mm,
): (readonly [PointName, number, number])[] =>
  move === undefined || piece.points[name] === undefined ? [] : [[name, move[0] * spread, move[1] * spread]];

export const modelOf = (pieces: readonly Piece[], next: readonly Piece[] | undefined): Model => {
  const set = setOf(pieces);
  return { pieces: set, next: setOf(next ?? []), moves: compile(set) };
};

type Shifts = Map<PieceName, Map<PointName, readonly [number, number]>>;

/** By how much every point goes. */
function shiftsOf(moves: Model["moves"], z: readonly number[], graded: Graded): Shifts {
  const shifts: Shifts = new Map();
  for (const [at, compiled] of moves.entries()) {
    const own = z[at] ?? 0;
    if (own === 0) continue;
    for (const { piece, grade, by } of compiled) {
      const share = grade === null ? own : own * graded[grade];
      if (share === 0) continue;
      const ofPiece = shifts.get(piece) ?? new Map<PointName, readonly [number, number]>();
      shifts.set(piece, ofPiece);
      for (const [name, dx, dy] of by) {
        const sum = ofPiece.get(name) ?? [0, 0];
        ofPiece.set(name, [sum[0] + share * dx, sum[1] + share * dy]);
      }
    }
  }
  return shifts;
}

const shifted = (pieces: PieceSet, shifts: Shifts): PieceSet =>
  setOf(
    piecesOf(pieces).map((piece) => {
      const by = shifts.get(piece.name);
      return by === undefined ? piece : reshapePiece(piece, by);
    }),
  );

/** The pieces with every freedom set. */
export const reshaped = (pieces: PieceSet, moves: Model["moves"], z: readonly number[], graded: Graded): PieceSet =>
  shifted(pieces, shiftsOf(moves, z, graded));

const sumOf = (pieces: PieceSet, names: readonly PieceName[], of: (piece: Piece) => Mm): Mm =>
  names.reduce((sum, name) => sum + of(invariant(pieces[name], name)), 0);

export interface Sewn extends Quantity {
  readonly key: string;
  readonly wanted: Mm;
  /** What it is: two seams, or a dart's legs. */
  readonly pair: SeamPair | null;
}

/** What must stay as it is whatever is measured: seams that are sewn together, legs of darts. */
export function sewnOf(pieces: PieceSet): readonly Sewn[] {
  const seams = seamPairsOf(pieces).map((pair): Sewn => ({
    of: [...pair.first, ...pair.second],
    usesNext: false,
    key: `${pair.seam} ${pair.first.join()} ${pair.second.join()}`,
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
      key: `${piece.name} ${dart.name}`,
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
    key: level,
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

/** mm. Step of a difference quotient: lengths are computed a million times finer, and no curve turns within it. */
export const STEP = 0.01;

/**
 * How each quantity answers to each freedom, a row for each: by difference quotients for every point of a piece, along which
 * freedoms move in straight lines.
 */
export function answersOf(
  model: Model,
  quantities: readonly Quantity[],
  z: readonly number[],
  graded = AS_MEASURED,
): number[][] {
  const rows = quantities.map(() => Array.from({ length: FREEDOM_COUNT }, () => 0));
  const shifts = shiftsOf(model.moves, z, graded);
  const shiftsAbove = shiftsOf(model.moves, z, stepUp(graded));
  const set = shifted(model.pieces, shifts);
  const above = shifted(model.next, shiftsAbove);
  const values = quantities.map(({ value }) => value(set, above));
  const spread = (isNext: boolean): void => {
    const [pieces, all, at] = isNext ? [model.next, shiftsAbove, stepUp(graded)] : [model.pieces, shifts, graded];
    for (const piece of piecesOf(pieces)) {
      const concerned = quantities.flatMap(({ of, usesNext }, row) =>
        of.includes(piece.name) && (usesNext || !isNext) ? [row] : [],
      );
      if (concerned.length === 0) continue;
      const slopeAt = (name: PointName, axis: 0 | 1): number[] => {
        const own = new Map(all.get(piece.name));
        const [x, y] = own.get(name) ?? [0, 0];
        own.set(name, axis === 0 ? [x + STEP, y] : [x, y + STEP]);
        const moved = reshapePiece(piece, own);
        const [now, then] = isNext
          ? [set, { ...above, [piece.name]: moved }]
          : [{ ...set, [piece.name]: moved }, above];
        return concerned.map(
          (row) => (invariant(quantities[row], "quantity").value(now, then) - (values[row] ?? 0)) / STEP,
        );
      };
      const slopes = new Map<string, number[]>();
      const slope = (name: PointName, axis: 0 | 1): number[] => {
        const key = `${name} ${axis}`;
        const found = slopes.get(key) ?? slopeAt(name, axis);
        slopes.set(key, found);
        return found;
      };
      for (const [k, compiled] of model.moves.entries()) {
        for (const { piece: of, grade, by } of compiled) {
          const share = grade === null ? 1 : at[grade];
          if (of !== piece.name || share === 0) continue;
          for (const [name, dx, dy] of by) {
            const [alongX, alongY] = [dx === 0 ? null : slope(name, 0), dy === 0 ? null : slope(name, 1)];
            for (const [i, row] of concerned.entries()) {
              const own = invariant(rows[row], "row");
              own[k] = (own[k] ?? 0) + share * (dx * (alongX?.[i] ?? 0) + dy * (alongY?.[i] ?? 0));
            }
          }
        }
      }
    }
  };
  spread(false);
  if (quantities.some(({ usesNext }) => usesNext)) spread(true);
  return rows;
}
