/** Places in space. Frame: x from the centre line to the side, y down, z out of the chest towards the viewer; mm. */
import type { Mm } from "../units";

export interface Place {
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/** A place that is moved while a surface settles; never handed out. */
export interface Spot {
  x: Mm;
  y: Mm;
  z: Mm;
}

export const span = (a: Place, b: Place): Mm => Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2 + (b.z - a.z) ** 2);

/** The angle at `corner` between the directions to a and to b, radians. */
export function angleBetween(corner: Place, a: Place, b: Place): number {
  const [ux, uy, uz] = [a.x - corner.x, a.y - corner.y, a.z - corner.z];
  const [vx, vy, vz] = [b.x - corner.x, b.y - corner.y, b.z - corner.z];
  const cross = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  return Math.atan2(cross, ux * vx + uy * vy + uz * vz);
}

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
