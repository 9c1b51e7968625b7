/** What is told as her body's and what as a pattern's, worked out by hand over garments made up for it. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { planOf } from "../../../src/core/plan/planOf";
import { workFromBase } from "../../../src/core/standing/fromBase";
import { basesOf, isOfWearer, keptGarments, type FoundWork } from "../../../src/core/standing/keptGarments";
import { forgottenKey, learntFrom } from "../../../src/core/standing/learnt";
import { proposalsOf } from "../../../src/core/proposals/proposals";
import { tapesOf } from "../../../src/core/measures/tape";
import { standingAlterations, standingOffers } from "../../../src/core/standing/standing";
import { parseWork } from "../../../src/document/workFile";
import { sampleWork } from "../../support/sampleWork";

const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: half === undefined ? `fit-${name}` : `fit-${name}-${half}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});

/** A body of which only girths were taken, so that nothing is asked for by the tape. */
const plain: Work = {
  ...sampleWork,
  wearer: "Ada",
  tapes: [{ readings: { bustGirth: [930], waistGirth: [738], hipGirth: [985] } }],
  alterations: [],
  picks: {},
};
const onPattern = (name: string, work: Work = plain): Work => ({ ...work, pattern: { ...work.pattern, name } });

/** A garment that was sewn so, and kept. */
function garment(id: string, pattern: string, ...alterations: readonly Alteration[]): FoundWork {
  const work = run(
    onPattern(pattern, { ...plain, name: `Dress ${id}`, alterations }),
    { kind: "beginTrial", id: `trial ${id}`, day: "2026-11-20" },
    { kind: "setVerdict", trial: `trial ${id}`, verdict: "keep" },
  );
  return { id, work };
}

const standing = (...found: readonly FoundWork[]) => standingAlterations(keptGarments(found));
const planned = (work: Work) => {
  const plan = planOf(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
};
const offersOn = (work: Work, ...found: readonly FoundWork[]) =>
  standingOffers(standing(...found), work, planned(work));

describe("kept garments", () => {
  it("are those of one wearer by name, or of the very same work; nobody's are nobody else's", () => {
    const of = (id: string, wearer?: string): FoundWork => {
      const { wearer: _gone, ...work } = plain;
      return { id, work: wearer === undefined ? work : { ...work, wearer } };
    };
    expect(isOfWearer(of("a", "Ada"), of("b", " ada "))).toBe(true);
    expect(isOfWearer(of("a", "Ada"), of("b", "Bea"))).toBe(false);
    expect(isOfWearer(of("a"), of("b"))).toBe(false);
    expect(isOfWearer(of("a"), of("a"))).toBe(true);
  });

  it("are one of each work, its newest that is kept, and a copy of a work is no second garment", () => {
    const first = garment("a", "One", fit("swayBack", 10));
    const copy = { id: "b", work: { ...first.work, name: "Dress a (copy)" } };
    const open = run(first.work, { kind: "beginTrial", id: "later", day: "2026-11-24" });
    const kept = keptGarments([{ id: "a", work: open }, copy, { id: "c", work: plain }]);
    expect(kept.map(({ trial, name }) => [trial.id, name])).toEqual([["trial a", "Dress a"]]);
  });

  it("are kept as sewn: nothing that was taken, changed, or sewn and still open after it counts", () => {
    const based = run(
      garment("a", "One", fit("swayBack", 10)).work,
      { kind: "setBase", trial: "trial a", isBase: true },
      {
        kind: "takeTrialAnswer",
        trial: "trial a",
        answer: { causes: ["swayBack"], because: [], alterations: ["fit-swayBack"] },
        alterations: [fit("swayBack", 14)],
      },
      { kind: "beginTrial", id: "later", day: "2026-11-24" },
      { kind: "putAlteration", alteration: fit("swayBack", 20) },
      { kind: "setMeasure", measure: "waistGirth", value: 700 },
      { kind: "setStyle", style: "princessShoulder" },
    );
    const [garmentKept, ...others] = keptGarments([{ id: "a", work: based }]);
    expect(others).toEqual([]);
    expect(garmentKept?.kept.alterations).toEqual([fit("swayBack", 10)]);
    const [base] = basesOf(based);
    const dress = base === undefined ? undefined : workFromBase(based, base, "Next");
    expect(dress?.alterations).toEqual([fit("swayBack", 10)]);
    expect(dress?.tapes).toEqual(plain.tapes);
    expect(dress?.pattern.style).toBe(plain.pattern.style);
    // The next one that is kept takes its place.
    const next = run(based, { kind: "setVerdict", trial: "later", verdict: "keep" });
    expect(keptGarments([{ id: "a", work: next }]).map(({ kept }) => kept.alterations)).toEqual([
      [fit("swayBack", 14)],
    ]);
  });

  it("have their halves as they were sewn, and so has a dress begun from them", () => {
    const uneven = [fit("shoulderSlope", 8, "left"), fit("shoulderSlope", 3, "right"), fit("swayBack", 10)];
    const { work } = garment("a", "One", ...uneven);
    const mended = run(work, { kind: "putAlteration", alteration: fit("shoulderSlope", 5) });
    const [trial] = mended.trials ?? [];
    const dress = trial === undefined ? undefined : workFromBase(mended, trial, "Next");
    expect(dress?.alterations).toEqual(uneven);
    expect(standing({ id: "a", work: mended }).carried.map(({ key, amount }) => [key, amount])).toEqual([
      ["swayBack", 10],
      ["shoulderSlope left", 8],
      ["shoulderSlope right", 3],
    ]);
  });
});

describe("what her body always asked for", () => {
  it("carries what is of the body with the mean of its amounts, and tells in how many garments it was right", () => {
    const { carried, blamed } = standing(
      garment("a", "One", fit("swayBack", 10)),
      garment("b", "Two", fit("swayBack", 15)),
      garment("c", "Two"),
    );
    expect(carried).toEqual([
      { key: "swayBack", fit: "swayBack", amount: 13, least: 10, most: 15, garments: 2, patterns: 2, of: 3 },
    ]);
    expect(blamed).toEqual([]);
  });

  it("leaves with the pattern what only its edges were to blame for, until two patterns were altered alike", () => {
    const one = garment("a", "One", fit("necklineGape", 8));
    expect(standing(one, garment("b", "One", fit("necklineGape", 8))).carried).toEqual([]);
    expect(standing(one).blamed.map(({ key }) => key)).toEqual(["necklineGape"]);
    expect(standing(one, garment("b", "Two", fit("necklineGape", 8))).carried.map(({ key }) => key)).toEqual([
      "necklineGape",
    ]);
  });

  it("carries nothing that fewer than half needed, or that went one way and the other", () => {
    const rare = standing(garment("a", "One", fit("forwardShoulder", 8)), garment("b", "Two"), garment("c", "Three"));
    expect(rare.carried).toEqual([]);
    const both = standing(garment("a", "One", fit("shoulderSlope", 6)), garment("b", "Two", fit("shoulderSlope", -6)));
    expect(both.carried).toEqual([]);
    expect(both.blamed.map(({ key }) => key)).toEqual(["shoulderSlope"]);
  });

  it("keeps the halves apart where they were", () => {
    const { carried } = standing(
      garment("a", "One", fit("shoulderSlope", 8, "left")),
      garment("b", "Two", fit("shoulderSlope", 6, "left"), fit("shoulderSlope", 2, "right")),
    );
    expect(carried.map(({ key, half, amount, garments }) => [key, half, amount, garments])).toEqual([
      ["shoulderSlope left", "left", 7, 2],
      ["shoulderSlope right", "right", 2, 1],
    ]);
  });

  // 20 across the back neck is 10 on each half; 6 on the left alone are 6 there.
  it("counts half of an amount all round on each half, and the whole where the halves are alike", () => {
    const all = garment("a", "One", fit("backNeckGape", 20));
    const apart = standing(all, garment("b", "Two", fit("backNeckGape", 6, "left")));
    expect([...apart.carried, ...apart.blamed].map(({ key, amount, garments }) => [key, amount, garments])).toEqual([
      ["backNeckGape left", 8, 2],
      ["backNeckGape right", 10, 1],
    ]);
    const each = garment("b", "Two", fit("backNeckGape", 8, "left"), fit("backNeckGape", 8, "right"));
    expect(standing(all, each).carried.map(({ key, amount, least, most }) => [key, amount, least, most])).toEqual([
      ["backNeckGape", 18, 16, 20],
    ]);
  });

  it("carries no length or width, which is made anew by her measures", () => {
    const { carried, anew } = standing(garment("a", "One", fit("lengthBelowBust", -15)));
    expect(carried).toEqual([]);
    expect(anew.map(({ key, amount }) => [key, amount])).toEqual([["lengthBelowBust", -15]]);
  });
});

describe("what is offered on a new pattern", () => {
  const sway = garment("a", "One", fit("swayBack", 12));
  const fresh = onPattern("Another");

  it("is put by one command, and then stands", () => {
    const [offer] = offersOn(fresh, sway);
    expect(offer).toMatchObject({ state: "offered", standing: { key: "swayBack", amount: 12 } });
    if (offer === undefined) return;
    const put = run(fresh, offer.command);
    expect(put.alterations).toEqual([fit("swayBack", 12)]);
    expect(offersOn(put, sway).map(({ state }) => state)).toEqual(["stands"]);
  });

  it("stays left out in the work that it was left out of, until it is asked for again", () => {
    const left = run(fresh, { kind: "leaveStanding", key: "swayBack", isLeft: true });
    expect(parseWork(left)).toEqual({ ok: true, value: left });
    expect(offersOn(left, sway).map(({ state }) => state)).toEqual(["left"]);
    const again = run(left, { kind: "leaveStanding", key: "swayBack", isLeft: false });
    expect(again).toEqual(fresh);
    expect(offersOn(again, sway).map(({ state }) => state)).toEqual(["offered"]);
  });

  it("is a length too where it was never taken, and none where the tape speaks", () => {
    const shorter = garment("a", "One", fit("lengthBelowBust", -15));
    expect(offersOn(fresh, shorter).map(({ standing: { key }, state }) => [key, state])).toEqual([
      ["lengthBelowBust", "offered"],
    ]);
    const measured = run(fresh, { kind: "setMeasure", measure: "backWaistLength", value: 405 });
    expect(offersOn(measured, shorter)).toEqual([]);
  });

  it("is put on its half alone", () => {
    const [offer] = offersOn(fresh, garment("a", "One", fit("shoulderSlope", 8, "left")));
    expect(offer && run(fresh, offer.command).alterations).toEqual([fit("shoulderSlope", 8, "left")]);
  });

  it("is not offered where it cannot be made: of a shift of the shoulder on straps there is nothing", () => {
    const cups = run(fresh, { kind: "setStyle", style: "midriff" });
    const offers = offersOn(cups, garment("a", "One", fit("forwardShoulder", 8)));
    expect(offers.map(({ state }) => state)).toEqual(["notOnPieces"]);
  });
});

describe("what her measures ask for", () => {
  it("is made anew against every pattern's own lengths, and never carried with the amount it had elsewhere", () => {
    // 20 mm shorter than the draft's 410 and 432 of its bust of 880, with a bust depth and widths that agree.
    const body: Work = {
      ...plain,
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
    const asked = (work: Work) =>
      proposalsOf(work, planned(work)).proposals.map(({ altered, amount }) => [
        altered.kind === "fit" ? altered.fit : altered.kind,
        amount,
      ]);
    const printing = (backWaist: number, frontWaist: number): Work => {
      const work = onPattern("Another", body);
      const lengths = { backWaistLength: { all: backWaist }, frontWaistLength: { all: frontWaist } };
      return { ...work, pattern: { ...work.pattern, lengths } };
    };
    expect(asked(onPattern("One", body))).toEqual([["lengthBelowBust", -20]]);
    const sewn = run(
      { ...onPattern("One", body), alterations: [fit("lengthBelowBust", -20)] },
      { kind: "beginTrial", id: "t", day: "2026-11-20" },
      { kind: "setVerdict", trial: "t", verdict: "keep" },
    );
    const found = { id: "a", work: sewn };
    // 24 mm between 390 and 414, 412 and 436; 20 mm the other way from 370 and 392; nothing where they are hers.
    for (const [work, amount] of [
      [printing(414, 436), -24],
      [printing(370, 392), 20],
      [printing(390, 412), 0],
    ] as const) {
      expect(asked(work)).toEqual(amount === 0 ? [] : [["lengthBelowBust", amount]]);
      expect(offersOn(work, found)).toEqual([]);
    }
  });
});

describe("how she likes her garments", () => {
  it("is the mean of those kept, and of none that is forgotten", () => {
    const garments = keptGarments([garment("a", "One"), garment("b", "Two", fit("sideSeamWaist", 6))]);
    const [a, b] = garments.map(({ kept }) => {
      const plan = planOf(kept);
      const waist = plan.ok ? plan.value.levels.find(({ level }) => level === "waist") : undefined;
      return waist === undefined ? Number.NaN : waist.finished - waist.body;
    });
    const waistOf = (forgotten: readonly string[]) =>
      learntFrom(garments, forgotten).ease.find(({ level }) => level === "waist");
    expect(a).not.toBe(b);
    expect(waistOf([])).toEqual({ level: "waist", ease: Math.round(((a ?? 0) + (b ?? 0)) / 2), garments: 2 });
    const [first] = garments;
    if (first === undefined) return;
    expect(waistOf([forgottenKey("ease", first)])).toEqual({ level: "waist", ease: Math.round(b ?? 0), garments: 1 });
    expect(waistOf(garments.map((one) => forgottenKey("ease", one)))).toBeUndefined();
    expect(learntFrom(garments, [forgottenKey("ease", first)]).dartEnds).toEqual(learntFrom(garments, []).dartEnds);
  });

  it("tells where darts end as the plan reads them", () => {
    const garments = keptGarments([garment("a", "One")]);
    const plan = planned(garments[0]?.kept ? { ...plain, ...garments[0].kept } : plain);
    const read = plan.left.darts.flatMap(({ ref, drawn: { end } }) =>
      end === null
        ? []
        : [{ dart: ref, along: Math.round(end.along), across: Math.round(end.across) + 0, garments: 1 }],
    );
    expect(read.length).toBeGreaterThan(0);
    expect(learntFrom(garments, []).dartEnds).toEqual(read);
  });
});

describe("a dress begun from a base", () => {
  it("has body, alterations and pattern, no trials, and tells what it was begun from", () => {
    const { work } = garment("a", "One", fit("swayBack", 12));
    const based = run(work, { kind: "setBase", trial: "trial a", isBase: true });
    const [base] = basesOf(based);
    if (base === undefined) throw new Error("no base");
    const dress = workFromBase(based, base, "Second dress");
    expect(dress).toEqual({
      ...onPattern("One"),
      name: "Second dress",
      alterations: [fit("swayBack", 12)],
      begunFrom: { name: "Dress a", day: "2026-11-20" },
    });
    expect(parseWork(dress)).toEqual({ ok: true, value: dress });
    // It follows from the very same decisions: nothing is planned afresh.
    expect(dress.pattern).toBe(base.sewn.pattern);
  });

  it("has the neckline that the base was sewn with, and what was measured of her since; no skirt that was chosen since", () => {
    const sewn = run(
      onPattern("One"),
      { kind: "setDress", part: "neckline", value: { shape: "scoop", deeper: 20 } },
      { kind: "beginTrial", id: "one", day: "2026-11-20" },
      { kind: "setVerdict", trial: "one", verdict: "keep" },
      { kind: "setBase", trial: "one", isBase: true },
      { kind: "setDress", part: "neckline", value: { shape: "vee" } },
      { kind: "setDress", part: "skirt", value: { kind: "tiers" } },
      { kind: "setDress", part: "measures", value: { waistToHip: 205 } },
    );
    const [base] = basesOf(sewn);
    if (base === undefined) throw new Error("no base");
    const dress = workFromBase(sewn, base, "Next");
    expect(dress.dress).toEqual({ neckline: { shape: "scoop", deeper: 20 }, measures: { waistToHip: 205 } });
    expect(parseWork(dress)).toEqual({ ok: true, value: dress });
    // What the new edge takes off is no wrong shoulder: nothing of her tape is offered against it.
    expect(planned(dress).left.neckline).toMatchObject({ ok: true });
    const plainly = workFromBase(sewn, { ...base, sewn: { ...base.sewn, dress: {} } }, "Next");
    expect(proposalsOf(dress, planned(dress))).toEqual(proposalsOf(plainly, planned(plainly)));
  });

  it("is begun from none that is not kept, whatever a file says", () => {
    const { work } = garment("a", "One");
    const [trial] = work.trials ?? [];
    if (trial === undefined) throw new Error("no trial");
    const { verdict: _kept, ...open } = trial;
    expect(basesOf({ ...work, trials: [{ ...trial, base: true }] })).toHaveLength(1);
    expect(basesOf({ ...work, trials: [{ ...open, base: true }] })).toEqual([]);
    expect(basesOf({ ...work, trials: [{ ...open, verdict: "again", base: true }] })).toEqual([]);
  });
});
