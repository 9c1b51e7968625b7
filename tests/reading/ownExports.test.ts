/** What the planner itself writes comes back: every outline, to the step that it is written in. */
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../src/core/decisions/fileDrawing";
import { invariant } from "../../src/core/result";
import { writeDxf } from "../../src/paper/dxf";
import { writeSvg } from "../../src/paper/svg";
import { sheetPoint } from "../../src/core/geometry/point";
import { readPatternFile } from "../../src/reading/readPatternFile";
import { inkCurve, inkGroup, inkLine, inkPage, inkText } from "../support/inkPages";
import { HAND_FRONT, HAND_STRAP } from "../support/truePieces";
import { cornersOf, drawingOf, type Pair } from "./readings";

const read = (text: string): FileDrawing =>
  drawingOf(readPatternFile({ name: "x", bytes: new TextEncoder().encode(text) }));
const near = (found: readonly Pair[], expected: readonly Pair[]): number =>
  found.length === expected.length
    ? Math.max(...found.map(([x, y], i) => Math.hypot(x - (expected[i]?.[0] ?? NaN), y - (expected[i]?.[1] ?? NaN))))
    : Infinity;

describe("DXF of two pieces", () => {
  const drawing = read(writeDxf([HAND_FRONT, HAND_STRAP], { style: "Any", sizeName: "Mary", day: "2026-03-04" }));
  const linesOf = (group: string, layer: string): readonly string[] =>
    drawing.lines.find(({ look }) => look.group === group && look.layer === layer)?.paths ?? [];

  it("is in mm", () => {
    expect(drawing.unit).toEqual({ mm: 1, saidBy: "header" });
  });

  it("has its cutting lines, y down as they lie on paper", () => {
    const [path] = linesOf("front", "1");
    const expected = HAND_FRONT.cutting.map(({ at }): Pair => [at.x, at.y]);
    expect(near(cornersOf(path), expected)).toBeLessThan(0.001);
    expect(path?.endsWith("Z")).toBe(true);
  });

  it("has notches, drill holes, grain and fold", () => {
    const notches = drawing.points.filter(({ layer, group }) => layer === "4" && group === "front");
    expect(
      near(
        notches.map(({ x, y }) => [x, y]),
        HAND_FRONT.notches.map(({ cut }) => [cut.x, cut.y]),
      ),
    ).toBeLessThan(0.001);
    expect(
      near(
        cornersOf(linesOf("front", "7")[0]),
        HAND_FRONT.grain.map(({ x, y }) => [x, y]),
      ),
    ).toBeLessThan(0.001);
    expect(linesOf("front", "6")).toHaveLength(1);
    expect(drawing.points.filter(({ layer }) => layer === "13")).toHaveLength(
      HAND_FRONT.drills.length + HAND_STRAP.drills.length,
    );
  });

  it("has its writing by the piece", () => {
    const texts = drawing.writings.filter(({ group }) => group === "front").map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(["Piece Name: Front", "Size: Mary", "Bust point"]));
  });
});

describe("SVG of a page", () => {
  const curve = [sheetPoint(10, 20), sheetPoint(30.1234, 20), sheetPoint(50, 40.5), sheetPoint(50, 80)] as const;
  const drawing = read(
    writeSvg(
      inkPage([
        inkGroup(
          [
            inkCurve(curve),
            inkLine(
              [
                [0, 0],
                [10.1236, 5],
              ],
              { role: "fold" },
            ),
            inkText("Front", 60, 70),
          ],
          {
            id: "front",
            label: "Front",
            dx: 5,
            dy: 6,
          },
        ),
      ]),
      { title: "Any" },
    ),
  );

  it("is in mm, by the size of its sheet", () => {
    expect(drawing.unit).toEqual({ mm: 1, saidBy: "size" });
  });

  it("has its curves as they are, and its groups", () => {
    const byLayer = new Map(drawing.lines.map(({ look, paths }) => [look.layer, { look, paths }]));
    expect(invariant(byLayer.get("front-cutting"), "lines")).toMatchObject({
      look: { group: "Front / front-cutting" },
      paths: ["M15 26C35.123 26 55 46.5 55 86"],
    });
    expect(byLayer.get("front-fold")?.paths).toEqual(["M5 6L15.124 11"]);
    expect(drawing.writings.map(({ x, y, text }) => [x, y, text])).toEqual([[65, 76, "Front"]]);
  });
});
