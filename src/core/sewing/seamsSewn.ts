/** Seams of a garment as they are sewn, measured on its pieces: of both halves together where they are alike. mm. */
import type { Half } from "../decisions/alteration";
import { legsOf } from "../dart/bowedLegs";
import { distance } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Dart, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import type { SewnSeam } from "./sewingStep";

/** Both halves of a garment, the wearer's left first; the very same object twice where they are alike. */
type Halves = readonly [PieceSet, PieceSet];

export const BOTH_HALVES: readonly Half[] = ["left", "right"];

type OneSeam = Omit<SewnSeam, "half" | "count">;

/** What is had on each half, put together where the halves are alike. */
function onHalves(
  [left, right]: Halves,
  halves: readonly Half[],
  of: (pieces: PieceSet) => readonly OneSeam[],
): readonly SewnSeam[] {
  const one = of(left);
  const other = left === right ? one : of(right);
  const isBoth = halves.length === 2;
  if (one.length === other.length && one.every((seam, at) => isAlike(seam, other[at])))
    return one.map((seam) => ({ ...seam, half: isBoth ? null : (halves[0] ?? null), count: isBoth ? 2 : 1 }));
  return halves.flatMap((half) => (half === "left" ? one : other).map((seam) => ({ ...seam, half, count: 1 })));
}

const isAlike = (a: OneSeam, b: OneSeam | undefined): boolean =>
  b !== undefined &&
  a.seam === b.seam &&
  a.dart === b.dart &&
  a.pieces.join(" ") === b.pieces.join(" ") &&
  Math.abs(a.length - b.length) <= SEWN_AGREEMENT;

/** Seams that are sewn to one another. Where one side has ease it is held in, so the other is what is sewn. */
export const pairedSeams = (
  garment: Halves,
  seam: SeamName,
  isMeant: (pair: SeamPair) => boolean = () => true,
  halves: readonly Half[] = BOTH_HALVES,
): readonly SewnSeam[] =>
  onHalves(garment, halves, (pieces) =>
    seamPairsOf(pieces)
      .filter((pair) => pair.seam === seam && isMeant(pair))
      .map(({ first, second }) => ({
        seam,
        pieces: [...first, ...second].filter((name) => alongOf(pieces[name], seam) > 0),
        length: second.reduce((sum, name) => sum + alongOf(pieces[name], seam), 0),
      })),
  );

const alongOf = (piece: Piece | undefined, seam: SeamName): Mm => (piece === undefined ? 0 : seamLength(piece, seam));

/** An edge all along the pieces of a half, as a neck or a hem. */
export const edgeSeams = (
  garment: Halves,
  seam: SeamName,
  isMeant: (piece: PieceName) => boolean,
): readonly SewnSeam[] =>
  onHalves(garment, BOTH_HALVES, (pieces) => {
    const had = piecesOf(pieces).filter(
      ({ name, edges }) => isMeant(name) && edges.some((edge) => edge.seam === seam && edge.mouthOf === null),
    );
    const length = had.reduce((sum, piece) => sum + seamLength(piece, seam), 0);
    return had.length === 0 ? [] : [{ seam, pieces: had.map(({ name }) => name), length }];
  });

/** Centre seams: none where a piece lies on the fold. The halves are sewn to each other. */
export function centreSeams([left]: Halves, isMeant: (piece: PieceName) => boolean): readonly SewnSeam[] {
  return piecesOf(left)
    .filter(({ name, centreOnFold }) => isMeant(name) && !centreOnFold)
    .map((piece): SewnSeam => ({
      seam: "centre",
      pieces: [piece.name],
      half: null,
      length: seamLength(piece, "centre"),
      count: 1,
    }))
    .filter(({ length }) => length > 0);
}

/** Darts that are sewn, each along its leg from the mouth to its end. */
export const dartSeams = (garment: Halves): readonly SewnSeam[] =>
  onDarts(
    garment,
    ({ gathered }) => gathered !== true,
    (piece, { name }) => legsOf(piece, name).outer.length,
  );

/** Fullness that is drawn up over what would be a dart's mouth: the length is that of the mouth, which comes to nothing. */
export const gatheredDarts = (garment: Halves): readonly SewnSeam[] =>
  onDarts(
    garment,
    ({ gathered }) => gathered === true,
    (piece, { inner, outer }) => distance(pointOf(piece, inner), pointOf(piece, outer)),
  );

const onDarts = (
  garment: Halves,
  isMeant: (dart: Dart) => boolean,
  lengthOf: (piece: Piece, dart: Dart) => Mm,
): readonly SewnSeam[] =>
  onHalves(garment, BOTH_HALVES, (pieces) =>
    piecesOf(pieces).flatMap((piece) =>
      piece.darts.filter(isMeant).map((dart) => ({
        seam: dart.seam,
        dart: dart.name,
        pieces: [piece.name],
        length: lengthOf(piece, dart),
      })),
    ),
  );

export const lengthOfAll = (seams: readonly SewnSeam[]): Mm =>
  seams.reduce((sum, { length, count }) => sum + length * count, 0);
