/**
 * The conditional distribution against a general-purpose library's inverse (ml-matrix) and against simulated bodies; the
 * shipped model against a fresh fit of the survey (tests/reference-data/README.md).
 */
import * as fc from "fast-check";
import { inverse, Matrix } from "ml-matrix";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { conditionOn, type BodyModel, type Known } from "../../../src/core/bodies/bodyModel";
import { BRIDGES, SURVEYED_BODIES, TAPED_BODIES } from "../../../src/core/bodies/bridges";
import { SURVEY } from "../../../src/core/bodies/surveyModel";
import { MEASURE_NAMES, type MeasureName } from "../../../src/core/measures/measure";
import { invariant } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";
import { SURVEYED, surveyModelText } from "../../support/surveyModelText";
import { women1988 } from "../../support/surveys";

/** Middle and scale of one measure by the textbook formula, with the library's matrices. */
function byLibrary(model: BodyModel, given: readonly Known[], measure: MeasureName) {
  const at = model.measures.indexOf(measure);
  const places = given.map((known) => model.measures.indexOf(known.measure));
  const scatter = new Matrix(model.scatter.map((row) => [...row]));
  const own = scatter.selection(places, places).add(Matrix.diag(given.map(({ variance }) => variance)));
  const across = scatter.selection([at], places);
  const off = Matrix.columnVector(
    given.map(({ log }, i) => log - invariant(model.middle[invariant(places[i], "place")], "middle")),
  );
  const weights = across.mmul(inverse(own));
  const distance = off.transpose().mmul(inverse(own)).mmul(off).get(0, 0);
  const left = scatter.get(at, at) - weights.mmul(across.transpose()).get(0, 0);
  const freedom = model.freedom + given.length;
  return {
    middle: invariant(model.middle[at], "middle") + weights.mmul(off).get(0, 0),
    scale: Math.sqrt((left * (model.freedom + distance)) / freedom),
    distance,
  };
}

describe("conditionOn", () => {
  it("is what the library's inverse gives, for any measures given and asked", () => {
    fc.assert(
      fc.property(
        fc.subarray([...TAPED_BODIES.measures], { minLength: 1 }),
        fc.constantFrom(...TAPED_BODIES.measures),
        fc.array(anyAmount(-0.2, 0.2), { minLength: 14, maxLength: 14 }),
        fc.constantFrom(0.0001, 0.01),
        (measures, asked, offs, variance) => {
          const given = measures.map((measure, at) => ({
            measure,
            log:
              invariant(TAPED_BODIES.middle[TAPED_BODIES.measures.indexOf(measure)], "middle") +
              invariant(offs[at], "off"),
            variance,
          }));
          const ours = conditionOn(TAPED_BODIES, given);
          const theirs = byLibrary(TAPED_BODIES, given, asked);
          expect(ours.distance).toBeCloseTo(theirs.distance, 6);
          expect(ours.of(asked).middle).toBeCloseTo(theirs.middle, 9);
          expect(ours.of(asked).scale).toBeCloseTo(theirs.scale, 8);
        },
      ),
    );
  });

  it("of nothing is the model itself", () => {
    const { of, distance, known } = conditionOn(TAPED_BODIES, []);
    expect([distance, known]).toEqual([0, 0]);
    expect(of("bustGirth").middle).toBe(TAPED_BODIES.middle[0]);
    expect(of("bustGirth").scale).toBeCloseTo(Math.sqrt(TAPED_BODIES.scatter[0]?.[0] ?? 0), 12);
  });

  it("leaves no doubt of what is given exactly, and some of what was read off a tape", () => {
    const exact = conditionOn(SURVEYED_BODIES, [{ measure: "bustGirth", log: Math.log(950), variance: 0 }]).of(
      "bustGirth",
    );
    expect(Math.exp(exact.middle)).toBeCloseTo(950, 6);
    expect(exact.scale).toBeLessThan(1e-7);
    const read = conditionOn(SURVEYED_BODIES, [
      { measure: "bustGirth", log: Math.log(950), variance: (10 / 950) ** 2 },
    ]).of("bustGirth");
    // Drawn a little towards the middle (903 mm), and nearly as unsure as the tape: 10 mm.
    expect(Math.exp(read.middle)).toBeGreaterThan(945);
    expect(Math.exp(read.middle)).toBeLessThan(950);
    expect(950 * read.scale).toBeGreaterThan(9);
    expect(950 * read.scale).toBeLessThan(10.2);
  });

  it("is less sure of a body further out, by what Student's t says", () => {
    const scaleAt = (off: number): number =>
      conditionOn(SURVEYED_BODIES, [
        { measure: "bustGirth", log: invariant(SURVEYED_BODIES.middle[0], "middle") + off, variance: 0 },
      ]).of("hipGirth").scale;
    const sd = Math.sqrt(SURVEYED_BODIES.scatter[0]?.[0] ?? 0);
    // One measure given, three scales out: (25 + 9)/(25 + 0).
    expect(scaleAt(3 * sd) / scaleAt(0)).toBeCloseTo(Math.sqrt(34 / 25), 9);
  });

  it("passes over what the model lacks", () => {
    const given: readonly Known[] = [{ measure: "acrossFront", log: Math.log(330), variance: 0 }];
    expect(conditionOn(SURVEYED_BODIES, given).known).toBe(0);
  });
});

describe("the shipped survey model", () => {
  it("is what a fresh fit of the survey gives, to its last digit", () => {
    const shipped = readFileSync(new URL("../../../src/core/bodies/surveyModel.ts", import.meta.url), "utf8");
    const numbers = (text: string): number[] =>
      (text.slice(text.indexOf("export")).match(/\d+(\.\d+)?/g) ?? []).map(Number);
    const fresh = surveyModelText();
    expect(shipped.replaceAll(/[\d.]+/g, "#")).toBe(fresh.replaceAll(/[\d.]+/g, "#"));
    const [have, want] = [numbers(shipped), numbers(fresh)];
    expect(have).toHaveLength(want.length);
    // Another machine's arithmetic may differ in the last digit printed.
    expect(Math.max(...have.map((value, at) => Math.abs(value - invariant(want[at], "number"))))).toBeLessThan(2e-8);
  }, 240_000);

  it("has the middles of the published table (means of the 1988 survey, mm)", () => {
    // A median-like middle of a slightly skewed girth lies a little below its mean.
    const published: readonly (readonly [MeasureName, number])[] = [
      ["bustGirth", 907.1],
      ["waistGirth", 725.5],
      ["hipGirth", 966.9],
      ["height", 1629.4],
      ["bustPointWidth", 184.8],
      ["sideNeckToBustPoint", 268],
      ["shoulderLength", 144.7],
      ["backWaistLength", 367.3],
    ];
    for (const [name, mean] of published) {
      const middle = Math.exp(invariant(SURVEYED_BODIES.middle[SURVEYED_BODIES.measures.indexOf(name)], name));
      expect(Math.abs(middle - mean) / mean).toBeLessThan(0.012);
    }
  });

  it("has correlations near the published ones", () => {
    const correlation = (a: MeasureName, b: MeasureName): number => {
      const [i, j] = [SURVEYED.indexOf(a), SURVEYED.indexOf(b)];
      const s = SURVEYED_BODIES.scatter;
      return invariant(s[i]?.[j], "s") / Math.sqrt(invariant(s[i]?.[i], "s") * invariant(s[j]?.[j], "s"));
    };
    // From the survey's own table of correlations.
    expect(correlation("bustGirth", "waistGirth")).toBeCloseTo(0.86, 1);
    expect(correlation("bustGirth", "underBustGirth")).toBeCloseTo(0.87, 1);
    expect(correlation("waistGirth", "hipGirth")).toBeCloseTo(0.74, 1);
    expect(correlation("height", "backWaistLength")).toBeCloseTo(0.48, 1);
    expect(correlation("bustGirth", "sideNeckToBustPoint")).toBeCloseTo(0.64, 1);
  });

  it("holds no body: only the fit, counts and ranges", () => {
    expect(SURVEY.women).toBe(women1988.length);
    expect(SURVEY.fitted).toBe(1656);
    expect(SURVEY.scatter.map((row) => row.length)).toEqual(SURVEY.measures.map((_, at) => at + 1));
  });
});

describe("the taped bodies", () => {
  it("have every measure of the tape, in its order", () => {
    expect(TAPED_BODIES.measures).toEqual(MEASURE_NAMES);
  });

  it.each(SURVEYED)("%s is shifted by its bridge, and doubted by it", (name) => {
    const at = SURVEYED_BODIES.measures.indexOf(name);
    const to = TAPED_BODIES.measures.indexOf(name);
    const middle = Math.exp(invariant(SURVEYED_BODIES.middle[at], "middle"));
    const bridge = BRIDGES[name] ?? { shift: 0, doubt: 0 };
    expect(Math.exp(invariant(TAPED_BODIES.middle[to], "middle"))).toBeCloseTo(middle + bridge.shift, 6);
    const added =
      invariant(TAPED_BODIES.scatter[to]?.[to], "scatter") - invariant(SURVEYED_BODIES.scatter[at]?.[at], "scatter");
    expect(Math.sqrt(Math.max(0, added)) * middle).toBeCloseTo(bridge.doubt, 6);
  });

  it("let back and front lengths share the doubt of where the waist is", () => {
    const covariance = (model: BodyModel): number =>
      invariant(
        model.scatter[model.measures.indexOf("backWaistLength")]?.[model.measures.indexOf("frontWaistLength")],
        "scatter",
      );
    expect(covariance(TAPED_BODIES)).toBeGreaterThan(covariance(SURVEYED_BODIES));
  });

  it("draw across front at 0.94 of across back", () => {
    const middle = (name: MeasureName): number =>
      Math.exp(invariant(TAPED_BODIES.middle[TAPED_BODIES.measures.indexOf(name)], name));
    expect(middle("acrossFront") / middle("acrossBack")).toBeCloseTo(0.94, 9);
  });
});
