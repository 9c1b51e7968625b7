/** The figure that shows where the tape is laid: what it draws is where the tape measures. */
import { describe, expect, it } from "vitest";
import { STYLE_NAMES, type StyleName } from "../../src/core/decisions/pattern";
import { pointOf } from "../../src/core/pattern/piece";
import { readTissue } from "../../src/core/plan/tissueReading";
import { invariant } from "../../src/core/result";
import { letterAt, tissueFigure, type TissueFigure } from "../../src/drawing/tissueFigure";
import { tissueLengthWords } from "../../src/words/tissue";
import { testWork } from "../support/works";

const ROOM = { width: 176, height: 272 };

const readingOf = (style: StyleName) =>
  invariant(readTissue({ ...testWork, pattern: { ...testWork.pattern, style, length: "hip" } }, "14"), "reading");

function figuresOf(style: StyleName) {
  const { pieces, next, places } = readingOf(style);
  return pieces.flatMap((piece) => {
    const own = places.filter((place) => place.piece === piece.name);
    const larger = next.find(({ name }) => name === piece.name) ?? null;
    if (own.length === 0) return [];
    const lengths = own.map(({ length }) => length);
    return [{ piece, larger, own, figure: tissueFigure(piece, larger, lengths, () => true, ROOM) }];
  });
}

const numbers = (path: string): number[] => path.match(/-?\d+(?:\.\d+)?/g)?.map(Number) ?? [];

const inside = ({ box, mmPerPixel }: TissueFigure, { x, y }: { x: number; y: number }, pixels: number): boolean =>
  x - pixels * mmPerPixel >= box.x &&
  y - pixels * mmPerPixel >= box.y &&
  x + pixels * mmPerPixel <= box.x + box.width &&
  y + pixels * mmPerPixel <= box.y + box.height;

describe.each(STYLE_NAMES)("the figures of %s", (style) => {
  it("have every place of every piece, lettered in order, its letter on the figure", () => {
    for (const { own, figure } of figuresOf(style)) {
      expect(figure.tapes.map(({ length }) => length)).toEqual(own.map(({ length }) => length));
      expect(figure.tapes.map(({ letter }) => letter)).toEqual(own.map((_, index) => letterAt(index)));
      for (const { length, letterAt: at } of figure.tapes)
        expect([length, inside(figure, at, 7.5)]).toEqual([length, true]);
    }
  });

  it("keep letters so far apart that none hides another", () => {
    for (const { piece, figure } of figuresOf(style)) {
      for (const [i, a] of figure.tapes.entries()) {
        for (const b of figure.tapes.slice(i + 1)) {
          const apart = Math.hypot(a.letterAt.x - b.letterAt.x, a.letterAt.y - b.letterAt.y) / figure.mmPerPixel;
          expect([piece.name, a.length, b.length, apart > 8]).toEqual([piece.name, a.length, b.length, true]);
        }
      }
    }
  });

  it("lay the tape from end to end of what is measured", () => {
    for (const { own, figure } of figuresOf(style)) {
      for (const [i, { tape, ends }] of figure.tapes.entries()) {
        const drawn = numbers(tape);
        expect(drawn.slice(0, 2)).toEqual([ends[0].x, ends[0].y].map((value) => expect.closeTo(value, 1)));
        expect(drawn.slice(-2)).toEqual([ends[1].x, ends[1].y].map((value) => expect.closeTo(value, 1)));
        const { way, standIn } = invariant(own[i], "place");
        // The tape runs at least as far as its ends lie apart, and no further where it is straight.
        const straight = Math.hypot(ends[1].x - ends[0].x, ends[1].y - ends[0].y);
        const isStraight = way.length === 1 && way[0]?.curve === null;
        expect(Math.abs(standIn)).toBeGreaterThan(straight * 0.75);
        expect(isStraight ? Math.abs(standIn) : straight).toBeCloseTo(straight, 6);
      }
    }
  });

  it("tell the places of a piece apart in words", () => {
    for (const { own } of figuresOf(style)) {
      const names = own.map((place) => tissueLengthWords(place, style).name);
      expect(new Set(names).size).toBe(names.length);
    }
  });
});

describe("a figure", () => {
  it("lifts the tape over the mouth of a folded dart", () => {
    const front = invariant(
      figuresOf("sideDart").find(({ piece }) => piece.name === "front"),
      "front",
    );
    const side = invariant(
      front.figure.tapes.find(({ length }) => length === "sideLength"),
      "side seam",
    );
    const runs = side.tape
      .split("M")
      .filter((run) => run !== "")
      .map(numbers);
    expect(runs).toHaveLength(2);
    const [upper, lower] = [pointOf(front.piece, "sideDartInner"), pointOf(front.piece, "sideDartOuter")];
    expect(runs[0]?.slice(-2)).toEqual([expect.closeTo(upper.x, 1), expect.closeTo(upper.y, 1)]);
    expect(runs[1]?.slice(0, 2)).toEqual([expect.closeTo(lower.x, 1), expect.closeTo(lower.y, 1)]);
  });

  it("shows the next size's dart for its mouth, and this size's for its own", () => {
    const front = invariant(
      figuresOf("sideDart").find(({ piece }) => piece.name === "front"),
      "front",
    );
    const of = (length: string) =>
      invariant(
        front.figure.tapes.find((tape) => tape.length === length),
        length,
      );
    const larger = invariant(front.larger, "next size");
    expect(of("waistDartMouthNext").onNext).toBe(true);
    expect(of("waistDartMouthNext").ends[0]).toEqual(pointOf(larger, "waistDartInner"));
    expect(of("waistDartMouth").onNext).toBe(false);
    expect(of("waistDartMouth").ends[0]).toEqual(pointOf(front.piece, "waistDartInner"));
  });
});
