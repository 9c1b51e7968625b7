/** Picks against the published European size designation, and against the normal distribution's table. */
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { intervalOf, marginOf, pickInterval } from "../../../src/core/sizing/pickInterval";
import { normalBelow } from "../../../src/core/statistics/normal";
import { girthAt, settleLevel, solveLevel } from "../../../src/core/sizing/solveLevel";
import { anyAmount } from "../../support/amounts";
import { planOf, testWork } from "../../support/works";

// EN 13402-3, women's bust: centres and bounds in cm, as quoted by the help page bustSizesStandard of the R package
// Anthropometry (centres from memory).
const CENTRES = [76, 80, 84, 88, 92, 96, 100, 104, 110, 116, 122, 128];
const BOUNDS = [74, 78, 82, 86, 90, 94, 98, 102, 107, 113, 119, 125, 131];

describe("pickInterval on the European bust sizes", () => {
  it.each(CENTRES.map((centre, index) => [centre, BOUNDS[index] ?? 0, BOUNDS[index + 1] ?? 0]))(
    "size %d reaches from %d to %d",
    (centre, from, to) => {
      const { from: least, to: most } = intervalOf(CENTRES, CENTRES.indexOf(centre));
      expect([least, most]).toEqual([from, to]);
      expect(pickInterval(CENTRES, from).index).toBe(CENTRES.indexOf(centre));
      expect(pickInterval(CENTRES, to - 0.01).index).toBe(CENTRES.indexOf(centre));
    },
  );

  it("says how far past the ends a girth lies", () => {
    expect(pickInterval(CENTRES, 70)).toMatchObject({ index: 0, beyond: 4 });
    expect(pickInterval(CENTRES, 140)).toMatchObject({ index: 11, beyond: 9 });
    expect(pickInterval(CENTRES, 100).beyond).toBe(0);
  });
});

describe("how sure a pick is", () => {
  // Table of the normal distribution.
  it.each([
    [0, 0.5],
    [-1, 0.158655],
    [1.96, 0.975002],
    [-2.5758, 0.005],
  ])("Φ(%d) = %d", (z, p) => {
    expect(normalBelow(z)).toBeCloseTo(p, 5);
  });

  it("at the very bound both sizes are as likely, and the pick is borderline", () => {
    expect(marginOf([840, 880, 920], 1, 860, 10)).toMatchObject({ margin: 0, runnerUp: 0, borderline: true });
    expect(marginOf([840, 880, 920], 1, 860, 10).probability).toBeCloseTo(0.5, 6);
  });

  it("at the centre of a 40 mm step with a tape good to 10 mm it is one in 44", () => {
    const { margin, probability, borderline } = marginOf([840, 880, 920], 1, 880, 10);
    expect(margin).toBe(20);
    expect(probability).toBeCloseTo(0.02275, 4);
    expect(borderline).toBe(false);
  });
});

describe("solveLevel", () => {
  const rows = fc
    .array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 19 })
    .map((steps) => steps.reduce<number[]>((all, step) => [...all, (all.at(-1) ?? 0) + step], [600]));

  it("is the inverse of reading the girth at a size, past the ends too", () => {
    fc.assert(
      fc.property(rows, anyAmount(-1.9, 1), fc.nat(), (finished, share, which) => {
        const size = share < 0 ? share : Math.min((which % finished.length) + share, finished.length - 1 + 1.9);
        const solved = solveLevel(finished, girthAt(finished, size), size);
        expect(solved.ok && solved.value).toBeCloseTo(size, 6);
      }),
    );
  });

  it("refuses past two steps and says what can be reached", () => {
    expect(solveLevel([700, 740, 800], 619, 0)).toEqual({ ok: false, failure: { least: 620, most: 920 } });
    expect(solveLevel([700, 740, 800], 920, 0)).toEqual({ ok: true, value: 4 });
  });
});

describe("settleLevel", () => {
  // A girth of 700 + 40 s, less 0.4 s (1 - s) between two lines: the sag of a blended seam, many times over.
  const measured = (size: number): number => 700 + 40 * size - 0.4 * size * (1 - size);

  it("finds the size at which the pieces measure what is wanted: the root of a quadratic", () => {
    for (const wanted of [690, 704, 719.99, 733, 760]) {
      const straight = (wanted - 700) / 40;
      const [b, c] = [39.6, 700 - wanted];
      const root = (-b + Math.sqrt(b * b - 4 * 0.4 * c)) / (2 * 0.4);
      expect(settleLevel(straight, [700, 740], wanted, measured)).toBeCloseTo(root, 6);
      expect(Math.abs(root - straight)).toBeGreaterThan(1e-5);
    }
  });

  it("stays where it is between rows that do not differ, and where nothing nearer is met", () => {
    expect(settleLevel(0.5, [700, 700], 700, () => 700.3)).toBe(0.5);
    expect(settleLevel(0.5, [700, 740], 720, () => 720.3)).toBe(0.5);
  });
});

describe("the pick of a body", () => {
  it("takes frame and cup together: upper chest 832 beside the 830 of size 12, bust 905 the very one of its cup C", () => {
    // 880 − 50 = 830; 830 + 75 = 905.
    const { baseSize, cup, bust } = planOf(testWork).sizing;
    expect(baseSize).toMatchObject({
      label: "12",
      chosenBy: "upperChest",
      from: 810,
      to: 850,
    });
    expect(cup).toMatchObject({ label: "C", difference: 73, drafted: 75 });
    expect(bust).toMatchObject({ drafted: 905, residual: 0, asked: 0, alteration: 0, leftAlone: true });
  });

  it("blends the waist by what the pieces measure: 752 + 40 lies 30 % of the way from 14 (780) to 16 (820)", () => {
    const waist = planOf(testWork).levels.find(({ level }) => level === "waist");
    expect(waist?.between).toEqual(["14", "16"]);
    expect(waist?.share).toBeCloseTo(0.3, 2);
    expect(waist?.finished).toBeCloseTo(792, 1);
  });

  it("makes a bust alteration of the whole residual beyond 12 mm", () => {
    const work = { ...testWork, tapes: tapesOf({ ...measuresOf(testWork.tapes), bustGirth: 950 }) };
    // 950 against the 930 of size 12, cup D: 20 mm in all, 10 mm on the half front.
    const plan = planOf(work);
    expect(plan.sizing.bust).toMatchObject({ residual: 20, alteration: 20, leftAlone: false });
    expect(plan.ledger.find(({ id }) => id === "bust")?.what).toMatchObject({ kind: "bust", spread: 10 });
    // Finished: 880 − 50 + 100 + 80 of the version, and the alteration.
    expect(plan.levels.find(({ level }) => level === "bust")?.finished).toBeCloseTo(1030, 3);
  });

  it("goes by the bust alone without an upper chest, and still holds it against the garment's", () => {
    const { upperChestGirth: _none, ...others } = measuresOf(testWork.tapes);
    const at = (bustGirth: number) => planOf({ ...testWork, tapes: tapesOf({ ...others, bustGirth }) }).sizing;
    expect(at(910)).toMatchObject({ baseSize: { label: "14", chosenBy: "bust" }, bust: { asked: 0, residual: -10 } });
    // 15 short of the 920 of size 14.
    expect(at(905)).toMatchObject({ baseSize: { label: "14" }, cup: { label: "B" }, bust: { alteration: -15 } });
  });

  it("makes the most that the draft allows of its own residual, and of what she set all or nothing", () => {
    const of = (bustGirth: number) => ({
      ...testWork,
      pattern: { ...testWork.pattern, style: "midriff" as const },
      tapes: tapesOf({ ...measuresOf(testWork.tapes), upperChestGirth: 832, bustGirth }),
    });
    // Far past cup D: the one dart of a cup would grow wider than can be sewn.
    const { sizing, ledger, levels, left } = planOf(of(1150));
    const { residual, asked, alteration } = sizing.bust;
    expect(residual).toBe(220);
    expect(asked).toBe(220);
    expect(alteration).toBeGreaterThan(20);
    expect(alteration).toBeLessThan(220);
    const bust = ledger.find(({ id }) => id === "bust");
    expect(bust?.what).toMatchObject({ kind: "bust", amount: alteration, asked: 220 });
    expect(bust?.outcome).toMatchObject({
      ok: true,
      value: { notes: expect.arrayContaining([{ code: "bustShort", asked: 220, made: alteration }]) },
    });
    const level = levels.find((one) => one.level === "bust");
    expect(level?.finished).toBeCloseTo(930 + 80 + alteration, 3);
    expect(level?.claim).toBeCloseTo(930 + 80 + alteration, 9);
    expect(left.alterations.every(({ outcome }) => outcome.ok)).toBe(true);
    // Half a millimetre more cannot be made.
    const hers = (bustAlteration: number) =>
      planOf({ ...of(1150), picks: { baseSize: "12", cup: "D", bustAlteration } });
    expect(hers(alteration - 0.5).sizing.bust.alteration).toBeCloseTo(alteration - 0.5, 9);
    const refused = hers(alteration + 0.5);
    expect(refused.sizing.bust).toMatchObject({ asked: alteration + 0.5, alteration: 0, chosenBy: "wearer" });
    expect(refused.ledger.find(({ id }) => id === "bust")?.outcome).toMatchObject({
      ok: false,
      failure: { code: "alteration/bust-too-much", asked: alteration + 0.5, most: expect.closeTo(alteration, 3) },
    });
  });

  it("makes the most of a small one too", () => {
    const { sizing, levels } = planOf({
      ...testWork,
      tapes: tapesOf({ ...measuresOf(testWork.tapes), upperChestGirth: 830, bustGirth: 790 }),
    });
    const { asked, alteration, drafted } = sizing.bust;
    expect(asked).toBeLessThan(alteration);
    expect(alteration).toBeLessThanOrEqual(0);
    expect(levels.find(({ level }) => level === "bust")?.finished).toBeCloseTo(drafted + 80 + alteration, 3);
  });

  it("brings a smaller frame its larger bust alteration, and lists more than one way", () => {
    const work = { ...testWork, picks: { baseSize: "10" } };
    // 905 against 840 − 50 + 100 = 890.
    expect(planOf(work).sizing.bust.residual).toBe(15);
    const { alternatives } = planOf(testWork).sizing;
    expect(alternatives.length).toBeGreaterThan(1);
    expect(alternatives[0]?.picked).toBe(true);
    expect(alternatives.map(({ harm }) => harm)).toEqual(
      alternatives.map(({ harm }) => harm).toSorted((a, b) => a - b),
    );
  });

  it("plans in a cup that another size of the chart cannot be made in, and refuses only that size", () => {
    // At 960/920 the block has hardly a waist dart, so a cup 25 mm smaller than drafted closes it.
    const sizes = [800, 840, 880, 920].map((bust, i) => ({
      label: String(8 + 2 * i),
      bust,
      waist: bust - 180,
      hip: bust + 60,
    }));
    const chart = {
      sizes: [...sizes, { label: "16", bust: 960, waist: 920, hip: 1020 }],
      draftedDifference: 50,
      cups: [
        { label: "A", difference: 25 },
        { label: "B", difference: 50 },
      ],
    };
    const body = { bustGirth: 860, upperChestGirth: 832, waistGirth: 700, hipGirth: 940 };
    const work = { ...testWork, tapes: tapesOf(body), pattern: { ...testWork.pattern, chart } };
    expect(planOf(work).sizing).toMatchObject({ baseSize: { label: "12" }, cup: { label: "A" } });
    expect(planOf(work).checks.filter(({ name, ok }) => name === "girthAsClaimed" && !ok)).toEqual([]);
    expect(() => planOf({ ...work, picks: { baseSize: "16" } })).toThrow(/cup-undraftable/);
  });

  it("refuses a frame out of reach by the girth that it was looked up by", () => {
    const girths = { ...measuresOf(testWork.tapes), bustGirth: 620 };
    expect(() => planOf({ ...testWork, tapes: tapesOf({ ...girths, upperChestGirth: 520 }) })).toThrow(
      /plan\/outside-chart.*upperChest/,
    );
    const { upperChestGirth: _none, ...bustAlone } = girths;
    expect(() => planOf({ ...testWork, tapes: tapesOf(bustAlone) })).toThrow(/plan\/outside-chart.*"bust"/);
  });

  it("refuses a waist that no line within two steps reaches, with the range", () => {
    const work = { ...testWork, tapes: tapesOf({ ...measuresOf(testWork.tapes), waistGirth: 1400 }) };
    expect(() => planOf(work)).toThrow(/plan\/outside-chart.*waist/);
  });

  it("refuses a waist or hip set further out than two steps, and takes one set just so far", () => {
    const last = testWork.pattern.chart.sizes.length - 1;
    for (const level of ["waist", "hip"] as const) {
      expect(() => planOf({ ...testWork, picks: { [level]: last + 2.01 } })).toThrow(
        new RegExp(`plan/outside-chart.*${level}`),
      );
      expect(() => planOf({ ...testWork, picks: { [level]: -2.01 } })).toThrow(
        new RegExp(`plan/outside-chart.*${level}`),
      );
      expect(planOf({ ...testWork, picks: { [level]: last + 2 } }).levels.find((l) => l.level === level)).toMatchObject(
        { size: last + 2, extrapolated: true },
      );
    }
  });
});

it("a bust radius that is none gives the fullness of the usual one", () => {
  const usual = planOf(testWork).left.darts.map(({ drawn }) => drawn.fullness);
  for (const bustRadius of [0, -50])
    expect(planOf({ ...testWork, bustRadius }).left.darts.map(({ drawn }) => drawn.fullness)).toEqual(usual);
});
