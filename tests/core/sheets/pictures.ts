/** Cells of a sheet as pictures: `#` is marked, `.` is not. */
import { rowsFrom, type BitRows } from "../../../src/core/sheets/bitRows";

export const fromPicture = (lines: readonly string[]): BitRows =>
  rowsFrom(
    Uint8Array.from(lines.join(""), (mark) => (mark === "#" ? 1 : 0)),
    lines[0]?.length ?? 0,
  );

export const drawn = ({ width, height, words, bits }: BitRows): readonly string[] =>
  Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_cell, x) =>
      Math.floor((bits[y * words + Math.floor(x / 32)] ?? 0) / 2 ** (x % 32)) % 2 === 1 ? "#" : ".",
    ).join(""),
  );

/** Marks row by row, as a picture. */
export const picture = (marks: Uint8Array, width: number): readonly string[] =>
  Array.from({ length: marks.length / width }, (_, row) =>
    Array.from(marks.slice(row * width, (row + 1) * width), (mark) => (mark === 1 ? "#" : ".")).join(""),
  );
