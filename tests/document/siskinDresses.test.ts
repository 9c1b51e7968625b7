/** The demonstration of three dresses is what its tool makes, and each is the dress that its name says. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { dressOf } from "../../src/core/dress/dressOf";
import type { DressPlan } from "../../src/core/dress/dressPlan";
import { planOf } from "../../src/core/plan/planOf";
import { invariant } from "../../src/core/result";
import type { SkirtDraft } from "../../src/core/skirts/skirtDraft";
import { demoDresses, demoStories } from "../../src/document/demo";
import { faultsOfDress } from "../support/faultsOfDress";
import { baseWithPencil, cupsWithTiers, princessWithPanels } from "../tools/dressDemo";

const [tiers, panels, straight] = demoDresses();
const [siskin] = demoStories();

function dressed(work: Work | undefined): DressPlan & { readonly drafted: SkirtDraft } {
  const made = dressOf(invariant(work, "work"));
  const dress = invariant(made.ok ? made.value : null, "dress");
  return { ...dress, drafted: invariant(dress.skirt?.ok === true ? dress.skirt.value : null, "skirt") };
}

/** "2 back", "1 front on the fold": what is cut of a group. */
const cutOf = ({ parts }: DressPlan, group: DressPlan["parts"][number]["group"]): readonly string[] =>
  parts
    .filter((part) => part.group === group)
    .map(({ key, cut }) => `${cut.count} ${key}${cut.onFold ? " on the fold" : ""}`);

describe("the demonstration of three dresses", () => {
  it("is what its tool makes", () => {
    expect([tiers, panels, straight]).toEqual([cupsWithTiers(), princessWithPanels(), baseWithPencil()]);
  });

  it.each([tiers, panels, straight].map((work) => [work?.name, invariant(work, "work")] as const))(
    "%s is begun from the base, has no trial yet, and nothing of it is at fault",
    (_, work) => {
      const base = siskin?.trials?.find((trial) => trial.base === true);
      expect(work.begunFrom).toEqual({ name: siskin?.name, day: base?.day });
      expect(work.trials).toBeUndefined();
      // What her body asked for goes along; a dart that the style has not does not.
      expect(base?.sewn.alterations.map(({ kind }) => kind)).toEqual(["fit", "dartEnd"]);
      expect(work.alterations[0]).toEqual(base?.sewn.alterations[0]);
      const planned = planOf(work);
      expect(planned.ok && planned.value.checks.filter(({ ok }) => !ok)).toEqual([]);
      const dress = dressed(work);
      expect(dress.checks.length).toBeGreaterThan(3);
      expect(dress.checks.filter(({ ok }) => !ok)).toEqual([]);
      expect(dress.closure?.passes).toBe(true);
      expect(faultsOfDress(work)).toEqual([]);
    },
  );

  it("has two tiers on cups, each 1.6 times what it hangs on, the lower a quarter deeper, in a lined sheer cloth", () => {
    const dress = dressed(tiers);
    expect(cutOf(dress, "bodice")).toEqual(["2 cup", "1 frontBand on the fold", "2 back", "2 backBand"]);
    // 720 = d + 1.25 d. Two widths of the second: 1.6² × 812 is more than a cloth of 1400 holds.
    expect(dress.drafted.tiers?.map(({ depth, panels: widths }) => [depth, widths])).toEqual([
      [320, 1],
      [400, 2],
    ]);
    expect(dress.drafted.hem).toBeCloseTo(dress.waist.whole * 1.6 * 1.6, 6);
    expect(cutOf(dress, "skirtLining")).toEqual(["1 lining-skirtFront on the fold", "2 lining-skirtBack"]);
    expect(cutOf(dress, "strap")).toEqual(["2 strap-strip"]);
    expect(dress.under).toMatchObject({ chosen: "lining", isThere: true });
    const planned = planOf(invariant(tiers, "work"));
    expect(planned.ok && planned.value.left.neckline).toMatchObject({ ok: true });
  });

  it("has six panels on princess seams, its edges faced and nothing lined", () => {
    const dress = dressed(panels);
    expect(cutOf(dress, "bodice")).toEqual(["1 centreFront on the fold", "2 sideFront", "2 back"]);
    // A front on the fold and a back of two halves that a closure parts: six panels, seven pieces.
    expect(cutOf(dress, "skirt")).toEqual([
      "1 skirtFront on the fold",
      "2 skirtSideFront",
      "2 skirtSideBack",
      "2 skirtBack",
    ]);
    expect(dress.lining).toBeNull();
    expect(dress.edges.edges.map(({ finish }) => finish)).not.toContain("lining");
  });

  it("has a straight skirt with a vent under the bodice of the base, a lining and a lapped zip", () => {
    const dress = dressed(straight);
    expect(straight?.pattern).toEqual(siskin?.pattern);
    // Her hip of 1030 and 50 of ease: straight down to the hem, so a vent lets her walk.
    expect(dress.drafted.hem).toBe(1080);
    expect(dress.drafted.vent).toBe(200);
    expect(dress.sewing.map(({ name }) => name)).toContain("vent");
    expect(dress.sewing.find(({ name }) => name === "putInZip")?.way).toBe("lapped");
    expect(cutOf(dress, "bodiceLining")).toEqual(["1 lining-front on the fold", "2 lining-back"]);
    expect(cutOf(dress, "skirtLining")).toHaveLength(2);
  });
});
