/** Alterations of the wearer that change the same seam of the same piece: each is measured on what the one before left. */
import { dartOfAlteration, type Half } from "../decisions/alteration";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { distance, type PiecePoint } from "../geometry/point";
import { piecesOf } from "../pattern/pieceSet";
import { isSameDart, type Edge, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { pointOf } from "../pattern/piece";
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
 * The seams that two of the wearer's alterations both change.
 *
 * A seam is changed where one of its edges gets another length or another bend, or a corner; an edge that only goes along
 * with the part of the piece that it belongs to is not. Alterations about the same dart go together and are not compared, nor
 * alterations that were left out, nor one of the left half with one of the right. The bust alteration is made before all others
 * and they are laid on it, so it is not compared either.
 */
export function alterationConflicts(alterations: readonly PlannedAlteration[]): readonly AlterationConflict[] {
  const made = alterations.flatMap((planned) =>
    planned.source === "wearer" && planned.outcome.ok ? [{ planned, seams: changedSeams(planned.outcome.value) }] : [],
  );
  return made.flatMap((a, index) =>
    made.slice(index + 1).flatMap((b) => {
      if (
        a.planned.id === b.planned.id ||
        areOnSameDart(a.planned, b.planned) ||
        areOnOtherHalves(a.planned, b.planned)
      )
        return [];
      return a.seams
        .filter(({ piece, seam }) => b.seams.some((other) => other.piece === piece && other.seam === seam))
        .map(({ piece, seam }) => ({ a: a.planned.id, b: b.planned.id, piece, seam }));
    }),
  );
}

function areOnSameDart(a: PlannedAlteration, b: PlannedAlteration): boolean {
  const [one, other] = [dartOf(a), dartOf(b)];
  return one !== null && other !== null && isSameDart(one, other);
}

const dartOf = ({ what }: PlannedAlteration) => (what.kind === "alteration" ? dartOfAlteration(what.alteration) : null);

function areOnOtherHalves(a: PlannedAlteration, b: PlannedAlteration): boolean {
  const [one, other] = [halfOf(a), halfOf(b)];
  return one !== undefined && other !== undefined && one !== other;
}

const halfOf = ({ what }: PlannedAlteration): Half | undefined =>
  what.kind === "alteration" && what.alteration.kind === "fit" ? what.alteration.half : undefined;

interface PieceSeam {
  readonly piece: PieceName;
  readonly seam: SeamName;
}

/** Seams of pieces that were there before and after, each once. */
export function changedSeams({ before, after }: Pick<AlterationTrace, "before" | "after">): readonly PieceSeam[] {
  return piecesOf(after).flatMap((piece) => {
    const old = before[piece.name];
    if (old === undefined) return [];
    const changed = piece.edges.filter((edge) => {
      const was = old.edges.find(({ from, to }) => from === edge.from && to === edge.to);
      return was === undefined || !isSameShape(cornersOf(old, was), cornersOf(piece, edge));
    });
    return [...new Set(changed.map(({ seam }) => seam))].map((seam) => ({ piece: piece.name, seam }));
  });
}

const cornersOf = (piece: Piece, { from, to, curve }: Edge): readonly PiecePoint[] =>
  curve === null
    ? [pointOf(piece, from), pointOf(piece, to)]
    : [pointOf(piece, from), curve.c1, curve.c2, pointOf(piece, to)];

/** The same up to a rigid motion: all distances within are the same. */
function isSameShape(a: readonly PiecePoint[], b: readonly PiecePoint[]): boolean {
  if (a.length !== b.length) return false;
  return spans(a).every((span, index) => Math.abs(span - (spans(b)[index] ?? Infinity)) <= WALKED_AGREEMENT);
}

const spans = (points: readonly PiecePoint[]): readonly number[] =>
  points.flatMap((p, index) => points.slice(index + 1).map((q) => distance(p, q)));
