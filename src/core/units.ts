/** Units of the core: lengths in millimetres, angles in radians, nothing else. */

/** A length in millimetres. Every bare length in the core is one; anything else carries its unit in its name. */
export type Mm = number;

declare const angleUnit: unique symbol;
/** An angle in radians. Branded, so that degrees from a screen cannot slip in. */
export type Radians = number & { readonly [angleUnit]: "radians" };

/** Marks a number as radians. Positive turns +x towards +y (clockwise on screen, since y points down). */
export const radians = (value: number): Radians => value as Radians;

export const MM_PER_INCH = 25.4;
export const MM_PER_CM = 10;

export const degreesFrom = (angle: Radians): number => (angle * 180) / Math.PI;
export const radiansFromDegrees = (degrees: number): Radians => radians((degrees * Math.PI) / 180);
