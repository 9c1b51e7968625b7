/** The order of sewing by hand: a whole one of a skirt of tiers, what each step waits for, rings, and thread. Common practice, no source. mm. */
import { describe, expect, it } from "vitest";
import type { Closure } from "../../../src/core/decisions/pattern";
import type { Part } from "../../../src/core/parts/part";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { notionsOf } from "../../../src/core/sewing/notionsOf";
import { orderOfSewing } from "../../../src/core/sewing/orderOfSewing";
import { precedencesIn, type OrderCase } from "../../../src/core/sewing/precedence";
import { finishOf } from "../../../src/core/sewing/seenFinish";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import { SEWING_STEPS, type Showing, type SewingStepName } from "../../../src/core/sewing/sewingStep";
import type { SkirtDraft } from "../../../src/core/skirts/skirtDraft";
import { rectanglePart } from "../../support/clothParts";
import { ASKED, skirtOn } from "../../support/skirts";

const NO_EDGES = { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] };
const nobody = setOf([]);
const READING = {
  ways: [],
  passes: true,
  opening: 400,
  comesApart: false,
  leastOpening: 300,
  zip: { cm: null, in: null },
  endsAt: { cm: null, in: null },
  levelMarks: [
    { at: "topEdge", from: 0 },
    { at: "end", from: 400 },
  ],
} as const;

/** A skirt by itself, on a waist of 720, open 120 below it at the centre back. */
const asked = (skirt: SkirtDraft, more: Partial<SewingAsked> = {}): SewingAsked => ({
  dress: { skirt: { kind: skirt.kind } },
  bodice: [nobody, nobody],
  waist: ASKED.waist,
  skirt,
  lining: null,
  edges: NO_EDGES,
  closure: { place: "centreBack", belowWaist: 120 },
  reading: READING,
  under: "nothing",
  parts: skirt.parts,
  allowances: {},
  ...more,
});

const stepOf = (from: SewingAsked, name: SewingStepName, at?: number) =>
  orderOfSewing(from).find((step) => step.name === name && step.at === at);

/** 1080 in one width and 1620 in two, 300 deep each. */
const tiers = skirtOn({ kind: "tiers", length: 600 });

describe("a skirt of two tiers", () => {
  it("is sewn in this order, each step on its parts and after what it waits for", () => {
    const seam = (length: number, count = 1, more: object = {}) => ({
      seam: null,
      pieces: [],
      half: null,
      length,
      count,
      ...more,
    });
    const nothing = { seams: [], length: null, allowance: null, finish: null, cautions: [], press: false };
    const both = ["tier-1", "tier-2"];
    expect(orderOfSewing(asked(tiers))).toEqual([
      { ...nothing, name: "washCloth", parts: both, after: [] },
      { ...nothing, name: "cutOut", parts: both, cautions: ["blade"], after: [0] },
      {
        ...nothing,
        name: "joinTierPanels",
        at: 2,
        way: "opens",
        parts: ["tier-2"],
        seams: [seam(300)],
        length: 300,
        allowance: 15,
        press: true,
        finish: "neatened",
        after: [0, 1],
      },
      {
        ...nothing,
        name: "gatherTiers",
        at: 2,
        parts: ["tier-2"],
        seams: [seam(1620, 1, { gatheredTo: 1080 })],
        length: 1620,
        after: [0, 1, 2],
      },
      {
        ...nothing,
        name: "tierToTier",
        at: 2,
        parts: both,
        seams: [seam(1080)],
        length: 1080,
        allowance: 15,
        press: true,
        after: [0, 1, 2, 3],
      },
      {
        ...nothing,
        name: "gatherSkirt",
        at: 1,
        parts: ["tier-1"],
        seams: [seam(1080, 1, { gatheredTo: 720 })],
        length: 1080,
        after: [0, 1],
      },
      { ...nothing, name: "fitBeforeWaist", parts: [], cautions: ["pins"], after: [0, 1, 5] },
      {
        ...nothing,
        name: "skirtToBodice",
        parts: ["tier-1"],
        seams: [seam(720)],
        length: 720,
        allowance: 15,
        press: true,
        cautions: ["needle"],
        after: [0, 1, 2, 3, 4, 5, 6],
      },
      { ...nothing, name: "zipMarks", parts: both, marks: READING.levelMarks, after: [0, 1, 7] },
      {
        ...nothing,
        name: "tackZip",
        way: "invisible",
        parts: both,
        seams: [seam(400, 2)],
        length: 800,
        after: [0, 1, 7, 8],
      },
      {
        ...nothing,
        name: "putInZip",
        way: "invisible",
        parts: both,
        seams: [seam(400, 2)],
        length: 800,
        allowance: 15,
        press: true,
        cautions: ["needle", "zip"],
        after: [0, 1, 7, 8, 9],
      },
      {
        ...nothing,
        name: "seamBelowOpening",
        way: "invisible",
        parts: both,
        seams: [seam(480)],
        length: 480,
        allowance: 15,
        press: true,
        finish: "neatened",
        after: [0, 1, 7, 10],
      },
      { ...nothing, name: "hookAndEye", parts: both, after: [0, 1, 10, 11] },
      { ...nothing, name: "hang", parts: both, after: [0, 1, 7, 11, 12] },
      { ...nothing, name: "levelHem", parts: both, cautions: ["pins"], after: [0, 1, 7, 11, 12, 13] },
      {
        ...nothing,
        name: "hemShell",
        parts: both,
        seams: [seam(1620)],
        length: 1620,
        allowance: 30,
        press: true,
        after: [0, 1, 7, 11, 12, 13, 14],
      },
      {
        ...nothing,
        name: "press",
        parts: both,
        press: true,
        cautions: ["iron"],
        after: Array.from({ length: 16 }, (_, at) => at),
      },
    ]);
  });

  it("takes thread by each of these: 3 for a seam and 8 to neaten, 5 to gather, 2 by hand", () => {
    const seams = 11 * (300 + 1080 + 720 + 480);
    const gathers = 5 * (1620 + 1080);
    // Tacked, sewn plain, and hemmed by hand.
    const others = 2 * 800 + 3 * 800 + 2 * 1620;
    const plain = { length: null, width: null };
    expect(notionsOf(asked(tiers))).toEqual([
      {
        what: "zip",
        count: 1,
        length: 400,
        width: null,
        sold: READING.zip,
        endsAt: READING.endsAt,
        comesApart: false,
      },
      { what: "washAwayTape", count: 1, length: 800, width: null },
      { what: "hookAndEye", count: 1, ...plain },
      { what: "thread", count: 1, length: expect.closeTo(seams + gathers + others, 6), width: null },
    ]);
  });

  it("buttoned, takes buttons and neither zip nor hook; facings their interfacing by its area", () => {
    const closure: Closure = { place: "centreBack", belowWaist: 120, buttons: 7 };
    const fused = rectanglePart("fused", 100, 200, 2, {
      cloth: "interfacing",
      group: "facing",
      allowances: { top: 5, bottom: 5, sides: 10 },
    });
    const bought = notionsOf(asked(tiers, { closure, parts: [...tiers.parts, fused] }));
    expect(bought.map(({ what, count }) => [what, count])).toEqual([
      ["buttons", 7],
      ["interfacing", 1],
      ["thread", 1],
    ]);
    // Twice 120 × 210.
    expect(bought[1]).toMatchObject({ area: 50_400 });
    expect(stepOf(asked(tiers, { closure, parts: [...tiers.parts, fused] }), "fuseInterfacing")).toMatchObject({
      parts: ["fused"],
      cautions: ["iron"],
      press: true,
    });
    expect(stepOf(asked(tiers, { closure, parts: [...tiers.parts, fused] }), "fuseStands")).toBeUndefined();
    const names = orderOfSewing(asked(tiers, { closure })).map(({ name }) => name);
    expect(names.filter((name) => name.startsWith("button"))).toEqual(["buttonStands", "buttonholes", "buttons"]);
    expect(orderOfSewing(asked(tiers, { closure: { ...closure, buttons: 0 } })).map(({ name }) => name)).not.toContain(
      "buttons",
    );
  });

  it("buttoned, has a strip fused to each stand before it is turned in, and bought with the interfacing", () => {
    const closure: Closure = { place: "centreBack", belowWaist: 120, buttons: 7 };
    const strip = rectanglePart("stand", 30, 520, 2, {
      cloth: "interfacing",
      group: "buttonStand",
      name: "buttonStand",
    });
    const from = asked(tiers, { closure, parts: [...tiers.parts, strip] });
    expect(stepOf(from, "fuseStands")).toMatchObject({
      parts: ["stand"],
      seams: [],
      length: null,
      cautions: ["iron"],
      press: true,
      finish: null,
    });
    const names = orderOfSewing(from).map(({ name }) => name);
    expect(names.slice(names.indexOf("skirtToBodice"), names.indexOf("buttonholes"))).toEqual([
      "skirtToBodice",
      "seamBelowOpening",
      "fuseStands",
      "buttonStands",
    ]);
    // That of facings is another step, which they have none of.
    expect(names).not.toContain("fuseInterfacing");
    // Twice 30 × 520.
    expect(notionsOf(from).find(({ what }) => what === "interfacing")).toMatchObject({ area: 31_200 });
  });

  it("that are cut lower for a level hem are shaped before they are gathered, and are levelled by that", () => {
    const body = { ...ASKED.body, toFloor: { front: 1010, side: 1030, back: 1040 } };
    const shaped = asked(skirtOn({ kind: "tiers", length: 600 }, { body }));
    expect(stepOf(shaped, "shapeTop", 1)).toMatchObject({
      parts: ["tier-1"],
      lower: { front: 30, side: 10, back: 0 },
      cautions: ["blade"],
    });
    expect(stepOf(shaped, "levelHem")).toBeUndefined();
    // 610 at the centre back, less 120.
    expect(stepOf(shaped, "seamBelowOpening")?.length).toBe(490);
    expect(stepOf({ ...shaped, closure: { place: "side", belowWaist: 120 } }, "seamBelowOpening")?.length).toBe(480);
    expect(
      stepOf({ ...shaped, closure: { place: "centreBack", belowWaist: 610 } }, "seamBelowOpening"),
    ).toBeUndefined();
    expect(stepOf({ ...shaped, closure: { place: "centreBack", belowWaist: 0 } }, "seamBelowOpening")).toBeUndefined();
  });

  it("of nothing at all has no steps, and no gathers where it is as wide as what it hangs on", () => {
    expect(orderOfSewing(asked(tiers, { parts: [] }))).toEqual([]);
    const even = asked(skirtOn({ kind: "gathered", length: 600, ratio: 1 }, { body: { ...ASKED.body, hip: null } }));
    expect(stepOf(even, "gatherSkirt")).toBeUndefined();
    const gathered = asked(skirtOn({ kind: "gathered", length: 600 }));
    // One that is no tier has no number.
    expect(stepOf(gathered, "gatherSkirt")).toMatchObject({ length: 1080, parts: ["gathered"] });
  });
});

describe("a round skirt", () => {
  const joined = (skirt: SkirtDraft, belowWaist = 120) => {
    const step = stepOf(asked(skirt, { closure: { place: "centreBack", belowWaist } }), "joinSectors");
    return step === undefined ? null : [step.way, step.seams.map(({ length, count }) => [length, count])];
  };

  it("is joined at its sides, and behind where it does not open; its waist is stayed", () => {
    const whole = skirtOn({ kind: "circle", length: 600 });
    expect(joined(whole)).toEqual(["opens", [[600, 2]]]);
    expect(joined(whole, 0)).toEqual([undefined, [[600, 3]]]);
    const step = stepOf(asked(whole), "joinSectors");
    expect(step).toMatchObject({ parts: ["circle-front", "circle-back"], allowance: 15, length: 1200 });
    expect(stepOf(asked(whole), "stayWaist")).toMatchObject({ length: 720, allowance: null, press: false });
    expect(stepOf(asked(whole), "hang")?.way).toBe("round");
    // A round hem has 15.
    expect(stepOf(asked(whole), "hemShell")).toMatchObject({ way: "round", allowance: 15 });
    expect(stepOf(asked(whole), "skirtToBodice")?.way).toBeUndefined();
  });

  it("in one piece has the seam at its opening alone", () => {
    const half = skirtOn({ kind: "peplum" });
    expect([joined(half), joined(half, 0)]).toEqual([null, [undefined, [[160, 1]]]]);
    expect(stepOf(asked(half), "skirtToBodice")?.way).toBe("peplum");
  });

  it("has each seam as long as it is there, those within a quarter as the side", () => {
    const body = { ...ASKED.body, toFloor: { front: 1010, side: 1030, back: 1000 } };
    const quarters = skirtOn({ kind: "circle", length: 1100, share: 2 }, { body, clothWidth: 700 });
    const pieces = quarters.parts.reduce((sum, { cut }) => sum + cut.count, 0);
    expect(pieces).toBeGreaterThan(4);
    expect(joined(quarters)).toEqual([
      "opens",
      [
        [1080, 1],
        [1100, 1],
        [1100, 1],
        [1100, pieces - 4],
      ],
    ]);
    expect(joined(quarters, 0)?.[1]).toHaveLength(5);
  });
});

describe("what has to come before", () => {
  const CASES: readonly OrderCase[] = ["invisible", "boundAtBack"];
  const before = (name: SewingStepName, cases: readonly OrderCase[] = CASES): readonly SewingStepName[] =>
    SEWING_STEPS.filter((one) => precedencesIn(cases).some((pair) => pair.before === one && pair.after === name));

  it.each<readonly [SewingStepName, readonly SewingStepName[]]>([
    ["tackUnderlining", ["markDarts"]],
    ["stayStitch", ["markDarts", "tackUnderlining"]],
    ["sewDarts", ["markDarts", "tackUnderlining", "stayStitch"]],
    ["drawUpGathers", ["markDarts", "tackUnderlining", "stayStitch"]],
    ["princessSeams", ["stayStitch", "sewDarts", "drawUpGathers"]],
    ["bandToCups", ["stayStitch", "sewDarts", "drawUpGathers"]],
    ["centreFrontSeam", ["stayStitch", "sewDarts", "princessSeams"]],
    ["centreBackSeam", ["stayStitch", "sewDarts", "princessSeams"]],
    ["shoulderSeams", ["sewDarts", "drawUpGathers", "princessSeams", "bandToCups"]],
    ["elasticInStraps", ["makeStraps"]],
    ["basteStraps", ["makeStraps", "elasticInStraps"]],
    ["fitBeforeTopEdge", ["stayStitch", "centreFrontSeam", "centreBackSeam", "shoulderSeams", "basteStraps"]],
    ["bodiceSides", ["sewDarts", "princessSeams", "centreFrontSeam", "centreBackSeam", "shoulderSeams"]],
    ["liningDarts", ["markDarts"]],
    ["liningSeams", ["liningDarts"]],
    ["liningShoulders", ["liningDarts", "liningSeams"]],
    ["liningSides", ["liningSeams", "liningShoulders"]],
    ["facingSeams", ["fuseInterfacing"]],
    [
      "liningTopEdge",
      ["liningShoulders", "makeStraps", "basteStraps", "fitBeforeTopEdge", "facingSeams", "otherPieces"],
    ],
    ["faceTopEdge", ["fuseInterfacing", "facingSeams", "basteStraps", "fitBeforeTopEdge", "otherPieces"]],
    ["faceNeck", ["fuseInterfacing", "facingSeams", "basteStraps", "fitBeforeTopEdge", "otherPieces"]],
    ["faceArmholes", ["fuseInterfacing", "facingSeams", "basteStraps", "fitBeforeTopEdge", "bodiceSides"]],
    ["bindNeck", ["basteStraps", "fitBeforeTopEdge", "otherPieces", "putInZip", "buttonStands"]],
    ["bindArmholes", ["basteStraps", "fitBeforeTopEdge", "otherPieces", "bodiceSides"]],
    ["underStitch", ["liningTopEdge", "faceTopEdge", "faceNeck", "faceArmholes"]],
    ["basqueSeams", ["sewDarts", "tackUnderlining"]],
    ["liningBasque", ["liningSides", "liningTopEdge", "bodiceSides", "basqueToBodice"]],
    ["skirtDarts", ["markDarts", "tackUnderlining"]],
    ["panelSeams", ["skirtDarts", "tackUnderlining"]],
    ["skirtCentreSeams", ["skirtDarts", "panelSeams"]],
    ["skirtSides", ["skirtDarts", "panelSeams", "skirtCentreSeams", "pockets"]],
    ["joinTierPanels", ["tackUnderlining"]],
    ["gatherTiers", ["joinTierPanels"]],
    ["tierToTier", ["joinTierPanels", "gatherTiers"]],
    ["shapeTop", ["joinTierPanels", "tierToTier"]],
    ["gatherSkirt", ["joinTierPanels", "tierToTier", "shapeTop"]],
    [
      "fitBeforeWaist",
      [
        "bodiceSides",
        "liningTopEdge",
        "faceTopEdge",
        "underStitch",
        "basqueSeams",
        "panelSeams",
        "skirtCentreSeams",
        "skirtSides",
        "stayWaist",
        "joinSectors",
        "gatherSkirt",
      ],
    ],
    ...(["basqueToBodice", "skirtToBodice"] as const).map(
      (waist) =>
        [
          waist,
          [
            "otherPieces",
            "bodiceSides",
            "underStitch",
            "panelSeams",
            "skirtSides",
            "stayWaist",
            "gatherSkirt",
            "fitBeforeWaist",
          ],
        ] as const,
    ),
    ["zipMarks", ["bodiceSides", "basqueToBodice", "skirtToBodice"]],
    ["tackZip", ["basqueToBodice", "skirtToBodice", "zipMarks"]],
    ["putInZip", ["skirtToBodice", "zipMarks", "tackZip"]],
    ["seamBelowOpening", ["basqueToBodice", "skirtToBodice", "putInZip"]],
    ["fuseStands", ["bandToCups", "basqueToBodice", "skirtToBodice"]],
    ["buttonStands", ["bodiceSides", "basqueToBodice", "skirtToBodice", "fuseStands"]],
    ["vent", ["skirtCentreSeams", "skirtToBodice", "seamBelowOpening"]],
    ["finishWaist", ["bodiceSides", "putInZip", "buttonStands"]],
    ["liningSkirtSeams", ["liningSkirtDarts", "markDarts"]],
    [
      "liningSkirtToWaist",
      ["putInZip", "seamBelowOpening", "buttonStands", "vent", "finishWaist", "liningSkirtDarts", "liningSkirtSeams"],
    ],
    ["closeLiningWaist", ["bodiceSides", "liningSides", "liningTopEdge", "putInZip", "liningSkirtToWaist"]],
    ["handSewFacing", ["faceTopEdge", "underStitch", "skirtToBodice", "putInZip", "buttonStands"]],
    [
      "handSewLining",
      ["liningTopEdge", "underStitch", "liningBasque", "liningSides", "bodiceSides", "closeLiningWaist"],
    ],
    ["hookAndEye", ["putInZip", "handSewFacing", "handSewLining", "bindNeck"]],
    ["buttonholes", ["buttonStands", "handSewFacing", "handSewLining", "bindNeck"]],
    ["buttons", ["buttonStands", "buttonholes"]],
    [
      "hang",
      [
        "bindNeck",
        "bindArmholes",
        "basqueToBodice",
        "skirtToBodice",
        "seamBelowOpening",
        "vent",
        "handSewFacing",
        "handSewLining",
        "hookAndEye",
        "buttonholes",
        "buttons",
      ],
    ],
    ["levelHem", ["skirtToBodice", "hang"]],
    ["hemShell", ["hang", "levelHem"]],
    ["hemLining", ["hang", "levelHem", "hemShell"]],
  ])("%s", (name, others) => {
    expect(before(name)).toEqual(expect.arrayContaining([...others]));
  });

  it("depends on how it is closed, and on what crosses what", () => {
    const waits = (name: SewingStepName, ...cases: readonly OrderCase[]) =>
      before(name, cases).filter((one) => !before(name, []).includes(one));
    expect(waits("seamBelowOpening", "invisible")).toEqual(["putInZip"]);
    expect(waits("zipMarks", "lapped")).toEqual(["seamBelowOpening"]);
    expect(waits("fuseStands", "buttons")).toEqual(["seamBelowOpening"]);
    expect(waits("buttonStands", "buttons")).toEqual(["seamBelowOpening"]);
    expect(waits("bodiceSides", "turnedThroughSides")).toEqual(["liningTopEdge", "faceTopEdge", "underStitch"]);
    expect([waits("liningTopEdge", "asOneRing"), waits("faceTopEdge", "asOneRing")]).toEqual([
      ["bodiceSides", "liningSides"],
      ["bodiceSides", "liningSides"],
    ]);
    expect(waits("bandToCups", "bandAcrossFront", "bandAcrossBack")).toEqual(["centreFrontSeam", "centreBackSeam"]);
    expect([waits("centreFrontSeam", "bandInTwoFront"), waits("centreBackSeam", "bandInTwoBack")]).toEqual([
      ["bandToCups"],
      ["bandToCups"],
    ]);
    expect([
      waits("bindNeck", "boundAtBack"),
      waits("hookAndEye", "boundAtBack"),
      waits("buttonholes", "boundAtBack"),
    ]).toEqual([["putInZip", "buttonStands"], ["bindNeck"], ["bindNeck", "putInZip"]]);
    expect([waits("bindArmholes", "boundAtSide"), waits("hookAndEye", "boundAtSide")]).toEqual([
      ["putInZip"],
      ["bindArmholes"],
    ]);
  });
});

describe("how seams are finished", () => {
  const open = { bodice: false, skirt: false };
  const shown = (["side", "princess", "darts", "waist", "hem"] as const).map((of) => ({ of, by: "bound" as const }));
  const of = (one: Showing) => shown.filter((finish) => finish.of === one);

  it("shows each in the steps that sew it", () => {
    const sewn = (one: Showing) =>
      SEWING_STEPS.filter((name) => finishOf({ name }, of(one), { bodice: true, skirt: true }));
    expect(Object.fromEntries(shown.map((finish) => [finish.of, sewn(finish.of)]))).toEqual({
      side: ["bodiceSides", "panelSeams", "skirtSides", "joinSectors", "joinTierPanels"],
      princess: ["princessSeams"],
      darts: ["sewDarts", "skirtDarts"],
      waist: ["skirtToBodice"],
      hem: ["hemShell"],
    });
  });

  it("neatens what frays and is not covered", () => {
    const neatened = (covered: typeof open) =>
      SEWING_STEPS.filter((name) => finishOf({ name }, [], covered) === "neatened");
    const bodice = ["princessSeams", "bandToCups", "centreFrontSeam", "centreBackSeam", "shoulderSeams", "bodiceSides"];
    const skirt = ["panelSeams", "skirtCentreSeams", "skirtSides", "joinSectors", "joinTierPanels", "seamBelowOpening"];
    expect(neatened({ bodice: false, skirt: true })).toEqual(bodice);
    expect(neatened({ bodice: true, skirt: false })).toEqual(skirt);
    expect(neatened({ bodice: true, skirt: true })).toEqual([]);
    // Sewn in one with what lies inside it, it is enclosed in nothing.
    const ways = (["withLining", "withFacing", "opens"] as const).map((way) =>
      finishOf({ name: "bodiceSides", way }, of("side"), open),
    );
    expect(ways).toEqual(["neatened", "neatened", "bound"]);
  });

  it("leaves out what an underlining or a lining of the bodice covers", () => {
    const part: Part = rectanglePart("gathered", 100, 100, 2, { name: "gathered" });
    const of600 = skirtOn({ kind: "tiers", length: 600 });
    const finish = (more: Partial<SewingAsked>) =>
      stepOf(asked(of600, { parts: [part, ...of600.parts], ...more }), "joinTierPanels", 2)?.finish;
    expect([finish({}), finish({ under: "underlining" }), finish({ dress: { lining: { bodice: true } } })]).toEqual([
      "neatened",
      null,
      "neatened",
    ]);
  });
});
