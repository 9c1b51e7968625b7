/** The two lines beside a corner, drawn by themselves, come out as in the whole piece; lengths by bezier-js. */
import { describe, expect, it } from "vitest";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { shift } from "../../../src/core/geometry/point";
import { linesBeside, withEndsAt } from "../../../src/core/pattern/linesBeside";
import { isBend, pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { demoWorks } from "../../../src/document/demo";
import { seamByBezierJs } from "../../support/independent";

const PIECES: readonly (readonly [string, Piece])[] = demoWorks().flatMap((work) => {
  const plan = derivePlan(work);
  if (!plan.ok) return [];
  return plan.value.left.pieces.map((piece) => [`${work.name}: ${piece.name}`, piece] as const);
});

const cornersOf = ({ edges }: Piece): readonly PointName[] =>
  edges.map(({ from }) => from).filter((name) => !isBend(name));

const plainCornersOf = (piece: Piece) =>
  cornersOf(piece).flatMap((corner) => {
    const lines = linesBeside(piece, corner, corner);
    return lines === null ? [] : [{ corner, lines }];
  });

it("are found at most corners of every style", () => {
  const found = PIECES.reduce((sum, [, piece]) => sum + plainCornersOf(piece).length, 0);
  const all = PIECES.reduce((sum, [, piece]) => sum + cornersOf(piece).length, 0);
  expect(found).toBeGreaterThan(all / 2);
});

describe.each(PIECES)("%s", (_, piece) => {
  it("is moved at a corner by its two lines as if the whole of it were", () => {
    for (const { corner, lines } of plainCornersOf(piece)) {
      const to = shift(pointOf(piece, corner), 3, -2);
      expect(lines.withLines(withEndsAt(lines, to, to))).toEqual(moveMouthEnd(piece, corner, to));
    }
  });

  it("measures a seam in two parts as in one, as it is and moved", () => {
    for (const { corner, lines } of plainCornersOf(piece)) {
      const to = shift(pointOf(piece, corner), 3, -2);
      const drawn = withEndsAt(lines, to, to);
      for (const seam of new Set(piece.edges.map((edge) => edge.seam))) {
        const is = lines.ofSeam(seam, lines) + lines.outside(seam);
        const moved = lines.ofSeam(seam, drawn) + lines.outside(seam);
        expect(Math.abs(is - seamByBezierJs(piece, seam))).toBeLessThan(1e-4);
        expect(Math.abs(moved - seamByBezierJs(moveMouthEnd(piece, corner, to), seam))).toBeLessThan(1e-4);
      }
    }
  });

  it("has none where a line beside the corner has bends", () => {
    for (const { from, to } of piece.edges) {
      if (!isBend(from) || isBend(to)) continue;
      expect(linesBeside(piece, to, to)).toBe(null);
    }
  });
});
