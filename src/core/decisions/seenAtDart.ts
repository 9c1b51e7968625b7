/** What the wearer says she sees of a sewn dart. */
import { DART_NAMES } from "../pattern/dartNames";
import { isSameDart, type DartRef } from "../pattern/piece";
import { PIECE_ORDER } from "../pattern/pieceSet";
import type { Mm } from "../units";
import type { Half } from "./alteration";

/** What the wearer sees of one bust dart on the sewn toile; mm, in the dart's own axes. */
export interface SeenAtDart {
  /** Its end lies so far beyond the bust point; negative: so far short of it. Where nothing is amiss, about minus the usual stop. */
  readonly pastBustPoint: Mm;
  /** It sits so far too near the side; negative: too near the centre. A dart along the bust line: too low; negative: too high. */
  readonly tooFarToSide: Mm;
  /** How it comes out at its end. `right`: its fullness stays what was sewn. */
  readonly pointed: "pointed" | "right" | "flat";
}

/** The same as it is kept: which dart, on which half of the body. */
export interface SeenOfDart extends SeenAtDart, DartRef {
  readonly half: Half;
}

export const isSeenOf = (seen: SeenOfDart, dart: DartRef, half: Half): boolean =>
  isSameDart(seen, dart) && seen.half === half;

/** The order they are kept in: pieces as they are told, darts of a piece as they are offered, the left half first. */
export function compareSeen(a: SeenOfDart, b: SeenOfDart): number {
  return (
    PIECE_ORDER.indexOf(a.piece) - PIECE_ORDER.indexOf(b.piece) ||
    DART_NAMES.indexOf(a.dart) - DART_NAMES.indexOf(b.dart) ||
    Number(a.half === "right") - Number(b.half === "right")
  );
}
