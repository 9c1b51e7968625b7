/** Which pieces lie where on the body. */
import { DRESS_PIECES, type DressPiece, type PieceName } from "./piece";

const FRONT_PIECES: ReadonlySet<PieceName> = new Set([
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "frontBasque",
  "skirtFront",
  "skirtSideFront",
  "frontFacing",
  "frontArmholeFacing",
]);

export const isFrontPiece = (piece: PieceName): boolean => FRONT_PIECES.has(piece);

/** Below the waist seam. */
export const isBasque = (piece: PieceName): boolean => piece === "frontBasque" || piece === "backBasque";

const SKIRT_PIECES: ReadonlySet<PieceName> = new Set(["skirtFront", "skirtSideFront", "skirtSideBack", "skirtBack"]);

/** A panel of a skirt. */
const isSkirtPiece = (piece: PieceName): boolean => SKIRT_PIECES.has(piece);

/** What hangs on the waist seam: a basque, or a panel of a skirt. */
export const isBelowWaist = (piece: PieceName): boolean => isBasque(piece) || isSkirtPiece(piece);

/** Between the under-bust and the waist. */
export const isBand = (piece: PieceName): boolean => piece === "frontBand" || piece === "backBand";

/** Drafted for the rest of the dress. */
const isDressPiece = (piece: PieceName): piece is DressPiece => DRESS_PIECES.some((name) => name === piece);

/** A piece of a bodice drawn where it lies on the body: no strap, and no facing or other piece of a pattern of one's own. */
export const isOnBody = (piece: PieceName): boolean =>
  piece !== "strap" && !piece.startsWith("other") && !isDressPiece(piece);

/** Sewn to an upper edge and turned inside. */
export const isFacing = (piece: PieceName): boolean =>
  piece === "frontFacing" || piece === "backFacing" || piece === "frontArmholeFacing" || piece === "backArmholeFacing";
