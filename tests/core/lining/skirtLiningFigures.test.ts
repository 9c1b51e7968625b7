/**
 * What the lining of a skirt comes to, in numbers: on a waist of 740 (190 in front and 180 behind on each half) and a hip of 960,
 * 200 down. mm.
 */
import { describe, expect, it } from "vitest";
import type { Lining } from "../../../src/core/decisions/dress";
import type { LiningAsked } from "../../../src/core/lining/draftLining";
import type { LiningDraft } from "../../../src/core/lining/liningDraft";
import { stepNeeded } from "../../../src/core/lining/skirtLining";
import { pieceIn } from "../../../src/core/pattern/pieceSet";
import type { SkirtLevel } from "../../../src/core/skirts/skirtDraft";
import { body, closed, lined, madeOf, shellOf, waistOf } from "../../support/linings";

const of = (lining: Lining = {}, more: Partial<LiningAsked> = {}): LiningDraft =>
  madeOf(lined({ skirt: true, ...lining }, more));
const failureOf = (lining: Lining, more: Partial<LiningAsked> = {}): unknown => {
  const made = lined({ skirt: true, ...lining }, more);
  return made.ok ? null : made.failure;
};

const tan4 = Math.tan((4 * Math.PI) / 180);

describe("its figures", () => {
  it("are the shell's waist less what is free, the hip with its ease, and a hem that leans out by 4 degrees", () => {
    const { skirtFigures, beside } = of();
    expect(skirtFigures).toEqual({
      waist: 740 - 2 * 6,
      hip: expect.closeTo(1010, 6),
      hipLeast: 1010,
      hipDepth: 200,
      // 375 below the hip, in four quarters; to within half a millimetre.
      hem: expect.closeTo(1010 + 4 * 375 * tan4, 0),
      lengths: { front: expect.any(Number), side: 575, back: expect.any(Number) },
      free: { below: 205, beside: 6 },
    });
    expect(beside).toBe(6);
    expect(of({ hipEase: 30 }).skirtFigures).toMatchObject({
      hip: expect.closeTo(990, 6),
      hipLeast: 990,
      hem: expect.closeTo(990 + 4 * 375 * tan4, 0),
    });
    expect(of({ freeBeside: 9, freeBelow: 40 }).skirtFigures).toMatchObject({
      waist: 740 - 2 * 9,
      free: { below: 220, beside: 9 },
    });
  });

  it("have the hem that a step needs where it would lean out to less", () => {
    // 4 · 100 · tan 4° is 28 and the ease 10; a step wants 100 of what 100 is to 380, 26.3. At the knee and beyond it wants 100.
    expect(of({ hipEase: 10 }, { skirt: shellOf(325) }).skirtFigures?.hem).toBeCloseTo(970 + 400 * tan4, 0);
    expect(of({ hipEase: 0 }, { skirt: shellOf(325) }).skirtFigures?.hem).toBeCloseTo(960 + 400 * tan4, 0);
    expect(
      of({ hipEase: -20 }, { skirt: shellOf(605), waist: waistOf({ front: 150, back: 150 }) }).skirtFigures?.hem,
    ).toBeCloseTo(1060, 0);
  });

  it("of a step are in proportion to what lies below the hip, to the knee 380 below it", () => {
    expect([-50, 0, 38, 380, 381].map((belowHip) => stepNeeded(900, belowHip))).toEqual([900, 900, 910, 1000, 1000]);
  });
});

describe("what she should know of it", () => {
  const codes = (draft: LiningDraft): readonly string[] => draft.notes.map(({ code }) => code);

  it("is a hem too narrow by half a millimetre and more", () => {
    // 575 long, 375 below the hip: 960 + 100 · 375 / 380 is 1058.68.
    const at = (hemGirth: number): LiningDraft => of({ hemGirth });
    expect(codes(at(1300))).toEqual(["lining/over-hips"]);
    const narrow = at(1020);
    expect(narrow.notes).toEqual([
      expect.objectContaining({ code: "lining/over-hips" }),
      { code: "lining/no-step", girth: narrow.skirtFigures?.hem, needed: expect.closeTo(1058.684, 2) },
    ]);
    for (const hemGirth of [1057, 1057.5, 1058, 1058.5, 1059, 1060]) {
      const draft = at(hemGirth);
      const hem = draft.skirtFigures?.hem ?? 0;
      expect(Math.abs(hem - hemGirth)).toBeLessThan(0.5);
      expect(codes(draft).includes("lining/no-step")).toBe(hem < 1058.184);
    }
  });

  it("is that it is longer than its shell, by how much", () => {
    expect(of({ shorter: -12 }).notes.slice(1)).toEqual([{ code: "lining/longer-than-skirt", by: 12 }]);
    expect(codes(of({ shorter: 0 }))).toEqual(["lining/over-hips"]);
    expect(codes(of({ shorter: 1 }))).toEqual(["lining/over-hips"]);
  });
});

/** Even between two levels. */
const girthAt = (levels: readonly SkirtLevel[], below: number): number => {
  const after = levels.findIndex((level) => level.below >= below);
  const [one, other] = [levels[after - 1], levels[after]];
  if (other === undefined) return NaN;
  if (one === undefined) return other.girth;
  return one.girth + ((below - one.below) / (other.below - one.below)) * (other.girth - one.girth);
};

/** The least loop, sought by tenths of a millimetre: round it there, and twice down to where it is shut. */
const leastLoop = (levels: readonly SkirtLevel[], end: number, hips: number): number => {
  let least = Infinity;
  for (let at = 0; at <= 10 * hips; at += 1)
    least = Math.min(least, girthAt(levels, at / 10) + 2 * Math.max(0, end - at / 10));
  return least;
};

describe("getting over the hips", () => {
  const read = (more: Partial<LiningAsked>, lining: Lining = {}) => {
    const draft = of(lining, more);
    const [note] = draft.notes;
    return { draft, lets: note?.code === "lining/over-hips" ? note.lets : NaN, note };
  };

  it("goes through the least loop down to her hip line, and wants 20 more than her hip", () => {
    const all = Array.from({ length: 13 }, (_, at) => 15 * at).map((belowWaist) => {
      const { lets, note, draft } = read({ closure: closed("centreBack", belowWaist) });
      expect(note).toEqual({ code: "lining/over-hips", lets, needed: 980, passes: lets >= 980 });
      const hips = pieceIn(draft.skirt[0], "skirtBack").points.centreHip?.at.y ?? NaN;
      expect(lets).toBeCloseTo(leastLoop(draft.levels, belowWaist + 25, hips), 1);
      return lets;
    });
    expect(all).toEqual(all.toSorted((a, b) => a - b));
    // Some lie between what passes and what would without the 20, or with 20 less.
    expect(all.filter((lets) => lets > 940 && lets < 980).length).toBeGreaterThan(0);
    expect(all.filter((lets) => lets >= 980).length).toBeGreaterThan(0);
  });

  it("beside a zip in the side goes by the side, 200 down", () => {
    for (const belowWaist of [60, 120, 200, 230]) {
      const { lets, draft } = read({ closure: closed("side", belowWaist) });
      expect(lets).toBeCloseTo(leastLoop(draft.levels, belowWaist + 25, 200), 1);
    }
  });

  it("goes lower at a back that hangs longer, to where her hip line lies there", () => {
    // Without the ease the tightest is the hip line itself once it is open that far.
    const toFloor = { front: 1000, side: 1010, back: 1050 };
    const { lets, draft } = read(
      { skirt: shellOf(590, 600, 640), body: { ...body, toFloor }, closure: closed("centreBack", 250) },
      { hipEase: 0, freeBeside: 0 },
    );
    expect(draft.skirtFigures?.lengths).toEqual({ front: 565, side: 575, back: 615 });
    // 240 down; open to 275.
    expect(lets).toBeCloseTo(leastLoop(draft.levels, 275, 240), 1);
    expect(lets).toBeLessThan(leastLoop(draft.levels, 275, 200) - 1);
  });
});

describe("its levels", () => {
  it("are what goes round, less the gap beside the zip, which closes evenly to where the V ends", () => {
    const [open, whole] = [of(), of({ freeBeside: 0 })].map(({ levels }) => levels);
    expect(whole?.map(({ below }) => below)).toEqual(open?.map(({ below }) => below));
    expect(open?.map(({ below }) => below)).toContain(205);
    expect(whole?.map(({ girth }, at) => girth - (open?.[at]?.girth ?? NaN))).toEqual(
      open?.map(({ below }) => expect.closeTo(below < 205 ? 12 * (1 - below / 205) : 0, 6)),
    );
    expect(open?.[0]).toEqual({ below: 0, girth: 728 });
    // The level that the V ends on is even between its neighbours.
    const without = whole?.filter(({ below }) => below !== 205) ?? [];
    expect(whole?.find(({ below }) => below === 205)?.girth).toBeCloseTo(girthAt(without, 205), 6);
    expect(open?.at(-1)?.below).toBeCloseTo(of().skirtFigures?.lengths.back ?? NaN, 6);
    expect(open?.at(-1)?.girth).toBeCloseTo(of().skirtFigures?.hem ?? NaN, 6);
  });

  it("are those along the seam that opens; no more of them where the V ends on one, or below the hem", () => {
    const [side] = [of({}, { closure: closed("side", 175) })];
    // Her hip line is one of them, 200 down the side, and so is the end of a V that goes there.
    expect(side?.levels.filter(({ below }) => Math.abs(below - 200) < 1e-6)).toHaveLength(1);
    expect(new Set(side?.levels.map(({ below }) => below.toFixed(6))).size).toBe(side?.levels.length);
    const deep = of({}, { closure: closed("side", 900) });
    expect(deep.levels.at(-1)?.below).toBe(575);
  });
});

describe("what cannot be lined", () => {
  it("is told by name, with its numbers", () => {
    expect(failureOf({}, { body: { ...body, hip: null } })).toEqual({ code: "lining/hip-missing" });
    // 60 below the hip at the least.
    expect(failureOf({}, { skirt: shellOf(284) })).toEqual({ code: "lining/too-short", length: 259, least: 260 });
    expect(failureOf({}, { skirt: shellOf(285) })).toBeNull();
    expect(failureOf({ hipEase: 40 }, { body: { ...body, hip: 680 } })).toEqual({
      code: "lining/waist-over-hip",
      waist: 740,
      hip: 720,
    });
    // Hanging level, its centre is lifted or lowered by as much as lies 60 below the waist and more: 50 of 110.
    const levelled = (front: number, back: number): unknown =>
      failureOf(
        {},
        {
          skirt: shellOf(front, 600, back),
          body: { ...body, hipDepth: 110, toFloor: { front: 1000, side: 1000, back: 1000 } },
        },
      );
    expect(levelled(650, 550)).toBeNull();
    expect(levelled(650.1, 600)).toEqual({ code: "lining/too-long", length: 625.1, most: 625 });
    expect(levelled(600, 655)).toEqual({ code: "lining/too-long", length: 630, most: 625 });
    expect(levelled(600, 549)).toEqual({ code: "lining/too-short", length: 524, least: 525 });
    // (1160 + 50 − 740) / 4 − 22 in three.
    expect(failureOf({}, { body: { ...body, hip: 1160 } })).toEqual({
      code: "lining/darts-too-wide",
      intake: expect.closeTo(95.5 / 3, 6),
      most: 30,
    });
  });
});

describe("its pieces", () => {
  it("are the very same twice where the halves are alike, and each its own where they are not", () => {
    const alike = of().skirt;
    expect(alike[1]).toBe(alike[0]);
    const [left, right] = of({}, { waist: waistOf({ front: 190, back: 180 }, { front: 200, back: 180 }) }).skirt;
    expect(right).not.toEqual(left);
    for (const half of [left, right]) expect(half.skirtBack?.points.cut1?.at.y).toBeCloseTo(205, 3);
    const [open, shut] = of({}, { closure: closed("side", 180) }).skirt;
    expect(open.skirtFront?.points.cut1).toBeDefined();
    expect(shut.skirtFront?.points.cut1).toBeUndefined();
    expect([open.skirtFront?.centreOnFold, open.skirtBack?.centreOnFold]).toEqual([true, true]);
    expect([left.skirtFront?.centreOnFold, left.skirtBack?.centreOnFold]).toEqual([true, false]);
  });
});
