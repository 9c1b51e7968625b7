/**
 * Whole skirts by hand: every number of a small case, and both sides of every limit. Numbers of the trade (ease, allowances,
 * widths of darts) are common practice, no source. Waist 720, hip 960 and 50 of ease 200 down, cloth of 1400 less two selvages.
 */
import { Bezier } from "bezier-js";
import { describe, expect, it } from "vitest";
import type { Skirt } from "../../../src/core/decisions/dress";
import type { Closure } from "../../../src/core/decisions/pattern";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { draftSkirt } from "../../../src/core/skirts/draftSkirt";
import { toldRatio } from "../../../src/core/skirts/gathered";
import { divisionsOf, sectorsOf, type RoundQuarters } from "../../../src/core/skirts/sectors";
import type { SkirtAsked } from "../../../src/core/skirts/skirtDraft";
import { angleOf, hemRadius, marksLength, marksOf } from "../../../src/core/skirts/waistArc";
import { radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";
import { ASKED, skirtOn } from "../../support/skirts";

const close = (value: number): unknown => expect.closeTo(value, 6);
const back = (belowWaist: number): Closure => ({ place: "centreBack", belowWaist });
const side = (belowWaist: number): Closure => ({ place: "side", belowWaist });
const onBody = (body: Partial<SkirtAsked["body"]>): Partial<SkirtAsked> => ({ body: { ...ASKED.body, ...body } });
/** As far to the floor all round: the centre is then as long as the side. */
const EVEN = { front: 1050, side: 1050, back: 1050 };

/** What it is refused with; null: it is made. */
function refusalOf(skirt: Skirt, asked: Partial<SkirtAsked> = {}): unknown {
  const made = draftSkirt({ ...ASKED, ...asked, skirt });
  return made.ok ? null : made.failure;
}

/** At least all of this; null: null. */
const having = (refusal: object | null): unknown => (refusal === null ? null : expect.objectContaining(refusal));

describe("a gathered skirt", () => {
  it("is one and a half times the waist, in one width", () => {
    expect(skirtOn({ kind: "gathered", length: 600, pockets: true })).toEqual({
      kind: "gathered",
      lengths: { front: 600, side: 600, back: 600 },
      hem: 1080,
      halves: [{}, {}],
      parts: [
        {
          kind: "rectangle",
          key: "gathered",
          group: "skirt",
          cloth: "main",
          cut: { onFold: false, count: 1 },
          half: null,
          grain: "along",
          name: "gathered",
          tier: 1,
          width: 1080,
          depth: 600,
          allowances: { top: 15, bottom: 30, sides: 15 },
        },
      ],
      levels: [
        { below: 0, girth: 720 },
        { below: 0, girth: 1080 },
        { below: 600, girth: 1080 },
      ],
      tiers: [{ width: 1080, gatheredTo: 720, depth: 600, panels: 1, panelWidth: 1080 }],
      notes: [
        { code: "skirt/hem-not-levelled" },
        { code: "skirt/join-at-opening", tier: 1 },
        { code: "skirt/pockets" },
      ],
    });
  });

  it("is as much wider as her hip asks, told in hundredths", () => {
    const half = { front: 150, back: 150 };
    // 1010 / 600 = 1.6833.
    const draft = skirtOn({ kind: "gathered", length: 600 }, { waist: { halves: [half, half], whole: 600 } });
    expect(draft.hem).toBeCloseTo(1.69 * 600, 6);
    expect([toldRatio(1.4), toldRatio(1.401), toldRatio(1.1), toldRatio(2)]).toEqual([1.4, 1.41, 1.1, 2]);
  });

  it("is cut lower where the way to the floor is shorter, and its levels follow the seam that opens", () => {
    const asked = onBody({ toFloor: { front: 1010, side: 1030, back: 1040 } });
    const [atBack, atSide] = [back(180), side(180)].map((closure) =>
      skirtOn({ kind: "gathered", length: 600 }, { ...asked, closure }),
    );
    expect(atBack?.lengths).toEqual({ front: 580, side: 600, back: 610 });
    expect(atBack?.parts).toMatchObject([{ depth: 610, upperEdge: { front: 30, side: 10, back: 0 } }]);
    // The upper one alone.
    const tiers = skirtOn({ kind: "tiers", length: 600 }, asked).parts.map((part) => "upperEdge" in part);
    expect(tiers).toEqual([true, false]);
    expect(atBack?.levels.map(({ below }) => below)).toEqual([0, 0, 610]);
    expect(atSide?.levels.map(({ below }) => below)).toEqual([0, 0, 600]);
    expect(atSide?.notes).toEqual([{ code: "skirt/join-at-opening", tier: 1 }]);
  });

  it("is joined at the opening where that goes below a seam, not just to it", () => {
    const joined = (belowWaist: number) =>
      skirtOn(
        { kind: "tiers", length: 600 },
        { ...onBody({ toFloor: { front: 1030, side: 1030, back: 1040 } }), closure: back(belowWaist) },
      ).notes;
    expect([310, 310.5].map((belowWaist) => joined(belowWaist).length)).toEqual([1, 2]);
  });

  it.each([
    [{ ratio: 1.41 }, {}, null],
    [{ ratio: 1.4 }, {}, { code: "skirt/ratio-out-of-range", ratio: 1.4, least: 1.41, most: 4 }],
    [{ ratio: 4 }, {}, null],
    [{ ratio: 4.01 }, {}, { code: "skirt/ratio-out-of-range", ratio: 4.01, least: 1.41, most: 4 }],
    [{ ratio: 1 }, onBody({ hip: null }), null],
    [{ ratio: 0.99 }, onBody({ hip: null }), { code: "skirt/ratio-out-of-range", ratio: 0.99, least: 1, most: 4 }],
    // 100 of cloth beside two selvages of 10 and two allowances of 15.
    [{}, { clothWidth: 150 }, null],
    [{}, { clothWidth: 149 }, { code: "skirt/cloth-too-narrow", width: 149, needed: 150 }],
    [{ length: 200 }, {}, null],
    [{ length: 199.5 }, {}, { code: "skirt/length-out-of-range", length: 199.5, least: 200, most: 1400 }],
    [{ length: 1400 }, {}, null],
    [{ length: 1400.5 }, {}, { code: "skirt/length-out-of-range", length: 1400.5, least: 200, most: 1400 }],
  ] as const)("%j on %j: %j", (skirt, asked, refusal) => {
    expect(refusalOf({ kind: "gathered", length: 600, ...skirt }, asked)).toEqual(refusal);
  });

  it.each(["front", "back"] as const)("is no longer at the %s than the longest either", (at) => {
    const toFloor = { ...EVEN, [at]: 1070 };
    const refusal = { code: "skirt/length-out-of-range", length: 1410, least: 200, most: 1400 };
    expect(refusalOf({ kind: "gathered", length: 1380 }, onBody({ toFloor }))).toBeNull();
    expect(refusalOf({ kind: "gathered", length: 1390 }, onBody({ toFloor }))).toEqual(refusal);
  });

  it.each([
    // To the knee: 0.34 of her height, 0.55 of the way to the floor, in fives.
    [{ height: 1700 }, 580, "height"],
    [{ height: 1720 }, 585, "height"],
    [{ height: null, toFloor: { front: 1030, side: 1030, back: 1030 } }, 565, "toFloor"],
    [{ height: 1680, toFloor: { front: 900, side: 900, back: 900 } }, 570, "height"],
    [{ height: null, toFloor: null }, 580, null],
  ] as const)("of no said length is to the knee: %j", (body, length, by) => {
    const draft = skirtOn({ kind: "gathered" }, onBody(body));
    expect(draft.lengths).toEqual({ front: length, side: length, back: length });
    expect(draft.notes[0]).toEqual({ code: "skirt/length-usual", length, by });
  });
});

describe("tiers", () => {
  it("are two of one depth, each gathered by as much, where nothing is said", () => {
    const draft = skirtOn({ kind: "tiers", length: 600, hem: 20 });
    expect(draft.tiers).toEqual([
      { width: 1080, gatheredTo: 720, depth: 300, panels: 1, panelWidth: 1080 },
      { width: 1620, gatheredTo: 1080, depth: 300, panels: 2, panelWidth: 810 },
    ]);
    expect(draft.parts).toMatchObject([
      { key: "tier-1", name: "tier", tier: 1, allowances: { top: 15, bottom: 15, sides: 15 } },
      { key: "tier-2", name: "tier", tier: 2, cut: { onFold: false, count: 2 }, allowances: { top: 15, bottom: 20 } },
    ]);
  });

  it("are 40 deep at the least", () => {
    expect(refusalOf({ kind: "tiers", length: 600, tiers: [{ depth: 560 }, {}] })).toBeNull();
    expect(refusalOf({ kind: "tiers", length: 599, tiers: [{ depth: 560 }, {}] })).toEqual({
      code: "skirt/tiers-deeper-than-skirt",
      depths: 600,
      length: 599,
    });
    expect(refusalOf({ kind: "tiers", tiers: [{ depth: 560 }, { depth: 39 }] })).toEqual({
      code: "skirt/tiers-deeper-than-skirt",
      depths: 599,
      length: 599,
    });
  });

  it("have to go over the hip from the one on that reaches it", () => {
    const tiers = (depth: number, ratio: number, next: number): Skirt => ({
      kind: "tiers",
      length: 600,
      tiers: [{ depth, ratio }, { ratio: next }],
    });
    expect(refusalOf(tiers(199, 1, 1.41))).toBeNull();
    expect(refusalOf(tiers(199, 1, 1.4))).toMatchObject({ ratio: 1.4, least: 1.41 });
    expect(refusalOf(tiers(200, 1, 2))).toMatchObject({ ratio: 1, least: 1.41 });
  });

  it("count widths of cloth where they are cut in whole ones, and else not", () => {
    const widths = (tierCut?: "wholeWidths"): number[] | undefined =>
      skirtOn({
        kind: "tiers",
        length: 600,
        tiers: [{}, { widths: 2, ratio: 2 }],
        ...(tierCut === undefined ? {} : { tierCut }),
      }).tiers?.map(({ width }) => width);
    expect(widths()).toEqual([1080, 2160]);
    // 1400 less two selvages of 10 and two allowances of 15 is 1350 a width.
    expect(widths("wholeWidths")).toEqual([1350, 2700]);
  });
});

describe("a round skirt", () => {
  it("of half a circle lies in one on the single cloth", () => {
    // 720 / π at the waist.
    const waist = 720 / Math.PI;
    expect(skirtOn({ kind: "circle", length: 600, share: 0.5 })).toEqual({
      kind: "circle",
      lengths: { front: 600, side: 600, back: 600 },
      hem: close(720 + 600 * Math.PI),
      halves: [{}, {}],
      parts: [
        {
          kind: "sector",
          key: "circle",
          group: "skirt",
          cloth: "main",
          cut: { onFold: false, count: 1 },
          half: null,
          grain: "along",
          inner: close(waist),
          outer: close(waist + 600),
          angle: close(Math.PI),
          allowances: { inner: 15, outer: 15, sides: 15 },
          foldSides: 0,
        },
      ],
      levels: [
        { below: 0, girth: 720 },
        { below: 600, girth: close(720 + 600 * Math.PI) },
      ],
      circle: { share: 0.5, waistRadius: close(waist), hemRadius: close(waist + 600), seams: ["centreBack"] },
      notes: [{ code: "skirt/hem-not-levelled" }, { code: "skirt/hang-before-hemming" }],
    });
  });

  it("of a quarter is cut on the fold, where twice its half has room", () => {
    // 720 / (π/2) at the waist; (458.4 + 400 + 15) sin 45° and 15 beside it, twice: 1265 of 1380.
    const waist = 1440 / Math.PI;
    const draft = skirtOn({ kind: "circle", length: 400, share: 0.25, pockets: true });
    expect(draft.parts).toMatchObject([
      { cut: { onFold: true, count: 1 }, angle: close(Math.PI / 4), foldSides: 1, inner: close(waist) },
    ]);
    expect(draft.notes).toEqual([{ code: "skirt/hem-not-levelled" }, { code: "skirt/pockets" }]);
    const folded = 2 * ((waist + 400 + 15) * Math.SQRT1_2 + 15) + 20;
    const onFold = (clothWidth: number) =>
      skirtOn({ kind: "circle", length: 400, share: 0.25 }, { clothWidth }).parts.map(({ cut }) => cut.onFold);
    expect([onFold(folded + 0.01), onFold(folded - 0.01)]).toEqual([[true], [false]]);
  });

  it("of a whole circle is cut at the sides, each quarter as wide an angle as its share of the waist", () => {
    const draft = skirtOn({ kind: "circle", length: 600 });
    const turn = (2 * Math.PI) / 720;
    const ring = { inner: close(1 / turn), outer: close(1 / turn + 600) };
    expect(draft.hem).toBeCloseTo(720 + 1200 * Math.PI, 6);
    expect(draft.circle?.seams).toEqual(["centreBack", "leftSide", "rightSide"]);
    expect(draft.parts).toMatchObject([
      { key: "circle-front", cut: { onFold: false, count: 1 }, angle: close(370 * turn), ...ring },
      { key: "circle-back", cut: { onFold: false, count: 2 }, angle: close(175 * turn), half: null, ...ring },
    ]);
  });

  it("of halves that differ has each back by itself", () => {
    const halves = [
      { front: 185, back: 175 },
      { front: 190, back: 170 },
    ] as const;
    const draft = skirtOn({ kind: "circle", length: 600 }, { waist: { halves, whole: 720 } });
    const turn = (2 * Math.PI) / 720;
    expect(draft.parts).toMatchObject([
      { key: "circle-front", angle: close(375 * turn), half: null },
      { key: "circle-back-left", angle: close(175 * turn), half: "left", cut: { count: 1 } },
      { key: "circle-back-right", angle: close(170 * turn), half: "right", cut: { count: 1 } },
    ]);
  });

  it("is cut further where a part of it would close to a ring, with no room for allowances beside it", () => {
    // Of 720 the front has 370. Of 1.7 circles it leaves 0.126 of one about a waist of 67.4: 53 for two allowances of 15; of 1.9 it is 9.
    const seams = (share: number) =>
      skirtOn({ kind: "circle", length: 300, share }, { ...onBody({ hip: null }), closure: side(180) }).circle?.seams;
    expect(seams(1.7)).toEqual(["leftSide", "rightSide"]);
    expect(seams(1.9)).toEqual(["centreFront", "centreBack", "leftSide", "rightSide"]);
  });

  it("says how wide its cloth would have to be, in tens", () => {
    // The narrowest it is cut: each quarter of 1100 in eight, of the front 185 / 720 of the circle.
    const eighth = (1100 + 720 / (2 * Math.PI) + 15) * Math.sin((185 / 720) * (Math.PI / 4)) + 30;
    expect(Math.ceil((eighth + 20) / 10) * 10).toBe(300);
    const skirt = { kind: "circle", length: 1100 } as const;
    expect(refusalOf(skirt, { clothWidth: 300 })).toBeNull();
    expect(refusalOf(skirt, { clothWidth: 290 })).toEqual({
      code: "skirt/cloth-too-narrow",
      width: 290,
      needed: 300,
    });
    // Laid double it has half of the cloth, and one selvage: 2 × 276.4 + 20 = 572.9.
    expect(refusalOf(skirt, { clothWidth: 580, clothOnFold: true })).toBeNull();
    expect(refusalOf(skirt, { clothWidth: 570, clothOnFold: true })).toEqual({
      code: "skirt/cloth-too-narrow",
      width: 570,
      needed: 580,
    });
  });

  it.each([
    [{ kind: "circle", share: 0.24 }, onBody({ hip: null }), { share: 0.24, least: 0.25, most: 2 }],
    [{ kind: "circle", share: 0.25 }, onBody({ hip: null }), null],
    [{ kind: "circle", share: 2, length: 300 }, {}, null],
    [{ kind: "circle", share: 2.01 }, {}, { share: 2.01, least: 0.25, most: 2 }],
    // (1100 + 50 − 720) / (2π × 200) = 0.342, where it reaches the hip.
    [{ kind: "peplum", peplumLength: 200, peplumShare: 0.34 }, onBody({ hip: 1100 }), { share: 0.34, least: 0.35 }],
    [{ kind: "peplum", peplumLength: 200, peplumShare: 0.35 }, onBody({ hip: 1100 }), null],
    [{ kind: "peplum", peplumLength: 199, peplumShare: 0.34 }, onBody({ hip: 1100 }), null],
    [{ kind: "peplum", peplumLength: 40 }, {}, null],
    [{ kind: "peplum", peplumLength: 39.9 }, {}, { length: 39.9, least: 40, most: 400 }],
    [{ kind: "peplum", peplumLength: 400 }, {}, null],
    [{ kind: "peplum", peplumLength: 400.1 }, {}, { length: 400.1, least: 40, most: 400 }],
  ] as const)("%j on %j: %j", (skirt, asked, refusal) => {
    expect(refusalOf({ length: 600, ...skirt }, asked)).toEqual(having(refusal));
  });

  it("that is short is half a circle 160 long, whatever the floor", () => {
    const draft = skirtOn({ kind: "peplum" }, onBody({ toFloor: { front: 1010, side: 1030, back: 1000 } }));
    expect(draft.lengths).toEqual({ front: 160, side: 160, back: 160 });
    expect([draft.circle?.share, draft.notes]).toEqual([0.5, []]);
    expect(draft.hem).toBeCloseTo(720 + 160 * Math.PI, 6);
  });

  it("is as long along the seam that opens as it is there", () => {
    const asked = onBody({ toFloor: { front: 1010, side: 1030, back: 1000 } });
    const ends = [back(180), side(180)].map(
      (closure) => skirtOn({ kind: "circle", length: 600, share: 0.5 }, { ...asked, closure }).levels.at(-1)?.below,
    );
    expect(ends).toEqual([570, 600]);
  });
});

describe("the waist of a round skirt", () => {
  it("is marked at eighths, level at both ends", () => {
    const marks = marksOf(100, 200, 2);
    // The cubic that is level at both ends: s² (3 − 2 s).
    expect(marks.map(({ at }) => at)).toEqual([0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2]);
    expect([0, 2, 4, 6, 8].map((at) => marks[at]?.radius)).toEqual([100, 115.625, 150, 184.375, 200]);
  });

  it("is as long as very many chords", () => {
    const marks = marksOf(200, 320, 1.3);
    const chords = marks.slice(1).reduce((sum, to, at) => {
      const from = marks[at] ?? to;
      const spot = (share: number) => {
        const [turn, radius] = [from.at + (to.at - from.at) * share, from.radius + (to.radius - from.radius) * share];
        return { x: radius * Math.cos(turn), y: radius * Math.sin(turn) };
      };
      return Array.from({ length: 400 }, (_, i) => [spot(i / 400), spot((i + 1) / 400)] as const).reduce(
        (all, [p, q]) => all + Math.hypot(q.x - p.x, q.y - p.y),
        sum,
      );
    }, 0);
    expect(marksLength(marks)).toBeCloseTo(chords, 3);
    expect(marksLength(marksOf(100, 100, 1.5))).toBeCloseTo(150, 9);
    expect(marksLength(marksOf(200, 320, angleOf(338, 200, 320)))).toBeCloseTo(338, 5);
    expect(angleOf(150, 100, 100)).toBe(1.5);
  });

  it("lies from the pin so that its quarters make the whole angle", () => {
    const even = [100, 200].map((waist) => ({ waist, lengths: [600, 600] as const }));
    expect(hemRadius(even, radians(Math.PI))).toBeCloseTo(300 / Math.PI + 600, 6);
    const arcs = [
      { waist: 180, lengths: [580, 600] as const },
      { waist: 170, lengths: [540, 600] as const },
    ];
    const radius = hemRadius(arcs, radians(1.2));
    const angles = arcs.map(({ waist, lengths }) => angleOf(waist, radius - lengths[0], radius - lengths[1]));
    expect(angles.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(1.2, 7);
  });
});

describe("sectors", () => {
  const mark = (at: number, radius: number) => ({ at: radians(at), radius });
  /** From its centre to its side; angles of 1, 2, 3 and 4. */
  const unlike: RoundQuarters = {
    leftFront: [mark(0, 10), mark(1, 11)],
    rightFront: [mark(0, 12), mark(2, 13)],
    rightBack: [mark(0, 14), mark(3, 15)],
    leftBack: [mark(0, 16), mark(4, 17)],
    radius: 100,
    least: 10,
    isRound: false,
    areHalvesAlike: false,
    opens: "side",
  };
  const [whole] = divisionsOf(side(0));
  const asPairs = (marks: readonly { readonly at: number; readonly radius: number }[] | null | undefined) =>
    marks?.map(({ at, radius }) => [at, radius]) ?? null;
  const inOne = (quarters: Partial<RoundQuarters>) =>
    whole === undefined ? [] : sectorsOf({ ...unlike, ...quarters }, whole);

  it("are tried from one to eight a quarter", () => {
    const all = ["centreFront", "centreBack", "leftSide", "rightSide"];
    const narrow = [1, 2, 4, 8].map((into) => ({
      shape: "quarters",
      into,
      seams: into === 1 ? all : [...all, "between"],
    }));
    expect(divisionsOf(side(0))).toEqual([
      { shape: "whole", into: 1, seams: ["leftSide"] },
      { shape: "frontAndBack", into: 1, seams: ["leftSide", "rightSide"] },
      ...narrow,
    ]);
    expect(divisionsOf(back(0))).toEqual([
      { shape: "whole", into: 1, seams: ["centreBack"] },
      { shape: "frontAndHalfBacks", into: 1, seams: ["centreBack", "leftSide", "rightSide"] },
      ...narrow,
    ]);
  });

  it("in one go round from the opening: over the front to the other side, and back", () => {
    const [atSide] = inOne({});
    const marks = [
      [0, 11],
      [1, 10],
      [3, 13],
      [6, 14],
      [10, 17],
    ];
    expect(asPairs(atSide?.marks)).toEqual(marks);
    expect(atSide).toMatchObject({ name: "circle", half: null, count: 1, angle: 10, folded: null, isRound: false });
    const [atBack] = inOne({ opens: "centreBack" });
    expect(asPairs(atBack?.marks)).toEqual([
      [0, 16],
      [4, 17],
      [5, 10],
      [7, 13],
      [10, 14],
    ]);
    expect(atBack?.folded).toBeNull();
    // Opposite the opening is the centre front: from there over the side to the back.
    expect(asPairs(inOne({ opens: "centreBack", areHalvesAlike: true })[0]?.folded)).toEqual([
      [0, 12],
      [2, 13],
      [5, 14],
    ]);
    expect(inOne({ areHalvesAlike: true })[0]?.folded).toBeNull();
    // Round, any half is like the other.
    expect(asPairs(inOne({ isRound: true })[0]?.folded)).toEqual(marks.map(([at = 0, r]) => [at / 2, r]));
  });

  it("of front and back go from her left to her right", () => {
    const pair = (quarters: Partial<RoundQuarters>) =>
      sectorsOf({ ...unlike, ...quarters }, { shape: "frontAndBack", into: 1, seams: [] }).map(
        ({ name, marks, folded }) => [name, asPairs(marks), asPairs(folded)],
      );
    const front = [
      [0, 11],
      [1, 10],
      [3, 13],
    ];
    const behind = [
      [0, 17],
      [4, 16],
      [7, 15],
    ];
    expect(pair({})).toEqual([
      ["circle-front", front, null],
      ["circle-back", behind, null],
    ]);
    expect(pair({ areHalvesAlike: true })).toEqual([
      ["circle-front", front, asPairs(unlike.rightFront)],
      ["circle-back", behind, asPairs(unlike.rightBack)],
    ]);
    expect(pair({ isRound: true }).map(([, , folded]) => folded)).toEqual(
      [front, behind].map((marks) => marks.map(([at = 0, r]) => [at / 2, r])),
    );
  });

  it("of a quarter each begin at nothing, twice where the halves are alike", () => {
    const marked = { ...unlike, leftBack: [mark(0, 10), mark(1, 11), mark(3, 12)] };
    const cut = (quarters: Partial<RoundQuarters>, into: 1 | 2) =>
      sectorsOf({ ...marked, ...quarters }, { shape: "quarters", into, seams: [] }).map((one) => [
        one.name,
        one.half,
        one.count,
        one.angle,
      ]);
    expect(cut({}, 1)).toEqual([
      ["circle-front", "left", 1, 1],
      ["circle-front", "right", 1, 2],
      ["circle-back", "left", 1, 3],
      ["circle-back", "right", 1, 3],
    ]);
    expect(cut({ areHalvesAlike: true }, 1)).toEqual([
      ["circle-front", null, 2, 1],
      ["circle-back", null, 2, 3],
    ]);
    const [, second] = sectorsOf(
      { ...marked, areHalvesAlike: true, leftFront: marked.leftBack },
      { shape: "quarters", into: 2, seams: [] },
    );
    expect([second?.name, asPairs(second?.marks), second?.folded]).toEqual([
      "circle-front-2",
      [
        [0, 11],
        [2, 12],
      ],
      null,
    ]);
  });
});

/** Its lengths from the centre to the side, from dart to dart. */
const waistOf = (piece: Piece | undefined): number[] =>
  piece?.edges
    .filter(({ seam, mouthOf }) => seam === "waist" && mouthOf === null)
    .map((edge) => seamByBezierJs({ ...piece, edges: [edge] }, "waist")) ?? [];

describe("a fitted skirt", () => {
  const darts = (hip: number, more: Partial<Skirt> = {}): unknown => {
    const draft = skirtOn({ kind: "aLine", length: 600, ...more }, onBody({ hip, toFloor: EVEN }));
    return draft.suppression?.map(({ atSide, inDarts }) => [Math.round(atSide), inDarts.length]);
  };

  it.each([
    // (hip + 50 − 720) / 4 a quarter, 22 of it at the side; the rest in darts of 8 to 30.
    [789, 30, 0],
    [790, 22, 1],
    [878, 22, 1],
    [879, 22, 2],
    [998, 22, 2],
    [999, 22, 3],
    [1118, 22, 3],
  ])("on a hip of %i takes %i at the side and the rest in %i darts", (hip, atSide, count) => {
    expect(darts(hip)).toEqual([
      [atSide, count],
      [atSide, count],
    ]);
  });

  it("takes in no more than three darts can, and no less than nothing", () => {
    const on = (hip: number, more: Partial<Skirt> = {}) =>
      refusalOf({ kind: "aLine", length: 600, ...more }, onBody({ hip }));
    // (1120 + 50 − 720) / 4 = 112.5, less 22 is 90.5.
    expect(on(1120)).toEqual({ code: "skirt/darts-too-wide", intake: close(90.5 / 3), most: 30 });
    expect(on(669)).toEqual({ code: "skirt/waist-over-hip", waist: 720, hip: 719 });
    expect([on(670), on(998, { panels: 6 })]).toEqual([null, null]);
    // 60.25.
    expect(on(999, { panels: 6 })).toEqual({ code: "skirt/darts-too-wide", intake: 60.25, most: 60 });
  });

  it("of six panels on a hip that is hardly wider has all of it taken at the side", () => {
    // (740 + 50 − 720) / 4 = 17.5, less than the 22 that the side takes.
    const draft = skirtOn({ kind: "aLine", length: 600, panels: 6 }, onBody({ hip: 740, toFloor: EVEN }));
    expect(draft.suppression?.map(({ atSide }) => atSide)).toEqual([close(17.5), close(17.5)]);
    const wider = skirtOn({ kind: "aLine", length: 600, panels: 6 }, onBody({ hip: 800, toFloor: EVEN }));
    expect(wider.suppression?.map(({ atSide }) => atSide)).toEqual([close(22), close(22)]);
  });

  it("reaches at least 60 below the hip", () => {
    expect(refusalOf({ kind: "aLine", length: 260 })).toBeNull();
    expect(refusalOf({ kind: "aLine", length: 259 })).toEqual({
      code: "skirt/length-out-of-range",
      length: 259,
      least: 260,
      most: 1400,
    });
  });

  it.each(["front", "back"] as const)("has its waist lifted at the %s by what is left above the hip line", (at) => {
    // 200 less 60.
    const on = (by: number) =>
      refusalOf({ kind: "aLine", length: 600 }, onBody({ toFloor: { ...EVEN, [at]: 1050 + by } }));
    const range = { code: "skirt/length-out-of-range", least: 460, most: 740 };
    expect([on(140), on(-140)]).toEqual([null, null]);
    expect([on(141), on(-141)]).toEqual([
      { ...range, length: 741 },
      { ...range, length: 459 },
    ]);
  });

  it("has darts of 90 in front and 130 behind, ending 20 above the hip line at the least", () => {
    const lengths = (body: Partial<SkirtAsked["body"]>) =>
      skirtOn({ kind: "aLine", length: 600 }, onBody({ toFloor: EVEN, ...body })).suppression?.map(
        ({ quarter, dartLength, shutInto }) => [quarter, dartLength, shutInto],
      );
    expect(lengths({})).toEqual([
      ["front", 90, 0],
      ["back", 130, 0],
    ]);
    expect(lengths({ hipDepth: 140 })).toEqual([
      ["front", 90, 0],
      ["back", 120, 0],
    ]);
    // Lowered by 100 in front, raised by 20 behind, which lengthens nothing.
    expect(lengths({ toFloor: { front: 950, side: 1050, back: 1070 } })).toEqual([
      ["front", 80, 0],
      ["back", 130, 0],
    ]);
  });

  it("is lowered at the centre evenly: level at both ends, by s² (3 − 2 s) at a share s of its width", () => {
    const front = (by: number) => {
      const toFloor = { ...EVEN, front: 1050 + by };
      const piece = skirtOn({ kind: "aLine", length: 600 }, onBody({ toFloor })).halves[0].skirtFront;
      if (piece === undefined) throw new Error("no front");
      const middles = piece.darts.map(({ inner, outer }) => {
        const [p, q] = [pointOf(piece, inner), pointOf(piece, outer)];
        return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
      });
      return { middles, side: pointOf(piece, "sideWaist") };
    };
    const [even, lower] = [front(0), front(-40)];
    // The side then lies 40 higher than the centre did.
    expect(even.side.y - lower.side.y).toBeCloseTo(40, 0);
    for (const [at, dart] of lower.middles.entries()) {
      const s = dart.x / lower.side.x;
      expect((even.middles[at]?.y ?? 0) - dart.y).toBeCloseTo(40 * s ** 2 * (3 - 2 * s), 0);
    }
  });

  it("tells what shut darts open into: as wide as they are, as many times as they are long to the hem", () => {
    const shut = skirtOn({ kind: "aLine", length: 600, darts: false }, onBody({ toFloor: EVEN }));
    const whole = (at: number) => shut.suppression?.[at]?.inDarts.reduce((sum, intake) => sum + intake, 0) ?? 0;
    expect(shut.suppression?.map(({ shutInto }) => shutInto)).toEqual([
      close((whole(0) * 510) / 90),
      close((whole(1) * 470) / 130),
    ]);
    expect(shut.notes).toEqual([{ code: "skirt/hang-before-hemming" }]);
    // Of panels the seam goes down to the hip, and nothing is shut.
    const six = skirtOn({ kind: "aLine", length: 600, darts: false, panels: 6 }, onBody({ toFloor: EVEN }));
    expect(six.suppression?.map(({ dartLength, shutInto }) => [dartLength, shutInto])).toEqual([
      [200, 0],
      [200, 0],
    ]);
    expect(six.notes).toEqual([]);
  });

  it("runs its darts on from the bodice's where those stand between a fifth and three quarters", () => {
    const places = (front: readonly number[], hip = 960) =>
      waistOf(
        skirtOn(
          { kind: "aLine", length: 600 },
          {
            ...onBody({ toFloor: EVEN, hip }),
            dartPlaces: [
              { front, back: [] },
              { front, back: [] },
            ],
          },
        ).halves[0].skirtFront,
      ).map((length) => Math.round(length * 100) / 100);
    // Of 185 the usual two stand at 0.36 and 0.66, one at 0.42.
    const usual = [66.6, 55.5, 62.9];
    expect(places([])).toEqual(usual);
    expect(places([], 860)).toEqual([77.7, 107.3]);
    expect(places([50, 100])).toEqual([50, 50, 85]);
    expect(places([50, 100, 120])).toEqual([50, 50, 85]);
    // What is left of it in halves.
    expect(places([50])).toEqual([50, 67.5, 67.5]);
    expect([places([37.1]), places([36.9])]).toEqual([[37.1, 73.95, 73.95], usual]);
    expect([places([138.5], 860), places([139], 860)]).toEqual([
      [138.5, 46.5],
      [77.7, 107.3],
    ]);
  });

  it("flares by 7 degrees, and by none to 20", () => {
    const flare = (degrees?: number) =>
      ((skirtOn({ kind: "aLine", length: 600, ...(degrees === undefined ? {} : { flare: degrees }) }).flare ?? 0) *
        180) /
      Math.PI;
    expect([flare(), flare(12), flare(-3), flare(25)]).toEqual([close(7), close(12), close(0), close(20)]);
  });

  it("is told to be too narrow to step, its hip depth to be usual, its pockets", () => {
    const notes = (more: Partial<Skirt>, body: Partial<SkirtAsked["body"]> = {}) =>
      skirtOn({ kind: "aLine", length: 600, ...more }, onBody({ toFloor: EVEN, ...body })).notes;
    expect(notes({ flare: 0 })).toEqual([{ code: "skirt/no-step", girth: close(1010), needed: 1060 }]);
    expect(notes({ pockets: true }, { isHipDepthUsual: true })).toEqual([
      { code: "skirt/hip-depth-usual", depth: 200 },
      { code: "skirt/pockets" },
    ]);
    expect(refusalOf({ kind: "straight", length: 600 }, onBody({ hip: null }))).toEqual({
      code: "skirt/hip-missing",
      kind: "straight",
    });
  });

  it("is as wide at each level as side and darts leave it", () => {
    const draft = skirtOn({ kind: "aLine", length: 600 }, onBody({ toFloor: EVEN }));
    const [{ skirtFront, skirtBack }] = draft.halves;
    const tan = Math.tan((7 * Math.PI) / 180);
    expect(draft.levels.map(({ below }) => below)).toEqual(
      [0, 25, 50, 75, 100, 125, 150, 175, 200, 300, 400, 500, 600].map(close),
    );
    const width = (piece: Piece | undefined, y: number): number => {
      const edge = piece?.edges.find(({ from }) => from === "sideWaist");
      if (piece === undefined || edge?.curve == null) return Number.NaN;
      const [a, b] = [pointOf(piece, "sideWaist"), pointOf(piece, "sideHip")];
      const { c1, c2 } = edge.curve;
      const curve = new Bezier(a.x, a.y, c1.x, c1.y, c2.x, c2.y, b.x, b.y);
      const [at] = curve.intersects({ p1: { x: -10, y }, p2: { x: 900, y } });
      const outer = curve.get(Number(at)).x;
      return piece.darts.reduce((left, { inner, outer: far, apex }) => {
        const [p, q, end] = [pointOf(piece, inner), pointOf(piece, far), pointOf(piece, apex)];
        return left - (q.x - p.x) * Math.max(0, (end.y - y) / (end.y - p.y));
      }, outer);
    };
    for (const at of [3, 4, 6]) {
      const y = 25 * at;
      expect(draft.levels[at]?.girth).toBeCloseTo(2 * (width(skirtFront, y) + width(skirtBack, y)), 3);
    }
    expect([8, 9, 11].map((at) => draft.levels[at]?.girth)).toEqual([
      close(1010),
      close(1010 + 400 * tan),
      close(1010 + 1200 * tan),
    ]);
    expect([draft.levels[0]?.girth, draft.levels.at(-1)?.girth]).toEqual([720, draft.hem]);
  });

  it("along her side is as far down as the slant is long", () => {
    const { levels } = skirtOn({ kind: "aLine", length: 600 }, { ...onBody({ toFloor: EVEN }), closure: side(180) });
    const cos = Math.cos((7 * Math.PI) / 180);
    expect(levels[8]?.below).toBeCloseTo(200, 4);
    expect(levels[9]?.below).toBeCloseTo(200 + 100 / cos, 4);
    expect(levels.at(-1)?.below).toBe(600);
  });

  it("has its halves apart where they differ, what lies on the fold cut open", () => {
    const halves = [
      { front: 185, back: 175 },
      { front: 190, back: 170 },
    ] as const;
    const draft = skirtOn({ kind: "aLine", length: 600, hem: 25 }, { waist: { halves, whole: 720 } });
    expect(draft.parts).toMatchObject([
      { key: "skirtFront", cut: { onFold: false, count: 1 }, half: null, allowances: { hem: 25 } },
      { key: "skirtBack-left", cut: { onFold: false, count: 1 }, half: "left", allowances: { hem: 25 } },
      { key: "skirtBack-right", cut: { onFold: false, count: 1 }, half: "right" },
    ]);
    expect(draft.suppression?.map(({ quarter }) => quarter)).toEqual(["front", "back", "front", "back"]);
    // Both halves lie on one fold: their centres are of one length.
    const [left, right] = draft.halves;
    for (const name of ["skirtFront", "skirtBack"] as const) {
      const [a, b] = [left[name], right[name]].map((piece) =>
        piece === undefined ? 0 : seamByBezierJs(piece, "centre"),
      );
      expect(a).toBeCloseTo(b ?? 0, 6);
    }
    expect(waistOf(right.skirtFront).reduce((sum, length) => sum + length, 0)).toBeCloseTo(190, 4);
  });
});

describe("a straight skirt", () => {
  const vent = (skirt: Partial<Skirt>, asked: Partial<SkirtAsked> = {}) =>
    skirtOn({ kind: "straight", length: 600, ...skirt }, { ...onBody({ toFloor: EVEN }), ...asked }).vent;

  it("has a vent of 60 to what is left 40 below hip and opening", () => {
    expect([vent({}), vent({ vent: 30 }), vent({ vent: 100 }), vent({ vent: 900 })]).toEqual([200, 60, 100, 360]);
    expect([vent({ length: 300 }), vent({ length: 299 })]).toEqual([60, undefined]);
    expect(vent({ vent: 900 }, { closure: back(250) })).toBe(310);
    expect(vent({ vent: 900 }, { closure: side(250) })).toBe(360);
    expect([vent({ hipEase: 99 }), vent({ hipEase: 100 })]).toEqual([200, undefined]);
  });

  it("is cut on the fold behind where nothing opens there", () => {
    const folds = (skirt: Partial<Skirt>, closure: Closure) =>
      skirtOn({ kind: "straight", length: 600, ...skirt }, { closure }).parts.map(({ cut }) => [cut.onFold, cut.count]);
    const one = [true, 1];
    expect(folds({}, side(180))).toEqual([one, [false, 2]]);
    expect(folds({ vent: 0 }, side(180))).toEqual([one, one]);
    expect(folds({ vent: 0 }, back(180))).toEqual([one, [false, 2]]);
  });

  it("has the underlap of its vent 50 wide, its upper edge 20 aslant", () => {
    const draft = skirtOn({ kind: "straight", length: 600, vent: 150 }, onBody({ toFloor: EVEN }));
    const piece = draft.halves[0].skirtBack;
    const spots = (["ventTop", "ventOut", "ventHem"] as const).map((name) => piece?.points[name]?.at);
    expect(spots).toEqual([
      { x: 0, y: 450 },
      { x: -50, y: 470 },
      { x: -50, y: 600 },
    ]);
    expect(piece?.edges.filter(({ from }) => from === "centreHem" || from.startsWith("vent"))).toMatchObject([
      { from: "centreHem", to: "ventHem", seam: "hem" },
      { from: "ventHem", to: "ventOut", seam: "edge" },
      { from: "ventOut", to: "ventTop", seam: "edge" },
      { from: "ventTop", seam: "centre" },
    ]);
  });
});
