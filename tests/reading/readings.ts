/** What the tests of reading have in common. */
import type { FileDrawing } from "../../src/core/decisions/fileDrawing";
import type { Result } from "../../src/core/result";
import type { ReadingFailure } from "../../src/reading/readingFailure";
import { readDxf } from "../../src/reading/readDxf";
import { readSvg } from "../../src/reading/readSvg";

export type Pair = readonly [number, number];

export function drawingOf(result: Result<FileDrawing, ReadingFailure>): FileDrawing {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}

export const svg = (inside: string, attributes = ""): FileDrawing =>
  drawingOf(readSvg(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`));

export const pathsOf = ({ lines }: FileDrawing): string[] => lines.flatMap(({ paths }) => paths);

/** A path as its letters and numbers. */
export const stepsOf = (path: string | undefined): { letter: string; numbers: number[] }[] =>
  [...(path ?? "").matchAll(/([MLCZ])([^MLCZ]*)/gu)].map(([, letter = "", numbers = ""]) => ({
    letter,
    numbers: (numbers.match(/-?[\d.]+/gu) ?? []).map(Number),
  }));

/** Where its straight parts and its cubics begin and end. */
export function cornersOf(path: string | undefined): Pair[] {
  return stepsOf(path).flatMap(({ letter, numbers }) => {
    const step = letter === "C" ? 6 : 2;
    const corners: Pair[] = [];
    for (let i = step - 2; i + 1 < numbers.length; i += step) corners.push([numbers[i] ?? NaN, numbers[i + 1] ?? NaN]);
    return corners;
  });
}

/** Its cubics, four points each; straight parts are cubics too. */
export function cubicsOf(path: string | undefined): (readonly [Pair, Pair, Pair, Pair])[] {
  const cubics: (readonly [Pair, Pair, Pair, Pair])[] = [];
  let last: Pair = [NaN, NaN];
  for (const { letter, numbers } of stepsOf(path)) {
    const step = letter === "C" ? 6 : 2;
    for (let i = 0; i + step <= numbers.length; i += step) {
      const points: Pair[] = [];
      for (let k = i; k < i + step; k += 2) points.push([numbers[k] ?? NaN, numbers[k + 1] ?? NaN]);
      const end = points.at(-1) ?? last;
      if (letter === "C") cubics.push([last, points[0] ?? last, points[1] ?? last, end]);
      else if (letter === "L") cubics.push([last, last, end, end]);
      last = end;
    }
  }
  return cubics;
}

/** Group codes and values, as a file of DXF has them. */
export type Groups = readonly (readonly [code: number, value: string | number])[];

export interface DxfParts {
  readonly header?: Groups;
  readonly tables?: Groups;
  readonly blocks?: Groups;
  readonly entities?: Groups;
}

export function dxfText({ header, tables, blocks, entities }: DxfParts): string {
  const section = (name: string, groups: Groups | undefined): Groups =>
    groups === undefined ? [] : [[0, "SECTION"], [2, name], ...groups, [0, "ENDSEC"]];
  const all: Groups = [
    ...section("HEADER", header),
    ...section("TABLES", tables),
    ...section("BLOCKS", blocks),
    ...section("ENTITIES", entities),
    [0, "EOF"],
  ];
  return all.map(([code, value]) => `${code}\n${value}\n`).join("");
}

export const dxf = (parts: DxfParts): FileDrawing => drawingOf(readDxf(dxfText(parts)));

export const lineEntity = (layer: string, [x1, y1]: Pair, [x2, y2]: Pair, more: Groups = []): Groups => [
  [0, "LINE"],
  [8, layer],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
  ...more,
];
