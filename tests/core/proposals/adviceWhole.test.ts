/** The advice as a whole, on bodies that differ from the block's own figures at bust 880 (common practice) by what is planted. */
import { describe, expect, it } from "vitest";
import type { Alteration, FitAlteration } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { PrintedLength, StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { Measures } from "../../../src/core/measures/measure";
import { tapesOf } from "../../../src/core/measures/tape";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { proposalsOf, type Advice, type Proposal } from "../../../src/core/proposals/proposals";
import { planOf, testWork } from "../../support/works";

const BLOCK = {
  bustGirth: 880,
  upperChestGirth: 830,
  waistGirth: 700,
  hipGirth: 940,
  backWaistLength: 410,
  frontWaistLength: 432,
  neckBaseGirth: 370,
  acrossBack: 345,
  acrossFront: 325,
  shoulderLength: 122,
  bustPointWidth: 190,
  sideNeckToBustPoint: 265,
} as const;
const GIRTHS: Measures = { bustGirth: 880, upperChestGirth: 830, waistGirth: 700, hipGirth: 940 };

const workOf = (measures: Measures, alterations: readonly Alteration[] = [], style: StyleName = "sideDart"): Work => ({
  ...testWork,
  tapes: tapesOf(measures),
  alterations,
  pattern: { ...testWork.pattern, style },
});
const adviceOn = (work: Work): Advice => proposalsOf(work, planOf(work));
const fit = (name: FitName, amount: number): FitAlteration => ({ kind: "fit", id: `fit-${name}`, fit: name, amount });
const keyOf = ({ altered }: Proposal): string => (altered.kind === "fit" ? altered.fit : altered.kind);
const take = (work: Work, { commands }: Proposal): Work => commands.reduce(applyCommand, work);
const measuresOf = (compared: readonly { readonly measure: PrintedLength }[]): readonly PrintedLength[] =>
  compared.map(({ measure }) => measure);

/** A tape twice its own spread, and a draft good to 8. */
const drafted = (measure: PrintedLength, figure: number, spread: number, more: number) => ({
  measure,
  body: figure + more,
  figure: expect.closeTo(figure, 6),
  from: "draft",
  changed: { cup: expect.closeTo(0, 1), bust: expect.closeTo(0, 1), own: expect.closeTo(0, 6) },
  garment: expect.closeTo(figure, 1),
  off: expect.closeTo(more, 1),
  doubt: expect.closeTo(Math.hypot(2 * spread, 8), 9),
  agrees: Math.abs(more) <= Math.hypot(2 * spread, 8),
});

describe("the whole advice", () => {
  it("of a body with the block's figures: all of it agrees", () => {
    expect(adviceOn(workOf({ ...BLOCK, height: 1680, underBustGirth: 760 }))).toEqual({
      heldBackBy: [],
      proposals: [],
      unanswered: [],
      agreeing: [
        drafted("backWaistLength", 410, 9, 0),
        drafted("frontWaistLength", 432, 10, 0),
        drafted("shoulderLength", 122, 5, 0),
        drafted("acrossBack", 345, 8, 0),
        drafted("acrossFront", 325, 8, 0),
        drafted("neckBaseGirth", 370, 8, 0),
        drafted("bustPointWidth", 190, 7, 0),
        drafted("sideNeckToBustPoint", 265, 8, 0),
      ].toSorted(inOrder),
      notOnPieces: expect.arrayContaining(["underBustGirth", "height"]),
      bustPoint: { out: expect.closeTo(0, 9), down: expect.closeTo(0, 9) },
    });
  });

  it("of a shoulder 16 longer: as much of it", () => {
    const compared = drafted("shoulderLength", 122, 5, 16);
    const advice = adviceOn(workOf({ ...GIRTHS, shoulderLength: 138 }));
    expect(advice).toEqual({
      heldBackBy: [],
      proposals: [
        {
          altered: { kind: "fit", fit: "shoulderWidth" },
          why: "width",
          stands: 0,
          amount: 16,
          missing: 0,
          from: [compared],
          parts: [{ of: "width", by: expect.closeTo(16, 1) }],
          girths: [],
          commands: [expect.objectContaining({ kind: "putAlteration" })],
        },
      ],
      unanswered: [],
      agreeing: [],
      notOnPieces: [],
      bustPoint: null,
    });
    expect(take(workOf({ ...GIRTHS, shoulderLength: 138 }), at(advice, "shoulderWidth")).alterations).toEqual([
      fit("shoulderWidth", 16),
    ]);
  });

  it("says where her bust point lies, against the pattern's", () => {
    // From the side neck at (69, −40): hers 286 away at x 77, the block's 265 away at x 95.
    const { bustPoint } = adviceOn(workOf({ ...GIRTHS, bustPointWidth: 154, sideNeckToBustPoint: 286 }));
    const [hers, own] = [Math.sqrt(286 ** 2 - 8 ** 2), Math.sqrt(265 ** 2 - 26 ** 2)];
    expect(bustPoint).toEqual({ out: expect.closeTo(-18, 6), down: expect.closeTo(hers - own, 6) });
  });

  it("is in the trade's order", () => {
    const work = workOf({
      ...BLOCK,
      backWaistLength: 385,
      frontWaistLength: 407,
      shoulderLength: 142,
      acrossBack: 370,
      bustPointWidth: 160,
    });
    const order = ["lengthBelowBust", "dartsOut", "backWidth", "shoulderWidth"];
    expect(adviceOn(work).proposals.map(keyOf)).toEqual(order);
  });
});

const inOrder = (a: { readonly measure: PrintedLength }, b: { readonly measure: PrintedLength }): number =>
  PRINTED.indexOf(a.measure) - PRINTED.indexOf(b.measure);
const PRINTED = adviceOn(workOf(BLOCK)).agreeing.map(({ measure }) => measure);

function at({ proposals }: Advice, key: string): Proposal {
  const found = proposals.find((one) => keyOf(one) === key);
  if (found === undefined) throw new Error(`no ${key} among ${proposals.map(keyOf).join()}`);
  return found;
}

describe("what stands and is not asked for", () => {
  const cases: readonly (readonly [FitName, number, readonly PrintedLength[], StyleName])[] = [
    ["lengthAboveBust", 12, ["backWaistLength", "frontWaistLength"], "sideDart"],
    ["lengthBelowBust", 12, ["backWaistLength", "frontWaistLength"], "sideDart"],
    ["roundBack", 12, ["backWaistLength"], "sideDart"],
    ["swayBack", 12, ["backWaistLength"], "sideDart"],
    ["waistDropFront", 12, ["frontWaistLength"], "sideDart"],
    ["bustPointLevel", 12, ["sideNeckToBustPoint"], "sideDart"],
    ["shoulderWidth", 12, ["shoulderLength"], "sideDart"],
    ["backWidth", 16, ["acrossBack"], "sideDart"],
    ["chestWidth", 16, ["acrossFront"], "sideDart"],
    ["bandDepth", 12, ["backWaistLength", "frontWaistLength"], "midriff"],
    ["strapLength", 12, ["sideNeckToBustPoint"], "midriff"],
  ];

  it.each(cases)("%s is to be taken out by the measures that decide on it", (name, amount, measures, style) => {
    const work = workOf(BLOCK, [fit(name, amount)], style);
    const proposal = at(adviceOn(work), name);
    expect(proposal).toMatchObject({
      altered: { kind: "fit", fit: name },
      why: "noLonger",
      stands: amount,
      amount: 0,
      missing: 0,
      parts: [],
    });
    expect(measuresOf(proposal.from).toSorted()).toEqual(measures.toSorted());
    // It is held against the garment without it, which agrees.
    expect(proposal.from.filter(({ agrees }) => !agrees)).toEqual([]);
    expect(take(work, proposal).alterations).toEqual([]);
  });

  it.each(cases)("%s is left where none of them was taken", (name, amount, measures, style) => {
    const others = Object.fromEntries(
      Object.entries(BLOCK).filter(([measure]) => !measures.some((one) => one === measure)),
    );
    const { proposals } = adviceOn(workOf(others, [fit(name, amount)], style));
    expect(proposals.map(keyOf)).not.toContain(name);
  });
});

describe("what stands and is asked for otherwise", () => {
  it("is changed to what is asked for without it", () => {
    const measures = { ...BLOCK, shoulderLength: 142 };
    const advice = adviceOn(workOf(measures, [fit("shoulderWidth", 8)]));
    expect(advice.proposals).toMatchObject([
      {
        altered: { fit: "shoulderWidth" },
        why: "width",
        stands: 8,
        amount: 20,
        missing: 0,
        from: [{ off: expect.closeTo(20, 1) }],
      },
    ]);
    expect(advice.proposals[0]?.commands).toHaveLength(1);
  });

  it("is left where it is no further than 3 mm from that", () => {
    const advice = (standing: number) =>
      adviceOn(workOf({ ...BLOCK, shoulderLength: 142 }, [fit("shoulderWidth", standing)]));
    expect(advice(16).proposals).toMatchObject([{ stands: 16, amount: 20 }]);
    expect([17, 23].flatMap((standing) => advice(standing).proposals)).toEqual([]);
    expect(advice(24).proposals).toMatchObject([{ stands: 24, amount: 20 }]);
  });

  it("does not keep others from being asked for", () => {
    const advice = adviceOn(workOf({ ...BLOCK, shoulderLength: 142, acrossBack: 370 }, [fit("shoulderWidth", 20)]));
    expect(advice.proposals).toMatchObject([{ altered: { fit: "backWidth" }, stands: 0, amount: 25 }]);
    expect(measuresOf(advice.agreeing)).toContain("shoulderLength");
    const both = adviceOn(workOf({ ...BLOCK, shoulderLength: 142, acrossBack: 370 }, [fit("shoulderWidth", 8)]));
    expect(both.proposals).toMatchObject([
      { altered: { fit: "backWidth" }, stands: 0, amount: 25 },
      { altered: { fit: "shoulderWidth" }, stands: 8, amount: 20 },
    ]);
  });
});

describe("the ends of the bust darts", () => {
  const end = (across: number): Alteration => ({
    kind: "dartEnd",
    id: "a",
    dart: { piece: "front", dart: "waistDart" },
    shorten: 0,
    across,
    hold: "mouth",
    giveBack: {},
  });

  it("are asked for once, from where they stand", () => {
    const work = workOf({ ...GIRTHS, bustPointWidth: 154 }, [end(4)]);
    const { proposals } = adviceOn(work);
    expect(proposals).toMatchObject([
      { altered: { kind: "dartsOut" }, why: "bustWidth", stands: -4, amount: -18, missing: 0, girths: [] },
    ]);
    // Without what stands the garment is 36 wider than she is.
    expect(proposals[0]?.from).toMatchObject([
      {
        measure: "bustPointWidth",
        body: 154,
        garment: expect.closeTo(190, 6),
        off: expect.closeTo(-36, 6),
        agrees: false,
      },
    ]);
    expect(proposals[0]?.parts).toMatchObject([{ of: "halfWidth", by: expect.closeTo(-18, 6) }]);
    expect(proposals[0]?.commands).toHaveLength(2);
  });

  it("are asked back where her width agrees without them, and they lie worse for it", () => {
    const { proposals } = adviceOn(workOf({ ...GIRTHS, bustPointWidth: 190 }, [end(14)]));
    expect(proposals).toMatchObject([
      { altered: { kind: "dartsOut" }, why: "noLonger", stands: -14, amount: 0, parts: [] },
    ]);
    expect(adviceOn(workOf({ ...GIRTHS, bustPointWidth: 190 }, [end(1)])).proposals).toEqual([]);
    expect(adviceOn(workOf({ ...GIRTHS, acrossBack: 345 }, [end(14)])).proposals).toEqual([]);
  });

  it("are set where a check fails by a bust point of hers that agrees, and told whole", () => {
    const work = workOf({ ...BLOCK, sideNeckToBustPoint: 277 });
    const { proposals, agreeing } = adviceOn(work);
    expect(proposals).toMatchObject([
      { altered: { kind: "dartEnds" }, why: "dartEnd", stands: 0, amount: 0, missing: 0, parts: [], girths: [] },
    ]);
    expect(measuresOf(proposals[0]?.from ?? []).toSorted()).toEqual(["bustPointWidth", "sideNeckToBustPoint"]);
    expect(measuresOf(agreeing)).not.toContain("bustPointWidth");
    const after = take(work, at(adviceOn(work), "dartEnds"));
    expect(after.alterations.every(({ kind }) => kind === "dartEnd")).toBe(true);
    expect(planOf(after).checks.filter(({ ok }) => !ok)).toEqual([]);
  });

  it("are not where another proposal goes by her bust point, nor where none of it was taken", () => {
    const wide = adviceOn(workOf({ ...BLOCK, sideNeckToBustPoint: 277, bustPointWidth: 154 }));
    expect(wide.proposals.map(keyOf)).toEqual(["dartsOut"]);
    expect(adviceOn(workOf(GIRTHS)).proposals).toEqual([]);
  });
});

describe("girths that an alteration changes", () => {
  it("are told with how much, from beyond 5 mm on", () => {
    const work = workOf({ ...BLOCK, sideNeckToBustPoint: 235 }, [], "princessArmhole");
    const { proposals } = adviceOn(work);
    for (const proposal of proposals) {
      const [before, after] = [planOf(work).levels, planOf(take(work, proposal)).levels];
      const changed = before.flatMap(({ level, finished }, index) => {
        const by = (after[index]?.finished ?? Number.NaN) - finished;
        return Math.abs(by) > 5 ? [{ level, by }] : [];
      });
      expect(proposal.girths).toEqual(changed);
    }
    expect(proposals.flatMap(({ girths }) => girths.map(({ level }) => level))).toContain("bust");
  });
});

describe("what a toile showed of the bust's darts", () => {
  const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);
  const end: Alteration = {
    kind: "dartEnd",
    id: "a",
    dart: { piece: "front", dart: "waistDart" },
    shorten: 0,
    across: 3,
    hold: "mouth",
    giveBack: {},
  };
  const kept = (alteration: Alteration): Work =>
    run(
      workOf({ ...GIRTHS, bustPointWidth: 154, sideNeckToBustPoint: 265 }, [alteration]),
      { kind: "beginTrial", id: "t", day: "2026-11-20" },
      { kind: "setVerdict", trial: "t", verdict: "keep" },
    );
  const unanswered = (work: Work) =>
    adviceOn(work).unanswered.map(({ compared, because }) => [compared.measure, because]);

  it("outweighs the width that was taken then, and not one that was taken since", () => {
    expect(adviceOn(kept(end)).proposals).toEqual([]);
    expect(unanswered(kept(end))).toEqual([["bustPointWidth", "toile"]]);
    const anew = run(kept(end), { kind: "setMeasure", measure: "bustPointWidth", value: 150 });
    expect(adviceOn(anew).proposals).toMatchObject([{ altered: { kind: "dartsOut" }, amount: -20 }]);
    expect(unanswered(anew)).toEqual([]);
    const deeper = run(kept(end), { kind: "setMeasure", measure: "sideNeckToBustPoint", value: 266 });
    expect(adviceOn(deeper).proposals).toEqual([]);
  });

  it("is nothing of a dart behind, or below the waist", () => {
    for (const piece of ["back", "frontBasque"] as const) {
      const work = kept({ ...end, dart: { piece, dart: "waistDart" } });
      expect(adviceOn(work).proposals).toMatchObject([{ altered: { kind: "dartsOut" }, stands: 0, amount: -18 }]);
    }
  });
});

describe("how much of it can be made", () => {
  const trusting = (measures: Measures, more: Partial<Work> = {}, style: StyleName = "sideDart"): Advice => {
    const work = workOf(measures, [], style);
    // Out of keeping with her other measures, and said to be right.
    return adviceOn({ ...work, trusted: measures, ...more });
  };
  const unanswered = (advice: Advice) => advice.unanswered.map(({ compared, because }) => [compared.measure, because]);

  it("is at least half of what is asked for, or it is not offered", () => {
    // A shoulder gives 25 mm more and 30 mm less at the most.
    for (const [off, amount, missing] of [
      [25, 25, 0],
      [26, 25, 1],
      [50, 25, 25],
      [-31, -30, -1],
      [-60, -30, -30],
    ] as const) {
      const advice = trusting({ ...GIRTHS, shoulderLength: 122 + off });
      expect(advice.proposals).toMatchObject([{ stands: 0, amount, missing }]);
      expect(advice.unanswered).toEqual([]);
    }
    for (const off of [51, -61]) {
      const advice = trusting({ ...GIRTHS, shoulderLength: 122 + off });
      expect(advice.proposals).toEqual([]);
      expect(unanswered(advice)).toEqual([["shoulderLength", "littleRoom"]]);
    }
  });

  it("is a whole number of sixteenths of an inch on an inch tape, within the bound", () => {
    // 25 mm hold fifteen of 1.5875 mm; 40 mm are nearest to twenty-five.
    const [proposal] = trusting({ ...GIRTHS, shoulderLength: 162 }, { unit: "in" }).proposals;
    expect(proposal?.amount).toBeCloseTo(15 * 1.5875, 3);
    expect(proposal?.missing).toBeCloseTo(10 * 1.5875, 3);
    // 30 mm hold eighteen; 50 mm are nearest to thirty-one.
    const [less] = trusting({ ...GIRTHS, shoulderLength: 72 }, { unit: "in" }).proposals;
    expect(less?.amount).toBeCloseTo(-18 * 1.5875, 3);
    expect(less?.missing).toBeCloseTo(-13 * 1.5875, 3);
  });

  it("is nothing of the ends of bust darts where none stands upright, or where they would run off the piece", () => {
    const { proposals, unanswered: left } = trusting({ ...GIRTHS, bustPointWidth: 154 }, {}, "princessArmhole");
    expect(proposals).toEqual([]);
    expect(left.map(({ because }) => because)).toEqual(["notOnPieces"]);
    const far = trusting({ ...GIRTHS, bustPointWidth: 420 });
    expect(far.proposals).toEqual([]);
    expect(unanswered(far)).toEqual([["bustPointWidth", "noRoom"]]);
  });

  it("is all of it where something else that stands is refused", () => {
    const refused: Alteration = {
      kind: "dartEnd",
      id: "a",
      dart: { piece: "back", dart: "waistDart" },
      shorten: 0,
      across: 4000,
      hold: "mouth",
      giveBack: {},
    };
    const work = workOf({ ...GIRTHS, shoulderLength: 138 }, [refused]);
    expect(
      planOf(work)
        .ledger.filter(({ outcome }) => !outcome.ok)
        .map(({ id }) => id),
    ).toContain("a");
    expect(adviceOn(work).proposals).toMatchObject([{ altered: { fit: "shoulderWidth" }, amount: 16, missing: 0 }]);
  });

  it("leaves darts' ends alone where one proposal of several goes by her bust point", () => {
    const { proposals } = trusting({ ...BLOCK, sideNeckToBustPoint: 277, bustPointWidth: 154, shoulderLength: 138 });
    expect(proposals.map(keyOf).toSorted()).toEqual(["dartsOut", "shoulderWidth"]);
  });

  it("is told of each measure by itself", () => {
    const advice = trusting({
      ...GIRTHS,
      shoulderLength: 190,
      bustPointWidth: 420,
      acrossBack: 375,
      neckBaseGirth: 400,
    });
    expect(advice.proposals.map(keyOf)).toEqual(["backWidth"]);
    expect(unanswered(advice)).toEqual(
      expect.arrayContaining([
        ["shoulderLength", "littleRoom"],
        ["bustPointWidth", "noRoom"],
        ["neckBaseGirth", "noAlteration"],
      ]),
    );
    expect(advice.unanswered).toHaveLength(3);
    expect(advice.agreeing).toEqual([]);
  });
});

describe("doubted readings", () => {
  it("hold back what rests on them, and what is off by them, in the order of their doubt", () => {
    const advice = adviceOn(workOf({ ...BLOCK, backWaistLength: 300, shoulderLength: 144, neckBaseGirth: 395 }));
    expect(advice.heldBackBy).toEqual(["backWaistLength"]);
    expect(advice.proposals.map(keyOf)).toEqual(["shoulderWidth"]);
    expect(advice.unanswered.map(({ compared }) => compared.measure)).toEqual(["neckBaseGirth"]);
    expect(measuresOf(advice.agreeing)).not.toContain("backWaistLength");
  });

  it("of the frame hold back everything, of a girth that nothing rests on nothing", () => {
    const frame = adviceOn(workOf({ ...BLOCK, upperChestGirth: 1040, shoulderLength: 144 }));
    expect(frame.heldBackBy).toContain("upperChestGirth");
    expect(frame.proposals).toEqual([]);
    const hip = adviceOn(workOf({ ...BLOCK, hipGirth: 1400, shoulderLength: 144 }));
    expect([hip.heldBackBy, hip.proposals.map(keyOf)]).toEqual([[], ["shoulderWidth"]]);
  });
});
