/** Checks in words: what is claimed, what is the matter, where, and how near is near enough. */
import { describe, expect, it } from "vitest";
import type { CheckResult } from "../../src/core/checks/check";
import { checkClaim, checkFailureSentence, checkPlace } from "../../src/words/checks";
import { planOf, testWork } from "../support/works";

const check = (change: Partial<CheckResult> & Pick<CheckResult, "name">): CheckResult => ({
  ok: false,
  measured: 0,
  expected: 0,
  tolerance: 1,
  unit: "mm",
  pieces: ["front"],
  ...change,
});

describe("a check that does not hold", () => {
  const cases: readonly (readonly [string, CheckResult])[] = [
    [
      "The pieces measure 77.0 cm round the waist; the plan says 76.5 cm.",
      check({ name: "girthAsClaimed", level: "waist", measured: 770, expected: 765, pieces: ["front", "back"] }),
    ],
    [
      "the front and the back do not sew together, they are 4 mm out",
      check({ name: "seamsWalk", seam: "side", measured: 204, expected: 200, pieces: ["front", "back"] }),
    ],
    [
      "The pieces measure 0.07 mm less round the waist than the plan says.",
      check({ name: "girthAsClaimed", level: "waist", measured: 764.93, expected: 765, tolerance: 0.05 }),
    ],
    [
      "the front and the back do not sew together, they are 0.06 mm out",
      check({ name: "seamsWalk", seam: "side", measured: -0.06, pieces: ["front", "back"], tolerance: 0.05 }),
    ],
    [
      "The legs of the front waist dart differ by 3 mm",
      check({ name: "dartLegsEqual", dart: "waistDart", measured: 143, expected: 140 }),
    ],
    [
      "at the centre of the neck edge of the front is 84°, not square",
      check({ name: "cornersSquare", point: "centreNeck", measured: 84, expected: 90, unit: "degrees" }),
    ],
    [
      "runs 12 mm past the bust point",
      check({ name: "dartEndShortOfBustPoint", dart: "sideDart", measured: -12, expected: 10 }),
    ],
    [
      "which is too far: its room falls outside the bust. 60 mm is the most",
      check({ name: "dartEndShortOfBustPoint", dart: "sideDart", measured: 80, expected: 60 }),
    ],
    [
      "which is too near: its point will show. 10 mm is the least",
      check({ name: "dartEndShortOfBustPoint", dart: "sideDart", measured: 4, expected: 10 }),
    ],
    [
      "has a corner of 7.5° at the side at the waist",
      check({ name: "seamsSmooth", seam: "side", point: "sideWaist", measured: 7.5, expected: 0, unit: "degrees" }),
    ],
    [
      "it lets 90.0 cm through, 98.0 cm must pass",
      check({ name: "openingPasses", level: "hip", measured: 900, expected: 980 }),
    ],
    [
      "It is tightest at the waist. End it 45 mm further down, or move it.",
      check({
        name: "openingPasses",
        level: "waist",
        measured: 890,
        expected: 979,
        tightest: { way: "overhead", belowWaist: 0, longer: 44.5 },
      }),
    ],
    [
      "It is tightest 6.0 cm below the waist. End it 11 mm further down, or move it.",
      check({
        name: "openingPasses",
        level: "hip",
        measured: 890,
        expected: 911,
        tightest: { way: "steppingIn", belowWaist: 60, longer: 10.1 },
      }),
    ],
    ["has one fault", check({ name: "outlineClosed", measured: 1, unit: "faults" })],
    ["has 2 faults", check({ name: "outlineClosed", measured: 2, unit: "faults" })],
    [
      "The front waist dart runs over the edge of the front or over another dart, so it cannot be folded",
      check({ name: "dartsClear", dart: "waistDart", measured: 1, unit: "faults" }),
    ],
  ];
  it.each(cases)("%s", (words, result) => {
    expect(checkFailureSentence(result, "cm")).toContain(words);
  });
});

describe("the figures of a check", () => {
  it("say how far off it may be", () => {
    const girth = check({
      name: "girthAsClaimed",
      level: "waist",
      measured: 765.2,
      expected: 765,
      tolerance: 1,
      pieces: ["front", "back"],
    });
    expect(checkPlace(girth, "cm")).toEqual({
      where: "front and back, waist",
      measured: "76.5 cm",
      expected: "76.5 cm ± 1 mm",
    });
  });

  it("are as fine as what fails", () => {
    // 0.06 mm are 0.0024 in, and 0.05 are 0.0020.
    const seam = check({ name: "seamsWalk", seam: "shoulder", measured: 5.94, expected: 6, tolerance: 0.05 });
    expect(checkPlace(seam, "cm")).toMatchObject({ measured: "5.94 mm", expected: "6 mm ± 0.05 mm" });
    const side = check({ name: "seamsWalk", seam: "side", measured: -0.06, expected: 0, tolerance: 0.05 });
    expect(checkPlace(side, "in")).toMatchObject({ measured: "−0.002 in", expected: "0 in ± 0.002 in" });
    expect(checkPlace({ ...side, measured: -0.03, ok: true }, "cm")).toMatchObject({ measured: "0 mm" });
  });

  it("say the range of a dart's end, and the least an opening must pass", () => {
    expect(
      checkPlace(
        check({ name: "dartEndShortOfBustPoint", dart: "waistDart", measured: 29, expected: 29, tolerance: 0 }),
        "cm",
      ).expected,
    ).toBe("10 mm to 60 mm");
    expect(
      checkPlace(check({ name: "openingPasses", level: "hip", measured: 1020, expected: 980, tolerance: 0 }), "cm")
        .expected,
    ).toBe("at least 98.0 cm");
  });

  it("say degrees as degrees and faults as a number", () => {
    const corner = check({ name: "cornersSquare", point: "centreNeck", measured: 89.6, expected: 90, unit: "degrees" });
    expect(checkPlace(corner, "in")).toEqual({
      where: "front, centre of the neck edge",
      measured: "89.6°",
      expected: "90° ± 1°",
    });
    expect(checkPlace(check({ name: "outlineClosed", tolerance: 0, unit: "faults" }), "cm").measured).toBe("0");
  });

  it("name a place for every check of a plan, no two of one kind alike", () => {
    const { checks } = planOf(testWork);
    expect(checks.length).toBeGreaterThan(20);
    for (const result of checks) expect(checkClaim(result.name)).toMatch(/^[A-Z]/);
    const places = checks.map((result) => `${result.name}: ${checkPlace(result, "cm").where}`);
    expect(places.filter((place, index) => places.indexOf(place) !== index)).toEqual([]);
  });
});
