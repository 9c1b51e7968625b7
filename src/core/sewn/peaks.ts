/** The first guess from which a front settles: a cone over every dart, and a blunt one over a princess seam. */
import { coneHeight } from "../dart/fullness";
import { angleAt, directionOf, distance, midpoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { radians, type Mm, type Radians } from "../units";
import { ringArea, type FlatMesh } from "./flatMesh";
import { meanOf } from "./spot";
import { becameOf, nodesOn, type Sewn } from "./stitch";

/** A cone to begin with: where its point is, and what angle it takes out. */
export interface Peak {
  readonly x: Mm;
  readonly y: Mm;
  readonly angle: Radians;
  /** The way from its point to the middle of the mouth, of length 1. */
  readonly mouth: { readonly x: number; readonly y: number };
  /** How far it reaches towards the mouth, and away from it. */
  readonly reach: Mm;
  readonly beyond: Mm;
  /** mm by which its point is rounded. */
  readonly blunt: Mm;
}

/** mm by which the cone begun with on a princess seam is rounded, its curvature being spread along the seam (our own choice). */
const PRINCESS_BLUNT: Mm = 20;

export function peaksOf(meshes: readonly FlatMesh[], sewn: Sewn): readonly Peak[] {
  // A cone goes on past its dart's legs: as far as a round piece of the same area would reach.
  const round = Math.sqrt(meshes.reduce((sum, { ring }) => sum + ringArea(ring.nodes), 0) / Math.PI);
  const darts = meshes.flatMap(({ ring }) =>
    ring.tips.map(({ at, inner, outer }): Peak => {
      const to = directionOf(at, midpoint(inner, outer));
      const leg = distance(at, inner);
      return {
        x: at.x,
        y: at.y,
        angle: angleAt(at, inner, outer),
        mouth: { x: Math.cos(to), y: Math.sin(to) },
        reach: leg,
        beyond: Math.max(leg, round),
        blunt: 0,
      };
    }),
  );
  const princess = princessPeak(meshes, sewn, round);
  return princess === null ? darts : [...darts, princess];
}

/** What a princess seam takes out along its way, gathered at the middle of it. */
function princessPeak(meshes: readonly FlatMesh[], sewn: Sewn, reach: Mm): Peak | null {
  const ends = new Set(nodesOn(meshes, sewn, ["neck", "shoulder", "armhole", "waist"]));
  const taken = new Map(
    nodesOn(meshes, sewn, ["princess"])
      .filter((node) => !ends.has(node))
      .map((node) => [node, 2 * Math.PI]),
  );
  for (const [meshIndex, { nodes, triangles }] of meshes.entries()) {
    for (const [a, b, c] of triangles) {
      for (const [at, from, to] of [
        [a, b, c],
        [b, c, a],
        [c, a, b],
      ] as const) {
        const node = becameOf(sewn, meshIndex, at);
        const left = taken.get(node);
        if (left !== undefined)
          taken.set(
            node,
            left - angleAt(invariant(nodes[at], "node"), invariant(nodes[from], "node"), invariant(nodes[to], "node")),
          );
      }
    }
  }
  const out = [...taken].filter(([, angle]) => angle > 0);
  const angle = out.reduce((sum, [, part]) => sum + part, 0);
  if (angle === 0) return null;
  const flatOf = (node: number): readonly PiecePoint[] => invariant(sewn.nodes[node], "node").flat;
  const x = out.reduce((sum, [node, part]) => sum + part * meanOf(flatOf(node).map((p) => p.x)), 0) / angle;
  const y = out.reduce((sum, [node, part]) => sum + part * meanOf(flatOf(node).map((p) => p.y)), 0) / angle;
  return { x, y, angle: radians(angle), mouth: { x: 0, y: 1 }, reach, beyond: reach, blunt: PRINCESS_BLUNT };
}

/** A first guess: all cones, one on the other. */
export const heightOver = (peaks: readonly Peak[], p: { readonly x: Mm; readonly y: Mm }): Mm =>
  peaks.reduce((sum, peak) => sum + heightOfPeak(peak, p.x - peak.x, p.y - peak.y), 0);

function heightOfPeak({ angle, mouth, reach, beyond, blunt }: Peak, dx: Mm, dy: Mm): Mm {
  const away = Math.hypot(dx, dy, blunt);
  const towards = away === 0 ? 0 : (dx * mouth.x + dy * mouth.y) / away;
  const here = reach + ((beyond - reach) * (1 - towards)) / 2;
  return coneHeight(angle, (reach + beyond) / 2) * Math.max(0, 1 - away / here);
}
