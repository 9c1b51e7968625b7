/** Alterations of the wearer that change the same seam of the same piece: each is measured on what the one before left. */
import { dartOfAlteration, type Half } from "../decisions/alteration";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { distance, type PiecePoint } from "../geometry/point";
import { piecesOf } from "../pattern/pieceSet";
import { pointOf, type Edge, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { remember } from "../remember";
import { WALKED_AGREEMENT } from "../tolerance";
import type { PlannedAlteration } from "./plan";

export interface AlterationConflict {
  /** Ids of the two alterations, the one made first first. */
  readonly a: string;
  readonly b: string;
  readonly piece: PieceName;
  readonly seam: SeamName;
}

/**
 * The seams that alterations of the wearer both change: for each alteration and each seam that it changes, the last one before
 * it that changed the same, for that is the one whose seam it is measured on. So there are no more than seams changed, however
 * many alterations there are.
 *
 * A seam is changed where one of its edges gets another length or another bend, or a corner; an edge that only goes along
 * with the part of the piece that it belongs to is not. Alterations about the same dart go together and are not compared, nor
 * alterations that were left out, nor one of the left half with one of the right. The bust alteration is made before all others
 * and they are laid on it, so it is not compared either.
 */
export function alterationConflicts(alterations: readonly PlannedAlteration[]): readonly AlterationConflict[] {
  /** By seam of a piece, and within it by what goes together: who changed it last. */
  const changedBy = new Map<string, Map<string, Changer>>();
  return alterations.flatMap((planned, order): readonly AlterationConflict[] => {
    if (planned.source !== "wearer" || !planned.outcome.ok) return [];
    const { id } = planned;
    const own: Changer = { id, order, half: halfOf(planned), dart: dartOf(planned) };
    return changedSeams(planned.outcome.value).flatMap(({ piece, seam }): readonly AlterationConflict[] => {
      const changers = changedBy.get(`${piece} ${seam}`) ?? new Map<string, Changer>();
      changedBy.set(`${piece} ${seam}`, changers);
      let last: Changer | null = null;
      for (const changer of changers.values())
        if (isCompared(own, changer) && (last === null || changer.order > last.order)) last = changer;
      changers.set(`${own.half} ${own.dart}`, own);
      return last === null ? [] : [{ a: last.id, b: id, piece, seam }];
    });
  });
}

interface Changer {
  readonly id: string;
  readonly order: number;
  readonly half: Half | undefined;
  /** Alterations about one dart go together. */
  readonly dart: string | null;
}

/** Neither one on the left half with one on the right, nor two about one dart. */
const isCompared = (one: Changer, other: Changer): boolean =>
  one.id !== other.id &&
  (one.half === undefined || other.half === undefined || one.half === other.half) &&
  (one.dart === null || one.dart !== other.dart);

function dartOf({ what }: PlannedAlteration): string | null {
  const dart = what.kind === "alteration" ? dartOfAlteration(what.alteration) : null;
  return dart === null ? null : `${dart.piece} ${dart.dart}`;
}

const halfOf = ({ what }: PlannedAlteration): Half | undefined =>
  what.kind === "alteration" ? what.alteration.half : undefined;

interface PieceSeam {
  readonly piece: PieceName;
  readonly seam: SeamName;
}

type Changed = Pick<AlterationTrace, "before" | "after">;

/** Seams of pieces that were there before and after, each once. */
export const changedSeams = ({ before, after }: Changed): readonly PieceSeam[] => seamsChanged({ before, after });

/** Another alteration leaves those made before it as they were: of a long ledger only what follows is compared again. */
const seamsChanged = remember(["after", "before"], ({ before, after }: Changed): readonly PieceSeam[] =>
  piecesOf(after).flatMap((piece) => {
    const old = before[piece.name];
    // A piece that was not touched is the very same.
    if (old === undefined || old === piece) return [];
    const changed = piece.edges.filter((edge) => {
      const was = old.edges.find(({ from, to }) => from === edge.from && to === edge.to);
      return (
        was === undefined ||
        (!isSameEdge(old, was, piece, edge) && !isSameShape(cornersOf(old, was), cornersOf(piece, edge)))
      );
    });
    return [...new Set(changed.map(({ seam }) => seam))].map((seam) => ({ piece: piece.name, seam }));
  }),
);

/** The very same line at the very same place: as most of a piece is after an alteration. */
const isSameEdge = (before: Piece, was: Edge, after: Piece, { from, to, curve }: Edge): boolean =>
  was.curve === curve && pointOf(before, from) === pointOf(after, from) && pointOf(before, to) === pointOf(after, to);

const cornersOf = (piece: Piece, { from, to, curve }: Edge): readonly PiecePoint[] =>
  curve === null
    ? [pointOf(piece, from), pointOf(piece, to)]
    : [pointOf(piece, from), curve.c1, curve.c2, pointOf(piece, to)];

/** The same up to a rigid motion: all distances within are the same. */
function isSameShape(a: readonly PiecePoint[], b: readonly PiecePoint[]): boolean {
  if (a.length !== b.length) return false;
  const others = spans(b);
  return spans(a).every((span, index) => Math.abs(span - (others[index] ?? Infinity)) <= WALKED_AGREEMENT);
}

const spans = (points: readonly PiecePoint[]): readonly number[] =>
  points.flatMap((p, index) => points.slice(index + 1).map((q) => distance(p, q)));
