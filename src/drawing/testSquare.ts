/** The test squares of a page: 100 mm and 4 in in one another, to be measured before anything is cut. */
import { edgePointAt } from "../core/geometry/edgeCurve";
import { TEST_CM, TEST_INCH } from "../core/sheets/testSquares";
import type { Mm } from "../core/units";
import { TEST_CORNERS, TEST_SQUARES } from "../words/testSquares";
import { textWidth } from "./fitLines";
import type { Ink, InkText } from "./ink";
import { sheetPoint } from "../core/geometry/point";
import { sheetLine, sheetRect, sheetText } from "./inkShapes";

/** How long the arms are by which a corner is drawn, mm. */
const ARM: Mm = 7;

/**
 * The same by their corners alone, so that on pages with pieces they are not taken for lines of the pattern: measured from
 * corner to corner.
 */
export function testCorners(x: Mm, y: Mm): readonly Ink<"sheet">[] {
  const bottom = y + TEST_INCH;
  const corners = (side: Mm): readonly Ink<"sheet">[] =>
    [
      [x, bottom, 1, -1],
      [x + side, bottom, -1, -1],
      [x + side, bottom - side, -1, 1],
      [x, bottom - side, 1, 1],
    ].map(([cx = 0, cy = 0, sx = 1, sy = 1]) =>
      sheetLine("test", [sheetPoint(cx + sx * ARM, cy), sheetPoint(cx, cy), sheetPoint(cx, cy + sy * ARM)]),
    );
  return [
    ...corners(TEST_INCH),
    ...corners(TEST_CM),
    sheetText("test", x + 1.5, bottom - 1.6, TEST_CORNERS, { size: 2.3 }),
  ];
}

/** Both squares, their lower left corners in one point. */
export function testSquare(x: Mm, y: Mm): readonly Ink<"sheet">[] {
  return [
    sheetRect("test", x, y, TEST_INCH, TEST_INCH),
    sheetRect("test", x, y + TEST_INCH - TEST_CM, TEST_CM, TEST_CM),
    sheetText("test", x + 3, y + TEST_INCH - 2.2, TEST_SQUARES, {
      size: 2.7,
    }),
  ];
}

export interface Window {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** How near each other places are tried, and how far from the edge of the window they stay, mm. */
const TRIED: Mm = 12;
const EDGE: Mm = 6;

/** How much is drawn within a box, the weightier the more it matters that it stays clear. */
export function inkWithin(box: Window, dots: readonly Dot[]): number {
  let sum = 0;
  for (const dot of dots)
    if (dot.x > box.x && dot.y > box.y && dot.x < box.x + box.width && dot.y < box.y + box.height) sum += dot.weight;
  return sum;
}

/** Where on a page the squares cross the fewest lines and hide the least writing; in the frame of the ink. */
export function testSquarePlace(window: Window, all: readonly Dot[]): { readonly x: Mm; readonly y: Mm } {
  const dots = all.filter((dot) => inkWithin(window, [dot]) > 0);
  const room = { x: window.width - TEST_INCH - 2 * EDGE, y: window.height - TEST_INCH - 2 * EDGE };
  let best = { x: window.x + EDGE, y: window.y + EDGE };
  let least = Infinity;
  for (let i = 0; i <= Math.max(0, Math.round(room.x / TRIED)); i += 1) {
    for (let j = 0; j <= Math.max(0, Math.round(room.y / TRIED)); j += 1) {
      const x = window.x + EDGE + (room.x * i) / Math.max(1, Math.round(room.x / TRIED));
      const y = window.y + EDGE + (room.y * j) / Math.max(1, Math.round(room.y / TRIED));
      const cost = inkWithin({ x: x - 2, y: y - 2, width: TEST_INCH + 4, height: TEST_INCH + 4 }, dots);
      if (cost < least) [best, least] = [{ x, y }, cost];
    }
  }
  return best;
}

/** A place that is drawn on, and how much it matters that it stays clear. */
export interface Dot {
  readonly x: Mm;
  readonly y: Mm;
  readonly weight: number;
}

export function dotsOf(ink: Ink<"sheet">): readonly Dot[] {
  if (ink.kind === "text") return textDots(ink);
  const weight = ink.role === "cutting" || ink.role === "stitch" || ink.role === "dartLeg" ? 2 : 1;
  return ink.edges.flatMap((edge) => {
    const count = Math.max(2, Math.ceil(Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y) / 10));
    return Array.from({ length: count }, (_, i) => ({ ...edgePointAt(edge, i / count), weight }));
  });
}

/** Dots all along a line of writing, whichever way it is turned. */
function textDots({ at, text, size, anchor, turn, bold }: InkText<"sheet">): readonly Dot[] {
  const width = textWidth(text, size, bold);
  const from = -{ start: 0, middle: 0.5, end: 1 }[anchor] * width;
  const count = Math.max(2, Math.ceil(width / 4));
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return Array.from({ length: count + 1 }, (_, i): Dot => {
    const [along, up] = [from + (width * i) / count, -size / 3];
    return { x: at.x + along * cos - up * sin, y: at.y + along * sin + up * cos, weight: 4 };
  });
}
