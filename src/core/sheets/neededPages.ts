/**
 * Which pages are needed for what lies on a sheet, told by the zones that it touches (see zoneLines).
 *
 * What lies on one page alone needs that page; a strip between two pages, and the corner where four overlap, need one of
 * theirs. So a piece as wide as a window stays on one page, and nothing is ever without a page.
 */

/** What pieces touch: for each piece marks by row of zones; 2 · pages - 1 zones each way. */
export interface Zones {
  readonly touchedBy: readonly Uint8Array[];
  readonly columns: number;
  readonly rows: number;
}

/** Marks (1) of the needed pages, row by row. */
export function neededPages({ touchedBy, columns, rows }: Zones): Uint8Array {
  const needed = new Uint8Array(columns * rows);
  const across = 2 * columns - 1;
  const down = 2 * rows - 1;
  const isTouched = (zone: number): boolean => touchedBy.some((touched) => touched[zone] === 1);
  const needOneOf = (pages: readonly number[]): void => {
    const [first] = pages;
    if (first !== undefined && !pages.some((page) => needed[page] === 1)) needed[first] = 1;
  };
  // Pages first, then strips, then corners: what is needed anyhow mostly does for those after it.
  for (const shared of [0, 1, 2]) {
    for (let zy = 0; zy < down; zy++) {
      for (let zx = (shared + zy) % 2; zx < across; zx += 2) {
        if ((zx % 2) + (zy % 2) === shared && isTouched(zy * across + zx)) needOneOf(pagesOfZone(zx, zy, columns));
      }
    }
  }
  for (let zy = 1; zy < down; zy += 2) {
    for (let zx = 1; zx < across; zx += 2) {
      const four = pagesOfZone(zx, zy, columns);
      for (const touched of touchedBy) joinDiagonal(needed, four, touched, zy * across + zx, across);
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

/**
 * Two pages that meet only at a corner cannot be laid on each other truly: where a piece goes on from one to the other
 * there, one beside both joins them.
 */
function joinDiagonal(
  needed: Uint8Array,
  four: readonly number[],
  touched: Uint8Array,
  corner: number,
  across: number,
): void {
  if (touched[corner] !== 1) return;
  const [a = 0, b = 0, c = 0, d = 0] = four;
  const has = (page: number): boolean => needed[page] === 1;
  const touches = (...zones: readonly number[]): boolean => zones.some((zone) => touched[zone] === 1);
  const left = corner - 1;
  const right = corner + 1;
  const above = corner - across;
  const below = corner + across;
  // What it touches on either side needs a page there: where neither of the two beside is needed, those two are.
  if (!has(b) && !has(c)) {
    if (touches(above - 1, above, left) && touches(below + 1, below, right)) needed[b] = 1;
  } else if (!has(a) && !has(d)) {
    if (touches(above + 1, above, right) && touches(below - 1, below, left)) needed[a] = 1;
  }
}
