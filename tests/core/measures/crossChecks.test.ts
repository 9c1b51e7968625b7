import { describe, expect, it } from "vitest";
import { CROSS_CHECKS, measureNotes } from "../../../src/core/measures/crossChecks";
import type { MeasureName, Measures } from "../../../src/core/measures/measure";

/** Common practice, no source. */
const BODY = {
  bustGirth: 920,
  upperChestGirth: 870,
  underBustGirth: 790,
  waistGirth: 740,
  hipGirth: 980,
  bustPointWidth: 190,
  sideNeckToBustPoint: 268,
  backWaistLength: 405,
  frontWaistLength: 432,
  height: 1650,
  neckBaseGirth: 370,
  shoulderLength: 122,
  acrossBack: 350,
  acrossFront: 330,
} satisfies Measures;

const codes = (measures: Measures): readonly string[] => measureNotes(measures).map(({ code }) => code);

const swapped = (a: MeasureName, b: MeasureName): Measures => ({ ...BODY, [a]: BODY[b], [b]: BODY[a] });

describe("measureNotes", () => {
  it("says nothing about a usual body, nor about no measures at all", () => {
    expect(measureNotes(BODY)).toEqual([]);
    expect(measureNotes({})).toEqual([]);
  });

  it.each<[MeasureName, MeasureName, string]>([
    ["bustGirth", "underBustGirth", "measure/under-bust-not-below-bust"],
    ["bustGirth", "upperChestGirth", "measure/upper-chest-above-bust"],
    ["underBustGirth", "upperChestGirth", "measure/under-bust-against-upper-chest"],
    ["waistGirth", "bustGirth", "measure/waist-against-bust"],
    ["waistGirth", "hipGirth", "measure/waist-against-hip"],
    ["sideNeckToBustPoint", "frontWaistLength", "measure/bust-point-below-waist"],
  ])("notices %s and %s swapped", (a, b, code) => {
    expect(codes(swapped(a, b))).toContain(code);
  });

  it("carries the numbers of a note", () => {
    expect(measureNotes({ bustGirth: 900, underBustGirth: 930 })).toEqual([
      {
        code: "measure/under-bust-not-below-bust",
        involves: ["underBustGirth", "bustGirth"],
        value: 930,
        against: 900,
        least: expect.closeTo(495, 6),
        most: 899,
      },
    ]);
  });

  it("lets the upper chest be 20 mm more than the bust, not more", () => {
    expect(codes({ bustGirth: 900, upperChestGirth: 920 })).toEqual([]);
    expect(codes({ bustGirth: 900, upperChestGirth: 921 })).toEqual(["measure/upper-chest-above-bust"]);
  });

  it("passes over a check when one of its two measures is not taken", () => {
    expect(codes({ underBustGirth: 930 })).toEqual([]);
  });

  it("remarks on a value outside its usual range", () => {
    expect(measureNotes({ shoulderLength: 200 })).toMatchObject([
      { code: "measure/unusual", involves: ["shoulderLength"], value: 200, least: 90, most: 185 },
    ]);
  });

  it("has one entry for each code, and a bound on either side or one", () => {
    expect(new Set(CROSS_CHECKS.map(({ code }) => code)).size).toBe(CROSS_CHECKS.length);
    expect(CROSS_CHECKS.filter(({ least, most }) => least === null && most === null)).toEqual([]);
  });

  const bounds = CROSS_CHECKS.flatMap(({ code, involves: [held, other], least, most }) =>
    [
      { bound: least, past: -1 },
      { bound: most, past: 1 },
    ].flatMap(({ bound, past }) =>
      bound === null ? [] : [{ code, held, other, edge: bound.share * BODY[other] + bound.plus, past }],
    ),
  );

  it.each(bounds)("$code holds to its bound of $edge, and not $past mm past it", ({ code, held, other, edge, past }) => {
    const noted = (value: number) => codes({ [other]: BODY[other], [held]: value }).includes(code);
    expect(noted(BODY[held])).toBe(false);
    expect(noted(edge - past)).toBe(false);
    expect(noted(edge + past)).toBe(true);
  });
});
