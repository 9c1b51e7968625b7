/**
 * Pivoting a dart: it is closed where it is and opened at another seam, about one point. The part between the two
 * turns rigidly; every seam keeps its length and the sewn shape stays what it was.
 */
import { directionOf, turnBetween } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { CoreBug, invariant } from "../result";
import { dartOf, pointOf, type DartName, type Piece, type PointName } from "../pattern/piece";
import { redrawn, withEnds, withoutPoint, withPoint } from "../pattern/redraw";
import type { Radians } from "../units";
import { cutAndMove, partAt, type SurgeryTrace } from "./cutAndMove";
import { edgeFrom, edgeTo, insertPoint } from "../pattern/ring";

export interface PivotTo {
  /** The dart to close; it must reach the pivot. */
  readonly close: DartName;
  /** The new dart, opened on the edge that starts at `edgeFrom`, at curve parameter `t`. */
  readonly open: DartName;
  readonly edgeFrom: PointName;
  readonly t: number;
  /** The point turned about. */
  readonly pivot: PointName;
}

export interface Pivoted {
  readonly piece: Piece;
  readonly turn: Radians;
  readonly trace: SurgeryTrace;
}

/**
 * Closes one dart and opens another by the same angle.
 *
 * The new seam must lie after the closed dart, going round the outline; the part between them turns about the pivot
 * until the outer mouth end of the closed dart lies on the inner one.
 *
 * @source a plane turned about the apex of a cone's slit closes it in one place as it opens in another
 */
export function pivotDart(piece: Piece, to: PivotTo): Pivoted {
  const old = dartOf(piece, to.close);
  const pivot = pointOf(piece, to.pivot);
  const turn = turnBetween(
    directionOf(pivot, pointOf(piece, old.outer)),
    directionOf(pivot, pointOf(piece, old.inner)),
  );
  const inner: PointName = `${to.open}Inner`;
  const outer: PointName = `${to.open}Outer`;
  const cutAt = edgeFrom(piece, to.edgeFrom);
  const seam = invariant(piece.edges[cutAt], "edge").seam;
  const cut = insertPoint(piece, cutAt, to.t, inner, "bust");
  const opened = partAt(cut, inner, outer, to.open);
  const operated = cutAndMove(
    opened,
    [{ from: old.outer, to: inner, inside: [pivot], carries: [], motion: rigidMotion(pivot, turn) }],
    { cuts: [[pivot, pointOf(opened, inner)]], hinges: [pivot] },
  );
  const apex: PointName = `${to.open}Apex`;
  const turned = operated.piece;
  return {
    turn,
    get trace() {
      return operated.trace;
    },
    piece: withoutDart(
      redrawn(turned, withPoint(turned.points, apex, { at: pivot, level: "bust" }), turned.edges, [
        ...turned.darts,
        { name: to.open, seam, inner, outer, apex, aimsAt: old.aimsAt },
      ]),
      to.close,
    ),
  };
}

/** Joins the two straight halves of the seam that a shut dart lay between. */
function withoutDart(piece: Piece, name: DartName): Piece {
  const dart = dartOf(piece, name);
  const before = edgeTo(piece, dart.inner);
  const after = edgeFrom(piece, dart.outer);
  const first = invariant(piece.edges[before], "edge");
  const last = invariant(piece.edges[after], "edge");
  if (first.curve !== null || last.curve !== null || after !== before + 2) {
    throw new CoreBug(`${piece.name}: only a dart in a straight seam can be joined up`);
  }
  const edges = [...piece.edges];
  edges.splice(before, 3, withEnds(first, first.from, last.to, null));
  return redrawn(
    piece,
    withoutPoint(piece.points, [dart.inner, dart.outer, dart.apex]),
    edges,
    piece.darts.filter((d) => d.name !== name),
  );
}
