/** Which pieces lie where on the body. */
import type { PieceName } from "./piece";

const FRONT_PIECES: ReadonlySet<PieceName> = new Set([
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "frontBasque",
]);

export const isFrontPiece = (piece: PieceName): boolean => FRONT_PIECES.has(piece);

/** Below the waist seam. */
export const isBasque = (piece: PieceName): boolean => piece === "frontBasque" || piece === "backBasque";

/** Between the under-bust and the waist. */
export const isBand = (piece: PieceName): boolean => piece === "frontBand" || piece === "backBand";

/** Drawn where it lies on the body: no strap, and no facing or other piece of a pattern of one's own. */
export const isOnBody = (piece: PieceName): boolean => piece !== "strap" && !piece.startsWith("other");
