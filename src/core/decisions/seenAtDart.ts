/** What the wearer says she sees of a sewn dart. */
import { DART_NAMES } from "../pattern/dartNames";
import { isSameDart, type DartRef } from "../pattern/piece";
import { PIECE_ORDER } from "../pattern/pieceSet";
import type { Mm } from "../units";
import { isMadeOn, isRedraw, onHalves, otherHalf, type Alteration, type DartRedraw, type Half } from "./alteration";
import { isSame } from "../same";

/** What the wearer sees of one bust dart on the sewn toile; mm, in the dart's own axes. */
export interface SeenAtDart {
  /** Its end lies so far beyond the bust point; negative: so far short of it. Where nothing is amiss, about minus the usual stop. */
  readonly pastBustPoint: Mm;
  /** It sits so far too near the side; negative: too near the centre. A dart along the bust line: too low; negative: too high. */
  readonly tooFarToSide: Mm;
  /** How it comes out at its end. `right`: its fullness stays what was sewn. */
  readonly pointed: "pointed" | "right" | "flat";
}

/**
 * The ways to answer what is seen. `sideSeam`: redrawn on its seam, the side seam takes what is left over (a side dart: its
 * waist end). `offCentre`: the front brought to the centre by what comes off the centre-front seam. `sharedWithOther`: half at
 * the side seam, half in the other piece's waist dart. `sharedAtCentre`: half at the centre seam. `sharedAtEnds`, `underarm`: a
 * side dart's, half at either end of the side seam, or all at the underarm.
 */
export const DART_ANSWER_KEYS = [
  "sideSeam",
  "offCentre",
  "sharedWithOther",
  "sharedAtCentre",
  "sharedAtEnds",
  "underarm",
] as const;
export type DartAnswerKey = (typeof DART_ANSWER_KEYS)[number];

/**
 * The same as it is kept: which dart, on which half of the body. It is said of the toile as sewn then, and stays so whatever
 * becomes of the dart afterwards.
 */
export interface SeenOfDart extends SeenAtDart, DartRef {
  readonly half: Half;
  /** The redraws of this dart that the toile was sewn with; absent: those of the ledger. */
  readonly sewn?: readonly DartRedraw[];
  /** The answer that was taken last, with the redraws that it made; it stands while the ledger has these and no others. */
  readonly taken?: { readonly answer: DartAnswerKey; readonly redraws: readonly DartRedraw[] };
}

/** The redraws of one dart, on whichever half, in the order of the ledger. */
export const redrawsOf = (alterations: readonly Alteration[], dart: DartRef): readonly DartRedraw[] =>
  alterations.filter(isRedraw).filter((a) => isSameDart(a.dart, dart));

/** Those that are made on one half, without saying which. */
export const redrawsOn = (alterations: readonly Alteration[], dart: DartRef, half: Half): readonly DartRedraw[] =>
  redrawsOf(alterations, dart)
    .filter((a) => isMadeOn(a, half))
    .map((a) => (a.half === undefined ? a : onHalves(a, undefined)));

/** What is decided of darts: what is seen of them, and the alterations. */
export interface DartsDecided {
  readonly seen?: readonly SeenOfDart[];
  readonly alterations: readonly Alteration[];
}

/** The answer that a dart stands as on a half; null where none was taken, or its redraws are not those of the ledger any more. */
export const standingAnswer = (
  { taken, half: said, ...dart }: SeenOfDart,
  { alterations }: DartsDecided,
  half: Half = said,
): DartAnswerKey | null =>
  taken !== undefined && isSame(taken.redraws.map(unnamed), redrawsOn(alterations, dart, half).map(unnamed))
    ? taken.answer
    : null;

const unnamed = (redraw: DartRedraw): DartRedraw => ({ ...redraw, id: "" });

/**
 * What is seen of a dart that stands as the answer to it: on this half, or on the other where nothing is said of this one and it
 * is redrawn alike.
 */
export function answeredOf(work: DartsDecided, dart: DartRef, half: Half): SeenOfDart | null {
  const { seen = [] } = work;
  const said =
    seen.find((one) => isSeenOf(one, dart, half)) ?? seen.find((one) => isSeenOf(one, dart, otherHalf(half)));
  return said === undefined || standingAnswer(said, work, half) === null ? null : said;
}

/**
 * The redraws that the toile was sewn with, of which something is said on one half. An answer that stands is not sewn yet, also
 * where it was given to the other half.
 */
export const sewnWith = (work: DartsDecided, dart: DartRef, half: Half): readonly DartRedraw[] =>
  work.seen?.find((one) => isSeenOf(one, dart, half))?.sewn ??
  answeredOf(work, dart, half)?.sewn ??
  redrawsOn(work.alterations, dart, half);

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
