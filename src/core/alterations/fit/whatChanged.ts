/** What an alteration did to these very pieces, and what they have: asked by its mathematics, and by what is told of it. */
import { distance } from "../../geometry/point";
import { lineDistance } from "../../geometry/segment";
import { levelWidth } from "../../girth/levelWidth";
import { pointOf, type Piece, type PointName, type SeamName } from "../../pattern/piece";
import { mouthMiddle } from "../../pattern/ring";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import type { Mm } from "../../units";
import { pieceIn, piecesOf, type PieceSet } from "../../pattern/pieceSet";

export const isCorner = (piece: Piece, corner: PointName): boolean => piece.edges.some(({ from }) => from === corner);

/** Whether the top of a princess seam lies in a seam of the piece, from the one side or the other. */
export const princessBeginsIn = (piece: Piece, seam: SeamName): boolean =>
  piece.edges.some((edge) => edge.seam === seam && (edge.from === "princessTop" || edge.to === "princessTop"));

export const hasDartIn = (piece: Piece, seam: SeamName): boolean =>
  piece.darts.some((dart) => dart.seam === seam && dart.gathered !== true);

export const isCut = (piece: Piece, traces: readonly SurgeryTrace[]): boolean =>
  traces.some((trace) => trace.piece === piece.name);

/** Whether a cut right across a piece parts the end of a dart from its mouth. */
export const isDartCut = (piece: Piece, traces: readonly SurgeryTrace[]): boolean =>
  traces.some(
    (trace) =>
      trace.piece === piece.name &&
      trace.cuts.some((cut) => {
        const [a, b] = [cut[0], cut.at(-1)];
        if (a === undefined || b === undefined) return false;
        return piece.darts.some(({ apex, inner, outer, gathered }) => {
          const ends = [pointOf(piece, apex), mouthMiddle(piece, inner, outer)].map((p) =>
            Math.sign(lineDistance(p, a, b)),
          );
          return gathered !== true && ends[0] !== ends[1];
        });
      }),
  );

/** What a centre front became longer by (negative: shorter) beyond an amount, when its princess seam was walked; mm. */
export function walkedBy(before: PieceSet, after: PieceSet, amount: Mm): Mm {
  const [was, is] = [before.centreFront, after.centreFront];
  return was === undefined || is === undefined
    ? 0
    : pointOf(is, "centreWaist").y - pointOf(was, "centreWaist").y - amount;
}

/** How far the top of the princess seam has moved on the centre front; mm, 0 where there is none. */
export function topMoved(before: PieceSet, after: PieceSet): Mm {
  const [was, is] = [before.centreFront?.points.princessTop, after.centreFront?.points.princessTop];
  return was === undefined || is === undefined ? 0 : distance(was.at, is.at);
}

/** What the whole girth at the bust line became longer by (negative: shorter), over the pieces after; mm. */
export const bustGained = (before: PieceSet, after: PieceSet): Mm =>
  piecesOf(after).reduce(
    (sum, piece) =>
      sum + 2 * ((levelWidth(piece, "bust") ?? 0) - (levelWidth(pieceIn(before, piece.name), "bust") ?? 0)),
    0,
  );
