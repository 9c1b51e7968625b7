/** A doubt is answered once, and of two in each other's place asked at the first. */
import { describe, expect, it } from "vitest";
import { isAskedElsewhere, isOpen } from "../../../src/core/bodies/answered";
import type { LikelyMisreading } from "../../../src/core/bodies/misreading";
import type { Suspicion } from "../../../src/core/bodies/suspicion";
import type { MeasureName } from "../../../src/core/measures/measure";

const doubt = (
  measure: MeasureName,
  misreading: LikelyMisreading | null,
  more: Partial<Suspicion> = {},
): Suspicion => ({
  measure,
  value: 900,
  expected: 800,
  least: 750,
  most: 850,
  misreading,
  takenAgain: false,
  saidRight: false,
  onceMore: false,
  ...more,
});
const swapped = (measure: MeasureName, other: MeasureName, more: Partial<Suspicion> = {}): Suspicion =>
  doubt(measure, { kind: "swapped", meant: 800, other }, more);

describe("a doubt", () => {
  it("is open until it is taken again or said to be right", () => {
    expect(isOpen(doubt("bustGirth", null))).toBe(true);
    expect(isOpen(doubt("bustGirth", null, { takenAgain: true }))).toBe(false);
    expect(isOpen(doubt("bustGirth", null, { saidRight: true }))).toBe(false);
  });

  it("about two in each other's place is asked at the first", () => {
    const pair = [swapped("bustGirth", "waistGirth"), swapped("waistGirth", "bustGirth")] as const;
    expect(pair.map((one) => isAskedElsewhere(pair, one))).toEqual([false, true]);
    const behind = [doubt("hipGirth", null), ...pair] as const;
    expect(behind.map((one) => isAskedElsewhere(behind, one))).toEqual([false, false, true]);
  });

  it("is asked where it stands, where the first is answered, of another kind, or not there", () => {
    const second = swapped("waistGirth", "bustGirth");
    for (const first of [
      swapped("bustGirth", "waistGirth", { saidRight: true }),
      doubt("bustGirth", { kind: "half", meant: 450 }),
      doubt("bustGirth", null),
      swapped("hipGirth", "waistGirth"),
    ])
      expect(isAskedElsewhere([first, second], second)).toBe(false);
    const notSwapped = doubt("waistGirth", { kind: "tenOut", meant: 800, other: "bustGirth" });
    expect(isAskedElsewhere([swapped("bustGirth", "waistGirth"), notSwapped], notSwapped)).toBe(false);
    expect(
      isAskedElsewhere([swapped("bustGirth", "waistGirth"), doubt("waistGirth", null)], doubt("waistGirth", null)),
    ).toBe(false);
  });
});
