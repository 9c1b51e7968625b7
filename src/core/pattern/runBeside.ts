/**
 * The run of edges beside one or two corners of a piece: all that is drawn anew where only these corners are moved. Solvers that
 * draw and measure in rounds work on it as on a piece of a few edges, and put it back when they are done.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { invariant } from "../result";
import type { Mm } from "../units";
import { pointNames, type Dart, type Edge, type NamedPoint, type Piece, type PointName, type SeamName } from "./piece";
import { redrawn } from "./redraw";
import { curveOf, edgeFrom, edgeTo } from "./ring";
import { stretchAt } from "./seamStretch";

/** A run taken out of its piece. */
interface RunBeside {
  /** The edges of the run and their points, with a dart between the corners: a ring that is not closed. */
  readonly run: Piece;
  /** Of a seam, what the run has no part in; mm, darts closed. */
  readonly seamOutside: (seam: SeamName) => Mm;
  /** The piece with the run drawn anew put back in its place. */
  readonly withRun: (drawn: Piece) => Piece;
}

/**
 * @param first the corner met first, the way the edges go; the run begins with the stretch that ends there
 * @param last  the corner that the run goes on from for one stretch: the same, or the other end of a dart's mouth
 * @param dart  the dart whose mouth lies between them
 */
export function runBeside(piece: Piece, first: PointName, last: PointName, dart: Dart | null = null): RunBeside {
  const count = piece.edges.length;
  const start = invariant(stretchAt(piece, edgeTo(piece, first))[0], "stretch");
  const end = invariant(stretchAt(piece, edgeFrom(piece, last)).at(-1), "stretch");
  const length = ((end - start + count) % count) + 1;
  const points: Partial<Record<PointName, NamedPoint>> = {};
  const edges: Edge[] = [];
  for (let step = 0; step < length; step += 1) {
    const edge = invariant(piece.edges[(start + step) % count], "edge");
    edges.push(edge);
    points[edge.from] = invariant(piece.points[edge.from], edge.from);
    points[edge.to] = invariant(piece.points[edge.to], edge.to);
  }
  if (dart !== null) points[dart.apex] = invariant(piece.points[dart.apex], dart.apex);
  return {
    run: redrawn(piece, points, edges, dart === null ? [] : [dart]),
    seamOutside: (seam) => {
      let sum = 0;
      for (let step = length; step < count; step += 1) {
        const edge = invariant(piece.edges[(start + step) % count], "edge");
        if (edge.seam === seam && edge.mouthOf === null) sum += edgeLength(curveOf(piece, edge));
      }
      return sum;
    },
    withRun: (drawn) => {
      const together = [...piece.edges];
      for (const [step, edge] of drawn.edges.entries()) together[(start + step) % count] = edge;
      const all: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
      for (const name of pointNames(drawn)) all[name] = invariant(drawn.points[name], name);
      return redrawn(piece, all, together);
    },
  };
}
