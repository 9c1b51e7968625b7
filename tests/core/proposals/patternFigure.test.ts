/**
 * What a pattern is drafted for. The draft's own figures are those of bust 880 mm and their steps for each 40 mm of it (common
 * practice, no source); what a chart prints, or a tape found on her pieces, takes their place.
 */
import { describe, expect, it } from "vitest";
import type { Pattern, PrintedLength, PrintedLengths } from "../../../src/core/decisions/pattern";
import type { Tissue } from "../../../src/core/decisions/tissue";
import { garmentLength } from "../../../src/core/proposals/garmentLengths";
import { patternFigure, type PatternFigure } from "../../../src/core/proposals/patternFigure";
import { testWork } from "../../support/works";

const { pattern } = testWork;
/** Busts of 840, 880 and 920. */
const sizes = pattern.chart.sizes.slice(2, 5);
const SMALL: Pattern = { ...pattern, chart: { ...pattern.chart, sizes } };
const printing = (lengths: PrintedLengths, more: Partial<Pattern> = {}): Pattern => ({ ...SMALL, lengths, ...more });

function found(...args: Parameters<typeof patternFigure>): PatternFigure {
  const figure = patternFigure(...args);
  if (figure === null) throw new Error(`no figure of ${args[1]}`);
  return figure;
}
/** What its pieces give of it. */
const on = ({ pieces }: PatternFigure, measure: PrintedLength): number => garmentLength(measure, pieces) ?? Number.NaN;

describe("the draft's figure", () => {
  it.each<readonly [PrintedLength, number, number]>([
    ["backWaistLength", 410, 3],
    ["bustPointWidth", 190, 5.5],
    ["sideNeckToBustPoint", 265, 7],
  ])("of %s is that of the size's bust", (measure, at880, step) => {
    for (const [size, value] of [at880 - step, at880, at880 + step].entries()) {
      const figure = found(SMALL, measure, size);
      expect(figure).toMatchObject({ from: "draft", doubt: 8, value: expect.closeTo(value, 9) });
      expect(on(figure, measure)).toBeCloseTo(value, 6);
    }
  });

  it("goes by the bust that the chart's own difference leaves, on pieces made for that of the block", () => {
    // 880 less 75 and 50 more: 25 of 40 mm below it.
    const chart = { ...SMALL.chart, draftedDifference: 75 };
    const figure = found({ ...SMALL, chart }, "backWaistLength", 1);
    expect(figure.value).toBeCloseTo(410 - (3 * 25) / 40, 9);
    const [full, plain] = [
      found({ ...SMALL, chart }, "frontWaistLength", 1),
      found(printing({ frontWaistLength: { all: 430 } }, { chart }), "frontWaistLength", 1),
    ];
    // What is printed is said of the chart's own pieces, 25 mm fuller: longer in front.
    expect(on(plain, "frontWaistLength") - on(full, "frontWaistLength")).toBeGreaterThan(2);
  });

  it("of an under-bust is the band's less the ease of the waist, and elsewhere none", () => {
    const midriff: Pattern = { ...SMALL, style: "midriff" };
    const figure = found(midriff, "underBustGirth", 1);
    expect(on(figure, "underBustGirth") - figure.value).toBeCloseTo(40, 9);
    const looser = found({ ...midriff, ease: { ...midriff.ease, waist: 60 } }, "underBustGirth", 1);
    expect(on(looser, "underBustGirth") - looser.value).toBeCloseTo(60, 9);
    expect(patternFigure(SMALL, "underBustGirth", 1)).toBeNull();
  });

  it("of a height is none", () => expect(patternFigure(SMALL, "height", 1)).toBeNull());

  it("is none for a size that cannot be made with such a cup", () => {
    const chart = { ...SMALL.chart, draftedDifference: 600 };
    expect(patternFigure(printing({ backWaistLength: { all: 420 } }, { chart }), "backWaistLength", 1)).toBeNull();
  });
});

describe("what a chart prints", () => {
  it("is that of the size, else that of all, good to 5, of a shoulder to half of that", () => {
    const lengths: PrintedLengths = {
      backWaistLength: { all: 420, bySize: { "12": 415 } },
      shoulderLength: { bySize: { "12": 120 } },
    };
    const told = (measure: PrintedLength, size: number): readonly unknown[] => {
      const { value, from, doubt } = found(printing(lengths), measure, size);
      return [value, from, doubt];
    };
    expect(told("backWaistLength", 0)).toEqual([420, "printed", 5]);
    expect(told("backWaistLength", 1)).toEqual([415, "printed", 5]);
    expect(told("shoulderLength", 1)).toEqual([120, "printed", 2.5]);
    expect(told("shoulderLength", 2)).toEqual([expect.closeTo(124.4, 0), "draft", 8]);
    expect(told("acrossBack", 1)).toEqual([expect.closeTo(345, 9), "draft", 8]);
  });

  it("is of a height all that is needed, and of an under-bust where no band is too", () => {
    expect(found(printing({ height: { all: 1680 } }), "height", 1).value).toBe(1680);
    expect(found(printing({ underBustGirth: { all: 760 } }), "underBustGirth", 1).value).toBe(760);
  });

  it("is nothing of what every record has", () => {
    const named = sizes.map((size) => ({ ...size, label: `toString${size.bust === 880 ? "" : size.label}` }));
    const chart = { ...SMALL.chart, sizes: named };
    expect(found(printing({ backWaistLength: { bySize: {} } }, { chart }), "backWaistLength", 1)).toMatchObject({
      from: "draft",
      value: 410,
    });
  });
});

describe("pieces of her own", () => {
  // Her centre back is 8 mm longer than the draft's.
  const tissue: Tissue = { size: "12", pieces: { back: { centreLength: 418 } } };
  const hers: Pattern = { ...SMALL, tissue };

  it("measure what they are drafted for, less what the draft's measure over its own figure", () => {
    const back = found(hers, "backWaistLength", 1);
    expect(back).toMatchObject({ from: "draft", doubt: 8, value: expect.closeTo(418, 6) });
    expect(on(back, "backWaistLength")).toBeCloseTo(418, 6);
    // The ease of the draft, 4 on each half, is no part of the figure.
    const across = found(hers, "acrossBack", 1);
    expect(across.value).toBeCloseTo(345, 6);
    expect(on(across, "acrossBack")).toBeCloseTo(353, 6);
  });

  it("are what is printed of them, in the chart's own cup; in another longer by as much as the draft's", () => {
    const printed: Pattern = { ...hers, lengths: { backWaistLength: { all: 400 }, frontWaistLength: { all: 430 } } };
    const back = found(printed, "backWaistLength", 1, "B");
    expect(back.value).toBe(400);
    expect(on(back, "backWaistLength")).toBeCloseTo(418, 6);
    expect(found(printed, "frontWaistLength", 1, "B").value).toBeCloseTo(430, 9);
    const front = (draftedDifference: number): number => {
      const chart = { ...SMALL.chart, draftedDifference: 50 };
      const said = printing({ frontWaistLength: { all: 430 } }, { chart });
      // The draft's own pieces in a cup: those of a chart drafted for it, of a bust as much larger.
      const larger = sizes.map((size) => ({ ...size, bust: size.bust + draftedDifference - 50 }));
      return on(
        found({ ...said, chart: { ...chart, sizes: larger, draftedDifference } }, "frontWaistLength", 1),
        "frontWaistLength",
      );
    };
    expect(found(printed, "frontWaistLength", 1, "D").value).toBeCloseTo(430 + front(100) - front(50), 6);
    expect(front(100) - front(50)).toBeGreaterThan(5);
  });

  it("are none in a cup that a size cannot be made in", () => {
    const chart = { ...SMALL.chart, cups: [...SMALL.chart.cups, { label: "Z", difference: 600 }] };
    expect(patternFigure({ ...hers, chart }, "backWaistLength", 1, "Z")).toBeNull();
    expect(patternFigure({ ...SMALL, chart }, "backWaistLength", 1, "Z")).not.toBeNull();
  });
});
