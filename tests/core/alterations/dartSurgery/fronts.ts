/** Fronts and backs of any size and cup to operate on, and what is measured on them by other libraries than the core. */
import type { DartSurgery } from "../../../../src/core/decisions/alteration";
import type { AlterationFailure } from "../../../../src/core/alterations/outcome/alterationFailure";
import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { operateOnDart } from "../../../../src/core/alterations/dartSurgery/index";
import type { FitApplied } from "../../../../src/core/alterations/outcome/definition";
import type { PieceSet } from "../../../../src/core/pattern/pieceSet";
import { draftBackBlock } from "../../../../src/core/draft/backBlock";
import { draftMeasuresFor, type DraftMeasures } from "../../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../../src/core/draft/frontBlock";
import type { EdgeCurve } from "../../../../src/core/geometry/edgeCurve";
import { pointOf, type DartName, type Piece, type PieceName, type SeamName } from "../../../../src/core/pattern/piece";
import type { Result } from "../../../../src/core/result";
import { sideDartFront } from "../../../../src/core/style/sideDartStyle";
import { seamByBezierJs } from "../../../support/independent";

const SEAMS: readonly SeamName[] = ["neck", "shoulder", "armhole", "side", "waist", "centre", "underBust"];

export const measuresAt = (bust: number): DraftMeasures =>
  draftMeasuresFor(
    { label: "x", bust, waist: bust - 180, hip: bust + 60 },
    { sizes: [], draftedDifference: 50, cups: [] },
    { bust: 80, waist: 40, hip: 50 },
  );

export function frontAt(bust: number, difference = 50): Piece {
  const front = sideDartFront(draftFrontBlock(measuresAt(bust)), difference);
  if (!front.ok) throw new Error(`no front at ${bust}, ${difference}`);
  return front.value;
}

export const backAt = (bust: number): Piece => draftBackBlock(measuresAt(bust));

/** Any row of a chart and any cup from small to full. */
export const anyFront: fc.Arbitrary<Piece> = fc
  .integer({ min: 760, max: 1280 })
  .chain((bust) => fc.integer({ min: 30, max: 100 }).map((difference) => frontAt(bust, difference)));

const frontOf = (least: number, most: number): fc.Arbitrary<Piece> =>
  fc
    .tuple(fc.integer({ min: 760, max: 1280 }), fc.integer({ min: least, max: most }))
    .map(([bust, difference]) => frontAt(bust, difference));

export const fullFront: fc.Arbitrary<Piece> = frontOf(50, 100);
export const smallFront: fc.Arbitrary<Piece> = frontOf(30, 49);

/** Fronts of the drafted cup: their darts point straight at the bust point. */
export const anyPlainFront: fc.Arbitrary<Piece> = fc.integer({ min: 760, max: 1280 }).map((bust) => frontAt(bust));

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
type Asked = Without<DartSurgery, "id" | "dart"> & { readonly dart: DartName };

export function operate(
  pieces: PieceSet,
  piece: PieceName,
  { dart, ...asked }: Asked,
): Result<FitApplied, AlterationFailure> {
  return operateOnDart(pieces, { ...asked, id: "a", dart: { piece, dart } });
}

/** What an operation that must succeed gives. */
export function done(pieces: PieceSet, piece: PieceName, asked: Asked): FitApplied {
  const result = operate(pieces, piece, asked);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

export function pieceOf({ pieces }: Pick<FitApplied, "pieces">, name: PieceName): Piece {
  const piece = pieces[name];
  if (piece === undefined) throw new Error(name);
  return piece;
}

/** The angle between lines from a point to the mouth ends of a dart; degrees. */
export function angleAtPoint(piece: Piece, dart: DartName, from: { readonly x: number; readonly y: number }): number {
  const [a, b] = [pointOf(piece, `${dart}Inner`), pointOf(piece, `${dart}Outer`)];
  const turn = Math.atan2(b.y - from.y, b.x - from.x) - Math.atan2(a.y - from.y, a.x - from.x);
  return (Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * 180) / Math.PI;
}

export const sumOfAngles = (piece: Piece): number =>
  piece.darts.reduce((sum, { name }) => sum + angleAtPoint(piece, name, pointOf(piece, "bustPoint")), 0);

export const gap = (
  a: { readonly x: number; readonly y: number },
  b: { readonly x: number; readonly y: number },
): number => Math.hypot(a.x - b.x, a.y - b.y);

/** By how much the legs of a dart differ; mm. */
export const legsDiffer = (piece: Piece, dart: DartName): number =>
  Math.abs(
    gap(pointOf(piece, `${dart}Apex`), pointOf(piece, `${dart}Inner`)) -
      gap(pointOf(piece, `${dart}Apex`), pointOf(piece, `${dart}Outer`)),
  );

/** The largest change of a seam's sewn length between two sets of pieces, all their pieces taken together; mm. */
export function worstSeam(before: PieceSet, after: PieceSet, seams: readonly SeamName[] = SEAMS): number {
  const total = (set: PieceSet, seam: SeamName): number =>
    Object.values(set).reduce((sum, piece) => sum + seamByBezierJs(piece, seam), 0);
  return Math.max(...seams.map((seam) => Math.abs(total(after, seam) - total(before, seam))));
}

/** The corners of a closed outline in short chords. */
export const chordsOf = (edges: readonly EdgeCurve<"piece">[]): { readonly x: number; readonly y: number }[] =>
  edges.flatMap(({ a, b, curve }): { readonly x: number; readonly y: number }[] => {
    if (curve === null) return [a];
    const bezier = new Bezier(a, curve.c1, curve.c2, b);
    return Array.from({ length: 40 }, (_, i) => bezier.get(i / 40));
  });
