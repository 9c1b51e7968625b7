/** The folded paper disc: what a dart's angle does to a flat round of cloth, as points to draw. */
import type { Mm, Radians } from "../units";
import { coneHeight, coneRim } from "./fullness";

export interface FoldedDisc {
  readonly radius: Mm;
  /** The disc's middle is the dart's end at (0, 0); where the leg on the right crosses the disc's edge, and where it ends. */
  readonly cut: { readonly x: Mm; readonly y: Mm };
  readonly mouth: { readonly x: Mm; readonly y: Mm };
  /** The sector taken out, half to each side of straight down; radians. */
  readonly angle: Radians;
  /** The cone it closes to. */
  readonly height: Mm;
  readonly rim: Mm;
}

/**
 * The cone made of a disc by a dart whose legs are equal.
 *
 * @param leg length of either leg, mm
 * @source as `coneHeight`
 */
export const foldDisc = (angle: Radians, radius: Mm, leg: Mm): FoldedDisc => ({
  radius,
  cut: { x: radius * Math.sin(angle / 2), y: radius * Math.cos(angle / 2) },
  mouth: { x: leg * Math.sin(angle / 2), y: leg * Math.cos(angle / 2) },
  angle,
  height: coneHeight(angle, radius),
  rim: coneRim(angle, radius),
});

/**
 * The angle of a dart when its end moves along the axis and its mouth is held.
 *
 * @param intake mouth width, mm
 * @param axis   length of the dart along its axis, mm; must stay positive after shortening
 * @source tan(θ/2) = (w/2) / axis
 */
export const angleOfMouth = (intake: Mm, axis: Mm): number => 2 * Math.atan2(intake / 2, axis);
