/** Closed outlines walked over the lines of a size and those that it shares with others. */
import { edgeReverse, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, distance, shift, turnBetween, type SheetPoint } from "../geometry/point";
import { signedArea } from "../geometry/outline";
import { JOINED_EXACTLY, STRAIGHT_ON_DEGREES } from "../tolerance";
import { degreesFrom, type Mm, type Radians } from "../units";
import { lengthOf, netOf, slice, wayOut, type Net, type Part } from "./lineNet";
import type { Stroke } from "./strokes";

/** A closed walk. */
export interface Loop {
  readonly edges: readonly EdgeCurve<"sheet">[];
  readonly strokes: readonly Stroke[];
  readonly widestGap: Mm;
}

/** A walk that comes back to nowhere. */
export interface Chain {
  readonly edges: readonly EdgeCurve<"sheet">[];
  readonly strokes: readonly Stroke[];
  /** Whether each of its ends lies on other lines. */
  readonly isHeld: boolean;
}

export interface Joined {
  readonly loops: readonly Loop[];
  readonly chains: readonly Chain[];
}

/** A part gone along one way or the other. */
interface Step {
  readonly part: Part;
  readonly forward: boolean;
}

const startOf = ({ part, forward }: Step): number => (forward ? part.fromNode : part.toNode);
const endOf = ({ part, forward }: Step): number => (forward ? part.toNode : part.fromNode);

/** What of the lines beside a loop may lie outside of it, as a share of its length. */
const BESIDE = 0.1;

/**
 * Outlines of the lines of one size.
 *
 * @param own    its own lines, in mm
 * @param shared lines that it may go along where its own are missing
 * @param within ends as near as this are joined, mm
 */
export function joinLines(own: readonly Stroke[], shared: readonly Stroke[], within: Mm): Joined {
  const closed = own.filter((stroke) => stroke.closed);
  const open = own.filter((stroke) => !stroke.closed);
  const alone = walk(open, [], within);
  const used = new Set(alone.loops.flatMap(({ strokes }) => strokes));
  const rest = open.filter((stroke) => !used.has(stroke));
  const withShared = shared.length === 0 || rest.length === 0 ? null : walk(rest, shared, within);
  return {
    loops: [
      ...closed.map((stroke) => ({ edges: stroke.edges, strokes: [stroke], widestGap: 0 })),
      ...alone.loops,
      ...(withShared?.loops ?? []),
    ],
    chains: withShared?.chains ?? alone.chains,
  };
}

function walk(own: readonly Stroke[], shared: readonly Stroke[], within: Mm): Joined {
  const net = crossingsApart(netOf(own, shared, within));
  const alive = new Set(net.parts);
  const at = partsAt(net.parts);
  for (const bridge of bridgesOf(at, net.parts.length)) alive.delete(bridge);

  const taken = new Set<Part>();
  const loops: Loop[] = [];
  const wholeOf = new Map<Part | undefined, readonly Part[]>();
  for (const parts of groupsOf(net.parts, at)) for (const part of parts) wholeOf.set(part, parts);
  for (const group of groupsOf([...alive], partsAt([...alive]))) {
    if (!group.some(({ isOwn }) => isOwn)) continue;
    const found = outerLoops(group, net).filter((steps) => steps.some(({ part }) => part.isOwn));
    if (found.length === 0) continue;
    const beside = wholeOf.get(group[0]) ?? [];
    if (!holdsAll(found, beside)) continue;
    for (const steps of found) {
      if (Math.abs(areaOf(steps)) / 2 <= lengthOfSteps(steps) * within) continue;
      for (const { part } of steps) taken.add(part);
      loops.push(loopOf(steps, net));
    }
  }
  const left = net.parts.filter((part) => part.isOwn && !taken.has(part));
  return { loops, chains: chainsOf(left, net, new Set(net.parts)) };
}

function partsAt(parts: readonly Part[]): Map<number, Part[]> {
  const at = new Map<number, Part[]>();
  for (const part of parts)
    for (const node of part.fromNode === part.toNode ? [part.fromNode] : [part.fromNode, part.toNode]) {
      const found = at.get(node);
      if (found === undefined) at.set(node, [part]);
      else found.push(part);
    }
  return at;
}

/** Four lines that cross straight through one another at one place are parted there: each goes on. */
function crossingsApart(net: Net): Net {
  const at = partsAt(net.parts.filter(({ fromNode, toNode }) => fromNode !== toNode));
  const places = [...net.places];
  const gaps = [...net.gaps];
  const moved = new Map<Part, Part>();
  for (const [node, parts] of at) {
    const [first, ...others] = parts;
    const place = net.places[node];
    if (parts.length !== 4 || first === undefined || place === undefined || !parts.every(({ isOwn }) => isOwn))
      continue;
    const wayOf = (part: Part): Radians => directionOf(place, wayOut(part, part.fromNode === node));
    const isStraight = (one: Part, other: Part): boolean =>
      Math.PI - Math.abs(turnBetween(wayOf(one), wayOf(other))) < (STRAIGHT_ON_DEGREES * Math.PI) / 180;
    const on = others.find((part) => isStraight(first, part));
    const [one, other] = others.filter((part) => part !== on);
    if (on === undefined || one === undefined || other === undefined || !isStraight(one, other)) continue;
    const apart = places.push(place) - 1;
    gaps.push(gaps[node] ?? 0);
    for (const part of [one, other]) {
      const now = moved.get(part) ?? part;
      moved.set(part, now.fromNode === node ? { ...now, fromNode: apart } : { ...now, toNode: apart });
    }
  }
  return { places, gaps, parts: net.parts.map((part) => moved.get(part) ?? part) };
}

/**
 * Parts that join what nothing else joins, and those that end in nothing: no closed walk goes along them.
 *
 * @source Tarjan 1974, without recursion
 */
function bridgesOf(at: ReadonlyMap<number, readonly Part[]>, count: number): readonly Part[] {
  const order = new Map<number, number>();
  const low = new Map<number, number>();
  const bridges: Part[] = [];
  for (const root of at.keys()) {
    if (order.has(root)) continue;
    const path: { node: number; by: Part | null; next: number }[] = [{ node: root, by: null, next: 0 }];
    order.set(root, order.size);
    low.set(root, order.size - 1);
    // Twice every part at the most, once each way, and once more to leave each place.
    const most = 4 * count + 2 * at.size + 2;
    for (let round = 0; round < most; round += 1) {
      const top = path.at(-1);
      if (top === undefined) break;
      const part = at.get(top.node)?.[top.next];
      if (part === undefined) {
        path.pop();
        const below = path.at(-1);
        if (below === undefined || top.by === null) continue;
        const reached = low.get(top.node) ?? 0;
        low.set(below.node, Math.min(low.get(below.node) ?? 0, reached));
        if (reached > (order.get(below.node) ?? 0)) bridges.push(top.by);
        continue;
      }
      top.next += 1;
      if (part === top.by || part.fromNode === part.toNode) continue;
      const other = part.fromNode === top.node ? part.toNode : part.fromNode;
      const known = order.get(other);
      if (known === undefined) {
        order.set(other, order.size);
        low.set(other, order.size - 1);
        path.push({ node: other, by: part, next: 0 });
      } else low.set(top.node, Math.min(low.get(top.node) ?? 0, known));
    }
  }
  return bridges;
}

/** Parts that hang together. */
function groupsOf(parts: readonly Part[], at: ReadonlyMap<number, readonly Part[]>): readonly (readonly Part[])[] {
  const seen = new Set<Part>();
  const groups: Part[][] = [];
  for (const start of parts) {
    if (seen.has(start)) continue;
    seen.add(start);
    const group = [start];
    for (const part of group)
      for (const node of [part.fromNode, part.toNode])
        for (const next of at.get(node) ?? [])
          if (!seen.has(next)) {
            seen.add(next);
            group.push(next);
          }
    groups.push(group);
  }
  return groups;
}

/** The walks round the outside of parts that hang together; one that passes a place twice is parted there. */
function outerLoops(group: readonly Part[], net: Net): readonly (readonly Step[])[] {
  const outgoing = new Map<number, { readonly step: Step; readonly way: number }[]>();
  const steps = group.flatMap((part): readonly Step[] => [
    { part, forward: true },
    { part, forward: false },
  ]);
  for (const step of steps) {
    const node = startOf(step);
    const place = net.places[node] ?? step.part.stroke.a;
    const way = directionOf(place, wayOut(step.part, step.forward));
    const found = outgoing.get(node);
    if (found === undefined) outgoing.set(node, [{ step, way }]);
    else found.push({ step, way });
  }
  for (const list of outgoing.values()) list.sort((one, other) => one.way - other.way);

  const keyOf = ({ part, forward }: Step): number => part.id * 2 + (forward ? 1 : 0);
  const nextOf = (step: Step): Step | undefined => {
    const list = outgoing.get(endOf(step)) ?? [];
    const back = list.findIndex((one) => one.step.part === step.part && one.step.forward !== step.forward);
    return list[(back + 1) % list.length]?.step;
  };
  const seen = new Set<number>();
  let outer: readonly Step[] = [];
  let most = 0;
  for (const start of steps) {
    if (seen.has(keyOf(start))) continue;
    const face: Step[] = [];
    let step: Step | undefined = start;
    for (let round = 0; round < steps.length && step !== undefined && !seen.has(keyOf(step)); round += 1) {
      seen.add(keyOf(step));
      face.push(step);
      step = nextOf(step);
    }
    // The walk round the outside is the only one that goes round the other way; it also encloses most.
    const area = Math.abs(areaOf(face));
    if (area > most) [outer, most] = [face, area];
  }
  return simpleLoops(outer);
}

const pointsOf = ({ part, forward }: Step): readonly SheetPoint[] => (forward ? part.points : part.points.toReversed());

const lengthOfSteps = (steps: readonly Step[]): Mm => steps.reduce((sum, { part }) => sum + part.length, 0);

/** Twice what a walk encloses, with its sign. */
function areaOf(steps: readonly Step[]): number {
  let area = 0;
  for (const step of steps) {
    const points = pointsOf(step);
    for (const [at, point] of points.entries()) {
      const before = points[at - 1];
      if (before !== undefined) area += before.x * point.y - before.y * point.x;
    }
  }
  return area;
}

function simpleLoops(steps: readonly Step[]): readonly (readonly Step[])[] {
  const loops: Step[][] = [];
  let path: Step[] = [];
  let position = new Map<number, number>();
  for (const step of steps) {
    position.set(startOf(step), path.length);
    path.push(step);
    const from = position.get(endOf(step));
    if (from === undefined) continue;
    loops.push(path.slice(from));
    path = path.slice(0, from);
    position = new Map(path.map((one, at) => [startOf(one), at]));
  }
  return loops;
}

/** Whether what hangs on the loops lies within them: else they are a dart or a mark on an outline that is broken. */
function holdsAll(loops: readonly (readonly Step[])[], beside: readonly Part[]): boolean {
  const taken = new Set(loops.flatMap((steps) => steps.map(({ part }) => part)));
  const points = [...taken].flatMap((part) => part.points);
  const [x0, x1] = rangeOf(points.map(({ x }) => x));
  const [y0, y1] = rangeOf(points.map(({ y }) => y));
  const length = [...taken].reduce((sum, part) => sum + part.length, 0);
  const isOut = ({ x, y }: SheetPoint): boolean => x < x0 - 1 || x > x1 + 1 || y < y0 - 1 || y > y1 + 1;
  const out = beside
    .filter((part) => part.isOwn && !taken.has(part))
    .reduce((sum, part) => sum + lengthOf(part.points.filter((point) => isOut(point))), 0);
  return out <= BESIDE * length;
}

function rangeOf(values: readonly number[]): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

/** The edges of a walk: stretches of one stroke that go on in one another are one again, ends meet at the places. */
function edgesOf(steps: readonly Step[], net: Net, isClosed: boolean): readonly EdgeCurve<"sheet">[] {
  const runs: { stroke: Stroke; from: number; to: number; forward: boolean; start: number; end: number }[] = [];
  const append = (run: (typeof runs)[number]): void => {
    const last = runs.at(-1);
    const goesOn =
      last !== undefined &&
      last.stroke === run.stroke &&
      last.forward === run.forward &&
      (run.forward ? last.to === run.from : last.from === run.to);
    if (!goesOn) runs.push(run);
    else {
      last.from = Math.min(last.from, run.from);
      last.to = Math.max(last.to, run.to);
      last.end = run.end;
    }
  };
  for (const step of turned(steps, isClosed))
    append({
      stroke: step.part.stroke,
      from: step.part.from,
      to: step.part.to,
      forward: step.forward,
      start: startOf(step),
      end: endOf(step),
    });
  return runs.flatMap(({ stroke, from, to, forward, start, end }) => {
    const cut = slice(stroke, from, to);
    const edges = forward ? cut : cut.toReversed().map((edge) => edgeReverse(edge));
    const [first, last] = [net.places[start], net.places[end]];
    return edges.map((edge, at) => {
      const begun = at === 0 && first !== undefined ? beginAt(edge, first) : edge;
      return at === edges.length - 1 && last !== undefined ? edgeReverse(beginAt(edgeReverse(begun), last)) : begun;
    });
  });
}

/** A closed walk begun where one stroke ends and another begins, so that none is broken at the seam of the walk. */
function turned(steps: readonly Step[], isClosed: boolean): readonly Step[] {
  if (!isClosed) return steps;
  const from = Math.max(
    0,
    steps.findIndex(({ part }, at) => part.stroke !== steps.at(at - 1)?.part.stroke),
  );
  return [...steps.slice(from), ...steps.slice(0, from)];
}

/** The edge begun at a place near its own beginning; the way it sets out is kept. */
function beginAt(edge: EdgeCurve<"sheet">, place: SheetPoint): EdgeCurve<"sheet"> {
  const { a, b, curve } = edge;
  return {
    a: place,
    b,
    curve: curve === null ? null : { c1: shift(curve.c1, place.x - a.x, place.y - a.y), c2: curve.c2 },
  };
}

const strokesOfSteps = (steps: readonly Step[]): readonly Stroke[] => [
  ...new Set(steps.map(({ part }) => part.stroke)),
];

function loopOf(steps: readonly Step[], net: Net): Loop {
  return {
    edges: edgesOf(steps, net, true),
    strokes: strokesOfSteps(steps),
    widestGap: Math.max(0, ...steps.map((step) => net.gaps[startOf(step)] ?? 0)),
  };
}

/** What is left, strung together: straight on where several meet. */
function chainsOf(left: readonly Part[], net: Net, all: ReadonlySet<Part>): readonly Chain[] {
  const at = partsAt(left);
  const everyAt = partsAt([...all]);
  const after = new Map<number, ReadonlyMap<Part, Part>>();
  for (const [node, parts] of at) {
    const place = net.places[node];
    if (place === undefined || parts.length < 2) continue;
    const ways = parts
      .slice(0, 12)
      .map((part) => ({ part, way: directionOf(place, wayOut(part, part.fromNode === node)) }));
    const pairs = ways
      .flatMap((one, i) =>
        ways.slice(i + 1).map((other) => ({
          one: one.part,
          other: other.part,
          turn: 180 - Math.abs(degreesFrom(turnBetween(one.way, other.way))),
        })),
      )
      .toSorted((p, q) => p.turn - q.turn);
    const next = new Map<Part, Part>();
    for (const { one, other } of pairs)
      if (!next.has(one) && !next.has(other)) {
        next.set(one, other);
        next.set(other, one);
      }
    after.set(node, next);
  }
  const seen = new Set<Part>();
  const follow = (from: Step): readonly Step[] => {
    const steps: Step[] = [];
    let step = from;
    for (let round = 0; round <= left.length; round += 1) {
      const node = endOf(step);
      const next = after.get(node)?.get(step.part);
      if (next === undefined || seen.has(next)) break;
      seen.add(next);
      step = { part: next, forward: next.fromNode === node };
      steps.push(step);
    }
    return steps;
  };
  return left.flatMap((part): readonly Chain[] => {
    if (seen.has(part)) return [];
    seen.add(part);
    const ahead = follow({ part, forward: true });
    const behind = follow({ part, forward: false });
    const steps = [
      ...behind.toReversed().map((step) => ({ part: step.part, forward: !step.forward })),
      { part, forward: true },
      ...ahead,
    ];
    const [first, last] = [steps[0], steps.at(-1)];
    if (first === undefined || last === undefined) return [];
    const isHeld = [startOf(first), endOf(last)].every((node) => (everyAt.get(node)?.length ?? 0) > 1);
    return [{ edges: edgesOf(steps, net, false), strokes: strokesOfSteps(steps), isHeld }];
  });
}

const isOne = (p: SheetPoint, q: SheetPoint): boolean => distance(p, q) <= 2 * JOINED_EXACTLY;

function isSameLine(one: Stroke, other: Stroke): boolean {
  if (
    one.look !== other.look ||
    one.closed !== other.closed ||
    Math.abs(one.length - other.length) > 4 * JOINED_EXACTLY
  )
    return false;
  if (!isOne(one.box.min, other.box.min) || !isOne(one.box.max, other.box.max)) return false;
  const [area, otherArea] = [signedArea(one.edges), signedArea(other.edges)];
  const isAlike = (p: number, q: number): boolean => Math.abs(p - q) <= JOINED_EXACTLY * one.length;
  if (one.closed) return isAlike(Math.abs(area), Math.abs(otherArea));
  // With its sign: two ways between the same corners of a rectangle may differ in nothing else.
  return (
    (isOne(one.a, other.a) && isOne(one.b, other.b) && isAlike(area, otherArea)) ||
    (isOne(one.a, other.b) && isOne(one.b, other.a) && isAlike(area, -otherArea))
  );
}

/** Lines that lie on others of the same look and form left out; of two looks each keeps its own. */
export function withoutDoubles(strokes: readonly Stroke[]): readonly Stroke[] {
  const kept = new Map<string, Stroke[]>();
  return strokes.filter((stroke) => {
    const cell = Math.round(stroke.length);
    const { x, y } = stroke.box.min;
    for (let d = -1; d <= 1; d += 1)
      for (let dx = -1; dx <= 1; dx += 1)
        for (let dy = -1; dy <= 1; dy += 1) {
          const found = kept.get(`${cell + d} ${Math.round(x) + dx} ${Math.round(y) + dy}`) ?? [];
          if (found.slice(0, 64).some((other) => isSameLine(stroke, other))) return false;
        }
    const key = `${cell} ${Math.round(x)} ${Math.round(y)}`;
    const known = kept.get(key);
    if (known === undefined) kept.set(key, [stroke]);
    else known.push(stroke);
    return true;
  });
}

/** Turned so that it goes by the clock. */
export function byTheClock(edges: readonly EdgeCurve<"sheet">[]): readonly EdgeCurve<"sheet">[] {
  return signedArea(edges) < 0 ? edges.toReversed().map((edge) => edgeReverse(edge)) : edges;
}
