/** From the piece frame to the sheet: turned by quarters about the origin of the piece frame, then moved. */
import type { Bounds } from "../geometry/bounds";
import { piecePoint, sheetPoint, type Frame, type PiecePoint, type Point, type SheetPoint } from "../geometry/point";
import { CoreBug } from "../result";
import type { Placement } from "./layout";

export type Quarters = Placement["quarters"];

export const ALL_QUARTERS: readonly Quarters[] = [0, 1, 2, 3];

/** Exact, without sines: what is upright stays upright to the last bit. */
function turned({ x, y }: PiecePoint, quarters: Quarters): readonly [number, number] {
  switch (quarters) {
    case 0:
      return [x, y];
    case 1:
      return [-y, x];
    case 2:
      return [-x, -y];
    case 3:
      return [y, -x];
  }
}

/** Where a point of a piece lies on the sheet. */
export function onSheet({ quarters, dx, dy }: Omit<Placement, "key">, point: PiecePoint): SheetPoint {
  const [x, y] = turned(point, quarters);
  return sheetPoint(x + dx, y + dy);
}

/** The point of a piece that lies at a place of the sheet. */
export function offSheet({ quarters, dx, dy }: Omit<Placement, "key">, { x, y }: SheetPoint): PiecePoint {
  const [u, v] = turned(piecePoint(x - dx, y - dy), BACK[quarters]);
  return piecePoint(u, v);
}

const BACK: Readonly<Record<Quarters, Quarters>> = { 0: 0, 1: 3, 2: 2, 3: 1 };

/**
 * The smallest upright box that holds the ring.
 *
 * @throws CoreBug for fewer than three points, or a point that is not finite
 */
export function ringBounds<F extends Frame>(ring: readonly Point<F>[]): Bounds<F> {
  const [first] = ring;
  if (first === undefined || ring.length < 3) throw new CoreBug("a ring has three points at the least");
  let { x: left, y: top } = first;
  let [right, bottom] = [left, top];
  for (const { x, y } of ring) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) throw new CoreBug("a ring with a point that is nowhere");
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { min: { ...first, x: left, y: top }, max: { ...first, x: right, y: bottom } };
}
