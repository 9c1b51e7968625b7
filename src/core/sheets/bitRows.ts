/** Cells of a sheet as rows of bits, 32 to a word: whether a shape lies free is then asked a word at a time. */
const WORD = 32;

export interface BitRows {
  readonly width: number;
  readonly height: number;
  /** Words in each row. */
  readonly words: number;
  readonly bits: Uint32Array;
}

export function emptyRows(width: number, height: number): BitRows {
  const words = Math.ceil(width / WORD);
  return { width, height, words, bits: new Uint32Array(words * height) };
}

/** From marks row by row. */
export function rowsFrom(marks: Uint8Array, width: number): BitRows {
  const rows = emptyRows(width, marks.length / width);
  marks.forEach((mark, cell) => {
    if (mark === 0) return;
    const x = cell % width;
    const word = Math.floor(cell / width) * rows.words + Math.floor(x / WORD);
    rows.bits[word] = (rows.bits[word] ?? 0) | (1 << (x % WORD));
  });
  return rows;
}

/** How far apart the rows are that are asked first: shapes that meet at all mostly meet in some of these. */
const COARSE = 8;

/** Whether the shape, laid with its first cell at (x, y), meets nothing. It must lie within the sheet. */
export function isFree(sheet: BitRows, shape: BitRows, x: number, y: number): boolean {
  const word = Math.floor(x / WORD);
  const by = x % WORD;
  for (let start = 0; start < COARSE; start++) {
    for (let row = start; row < shape.height; row += COARSE) {
      let at = (y + row) * sheet.words + word;
      const first = row * shape.words;
      let carried = 0;
      for (let k = 0; k < shape.words; k++, at++) {
        const bits = shape.bits[first + k] ?? 0;
        if ((((bits << by) | carried) & (sheet.bits[at] ?? 0)) !== 0) return false;
        carried = by === 0 ? 0 : bits >>> (WORD - by);
      }
      // The carry of the last word falls beyond the sheet only where the shape has no cell there.
      if (carried !== 0 && (carried & (sheet.bits[at] ?? 0)) !== 0) return false;
    }
  }
  return true;
}

/** Puts the shape on the sheet with its first cell at (x, y), which may be negative; what lies outside is left out. */
export function stamp(sheet: BitRows, shape: BitRows, x: number, y: number): void {
  const word = Math.floor(x / WORD);
  const by = x - word * WORD;
  for (let row = Math.max(0, -y); row < shape.height && y + row < sheet.height; row++) {
    const start = (y + row) * sheet.words;
    let carried = 0;
    for (let k = 0; k <= shape.words; k++) {
      const bits = k < shape.words ? (shape.bits[row * shape.words + k] ?? 0) : 0;
      const put = (bits << by) | carried;
      const at = word + k;
      if (at >= 0 && at < sheet.words) sheet.bits[start + at] = (sheet.bits[start + at] ?? 0) | put;
      carried = by === 0 ? 0 : bits >>> (WORD - by);
    }
  }
}

/** Offsets of the cells that come nearer than `gap` to a cell, all in the same length as the cell's sides. */
export function cellsNear(cellWidth: number, cellHeight: number, gap: number): readonly (readonly [number, number])[] {
  const across = Math.ceil(gap / cellWidth);
  const down = Math.ceil(gap / cellHeight);
  const near: [number, number][] = [];
  for (let dy = -down; dy <= down; dy++) {
    for (let dx = -across; dx <= across; dx++) {
      const apartX = Math.max(0, Math.abs(dx) - 1) * cellWidth;
      const apartY = Math.max(0, Math.abs(dy) - 1) * cellHeight;
      if ((dx === 0 && dy === 0) || apartX * apartX + apartY * apartY < gap * gap) near.push([dx, dy]);
    }
  }
  return near;
}

/** The shape grown by the offsets: `margin` cells wider on every side. */
export function grown(
  shape: BitRows,
  near: readonly (readonly [number, number])[],
  marginX: number,
  marginY: number,
): BitRows {
  const wide = emptyRows(shape.width + 2 * marginX, shape.height + 2 * marginY);
  for (const [dx, dy] of near) stamp(wide, shape, marginX + dx, marginY + dy);
  return wide;
}
