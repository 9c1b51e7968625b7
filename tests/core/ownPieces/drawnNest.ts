/** Pieces laid out on a sheet and drawn as a file has them: one layer a size, each piece beside the last. */
import type { FileDrawing, FilePoint, LinesOfLook, Writing } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";

export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A line or a cubic, all that a writer knows. */
export interface Line {
  readonly a: XY;
  readonly b: XY;
  readonly c?: readonly [XY, XY] | undefined;
}

interface DrawnSize {
  readonly label: string;
  readonly outline: readonly Line[];
  /** Legs and other lines inside, each unbroken. */
  readonly inner: readonly (readonly Line[])[];
  readonly marks: readonly XY[];
}

export interface DrawnPiece {
  readonly title: string;
  readonly sizes: readonly DrawnSize[];
}

export interface DrawOptions {
  /** How each piece lies: any map that keeps lengths. */
  readonly lay?: (p: XY, piece: number) => XY;
  /** Curves as straight stretches that leave them by so much; null: as curves. */
  readonly flatten?: number | null;
}

const ROOM = 900;

export function drawnNest(
  pieces: readonly DrawnPiece[],
  { lay = (p) => p, flatten = null }: DrawOptions = {},
): FileDrawing {
  const bySize = new Map<string, string[]>();
  const points: FilePoint[] = [];
  const writings: Writing[] = [];
  for (const [index, { title, sizes }] of pieces.entries()) {
    const to = (p: XY): XY => {
      const q = lay(p, index);
      return { x: q.x + index * ROOM, y: q.y };
    };
    const middle = sizes[0]?.outline.map(({ a }) => to(a)) ?? [];
    const at = {
      x: middle.reduce((sum, { x }) => sum + x, 0) / middle.length,
      y: middle.reduce((sum, { y }) => sum + y, 0) / middle.length,
    };
    if (title !== "") writings.push({ ...at, text: title, layer: "text", group: "" });
    for (const { label, outline, inner, marks } of sizes) {
      const paths = bySize.get(label) ?? [];
      paths.push(`${pathOf(outline, to, flatten)}Z`, ...inner.map((line) => pathOf(line, to, flatten)));
      bySize.set(label, paths);
      for (const mark of marks) points.push({ ...to(mark), layer: label, group: "" });
    }
  }
  const lines = [...bySize].map(([layer, paths]): LinesOfLook => ({
    look: { layer, group: "", colour: "#000000", dash: "", width: 0.5 },
    paths,
  }));
  return { format: "svg", unit: { mm: 1, saidBy: "size" }, lines, points, writings, hiddenLayers: [] };
}

export const ownOf = (drawing: FileDrawing, more: Partial<OwnPattern> = {}): OwnPattern => ({
  file: "pattern.svg",
  drawing,
  sortBy: "layer",
  pieces: [],
  ...more,
});

const point = (t: number, { a, b, c }: Line): XY => {
  if (c === undefined) return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
  const r = 1 - t;
  const [w0, w1, w2, w3] = [r * r * r, 3 * r * r * t, 3 * r * t * t, t * t * t];
  return {
    x: w0 * a.x + w1 * c[0].x + w2 * c[1].x + w3 * b.x,
    y: w0 * a.y + w1 * c[0].y + w2 * c[1].y + w3 * b.y,
  };
};

function pathOf(lines: readonly Line[], to: (p: XY) => XY, flatten: number | null): string {
  const text = (p: XY): string => {
    const { x, y } = to(p);
    return `${x} ${y}`;
  };
  const [first] = lines;
  if (first === undefined) return "";
  return `M${text(first.a)}${lines
    .map((line) => {
      if (line.c === undefined) return `L${text(line.b)}`;
      if (flatten === null) return `C${text(line.c[0])} ${text(line.c[1])} ${text(line.b)}`;
      // As many chords as leave a cubic by no more than asked: Wang's bound.
      const bend = Math.max(
        Math.hypot(line.a.x - 2 * line.c[0].x + line.c[1].x, line.a.y - 2 * line.c[0].y + line.c[1].y),
        Math.hypot(line.c[0].x - 2 * line.c[1].x + line.b.x, line.c[0].y - 2 * line.c[1].y + line.b.y),
      );
      const count = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / flatten)));
      return Array.from(
        { length: count },
        (_, i) => `L${text(i + 1 === count ? line.b : point((i + 1) / count, line))}`,
      ).join("");
    })
    .join("")}`;
}
