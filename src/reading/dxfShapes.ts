/** Single entities of DXF as lines, in the drawing's own frame: y up. */
import { STRAIGHT_BULGE, WHOLE_TURN } from "../core/tolerance";
import { after, IDENTITY, moving, scaling, type Affine, type Place } from "./affine";
import { STEPS } from "./drawingBuilder";
import { numberAt, numberIn, numbersAt, textAt, type DxfRecord } from "./dxfRecords";
import { splineStroke, throughPoints } from "./dxfSpline";
import { refuse } from "./readingFailure";
import { arcParts, ellipse, mappedStroke, straight, type Part, type Stroke } from "./stroke";

/**
 * Of an entity that has a frame of its own: that of the plane it was drawn in, laid flat.
 *
 * @source the "arbitrary axis" of the DXF reference, from memory
 */
export function planeOf(record: DxfRecord, height = numberAt(record, 38)): Affine {
  const [x, y, z] = [numberAt(record, 210), numberAt(record, 220), numberAt(record, 230, 1)];
  const length = Math.hypot(x, y, z);
  if (!(length > 0) || !Number.isFinite(length)) return IDENTITY;
  const n = { x: x / length, y: y / length, z: z / length };
  // The first axis is square to the normal and to y, or, where these run nearly alike, to z.
  const near = 1 / 64;
  const first = Math.abs(n.x) < near && Math.abs(n.y) < near ? { x: n.z, y: 0, z: -n.x } : { x: -n.y, y: n.x, z: 0 };
  const reach = Math.hypot(first.x, first.y, first.z);
  const a = { x: first.x / reach, y: first.y / reach, z: first.z / reach };
  const second = { x: n.y * a.z - n.z * a.y, y: n.z * a.x - n.x * a.z };
  return { a: a.x + 0, b: a.y + 0, c: second.x + 0, d: second.y + 0, e: n.x * height, f: n.y * height };
}

const placeAt = (record: DxfRecord, code: number): Place => ({
  x: numberAt(record, code),
  y: numberAt(record, code + 10),
});

export const inserted = (record: DxfRecord): Place => placeAt(record, 10);

/** @param height where the entity says it: 30 */
const flatAt = (record: DxfRecord): Affine => planeOf(record, numberAt(record, 30));

/** null: an entity that draws no line by itself. */
export function entityStrokes(record: DxfRecord, spend: (steps: number) => void): readonly Stroke[] | null {
  switch (record.type) {
    case "LINE":
      return [{ from: placeAt(record, 10), parts: [{ to: placeAt(record, 11) }], closed: false }];
    case "CIRCLE":
      return [mappedStroke(flatAt(record), ellipse(roundFrame(record)))];
    case "ARC": {
      const [start, end] = [numberAt(record, 50) % 360, numberAt(record, 51) % 360];
      const sweep = (((end - start) % 360) + 360) % 360;
      return [mappedStroke(flatAt(record), arc(roundFrame(record), inRadians(start), inRadians(sweep)))];
    }
    case "ELLIPSE":
      return [ellipseStroke(record)];
    case "LWPOLYLINE":
      return lightPolyline(record, spend);
    case "SPLINE":
      return splineStrokes(record, spend);
    default:
      return null;
  }
}

const inRadians = (degrees: number): number => (degrees * Math.PI) / 180;

function roundFrame(record: DxfRecord): Affine {
  const { x, y } = placeAt(record, 10);
  const radius = Math.abs(numberAt(record, 40));
  return after(moving(x, y), scaling(radius, radius));
}

/** @param sweep 0: the whole of it */
function arc(frame: Affine, start: number, sweep: number): Stroke {
  const isWhole = sweep < WHOLE_TURN || sweep > 2 * Math.PI - WHOLE_TURN;
  const { a, b, c, d, e, f } = frame;
  const from = { x: a * Math.cos(start) + c * Math.sin(start) + e, y: b * Math.cos(start) + d * Math.sin(start) + f };
  return { from, parts: arcParts(frame, start, start + (isWhole ? 2 * Math.PI : sweep)), closed: isWhole };
}

function ellipseStroke(record: DxfRecord): Stroke {
  const [centre, major] = [placeAt(record, 10), placeAt(record, 11)];
  const up = numberAt(record, 230, 1) < 0 ? -1 : 1;
  const ratio = numberAt(record, 40, 1) * up;
  const frame = {
    a: major.x,
    b: major.y,
    c: -major.y * ratio,
    d: major.x * ratio,
    e: centre.x,
    f: centre.y,
  };
  const turn = 2 * Math.PI;
  const [start, end] = [numberAt(record, 41) % turn, numberAt(record, 42, turn)];
  return arc(frame, start, (((end - start) % turn) + turn) % turn);
}

interface Vertex extends Place {
  readonly bulge: number;
}

const CLOSED = 1;

/** Each vertex begins with its x; what follows up to the next one is of it. */
function lightPolyline(record: DxfRecord, spend: (steps: number) => void): Stroke[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  record.codes.forEach((code, i) => {
    const last = vertices.at(-1);
    if (code !== 10 && code !== 20 && code !== 42) return;
    const value = numberIn(record.values[i] ?? "", record);
    if (code === 10) vertices.push({ x: value, y: 0, bulge: 0 });
    else if (last !== undefined && code === 20) last.y = value;
    else if (last !== undefined) last.bulge = value;
  });
  const stroke = bulged(vertices, (numberAt(record, 70) & CLOSED) !== 0, spend);
  return stroke === null ? [] : [mappedStroke(planeOf(record), stroke)];
}

/** Flags of an old polyline and of its vertices. */
const IN_SPACE = 8;
const MESH = 16 | 64;
const FRAME_OF_SPLINE = 16;

/** An old polyline: its head, and its vertices as records of their own. */
export function polylineStrokes(
  head: DxfRecord,
  vertices: readonly DxfRecord[],
  spend: (steps: number) => void,
): readonly Stroke[] {
  const flags = numberAt(head, 70);
  if ((flags & MESH) !== 0) return [];
  const drawn = vertices
    .filter((vertex) => (numberAt(vertex, 70) & FRAME_OF_SPLINE) === 0)
    .map((vertex): Vertex => ({ ...placeAt(vertex, 10), bulge: numberAt(vertex, 42) }));
  const stroke = bulged(drawn, (flags & CLOSED) !== 0, spend);
  if (stroke === null) return [];
  return [(flags & IN_SPACE) === 0 ? mappedStroke(flatAt(head), stroke) : stroke];
}

/** A bulge is the tangent of a quarter of the angle that the arc to the next vertex goes round, against the clock. */
function bulged(vertices: readonly Vertex[], closed: boolean, spend: (steps: number) => void): Stroke | null {
  const [first] = vertices;
  spend(vertices.reduce((sum, { bulge }) => sum + (bulge === 0 ? STEPS.part : STEPS.computed), 0));
  if (first === undefined) return null;
  const ring = closed ? [...vertices, first] : vertices;
  return {
    ...(straight(ring, closed) ?? NOTHING),
    parts: ring.slice(1).flatMap((to, i) => bulgeParts(ring[i] ?? to, to)),
  };
}

const NOTHING: Stroke = { from: { x: 0, y: 0 }, parts: [], closed: false };

function bulgeParts(from: Vertex, { x, y }: Vertex): Part[] {
  const { bulge } = from;
  const to = { x, y };
  if (Math.abs(bulge) < STRAIGHT_BULGE || (from.x === x && from.y === y)) return [{ to }];
  const [across, up] = [x - from.x, y - from.y];
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + x) / 2 - up * off, y: (from.y + y) / 2 + across * off };
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const parts = arcParts(
    after(moving(centre.x, centre.y), scaling(radius, radius)),
    start,
    start + 4 * Math.atan(bulge),
  );
  const last = parts.at(-1);
  return last?.controls === undefined ? [{ to }] : [...parts.slice(0, -1), { controls: last.controls, to }];
}

function splineStrokes(record: DxfRecord, spend: (steps: number) => void): Stroke[] {
  const places = (code: number): Place[] => {
    const [xs, ys] = [numbersAt(record, code), numbersAt(record, code + 10)];
    return xs.map((x, i) => ({ x, y: ys[i] ?? 0 }));
  };
  const points = places(10);
  const closed = (numberAt(record, 70) & CLOSED) !== 0;
  spend(points.length);
  if (points.length === 0) {
    const tangent = (code: number): Place | null => (textAt(record, code) === undefined ? null : placeAt(record, code));
    const fit = places(11);
    spend(fit.length * STEPS.computed);
    const through = throughPoints(fit, closed, { start: tangent(12), end: tangent(13) });
    return through === null ? [] : [through];
  }
  const stroke = splineStroke(
    {
      degree: numberAt(record, 71, 3),
      knots: numbersAt(record, 40),
      points,
      weights: numbersAt(record, 41),
      closed,
    },
    spend,
  );
  return stroke === null ? refuse({ code: "reading/damaged", line: record.line }) : [stroke];
}
