/** The allowances that are usual, and the allowance of a seam. */
import type { Allowances } from "../decisions/allowances";
import type { LengthUnit } from "../decisions/work";
import { distance } from "../geometry/point";
import { pointOf, type Piece, type SeamName } from "../pattern/piece";
import { isFacing } from "../pattern/pieceGroups";
import { allowanceOf, USUAL_ALLOWANCES } from "../parts/seamAllowance";
import type { Mm } from "../units";

export { allowanceOf, USUAL_ALLOWANCES } from "../parts/seamAllowance";

/** In inches as entries keep it, to 0.1 mm: 5/8 in, and 1 1/4 in for hems. */
const INCH_SEAM: Mm = 15.9;
const INCH_HEM: Mm = 31.8;

/** What a new work in inches begins with. */
export const INCH_ALLOWANCES: Readonly<Record<SeamName, Mm>> = {
  centre: INCH_SEAM,
  neck: INCH_SEAM,
  shoulder: INCH_SEAM,
  armhole: INCH_SEAM,
  side: INCH_SEAM,
  waist: INCH_SEAM,
  hem: INCH_HEM,
  princess: INCH_SEAM,
  underBust: INCH_SEAM,
  strap: INCH_SEAM,
  panel: INCH_SEAM,
  edge: INCH_SEAM,
};

/**
 * The least at seams of a toile that may have to be let out: an inch and a quarter, common practice.
 *
 * @source common practice, no source
 */
export const TOILE_ALLOWANCE: Readonly<Record<LengthUnit, Mm>> = { cm: 30, in: 31.8 };

/** Where a slit or letting out may come. */
const LET_OUT: readonly SeamName[] = ["shoulder", "side", "waist", "centre"];

/** Allowances for a toile: wide where it may have to be let out, her own where those are wider, and elsewhere as they are. */
export const toileAllowances = (allowances: Allowances, unit: LengthUnit): Allowances => ({
  ...allowances,
  ...Object.fromEntries(LET_OUT.map((seam) => [seam, Math.max(TOILE_ALLOWANCE[unit], allowanceOf(allowances, seam))])),
});

/** Whether an allowance is another one than the usual, in either unit. */
export const isOwnAllowance = (seam: SeamName, value: Mm | undefined): boolean =>
  value !== undefined && value !== USUAL_ALLOWANCES[seam] && value !== INCH_ALLOWANCES[seam];

/**
 * The allowance of a seam on one piece. Along a strap, which is sewn to another layer of itself and turned, it is at most
 * half the finished width: wider, the two would not lie side by side inside it.
 */
export function allowanceOn(piece: Piece, allowances: Allowances, seam: SeamName): Mm {
  // The free edge of a facing is neatened as it is cut.
  if (seam === "edge" && isFacing(piece.name)) return 0;
  const allowance = allowanceOf(allowances, seam);
  return piece.name === "strap" && seam !== "strap" ? Math.min(allowance, strapWidthOf(piece) / 2) : allowance;
}

const strapWidthOf = (strap: Piece): Mm => distance(pointOf(strap, "strapBackInner"), pointOf(strap, "strapBackOuter"));
