/**
 * How often the rule goes each way, against bounds worked out by hand from its weights (`harm.ts`, our own choice): a millimetre of
 * bust let in harms 1.25, taken out 1, either 15 more; left as it is up to 12, 1.75 too small and 1.5 too large; a millimetre of
 * upper chest 9.5 where it lies between two sizes 40 apart (0.75 of each frame and 8 outside its interval). Between bounds the
 * normal distribution.
 */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { pickWay, type OwnPicks, type TakenGirths } from "../../../src/core/sizing/pickWay";
import { chancesOf, wayOf, waysOf, type WayTaken } from "../../../src/core/sureness/ruleRegions";
import { testWork } from "../../support/works";

/** Upper chests 790, 830, 870. */
const chart: SizeChart = {
  sizes: [840, 880, 920].map((bust, at) => ({
    label: ["10", "12", "14"][at] ?? "",
    bust,
    waist: bust - 180,
    hip: bust,
  })),
  draftedDifference: 50,
  cups: [],
};
const cupped = (...differences: readonly number[]): SizeChart => ({
  ...chart,
  cups: differences.map((difference, at) => ({ label: ["B", "C"][at] ?? "", difference })),
});

/** Simpson's rule over the density. */
function below(z: number): number {
  const steps = 400;
  const by = z / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1)
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-((i * by) ** 2) / 2);
  return 0.5 + ((sum * by) / 3) * (1 / Math.sqrt(2 * Math.PI));
}

const girths = (bust: number, spread: number, chest: number | null, chestSpread = 0.1): TakenGirths => ({
  bust: { value: bust, spread },
  upperChest: chest === null ? null : { value: chest, spread: chestSpread },
});

/** Chances of ways between growing bounds, by what they are called: "12 B full". */
function between(value: number, spread: number, bounds: readonly number[], names: readonly string[]) {
  const reach = [-Infinity, ...bounds, Infinity].map((bound) =>
    Math.abs(bound) === Infinity ? Number(bound > 0) : below((bound - value) / spread),
  );
  return new Map(names.map((name, at) => [name, (reach[at + 1] ?? NaN) - (reach[at] ?? NaN)]));
}

const nameOf = ({ size, cup, bust }: WayTaken): string => `${size ?? "off"} ${cup ?? "-"} ${bust}`;
const told = (of: SizeChart, taken: TakenGirths, own: OwnPicks = {}): ReadonlyMap<string, number> =>
  new Map(waysOf(of, taken, own).map((way) => [nameOf(way), way.probability]));

/** How far apart two rows of chances are at the most. */
function apart(one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>): number {
  const names = new Set([...one.keys(), ...other.keys()]);
  return Math.max(...[...names].map((name) => Math.abs((one.get(name) ?? 0) - (other.get(name) ?? 0))));
}

describe("along the bust, the upper chest known", () => {
  // In the middle of size 12 no other is near. B is let be from 868 to 892, C from 893 to 917; between them C is taken in, since
  // 12.5 let in on B harm 30.6, and 12.5 taken out of C 27.5.
  const bounds = [868, 892, 893, 917];
  const names = ["12 B small", "12 B nothing", "12 C small", "12 C nothing", "12 C full"];

  it.each([845, 861, 879, 881, 892.5, 899, 901, 919, 939, 941])("two cups, at a bust of %d", (bust) => {
    for (const spread of [3, 10, 25])
      expect(apart(told(cupped(50, 75), girths(bust, spread, 830)), between(bust, spread, bounds, names))).toBeLessThan(
        1e-6,
      );
  });

  it.each([880, 900, 915, 925, 940, 960])("half-way between two sizes, at a bust of %d", (bust) => {
    // Frames harm alike. B of 12 let in harms 15 + 1.25 (b − 880), B of 14 taken out 15 + 920 − b: more by the 2 of a tie from 898⅔ on,
    // until when B of 12 is altered by less. Cup C of 12 is drafted for the bust of B of 14, of which the larger size is taken.
    const places = [868, 892, 898 + 2 / 3, 908, 932, 938 + 2 / 3, 948, 972];
    const ways = ["12 B", "14 B", "14 C"].flatMap((way) =>
      ["small", "nothing", "full"].map((done) => `${way} ${done}`),
    );
    // A change that is no jump is found to a fortieth of a millimetre.
    const found = told(cupped(50, 90), girths(bust, 10, 850));
    expect(apart(found, between(bust, 10, places, ways))).toBeLessThan(0.0011);
  });

  it("an alteration of her own is no jump: B is cut until C harms less, 1.75 (b − 880) = 1.5 (905 − b)", () => {
    const at = (1.75 * 880 + 1.5 * 905) / 3.25;
    for (const off of [-1, -0.3, 0, 0.5, 1.2]) {
      const found = told(cupped(50, 75), girths(at + off, 1, 830), { bustAlteration: 0 });
      const ways = between(at + off, 1, [at], ["12 B nothing", "12 C nothing"]);
      expect(apart(found, ways)).toBeLessThan(0.015);
    }
  });
});

describe("along the bust, every way that the rule goes", () => {
  const sized = (differences: readonly number[], ...busts: readonly number[]): SizeChart => ({
    sizes: busts.map((bust, at) => ({ label: `${at}`, bust, waist: bust - 180, hip: bust + 60 })),
    draftedDifference: differences[0] ?? NaN,
    cups: differences.map((difference, at) => ({ label: "ABCD"[at] ?? "", difference })),
  });
  /** The planner's rule at 500 places of the bust. */
  function ruled(of: SizeChart, taken: TakenGirths, own: OwnPicks = {}): ReadonlyMap<string, number> {
    const sums = new Map<string, number>();
    let all = 0;
    for (let z = -4.99; z < 5; z += 0.02) {
      const { value, spread } = taken.bust;
      const { offer, alteration } = pickWay(of, { ...taken, bust: { value: value + z * spread, spread } }, own);
      const name = nameOf(wayOf(of, offer, alteration));
      const weight = Math.exp((-z * z) / 2);
      all += weight;
      sums.set(name, (sums.get(name) ?? 0) + weight);
    }
    return new Map([...sums].map(([name, sum]) => [name, sum / all]));
  }

  it("three cups within one stretch without a jump: each is cut about its own bust and the 33 that she lets in", () => {
    // The last size's cups are drafted for 950, 969 and 979. Between 983 and 1002 the one is left for the other where
    // 1.75 (b − 983) = 1.5 (1002 − b), and so on.
    const turn = (one: number, other: number): number => (1.75 * one + 1.5 * other) / 3.25;
    const bounds = [turn(983, 1002), turn(1002, 1012)];
    const ways = ["3 A full", "3 B full", "3 C full"];
    const of = sized([65, 84, 94], 860, 880, 900, 950);
    for (const bust of [985, 999, 1004, 1010]) {
      const found = told(of, girths(bust, 3, 884), { bustAlteration: 33 });
      expect(apart(found, between(bust, 3, bounds, ways))).toBeLessThan(0.008);
    }
  });

  it.each([
    // Another way just about the bust that it is drafted for, in between two stretches of one.
    [testWork.pattern.chart, girths(824.1, 3.7, 726.3), {}],
    [testWork.pattern.chart, girths(859.8, 3.9, 812.9), {}],
    [testWork.pattern.chart, girths(1037, 9.9, 926.6), {}],
    [sized([55, 68, 84], 850, 890, 950, 980), girths(957, 11.7, 914.9), {}],
    [sized([47], 830, 890, 930, 1010), girths(1005.6, 5.4, 911), {}],
    // One way after another.
    [testWork.pattern.chart, girths(855, 5.9, 809.1), { bustAlteration: -32 }],
    [sized([70, 89], 840, 890, 930, 960), girths(926.2, 10.9, 835.5), {}],
  ] as const)("as the planner would go at each bust: %#", (of, taken, own) => {
    expect(apart(told(of, taken, own), ruled(of, taken, own))).toBeLessThan(0.01);
  });
});

describe("across the upper chest, the bust known", () => {
  // 900, nothing altered: 20 too small on 12 harm 35, 20 too large on 14 harm 30, so 14 is cut from 850 − 5/9.5 on.
  const bound = 850 - 5 / 9.5;
  const share = (chest: number, spread: number, isRough: boolean): number => {
    const { ways, chances } = chancesOf(chart, girths(900, 0.01, chest, spread), { bustAlteration: 0 }, isRough);
    return chances[ways.findIndex(({ size }) => size === "14")] ?? 0;
  };
  const chests = Array.from({ length: 33 }, (_, at) => 834 + at);

  it.each([3, 6, 10])("the larger size as often as it lies beyond the bound, known to %d", (spread) => {
    for (const chest of chests)
      expect(Math.abs(share(chest, spread, false) - below((chest - bound) / spread))).toBeLessThan(0.004);
  });

  it("with the bust unsure as well: the bound moves by 3.25/9.5 for a millimetre of bust", () => {
    // 1.75 (b − 880) − 1.5 (920 − b) = 3.25 b − 2920 is what 14 harms less at the bust; 9.5 (c − 850) at the upper chest.
    const slope = 3.25 / 9.5;
    for (const [bust, bustSpread] of [
      [900, 2],
      [896, 5],
      [905, 5],
    ] as const)
      for (const chest of chests) {
        const by = (chest - 850 + slope * bust - 2920 / 9.5) / Math.hypot(6, slope * bustSpread);
        const found = told(chart, girths(bust, bustSpread, chest, 6), { bustAlteration: 0 }).get("14 - nothing") ?? 0;
        expect(Math.abs(found - below(by))).toBeLessThan(0.003);
      }
  });

  it("roughly, to what a fourth of a spread makes", () => {
    for (const chest of chests) expect(Math.abs(share(chest, 6, true) - below((chest - bound) / 6))).toBeLessThan(0.05);
    // Cut no finer: somewhere it shows.
    const off = chests.map((chest) => Math.abs(share(chest, 6, true) - below((chest - bound) / 6)));
    expect(Math.max(...off)).toBeGreaterThan(0.004);
  });

  it("and the smaller size before the first bound as well: 860, so 10 up to 810 − 5/9.5", () => {
    const first = 810 - 5 / 9.5;
    for (const chest of [795, 803, 806, 810, 814, 822])
      expect(
        Math.abs(
          (told(chart, girths(860, 0.01, chest, 6), { bustAlteration: 0 }).get("10 - nothing") ?? 0) -
            below((first - chest) / 6),
        ),
      ).toBeLessThan(0.004);
  });
});

describe("both unsure", () => {
  it.each([
    [900, 850],
    [870, 818],
  ])(
    "a bust of %d and an upper chest of %d, each independent: summed over a grid of the rule known exactly",
    (bust, chest) => {
      // Bust known to 8 and upper chest to 12: at each place of the upper chest, the ways of it as if known, weighed by its density. The
      // frames' harm is that of a doubt of 12 in both, and between the two sizes linear, so that doubt does not show.
      const sums = new Map<string, number>();
      let all = 0;
      for (let z = -4.9; z < 5; z += 0.2) {
        const weight = Math.exp((-z * z) / 2);
        all += weight;
        for (const [name, chance] of told(chart, girths(bust, 8, chest + 12 * z, 0.6)))
          sums.set(name, (sums.get(name) ?? 0) + weight * chance);
      }
      const summed = new Map([...sums].map(([name, sum]) => [name, sum / all]));
      expect(apart(told(chart, girths(bust, 8, chest, 12)), summed)).toBeLessThan(0.01);
    },
  );
});

describe("by the bust alone", () => {
  it("on a size and a cup of her own, also where the chart does not reach: 14 in a cup of 150 is drafted for 1020", () => {
    const own = { baseSize: 2, cup: "C" };
    expect(
      apart(
        told(cupped(50, 150), girths(1020, 4, null), own),
        between(1020, 4, [1008, 1032], ["14 C small", "14 C nothing", "14 C full"]),
      ),
    ).toBeLessThan(1e-6);
    expect(
      apart(
        told(cupped(50, 150), girths(1004, 4, null), own),
        between(1004, 4, [1008, 1032], ["14 C small", "14 C nothing", "14 C full"]),
      ),
    ).toBeLessThan(1e-6);
  });

  it("on a cup of her own, what lies off the chart is cut from no size", () => {
    // Of 1004 known to 4, one spread lies within the 1000 that the chart reaches; no bust there is 1008.
    const found = told(cupped(50, 150), girths(1004, 4, null), { cup: "C" });
    expect(found.get("off - nothing")).toBeCloseTo(below(1), 6);
    expect(found.has("14 C nothing")).toBe(false);
    const ways = ["12 C nothing", "12 C full", "14 C small"];
    expect(ways.reduce((sum, way) => sum + (found.get(way) ?? 0), 0)).toBeCloseTo(below(-1), 6);
    // Three spreads down, 992 is 12 more than the 980 of size 12.
    expect(found.get("12 C nothing")).toBeCloseTo(below(-3), 6);
  });
});
