/**
 * The curves that a line in short straight stretches stands for. The ends of the stretches lie on the curve; between them it goes
 * as the line turns there. So it can be parted anywhere, and its way is known at every place.
 */
import { cubicEdge, edgeLength, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, polar, turnBetween } from "../geometry/point";
import { invariant } from "../result";
import { FITTED_WITHIN, STRETCHES_STAND_FOR } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { isSmooth, turnAt, type Chain } from "./tracedRing";

/** Fewer stretches than this between two corners are what they look like. */
const FEWEST = 3;
/** Stretches of one curve leave it by about as much, none by many times more; what would be left by much more is straight by itself. */
const ALIKE = 1.5;
const STRAIGHT = 2.5;
/** A curve that leaves its stretch by less than this share of what fitting may is straight. */
const FLAT = FITTED_WITHIN / 50;
/** So many degrees at once where the line beside hardly bends, so many times as much as that, are a corner. */
const KINK = 1;
const KINKS = 3;

interface Meant {
  readonly edges: Chain;
  /** Furthest that they leave what is drawn, mm. */
  readonly off: Mm;
}

/** A closed line with its curves in the place of its short stretches; through the same points, as many edges, corners kept. */
export function curvesMeant(ring: Chain): Meant {
  const isCorner = cornersOf(ring);
  const start = Math.max(0, isCorner.indexOf(true));
  const turned = [...ring.slice(start), ...ring.slice(0, start)];
  const edges: EdgeCurve<"piece">[] = [];
  let off: Mm = 0;
  for (let from = 0; from < turned.length;) {
    let to = from + 1;
    while (
      to < turned.length &&
      turned[to - 1]?.curve === null &&
      turned[to]?.curve === null &&
      isCorner[(start + to) % ring.length] !== true
    )
      to += 1;
    const made = through(turned.slice(from, to));
    for (const edge of made.edges) edges.push(edge);
    off = Math.max(off, made.off);
    from = to;
  }
  return { edges: [...edges.slice(ring.length - start), ...edges.slice(0, ring.length - start)], off };
}

/** Whether the line turns in a corner where each edge begins. */
function cornersOf(ring: Chain): readonly boolean[] {
  const joints = ring.map((edge, index) => {
    const before = invariant(ring.at(index - 1), "edge");
    const turn = turnAt(before, edge);
    const isBend = before.curve === null && edge.curve === null && isSmooth(before, edge, turn);
    return {
      turn: Math.abs(turn),
      isBend,
      bend: isBend ? Math.abs(turn) / (edgeLength(before) + edgeLength(edge)) : 0,
    };
  });
  return joints.map(({ turn, isBend, bend }, index) => {
    if (!isBend) return true;
    const beside = Math.max(joints.at(index - 1)?.bend ?? 0, joints[(index + 1) % joints.length]?.bend ?? 0);
    return turn > KINK && bend > KINKS * beside;
  });
}

/** Smooth curves through the ends of stretches from one corner to the next; a curve by itself is what it is. */
function through(line: Chain): Meant {
  const count = line.length;
  if (count < FEWEST) return { edges: line, off: 0 };
  const lengths = line.map((edge) => edgeLength(edge));
  const ways = line.map(({ a, b }) => directionOf(a, b));
  const length = (index: number): Mm => invariant(lengths[index], "stretch");
  // How the line turns where each stretch but the first begins.
  const turns = ways.map((way, index) => (index === 0 ? 0 : turnBetween(invariant(ways[index - 1], "way"), way)));
  const bend = (index: number): number => (2 * invariant(turns[index], "turn")) / (length(index - 1) + length(index));
  /** How a stretch leans off the curve at its start and end: by as much as the circle through the ends of the two beside says. */
  const leans = line.map((_, index): [number, number] => [
    index === 0
      ? endLean(length(0), length(1), bend(1), bend(2))
      : (invariant(turns[index], "turn") * length(index)) / (length(index - 1) + length(index)),
    index === count - 1
      ? endLean(length(index), length(index - 1), bend(index), bend(index - 1))
      : (invariant(turns[index + 1], "turn") * length(index)) / (length(index) + length(index + 1)),
  ]);
  const bulge = (index: number): Mm => {
    const [out, into] = invariant(leans[index], "lean");
    return (length(index) * (Math.abs(out) + Math.abs(into))) / 8;
  };
  const usual = invariant(
    line.map((_, index) => bulge(index)).toSorted((p, q) => p - q)[Math.floor(count / 2)],
    "bulge",
  );
  const most = Math.max(STRETCHES_STAND_FOR, ALIKE * usual);
  const isStraight = line.map((_, index) => bulge(index) > STRAIGHT * most || bulge(index) < FLAT);
  // What is straight by itself says which way the curve beside it begins, unless that would bend it too much.
  const follow = (index: number, end: 0 | 1, turn: number): void => {
    const own = invariant(leans[index], "lean");
    const was = own[end];
    own[end] = turn;
    if (bulge(index) > STRAIGHT * most) own[end] = was;
  };
  for (let index = 1; index < count; index += 1) {
    const [before, here] = [isStraight[index - 1] === true, isStraight[index] === true];
    const turn = invariant(turns[index], "turn");
    if (before && !here) follow(index, 0, turn);
    if (here && !before) follow(index - 1, 1, turn);
  }
  for (const [index, own] of leans.entries()) {
    const less = Math.min(1, most / bulge(index));
    if (isStraight[index] !== true && less < 1) leans[index] = [own[0] * less, own[1] * less];
  }
  let off: Mm = 0;
  const edges = line.map((edge, index): EdgeCurve<"piece"> => {
    if (isStraight[index] === true) return edge;
    const [out, into] = invariant(leans[index], "lean");
    const way = invariant(ways[index], "way");
    off = Math.max(off, bulge(index));
    return curveBetween(edge, radians(way - out), radians(way + into), length(index));
  });
  return { edges, off };
}

/** As at the other end of it, and more or less by as much as that end bends more or less than the one beyond. */
function endLean(own: Mm, beside: Mm, near: number, far: number): number {
  const beyond = near + ((near - far) * own) / beside;
  const bent = near > 0 ? Math.min(Math.max(beyond, 0), 2 * near) : Math.max(Math.min(beyond, 0), 2 * near);
  return (own * (2 * bent + near)) / 6;
}

const curveBetween = ({ a, b }: EdgeCurve<"piece">, wayOut: Radians, wayIn: Radians, length: Mm): EdgeCurve<"piece"> =>
  cubicEdge({ a, c1: polar(a, wayOut, length / 3), c2: polar(b, radians(wayIn + Math.PI), length / 3), b });
