/** What is read of her tissue for the page, and that the plan is made by it. */
import { describe, expect, it } from "vitest";
import type { Tissue } from "../../../src/core/decisions/tissue";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import type { Piece } from "../../../src/core/pattern/piece";
import { planOf } from "../../../src/core/plan/planOf";
import { mouthsNotMeasured } from "../../../src/core/plan/printedDarts";
import { readTissue } from "../../../src/core/plan/tissueReading";
import { invariant } from "../../../src/core/result";
import { testWork } from "../../support/works";

const on = (tissue?: Tissue): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, style: "sideDart", length: "waist", ...(tissue === undefined ? {} : { tissue }) },
});

const read = (work: Work, asked: string | null = null) => invariant(readTissue(work, asked), "reading");

describe("her tissue", () => {
  it("is measured along the base size, or the size she asks for, or the one that she measured", () => {
    const plan = planOf(on());
    expect(plan.ok && plan.value.sizing.baseSize.label).toBe(read(on()).size);
    expect(read(on(), "20").size).toBe("20");
    expect(read(on({ size: "18", pieces: { front: { sideLength: 190 } } }), "20").size).toBe("18");
  });

  it("has the same places with the same figures of the stand-in, whatever is measured", () => {
    const before = read(on(), "14").places;
    const after = read(on({ size: "14", pieces: { front: { sideLength: 170 }, back: { waistDartMouth: 44 } } })).places;
    expect(after).toBe(before);
  });

  it("has no places along a line that the chart has lost", () => {
    const gone = read(on({ size: "13", pieces: { front: { sideLength: 190 } } }));
    expect([gone.places, gone.pieces, gone.next]).toEqual([[], [], []]);
    expect(gone.fit.measured).toBeNull();
    expect(gone.sizes).not.toContain("13");
  });

  it("shows the stand-in in that size and the next", () => {
    const sideOf = (pieces: readonly Piece[]): number =>
      pieces.find(({ name }) => name === "front")?.points.sideWaist?.at.x ?? Number.NaN;
    const base = read(on());
    // A quarter of the 40 mm between two sizes lies on the front.
    expect(sideOf(base.next) - sideOf(base.pieces)).toBeCloseTo(10, 6);
    expect(base.sizes).toEqual(testWork.pattern.chart.sizes.map(({ label }) => label));
  });

  it("cannot be read without a chart", () => {
    const { pattern } = testWork;
    const empty = { ...testWork, pattern: { ...pattern, chart: { ...pattern.chart, sizes: [] } } };
    expect(readTissue(empty, null)).toBeNull();
  });

  it("is the same reading that the plan is made by", () => {
    const tissue: Tissue = { size: "14", pieces: { front: { waistDartMouth: 62 } } };
    const { fit } = read(on(tissue));
    const plan = planOf(on(tissue));
    if (!plan.ok) throw new Error(plan.failure.code);
    const mouth = (sizes: typeof fit.nest.sizes): number => {
      const front = sizes[fit.nest.labels.indexOf("14")]?.find(({ name }) => name === "front");
      const [a, b] = [front?.points.waistDartInner?.at, front?.points.waistDartOuter?.at];
      return Math.hypot((b?.x ?? NaN) - (a?.x ?? NaN), (b?.y ?? NaN) - (a?.y ?? NaN));
    };
    expect(mouth(fit.nest.sizes)).toBeCloseTo(62, 1);
    expect(mouth(plan.value.nest.sizes)).toBeCloseTo(62, 1);
    expect(plan.value.nest.source).toBe("fitted");
  });
});

it("a waist cut further from the base size is more doubted", () => {
  const tissue: Tissue = { size: "14", pieces: { front: { waistWidth: 262 }, back: { waistWidth: 242 } } };
  const doubt = (waistGirth: number): number => {
    const tapes = tapesOf({ bustGirth: 905, upperChestGirth: 832, waistGirth, hipGirth: 1034 });
    return read({ ...on(tissue), tapes }).fit.doubt.finished.waist ?? NaN;
  };
  expect(doubt(840)).toBeGreaterThan(doubt(705) + 0.5);
});

describe("mouths that are not known", () => {
  const nest = () => {
    const plan = planOf(on());
    if (!plan.ok) throw new Error(plan.failure.code);
    return plan.value.nest;
  };

  it("are those of front and back, in one size and in the next", () => {
    expect(mouthsNotMeasured(nest(), undefined)).toEqual([
      { piece: "front", length: "waistDartMouth" },
      { piece: "front", length: "waistDartMouthNext" },
      { piece: "back", length: "waistDartMouth" },
      { piece: "back", length: "waistDartMouthNext" },
    ]);
    const some: Tissue = { size: "14", pieces: { front: { waistDartMouth: 30, waistDartMouthNext: 30 } } };
    expect(mouthsNotMeasured(nest(), some).map(({ piece }) => piece)).toEqual(["back", "back"]);
  });

  it("are none of her own pieces", () => {
    expect(mouthsNotMeasured({ ...nest(), source: "own" }, undefined)).toEqual([]);
  });
});
