/** The printed pieces of the invented sample pattern in one size, cup and style. */
import { STYLE_NAMES, type StyleName } from "../../src/core/decisions/pattern";
import { piecesOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import { draftBlocks, printNest, type Blocks } from "../../src/core/nest/printedNest";
import { styleOf } from "../../src/core/style/index";
import { pointOf, type Piece } from "../../src/core/pattern/piece";
import type { PiecePoint } from "../../src/core/geometry/point";
import { invariant } from "../../src/core/result";
import * as fc from "fast-check";
import { sampleWork } from "./sampleWork";

let blocks: Blocks | undefined;
const known = new Map<string, PieceSet>();

export interface Garment {
  readonly style: StyleName;
  readonly size: number;
  readonly difference: number;
}

export function printedSet({ style, size, difference }: Garment): PieceSet {
  const key = `${style} ${size} ${difference}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  blocks ??= draftBlocks(sampleWork.pattern);
  const { nest } = printNest({ ...sampleWork.pattern, style }, blocks, difference);
  const pieces = invariant(nest.sizes[size], "size");
  const set: PieceSet = Object.fromEntries(pieces.map((piece) => [piece.name, piece]));
  known.set(key, set);
  return set;
}

export const bustPointIn = (pieces: PieceSet, style: StyleName): PiecePoint =>
  pointOf(invariant(pieces[styleOf(style).bustPiece], "bust piece"), "bustPoint");

/** Any style, a few sizes, the cups of the sample pattern. */
export const anyGarment = (styles: readonly StyleName[] = STYLE_NAMES): fc.Arbitrary<Garment> =>
  fc.record({
    style: fc.constantFrom(...styles),
    size: fc.constantFrom(2, 4, 7),
    difference: fc.constantFrom(50, 75, 100),
  });

export const pieceNamed = (pieces: PieceSet, name: string): Piece =>
  invariant(
    piecesOf(pieces).find((piece) => piece.name === name),
    name,
  );
