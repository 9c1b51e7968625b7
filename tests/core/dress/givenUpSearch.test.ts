/** The steps in which things are given up for a remnant, and how each is sought: common practice, no source, or our own choice. mm. */
import { describe, expect, it } from "vitest";
import type { Skirt } from "../../../src/core/decisions/dress";
import type { LengthUnit } from "../../../src/core/decisions/work";
import {
  EDGED,
  HAS,
  answerOf,
  byArea,
  closely,
  easily,
  inTurn,
  lengthFrom,
  needed,
  ratioFrom,
  waysOf,
  type Case,
  type Rule,
} from "../../support/remnants";

/** The first step of everything, the least missed first. */
const firstSteps = (like: Case): readonly unknown[] => waysOf(answerOf(like, HAS, easily).answer);

describe("the first step of each thing, in the order of what is lost", () => {
  it("is a fold for nothing, parts cut elsewhere for a hundredth, a nap for a twentieth, then the skirt by its shares", () => {
    const like: Case = {
      skirt: { kind: "gathered", length: 600, ratio: 1.8 },
      of: EDGED,
      main: { fold: true, oneWay: true },
    };
    const { answer } = answerOf(like, HAS, easily);
    // 1/60 of the length is 0.0167; 0.8 of 1/18 is 0.044.
    expect(waysOf(answer)).toEqual([
      [{ code: "remnant/single-layer" }],
      [{ code: "remnant/elsewhere", group: "facing", keys: expect.any(Array) }],
      [{ code: "remnant/elsewhere", group: "binding", keys: expect.any(Array) }],
      [lengthFrom(600, 590)],
      [closely(ratioFrom(1.8, 1.7))],
      [{ code: "remnant/both-ways" }],
    ]);
    expect(answer.goes ? [] : answer.ways.map(({ elsewhere }) => elsewhere.length > 0)).toEqual([
      false,
      true,
      true,
      false,
      false,
      false,
    ]);
    const cloths = answer.goes ? [] : answer.ways.map(({ dress }) => dress.cloths?.main);
    const hers = { width: 1500, length: HAS };
    expect(cloths).toEqual([
      { ...hers, fold: false, oneWay: true },
      ...Array.from({ length: 4 }, () => ({ ...hers, fold: true, oneWay: true })),
      { ...hers, fold: true, oneWay: false },
    ]);
  });

  it("is a quarter of a circle, a degree of flare, or a tenth of a tier's fullness", () => {
    expect(firstSteps({ skirt: { kind: "circle", length: 600, share: 0.6 } })).toEqual(
      inTurn(lengthFrom(600, 590), { code: "remnant/share", from: 0.6, to: 0.5 }),
    );
    expect(firstSteps({ skirt: { kind: "aLine", length: 600, flare: 7.4 } })).toEqual(
      inTurn(lengthFrom(600, 590), { code: "remnant/flare", from: 7.4, to: 7 }),
    );
    expect(firstSteps({ skirt: { kind: "tiers", length: 600, tiers: [{ ratio: 1.5 }, { ratio: 2 }] } })).toEqual(
      inTurn(lengthFrom(600, 590), ratioFrom(2, 1.9, 2), ratioFrom(1.5, 1.4, 1)),
    );
    // A width of six is 0.13, one of three 0.27.
    const whole: Skirt = { kind: "tiers", length: 600, tierCut: "wholeWidths", tiers: [{ widths: 3 }, { widths: 6 }] };
    expect(firstSteps({ skirt: whole, main: { width: 700 } })).toEqual(
      inTurn(
        lengthFrom(600, 590),
        { code: "remnant/widths", tier: 2, from: 6, to: 5 },
        { code: "remnant/widths", tier: 1, from: 3, to: 2 },
      ),
    );
  });

  it("comes to a length that a tape has: whole centimetres, or half inches, below what it is", () => {
    const lengths = (length: number, unit: LengthUnit): unknown =>
      firstSteps({ skirt: { kind: "straight", length }, unit });
    expect(lengths(605, "cm")).toEqual(inTurn(lengthFrom(605, 600)));
    expect(lengths(600.0005, "cm")).toEqual(inTurn(lengthFrom(600.0005, 590)));
    expect(lengths(596.9, "in")).toEqual(inTurn(lengthFrom(596.9, 584.2)));
  });
});

describe("short searches and whole ones", () => {
  /** 590 down to 360. */
  const like: Case = { skirt: { kind: "straight", length: 600 } };
  const lengths = Array.from({ length: 24 }, (_, less) => 590 - 10 * less);
  const areas = lengths.map((length) => needed({ skirt: { kind: "straight", length } }));
  const whole = needed(like);
  /** Goes from one step on by short searches, from another on by whole ones. */
  const from =
    (short: number, long: number): Rule =>
    ({ prepared, effort }) => {
      const area = byArea(prepared);
      const at = areas.findIndex((one) => Math.abs(one - area) < 1e-6);
      return at >= (effort === 1 ? long : short) && area !== whole ? HAS : HAS + 1;
    };
  const found = (short: number, long: number): unknown => {
    const [way] = waysOf(answerOf(like, HAS, from(short, long)).answer);
    return way?.map((giveUp) => (giveUp.code === "remnant/length" ? lengths.indexOf(giveUp.to) : giveUp.code));
  };

  it("agree, and halve what is left: no more than eleven lays for two dozen steps", () => {
    for (const at of [0, 9, 23]) {
      const { answer, sought } = answerOf(like, HAS, from(at, at));
      expect(waysOf(answer)).toEqual(inTurn(lengthFrom(600, 590 - 10 * at)));
      expect(sought.length).toBeLessThanOrEqual(11);
    }
  });

  it("differ by no more than four steps: whole ones are sought that far on either side", () => {
    expect([found(10, 6), found(10, 5)]).toEqual([[6], [6]]);
    expect([found(10, 14), found(10, 15)]).toEqual([[14], undefined]);
    expect([found(2, 0), found(21, 23)]).toEqual([[0], [23]]);
  });

  it("begin with the furthest step; where a short search leaves it longer by more than 8 in 100, no other is tried", () => {
    const furthest =
      (length: number): Rule =>
      ({ effort }, index) =>
        index === 0 ? HAS + 1 : effort === 1 ? HAS : length;
    const one = answerOf(like, HAS, furthest(1.08 * HAS));
    expect(waysOf(one.answer)).toHaveLength(1);
    const none = answerOf(like, HAS, furthest(1.08 * HAS + 0.01));
    expect(waysOf(none.answer)).toEqual([]);
    expect(none.sought.map(({ prepared, effort, goal }) => [byArea(prepared), effort, goal])).toEqual([
      [whole, 1, 0],
      [areas.at(-1), 0.15, HAS],
    ]);
    // Later on it has to go, though by a ten-thousandth of a millimetre too long.
    const later =
      (length: number): Rule =>
      (_, index) =>
        index === 0 ? HAS + 1 : length;
    expect(waysOf(answerOf(like, HAS, later(HAS + 0.00009)).answer)).toEqual(inTurn(lengthFrom(600, 590)));
    expect(waysOf(answerOf(like, HAS, later(HAS + 0.00011)).answer)).toEqual([]);
  });
});
