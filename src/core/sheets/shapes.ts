/** Pieces turned by each quarter, as cells of the sheet: what the search lays. */
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { cellsNear, grown, rowsFrom, type BitRows } from "./bitRows";
import { coverOf, evenLines } from "./cover";
import type { Placement, ToLay } from "./layout";
import { ALL_QUARTERS, onSheet, ringBounds, type Quarters } from "./placing";

/**
 * mm. The side of a cell, or a little more: small enough to fit hollows of a piece, large enough to search quickly. Not less,
 * since a gap of so much would then take two cells.
 */
const CELL = 5;

/** Cells that divide a step of the pages evenly both ways, so that a cell lies on the same place of every page. */
export interface CellSize {
  readonly width: Mm;
  readonly height: Mm;
}

/** The side of a cell of CELL or a little more that divides `length` evenly. */
export const cellDividing = (length: Mm): Mm => length / Math.max(1, Math.floor(length / CELL));

export interface Shape {
  readonly quarters: Quarters;
  /** The piece's own point that lies at the corner of the shape, as its placement when the shape lies at (0, 0). */
  readonly dx: Mm;
  readonly dy: Mm;
  /** mm. */
  readonly width: Mm;
  readonly height: Mm;
  readonly cells: BitRows;
  /** With all cells that lie nearer than the gap; begins `marginX` and `marginY` cells before. */
  readonly kept: BitRows;
  readonly marginX: number;
  readonly marginY: number;
}

export interface Shapes {
  readonly key: string;
  /** mm². */
  readonly area: number;
  readonly turns: readonly Shape[];
}

/** @throws CoreBug for a ring that is none */
export function shapesOf(piece: ToLay, cell: CellSize, gap: Mm): Shapes {
  const near = cellsNear(cell.width, cell.height, gap);
  const marginX = Math.ceil(gap / cell.width);
  const marginY = Math.ceil(gap / cell.height);
  const turns = ALL_QUARTERS.map((quarters): Shape => {
    const still = { quarters, dx: 0, dy: 0 };
    const { min, max } = ringBounds(piece.ring.map((point) => onSheet(still, point)));
    const place = { quarters, dx: -min.x, dy: -min.y };
    const columns = cellsOver(max.x - min.x, cell.width);
    const rows = cellsOver(max.y - min.y, cell.height);
    const ring = piece.ring.map((point) => onSheet(place, point));
    const cells = rowsFrom(coverOf(ring, evenLines(columns, cell.width), evenLines(rows, cell.height)), columns);
    return {
      ...place,
      width: max.x - min.x,
      height: max.y - min.y,
      cells,
      kept: grown(cells, near, marginX, marginY),
      marginX,
      marginY,
    };
  });
  return { key: piece.key, area: areaOf(piece), turns };
}

/** How many cells hold `length`. A hair more does not take another. */
export const cellsOver = (length: Mm, cell: Mm): number => Math.max(1, Math.ceil((length - SAME_POINT) / cell));

function areaOf({ ring }: ToLay): number {
  const origin = invariant(ring[0], "a point of the ring");
  let twice = 0;
  ring.forEach((a, index) => {
    const b = invariant(ring[(index + 1) % ring.length], "point of a ring");
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  });
  return Math.abs(twice) / 2;
}

/** A shape laid with its corner at a cell. */
export interface Laid {
  readonly shapes: Shapes;
  readonly turn: Shape;
  /** Cells. */
  readonly x: number;
  readonly y: number;
}

export const placementOf = ({ shapes, turn, x, y }: Laid, cell: CellSize): Placement => ({
  key: shapes.key,
  quarters: turn.quarters,
  dx: turn.dx + x * cell.width,
  dy: turn.dy + y * cell.height,
});
