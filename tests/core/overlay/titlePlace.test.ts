/** The place of a strip's words, held against looking at every place on every paper, each line at each. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import type { Strip } from "../../../src/core/overlay/strip";
import { placeTitle } from "../../../src/core/overlay/titlePlace";
import { radians } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";

/** Corners of a box in the strip's own frame. */
interface Box {
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

/** Words up a strip are read from its right. */
interface Place extends Box {
  readonly isUp: boolean;
}

/** In steps of 4 mm: the strip as it is, then made larger on one side by up to 36 mm, so as to hold 29 and 5.5 mm; least paper first. */
function papers({ u, v }: Box, longest: number, turn: number): readonly Box[] {
  const made: Box[] = [{ u, v }];
  for (let by = 4; by <= 36; by += 4)
    made.push(
      { u: [u[0] - by, u[1]], v },
      { u: [u[0], u[1] + by], v },
      { u, v: [v[0] - by, v[1]] },
      { u, v: [v[0], v[1] + by] },
    );
  const [cosine, sine] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const reach = (box: Box): number => {
    const [width, height] = [box.u[1] - box.u[0], box.v[1] - box.v[0]];
    return Math.max(width * cosine + height * sine, width * sine + height * cosine);
  };
  const area = (box: Box): number => (box.u[1] - box.u[0]) * (box.v[1] - box.v[0]);
  return made.filter((box) => reach(box) <= longest).toSorted((p, q) => area(p) - area(q));
}

/** The first place on a paper, from its upper left corner on, row by row: words across it before words up it. */
function placeOn({ u, v }: Box, lines: readonly (readonly [number, number])[]): Place | null {
  for (const isUp of [false, true]) {
    const [width, height] = isUp ? [29, 76] : [76, 29];
    for (let y = v[0] + 3; y <= v[1] - 3 - height; y += 4)
      for (let x = u[0] + 3; x <= u[1] - 3 - width; x += 4) {
        const isFree = lines.every(
          ([lineX, lineY]) => lineX < x - 2.5 || lineX > x + width + 2.5 || lineY < y - 2.5 || lineY > y + height + 2.5,
        );
        if (isFree) return { u: [x, x + width], v: [y, y + height], isUp };
      }
  }
  return null;
}

const anyLines = fc.array(fc.tuple(anyAmount(0, 160), anyAmount(0, 110)), { minLength: 0, maxLength: 12 });

describe("the place of the words", () => {
  it.each([
    ["upright", 0],
    ["at a slant", 0.6],
  ])("is the first on the least paper, on a strip that lies %s", (_how, turn) => {
    const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
    const placed = (x: number, y: number): PiecePoint => piecePoint(x * cosine - y * sine, x * sine + y * cosine);
    const wanted = (paper: Box, { u, v, isUp }: Place) => {
      const centre = placed((u[0] + u[1]) / 2, (v[0] + v[1]) / 2);
      return {
        strip: { turn, ...paper },
        title: {
          centre: { x: expect.closeTo(centre.x, 6), y: expect.closeTo(centre.y, 6) },
          width: 76,
          height: 29,
          turn: expect.closeTo(isUp ? turn - Math.PI / 2 : turn, 9),
        },
      };
    };
    const seen = { none: 0, across: 0, up: 0, wider: 0 };
    fc.assert(
      fc.property(
        anyLines,
        anyAmount(30, 160),
        anyAmount(20, 110),
        fc.constantFrom(130, 170, 400),
        (lines, width, height, longest) => {
          const box: Box = { u: [0, width], v: [0, height] };
          const strip: Strip = { ...box, turn: radians(turn) };
          const found = placeTitle(
            strip,
            lines.map(([x, y]) => placed(x, y)),
            { longest, more: 0 },
          );
          const paper = papers(box, longest, turn).find((one) => placeOn(one, lines) !== null) ?? null;
          const place = paper === null ? null : placeOn(paper, lines);
          expect(found).toEqual(paper === null || place === null ? null : wanted(paper, place));
          if (place === null) seen.none += 1;
          else seen[place.isUp ? "up" : "across"] += 1;
          if (paper !== null && (paper.u[1] - paper.u[0] > width || paper.v[1] - paper.v[0] > height)) seen.wider += 1;
        },
      ),
      { numRuns: 90 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(4);
  });
});
