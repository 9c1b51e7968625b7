/**
 * Parts as they are cut, with their allowances: the same cutting line as on the true-scale paper. mm; x across, y along the
 * part's own grain; what lies on the fold has its fold at x = 0.
 */
import { cuttingLine } from "../allowance/cuttingLine";
import { stretchesOf } from "../cutting/stretches";
import type { Allowances } from "../decisions/allowances";
import { cutDepth, cutWidth, type Part, type PiecePart, type SectorPart } from "../parts/part";
import { remember } from "../remember";
import { CUTTING_ACCURACY, ON_FOLD, SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
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
      const ring = pieceRing(part, allowances);
      return part.cut.onFold ? { open: unfolded(ring), half: ring } : { open: ring, half: null };
    }
    case "rectangle": {
      const [width, length] = [cutWidth(part), cutDepth(part)];
      // On the fold what is given is the half: it has a seam at one side alone.
      const across = part.cut.onFold ? 2 * (part.width + part.allowances.sides) : width;
      return { open: boxRing(across, length), half: boxRing(across / 2, length) };
    }
    case "sector": {
      const half = halfSector(part);
      return { open: unfolded(half), half };
    }
  }
}

function pieceRing({ piece, cut }: PiecePart, allowances: Allowances): Ring {
  const stretches = stretchesOf(piece, allowances, cut.onFold);
  const ring = cuttingLine(stretches).map(({ at }) => ({ x: at.x, y: at.y }));
  const fold = stretches.find((stretch) => stretch.fold);
  if (fold === undefined) return ring;
  const { x: onFold } = fold.curve.a;
  return ring.map(({ x, y }) => ({ x: Math.abs(x - onFold) < ON_FOLD ? 0 : x - onFold, y }));
}

/**
 * Half a share of a ring about the origin, from straight down to the right: any share is alike on both sides of its middle, and
 * what is given of one on the fold is the half. Sides have their allowance square to them. What closes to a whole ring is cut as
 * a disc: from the hole nothing is cut.
 */
function halfSector({ inner, outer, angle, allowances, foldSides }: SectorPart): Ring {
  const [near, far] = [Math.max(0, inner - allowances.inner), outer + allowances.outer];
  const half = foldSides === 1 ? angle : angle / 2;
  const reach = (radius: Mm): number =>
    Math.min(Math.PI, half + (radius <= 0 ? 0 : Math.asin(Math.min(1, allowances.sides / radius))));
  const hole = near <= 0 || reach(near) >= Math.PI ? [] : arc(near, reach(near), 0);
  const isWhole = reach(far) >= Math.PI;
  const ring = [...arc(far, 0, reach(far)), ...(isWhole ? [] : hole.length > 0 ? hole : [{ x: 0, y: 0 }])];
  return ring.map(({ x, y }) => ({ x: Math.abs(x) < SAME_POINT ? 0 : x, y }));
}

function arc(radius: Mm, from: number, to: number): Ring {
  const step = 2 * Math.acos(Math.max(0, 1 - CUTTING_ACCURACY / radius));
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: steps + 1 }, (_, index) => {
    const at = from + ((to - from) * index) / steps;
    return { x: radius * Math.sin(at), y: radius * Math.cos(at) };
  });
}

/** A half whose fold lies at x = 0, laid open: from one end of the fold round to the other, and back as its mirror image. */
function unfolded(half: Ring): Ring {
  const isOn = (index: number): boolean => Math.abs(half[index % half.length]?.x ?? Infinity) <= ON_FOLD;
  const start = half.findIndex((_, index) => isOn(index) && !isOn(index + 1));
  if (start < 0) return half;
  const way = [...half.slice(start), ...half.slice(0, start)];
  const end = way.findIndex(({ x }, index) => index > 0 && Math.abs(x) <= ON_FOLD);
  const round = way.slice(0, end + 1);
  const back = round.slice(1, -1).toReversed();
  return [...round, ...back.map(({ x, y }) => ({ x: -x, y }))];
}
