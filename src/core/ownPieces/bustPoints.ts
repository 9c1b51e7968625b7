/** Where the bust point of a piece lies in each size: said, marked, or where its darts lead. */
import { extentOf } from "../geometry/bounds";
import { isInOutline } from "../geometry/outline";
import {
  between,
  directionOf,
  distance,
  midpoint,
  piecePoint,
  polar,
  sheetPoint,
  shift,
  type PiecePoint,
} from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import type { Mark } from "../outlines/outlineReading";
import { invariant } from "../result";
import { BUST_POINT_MARKED, LEG_MEETS_LINE, LINES_PARALLEL, NAMED_BESIDE, SEAM_FULL_LEAST } from "../tolerance";
import type { Mm } from "../units";
import { intoPiece, ontoHalf } from "./placement";
import { flattened, nearestOn, pointOn, wayFrom } from "./tracedRing";
import type { TracedSize } from "./tracePiece";

export interface FoundBustPoint {
  readonly at: PiecePoint;
  readonly by: "her" | "mark" | "other size" | "darts";
}

/** A dart ends so far short of the bust point where nothing else says where that is (common practice: 15 to 25 mm). */
const USUAL_STOP: Mm = 22;
/** A mark as near as this to a dart's end is that end's. */
const AT_END: Mm = 2;

/**
 * The bust point in each size; null where nothing says where it is.
 *
 * @param said on the sheet, by size
 */
export function bustPointsOf(
  sizes: readonly TracedSize[],
  marks: readonly Mark[],
  said: ReadonlyMap<string, PiecePoint>,
  isPrincess: boolean,
): readonly (FoundBustPoint | null)[] {
  const expected = sizes.map((size) => (isPrincess ? fullestOn(size) : ledTo(size)));
  const known = sizes.map((size, index): FoundBustPoint | null => {
    const hers = said.get(size.label);
    if (hers !== undefined)
      return { at: intoPiece(size.place, sheetPoint(...ontoHalf(size.mirror, hers.x, hers.y))), by: "her" };
    const mark = said.size > 0 ? null : markedIn(size, marks, expected[index] ?? null);
    return mark === null ? null : { at: mark, by: "mark" };
  });
  return sizes.map((size, index) => {
    const own = known[index];
    if (own !== null && own !== undefined) return own;
    const near = nearestKnown(known, index);
    const here = expected[index] ?? null;
    if (near < 0) return here === null ? null : { at: here, by: "darts" };
    const at = invariant(known[near], "bust point").at;
    const there = expected[near] ?? null;
    if (here !== null && there !== null) return { at: shift(here, at.x - there.x, at.y - there.y), by: "other size" };
    return { at: sameShare(size, invariant(sizes[near], "size"), at), by: "other size" };
  });
}

const nearestKnown = (known: readonly (FoundBustPoint | null)[], from: number): number =>
  known.reduce(
    (best, one, index) => (one !== null && (best < 0 || Math.abs(index - from) < Math.abs(best - from)) ? index : best),
    -1,
  );

/** Where the axes of the darts meet; along the one there is, the usual stop on from its end; null without darts. */
function ledTo({ ring, darts }: TracedSize): PiecePoint | null {
  const axes = darts
    .filter(({ seam }) => seam !== "neck" && seam !== "centre")
    .map(({ first, second, apex }) => ({ from: midpoint(pointOn(ring, first), pointOn(ring, second)), apex }));
  const [one, other] = axes;
  if (one === undefined) return null;
  const alone = polar(one.apex, directionOf(one.from, one.apex), USUAL_STOP);
  if (other === undefined) return alone;
  const [ux, uy] = [one.apex.x - one.from.x, one.apex.y - one.from.y];
  const [vx, vy] = [other.apex.x - other.from.x, other.apex.y - other.from.y];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < LINES_PARALLEL * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return alone;
  const t = ((other.from.x - one.from.x) * vy - (other.from.y - one.from.y) * vx) / cross;
  const met = piecePoint(one.from.x + ux * t, one.from.y + uy * t);
  const isAhead = axes.every(({ apex }) => distance(apex, met) < FURTHEST_STOP);
  return isAhead ? met : between(alone, polar(other.apex, directionOf(other.from, other.apex), USUAL_STOP), 1 / 2);
}
/** Axes that meet further from their ends than this do not aim at one point. */
const FURTHEST_STOP: Mm = 80;

/**
 * The place of a princess seam that lies furthest off its straight way, where that is about as low as a bust point lies, which is
 * below the underarm; else where one usually lies on it.
 */
function fullestOn({ ring, corners }: TracedSize): PiecePoint | null {
  const [top, low] = ["princessTop", "princessWaist"].map((name) => corners.find((corner) => corner.name === name)?.s);
  if (top === undefined || low === undefined) return null;
  const [a, b] = [pointOn(ring, top), pointOn(ring, low)];
  const span = wayFrom(ring, top, low);
  // A seam from the shoulder comes down to it past the whole armhole, one from the armhole past half of it.
  const isFromShoulder = corners.every(({ name }) => name !== "shoulderTip");
  const usual = isFromShoulder ? FROM_SHOULDER : FROM_ARMHOLE;
  const steps = Array.from({ length: 2 * STEPS + 1 }, (_, i) => usual + ((i - STEPS) / STEPS) * EITHER_WAY);
  const places = steps.map((share) => {
    const at = pointOn(ring, top + span * share);
    return { at, off: Math.abs(lineDistance(at, a, b)) };
  });
  const best = places.reduce((most, { off }, i) => (off > invariant(places[most], "place").off ? i : most), 0);
  // Fuller still beyond the reach is the bend of the armhole, or of the waist.
  const isFullest = best > 0 && best < places.length - 1 && invariant(places[best], "place").off > SEAM_FULL_LEAST;
  return invariant(places[isFullest ? best : STEPS], "place").at;
}
const STEPS = 30;
/** Shares of the seam from its top to the waist (common practice, no source), and how far the fullest place is looked for. */
const FROM_ARMHOLE = 0.5;
const FROM_SHOULDER = 0.6;
const EITHER_WAY = 0.08;

/** The mark nearest to where the bust point is expected; without darts, the only one that lies where a bust point may. */
function markedIn(size: TracedSize, marks: readonly Mark[], expected: PiecePoint | null): PiecePoint | null {
  const ends = size.darts.map(({ apex }) => apex);
  const inside = marks
    .filter((mark) => mark.size === null || mark.size === size.label)
    .map((mark) => ({
      at: intoPiece(size.place, sheetPoint(...ontoHalf(size.mirror, mark.at.x, mark.at.y))),
      own: mark.size !== null,
      form: mark.form,
    }))
    .filter(({ at }) => isInOutline(size.ring.edges, at) || nearestOn(size.ring, at).distance < LEG_MEETS_LINE);
  const [named] = inside
    .filter(({ form }) => form === "writing")
    .toSorted((p, q) => Number(q.own) - Number(p.own) || offFrom(expected, p.at) - offFrom(expected, q.at));
  const drawn = inside.filter(({ form }) => form !== "writing");
  const clear = drawn.filter(({ at }) => ends.every((end) => distance(end, at) > AT_END));
  if (named !== undefined) {
    // Written beside a mark, it names that one; else it stands where it says.
    const [beside] = clear
      .filter(({ at, own }) => distance(at, named.at) < NAMED_BESIDE && own === named.own)
      .toSorted((p, q) => distance(p.at, named.at) - distance(q.at, named.at));
    return beside?.at ?? named.at;
  }
  if (expected === null) {
    const [only, more] = clear.filter(({ at }) => isLikelyPlace(size, at));
    return only !== undefined && more === undefined ? only.at : null;
  }
  const near = clear
    .filter(({ at }) => distance(at, expected) < BUST_POINT_MARKED)
    // A mark of the very size, then a cross or circle before a bare point, then the nearest.
    .toSorted(
      (p, q) =>
        Number(q.own) - Number(p.own) ||
        Number(p.form === "point") - Number(q.form === "point") ||
        distance(p.at, expected) - distance(q.at, expected),
    );
  return near[0]?.at ?? null;
}

const offFrom = (expected: PiecePoint | null, at: PiecePoint): Mm => (expected === null ? 0 : distance(expected, at));

function isLikelyPlace({ ring }: TracedSize, at: PiecePoint): boolean {
  const { x, y, width, height } = extentOf(flattened(ring, 1).points);
  const [u, v] = [(at.x - x) / width, (at.y - y) / height];
  return u > 0.2 && u < 0.75 && v > 0.3 && v < 0.85;
}

const boxOf = ({ ring }: TracedSize) => extentOf(ring.edges.map(({ a }) => a));

/** The same shares of the width and height of another size. */
function sameShare(size: TracedSize, other: TracedSize, at: PiecePoint): PiecePoint {
  const [here, there] = [boxOf(size), boxOf(other)];
  return piecePoint(
    here.x + ((at.x - there.x) / there.width) * here.width,
    here.y + ((at.y - there.y) / there.height) * here.height,
  );
}
