/** What of a dress decides which steps there are. */
import type { Half } from "../decisions/alteration";
import { isButtoned } from "../opening/gettingIn";
import { seamLength } from "../girth/seamLength";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { piecesOf } from "../pattern/pieceSet";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { BOTH_HALVES } from "./seamsSewn";
import type { SewingAsked } from "./sewingAsked";

export interface SewnDress extends SewingAsked {
  readonly closes: "invisible" | "lapped" | "buttons";
  /** At her left side, else at the centre back. */
  readonly isSide: boolean;
  /** Halves whose side seams are sewn all along: one that opens is not. */
  readonly closedSides: readonly Half[];
  readonly hasBasque: boolean;
  readonly isBodiceLined: boolean;
  readonly isSkirtLined: boolean;
  /** Bodice with shoulder seams, not hung on straps. */
  readonly hasShoulders: boolean;
  /** Neck and armholes are closed by one lining or facing, and it is turned through the open sides. */
  readonly isTurnedThrough: boolean;
  /** From the waist seam to the hem along the seam that opens; 0: nothing hangs there. */
  readonly fallOfOpening: Mm;
  /** How far the opening runs below the waist seam, at most to the hem. */
  readonly openBelow: Mm;
}

export function readDress(asked: SewingAsked): SewnDress {
  const { bodice, dress, skirt, lining, closure, edges } = asked;
  const isSide = closure.place === "side";
  const pieces = bodice.flatMap(piecesOf);
  const hung = skirt === null ? pieces.filter(({ name }) => isBasque(name)) : piecesOf(skirt.halves[0]);
  const alongOpening = hung
    .filter(({ name }) => !isFrontPiece(name))
    .map((piece) => seamLength(piece, isSide ? "side" : "centre"));
  const fallOfOpening =
    hung.length === 0 && skirt !== null ? skirt.lengths[isSide ? "side" : "back"] : Math.max(0, ...alongOpening);
  const isBodiceLined = lining !== null && lining.bodice.some((half) => piecesOf(half).length > 0);
  const hasShoulders = pieces.some((piece) => piece.name !== "strap" && seamLength(piece, "shoulder") > 0);
  return {
    ...asked,
    closes: isButtoned(closure) ? "buttons" : (dress.zip ?? "invisible"),
    isSide,
    closedSides: isSide ? ["right"] : BOTH_HALVES,
    hasBasque: pieces.some(({ name }) => isBasque(name)),
    isBodiceLined,
    isSkirtLined: lining !== null && lining.skirt.some((half) => piecesOf(half).length > 0),
    hasShoulders,
    isTurnedThrough: hasShoulders && (isBodiceLined || edges.facing?.inOne === true),
    fallOfOpening,
    openBelow: Math.min(Math.max(closure.belowWaist, 0), fallOfOpening),
  };
}

/** What of the seam that opens is closed below the opening. */
export const closedBelow = ({ fallOfOpening, openBelow }: SewnDress): Mm => {
  const rest = fallOfOpening - openBelow;
  return openBelow > 0 && rest > SOLVER_ACCURACY ? rest : 0;
};
