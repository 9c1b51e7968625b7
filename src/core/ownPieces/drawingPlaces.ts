/** Where the lines of a file lie: all of them together, and the ends that a finger means when it comes near one. */
import type { FileDrawing, FilePlace } from "../decisions/fileDrawing";
import { edgeHullBounds, type EdgeCurve } from "../geometry/edgeCurve";
import { boundsOfPoints, joinBounds, type Bounds } from "../geometry/bounds";
import { filePoint, type FilePoint } from "../geometry/point";
import { readPath } from "../geometry/readPath";
import type { ClosedOutline, Scale } from "../outlines/outlineReading";
import { remember } from "../remember";
import type { Mm } from "../units";

interface DrawingPlaces {
  /** null: there is nothing in it. */
  readonly box: Bounds<"file"> | null;
  /** Ends of lines and corners of polylines, and single points. */
  readonly ends: readonly FilePoint[];
}

/** In the file's own units. */
export const placesOf: (from: { readonly drawing: FileDrawing }) => DrawingPlaces = remember(
  ["drawing"],
  ({ drawing }: { readonly drawing: FileDrawing }) => {
    const points = drawing.points.map(({ x, y }) => filePoint(x, y));
    let box = points.length === 0 ? null : boundsOfPoints(points);
    const ends: FilePoint[] = [...points];
    const model = filePoint(0, 0);
    for (const path of drawing.lines.flatMap(({ paths }) => paths)) {
      const edges = readPath(path, model)?.edges ?? [];
      for (const edge of edges) {
        const own = edgeHullBounds(edge);
        box = box === null ? own : joinBounds(box, own);
        ends.push(edge.a);
      }
      const last = edges.at(-1);
      if (last !== undefined) ends.push(last.b);
    }
    return { box, ends };
  },
);

/** The end nearest to a place, if one is within so many of the file's units; else the place itself. */
export function snapped(ends: readonly FilePlace[], to: FilePlace, within: number): FilePlace {
  let best: FilePlace | null = null;
  let least = within;
  for (const end of ends) {
    const apart = apartInFile(end, to);
    if (apart > least) continue;
    best = end;
    least = apart;
  }
  return best === null ? to : { x: best.x, y: best.y };
}

/** In the file's units. */
export const apartInFile = (a: FilePlace, b: FilePlace): number => Math.hypot(b.x - a.x, b.y - a.y);

/** mm in a unit of the file as it is known, or one, until it is. */
export const mmOf = (scale: Scale): Mm => scale.mm ?? 1;

/** The smallest upright box round an outline, on the sheet; null: it has no edges. */
export const boxRound = (edges: readonly EdgeCurve<"sheet">[]): Bounds<"sheet"> | null =>
  edges
    .map(edgeHullBounds)
    .reduce<Bounds<"sheet"> | null>((box, own) => (box === null ? own : joinBounds(box, own)), null);

/** The upper side of a square, from end to end, in the file's own units: a length that she may know. */
export function sideOfSquare({ edges }: ClosedOutline, scale: Scale): { from: FilePlace; to: FilePlace } | null {
  const box = boxRound(edges);
  if (box === null) return null;
  const mm = mmOf(scale);
  const [left, right, top] = [box.min.x / mm, box.max.x / mm, box.min.y / mm];
  return { from: { x: left, y: top }, to: { x: right, y: top } };
}
