/** The demo block: the project's own draft, whose worked size was computed by hand, and what a chart's row is drafted by. */
import { describe, expect, it } from "vitest";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftedFigures, draftMeasuresFor, easeOfRow } from "../../../src/core/draft/draftMeasures";
import { directionOf, distance, turnBetween } from "../../../src/core/geometry/point";
import { draftBlocks } from "../../../src/core/nest/printedNest";
import { pointOf } from "../../../src/core/pattern/piece";
import { degreesFrom, radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";

const worked = { label: "12", bust: 880, waist: 700, hip: 940 };
const chart = { sizes: [worked], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };
const measures = draftMeasuresFor(worked, chart, ease);
const front = draftFrontBlock(measures);
const back = draftBackBlock(measures);

describe("the block's worked size", () => {
  it("has underarms at 235 and 245 mm: (880 + 80) / 4 less and plus 5", () => {
    expect(pointOf(back, "underarm").x).toBeCloseTo(235, 9);
    expect(pointOf(front, "underarm").x).toBeCloseTo(245, 9);
  });

  it("has its front's side neck 40 above the nape: 432 and 18 of ease, less 410", () => {
    expect(pointOf(front, "sideNeck").x).toBeCloseTo(69, 9);
    expect(pointOf(front, "sideNeck").y).toBeCloseTo(-40, 9);
    expect(pointOf(back, "sideNeck").y).toBeCloseTo(-18, 9);
  });

  it("has its bust point at (95, 223.7): half of 190, and 265 from the side neck point", () => {
    expect(pointOf(front, "bustPoint").x).toBeCloseTo(95, 9);
    expect(pointOf(front, "bustPoint").y).toBeCloseTo(Math.sqrt(265 ** 2 - 26 ** 2) - 40, 9);
    expect(distance(pointOf(front, "sideNeck"), pointOf(front, "bustPoint"))).toBeCloseTo(265, 6);
  });

  it("has waist darts of about 37 mm: half of 480 − 370 − 2 × 18", () => {
    for (const piece of [front, back]) {
      const intake = distance(pointOf(piece, "waistDartInner"), pointOf(piece, "waistDartOuter"));
      // Drawn square to the legs the seam is a little longer than the straight draft, and the dart takes that up.
      expect(intake).toBeGreaterThanOrEqual(37);
      expect(intake).toBeLessThan(38.5);
    }
  });

  it("has a shoulder dart of 17.5° at the bust point", () => {
    const at = pointOf(front, "bustPoint");
    const inner = directionOf(at, pointOf(front, "shoulderDartInner"));
    const outer = directionOf(at, pointOf(front, "shoulderDartOuter"));
    expect(degreesFrom(radians(turnBetween(inner, outer)))).toBeCloseTo(17.5, 6);
  });

  it("finishes to 740 mm at the waist, measured by an independent library", () => {
    expect(2 * (seamByBezierJs(front, "waist") + seamByBezierJs(back, "waist"))).toBeCloseTo(740, 3);
  });

  it("has a back shoulder 6 mm longer than the front one, to be eased (common practice: 3 to 6 mm)", () => {
    expect(seamByBezierJs(back, "shoulder") - seamByBezierJs(front, "shoulder")).toBeCloseTo(6, 6);
  });

  it("has side seams of one length", () => {
    expect(seamByBezierJs(front, "side")).toBeCloseTo(seamByBezierJs(back, "side"), 6);
  });
});

it.each([20, 100, 180, 230, 250])(
  "the basque's side seams are of one length where the waist is %d mm below the bust",
  (drop) => {
    const sizes = [760, 880, 1000].map((bust) => ({ label: String(bust), bust, waist: bust - drop, hip: bust + 60 }));
    const blocks = draftBlocks({
      name: "",
      chart: { sizes, draftedDifference: 50, cups: [] },
      ease,
      length: "hip",
      closure: { place: "side", belowWaist: 180 },
      style: "sideDart",
      strap: "wide",
    });
    blocks.frontBasque.forEach((piece, size) => {
      const other = blocks.backBasque[size];
      if (other === undefined) throw new Error("no back");
      // No more than the curve routines promise, so that a blend has room.
      expect(Math.abs(seamByBezierJs(piece, "side") - seamByBezierJs(other, "side"))).toBeLessThan(1e-3);
      // The hem lies 30 mm below the hip line on both, so the two hip lines meet as well.
      for (const one of [piece, other])
        expect(pointOf(one, "sideHem").y - pointOf(one, "sideHip").y).toBeCloseTo(30, 9);
      for (const [one, bodice] of [
        [piece, blocks.front[size]],
        [other, blocks.back[size]],
      ] as const)
        expect(seamByBezierJs(one, "waist")).toBeCloseTo(
          bodice === undefined ? NaN : seamByBezierJs(bodice, "waist"),
          3,
        );
    });
  },
);

describe("what a chart's row is drafted by", () => {
  const other = { label: "20", bust: 1080, waist: 900, hip: 1140 };

  it("is the bust at the block's own difference, 50 mm, whatever the chart's is", () => {
    const full = draftMeasuresFor({ ...worked, bust: 910 }, { ...chart, draftedDifference: 80 }, ease);
    expect(full).toEqual({ ...measures, bust: 880 });
    expect(draftedFigures({ chart: { ...chart, sizes: [worked, other] } }, "backWaistLength")).toEqual({
      least: 410,
      // Five steps of 3 mm.
      most: 425,
    });
    expect(
      draftedFigures({ chart: { ...chart, sizes: [{ ...worked, bust: 910 }], draftedDifference: 80 } }, "acrossBack"),
    ).toEqual({ least: 345, most: 345 });
    expect(draftedFigures({ chart: { ...chart, sizes: [] } }, "acrossBack")).toBeNull();
    expect(draftedFigures({ chart }, "height")).toBeNull();
  });

  it("has its ease from the finished girths that it prints, and the pattern's for the others", () => {
    expect(easeOfRow({ ...worked, finishedBust: 975, finishedHip: 1000 }, ease)).toEqual({
      bust: 95,
      waist: 40,
      hip: 60,
    });
    expect(easeOfRow({ ...worked, finishedWaist: 722 }, ease)).toEqual({ bust: 80, waist: 22, hip: 50 });
    expect(draftMeasuresFor({ ...worked, finishedBust: 975 }, chart, ease).ease).toEqual({
      bust: 95,
      waist: 40,
      hip: 50,
    });
  });

  // 5 steps slacken to 20 (1 − e^−0.25) = 4.424, four steps down stretch to 20 (1 − e^0.2) = −4.428.
  it.each([
    [1080, { neckBaseGirth: 370 + 6.5 * 4.424, acrossBack: 345 + 9 * 4.424, acrossFront: 325 + 8 * 4.424 }],
    [1080, { frontWaistLength: 432 + 15 + 2.6 * 4.424, shoulderLength: 122 + 2.5 * 4.424, backWaistLength: 425 }],
    [1080, { bustPointWidth: 217.5, sideNeckToBustPoint: 300, scyeDepth: 230, waistToHip: 205 }],
    [720, { neckBaseGirth: 370 - 6.5 * 4.428, acrossBack: 345 - 9 * 4.428, acrossFront: 325 - 8 * 4.428 }],
    [720, { frontWaistLength: 432 - 12 - 2.6 * 4.428, shoulderLength: 122 - 2.5 * 4.428, backWaistLength: 398 }],
    [720, { bustPointWidth: 168, sideNeckToBustPoint: 237, scyeDepth: 194, waistToHip: 196 }],
  ])("is a proportion to the bust: %d mm", (bust, figures) => {
    const drafted = draftMeasuresFor({ ...worked, bust }, chart, ease);
    for (const [name, value] of Object.entries(figures))
      expect(Object.entries(drafted).find(([key]) => key === name)?.[1]).toBeCloseTo(value, 2);
    expect(degreesFrom(drafted.bustDart)).toBeCloseTo(17.5 + 0.8 * (bust === 720 ? -4.428 : 4.424), 3);
  });

  // The body's own length, compared with hers: the ease over the bust is the garment's.
  it("is a body's front length, 18 mm less than the front of the block", () => {
    const drawn = pointOf(front, "centreWaist").y - pointOf(front, "sideNeck").y;
    expect(drawn - measures.frontWaistLength).toBeCloseTo(18, 9);
    expect(seamByBezierJs(back, "centre")).toBeCloseTo(measures.backWaistLength, 6);
  });
});
