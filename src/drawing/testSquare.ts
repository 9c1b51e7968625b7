/** The test squares of a page: 100 mm and 4 in in one another, to be measured before anything is cut. */
import { edgePointAt } from "../core/geometry/edgeCurve";
import { TEST_CM, TEST_INCH } from "../core/sheets/testSquares";
import type { Mm } from "../core/units";
import { TEST_CORNERS, TEST_SQUARES, testRuleWords } from "../words/testSquares";
import { textWidth } from "./fitLines";
import type { Ink, InkText } from "./ink";
import { isInRing } from "../core/cutting/room";
import { sheetPoint, type SheetPoint } from "../core/geometry/point";
import { sheetLine, sheetRect, sheetText } from "./inkShapes";

/** Size of their words, mm (9 points). */
const SMALL: Mm = 3.2;
/** How long the arms are by which a corner is drawn, mm. */
const ARM: Mm = 7;

/**
 * The same by their corners alone, so that on pages with pieces they are not taken for lines of the pattern: measured from
 * corner to corner.
 */
function testCorners(x: Mm, y: Mm): readonly Ink<"sheet">[] {
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
    sheetText("test", x + 1.5, bottom - 1.6, TEST_CORNERS, { size: SMALL }),
  ];
}

/** Both squares, their lower left corners in one point. */
export function testSquare(x: Mm, y: Mm): readonly Ink<"sheet">[] {
  return [
    sheetRect("test", x, y, TEST_INCH, TEST_INCH),
    sheetRect("test", x, y + TEST_INCH - TEST_CM, TEST_CM, TEST_CM),
    sheetText("test", x + 3, y + TEST_INCH - 2.2, TEST_SQUARES, { size: SMALL }),
  ];
}

/** How much more it matters that nothing is crossed, and that no corner stands in a strip, than what lies between them. */
const CROSSED = 1000;
const INSIDE = 300;

/**
 * What a page is measured by: the corners of the squares, or on a page of strips, where they would stand in one, two rules
 * of the same lengths or of half of them, one across and one down, where they stand in none.
 */
export function testMarks(
  window: Window,
  dots: readonly Dot[],
  kept: readonly (readonly SheetPoint[])[],
): readonly Ink<"sheet">[] {
  const square = testSquarePlace(window, dots, kept);
  const stands = cornerPatches(square.x, square.y).some((patch) => isTaken(patch, kept));
  const rules = stands ? rulesBeside(window, dots, kept) : null;
  return rules ?? testCorners(square.x, square.y);
}

const isTaken = (box: Window, kept: readonly (readonly SheetPoint[])[]): boolean =>
  kept.some((ring) =>
    [0, 0.25, 0.5, 0.75, 1].some((along) =>
      [0, 0.5, 1].some((across) =>
        isInRing(
          ring,
          box.width >= box.height
            ? sheetPoint(box.x + along * box.width, box.y + across * box.height)
            : sheetPoint(box.x + across * box.width, box.y + along * box.height),
        ),
      ),
    ),
  );

/** Room that a rule takes beside its length, its words in it, mm. */
const RULE: Mm = 9;

/** Two rules where there is room for both; null where there is not. */
function rulesBeside(
  window: Window,
  dots: readonly Dot[],
  kept: readonly (readonly SheetPoint[])[],
): readonly Ink<"sheet">[] | null {
  const placeOf = (width: Mm, height: Mm): Window | null => {
    for (let y = window.y + 2; y + height <= window.y + window.height - 2; y += 3) {
      for (let x = window.x + 2; x + width <= window.x + window.width - 2; x += 3) {
        const box = { x, y, width, height };
        if (!dots.some((dot) => isWithin(box, dot)) && !isTaken(box, kept)) return box;
      }
    }
    return null;
  };
  const ruleOf = (isUpright: boolean): readonly Ink<"sheet">[] | null => {
    for (const share of [1, 0.5]) {
      const length = share * TEST_INCH + 2;
      const place = isUpright ? placeOf(RULE, length) : placeOf(length, RULE);
      if (place !== null) return ruleInk(place, isUpright, share);
    }
    return null;
  };
  const [across, down] = [ruleOf(false), ruleOf(true)];
  return across === null || down === null ? null : [...across, ...down];
}

/** A line of the larger length, or of a share of it, marked at its ends and at the smaller length; and what it is. */
function ruleInk({ x, y }: Window, isUpright: boolean, share: number): readonly Ink<"sheet">[] {
  const at = (along: Mm, aside: Mm): SheetPoint =>
    isUpright ? sheetPoint(x + aside, y + 1 + along) : sheetPoint(x + 1 + along, y + aside);
  const end = (along: Mm): Ink<"sheet"> => sheetLine("test", [at(along, 0.5), at(along, 3.5)]);
  const words = at(isUpright ? share * TEST_INCH - 1 : 1, 7);
  return [
    sheetLine("test", [at(0, 2), at(share * TEST_INCH, 2)]),
    end(0),
    end(share * TEST_CM),
    end(share * TEST_INCH),
    sheetText("test", words.x, words.y, testRuleWords(share), { size: SMALL, turn: isUpright ? -Math.PI / 2 : 0 }),
  ];
}

export interface Window {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** How near each other places are tried, and how far from the edge of the window they stay, mm. */
const TRIED: Mm = 6;
const EDGE: Mm = 6;

/** How much is drawn within a box, the weightier the more it matters that it stays clear. */
export function inkWithin(box: Window, dots: readonly Dot[]): number {
  let sum = 0;
  for (const dot of dots) if (isWithin(box, dot)) sum += dot.weight;
  return sum;
}

const isWithin = (box: Window, dot: Dot): boolean =>
  dot.x > box.x && dot.y > box.y && dot.x < box.x + box.width && dot.y < box.y + box.height;

/** What is drawn of the squares by their corners: each corner of both, and the words along the foot. */
function cornerPatches(x: Mm, y: Mm): readonly Window[] {
  const bottom = y + TEST_INCH;
  const about = (cx: Mm, cy: Mm): Window => ({
    x: cx - CLEAR,
    y: cy - CLEAR,
    width: ARM + 2 * CLEAR,
    height: ARM + 2 * CLEAR,
  });
  return [
    about(x, bottom - ARM),
    // At the other corners the arms of both squares stand side by side.
    about(x + TEST_CM - ARM, bottom - ARM),
    about(x + TEST_CM - ARM, bottom - TEST_INCH),
    about(x, bottom - TEST_INCH),
    { x, y: bottom - 2 * SMALL, width: textWidth(TEST_CORNERS, SMALL) + CLEAR, height: 2 * SMALL },
  ];
}
/** Kept free about a corner, mm. */
const CLEAR: Mm = 2.5;

/**
 * Where on a page the corners of the squares cross the fewest lines and hide the least writing, and of such places where
 * least is drawn within them; in the frame of the ink.
 *
 * @param kept rings that corners had better not stand in, since they might be taken for lines of theirs
 */
export function testSquarePlace(
  window: Window,
  all: readonly Dot[],
  kept: readonly (readonly SheetPoint[])[] = [],
): { readonly x: Mm; readonly y: Mm } {
  const dots = all.filter((dot) => isWithin(window, dot));
  const room = { x: window.width - TEST_INCH - 2 * EDGE, y: window.height - TEST_INCH - 2 * EDGE };
  let best = { x: window.x + EDGE, y: window.y + EDGE };
  let least = Infinity;
  for (let i = 0; i <= Math.max(0, Math.round(room.x / TRIED)); i += 1) {
    for (let j = 0; j <= Math.max(0, Math.round(room.y / TRIED)); j += 1) {
      const x = window.x + EDGE + (room.x * i) / Math.max(1, Math.round(room.x / TRIED));
      const y = window.y + EDGE + (room.y * j) / Math.max(1, Math.round(room.y / TRIED));
      const patches = cornerPatches(x, y);
      const crossed = patches.reduce((sum, patch) => sum + inkWithin(patch, dots), 0);
      const inside = patches.filter((patch) =>
        kept.some((ring) => isInRing(ring, sheetPoint(patch.x + patch.width / 2, patch.y + patch.height / 2))),
      ).length;
      const within = inkWithin({ x, y, width: TEST_INCH, height: TEST_INCH }, dots);
      const cost = crossed * CROSSED + inside * INSIDE + within;
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
