/**
 * Which pages are needed for what lies on a sheet, told by the zones that it touches (see zoneLines).
 *
 * What lies on one page alone needs that page; a strip between two pages, and the corner where four overlap, need one of
 * theirs. So a piece as wide as a window stays on one page, and nothing is ever without a page.
 */

/** What a piece or a whole sheet touches: marks by row of zones; 2 · pages - 1 zones each way. */
export interface Zones {
  readonly touched: Uint8Array;
  readonly columns: number;
  readonly rows: number;
}

/** Marks (1) of the needed pages, row by row. */
export function neededPages({ touched, columns, rows }: Zones): Uint8Array {
  const needed = new Uint8Array(columns * rows);
  const zonesAcross = 2 * columns - 1;
  const isTouched = (zx: number, zy: number): boolean => touched[zy * zonesAcross + zx] === 1;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (isTouched(2 * column, 2 * row)) needed[row * columns + column] = 1;
    }
  }
  const needOneOf = (pages: readonly number[]): void => {
    const [first] = pages;
    if (first !== undefined && !pages.some((page) => needed[page] === 1)) needed[first] = 1;
  };
  for (let zy = 0; zy < 2 * rows - 1; zy++) {
    for (let zx = 0; zx < zonesAcross; zx++) {
      // Strips first: a corner can then mostly do with what its strips need.
      if (zx % 2 !== zy % 2 && isTouched(zx, zy)) needOneOf(pagesOfZone(zx, zy, columns));
    }
  }
  for (let zy = 1; zy < 2 * rows - 1; zy += 2) {
    for (let zx = 1; zx < zonesAcross; zx += 2) {
      if (!isTouched(zx, zy)) continue;
      const four = pagesOfZone(zx, zy, columns);
      needOneOf(four);
      joinDiagonal(needed, four);
    }
  }
  return needed;
}

/** The pages whose windows hold the zone: one, two beside or above each other, or four row by row. */
function pagesOfZone(zx: number, zy: number, columns: number): readonly number[] {
  const first = (zy >> 1) * columns + (zx >> 1);
  const across = zx % 2 === 1 ? [first, first + 1] : [first];
  return zy % 2 === 1 ? [...across, ...across.map((page) => page + columns)] : across;
}

/** Two pages that meet only at a corner cannot be laid on each other truly: one beside both joins them. */
function joinDiagonal(needed: Uint8Array, four: readonly number[]): void {
  const [a = 0, b = 0, c = 0, d = 0] = four;
  const has = (page: number): boolean => needed[page] === 1;
  if (has(a) && has(d) && !has(b) && !has(c)) needed[b] = 1;
  if (has(b) && has(c) && !has(a) && !has(d)) needed[a] = 1;
}
