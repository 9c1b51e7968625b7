/** The foreign nests hold what they say of themselves, measured by bezier-js. */
import { describe, expect, it } from "vitest";
import { seamByBezierJs } from "../independent";
import { piecesOfForeign } from "./asTraced";
import { foreignNest } from "./foreignNest";

describe("foreign nests", () => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed))("seed %i sews together", (seed) => {
    const nest = foreignNest({ seed });
    const all = Object.fromEntries(nest.pieces.map((piece) => [piece.name, piecesOfForeign(piece)]));
    nest.chart.forEach((_, size) => {
      const of = (names: readonly string[], seam: "side" | "waist" | "shoulder" | "princess"): number =>
        names.reduce((sum, name) => {
          const piece = all[name]?.[size];
          return piece === undefined ? sum : sum + seamByBezierJs(piece, seam);
        }, 0);
      const fronts = ["front", "centreFront", "sideFront"];
      const finished = nest.finished[size];
      expect(of(fronts, "side")).toBeCloseTo(of(["back"], "side"), 4);
      expect(of(["back"], "shoulder") - of(fronts, "shoulder")).toBeCloseTo(nest.shoulderEase, 4);
      expect(of(["centreFront"], "princess")).toBeCloseTo(of(["sideFront"], "princess"), 4);
      expect(2 * of([...fronts, "back"], "waist")).toBeCloseTo(finished?.waist ?? 0, 3);
      expect(of(["frontBasque"], "waist")).toBeCloseTo(nest.options.basque ? of(fronts, "waist") : 0, 4);
      expect(of(["backBasque"], "side")).toBeCloseTo(of(["frontBasque"], "side"), 4);
    });
  });
});
