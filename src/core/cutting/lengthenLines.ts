/** Where a bodice, a band or a basque is cut across to be lengthened or shortened: where the alterations of length cut it. */
import { bandDepth } from "../alterations/fit/bandDepth";
import { lengthAboveBust } from "../alterations/fit/lengthAboveBust";
import { lengthBasque } from "../alterations/fit/lengthBasque";
import { lengthBelowBust } from "../alterations/fit/lengthBelowBust";
import type { FitDefinition } from "../alterations/outcome/definition";
import type { PiecePoint } from "../geometry/point";
import type { PieceName } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";

const LENGTHS: readonly FitDefinition[] = [lengthAboveBust, lengthBelowBust, bandDepth, lengthBasque];
/** Any amount cuts at the same place; this one is always to be had. */
const TRIED: Mm = 1;

export interface LengthenLine {
  readonly piece: PieceName;
  readonly from: PiecePoint;
  readonly to: PiecePoint;
}

/** The lines of a set of pieces, from edge to edge of each. */
export const lengthenLines = (pieces: PieceSet, bustPoint: PiecePoint): readonly LengthenLine[] =>
  LENGTHS.flatMap((fit) => {
    const done = fit.applies(pieces) ? fit.apply(pieces, TRIED, { bustPoint }) : null;
    if (done === null || !done.ok) return [];
    return done.value.traces.flatMap(({ piece, cuts }): LengthenLine[] => {
      const [from, to] = [cuts[0]?.[0], cuts[0]?.at(-1)];
      return from === undefined || to === undefined ? [] : [{ piece, from, to }];
    });
  });
