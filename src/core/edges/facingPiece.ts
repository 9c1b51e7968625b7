/** One facing: the upper edge of a half as it is sewn, and a line beside it at one depth. */
import {
  edgeFlatten,
  edgeLength,
  edgeParameterAtLength,
  edgePart,
  edgePointAt,
  edgeTangentAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { between, distance, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { segmentNearest } from "../geometry/segment";
import type { BendName, DressPiece, Edge, NamedPoint, Piece, PointName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { FACING_FOLLOWS, FACING_POINTS_APART, SAME_POINT, SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm } from "../units";
import type { WalkEdge } from "./upperWalk";

/** Which edges one facing takes. */
export type FacedEdges = "neck" | "armhole" | "both";

export interface FacingAsked {
  readonly name: DressPiece;
  readonly walk: readonly WalkEdge[];
  /** From the neck down. */
  readonly centre: readonly EdgeCurve<"piece">[];
  readonly faces: FacedEdges;
  readonly depth: Mm;
  /** How much of the shoulder and of the side it takes, from the edge that it faces. */
  readonly onShoulder: Mm;
  readonly onSide: Mm;
  readonly isOnFold: boolean;
}

/** Points of its lower line are looked for this densely along the edge, mm. */
const SAMPLE: Mm = 4;

const FACED: Readonly<Record<FacedEdges, readonly SeamName[]>> = {
  neck: ["neck"],
  armhole: ["armhole"],
  // The shoulder too: between neck and armhole nothing narrower is left of it.
  both: ["neck", "shoulder", "strap", "armhole"],
};

/** null where the edge is not there. */
export function facingPiece(asked: FacingAsked): Piece | null {
  const { name, walk, faces, isOnFold } = asked;
  const upper = upperOf(asked);
  const faced = walk.filter(({ seam }) => FACED[faces].includes(seam)).map(({ curve }) => curve);
  const [first, last] = [upper.at(0), upper.at(-1)];
  if (first === undefined || last === undefined || faced.length === 0) return null;
  const line = flat(faced);
  const depth = lengthToDepth(asked.centre, line, asked.depth);
  const down = faces === "armhole" ? [] : partDown(asked.centre, clearOfCorners([asked.centre], depth));
  const start = down.at(-1)?.b ?? first.curve.a;
  const lower = lowerLine({ ...asked, faced, line, from: last.curve.b, to: start });
  return ringOf(name, isOnFold && faces !== "armhole", [
    ...upper,
    ...lower.map((curve): Drawn => ({ curve, seam: "edge", to: null })),
    ...down.toReversed().map(({ a, b, curve }): Drawn => ({
      curve: { a: b, b: a, curve: curve === null ? null : { c1: curve.c2, c2: curve.c1 } },
      seam: "centre",
      to: null,
    })),
  ]);
}

interface Drawn {
  readonly curve: EdgeCurve<"piece">;
  readonly seam: SeamName;
  /** The corner that it ends at, where that has a name. */
  readonly to: PointName | null;
}

/** What it takes of the edge, and of shoulder and side beside it. */
function upperOf({ walk, faces, onShoulder, onSide }: FacingAsked): readonly Drawn[] {
  const of = (...seams: readonly SeamName[]): readonly Drawn[] => walk.filter(({ seam }) => seams.includes(seam));
  if (faces === "neck") return [...of("neck"), ...partOf(of("shoulder"), 0, onShoulder)];
  const side = partOf(of("side"), 0, onSide);
  if (faces === "both") return [...of("neck", "shoulder", "strap", "armhole"), ...side];
  const shoulder = of("shoulder");
  return [...partOf(shoulder, lengthOf(shoulder) - onShoulder, Infinity), ...of("armhole"), ...side];
}

const lengthOf = (edges: readonly { readonly curve: EdgeCurve<"piece"> }[]): Mm =>
  edges.reduce((sum, { curve }) => sum + edgeLength(curve), 0);

/** The part of a row of edges from one length of it to another. */
function partOf(edges: readonly Drawn[], from: Mm, to: Mm): readonly Drawn[] {
  const parts: Drawn[] = [];
  let gone: Mm = 0;
  for (const edge of edges) {
    const own = edgeLength(edge.curve);
    const [begin, end] = [Math.max(from - gone, 0), Math.min(to - gone, own)];
    if (end - begin > SAME_POINT) {
      const isWhole = end >= own;
      const [t0, t1] = [
        begin === 0 ? 0 : edgeParameterAtLength(edge.curve, begin),
        isWhole ? 1 : edgeParameterAtLength(edge.curve, end),
      ];
      parts.push({
        ...edge,
        curve: t0 === 0 && t1 === 1 ? edge.curve : edgePart(edge.curve, t0, t1),
        to: isWhole ? edge.to : null,
      });
    }
    gone += own;
  }
  return parts;
}

const partDown = (curves: readonly EdgeCurve<"piece">[], to: Mm): readonly EdgeCurve<"piece">[] =>
  partOf(
    curves.map((curve) => ({ curve, seam: "centre", to: null })),
    0,
    to,
  ).map(({ curve }) => curve);

/**
 * A length along rows of edges near to the one wanted that ends nowhere so near to a corner of one of them that an edge too short
 * to be sewn would be left.
 */
export function clearOfCorners(rows: readonly (readonly EdgeCurve<"piece">[])[], wanted: Mm): Mm {
  const corners = rows.flatMap((row) => {
    let gone: Mm = 0;
    return row.map((curve) => (gone += edgeLength(curve)));
  });
  let length = wanted;
  for (const corner of corners.toSorted((a, b) => b - a)) {
    const beyond = length - corner;
    if (beyond > SAME_POINT && beyond < SHORTEST_EDGE) length = corner;
  }
  return length;
}

type Line = readonly (readonly [PiecePoint, PiecePoint])[];

const flat = (curves: readonly EdgeCurve<"piece">[]): Line =>
  curves.flatMap((curve) => {
    const points = edgeFlatten(curve, FACING_FOLLOWS);
    return points
      .slice(1)
      .map((point, at): readonly [PiecePoint, PiecePoint] => [invariant(points[at], "point"), point]);
  });

const away = (line: Line, p: PiecePoint): Mm =>
  line.reduce((least, [a, b]) => Math.min(least, segmentNearest(a, b, p).distance), Infinity);

/** How far down the centre a place lies at a depth below the edge. */
function lengthToDepth(centre: readonly EdgeCurve<"piece">[], line: Line, depth: Mm): Mm {
  const whole = centre.reduce((sum, curve) => sum + edgeLength(curve), 0);
  const placeAt = (length: Mm): PiecePoint => {
    const part = partDown(centre, length).at(-1);
    return part === undefined ? invariant(centre[0], "centre").a : part.b;
  };
  for (let length = depth; length < whole; length += SAMPLE) {
    const short = depth - away(line, placeAt(length));
    if (short <= FACING_FOLLOWS) return length;
  }
  return Math.min(depth, whole);
}

interface LowerAsked extends FacingAsked {
  readonly faced: readonly EdgeCurve<"piece">[];
  readonly line: Line;
  readonly from: PiecePoint;
  readonly to: PiecePoint;
}

/** Beside the edge at the depth, from the outer end back to the inner one. */
function lowerLine({
  walk,
  centre,
  faced,
  line,
  depth,
  from,
  to,
  isOnFold,
  faces,
}: LowerAsked): readonly EdgeCurve<"piece">[] {
  const cloth = clothOf(walk, centre);
  const beside = offsetPoints(faced, depth).filter((p) => away(line, p) > depth - FACING_FOLLOWS && isWithin(cloth, p));
  const points: PiecePoint[] = [from];
  for (const p of beside.toReversed()) {
    if (
      distance(p, points.at(-1) ?? from) >= FACING_POINTS_APART &&
      distance(p, to) >= FACING_POINTS_APART &&
      isOnward(points, p, to)
    )
      points.push(p);
  }
  points.push(to);
  return smoothThrough(points, isOnFold && faces !== "armhole");
}

/** Nothing goes back on itself. */
function isOnward(points: readonly PiecePoint[], p: PiecePoint, to: PiecePoint): boolean {
  const [last, before] = [points.at(-1), points.at(-2)];
  if (last === undefined || before === undefined) return true;
  const [ux, uy] = [last.x - before.x, last.y - before.y];
  return ux * (p.x - last.x) + uy * (p.y - last.y) > 0 || distance(p, to) < distance(last, to);
}

function offsetPoints(faced: readonly EdgeCurve<"piece">[], depth: Mm): readonly PiecePoint[] {
  return faced.flatMap((curve, index) => {
    const steps = Math.max(2, Math.ceil(edgeLength(curve) / SAMPLE));
    const inward = (t: number) => radians(edgeTangentAt(curve, t) + Math.PI / 2);
    const along = Array.from({ length: steps + 1 }, (_, step) =>
      polar(edgePointAt(curve, step / steps), inward(step / steps), depth),
    );
    const next = faced[index + 1];
    if (next === undefined || distance(next.a, curve.b) > SAME_POINT) return along;
    // Round a corner that the cloth goes about, the line keeps its distance.
    const turn = turnBetween(edgeTangentAt(curve, 1), edgeTangentAt(next, 0));
    const arc = Math.max(0, Math.ceil((Math.abs(turn) * depth) / SAMPLE) - 1);
    const about = Array.from({ length: arc }, (_, step) =>
      polar(curve.b, radians(inward(1) + (turn * (step + 1)) / (arc + 1)), depth),
    );
    return turn < 0 ? [...along, ...about] : along;
  });
}

/** The cloth beside the walk, roughly: straight from the end of the side to that of the centre. */
function clothOf(walk: readonly WalkEdge[], centre: readonly EdgeCurve<"piece">[]): readonly PiecePoint[] {
  const points = walk.flatMap(({ curve }) => edgeFlatten(curve, FACING_FOLLOWS));
  const foot = centre.at(-1)?.b;
  return foot === undefined ? points : [...points, foot];
}

/** @source a ray from a point crosses a ring that holds it an odd number of times */
function isWithin(ring: readonly PiecePoint[], { x, y }: PiecePoint): boolean {
  let within = false;
  ring.forEach((a, at) => {
    const b = ring[(at + 1) % ring.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)) within = !within;
  });
  return within;
}

/**
 * A smooth line through points.
 *
 * @param isSquareAtEnd it comes in square to the upright centre line, so that it runs smoothly over the fold
 * @source tangents by the neighbours on either side (Catmull and Rom)
 */
function smoothThrough(points: readonly PiecePoint[], isSquareAtEnd: boolean): readonly EdgeCurve<"piece">[] {
  const pointAt = (at: number): PiecePoint => invariant(points[Math.min(Math.max(at, 0), points.length - 1)], "point");
  const tangentAt = (at: number): { readonly x: Mm; readonly y: Mm } => {
    const [before, after] = [pointAt(at - 1), pointAt(at + 1)];
    const own = { x: after.x - before.x, y: after.y - before.y };
    const length = Math.hypot(own.x, own.y) || 1;
    return isSquareAtEnd && at === points.length - 1 ? { x: -1, y: 0 } : { x: own.x / length, y: own.y / length };
  };
  return points.slice(1).map((b, at) => {
    const a = pointAt(at);
    const third = distance(a, b) / 3;
    const [out, into] = [tangentAt(at), tangentAt(at + 1)];
    return {
      a,
      b,
      curve:
        points.length === 2 && !isSquareAtEnd
          ? { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) }
          : {
              c1: piecePoint(a.x + third * out.x, a.y + third * out.y),
              c2: piecePoint(b.x - third * into.x, b.y - third * into.y),
            },
    };
  });
}

/** The closed ring, its corners named as they were where they are the same; the ends of its lower line are `facing1` and on. */
function ringOf(name: DressPiece, centreOnFold: boolean, drawn: readonly Drawn[]): Piece {
  const kept = drawn.filter(({ curve }) => distance(curve.a, curve.b) > SAME_POINT);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  const names: PointName[] = [];
  let bends = 0;
  let corners = 0;
  for (const [at, { curve, seam, to }] of kept.entries()) {
    const isCorner = kept[(at + 1) % kept.length]?.seam !== seam;
    const own = to !== null && points[to] === undefined && !to.startsWith("bend") ? to : null;
    let point: PointName;
    if (own !== null) point = own;
    else if (at === kept.length - 1 && points.centreNeck === undefined && seam === "centre") point = "centreNeck";
    else if (isCorner) {
      corners += 1;
      point = cornerName(corners);
    } else {
      point = bendName(bends);
      bends += 1;
    }
    points[point] = { at: curve.b, level: seam === "side" ? "underarm" : seam === "armhole" ? "shoulder" : "neck" };
    names.push(point);
  }
  const edges = kept.map(({ curve, seam }, at): Edge => {
    const from = invariant(names.at(at - 1), "corner");
    const to = invariant(names[at], "corner");
    return { from, to, seam, curve: curve.curve, mouthOf: null };
  });
  return { name, points, edges, darts: [], levelLines: [], centreOnFold };
}

const CORNERS = ["facing1", "facing2", "facing3", "facing4", "facing5", "facing6", "facing7", "facing8"] as const;
const cornerName = (count: number): PointName => invariant(CORNERS[count - 1], "corner of a facing");

type Digit = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;
const digit = (value: number): Digit => invariant(DIGITS[value % 10], "digit");
const DIGITS: readonly Digit[] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
const bendName = (count: number): BendName => `bend0${digit(Math.floor(count / 10))}${digit(count)}`;
