/** Means over garments and halves, worked out from their plans; what a new work takes over, part by part. */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Decided } from "../../../src/core/decisions/decided";
import type { Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { workFromBase } from "../../../src/core/standing/fromBase";
import { basesOf, keptGarments, type KeptGarment } from "../../../src/core/standing/keptGarments";
import { forgottenKey, learntFrom } from "../../../src/core/standing/learnt";
import { isSameDart } from "../../../src/core/pattern/piece";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const waistDart = ref("front", "waistDart");
const end = (shorten: number, half?: "left"): Alteration => ({
  kind: "dartEnd",
  id: "end",
  dart: waistDart,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...(half === undefined ? {} : { half }),
});
const kept = (decided: Decided, id = "one"): KeptGarment => ({
  workId: id,
  name: id,
  trial: { id, sewn: decided, observations: [] },
  kept: decided,
});
const endOf = (work: Work, half: "left" | "right"): number =>
  planOf(work)[half].darts.find(({ ref: of }) => isSameDart(of, waistDart))?.drawn.end?.along ?? Number.NaN;

describe("how she likes her garments", () => {
  it("is the ease of every level that a garment has: its finished girths less her body's", () => {
    // The demo blocks are blended to waist and hip, so those come out with the pattern's own ease of 40 and 50.
    const { ease } = learntFrom([kept(testWork)], []);
    expect(ease).toEqual([
      { level: "bust", ease: 80, garments: 1 },
      { level: "waist", ease: 40, garments: 1 },
      { level: "hip", ease: 50, garments: 1 },
    ]);
    const short: Work = { ...testWork, pattern: { ...testWork.pattern, length: "waist" } };
    const roomy: Work = { ...testWork, easeWanted: { waist: 61, hip: 70 } };
    // (40 + 40 + 61) / 3 = 47; the hip of two of them: (50 + 70) / 2 = 60.
    expect(learntFrom([kept(testWork), kept(short, "two"), kept(roomy, "three")], []).ease).toEqual([
      { level: "bust", ease: 80, garments: 3 },
      { level: "waist", ease: 47, garments: 3 },
      { level: "hip", ease: 60, garments: 2 },
    ]);
  });

  it("counts a garment with two halves once, by the mean of both, and darts by the garments that have them", () => {
    const uneven = withAlterations(end(14, "left"));
    const [left, right] = [endOf(uneven, "left"), endOf(uneven, "right")];
    // A dart shortened by 14 along its axis ends 14 further from the bust point.
    expect(left - right).toBeCloseTo(14, 6);
    const learnt = (...garments: readonly KeptGarment[]) =>
      learntFrom(garments, []).dartEnds.find(({ dart }) => isSameDart(dart, waistDart));
    expect(learnt(kept(uneven))).toMatchObject({ along: Math.round(right + 7), garments: 1 });
    // Half of 7: the even garment counts as much as both halves of the other.
    expect(learnt(kept(uneven), kept(testWork, "two"))).toMatchObject({ along: Math.round(right + 3.5), garments: 2 });
    const princess: Work = { ...testWork, pattern: { ...testWork.pattern, style: "princessArmhole" } };
    const mixed = learntFrom([kept(princess), kept(testWork, "two")], []);
    expect(mixed.ease.map(({ garments }) => garments)).toEqual([2, 2, 2]);
    expect(mixed.dartEnds).toEqual(learntFrom([kept(testWork, "two")], []).dartEnds);
    expect(mixed.dartEnds.map(({ dart, garments }) => [dart.dart, garments])).toEqual([
      ["waistDart", 1],
      ["sideDart", 1],
    ]);
  });

  it("is nothing of garments that cannot be planned, or of none", () => {
    const { chart } = testWork.pattern;
    const broken: Work = { ...testWork, pattern: { ...testWork.pattern, chart: { ...chart, sizes: [] } } };
    expect(learntFrom([kept(broken)], [])).toEqual({ ease: [], dartEnds: [] });
    expect(learntFrom([kept(broken), kept(testWork, "two")], [])).toEqual(learntFrom([kept(testWork, "two")], []));
    expect(learntFrom([], [])).toEqual({ ease: [], dartEnds: [] });
  });

  it("forgets ease and darts' ends of a garment apart", () => {
    const [one, two] = [kept(testWork), kept(withAlterations(end(14)), "two")];
    expect(forgottenKey("dartEnds", two)).toBe("dartEnds two");
    const without = learntFrom([one, two], [forgottenKey("dartEnds", two)]);
    expect(without.dartEnds).toEqual(learntFrom([one], []).dartEnds);
    expect(without.ease.map(({ garments }) => garments)).toEqual([2, 2, 2]);
  });
});

describe("the garments of a wearer that fit", () => {
  it("are told with their work, and of a copied trial the first found", () => {
    const trial: Trial = { id: "t", sewn: testWork, observations: [], verdict: "keep" };
    const again: Trial = { ...trial, id: "u", verdict: "again" };
    const of = (id: string, name: string, ...trials: readonly Trial[]) => ({ id, work: { ...testWork, name, trials } });
    expect(keptGarments([of("a", "A", again, trial), of("b", "B", again), of("c", "C", trial)])).toEqual([
      { workId: "a", name: "A", trial, kept: testWork },
    ]);
  });
});

describe("the bases of a work", () => {
  it("are those that are kept and said to be one, the newest first", () => {
    const closed = (id: string, more: Partial<Trial> = {}): Trial => ({
      id,
      sewn: testWork,
      observations: [],
      verdict: "keep",
      ...more,
    });
    const [two, one] = [closed("two", { base: true }), closed("one", { base: true })];
    expect(basesOf({ ...testWork, trials: [closed("three"), two, closed("open", { verdict: "again" }), one] })).toEqual(
      [two, one],
    );
    expect(basesOf(testWork)).toEqual([]);
  });
});

describe("a work begun from a base", () => {
  const sewn: Decided = { ...testWork, picks: { baseSize: "14" } };
  const base: Trial = { id: "t", sewn, observations: [], verdict: "keep", base: true };

  it("has of the work its wearer, unit and papers, and all that was sewn; absent is what was absent", () => {
    const rich: Work = {
      ...testWork,
      wearer: "Ada",
      unit: "in",
      paper: "Letter",
      sheetFormat: "A3",
      printerMargin: 8,
      trials: [base],
      standingLeft: ["swayBack"],
      unread: { bust: "x" },
    };
    const { tapes, pattern, easeWanted, alterations } = testWork;
    const plainly: Decided = { tapes, pattern, easeWanted, alterations, picks: { baseSize: "14" } };
    const dated: Trial = { ...base, day: "2026-11-20", sewn: plainly };
    expect(workFromBase(rich, dated, "Next")).toStrictEqual({
      name: "Next",
      wearer: "Ada",
      invented: true,
      begunFrom: { name: "Test", day: "2026-11-20" },
      unit: "in",
      paper: "Letter",
      ...plainly,
      sheetFormat: "A3",
      printerMargin: 8,
      unread: {},
    });
    expect(workFromBase(testWork, { ...base, sewn: plainly }, "Next")).toStrictEqual({
      name: "Next",
      invented: true,
      begunFrom: { name: "Test" },
      unit: "cm",
      paper: "A4",
      ...plainly,
      unread: {},
    });
  });

  it("has what was measured of her since, also where nothing of a dress was sewn", () => {
    const measured: Work = { ...testWork, dress: { measures: { waistToHip: 205 }, zip: "lapped" } };
    expect(workFromBase(measured, base, "Next").dress).toEqual({ measures: { waistToHip: 205 } });
    const skirt = { ...base, sewn: { ...sewn, dress: { zip: "invisible" as const } } };
    expect(workFromBase(measured, skirt, "Next").dress).toEqual({ zip: "invisible", measures: { waistToHip: 205 } });
    expect(workFromBase({ ...testWork, dress: { zip: "lapped" } }, base, "Next").dress).toBeUndefined();
  });
});
