/**
 * The outline of a flat front piece as a ring of nodes, with the V of each dart cut away: from one mouth end along the
 * leg to the apex and back along the other leg. Both legs carry the same number of nodes at the same shares of their
 * length, so that they can be sewn node to node.
 */
import { edgeLength, edgePointAt, edgeParameterAtLength } from "../geometry/edgeCurve";
import { between, distance, midpoint, type PiecePoint } from "../geometry/point";
import { pointOf, type Dart, type Edge, type Piece } from "../pattern/piece";
import { invariant } from "../result";
import { curveOf } from "../pattern/ring";
import { SAME_LINE } from "../tolerance";
import type { Mm } from "../units";

/** A run of the ring: an edge of the piece, or one leg of a dart. Indices of its nodes, both ends among them. */
export type Stretch =
  | { readonly kind: "edge"; readonly edge: Edge; readonly nodes: readonly number[] }
  | { readonly kind: "leg"; readonly dart: Dart; readonly nodes: readonly number[] };

export interface FlatRing {
  readonly nodes: readonly PiecePoint[];
  readonly stretches: readonly Stretch[];
  readonly tips: readonly Tip[];
}

/** A dart's apex in the flat: where it lies, and the distances from it at which its legs carry nodes. */
export interface Tip {
  readonly dart: Dart;
  readonly node: number;
  readonly at: PiecePoint;
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  readonly distances: readonly Mm[];
}

/** Nodes on a leg lie closer towards the apex: the first step as a share of the usual one, and how steps grow. */
const FIRST_STEP = 0.3;
const STEP_GROWTH = 1.4;

/** Into how many parts an edge is cut. Two pieces that are sewn together must be told the same. */
export type PartsOf = (edge: Edge, length: Mm) => number;

/**
 * The ring of a piece.
 *
 * @param step    the usual distance of nodes, mm
 * @param legStep the same on the legs of darts, mm
 * @param partsOf into how many parts each edge is cut
 */
export function flatRing(piece: Piece, step: Mm, legStep: Mm, partsOf: PartsOf): FlatRing {
  const nodes: PiecePoint[] = [];
  const stretches: Stretch[] = [];
  const tips: Tip[] = [];
  const run = (points: readonly PiecePoint[]): number[] => points.map((point) => nodes.push(point) - 1);
  const cut = new Set<string>();

  for (const edge of piece.edges) {
    const dart = edge.mouthOf === null ? undefined : piece.darts.find(({ name }) => name === edge.mouthOf);
    if (dart === undefined || dart.gathered === true) {
      const curve = curveOf(piece, edge);
      const length = edgeLength(curve);
      const parts = partsOf(edge, length);
      const points = shares(parts).map((share) => edgePointAt(curve, edgeParameterAtLength(curve, share * length)));
      stretches.push({ kind: "edge", edge, nodes: run(points) });
      continue;
    }
    const inner = pointOf(piece, dart.inner);
    const outer = pointOf(piece, dart.outer);
    // A dart that takes out nothing.
    if (distance(inner, outer) < SAME_LINE) continue;
    // A mouth may be drawn as several edges: the V takes the place of all of them.
    if (cut.has(dart.name)) continue;
    cut.add(dart.name);
    const [from, to] = edge.from === dart.outer ? [outer, inner] : [inner, outer];
    const at = apart(pointOf(piece, dart.apex), midpoint(inner, outer), tips);
    const legShares = growing((distance(at, inner) + distance(at, outer)) / 2, step, legStep);
    const going = run(
      legShares
        .toReversed()
        .slice(0, -1)
        .map((share) => between(at, from, share)),
    );
    const node = nodes.push(at) - 1;
    const coming = run(legShares.slice(1, -1).map((share) => between(at, to, share)));
    stretches.push({ kind: "leg", dart, nodes: [...going, node] });
    stretches.push({ kind: "leg", dart, nodes: [node, ...coming] });
    const leg = distance(at, from);
    tips.push({ dart, node, at, inner, outer, distances: legShares.slice(1).map((share) => share * leg) });
  }
  return {
    nodes,
    stretches: stretches.map((stretch, index) => closed(stretch, stretches[(index + 1) % stretches.length])),
    tips,
  };
}

/** Every run ends at the node that the next one starts with. */
function closed(stretch: Stretch, next: Stretch | undefined): Stretch {
  const start = invariant(invariant(next, "next stretch").nodes[0], "first node");
  return stretch.nodes.at(-1) === start ? stretch : { ...stretch, nodes: [...stretch.nodes, start] };
}

/** 0 up to but not including 1, in equal parts. */
const shares = (parts: number): readonly number[] => Array.from({ length: parts }, (_, index) => index / parts);

/** Two darts that end in one point would part the piece: the later one is ended a little short of it. */
function apart(apex: PiecePoint, mouth: PiecePoint, tips: readonly Tip[]): PiecePoint {
  const met = tips.some(({ at }) => distance(at, apex) < 2 * SAME_LINE);
  return met
    ? between(apex, mouth, Math.min(1 / 2, (4 * SAME_LINE) / Math.max(SAME_LINE, distance(apex, mouth))))
    : apex;
}

/** Shares of a length from 0 to 1, in steps that grow up to the usual one. */
function growing(length: Mm, step: Mm, legStep: Mm): readonly number[] {
  const places = [0];
  let reached = 0;
  let next = FIRST_STEP * step;
  while (reached + next < length) {
    reached += next;
    places.push(reached);
    next = Math.min(legStep, next * STEP_GROWTH);
  }
  places.push(reached + next);
  const last = reached + next;
  return places.map((place) => place / last);
}
