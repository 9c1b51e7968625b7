/** How far outside the stitch line the cloth of a seam is cut, where the wearer says nothing. */
import type { Allowances } from "../decisions/allowances";
import type { Skirt } from "../decisions/dress";
import type { SeamName } from "../pattern/piece";
import type { Mm } from "../units";

/**
 * Usual allowances, mm.
 *
 * @source common practice, no source: 15 mm (5/8 in) in home sewing, hems 20 to 30 mm
 */
export const USUAL_ALLOWANCES: Readonly<Record<SeamName, Mm>> = {
  centre: 15,
  neck: 15,
  shoulder: 15,
  armhole: 15,
  side: 15,
  waist: 15,
  hem: 30,
  princess: 15,
  underBust: 15,
  strap: 15,
  panel: 15,
  edge: 15,
};

/** The allowance of one seam: the wearer's own, else the usual. */
export const allowanceOf = (allowances: Allowances, seam: SeamName): Mm => allowances[seam] ?? USUAL_ALLOWANCES[seam];

/** mm. An edge on the curve is longer below than where it is sewn: no more of it can be turned up (common practice, no source: 10 to 15). */
const ROUND_HEM: Mm = 15;

/** The hem allowance of a skirt: her own, else the usual, and of a round one little. */
export function hemAllowanceOf(skirt: Pick<Skirt, "kind" | "hem">, allowances: Allowances): Mm {
  const usual = allowanceOf(allowances, "hem");
  const isRound = skirt.kind === "circle" || skirt.kind === "peplum";
  return skirt.hem ?? (isRound ? Math.min(ROUND_HEM, usual) : usual);
}
