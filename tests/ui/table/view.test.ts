/** The part of the table that is seen, as numbers. */
import { describe, expect, it } from "vitest";
import { fitBox, panBy, viewBoxOf, zoomAt, type View } from "../../../src/ui/table/view";

const view: View = { x: 10, y: -20, scale: 2 };
/** The millimetre that lies under a pixel. */
const under = ({ x, y, scale }: View, px: number, py: number) => ({ x: x + px / scale, y: y + py / scale });

describe("the view of the table", () => {
  it.each([1.3, 0.5, 4])("zooms by %d about a place that stays where it is", (factor) => {
    const zoomed = zoomAt(view, factor, 120, 80);
    expect(zoomed.scale).toBe(2 * factor);
    expect(under(zoomed, 120, 80).x).toBeCloseTo(under(view, 120, 80).x, 9);
    expect(under(zoomed, 120, 80).y).toBeCloseTo(under(view, 120, 80).y, 9);
  });

  it("does not zoom without end, and keeps the place at its ends too", () => {
    const nearest = zoomAt(view, 1e9, 120, 80);
    expect(nearest.scale).toBeLessThan(50);
    expect(under(nearest, 120, 80).x).toBeCloseTo(under(view, 120, 80).x, 9);
    expect(zoomAt(view, 1e-9, 0, 0).scale).toBeGreaterThan(0.05);
  });

  it("moves with the hand: what was under it stays under it", () => {
    const moved = panBy(view, 30, -12);
    expect(under(moved, 130, 68).x).toBeCloseTo(under(view, 100, 80).x, 9);
    expect(under(moved, 130, 68).y).toBeCloseTo(under(view, 100, 80).y, 9);
  });

  it.each([
    ["a wide table", { width: 700, height: 800 }],
    ["a phone", { width: 390, height: 310 }],
  ])("fits a whole box on %s, with room at the top for the tools and at the right for the words", (_name, size) => {
    const box = { x: -30, y: 40, width: 500, height: 620 };
    const fitted = fitBox(box, size);
    const [left, top] = [(box.x - fitted.x) * fitted.scale, (box.y - fitted.y) * fitted.scale];
    const [right, bottom] = [left + box.width * fitted.scale, top + box.height * fitted.scale];
    expect(left).toBeGreaterThanOrEqual(-1e-9);
    expect(top).toBeGreaterThanOrEqual(40);
    expect(right).toBeLessThanOrEqual(size.width - 40);
    expect(bottom).toBeLessThanOrEqual(size.height - 10);
  });

  it("shows as many millimetres as the pixels hold", () => {
    expect(viewBoxOf(view, { width: 400, height: 300 })).toBe("10 -20 200 150");
  });
});
