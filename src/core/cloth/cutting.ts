/** Parts on cloth: what is laid, and how it comes to lie. mm; cloth frame: x across from the fold or left selvage, y along. */
import type { ClothName } from "../decisions/dress";
import type { Part } from "../parts/part";
import type { Mm } from "../units";

/** One line of the cut list. */
export interface CutLine {
  readonly key: string;
  readonly cloth: ClothName;
  readonly onFold: boolean;
  readonly count: number;
  /** Cut size across and along the cloth; of a part on the fold the half of it; on the bias across and along itself. */
  readonly width: Mm;
  readonly length: Mm;
  readonly isRectangle: boolean;
  readonly grain: Part["grain"];
  /** Each second one is turned over. */
  readonly inPairs: boolean;
  /** Its cloth has a nap or a print: all of its parts point one way. */
  readonly oneWay: boolean;
  /** Too long to be cut on the bias in one: so many lengths each, joined. 1: in one. */
  readonly lengths: number;
}

export interface ClothSpot {
  readonly x: Mm;
  readonly y: Mm;
}

export interface LaidPart {
  readonly key: string;
  /** Which of its copies, from 1. Two that lie double are one, with the number of the first of them. */
  readonly copy: number;
  readonly ring: readonly ClothSpot[];
  /** From the selvage and from the cloth's beginning to the nearest corner of its box. */
  readonly x: Mm;
  readonly y: Mm;
  /** Of its box. */
  readonly width: Mm;
  readonly length: Mm;
  /** Degrees from how it is drawn: 0 upright, 180 upside down, 45 on the bias. */
  readonly turn: number;
  /** The mirror image of what it is drawn by. */
  readonly isTurnedOver: boolean;
  /** Its paper lies printed side down: that of a half may be printed turned over already. Never of what is measured out. */
  readonly isPaperDown: boolean;
  /** Its straight side lies on the fold. */
  readonly atFold: boolean;
  /** On the fold: 2 where both layers are cut, 1 where the upper one alone is. */
  readonly layers: 1 | 2;
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
  /** Share of the cloth's usable part that parts take; the rest falls off. */
  readonly used: number;
}

export type LayFailure =
  | { readonly code: "cloth/nothing-to-lay" }
  /** Wider than the cloth however it may lie. */
  | { readonly code: "cloth/part-too-wide"; readonly key: string; readonly needed: Mm; readonly width: Mm };
