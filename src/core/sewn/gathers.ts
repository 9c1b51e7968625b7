/** A dart drawn up as gathers: nothing is cut away, its mouth is drawn together and the cloth behind it puckers. */
import { isInside, type FlatMesh } from "./flatMesh";
import { midpoint, type PiecePoint } from "../geometry/point";
import { pointOf } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import { becameOf, type Sewn, type SewnLink } from "./stitch";

/** What is left of the mouth's length: gathers have a thickness (our own choice). */
const DRAWN_UP = 0.2;

export interface GatheredLink {
  readonly rest: Mm;
  /** It keeps from being stretched alone. */
  readonly slack: boolean;
}

/** How each link behaves, gathers taken into account. */
export function gatheredLinks(meshes: readonly FlatMesh[], sewn: Sewn): readonly GatheredLink[] {
  const mouths = new Set<number>();
  const wedges: (readonly PiecePoint[])[] = [];
  for (const [meshIndex, { piece, ring }] of meshes.entries()) {
    for (const dart of piece.darts) {
      if (dart.gathered !== true) continue;
      wedges.push([pointOf(piece, dart.apex), pointOf(piece, dart.inner), pointOf(piece, dart.outer)]);
      for (const stretch of ring.stretches) {
        if (stretch.kind !== "edge" || stretch.edge.mouthOf !== dart.name) continue;
        for (const node of stretch.nodes) mouths.add(becameOf(sewn, meshIndex, node));
      }
    }
  }
  const flatOf = (node: number): PiecePoint => invariant(invariant(sewn.nodes[node], "node").flat[0], "flat node");
  return sewn.links.map(({ a, b, rest, across }: SewnLink) => {
    if (across === null && mouths.has(a) && mouths.has(b)) return { rest: rest * DRAWN_UP, slack: true };
    const middle = midpoint(flatOf(a), flatOf(b));
    return { rest, slack: wedges.some((wedge) => isInside(wedge, middle)) };
  });
}
