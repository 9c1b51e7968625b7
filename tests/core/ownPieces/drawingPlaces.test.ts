import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { placesOf, sideOfSquare, snapped } from "../../../src/core/ownPieces/drawingPlaces";

const look = { layer: "", group: "", colour: "#000000", dash: "", width: 0 };
const drawing: FileDrawing = {
  format: "svg",
  unit: null,
  lines: [{ look, paths: ["M10 20L30 20L30 50", "M-5 0C0 0 5 5 5 10"] }],
  points: [{ x: 70, y: 8, layer: "", group: "" }],
  writings: [],
  hiddenLayers: [],
};

describe("the places of a drawing", () => {
  it("are held by one box, and its ends are those of all lines and points", () => {
    const { box, ends } = placesOf({ drawing });
    expect([box?.min.x, box?.min.y, box?.max.x, box?.max.y]).toEqual([-5, 0, 70, 50]);
    expect(ends.map(({ x, y }) => [x, y]).toSorted()).toEqual(
      [
        [70, 8],
        [10, 20],
        [30, 20],
        [30, 50],
        [-5, 0],
        [5, 10],
      ].toSorted(),
    );
  });

  it("catch a tap that comes near enough, the nearest of two first", () => {
    const { ends } = placesOf({ drawing });
    expect(snapped(ends, { x: 31, y: 47 }, 5)).toEqual({ x: 30, y: 50 });
    expect(snapped(ends, { x: 19, y: 21 }, 15)).toEqual({ x: 10, y: 20 });
    expect(snapped(ends, { x: 50, y: 40 }, 5)).toEqual({ x: 50, y: 40 });
  });

  it("have no box where there is nothing", () => {
    expect(placesOf({ drawing: { ...drawing, lines: [], points: [] } })).toEqual({ box: null, ends: [] });
  });
});

it("a square's side is told in the file's units, whatever a unit is", () => {
  const at = [sheetPoint(20, 40), sheetPoint(120, 40), sheetPoint(120, 140), sheetPoint(20, 140)] as const;
  const edges = at.map((a, index) => lineEdge(a, at[(index + 1) % 4] ?? a));
  const outline = { id: "square", size: null, edges, widestGap: 0 };
  const scale = { mm: 2, by: "file", said: null, squares: [], known: null, disagree: false } as const;
  expect(sideOfSquare(outline, scale)).toEqual({ from: { x: 10, y: 20 }, to: { x: 60, y: 20 } });
});
