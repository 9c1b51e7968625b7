/** The trade's words for pieces, darts, seams and levels, as they stand inside a sentence. */
import type { DartName, DartRef, LevelName, PieceName, SeamName } from "../core/pattern/piece";

const PIECES: Readonly<Record<PieceName, string>> = {
  front: "front",
  back: "back",
  frontBasque: "front basque",
  backBasque: "back basque",
};

const DARTS: Readonly<Record<DartName, string>> = {
  sideDart: "side dart",
  waistDart: "waist dart",
  shoulderDart: "shoulder dart",
};

const SEAMS: Readonly<Record<Exclude<SeamName, "centre">, string>> = {
  neck: "neck edge",
  shoulder: "shoulder seam",
  armhole: "armhole",
  side: "side seam",
  waist: "waist seam",
  hem: "hem",
};

const LEVELS: Readonly<Record<LevelName, string>> = {
  neck: "neck",
  shoulder: "shoulder",
  underarm: "underarm",
  bust: "bust",
  underBust: "under-bust",
  waist: "waist",
  hip: "hip",
};

/** With a capital, for headings and the start of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const pieceWords = (piece: PieceName): string => PIECES[piece];
export const dartWords = (dart: DartName): string => DARTS[dart];
export const levelWords = (level: LevelName): string => LEVELS[level];

export const isFrontPiece = (piece: PieceName): boolean => piece === "front" || piece === "frontBasque";

/** "centre front" or "centre back": the line of that piece. */
export const centreWords = (piece: PieceName): string => (isFrontPiece(piece) ? "centre front" : "centre back");

export const seamWords = (seam: SeamName, piece: PieceName): string =>
  seam === "centre" ? `${centreWords(piece)} line` : SEAMS[seam];

/** "front waist dart". */
export const dartRefWords = (ref: DartRef): string => `${pieceWords(ref.piece)} ${dartWords(ref.dart)}`;

/** "the front", "the front and the back", "the front, the back and the front basque". */
export function listWords(items: readonly string[]): string {
  const last = items.at(-1);
  if (last === undefined) return "";
  return items.length === 1 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}
