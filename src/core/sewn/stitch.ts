/** Sewing flat meshes: the nodes of a dart's two legs are made one, and those of a princess seam of two pieces. */
import { distance, type PiecePoint } from "../geometry/point";
import type { PointName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { Triangle } from "./delaunay";
import type { FlatMesh } from "./flatMesh";
import type { Stretch } from "./flatRing";

/** One node of the sewn surface and the flat nodes it was made of. */
interface Joined {
  readonly flat: readonly PiecePoint[];
}

export interface Sewn {
  readonly nodes: readonly Joined[];
  readonly triangles: readonly Triangle[];
  /** For each mesh, the sewn node that each of its nodes became. */
  readonly became: readonly (readonly number[])[];
  readonly links: readonly SewnLink[];
}

/** A side of a triangle with its length in the flat. */
export interface SewnLink {
  readonly a: number;
  readonly b: number;
  readonly rest: Mm;
  /** The far corners of the triangles on its two sides; null at an open edge. */
  readonly across: readonly [number, number] | null;
}

export function stitch(meshes: readonly FlatMesh[]): Sewn {
  const starts: number[] = [];
  let count = 0;
  for (const mesh of meshes) {
    starts.push(count);
    count += mesh.nodes.length;
  }
  // Every node points to an earlier one that it is sewn to, or to itself.
  const sewnTo = Array.from({ length: count }, (_, index) => index);
  const rootOf = (index: number): number => {
    let at = index;
    for (let next = sewnTo[at]; next !== undefined && next !== at; next = sewnTo[at]) at = next;
    return at;
  };
  for (const [a, b] of seamsOf(meshes, starts)) {
    const [first, second] = [rootOf(a), rootOf(b)];
    if (first !== second) sewnTo[Math.max(first, second)] = Math.min(first, second);
  }

  const places = new Map<number, number>();
  const flats: PiecePoint[][] = [];
  const became = meshes.map((mesh, meshIndex) =>
    mesh.nodes.map((node, index) => {
      const root = rootOf(invariant(starts[meshIndex], "start") + index);
      const place = places.get(root) ?? flats.push([]) - 1;
      places.set(root, place);
      invariant(flats[place], "joined node").push(node);
      return place;
    }),
  );
  const triangles = meshes.flatMap((mesh, meshIndex) => {
    const names = invariant(became[meshIndex], "mesh");
    return mesh.triangles.map(([a, b, c]): Triangle => [
      invariant(names[a], "a"),
      invariant(names[b], "b"),
      invariant(names[c], "c"),
    ]);
  });
  return { nodes: flats.map((flat) => ({ flat })), triangles, became, links: linksOf(meshes, became) };
}

/** Pairs of flat nodes that are sewn together. */
function seamsOf(meshes: readonly FlatMesh[], starts: readonly number[]): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  const open = new Map<string, readonly number[]>();
  for (const [meshIndex, { ring }] of meshes.entries()) {
    const start = invariant(starts[meshIndex], "start");
    for (const stretch of ring.stretches) {
      const nodes = stretch.nodes.map((node) => start + node);
      const key = stretch.kind === "leg" ? `${meshIndex} ${stretch.dart.name}` : princessKey(stretch);
      if (key === null) continue;
      const other = open.get(key);
      if (other === undefined) open.set(key, nodes);
      // Met the other way round: both a dart's second leg and the other piece's princess edge run against the first.
      else for (const [index, node] of other.toReversed().entries()) pairs.push([node, nodes[index] ?? node]);
    }
  }
  return pairs;
}

/** The same for the two edges of a princess seam that meet. */
function princessKey(stretch: Stretch): string | null {
  if (stretch.kind !== "edge" || stretch.edge.seam !== "princess") return null;
  const ends: readonly PointName[] = [stretch.edge.from, stretch.edge.to].toSorted();
  return ends.join(" ");
}

interface OpenLink {
  readonly a: number;
  readonly b: number;
  readonly lengths: Mm[];
  readonly far: number[];
}

function linksOf(meshes: readonly FlatMesh[], became: readonly (readonly number[])[]): readonly SewnLink[] {
  const links = new Map<string, OpenLink>();
  for (const [meshIndex, mesh] of meshes.entries()) {
    const names = invariant(became[meshIndex], "mesh");
    for (const [a, b, c] of mesh.triangles) {
      for (const [from, to, far] of [
        [a, b, c],
        [b, c, a],
        [c, a, b],
      ] as const) {
        const ends = [invariant(names[from], "from"), invariant(names[to], "to")] as const;
        const [low, high] = [Math.min(...ends), Math.max(...ends)];
        const key = `${low} ${high}`;
        const link = links.get(key) ?? { a: low, b: high, lengths: [], far: [] };
        links.set(key, link);
        link.lengths.push(distance(invariant(mesh.nodes[from], "node"), invariant(mesh.nodes[to], "node")));
        link.far.push(invariant(names[far], "far"));
      }
    }
  }
  return [...links.values()].map(({ a, b, lengths, far }) => {
    const [first, second] = far;
    return {
      a,
      b,
      // Where two sewn edges are not quite of a length the seam takes the middle of them.
      rest: lengths.reduce((sum, length) => sum + length, 0) / lengths.length,
      across: first === undefined || second === undefined ? null : [first, second],
    };
  });
}

/** The sewn nodes on the edges of some seams. */
export const nodesOn = (meshes: readonly FlatMesh[], sewn: Sewn, seams: readonly SeamName[]): readonly number[] =>
  meshes.flatMap(({ ring }, meshIndex) =>
    ring.stretches.flatMap((stretch) =>
      stretch.kind === "edge" && seams.includes(stretch.edge.seam)
        ? stretch.nodes.map((node) => becameOf(sewn, meshIndex, node))
        : [],
    ),
  );

/** The sewn node that a mesh's node became. */
export const becameOf = (sewn: Sewn, meshIndex: number, node: number): number =>
  invariant(invariant(sewn.became[meshIndex], "mesh")[node], "node");
