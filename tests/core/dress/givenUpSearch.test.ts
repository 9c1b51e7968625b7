/**
 * How what is given up is sought, with lays stood in for: by what each is told to be, or by the area of what lies on it. Steps,
 * losses and shares: common practice, no source, or our own choice. mm.
 */
import { describe, expect, it } from "vitest";
import type { ClothLay } from "../../../src/core/cloth/cutting";
import { prepareLay } from "../../../src/core/cloth/layCloth";
import type { Prepared } from "../../../src/core/cloth/layPrepared";
import type { LayWanted } from "../../../src/core/cloth/laySearch";
import { areaOf } from "../../../src/core/cloth/rings";
import type { Cloth, Dress, Skirt } from "../../../src/core/decisions/dress";
import type { LengthUnit, Work } from "../../../src/core/decisions/work";
import { clothAskedOf } from "../../../src/core/dress/dressCloth";
import { remnantOf, type GiveUp, type RemnantAnswer } from "../../../src/core/dress/remnant";
import { tapesOf } from "../../../src/core/measures/tape";
import { invariant } from "../../../src/core/result";
import { testWork } from "../../support/works";

const byArea = ({ copies, width }: Prepared): number =>
  copies.reduce((sum, { ways: [way] }) => sum + areaOf(way?.ring ?? []), 0) / width;

/** With a lining of the bodice there is no facing and no binding: nothing but the skirt can be given up. */
const BARE: Dress = { lining: { bodice: true } };
const EDGED: Dress = { edges: { neck: "binding", armhole: "facing" } };

interface Case {
  readonly skirt: Skirt;
  readonly of?: Dress;
  readonly main?: Cloth;
  readonly unit?: LengthUnit;
}

/** Of a gathered skirt the hip is left out, over which it would have to be wider. */
const HIPLESS = tapesOf({ bustGirth: 905, waistGirth: 752, bustPointWidth: 190, sideNeckToBustPoint: 268 });
const PATTERN: Work["pattern"] = { ...testWork.pattern, length: "waist" };

const workOf = ({ skirt, of = BARE, main = {}, unit = "cm" }: Case): Work => ({
  ...testWork,
  pattern: PATTERN,
  tapes: skirt.kind === "gathered" || skirt.kind === "tiers" ? HIPLESS : testWork.tapes,
  unit,
  dress: { ...of, skirt, cloths: { main: { width: 1500, ...main } } },
});

/** By area. */
function needed(like: Case): number {
  const prepared = prepareLay(invariant(clothAskedOf(workOf(like), "main"), "cloth"));
  if (!prepared.ok) throw new Error(prepared.failure.code);
  return byArea(prepared.value);
}

type Rule = (wanted: LayWanted, index: number) => number;
const AREA: Rule = ({ prepared }) => byArea(prepared);

interface Answered {
  readonly answer: RemnantAnswer;
  readonly sought: readonly LayWanted[];
}

function answerOf(like: Case, has: number, rule: Rule): Answered {
  const search = remnantOf(workOf({ ...like, main: { ...like.main, length: has } }), "main");
  const sought: LayWanted[] = [];
  let step = search.next();
  while (step.done !== true) {
    const wanted = step.value;
    const lay: ClothLay = {
      cloth: "main",
      width: wanted.prepared.width,
      onFold: false,
      oneWay: false,
      parts: [],
      length: rule(wanted, sought.length),
      toBuy: 0,
      leastByArea: 0,
      leastByLongest: 0,
      used: 1,
    };
    sought.push(wanted);
    step = search.next(lay);
  }
  return { answer: invariant(step.value, "answer"), sought };
}

const waysOf = (answer: RemnantAnswer): readonly (readonly GiveUp[])[] =>
  answer.goes ? [] : answer.ways.map(({ giveUps }) => giveUps);

const HAS = 1000;
/** All but what is as she has it goes. */
const easily: Rule = (_, index) => (index === 0 ? HAS + 1 : HAS);
const never = (): number => 2 * HAS;

/** The first step of everything, the least missed first. */
const firstSteps = (like: Case): readonly unknown[] => waysOf(answerOf(like, HAS, easily).answer);

const closely = (giveUp: GiveUp): unknown =>
  Object.fromEntries(
    Object.entries(giveUp).map(([key, value]) => [key, typeof value === "number" ? expect.closeTo(value, 6) : value]),
  );
const inTurn = (...giveUps: readonly GiveUp[]): readonly unknown[] => giveUps.map((giveUp) => [closely(giveUp)]);

const lengthFrom = (from: number, to: number): GiveUp => ({ code: "remnant/length", from, to });
const ratioFrom = (from: number, to: number, tier: number | null = null): GiveUp => ({
  code: "remnant/ratio",
  tier,
  from,
  to,
});

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

  it("is none of what has none", () => {
    expect(firstSteps({ skirt: { kind: "aLine", length: 600, flare: 4 } })).toEqual(inTurn(lengthFrom(600, 590)));
    expect(firstSteps({ skirt: { kind: "straight", length: 600, flare: 9 } })).toEqual(inTurn(lengthFrom(600, 590)));
    const gathered = (ratio: number): unknown => firstSteps({ skirt: { kind: "gathered", length: 600, ratio } });
    expect(gathered(1.2)).toEqual(inTurn(lengthFrom(600, 590)));
    expect(gathered(1.25)).toEqual(inTurn(lengthFrom(600, 590), ratioFrom(1.25, 1.2)));
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
