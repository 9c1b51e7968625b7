/** Which seams a step sews, by where the dress opens and what is lined: reasoned from what is left open. Pieces of straight lines. mm. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import type { Closure } from "../../../src/core/decisions/pattern";
import { bodiceParts } from "../../../src/core/dress/bodiceParts";
import { checkEdges } from "../../../src/core/dress/checkEdges";
import { draftEdges } from "../../../src/core/edges/draftEdges";
import { draftLining } from "../../../src/core/lining/draftLining";
import type { Part } from "../../../src/core/parts/part";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { orderOfSewing } from "../../../src/core/sewing/orderOfSewing";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import type { SewingStep, SewingStepName } from "../../../src/core/sewing/sewingStep";
import { ASKED, skirtOn } from "../../support/skirts";

const OPENINGS = {
  back: { place: "centreBack", belowWaist: 180 },
  backToWaist: { place: "centreBack", belowWaist: 0 },
  side: { place: "side", belowWaist: 180 },
  sideToWaist: { place: "side", belowWaist: 0 },
} as const satisfies Record<string, Closure>;

/** A level neck of 60, a shoulder, an armhole of 150 and a side of 250 straight down. */
const upper = (name: PieceName, wide: number, centreOnFold: boolean): Piece => ({
  name,
  points: {
    centreNeck: named(0, 0, "neck"),
    sideNeck: named(60, 0, "neck"),
    shoulderTip: named(wide, 0, "shoulder"),
    underarm: named(wide, 150, "underarm"),
    sideWaist: named(wide, 400, "waist"),
    centreWaist: named(0, 400, "waist"),
  },
  edges: [
    straight("centreNeck", "sideNeck", "neck"),
    straight("sideNeck", "shoulderTip", "shoulder"),
    straight("shoulderTip", "underarm", "armhole"),
    straight("underarm", "sideWaist", "side"),
    straight("sideWaist", "centreWaist", "waist"),
    straight("centreWaist", "centreNeck", "centre"),
  ],
  darts: [],
  levelLines: [],
  centreOnFold,
});

/** 220 down to its hem. */
const lower = (name: PieceName, wide: number, centreOnFold: boolean): Piece => ({
  name,
  points: {
    centreWaist: named(0, 0, "waist"),
    sideWaist: named(wide, 0, "waist"),
    sideHem: named(wide, 220, "hip"),
    centreHem: named(0, 220, "hip"),
  },
  edges: [
    straight("centreWaist", "sideWaist", "waist"),
    straight("sideWaist", "sideHem", "side"),
    straight("sideHem", "centreHem", "hem"),
    straight("centreHem", "centreWaist", "centre"),
  ],
  darts: [],
  levelLines: [],
  centreOnFold,
});

const FRONT = upper("front", 185, true);
const BACK = upper("back", 175, false);
const BASQUES = [lower("frontBasque", 185, true), lower("backBasque", 175, false)];
/** Opened 400 above the waist, and as far below as asked. */
const openedBy = (below: number) => ({
  ways: [],
  passes: true,
  opening: 400 + below,
  comesApart: false,
  leastOpening: 300,
  zip: { cm: null, in: null },
  endsAt: { cm: null, in: null },
  levelMarks: [],
});

function askedOf(dress: Dress, closure: Closure, pieces: readonly Piece[]): SewingAsked {
  const half = setOf(pieces);
  const bodice = [half, half] as const;
  const isLined = dress.lining?.bodice === true;
  const edges = draftEdges({ edges: dress.edges ?? {}, straps: null, bodice, isLined, closure, allowances: {} });
  const skirt = dress.skirt === undefined ? null : skirtOn(dress.skirt, { closure });
  const { waist, body } = ASKED;
  const lined =
    dress.lining === undefined
      ? null
      : draftLining({ lining: dress.lining, bodice, skirt, waist, body, closure, allowances: {} });
  if (lined?.ok === false) throw new Error(JSON.stringify(lined.failure));
  const lining = lined?.value ?? null;
  return {
    dress,
    bodice,
    waist,
    skirt,
    lining,
    edges,
    closure,
    reading: openedBy(closure.belowWaist),
    under: "nothing",
    parts: [...bodiceParts(bodice, edges), ...edges.parts, ...(skirt?.parts ?? []), ...(lining?.parts ?? [])],
    allowances: {},
  };
}

interface Sewn {
  readonly sewing: readonly SewingStep[];
}

function dressed(dress: Dress, closure: Closure = OPENINGS.back, more: readonly Piece[] = BASQUES): Sewn {
  const pieces = dress.skirt === undefined ? [FRONT, BACK, ...more] : [FRONT, BACK];
  return { sewing: orderOfSewing(askedOf(dress, closure, pieces)) };
}

const stepOf = ({ sewing }: Sewn, name: SewingStepName): SewingStep | undefined =>
  sewing.find((step) => step.name === name);

/** Each seam: what it is, of which half, how often. */
const seamsOf = (plan: Sewn, name: SewingStepName): unknown =>
  stepOf(plan, name)?.seams.map(({ seam, half, count }) => `${seam ?? "plain"} ${half ?? "both"} ${count}`) ?? null;

describe("a bodice with its basque", () => {
  it("has its basque joined at the sides, and behind, but where it opens", () => {
    const seams = (closure: Closure) => seamsOf(dressed({}, closure), "basqueSeams");
    expect(seams(OPENINGS.back)).toEqual(["side both 2"]);
    expect(seams(OPENINGS.backToWaist)).toEqual(["side both 2", "centre both 1"]);
    expect(seams(OPENINGS.side)).toEqual(["side right 1", "centre both 1"]);
    expect(seams(OPENINGS.sideToWaist)).toEqual(["side both 2", "centre both 1"]);
  });

  it("has the bodice joined likewise above the waist", () => {
    expect(seamsOf(dressed({}, OPENINGS.back), "centreBackSeam")).toBeNull();
    expect(seamsOf(dressed({}, OPENINGS.side), "centreBackSeam")).toEqual(["centre both 1"]);
    expect(seamsOf(dressed({}, OPENINGS.side), "bodiceSides")).toEqual(["side right 1"]);
    expect(seamsOf(dressed({}, OPENINGS.back), "stayStitch")).toEqual(["neck both 2", "armhole both 2"]);
    expect(seamsOf(dressed({}), "basqueToBodice")).toEqual(expect.arrayContaining(["waist both 2"]));
  });

  it("is closed below the opening as far as the seam goes on there", () => {
    for (const closure of [OPENINGS.back, OPENINGS.side]) {
      const plan = dressed({}, closure);
      expect(stepOf(plan, "seamBelowOpening")?.length).toBe(40);
      expect(stepOf(plan, "hemShell")).toMatchObject({
        parts: ["frontBasque", "backBasque"],
        allowance: 30,
        length: 720,
      });
    }
    expect(stepOf(dressed({}, OPENINGS.backToWaist), "seamBelowOpening")).toBeUndefined();
    expect(stepOf(dressed({}, { place: "centreBack", belowWaist: 900 }), "seamBelowOpening")).toBeUndefined();
  });

  it("lined, has its lining joined likewise", () => {
    const lined = (closure: Closure) => dressed({ lining: { bodice: true } }, closure);
    expect(seamsOf(lined(OPENINGS.back), "liningSeams")).toBeNull();
    expect(seamsOf(lined(OPENINGS.side), "liningSeams")).toEqual(["centre both 1"]);
    const basque = (closure: Closure) => {
      const seams = seamsOf(lined(closure), "liningBasque");
      return Array.isArray(seams) ? seams.filter((seam) => !String(seam).startsWith("waist")) : seams;
    };
    expect(basque(OPENINGS.back)).toEqual(["side both 2", "plain both 1"]);
    expect(basque(OPENINGS.backToWaist)).toEqual(["side both 2", "centre both 1"]);
    expect(basque(OPENINGS.side)).toEqual(["side right 1", "centre both 1", "plain both 1"]);
    // The left one has room for the zip, and so is none like the right one.
    expect(basque(OPENINGS.sideToWaist)).toEqual(["side left 1", "side right 1", "centre both 1"]);
    const plan = lined(OPENINGS.back);
    expect(seamsOf(plan, "hemLining")).toEqual(["hem both 2"]);
    expect(stepOf(plan, "closeLiningWaist")).toBeUndefined();
    // Both sides of the opening, all of which is lined.
    expect(stepOf(plan, "handSewLining")?.length).toBe(2 * 580);
    expect(seamsOf(plan, "liningTopEdge")).toEqual(["neck both 2", "armhole both 2"]);
    expect(stepOf(plan, "liningTopEdge")?.way).toBe("throughShoulders");
    expect(stepOf(lined(OPENINGS.side), "liningTopEdge")?.way).toBe("rolled");
    expect(stepOf(plan, "bodiceSides")?.way).toBe("withLining");
    expect(stepOf(plan, "liningSides")).toBeUndefined();
    expect([stepOf(plan, "fitBeforeTopEdge"), stepOf(plan, "fitBeforeWaist")].map((step) => step?.parts)).toEqual(
      Array.from({ length: 2 }, () => ["front", "back", "frontBasque", "backBasque"]),
    );
  });
});

describe("a bodice to the waist", () => {
  const short = (dress: Dress, closure: Closure = OPENINGS.backToWaist) => dressed(dress, closure, []);

  it("is finished there; lined, by its lining", () => {
    expect(stepOf(short({}), "finishWaist")).toMatchObject({ parts: ["front", "back"], length: 720, allowance: 15 });
    expect(stepOf(short({}), "hemShell")).toBeUndefined();
    const lined = short({ lining: { bodice: true } });
    expect(stepOf(lined, "closeLiningWaist")?.length).toBe(720);
    expect(stepOf(lined, "handSewLining")?.length).toBe(800);
    expect(stepOf(lined, "liningBasque")).toBeUndefined();
    const asked = askedOf({ lining: { bodice: true } }, OPENINGS.backToWaist, [FRONT, BACK]);
    expect(orderOfSewing({ ...asked, reading: null }).map(({ name }) => name)).not.toContain("handSewLining");
  });

  it("is sewn along both pieces of each seam", () => {
    const pieces = (name: SewingStepName) => stepOf(short({}), name)?.seams.map((seam) => seam.pieces.toSorted());
    expect([pieces("bodiceSides"), pieces("shoulderSeams")]).toEqual([[["back", "front"]], [["back", "front"]]]);
    expect(stepOf(short({}), "bodiceSides")?.parts).toEqual(expect.arrayContaining(["front", "back"]));
  });

  it("has its straps set in where they are sewn, which is no seam of the strap's own", () => {
    const toStrap = (piece: Piece): Piece => ({
      ...piece,
      edges: piece.edges.map((edge) => (edge.seam === "shoulder" ? { ...edge, seam: "strap" } : edge)),
    });
    const strap = toStrap(upper("strap", 80, false));
    const asked = askedOf({}, OPENINGS.backToWaist, [toStrap(FRONT), toStrap(BACK), strap]);
    const basted = orderOfSewing(asked).find(({ name }) => name === "basteStraps");
    // 125 and 115 on each half.
    expect(basted?.seams).toEqual([{ seam: "strap", pieces: ["front", "back"], half: null, length: 240, count: 2 }]);
    expect(orderOfSewing(asked).find(({ name }) => name === "shoulderSeams")).toBeUndefined();
  });

  it("has its darts marked, also those of one half alone", () => {
    const darted: Piece = {
      ...FRONT,
      points: {
        ...FRONT.points,
        waistDartOuter: named(110, 400, "waist"),
        waistDartInner: named(90, 400, "waist"),
        waistDartApex: named(100, 250, "bust"),
      },
      edges: [
        ...FRONT.edges.slice(0, 4),
        straight("sideWaist", "waistDartOuter", "waist"),
        mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
        straight("waistDartInner", "centreWaist", "waist"),
        ...FRONT.edges.slice(5),
      ],
      darts: [
        {
          name: "waistDart",
          seam: "waist",
          inner: "waistDartInner",
          outer: "waistDartOuter",
          apex: "waistDartApex",
          aimsAt: null,
        },
      ],
    };
    const asked = askedOf({}, OPENINGS.backToWaist, [FRONT, BACK]);
    const marked = (parts: readonly Part[]) =>
      orderOfSewing({ ...asked, parts }).find(({ name }) => name === "markDarts")?.parts;
    const with1 = (piece: Piece, otherHalf?: Piece): readonly Part[] =>
      asked.parts.map((part) =>
        part.kind === "piece" && part.key === "front"
          ? { ...part, piece, ...(otherHalf === undefined ? {} : { otherHalf }) }
          : part,
      );
    expect(marked(asked.parts)).toBeUndefined();
    expect(marked(with1(darted))).toEqual(["front"]);
    expect([marked(with1(FRONT, darted)), marked(with1(FRONT, FRONT))]).toEqual([["front"], undefined]);
  });
});

describe("facings of it", () => {
  const claims = (back: Piece, parts?: readonly Part[]) => {
    const asked = askedOf({}, OPENINGS.backToWaist, [FRONT, back]);
    return checkEdges({ ...asked, parts: parts ?? asked.parts }).map(({ name, ok, measured, expected }) => [
      name,
      ok,
      Math.round(measured * 1000) / 1000,
      Math.round(expected * 1000) / 1000,
    ]);
  };
  const wider = (ease: number): Piece => ({ ...upper("back", 185 + ease, false), seamEase: { shoulder: ease } });

  it("walk along neck and armhole; the back's shoulder and side along the front's, with the ease of that bodice", () => {
    // In one: the whole shoulder of 125.
    const walked = (ease: number, own: number, isRight = true) => [
      ["facingsWalk", true, 60, 60],
      ["facingsWalk", true, 150, 150],
      ["facingsWalk", true, 60, 60],
      ["facingsWalk", true, 150, 150],
      ["facingsWalk", isRight, 125 + own, 125 + ease],
      ["facingsWalk", true, 60, 60],
    ];
    // 6 as our own drafts have it, where the pattern has none of its own.
    const { seamEase: _, ...plain } = wider(6);
    expect(claims(plain)).toEqual(walked(6, 6));
    expect(claims(wider(3))).toEqual(walked(3, 3));
    expect(claims({ ...wider(3), seamEase: { shoulder: 2 } })).toEqual(walked(2, 3, false));
  });
});

describe("a fitted skirt", () => {
  const skirt = { kind: "aLine", length: 600 } as const;

  it("is joined at the sides and behind, but where it opens", () => {
    const seams = (closure: Closure, more: Partial<NonNullable<Dress["skirt"]>> = {}) => {
      const plan = dressed({ skirt: { ...skirt, ...more } }, closure);
      return [seamsOf(plan, "skirtSides"), seamsOf(plan, "skirtCentreSeams")];
    };
    expect(seams(OPENINGS.back)).toEqual([["side both 2"], null]);
    expect(seams(OPENINGS.backToWaist)).toEqual([["side both 2"], ["centre both 1"]]);
    // Both of its pieces lie on the fold.
    expect(seams(OPENINGS.side)).toEqual([["side right 1"], null]);
    expect(seams(OPENINGS.sideToWaist)).toEqual([["side both 2"], null]);
    expect(seams(OPENINGS.side, { panels: 4 })[1]).toEqual(["centre both 1", "centre both 1"]);
    expect(seams(OPENINGS.back, { panels: 4 })[1]).toEqual(["centre both 1"]);
  });

  it("has pockets before its sides, left out of the one that opens", () => {
    const pockets = (closure: Closure) => stepOf(dressed({ skirt: { ...skirt, pockets: true } }, closure), "pockets");
    expect([pockets(OPENINGS.back)?.way, pockets(OPENINGS.side)?.way]).toEqual([undefined, "opens"]);
    expect(pockets(OPENINGS.back)?.parts).toEqual(["skirtFront", "skirtBack"]);
    expect(stepOf(dressed({ skirt }), "pockets")).toBeUndefined();
  });

  it("in six panels has both panel seams of each half; a vent is sewn on the back", () => {
    expect(seamsOf(dressed({ skirt: { ...skirt, panels: 6 } }), "panelSeams")).toEqual([
      "panel both 2",
      "panel both 2",
    ]);
    const vented = stepOf(dressed({ skirt: { kind: "straight", length: 600, vent: 150 } }), "vent");
    expect([vented?.parts, vented?.length]).toEqual([["skirtBack"], 300]);
  });

  it("lined, has its lining joined but for what is left free of the zip", () => {
    const lined = (closure: Closure) => dressed({ skirt, lining: { skirt: true } }, closure);
    expect(seamsOf(lined(OPENINGS.back), "liningSkirtSeams")).toEqual(["side both 2", "centre both 1"]);
    const atSide = seamsOf(lined(OPENINGS.side), "liningSkirtSeams");
    expect(atSide).toEqual(expect.arrayContaining(["side right 1", "side left 1"]));
    const plan = lined(OPENINGS.back);
    expect(seamsOf(plan, "liningSkirtToWaist")).toEqual(["plain both 1"]);
    // Along the zip below the waist alone.
    expect(stepOf(plan, "handSewLining")?.length).toBe(360);
    expect(stepOf(plan, "liningSkirtSeams")?.allowance).toBe(15);
    expect(stepOf(plan, "liningTopEdge")).toBeUndefined();
  });
});

describe("edges", () => {
  it("faced apart have each its facing, ended by the opening on one of them", () => {
    const apart = (closure: Closure) => dressed({ edges: { facingDepth: 26 } }, closure);
    const ways = (closure: Closure) =>
      (["faceNeck", "faceArmholes"] as const).map((name) => {
        const step = stepOf(apart(closure), name);
        return [step?.parts, step?.way, seamsOf(apart(closure), name)];
      });
    const [neck, armholes] = [
      ["frontFacing", "backFacing"],
      ["frontArmholeFacing", "backArmholeFacing"],
    ];
    expect(ways(OPENINGS.back)).toEqual([
      [neck, "opens", ["neck both 1"]],
      [armholes, undefined, ["armhole both 2"]],
    ]);
    expect(ways(OPENINGS.side)).toEqual([
      [neck, undefined, ["neck both 1"]],
      [armholes, "opens", ["armhole both 2"]],
    ]);
    expect(seamsOf(apart(OPENINGS.back), "facingSeams")).toEqual(["shoulder both 2", "shoulder both 2", "side both 2"]);
    expect(stepOf(apart(OPENINGS.back), "faceTopEdge")).toBeUndefined();
    expect(stepOf(apart(OPENINGS.back), "handSewFacing")?.parts).toEqual([...neck, ...armholes]);
    expect(seamsOf(apart(OPENINGS.back), "underStitch")).toEqual(["neck both 1", "armhole both 2"]);
  });

  it("bound have each its strip", () => {
    const bound = (closure: Closure) => dressed({ edges: { neck: "binding", armhole: "binding" } }, closure);
    const of = (closure: Closure) =>
      (["bindNeck", "bindArmholes"] as const).map((name) => {
        const step = stepOf(bound(closure), name);
        return [step?.parts, step?.way, seamsOf(bound(closure), name)];
      });
    expect(of(OPENINGS.back)).toEqual([
      [["binding-1"], "opens", ["neck both 1"]],
      [["binding-2"], undefined, ["armhole both 2"]],
    ]);
    expect(of(OPENINGS.side).map(([, way]) => way)).toEqual([undefined, "opens"]);
    expect(stepOf(bound(OPENINGS.back), "underStitch")).toBeUndefined();
    // One bound, one faced.
    const mixed = dressed({ edges: { neck: "facing", armhole: "binding" } });
    expect([stepOf(mixed, "bindArmholes")?.parts, stepOf(mixed, "faceNeck")?.parts]).toEqual([
      ["binding-1"],
      ["frontFacing", "backFacing"],
    ]);
  });
});

describe("three tiers", () => {
  it("wait each for its own, and for the widths above to be joined", () => {
    const skirt = skirtOn({ kind: "tiers", length: 900, ratio: 1.6, tiers: [{}, {}, {}] });
    const steps = orderOfSewing({
      dress: { skirt: { kind: "tiers" } },
      bodice: [setOf([]), setOf([])],
      waist: ASKED.waist,
      skirt,
      lining: null,
      edges: { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] },
      closure: OPENINGS.backToWaist,
      reading: null,
      under: "nothing",
      parts: skirt.parts,
      allowances: {},
    });
    const waits = (name: SewingStepName, at: number): readonly string[] =>
      steps
        .find((step) => step.name === name && step.at === at)
        ?.after.map((index) => `${steps[index]?.name ?? ""} ${steps[index]?.at ?? ""}`.trim()) ?? [];
    expect(steps.slice(2, 10).map(({ name, at }) => `${name} ${at ?? ""}`)).toEqual([
      "joinTierPanels 1",
      "joinTierPanels 2",
      "joinTierPanels 3",
      "gatherTiers 2",
      "tierToTier 2",
      "gatherTiers 3",
      "tierToTier 3",
      "gatherSkirt 1",
    ]);
    const cut = ["washCloth", "cutOut"];
    expect(waits("gatherTiers", 3)).toEqual([...cut, "joinTierPanels 3"]);
    expect(waits("tierToTier", 3)).toEqual([...cut, "joinTierPanels 2", "joinTierPanels 3", "gatherTiers 3"]);
    expect(waits("tierToTier", 2)).toEqual([...cut, "joinTierPanels 1", "joinTierPanels 2", "gatherTiers 2"]);
    expect(waits("gatherSkirt", 1)).toEqual([...cut, "joinTierPanels 1"]);
  });
});
