/** Seams that are sewn together are of one length, but for a named ease. */
import { pieceIn } from "../alterations/pieceSet";
import { SHOULDER_EASE } from "../draft/backBlock";
import { seamLength } from "../girth/seamLength";
import type { PieceName, SeamName } from "../pattern/piece";
import { SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { near, type Check } from "./context";

export interface SeamPair {
  readonly seam: SeamName;
  /** The longer one where there is ease. */
  readonly first: PieceName;
  readonly second: PieceName;
  /** First less second. */
  readonly ease: Mm;
}

/** Which seams are sewn to which. */
export const SEAM_PAIRS: readonly SeamPair[] = [
  { seam: "shoulder", first: "back", second: "front", ease: SHOULDER_EASE },
  { seam: "side", first: "back", second: "front", ease: 0 },
  { seam: "waist", first: "front", second: "frontBasque", ease: 0 },
  { seam: "waist", first: "back", second: "backBasque", ease: 0 },
  { seam: "side", first: "backBasque", second: "frontBasque", ease: 0 },
];

export const seamsWalk: Check = ({ pieces }) =>
  SEAM_PAIRS.filter(({ first, second }) => pieces[first] !== undefined && pieces[second] !== undefined).map(
    ({ seam, first, second, ease }) =>
      near({
        name: "seamsWalk",
        measured: seamLength(pieceIn(pieces, first), seam) - seamLength(pieceIn(pieces, second), seam),
        expected: ease,
        tolerance: SEWN_AGREEMENT,
        unit: "mm",
        pieces: [first, second],
        seam,
      }),
  );
