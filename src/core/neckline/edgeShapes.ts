/** The shapes of an upper edge, from the centre to the shoulder or to a strap. Proportions are common practice, no source. */
import { cubicEdge, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { between, directionOf, distance, polar, turnBetween, type PiecePoint } from "../geometry/point";
import type { NecklineShape } from "../decisions/dress";
import { controls } from "../pattern/namedEdges";
import { invariant } from "../result";
import { LINES_PARALLEL, SHORTEST_EDGE } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import type { NewEdge } from "./neckRun";

export type DrawnShape = Exclude<NecklineShape, "asPattern">;

/** What a shape is drawn between. */
export interface Between {
  /** On the centre line, and which way that runs there, upwards. */
  readonly centre: PiecePoint;
  readonly up: Radians;
  readonly end: PiecePoint;
  /** Which way the edge comes to its end, where the shape leaves that open. */
  readonly arriving: Radians;
  /** The two ways that it may come to its end at the most; null: any. */
  readonly bounds: readonly [Radians, Radians] | null;
}

/** A round line leaves and comes in by handles of this share of the way to where its tangents meet: nearly an ellipse. */
const ROUNDED = 0.58;
/** Of a scoop those tangents meet no nearer the centre than this share of its width: nearer, a deep one would look like a V. */
const ROUND_FROM = 0.65;
/** What comes in flatter turns within this share of its height. */
const TURNING = 0.35;

/** Of a sweetheart: how high the curve over the bust rises above the peak at the centre, as a share of its width, and at most. */
const RISE = 0.45;
const MOST_RISE = 0.6;
/** How steeply it leaves the peak, against a straight rise, and how far it falls again at its corner. */
const STEEPER = 2.4;
const FALLS: Radians = radiansFromDegrees(8);
/** Between the centre and a strap: how far it leaves and comes in off the straight line. */
const FULL_OFF_LINE: Radians = radiansFromDegrees(24);

/** The edge of a shape; a strap's seam ends it where `isStrapped`. */
export function drawShape(shape: DrawnShape, way: Between, isStrapped: boolean): NewEdge {
  switch (shape) {
    case "scoop":
      return plain(roundLine({ ...way, arriving: roundAt(way) }));
    case "vee":
      return plain(straightLine(way));
    case "square":
      return square(way);
    case "sweetheart":
      return isStrapped ? plain(fullLine(way)) : sweetheart(way);
  }
}

const plain = (curve: EdgeCurve<"piece">): NewEdge => ({ curves: [curve], corners: [] });

const outOf = (up: Radians): Radians => radians(up + Math.PI / 2);

/** Where two lines meet, told by how far along each; null where they run alike. */
function meeting(a: PiecePoint, leaving: Radians, b: PiecePoint, arriving: Radians): readonly [Mm, Mm] | null {
  const cross = Math.sin(arriving - leaving);
  if (Math.abs(cross) < LINES_PARALLEL) return null;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return [
    (dx * Math.sin(arriving) - dy * Math.cos(arriving)) / cross,
    (dx * Math.sin(leaving) - dy * Math.cos(leaving)) / cross,
  ];
}

/** Square to the centre, and into its end as told; what comes in too flat to be round turns just below its end. */
export function roundLine({ centre, up, end, arriving }: Between): EdgeCurve<"piece"> {
  const leaving = outOf(up);
  const [met, across] = [meeting(centre, leaving, end, arriving), meeting(centre, leaving, end, up)];
  const [run, height] = across === null ? [0, 0] : [across[0], -across[1]];
  const least = ROUND_FROM * run;
  const isHigh = height > SHORTEST_EDGE && least > SHORTEST_EDGE;
  if (met !== null && -met[1] > SHORTEST_EDGE && met[0] > (isHigh ? least : SHORTEST_EDGE))
    return cubicEdge({
      a: centre,
      c1: polar(centre, leaving, ROUNDED * met[0]),
      c2: polar(end, arriving, ROUNDED * met[1]),
      b: end,
    });
  if (!isHigh || met === null || met[1] >= 0) {
    const [c1, c2] = controls(centre, leaving, end, arriving);
    return cubicEdge({ a: centre, c1, c2, b: end });
  }
  // As it would be where its tangents meet just far enough out, then the wider at its foot the flatter it comes in.
  const on = Math.max(0, met[0]);
  return cubicEdge({
    a: centre,
    c1: polar(centre, leaving, ROUNDED * on + (least - on)),
    c2: polar(end, arriving, -(TURNING * height + (on / least) * (ROUNDED * -met[1] - TURNING * height))),
    b: end,
  });
}

/** Which way a scoop comes to its end: as it would, or steeper where it would else not be round at its foot. */
function roundAt({ centre, up, end, arriving, bounds }: Between): Radians {
  const out = outOf(up);
  const [across, met] = [meeting(centre, out, end, up), meeting(centre, out, end, arriving)];
  if (across === null || -across[1] < SHORTEST_EDGE) return arriving;
  const least = ROUND_FROM * across[0];
  if (met !== null && met[0] >= least && -met[1] > 0) return arriving;
  return within(directionOf(polar(centre, out, least), end), bounds);
}

/** A way within bounds: the nearer bound where it is not. */
function within(way: Radians, bounds: Between["bounds"]): Radians {
  if (bounds === null) return way;
  const [first, last] = bounds;
  if (turnBetween(first, way) < 0) return first;
  return turnBetween(last, way) > 0 ? last : way;
}

/** Straight, but for a hollow at a shoulder that it would else meet too aslant to be sewn smooth to the back. */
function straightLine({ centre, end, bounds }: Between): EdgeCurve<"piece"> {
  const way = directionOf(centre, end);
  const arriving = within(way, bounds);
  if (arriving === way) return lineEdge(centre, end);
  const long = distance(centre, end);
  return cubicEdge({ a: centre, c1: between(centre, end, 1 / 3), c2: polar(end, arriving, -long / 3), b: end });
}

/** Square to the centre, then up along it; straight where there is no height for a corner. */
function square(way: Between): NewEdge {
  const corner = belowEnd(way);
  return corner === null
    ? plain(straightLine(way))
    : {
        curves: [lineEdge(way.centre, corner), lineEdge(corner, way.end)],
        corners: [{ name: "neckCorner", at: corner }],
      };
}

/** Where the line down from the end, along the centre, comes to the height of the centre; null where there is none. */
function belowEnd({ centre, up, end, bounds }: Between): PiecePoint | null {
  const met = meeting(centre, outOf(up), end, within(up, bounds));
  return met === null || met[0] < SHORTEST_EDGE || -met[1] < SHORTEST_EDGE ? null : polar(centre, outOf(up), met[0]);
}

/** A peak at the centre, a curve over the bust, and from its corner up to the shoulder. */
function sweetheart(way: Between): NewEdge {
  const { centre, up, end } = way;
  const foot = belowEnd(way);
  if (foot === null) return plain(fullLine(way));
  const run = distance(centre, foot);
  const rise = Math.min(RISE * run, MOST_RISE * distance(foot, end));
  const corner = between(foot, end, rise / distance(foot, end));
  const out = outOf(up);
  const [c1, c2] = controls(
    centre,
    radians(out - Math.atan((STEEPER * rise) / run)),
    corner,
    radians(out + FALLS),
    0.4,
    0.45,
  );
  return {
    curves: [cubicEdge({ a: centre, c1, c2, b: corner }), lineEdge(corner, end)],
    corners: [{ name: "neckCorner", at: corner }],
  };
}

/** One full curve from the peak at the centre to a strap. */
function fullLine({ centre, end }: Between): EdgeCurve<"piece"> {
  const way = directionOf(centre, end);
  const [c1, c2] = controls(centre, radians(way - FULL_OFF_LINE), end, radians(way + FULL_OFF_LINE));
  return cubicEdge({ a: centre, c1: invariant(c1, "handle"), c2, b: end });
}
