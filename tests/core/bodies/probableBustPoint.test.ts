/** Where a bust point that nobody measured probably lies: by Pythagoras, from what the estimates say. */
import { describe, expect, it } from "vitest";
import { estimatesOf } from "../../../src/core/bodies/estimate";
import { fromSideNeck, probableBustPoint } from "../../../src/core/bodies/probableBustPoint";
import { piecePoint } from "../../../src/core/geometry/point";
import { bodyOf, tapesOf } from "../../../src/core/measures/tape";
import { heldBack1988 } from "../../support/surveys";

const neck = piecePoint(70, 20);
const body = (measures: Parameters<typeof tapesOf>[0]) => bodyOf(tapesOf(measures));

describe("fromSideNeck", () => {
  it("is the corner of a right-angled triangle", () => {
    // 24 across, 250 long: 248.85 down.
    expect(fromSideNeck(neck, 188, 250)).toEqual({ x: 94, y: expect.closeTo(20 + Math.sqrt(250 ** 2 - 24 ** 2), 9) });
  });

  it("is nowhere where the distance does not reach so far across", () => {
    expect(fromSideNeck(neck, 400, 100)).toBeNull();
  });
});

describe("probableBustPoint", () => {
  it("is not asked where both measures were taken, nor where nothing was", () => {
    expect(probableBustPoint(neck, body({ bustPointWidth: 190, sideNeckToBustPoint: 265 }))).toBeNull();
    expect(probableBustPoint(neck, body({}))).toBeNull();
  });

  it("lies where the estimates say, as wide as they are unsure", () => {
    const taken = body({ bustGirth: 920, waistGirth: 740 });
    const { bustPointWidth, sideNeckToBustPoint } = estimatesOf(taken);
    const spot = probableBustPoint(neck, taken);
    expect(spot?.centre.x).toBeCloseTo((bustPointWidth?.value ?? NaN) / 2, 9);
    expect(spot?.across).toBeCloseTo(((bustPointWidth?.most ?? NaN) - (bustPointWidth?.least ?? NaN)) / 4, 9);
    expect(spot?.down).toBeCloseTo(((sideNeckToBustPoint?.most ?? NaN) - (sideNeckToBustPoint?.least ?? NaN)) / 2, 9);
  });

  it("narrows to the tape's own doubt where one of the two was taken", () => {
    const spot = probableBustPoint(neck, body({ bustGirth: 920, bustPointWidth: 190 }));
    expect(spot?.centre.x).toBe(95);
    // Two standard deviations of one reading (7 mm) of the width, half of it on the half front.
    expect(spot?.across).toBeCloseTo(7, 9);
  });

  it("holds the true bust point of most held-back women, from bust, waist and hip alone", () => {
    const held = heldBack1988.filter(
      ({ measures: { bustGirth = 0, waistGirth = 0, hipGirth = 0, bustPointWidth = 0, sideNeckToBustPoint = 0 } }) => {
        const spot = probableBustPoint(neck, body({ bustGirth, waistGirth, hipGirth }));
        const own = fromSideNeck(neck, bustPointWidth, sideNeckToBustPoint);
        return (
          spot !== null &&
          own !== null &&
          Math.abs(own.x - spot.centre.x) <= spot.across &&
          Math.abs(own.y - spot.centre.y) <= spot.down
        );
      },
    );
    // Nine of ten each way is about eight of ten both ways.
    expect(held.length / heldBack1988.length).toBeGreaterThan(0.78);
    expect(held.length / heldBack1988.length).toBeLessThan(0.93);
  });
});
