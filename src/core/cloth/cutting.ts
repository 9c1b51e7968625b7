/** Parts on cloth: what is laid, and how it comes to lie. mm; cloth frame: x across from the fold or left selvage, y along. */
import type { ClothName } from "../decisions/dress";
import type { Mm } from "../units";

/** One line of the cut list. */
export interface CutLine {
  readonly key: string;
  readonly cloth: ClothName;
  readonly onFold: boolean;
  readonly count: number;
  /** Cut size across and along the cloth. */
  readonly width: Mm;
  readonly length: Mm;
  readonly isRectangle: boolean;
}

export interface LaidPart {
  readonly key: string;
  /** Which of its copies, from 1. */
  readonly copy: number;
  readonly ring: readonly { readonly x: Mm; readonly y: Mm }[];
  /** From the selvage and from the cloth's beginning to the nearest corner of its box. */
  readonly x: Mm;
  readonly y: Mm;
}

export interface ClothLay {
  readonly cloth: ClothName;
  readonly width: Mm;
  readonly onFold: boolean;
  readonly oneWay: boolean;
  readonly parts: readonly LaidPart[];
  /** As laid; before shrinkage is added. */
  readonly length: Mm;
  /** With shrinkage, rounded up to what shops cut. */
  readonly toBuy: Mm;
  /** No lay can be shorter than these. */
  readonly leastByArea: Mm;
  readonly leastByLongest: Mm;
}
