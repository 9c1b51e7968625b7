/** What the steps of a fit alteration are told by: what these very pieces have, so that none says what does not apply. */
import { distance } from "../../geometry/point";
import { lineDistance } from "../../geometry/segment";
import { pointOf, type Piece, type PointName, type SeamName } from "../../pattern/piece";
import { mouthMiddle } from "../../pattern/ring";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import type { Mm } from "../../units";
import { piecesOf, type PieceSet } from "../../pattern/pieceSet";
import type { FitApplied } from "../outcome/definition";

export type Steps = NonNullable<FitApplied["steps"]>;

/** What is walked off at the bust line of a centre front is told from here on. */
const WALKED_WORTH_TELLING: Mm = 0.5;

/** Steps of which some apply only to some pieces: those that do. */
export const told = (...steps: readonly (string | false)[]): readonly string[] =>
  steps.filter((step) => step !== false);

/** The steps of each piece that has changed, as `tell` has them. */
export function toldFor(before: PieceSet, after: PieceSet, tell: (piece: Piece) => readonly string[]): Steps {
  const changed = piecesOf(before).filter((piece) => after[piece.name] !== piece);
  return Object.fromEntries(changed.map((piece) => [piece.name, tell(piece)]));
}

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

/** What a centre front became longer by (negative: shorter) beyond an amount, when its princess seam was walked. */
export function walkedBy(before: PieceSet, after: PieceSet, amount: Mm): Mm {
  const [was, is] = [before.centreFront, after.centreFront];
  return was === undefined || is === undefined
    ? 0
    : pointOf(is, "centreWaist").y - pointOf(was, "centreWaist").y - amount;
}

/** What is to be done on a centre front about what its seam differs by when it is walked; `{walked}` is how much. */
export function walkingTold(by: Mm): string {
  const walk = "Walk the princess seam against the side front's";
  if (Math.abs(by) < WALKED_WORTH_TELLING) return `${walk}: they come out equal.`;
  return by < 0
    ? `${walk}: the centre front is {walked} too long. Fold that out straight across at the bust line.`
    : `${walk}: the centre front is {walked} too short. Cut straight across at the bust line and let it in there.`;
}

/** How far the top of the princess seam has moved on the centre front; 0 where there is none. */
export function topMoved(before: PieceSet, after: PieceSet): Mm {
  const [was, is] = [before.centreFront?.points.princessTop, after.centreFront?.points.princessTop];
  return was === undefined || is === undefined ? 0 : distance(was.at, is.at);
}
