/** Words kept apart, whatever they are and wherever they stand. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keepApart, textPixels, type Label } from "../../src/drawing/index";

const KINDS: readonly Label["kind"][] = ["size", "cut", "dart", "title", "bustPoint"];

const anyPlain = fc.record({
  x: fc.integer({ min: 0, max: 200 }),
  y: fc.integer({ min: 0, max: 200 }),
  lines: fc.array(fc.string({ unit: fc.constantFrom("0", "1", "7", "a", "b", " "), minLength: 1, maxLength: 14 }), {
    minLength: 1,
    maxLength: 3,
  }),
  anchor: fc.constantFrom<Label["anchor"]>("start", "middle", "end"),
  kind: fc.constantFrom(...KINDS),
});

const anyLabels: fc.Arbitrary<readonly Label[]> = fc
  .array(anyPlain, { maxLength: 12 })
  .map((labels) => labels.map((label, at) => ({ ...label, id: String(at), leader: null })));

/** A letter of the page's typeface is at the least this share of the text size wide (measured). */
const NARROWEST = 0.45;

function words(label: Label, mmPerPixel: number) {
  const size = textPixels(label) * mmPerPixel;
  const width = Math.max(...label.lines.map((line) => line.length)) * size * NARROWEST;
  const left = { start: label.x, middle: label.x - width / 2, end: label.x - width }[label.anchor];
  return {
    left,
    right: left + width,
    top: label.y - size * 0.7,
    bottom: label.y + (label.lines.length - 1) * 1.25 * size,
  };
}

describe("keepApart", () => {
  it("leaves no words on others, for any labels at any zoom", () => {
    fc.assert(
      fc.property(anyLabels, fc.constantFrom(0.2, 0.7, 1.2, 2), (labels, mmPerPixel) => {
        const areas = keepApart(labels, mmPerPixel).map((label) => words(label, mmPerPixel));
        const clash = areas.some((a, at) =>
          areas.slice(at + 1).some((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
        );
        expect(clash).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  it("keeps the first where it is, moves others down only, and changes no words from near", () => {
    fc.assert(
      fc.property(anyLabels, fc.constantFrom(0.2, 0.7, 1.2), (labels, mmPerPixel) => {
        const kept = keepApart(labels, mmPerPixel);
        expect(kept[0]).toEqual(labels[0]);
        for (const { y, ...label } of kept) {
          const { y: asked, ...given } = labels[Number(label.id)] ?? { y: NaN };
          expect(label).toEqual(given);
          expect(y).toBeGreaterThanOrEqual(asked);
          // A size is the name of the very line it stands at.
          expect(label.kind !== "size" || y === asked).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("leaves labels alone that stand apart already", () => {
    const labels: readonly Label[] = KINDS.map((kind, at) => ({
      id: kind,
      x: 0,
      y: at * 60,
      lines: ["12 mm", "wide"],
      anchor: "start",
      kind,
      leader: null,
    }));
    expect(keepApart(labels, 1)).toEqual(labels);
  });

  it.each(["start", "middle", "end"] as const)("knows on which side words anchored at their %s stand", (anchor) => {
    const label = (id: string, x: number, side: Label["anchor"]): Label => ({
      id,
      x,
      y: 0,
      lines: ["12345"],
      anchor: side,
      kind: "size",
      leader: null,
    });
    const kept = (x: number) => keepApart([label("a", 0, anchor), label("b", x, "middle")], 1).length;
    // Five digits of 12 pixels are some 30 mm wide: words in the middle of the first label's own area clash, and 45 mm further off they do not.
    const middle = { start: 15, middle: 0, end: -15 }[anchor];
    expect([kept(middle), kept(middle - 45), kept(middle + 45)]).toEqual([1, 2, 2]);
  });

  it("leaves out what finds no free place in reach rather than laying it on others", () => {
    const label = (id: string, moves?: number): Label => ({
      id,
      x: 0,
      y: 0,
      lines: ["one", "two", "three"],
      anchor: "middle",
      kind: "cut",
      leader: null,
      ...(moves === undefined ? {} : { moves }),
    });
    const kept = (labels: readonly Label[]) => keepApart(labels, 1).map(({ id }) => id);
    // Six lines down is the furthest: two labels of three lines and the room between them reach past that.
    expect(kept(["a", "b", "c", "d"].map((id) => label(id)))).toEqual(["a", "b"]);
    expect(kept([label("a"), label("b", 2)])).toEqual(["a"]);
    expect(kept([label("a"), label("b"), label("c", 12)])).toEqual(["a", "b", "c"]);
  });
});
