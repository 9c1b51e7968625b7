/**
 * What the told waist rests on that no chart says: how wide the waist darts are printed in each size. Ours are drafted wider
 * in larger sizes. On a tissue that prints one width for all, the lines of the other sizes lie elsewhere.
 */
import type { Tissue } from "../decisions/tissue";
import { neighbours } from "../blend/blendPiece";
import { distance } from "../geometry/point";
import { pointOf, type Nest, type Piece } from "../pattern/piece";
import { isBasque } from "../pattern/pieceGroups";
import { invariant } from "../result";
import type { TissueRef } from "../tissue/fitToTissue";
import type { Mm } from "../units";
import type { Plan } from "./plan";

/** What of the waist darts' mouths is not known of her tissue: as they are in one size, and as they grow to the next. */
export function mouthsNotMeasured({ source, sizes }: Nest, tissue: Tissue | undefined): readonly TissueRef[] {
  if (source === "own") return [];
  const [pieces = []] = sizes;
  return pieces
    .filter((piece) => !isBasque(piece.name) && piece.darts.some(({ seam }) => seam === "waist"))
    .flatMap(({ name }) =>
      (["waistDartMouth", "waistDartMouthNext"] as const).flatMap((length) =>
        tissue?.pieces[name]?.[length] === undefined ? [{ piece: name, length }] : [],
      ),
    );
}

/** Mouths of the bodice's waist darts on the half, all together. */
const intakeOf = (pieces: readonly Piece[]): Mm =>
  pieces
    .filter(({ name }) => !isBasque(name))
    .flatMap((piece) =>
      piece.darts
        .filter(({ seam }) => seam === "waist")
        .map(({ inner, outer }) => distance(pointOf(piece, inner), pointOf(piece, outer))),
    )
    .reduce((sum, one) => sum + one, 0);

/**
 * How much larger (negative: smaller) than told the whole finished waist comes out where every printed size has the base
 * size's waist darts; mm. 0 where the bodice has none.
 *
 * @source the waist line of a size lies its finished waist and its darts away from the centre, so that the base size's darts
 *         sewn in its place leave twice the difference of the two, on two halves
 */
export function waistIfDartsAlike({ nest, levels, sizing }: Pick<Plan, "nest" | "levels" | "sizing">): Mm {
  const waist = levels.find(({ level }) => level === "waist");
  if (waist === undefined) return 0;
  const { lower, share } = neighbours(waist.size, nest.labels.length);
  const at = (size: number): Mm => intakeOf(invariant(nest.sizes[size], "size"));
  const onLine = at(lower) + share * (at(Math.min(lower + 1, nest.sizes.length - 1)) - at(lower));
  return -2 * (onLine - at(sizing.baseSize.index)) + 0;
}
