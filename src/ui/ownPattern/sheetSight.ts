/** How a file's sheet is looked at: it has a scale of its own, so all is said beside the whole of it. */
import type { Box } from "../../drawing/index";
import type { Sight, Size, View } from "../table/view";

/** Pixels at the sides and the foot, for what is written at a corner, and at the top, where the tools lie. */
const ROOM = { side: 22, foot: 24, top: 48 };
const NEAREST = 60;
const FURTHEST = 0.4;

function fitSheet(box: Box, size: Size): View {
  const scale = scaleFor(box, size);
  return {
    scale,
    x: box.x - (size.width / scale - box.width) / 2,
    y: box.y - ROOM.top / scale - ((size.height - ROOM.top - ROOM.foot) / scale - box.height) / 2,
  };
}

/** Pixels to a unit of the file. A sheet without a width, as one line straight down, is no wider than it is. */
function scaleFor(box: Box, size: Size): number {
  const width = Math.max(1, size.width - 2 * ROOM.side);
  const height = Math.max(1, size.height - ROOM.top - ROOM.foot);
  const scale = Math.min(box.width > 0 ? width / box.width : Infinity, box.height > 0 ? height / box.height : Infinity);
  return Number.isFinite(scale) ? scale : 1;
}

/** Of a square window, as the limits need be no more exact. */
const WINDOW: Size = { width: 500, height: 500 };

export function sightOf(sheet: Box): Sight {
  const whole = scaleFor(sheet, WINDOW);
  return { fit: fitSheet, least: whole * FURTHEST, most: whole * NEAREST };
}

/** The place under a pixel of the window, in the file's units. */
export const placeUnder = (view: View, px: number, py: number): { readonly x: number; readonly y: number } => ({
  x: view.x + px / view.scale,
  y: view.y + py / view.scale,
});
