/** Skirts against what a handbook's formula or plain geometry says of them. mm. */
import type { RectanglePart, SectorPart } from "../../../src/core/parts/part";
import type { Piece, PointName } from "../../../src/core/pattern/piece";
import { pointOf } from "../../../src/core/pattern/piece";
import { draftSkirt } from "../../../src/core/skirts/draftSkirt";
import { Clipper } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import { clothCorners, seamByBezierJs } from "../../support/independent";
import { ASKED, sectorWidthByChords, skirtOn, waistByChords } from "../../support/skirts";

const rectangles = (parts: readonly { readonly kind: string }[]): readonly RectanglePart[] =>
  parts.filter((part): part is RectanglePart => part.kind === "rectangle");
const sectors = (parts: readonly { readonly kind: string }[]): readonly SectorPart[] =>
  parts.filter((part): part is SectorPart => part.kind === "sector");

describe("gathered tiers", () => {
  // Waist 720, twice 1.6: 1152 and 1843.2; cloth of 1400 less selvages and allowances leaves 1350 a width.
  const draft = skirtOn({ kind: "tiers", length: 600, ratio: 1.6, tiers: [{}, {}] });

  it("are each so many times what they are gathered on, in as few widths of cloth as that takes", () => {
    expect(draft.tiers?.map(({ width, gatheredTo, panels }) => [width, gatheredTo, panels])).toEqual([
      [expect.closeTo(1152, 6), 720, 1],
      [expect.closeTo(1843.2, 6), expect.closeTo(1152, 6), 2],
    ]);
    expect(rectangles(draft.parts).map(({ width, depth, cut }) => [width, depth, cut.count])).toEqual([
      [expect.closeTo(1152, 6), 300, 1],
      [expect.closeTo(921.6, 6), 300, 2],
    ]);
    expect(draft.hem).toBeCloseTo(1843.2, 6);
  });

  it("are as wide as the cloth where they are cut in whole widths", () => {
    const { tiers, parts } = skirtOn({ kind: "tiers", ratio: 1.6, tierCut: "wholeWidths", tiers: [{}, { widths: 3 }] });
    expect(tiers?.map(({ width, panels }) => [width, panels])).toEqual([
      [1350, 1],
      [4050, 3],
    ]);
    expect(rectangles(parts).map(({ width }) => width)).toEqual([1350, 1350]);
  });

  it("take no second width for one that is just as wide as the cloth", () => {
    expect(skirtOn({ kind: "gathered", ratio: 1350 / 720 }).tiers?.map(({ panels }) => panels)).toEqual([1]);
    expect(skirtOn({ kind: "gathered", ratio: 1351 / 720 }).tiers?.map(({ panels }) => panels)).toEqual([2]);
  });

  it("share out the depth that is left, all alike or each a quarter deeper", () => {
    const depths = (skirt: Parameters<typeof skirtOn>[0]) => skirtOn(skirt).tiers?.map(({ depth }) => depth);
    expect(depths({ kind: "tiers", length: 600, tiers: [{ depth: 140 }, {}, {}] })).toEqual([140, 230, 230]);
    // 100 + 125 + 156.25 = 381.25.
    const [a, b, c] = depths({ kind: "tiers", length: 762.5, growing: true, tiers: [{}, {}, {}] }) ?? [];
    expect([a, b, c].map((depth) => Math.round((depth ?? 0) * 100) / 100)).toEqual([200, 250, 312.5]);
    // Where each is set, they make the length.
    const set = skirtOn({ kind: "tiers", length: 900, tiers: [{ depth: 250 }, { depth: 350 }] });
    expect(set.lengths.side).toBe(600);
  });

  it("are as narrow as the waist at it, and as wide as they are just below", () => {
    expect(draft.levels.map(({ below, girth }) => [below, Math.round(girth)])).toEqual([
      [0, 720],
      [0, 1152],
      [300, 1152],
      [300, 1843],
      [600, 1843],
    ]);
  });

  it("are joined at the opening as far as it runs", () => {
    const joined = (belowWaist: number) =>
      skirtOn({ kind: "tiers", length: 600 }, { closure: { place: "centreBack", belowWaist } }).notes.flatMap((note) =>
        note.code === "skirt/join-at-opening" ? [note.tier] : [],
      );
    expect([joined(0), joined(180), joined(320)]).toEqual([[], [1], [1, 2]]);
  });

  it("are cut lower along their upper edge for a level hem, and are as long there as the floor asks", () => {
    const toFloor = { front: 1010, side: 1030, back: 1015 };
    const body = { ...ASKED.body, toFloor };
    const { parts, lengths } = skirtOn({ kind: "tiers", length: 600 }, { body });
    expect(lengths).toEqual({ front: 580, side: 600, back: 585 });
    const [first, second] = rectangles(parts);
    const deep = (first?.depth ?? 0) + (second?.depth ?? 0);
    expect(first?.upperEdge).toEqual({ front: 20, side: 0, back: 15 });
    expect(deep).toBe(600);
  });
});

describe("tiers over the hip", () => {
  it("have to go round it by what they are gathered on: 1152 is wide enough for 960 and 50, 720 is not", () => {
    const second = (ratio: number) =>
      draftSkirt({
        ...ASKED,
        skirt: { kind: "tiers", length: 600, tiers: [{ depth: 150, ratio }, { ratio: 1 }] },
      });
    expect(second(1.6)).toMatchObject({ ok: true });
    expect(second(1)).toMatchObject({ ok: false, failure: { code: "skirt/ratio-out-of-range", least: 1.41 } });
  });
});

describe("shares of a circle", () => {
  it.each([
    // r = W / (2πs); hem = W + 2πsL.
    { share: 1, radius: 114.59, hem: 4489.9 },
    { share: 0.5, radius: 229.18, hem: 2605.0 },
    { share: 0.75, radius: 152.79, hem: 720 + 1.5 * Math.PI * 600 },
    { share: 2, radius: 57.3, hem: 720 + 4 * Math.PI * 600 },
  ])("have the waist and the hem that $share of a circle has", ({ share, radius, hem }) => {
    const draft = skirtOn({ kind: "circle", length: 600, share });
    expect(draft.circle?.waistRadius).toBeCloseTo(radius, 1);
    expect(draft.hem).toBeCloseTo(hem, 1);
    const waist = sectors(draft.parts).reduce((sum, part) => sum + part.cut.count * waistByChords(part), 0);
    expect(waist).toBeCloseTo(720, 1);
    // The ring's area: half the sum of both arcs, times its width.
    const area = sectors(draft.parts).reduce(
      (sum, part) =>
        sum + part.cut.count * (1 + part.foldSides) * (part.angle / 2) * (part.outer ** 2 - part.inner ** 2),
      0,
    );
    expect(area).toBeCloseTo(((720 + draft.hem) / 2) * 600, -1);
  });

  it("of a quarter have the published hem where the hip lets them", () => {
    const narrow = draftSkirt({ ...ASKED, skirt: { kind: "circle", length: 600, share: 0.25 } });
    // 720 + π/2 × 200 = 1034 goes over 960 + 50, but not over 1000 + 50.
    expect(narrow).toMatchObject({ ok: true, value: { hem: expect.closeTo(1662.5, 1) } });
    const wide = draftSkirt({
      ...ASKED,
      body: { ...ASKED.body, hip: 1000 },
      skirt: { kind: "circle", length: 600, share: 0.25 },
    });
    expect(wide).toMatchObject({
      ok: false,
      failure: { code: "skirt/share-out-of-range", least: 0.27 },
    });
  });

  it("that close to a ring are slashed, and the waist is larger by both allowances", () => {
    const draft = skirtOn({ kind: "peplum", peplumLength: 150, peplumShare: 1 });
    expect(draft.parts).toHaveLength(1);
    expect(draft.parts[0]).toMatchObject({ slash: 15, angle: Math.PI, foldSides: 1, allowances: { sides: 0 } });
    expect(draft.circle?.waistRadius).toBeCloseTo((720 + 30) / (2 * Math.PI), 6);
    expect(draft.hem).toBeCloseTo(750 + 2 * Math.PI * 150 - 30, 6);
    // A half of one has all the room beside it.
    expect(skirtOn({ kind: "peplum", peplumLength: 150 }).circle?.waistRadius).toBeCloseTo(720 / Math.PI, 6);
  });

  it.each([
    // Outer radius and hem allowance: 459 + 30 half a circle lies on 1380 on the fold; at 829 + 30 only its two quarters.
    { length: 230, place: "centreBack", seams: ["centreBack"] },
    { length: 600, place: "centreBack", seams: ["centreBack"] },
    { length: 1150, place: "centreBack", seams: ["centreFront", "centreBack", "leftSide", "rightSide"] },
    { length: 1300, place: "side", seams: ["centreFront", "centreBack", "leftSide", "rightSide", "between"] },
  ] as const)("$length long are cut into as few sectors as the cloth leaves", ({ length, place, seams }) => {
    const { circle, parts } = skirtOn({ kind: "circle", share: 0.5, length }, { closure: { place, belowWaist: 180 } });
    expect(circle?.seams?.length).toBeLessThanOrEqual(seams.length);
    for (const part of sectors(parts)) expect(sectorWidthByChords(part)).toBeLessThanOrEqual(1380);
  });

  it("have a level hem by a waist that is no circle: everywhere as long as the floor asks", () => {
    const body = { ...ASKED.body, toFloor: { front: 1010, side: 1030, back: 1000 } };
    const { parts, circle, lengths } = skirtOn({ kind: "circle", length: 600, share: 0.5 }, { body });
    expect(lengths).toEqual({ front: 580, side: 600, back: 570 });
    const [whole] = sectors(parts);
    // In one, laid single: from the centre back over the left side to the centre front, and back again.
    const marks = whole?.waistRadii ?? [];
    const long = [0, 1 / 4, 1 / 2, 3 / 4, 1].map((share) => marks[share * (marks.length - 1)]);
    expect(long.map((mark) => (circle?.hemRadius ?? 0) - (mark?.radius ?? 0))).toEqual(
      [570, 600, 580, 600, 570].map((length): unknown => expect.closeTo(length, 6)),
    );
    expect(parts.reduce((sum, part) => sum + (part.kind === "sector" ? waistByChords(part) : 0), 0)).toBeCloseTo(
      720,
      2,
    );
    expect(whole?.angle).toBeCloseTo(Math.PI, 6);
  });
});

/** mm, and mm². What drawing a hem smooth may change of its length and, at a mm or two all along, of its piece. */
const TRUED = 2.5;
const SLIVERS = 900;

const area = (piece: Piece): number => Math.abs(Clipper.areaD(clothCorners(piece).map(({ x, y }) => ({ x, y }))));

describe("an A-line skirt", () => {
  const straightSides = skirtOn({ kind: "aLine", length: 600, hipEase: 50 });
  const [{ skirtFront, skirtBack }] = straightSides.halves;

  it("has its suppression from hip, ease and waist: the side takes its part, and darts of at most 30 the rest", () => {
    // (960 + 50 − 720) / 4 = 72.5 a quarter; 22 at the side leave 50.5: two darts.
    for (const { atSide, inDarts } of straightSides.suppression ?? []) {
      expect(atSide).toBe(22);
      expect(inDarts).toHaveLength(2);
      // What a curved waist is longer than a straight one is taken in too: about a millimetre.
      expect(inDarts.reduce((sum, intake) => sum + intake, 0)).toBeGreaterThan(50);
      expect(inDarts.reduce((sum, intake) => sum + intake, 0)).toBeLessThan(53);
      expect(Math.max(...inDarts)).toBeLessThanOrEqual(30);
    }
  });

  it("is as wide at the hip as asked, and leans out below it by its flare", () => {
    const hip = (piece: Piece | undefined) =>
      piece === undefined ? 0 : pointOf(piece, "sideHip").x - pointOf(piece, "centreHip").x;
    expect(2 * (hip(skirtFront) + hip(skirtBack))).toBeCloseTo(1010, 6);
    // Quarter hip and (L − h) tan φ, along the slanted side: 252.5 + 400 × sin 7° = 301.2.
    expect(straightSides.hem / 4).toBeCloseTo(252.5 + 400 * Math.sin((7 * Math.PI) / 180), 0);
  });

  it("has pieces that are square at the centre, at the side and at the hem", () => {
    for (const piece of [skirtFront, skirtBack]) {
      expect(piece).toBeDefined();
      if (piece === undefined) continue;
      expect(cornerOf(piece, "centreWaist")).toBeCloseTo(90, 6);
      expect(cornerOf(piece, "sideWaist")).toBeCloseTo(90, 6);
      expect(cornerOf(piece, "sideHem")).toBeCloseTo(90, 6);
      expect(cornerOf(piece, "centreHem")).toBeCloseTo(90, 6);
      // Into the flare without a corner.
      expect(cornerOf(piece, "sideHip")).toBeCloseTo(180, 6);
    }
  });

  it("with its darts shut is opened at the hem by an arc about each dart's end", () => {
    const shut = skirtOn({ kind: "aLine", length: 600, hipEase: 50, darts: false });
    for (const name of ["skirtFront", "skirtBack"] as const) {
      const [sewn, wide] = [straightSides.halves[0][name], shut.halves[0][name]];
      if (sewn === undefined || wide === undefined) throw new Error(name);
      let [more, wedges] = [0, 0];
      for (const { inner, outer, apex } of sewn.darts) {
        const [a, b, end] = [pointOf(sewn, inner), pointOf(sewn, outer), pointOf(sewn, apex)];
        const opening = 2 * Math.atan2((b.x - a.x) / 2, end.y - a.y);
        const below = pointOf(sewn, "centreHem").y - end.y;
        more += opening * below;
        wedges += (opening * below ** 2) / 2;
      }
      // By arcs and straights between; drawn smooth it is shorter by a hair.
      expect(Math.abs(seamByBezierJs(wide, "hem") - seamByBezierJs(sewn, "hem") - more)).toBeLessThan(TRUED);
      expect(seamByBezierJs(wide, "waist")).toBeCloseTo(seamByBezierJs(sewn, "waist"), 6);
      expect(seamByBezierJs(wide, "side")).toBeCloseTo(600, 3);
      expect(Math.abs(area(wide) - area(sewn) - wedges)).toBeLessThan(SLIVERS);
    }
  });

  it("in six panels has no darts: what the waist takes in lies between two panels", () => {
    const six = skirtOn({ kind: "aLine", length: 600, panels: 6 });
    const [set] = six.halves;
    expect(Object.keys(set)).toEqual(["skirtFront", "skirtSideFront", "skirtBack", "skirtSideBack"]);
    for (const [inner, outer] of [
      ["skirtFront", "skirtSideFront"],
      ["skirtBack", "skirtSideBack"],
    ] as const) {
      const [a, b] = [set[inner], set[outer]];
      if (a === undefined || b === undefined) throw new Error(inner);
      expect([...a.darts, ...b.darts]).toEqual([]);
      expect(seamByBezierJs(a, "panel")).toBeCloseTo(seamByBezierJs(b, "panel"), 6);
      expect(cornerOf(a, "panelWaist") + cornerOf(b, "panelWaist")).toBeCloseTo(180, 6);
      expect(cornerOf(a, "panelHem") + cornerOf(b, "panelHem")).toBeCloseTo(180, 6);
    }
  });

  it("in six panels widens below the hip at the sides by its flare, and by half of that at each edge of a panel's seam", () => {
    const { levels } = skirtOn({ kind: "aLine", length: 600, panels: 6, flare: 7 });
    // Half-way from the hip, 200 down, to the hem: 200 further down.
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
    expect(levels[10]?.girth).toBeCloseTo(960 + 50 + 4 * 200 * (tan(7) + 2 * tan(3.5)), 1);
  });

  it("is cut on the fold but where it opens or has a seam", () => {
    const folds = (panels: 2 | 4 | 6, place: "centreBack" | "side") =>
      skirtOn({ kind: "aLine", panels }, { closure: { place, belowWaist: 180 } }).parts.map(({ key, cut }) => [
        key,
        cut.onFold,
        cut.count,
      ]);
    expect(folds(2, "centreBack")).toEqual([
      ["skirtFront", true, 1],
      ["skirtBack", false, 2],
    ]);
    expect(folds(2, "side")).toEqual([
      ["skirtFront", true, 1],
      ["skirtBack", true, 1],
    ]);
    expect(folds(4, "side").map(([, onFold]) => onFold)).toEqual([false, false]);
    expect(folds(6, "side").map(([, onFold]) => onFold)).toEqual([true, false, false, true]);
  });
});

describe("a straight skirt", () => {
  it("hangs from the hip as wide as it is, and has a vent to step", () => {
    const draft = skirtOn({ kind: "straight", length: 600 });
    expect(draft.hem).toBeCloseTo(1010, 6);
    expect(draft.vent).toBe(200);
    const back = draft.halves[0].skirtBack;
    if (back === undefined) throw new Error("no back");
    expect(pointOf(back, "centreHem").y - pointOf(back, "ventTop").y).toBe(200);
    expect(seamByBezierJs(back, "centre")).toBeCloseTo(draft.lengths.back - 200, 6);
    expect(draft.notes.map(({ code }) => code)).not.toContain("skirt/no-step");
  });

  it("without one is told to be too narrow to step, and with ease enough needs none", () => {
    expect(skirtOn({ kind: "straight", vent: 0 }).notes).toContainEqual({
      code: "skirt/no-step",
      girth: 1010,
      needed: 1060,
    });
    const wide = skirtOn({ kind: "straight", hipEase: 110 });
    expect([wide.vent, wide.notes.map(({ code }) => code).includes("skirt/no-step")]).toEqual([undefined, false]);
  });
});

describe("a vent", () => {
  it("ends 40 below the opening where that goes further down than the hip", () => {
    const closure = { place: "centreBack", belowWaist: 300 } as const;
    const draft = skirtOn({ kind: "straight", length: 600, vent: 400 }, { closure });
    expect(draft.vent).toBeCloseTo(draft.lengths.back - 340, 6);
  });
});

describe("the hem allowance", () => {
  // Common practice, no source: 30 mm turned up, 15 at the most where the edge is on the curve.
  const round = (more: object): unknown =>
    sectors(skirtOn({ kind: "circle", share: 0.5, length: 600, ...more }).parts)[0]?.allowances.outer;

  it("is little on the curve, and otherwise what is usual, unless she says", () => {
    expect(round({})).toBe(15);
    expect(round({ hem: 25 })).toBe(25);
    expect(rectangles(skirtOn({ kind: "gathered", length: 600 }).parts)[0]?.allowances.bottom).toBe(30);
  });
});

describe("the length", () => {
  it.each(["front", "back"] as const)("is refused where the hem would come too near the waist at the %s", (at) => {
    const toFloor = { front: 1050, side: 1050, back: 1050, [at]: 1030 };
    expect(
      draftSkirt({ ...ASKED, body: { ...ASKED.body, toFloor }, skirt: { kind: "gathered", length: 210, ratio: 1.5 } }),
    ).toMatchObject({ ok: false, failure: { code: "skirt/length-out-of-range", length: 190 } });
  });

  it("is by her height where none is said, and told", () => {
    // 0.34 × 1680 = 571.2.
    expect(skirtOn({ kind: "gathered" }).notes).toContainEqual({
      code: "skirt/length-usual",
      length: 570,
      by: "height",
    });
  });

  it.each([
    [{ kind: "straight", length: 230 }, "skirt/length-out-of-range"],
    [{ kind: "gathered", length: 2000 }, "skirt/length-out-of-range"],
    [{ kind: "peplum", peplumLength: 700 }, "skirt/length-out-of-range"],
    [{ kind: "gathered", ratio: 1.2 }, "skirt/ratio-out-of-range"],
    [{ kind: "tiers", length: 400, tiers: [{ depth: 390 }, {}] }, "skirt/tiers-deeper-than-skirt"],
  ] as const)("and all else that cannot be is refused by name: %j", (skirt, code) => {
    expect(draftSkirt({ ...ASKED, skirt })).toMatchObject({ ok: false, failure: { code } });
  });

  it("and what is missing or too wide is too", () => {
    const on = (hip: number | null, clothWidth = 1400) =>
      draftSkirt({ ...ASKED, clothWidth, body: { ...ASKED.body, hip }, skirt: { kind: "aLine" } });
    expect(on(null)).toMatchObject({ ok: false, failure: { code: "skirt/hip-missing" } });
    expect(on(660)).toMatchObject({ ok: false, failure: { code: "skirt/waist-over-hip", waist: 720, hip: 710 } });
    expect(on(1200)).toMatchObject({ ok: false, failure: { code: "skirt/darts-too-wide" } });
    // In six panels each seam takes 60 at the most: (1000 + 50 − 720) / 4 is 82.5, less 22 at the side 60.5; of 990 it is 58.
    const panels = (hip: number) =>
      draftSkirt({ ...ASKED, body: { ...ASKED.body, hip }, skirt: { kind: "aLine", panels: 6 } });
    expect(panels(1000)).toMatchObject({
      ok: false,
      failure: { code: "skirt/darts-too-wide", intake: 60.5, most: 60 },
    });
    expect(panels(990)).toMatchObject({ ok: true });
    // A waist lowered at the back until its darts have no room above the hip line.
    const toFloor = { front: 1050, side: 1050, back: 900 };
    expect(
      draftSkirt({ ...ASKED, body: { ...ASKED.body, toFloor }, skirt: { kind: "aLine", length: 600 } }),
    ).toMatchObject({ ok: false, failure: { code: "skirt/length-out-of-range", length: 450, least: 460 } });
    const narrow = draftSkirt({ ...ASKED, clothWidth: 140, skirt: { kind: "gathered" } });
    expect(narrow).toMatchObject({ ok: false, failure: { code: "skirt/cloth-too-narrow", needed: 150 } });
  });
});

/** The inside angle at a corner, degrees, from the handles beside it. */
function cornerOf(piece: Piece, name: PointName): number {
  const [into, out] = [piece.edges.find(({ to }) => to === name), piece.edges.find(({ from }) => from === name)];
  if (into === undefined || out === undefined) throw new Error(name);
  const at = pointOf(piece, name);
  const before = into.curve?.c2 ?? pointOf(piece, into.from);
  const after = out.curve?.c1 ?? pointOf(piece, out.to);
  const [a, b] = [Math.atan2(before.y - at.y, before.x - at.x), Math.atan2(after.y - at.y, after.x - at.x)];
  const turn = Math.abs(((((a - b) * 180) / Math.PI + 540) % 360) - 180);
  return turn;
}
