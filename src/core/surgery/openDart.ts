/**
 * The parts of dart surgery that its kinds share: a dart drawn to the point that it serves, ended short of it again, and
 * the seam joined up where a dart has gone.
 */
import { endDart } from "../dart/dartEnd";
import { mouthPointAt } from "../dart/dartFrame";
import { moveMouthEnd } from "../dart/mouthEnd";
import { dartCorners } from "../dart/moveMouth";
import { trueLegs } from "../dart/trueLegs";
import { trueSeamAtDart } from "../dart/trueSeam";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import { edgeLength, edgeNearest, edgePointAt, edgeTangentAt, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { comeNear } from "../geometry/iterate";
import { isInOutline } from "../geometry/outline";
import { between, directionOf, distance, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { partsOfDart } from "../pattern/dartNames";
import {
  dartOf,
  pointNames,
  pointOf,
  type Dart,
  type DartHome,
  type DartName,
  type Edge,
  type Piece,
  type PointName,
} from "../pattern/piece";
import { invariant } from "../result";
import { AT_SEAM_CORNER, ONE_CURVE, SAME_POINT, STRAIGHT_SEAM, TRUING_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { partAt, type Part } from "./cutAndMove";
import { controlsOf, fitHandles } from "./fitHandles";
import { curveOf, edgeFrom, edgeTo, insertPoint, mouthMiddle, pointsBetween } from "../pattern/ring";
import { smoothStretchAt, stretchLength } from "../pattern/seamStretch";
import { edgeTurned } from "./straightThrough";

/** The two ends of a dart's mouth as they are met going round the outline. */
interface Mouth {
  readonly first: PointName;
  readonly second: PointName;
}

export function mouthOf(piece: Piece, name: DartName): Mouth {
  const edge = invariant(
    piece.edges.find((e) => e.mouthOf === name),
    `${piece.name}: mouth of ${name}`,
  );
  return { first: edge.from, second: edge.to };
}

/** Names of the mouth ends of a new dart: at the waist and up the centre line the outer one is met first. */
function mouthNames(name: DartName): Mouth {
  const isOuterFirst = (["waist", "underBust", "centre"] satisfies DartHome[] as readonly DartHome[]).includes(
    partsOfDart(name).home,
  );
  return isOuterFirst
    ? { first: `${name}Outer`, second: `${name}Inner` }
    : { first: `${name}Inner`, second: `${name}Outer` };
}

/** The point that a dart serves: the bust point that it aims at, or where it ends itself. */
export function pointServed(piece: Piece, { aimsAt, apex }: Dart): PiecePoint {
  const aim = aimsAt === null ? undefined : piece.points[aimsAt];
  return aim?.at ?? pointOf(piece, apex);
}

/** The angle at a point between lines to the two mouth ends, going round: positive where the dart stands open. */
export function openingAt(piece: Piece, name: DartName, point: PiecePoint): Radians {
  const { first, second } = mouthOf(piece, name);
  return turnBetween(directionOf(point, pointOf(piece, first)), directionOf(point, pointOf(piece, second)));
}

/** How far short of a point a dart ends, along the line square to its mouth; mm. */
export function stopShortOf(piece: Piece, name: DartName, point: PiecePoint): Mm {
  const { inner, outer, apex } = dartOf(piece, name);
  const middle = mouthMiddle(piece, inner, outer);
  const square = directionOf(pointOf(piece, inner), pointOf(piece, outer)) + Math.PI / 2;
  const reach = ({ x, y }: PiecePoint): Mm => (x - middle.x) * Math.cos(square) + (y - middle.y) * Math.sin(square);
  return Math.abs(reach(point)) - Math.abs(reach(pointOf(piece, apex)));
}

const withApex = (piece: Piece, name: DartName, at: PiecePoint): Piece => {
  const { apex } = dartOf(piece, name);
  return { ...piece, points: { ...piece.points, [apex]: { ...invariant(piece.points[apex], apex), at } } };
};

/**
 * The dart's legs drawn on to a point, equal, and the seam smooth over the dart shut about that point; the seam's sewn
 * length stays.
 */
export function drawnTo(piece: Piece, name: DartName, point: PiecePoint): Piece {
  const { seam } = dartOf(piece, name);
  const length = seamLength(piece, seam);
  const drawn = trueLegs(withApex(piece, name, point), name).piece;
  return trueSeamEvenly(truedByHandles(drawn, name, length), name, length);
}

/** The dart ended short of a point, on the middle line of its mouth; the seam trued over it at the length given. */
export function endedShortOf(piece: Piece, name: DartName, point: PiecePoint, stop: Mm, length: Mm): Piece {
  return truedOver(stop === 0 ? withApex(piece, name, point) : endDart(piece, name, point, stop), name, length);
}

/** Rounds at the most in which a mouth that is gathered is made to fit. */
const ROUNDS = 20;

/**
 * The seam trued over a dart at a sewn length: smooth when the dart is folded shut, or, where it is gathered, smooth over
 * the open mouth.
 */
export function truedOver(piece: Piece, name: DartName, length: Mm): Piece {
  const { seam, inner, outer, gathered } = dartOf(piece, name);
  if (gathered !== true) return trueSeamEvenly(truedByHandles(piece, name, length), name, length);
  return comeNear(smoothOverMouth(piece, name), {
    missOf: (fitted) => seamLength(fitted, seam) - length,
    correct: (fitted, longer) => {
      const corners = dartCorners(fitted, name);
      const moved = moveMouthEnd(fitted, inner, mouthPointAt(corners, "inner", longer / 2));
      return moveMouthEnd(moved, outer, mouthPointAt(corners, "outer", longer / 2));
    },
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  }).value;
}

/** The seam on both sides of an open mouth turned so that it runs straight into the mouth line. */
function smoothOverMouth(piece: Piece, name: DartName): Piece {
  const { first, second } = mouthOf(piece, name);
  const [a, b] = [pointOf(piece, first), pointOf(piece, second)];
  const [into, outOf] = [edgeTo(piece, first), edgeFrom(piece, second)];
  if (smoothStretchAt(piece, into).length > 1 || smoothStretchAt(piece, outOf).length > 1) {
    const across = directionOf(a, b);
    const arriving = turnBetween(edgeTangentAt(curveOf(piece, invariant(piece.edges[into], "edge")), 1), across);
    const leaving = turnBetween(edgeTangentAt(curveOf(piece, invariant(piece.edges[outOf], "edge")), 0), across);
    return edgeTurned(edgeTurned(piece, into, "end", radians(arriving)), outOf, "start", radians(leaving));
  }
  const edges = piece.edges.map((edge): Edge => {
    if (edge.mouthOf === name) return edge;
    const { c1, c2 } = controlsOf(piece, edge);
    if (edge.to === first) return { ...edge, curve: { c1, c2: polar(a, directionOf(b, a), distance(a, c2)) } };
    return edge.from === second ? { ...edge, curve: { c1: polar(b, directionOf(a, b), distance(b, c1)), c2 } } : edge;
  });
  return { ...piece, edges };
}

/** How much shorter or longer the handles of a curve may become before it is the mouth that takes up the length. */
const HANDLES = { least: 0.85, most: 1.2 };

/** The seam smooth over the shut dart, its length kept by drawing the curves beside the mouth fuller or flatter. */
function truedByHandles(piece: Piece, name: DartName, length: Mm): Piece {
  const trued = trueSeamAtDart(piece, name);
  const { first, second } = mouthOf(piece, name);
  const beside = [edgeTo(trued, first), edgeFrom(trued, second)];
  const sum = beside.reduce((total, index) => total + stretchLength(trued, smoothStretchAt(trued, index)), 0);
  const fitted = fitHandles(trued, beside, sum + length - seamLength(trued, dartOf(piece, name).seam));
  if (beside.some((index) => smoothStretchAt(trued, index).length > 1))
    return Math.abs(seamLength(fitted, dartOf(piece, name).seam) - length) < TRUING_ACCURACY ? fitted : piece;
  const scale = handleOf(fitted, invariant(beside[0], "edge")) / handleOf(trued, invariant(beside[0], "edge"));
  return scale >= HANDLES.least && scale <= HANDLES.most ? fitted : piece;
}

function handleOf(piece: Piece, index: number): Mm {
  const edge = invariant(piece.edges[index], "edge");
  return distance(pointOf(piece, edge.from), controlsOf(piece, edge).c1);
}

/** Names for corners that stay in a seam where a dart was: from the last, since operations make theirs from the first. */
const SEAM_CORNERS: readonly PointName[] = ["cut8", "cut7", "cut6", "cut5"];

/** Whether a corner is no more than where a dart was joined up. */
const isSeamCorner = (name: PointName): boolean => SEAM_CORNERS.includes(name);

/**
 * The piece without a dart that has been shut: its mouth, of no length by now, goes. The two edges that meet there become
 * one where one line can follow both; else they stay, with a corner between them that runs smooth.
 */
export function joinedUp(piece: Piece, name: DartName): Piece {
  const dart = dartOf(piece, name);
  const { first, second } = mouthOf(piece, name);
  const into = invariant(piece.edges[edgeTo(piece, first)], "edge");
  const out = invariant(piece.edges[edgeFrom(piece, second)], "edge");
  const corner = SEAM_CORNERS.find((free) => piece.points[free] === undefined);
  const { [dart.inner]: _inner, [dart.outer]: _outer, [dart.apex]: _apex, ...points } = piece.points;
  const rest: Piece = { ...piece, points, darts: piece.darts.filter((d) => d.name !== name) };
  const whole = inOne(rest, piece, name);
  if (corner === undefined || whole.off <= ONE_CURVE) return whole.piece;
  const edges = piece.edges.flatMap((edge): Edge[] =>
    edge === into
      ? [{ ...into, to: corner }]
      : edge === out
        ? [{ ...out, from: corner }]
        : edge.mouthOf === name
          ? []
          : [edge],
  );
  return { ...rest, edges, points: { ...points, [corner]: invariant(piece.points[first], first) } };
}

/** The two edges at a shut dart drawn as one, as long as both were together, and how far off the corner it passes; mm. */
function inOne(rest: Piece, piece: Piece, name: DartName): { readonly piece: Piece; readonly off: Mm } {
  const { first, second } = mouthOf(piece, name);
  const into = invariant(piece.edges[edgeTo(piece, first)], "edge");
  const out = invariant(piece.edges[edgeFrom(piece, second)], "edge");
  const length = edgeLength(curveOf(piece, into)) + edgeLength(curveOf(piece, out));
  const whole: Edge = { ...into, to: out.to, curve: oneCurve(piece, into, out) };
  const edges = piece.edges.flatMap((edge): Edge[] =>
    edge === into ? [whole] : edge === out || edge.mouthOf === name ? [] : [edge],
  );
  const index = edges.indexOf(whole);
  const joined = whole.curve === null ? { ...rest, edges } : fitHandles({ ...rest, edges }, [index], length);
  const line = curveOf(joined, invariant(joined.edges[index], "edge"));
  const off = distance(edgeNearest(line, pointOf(piece, first)).point, pointOf(piece, first));
  return { piece: joined, off: Math.max(off, Math.abs(edgeLength(line) - length)) };
}

/**
 * One curve for two that meet smoothly; where they are the halves of one, just that one.
 *
 * @source de Casteljau: a cubic cut at t has the handles t and (1 − t) of its own, and at the cut t : (1 − t)
 */
function oneCurve(piece: Piece, into: Edge, out: Edge): Edge["curve"] {
  const [a, m, b] = [pointOf(piece, into.from), pointOf(piece, into.to), pointOf(piece, out.to)];
  const [before, after] = [controlsOf(piece, into), controlsOf(piece, out)];
  const line = lineEdge(a, b);
  const off = [m, before.c1, before.c2, after.c1, after.c2].map((p) => distance(p, edgeNearest(line, p).point));
  if (Math.max(...off) < STRAIGHT_SEAM) return null;
  const [arriving, leaving] = [distance(before.c2, m), distance(m, after.c1)];
  const t = arriving / (arriving + leaving);
  return { c1: between(a, before.c1, 1 / t), c2: between(b, after.c2, 1 / (1 - t)) };
}

/** The seam parted at a place, for a dart that opens there: a corner, and a second in the same place. */
export function partedFor(
  piece: Piece,
  { edge, t }: { readonly edge: number; readonly t: number },
  name: DartName,
): Piece {
  const { first, second } = mouthNames(name);
  const curve = curveOf(piece, invariant(piece.edges[edge], "edge"));
  const at = edgePointAt(curve, t);
  const { from, to } = invariant(piece.edges[edge], "edge");
  const corner = [from, to].find((end) => isSeamCorner(end) && distance(pointOf(piece, end), at) < AT_SEAM_CORNER);
  const cut = corner === undefined ? insertPoint(piece, edge, t, first, "bust") : renamed(piece, corner, first);
  return partAt(cut, first, second, name);
}

/** The piece with a dart under another name, its points with it. */
export function renamedDart(piece: Piece, from: DartName, to: DartName): Piece {
  const ends = (["Inner", "Outer", "Apex"] as const).reduce(
    (so, end) => renamed(so, `${from}${end}`, `${to}${end}`),
    piece,
  );
  return {
    ...ends,
    edges: ends.edges.map((edge): Edge => (edge.mouthOf === from ? { ...edge, mouthOf: to } : edge)),
    darts: ends.darts.map((dart) =>
      dart.name === from ? { ...dart, name: to, inner: `${to}Inner`, outer: `${to}Outer`, apex: `${to}Apex` } : dart,
    ),
  };
}

function renamed(piece: Piece, from: PointName, to: PointName): Piece {
  const { [from]: point, ...points } = piece.points;
  const named = (name: PointName): PointName => (name === from ? to : name);
  const edges = piece.edges.map((edge): Edge => ({ ...edge, from: named(edge.from), to: named(edge.to) }));
  return { ...piece, edges, points: { ...points, [to]: invariant(point, from) } };
}

/** Where a point belongs that may lie off the cloth or on its edge: with which corner of the outline it goes. */
const GOES_WITH: Readonly<Partial<Record<PointName, PointName>>> = {
  bustLineOuter: "sideBust",
  bustLineInner: "centreBust",
  underBustCentre: "centreWaist",
  strapAim: "strapInner",
};

/** The named points off the outline that lie on a part. */
export function carriedBy(piece: Piece, part: Pick<Part, "from" | "to" | "inside">): PointName[] {
  const onPart = pointsBetween(piece, part.from, part.to);
  const onRing = new Set<PointName>(piece.edges.map(({ from }) => from));
  const outline = partOutline(piece, part);
  const belongs = (name: PointName): boolean => {
    const dart = piece.darts.find(({ apex }) => apex === name);
    if (dart !== undefined) return onPart.has(dart.inner) && onPart.has(dart.outer);
    const owner = GOES_WITH[name];
    if (owner !== undefined && onRing.has(owner)) return onPart.has(owner);
    return isInOutline(outline, pointOf(piece, name));
  };
  return pointNames(piece).filter((name) => !onRing.has(name) && belongs(name));
}

function partOutline(piece: Piece, { from, to, inside }: Pick<Part, "from" | "to" | "inside">): EdgeCurve<"piece">[] {
  const start = edgeFrom(piece, from);
  const count = ((edgeTo(piece, to) - start + piece.edges.length) % piece.edges.length) + 1;
  const ring = Array.from({ length: count }, (_, step) =>
    curveOf(piece, invariant(piece.edges[(start + step) % piece.edges.length], "edge")),
  );
  const corners = [pointOf(piece, to), ...inside, pointOf(piece, from)];
  const inner = corners.slice(1).map((corner, i) => lineEdge(invariant(corners[i], "corner"), corner));
  return [...ring, ...inner.filter(({ a, b }) => distance(a, b) > SAME_POINT)];
}

/** The turn that brings a part up to a closing dart: what lies onward from the dart turns back, what lies before it on. */
export const closingTurn = (onward: boolean, angle: Radians): Radians => radians(onward ? -angle : angle);
