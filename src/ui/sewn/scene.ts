/** A sewn front as it is seen from one side: faces with their shade and lines, the furthest first. No page needed. */
import type { SewnFront, SewnTip } from "../../core/sewn/sewFront";
import type { SewnLine } from "../../core/sewn/lines";
import type { Place } from "../../core/sewn/spot";
import { invariant } from "../../core/result";

/** Right and down from the middle of the picture, and towards the viewer; mm. */
interface Seen {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export type Mark =
  | {
      readonly kind: "face";
      readonly depth: number;
      readonly corners: readonly [Seen, Seen, Seen];
      readonly light: number;
      readonly wrongSide: boolean;
    }
  | {
      readonly kind: "line";
      readonly depth: number;
      readonly from: Seen;
      readonly to: Seen;
      readonly line: SewnLine["kind"];
      readonly along: number;
    }
  | { readonly kind: "tip"; readonly depth: number; readonly at: Seen };

export interface Extent {
  /** mm from the middle to either side at any turn, and up and down. */
  readonly across: number;
  readonly top: number;
  readonly bottom: number;
}

/** What does not change with the turn: the surface, its mirrored half, and the way each corner faces. */
export interface Model {
  readonly front: SewnFront;
  readonly normals: readonly Place[];
  readonly extent: Extent;
}

/** Degrees by which the viewer looks down on it. */
const LOOKED_DOWN = 7;
/** Where the light comes from: up, from the left and before it. */
const LIGHT = unit({ x: -0.55, y: -0.5, z: 0.68 });
/** Share of the light that comes from the viewer. */
const FROM_VIEWER = 0.35;
/** mm by which lines and tips are drawn before the cloth that they lie on. */
const LINE_BEFORE = 7;
const TIP_BEFORE = 9;

export function modelOf(front: SewnFront): Model {
  const sums = front.places.map(() => ({ x: 0, y: 0, z: 0 }));
  for (const [a, b, c] of front.triangles) {
    const [p, q, r] = [
      invariant(front.places[a], "a"),
      invariant(front.places[b], "b"),
      invariant(front.places[c], "c"),
    ];
    const [ux, uy, uz] = [q.x - p.x, q.y - p.y, q.z - p.z];
    const [vx, vy, vz] = [r.x - p.x, r.y - p.y, r.z - p.z];
    for (const corner of [a, b, c]) {
      const sum = invariant(sums[corner], "sum");
      sum.x += uy * vz - uz * vy;
      sum.y += uz * vx - ux * vz;
      sum.z += ux * vy - uy * vx;
    }
  }
  let [across, top, bottom] = [1, Infinity, -Infinity];
  const tilt = Math.sin((LOOKED_DOWN * Math.PI) / 180);
  for (const { x, y, z } of front.places) {
    const away = Math.hypot(x, z);
    across = Math.max(across, away);
    top = Math.min(top, y - away * tilt);
    bottom = Math.max(bottom, y + away * tilt);
  }
  return { front, normals: sums.map(unit), extent: { across, top, bottom } };
}

function unit({ x, y, z }: Place): Place {
  const size = Math.hypot(x, y, z);
  return size === 0 ? { x: 0, y: 0, z: 1 } : { x: x / size, y: y / size, z: z / size };
}

/**
 * What is seen of it.
 *
 * @param turn degrees about the upright axis; positive turns what faces the viewer to the right
 */
export function sceneOf({ front, normals }: Model, turn: number): readonly Mark[] {
  const marks: Mark[] = [];
  for (const side of [1, -1] as const) {
    const look = lookFrom(turn, side);
    const seen = front.places.map(look);
    const light = normals.map((normal) => lightOn(look(normal)));
    for (const [a, b, c] of front.triangles) {
      const corners = [invariant(seen[a], "a"), invariant(seen[b], "b"), invariant(seen[c], "c")] as const;
      const [p, q, r] = corners;
      const facing = side * ((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
      const lit = (invariant(light[a], "a") + invariant(light[b], "b") + invariant(light[c], "c")) / 3;
      marks.push({ kind: "face", depth: (p.z + q.z + r.z) / 3, corners, light: lit, wrongSide: facing < 0 });
    }
    for (const line of front.lines) marks.push(...lineMarks(line, look));
    for (const tip of front.tips) marks.push(tipMark(tip, look));
  }
  return marks.toSorted((one, other) => one.depth - other.depth);
}

type Look = (place: Place) => Seen;

function lookFrom(turn: number, side: 1 | -1): Look {
  const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
  const [down, level] = [Math.sin((LOOKED_DOWN * Math.PI) / 180), Math.cos((LOOKED_DOWN * Math.PI) / 180)];
  return ({ x, y, z }) => {
    const towards = z * cos - side * x * sin;
    return { x: side * x * cos + z * sin, y: y * level + towards * down, z: towards * level - y * down };
  };
}

/** The light from the lamp and, for the outline, a little from where the viewer stands. */
const lightOn = ({ x, y, z }: Seen): number =>
  (1 - FROM_VIEWER) * Math.max(0, x * LIGHT.x + y * LIGHT.y + z * LIGHT.z) + FROM_VIEWER * Math.abs(z);

function lineMarks(line: SewnLine, look: Look): readonly Mark[] {
  const seen = line.places.map(look);
  let along = 0;
  return seen.slice(1).map((to, index): Mark => {
    const from = invariant(seen[index], "from");
    const start = along;
    along += Math.hypot(to.x - from.x, to.y - from.y);
    return { kind: "line", depth: (from.z + to.z) / 2 + LINE_BEFORE, from, to, line: line.kind, along: start };
  });
}

function tipMark({ place }: SewnTip, look: Look): Mark {
  const at = look(place);
  return { kind: "tip", depth: at.z + TIP_BEFORE, at };
}
