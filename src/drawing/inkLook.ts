/** How each kind of ink looks: one table for every file that is made, so that all of them look alike. */
import type { Mm } from "../core/units";
import type { InkRole } from "./ink";

export interface InkLook {
  /** Width of the line, mm. */
  readonly width: Mm;
  /** Lengths drawn and left out by turns, mm; empty: unbroken. */
  readonly dash: readonly Mm[];
  /** Grey or colour as #rrggbb. All of it must tell itself apart in black and white. */
  readonly colour: string;
}

const BLACK = "#000000";
const look = (width: Mm, dash: readonly Mm[] = [], colour = BLACK): InkLook => ({ width, dash, colour });

export const INK_LOOK: Readonly<Record<InkRole, InkLook>> = {
  cutting: look(0.5),
  fold: look(0.5, [8, 2, 1.5, 2]),
  joinEdge: look(0.3),
  stitch: look(0.25, [3, 1.5]),
  dartLeg: look(0.3, [1.2, 0.9]),
  dartFold: look(0.12, [], "#777777"),
  ventFold: look(0.2, [], "#777777"),
  gather: look(0.3),
  notch: look(0.4),
  grain: look(0.3),
  level: look(0.2, [6, 1.5, 1, 1.5], "#555555"),
  lengthen: look(0.2),
  tacking: look(0.5, [5, 3]),
  mark: look(0.3),
  printed: look(0.2, [], "#8c857a"),
  before: look(0.25, [3, 0.8, 0.6, 0.8, 0.6, 0.8], "#6b6b6b"),
  changed: look(0.5),
  layOn: look(0.3, [2, 1], "#555555"),
  title: look(0.2),
  frame: look(0.15, [], "#777777"),
  overlap: look(0.2, [0.4, 1.6], "#777777"),
  join: look(0.3),
  test: look(0.12, [], "#7a7a7a"),
  map: look(0.25),
  note: look(0.2),
};

/** Dashes of the printed sizes, smallest first, as printed patterns tell their sizes apart; after the last they begin anew. */
export const SIZE_DASHES: readonly (readonly Mm[])[] = [
  [],
  [5, 1.5],
  [2, 1],
  [7, 1.5, 1, 1.5],
  [0.6, 1.2],
  [4, 1, 0.6, 1, 0.6, 1],
  [9, 2],
  [3, 1, 1, 1],
];
