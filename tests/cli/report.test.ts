import { describe, expect, it } from "vitest";
import { planReport } from "../../src/cli/report";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { checklistText } from "../../src/cli/text";
import type { Plan } from "../../src/core/plan/plan";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import type { Work } from "../../src/core/decisions/work";
import { sampleWork } from "../support/sampleWork";

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const reportOf = (work: Work) => planReport(work, planOf(work));

/** Every number in a report, with the path to it. */
function numbers(value: unknown, path = ""): [string, number][] {
  if (typeof value === "number") return [[path, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbers(inner, `${path}.${key}`));
}

describe("planReport", () => {
  const report = reportOf(sampleWork);

  it("gives frame, cup, levels and bust", () => {
    expect(report.frame).toEqual({ size: "14", cup: "B" });
    expect(report.bust).toEqual({ difference_mm: 70, residual_mm: 10, asked_mm: 0, altered_mm: 0 });
    expect(report.levels.waist?.target_mm).toBe(778);
    expect(report.levels.waist?.finished_mm).toBeCloseTo(778, 0);
    expect(report.levels.hip?.between).toEqual(["14", "16"]);
  });

  it("says how sure the sizes are and what to measure again, as the sheet does", () => {
    expect(report.sure?.said[0]).toMatch(/^Size 14, likely/);
    expect(report.sure?.next).toMatch(/^Measure the bust twice more before you cut:/);
    const text = checklistText(sampleWork, planOf(sampleWork));
    expect(text).toContain("HOW SURE\n--------\nSize 14, likely");
    expect(text.replaceAll("\n", " ")).toContain(report.sure?.next);
  });

  it("says on the sheet what was measured and is not altered, before the order of work", () => {
    const short: Work = { ...sampleWork, tapes: tapesOf({ ...measuresOf(sampleWork.tapes), backWaistLength: 370 }) };
    const text = checklistText(short, planOf(short));
    expect(text).toMatch(/MEASURED, NOT ALTERED\n-{21}\n {2}- /);
    expect(text.indexOf("MEASURED, NOT ALTERED")).toBeLessThan(text.indexOf("ORDER OF WORK"));
  });

  it("leaves the hip out where the pattern ends at the waist", () => {
    const short = reportOf({ ...sampleWork, pattern: { ...sampleWork.pattern, length: "waist" } });
    expect(Object.keys(short.levels)).toEqual(["bust", "waist"]);
  });

  it("gives darts whose figures agree with their points", () => {
    expect(report.darts.length).toBeGreaterThanOrEqual(3);
    for (const dart of report.darts) {
      const [inner, outer] = dart.mouth_mm;
      const [x, y] = dart.apex_mm;
      expect(Math.hypot(inner[0] - x, inner[1] - y)).toBeCloseTo(dart.legs_mm[0], 1);
      expect(Math.hypot(outer[0] - x, outer[1] - y)).toBeCloseTo(dart.legs_mm[1], 1);
      expect(Math.hypot(inner[0] - outer[0], inner[1] - outer[1])).toBeCloseTo(dart.intake_mm, 1);
      const [a, b] = dart.legs_mm;
      const cosine = (a * a + b * b - dart.intake_mm ** 2) / (2 * a * b);
      expect((Math.acos(cosine) * 180) / Math.PI).toBeCloseTo(dart.angle_deg, 1);
      expect(dart.fullness_mm).toBeCloseTo(80 * Math.sqrt(1 - (1 - dart.angle_deg / 360) ** 2), 1);
    }
  });

  it("rounds: shares and all of the pieces to 4 decimals, lengths to 0.01, and no minus nought", () => {
    const unrounded = numbers(report).filter(([path, value]) => {
      const decimals = path.endsWith(".share") || path.startsWith(".pieces.") ? 4 : path.endsWith("angle_deg") ? 3 : 2;
      return value !== Number(value.toFixed(decimals)) || Object.is(value, -0);
    });
    expect(numbers(report).length).toBeGreaterThan(50);
    expect(unrounded).toEqual([]);
  });

  it("says each job with its amount, and each check with what was measured", () => {
    const first = report.checklist[0];
    expect(first).toMatchObject({ piece: "front", amount_mm: 0 });
    expect(first?.text).toContain("Trace the 14 line of the front, cup version B");
    expect(report.checks.length).toBeGreaterThan(20);
    for (const check of report.checks)
      expect(Object.keys(check)).toEqual(expect.arrayContaining(["name", "ok", "measured", "expected", "tolerance"]));
  });
});
