/** Where each piece lies on the table: bodice front and back side by side, each basque under its bodice piece. */
import { outlineBounds } from "../core/geometry/outline";
import type { Piece, PieceName } from "../core/pattern/piece";
import { outlineOf } from "../core/surgery/ring";
import type { Mm } from "../core/units";

export interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

export interface Place {
  readonly piece: PieceName;
  /** From piece frame to table, mm. */
  readonly dx: Mm;
  readonly dy: Mm;
  /** Everything of the piece in all sizes, on the table. */
  readonly box: Box;
}

/** Room between pieces: for labels at the sides and the amounts between waist and waist. */
const BESIDE: Mm = 140;
const BETWEEN: Mm = 55;

/**
 * Places for the pieces so that no size of one meets any size of another.
 *
 * @param sizes all the pieces to be shown, of every size, and the wearer's own
 */
export function placePieces(sizes: readonly (readonly Piece[])[]): readonly Place[] {
  const boxes = new Map<PieceName, Box>();
  for (const piece of sizes.flat()) boxes.set(piece.name, around(boxes.get(piece.name), boundsOf(piece)));
  const places: Place[] = [];
  let x = 0;
  const columns: readonly (readonly [PieceName, PieceName])[] = [
    ["front", "frontBasque"],
    ["back", "backBasque"],
  ];
  const upper = columns.map(([bodice]) => boxes.get(bodice)).filter((box) => box !== undefined);
  const top = Math.min(0, ...upper.map((box) => box.y));
  const bottom = Math.max(0, ...upper.map((box) => box.y + box.height));
  for (const [bodice, basque] of columns) {
    const above = boxes.get(bodice);
    const below = boxes.get(basque);
    if (above === undefined) continue;
    const left = Math.min(above.x, below?.x ?? above.x);
    const right = Math.max(above.x + above.width, below === undefined ? 0 : below.x + below.width);
    const dx = x - left;
    // Both bodice pieces share one height for the nape, so that their waists lie level.
    places.push(placed(bodice, above, dx, -top));
    if (below !== undefined) places.push(placed(basque, below, dx, bottom - top + BETWEEN - below.y));
    x += right - left + BESIDE;
  }
  return places;
}

const placed = (piece: PieceName, box: Box, dx: Mm, dy: Mm): Place => ({
  piece,
  dx,
  dy,
  box: { ...box, x: box.x + dx, y: box.y + dy },
});

/** The box round all places, with a margin. */
export function boxOf(places: readonly Place[], margin: Mm): Box {
  const all = places.reduce<Box | undefined>((box, place) => around(box, place.box), undefined);
  const { x, y, width, height } = all ?? { x: 0, y: 0, width: 100, height: 100 };
  return { x: x - margin, y: y - margin, width: width + 2 * margin, height: height + 2 * margin };
}

export function boundsOf(piece: Piece): Box {
  const { min, max } = outlineBounds(outlineOf(piece));
  return { x: min.x, y: min.y, width: max.x - min.x, height: max.y - min.y };
}

function around(a: Box | undefined, b: Box): Box {
  if (a === undefined) return b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}
