/** The trade's words for pieces, darts, seams and levels, as they stand inside a sentence. */
import type { ClothName } from "../../core/decisions/dress";
import type { StyleName } from "../../core/decisions/pattern";
import { isFrontPiece } from "../../core/pattern/pieceGroups";
import { partsOfDart } from "../../core/pattern/dartNames";
import type { DartHome, DartName, DartRef, LevelName, Nest, PieceName, SeamName } from "../../core/pattern/piece";

const PIECES: Readonly<Record<PieceName, string>> = {
  front: "front",
  centreFront: "centre front",
  sideFront: "side front",
  cup: "cup",
  frontBand: "front midriff band",
  back: "back",
  backBand: "back midriff band",
  frontBasque: "front basque",
  backBasque: "back basque",
  strap: "strap",
  skirtFront: "skirt front",
  skirtSideFront: "skirt side front",
  skirtSideBack: "skirt side back",
  skirtBack: "skirt back",
  frontFacing: "front facing",
  backFacing: "back facing",
  frontArmholeFacing: "front armhole facing",
  backArmholeFacing: "back armhole facing",
  other1: "other piece 1",
  other2: "other piece 2",
  other3: "other piece 3",
  other4: "other piece 4",
  other5: "other piece 5",
  other6: "other piece 6",
};

const HOMES: Readonly<Record<DartHome, string>> = {
  side: "side dart",
  french: "French dart",
  waist: "waist dart",
  underBust: "under-bust dart",
  shoulder: "shoulder dart",
  armhole: "armhole dart",
  neck: "neck dart",
  centre: "centre-front dart",
};

const NUMBERED = { "": "", "2": "second ", "3": "third " } as const;

const SEAMS: Readonly<Record<Exclude<SeamName, "centre">, string>> = {
  neck: "neck edge",
  shoulder: "shoulder seam",
  armhole: "armhole",
  side: "side seam",
  waist: "waist seam",
  hem: "hem",
  princess: "princess seam",
  underBust: "under-bust seam",
  strap: "strap end",
  panel: "panel seam",
  edge: "edge",
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

const STYLES: Readonly<Record<StyleName, string>> = {
  sideDart: "side dart and waist dart",
  midriff: "cups on a midriff band, with straps",
  princessArmhole: "princess seams from the armhole",
  princessShoulder: "princess seams from the shoulder",
};

export const styleWords = (style: StyleName): string => STYLES[style];

/** With a capital, for headings and the start of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Without it, where a sentence goes on after a colon. */
export const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export const pieceWords = (piece: PieceName): string => PIECES[piece];

const CLOTHS: Readonly<Record<ClothName, string>> = {
  main: "main cloth",
  lining: "lining",
  underlining: "underlining",
  interfacing: "interfacing",
};

export const clothWords = (cloth: ClothName): string => CLOTHS[cloth];

/** Her own words for pieces that the planner has no name for. */
export type OtherNames = Nest["otherNames"];

/** Her own word for a piece where she gave one, else the trade's. */
export const namedPieceWords = (piece: PieceName, others: OtherNames): string =>
  Object.entries(others ?? {}).find(([name]) => name === piece)?.[1] ?? pieceWords(piece);
export const dartWords = (dart: DartName): string => {
  const { home, number } = partsOfDart(dart);
  return NUMBERED[number] + HOMES[home];
};
export const levelWords = (level: LevelName): string => LEVELS[level];

/** "centre front" or "centre back": the line of that piece. */
export const centreWords = (piece: PieceName): string => (isFrontPiece(piece) ? "centre front" : "centre back");

export const seamWords = (seam: SeamName, piece: PieceName): string =>
  seam === "centre" ? `${centreWords(piece)} line` : SEAMS[seam];

/** "front waist dart", "second cup under-bust dart". */
export const dartRefWords = (ref: DartRef): string => {
  const { home, number } = partsOfDart(ref.dart);
  return `${NUMBERED[number]}${pieceWords(ref.piece)} ${HOMES[home]}`;
};
