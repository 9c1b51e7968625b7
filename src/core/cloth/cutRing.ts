/**
 * Parts as they are cut, with their allowances: the same cutting line as on the true-scale paper. mm; x across, y along the
 * part's own grain; what lies on the fold has its fold at x = 0.
 */
import { cuttingLine } from "../allowance/cuttingLine";
import { stretchesOf } from "../cutting/stretches";
import type { Allowances } from "../decisions/allowances";
import { cutDepth, cutWidth, type Part, type PiecePart, type SectorPart } from "../parts/part";
import { drawnHalves } from "../parts/halfParts";
import { remember } from "../remember";
import { CUTTING_ACCURACY, ON_FOLD, SAME_POINT } from "../tolerance";
import { radians, type Mm } from "../units";
import type { ClothSpot } from "./cutting";
import { boxRing, type Ring } from "./rings";

export interface CutRing {
  /** As it is once it lies open. */
  readonly open: Ring;
  /** What lies on the fold where it is cut there, its fold at x = 0. null: its two halves are not alike. */
  readonly half: Ring | null;
}

const ringOf: (from: { readonly part: Part; readonly allowances: Allowances }) => CutRing = remember(
  ["part", "allowances"],
  ({ part, allowances }) => derive(part, allowances),
);

export const cutRingOf = (part: Part, allowances: Allowances): CutRing => ringOf({ part, allowances });

function derive(part: Part, allowances: Allowances): CutRing {
  switch (part.kind) {
    case "piece": {
      const [left, right] = drawnHalves(part).map((half) => pieceRing(half, allowances));
      if (left !== undefined && right !== undefined) return { open: joined(left, right), half: null };
      const ring = left ?? [];
      return part.cut.onFold ? { open: unfolded(ring), half: ring } : { open: ring, half: null };
    }
    case "rectangle": {
      const [width, length] = [cutWidth(part), cutDepth(part)];
      // On the fold what is given is the half: it has a seam at one side alone.
      const across = part.cut.onFold ? 2 * (part.width + part.allowances.sides) : width;
      return { open: boxRing(across, length), half: boxRing(across / 2, length) };
    }
    case "sector":
      return sectorCut(part);
  }
}

/** One side of it along the grain; on the fold its middle, which is then its first side. A level waist is not alike on both sides. */
function sectorCut(part: SectorPart): CutRing {
  const ring = sectorRing(part);
  if (part.foldSides === 1) return { open: unfolded(ring), half: ring };
  if (part.waistRadii !== undefined) return { open: ring, half: null };
  return { open: ring, half: sectorRing({ ...part, angle: radians(part.angle / 2), foldSides: 1 }) };
}

function pieceRing({ piece, cut, allowances: own }: PiecePart, allowances: Allowances): Ring {
  const stretches = stretchesOf(piece, { ...allowances, ...own }, cut.onFold);
  const ring = cuttingLine(stretches).map(({ at }) => ({ x: at.x, y: at.y }));
  const fold = stretches.find((stretch) => stretch.fold);
  if (fold === undefined) return ring;
  const { x: onFold } = fold.curve.a;
  return ring.map(({ x, y }) => ({ x: Math.abs(x - onFold) < ON_FOLD ? 0 : x - onFold, y }));
}

/**
 * A share of a ring about the origin, from straight down to the right. Sides have their allowance square to them, but none on
 * the fold. What closes to a whole ring is cut as a disc: from the hole nothing is cut.
 */
function sectorRing(part: SectorPart): Ring {
  const { outer, angle, allowances, foldSides } = part;
  const far = outer + allowances.outer;
  const beyond = (radius: Mm): number => (radius <= 0 ? 0 : Math.asin(Math.min(1, allowances.sides / radius)));
  const before = (radius: Mm): number => (foldSides === 1 ? 0 : -beyond(radius));
  const most = foldSides === 1 ? Math.PI : 2 * Math.PI;
  const last = angle + beyond(far);
  if (last - before(far) >= most - SAME_POINT / far) return arc(() => far, 0, most);
  const near = (at: number): Mm => Math.max(0, waistAt(part, at) - allowances.inner);
  const [first, end] = [near(0), near(angle)];
  const room = (most - angle) / (foldSides === 1 ? 1 : 2);
  const hole = arc(near, angle + Math.min(beyond(end), room), Math.max(before(first), -room));
  return [...arc(() => far, before(far), last), ...hole].map(({ x, y }) => ({
    x: Math.abs(x) < SAME_POINT ? 0 : x,
    y,
  }));
}

/** How far the waist lies from the pin: straight from mark to mark where it is no circle. */
function waistAt({ inner, waistRadii = [] }: SectorPart, at: number): Mm {
  const next = waistRadii.findIndex((mark) => mark.at >= at);
  const [before, after] = [waistRadii[next - 1], waistRadii[next]];
  if (after === undefined) return waistRadii.at(-1)?.radius ?? inner;
  if (before === undefined) return after.radius;
  return before.radius + ((after.radius - before.radius) * (at - before.at)) / (after.at - before.at);
}

/** From one direction to another, never further off the line than the cutting line is. */
function arc(radiusAt: (at: number) => Mm, from: number, to: number): Ring {
  const radius = Math.max(radiusAt(from), radiusAt(to), SMALLEST_ARC);
  const step = 2 * Math.acos(1 - CUTTING_ACCURACY / radius);
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: steps + 1 }, (_, index) => {
    const at = from + ((to - from) * index) / steps;
    return { x: radiusAt(at) * Math.sin(at), y: radiusAt(at) * Math.cos(at) };
  });
}

/** mm. */
const SMALLEST_ARC: Mm = 1;

/** A half whose fold lies at x = 0, laid open: from one end of the fold round to the other, and back as its mirror image. */
const unfolded = (half: Ring): Ring => joined(half, half);

/**
 * Two halves that hang together at x = 0, each given to the right of it: the second is laid at the left, its centre line's upper
 * end on the first one's.
 */
function joined(half: Ring, other: Ring): Ring {
  const [round, back] = [fromFold(half), fromFold(other)];
  const [end, otherEnd, start, otherStart] = [round.at(-1), back.at(-1), round[0], back[0]];
  if (end === undefined || otherEnd === undefined || start === undefined || otherStart === undefined) return half;
  const down = Math.min(start.y, end.y) - Math.min(otherStart.y, otherEnd.y);
  const isMet = (p: ClothSpot): boolean =>
    [start, end].some(({ y }) => Math.abs(p.x) <= ON_FOLD && Math.abs(p.y + down - y) <= ON_FOLD);
  const left = back.filter((p) => !isMet(p)).toReversed();
  return [...round, ...left.map(({ x, y }) => ({ x: -x, y: y + down }))];
}

/** From one end of the fold round to the other. */
function fromFold(half: Ring): Ring {
  const isOn = (index: number): boolean => Math.abs(half[index % half.length]?.x ?? Infinity) <= ON_FOLD;
  const start = half.findIndex((_, index) => isOn(index) && !isOn(index + 1));
  if (start < 0) return half;
  const way = [...half.slice(start), ...half.slice(0, start)];
  // A ring that closes but for a slit may touch the fold's line again on the other side of its hole: the fold is what comes last.
  const end = way.findLastIndex(({ x }) => Math.abs(x) > ON_FOLD) + 1;
  return way.slice(0, end + 1);
}
