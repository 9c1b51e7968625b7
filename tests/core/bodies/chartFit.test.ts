/**
 * What a chart fits: the model's bodies against the real women of the survey (tests/reference-data/README.md) through the
 * planner's own rule, and against closed forms.
 */
import * as fc from "fast-check";
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { BRIDGES, SURVEYED_BODIES } from "../../../src/core/bodies/bridges";
import { chartFit, sharesOf, type ChartShares } from "../../../src/core/bodies/chartFit";
import {
  GIRTH_BODIES,
  modelBodies,
  ringDistance,
  ringOf,
  type Girth,
  type ModelBody,
} from "../../../src/core/bodies/modelBodies";
import { normalQuantile } from "../../../src/core/statistics/normalQuantile";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { bodyOf, tapesOf } from "../../../src/core/measures/tape";
import { invariant } from "../../../src/core/result";
import { demoWorks } from "../../../src/document/demo";
import { anyAmount } from "../../support/amounts";
import { women1988 } from "../../support/surveys";

const shift = (name: "upperChestGirth" | "waistGirth" | "hipGirth"): number => invariant(BRIDGES[name], name).shift;

/** The real women, moved to where a dressmaker's tape runs. */
const women: readonly ModelBody[] = women1988.map(({ measures }) => ({
  bust: invariant(measures.bustGirth, "bust"),
  upperChest: invariant(measures.upperChestGirth, "upper chest") + shift("upperChestGirth"),
  waist: invariant(measures.waistGirth, "waist") + shift("waistGirth"),
  hip: invariant(measures.hipGirth, "hip") + shift("hipGirth"),
}));

const numbersIn = ({
  placed,
  bustLeftAlone,
  bustLeftAloneWithin,
  waist,
  hip,
  unblended,
  apart,
}: ChartShares): readonly number[] => [
  placed,
  bustLeftAlone,
  bustLeftAloneWithin.least,
  bustLeftAloneWithin.most,
  waist.half,
  waist.one,
  hip.half,
  hip.one,
  unblended,
  ...apart,
];

const fitOf = (chart: SizeChart, measures: Parameters<typeof tapesOf>[0] = {}) =>
  invariant(chartFit(chart, bodyOf(tapesOf(measures))), "fit");

const size = (label: string, bust: number, waist: number, hip: number) => ({ label, bust, waist, hip });

/** An even chart: 40 mm a size, waist 180 under the bust, hip 60 over it. */
const even: SizeChart = {
  sizes: [760, 800, 840, 880, 920, 960, 1000, 1040].map((bust) => size(String(bust), bust, bust - 180, bust + 60)),
  draftedDifference: 50,
  cups: [],
};

describe("the normal quantile", () => {
  // Table of the normal distribution (from memory).
  it.each([
    [0.5, 0],
    [0.75, 0.6744898],
    [0.9, 1.2815516],
    [0.95, 1.6448536],
    [0.975, 1.959964],
    [0.99, 2.3263479],
    [0.999, 3.0902323],
    [0.0001, -3.7190165],
    [1e-12, -7.0344838],
  ])("below which %d lies", (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 5);
  });

  it("is odd about a half and grows", () => {
    fc.assert(
      fc.property(anyAmount(1e-6, 0.5), anyAmount(1e-6, 0.4), (p, more) => {
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 6);
        expect(normalQuantile(Math.min(p + more, 1 - 1e-6))).toBeGreaterThan(normalQuantile(p));
      }),
    );
  });

  it.each([0, 1, -0.1, Number.NaN])("has none for %d", (p) => {
    expect(() => normalQuantile(p)).toThrow("no probability");
  });
});

describe("the model's bodies", () => {
  const logs = new Matrix(
    modelBodies().map(({ bust, upperChest, waist, hip }) => [bust, upperChest, waist, hip].map(Math.log)),
  );

  it("are the same every time", () => {
    expect(modelBodies()).toHaveLength(1024);
    expect(modelBodies()).toBe(modelBodies());
  });

  it("have the model's middles, within a tenth of a per cent", () => {
    const means = logs.mean("column");
    for (const [at, middle] of GIRTH_BODIES.middle.entries())
      expect(Math.abs(invariant(means[at], "mean") - middle)).toBeLessThan(0.001);
  });

  // Covariance of a multivariate t: scatter times ν/(ν − 2). Whitened by the library's own factor it is the identity.
  it("have its covariances, within three hundredths of a variance", () => {
    const { freedom, scatter } = GIRTH_BODIES;
    const off = logs.clone().center("column");
    const covariance = off.transpose().mmul(off).div(logs.rows);
    const wanted = new Matrix(scatter.map((row) => [...row])).mul(freedom / (freedom - 2));
    const lower = new CholeskyDecomposition(wanted).lowerTriangularMatrix;
    const inverse = new CholeskyDecomposition(wanted).solve(Matrix.eye(4));
    expect(wanted.mmul(inverse).sub(Matrix.eye(4)).abs().max()).toBeLessThan(1e-9);
    const white = lower.transpose().mmul(inverse).mmul(covariance).mmul(inverse).mmul(lower);
    expect(white.sub(Matrix.eye(4)).abs().max()).toBeLessThan(0.03);
  });

  it("begin as the points of Halton's sequence say, by hand", () => {
    // In bases 2, 3, 5, 7 and 11, digits times 1, 2, 3, 3 and 7: of 1, 2 and 3 the parts are ½, ¼, ¾; ⅔, ⅓, 2/9; 3/5, 1/5, 4/5;
    // 3/7, 6/7, 2/7; 7/11, 3/11, 10/11. (3 is 11 in base 2 and 10 in base 3.)
    const points = [
      [1 / 2, 2 / 3, 3 / 5, 3 / 7, 7 / 11],
      [1 / 4, 1 / 3, 1 / 5, 6 / 7, 3 / 11],
      [3 / 4, 2 / 9, 4 / 5, 2 / 7, 10 / 11],
    ];
    const { middle, scatter, freedom } = GIRTH_BODIES;
    const lower = new CholeskyDecomposition(new Matrix(scatter.map((row) => [...row]))).lowerTriangularMatrix;
    for (const [at, point] of points.entries()) {
      const [last = 0, ...firsts] = point.map((share) => normalQuantile(share)).toReversed();
      // Wilson and Hilferty: the cube root of chi-square over its freedom is normal, about 1 − 2/9ν with variance 2/9ν.
      const root = 1 - 2 / (9 * freedom) + last * Math.sqrt(2 / (9 * freedom));
      const off = lower.mmul(Matrix.columnVector(firsts.toReversed())).mul(Math.sqrt(1 / root ** 3));
      const { bust, upperChest, waist, hip } = invariant(modelBodies()[at], "body");
      for (const [row, girth] of [bust, upperChest, waist, hip].entries())
        expect(Math.log(girth)).toBeCloseTo(invariant(middle[row], "middle") + off.get(row, 0), 9);
    }
  });

  it("have the scatter of the survey, and no bridge's doubt in it", () => {
    const places = GIRTH_BODIES.measures.map((name) => SURVEYED_BODIES.measures.indexOf(name));
    expect(GIRTH_BODIES.scatter).toEqual(
      places.map((row) => places.map((column) => SURVEYED_BODIES.scatter[row]?.[column])),
    );
  });

  // Means of the surveyed women, moved; a girth is skewed, so a middle lies a little lower.
  it.each(["bust", "upperChest", "waist", "hip"] as const)("have the %s of the real women", (girth) => {
    const mean = (of: readonly ModelBody[]): number => of.reduce((sum, body) => sum + body[girth], 0) / of.length;
    expect(Math.abs(mean(modelBodies()) - mean(women))).toBeLessThan(8);
  });
});

describe("the rings", () => {
  const PAIRS: readonly (readonly [Girth, Girth])[] = [
    ["bust", "waist"],
    ["waist", "hip"],
  ];

  // The many-sided figure holds a point that a line from it crosses an odd number of times.
  const holds = (ring: readonly (readonly [number, number])[], x: number, y: number): boolean =>
    ring.reduce((inside, [x1, y1], at) => {
      const [x2, y2] = invariant(ring[(at + 1) % ring.length], "point");
      return y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1) ? !inside : inside;
    }, false);

  it.each(PAIRS.flatMap(([across, up]) => [0.5, 0.9].map((share) => [across, up, share] as const)))(
    "of %s and %s that should hold %d of the bodies does",
    (across, up, share) => {
      const ring = ringOf(across, up, share);
      const inside = (of: readonly ModelBody[]): number =>
        of.filter((body) => holds(ring, body[across], body[up])).length / of.length;
      expect(Math.abs(inside(modelBodies()) - share)).toBeLessThan(0.03);
      // The real women too.
      expect(Math.abs(inside(women) - share)).toBeLessThan(0.04);
    },
  );

  // For two dimensions d/2 is Fisher's F with 2 and ν: table, F(2, 25) at 0.95 is 3.39, at 0.9 2.53; F(2, 10) at 0.95 4.10.
  it.each([
    [0.95, 25, 3.385],
    [0.9, 25, 2.528],
    [0.95, 10, 4.103],
  ])("reaches as far as Fisher's table says (%d, %d)", (share, freedom, fisher) => {
    expect(ringDistance(share, freedom) / 2).toBeCloseTo(fisher, 2);
  });

  it("goes round from the most of the one, over the most of the other for it", () => {
    const ring = ringOf("waist", "hip", 0.5, 4).map(([x, y]) => [Math.log(x), Math.log(y)]);
    const places = [2, 3];
    const own = new Matrix(
      places.map((row) => places.map((column) => invariant(GIRTH_BODIES.scatter[row]?.[column], "entry"))),
    );
    const lower = new CholeskyDecomposition(own).lowerTriangularMatrix;
    const reach = Math.sqrt(25 * (0.5 ** (-2 / 25) - 1));
    const [waist = 0, hip = 0] = places.map((at) => GIRTH_BODIES.middle[at]);
    const [across, up, rest] = [lower.get(0, 0) * reach, lower.get(1, 0) * reach, lower.get(1, 1) * reach];
    const near = (...values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));
    expect(ring).toEqual([
      near(waist + across, hip + up),
      near(waist, hip + rest),
      near(waist - across, hip - up),
      near(waist, hip - rest),
    ]);
  });

  it("lies at that distance all round, by the library's inverse", () => {
    const places = [0, 2];
    const inverse = new CholeskyDecomposition(
      new Matrix(places.map((row) => places.map((column) => invariant(GIRTH_BODIES.scatter[row]?.[column], "entry")))),
    ).solve(Matrix.eye(2));
    const distance = 25 * ((1 - 0.9) ** (-2 / 25) - 1);
    for (const [x, y] of ringOf("bust", "waist", 0.9)) {
      const off = Matrix.columnVector([
        Math.log(x) - invariant(GIRTH_BODIES.middle[0], "middle"),
        Math.log(y) - invariant(GIRTH_BODIES.middle[2], "middle"),
      ]);
      expect(off.transpose().mmul(inverse).mmul(off).get(0, 0)).toBeCloseTo(distance, 6);
    }
  });
});

describe("what a chart fits", () => {
  it.each(demoWorks().map(({ name, pattern }) => [name, pattern.chart] as const))(
    "%s: as many of the model's bodies as of the real women, within 4 of 100",
    (_, chart) => {
      const model = numbersIn(fitOf(chart).shares);
      const real = numbersIn(sharesOf(chart, women));
      // The two bounds lie where the upper chest is off by its doubt, and the differences of the real women are not quite so regular.
      const room = model.map((__, at) => (at === 2 || at === 3 ? 0.05 : 0.04));
      expect(
        model.map((share, at) => Math.abs(share - invariant(real[at], "share")) > invariant(room[at], "room")),
      ).toEqual(model.map(() => false));
    },
  );

  it("gives a frame to all where the chart is one huge interval", () => {
    const huge = {
      sizes: [size("small", 620, 480, 680), size("large", 1700, 1500, 1900)],
      draftedDifference: 50,
      cups: [],
    };
    const { shares } = fitOf(huge);
    expect(shares.placed).toBe(1);
    expect(shares.apart.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    // Half-way to the large size, 1160 mm of bust, there is hardly anybody: nobody's sizes are apart.
    expect(shares.apart[0]).toBeGreaterThan(0.99);
    expect(shares.waist.one).toBe(1);
    expect(shares.hip.one).toBe(1);
  });

  it("gives none where the chart lies elsewhere", () => {
    const { shares } = fitOf({
      sizes: [size("1", 1500, 1400, 1600), size("2", 1540, 1440, 1640)],
      draftedDifference: 50,
      cups: [],
    });
    expect(numbersIn(shares)).toEqual(Array.from({ length: 13 }, () => 0));
  });

  it("counts by hand on bodies made for it", () => {
    const body = (bust: number, upperChest: number, waist: number, hip: number): ModelBody => ({
      bust,
      upperChest,
      waist,
      hip,
    });
    const bodies = [
      // The 880, bust as drafted.
      body(880, 830, 700, 940),
      // The 880 by its upper chest, 62 mm out: just left alone; waist 0.6 of a size up, hip 1.5 up.
      body(892, 830, 724, 1000),
      // The 880 by its upper chest, 70 mm out: altered.
      body(900, 830, 700, 940),
      // Off the chart.
      body(1300, 1250, 1100, 1400),
    ];
    const shares = sharesOf(even, bodies);
    expect(shares.placed).toBe(0.75);
    expect(shares.bustLeftAlone).toBe(0.5);
    expect(shares.waist).toEqual({ half: 0.5, one: 0.75 });
    expect(shares.hip).toEqual({ half: 0.5, one: 0.5 });
    expect(shares.unblended).toBe(0.5);
    // Sizes of bust, waist, hip: 880 880 880; 880 (892 is nearer it) 920 (0.6 up) 960 (1.5 up); 920 (on the bound) 880 880.
    expect(shares.apart).toEqual([0.25, 0.25, 0.25, 0]);
  });

  it("counts half a size and a whole one in, and what lies beyond out", () => {
    // The 880 by bust and upper chest; a size is 40 mm of waist (700) and hip (940).
    const of = (waist: number, hip: number) => sharesOf(even, [{ bust: 880, upperChest: 830, waist, hip }]);
    expect(of(720, 920)).toMatchObject({ waist: { half: 1, one: 1 }, hip: { half: 1, one: 1 }, unblended: 1 });
    expect(of(720.1, 920)).toMatchObject({ waist: { half: 0, one: 1 }, hip: { half: 1 }, unblended: 0 });
    expect(of(720, 919.9)).toMatchObject({ waist: { half: 1 }, hip: { half: 0, one: 1 }, unblended: 0 });
    expect(of(740, 900)).toMatchObject({ waist: { half: 0, one: 1 }, hip: { half: 0, one: 1 } });
    expect(of(740.1, 899.9)).toMatchObject({ waist: { one: 0 }, hip: { one: 0 } });
    expect(of(780, 940).apart).toEqual([0, 0, 1, 0]);
    expect(of(820, 940).apart).toEqual([0, 0, 0, 1]);
    expect(of(700, 1300).apart).toEqual([0, 0, 0, 1]);
    expect(of(740, 900).apart).toEqual([0, 0, 1, 0]);
    expect(of(740, 940).apart).toEqual([0, 1, 0, 0]);
  });

  it("says between what the share of busts left alone lies, were all upper chests a doubt of 15 mm off", () => {
    const of = (...busts: readonly number[]) =>
      sharesOf(
        even,
        busts.map((bust) => ({ bust, upperChest: 840, waist: 700, hip: 940 })),
      );
    // By their upper chest all get the 880; with 15 more of it the 920, since 40 mm a size part at 850. A bust a third of a size
    // out is left alone, one half a size and more out is not.
    expect(of(885)).toMatchObject({ bustLeftAlone: 1, bustLeftAloneWithin: { least: 0, most: 1 } });
    expect(of(910)).toMatchObject({ bustLeftAlone: 0, bustLeftAloneWithin: { least: 0, most: 1 } });
    expect(of(885, 910)).toMatchObject({ bustLeftAlone: 0.5, bustLeftAloneWithin: { least: 0.5, most: 0.5 } });
    expect(of(885, 885, 910)).toMatchObject({
      bustLeftAloneWithin: { least: expect.closeTo(1 / 3, 9), most: expect.closeTo(2 / 3, 9) },
    });
  });

  it("lets cups spare bust alterations", () => {
    const cups = [25, 50, 75, 100].map((difference) => ({ label: String(difference), difference }));
    expect(fitOf({ ...even, cups }).shares.bustLeftAlone).toBeGreaterThan(fitOf(even).shares.bustLeftAlone + 0.2);
  });

  it("says nothing of a chart with faults", () => {
    expect(chartFit({ ...even, sizes: [size("1", 880, 700, 940)] }, {})).toBeNull();
    expect(chartFit({ ...even, sizes: [] }, {})).toBeNull();
  });

  it("remembers a chart", () => {
    expect(fitOf(even).shares).toBe(fitOf(even, { bustGirth: 900 }).shares);
  });
});

describe("a wearer beside the chart", () => {
  it("against her frame and against the line, by hand", () => {
    const { hers } = fitOf(even, { bustGirth: 890, upperChestGirth: 835, waistGirth: 742, hipGirth: 940 });
    // Bust and upper chest are 55 apart, so the frame goes by the bust: the 880 (700, 940). At bust 890 the line has waist 710; at waist 742 hip 982.
    expect(hers.baseSize).toEqual({ label: "880", waist: 42, hip: 0 });
    expect(hers.waistAtBust?.off).toBeCloseTo(32, 9);
    expect(hers.hipAtWaist?.off).toBeCloseTo(-42, 9);
    expect(hers.noBaseSize).toBeNull();
  });

  it("counts as many further out as of the real women, within 4 of 100", () => {
    const { hers } = fitOf(even, { bustGirth: 890, waistGirth: 742, hipGirth: 940 });
    // The line of the even chart in closed form, also past its ends: waist = bust − 180, hip = waist + 240.
    const further = women.filter(({ bust, waist }) => Math.abs(waist - (bust - 180)) > 32).length / women.length;
    const furtherHip = women.filter(({ waist, hip }) => Math.abs(hip - (waist + 240)) > 42).length / women.length;
    expect(Math.abs(invariant(hers.waistAtBust, "waist").further - further)).toBeLessThan(0.04);
    expect(Math.abs(invariant(hers.hipAtWaist, "hip").further - furtherHip)).toBeLessThan(0.04);
  });

  it("says less with less", () => {
    expect(fitOf(even).hers).toEqual({ baseSize: null, noBaseSize: "noBust", waistAtBust: null, hipAtWaist: null });
    expect(fitOf(even, { bustGirth: 880 }).hers).toEqual({
      baseSize: { label: "880", waist: null, hip: null },
      noBaseSize: null,
      waistAtBust: null,
      hipAtWaist: null,
    });
    expect(fitOf(even, { waistGirth: 700, hipGirth: 950 }).hers).toMatchObject({
      baseSize: null,
      waistAtBust: null,
      hipAtWaist: { off: 10 },
    });
  });

  it("says at which end the chart does not reach her, and then nothing of its line", () => {
    expect(fitOf(even, { bustGirth: 1400, waistGirth: 1300 }).hers).toMatchObject({
      baseSize: null,
      noBaseSize: "larger",
      waistAtBust: null,
    });
    expect(fitOf(even, { bustGirth: 640, waistGirth: 500 }).hers).toMatchObject({
      baseSize: null,
      noBaseSize: "smaller",
      waistAtBust: null,
    });
  });

  it("goes by her own frame where she chose one", () => {
    const body = bodyOf(tapesOf({ bustGirth: 880, waistGirth: 700 }));
    expect(chartFit(even, body, { baseSize: "920" })?.hers.baseSize).toEqual({ label: "920", waist: -40, hip: null });
    expect(chartFit(even, body, { baseSize: "gone" })?.hers).toMatchObject({ baseSize: null, noBaseSize: null });
  });

  it("takes the chart's word where two sizes share a waist or a hip", () => {
    const shared = { ...even, sizes: [size("1", 840, 660, 900), size("2", 880, 700, 940), size("3", 920, 700, 980)] };
    // Past the last waist the line has nothing more to say than the hip of the last size that grew.
    expect(fitOf(shared, { bustGirth: 900, waistGirth: 700, hipGirth: 940 }).hers).toMatchObject({
      waistAtBust: { off: 0 },
      hipAtWaist: { off: 0 },
    });
    expect(fitOf(shared, { bustGirth: 900, waistGirth: 760, hipGirth: 985 }).hers).toMatchObject({
      hipAtWaist: { off: 5 },
    });
  });
});
