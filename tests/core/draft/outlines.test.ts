/**
 * The demo block against outlines worked out beside the program, from its written rules (tests/reference-data/README.md):
 * every corner, the middle of every curve and the length of every seam, in four sizes and on a straight figure.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftBasque } from "../../../src/core/draft/basque";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import type { Piece } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { seamByBezierJs } from "../../support/independent";

/** mm. A third decimal is given. The basque's waist is brought to its length in two rounds, which leave a hundredth. */
const agrees = (name = ""): number => (name.endsWith("Basque") ? 0.02 : 0.002);

const rowsOf = (file: string): readonly (readonly string[])[] =>
  readFileSync(new URL(`../../reference-data/${file}`, import.meta.url), "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));

const corners = rowsOf("demo-block-corners.csv");
const seams = rowsOf("demo-block-seams.csv");
const figures = [...new Set(corners.map(([bust, waist, hip]) => [bust, waist, hip].join("/")))];

/** All pieces of a figure, at the block's own difference and with 80, 40 and 50 mm of ease. */
function draftedFor(figure: string): ReadonlyMap<string, Piece> {
  const [bust = NaN, waist = NaN, hip = NaN] = figure.split("/").map(Number);
  const row = { label: "", bust, waist, hip };
  const m = draftMeasuresFor(row, { sizes: [row], draftedDifference: 50, cups: [] }, { bust: 80, waist: 40, hip: 50 });
  const [front, back] = [draftFrontBlock(m), draftBackBlock(m)];
  // The basque is sewn to the finished waist by the rules: a quarter of 40 mm more than the waist, 5 mm more in front.
  const quarter = (waist + 40) / 4;
  return new Map([
    ["front", front],
    ["back", back],
    ["frontBasque", draftBasque(m, quarter + 5, { side: "front", dartLess: 9 })],
    ["backBasque", draftBasque(m, quarter - 5, { side: "back", dartLess: 9 })],
  ]);
}

/** Half-way along a cubic: the mean of its ends and controls, these thrice. */
function middleAfter(piece: Piece, corner: string): { x: number; y: number } {
  const edge = piece.edges.find(({ from, curve }) => from === corner && curve !== null);
  const { from, to, curve } = invariant(edge, corner);
  const { c1, c2 } = invariant(curve, corner);
  const [a, d] = [invariant(piece.points[from], from).at, invariant(piece.points[to], to).at];
  return { x: (a.x + 3 * c1.x + 3 * c2.x + d.x) / 8, y: (a.y + 3 * c1.y + 3 * c2.y + d.y) / 8 };
}

const isOf = (figure: string) => (row: readonly string[]) => row.slice(0, 3).join("/") === figure;

it("is worked out for four sizes and a straight figure", () => {
  expect(figures).toEqual(["720/540/780", "880/700/940", "1180/1000/1240", "1520/1340/1580", "880/850/900"]);
  expect([corners.length, seams.length]).toEqual([306, 92]);
});

describe.each(figures)("the block of bust/waist/hip %s", (figure) => {
  const pieces = draftedFor(figure);
  const pieceNamed = (name = ""): Piece => invariant(pieces.get(name), name);

  it("has its corners and the middles of its curves where they were worked out", () => {
    const off = corners.filter(isOf(figure)).flatMap(([, , , name, kind, point = "", x, y]) => {
      const piece = pieceNamed(name);
      const at =
        kind === "corner"
          ? invariant(Object.entries(piece.points).find(([key]) => key === point)?.[1], point).at
          : middleAfter(piece, point);
      const by = Math.hypot(at.x - Number(x), at.y - Number(y));
      return by < agrees(name) ? [] : [`${name} ${kind} ${point}: ${at.x.toFixed(3)}, ${at.y.toFixed(3)}`];
    });
    expect(off).toEqual([]);
  });

  it("has no corner that was not worked out", () => {
    const worked = new Set(
      corners
        .filter(isOf(figure))
        .flatMap(([, , , name, kind, point]) => (kind === "corner" ? `${name} ${point}` : [])),
    );
    // Both halves of the bust line end at the bust point.
    const inside = new Set(["bustLineInner", "bustLineOuter"]);
    const names = [...new Set(corners.filter(isOf(figure)).map(([, , , name]) => name ?? ""))];
    const other = names.flatMap((name) =>
      Object.keys(pieceNamed(name).points).flatMap((point) =>
        worked.has(`${name} ${point}`) || inside.has(point) ? [] : `${name} ${point}`,
      ),
    );
    expect(other).toEqual([]);
  });

  it("has seams of the lengths that were worked out, measured by an independent library", () => {
    const off = seams.filter(isOf(figure)).flatMap(([, , , name, seam = "", length]) => {
      const piece = pieceNamed(name);
      const of = invariant(
        piece.edges.find((edge) => edge.seam === seam),
        seam,
      ).seam;
      const drawn = seamByBezierJs(piece, of);
      return Math.abs(drawn - Number(length)) < agrees(name) ? [] : [`${name} ${seam}: ${drawn.toFixed(3)}`];
    });
    expect(off).toEqual([]);
  });
});
