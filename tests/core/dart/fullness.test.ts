/** Fullness of a dart against published cones, against a folded net of triangles, and the worked example. */
import { describe, expect, it } from "vitest";
import { coneHeight } from "../../../src/core/dart/fullness";
import { angleOfMouth } from "../../../src/core/dart/foldedDisc";
import { mouthForAngle } from "../../../src/core/alterations/redraw/moveDartEnd";
import { radians, radiansFromDegrees } from "../../../src/core/units";

describe("coneHeight", () => {
  // mathwords.com, "cone angle": a disc of radius 10 less a sector; heights to three decimals.
  it.each([
    [15, 2.857],
    [20, 3.287],
    [30, 3.996],
    [45, 4.841],
    [60, 5.528],
    [90, 6.614],
  ])("of a disc of radius 10 less %d° is %d", (degrees, height) => {
    expect(coneHeight(radiansFromDegrees(degrees), 10)).toBeCloseTo(height, 2);
  });

  /**
   * A fan of n equal flat triangles with the disc's own edge lengths, folded so that its ends meet: the rim points lie
   * on a circle whose chords are the triangles' short sides. The circle is found by bisection on the sum of the angles
   * under the chords, not by the cone formula.
   */
  function foldedFan(angle: number, slant: number, n: number): number {
    const chord = 2 * slant * Math.sin((2 * Math.PI - angle) / n / 2);
    let least = chord / 2;
    let most = slant;
    for (let i = 0; i < 200; i += 1) {
      const middle = (least + most) / 2;
      const turned = n * 2 * Math.asin(Math.min(1, chord / 2 / middle));
      if (turned > 2 * Math.PI) least = middle;
      else most = middle;
    }
    return Math.sqrt(slant * slant - most * most);
  }

  it.each([8, 14.36, 19.19, 28, 40])("agrees with a disc of 4000 folded triangles at %d°", (degrees) => {
    const angle = radiansFromDegrees(degrees);
    expect(coneHeight(angle, 80)).toBeCloseTo(foldedFan(angle, 80, 4000), 3);
  });
});

describe("a dart of 30 mm, 120 mm long", () => {
  const angle = radians(2 * Math.asin(15 / 120));

  it("has 14.36° and stands 22.4 mm high at 80 mm", () => {
    expect((angle * 180) / Math.PI).toBeCloseTo(14.36, 2);
    expect(coneHeight(angle, 80)).toBeCloseTo(22.4, 1);
  });

  it("shortened to 90 mm with its mouth held gets 19.19° and stands 25.8 mm high: wider, so fuller", () => {
    const shorter = radians(2 * Math.asin(15 / 90));
    expect((shorter * 180) / Math.PI).toBeCloseTo(19.19, 2);
    expect(coneHeight(shorter, 80)).toBeCloseTo(25.8, 1);
    // The same by its axis, as the planner moves it.
    expect(angleOfMouth(30, Math.sqrt(90 * 90 - 15 * 15))).toBeCloseTo(shorter, 9);
  });

  it("shortened to 90 mm with its fullness held gets a mouth of 22.5 mm", () => {
    const axis = 90 * Math.cos(angle / 2);
    expect(mouthForAngle(angle, axis, 0)).toBeCloseTo(22.5, 6);
  });
});
