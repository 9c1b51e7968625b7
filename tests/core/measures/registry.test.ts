import { describe, expect, it } from "vitest";
import { MEASURE_NAMES, type MeasureName, type Measures } from "../../../src/core/measures/measure";
import { checkMeasure, MEASURE_NEEDS, MEASURE_RANGES } from "../../../src/core/measures/registry";

/** A body near the middle of the range, mm. Common practice, no source. */
const BODY: Required<Measures> = {
  bustGirth: 920,
  upperChestGirth: 870,
  underBustGirth: 790,
  waistGirth: 740,
  hipGirth: 980,
  height: 1650,
  bustPointWidth: 190,
  sideNeckToBustPoint: 268,
  backWaistLength: 405,
  frontWaistLength: 432,
  neckBaseGirth: 370,
  shoulderLength: 122,
  acrossBack: 350,
  acrossFront: 330,
};

describe("MEASURE_RANGES", () => {
  it.each(MEASURE_NAMES)("%s: the usual range lies within the possible one", (name) => {
    const { least, usualLeast, usualMost, most } = MEASURE_RANGES[name];
    expect(least).toBeGreaterThan(0);
    expect(usualLeast).toBeGreaterThan(least);
    expect(usualMost).toBeGreaterThan(usualLeast);
    expect(most).toBeGreaterThan(usualMost);
  });

  it("asks always for bust and waist, for the hip where the pattern reaches it, and nothing else", () => {
    const needed = MEASURE_NAMES.filter((name) => MEASURE_NEEDS[name] !== "welcome");
    expect(needed.map((name) => [name, MEASURE_NEEDS[name]])).toEqual([
      ["bustGirth", "always"],
      ["upperChestGirth", "forCup"],
      ["waistGirth", "always"],
      ["hipGirth", "toHip"],
    ]);
  });
});

const kinds = (name: MeasureName, value: number): readonly string[] => {
  const verdict = checkMeasure(name, value);
  return verdict.state === "ok" ? [] : verdict.misreadings.map(({ kind }) => kind);
};

describe("checkMeasure", () => {
  it.each(MEASURE_NAMES)("%s: takes a usual value, and its range to the very ends", (name) => {
    const { least, usualLeast, usualMost, most } = MEASURE_RANGES[name];
    expect(checkMeasure(name, BODY[name])).toEqual({ state: "ok" });
    expect(checkMeasure(name, usualLeast)).toEqual({ state: "ok" });
    expect(checkMeasure(name, usualMost)).toEqual({ state: "ok" });
    expect(checkMeasure(name, least)).toMatchObject({ state: "unusual", least: usualLeast, most: usualMost });
    expect(checkMeasure(name, most)).toMatchObject({ state: "unusual", least: usualLeast, most: usualMost });
    expect(checkMeasure(name, least - 0.1)).toMatchObject({ state: "impossible", least, most });
    expect(checkMeasure(name, most + 0.1)).toMatchObject({ state: "impossible", least, most });
  });

  it.each(MEASURE_NAMES)("%s: refuses inches read as centimetres, and says so", (name) => {
    // 1 in = 25.4 mm: what was meant as inches and counted as centimetres is 1/2.54 of it.
    const read = BODY[name] / 2.54;
    expect(checkMeasure(name, read).state).toBe("impossible");
    expect(kinds(name, read)).toContain("inchesAsCentimetres");
  });

  it.each(MEASURE_NAMES)("%s: remarks on centimetres read as inches, and says so", (name) => {
    const read = BODY[name] * 2.54;
    expect(checkMeasure(name, read).state).not.toBe("ok");
    expect(kinds(name, read)).toContain("centimetresAsInches");
  });

  it.each(MEASURE_NAMES)("%s: half of it is refused, and said to be half", (name) => {
    const half = BODY[name] / 2;
    expect(checkMeasure(name, half).state).toBe("impossible");
    expect(kinds(name, half)).toContain("half");
  });

  it("says what the value would have been", () => {
    const verdict = checkMeasure("bustGirth", 360);
    expect(verdict).toMatchObject({
      misreadings: [
        { kind: "inchesAsCentimetres", meant: 914.4 },
        { kind: "half", meant: 720 },
      ],
    });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -900, 0])("refuses %d", (value) => {
    expect(checkMeasure("bustGirth", value).state).toBe("impossible");
  });
});
