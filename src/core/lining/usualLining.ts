/** What is usual of a lining. Lengths in mm; all common practice, no source. */
import type { Mm } from "../units";

/** Neck, armhole and what is sewn under a strap lie so far inside the shell's edge, which is under-stitched (1 to 2). */
export const UNDER_EDGE: Mm = 1.5;
/** All round, between underarm and waist: a scant 3 mm more at each side seam. */
export const USUAL_BODICE_EASE: Mm = 10;
/** What a folded end keeps from the teeth of a zip (5 to 10). */
export const USUAL_FREE_BESIDE: Mm = 6;
/** How far below the zip's end the ends stay apart (20 to 30). */
export const USUAL_FREE_BELOW: Mm = 25;
/** An end that keeps clear of a zip at all comes in over at least so much, or there would be a step in the seam. */
export const FREE_LEAST: Mm = 5;
/** Over the hip, to sit and to walk. */
export const USUAL_LINING_HIP_EASE: Mm = 50;
/** How much shorter than the shell (20 to 30). */
export const USUAL_SHORTER: Mm = 25;
/** How far the sides of a skirt's lining lean out, degrees: more than a step needs, less than would be in the way. */
export const USUAL_LINING_FLARE = 4;
/** Over the hip, all round its hem, to step: where it reaches the knee, so far below the hip line. Of a shorter one in proportion. */
export const STEP_OVER_HIP: Mm = 100;
export const KNEE_BELOW_HIP: Mm = 380;
