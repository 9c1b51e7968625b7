/** Claims about upper edges and the opening. */
import { seamLength } from "../girth/seamLength";
import { drawnPieces } from "../parts/halfParts";
import { isFrontPiece } from "../pattern/pieceGroups";
import { SHOULDER_EASE } from "../pattern/shoulderEase";
import type { Piece, SeamName } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { SewingAsked } from "../sewing/orderOfSewing";
import { SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import type { DressCheck } from "./dressPlan";

export const checkEdges = (dress: SewingAsked): readonly DressCheck[] => [...facingsWalk(dress), ...opensEnough(dress)];

/** Facings are as long as what they are sewn to: their own edges, and each other at shoulder and side. */
function facingsWalk({ parts, bodice: [left, right] }: SewingAsked): readonly DressCheck[] {
  const facings = drawnPieces(parts).filter(({ group, cloth }) => group === "facing" && cloth === "main");
  return facings.flatMap(({ piece, half }) => {
    const bodice = half === "right" ? right : left;
    const edges = (["neck", "strap", "armhole"] as const)
      .filter((seam) => has(piece, seam))
      .map((seam) => walked(seamLength(piece, seam), along(bodice, seam, isFrontPiece(piece.name))));
    // Each pair of them once, told of the back one.
    const other = facings.find(
      (front) =>
        isFrontPiece(front.piece.name) &&
        !isFrontPiece(piece.name) &&
        front.half === half &&
        isPair(piece, front.piece),
    );
    const seams =
      other === undefined
        ? []
        : (["shoulder", "side"] as const)
            .filter((seam) => has(piece, seam))
            .map((seam) =>
              walked(seamLength(piece, seam), seamLength(other.piece, seam) + easeOf(bodice, piece, seam)),
            );
    return [...edges, ...seams];
  });
}

const has = (piece: Piece, seam: SeamName): boolean => piece.edges.some((edge) => edge.seam === seam);

const isPair = (back: Piece, front: Piece): boolean => (back.name === "backFacing") === (front.name === "frontFacing");

/** A facing that takes the whole shoulder has the ease of the bodice's back. */
const easeOf = ({ back }: PieceSet, facing: Piece, seam: SeamName): Mm =>
  seam === "shoulder" && has(facing, "neck") && has(facing, "armhole")
    ? (back?.seamEase?.shoulder ?? SHOULDER_EASE)
    : 0;

const along = (bodice: PieceSet, seam: SeamName, isFront: boolean): Mm =>
  piecesOf(bodice)
    .filter(({ name }) => name !== "strap" && !name.startsWith("other") && isFrontPiece(name) === isFront)
    .reduce((sum, piece) => sum + seamLength(piece, seam), 0);

const walked = (measured: Mm, expected: Mm): DressCheck => ({
  name: "facingsWalk",
  ok: Math.abs(measured - expected) <= SEWN_AGREEMENT,
  measured,
  expected,
  tolerance: SEWN_AGREEMENT,
});

/** By the easier way in. */
function opensEnough({ reading }: SewingAsked): readonly DressCheck[] {
  const easier = reading?.ways[0];
  if (easier === undefined) return [];
  const { passes, tightest, needed } = easier;
  return [{ name: "opensEnough", ok: passes, measured: tightest.lets, expected: needed, tolerance: 0 }];
}
