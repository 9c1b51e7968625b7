/** What is made of a bust and of a bust point, on the demo draft: her own point by its two lengths, the bust by what is lacking. */
import { describe, expect, it } from "vitest";
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { MeasureName } from "../../../src/core/measures/measure";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { dartIn, planOf, testWork } from "../../support/works";

const GIRTHS = { bustGirth: 905, upperChestGirth: 832, waistGirth: 752, hipGirth: 1034 } as const;
const taped = (readings: Partial<Record<MeasureName, number>>, picks: Work["picks"] = {}): Work => ({
  ...testWork,
  tapes: tapesOf({ ...GIRTHS, ...readings }),
  picks,
});

describe("her bust point", () => {
  // The draft's side neck lies at (69, -40).
  const [sideX, sideY] = [69, -40];

  it("lies half of the width out, and the depth from the side neck; what was not measured is as printed", () => {
    const own = (readings: Partial<Record<MeasureName, number>>) => planOf(taped(readings)).bustPoint;
    const { printed } = own({});
    expect(own({}).own).toBeNull();
    expect(own({ bustPointWidth: 190 }).own).toEqual({ x: 95, y: printed.y });
    const deep = own({ sideNeckToBustPoint: 280 }).own;
    expect(deep?.x).toBeCloseTo(printed.x, 9);
    expect(Math.hypot((deep?.x ?? 0) - sideX, (deep?.y ?? 0) - sideY)).toBeCloseTo(280, 6);
    const both = own({ bustPointWidth: 180, sideNeckToBustPoint: 280 }).own;
    expect(both?.x).toBeCloseTo(90, 9);
    expect(both?.y).toBeCloseTo(sideY + Math.sqrt(280 ** 2 - (90 - sideX) ** 2), 6);
  });
});

describe("a bust", () => {
  const bust = (
    readings: Partial<Record<MeasureName, number>>,
    picks?: Work["picks"],
    style: StyleName = "sideDart",
  ) => {
    const work = taped(readings, picks);
    const plan = planOf({ ...work, pattern: { ...work.pattern, style } });
    const line = plan.ledger.find(({ source }) => source === "bust");
    return {
      ...plan.sizing.bust,
      notes: line?.outcome.ok === true ? line.outcome.value.notes.map(({ code }) => code) : null,
      what: line?.what,
      plan,
    };
  };

  // Common practice, no source: up to 12 mm all round are left alone.
  it("is altered by what base and cup lack of it, and left alone where that is little", () => {
    // 12 in C is drafted for 905.
    const twelve = { baseSize: "12", cup: "C" };
    expect(bust({ bustGirth: 917 }, twelve)).toMatchObject({ residual: 12, asked: 0, alteration: 0, notes: null });
    expect(bust({ bustGirth: 918 }, twelve)).toMatchObject({
      residual: 13,
      asked: 13,
      alteration: 13,
      notes: ["centreLengthened", "armholeSmoothed"],
      what: { kind: "bust", amount: 13, asked: 13, spread: 6.5 },
    });
  });

  it("that cannot be made whole says what was wanted and what is made, of a cup that its seam is longer", () => {
    const full = bust({ bustGirth: 1139, upperChestGirth: 880 });
    expect(full.notes).toEqual(["bustShort", "centreLengthened", "armholeSmoothed"]);
    expect([full.asked, full.asked - full.alteration > 12]).toEqual([169, true]);
    expect(full.what).toMatchObject({ amount: full.alteration, asked: 169, spread: full.alteration / 2 });
    const cups = bust({ bustGirth: 1139, upperChestGirth: 880 }, {}, "midriff");
    expect(cups.notes).toEqual(["bustShort", "cupLengthened"]);
  });

  it("that is smaller is taken out, as far as the darts go: no more is wanted of them", () => {
    const small = bust({ bustGirth: 860, upperChestGirth: 860 });
    expect(small.asked).toBe(-60);
    expect(small.alteration).toBeLessThan(0);
    expect(small.alteration).toBeGreaterThan(-60);
    expect(small.notes).toContain("bustShort");
    for (const { drawn } of small.plan.left.darts) expect(drawn.intake).toBeGreaterThan(0);
  });

  it("is wanted by what it lacks of base and cup, though nothing is altered: its darts are held against that", () => {
    const asDrafted = planOf(taped({}, { baseSize: "12", cup: "C" }));
    const [drawn, wanted] = [asDrafted, asDrafted].map((plan, at) => {
      const dart = dartIn(plan, "front", "waistDart");
      return (at === 0 ? dart.drawn : dart.wanted)?.intake ?? Number.NaN;
    });
    expect(wanted).toBeCloseTo(drawn ?? 0, 1);
    // 12 mm more are left alone in the pieces; the darts that would take them in are wider.
    const fuller = dartIn(planOf(taped({ bustGirth: 917 }, { baseSize: "12", cup: "C" })), "front", "sideDart");
    expect(fuller.drawn.intake).toBeCloseTo(dartIn(asDrafted, "front", "sideDart").drawn.intake, 1);
    expect(fuller.wanted?.fullness).toBeGreaterThan(fuller.drawn.fullness);
  });
});

it("measures of the test's body are those of the works it stands beside", () => {
  expect(measuresOf(testWork.tapes)).toMatchObject(GIRTHS);
});
