/**
 * Redrawing edges to a length: ends and end directions stay, the handles are made longer or shorter alike. That is how a
 * curve is drawn fuller or flatter between two points without a corner at either.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { zeroBetween, type Looked } from "../geometry/iterate";
import { between, type PiecePoint } from "../geometry/point";
import { pointOf, type Edge, type Piece } from "../pattern/piece";
import { redrawn, withCurve } from "../pattern/redraw";
import { invariant } from "../result";
import { PARAMETER_ACCURACY, SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { curveOf } from "../pattern/ring";
import { smoothStretchAt, stretchLength, withFullness, type Stretch } from "../pattern/seamStretch";

/** How much shorter or longer handles may become before the curve no longer looks like the one it was (our own choice). */
const REACH = { shortest: 0.4, longest: 1.9 } as const;

interface Reach {
  readonly shortest: number;
  readonly longest: number;
}

/** The edge with its handles scaled; a straight edge gets handles of a third first. */
function withHandles(piece: Piece, edge: Edge, scale: number): Edge {
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  const { c1, c2 } = controlsOf(piece, edge);
  return withCurve(edge, { c1: between(a, c1, scale), c2: between(b, c2, scale) });
}

export function controlsOf(piece: Piece, edge: Edge): { readonly c1: PiecePoint; readonly c2: PiecePoint } {
  if (edge.curve !== null) return edge.curve;
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  return { c1: between(a, b, 1 / 3), c2: between(b, a, 1 / 3) };
}

/**
 * The piece with some edges, each with all of its stretch that runs smooth, redrawn so that they are together as long as wanted, or as nearly as handles that still look
 * right can make them. Edges that are as long as wanted stay the very same objects.
 *
 * @param indexes of the edges, in the ring
 * @param length  of them together, mm
 * @param reach   how much shorter or longer handles may become
 */
export function fitHandles(piece: Piece, indexes: readonly number[], length: Mm, reach: Reach = REACH): Piece {
  const stretches = indexes.map((index) => smoothStretchAt(piece, index));
  if (stretches.some((stretch) => stretch.length > 1)) return fitStretches(piece, stretches, length, reach);
  const edges = indexes.map((index) => invariant(piece.edges[index], "edge"));
  const sum = (scale: number): Mm =>
    edges.reduce(
      (total, edge) => total + edgeLength(curveOf(piece, scale === 1 ? edge : withHandles(piece, edge, scale))),
      0,
    );
  if (Math.abs(sum(1) - length) < SOLVER_ACCURACY) return piece;
  const scale = scaleFor((s) => sum(s) - length, reach);
  const drawn = [...piece.edges];
  for (const [i, index] of indexes.entries()) drawn[index] = withHandles(piece, invariant(edges[i], "edge"), scale);
  return redrawn(piece, piece.points, drawn);
}

/** The same where a stretch has bends: it is drawn fuller or flatter as a whole. */
function fitStretches(piece: Piece, stretches: readonly Stretch[], length: Mm, reach: Reach): Piece {
  const drawn = (scale: number): Piece =>
    stretches.reduce((done, stretch): Piece => {
      const [only] = stretch;
      if (stretch.length > 1 || only === undefined) return withFullness(done, stretch, scale);
      return {
        ...done,
        edges: done.edges.with(only, withHandles(done, invariant(done.edges[only], "edge"), scale)),
      };
    }, piece);
  const sum = (of: Piece): Mm => stretches.reduce((total, stretch) => total + stretchLength(of, stretch), 0);
  if (Math.abs(sum(piece) - length) < SOLVER_ACCURACY) return piece;
  return drawn(scaleFor((scale) => sum(scale === 1 ? piece : drawn(scale)) - length, reach));
}

/** The scale at which the miss is nothing; the bound that misses least where there is none. */
function scaleFor(miss: (scale: number) => Mm, { shortest, longest }: Reach): number {
  const look = (at: number): Looked => ({ at, off: miss(at) });
  const [short, drawn, long] = [look(shortest), look(1), look(longest)];
  // From the drawn handles out to the side where the miss changes its sign.
  const far = [short, long].find(({ off }) => off > 0 !== drawn.off > 0);
  if (far !== undefined)
    return zeroBetween([far, drawn], miss, { accuracy: SOLVER_ACCURACY, apart: PARAMETER_ACCURACY });
  const bound = Math.abs(short.off) < Math.abs(long.off) ? short : long;
  return Math.abs(drawn.off) < Math.abs(bound.off) ? 1 : bound.at;
}
