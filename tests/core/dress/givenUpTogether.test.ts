/** What is given up for a remnant where no one thing makes it go, and what is told then. mm. */
import { describe, expect, it } from "vitest";
import type { Prepared } from "../../../src/core/cloth/layPrepared";
import type { Skirt } from "../../../src/core/decisions/dress";
import { clothAskedOf } from "../../../src/core/dress/dressCloth";
import type { GiveUp } from "../../../src/core/dress/remnant";
import { invariant } from "../../../src/core/result";
import {
  AREA,
  EDGED,
  HAS,
  answerOf,
  byArea,
  closely,
  lengthFrom,
  needed,
  never,
  ratioFrom,
  waysOf,
  workOf,
  type Case,
} from "../../support/remnants";

describe("where no one thing makes it go", () => {
  const told = (like: Case, has: number): readonly unknown[] => waysOf(answerOf(like, has, AREA).answer);
  const gathered = (length: number, ratio: number): Case => ({ skirt: { kind: "gathered", length, ratio } });
  const given = (...giveUps: readonly GiveUp[]): readonly unknown[] => [giveUps.map(closely)];

  it("all else is given up half-way, then wholly, and of the length the least that then goes", () => {
    // Seven steps of fullness from 1.9 to 1.2: the fourth is 1.5.
    const like = gathered(600, 1.9);
    expect(told(like, needed(gathered(400, 1.5)) + 0.01)).toEqual(given(ratioFrom(1.9, 1.5), lengthFrom(600, 400)));
    expect(told(like, needed(gathered(400, 1.2)) + 0.01)).toEqual(given(ratioFrom(1.9, 1.2), lengthFrom(600, 400)));
    // Of two tiers each: eight steps of 2 to 1.6, three of 1.5 to 1.3.
    const tiers = (length: number, first: number, second: number): Case => ({
      skirt: { kind: "tiers", length, tiers: [{ ratio: first }, { ratio: second }] },
    });
    const { answer } = answerOf(tiers(600, 1.5, 2), needed(tiers(380, 1.3, 1.6)) + 0.01, AREA);
    expect(waysOf(answer)).toEqual(given(ratioFrom(2, 1.6, 2), ratioFrom(1.5, 1.3, 1), lengthFrom(600, 380)));
    // All that is told is in the dress that is answered.
    expect(answer.goes ? null : answer.ways[0]?.dress.skirt).toEqual(tiers(380, 1.3, 1.6).skirt);
  });

  it("what costs nothing of its shape is given up all at once, and then with it one thing of the skirt", () => {
    const like: Case = { ...gathered(600, 1.8), of: EDGED, main: { oneWay: true } };
    const of = (group: string): readonly string[] =>
      invariant(clothAskedOf(workOf(like), "main"), "cloth")
        .parts.filter((part) => part.cloth === "main" && part.group === group)
        .map(({ key }) => key);
    const [facings, bindings] = [of("facing"), of("binding")];
    const isFree = ({ copies, cloth }: Prepared): boolean =>
      cloth.oneWay === false && !copies.some(({ key }) => facings.includes(key) || bindings.includes(key));
    const facing: GiveUp = { code: "remnant/elsewhere", group: "facing", keys: facings };
    const binding: GiveUp = { code: "remnant/elsewhere", group: "binding", keys: bindings };
    const nap: GiveUp = { code: "remnant/both-ways" };
    const all = answerOf(like, HAS, ({ prepared }) => (isFree(prepared) ? HAS : never())).answer;
    expect(waysOf(all)).toEqual([[binding, nap, facing]]);
    const [way] = all.goes ? [] : all.ways;
    expect(way?.elsewhere).toEqual([...bindings, ...facings]);
    expect(way?.dress).toEqual({
      ...EDGED,
      skirt: like.skirt,
      cloths: { main: { width: 1500, length: HAS, oneWay: false } },
    });
    // Only where the skirt takes less too.
    const areas: number[] = [];
    const less = answerOf(like, HAS, ({ prepared }) => {
      if (!isFree(prepared)) return never();
      const area = byArea(prepared);
      areas.push(area);
      return area < (areas[0] ?? 0) - 1 ? HAS : never();
    }).answer;
    expect(waysOf(less)).toEqual([
      [facing, binding, nap, closely(lengthFrom(600, 590))],
      [facing, binding, nap, closely(ratioFrom(1.8, 1.7))],
    ]);
  });
});

describe("no lay is sought for nothing", () => {
  const counted = (like: Case): readonly number[] => {
    const { answer, sought } = answerOf(like, HAS, never);
    expect(waysOf(answer)).toEqual([]);
    expect(answer).toMatchObject({ goes: false, has: HAS, short: HAS, failure: null });
    return sought.map(({ effort }) => effort);
  };
  const short = (count: number): readonly number[] => [1, ...Array.from({ length: count }, () => 0.15)];
  const gathered: Skirt = { kind: "gathered", length: 600, ratio: 1.8 };

  it("each thing by itself, and all else half-way and wholly before the length", () => {
    expect(counted({ skirt: gathered })).toEqual(short(2 + 2));
    // Nothing but its length.
    expect(counted({ skirt: { kind: "straight", length: 600 } })).toEqual(short(1));
  });

  it("with one thing that costs nothing: that, and that with each", () => {
    expect(counted({ skirt: gathered, of: { edges: { neck: "facing", armhole: "facing" } } })).toEqual(
      short(1 + 2 + 2 + 2),
    );
  });

  it("with several: each of them, all of them, and all of them with each", () => {
    expect(counted({ skirt: gathered, of: EDGED })).toEqual(short(2 + 2 + 1 + 2 + 2));
    expect(counted({ skirt: gathered, of: EDGED, main: { oneWay: true, fold: true } })).toEqual(
      short(4 + 2 + 1 + 2 + 2),
    );
  });
});

describe("cloth that it cannot lie on at all", () => {
  it("says why, and not by how much", () => {
    const { answer } = answerOf({ skirt: { kind: "straight", length: 600 }, main: { width: 150 } }, HAS, never);
    expect(answer).toMatchObject({ goes: false, has: HAS, short: null, failure: { code: "cloth/part-too-wide" } });
    expect(waysOf(answer)).toEqual([]);
  });
});

describe("what she has", () => {
  it("is told before it is washed, and so is what is missing", () => {
    const like: Case = { skirt: { kind: "straight", length: 600 }, main: { shrinkage: 20 } };
    const { answer, sought } = answerOf(like, HAS, (_, index) => (index === 0 ? 840 : 900));
    expect(answer).toMatchObject({ goes: false, has: HAS, short: expect.closeTo(50, 6) });
    expect(sought.map(({ goal }) => goal)).toEqual([0, expect.closeTo(800, 6)]);
    expect(answerOf(like, HAS, () => 800.00009).answer).toMatchObject({ goes: true, left: expect.closeTo(0, 3) });
    expect(answerOf(like, HAS, () => 800.00011).answer.goes).toBe(false);
    expect(answerOf(like, HAS, () => 760).answer).toMatchObject({ goes: true, has: HAS, left: expect.closeTo(50, 6) });
  });
});
