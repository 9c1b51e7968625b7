/** Fullness: what a sewn dart gives the bust. */
import type { Mm, Radians } from "../units";

/**
 * Height of the cone that a flat disc becomes when a dart reaching its middle is sewn shut.
 *
 * @param angle  the dart's angle, radians, 0 to 2π
 * @param radius slant: the disc's radius, mm
 * @returns R √(1 − (1 − θ/2π)²), mm
 * @source a disc less a sector of angle θ closes to a cone of slant R and base radius R (1 − θ/2π)
 */
export function coneHeight(angle: Radians, radius: Mm): Mm {
  const kept = 1 - angle / (2 * Math.PI);
  return radius * Math.sqrt(Math.max(0, 1 - kept * kept));
}

/**
 * Where fullness is stated: at the bust radius, and never beyond the shortest leg of the darts that others are held against. A
 * shorter dart held against them is stated there too, by its angle: at its own legs a sharper dart would read as less full.
 */
export const coneRadius = (
  bustRadius: Mm,
  darts: readonly ({ readonly legInner: Mm; readonly legOuter: Mm } | null)[],
): Mm => Math.min(bustRadius, ...darts.flatMap((dart) => (dart === null ? [] : [dart.legInner, dart.legOuter])));

/** Radius of the cone's rim, mm: R (1 − θ/2π). */
export const coneRim = (angle: Radians, radius: Mm): Mm => radius * (1 - angle / (2 * Math.PI));
