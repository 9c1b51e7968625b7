/** Where a spot of the cloth would lie were the cloth round it flat: the shares that its neighbours have in its place. */
import { distance, piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { FLATTEST } from "../tolerance";
import type { Mm } from "../units";
import type { FlatMesh } from "./flatMesh";
import type { Round } from "./settle";
import type { Spot } from "./spot";
import { becameOf, type Sewn } from "./stitch";

/**
 * All spots but the tips and the corners.
 *
 * @param tips   nodes at the tips of darts
 * @param centre nodes on a centre line past which the surface goes on as its mirror image
 */
export function roundsOf(
  meshes: readonly FlatMesh[],
  sewn: Sewn,
  spots: readonly Spot[],
  tips: ReadonlySet<number>,
  centre: ReadonlySet<number>,
): readonly Round[] {
  const open = new Set(
    sewn.links.flatMap(({ a, b, across }) => (across !== null || (centre.has(a) && centre.has(b)) ? [] : [a, b])),
  );
  return [
    ...insideRounds(sewn, spots, stiffness(meshes), (node) => !open.has(node) && !tips.has(node)),
    ...edgeRounds(meshes, sewn, spots, open, centre),
  ];
}

/** mm from the tip of a dart at which the cloth is as stiff as anywhere (our own choice: about the round of a bust). */
const TIP_REACH: Mm = 70;

type StiffAt = (flat: readonly PiecePoint[]) => number;

function stiffness(meshes: readonly FlatMesh[]): StiffAt {
  const tips = meshes.flatMap(({ ring }) => ring.tips.map(({ at }) => at));
  return (flat) => Math.min(1, ...flat.flatMap((p) => tips.map((tip) => distance(p, tip) / TIP_REACH)));
}

/**
 * @source mean value coordinates: the share of a neighbour is (tan(α/2) + tan(β/2)) / r, α and β the angles of the two
 * triangles beside it and r its distance; all of them as in the flat
 */
function insideRounds(
  { nodes, triangles, links }: Sewn,
  spots: readonly Spot[],
  stiffAt: StiffAt,
  wanted: (node: number) => boolean,
): readonly Round[] {
  const rests = new Map(links.map(({ a, b, rest }) => [pairKey(a, b), rest]));
  const restOf = (a: number, b: number): Mm => invariant(rests.get(pairKey(a, b)), "side");
  const shares = nodes.map(() => new Map<number, number>());
  for (const [a, b, c] of triangles) {
    for (const [at, from, to] of [
      [a, b, c],
      [b, c, a],
      [c, a, b],
    ] as const) {
      const [r1, r2, far] = [restOf(at, from), restOf(at, to), restOf(from, to)];
      const cosine = Math.min(1, Math.max(FLATTEST - 1, (r1 * r1 + r2 * r2 - far * far) / (2 * r1 * r2)));
      const half = Math.sqrt((1 - cosine) / (1 + cosine));
      const own = invariant(shares[at], "shares");
      own.set(from, (own.get(from) ?? 0) + half / r1);
      own.set(to, (own.get(to) ?? 0) + half / r2);
    }
  }
  return spots.flatMap((spot, index) => {
    if (!wanted(index)) return [];
    const own = [...invariant(shares[index], "shares")];
    const sum = own.reduce((all, [, share]) => all + share, 0);
    return [
      {
        spot,
        stiff: stiffAt(invariant(nodes[index], "node").flat),
        others: own.map(([other, share]) => ({ spot: invariant(spots[other], "spot"), share: share / sum })),
      },
    ];
  });
}

const PAIR_KEY = 1 << 16;
const pairKey = (a: number, b: number): number => Math.min(a, b) * PAIR_KEY + Math.max(a, b);

/** Spots within an open edge: of all shares that put the spot in its place, those with the least squares. */
function edgeRounds(
  meshes: readonly FlatMesh[],
  sewn: Sewn,
  spots: readonly Spot[],
  open: ReadonlySet<number>,
  centre: ReadonlySet<number>,
): readonly Round[] {
  return meshes.flatMap(({ ring, nodes, triangles }, meshIndex) => {
    const within = new Set(
      ring.stretches.flatMap((stretch) => (stretch.kind === "edge" ? stretch.nodes.slice(1, -1) : [])),
    );
    for (const at of ring.nodes.keys()) if (centre.has(becameOf(sewn, meshIndex, at))) within.add(at);
    const around = new Map<number, Set<number>>();
    for (const [a, b, c] of triangles) {
      for (const [at, from, to] of [
        [a, b, c],
        [b, c, a],
        [c, a, b],
      ] as const) {
        if (!within.has(at)) continue;
        const own = around.get(at) ?? new Set<number>();
        around.set(at, own.add(from).add(to));
      }
    }
    return [...around].flatMap(([at, others]) => {
      if (!open.has(becameOf(sewn, meshIndex, at))) return [];
      const flat = [...others].map((other) => invariant(nodes[other], "node"));
      const mirrored = centre.has(becameOf(sewn, meshIndex, at)) ? flat.map(({ x, y }) => piecePoint(-x, y)) : [];
      const shares = leastShares(invariant(nodes[at], "node"), [...flat, ...mirrored]);
      if (shares === null) return [];
      const shareOf = (index: number): number =>
        invariant(shares[index], "share") + (mirrored.length > 0 ? invariant(shares[index + flat.length], "share") : 0);
      const spotOf = (node: number): Spot => invariant(spots[becameOf(sewn, meshIndex, node)], "spot");
      return [
        {
          spot: spotOf(at),
          stiff: 1,
          others: [...others].map((other, index) => ({ spot: spotOf(other), share: shareOf(index) })),
        },
      ];
    });
  });
}

/** Shares that add up to 1 and put the point between the others; null where the others lie on a line. */
function leastShares(p: PiecePoint, others: readonly PiecePoint[]): readonly number[] | null {
  const count = others.length;
  const x = others.reduce((sum, other) => sum + other.x, 0) / count;
  const y = others.reduce((sum, other) => sum + other.y, 0) / count;
  let [xx, xy, yy] = [0, 0, 0];
  for (const other of others) {
    xx += (other.x - x) ** 2;
    xy += (other.x - x) * (other.y - y);
    yy += (other.y - y) ** 2;
  }
  const whole = xx * yy - xy * xy;
  if (whole <= FLATTEST * (xx + yy) ** 2) return null;
  const [dx, dy] = [p.x - x, p.y - y];
  const [u, v] = [(yy * dx - xy * dy) / whole, (xx * dy - xy * dx) / whole];
  return others.map((other) => 1 / count + u * (other.x - x) + v * (other.y - y));
}
