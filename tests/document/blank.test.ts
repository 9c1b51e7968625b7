import { describe, expect, it } from "vitest";
import { usualCups } from "../../src/core/chart/sizeChart";
import { applyCommand } from "../../src/core/plan/commands";
import type { Work } from "../../src/core/decisions/work";
import { blankWork, changeUnit } from "../../src/document/blank";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { formatLengthEntry } from "../../src/words/terms/length";

const changed = (work: Work, unit: "cm" | "in"): Work => changeUnit(work, unit).reduce(applyCommand, work);

const figures = ({ pattern, allowances, unit }: Work): readonly string[] =>
  [
    pattern.chart.draftedDifference,
    pattern.ease.bust,
    pattern.ease.waist,
    pattern.ease.hip,
    pattern.closure.belowWaist,
    ...Object.values(allowances ?? {}),
  ].map((mm) => formatLengthEntry(mm, unit));

describe("a blank work in inches", () => {
  it("has figures that an inch tape has marks for, and Letter paper", () => {
    const work = blankWork("in");
    expect(work.paper).toBe("Letter");
    expect(figures(work).slice(0, 5)).toEqual(["2", "2 3/8", "1 ¼", "2", "7"]);
    expect(new Set(figures(work).slice(5))).toEqual(new Set(["5/8", "1 ¼"]));
  });

  it("is read back from its file as it is", () => {
    const read = readWorkFile(writeWorkFile(blankWork("in")));
    expect(read.ok && read.value).toEqual(blankWork("in"));
  });

  it.each(["cm", "in"] as const)("is what an empty work becomes by another unit than %s, and back", (unit) => {
    const other = unit === "cm" ? "in" : "cm";
    const there = changed(blankWork(unit), other);
    expect({ ...there, allowances: there.allowances ?? {} }).toEqual({ allowances: {}, ...blankWork(other) });
    const back = changed(there, unit);
    expect({ ...back, allowances: back.allowances ?? {} }).toEqual({ allowances: {}, ...blankWork(unit) });
  });
});

describe("a blank work in centimetres", () => {
  it("has round figures, and A4 paper", () => {
    const work = blankWork("cm");
    expect([work.paper, work.allowances]).toEqual(["A4", undefined]);
    expect(figures(work)).toEqual(["5", "6", "3", "5", "18"]);
  });
});

describe("another unit", () => {
  it("leaves what was decided as it is", () => {
    const { pattern, ...rest } = blankWork("cm");
    const own: Work = {
      ...rest,
      paper: "Letter",
      pattern: { ...pattern, name: "Own", ease: { ...pattern.ease, waist: 41 } },
    };
    const work = changed(own, "in");
    expect(work.pattern.ease).toEqual({ bust: 60.3, waist: 41, hip: 50.8 });
    expect([work.paper, work.pattern.name]).toEqual(["Letter", "Own"]);
  });

  it("changes nothing but the unit once there are sizes", () => {
    const blank = blankWork("cm");
    const sizes = [{ label: "8", bust: 800, waist: 620, hip: 860 }];
    const work: Work = { ...blank, pattern: { ...blank.pattern, chart: { ...blank.pattern.chart, sizes } } };
    expect(changed(work, "in")).toEqual({ ...work, unit: "in" });
  });
});

describe("the usual cup versions", () => {
  it("run from A to D, an inch or 25 mm apart, the chart's own bust being the B's", () => {
    expect(usualCups(50, "cm")).toEqual([
      { label: "A", difference: 25 },
      { label: "B", difference: 50 },
      { label: "C", difference: 75 },
      { label: "D", difference: 100 },
    ]);
    expect(usualCups(50.8, "in").map(({ difference }) => formatLengthEntry(difference, "in"))).toEqual([
      "1",
      "2",
      "3",
      "4",
    ]);
  });
});
