/** Lines of a file, made of path data as they are read from one. */
import type { FileDrawing, LineLook } from "../../../src/core/decisions/fileDrawing";
import { strokesOf, type Stroke } from "../../../src/core/outlines/strokes";

export const lookOf = (some: Partial<LineLook> = {}): LineLook => ({
  layer: "",
  group: "",
  colour: "#000000",
  dash: "",
  width: 0,
  ...some,
});

export type Line = readonly [look: Partial<LineLook>, ...paths: string[]];

export const drawn = (lines: readonly Line[], more: Partial<FileDrawing> = {}): FileDrawing => ({
  format: "svg",
  unit: { mm: 1, saidBy: "size" },
  lines: lines.map(([some, ...paths]) => ({ look: lookOf(some), paths })),
  points: [],
  writings: [],
  hiddenLayers: [],
  ...more,
});

export const strokes = (...paths: string[]): readonly Stroke[] => strokesOf(drawn([[{}, ...paths]]), 1);

/** Upright rectangle, closed. */
export const box = (x: number, y: number, width: number, height: number): string =>
  `M${x} ${y}L${x + width} ${y}L${x + width} ${y + height}L${x} ${y + height}Z`;

/** A circle of four cubics. */
export function circle(x: number, y: number, radius: number, high = radius): string {
  const [k, l] = [(radius * 4 * (Math.SQRT2 - 1)) / 3, (high * 4 * (Math.SQRT2 - 1)) / 3];
  return [
    `M${x + radius} ${y}`,
    `C${x + radius} ${y + l} ${x + k} ${y + high} ${x} ${y + high}`,
    `C${x - k} ${y + high} ${x - radius} ${y + l} ${x - radius} ${y}`,
    `C${x - radius} ${y - l} ${x - k} ${y - high} ${x} ${y - high}`,
    `C${x + k} ${y - high} ${x + radius} ${y - l} ${x + radius} ${y}Z`,
  ].join("");
}
