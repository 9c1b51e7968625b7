/** Invented garments for tests, in every style and of any body; and what must hold of a garment that can be sewn. */
import type { StyleName } from "../../src/core/decisions/pattern";
import * as fc from "fast-check";
import { expect } from "vitest";
import { pieceIn, piecesOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import { draftBackBlock } from "../../src/core/draft/backBlock";
import { draftBasque } from "../../src/core/draft/basque";
import { draftMeasuresFor } from "../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../src/core/draft/frontBlock";
import type { PiecePoint } from "../../src/core/geometry/point";
import { pointOf, type Piece, type PieceName, type PointName, type SeamName } from "../../src/core/pattern/piece";
import { joinsOf, seamPairsOf } from "../../src/core/pattern/sewnTogether";
import { invariant, type Result } from "../../src/core/result";
import { styleOf } from "../../src/core/style/index";
import { seamByBezierJs } from "./independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };

export const STYLE_NAMES: readonly StyleName[] = ["sideDart", "princessArmhole", "princessShoulder", "midriff"];

export interface Garment {
  readonly style: StyleName;
  readonly bust?: number;
  /** Waist less bust. */
  readonly less?: number;
  readonly difference?: number;
}

const valueOf = <T, F>(result: Result<T, F>): T => invariant(result.ok ? result.value : null, "a value");

/** A whole garment to the hip, its darts ended as usual. */
export function garment({ style, bust = 880, less = 180, difference = 75 }: Garment): PieceSet {
  const m = draftMeasuresFor({ label: "x", bust, waist: bust - less, hip: bust + 60 }, chart, ease);
  const [front, back] = [draftFrontBlock(m), draftBackBlock(m)];
  const made = styleOf(style);
  const open = valueOf(made.open(front, back, difference, { strap: "wide" }));
  const finished = made.finish(open, pointOf(pieceIn(open, made.bustPiece), "bustPoint"), difference);
  return {
    ...finished,
    frontBasque: draftBasque(m, seamByBezierJs(front, "waist"), { side: "front", dartLess: 0 }),
    backBasque: draftBasque(m, seamByBezierJs(back, "waist"), { side: "back", dartLess: 0 }),
  };
}

export const anyGarmentOf = (...styles: readonly StyleName[]): fc.Arbitrary<Garment> =>
  fc.record({
    style: fc.constantFrom(...styles),
    bust: fc.integer({ min: 760, max: 1200 }),
    less: fc.integer({ min: 100, max: 240 }),
    difference: fc.constantFrom(50, 75, 100),
  });

export const bustPointOf = ({ front, centreFront, cup }: PieceSet): PiecePoint =>
  pointOf(
    invariant(
      [front, centreFront, cup].find((piece) => piece !== undefined),
      "bust piece",
    ),
    "bustPoint",
  );

const degrees = (dx: number, dy: number): number => (Math.atan2(dy, dx) * 180) / Math.PI;

/** Inner corner of an outline that runs clockwise on screen, from the control points alone; degrees. */
export function cornerAt(piece: Piece, corner: PointName): number {
  const before = invariant(
    piece.edges.find(({ to }) => to === corner),
    corner,
  );
  const after = invariant(
    piece.edges.find(({ from }) => from === corner),
    corner,
  );
  const at = pointOf(piece, corner);
  const from = before.curve?.c2 ?? pointOf(piece, before.from);
  const to = after.curve?.c1 ?? pointOf(piece, after.to);
  const turn = degrees(to.x - at.x, to.y - at.y) - degrees(at.x - from.x, at.y - from.y);
  return 180 - (((turn + 540) % 360) - 180);
}

const lengthOf = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): number =>
  names.reduce((sum, name) => sum + seamByBezierJs(pieceIn(pieces, name), seam), 0);

/** By how much each pair of seams misses, in order; mm. */
export const missesOf = (pieces: PieceSet): readonly number[] =>
  seamPairsOf(pieces).map(
    ({ seam, first, second, ease: eased }) => lengthOf(pieces, first, seam) - lengthOf(pieces, second, seam) - eased,
  );

/** Joined corners that are not straight within 3 degrees, and centre corners not square within 1; said in words. */
export function badCorners(pieces: PieceSet): readonly string[] {
  const joined = joinsOf(pieces).flatMap(({ point, first, second }) => {
    const sum = cornerAt(pieceIn(pieces, first), point) + cornerAt(pieceIn(pieces, second), point);
    return Math.abs(sum - 180) <= 3 ? [] : [`${first} and ${second} at ${point}: ${sum}`];
  });
  const square = piecesOf(pieces).flatMap((piece) =>
    (["centreNeck", "centreWaist", "centreHem"] as const).flatMap((point) => {
      if (!piece.edges.some(({ from }) => from === point)) return [];
      return Math.abs(cornerAt(piece, point) - 90) <= 1 ? [] : [`${piece.name} at ${point}: ${cornerAt(piece, point)}`];
    }),
  );
  return [...joined, ...square];
}

/** Says which pair of seams no longer walks as it did, within half a tenth of a millimetre. */
export function expectStillSewn(before: PieceSet, after: PieceSet): void {
  const was = missesOf(before);
  const drifts = missesOf(after).map((miss, i) => miss - invariant(was[i], "pair"));
  expect(drifts.filter((drift) => !(Math.abs(drift) <= 0.05))).toEqual([]);
  expect(badCorners(after)).toEqual([]);
}

/** The pieces that are not the same object any more. */
export const changedPieces = (before: PieceSet, after: PieceSet): readonly PieceName[] =>
  piecesOf(after).flatMap(({ name }) => (before[name] === after[name] ? [] : [name]));
