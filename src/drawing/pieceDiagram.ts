/** A small diagram of one piece for paper: the printed line under the new one, with the amounts beside it. */
import type { Piece, PieceName } from "../core/pattern/piece";
import type { PlanHalf } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import type { Label } from "./labels";
import { boundsOf, type Box, type Place } from "./layout";
import { pieceMarks, type PieceMarks } from "./pieceMarks";
import { planLabels } from "./planLabels";

export interface PieceDiagram {
  readonly piece: PieceName;
  /** What the drawing needs, labels included; mm. */
  readonly box: Box;
  /** Where the piece itself ends at the right. */
  readonly right: Mm;
  /** The base size as printed. */
  readonly printed: PieceMarks;
  /** The two printed lines that the new one runs between at the waist or hip, drawn thin. */
  readonly neighbours: readonly PieceMarks[];
  readonly drawn: PieceMarks;
  readonly bustPoint: { readonly x: number; readonly y: number } | null;
  readonly labels: readonly Label[];
}

/** Room at the right for the amounts, and all round. */
const ROOM = { right: 150, around: 14 };

/** The diagram of one piece of a plan; null where the plan has no such piece. */
export function pieceDiagram(plan: PlanHalf, name: PieceName, unit: LengthUnit): PieceDiagram | null {
  const drawn = plan.pieces.find((piece) => piece.name === name);
  if (drawn === undefined) return null;
  const printed = named(plan.printed, name) ?? drawn;
  const wanted = new Set(plan.cutLines.filter((line) => line.piece === name).flatMap((line) => line.between));
  wanted.delete(plan.sizing.baseSize.label);
  const neighbours = [...wanted].flatMap((label) => {
    const found = named(plan.nest.sizes[plan.nest.labels.indexOf(label)] ?? [], name);
    return found === undefined ? [] : [found];
  });
  const shown = [drawn, printed, ...neighbours].map(boundsOf);
  const left = Math.min(...shown.map((box) => box.x));
  const top = Math.min(...shown.map((box) => box.y));
  const right = Math.max(...shown.map((box) => box.x + box.width));
  const bottom = Math.max(...shown.map((box) => box.y + box.height));
  const own: Box = { x: left, y: top, width: right - left, height: bottom - top };
  const place: Place = { piece: name, dx: 0, dy: 0, box: own };
  const { own: bustPoint, printed: printedBustPoint } = plan.bustPoint;
  return {
    piece: name,
    box: {
      x: own.x - ROOM.around,
      y: own.y - ROOM.around,
      width: own.width + ROOM.right + ROOM.around,
      height: own.height + 2 * ROOM.around,
    },
    right,
    printed: pieceMarks(printed),
    neighbours: neighbours.map(pieceMarks),
    drawn: pieceMarks(drawn),
    bustPoint: name === plan.bustPiece ? (bustPoint ?? printedBustPoint) : null,
    // A guess is to be looked at, not to be cut by: it stays off the paper.
    labels: planLabels(plan, [place], unit).filter(({ kind }) => kind !== "guess"),
  };
}

const named = (pieces: readonly Piece[], name: PieceName): Piece | undefined =>
  pieces.find((piece) => piece.name === name);
