/** Walking along a sewn seam: over the pieces of one side one after the other, darts closed. */
import {
  edgeLength,
  edgeLengthBetween,
  edgeNearest,
  edgeParameterAtLength,
  edgePointAt,
  edgeReverse,
  edgeTangentAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import type { Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { curveOf } from "../pattern/ring";
import { radians, type Mm, type Radians } from "../units";

interface Step {
  readonly piece: PieceName;
  readonly curve: EdgeCurve<"piece">;
  /** Where it starts along the sewn seam. */
  readonly from: Mm;
  readonly length: Mm;
  /** Walked against the way of the outline. */
  readonly back: boolean;
  readonly start: PointName;
}

export interface Walk {
  readonly steps: readonly Step[];
  readonly length: Mm;
  /** Where it starts and ends, passes a closed dart, or goes over to another piece: measured from its start. */
  readonly breaks: readonly Mm[];
}

/** A place on the stitch line, and the way square out of the piece there. */
export interface WalkedPlace {
  readonly piece: PieceName;
  readonly at: PiecePoint;
  readonly outward: Radians;
}

/** Seams that run down the body are walked from above, all others from the centre. */
const FROM_ABOVE: ReadonlySet<SeamName> = new Set(["side", "princess", "armhole", "centre", "panel"]);

/** The walk along a seam of some pieces, in their order; a piece without it is passed over. */
export function walkAlong(pieces: readonly Piece[], seam: SeamName): Walk {
  const steps: Step[] = [];
  const breaks: Mm[] = [0];
  let from = 0;
  for (const piece of pieces) {
    const edges = inWalkingOrder(piece, seam);
    if (edges.length === 0) continue;
    if (from > 0) breaks.push(from);
    for (const { edge, back } of edges) {
      if (edge.mouthOf !== null) {
        breaks.push(from);
        continue;
      }
      const drawn = curveOf(piece, edge);
      const length = edgeLength(drawn);
      steps.push({
        piece: piece.name,
        curve: back ? edgeReverse(drawn) : drawn,
        from,
        length,
        back,
        start: back ? edge.to : edge.from,
      });
      from += length;
    }
  }
  breaks.push(from);
  return { steps, length: from, breaks };
}

/** The edges of a seam, its darts' mouths among them, from the end that is walked first. */
function inWalkingOrder(piece: Piece, seam: SeamName) {
  const count = piece.edges.length;
  const on = (index: number): boolean => piece.edges[(index + count) % count]?.seam === seam;
  // The ring may begin in the middle of the seam.
  const first = piece.edges.findIndex((_, index) => on(index) && !on(index - 1));
  const start = first < 0 ? 0 : first;
  const run = Array.from({ length: count }, (_, k) => (start + k) % count)
    .filter(on)
    .map((index) => invariant(piece.edges[index], "edge"));
  const [a, b] = [run[0], run.at(-1)];
  if (a === undefined || b === undefined) return [];
  const [head, tail] = [curveOf(piece, a).a, curveOf(piece, b).b];
  const back = FROM_ABOVE.has(seam) ? head.y > tail.y : head.x > tail.x;
  return (back ? run.toReversed() : run).map((edge) => ({ edge, back }));
}

/** The place so far along the walk; held between its ends. */
export function placeAlong({ steps, length }: Walk, along: Mm): WalkedPlace {
  const held = Math.min(Math.max(along, 0), length);
  const step = invariant(steps.find(({ from, length: own }) => held <= from + own) ?? steps.at(-1), "step of a walk");
  const t = edgeParameterAtLength(step.curve, held - step.from);
  const way = edgeTangentAt(step.curve, t);
  // Outlines go clockwise on screen, so what lies to the left of the way is outside.
  return {
    piece: step.piece,
    at: edgePointAt(step.curve, t),
    outward: radians(way + (step.back ? Math.PI / 2 : -Math.PI / 2)),
  };
}

/** How far along the walk a named corner lies; null where it is none of its corners. */
export function alongTo({ steps }: Walk, point: PointName): Mm | null {
  return steps.find(({ start }) => start === point)?.from ?? null;
}

/** How far along the walk a place on it lies, mm. */
export function alongAt({ steps }: Walk, { piece, at }: WalkedPlace): Mm {
  const near = steps
    .filter((step) => step.piece === piece)
    .map(({ curve, from }) => ({ curve, from, ...edgeNearest(curve, at) }))
    .toSorted((p, q) => p.distance - q.distance)[0];
  const { curve, from, t } = invariant(near, "a step of the walk");
  return from + edgeLengthBetween(curve, 0, t);
}
