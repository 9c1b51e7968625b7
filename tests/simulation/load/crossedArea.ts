/**
 * How far outlines cross themselves, by a polygon library of others. What a line goes round, loop by loop and by its corners, is
 * what it covers if it meets itself nowhere; a loop counts against it, or twice.
 */
import { Bezier } from "bezier-js";
import { Clipper, FillRule } from "clipper2-ts";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Chords of a curve. Of the ring in chords both areas are exact. */
const CHORDS = 32;
/** Places that the library keeps behind the point, and the corners so that both go by the same ones. */
const DIGITS = 4;
const GRID = 10 ** DIGITS;
const onGrid = ({ x, y }: Place): Place => ({ x: Math.round(x * GRID) / GRID, y: Math.round(y * GRID) / GRID });

export const ringInChords = (piece: Piece): readonly Place[] =>
  piece.edges.flatMap(({ from, to, curve }): Place[] => {
    const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
    if (curve === null) return [a];
    const bezier = new Bezier(a, curve.c1, curve.c2, b);
    return Array.from({ length: CHORDS }, (_, step) => bezier.get(step / CHORDS));
  });

/** mm², signed: positive by the clock on a screen. */
export const areaRound = (ring: readonly Place[]): number =>
  ring.reduce((sum, a, at) => {
    const b = ring[(at + 1) % ring.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);

/** mm² by which what a closed line goes round differs from what it covers: 0 where it does not cross itself. */
export function crossedArea(ring: readonly Place[]): number {
  const corners = ring.map(onGrid);
  const covered = Clipper.areaPathsD(Clipper.unionD([corners], [], FillRule.NonZero, DIGITS));
  return Math.abs(covered - Math.abs(areaRound(corners)));
}
