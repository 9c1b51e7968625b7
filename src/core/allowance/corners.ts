/**
 * Corners of the cutting line, as the seams that meet there are sewn. Of two seams one is sewn first; its allowance is then
 * pressed open, or turned up where it is a hem, and is caught under the other. Its end has to reach just as far as the
 * other's cutting line when it lies folded: the corner is **lapped**, the mirror image of that line in the seam first sewn.
 */
import type { SeamName } from "../pattern/piece";

/**
 * Seams in the order they are sewn (common practice, no source): what shapes a piece, then what joins front to back, the
 * opening, and the edges that are finished last. A hem stands first, since it is its own allowance that is folded.
 */
const SEWN: readonly SeamName[] = [
  "hem",
  "princess",
  "underBust",
  "shoulder",
  "side",
  "waist",
  "centre",
  "neck",
  "armhole",
];

/** Which of two seams that meet at a corner lies folded under the other; null where none does: one seam, or the end of a strap. */
export function foldedFirst(one: SeamName, other: SeamName): SeamName | null {
  if (one === other || one === "strap" || other === "strap") return null;
  return SEWN.indexOf(one) < SEWN.indexOf(other) ? one : other;
}
