/** Where the pieces of a pattern come from, and what they tell of themselves: by rows of the chart and sums in the head. */
import { describe, expect, it } from "vitest";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { levelSizes } from "../../../src/core/blend/blendPiece";
import { piecesOfPattern, readingOf } from "../../../src/core/nest/piecesOfPattern";
import { ownNestOf, ownPieces } from "../../../src/core/nest/ownPieces";
import type { Making, PatternPieces } from "../../../src/core/nest/patternPieces";
import { differenceOf, draftBlocks, printNest } from "../../../src/core/nest/printedNest";
import { piecePoint } from "../../../src/core/geometry/point";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointOf, type DartName, type Piece, type PieceName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { straightNest } from "../../support/straightNest";
import { testWork } from "../../support/works";

const { pattern } = testWork;
const piecesFor = (change: Partial<Pattern> = {}): PatternPieces => {
  const found = piecesOfPattern({ pattern: { ...pattern, ...change } });
  if (!found.ok) throw new Error(found.failure.code);
  return found.value;
};
const intake = (piece: Piece | undefined, dart: DartName): number => {
  const found = invariant(piece, "piece");
  const [a, b] = [pointOf(found, `${dart}Inner`), pointOf(found, `${dart}Outer`)];
  return Math.hypot(a.x - b.x, a.y - b.y);
};

describe("the stand-in", () => {
  it("finishes at the chart's waists and hips and the ease, whole and between sizes", () => {
    const pieces = piecesFor();
    expect([pieces.source, pieces.isEaseMeasured, pieces.alike.size, pieces.chart]).toEqual([
      "standIn",
      false,
      0,
      pattern.chart,
    ]);
    for (const [index, { waist, hip }] of pattern.chart.sizes.entries()) {
      expect(pieces.printedWaists("B")[index]).toBeCloseTo(waist + 40, 1);
      expect(pieces.finishedWaistAt("B", index, index)).toBeCloseTo(waist + 40, 1);
      expect(pieces.finishedHips("B")?.[index]).toBeCloseTo(hip + 50, 6);
      expect(pieces.easeOf("B", index)).toEqual(pattern.ease);
    }
    // Half-way from 820 to 860 by the chart.
    expect(pieces.finishedHipAt("B", 0, 0.5)).toBeCloseTo(840 + 50, 6);
  });

  it("has no hips and no basques where it ends at the waist", () => {
    expect(piecesFor({ length: "waist" }).finishedHips("B")).toBeNull();
    const made = piecesFor({ length: "waist" }).make("B", levelSizes(2, 2, 2));
    expect(made.ok && made.value.others).toEqual({});
    const blocks = draftBlocks({ ...pattern, length: "waist" });
    expect([blocks.frontBasque, blocks.backBasque]).toEqual([[], []]);
    expect([blocks.front.length, blocks.back.length]).toEqual([12, 12]);
  });

  it("has its basques sewn to what is blended, however far the waist lies from the frame", () => {
    const made = piecesFor().make("C", levelSizes(2, 4.5, 3));
    if (!made.ok) throw new Error(made.failure.code);
    const { cut, others } = made.value;
    for (const [bodice, basque] of [
      ["front", "frontBasque"],
      ["back", "backBasque"],
    ] as const)
      expect(seamLength(invariant(others[basque], basque), "waist")).toBeCloseTo(
        seamLength(invariant(cut[bodice], bodice), "waist"),
        2,
      );
    expect(seamLength(invariant(others.frontBasque, "basque"), "side")).toBeCloseTo(
      seamLength(invariant(others.backBasque, "basque"), "side"),
      2,
    );
  });

  it("has darts of a basque 9 mm narrower than the bodice's, or so much that the narrowest of all keeps 3", () => {
    const blocks = draftBlocks(pattern);
    // To well within a millimetre: mouths are trued.
    for (const [index, back] of blocks.back.entries())
      expect(Math.abs(intake(back, "waistDart") - intake(blocks.backBasque[index], "waistDart") - 9)).toBeLessThan(0.7);
    // Waists so full that darts are small: the smallest size's the smallest.
    const full = draftBlocks({
      ...pattern,
      chart: {
        ...pattern.chart,
        sizes: pattern.chart.sizes.map((size, index) => ({ ...size, waist: size.bust - 20 - index })),
      },
    });
    const narrowest = Math.min(...full.back.map((back) => intake(back, "waistDart")));
    expect(narrowest).toBeLessThan(12);
    const left = Math.min(...full.backBasque.map((basque) => intake(basque, "waistDart")));
    expect(Math.abs(left - 3)).toBeLessThan(0.7);
  });

  it("is printed in the cup asked for, every piece of each size in one order", () => {
    const { nest, refusedAt } = printNest(pattern, draftBlocks(pattern), 75);
    expect([...nest.labels.keys()].map(refusedAt)).toEqual(nest.labels.map(() => undefined));
    expect(nest.source).toBe("standIn");
    expect(nest.labels).toEqual(pattern.chart.sizes.map(({ label }) => label));
    expect(nest.sizes.map((pieces) => pieces.map(({ name }) => name))).toEqual(
      nest.labels.map(() => ["front", "back", "frontBasque", "backBasque"]),
    );
  });

  it("has a size that no front can be made of in a cup without one, and says why; the basques stay", () => {
    const { nest, refusedAt } = printNest(pattern, draftBlocks(pattern), 700);
    expect(nest.labels).toHaveLength(12);
    expect(nest.sizes.map((pieces) => pieces.map(({ name }) => name))).toEqual(
      nest.labels.map(() => ["frontBasque", "backBasque"]),
    );
    for (const size of nest.labels.keys()) expect(refusedAt(size)?.code).toMatch(/^fullBust\//);
  });

  it("makes a size when it is read, and once: one that nobody can make is no matter to who reads another", () => {
    const blocks = draftBlocks(pattern);
    const torn = blocks.front.map((front, size) => (size === 3 ? { ...front, edges: [], darts: [] } : front));
    const { nest, refusedAt } = printNest(pattern, { ...blocks, front: torn }, 75);
    expect(nest.sizes).toHaveLength(12);
    expect(refusedAt(2)).toBeUndefined();
    expect(nest.sizes[2]).toBe(nest.sizes[2]);
    expect(() => nest.sizes[3]).toThrow("front has no edge from sideBust");
    expect(() => [...nest.sizes]).toThrow("front has no edge from sideBust");
  });

  it("is drafted for the chart's own difference where it has no such cup", () => {
    expect([differenceOf(pattern, "C"), differenceOf(pattern, null), differenceOf(pattern, "Z")]).toEqual([75, 50, 50]);
  });
});

describe("what was measured on the tissue", () => {
  const front = { centreLength: 330 };

  it.each([
    ["of a size of the chart", { size: "12", pieces: { front } }, "fitted"],
    ["of no size of the chart", { size: "11", pieces: { front } }, "standIn"],
    ["on a piece that the style has not", { size: "12", pieces: { cup: front } }, "standIn"],
    ["with nothing in it", { size: "12", pieces: { front: {}, back: {} } }, "standIn"],
    ["on one of two pieces", { size: "12", pieces: { front: {}, back: front } }, "fitted"],
  ])("brings the stand-in to it, or not: %s", (_, tissue, source) => {
    const pieces = piecesFor({ tissue });
    expect(pieces.source).toBe(source);
    expect(pieces.isEaseMeasured).toBe(source === "fitted");
  });
});

describe("her own outlines", () => {
  it("are read of no pattern that has none", () => {
    expect(readingOf(pattern)).toBeNull();
  });

  const sizes = ["8", "10", "12"].map((label, index) => ({
    label,
    front: { bust: 230 + 10 * index, waist: 200 + 10 * index, dart: 30 },
    back: { bust: 210 + 10 * index, waist: 190 + 10 * index, dart: 25 },
  }));
  const chart: Pattern["chart"] = {
    sizes: [
      { label: "8", bust: 800, waist: 620, hip: 860 },
      { label: "10", bust: 840, waist: 660, hip: 900 },
      { label: "12", bust: 880, waist: 700, hip: 940 },
      // A second row of one name: the first is meant.
      { label: "10", bust: 920, waist: 740, hip: 980 },
    ],
    draftedDifference: 50,
    cups: [
      { label: "B", difference: 50 },
      { label: "C", difference: 75 },
    ],
  };
  const mine: Pattern = { ...pattern, chart, length: "waist" };

  it("make a nest of every row, of the one cup that is drawn", () => {
    const { nest, ...rest } = ownNestOf({ ...straightNest(sizes, "C"), labels: { other1: "Pocket" } }, mine);
    expect(rest).toEqual({
      chart: { ...chart, cups: [{ label: "C", difference: 75 }] },
      difference: 75,
      alike: new Set(),
    });
    expect([nest.source, nest.labels, nest.traced, nest.otherNames]).toEqual([
      "own",
      ["8", "10", "12", "10"],
      [true, true, true, false],
      { other1: "Pocket" },
    ]);
    expect(nest.sizes.map((pieces) => pointOf(invariant(pieces[0], "front"), "sideBust").x)).toEqual([
      230, 240, 250, 260,
    ]);
  });

  it("measure what they finish at, in whole sizes and between, and the ease of each", () => {
    const pieces = ownPieces(straightNest(sizes, "C"), mine);
    // Half waists 170 + 165, 10 mm more a piece each size.
    const waists = [670, 710, 750, 790];
    for (const [index, waist] of waists.entries()) {
      expect(pieces.printedWaists("C")[index]).toBeCloseTo(waist, 6);
      expect(pieces.finishedWaistAt("C", 1, index)).toBeCloseTo(waist, 6);
    }
    expect(pieces.finishedWaistAt("C", 1, 1.5)).toBeCloseTo(730, 6);
    expect(pieces.finishedHips("C")).toBeNull();
    // Twice 440 less a body of 800 and 25 of cup; the hip as it is said, since no piece has one.
    const ease = pieces.easeOf("C", 0);
    expect(ease.bust).toBeCloseTo(880 - 825, 6);
    expect(ease.waist).toBeCloseTo(50, 6);
    expect(ease.hip).toBe(mine.ease.hip);
  });

  it("are made as they are traced where no size but one is asked for, and nothing of the bust is altered", () => {
    const made = ownPieces(straightNest(sizes, "C"), mine).make("C", levelSizes(1, 1, 1));
    if (!made.ok) throw new Error(made.failure.code);
    const { open, cut, others, sideNeck } = made.value;
    const finish = (...of: Parameters<Making["finish"]>) => made.value.finish(...of);
    const adjustBust = (...of: Parameters<Making["adjustBust"]>) => made.value.adjustBust(...of);
    expect(others).toEqual({});
    expect(sideNeck).toEqual(pointOf(invariant(cut.front, "front"), "sideNeck"));
    const bust = pointOf(invariant(cut.front, "front"), "bustPoint");
    expect(pointOf(invariant(open.front, "front"), "waistDartApex")).toEqual(bust);
    expect(finish(open, bust, 75)).toBe(cut);
    // Another cup, another bust point, or other pieces: darts are ended anew.
    expect(finish(open, bust, 80)).not.toBe(cut);
    expect(finish(open, { ...bust, x: bust.x + 1 }, 75)).not.toBe(cut);
    expect(finish(open, { ...bust, y: bust.y + 1 }, 75)).not.toBe(cut);
    expect(finish({ ...open }, bust, 75)).not.toBe(cut);
    expect(adjustBust(open, 10)).toBe(adjustBust(open, 10));
  });

  it("part what lies below the waist, and what has no name of ours, from what the bust is altered on", () => {
    const at = (x: number, y: number, level: "waist" | "hip") => ({ at: piecePoint(x, y), level });
    const basque = (name: PieceName, waist: number): Piece => ({
      name,
      points: {
        centreWaist: at(0, 400, "waist"),
        sideWaist: at(waist, 400, "waist"),
        sideHip: at(waist + 30, 600, "hip"),
        centreHip: at(0, 600, "hip"),
      },
      edges: [
        { from: "centreWaist", to: "sideWaist", seam: "waist", curve: null, mouthOf: null },
        { from: "sideWaist", to: "sideHip", seam: "side", curve: null, mouthOf: null },
        { from: "sideHip", to: "centreHip", seam: "hem", curve: null, mouthOf: null },
        { from: "centreHip", to: "centreWaist", seam: "centre", curve: null, mouthOf: null },
      ],
      darts: [],
      levelLines: [
        { level: "waist", along: { seam: "waist" } },
        { level: "hip", along: { points: ["centreHip", "sideHip"] } },
      ],
      centreOnFold: false,
    });
    const nest = straightNest(sizes, "C");
    const long = {
      ...nest,
      sizes: nest.sizes.map(({ label, pieces }, index) => ({
        label,
        pieces: [
          ...pieces,
          basque("frontBasque", 170 + 10 * index),
          basque("backBasque", 165 + 10 * index),
          { ...basque("other1", 50), levelLines: [] },
        ],
      })),
    };
    const pieces = ownPieces(long, { ...mine, length: "hip" });
    // Twice 200 + 195, 20 more a half each size.
    for (const [index, hip] of [790, 830, 870, 910].entries()) {
      expect(pieces.finishedHips("C")?.[index]).toBeCloseTo(hip, 6);
      expect(pieces.finishedHipAt("C", 0, index)).toBeCloseTo(hip, 6);
      expect(pieces.finishedWaistAt("C", 0, index)).toBeCloseTo(670 + 40 * index, 6);
    }
    expect(pieces.finishedHipAt("C", 0, 0.25)).toBeCloseTo(800, 6);
    const made = pieces.make("C", levelSizes(1, 1, 1));
    if (!made.ok) throw new Error(made.failure.code);
    expect(Object.keys(made.value.others).toSorted()).toEqual(["backBasque", "frontBasque", "other1"]);
    expect(Object.keys(made.value.cut).toSorted()).toEqual(["back", "front"]);
    expect(Object.keys(made.value.open).toSorted()).toEqual(["back", "front"]);
  });

  it("end their darts where they ended, and 1 mm further off for each 5 mm of cup at the side (common practice)", () => {
    const made = ownPieces(straightNest(sizes, "C"), mine).make("C", levelSizes(1, 1, 1));
    if (!made.ok) throw new Error(made.failure.code);
    const { open, cut } = made.value;
    const finish = (...of: Parameters<Making["finish"]>) => made.value.finish(...of);
    const bust = pointOf(invariant(cut.front, "front"), "bustPoint");
    const away = (difference: number, dart: "sideDart" | "waistDart"): number => {
      const { x, y } = pointOf(invariant(finish({ ...open }, bust, difference).front, "front"), `${dart}Apex`);
      return Math.hypot(x - bust.x, y - bust.y);
    };
    // As drawn: 35 across and 12 down; 25 down.
    expect(Math.abs(away(75, "sideDart") - Math.hypot(35, 12))).toBeLessThan(0.5);
    expect(away(75, "waistDart")).toBeCloseTo(25, 6);
    expect(Math.abs(away(95, "sideDart") - away(75, "sideDart") - 4)).toBeLessThan(0.3);
    expect(away(95, "waistDart")).toBeCloseTo(25, 6);
  });

  it("have a waist at a size of its own, and are walked and joined then", () => {
    const made = ownPieces(straightNest(sizes, "C"), mine).make("C", levelSizes(0, 1.5, 0));
    if (!made.ok) throw new Error(made.failure.code);
    const [front, back] = [invariant(made.value.cut.front, "front"), invariant(made.value.cut.back, "back")];
    // 15 mm more a piece than the first size has.
    expect(seamLength(front, "waist")).toBeCloseTo(185, 3);
    expect(seamLength(back, "waist")).toBeCloseTo(180, 3);
    expect(pointOf(front, "sideBust").x).toBeCloseTo(230, 9);
    const drift = (piece: Piece): number => seamLength(piece, "side");
    const drawn = ownPieces(straightNest(sizes, "C"), mine).make("C", levelSizes(0, 0, 0));
    if (!drawn.ok) throw new Error(drawn.failure.code);
    const was = drift(invariant(drawn.value.cut.back, "back")) - drift(invariant(drawn.value.cut.front, "front"));
    expect(drift(back) - drift(front)).toBeCloseTo(was, 3);
  });
});
