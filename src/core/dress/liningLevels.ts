/** How wide the skirt's lining is on its way down, as what has to go through it needs to know. */
import type { Closure } from "../decisions/pattern";
import type { LiningDraft } from "../lining/liningDraft";
import type { HangingLevel } from "../opening/gettingThrough";

/** Empty: the skirt is not lined. Along the seam that opens, from the waist to the hem. */
export function liningLevels(lining: LiningDraft | null, { place }: Closure): readonly HangingLevel[] {
  const figures = lining?.skirtFigures ?? null;
  if (figures === null) return [];
  const { waist, hip, hipDepth, hem, lengths } = figures;
  const length = place === "side" ? lengths.side : lengths.back;
  return [
    { below: 0, girth: waist },
    { below: hipDepth, girth: hip },
    { below: length, girth: hem },
  ].filter(({ below }, at) => at !== 1 || below < length);
}
