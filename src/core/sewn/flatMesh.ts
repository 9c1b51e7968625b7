/** A flat front piece as triangles: its ring, nodes in rows inside it, and rings of nodes round each dart's apex. */
import { directionOf, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import type { Piece } from "../pattern/piece";
import { invariant } from "../result";
import { radians, type Mm } from "../units";
import { triangulate, type Flat, type Triangle } from "./delaunay";
import { flatRing, type FlatRing, type PartsOf, type Tip } from "./flatRing";

export interface FlatMesh {
  readonly piece: Piece;
  readonly ring: FlatRing;
  /** The ring's nodes first, in order, then those inside. */
  readonly nodes: readonly PiecePoint[];
  readonly triangles: readonly Triangle[];
}

/** The least distance between nodes, as a share of the step at that place. */
const CLOSEST = 0.72;
/** How many steps of a leg are carried round the apex as rings, and the fewest nodes of a ring. */
const RINGS = 5;
const RING_LEAST = 9;
/** Share of a step by which every ring is turned against the one inside it, so that triangles stay well shaped. */
const RING_TWIST = 0.31;

/** Shares of the step at which the legs carry nodes: where a leg passes near another, closer ones are tried. */
const LEG_STEPS = [1, 0.6, 0.35] as const;

/**
 * The mesh of a piece. Where darts cross one another it is as good as can be had.
 *
 * @param step the usual distance of nodes, mm
 */
export function flatMesh(piece: Piece, step: Mm, partsOf: PartsOf): FlatMesh {
  const [first, ...closer] = LEG_STEPS;
  const mesh = meshOn(piece, flatRing(piece, step, first * step, partsOf), step);
  if (hasWholeRing(mesh)) return mesh;
  const others = closer.map((share) => () => meshOn(piece, flatRing(piece, step, share * step, partsOf), step));
  for (const other of others) {
    const finer = other();
    if (hasWholeRing(finer)) return finer;
  }
  return mesh;
}

function meshOn(piece: Piece, ring: FlatRing, step: Mm): FlatMesh {
  const nodes: PiecePoint[] = [...ring.nodes];
  const stepAt = (p: Flat): Mm => Math.min(step, ...ring.tips.map((tip) => stepNear(tip, p, step)));
  for (const p of [...ring.tips.flatMap(ringsRound), ...rows(ring.nodes, step)]) {
    const room = CLOSEST * stepAt(p);
    if (isInside(ring.nodes, p) && nodes.every((node) => !near(node, p, room))) nodes.push(p);
  }
  const triangles = triangulate(nodes).filter((triangle) => isInside(ring.nodes, middleOf(nodes, triangle)));
  return { piece, ring, nodes, triangles };
}

/** Whether every part of the ring is a side of a triangle. */
function hasWholeRing({ ring, triangles }: FlatMesh): boolean {
  const count = ring.nodes.length;
  const sides = new Set<number>();
  for (const [a, b, c] of triangles) {
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (from < count && to === (from + 1) % count) sides.add(from);
      if (to < count && from === (to + 1) % count) sides.add(to);
    }
  }
  return sides.size === count;
}

const near = (a: Flat, b: Flat, room: Mm): boolean =>
  Math.abs(a.x - b.x) < room && Math.abs(a.y - b.y) < room && Math.hypot(a.x - b.x, a.y - b.y) < room;

/** The step wanted at a place: as on the leg at that distance from the apex. */
function stepNear({ at, distances }: Tip, p: Flat, step: Mm): Mm {
  const away = Math.hypot(p.x - at.x, p.y - at.y);
  let before = 0;
  for (const next of distances) {
    if (next >= away) return Math.min(step, next - before);
    before = next;
  }
  return step;
}

/** Nodes in rings round an apex, from leg to leg the long way. */
function ringsRound({ at, inner, outer, distances }: Tip): readonly PiecePoint[] {
  const start = directionOf(at, inner);
  const mouth = turnBetween(start, directionOf(at, outer));
  // The way round that does not cross the dart.
  const whole = mouth > 0 ? mouth - 2 * Math.PI : mouth + 2 * Math.PI;
  let before = 0;
  return distances.slice(0, RINGS).flatMap((radius, ringIndex) => {
    const parts = Math.max(RING_LEAST, Math.round((Math.abs(whole) * radius) / (radius - before)));
    before = radius;
    const twist = ringIndex % 2 === 0 ? RING_TWIST / 2 : -RING_TWIST / 2;
    return Array.from({ length: parts - 1 }, (_, index) =>
      polar(at, radians(start + (whole * (index + 1 + twist)) / parts), radius),
    );
  });
}

/** Rows of nodes, every other row moved by half a step: all triangles between them are equal-sided. */
function rows(ring: readonly PiecePoint[], step: Mm): readonly PiecePoint[] {
  const left = Math.min(...ring.map(({ x }) => x));
  const right = Math.max(...ring.map(({ x }) => x));
  const top = Math.min(...ring.map(({ y }) => y));
  const bottom = Math.max(...ring.map(({ y }) => y));
  const high = (step * Math.sqrt(3)) / 2;
  const found: PiecePoint[] = [];
  for (let row = 1; top + row * high < bottom; row += 1) {
    for (let x = left + (row % 2 === 0 ? step : step / 2); x < right; x += step)
      found.push(piecePoint(x, top + row * high));
  }
  return found;
}

/** Whether a point lies in a closed ring: a line from it to the right crosses the ring an odd number of times. */
export function isInside(ring: readonly Flat[], p: Flat): boolean {
  let inside = false;
  let a = invariant(ring.at(-1), "ring");
  for (const b of ring) {
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
    a = b;
  }
  return inside;
}

function middleOf(nodes: readonly PiecePoint[], [a, b, c]: Triangle): PiecePoint {
  const [p, q, r] = [invariant(nodes[a], "node"), invariant(nodes[b], "node"), invariant(nodes[c], "node")];
  return piecePoint((p.x + q.x + r.x) / 3, (p.y + q.y + r.y) / 3);
}

/** mm². The area within a closed ring. */
export function ringArea(ring: readonly Flat[]): number {
  let twice = 0;
  let a = invariant(ring.at(-1), "ring");
  for (const b of ring) {
    twice += a.x * b.y - b.x * a.y;
    a = b;
  }
  return Math.abs(twice) / 2;
}
