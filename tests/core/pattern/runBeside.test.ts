/** What is taken out of a piece to be drawn anew is all that moving its corners changes, and goes back where it was. */
import { describe, expect, it } from "vitest";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { shift } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { runBeside } from "../../../src/core/pattern/runBeside";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { demoWorks } from "../../../src/document/demo";
import { seamByBezierJs } from "../../support/independent";

const PIECES: readonly (readonly [string, Piece])[] = demoWorks().flatMap((work) => {
  const plan = derivePlan(work);
  if (!plan.ok) return [];
  return plan.value.left.pieces.map((piece) => [`${work.name}: ${piece.name}`, piece] as const);
});

const cornersOf = ({ edges }: Piece): readonly PointName[] =>
  edges.map(({ from }) => from).filter((name) => !name.startsWith("bend"));

/** The same ring begun at another edge. */
const begunAt = (piece: Piece, start: number): Piece => ({
  ...piece,
  edges: [...piece.edges.slice(start), ...piece.edges.slice(0, start)],
});

describe.each(PIECES)("%s", (_, piece) => {
  it("is the very same when a run is put back as it was", () => {
    for (const corner of cornersOf(piece)) {
      const { run, withRun } = runBeside(piece, corner, corner);
      expect(run.edges.length).toBeLessThanOrEqual(piece.edges.length);
      expect(withRun(run)).toEqual(piece);
    }
  });

  it("measures a seam in two parts as in one", () => {
    for (const corner of cornersOf(piece)) {
      const { run, seamOutside } = runBeside(piece, corner, corner);
      for (const seam of new Set(run.edges.map((edge) => edge.seam)))
        expect(Math.abs(seamByBezierJs(run, seam) + seamOutside(seam) - seamByBezierJs(piece, seam))).toBeLessThan(
          1e-4,
        );
    }
  });

  it("is moved at a corner as if the whole of it were, wherever its ring begins", () => {
    for (const start of [0, 1, piece.edges.length - 1]) {
      const begun = begunAt(piece, start);
      for (const corner of cornersOf(piece)) {
        const to = shift(pointOf(piece, corner), 3, -2);
        const { run, withRun } = runBeside(begun, corner, corner);
        expect(withRun(moveMouthEnd(run, corner, to))).toEqual(moveMouthEnd(begun, corner, to));
      }
    }
  });

  it("has a dart's mouth between the seam on either side, and the dart itself", () => {
    for (const dart of piece.darts) {
      const mouth = piece.edges.find(({ mouthOf }) => mouthOf === dart.name);
      if (mouth === undefined) continue;
      const { run } = runBeside(piece, mouth.from, mouth.to, dart);
      expect(run.darts).toEqual([dart]);
      expect(run.points[dart.apex]).toEqual(piece.points[dart.apex]);
      expect(run.edges.filter(({ mouthOf }) => mouthOf === dart.name)).toEqual([mouth]);
      expect(run.edges[0]?.mouthOf).toBe(null);
      expect(run.edges.at(-1)?.mouthOf).toBe(null);
    }
  });
});
