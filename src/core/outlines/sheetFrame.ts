/** Rectangles drawn round a whole sheet. */
import { joinBounds, type Bounds } from "../geometry/bounds";
import { fourCorners } from "./scale";
import type { Stroke } from "./strokes";

/** What a frame covers of the whole drawing, each way. */
const FRAMED = 0.97;

/** Into how many cells a frame is cut each way, and how many of them something in it covers that is no mark. */
const CELLS = 100;
const LEAST_CELLS = 200;

/** Closed rectangles as large as the whole drawing, with two things in them at the least that touch neither them nor each other. */
export function framesOf(strokes: readonly Stroke[]): ReadonlySet<Stroke> {
  const [first] = strokes;
  if (first === undefined) return new Set();
  const { min, max } = strokes.reduce((box, stroke) => joinBounds(box, stroke.box), first.box);
  const frames = strokes.filter(
    ({ box, closed, edges }) =>
      closed &&
      edges.length <= 8 &&
      box.max.x - box.min.x >= FRAMED * (max.x - min.x) &&
      box.max.y - box.min.y >= FRAMED * (max.y - min.y) &&
      fourCorners(edges.map(({ a }) => a)) !== null,
  );
  if (frames.length === 0) return new Set();
  const inside = strokes.filter((stroke) => !frames.includes(stroke));
  return thingsIn({ min, max }, inside) >= 2 ? new Set(frames) : new Set();
}

/** How many things lie apart in a box and do not touch it. */
function thingsIn({ min, max }: Bounds<"sheet">, strokes: readonly Stroke[]): number {
  const column = (x: number): number =>
    Math.min(CELLS - 1, Math.max(0, Math.floor(((x - min.x) / (max.x - min.x)) * CELLS)));
  const row = (y: number): number =>
    Math.min(CELLS - 1, Math.max(0, Math.floor(((y - min.y) / (max.y - min.y)) * CELLS)));
  const covered = new Uint8Array(CELLS * CELLS);
  for (const { box } of strokes)
    for (let x = column(box.min.x); x <= column(box.max.x); x += 1)
      for (let y = row(box.min.y); y <= row(box.max.y); y += 1) covered[y * CELLS + x] = 1;
  let things = 0;
  for (const [start, isCovered] of covered.entries()) {
    // What was counted is covered no more.
    if (isCovered === 0) continue;
    covered[start] = 0;
    const thing = [start];
    // What is found is looked at in turn.
    for (const cell of thing)
      for (const next of [cell - 1, cell + 1, cell - CELLS, cell + CELLS])
        if (covered[next] === 1) {
          covered[next] = 0;
          thing.push(next);
        }
    const touches = thing.some((cell) => {
      const [x, y] = [cell % CELLS, Math.floor(cell / CELLS)];
      return x === 0 || y === 0 || x === CELLS - 1 || y === CELLS - 1;
    });
    if (!touches && thing.length >= LEAST_CELLS) things += 1;
  }
  return things;
}
