/** The style with cups on a midriff band: what comes out of the block by rigid cuts sews together, whatever the body. */
import type { StrapStyle } from "../../../src/core/decisions/pattern";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pieceIn, piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { blendPiece, levelSizes } from "../../../src/core/blend/blendPiece";
import { seamCornerAtDart } from "../../../src/core/dart/trueSeam";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { validateOutline } from "../../../src/core/geometry/outline";
import { levelWidth } from "../../../src/core/girth/levelWidth";
import { pointOf, type Piece, type PieceName, type PointName, type SeamName } from "../../../src/core/pattern/piece";
import { joinsOf, seamPairsOf } from "../../../src/core/pattern/sewnTogether";
import { cutAtUnderBust, drawDartTo, usualSideDepth } from "../../../src/core/style/cutAtUnderBust";
import { midriffStyle } from "../../../src/core/style/midriffStyle";
import { withSideDart } from "../../../src/core/style/sideDartStyle";
import type { BustAdjusted } from "../../../src/core/style/style";
import { adjustFullBust } from "../../../src/core/surgery/fullBust";
import { outlineOf } from "../../../src/core/pattern/ring";
import { anyAmount } from "../../support/amounts";
import { clothCorners, crossesItself, seamByBezierJs } from "../../support/independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };

interface Place {
  readonly x: number;
  readonly y: number;
}

interface Blocks {
  readonly front: Piece;
  readonly back: Piece;
}

function blocksFor(bust: number, waist: number): Blocks {
  const m = draftMeasuresFor({ label: "x", bust, waist, hip: bust + 60 }, chart, ease);
  return { front: draftFrontBlock(m), back: draftBackBlock(m) };
}

function opened({ front, back }: Blocks, difference: number, strap: StrapStyle): PieceSet {
  const made = midriffStyle.open(front, back, difference, { strap });
  if (!made.ok) throw new Error(`${made.failure.code}, most ${made.failure.most}`);
  return made.value;
}

function spreadBy(pieces: PieceSet, spread: number): BustAdjusted {
  const made = midriffStyle.adjustBust(pieces, spread);
  if (!made.ok) throw new Error(`${made.failure.code}, most ${made.failure.most}`);
  return made.value;
}

const finished = (pieces: PieceSet, difference: number): PieceSet =>
  midriffStyle.finish(pieces, pointOf(pieceIn(pieces, "cup"), "bustPoint"), difference);

const turnedAbout = (centre: Place, angle: number, { x, y }: Place): Place => ({
  x: centre.x + Math.cos(angle) * (x - centre.x) - Math.sin(angle) * (y - centre.y),
  y: centre.y + Math.sin(angle) * (x - centre.x) + Math.cos(angle) * (y - centre.y),
});
const apart = (a: Place, b: Place): number => Math.hypot(b.x - a.x, b.y - a.y);
const between = (piece: Piece, a: PointName, b: PointName): number => apart(pointOf(piece, a), pointOf(piece, b));
const middleOf = (a: Place, b: Place): Place => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const towards = (a: Place, b: Place): number => Math.atan2(b.y - a.y, b.x - a.x);
const degrees = (angle: number): number => (Math.atan2(Math.sin(angle), Math.cos(angle)) * 180) / Math.PI;

/** Inner corner of an outline that runs clockwise on screen: from the tangents that the controls give. */
function cornerAt(piece: Piece, point: PointName): number {
  const before = piece.edges.find(({ to }) => to === point);
  const after = piece.edges.find(({ from }) => from === point);
  if (before === undefined || after === undefined) throw new Error(`${piece.name} has no corner ${point}`);
  const at = pointOf(piece, point);
  const arriving = towards(before.curve?.c2 ?? pointOf(piece, before.from), at);
  const leaving = towards(at, after.curve?.c1 ?? pointOf(piece, after.to));
  return 180 - degrees(leaving - arriving);
}

/** Shoelace formula; mm². */
const areaOf = (corners: readonly Place[]): number =>
  Math.abs(
    corners.reduce((sum, p, i) => {
      const q = corners[(i + 1) % corners.length] ?? p;
      return sum + p.x * q.y - q.x * p.y;
    }, 0),
  ) / 2;

/** Half bust along the level points, by plain distances; a lapped gap counts back. */
function halfBust(cup: Piece): number {
  const [inner, outer] = [pointOf(cup, "bustLineInner"), pointOf(cup, "bustLineOuter")];
  const gap = Math.sign(outer.x - inner.x) * apart(inner, outer);
  return between(cup, "centreBust", "bustLineInner") + gap + between(cup, "bustLineOuter", "sideBust");
}

/** The angle between the two parts of the cup at its dart: each leg seen from its own side of the gap. */
function dartOpening(cup: Piece): number {
  const inner = towards(pointOf(cup, "bustLineInner"), pointOf(cup, "underBustDartInner"));
  const outer = towards(pointOf(cup, "bustLineOuter"), pointOf(cup, "underBustDartOuter"));
  return inner - outer;
}

const seams = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): number =>
  names.reduce((sum, name) => sum + seamByBezierJs(pieceIn(pieces, name), seam), 0);

/** Says what was off; anything that is no number fails. */
function expectWithin(what: string, measured: number, wanted: number, tolerance: number): void {
  const off = Math.abs(measured - wanted) <= tolerance ? "as wanted" : `${measured}, not ${wanted}`;
  expect(`${what}: ${off}`).toBe(`${what}: as wanted`);
}

/** Everything that must hold of the sewn garment. */
function expectSewable(pieces: PieceSet, block: Blocks): void {
  const pairs = seamPairsOf(pieces);
  expect(pairs.map(({ seam, first, second }) => [seam, ...first, ...second].join(" "))).toEqual([
    "side back cup",
    "underBust cup frontBand",
    "underBust back backBand",
    "side backBand frontBand",
  ]);
  for (const { seam, first, second, ease: eased } of pairs) {
    expectWithin(
      `${seam} of ${first.join(" ")}`,
      seams(pieces, first, seam) - seams(pieces, second, seam),
      eased,
      0.05,
    );
  }
  for (const piece of piecesOf(pieces)) {
    expect([piece.name, validateOutline(outlineOf(piece))]).toEqual([piece.name, []]);
    expect([piece.name, crossesItself(piece)]).toEqual([piece.name, false]);
  }
  for (const [band, whole] of [
    ["frontBand", block.front],
    ["backBand", block.back],
  ] as const) {
    const piece = pieceIn(pieces, band);
    expectWithin(`waist of ${band}`, seamByBezierJs(piece, "waist"), seamByBezierJs(whole, "waist"), 0.005);
    for (const point of ["underBustCentre", "centreWaist"] as const)
      expectWithin(`${band} ${point}`, cornerAt(piece, point), 90, 1);
    for (const point of ["bandTopMiddle", "waistMiddle"] as const)
      expectWithin(`${band} ${point}`, cornerAt(piece, point), 180, 0.1);
  }
  // Upper and lower part together are as long at the side as the block.
  expect(seams(pieces, ["cup", "frontBand"], "side")).toBeCloseTo(seamByBezierJs(block.front, "side"), 3);
  expect(seams(pieces, ["back", "backBand"], "side")).toBeCloseTo(seamByBezierJs(block.back, "side"), 3);
  for (const { point, first, second } of joinsOf(pieces)) {
    const sum = cornerAt(pieceIn(pieces, first), point) + cornerAt(pieceIn(pieces, second), point);
    expectWithin(`${point} of ${first} and ${second}`, sum, 180, 3);
  }
  for (const name of ["cup", "back"] as const) {
    const piece = pieceIn(pieces, name);
    expectWithin(`seam at the dart of ${name}`, degrees(seamCornerAtDart(piece, "underBustDart")), 0, 0.1);
    const leg = (end: PointName): number => between(piece, "underBustDartApex", end);
    expectWithin(`legs of ${name}`, leg("underBustDartInner"), leg("underBustDartOuter"), 0.01);
    for (const point of ["centreNeck", "underBustCentre"] as const)
      expectWithin(`${name} ${point}`, cornerAt(piece, point), 90, 1);
  }
}

const BODIES = [
  ["slight", 760, 580],
  ["middling", 880, 700],
  ["large", 1180, 1000],
  ["very straight", 880, 880],
  ["straight and large", 1180, 1190],
  ["very curvy", 880, 600],
  ["curvy and slight", 760, 520],
] as const;

describe.each(BODIES)("%s: bust %d, waist %d", (_, bust, waist) => {
  const block = blocksFor(bust, waist);

  it.each([50, 75, 100])("cup difference %d sews together, straps thin and wide", (difference) => {
    for (const strap of ["thin", "wide"] as const)
      expectSewable(finished(opened(block, difference, strap), difference), block);
  });

  // The block is drafted for a difference of 50 mm; a half front carries half of what a cup has more.
  it.each([50, 75, 100])(
    "cup difference %d: the half bust is the block's and half of what it has over 50 mm",
    (difference) => {
      const cup = pieceIn(opened(block, difference, "thin"), "cup");
      const blockHalf = pointOf(block.front, "sideBust").x;
      expect(halfBust(cup)).toBeCloseTo(blockHalf + (difference - 50) / 2, 6);
      expect(levelWidth(cup, "bust")).toBeCloseTo(blockHalf + (difference - 50) / 2, 6);
      expect(levelWidth(pieceIn(finished({ cup }, difference), "cup"), "bust")).toBeCloseTo(
        blockHalf + (difference - 50) / 2,
        6,
      );
    },
  );

  it("the cup's dart opens by the angles of the block's two darts together", () => {
    const front = drawDartTo(block.front, pointOf(block.front, "bustPoint"));
    const at = pointOf(front, "bustPoint");
    const angle = (inner: PointName, outer: PointName): number =>
      Math.abs(degrees(towards(at, pointOf(front, outer)) - towards(at, pointOf(front, inner))));
    const both = angle("waistDartInner", "waistDartOuter") + angle("shoulderDartInner", "shoulderDartOuter");
    expect(degrees(dartOpening(pieceIn(opened(block, 50, "thin"), "cup")))).toBeCloseTo(both, 6);
  });

  it("upper part and band have the cloth of the block, darts cut out", () => {
    const front = drawDartTo(block.front, pointOf(block.front, "bustPoint"));
    const { upper, band } = cutAtUnderBust(front, usualSideDepth(front), {
      upper: "cup",
      band: "frontBand",
      aimsAt: "bustPoint",
    });
    const whole = areaOf(clothCorners(front));
    // The outline is drawn in chords, which miss some mm² of the curves.
    expect(Math.abs(areaOf(clothCorners(upper)) + areaOf(clothCorners(band)) - whole)).toBeLessThan(whole * 1e-4);
  });

  it("the under-bust lies at 41 % of the way from bust line to waist at the centre, by how the style is described", () => {
    const pieces = opened(block, 50, "thin");
    const bustLine = pointOf(block.front, "bustPoint").y;
    const waistLine = pointOf(block.front, "centreWaist").y;
    for (const name of ["cup", "frontBand", "back", "backBand"] as const) {
      expect(pointOf(pieceIn(pieces, name), "underBustCentre").y).toBeCloseTo(
        bustLine + 0.41 * (waistLine - bustLine),
        6,
      );
    }
  });

  it("the strap is as wide as asked (12 or 40 mm) and as long as its way over the shoulder less 15 mm (common practice, no source)", () => {
    for (const [strap, width] of [
      ["thin", 12],
      ["wide", 40],
    ] as const) {
      const pieces = opened(block, 50, strap);
      const way = (name: "cup" | "back", shoulder: Place): number => {
        const piece = pieceIn(pieces, name);
        expect(between(piece, "strapInner", "strapOuter")).toBeCloseTo(width, 6);
        return apart(middleOf(pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")), shoulder);
      };
      // The front's shoulder dart is in the middle: shut, its inner end is the middle of the shoulder.
      const front = way("cup", pointOf(block.front, "shoulderDartInner"));
      const back = way("back", middleOf(pointOf(block.back, "sideNeck"), pointOf(block.back, "shoulderTip")));
      const piece = pieceIn(pieces, "strap");
      expect(between(piece, "strapFrontInner", "strapFrontOuter")).toBe(width);
      expect(between(piece, "strapFrontInner", "strapBackInner")).toBeCloseTo(front + back - 15, 6);
    }
  });

  it("the bust point lies well below the upper edge of cup and strap", () => {
    for (const strap of ["thin", "wide"] as const) {
      const cup = pieceIn(opened(block, 50, strap), "cup");
      const at = pointOf(cup, "bustPoint");
      expect(at.y - pointOf(cup, "strapInner").y).toBeGreaterThan(80);
      expect(at.y - pointOf(cup, "centreNeck").y).toBeGreaterThan(20);
      expect(at.y - pointOf(cup, "centreNeck").y).toBeLessThan(40);
    }
  });
});

describe("any body", () => {
  const anyBody = fc.record({
    bust: anyAmount(760, 1180),
    less: anyAmount(-10, 290),
    difference: anyAmount(30, 100),
    strap: fc.constantFrom<StrapStyle>("thin", "wide"),
  });

  it("sews together in any cup, and the pieces that the bust does not touch are left alone", () => {
    fc.assert(
      fc.property(anyBody, anyAmount(-5, 12), ({ bust, less, difference, strap }, spread) => {
        // A slight, straight figure's cup cannot be made that much smaller; its refusal is tested apart.
        fc.pre(difference + 2 * spread >= 45 || less >= 150);
        const block = blocksFor(bust, bust - less);
        const cut = opened(block, difference, strap);
        const { pieces } = spreadBy(cut, spread);
        for (const name of ["frontBand", "back", "backBand", "strap"] as const) expect(pieces[name]).toBe(cut[name]);
        expectSewable(finished(pieces, difference + 2 * spread), block);
      }),
      { numRuns: 40 },
    );
  });

  // A point at distance R from a hinge moves by a chord g when turned by φ: g = 2 R sin(φ / 2).
  it("an adjustment turns the side part by what makes the chord, lets the seam down at the dart, and keeps all seams", () => {
    fc.assert(
      fc.property(anyBody, anyAmount(-8, 25), ({ bust, less, strap }, spread) => {
        const before = opened(blocksFor(bust, bust - less), 50, strap);
        const cup = pieceIn(before, "cup");
        const { pieces, turn, drop } = spreadBy(before, spread);
        const after = pieceIn(pieces, "cup");
        const radius = between(cup, "strapInner", "bustPoint");
        const angle = 2 * Math.asin(spread / (2 * radius));
        expect(turn).toBeCloseTo(-angle, 9);
        // The drop of a front with a side dart, from its own formula: the apex on a circle about the hinge on the armhole.
        const [apex, hinge] = [pointOf(cup, "bustPoint"), pointOf(cup, "armholeHinge")];
        const start = Math.atan2(apex.y - hinge.y, apex.x - hinge.x);
        const far = apart(apex, hinge);
        const end = Math.acos(Math.cos(start) + spread / far);
        const down = far * (Math.sin(end) - Math.sin(start));
        expect(drop).toBeCloseTo(down, 6);
        const moved = (at: Place): Place => turnedAbout(pointOf(cup, "strapInner"), -angle, at);
        for (const point of ["underBustCentre", "centreBust", "centreNeck"] as const)
          expectWithin(point, apart(pointOf(after, point), pointOf(cup, point)), 0, 1e-9);
        for (const point of ["sideUnderBust", "sideBust", "underarm"] as const)
          expectWithin(point, apart(pointOf(after, point), moved(pointOf(cup, point))), 0, 1e-9);
        const [inner, outer] = [pointOf(after, "underBustDartInner"), pointOf(after, "underBustDartOuter")];
        expectWithin("let down", apart(inner, pointOf(cup, "underBustDartInner")), Math.abs(down), 1e-6);
        expectWithin("let down", apart(outer, moved(pointOf(cup, "underBustDartOuter"))), Math.abs(down), 1e-6);
        expect(Math.sign(inner.y - pointOf(cup, "underBustDartInner").y)).toBe(Math.sign(spread));
        expect(Math.sign(outer.y - moved(pointOf(cup, "underBustDartOuter")).y)).toBe(Math.sign(spread));
        expect(halfBust(after) - halfBust(cup)).toBeCloseTo(spread, 6);
        for (const seam of ["neck", "strap", "armhole", "side", "underBust", "centre"] as const) {
          expect(seamByBezierJs(after, seam)).toBeCloseTo(seamByBezierJs(cup, seam), 6);
        }
        const gap = middleOf(pointOf(after, "bustLineInner"), pointOf(after, "bustLineOuter"));
        expect(apart(pointOf(after, "bustPoint"), gap)).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it("is let down by what a front with a side dart is lengthened by, for the same body and spread", () => {
    fc.assert(
      fc.property(anyBody, anyAmount(-5, 25), ({ bust, less }, spread) => {
        const block = blocksFor(bust, bust - less);
        const front = adjustFullBust(withSideDart(block.front), spread);
        fc.pre(front.ok);
        expect(spreadBy(opened(block, 50, "thin"), spread).drop).toBeCloseTo(front.ok ? front.value.drop : NaN, 6);
      }),
      { numRuns: 30 },
    );
  });

  it("two adjustments are one by their sum", () => {
    fc.assert(
      fc.property(anyBody, anyAmount(-5, 12), anyAmount(-3, 12), ({ bust, less, strap }, first, second) => {
        const before = opened(blocksFor(bust, bust - less), 50, strap);
        const twice = pieceIn(spreadBy(spreadBy(before, first).pieces, second).pieces, "cup");
        const once = pieceIn(spreadBy(before, first + second).pieces, "cup");
        for (const name of ["bustPoint", "bustLineOuter", "underarm", "underBustDartOuter"] as const) {
          expectWithin(name, apart(pointOf(twice, name), pointOf(once, name)), 0, 1e-6);
        }
        expect(halfBust(twice) - halfBust(pieceIn(before, "cup"))).toBeCloseTo(first + second, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("sews together when the waist is blended up to two sizes away from the frame", () => {
    const nest = [760, 800, 840, 880, 920, 960].map((bust) => blocksFor(bust, bust - 180));
    fc.assert(
      fc.property(anyAmount(0, 5), anyAmount(-2, 2), anyAmount(40, 100), (baseSize, aside, difference) => {
        const at = levelSizes(baseSize, baseSize + aside, baseSize);
        const block = {
          front: blendPiece(
            nest.map(({ front }) => front),
            at,
          ),
          back: blendPiece(
            nest.map(({ back }) => back),
            at,
          ),
        };
        expectSewable(finished(opened(block, difference, "thin"), difference), block);
      }),
      { numRuns: 30 },
    );
  });
});

describe("refusals", () => {
  const before = opened(blocksFor(880, 700), 50, "thin");
  const mouth = (pieces: PieceSet): number =>
    between(pieceIn(pieces, "cup"), "underBustDartInner", "underBustDartOuter");

  function mostOf(spread: number, code: string): number {
    const made = midriffStyle.adjustBust(before, spread);
    expect(made).toMatchObject({ ok: false, failure: { code } });
    return made.ok ? NaN : made.failure.most;
  }

  it("a bust so small that the dart would close, or be too short to be pressed: the least that leaves it", () => {
    const most = mostOf(-60, "fullBust/out-of-reach");
    expect(most).toBeLessThan(-10);
    expect(midriffStyle.adjustBust(before, most - 0.001)).toMatchObject({
      ok: false,
      failure: { code: "fullBust/dart-vanishes" },
    });
    const { pieces } = spreadBy(before, most);
    const cup = pieceIn(pieces, "cup");
    const middle = middleOf(pointOf(cup, "underBustDartInner"), pointOf(cup, "underBustDartOuter"));
    // 3 mm of mouth, or 25 mm of dart and the 10 mm that it stops short at the least.
    const left = Math.min(mouth(pieces) - 3, apart(pointOf(cup, "bustPoint"), middle) - 35);
    expect(left).toBeCloseTo(0, 3);
  });

  it.each([150, 1000])("a bust fuller by %d mm than one dart can shape: the most that works still sews", (spread) => {
    const most = mostOf(spread, "fullBust/out-of-reach");
    expect(most).toBeGreaterThan(30);
    expect(midriffStyle.adjustBust(before, most + 0.001).ok).toBe(false);
    expectSewable(finished(spreadBy(before, most).pieces, 50 + 2 * most), blocksFor(880, 700));
  });

  it("opening refuses the same way", () => {
    const block = blocksFor(880, 700);
    const made = midriffStyle.open(block.front, block.back, 0 - 60, { strap: "thin" });
    expect(made).toMatchObject({ ok: false, failure: { code: "fullBust/out-of-reach" } });
  });
});

it("no spread leaves every point where it was", () => {
  const before = opened(blocksFor(880, 700), 50, "wide");
  const { pieces, turn } = spreadBy(before, 0);
  expect(Math.abs(turn)).toBe(0);
  for (const [name, point] of Object.entries(pieceIn(before, "cup").points)) {
    expect(Object.entries(pieceIn(pieces, "cup").points)).toContainEqual([
      name,
      { at: { x: expect.closeTo(point.at.x, 9), y: expect.closeTo(point.at.y, 9) }, level: point.level },
    ]);
  }
});

it("the dart ends 20 mm short of the bust point (common practice, no source: 15 to 25 mm)", () => {
  const open = opened(blocksFor(880, 700), 50, "thin");
  const cup = pieceIn(finished(open, 50), "cup");
  expect(between(cup, "underBustDartApex", "bustPoint")).toBeCloseTo(20, 0);
});

it("the trace: the side part and the two below it, their hinges, paper let in for a fuller bust", () => {
  const made = midriffStyle.adjustBust(opened(blocksFor(880, 700), 50, "thin"), 20);
  const trace = made.ok ? made.value.traces[0] : undefined;
  expect(made).toMatchObject({ ok: true, value: { smoothed: 0 } });
  expect(trace?.parts).toHaveLength(3);
  expect(trace?.hinges).toHaveLength(3);
  expect(trace?.piece).toBe("cup");
  expect(trace?.area).toBeGreaterThan(0);
});
