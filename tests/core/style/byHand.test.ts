/** Straps, upper edges and what a part keeps of its block, by hand; and what each style tells of itself. */
import { describe, expect, it } from "vitest";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { piecePoint } from "../../../src/core/geometry/point";
import { pieceIn } from "../../../src/core/pattern/pieceSet";
import { pointOf } from "../../../src/core/pattern/piece";
import { cutAtUnderBust, usualSideDepth, withOwnPoints } from "../../../src/core/style/cutAtUnderBust";
import { sideDartFront, withSideDart } from "../../../src/core/style/sideDartStyle";
import { styleOf } from "../../../src/core/style/index";
import { draftStrap, strapEndAt, strapWidth } from "../../../src/core/style/strap";
import { cutUpperEdge } from "../../../src/core/style/upperEdge";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";

describe("straps", () => {
  it("are 12 or 40 mm wide (common practice, no source)", () => {
    expect([strapWidth("thin"), strapWidth("wide")]).toEqual([12, 40]);
  });

  it("leave a piece square to their way to the shoulder, half on each side of its middle", () => {
    // 3 : 4 over 50: the seam runs 4 : 3 the other way.
    const end = strapEndAt(piecePoint(100, 100), piecePoint(130, 60), 20);
    expect(end.length).toBe(50);
    expect(end.towards).toBeCloseTo(Math.atan2(-40, 30), 12);
    expect([end.inner.x, end.inner.y]).toEqual([expect.closeTo(92, 9), expect.closeTo(94, 9)]);
    expect([end.outer.x, end.outer.y]).toEqual([expect.closeTo(108, 9), expect.closeTo(106, 9)]);
  });

  it("are as long as both ways to the shoulder less 15 mm (common practice)", () => {
    const end = (length: number) => ({ inner: piecePoint(0, 0), outer: piecePoint(0, 0), towards: radians(0), length });
    const strap = draftStrap(12, end(120), end(95));
    const at = (x: number, y: number) => ({ at: piecePoint(x, y), level: "shoulder" });
    expect(strap).toEqual({
      name: "strap",
      points: {
        strapBackInner: at(0, 0),
        strapBackOuter: at(12, 0),
        strapFrontOuter: at(12, 200),
        strapFrontInner: at(0, 200),
      },
      edges: [
        { from: "strapBackInner", to: "strapBackOuter", seam: "strap", curve: null, mouthOf: null },
        { from: "strapBackOuter", to: "strapFrontOuter", seam: "armhole", curve: null, mouthOf: null },
        { from: "strapFrontOuter", to: "strapFrontInner", seam: "strap", curve: null, mouthOf: null },
        { from: "strapFrontInner", to: "strapBackInner", seam: "neck", curve: null, mouthOf: null },
      ],
      darts: [],
      levelLines: [],
      centreOnFold: false,
    });
  });
});

describe("an upper edge cut", () => {
  it("leaves the centre level, meets the strap as it leans, and comes into the underarm as the block's does", () => {
    const block = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["shoulderTip", 100, 0, "armhole"],
        ["underarm", 200, 100, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
    });
    const strap = { inner: piecePoint(80, 60), outer: piecePoint(120, 60), towards: radians(-Math.PI / 2), length: 60 };
    const cut = cutUpperEdge(block, {
      centreY: 120,
      strap,
      neck: [0.5, 0.25],
      neckLean: 0.3,
      armhole: [0.2, 0.4],
      armholeLean: 0.6,
    });
    expect(cut.edges.map(({ from, to, seam }) => [from, to, seam])).toEqual([
      ["centreNeck", "strapInner", "neck"],
      ["strapInner", "strapOuter", "strap"],
      ["strapOuter", "underarm", "armhole"],
      ["underarm", "sideWaist", "side"],
      ["sideWaist", "centreWaist", "waist"],
      ["centreWaist", "centreNeck", "centre"],
    ]);
    expect([cut.points.centreNeck, cut.points.strapInner, cut.points.strapOuter]).toEqual([
      { at: piecePoint(0, 120), level: "neck" },
      { at: piecePoint(80, 60), level: "shoulder" },
      { at: piecePoint(120, 60), level: "shoulder" },
    ]);
    const neck = cut.edges[0]?.curve;
    // 100 from the centre to the strap: half of it level; a quarter of it back from the strap, 0.3 off plumb.
    expect([neck?.c1.x, neck?.c1.y]).toEqual([expect.closeTo(50, 9), expect.closeTo(120, 9)]);
    expect([neck?.c2.x, neck?.c2.y]).toEqual([
      expect.closeTo(80 - 25 * Math.sin(0.3), 9),
      expect.closeTo(60 + 25 * Math.cos(0.3), 9),
    ]);
    const armhole = cut.edges[2]?.curve;
    const whole = Math.hypot(80, 40);
    expect([armhole?.c1.x, armhole?.c1.y]).toEqual([
      expect.closeTo(120 + 0.2 * whole * Math.sin(0.6), 9),
      expect.closeTo(60 + 0.2 * whole * Math.cos(0.6), 9),
    ]);
    // The block's armhole comes in at 45°.
    expect([armhole?.c2.x, armhole?.c2.y]).toEqual([
      expect.closeTo(200 - 0.4 * whole * Math.SQRT1_2, 9),
      expect.closeTo(100 - 0.4 * whole * Math.SQRT1_2, 9),
    ]);
  });
});

describe("a part of a block", () => {
  const block = cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 0, "side"],
      ["sideBust", 200, 100, "side"],
      ["sideWaist", 200, 300, "waist"],
      ["waistDartOuter", 110, 300, "waist", "waistDart"],
      ["waistDartInner", 90, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreBust", 0, 100, "centre"],
    ],
    inside: { bustPoint: [100, 100], waistDartApex: [100, 100], underBustCentre: [0, 200], strapAim: [1, 1] },
    darts: [dartFor("waistDart", "waist", "bustPoint")],
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
  });

  it("keeps the points that its outline, darts and levels use, and those that are said", () => {
    const { strapAim, underBustCentre, ...own } = block.points;
    expect(withOwnPoints(block)).toEqual({ ...block, points: own });
    expect(withOwnPoints(block, "strapAim").points).toEqual({ ...own, strapAim });
    const { bustPoint, ...unaimed } = own;
    const aimless = { ...block, darts: [dartFor("waistDart", "waist")] };
    expect(withOwnPoints(aimless).points).toEqual(unaimed);
    expect([underBustCentre?.at.y, bustPoint?.at.y]).toEqual([200, 100]);
  });

  it("is cut so far down each leg of its dart that the cut leaves the centre level; the band's dart is shut", () => {
    const { upper, band } = cutAtUnderBust(block, 100, { upper: "cup", band: "frontBand", aimsAt: "bustPoint" });
    // Legs 10 beside and 200 down; at the leg the cut has risen by half the leg's slope over its way from the centre.
    const half = Math.atan(10 / 200);
    const down = 100 + 100 * Math.tan(half / 2);
    expect(pointOf(upper, "underBustDartInner").x).toBeCloseTo(100 - down * Math.sin(half), 9);
    expect(pointOf(upper, "underBustDartInner").y).toBeCloseTo(100 + down * Math.cos(half), 9);
    expect(pointOf(upper, "underBustDartOuter").x).toBeCloseTo(100 + down * Math.sin(half), 9);
    expect(pointOf(upper, "sideUnderBust")).toEqual(piecePoint(200, 200));
    expect([upper.name, upper.darts, upper.levelLines]).toEqual([
      "cup",
      [dartFor("underBustDart", "underBust", "bustPoint")],
      [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }],
    ]);
    expect(upper.edges.map(({ from, seam, mouthOf }) => [from, seam, mouthOf])).toEqual([
      ["centreNeck", "neck", null],
      ["underarm", "side", null],
      ["sideBust", "side", null],
      ["sideUnderBust", "underBust", null],
      ["underBustDartOuter", "underBust", "underBustDart"],
      ["underBustDartInner", "underBust", null],
      ["underBustCentre", "centre", null],
      ["centreBust", "centre", null],
    ]);
    expect([band.name, band.darts, band.levelLines]).toEqual([
      "frontBand",
      [],
      [
        { level: "underBust", along: { seam: "underBust" } },
        { level: "waist", along: { seam: "waist" } },
      ],
    ]);
    expect(band.edges.map(({ from, seam, mouthOf }) => [from, seam, mouthOf])).toEqual([
      ["underBustCentre", "underBust", null],
      ["bandTopMiddle", "underBust", null],
      ["sideUnderBust", "side", null],
      ["sideWaist", "waist", null],
      ["waistMiddle", "waist", null],
      ["centreWaist", "centre", null],
    ]);
    // The side part turned about the dart's end by its whole angle, on to the centre's.
    expect(pointOf(band, "waistMiddle").x).toBeCloseTo(90, 9);
    expect(pointOf(band, "sideWaist").x).toBeCloseTo(100 + 100 * Math.cos(2 * half) - 200 * Math.sin(2 * half), 9);
    expect(pointOf(band, "sideWaist").y).toBeCloseTo(100 + 100 * Math.sin(2 * half) + 200 * Math.cos(2 * half), 9);
    expect(seamByBezierJs(band, "underBust")).toBeCloseTo(seamByBezierJs(upper, "underBust"), 6);
    expect(seamByBezierJs(band, "waist")).toBeCloseTo(180, 9);
    expect(Object.keys(band.points).toSorted()).toEqual(
      ["bandTopMiddle", "centreWaist", "sideUnderBust", "sideWaist", "underBustCentre", "waistMiddle"].toSorted(),
    );
    // Both curves leave the centre level.
    expect(upper.edges[5]?.curve?.c2.y).toBeCloseTo(200, 9);
    expect(band.edges[0]?.curve?.c1.y).toBeCloseTo(200, 9);
    expect(upper.points.underBustCentre?.level).toBe("underBust");
  });
});

describe("where the cut comes out", () => {
  /** A side that leans inwards by 20 over 200, legs 10 beside over 200. */
  const leaning = cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 0, "side"],
      ["sideBust", 200, 100, "side"],
      ["sideWaist", 180, 300, "waist"],
      ["waistDartOuter", 110, 300, "waist", "waistDart"],
      ["waistDartInner", 90, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreBust", 0, 100, "centre"],
    ],
    inside: { bustPoint: [100, 100], waistDartApex: [100, 100], underBustCentre: [0, 200] },
    darts: [dartFor("waistDart", "waist", "bustPoint")],
  });

  it("falls from the leg by the mean of the leg's slope and the side's", () => {
    const half = Math.atan(10 / 200);
    const down = 100 + 100 * Math.tan(half / 2);
    const [x, y] = [100 + down * Math.sin(half), 100 + down * Math.cos(half)];
    // The side's slope inwards is positive, the leg's outwards negative.
    const slope = Math.tan((Math.atan(0.1) - half) / 2);
    // On the side, x = 200 − (y − 100) / 10; from the leg, y = y₀ + (x − x₀) slope.
    const at = (y + (210 - x) * slope) / (1 + slope / 10);
    expect(usualSideDepth(leaning)).toBeCloseTo((at - 100) * Math.hypot(1, 0.1), 6);
  });

  it("is met squarely at the side seam and at both legs", () => {
    const { upper } = cutAtUnderBust(leaning, 100, { upper: "cup", band: "frontBand", aimsAt: "bustPoint" });
    const [outer, inner] = [upper.edges[3]?.curve, upper.edges[5]?.curve];
    const from = (
      name: "sideUnderBust" | "underBustDartOuter" | "underBustDartInner",
      c: typeof outer,
      which: "c1" | "c2",
    ) => {
      const at = pointOf(upper, name);
      return [(c?.[which].x ?? 0) - at.x, (c?.[which].y ?? 0) - at.y] as const;
    };
    const square = (a: readonly [number, number], b: readonly [number, number]): number =>
      (a[0] * b[0] + a[1] * b[1]) / (Math.hypot(...a) * Math.hypot(...b));
    const half = Math.atan(10 / 200);
    expect(square(from("sideUnderBust", outer, "c1"), [-20, 200])).toBeCloseTo(0, 9);
    expect(square(from("underBustDartOuter", outer, "c2"), [Math.sin(half), Math.cos(half)])).toBeCloseTo(0, 9);
    expect(square(from("underBustDartInner", inner, "c1"), [-Math.sin(half), Math.cos(half)])).toBeCloseTo(0, 9);
    // Towards each other on the side's part, towards the centre on the other.
    expect(from("sideUnderBust", outer, "c1")[0]).toBeLessThan(0);
    expect(from("underBustDartOuter", outer, "c2")[0]).toBeGreaterThan(0);
    expect(from("underBustDartInner", inner, "c1")[0]).toBeLessThan(0);
  });
});

describe("each style", () => {
  const m = draftMeasuresFor(
    { label: "x", bust: 880, waist: 700, hip: 940 },
    { sizes: [], draftedDifference: 50, cups: [] },
    { bust: 80, waist: 40, hip: 50 },
  );
  const [front, back] = [draftFrontBlock(m), draftBackBlock(m)];

  it.each([
    ["sideDart", "front", ["front"], ["back"], ["front", "back"]],
    ["princessArmhole", "centreFront", ["centreFront", "sideFront"], ["back"], ["centreFront", "sideFront", "back"]],
    ["princessShoulder", "centreFront", ["centreFront", "sideFront"], ["back"], ["centreFront", "sideFront", "back"]],
    ["midriff", "cup", ["frontBand"], ["backBand"], ["cup", "frontBand", "back", "backBand", "strap"]],
  ] as const)(
    "%s says where its bust and its waist lie, and what it is made of",
    (name, bust, atFront, atBack, all) => {
      const style = styleOf(name);
      expect([style.name, style.bustPiece, style.waistPieces]).toEqual([name, bust, { front: atFront, back: atBack }]);
      const open = style.open(front, back, 50, { strap: "thin" });
      if (!open.ok) throw new Error(open.failure.code);
      expect(Object.keys(open.value).toSorted()).toEqual([...all].toSorted());
      const refused = style.open(front, back, 900, { strap: "thin" });
      expect(refused.ok ? null : [refused.failure.code, refused.failure.most > 0]).toEqual([
        "fullBust/out-of-reach",
        true,
      ]);
      const adjusted = style.adjustBust(open.value, 10);
      if (!adjusted.ok) throw new Error(adjusted.failure.code);
      const made = style.open(front, back, 70, { strap: "thin" });
      if (!made.ok) throw new Error(made.failure.code);
      // Opened for 20 mm more is adjusted by half of that.
      expect(made.value).toEqual(adjusted.value.pieces);
      expect(adjusted.value.traces.length).toBeGreaterThan(0);
      expect(Math.abs(adjusted.value.turn)).toBeGreaterThan(0);
      expect(adjusted.value.drop).toBeGreaterThan(0);
      expect(style.adjustBust(open.value, 5000).ok).toBe(false);
    },
  );

  it("ends its darts for the bust point and cup that it is given: waist darts 25 mm short, side darts further for more cup", () => {
    const style = styleOf("sideDart");
    const open = style.open(front, back, 50, { strap: "wide" });
    if (!open.ok) throw new Error(open.failure.code);
    const bust = pointOf(pieceIn(open.value, "front"), "bustPoint");
    const endOf = (difference: number, dart: "sideDart" | "waistDart"): number => {
      const piece = pieceIn(style.finish(open.value, bust, difference), "front");
      const apex = pointOf(piece, `${dart}Apex`);
      return Math.hypot(apex.x - bust.x, apex.y - bust.y);
    };
    expect(endOf(75, "waistDart")).toBeCloseTo(endOf(50, "waistDart"), 9);
    // Each 5 mm of cup difference a side dart 1 mm (common practice).
    expect(endOf(75, "sideDart") - endOf(50, "sideDart")).toBeCloseTo(5, 6);
    const hers = style.finish(open.value, bust, 50, (dart) => (dart === "sideDart" ? { along: 40, across: 0 } : null));
    const apex = pointOf(pieceIn(hers, "front"), "sideDartApex");
    expect(Math.hypot(apex.x - bust.x, apex.y - bust.y)).toBeCloseTo(40, 6);
    expect(pieceIn(hers, "back")).toBe(back);
  });

  it("opens the side dart 45 mm down, or a third of a short side; and prints a front of its own darts", () => {
    const short = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 60, 0, "shoulder"],
        ["shoulderDartInner", 90, 0, "shoulder", "shoulderDart"],
        ["shoulderDartOuter", 110, 0, "shoulder"],
        ["shoulderTip", 160, 0, "armhole"],
        ["underarm", 200, 100, "side"],
        ["sideBust", 200, 120, "side"],
        ["sideWaist", 200, 210, "waist"],
        ["centreWaist", 0, 210, "centre"],
      ],
      inside: { bustPoint: [100, 120], shoulderDartApex: [100, 120] },
      darts: [dartFor("shoulderDart", "shoulder", "bustPoint")],
    });
    expect(pointOf(withSideDart(short), "sideDartOuter")).toEqual({ x: 200, y: expect.closeTo(150, 6) });
    const printed = sideDartFront(front, 50);
    if (!printed.ok) throw new Error(printed.failure.code);
    const style = styleOf("sideDart");
    const open = style.open(front, back, 50, { strap: "wide" });
    if (!open.ok) throw new Error(open.failure.code);
    const bust = pointOf(pieceIn(open.value, "front"), "bustPoint");
    expect(printed.value).toEqual(pieceIn(style.finish(open.value, bust, 50), "front"));
    expect(printed.value.darts.map(({ name }) => name).toSorted()).toEqual(["sideDart", "waistDart"]);
    expect(sideDartFront(front, 900).ok).toBe(false);
  });

  it("of a princess line is walked by finishing, the back left alone", () => {
    const style = styleOf("princessShoulder");
    const open = style.open(front, back, 50, { strap: "wide" });
    if (!open.ok) throw new Error(open.failure.code);
    const bust = pointOf(pieceIn(open.value, "centreFront"), "bustPoint");
    const finished = style.finish(open.value, bust, 50);
    expect(seamByBezierJs(pieceIn(finished, "centreFront"), "princess")).toBeCloseTo(
      seamByBezierJs(pieceIn(finished, "sideFront"), "princess"),
      4,
    );
    expect(finished.back).toBe(back);
  });

  it("of a midriff has its edges at shares of the block: neckline, strap and back (our own choice)", () => {
    const style = styleOf("midriff");
    const open = style.open(front, back, 50, { strap: "thin" });
    if (!open.ok) throw new Error(open.failure.code);
    const cup = pieceIn(open.value, "cup");
    const bust = pointOf(cup, "bustPoint");
    const depth = bust.y - pointOf(front, "sideNeck").y;
    expect(bust).toEqual(pointOf(front, "bustPoint"));
    expect(pointOf(cup, "centreNeck").y).toBeCloseTo(bust.y - 0.11 * depth, 6);
    const middleOf = (piece: typeof cup): readonly [number, number] => {
      const [a, b] = [pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")];
      return [(a.x + b.x) / 2, (a.y + b.y) / 2];
    };
    expect(middleOf(cup)).toEqual([expect.closeTo(bust.x, 6), expect.closeTo(bust.y - 0.4 * depth, 6)]);
    const upperBack = pieceIn(open.value, "back");
    const [underarm, nape] = [pointOf(back, "underarm"), pointOf(back, "centreNeck")];
    expect(middleOf(upperBack)).toEqual([
      expect.closeTo(0.45 * underarm.x, 6),
      expect.closeTo(underarm.y - 0.14 * (underarm.y - nape.y), 6),
    ]);
    expect(pointOf(upperBack, "centreNeck").y).toBeCloseTo(underarm.y, 9);
    expect([cup.centreOnFold, cup.darts.map(({ name }) => name)]).toEqual([false, ["underBustDart"]]);
    const finished = pieceIn(style.finish(open.value, bust, 50), "cup");
    expect([cup.points.armholeHinge === undefined, finished.points.armholeHinge]).toEqual([false, undefined]);
    const apex = pointOf(finished, "underBustDartApex");
    // 20 mm short (common practice, no source: 15 to 25).
    expect(Math.hypot(apex.x - bust.x, apex.y - bust.y)).toBeCloseTo(20, 4);
    const hers = pieceIn(
      style.finish(open.value, bust, 50, () => ({ along: 33, across: 0 })),
      "cup",
    );
    const end = pointOf(hers, "underBustDartApex");
    expect(Math.hypot(end.x - bust.x, end.y - bust.y)).toBeCloseTo(33, 4);
  });
});
