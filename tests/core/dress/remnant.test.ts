/** What may be given up for a remnant, and how far: what is tried of each thing, and what is told. mm. */
import { describe, expect, it } from "vitest";
import type { Dress, Skirt } from "../../../src/core/decisions/dress";
import {
  BARE,
  EDGED,
  HAS,
  answerOf,
  byArea,
  easily,
  inTurn,
  lengthFrom,
  needed,
  never,
  ratioFrom,
  waysOf,
  type Case,
} from "../../support/remnants";

/** The first step of everything, the least missed first. */
const firstSteps = (like: Case): readonly unknown[] => waysOf(answerOf(like, HAS, easily).answer);

describe("the last step of each thing", () => {
  /** That what is tried first of each, which is the furthest of it, takes as much cloth as these. */
  const expectFurthest = (like: Case, ...furthest: readonly Skirt[]): void => {
    const { sought } = answerOf(like, HAS, never);
    expect(sought.slice(1, 1 + furthest.length).map(({ prepared }) => byArea(prepared))).toEqual(
      furthest.map((skirt) => expect.closeTo(needed({ ...like, skirt }), 6)),
    );
  };

  it("is a fullness of 1.2, flare of 4, a quarter of a circle, or three fifths of the length", () => {
    expectFurthest(
      { skirt: { kind: "gathered", length: 600, ratio: 1.75 } },
      { kind: "gathered", length: 600, ratio: 1.2 },
      { kind: "gathered", length: 360, ratio: 1.75 },
    );
    expectFurthest(
      { skirt: { kind: "aLine", length: 600, flare: 6.5 } },
      { kind: "aLine", length: 600, flare: 4 },
      { kind: "aLine", length: 360, flare: 6.5 },
    );
    expectFurthest(
      { skirt: { kind: "peplum", peplumLength: 160, peplumShare: 1 } },
      { kind: "peplum", peplumLength: 160, peplumShare: 0.25 },
      // Three fifths are 96: 100 is the last whole centimetre.
      { kind: "peplum", peplumLength: 100, peplumShare: 1 },
    );
  });

  it("is of each tier its own, the lowest first", () => {
    const of = (first: number, second: number, length = 600): Skirt => ({
      kind: "tiers",
      length,
      tiers: [{ ratio: first }, { ratio: second }],
    });
    expectFurthest({ skirt: of(1.5, 2) }, of(1.5, 1.2), of(1.2, 2), of(1.5, 2, 360));
    // In whole widths of 650 on a waist of 752 and its ease: two of them are 1.2 of it and more, three of the lower are 1.2 of two.
    const whole = (first: number, second: number, length = 600): Skirt => ({
      kind: "tiers",
      length,
      tierCut: "wholeWidths",
      tiers: [{ widths: first }, { widths: second }],
    });
    const narrow: Case = { skirt: whole(2, 5), main: { width: 700 } };
    expectFurthest(narrow, whole(2, 3), whole(2, 5, 360));
  });

  it("is the shortest that can be drafted, where that is sooner: an A-line ends 60 below the hip", () => {
    const of: Dress = { ...BARE, measures: { waistToHip: 200 } };
    const aLine = (length: number, flare: number): Skirt => ({ kind: "aLine", length, flare });
    expectFurthest({ of, skirt: aLine(400, 6) }, aLine(400, 4), aLine(260, 6));
    // Of 265 one step is left, of 260 none: its flare alone.
    expect(firstSteps({ of, skirt: aLine(265, 6) })).toEqual(
      inTurn(lengthFrom(265, 260), { code: "remnant/flare", from: 6, to: 5 }),
    );
    expect(firstSteps({ of, skirt: aLine(260, 6) })).toEqual(inTurn({ code: "remnant/flare", from: 6, to: 5 }));
  });

  it("of a length is told in half inches where she measures in inches", () => {
    expect(firstSteps({ skirt: { kind: "straight", length: 596.9 }, unit: "in" })).toEqual(
      inTurn(lengthFrom(596.9, 584.2)),
    );
  });

  it("is none of what has none", () => {
    expect(firstSteps({ skirt: { kind: "aLine", length: 600, flare: 4 } })).toEqual(inTurn(lengthFrom(600, 590)));
    expect(firstSteps({ skirt: { kind: "straight", length: 600, flare: 9 } })).toEqual(inTurn(lengthFrom(600, 590)));
    const gathered = (ratio: number): unknown => firstSteps({ skirt: { kind: "gathered", length: 600, ratio } });
    expect(gathered(1.2)).toEqual(inTurn(lengthFrom(600, 590)));
    expect(gathered(1.25)).toEqual(inTurn(lengthFrom(600, 590), ratioFrom(1.25, 1.2)));
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
