/** What the intersections of curves share: meetings at end points, stretches run together, one meeting kept once. */
import { CURVE_ACCURACY, SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { cubicPointAt, type Cubic } from "./bezier";
import { cubicHullBounds } from "./bezierBounds";
import { cubicNearest } from "./bezierNearest";
import { isWithinBounds } from "./bounds";
import { distance, type Frame, type Point } from "./point";
import type { Meeting } from "./segment";

/** How a meeting was found: at an end of a curve, by a clean crossing, or where the curves touch. */
type MeetingKind = "end" | "crossing" | "touch";

export interface Candidate<F extends Frame> extends Meeting<F> {
  readonly kind: MeetingKind;
  /** How far apart the two curves are there, in mm. */
  readonly gap: Mm;
}

/** Inner places at which a stretch is tried; two cubics that share these and both ends are one curve there. */
const TRIALS = 7;

/** The ends of either curve that lie within SAME_POINT of the other, with their exact parameters. */
export function endMeetings<F extends Frame>(c: Cubic<F>, d: Cubic<NoInfer<F>>): Candidate<F>[] {
  const found: Candidate<F>[] = [];
  for (const [end, t2] of [
    [d.a, 0],
    [d.b, 1],
  ] as const) {
    if (!isWithinBounds(end, cubicHullBounds(c), SAME_POINT)) continue;
    const near = cubicNearest(c, end);
    if (near.distance > SAME_POINT) continue;
    // Where two ends coincide both parameters are exact.
    const t1 = distance(c.a, end) <= SAME_POINT ? 0 : distance(c.b, end) <= SAME_POINT ? 1 : near.t;
    addMeeting(found, { t1, t2, point: end, kind: "end", gap: near.distance }, c, d);
  }
  for (const [end, t1] of [
    [c.a, 0],
    [c.b, 1],
  ] as const) {
    if (!isWithinBounds(end, cubicHullBounds(d), SAME_POINT)) continue;
    const near = cubicNearest(d, end);
    if (near.distance > SAME_POINT) continue;
    const t2 = distance(d.a, end) <= SAME_POINT ? 0 : distance(d.b, end) <= SAME_POINT ? 1 : near.t;
    addMeeting(found, { t1, t2, point: end, kind: "end", gap: near.distance }, c, d);
  }
  return found.toSorted((p, q) => p.t1 - q.t1);
}

/** The two ends of the first stretch along which the curves run together, or null. `ends` in order along c. */
export function sharedStretch<F extends Frame>(
  ends: readonly Candidate<F>[],
  c: Cubic<NoInfer<F>>,
  d: Cubic<NoInfer<F>>,
): readonly Candidate<F>[] | null {
  for (let i = 0; i + 1 < ends.length; i++) {
    const [p, q] = [ends[i], ends[i + 1]];
    if (p !== undefined && q !== undefined && runTogether(c, d, p, q)) return [p, q];
  }
  return null;
}

/** Adds a meeting unless it is one already known; of two such the end, else the one with the smaller gap, stays. */
export function addMeeting<F extends Frame>(
  found: Candidate<F>[],
  next: Candidate<NoInfer<F>>,
  c: Cubic<NoInfer<F>>,
  d: Cubic<NoInfer<F>>,
): void {
  const index = found.findIndex((known) => isSameMeeting(known, next, c, d));
  const known = found[index];
  if (known === undefined) found.push(next);
  else if (known.kind !== "end" && next.gap < known.gap) found[index] = next;
}

function isSameMeeting<F extends Frame>(p: Candidate<F>, q: Candidate<F>, c: Cubic<F>, d: Cubic<F>): boolean {
  const isNear =
    distance(p.point, q.point) <= CURVE_ACCURACY &&
    staysNear(c, p.t1, q.t1, p.point) &&
    staysNear(d, p.t2, q.t2, p.point);
  if (isNear) return true;
  // A touch is blurred: all along it the curves are one within SAME_POINT. Two ends or two clean crossings are not.
  return p.kind !== q.kind || p.kind === "touch" ? runTogether(c, d, p, q) : false;
}

// Two places between, at unequal shares: a curve that comes back through one of them has not stayed.
const staysNear = <F extends Frame>(c: Cubic<F>, from: number, to: number, p: Point<F>): boolean =>
  distance(cubicPointAt(c, (from + to) / 2), p) <= CURVE_ACCURACY &&
  distance(cubicPointAt(c, (2 * from + to) / 3), p) <= CURVE_ACCURACY;

function runTogether<F extends Frame>(c: Cubic<F>, d: Cubic<F>, p: Meeting<F>, q: Meeting<F>): boolean {
  for (let i = 1; i <= TRIALS; i++) {
    const share = i / (TRIALS + 1);
    if (!isOn(d, cubicPointAt(c, p.t1 + share * (q.t1 - p.t1)))) return false;
    if (!isOn(c, cubicPointAt(d, p.t2 + share * (q.t2 - p.t2)))) return false;
  }
  return true;
}

/** Whether all of a curve lies within SAME_POINT of another; judged by its middle, its ends and places between. */
export function liesOn<F extends Frame>(part: Cubic<F>, c: Cubic<NoInfer<F>>): boolean {
  // The middle first: it rules out nearly all pieces at once.
  if (!isOn(c, cubicPointAt(part, 0.5)) || !isOn(c, part.a) || !isOn(c, part.b)) return false;
  for (let i = 1; i <= TRIALS; i++) if (!isOn(c, cubicPointAt(part, i / (TRIALS + 1)))) return false;
  return true;
}

const isOn = <F extends Frame>(c: Cubic<F>, p: Point<F>): boolean =>
  isWithinBounds(p, cubicHullBounds(c), SAME_POINT) && cubicNearest(c, p).distance <= SAME_POINT;

/** The meetings in order along the first curve, without the notes of the search. */
export const inOrder = <F extends Frame>(found: readonly Candidate<F>[]): readonly Meeting<F>[] =>
  found.map(({ t1, t2, point }) => ({ t1, t2, point })).toSorted((p, q) => p.t1 - q.t1);
