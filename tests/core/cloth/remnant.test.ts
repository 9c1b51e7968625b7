/** What there is of a cloth, and what has to be given up: every answer is applied and laid anew. */
import { describe, expect, it } from "vitest";
import { answered } from "../../../src/core/cloth/laySearch";
import { layCloth } from "../../../src/core/cloth/layCloth";
import { lengthToBuy } from "../../../src/core/cloth/usualCloth";
import type { Cloth, Dress } from "../../../src/core/decisions/dress";
import type { Work } from "../../../src/core/decisions/work";
import { clothAskedOf, clothTableOf } from "../../../src/core/dress/dressCloth";
import { remnantOf, type RemnantAnswer } from "../../../src/core/dress/remnant";
import { invariant } from "../../../src/core/result";
import { sampleWork } from "../../support/sampleWork";
import { faultsOf } from "./laidFaults";

/** Share of the usual search: enough to tell whether what is answered is so. */
const EFFORT = 0.02;

const workOf = (dress: Dress, main: Cloth = {}): Work => ({ ...sampleWork, dress: { ...dress, cloths: { main } } });

function needed(work: Work, without: readonly string[] = []): number {
  const asked = invariant(clothAskedOf(work, "main"), "main cloth");
  const lay = layCloth({ ...asked, parts: asked.parts.filter(({ key }) => !without.includes(key)) }, undefined, {
    effort: EFFORT,
  });
  if (!lay.ok) throw new Error(JSON.stringify(lay.failure));
  expect(faultsOf(lay.value, { ...asked, parts: asked.parts.filter(({ key }) => !without.includes(key)) })).toEqual([]);
  return lay.value.length;
}

function answerOf(work: Work): RemnantAnswer {
  return invariant(answered(remnantOf(work, "main"), EFFORT), "an answer");
}

const tiered: Dress = { skirt: { kind: "tiers", length: 600, ratio: 1.8 } };
const pencil: Dress = { skirt: { kind: "straight", length: 580 }, edges: { neck: "facing", armhole: "facing" } };

describe("a remnant", () => {
  it("has no answer where she has not said how much there is", () => {
    expect(answered(remnantOf(workOf(tiered), "main"))).toBeNull();
    expect(answered(remnantOf(workOf(tiered, { length: 2000 }), "lining"))).toBeNull();
  });

  it("goes with what is left of it, washed or not", () => {
    const length = needed(workOf(tiered));
    const plain = answerOf(workOf(tiered, { length: length + 130 }));
    expect(plain.goes && plain.left).toBeCloseTo(130, 6);
    // A tenth is lost in the wash: of (length + 90) / 0.9 there is length + 90 after it.
    const washed = answerOf(workOf(tiered, { length: (length + 90) / 0.9, shrinkage: 10 }));
    expect(washed.goes && washed.left).toBeCloseTo(100, 6);
    expect(answerOf(workOf(tiered, { length: length + 90, shrinkage: 10 })).goes).toBe(false);
  });

  it.each([
    ["tiers", tiered, 0.86],
    ["a pencil skirt with facings", pencil, 0.9],
    ["a half circle", { skirt: { kind: "circle", length: 560, share: 0.5 } } as const, 0.85],
  ])(
    "says by how much %s is short, and every way that it names goes when it is taken",
    (_, dress, share) => {
      const length = needed(workOf(dress));
      const has = Math.round(length * share);
      const answer = answerOf(workOf(dress, { length: has }));
      if (answer.goes) throw new Error("it goes");
      expect(answer.short).toBeCloseTo(length - has, 6);
      expect(answer.ways.length).toBeGreaterThan(0);
      for (const { dress: taken, elsewhere, giveUps } of answer.ways) {
        expect(giveUps.length).toBeGreaterThan(0);
        expect(needed({ ...sampleWork, dress: taken }, elsewhere)).toBeLessThanOrEqual(has + 1e-6);
      }
    },
    240_000,
  );

  it("gives up what is hardly missed first: facings of another cloth before a shorter skirt", () => {
    const length = needed(workOf(pencil));
    const without = needed(workOf(pencil), ["frontFacing", "backFacing"]);
    expect(without).toBeLessThan(length);
    const answer = answerOf(workOf(pencil, { length: without + 5 }));
    expect(!answer.goes && answer.ways[0]?.giveUps).toMatchObject([{ code: "remnant/elsewhere", group: "facing" }]);
  });

  it("lays single what does not go on folded cloth", () => {
    // A front whose halves differ is cut open in one layer, about half a hip and two allowances wide: not on 500 of folded cloth.
    const uneven = { kind: "fit", id: "uneven", fit: "sideSeamWaist", amount: 10, half: "left" } as const;
    const work = workOf({ skirt: { kind: "straight", length: 580 } }, { width: 1000, length: 4000, fold: true });
    const answer = answerOf({ ...work, alterations: [...work.alterations, uneven] });
    if (answer.goes) throw new Error("it goes");
    expect(answer.failure?.code).toBe("cloth/part-too-wide");
    expect(answer.short).toBeNull();
    expect(answer.ways[0]).toMatchObject({ giveUps: [{ code: "remnant/single-layer" }], lay: { onFold: false } });
  });
});

describe("what other widths cost", () => {
  it("drafts the dress anew for each, and says of hers what its own lay says", () => {
    const work = workOf(tiered, { width: 1250, shrinkage: 4 });
    const table = answered(clothTableOf(work, "main"), EFFORT);
    expect(table.map(({ width }) => width)).toEqual([900, 1100, 1140, 1250, 1400, 1500]);
    const hers = invariant(
      table.find(({ isHers }) => isHers),
      "her width",
    );
    const length = needed(work);
    expect(hers).toMatchObject({
      width: 1250,
      needed: { length, toBuy: lengthToBuy(length, { shrinkage: 4 }, "cm") },
    });
    expect("area" in hers.needed && hers.needed.area).toBeCloseTo(
      1.25 * (lengthToBuy(length, { shrinkage: 4 }, "cm") / 1000),
      9,
    );
    expect(table.every(({ needed: found }) => "length" in found)).toBe(true);
  });

  it("cuts in two on a narrow cloth what goes in one on hers", () => {
    const work = workOf({ skirt: { kind: "gathered", length: 600, ratio: 1.4 } }, { width: 1400 });
    const wide = invariant(clothAskedOf(work, "main"), "main cloth").parts.find(({ group }) => group === "skirt");
    // In one it is wider than all that 900 has between its selvages.
    expect(wide).toMatchObject({ cut: { count: 1 } });
    expect(wide?.kind === "rectangle" && wide.width).toBeGreaterThan(880);
    const narrow = answered(clothTableOf(work, "main"), EFFORT).find(({ width }) => width === 900);
    expect(narrow?.needed).toHaveProperty("toBuy");
  });
});
