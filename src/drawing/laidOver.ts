/** The pieces of two versions laid over each other, each in its own place on the table. */
import type { Half } from "../core/decisions/alteration";
import type { PieceName } from "../core/pattern/piece";
import { isSamePiece } from "../core/pattern/pieceSet";
import type { Plan, PlanHalf } from "../core/plan/plan";
import type { Mm } from "../core/units";
import { around, boundsOf, boxOf, placePieces, type Box } from "./layout";
import { pieceMarks } from "./pieceMarks";

interface LaidPiece {
  readonly piece: PieceName;
  readonly dx: Mm;
  readonly dy: Mm;
  /** Path data in the piece's own frame: stitch line and legs; empty where that version has no such piece. */
  readonly before: string;
  readonly after: string;
}

export interface LaidOver {
  /** Set where the halves differ in either version. */
  readonly half: Half | null;
  readonly box: Box;
  readonly pieces: readonly LaidPiece[];
}

/** Paper about the pieces. */
const MARGIN: Mm = 15;

/** One drawing, or one for each half where they differ. @param before null: one version alone */
export function laidOver(before: Plan | null, after: Plan): readonly LaidOver[] {
  const isOne = isAlike(after) && (before === null || isAlike(before));
  return (isOne ? (["left"] as const) : (["left", "right"] as const)).map((half) => {
    const [was, is] = [before?.[half].pieces ?? [], after[half].pieces];
    const places = placePieces([was, is]);
    return {
      half: isOne ? null : half,
      box: boxOf(places, MARGIN),
      pieces: places.map(({ piece, dx, dy }) => ({
        piece,
        dx,
        dy,
        before: linesOf(was, piece),
        after: linesOf(is, piece),
      })),
    };
  });
}

const isAlike = ({ left, right }: Plan): boolean =>
  left === right ||
  left.pieces.every((piece) =>
    isSamePiece(
      piece,
      right.pieces.find(({ name }) => name === piece.name),
    ),
  );

function linesOf(pieces: PlanHalf["pieces"], name: PieceName): string {
  const piece = pieces.find((one) => one.name === name);
  if (piece === undefined) return "";
  const { stitch, darts } = pieceMarks(piece);
  return stitch + darts.map(({ legs }) => legs).join("");
}

interface PieceOver {
  readonly half: Half | null;
  readonly box: Box;
  readonly before: string;
  readonly after: string;
}

/** One piece of two versions in its own frame; both halves where they differ in either. */
export function pieceLaidOver(name: PieceName, before: Plan, after: Plan): readonly PieceOver[] {
  const find = (pieces: PlanHalf["pieces"]) => pieces.find((piece) => piece.name === name);
  const isSame = ({ left, right }: Plan): boolean =>
    left === right || isSamePiece(find(left.pieces), find(right.pieces));
  const isOne = isSame(before) && isSame(after);
  return (isOne ? (["left"] as const) : (["left", "right"] as const)).map((half) => {
    const [was, is] = [before[half].pieces, after[half].pieces];
    const bounds = [find(was), find(is)].flatMap((piece) => (piece === undefined ? [] : [boundsOf(piece)]));
    const box = bounds.reduce<Box | undefined>(around, undefined) ?? { x: 0, y: 0, width: 1, height: 1 };
    return {
      half: isOne ? null : half,
      box: { x: box.x - 4, y: box.y - 4, width: box.width + 8, height: box.height + 8 },
      before: linesOf(was, name),
      after: linesOf(is, name),
    };
  });
}
