/**
 * What is given up so that a dress goes on what there is of a cloth. Lays are stood in for by the area of all parts, so that each
 * answer can be held against every step in turn. Steps and losses: common practice, no source, or our own choice. mm.
 */
import { describe, expect, it } from "vitest";
import type { ClothLay } from "../../../src/core/cloth/cutting";
import { prepareLay } from "../../../src/core/cloth/layCloth";
import type { Prepared } from "../../../src/core/cloth/layPrepared";
import { ringArea } from "../../../src/core/geometry/ringArea";
import type { Cloth, Dress, Skirt } from "../../../src/core/decisions/dress";
import type { LengthUnit } from "../../../src/core/decisions/work";
import { clothAskedOf } from "../../../src/core/dress/dressCloth";
import { dressOf } from "../../../src/core/dress/dressOf";
import { remnantOf, type GiveUp, type RemnantAnswer } from "../../../src/core/dress/remnant";
import { invariant } from "../../../src/core/result";
import { testWork } from "../../support/works";

const byArea = ({ copies, width }: Prepared): number =>
  copies.reduce((sum, { ways: [way] }) => sum + ringArea(way?.ring ?? []), 0) / width;

const layOf = (prepared: Prepared): ClothLay => ({
  cloth: prepared.name,
  width: prepared.width,
  onFold: false,
  oneWay: false,
  parts: [],
  length: byArea(prepared),
  toBuy: 0,
  leastByArea: 0,
  leastByLongest: 0,
  used: 1,
});

interface Case {
  readonly unit: LengthUnit;
  readonly main: Cloth;
}

const usual: Case = { unit: "cm", main: { width: 1500 } };
const workOf = (skirt: Skirt, { unit, main }: Case) => ({
  ...testWork,
  unit,
  dress: { skirt, edges: { neck: "binding", armhole: "facing" }, cloths: { main } } satisfies Dress,
});

/** By area; null: it cannot be drafted, or has no room. */
function needed(dress: Dress, unit: LengthUnit, without: readonly string[] = []): number | null {
  const work = { ...testWork, unit, dress };
  const made = dressOf(work);
  const asked = clothAskedOf(work, "main");
  if (!made.ok || made.value.skirt?.ok === false || asked === null) return null;
  const prepared = prepareLay({ ...asked, parts: asked.parts.filter(({ key }) => !without.includes(key)) });
  return prepared.ok ? byArea(prepared.value) : null;
}

interface Answered {
  readonly answer: RemnantAnswer;
  /** What each lay was asked for with. */
  readonly sought: readonly (readonly [number, number])[];
}

function answerOf(skirt: Skirt, has: number, like: Case = usual): Answered {
  const search = remnantOf(workOf(skirt, { ...like, main: { ...like.main, length: has } }), "main");
  const sought: [number, number][] = [];
  let step = search.next();
  while (step.done !== true) {
    sought.push([step.value.effort, step.value.goal]);
    step = search.next(layOf(step.value.prepared));
  }
  return { answer: invariant(step.value, "answer"), sought };
}

interface Step {
  readonly giveUp: GiveUp;
  readonly skirt: Skirt;
  readonly loss: number;
}

/** Whether a step is the least that goes: it does, and the one before it does not. */
function isLeast(steps: readonly Step[], at: number, has: number, { unit, main }: Case): boolean {
  const goes = (step: Step | undefined): boolean => {
    if (step === undefined) return false;
    const length = needed(workOf(step.skirt, { unit, main }).dress, unit);
    return length !== null && length <= has;
  };
  return goes(steps[at]) && !goes(steps[at - 1]);
}

const lengths = (skirt: Skirt, from: number, all: readonly number[]): readonly Step[] =>
  all.map((to) => ({
    giveUp: { code: "remnant/length", from, to },
    skirt: { ...skirt, ...(skirt.kind === "peplum" ? { peplumLength: to } : { length: to }) },
    loss: 1 - to / from,
  }));

/** Tens below, to 0.6 of it. */
const tensBelow = (from: number): readonly number[] =>
  Array.from({ length: 200 }, (_, at) => 10 * at)
    .filter((to) => to < from && to >= 0.6 * from)
    .toReversed();

const rounded = (value: unknown): unknown => (typeof value === "number" ? expect.closeTo(value, 9) : value);

/** Its numbers but for rounding. */
const roundly = (giveUp: GiveUp): unknown =>
  Object.fromEntries(Object.entries(giveUp).map(([key, value]) => [key, rounded(value)]));

/** One way of each row, the least of it that goes, in the order of what is lost. */
function expectWays(skirt: Skirt, short: number, rows: readonly (readonly Step[])[], like: Case = usual): void {
  const has = invariant(needed(workOf(skirt, like).dress, like.unit), "length") - short;
  const { answer } = answerOf(skirt, has, like);
  if (answer.goes) throw new Error("goes");
  expect(answer.short).toBeCloseTo(short, 6);
  const ways = answer.ways.filter(({ giveUps: [first] }) => first?.code !== "remnant/elsewhere");
  const found = ways.map(({ dress }) => {
    const row = rows.findIndex((steps) => steps.some((step) => isSame(step.skirt, dress.skirt)));
    const steps = rows[row] ?? [];
    const at = steps.findIndex((step) => isSame(step.skirt, dress.skirt));
    return { row, at, step: invariant(steps[at], "step"), isLeast: isLeast(steps, at, has, like) };
  });
  expect(found.map(({ row }) => row).toSorted((a, b) => a - b)).toEqual(rows.map((_, row) => row));
  expect(found.map((one) => one.isLeast)).toEqual(rows.map(() => true));
  expect(ways.map(({ giveUps }) => giveUps)).toEqual(found.map(({ step }) => [roundly(step.giveUp)]));
  const losses = found.map(({ step }) => step.loss);
  expect(losses).toEqual(losses.toSorted((a, b) => a - b));
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const ratios = (
  from: number,
  tier: number | null,
  make: (ratio: number) => Skirt,
  all: readonly number[],
): readonly Step[] =>
  all.map((to) => ({
    giveUp: { code: "remnant/ratio", tier, from, to },
    skirt: make(to),
    loss: 0.8 * (1 - to / from),
  }));

describe("given up of a skirt, as little as makes it go, the least missed first", () => {
  it("is the fullness of gathers by tenths, or length by centimetres", () => {
    const skirt: Skirt = { kind: "gathered", length: 600, ratio: 2 };
    const rows = [
      ratios(2, null, (ratio) => ({ ...skirt, ratio }), [1.9, 1.8, 1.7, 1.6, 1.5, 1.4, 1.3, 1.2]),
      lengths(skirt, 600, tensBelow(600)),
    ];
    expectWays(skirt, 150, rows);
  });

  it("is the fullness of each tier, the lowest first", () => {
    const skirt: Skirt = { kind: "tiers", length: 600, tiers: [{ ratio: 1.75 }, { ratio: 1.6 }] };
    expectWays(skirt, 70, [
      ratios(1.6, 2, (ratio) => ({ ...skirt, tiers: [{ ratio: 1.75 }, { ratio }] }), [1.5, 1.4, 1.3, 1.2]),
      ratios(1.75, 1, (ratio) => ({ ...skirt, tiers: [{ ratio }, { ratio: 1.6 }] }), [1.7, 1.6, 1.5, 1.4, 1.3, 1.2]),
      lengths(skirt, 600, tensBelow(600)),
    ]);
  });

  it("is widths of cloth where tiers are cut in whole ones, so long as they are 1.2 of what they are gathered to", () => {
    const narrow: Case = { unit: "cm", main: { width: 700 } };
    const skirt: Skirt = { kind: "tiers", length: 600, tierCut: "wholeWidths", tiers: [{ widths: 3 }, { widths: 6 }] };
    const widths = (tier: 1 | 2, from: number, all: readonly number[]): readonly Step[] =>
      all.map((to) => ({
        giveUp: { code: "remnant/widths", tier, from, to },
        skirt: { ...skirt, tiers: tier === 1 ? [{ widths: to }, { widths: 6 }] : [{ widths: 3 }, { widths: to }] },
        loss: 0.8 * (1 - to / from),
      }));
    // 3 widths of 650 are 1950: of six 5 and 4 are at least 1.2 times that; a waist of some 790 takes two. One less is 330 long or so.
    const rows = [widths(2, 6, [5, 4]), widths(1, 3, [2]), lengths(skirt, 600, tensBelow(600))];
    expectWays(skirt, 250, rows, narrow);
  });

  it("is the share of a circle by quarters, or length, of a peplum its own", () => {
    const peplum: Skirt = { kind: "peplum", peplumLength: 165, peplumShare: 0.5 };
    expectWays(peplum, 12, [
      [{ giveUp: { code: "remnant/share", from: 0.5, to: 0.25 }, skirt: { ...peplum, peplumShare: 0.25 }, loss: 0.3 }],
      lengths(peplum, 165, tensBelow(165)),
    ]);
  });

  it("is flare by degrees to 4, or length by half inches", () => {
    const skirt: Skirt = { kind: "aLine", length: 600, flare: 9.5 };
    const inches: Case = { unit: "in", main: { width: 1524 } };
    const flares = [9, 8, 7, 6, 5, 4].map((to): Step => ({
      giveUp: { code: "remnant/flare", from: 9.5, to },
      skirt: { ...skirt, flare: to },
      loss: 0.5 * (1 - to / 9.5),
    }));
    // All of the flare takes 4 × 400² / 2 × (tan 9.5° − tan 4°) of 1524 across, 20 of its length. Half an inch is 12.7, kept to tenths; 47 of them are 596.9.
    const halves = Array.from({ length: 19 }, (_, less) => Math.round((47 - less) * 127) / 10);
    expectWays(skirt, 12, [flares, lengths(skirt, 600, halves)], inches);
  });
});

describe("the search for it", () => {
  const skirt: Skirt = { kind: "gathered", length: 600, ratio: 1.8 };
  const whole = invariant(needed(workOf(skirt, usual).dress, "cm"), "length");

  it("seeks one whole lay where it goes", () => {
    const { answer, sought } = answerOf(skirt, whole + 10);
    expect(answer).toMatchObject({ goes: true, has: whole + 10 });
    expect(sought).toEqual([[1, 0]]);
    expect(answer.goes && answer.left).toBeCloseTo(10, 6);
    // A fifth is lost in the wash.
    const washed = answerOf(skirt, whole / 0.8 + 10, { unit: "cm", main: { width: 1500, shrinkage: 20 } });
    expect(washed.answer.goes && washed.answer.left).toBeCloseTo(10, 6);
  });

  it("has facings and bindings cut of another cloth, by name, before all else", () => {
    const { dress } = workOf(skirt, usual);
    const made = dressOf({ ...testWork, dress });
    const parts = made.ok ? made.value.parts : [];
    const keysOf = (group: string) =>
      parts.filter((part) => part.cloth === "main" && part.group === group).map(({ key }) => key);
    const [facing, binding] = [keysOf("facing"), keysOf("binding")];
    expect([facing.length, binding.length].map((count) => count > 0)).toEqual([true, true]);
    const { answer, sought } = answerOf(skirt, whole - 1);
    // Ways are tried by short searches, to what there is, and proven by whole ones.
    const [first, ...others] = sought;
    expect(first).toEqual([1, 0]);
    expect(new Set(others.map(([effort]) => effort))).toEqual(new Set([0.15, 1]));
    for (const [effort, goal] of others) expect(goal).toBe(effort === 1 ? 0 : whole - 1);
    const ways = answer.goes ? [] : answer.ways;
    expect(ways.slice(0, 2).map(({ giveUps, elsewhere }) => [giveUps, elsewhere])).toEqual([
      [[{ code: "remnant/elsewhere", group: "facing", keys: facing }], facing],
      [[{ code: "remnant/elsewhere", group: "binding", keys: binding }], binding],
    ]);
    expect(ways[0]?.dress).toEqual({ ...dress, cloths: { main: { width: 1500, length: whole - 1 } } });
    expect(ways[0]?.lay.length).toBeCloseTo(needed(dress, "cm", facing) ?? 0, 6);
  });

  it("gives up a nap too, and all of it together where no one thing makes it go", () => {
    const napped: Case = { unit: "cm", main: { width: 1500, oneWay: true } };
    const napCodes = (has: number) => {
      const { answer } = answerOf(skirt, has, napped);
      return answer.goes ? [] : answer.ways.map(({ giveUps }) => giveUps.map(({ code }) => code));
    };
    const shortest = invariant(needed(workOf({ ...skirt, length: 360 }, usual).dress, "cm"), "shortest");
    // Shorter than the shortest skirt: what is cut elsewhere, the nap, the gathers and the length together.
    const together = napCodes(shortest - 60);
    expect(together.length).toBeGreaterThan(0);
    for (const codes of together) {
      expect(codes.slice(0, 3)).toEqual(["remnant/elsewhere", "remnant/elsewhere", "remnant/both-ways"]);
      expect(codes.length).toBeGreaterThan(3);
    }
    expect(napCodes(50)).toEqual([]);
  });
});
