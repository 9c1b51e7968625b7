/** What a toile should measure as it is sewn: the plan's own figures for the lengths that are asked for. */
import type { Half } from "../decisions/alteration";
import type { ToileLength } from "../decisions/trial";
import { seamLength } from "../girth/seamLength";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import type { Piece, SeamName } from "../pattern/piece";
import type { Mm } from "../units";

/** What is asked of a plan. */
interface Measured {
  readonly levels: readonly { readonly level: "bust" | "waist" | "hip"; readonly finished: Mm }[];
  readonly left: { readonly pieces: readonly Piece[] };
  readonly right: { readonly pieces: readonly Piece[] };
}

/**
 * Whole girths at bust, waist and hip; the centre lines from the neck or upper edge to the waist seam; a shoulder seam of the
 * front, all along the stitch line with darts shut. Lengths are those of one half, the wearer's left unless said.
 *
 * @returns mm; a length that the garment has not is absent
 */
export function toileLengths(
  { levels, ...halves }: Measured,
  half: Half = "left",
): Readonly<Partial<Record<ToileLength, Mm>>> {
  const pieces = halves[half].pieces.filter(({ name }) => name !== "strap" && !isBasque(name));
  const along = (seam: SeamName, isFront: boolean): Mm =>
    pieces
      .filter(({ name }) => isFrontPiece(name) === isFront && !name.startsWith("other"))
      .reduce((sum, piece) => sum + seamLength(piece, seam), 0);
  const girth = (of: "bust" | "waist" | "hip"): Mm => levels.find(({ level }) => level === of)?.finished ?? 0;
  const all: Readonly<Record<ToileLength, Mm>> = {
    bustGirth: girth("bust"),
    waistGirth: girth("waist"),
    hipGirth: halves[half].pieces.some(({ name }) => isBasque(name)) ? girth("hip") : 0,
    centreFront: along("centre", true),
    centreBack: along("centre", false),
    shoulder: along("shoulder", true),
  };
  return Object.fromEntries(Object.entries(all).filter(([, length]) => length > 0));
}
