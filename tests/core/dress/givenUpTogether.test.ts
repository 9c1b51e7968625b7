/** What is given up for a remnant where no one thing makes it go, and what is told then. mm. */
import { describe, expect, it } from "vitest";
import type { Prepared } from "../../../src/core/cloth/layPrepared";
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
