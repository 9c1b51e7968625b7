import type { Alteration } from "../../src/core/decisions/alteration";
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import { pieceInWords } from "../../src/words/table";
import { verifyGroups } from "../../src/words/verify";
import { sampleWork } from "../support/sampleWork";

function planWith(alterations: readonly Alteration[]): Plan {
  const plan = derivePlan({ ...sampleWork, alterations });
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const WAIST_LEFT: Alteration = { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 6, half: "left" };
const centimetres = (text: string): number => Number(/([\d.]+) cm/.exec(text)?.[1]);

describe("what to measure after", () => {
  it("starts with the seams, as the last job of the order of work", () => {
    const groups = verifyGroups(planWith([]), "cm");
    expect(groups.map(({ title }) => title)).toEqual(["Seams to walk", "Round the body", "Dart legs"]);
    expect(groups.map(({ walked }) => walked)).toEqual([true, false, false]);
  });

  it("says half the girth once where both halves are alike", () => {
    const waist = verifyGroups(planWith([]), "cm")[1]?.rows.find(({ what }) => what === "Waist");
    expect(2 * centimetres(waist?.how ?? "")).toBeCloseTo(centimetres(waist?.expected ?? ""), 0);
  });

  it("says each half's girth where they differ, and they add up to the whole", () => {
    const [, girths] = verifyGroups(planWith([WAIST_LEFT]), "cm");
    const waist = girths?.rows.find(({ what }) => what === "Waist");
    const [, left = "", right = ""] = /left half ([\d.]+ cm), right half ([\d.]+ cm)/.exec(waist?.how ?? "") ?? [];
    expect(centimetres(left)).toBeGreaterThan(centimetres(right));
    expect(centimetres(left) + centimetres(right)).toBeCloseTo(centimetres(waist?.expected ?? ""), 0);
    expect(girths?.rows.find(({ what }) => what === "Hip")?.how).toMatch(/^each half /);
    expect(girths?.how).not.toContain("times two");
  });

  it("gives the seams that differ for either half, the others once", () => {
    const seams = verifyGroups(planWith([WAIST_LEFT]), "cm")[0]?.rows.map(({ what }) => what) ?? [];
    expect(seams.filter((what) => what.startsWith("Shoulder seam"))).toEqual(["Shoulder seam, back and front"]);
    expect(seams).toContain("Waist seam, front and front basque (left half)");
    expect(seams).toContain("Waist seam, front and front basque (right half)");
  });

  it("says a seam as the table does, in either unit", () => {
    const plan = planWith([]);
    const front = plan.left.pieces.find(({ name }) => name === "front");
    if (front === undefined) throw new Error("no front");
    for (const unit of ["cm", "in"] as const) {
      const seam = verifyGroups(plan, unit)[0]?.rows.find(({ what }) => what.startsWith("Side seam"));
      expect(seam?.expected).toMatch(/\d/);
      expect(pieceInWords(plan.left, front, unit).join(" ")).toContain(`side seam ${seam?.expected}`);
    }
  });

  it("says half of a girth in inches so that twice as much is the girth", () => {
    const inches = (text: string): number => {
      const [, whole = "0", part = "0"] = /(\d+)(?:\s([\d/½¼¾]+))? in/.exec(text) ?? [];
      const [over = "0", under = "1"] = part.normalize("NFKD").replace("\u2044", "/").split("/");
      return Number(whole) + Number(over) / Number(under);
    };
    // 34 5/8 is 34.625.
    expect(inches("34 5/8 in")).toBe(34.625);
    expect(inches("34 ½ in")).toBe(34.5);
    for (const { how, expected } of verifyGroups(planWith([]), "in")[1]?.rows ?? [])
      expect(2 * inches(how ?? "")).toBe(inches(expected));
  });
});
