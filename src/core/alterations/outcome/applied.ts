/** What an alteration leaves behind: the pieces, and a trace of what it did. */
import type { AlterationTrace } from "./trace";
import { distance, type PiecePoint } from "../../geometry/point";
import { pointNames, type PieceName } from "../../pattern/piece";
import { SAME_LINE } from "../../tolerance";
import type { Mm } from "../../units";
import { piecesOf, type PieceSet } from "../../pattern/pieceSet";

export interface Applied {
  readonly pieces: PieceSet;
  readonly trace: AlterationTrace;
  /** What truing moved each mouth end of a redrawn dart along its leg. */
  readonly truing: { readonly inner: Mm; readonly outer: Mm };
  /** What whole girths change by, by design. */
  readonly girths: Readonly<Partial<Record<"bust" | "waist" | "hip", Mm>>>;
}

/** The trace of pieces before and after, with nothing said yet of seams and cuts. */
export const untouched = (piece: PieceName, before: PieceSet, after: PieceSet): AlterationTrace => ({
  piece,
  surgery: [],
  values: {},
  before: changedIn(before, before, after),
  after: changedIn(after, before, after),
  moved: movedPoints(before, after),
  seam: null,
  seamBefore: 0,
  seamUngiven: 0,
  seamAfter: 0,
  given: [],
  notes: [],
});

function changedIn(of: PieceSet, before: PieceSet, after: PieceSet): PieceSet {
  return Object.fromEntries(
    piecesOf(of)
      .filter(({ name }) => before[name] !== after[name])
      .map((piece) => [piece.name, piece]),
  );
}

function movedPoints(before: PieceSet, after: PieceSet): { piece: PieceName; from: PiecePoint; to: PiecePoint }[] {
  return piecesOf(after).flatMap((piece) => {
    const old = before[piece.name];
    if (old === undefined || old === piece) return [];
    return pointNames(piece).flatMap((name) => {
      const from = old.points[name]?.at;
      const to = piece.points[name]?.at;
      return from !== undefined && to !== undefined && distance(from, to) > SAME_LINE
        ? [{ piece: piece.name, from, to }]
        : [];
    });
  });
}
