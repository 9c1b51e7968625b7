/** Closed rings of straight stretches, and the ways in which a copy of a part may lie: plain data. */
import type { Mm } from "../units";
import type { ClothSpot } from "./cutting";

export type Ring = readonly ClothSpot[];

/** One way to lie: its box begins at 0, 0. */
export interface Way {
  readonly ring: Ring;
  readonly width: Mm;
  readonly length: Mm;
  /** Degrees. */
  readonly turn: number;
  readonly isTurnedOver: boolean;
  readonly atFold: boolean;
}

export interface Copy {
  readonly key: string;
  readonly copy: number;
  readonly layers: 1 | 2;
  /** Whether its paper is the mirror image of what it is laid by; absent: it has none. */
  readonly isPaperMirrored?: boolean;
  /** The very same ones for copies that are alike. */
  readonly ways: readonly Way[];
}

export const boxRing = (width: Mm, length: Mm): Ring => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: length },
  { x: 0, y: length },
];

export function boxOf(ring: Ring): { readonly x: Mm; readonly y: Mm; readonly width: Mm; readonly length: Mm } {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of ring) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, width: right - left, length: bottom - top };
}
