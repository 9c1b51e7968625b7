/** Claims about a dress by hand: what each measures, what it is held to, and both sides of what it lets pass. mm. */
import { describe, expect, it } from "vitest";
import type { Skirt } from "../../../src/core/decisions/dress";
import { bodiceParts } from "../../../src/core/dress/bodiceParts";
import { checkSkirt } from "../../../src/core/dress/checkSkirt";
import { clothAskedOf, withCloth } from "../../../src/core/dress/dressCloth";
import { dartPlaces } from "../../../src/core/dress/dartPlaces";
import { dressedBody } from "../../../src/core/dress/dressedBody";
import type { StrapFigures } from "../../../src/core/edges/edgesDraft";
import { finishedWaist } from "../../../src/core/dress/finishedWaist";
import { tapesOf } from "../../../src/core/measures/tape";
import type { DressBody, FinishedWaist } from "../../../src/core/parts/dressBody";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import type { SkirtDraft } from "../../../src/core/skirts/skirtDraft";
import { ASKED, skirtOn } from "../../support/skirts";
import { testWork } from "../../support/works";

const close = (value: number): unknown => expect.closeTo(value, 4);
const NO_EDGES = { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] };
const nobody = setOf([]);
const FLOOR = { front: 1010, side: 1030, back: 1000 };
const onFloor: DressBody = { ...ASKED.body, toFloor: FLOOR };

const claims = (skirt: SkirtDraft | null, body = ASKED.body, waist: FinishedWaist = ASKED.waist) => {
  const asked: SewingAsked = {
    dress: {},
    bodice: [nobody, nobody],
    waist,
    skirt,
    lining: null,
    edges: NO_EDGES,
    closure: ASKED.closure,
    reading: null,
    under: "nothing",
    parts: [],
    allowances: {},
  };
  return checkSkirt(asked, body).map(({ name, ok, measured, expected, tolerance }) => [
    name,
    ok,
    measured,
    expected,
    tolerance,
  ]);
};

const waistOf = (front: number, back: number, right = { front, back }): FinishedWaist => ({
  halves: [{ front, back }, right],
  whole: front + back + right.front + right.back,
});

describe("claims about a gathered skirt", () => {
  const two: Skirt = { kind: "tiers", length: 600, ratio: 1.5 };

  it("are that it is drawn up to the waist, and is cut as wide as it is to be", () => {
    expect(claims(null)).toEqual([]);
    expect(claims(skirtOn(two))).toEqual([
      ["waistWalks", true, 720, 720, 0.05],
      ["tiersGather", true, 1080, 1080, 0.05],
    ]);
  });

  it("fail where it is not: the worst is told", () => {
    const draft = skirtOn(two);
    const [first, second] = draft.tiers ?? [];
    if (first === undefined || second === undefined) throw new Error("tiers");
    const waist = (whole: number) => claims(draft, ASKED.body, { ...ASKED.waist, whole })[0];
    expect([waist(720.04), waist(719.96), waist(720.06), waist(719.94)].map((one) => one?.[1])).toEqual([
      true,
      true,
      false,
      false,
    ]);
    const gathers = (tiers: SkirtDraft["tiers"]) => claims({ ...draft, ...(tiers === undefined ? {} : { tiers }) })[1];
    expect(gathers([{ ...first, width: 1081 }, second])).toEqual(["tiersGather", false, 1080, 1081, 0.05]);
    // 1080 of the tier above, gathered to 1085 by its word; 1620 in two of 810.
    expect(
      gathers([
        { ...first, width: 1081 },
        { ...second, gatheredTo: 1085 },
      ]),
    ).toEqual(["tiersGather", false, 1085, 1080, 0.05]);
    expect(gathers([first, { ...second, width: 1610 }])).toEqual(["tiersGather", false, 1620, 1610, 0.05]);
  });
});

describe("a level hem", () => {
  const hem = (skirt: Skirt, toFloor: Partial<typeof FLOOR> = {}) =>
    claims(skirtOn(skirt, { body: onFloor }), { ...onFloor, toFloor: { ...FLOOR, ...toFloor } }).find(
      ([name]) => name === "hemLevel",
    );

  it.each(["gathered", "tiers", "circle", "aLine", "straight"] as const)(
    "of the kind %s is as far from the floor all round, to 2 mm; the worst place is told",
    (kind) => {
      const skirt: Skirt = { kind, length: 600, ...(kind === "circle" ? { share: 0.5 } : {}) };
      // 430 all round.
      expect(hem(skirt)).toEqual(["hemLevel", true, close(430), close(430), 2]);
      expect(hem(skirt, { front: 1011.9 })).toEqual(["hemLevel", true, close(431.9), close(430), 2]);
      expect(hem(skirt, { front: 1012.1 })).toEqual(["hemLevel", false, close(432.1), close(430), 2]);
      expect(hem(skirt, { back: 997, front: 1011 })).toEqual(["hemLevel", false, close(427), close(430), 2]);
      expect(hem(skirt, { side: 1033 })).toEqual(["hemLevel", false, close(430), close(433), 2]);
    },
  );

  it("may be off by just 2, and goes by the first of two ways that are off alike", () => {
    const tiers: Skirt = { kind: "tiers", length: 600 };
    expect(hem(tiers, { front: 1012, back: 998 })).toEqual(["hemLevel", true, 432, 430, 2]);
    expect(hem(tiers, { front: 1009, back: 1003 })).toEqual(["hemLevel", false, 433, 430, 2]);
  });

  it("is none of a peplum, nor where the floor was not measured", () => {
    expect(hem({ kind: "peplum" })).toBeUndefined();
    expect(claims(skirtOn({ kind: "circle", length: 600 })).map(([name]) => name)).toEqual(["waistWalks"]);
  });
});

describe("claims about a round skirt", () => {
  it.each([
    { kind: "circle", length: 600 },
    { kind: "circle", length: 400, share: 0.25 },
    { kind: "peplum", peplumShare: 1 },
    { kind: "peplum" },
  ] as const)("are that its arcs make the waist, slashed or on the fold: %j", (skirt) => {
    expect(claims(skirtOn(skirt))[0]).toEqual(["waistWalks", true, close(720), 720, 0.05]);
    expect(claims(skirtOn(skirt, { body: onFloor }))[0]).toEqual(["waistWalks", true, close(720), 720, 0.05]);
  });
});

it("what is no sector makes no waist", () => {
  const circle = skirtOn({ kind: "circle", length: 600 });
  const [binding] = skirtOn({ kind: "gathered", length: 600 }).parts;
  const parts = binding === undefined ? [] : [...circle.parts, binding];
  expect(claims({ ...circle, parts })).toEqual([["waistWalks", true, close(720), 720, 0.05]]);
});

describe("claims about a fitted skirt", () => {
  const [straightOne, six] = [
    skirtOn({ kind: "straight", length: 600 }),
    skirtOn({ kind: "aLine", length: 600, panels: 6 }),
  ];

  it("are that each quarter is as long as the bodice's, and that its sides meet", () => {
    for (const draft of [straightOne, six]) {
      const [waist, sides, ...more] = claims(draft);
      expect(more).toEqual([]);
      expect(waist?.slice(0, 2)).toEqual(["waistWalks", true]);
      expect(sides?.slice(0, 2)).toEqual(["skirtSidesWalk", true]);
    }
  });

  it("fail by quarter", () => {
    expect(claims(six, ASKED.body, waistOf(187, 174))[0]).toEqual(["waistWalks", false, close(185), 187, 0.05]);
    expect(claims(six, ASKED.body, waistOf(185, 177))[0]).toEqual(["waistWalks", false, close(175), 177, 0.05]);
    // The right half alone.
    expect(claims(six, ASKED.body, waistOf(185, 175, { front: 188, back: 175 }))[0]).toEqual([
      "waistWalks",
      false,
      close(185),
      188,
      0.05,
    ]);
  });

  it("fail where a side, or the seam between two panels, is longer than its other", () => {
    const longer = skirtOn({ kind: "aLine", length: 610, panels: 6 });
    const swapped = (names: readonly PieceName[], from = six, to = longer): SkirtDraft => {
      const [set] = from.halves;
      const half: PieceSet = { ...set, ...setOf(names.map((name) => pieceIn(to.halves[0], name))) };
      return { ...from, halves: [half, half] };
    };
    const sides = (draft: SkirtDraft) => claims(draft).find(([name]) => name === "skirtSidesWalk");
    expect(sides(swapped(["skirtSideFront", "skirtFront"]))).toEqual([
      "skirtSidesWalk",
      false,
      close(610),
      close(600),
      0.05,
    ]);
    const panels = (name: PieceName) => sides(swapped([name]))?.slice(1, 2);
    expect([panels("skirtFront"), panels("skirtBack")]).toEqual([[false], [false]]);
    const shorter = sides(swapped(["skirtBack"], straightOne, skirtOn({ kind: "straight", length: 590 })));
    expect(shorter).toEqual(["skirtSidesWalk", false, close(600), close(590), 0.05]);
  });
});

/** 100 and 80 wide at the waist beside a dart of 20, its ring begun where it is told. */
function darted(name: PieceName, begin = 0, more: Partial<Piece> = {}): Piece {
  const edges = [
    straight("centreNeck", "underarm", "neck"),
    straight("underarm", "sideWaist", "side"),
    straight("sideWaist", "waistDartOuter", "waist"),
    mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
    straight("waistDartInner", "centreWaist", "waist"),
    straight("centreWaist", "centreNeck", "centre"),
  ];
  return {
    name,
    points: {
      centreNeck: named(0, 0, "neck"),
      underarm: named(200, 0, "bust"),
      sideWaist: named(200, 300, "waist"),
      waistDartOuter: named(120, 300, "waist"),
      waistDartInner: named(100, 300, "waist"),
      waistDartApex: named(110, 150, "bust"),
      centreWaist: named(0, 300, "waist"),
    },
    edges: [...edges.slice(begin), ...edges.slice(0, begin)],
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
    levelLines: [],
    centreOnFold: false,
    ...more,
  };
}

describe("the finished waist", () => {
  it("is that of each half, darts shut, basques and straps left out", () => {
    const one = setOf([darted("front"), darted("back"), darted("backBasque")]);
    const half = { front: 180, back: 180 };
    const alike = finishedWaist([one, one]);
    expect(alike).toEqual({ halves: [half, half], whole: 720 });
    expect(alike.halves[0]).toBe(alike.halves[1]);
    const banded = setOf([darted("centreFront"), darted("sideFront"), darted("back")]);
    expect(finishedWaist([one, banded])).toEqual({ halves: [half, { front: 360, back: 180 }], whole: 900 });
  });

  it("has its darts where they lie along it from the centre, whichever way the ring begins", () => {
    const places = (set: PieceSet) => dartPlaces([set, set])[0];
    expect(places(setOf([darted("front"), darted("back")]))).toEqual({ front: [100], back: [100] });
    // A princess seam lies where the centre front ends; a band is what is at the waist.
    expect(places(setOf([darted("centreFront"), darted("sideFront")]))).toEqual({ front: [180], back: [] });
    expect(places(setOf([darted("front"), darted("frontBand", 0, { darts: [], edges: [] })]))).toEqual({
      front: [],
      back: [],
    });
    const [left, right] = dartPlaces([setOf([darted("front")]), setOf([darted("back")])]);
    expect([left, right]).toEqual([
      { front: [100], back: [] },
      { front: [], back: [100] },
    ]);
    const same = setOf([darted("front")]);
    expect(new Set(dartPlaces([same, same])).size).toBe(1);
    // A waist that does not come to the centre has none that a skirt could run on from.
    const { centreWaist, ...points } = darted("front").points;
    const apart = darted("front", 0, {
      points: { ...points, ...(centreWaist === undefined ? {} : { waistMiddle: centreWaist }) },
      edges: darted("front").edges.map((edge) => ({
        ...edge,
        from: edge.from === "centreWaist" ? "waistMiddle" : edge.from,
        to: edge.to === "centreWaist" ? "waistMiddle" : edge.to,
      })),
    });
    expect(places(setOf([apart]))).toEqual({ front: [], back: [] });
  });
});

describe("parts of the bodice", () => {
  it("are each piece, straps of two layers, but the pattern's strap where another was drafted", () => {
    const set = setOf([darted("front", 0, { centreOnFold: true }), darted("back"), darted("strap")]);
    const anew: StrapFigures = {
      kind: "plain",
      width: 20,
      seamWidth: 20,
      asked: 20,
      length: 300,
      way: 300,
      coversBra: null,
      coversFrom: null,
      elastic: null,
      fromCentreBack: 80,
    };
    const made = (strap: boolean, right = set) =>
      bodiceParts([set, right], {
        ...NO_EDGES,
        strap: strap ? { left: anew, right: anew } : null,
      }).map(({ key, group, cut, half, cloth, grain }) => [key, group, cut.onFold, cut.count, half, cloth, grain]);
    const whole = [
      ["front", "bodice", true, 1, null, "main", "along"],
      ["back", "bodice", false, 2, null, "main", "along"],
    ];
    expect(made(false)).toEqual([...whole, ["strap", "strap", false, 4, null, "main", "along"]]);
    expect(made(true)).toEqual(whole);
    const wider = { ...darted("back").points, sideWaist: named(210, 300, "waist") };
    const thick = { ...darted("strap").points, sideWaist: named(210, 300, "waist") };
    const right = setOf(
      [set.front, darted("back", 0, { points: wider }), darted("strap", 0, { points: thick })].flatMap(
        (one) => one ?? [],
      ),
    );
    expect(made(false, right)).toEqual([
      whole[0],
      ["back-left", "bodice", false, 1, "left", "main", "along"],
      ["back-right", "bodice", false, 1, "right", "main", "along"],
      ["strap-left", "strap", false, 2, "left", "main", "along"],
      ["strap-right", "strap", false, 2, "right", "main", "along"],
    ]);
  });
});

describe("the body of a dress", () => {
  const tapes = tapesOf({ bustGirth: 905, waistGirth: 752, hipGirth: 1034, height: 1680 });
  const body = (measures: NonNullable<NonNullable<typeof testWork.dress>["measures"]>) =>
    dressedBody({ ...testWork, tapes, dress: { measures } });

  it("is off the tape, and what was measured for the dress", () => {
    const floor = { waistToFloorFront: 1010, waistToFloorSide: 1030, waistToFloorBack: 1000 };
    expect(body({ waistToHip: 210, shoulderGirth: 1100, ...floor })).toEqual({
      bust: 905,
      waist: 752,
      hip: 1034,
      height: 1680,
      hipDepth: 210,
      isHipDepthUsual: false,
      toFloor: FLOOR,
      shoulderGirth: 1100,
    });
    expect(dressedBody({ ...testWork, tapes: tapesOf({}) })).toMatchObject({
      bust: 0,
      waist: 0,
      hip: null,
      height: null,
    });
    expect(body({})).toMatchObject({ isHipDepthUsual: true, toFloor: null, shoulderGirth: null });
    for (const missing of ["waistToFloorFront", "waistToFloorSide", "waistToFloorBack"] as const) {
      const { [missing]: _, ...others } = floor;
      expect(body(others).toFloor).toBeNull();
    }
  });

  it("has its hip from 100 to 400 below the waist", () => {
    expect([60, 100, 400, 900].map((waistToHip) => body({ waistToHip }).hipDepth)).toEqual([100, 100, 400, 400]);
    const usual = body({}).hipDepth;
    expect(usual).toBeGreaterThan(180);
    expect(usual).toBeLessThan(230);
  });
});

describe("the cloth of a dress", () => {
  const work = { ...testWork, dress: { cloths: { main: { width: 1100, length: 900, shrinkage: 5 } } } };

  it("is asked for as it is, with what is changed of it", () => {
    const asked = clothAskedOf(work, "main");
    expect(asked).toMatchObject({
      name: "main",
      cloth: { width: 1100, length: 900, shrinkage: 5 },
      allowances: {},
      closure: testWork.pattern.closure,
      unit: "cm",
    });
    expect(asked?.parts.length).toBeGreaterThan(2);
    expect(clothAskedOf(work, "underlining")).toBeNull();
    expect(withCloth(work.dress, "main", { width: 1400 })).toEqual({
      cloths: { main: { width: 1400, length: 900, shrinkage: 5 } },
    });
    expect(withCloth({ zip: "lapped" }, "lining", { fold: true })).toEqual({
      zip: "lapped",
      cloths: { lining: { fold: true } },
    });
  });
});
