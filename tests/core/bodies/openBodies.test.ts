/** The leave-one-out formulas against conditioning measure by measure, and joint densities against conditional ones. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conditionOn, type Known } from "../../../src/core/bodies/bodyModel";
import { TAPED_BODIES } from "../../../src/core/bodies/bridges";
import { foretell, logDensity, OPEN_BODIES, readingOf, readOf } from "../../../src/core/bodies/openBodies";
import { MEASURE_NAMES, type MeasureName } from "../../../src/core/measures/measure";
import { invariant } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";
import { bodyWith } from "../../support/tapedWomen";

const middleOf = (name: MeasureName): number => invariant(OPEN_BODIES.middle[OPEN_BODIES.measures.indexOf(name)], name);

const VARIANCE = 0.0002;

/** No girth that may be fuller than foretold: for these the model is the plain one. */
const PLAIN = MEASURE_NAMES.filter((name) => !["bustGirth", "waistGirth", "hipGirth"].includes(name));

const anyRead: fc.Arbitrary<readonly Known[]> = fc
  .tuple(
    fc.subarray(PLAIN, { minLength: 2 }),
    fc.array(anyAmount(-0.25, 0.25), { minLength: PLAIN.length, maxLength: PLAIN.length }),
  )
  .map(([names, offs]) =>
    names.map((measure, at) => ({ measure, log: middleOf(measure) + invariant(offs[at], "off"), variance: VARIANCE })),
  );

describe("readingOf", () => {
  it("foretells each reading as conditioning on the others does, with the tape's own error added", () => {
    fc.assert(
      fc.property(anyRead, (read) => {
        const { foretold } = readingOf(read);
        for (const [at, known] of read.entries()) {
          const others = conditionOn(
            OPEN_BODIES,
            read.filter((one) => one !== known),
          );
          const { middle, scale, freedom } = others.of(known.measure);
          const ours = invariant(foretold[at], "foretold");
          const widening = (OPEN_BODIES.freedom + others.distance) / (OPEN_BODIES.freedom + others.known);
          expect(ours.middle).toBeCloseTo(middle, 8);
          expect(ours.scale).toBeCloseTo(Math.sqrt(scale ** 2 + known.variance * widening), 8);
          expect(ours.freedom).toBe(freedom);
        }
      }),
      { numRuns: 50 },
    );
  });

  it("gains by one other value exactly what that value's own density gains", () => {
    fc.assert(
      fc.property(anyRead, fc.nat(), anyAmount(-0.5, 0.5), (read, which, off) => {
        const at = which % read.length;
        const reading = readingOf(read);
        const foretold = invariant(reading.foretold[at], "foretold");
        const [before, after] = [invariant(reading.logs[at], "log"), invariant(reading.logs[at], "log") + off];
        expect(reading.gainOf(new Map([[at, after]]))).toBeCloseTo(
          logDensity(after, foretold) - logDensity(before, foretold),
          7,
        );
      }),
      { numRuns: 100 },
    );
  });

  it("leaves the middle of what bust and height foretell as it was", () => {
    const given: readonly Known[] = [
      { measure: "bustGirth", log: Math.log(1150), variance: 0 },
      { measure: "height", log: Math.log(1580), variance: 0 },
    ];
    for (const name of MEASURE_NAMES)
      expect(conditionOn(OPEN_BODIES, given).of(name).middle).toBeCloseTo(
        conditionOn(TAPED_BODIES, given).of(name).middle,
        9,
      );
  });

  it.each(["bustGirth", "waistGirth", "hipGirth"] as const)(
    "is less sure of a %s above what the rest foretell than of one as far below",
    (name) => {
      const rest: readonly Known[] = [
        { measure: "underBustGirth", log: middleOf("underBustGirth"), variance: VARIANCE },
      ];
      const scaleAt = (off: number): number =>
        foretell({ measure: name, log: middleOf(name) + off, variance: VARIANCE }, rest).scale;
      expect(scaleAt(0.05)).toBeGreaterThan(1.1 * scaleAt(-0.05));
    },
  );

  it("is less sure by age, where few or none of that age were measured", () => {
    const rest: readonly Known[] = [{ measure: "bustGirth", log: middleOf("bustGirth"), variance: 0 }];
    const scaleAt = (age?: number): number =>
      foretell({ measure: "backWaistLength", log: middleOf("backWaistLength"), variance: 0 }, rest, age).scale;
    expect(scaleAt(30)).toBe(scaleAt());
    expect(scaleAt(45) / scaleAt()).toBeCloseTo(1.15, 9);
    expect(scaleAt(70) / scaleAt()).toBeCloseTo(1.3, 9);
  });
});

describe("readOf", () => {
  it("is no less sure of a value for being far too low", () => {
    // 10 mm on the least usual bust, 700.
    expect(readOf(bodyWith({ bustGirth: 1 }))[0]?.variance).toBeCloseTo((10 / 700) ** 2, 12);
    expect(readOf(bodyWith({ bustGirth: 1000 }))[0]?.variance).toBeCloseTo((10 / 1000) ** 2, 12);
  });

  it("passes over what is no length", () => {
    expect(readOf(bodyWith({ bustGirth: NaN, waistGirth: Infinity, hipGirth: -900, height: 0 }))).toEqual([]);
  });
});
