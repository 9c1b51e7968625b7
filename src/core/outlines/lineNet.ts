/** Lines joined by their ends, and cut where others meet them: a net of places with stretches of line between them. */
import { edgeFlatten, edgeNearest, edgePart, edgePointAt, type EdgeCurve } from "../geometry/edgeCurve";
import { between, distance, midpoint, sheetPoint, type SheetPoint } from "../geometry/point";
import { JOINED_EXACTLY } from "../tolerance";
import type { Mm } from "../units";
import { pointsAlong, type Stroke } from "./strokes";

/** A stretch of a stroke between two places of the net. Positions: the number of the edge and how far along it, 2.5. */
export interface Part {
  readonly id: number;
  readonly stroke: Stroke;
  /** Of the size itself, not shared with others. */
  readonly isOwn: boolean;
  readonly from: number;
  readonly to: number;
  readonly fromNode: number;
  readonly toNode: number;
  readonly points: readonly SheetPoint[];
  readonly length: Mm;
}

export interface Net {
  readonly places: readonly SheetPoint[];
  /** How wide the gap was that was joined at each place. */
  readonly gaps: readonly Mm[];
  readonly parts: readonly Part[];
}

/** At most so many ends or lines are looked at in one cell: what is denser is no pattern. */
const CROWD = 64;

/** A number for each cell of a grid; cells that are kilometres apart may share one, and are told apart by distance. */
const cellAt = (x: number, y: number): number => (x & 0x1f_ffff) * 0x20_0000 + (y & 0x1f_ffff);

class Grid<T> {
  readonly #cells = new Map<number, T[]>();
  readonly #size: Mm;

  constructor(size: Mm) {
    this.#size = size;
  }

  add({ x, y }: SheetPoint, item: T): void {
    const key = cellAt(Math.floor(x / this.#size), Math.floor(y / this.#size));
    const cell = this.#cells.get(key);
    if (cell === undefined) this.#cells.set(key, [item]);
    else if (cell.length < CROWD && cell.at(-1) !== item) cell.push(item);
  }

  around({ x, y }: SheetPoint, visit: (item: T) => void): void {
    const [column, row] = [Math.floor(x / this.#size), Math.floor(y / this.#size)];
    for (let dx = -1; dx <= 1; dx += 1)
      for (let dy = -1; dy <= 1; dy += 1)
        for (const item of this.#cells.get(cellAt(column + dx, row + dy)) ?? []) visit(item);
  }
}

/** Sets that grow together; the smaller is told its new name. */
class Sets {
  readonly #of: number[];
  readonly #members: number[][];

  constructor(count: number) {
    this.#of = Array.from({ length: count }, (_, at) => at);
    this.#members = this.#of.map((at) => [at]);
  }

  of(one: number): number {
    return this.#of[one] ?? one;
  }

  join(one: number, other: number): void {
    const [p, q] = [this.of(one), this.of(other)];
    if (p === q) return;
    const [small, large] = (this.#members[p]?.length ?? 0) < (this.#members[q]?.length ?? 0) ? [p, q] : [q, p];
    for (const member of this.#members[small] ?? []) {
      this.#of[member] = large;
      this.#members[large]?.push(member);
    }
    this.#members[small] = [];
  }
}

interface Ends {
  readonly stroke: Stroke;
  readonly isOwn: boolean;
  fromNode: number;
  toNode: number;
}

interface Cut {
  readonly at: number;
  readonly node: number;
}

/** How long the stretches are that lines are found by, mm; longer where there would be more of them than so many. */
const FOUND_BY: Mm = 8;
const MOST_STRETCHES = 200_000;

interface Spot {
  readonly line: number;
  readonly edge: number;
}

/** Places along the lines, so that the line nearest to a place is found without asking them all. */
function lineGrid(lines: readonly Ends[]): Grid<Spot> {
  const whole = lines.reduce((sum, { stroke }) => sum + stroke.length, 0);
  const foundBy = Math.max(FOUND_BY, (2 * whole) / MOST_STRETCHES);
  const grid = new Grid<Spot>(foundBy);
  lines.forEach(({ stroke }, line) => {
    stroke.edges.forEach((edge, edgeAt) => {
      const spot = { line, edge: edgeAt };
      const points = edgeFlatten(edge, JOINED_EXACTLY * 50);
      points.forEach((point, at) => {
        const before = points[at - 1];
        // Of a beginning the first step is near enough.
        if (before === undefined) return;
        const steps = Math.ceil(distance(before, point) / (foundBy / 2));
        for (let step = 1; step <= steps; step += 1) grid.add(between(before, point, step / steps), spot);
      });
    });
  });
  return grid;
}

/**
 * The net of lines, those of a size and those it shares with others.
 *
 * Ends at one place are joined; then ends that nothing meets, each with the nearest other that nothing meets, within the
 * tolerance, both moved to the middle of the gap; then what still ends in nothing to the nearest line within the tolerance,
 * which is cut there. So the many short stretches of a flattened curve are never joined across one another.
 */
export function netOf(own: readonly Stroke[], shared: readonly Stroke[], within: Mm): Net {
  const lines: Ends[] = [
    ...own.map((stroke) => ({ stroke, isOwn: true, fromNode: -1, toNode: -1 })),
    ...shared.map((stroke) => ({ stroke, isOwn: false, fromNode: -1, toNode: -1 })),
  ];
  const places: SheetPoint[] = [];
  const gaps: Mm[] = [];
  const degree: number[] = [];
  const leaders = new Grid<number>(JOINED_EXACTLY);
  const nodeAt = (point: SheetPoint): number => {
    let found = -1;
    let nearest = JOINED_EXACTLY;
    leaders.around(point, (node) => {
      const off = distance(places[node] ?? point, point);
      if (off <= nearest) [found, nearest] = [node, off];
    });
    if (found < 0) {
      found = places.push(point) - 1;
      gaps.push(0);
      degree.push(0);
      leaders.add(point, found);
    }
    degree[found] = (degree[found] ?? 0) + 1;
    return found;
  };
  for (const line of lines) {
    line.fromNode = nodeAt(line.stroke.a);
    line.toNode = nodeAt(line.stroke.b);
  }

  // Which chain a line is part of, and how long that is: a short one is not closed by its own two ends.
  const chains = new Sets(lines.length);
  const chainLength = new Map<number, Mm>(lines.map(({ stroke }, at) => [at, stroke.length]));
  const linesAt = new Map<number, number[]>();
  lines.forEach((line, at) => {
    for (const node of [line.fromNode, line.toNode]) {
      const found = linesAt.get(node);
      if (found === undefined) linesAt.set(node, [at]);
      else found.push(at);
    }
  });
  const joinChains = (one: number, other: number): void => {
    const [p, q] = [chains.of(one), chains.of(other)];
    if (p === q) return;
    const sum = (chainLength.get(p) ?? 0) + (chainLength.get(q) ?? 0);
    chains.join(p, q);
    chainLength.set(chains.of(p), sum);
  };
  for (const [one, other] of linesAt.values()) if (one !== undefined && other !== undefined) joinChains(one, other);

  const cuts = new Map<number, Cut[]>();
  const merged = places.map((_, at) => at);
  const isFree = (node: number): boolean => degree[node] === 1 && merged[node] === node;
  const grid = lineGrid(lines);

  /** Free ends set on the nearest line. */
  const meetLines = (reach: Mm): void => {
    for (const [node, [ending]] of linesAt) {
      const place = places[node];
      if (!isFree(node) || place === undefined || ending === undefined) continue;
      // What is shared may go on past a size's end: it is not drawn to it.
      if (reach > JOINED_EXACTLY && lines[ending]?.isOwn !== true) continue;
      const near: { readonly line: number; readonly at: number; readonly point: SheetPoint; readonly off: Mm }[] = [];
      grid.around(place, ({ line, edge: edgeAt }) => {
        const edge = lines[line]?.stroke.edges[edgeAt];
        if (line === ending || edge === undefined) return;
        const { t, point, distance: off } = edgeNearest(edge, place);
        if (off <= reach) near.push({ line, at: edgeAt + t, point, off });
      });
      const [first] = near;
      if (first === undefined) continue;
      const { line, at, point, off } = near.reduce((one, other) => (other.off < one.off ? other : one), first);
      const ends = lines[line];
      if (ends === undefined) continue;
      const atEnd =
        distance(point, ends.stroke.a) <= JOINED_EXACTLY
          ? ends.fromNode
          : distance(point, ends.stroke.b) <= JOINED_EXACTLY
            ? ends.toNode
            : null;
      gaps[node] = off;
      degree[node] = 2;
      if (atEnd === null) {
        places[node] = point;
        const known = cuts.get(line);
        if (known === undefined) cuts.set(line, [{ at, node }]);
        else known.push({ at, node });
      } else {
        const into = merged[atEnd] ?? atEnd;
        merged[node] = into;
        degree[into] = (degree[into] ?? 0) + 1;
        gaps[into] = Math.max(gaps[into] ?? 0, off);
      }
    }
  };

  /** Free ends joined with one another. */
  const joinGaps = (): void => {
    const free = new Grid<number>(within);
    const all = [...linesAt.keys()].filter((node) => isFree(node));
    for (const node of all) free.add(places[node] ?? sheetPoint(0, 0), node);
    const pairs: { readonly one: number; readonly other: number; readonly gap: Mm }[] = [];
    for (const one of all) {
      const place = places[one];
      if (place === undefined) continue;
      const near: { readonly other: number; readonly gap: Mm }[] = [];
      free.around(place, (other) => {
        if (other === one) return;
        const gap = distance(place, places[other] ?? place);
        if (gap <= within) near.push({ other, gap });
      });
      for (const { other, gap } of near.toSorted((p, q) => p.gap - q.gap).slice(0, 6)) pairs.push({ one, other, gap });
    }
    for (const { one, other, gap } of pairs.toSorted((p, q) => p.gap - q.gap)) {
      if (!isFree(one) || !isFree(other)) continue;
      const [[p], [q]] = [linesAt.get(one) ?? [], linesAt.get(other) ?? []];
      if (p === undefined || q === undefined) continue;
      if (chains.of(p) === chains.of(q) && (chainLength.get(chains.of(p)) ?? 0) < 8 * gap) continue;
      const [a, b] = [places[one], places[other]];
      if (a === undefined || b === undefined) continue;
      places[one] = midpoint(a, b);
      merged[other] = one;
      degree[one] = 2;
      gaps[one] = gap;
      joinChains(p, q);
    }
  };

  meetLines(JOINED_EXACTLY);
  joinGaps();
  meetLines(within);

  // One step: what something was merged into is free no more, so it is merged into nothing itself.
  const lastOf = (node: number): number => merged[node] ?? node;
  const parts: Part[] = [];
  lines.forEach((line, lineAt) => {
    const whole = line.stroke.edges.length;
    const stations: readonly Cut[] = [
      { at: 0, node: line.fromNode },
      ...(cuts.get(lineAt) ?? []).toSorted((one, other) => one.at - other.at),
      { at: whole, node: line.toNode },
    ];
    stations.forEach((station, at) => {
      const next = stations[at + 1];
      if (next === undefined || next.at <= station.at) return;
      const points = pointsAlong(slice(line.stroke, station.at, next.at));
      const length = lengthOf(points);
      const [fromNode, toNode] = [lastOf(station.node), lastOf(next.node)];
      if (length === 0 || (fromNode === toNode && length <= JOINED_EXACTLY)) return;
      parts.push({
        id: parts.length,
        stroke: line.stroke,
        isOwn: line.isOwn,
        from: station.at,
        to: next.at,
        fromNode,
        toNode,
        points,
        length,
      });
    });
  });
  return { places, gaps, parts };
}

export const lengthOf = (points: readonly SheetPoint[]): Mm =>
  points.reduce((sum, point, at) => sum + distance(points[at - 1] ?? point, point), 0);

/** The stretch of a stroke between two positions. */
export function slice({ edges }: Stroke, from: number, to: number): readonly EdgeCurve<"sheet">[] {
  const cut: EdgeCurve<"sheet">[] = [];
  for (let at = Math.floor(from); at < to; at += 1) {
    const edge = edges[at];
    if (edge === undefined) continue;
    const [t0, t1] = [Math.max(0, from - at), Math.min(1, to - at)];
    if (t1 <= t0) continue;
    cut.push(t0 === 0 && t1 === 1 ? edge : edgePart(edge, t0, t1));
  }
  return cut;
}

/** Where a stretch has come a little way from one of its ends: which way it sets out. */
export function wayOut(part: Part, fromStart: boolean): SheetPoint {
  const points = fromStart ? part.points : part.points.toReversed();
  const [first] = points;
  if (first === undefined)
    return edgePointAt(part.stroke.edges[0] ?? { a: part.stroke.a, b: part.stroke.b, curve: null }, 0);
  const reach = Math.min(2, part.length / 3);
  let gone = 0;
  for (const [at, point] of points.entries()) {
    const before = points[at - 1];
    if (before === undefined) continue;
    const step = distance(before, point);
    if (gone + step >= reach) return between(before, point, step === 0 ? 1 : (reach - gone) / step);
    gone += step;
  }
  return points.at(-1) ?? first;
}
