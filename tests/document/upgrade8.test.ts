/** Version 8 to 9: the rest of the dress may be there; a work without it stays as it was. */
import { describe, expect, it } from "vitest";
import { applyCommand } from "../../src/core/plan/commands";
import { mergeWorks } from "../../src/document/mergeWorks";
import { salvageWork } from "../../src/document/salvageWork";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { workFromBase } from "../../src/core/standing/fromBase";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";

const fileOf = (version: number, work: object): string => JSON.stringify({ bodicewright: "work", version, work });

const dress = {
  measures: {
    waistToHip: 205,
    waistToFloorFront: 1040,
    waistToFloorSide: 1045,
    waistToFloorBack: 1030,
    shoulderGirth: 1010,
  },
  skirt: {
    kind: "tiers",
    length: 700,
    peplumLength: 180,
    ratio: 1.6,
    tiers: [{ depth: 200 }, { ratio: 2, widths: 3 }],
    growing: true,
    tierCut: "wholeWidths",
    share: 0.5,
    peplumShare: 1,
    panels: 6,
    hipEase: 50,
    flare: 6,
    darts: true,
    vent: 200,
    hem: 30,
    pockets: true,
  },
  lining: {
    bodice: true,
    skirt: true,
    bodiceEase: 10,
    hipEase: 50,
    hemGirth: 1100,
    shorter: 25,
    freeBelow: 25,
    freeBeside: 6,
    shaping: "pleats",
  },
  neckline: { shape: "sweetheart", deeper: -10, wider: 12, backDeeper: 0, pinched: true },
  straps: { kind: "crossed", width: 12, braStrap: 10, ease: -5, elastic: true },
  edges: { neck: "facing", armhole: "binding", facingDepth: 60, bindingWidth: 8 },
  zip: "lapped",
  opacity: "sheer",
  under: "slip",
  cloths: { main: { width: 1400, length: 2200, oneWay: true, fold: false, shrinkage: 3 }, lining: {} },
} as const;

describe("a file of version 8", () => {
  it("opens as the work of today, with nothing decided of the rest of the dress", () => {
    expect(readWorkFile(fileOf(8, sampleWork))).toStrictEqual({ ok: true, value: sampleWork });
    expect(sampleWork.dress).toBeUndefined();
  });
});

describe("version 9", () => {
  it("keeps all that is decided of a dress", () => {
    const read = readWorkFile(fileOf(9, { ...sampleWork, dress }));
    expect(read).toStrictEqual({ ok: true, value: { ...sampleWork, dress } });
    const again = read.ok ? readWorkFile(writeWorkFile(read.value)) : null;
    expect(again).toStrictEqual(read);
  });

  it.each([
    ["a skirt there is not", { skirt: { kind: "bustle" } }],
    ["one tier", { skirt: { kind: "tiers", tiers: [{}] } }],
    ["six tiers", { skirt: { kind: "tiers", tiers: [{}, {}, {}, {}, {}, {}] } }],
    ["three panels", { skirt: { kind: "aLine", panels: 3 } }],
    ["a length beyond all bounds", { skirt: { kind: "gathered", length: 10_001 } }],
    ["a neckline there is not", { neckline: { shape: "boat" } }],
    ["a part there is not", { sleeves: {} }],
    ["a cloth there is not", { cloths: { lace: {} } }],
    ["a width that is no number", { cloths: { main: { width: "140" } } }],
  ])("refuses %s", (_what, part) => {
    expect(readWorkFile(fileOf(9, { ...sampleWork, dress: part })).ok).toBe(false);
  });

  it("loses of a damaged dress only what is damaged", () => {
    const { hem: _hem, ...skirt } = dress.skirt;
    const damaged = { ...sampleWork, dress: { ...dress, skirt: { ...dress.skirt, hem: "deep" } } };
    expect(salvageWork(damaged, CURRENT_VERSION)).toStrictEqual({
      work: { ...sampleWork, dress: { ...dress, skirt } },
      lost: ["dress.skirt.hem"],
    });
  });
});

describe("a dress decided on two pages", () => {
  const base = { ...sampleWork, dress: { skirt: { kind: "gathered", ratio: 1.5 } } } as const;
  const skirt = applyCommand(base, { kind: "setDress", part: "skirt", value: { kind: "gathered", ratio: 2 } });
  const lining = applyCommand(base, { kind: "setDress", part: "lining", value: { skirt: true } });

  it("has the parts of both", () => {
    const { work, collisions } = mergeWorks(base, skirt, lining);
    expect(work.dress).toStrictEqual({ skirt: { kind: "gathered", ratio: 2 }, lining: { skirt: true } });
    expect(collisions).toStrictEqual([]);
  });

  it("names the part that both changed differently", () => {
    const circle = applyCommand(base, { kind: "setDress", part: "skirt", value: { kind: "circle" } });
    const { work, collisions } = mergeWorks(base, skirt, circle);
    expect(work.dress).toStrictEqual({ skirt: { kind: "circle" } });
    expect(collisions).toStrictEqual([{ of: "dress", part: "skirt" }]);
  });

  it("is none where one page took the last of it away", () => {
    const none = applyCommand(base, { kind: "setDress", part: "skirt", value: null });
    expect(none).not.toHaveProperty("dress");
    expect(mergeWorks(base, none, base).work).not.toHaveProperty("dress");
    expect(mergeWorks(base, none, lining).work.dress).toStrictEqual({ lining: { skirt: true } });
  });
});

describe("the dress of a bodice that is tried on", () => {
  const { neckline, skirt, measures } = dress;
  const before = { ...sampleWork, dress: { neckline, skirt, measures } };
  const sewn = applyCommand(before, { kind: "beginTrial", id: "t", day: "2026-11-28" });
  const [trial] = sewn.trials ?? [];

  it("is sewn with its upper edge alone", () => {
    expect(trial?.sewn.dress).toStrictEqual({ neckline });
  });

  it("keeps its skirt when the bodice goes back to what was sewn", () => {
    const since = [
      { kind: "setDress", part: "neckline", value: { shape: "vee" } },
      { kind: "setDress", part: "skirt", value: { kind: "circle", share: 1 } },
    ] as const;
    const back = applyCommand(since.reduce(applyCommand, sewn), { kind: "returnToTrial", trial: "t" });
    expect(back.dress).toStrictEqual({ measures, neckline, skirt: { kind: "circle", share: 1 } });
    const none = applyCommand(sampleWork, { kind: "beginTrial", id: "t", day: "2026-11-28" });
    const vee = applyCommand(none, { kind: "setDress", part: "neckline", value: { shape: "vee" } });
    expect(applyCommand(vee, { kind: "returnToTrial", trial: "t" })).not.toHaveProperty("dress");
  });

  it("is no other version of the bodice for another skirt", () => {
    const other = applyCommand(sewn, { kind: "setDress", part: "skirt", value: null });
    expect(applyCommand(other, { kind: "returnToTrial", trial: "t" })).toBe(other);
  });

  it("gives the next dress its edge and what was measured for it, and leaves the skirt to be chosen", () => {
    const next = trial === undefined ? null : workFromBase(sewn, trial, "next");
    expect(next?.dress).toStrictEqual({ neckline, measures });
  });
});
