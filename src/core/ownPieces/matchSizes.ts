/**
 * The sizes of a piece brought to the same edges: corner by corner, and between corners by shares of the length. What is drawn
 * alike in all sizes is kept as it is; the rest is fitted.
 */
import { edgeLength, edgeParameterAtLength, edgePart, type EdgeCurve } from "../geometry/edgeCurve";
import { invariant } from "../result";
import { SAME_POINT, SHARES_ALIKE } from "../tolerance";
import type { Mm } from "../units";
import { asCubic, fitAlike } from "./fitCubics";
import { isSmooth, turnAt, type Chain } from "./tracedRing";

export interface Matched {
  /** The edges of each size: as many in all, straight where they are straight in all. */
  readonly edges: readonly Chain[];
  /** How far each size's leave what is drawn, mm. */
  readonly deviations: readonly Mm[];
}

/** More edges than this between two corners stand for a curve; fitting says it shorter. */
const FEW_EDGES = 6;

/** One seam between two named corners, in every size. */
export function matchSizes(chains: readonly Chain[]): Matched {
  if (chains.some((chain) => chain.length === 0)) return { edges: chains, deviations: chains.map(() => 0) };
  if (areAlike(chains)) return { edges: alike(chains), deviations: chains.map(() => 0) };
  const parted = partedAtCorners(chains);
  const edges: EdgeCurve<"piece">[][] = chains.map(() => []);
  const deviations: Mm[] = chains.map(() => 0);
  for (const part of parted) {
    const isKept = areAlike(part);
    const made = isKept ? { edges: alike(part), off: [] } : fitAlike(part);
    for (const [size, chain] of made.edges.entries()) {
      for (const edge of chain) invariant(edges[size], "size").push(edge);
      deviations[size] = Math.max(invariant(deviations[size], "size"), made.off[size] ?? 0);
    }
  }
  return { edges, deviations };
}

const lengthOf = (chain: Chain): Mm => chain.reduce((sum, edge) => sum + edgeLength(edge), 0);

/** Shares of the length at which edges meet. */
function sharesOf(chain: Chain): readonly number[] {
  const whole = lengthOf(chain);
  let along: Mm = 0;
  return chain.map((edge) => {
    along += edgeLength(edge);
    return along / whole;
  });
}

/** Whether sizes are drawn with the same few edges at like shares of their length, none of them a stretch of a curve. */
function areAlike(chains: readonly Chain[]): boolean {
  const [first] = chains;
  if (first === undefined || first.length > FEW_EDGES) return false;
  const shares = sharesOf(first);
  return chains.every((chain) => {
    if (chain.length !== first.length) return false;
    if (sharesOf(chain).some((share, index) => Math.abs(share - invariant(shares[index], "share")) > 2 * SHARES_ALIKE))
      return false;
    return chain.every((edge, index) => {
      const next = chain[index + 1];
      return (
        next === undefined || edge.curve !== null || next.curve !== null || !isSmooth(edge, next, turnAt(edge, next))
      );
    });
  });
}

/** Straight where all are; else cubics all. */
function alike(chains: readonly Chain[]): readonly Chain[] {
  const count = invariant(chains[0], "size").length;
  const straight = Array.from({ length: count }, (_, index) => chains.every((chain) => chain[index]?.curve === null));
  return chains.map((chain) => chain.map((edge, index) => (straight[index] === true ? edge : asCubic(edge))));
}

interface Corner {
  readonly share: number;
  /** Degrees. */
  readonly turn: number;
}

/** A joint of short stretches bends so many times as its neighbours do, and by so many degrees, where two curves met in a corner. */
const KINKS = 3;
const KINK = 1;
/** More of them are an unsteady hand. */
const MOST_KINKS = 8;

/** Joints, by the edge that ends there, where a line in short stretches turns at once. */
function kinksIn(chain: Chain): ReadonlySet<number> {
  const bends = chain.map((edge, index) => {
    const next = chain[index + 1];
    if (next === undefined || edge.curve !== null || next.curve !== null) return { turn: 0, bend: 0 };
    const turn = Math.abs(turnAt(edge, next));
    return { turn, bend: turn / (edgeLength(edge) + edgeLength(next)) };
  });
  const found = bends.flatMap(({ turn, bend }, index) => {
    const beside = Math.max(bends[index - 1]?.bend ?? 0, bends[index + 1]?.bend ?? 0);
    return turn > KINK && bend > KINKS * beside ? [index] : [];
  });
  return new Set(found.length > MOST_KINKS ? [] : found);
}

/** Each size cut at its corners; a corner that some sizes lack is put there by its share of the length. */
function partedAtCorners(chains: readonly Chain[]): readonly (readonly Chain[])[] {
  const corners = chains.map((chain): readonly Corner[] => {
    const shares = sharesOf(chain);
    const kinks = kinksIn(chain);
    return chain.flatMap((edge, index): Corner[] => {
      const next = chain[index + 1];
      if (next === undefined) return [];
      const turn = turnAt(edge, next);
      const isCorner = kinks.has(index) || !isSmooth(edge, next, turn);
      return isCorner ? [{ share: invariant(shares[index], "share"), turn }] : [];
    });
  });
  const most = corners.reduce((best, one) => (one.length > best.length ? one : best), []);
  if (most.length === 0) return [chains];
  const cuts = corners.map((own) => matchedShares(most, own));
  return Array.from({ length: most.length + 1 }, (_, part) =>
    chains.map((chain, size) => {
      const own = invariant(cuts[size], "size");
      return between(chain, part === 0 ? 0 : invariant(own[part - 1], "share"), own[part] ?? 1);
    }),
  );
}

/**
 * The shares at which a size has the corners that another has: its own where it has them, in order, each taken for the one
 * whose share and turn are nearest; else the share between its neighbours'.
 */
function matchedShares(wanted: readonly Corner[], own: readonly Corner[]): readonly number[] {
  // Of all ways to leave some out, the one that costs least; rows are wanted corners, columns own ones.
  const cost = (i: number, j: number): number => {
    const [a, b] = [invariant(wanted[i], "corner"), invariant(own[j], "corner")];
    return Math.abs(a.share - b.share) / SHARES_ALIKE + Math.abs(a.turn - b.turn) / TURNS_ALIKE;
  };
  const [rows, columns] = [wanted.length, own.length];
  const table = Array.from({ length: rows + 1 }, () => Array.from({ length: columns + 1 }, () => 0));
  for (let i = 1; i <= rows; i += 1) invariant(table[i], "row")[0] = i * LEFT_OUT;
  for (let j = 1; j <= columns; j += 1) invariant(table[0], "row")[j] = j * LEFT_OUT;
  const cell = (i: number, j: number): number => invariant(invariant(table[i], "row")[j], "cell");
  for (let i = 1; i <= rows; i += 1) {
    for (let j = 1; j <= columns; j += 1) {
      invariant(table[i], "row")[j] = Math.min(
        cell(i - 1, j - 1) + cost(i - 1, j - 1),
        cell(i - 1, j) + LEFT_OUT,
        cell(i, j - 1) + LEFT_OUT,
      );
    }
  }
  const found: (number | null)[] = Array.from({ length: rows }, () => null);
  for (let i = rows, j = columns; i > 0 && j > 0;) {
    if (cell(i, j) === cell(i - 1, j - 1) + cost(i - 1, j - 1)) {
      found[i - 1] = invariant(own[j - 1], "corner").share;
      i -= 1;
      j -= 1;
    } else if (cell(i, j) === cell(i - 1, j) + LEFT_OUT) i -= 1;
    else j -= 1;
  }
  return found.map((share, index) => {
    if (share !== null) return share;
    const before = found.findLastIndex((one, at) => at < index && one !== null);
    const after = found.findIndex((one, at) => at > index && one !== null);
    const [w0, o0] =
      before < 0 ? [0, 0] : [invariant(wanted[before], "corner").share, invariant(found[before], "share")];
    const [w1, o1] = after < 0 ? [1, 1] : [invariant(wanted[after], "corner").share, invariant(found[after], "share")];
    return o0 + ((invariant(wanted[index], "corner").share - w0) / (w1 - w0)) * (o1 - o0);
  });
}

/** What a corner that only one size has costs, and how far turns are alike; degrees. */
const LEFT_OUT = 1.5;
const TURNS_ALIKE = 40;

/** The edges between two shares of a chain's length; whole edges as they are. */
function between(chain: Chain, from: number, to: number): Chain {
  const whole = lengthOf(chain);
  const [start, end] = [from * whole, to * whole];
  const found: EdgeCurve<"piece">[] = [];
  let along: Mm = 0;
  for (const edge of chain) {
    const length = edgeLength(edge);
    const [a, b] = [Math.max(start - along, 0), Math.min(end - along, length)];
    if (b > a + SAME_POINT) {
      const t0 = a < SAME_POINT ? 0 : edgeParameterAtLength(edge, a);
      const t1 = length - b < SAME_POINT ? 1 : edgeParameterAtLength(edge, b);
      found.push(t0 === 0 && t1 === 1 ? edge : edgePart(edge, t0, t1));
    }
    along += length;
  }
  return found;
}
