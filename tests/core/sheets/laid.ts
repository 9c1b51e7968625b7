/** Rings to lay, and second opinions on how they lie: the placement worked out afresh, distances by `@flatten-js/core`. */
import { Point, Polygon } from "@flatten-js/core";
import * as fc from "fast-check";
import type { Placement, SheetLayout, Tile, ToLay } from "../../../src/core/sheets/layout";
import { piecePoint } from "../../../src/core/geometry/point";
import { anyAmount } from "../../support/amounts";

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export const toLay = (key: string, corners: readonly (readonly [number, number])[]): ToLay => ({
  key,
  ring: corners.map(([x, y]) => piecePoint(x, y)),
});

/** A rectangle with its corner away from the origin, as pieces have it. */
export const rectangle = (key: string, width: number, height: number): ToLay =>
  toLay(key, [
    [-30, 40],
    [width - 30, 40],
    [width - 30, height + 40],
    [-30, height + 40],
  ]);

/**
 * A ring about a middle point, its spokes of any length: hollows, points and slivers, and never crossing itself. Up to 400
 * by 600 mm.
 */
const anyRing = (key: string): fc.Arbitrary<ToLay> =>
  fc
    .record({
      spokes: fc.array(anyAmount(0.15, 1), { minLength: 3, maxLength: 16 }),
      across: anyAmount(20, 200),
      down: anyAmount(20, 300),
      middle: fc.tuple(anyAmount(-300, 300), anyAmount(-300, 300)),
    })
    .map(({ spokes, across, down, middle: [x, y] }) =>
      toLay(
        key,
        spokes.map((length, index) => {
          const angle = (2 * Math.PI * index) / spokes.length;
          return [x + length * across * Math.cos(angle), y + length * down * Math.sin(angle)];
        }),
      ),
    );

export const anyPieces = (most: number): fc.Arbitrary<readonly ToLay[]> =>
  fc
    .integer({ min: 1, max: most })
    .chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => anyRing(`p${index}`))));

/** By the turning matrix: quarters of a turn about the origin, +x towards +y, then the shift. */
function laidRing({ ring }: ToLay, { quarters, dx, dy }: Placement): readonly Spot[] {
  const angle = (quarters * Math.PI) / 2;
  return ring.map(({ x, y }) => ({
    x: x * Math.cos(angle) - y * Math.sin(angle) + dx,
    y: x * Math.sin(angle) + y * Math.cos(angle) + dy,
  }));
}

export function laidRings(pieces: readonly ToLay[], layout: SheetLayout): readonly (readonly Spot[])[] {
  return pieces.map((piece) => {
    const placement = layout.placements.find(({ key }) => key === piece.key);
    if (placement === undefined) throw new Error(`${piece.key} is not laid`);
    return laidRing(piece, placement);
  });
}

/** The least distance of two rings: 0 where they meet or one lies within the other. */
function apart(p: readonly Spot[], q: readonly Spot[]): number {
  const [one, other] = [polygon(p), polygon(q)];
  const [inOther, inOne] = [p[0], q[0]];
  if (inOther !== undefined && other.contains(new Point(inOther.x, inOther.y))) return 0;
  if (inOne !== undefined && one.contains(new Point(inOne.x, inOne.y))) return 0;
  return one.distanceTo(other)[0];
}

const polygon = (ring: readonly Spot[]): Polygon => new Polygon(ring.map(({ x, y }) => new Point(x, y)));

/** Every two rings, their distance. */
export const distances = (rings: readonly (readonly Spot[])[]): readonly number[] =>
  rings.flatMap((p, index) => rings.slice(index + 1).map((q) => apart(p, q)));

/** Points along the ring no further apart than `step`, the corners among them, in order. */
export const along = (ring: readonly Spot[], step: number): readonly Spot[] =>
  ring.flatMap((a, index) => {
    const b = ring[(index + 1) % ring.length] ?? a;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / step));
    return Array.from({ length: count }, (_, i) => ({
      x: a.x + ((b.x - a.x) * i) / count,
      y: a.y + ((b.y - a.y) * i) / count,
    }));
  });

/** A net of points inside the ring, by flatten-js. */
export function inside(ring: readonly Spot[], step: number): readonly Spot[] {
  const whole = polygon(ring);
  const { xmin, ymin, xmax, ymax } = whole.box;
  const spots: Spot[] = [];
  for (let x = xmin + step / 2; x < xmax; x += step) {
    for (let y = ymin + step / 2; y < ymax; y += step) {
      if (whole.contains(new Point(x, y))) spots.push({ x, y });
    }
  }
  return spots;
}

export const isOnTile = ({ x, y }: Spot, tile: Tile, slack: number): boolean =>
  x >= tile.x - slack && x <= tile.x + tile.width + slack && y >= tile.y - slack && y <= tile.y + tile.height + slack;
