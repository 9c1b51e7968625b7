/** Stretches of the sewn ring of a piece, parted at its corners: one strip runs along one seam. */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { turnBetween } from "../geometry/point";
import { invariant } from "../result";
import { CURVE_ACCURACY, STRIP_CORNER_DEGREES } from "../tolerance";
import { radiansFromDegrees, type Mm } from "../units";
import type { Stretch } from "./changedStretches";
import { stretchOf, type SewnLine } from "./sewnLines";

const SHARP = radiansFromDegrees(STRIP_CORNER_DEGREES);

/** A stretch beyond a corner that is shorter than this stays on the strip of its neighbour. */
const STUB: Mm = 60;

export const ringLength = (ring: readonly SewnLine[]): Mm => ring.reduce((sum, { length }) => sum + length, 0);

/** The lines along a stretch of the ring, one after the other. */
export function linesAlong(ring: readonly SewnLine[], { from, to }: Stretch): readonly SewnLine[] {
  const total = ringLength(ring);
  const lines: SewnLine[] = [];
  // Its start lies less than a round off either way, and it ends within a round of it.
  for (const round of [-1, 0, 1]) {
    let start = round * total;
    for (const line of ring) {
      const [first, last] = [Math.max(from, start), Math.min(to, start + line.length)];
      if (last - first > CURVE_ACCURACY) lines.push(stretchOf(line, first - start, last - start));
      start += line.length;
    }
  }
  return lines;
}

/** The stretch parted at sharp corners, each part run on past them by `by`; short ends stay with their neighbours. */
export function partAtCorners(ring: readonly SewnLine[], stretch: Stretch, by: Mm): readonly Stretch[] {
  const cuts = cornersWithin(ring, stretch);
  const ends = [stretch.from, ...cuts, stretch.to];
  const parts = ends.slice(1).map((to, index) => ({ from: invariant(ends[index], "end"), to }));
  const joined: Stretch[] = [];
  for (const part of parts) {
    const last = joined.at(-1);
    const isShort = part.to - part.from < STUB || (last !== undefined && last.to - last.from < STUB);
    if (last !== undefined && isShort) joined[joined.length - 1] = { from: last.from, to: part.to };
    else joined.push(part);
  }
  return joined.map(({ from, to }) => ({ from: Math.max(stretch.from, from - by), to: Math.min(stretch.to, to + by) }));
}

function cornersWithin(ring: readonly SewnLine[], { from, to }: Stretch): readonly Mm[] {
  const total = ringLength(ring);
  let start = 0;
  const corners: Mm[] = [];
  ring.forEach((line, index) => {
    const before = invariant(ring.at(index - 1), "line");
    const isMouth = before.dart !== null || line.dart !== null;
    if (!isMouth && Math.abs(turnBetween(edgeTangentAt(before.curve, 1), edgeTangentAt(line.curve, 0))) > SHARP)
      corners.push(start);
    start += line.length;
  });
  return [-1, 0, 1].flatMap((round) => corners.map((at) => at + round * total)).filter((at) => at > from && at < to);
}

/** The stretch in so many parts of one length, neighbours lying over each other by `overlap`. */
export function partEvenly({ from, to }: Stretch, count: number, overlap: Mm): readonly Stretch[] {
  const step = (to - from) / count;
  return Array.from({ length: count }, (_, index) => ({
    from: Math.max(from, from + index * step - overlap / 2),
    to: Math.min(to, from + (index + 1) * step + overlap / 2),
  }));
}
