/**
 * Every woman of a public survey through pick and blend. Source, licence and cautions: tests/reference-data/README.md.
 * Her horizontal mid-armhole girth is not the dressmaker's upper chest: on average it lies 20 mm under the bust, where a
 * "B" draft has 50. It is bridged by taking 30 mm off; and once it is left out, so that the frame goes by bust.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Work } from "../../../src/core/plan/work";
import { testWork } from "../../support/works";

const BRIDGE = 30;

const [, ...lines] = readFileSync(new URL("../../reference-data/women-1988.csv", import.meta.url), "utf8").trim().split("\n");
const women = lines.map((line) => line.split(",").map((cell) => Math.round(Number(cell) * 100) / 10));

function workOf(row: readonly number[], length: "waist" | "hip", upperChest: boolean): Work {
  const [bustGirth = 0, armhole = 0, underBustGirth = 0, waistGirth = 0, hipGirth = 0, bustPointWidth = 0, sideNeckToBustPoint = 0] = row;
  return {
    ...testWork,
    pattern: length === "hip" ? testWork.pattern : waistLength,
    measures: {
      bustGirth,
      underBustGirth,
      waistGirth,
      hipGirth,
      bustPointWidth,
      sideNeckToBustPoint,
      ...(upperChest ? { upperChestGirth: armhole - BRIDGE } : {}),
    },
  };
}

const waistLength = { ...testWork.pattern, length: "waist" } as const;

interface Tally {
  plans: number;
  refusals: number;
  worst: number;
  faults: string[];
}

/** The claims that hold for every body, whatever her figure; the others are doubts to be shown, not faults. */
const ALWAYS = new Set(["girthAsClaimed", "seamsWalk", "dartLegsEqual", "cornersSquare", "outlineClosed"]);

function run(length: "waist" | "hip", upperChest: boolean): Tally {
  const tally: Tally = { plans: 0, refusals: 0, worst: 0, faults: [] };
  women.forEach((row, index) => {
    const plan = derivePlan(workOf(row, length, upperChest));
    if (!plan.ok) {
      if (plan.failure.code !== "plan/outside-chart") tally.faults.push(`${index}: ${plan.failure.code}`);
      tally.refusals += 1;
      return;
    }
    tally.plans += 1;
    for (const { level, finished, target } of plan.value.levels) {
      if (level !== "bust") tally.worst = Math.max(tally.worst, Math.abs(finished - target));
      if (!Number.isFinite(finished)) tally.faults.push(`${index}: ${level} is ${finished}`);
    }
    const refused = new Set(plan.value.slips.filter(({ outcome }) => !outcome.ok).map(({ id }) => id));
    for (const check of plan.value.checks) {
      // A bust alteration that cannot be made leaves the bust short of its claim by nothing: the claim then drops it too.
      if (ALWAYS.has(check.name) && !check.ok) {
        tally.faults.push(`${index}: ${check.name} ${check.pieces.join("+")} ${check.seam ?? check.level ?? ""} ${check.measured} for ${check.expected}${refused.size > 0 ? " (refused slip)" : ""}`);
      }
    }
  });
  return tally;
}

describe("2208 surveyed women", () => {
  it("are all there, in millimetres", () => {
    expect(women).toHaveLength(2208);
    // Mean bust 90.71 cm: published with the survey.
    expect(women.reduce((sum, [bust = 0]) => sum + bust, 0) / women.length).toBeCloseTo(907.1, 0);
  });

  it.each([
    ["waist", true],
    ["waist", false],
    ["hip", true],
    ["hip", false],
  ] as const)("to the %s, upper chest bridged: %s: nearly all get a plan, every finished waist and hip within 1 mm", (length, upperChest) => {
    const { plans, refusals, worst, faults } = run(length, upperChest);
    expect(faults.slice(0, 10)).toEqual([]);
    expect(plans + refusals).toBe(2208);
    expect(plans).toBeGreaterThan(2150);
    expect(worst).toBeLessThan(1);
  }, 60_000);
});
