/** What a work is offered of what stands, over standings made up by hand: each state, and both sides of each boundary. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { PrintedLength } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { standingAlterations, standingOffers, type Standing } from "../../../src/core/standing/standing";
import type { KeptGarment } from "../../../src/core/standing/keptGarments";
import { planOf, testWork } from "../../support/works";

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: half === undefined ? `fit-${name}` : `fit-${name}-${half}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});

const stands = (name: FitName, amount: number, more: Partial<Standing> = {}): Standing => ({
  key: more.half === undefined ? name : `${name} ${more.half}`,
  fit: name,
  amount,
  least: amount,
  most: amount,
  garments: 1,
  patterns: 1,
  of: 1,
  ...more,
});

/** Girths alone, so that nothing is asked for by the tape. */
const girths = { bustGirth: 905, waistGirth: 752, hipGirth: 1034 };
const plain: Work = { ...testWork, tapes: tapesOf(girths) };

const offered = (work: Work, carried: readonly Standing[], anew: readonly Standing[] = []) =>
  standingOffers({ garments: 1, carried, anew, blamed: [] }, work, planOf(work));
const states = (work: Work, ...carried: readonly Standing[]) => offered(work, carried).map(({ state }) => state);
const having = (...alterations: readonly Alteration[]): Work => ({ ...plain, alterations });

describe("an offer", () => {
  it("says what stands, how it is with it, and what puts it, on its half", () => {
    const [both, left] = [stands("swayBack", 12), stands("shoulderSlope", 6, { half: "left" })];
    expect(offered(plain, [both, left])).toEqual([
      { standing: both, state: "offered", command: { kind: "putAlteration", alteration: fit("swayBack", 12) } },
      {
        standing: left,
        state: "offered",
        command: { kind: "putAlteration", alteration: fit("shoulderSlope", 6, "left") },
      },
    ]);
  });

  it("stands already where something of it is made on a half that it would be made on, whatever the amount", () => {
    const halves = [undefined, "left", "right"] as const;
    const table = halves.map((there) =>
      halves.map((asked) => {
        const [state] = states(
          having(fit("shoulderSlope", 5, there)),
          stands("shoulderSlope", 6, asked === undefined ? {} : { half: asked }),
        );
        return state === "stands";
      }),
    );
    expect(table).toEqual([
      [true, true, true],
      [true, true, false],
      [true, false, true],
    ]);
    expect(states(having(fit("roundBack", 5)), stands("swayBack", 12))).toEqual(["offered"]);
  });

  // Common practice, no source: under 3 mm nobody alters.
  it("is for nothing where a hand would not alter by so little, either way", () => {
    const amounts = [2, 3, -2, -3].map((amount) => stands("shoulderSlope", amount));
    expect(states(plain, ...amounts)).toEqual(["notOnPieces", "offered", "notOnPieces", "offered"]);
  });

  it("is for nothing on pieces that have not what it is made on", () => {
    expect(states(plain, stands("strapWidth", 6), stands("bandDepth", 6))).toEqual(["notOnPieces", "notOnPieces"]);
  });

  it("is not made where it would be left out itself; what is left out anyway is nothing against another", () => {
    expect(states(plain, stands("shoulderSlope", 400))).toEqual(["notMade"]);
    const refused = having(fit("shoulderSlope", 400));
    expect(planOf(refused).ledger.filter(({ outcome }) => !outcome.ok)).toHaveLength(1);
    expect(states(refused, stands("swayBack", 12), stands("lengthBasque", 4000))).toEqual(["offered", "notMade"]);
  });

  it("is asked for by the tape where her measures ask for the same, and left out where she leaves it out", () => {
    // 20 mm shorter than the draft's 410 and 432 of its bust of 880, with a bust depth and widths that agree.
    const short: Work = {
      ...testWork,
      tapes: tapesOf({
        bustGirth: 880,
        upperChestGirth: 830,
        waistGirth: 700,
        hipGirth: 940,
        sideNeckToBustPoint: 265,
        backWaistLength: 390,
        frontWaistLength: 412,
      }),
    };
    const below = stands("lengthBelowBust", -15);
    expect(states(short, below, stands("lengthAboveBust", -15))).toEqual(["measured", "offered"]);
    const left: Work = { ...short, standingLeft: ["lengthBelowBust", "swayBack"] };
    expect(states(left, below, stands("swayBack", 12), stands("roundBack", 12))).toEqual([
      "measured",
      "left",
      "offered",
    ]);
    expect(states({ ...left, alterations: [fit("swayBack", 3)] }, stands("swayBack", 12))).toEqual(["stands"]);
  });
});

describe("a length or a width of which the measure was never taken", () => {
  /** Which reading tells each (common practice, no source: a length by those it is part of, a width by itself). */
  const TOLD_BY: readonly (readonly [FitName, readonly PrintedLength[]])[] = [
    ["lengthAboveBust", ["backWaistLength", "frontWaistLength"]],
    ["lengthBelowBust", ["backWaistLength", "frontWaistLength"]],
    ["bandDepth", ["backWaistLength", "frontWaistLength"]],
    ["chestWidth", ["acrossFront"]],
    ["backWidth", ["acrossBack"]],
    ["strapLength", ["sideNeckToBustPoint"]],
    ["shoulderWidth", ["shoulderLength"]],
    ["sideSeamUnderBust", ["underBustGirth"]],
  ];
  // So little that nothing need be planned to know that it is not made.
  const anew = TOLD_BY.map(([name]) => stands(name, 1));
  const plan = planOf(plain);
  const keys = (tapes: Work["tapes"], some: readonly Standing[] = anew) =>
    standingOffers({ garments: 1, carried: [], anew: some, blamed: [] }, { ...plain, tapes }, plan).map(
      ({ standing: { key } }) => key,
    );

  it("is offered, after what is carried, until that very measure is there", () => {
    const all = TOLD_BY.map(([name]) => name);
    expect(keys(plain.tapes)).toEqual(all);
    const taken = {
      backWaistLength: 400,
      frontWaistLength: 420,
      acrossFront: 320,
      acrossBack: 350,
      sideNeckToBustPoint: 265,
      shoulderLength: 120,
      underBustGirth: 780,
      neckBaseGirth: 370,
    } as const;
    for (const [measure, value] of Object.entries(taken))
      expect(keys(tapesOf({ ...girths, [measure]: value }))).toEqual(
        TOLD_BY.filter(([, by]) => !by.some((one) => one === measure)).map(([name]) => name),
      );
    expect(offered(plain, [stands("swayBack", 1)], anew.slice(0, 1)).map(({ standing: { fit: of } }) => of)).toEqual([
      "swayBack",
      "lengthAboveBust",
    ]);
  });

  it("is offered where half of the garments had it, one way", () => {
    const one = (more: Partial<Standing>) => keys(plain.tapes, [stands("chestWidth", 4, more)]);
    expect(one({ garments: 1, of: 2 })).toEqual(["chestWidth"]);
    expect(one({ garments: 1, of: 3 })).toEqual([]);
    expect(one({ least: -4, most: 6, garments: 2, of: 2 })).toEqual([]);
    expect(one({ least: -6, most: -4, garments: 2, of: 2 })).toEqual(["chestWidth"]);
  });
});

describe("what stands of garments that fit", () => {
  const kept = (pattern: Partial<Work["pattern"]>, ...alterations: readonly Alteration[]): KeptGarment => ({
    workId: "",
    name: "",
    trial: { id: "", sewn: plain, observations: [] },
    kept: { ...plain, alterations, pattern: { ...plain.pattern, ...pattern } },
  });
  const told = (...garments: readonly KeptGarment[]) => {
    const { carried, anew, blamed } = standingAlterations(garments);
    return [carried, anew, blamed].map((some) => some.map(({ key }) => key));
  };

  it("is nothing of no garments", () => {
    expect(standingAlterations([])).toEqual({ garments: 0, carried: [], anew: [], blamed: [] });
  });

  it("is carried from half of the garments on, one way, and blamed on the pattern else", () => {
    const [has, not] = [kept({}, fit("swayBack", 8)), kept({})];
    expect(told(has, not)).toEqual([["swayBack"], [], []]);
    expect(told(has, not, not)).toEqual([[], [], ["swayBack"]]);
    expect(told(has, kept({}, fit("swayBack", -8)))).toEqual([[], [], ["swayBack"]]);
  });

  it("takes for another pattern one of another name, style or chart, and not one otherwise closed", () => {
    const gape = fit("necklineGape", 8);
    const one = kept({}, gape);
    const chart = { ...plain.pattern.chart, draftedDifference: 60 };
    const closure = { place: "side", belowWaist: 150 } as const;
    const patterns = (pattern: Partial<Work["pattern"]>) =>
      [...standingAlterations([one, kept(pattern, gape)]).carried].map(({ patterns: count }) => count);
    expect(patterns({ name: "Another" })).toEqual([2]);
    expect(patterns({ style: "princessArmhole" })).toEqual([2]);
    expect(patterns({ chart })).toEqual([2]);
    expect(patterns({ closure })).toEqual([]);
    expect(told(one, kept({ closure }, gape))).toEqual([[], [], ["necklineGape"]]);
    // The third is of the first's pattern, the fourth has nothing of it.
    expect(standingAlterations([one, kept({ name: "B" }, gape), one, kept({ name: "C" })]).carried).toEqual([
      stands("necklineGape", 8, { garments: 3, patterns: 2, of: 4 }),
    ]);
  });

  it("adds up what an older work has for both halves and for one besides, and halves what is all round", () => {
    // On the left 5 + 3, on the right 5; in the second 6 on each.
    const { carried } = standingAlterations([
      kept({}, fit("shoulderSlope", 5), fit("shoulderSlope", 3, "left")),
      kept({ name: "B" }, fit("shoulderSlope", 6)),
    ]);
    expect(carried).toEqual([
      stands("shoulderSlope", 7, { half: "left", least: 6, most: 8, garments: 2, patterns: 2, of: 2 }),
      // (5 + 6) / 2, to the whole mm above.
      stands("shoulderSlope", 6, { half: "right", least: 5, most: 6, garments: 2, patterns: 2, of: 2 }),
    ]);
    const round = standingAlterations([kept({}, fit("chestWidth", 12))]);
    // Made anew, so neither carried nor blamed.
    expect(round).toStrictEqual({ garments: 1, carried: [], anew: [stands("chestWidth", 12)], blamed: [] });
    expect(standingAlterations([kept({}, fit("chestWidth", 6, "right"))]).anew).toEqual([
      stands("chestWidth", 6, { half: "right" }),
    ]);
  });
});
