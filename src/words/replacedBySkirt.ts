/** Work on the checklist that a dress has no need of. */
import type { Work } from "../core/decisions/work";
import { replacedBySkirt } from "../core/dress/replacedBySkirt";
import type { Plan } from "../core/plan/plan";
import { listWords } from "./terms/language";
import { pieceWords } from "./terms/names";

/** Null where every piece that is altered is sewn. */
export function replacedNote({ dress }: Pick<Work, "dress">, { left }: Pick<Plan, "left">): string | null {
  const replaced = replacedBySkirt(dress, left.pieces).map(pieceWords);
  return replaced.length === 0
    ? null
    : `The skirt of your dress takes the place of the ${listWords(replaced)}: leave out what is said of these here, unless you sew them for a trial garment.`;
}
