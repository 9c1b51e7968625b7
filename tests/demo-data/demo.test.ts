import { bodyOf, measuresOf } from "../../src/core/measures/tape";
import { describe, expect, it } from "vitest";
import { suspicionsOf } from "../../src/core/bodies/suspicion";
import { readChart } from "../../src/core/chart/readChart";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { HAND_AGREEMENT } from "../../src/core/tolerance";
import { demoStories, demoWorks } from "../../src/document/demo";
import { surePassage } from "../../src/words/surePassage";

const works = [...demoWorks(), ...demoStories()];

const demo = (index: number): { readonly work: Work; readonly plan: Plan } => {
  const work = works[index];
  if (work === undefined) throw new Error(`no demo ${index}`);
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return { work, plan: plan.value };
};

const dartOf = (plan: Plan, piece: string, name: string) => {
  const dart = plan.left.darts.find(({ ref }) => ref.piece === piece && ref.dart === name);
  if (dart === undefined) throw new Error(`no ${name} on the ${piece}`);
  return dart;
};

describe.each(works.map((work, index) => [work.name, index] as const))("%s", (_, index) => {
  it("says that it is invented, in the work's and the pattern's name", () => {
    const { work } = demo(index);
    expect(work.invented).toBe(true);
    expect(work.name).toMatch(/\(invented\)$/);
    expect(work.pattern.name).toMatch(/\(invented\)$/);
  });

  it("has a whole set of measures, none of them doubted, to 0.1 mm", () => {
    const { tapes } = demo(index).work;
    const measures = measuresOf(tapes);
    expect(Object.keys(measures).toSorted()).toEqual([...MEASURE_NAMES].toSorted());
    expect(suspicionsOf(bodyOf(tapes))).toEqual([]);
    for (const value of Object.values(measures)) expect(Math.round(value * 10) / 10).toBe(value);
  });

  it("has a chart in which every girth and finished girth grows", () => {
    const { chart } = demo(index).work.pattern;
    expect(readChart(chart)).toEqual([]);
    // A file holds the sizes that were drawn.
    expect(chart.sizes.length).toBeGreaterThanOrEqual(demo(index).work.pattern.own === undefined ? 10 : 6);
  });

  it("plans, and every check holds", () => {
    const { plan } = demo(index);
    expect(plan.checks.filter(({ ok }) => !ok)).toEqual([]);
    expect(plan.checks.length).toBeGreaterThan(20);
    expect(plan.ledger.filter(({ outcome }) => !outcome.ok)).toEqual([]);
  });

  it("finishes at body and ease, at the waist and the hip", () => {
    const { work, plan } = demo(index);
    const ease = work.pattern.ease;
    for (const level of plan.levels.filter((one) => one.level !== "bust")) {
      const body = level.level === "waist" ? measuresOf(work.tapes).waistGirth : measuresOf(work.tapes).hipGirth;
      const wanted = (body ?? 0) + ease[level.level];
      // Printed finished girths are rounded to 0.1 mm, and so is the ease that follows from them.
      expect(Math.abs(level.finished - wanted)).toBeLessThan(HAND_AGREEMENT);
      expect(level.extrapolated).toBe(false);
    }
  });
});

describe("the first demo", () => {
  const { work, plan } = demo(0);

  it("begins without alterations or picks", () => {
    expect(work.alterations).toEqual([]);
    expect(work.picks).toEqual({});
    expect(work.unit).toBe("cm");
  });

  it("has a clear frame and cup, and no bust alteration", () => {
    expect(plan.sizing.baseSize).toMatchObject({ label: "12", chosenBy: "upperChest", borderline: false });
    expect(plan.sizing.cup).toMatchObject({ label: "C", borderline: false });
    // Two readings of 906 and 912; size 12 with cup C is drafted for 880 − 50 + 75.
    expect(plan.sizing.bust).toMatchObject({ drafted: 905, residual: 4, leftAlone: true, alteration: 0 });
  });

  it("lies between two sizes at the waist and two others at the hip, neither of them the frame", () => {
    expect(plan.levels.map(({ level, between }) => [level, ...between])).toEqual([
      ["bust", "12", "14"],
      ["waist", "14", "16"],
      ["hip", "16", "18"],
    ]);
    for (const { share } of plan.levels.slice(1)) {
      expect(share).toBeGreaterThan(0.1);
      expect(share).toBeLessThan(0.9);
    }
  });

  it("has a bust point of her own, higher and nearer the centre, so that the printed side dart ends too far off", () => {
    const { printed, own } = plan.bustPoint;
    if (own === null) throw new Error("no bust point of her own");
    expect(printed.y - own.y).toBeGreaterThan(5);
    expect(printed.x - own.x).toBeGreaterThan(5);
    const { drawn, usualStop } = dartOf(plan, "front", "sideDart");
    expect(drawn.end?.along).toBeGreaterThan(usualStop?.most ?? Infinity);
  });
});

describe("the second demo", () => {
  const { plan } = demo(1);

  it("has a bust alteration of the whole residual", () => {
    // 1030 against 960 − 50 + 100 of size 16 with cup D.
    expect(plan.sizing.bust).toMatchObject({ drafted: 1010, residual: 20, alteration: 20, leftAlone: false });
  });

  it("shows that a dart shortened with its mouth held is fuller, and with its fullness held is not", () => {
    const { work } = demo(1);
    const before = derivePlan({ ...work, alterations: [] });
    if (!before.ok) throw new Error(before.failure.code);
    const fuller = (name: string) =>
      dartOf(plan, "front", name).drawn.fullness - dartOf(before.value, "front", name).drawn.fullness;
    expect(fuller("waistDart")).toBeGreaterThan(1);
    expect(Math.abs(fuller("sideDart"))).toBeLessThan(0.2);
  });
});

describe("the third demo", () => {
  it("works in inches, without cup versions, with finished girths printed", () => {
    const { work, plan } = demo(2);
    expect(work.unit).toBe("in");
    expect(work.pattern.chart.cups).toEqual([]);
    expect(work.pattern.chart.sizes.every((size) => size.finishedBust !== undefined)).toBe(true);
    expect(plan.sizing.baseSize).toMatchObject({ label: "H7", chosenBy: "upperChest" });
  });
});

describe("the demo with cups on a band", () => {
  it("gives one order on one sheet: cup medium, nothing altered at the bust", () => {
    const { work, plan } = demo(3);
    // 948 against 920 − 50 + 70 of size 14, cup medium: 8 mm are left alone.
    expect(plan.sizing).toMatchObject({ baseSize: { label: "14" }, cup: { label: "medium" } });
    expect(plan.sizing.bust).toMatchObject({ residual: 8, asked: 0, alteration: 0 });
    const said = surePassage(work)?.said.join(" ") ?? "";
    expect(said).toMatch(/Cup medium \(about \d+ of 100\)/);
    expect(said).toMatch(/No bust alteration: about \d+ of 100/);
    expect(said).not.toMatch(/Sew the/);
    expect(plan.checklist.some(({ step }) => step.kind === "bust")).toBe(false);
  });
});

describe("the princess demo", () => {
  it("ends within what is left alone of the bust that was asked", () => {
    const { plan } = demo(4);
    // Upper chest 848 lies nearer the 830 of size 12 than the 870 of size 14; 884 against 880 − 50 + 50.
    expect(plan.sizing).toMatchObject({ baseSize: { label: "12" }, cup: { label: "B" } });
    expect(plan.sizing.bust).toMatchObject({ residual: 4, alteration: 0 });
    const bust = plan.levels.find(({ level }) => level === "bust");
    expect(Math.abs((bust?.finished ?? NaN) - (bust?.target ?? NaN))).toBeLessThanOrEqual(12);
  });
});
