/** Pieces on the table: apart from each other, closed, and their words apart too. */
import { describe, expect, it } from "vitest";
import { boxOf, keepApart, nearestApart, pieceDiagram, pieceMarks, placePieces, planLabels, type Label } from "../../src/drawing/index";
import { planOf, testWork } from "../support/works";

const plan = planOf(testWork);
const places = placePieces([...plan.nest.sizes, plan.pieces]);

describe("placePieces", () => {
  it("lays every piece down, and no size of one meets any size of another", () => {
    expect(places.map(({ piece }) => piece).toSorted()).toEqual(["back", "backBasque", "front", "frontBasque"]);
    const overlaps = places.flatMap((a, i) =>
      places.slice(i + 1).filter(
        (b) =>
          a.box.x < b.box.x + b.box.width &&
          b.box.x < a.box.x + a.box.width &&
          a.box.y < b.box.y + b.box.height &&
          b.box.y < a.box.y + a.box.height,
      ),
    );
    expect(overlaps).toEqual([]);
    const all = boxOf(places, 10);
    for (const { box } of places) {
      expect(box.x).toBeGreaterThanOrEqual(all.x + 10);
      expect(box.y + box.height).toBeLessThanOrEqual(all.y + all.height - 10);
    }
  });
});

describe("pieceMarks", () => {
  it.each(plan.pieces.map((piece) => [piece.name, piece] as const))("draws the %s closed, with a cap across each dart", (_name, piece) => {
    const marks = pieceMarks(piece);
    expect(marks.stitch.startsWith("M")).toBe(true);
    expect(marks.stitch.endsWith("Z")).toBe(true);
    expect(marks.stitch).not.toMatch(/NaN|undefined/);
    expect(marks.darts).toHaveLength(piece.darts.length);
    // Mouth end, tip, mouth end.
    for (const dart of marks.darts) expect(dart.cap.match(/[ML]/g)).toHaveLength(3);
  });
});

describe("keepApart", () => {
  const label = (id: string, x: number, kind: Label["kind"]): Label => ({ id, x, y: 0, lines: ["12"], anchor: "middle", kind, leader: null });

  it("leaves out a size that would lie on another, and moves anything else down", () => {
    const kept = keepApart([label("a", 0, "size"), label("b", 2, "size"), label("c", 1, "cut"), label("d", 100, "size")], 1);
    expect(kept.map(({ id }) => id)).toEqual(["a", "c", "d"]);
    expect(kept.find(({ id }) => id === "c")?.y).toBeGreaterThan(0);
  });
});

it("nearestApart is the distance to the nearest other place", () => {
  expect(nearestApart([{ x: 0, y: 0 }, { x: 3, y: 4 }, { x: 3, y: 10 }])).toEqual([5, 5, 6]);
});

it("the labels and the diagram tell the waist's amount", () => {
  const words = planLabels(plan, places, "cm").map(({ lines }) => lines.join(" "));
  expect(words.some((text) => /waist: 30 %.*14.*16.*3 mm outside 14/.test(text))).toBe(true);
  const diagram = pieceDiagram(plan, "front", "cm");
  expect(diagram?.labels.length).toBeGreaterThan(0);
  expect(diagram?.neighbours).toHaveLength(2);
});
