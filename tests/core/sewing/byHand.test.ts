/** Orders and lengths worked out by hand for parts written down by hand. */
import { describe, expect, it } from "vitest";
import type { RectanglePart } from "../../../src/core/parts/part";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { isBasque } from "../../../src/core/pattern/pieceGroups";
import { finishedWaist } from "../../../src/core/dress/finishedWaist";
import { bodiceParts } from "../../../src/core/dress/bodiceParts";
import { notionsOf } from "../../../src/core/sewing/notionsOf";
import { orderOfSewing } from "../../../src/core/sewing/orderOfSewing";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import type { SewingStepName } from "../../../src/core/sewing/sewingStep";
import type { SkirtDraft } from "../../../src/core/skirts/skirtDraft";
import { planOf, testWork } from "../../support/works";

const edges = { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] };

const tier = (number: number, width: number, depth: number, panels: number): RectanglePart => ({
  kind: "rectangle",
  name: "tier",
  key: `tier-${number}`,
  group: "skirt",
  cloth: "main",
  tier: number,
  cut: { onFold: false, count: panels },
  half: null,
  grain: "across",
  width: width / panels,
  depth,
  allowances: { top: 15, bottom: number === 2 ? 30 : 15, sides: 15 },
});

/** Waist 720, ratios 1.6 and 1.6: widths 1152 and 1843.2, of cloth 1400 wide in one and in two widths; 250 and 310 deep. */
const tiers: SkirtDraft = {
  kind: "tiers",
  lengths: { front: 560, side: 560, back: 560 },
  hem: 1843.2,
  halves: [{}, {}],
  parts: [tier(1, 1152, 250, 1), tier(2, 1843.2, 310, 2)],
  levels: [],
  tiers: [
    { width: 1152, gatheredTo: 720, depth: 250, panels: 1, panelWidth: 1152 },
    { width: 1843.2, gatheredTo: 1152, depth: 310, panels: 2, panelWidth: 921.6 },
  ],
  notes: [],
};

function asked(more: Partial<SewingAsked> = {}): SewingAsked {
  const plan = planOf({ ...testWork, pattern: { ...testWork.pattern, length: "waist" } });
  const one = setOf(plan.left.pieces.filter(({ name }) => !isBasque(name)));
  const bodice = [one, one] as const;
  const all: SewingAsked = {
    dress: { skirt: { kind: "tiers" } },
    bodice,
    waist: finishedWaist(bodice),
    skirt: tiers,
    lining: null,
    edges,
    closure: { place: "centreBack", belowWaist: 120 },
    reading: null,
    under: "nothing",
    parts: [...bodiceParts(bodice, edges), ...tiers.parts],
    allowances: {},
    ...more,
  };
  return all;
}

const namesOf = (from: SewingAsked): readonly string[] =>
  orderOfSewing(from).map(({ name, at }) => (at === undefined ? name : `${name} ${at}`));

const stepOf = (from: SewingAsked, name: SewingStepName, at?: number) =>
  orderOfSewing(from).find((step) => step.name === name && step.at === at);

describe("two tiers on a darted bodice, unlined", () => {
  it("with an invisible zip at the centre back", () => {
    expect(namesOf(asked())).toEqual([
      "washCloth",
      "cutOut",
      "markDarts",
      "stayStitch",
      "sewDarts",
      "shoulderSeams",
      "bodiceSides",
      // The only width of the first tier is joined where the zip is; of the second tier's two joins one is there.
      "joinTierPanels 2",
      "gatherTiers 2",
      "tierToTier 2",
      "gatherSkirt 1",
      "fitBeforeWaist",
      "skirtToBodice",
      "zipMarks",
      "tackZip",
      "putInZip",
      "seamBelowOpening",
      "hookAndEye",
      "hang",
      "hemShell",
      "press",
    ]);
  });

  it("with a lapped zip: the seam first", () => {
    const names = namesOf(asked({ dress: { skirt: { kind: "tiers" }, zip: "lapped" } }));
    expect(names.slice(names.indexOf("skirtToBodice"), names.indexOf("hookAndEye"))).toEqual([
      "skirtToBodice",
      "seamBelowOpening",
      "zipMarks",
      "tackZip",
      "putInZip",
    ]);
  });

  it("with buttons", () => {
    const names = namesOf(asked({ closure: { place: "centreBack", belowWaist: 120, buttons: 8 } }));
    expect(names.slice(names.indexOf("skirtToBodice"), names.indexOf("hang"))).toEqual([
      "skirtToBodice",
      "seamBelowOpening",
      "buttonStands",
      "buttonholes",
      "buttons",
    ]);
  });

  it("at her left side: only the right one is sewn, and the centre back is a seam", () => {
    const from = asked({ closure: { place: "side", belowWaist: 120 } });
    expect(stepOf(from, "bodiceSides")?.seams.map(({ half, count }) => [half, count])).toEqual([["right", 1]]);
    expect(stepOf(asked(), "bodiceSides")?.seams.map(({ half, count }) => [half, count])).toEqual([[null, 2]]);
    expect(stepOf(from, "centreBackSeam")).toBeDefined();
    expect(stepOf(asked(), "centreBackSeam")).toBeUndefined();
  });

  it("where the opening ends at the waist, both tiers are closed rings", () => {
    const from = asked({ closure: { place: "centreBack", belowWaist: 0 } });
    expect(stepOf(from, "joinTierPanels", 1)?.seams[0]?.count).toBe(1);
    expect(stepOf(from, "joinTierPanels", 2)?.seams[0]?.count).toBe(2);
    expect(stepOf(from, "seamBelowOpening")).toBeUndefined();
  });

  it("measures what is sewn", () => {
    const from = asked();
    expect(stepOf(from, "gatherTiers", 2)?.seams).toEqual([
      { seam: null, pieces: [], half: null, length: 1843.2, count: 1, gatheredTo: 1152 },
    ]);
    expect(stepOf(from, "joinTierPanels", 2)?.length).toBe(310);
    expect(stepOf(from, "seamBelowOpening")?.length).toBe(560 - 120);
    expect(stepOf(from, "hemShell")?.length).toBe(1843.2);
    expect(stepOf(from, "hemShell")?.allowance).toBe(30);
    expect(stepOf(from, "skirtToBodice")?.length).toBe(from.waist.whole);
    expect(stepOf(from, "skirtToBodice")?.allowance).toBe(15);
  });

  it("takes thread by what is sewn: a reel of a hundred metres for each begun one", () => {
    const thread = notionsOf(asked()).find(({ what }) => what === "thread");
    // Gathering alone takes five times 2995.2; the seams of such a dress are some eight metres, neatened on both edges.
    expect(thread?.length).toBeGreaterThan(60_000);
    expect(thread?.length).toBeLessThan(250_000);
    expect(thread?.count).toBe(Math.ceil((thread?.length ?? 0) / 100_000));
  });
});
