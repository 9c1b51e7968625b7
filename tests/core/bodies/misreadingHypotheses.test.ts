/** What may have gone wrong with one reading, counted by hand, and weighed by Student's t written out. */
import { describe, expect, it } from "vitest";
import { hypothesesOf } from "../../../src/core/bodies/misreadingHypotheses";
import type { Reading } from "../../../src/core/bodies/openBodies";
import type { MeasureName } from "../../../src/core/measures/measure";

const { log } = Math;

/** Readings with what the others foretell of them, mm, each known to a twentieth. */
const reading = (...read: readonly (readonly [MeasureName, number, number])[]): Reading => ({
  measures: read.map(([measure]) => measure),
  logs: read.map(([, value]) => log(value)),
  foretold: read.map(([, , foretold]) => ({ middle: log(foretold), scale: 0.05, freedom: 25 })),
  gainOf: (changed) => [...changed].reduce((sum, [at, value]) => sum + (at + 1) * value, 0),
});

/** Log-density of Student's t with 25 degrees of freedom, but for a constant. */
const t25 = (value: number, middle: number, scale = 0.05): number =>
  -13 * log(1 + (log(value / middle) / scale) ** 2 / 25) - log(scale);

const told = (of: Reading, unit: "cm" | "in" = "cm") =>
  hypothesesOf(of, unit).map(({ kind, at, meant }) => [
    kind,
    at,
    meant.map((one) => Math.round(Math.exp(one) * 10) / 10),
  ]);

describe("what was meant", () => {
  it("of a waist of 760 on a centimetre tape: another ten, turned digits, the navel, or anything", () => {
    // 25.4 times, or by, or twice it no waist is usual (540 to 1500).
    const found = told(reading(["waistGirth", 760, 700]));
    expect(found.slice(0, 3)).toEqual([
      ["tenOut", [0], [660]],
      ["tenOut", [0], [860]],
      ["digitsSwapped", [0], [670]],
    ]);
    expect(found.slice(3).map(([kind]) => kind)).toEqual(["waistAtNavel", null]);
    expect(found.at(-1)).toEqual([null, [0], [700]]);
  });

  it("of a bust: read in the other unit, half of it, and turned digits in two places", () => {
    expect(told(reading(["bustGirth", 400, 900]))).toEqual([
      ["inchesAsCentimetres", [0], [1016]],
      ["half", [0], [800]],
      [null, [0], [900]],
    ]);
    expect(told(reading(["bustGirth", 2286, 900]))).toEqual([
      ["centimetresAsInches", [0], [900]],
      [null, [0], [900]],
    ]);
    // 123: 132 and 213, of which no bust is; 113 and 133.
    expect(told(reading(["bustGirth", 1230, 900]))).toEqual([
      ["tenOut", [0], [1130]],
      ["tenOut", [0], [1330]],
      ["digitsSwapped", [0], [1320]],
      [null, [0], [900]],
    ]);
    // 213: 231 and 123, and of these only 123 is a bust.
    expect(told(reading(["bustGirth", 2130, 900]))).toContainEqual(["digitsSwapped", [0], [1230]]);
    expect(told(reading(["bustGirth", 2130, 900])).filter(([kind]) => kind === "digitsSwapped")).toHaveLength(1);
    // 88: the same either way; a part of a centimetre stays.
    expect(told(reading(["bustGirth", 885, 900])).map(([kind]) => kind)).toEqual(["tenOut", "tenOut", null]);
    expect(told(reading(["bustGirth", 787, 900]))).toContainEqual(["digitsSwapped", [0], [877]]);
  });

  it("of an inch tape: ten inches, and the digits of inches", () => {
    // 34 in: 24 is no usual bust, 44 in is 1117.6 mm, 43 in 1092.2.
    expect(told(reading(["bustGirth", 863.6, 900]), "in")).toEqual([
      ["tenOut", [0], [1117.6]],
      ["digitsSwapped", [0], [1092.2]],
      [null, [0], [900]],
    ]);
  });

  it("of a length no half", () => {
    expect(told(reading(["backWaistLength", 210, 400])).map(([kind]) => kind)).toEqual(["tenOut", null]);
    expect(told(reading(["hipGirth", 480, 960])).map(([kind]) => kind)).toContain("half");
    expect(told(reading(["neckBaseGirth", 180, 360])).map(([kind]) => kind)).toContain("half");
  });

  it("of an upper chest and a waist as another girth that was read too", () => {
    const chest = told(reading(["bustGirth", 900, 900], ["upperChestGirth", 890, 840]));
    expect(chest).toContainEqual(["upperChestOverBust", [1], [840]]);
    expect(told(reading(["upperChestGirth", 890, 840])).map(([kind]) => kind)).not.toContain("upperChestOverBust");
    const hip = told(reading(["waistGirth", 950, 720], ["hipGirth", 960, 960]));
    expect(hip).toContainEqual(["waistAtHip", [0], [720]]);
    expect(hip.filter(([kind]) => kind === "waistAtHip" || kind === "waistAtNavel")).toHaveLength(2);
  });

  it("of pairs that lie side by side: each what the other was read", () => {
    const pairs = (...names: readonly MeasureName[]) =>
      told(reading(...names.map((name, at) => [name, 700 + 10 * at, 700] as const))).filter(
        ([kind]) => kind === "swapped",
      );
    expect(pairs("bustGirth", "upperChestGirth", "underBustGirth", "waistGirth", "hipGirth")).toEqual([
      ["swapped", [0, 1], [710, 700]],
      ["swapped", [0, 2], [720, 700]],
      ["swapped", [0, 3], [730, 700]],
      ["swapped", [1, 2], [720, 710]],
      ["swapped", [2, 3], [730, 720]],
      ["swapped", [3, 4], [740, 730]],
    ]);
    expect(pairs("backWaistLength", "frontWaistLength", "sideNeckToBustPoint", "acrossBack", "acrossFront")).toEqual([
      ["swapped", [0, 1], [710, 700]],
      ["swapped", [2, 1], [710, 720]],
      ["swapped", [3, 4], [740, 730]],
    ]);
    expect(told(reading(["bustGirth", 800, 800], ["waistGirth", 800, 800])).map(([kind]) => kind)).not.toContain(
      "swapped",
    );
  });
});

describe("how it weighs", () => {
  const weightOf = (of: Reading, wanted: string | null): number =>
    hypothesesOf(of, "cm").find(({ kind }) => kind === wanted)?.weight ?? Number.NaN;
  const now = t25(760, 700);

  it("by how often it happens (our own choice), and how much likelier the reading is with it", () => {
    const waist = reading(["waistGirth", 760, 700]);
    // A number shifted lies among others as dense in mm: the share of 760 over 660.
    expect(weightOf(waist, "tenOut")).toBeCloseTo(log(0.0005) + t25(660, 700) - now + log(760 / 660), 9);
    expect(weightOf(waist, "digitsSwapped")).toBeCloseTo(log(0.0005) + t25(670, 700) - now + log(760 / 670), 9);
    expect(weightOf(waist, null)).toBeCloseTo(log(0.0007) + t25(760, 700, Math.hypot(0.05, 0.2)) - now, 9);
    // The navel's girth lies 0.0859 of a logarithm over the waist's, give or take 0.0477.
    const there = 700 * Math.exp(0.0859);
    expect(weightOf(waist, "waistAtNavel")).toBeCloseTo(
      log(0.003) + t25(760, there, Math.hypot(0.05, 0.0477)) - now,
      9,
    );
  });

  it("a number that was multiplied by its own density alone", () => {
    const bust = reading(["bustGirth", 450, 900]);
    expect(weightOf(bust, "half")).toBeCloseTo(log(0.0003) + t25(900, 900) - t25(450, 900), 9);
    expect(weightOf(bust, "inchesAsCentimetres")).toBeCloseTo(log(0.0003) + t25(1143, 900) - t25(450, 900), 9);
    const large = reading(["bustGirth", 2286, 900]);
    expect(weightOf(large, "centimetresAsInches")).toBeCloseTo(log(0.0003) + t25(900, 900) - t25(2286, 900), 9);
  });

  it("a tape over another girth by how near the two readings are", () => {
    // Two readings of 12 mm of an upper chest, of 10 of a waist.
    const chest = reading(["bustGirth", 900, 900], ["upperChestGirth", 890, 840]);
    expect(weightOf(chest, "upperChestOverBust")).toBeCloseTo(
      log(0.002) + t25(890, 900, (Math.SQRT2 * 12) / 900) - t25(890, 840),
      9,
    );
    const hip = reading(["waistGirth", 950, 720], ["hipGirth", 960, 960]);
    expect(weightOf(hip, "waistAtHip")).toBeCloseTo(
      log(0.0005) + t25(950, 960, (Math.SQRT2 * 10) / 960) - t25(950, 720),
      9,
    );
  });

  it("the likeliest waist of one read at the navel lies between both, by how sure each is", () => {
    const found = hypothesesOf(reading(["waistGirth", 760, 700]), "cm").find(({ kind }) => kind === "waistAtNavel");
    const [a, b] = [1 / 0.05 ** 2, 1 / 0.0477 ** 2];
    expect(found?.meant[0]).toBeCloseTo((a * log(700) + b * (log(760) - 0.0859)) / (a + b), 9);
  });

  it("a swap by what all readings gain together", () => {
    const found = hypothesesOf(
      reading(["bustGirth", 800, 800], ["upperChestGirth", 850, 850], ["waistGirth", 700, 700]),
      "cm",
    );
    const weights = found.filter(({ kind }) => kind === "swapped").map(({ weight }) => weight);
    expect(weights).toHaveLength(2);
    // The stand-in for the gain counts each place once more than the one before.
    expect(weights[0]).toBeCloseTo(log(0.0025) + log(850) + 2 * log(800), 9);
    expect(weights[1]).toBeCloseTo(log(0.001) + log(700) + 3 * log(800), 9);
  });
});
