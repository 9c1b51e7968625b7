/** Circles to draw with a string, and lays to lay by. */
import { describe, expect, it } from "vitest";
import type { ClothLay, LaidPart } from "../../src/core/cloth/cutting";
import type { SectorPart } from "../../src/core/parts/part";
import { radians } from "../../src/core/units";
import { circleSketch } from "../../src/drawing/circleSketch";
import type { Figure } from "../../src/drawing/figure";
import { layDrawing } from "../../src/drawing/layDrawing";
import { laidNameWords, oneLayerWords } from "../../src/words/layDrawing";

const sector = (inner: number, outer: number, angle: number, foldSides: 0 | 1): SectorPart => ({
  kind: "sector",
  key: "skirt",
  group: "skirt",
  cloth: "main",
  cut: { onFold: foldSides === 1, count: 1 },
  half: null,
  grain: "along",
  inner,
  outer,
  angle: radians(angle),
  allowances: { inner: 15, outer: 20, sides: 15 },
  foldSides,
});

describe("a circle drawn with string and pin", () => {
  // A waist of 720 in a full circle 600 long, from the fold: r = 720 / 2π.
  const full = circleSketch(sector(720 / (2 * Math.PI), 720 / (2 * Math.PI) + 600, Math.PI, 1), "cm");

  it("has its strings by the waist and the length, and cuts beside them by the allowances", () => {
    expect(full.radii.waist).toBeCloseTo(114.59, 2);
    expect(full.radii.hem).toBeCloseTo(714.59, 2);
    expect(full.radii.waistCut).toBeCloseTo(99.59, 2);
    expect(full.radii.hemCut).toBeCloseTo(734.59, 2);
  });

  it("has the pin on the fold, as far from the cut end as the hem is cut", () => {
    expect(full.pin.across).toBe(0);
    expect(full.pin.along).toBeCloseTo(734.59, 0);
    expect(full.steps.join(" ")).toContain("Draw the waist at 11.5 cm and the hem at 71.5 cm");
    expect(full.steps.join(" ")).toContain("on the fold, 73.5 cm below the top");
  });

  it("keeps an allowance outside a side that is sewn: a quarter begins so far below the cut end", () => {
    const quarter = circleSketch(sector(229.18, 829.18, Math.PI / 2, 1), "cm");
    expect(quarter.pin.along).toBeCloseTo(15, 1);
    const single = circleSketch(sector(229.18, 829.18, Math.PI / 2, 0), "cm");
    expect(single.pin.across).toBeCloseTo(15, 1);
    expect(single.steps[0]).toContain("as its lay shows");
  });

  it("tells lengths in inches to who sews in them", () => {
    expect(circleSketch(sector(254, 762, Math.PI / 2, 1), "in").steps.join(" ")).toContain("waist at 10 in");
  });
});

const part = (key: string, copy: number, x: number, y: number, width: number, length: number): LaidPart => ({
  key,
  copy,
  x,
  y,
  width,
  length,
  turn: 0,
  isTurnedOver: false,
  isPaperDown: false,
  atFold: x === 0,
  layers: 2,
  ring: [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + length },
    { x, y: y + length },
  ],
});

const lay = (parts: readonly LaidPart[], length: number, onFold = true): ClothLay => ({
  cloth: "main",
  width: 1400,
  onFold,
  oneWay: false,
  parts,
  length,
  toBuy: length,
  leastByArea: 0,
  leastByLongest: 0,
  used: 1,
});

const texts = ({ marks }: Figure): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === "words" ? [mark.text] : []));
const outlines = ({ marks }: Figure): readonly number[][] =>
  marks.flatMap((mark) =>
    mark.kind === "line" && mark.role === "cutting"
      ? [[...mark.path.matchAll(/-?\d+(?:\.\d+)?/gu)].map(([n]) => Number(n))]
      : [],
  );

describe("a lay", () => {
  const parts = [
    part("skirtFront", 1, 0, 0, 300, 700),
    part("skirtBack", 1, 330, 40, 320, 700),
    part("strap", 1, 660, 0, 30, 400),
  ];

  it("lists each part by its distance from the fold and from the cut end", () => {
    const { rows } = layDrawing(lay(parts, 760), (key) => key.toUpperCase(), "cm");
    expect(rows.map(({ number, name, across, along }) => [number, name, across, along])).toEqual([
      [1, "SKIRTFRONT", 0, 0],
      [2, "STRAP", 660, 0],
      [3, "SKIRTBACK", 330, 40],
    ]);
  });

  it("writes them on the drawing, in centimetres or inches; a narrow part has its number alone", () => {
    const { figure } = layDrawing(lay(parts, 760), (key) => key, "cm");
    expect(texts(figure)).toContain("33 · 4");
    expect(texts(figure)).toContain("3 skirtBack");
    expect(texts(figure)).toContain("fold");
    expect(texts(layDrawing(lay([part("a", 1, 254, 508, 400, 300)], 900), (key) => key, "in").figure)).toContain(
      "10 · 20",
    );
  });

  it("says of what is cut through one layer of folded cloth that it is, and which paper lies turned over", () => {
    const [a, b, c] = [
      part("skirtFront", 1, 0, 0, 300, 700),
      { ...part("skirtBack", 1, 330, 40, 320, 700), layers: 1 } as const,
      { ...part("top", 1, 330, 760, 320, 300), layers: 1, isPaperDown: true } as const,
    ];
    const told = (onFold: boolean) => {
      const { figure, rows } = layDrawing(lay([a, b, c], 1100, onFold), (key) => key, "cm");
      return [
        rows.map(({ how }) => how),
        texts(figure)
          .filter((text) => / · /u.test(text))
          .slice(0, 3),
      ];
    };
    expect(told(true)).toEqual([
      ["", "one layer", "one layer, turned over"],
      ["0 · 0", "33 · 4 · one layer", "33 · 76 · one layer, turned over"],
    ]);
    // Laid single there is but one.
    expect(told(false)).toEqual([
      ["", "", "turned over"],
      ["0 · 0", "33 · 4", "33 · 76 · turned over"],
    ]);
    expect(oneLayerWords(lay([a, b], 1100))).toContain("upper layer alone");
    expect([oneLayerWords(lay([a], 1100)), oneLayerWords(lay([a, b], 1100, false))]).toEqual([null, null]);
    expect(laidNameWords("Skirt back", 1, "")).toBe("Skirt back");
    expect(laidNameWords("Skirt back", 2, "one layer")).toBe("Skirt back (2), one layer");
  });

  it("draws parts to scale, at their places from the cloth's own corner", () => {
    const { figure, scale } = layDrawing(lay(parts, 760), (key) => key, "cm");
    const [first = [], , third = []] = outlines(figure);
    const width = Math.max(...first.filter((_, i) => i % 2 === 0)) - Math.min(...first.filter((_, i) => i % 2 === 0));
    expect(width).toBeCloseTo(300 * scale, 0);
    expect(
      Math.min(...third.filter((_, i) => i % 2 === 1)) - Math.min(...first.filter((_, i) => i % 2 === 1)),
    ).toBeCloseTo(40 * scale, 0);
  });

  it("fits an A4 page, however long; long cloth goes on in columns, and each part is named once", () => {
    for (const length of [600, 1500, 3200, 5200]) {
      const many = Array.from({ length: Math.floor(length / 520) }, (_, i) =>
        part(`part${i}`, 1, 0, i * 520, 600, 500),
      );
      for (const onFold of [true, false]) {
        const { figure, columns } = layDrawing(lay(many, length, onFold), (key) => key, "cm");
        expect(figure.box.width).toBeLessThanOrEqual(190);
        expect(figure.box.height).toBeLessThanOrEqual(260);
        expect(columns).toBeGreaterThan(length > 3000 && onFold ? 1 : 0);
        for (const { key } of many) expect(texts(figure).filter((text) => text.endsWith(` ${key}`))).toHaveLength(1);
      }
    }
  });
});
