/** When pieces count as not to be trued, on a bodice pulled about by hand; and what then becomes of the alteration. */
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { piecePoint, shift } from "../../../src/core/geometry/point";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { pointOf, type PieceName, type PointName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, withPiece, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { leftOf } from "../../../src/core/truing/truingLeft";
import { planOf, testWork } from "../../support/works";

const pieces = setOf(planOf(testWork).left.pieces);

const pulled = (set: PieceSet, name: PieceName, corner: PointName, dx: number, dy: number): PieceSet => {
  const piece = pieceIn(set, name);
  return withPiece(set, moveMouthEnd(piece, corner, shift(pointOf(piece, corner), dx, dy)));
};

describe("what truing leaves", () => {
  it("is nothing where seams walk, though a corner was moved as far as truing may", () => {
    expect(leftOf(pieces, pieces)).toBeNull();
    expect(leftOf(pulled(pieces, "front", "underarm", 3, 0), pieces)).toBeNull();
  });

  it("is a seam that is longer than its partner, with what is over", () => {
    // Straight down, 5 mm, at the end of a seam that runs nearly upright.
    const off = pulled(pieces, "back", "sideWaist", 0, 5);
    expect(leftOf(off, off)).toMatchObject({ piece: "back", seam: "side" });
    expect(leftOf(off, off)?.off).toBeCloseTo(5, 0);
  });

  it("is a corner that was carried away, however well the seams walk", () => {
    const away = pulled(pieces, "front", "centreNeck", 0, -70);
    expect(leftOf(away, pieces)).toMatchObject({ piece: "front", off: 70 });
  });

  it("is a seam whose length is no number", () => {
    const none = pulled(pieces, "back", "sideWaist", NaN, 0);
    expect(leftOf(none, none)).not.toBeNull();
  });
});

describe("a piece that reaches further than any bodice", () => {
  it("is no answer: the alteration that leaves it so is left out, and says how far it would reach", () => {
    const front = pieceIn(pieces, "front");
    const at = piecePoint(0, 4000);
    const far = withPiece(pieces, {
      ...front,
      points: { ...front.points, underBustCentre: { at, level: "underBust" } },
    });
    const done = applyAlteration(
      far,
      { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 4 },
      { bustPoint: pointOf(front, "bustPoint") },
    );
    expect(done).toEqual({
      ok: false,
      failure: { code: "alteration/out-of-reach", piece: "front", reach: 4000, furthest: 3000 },
    });
  });
});
