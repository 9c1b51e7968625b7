import { describe, expect, it } from "vitest";
import { dashPixels, sheetBox, widthPixels } from "../../src/drawing/ownSheet";
import { readableOnPaper } from "../../src/drawing/readableOnPaper";

/** Contrast by WCAG 2.2, written down apart from the code. */
function contrast(a: string, b: string): number {
  const light = (colour: string): number => {
    const [r = 0, g = 0, bl = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [more = 0, less = 0] = [light(a), light(b)].toSorted((x, y) => y - x);
  return (more + 0.05) / (less + 0.05);
}

describe("a colour of a file", () => {
  it.each(["#ffffff", "#ffff00", "#00ffff", "#c0c0c0", "#ff8080"])("%s is made dark enough to be seen", (colour) => {
    expect(contrast(readableOnPaper(colour), "#fbf7ef")).toBeGreaterThanOrEqual(3);
  });

  it.each(["#000000", "#b23a48", "#2f5d9b", "#4e6b35"])("%s stays as it is", (colour) => {
    expect(readableOnPaper(colour)).toBe(colour);
  });

  it("that is none is ink", () => {
    expect(readableOnPaper("bylayer")).toBe("#1f2a37");
  });
});

describe("a line of a file", () => {
  it("keeps the proportion of its dashes, at a size that is seen", () => {
    expect(dashPixels("")).toBeNull();
    expect(dashPixels("0.06 0.03")).toBe("6.7 3.3");
    expect(dashPixels("300 150")).toBe("6.7 3.3");
    expect(dashPixels("0 0")).toBeNull();
  });

  it("is drawn by the name of its type where it has one", () => {
    expect(dashPixels("DASHED2")).toBe("7 4");
    expect(dashPixels("CENTER")).not.toBe(dashPixels("DASHED"));
    expect(dashPixels("Continuous")).toBeNull();
  });

  it("is wider where it is wider in the file", () => {
    expect(widthPixels(0.5, [0.5, 0.5])).toBe(widthPixels(0, []));
    expect(widthPixels(0.7, [0.25, 0.7])).toBeGreaterThan(widthPixels(0.25, [0.25, 0.7]));
  });
});

it("a sheet without lines has a box all the same", () => {
  const drawing = { format: "dxf", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] } as const;
  expect(sheetBox(drawing)).toEqual({ x: 0, y: 0, width: 1, height: 1 });
});
