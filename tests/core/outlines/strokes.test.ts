/** Single lines of a file: what is a line, a circle, a cross, a frame, a corner, and how dense lines are thinned. */
import { describe, expect, it } from "vitest";
import { lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { groupedBy } from "../../../src/core/outlines/groupedBy";
import { crossesOf, isSmallCircle } from "../../../src/core/outlines/lineMarks";
import { sharpCorners } from "../../../src/core/outlines/sharpCorners";
import { framesOf } from "../../../src/core/outlines/sheetFrame";
import { onSheet, pointsAlong, strokesOf } from "../../../src/core/outlines/strokes";
import { thinned } from "../../../src/core/outlines/thinned";
import { box, circle, drawn, lookOf, strokes } from "./handStrokes";

describe("a stroke", () => {
  it("is a line of the file in mm, with its length and its box", () => {
    const [one, two] = strokesOf(
      drawn([
        [{ layer: "a" }, "M0 0L3 4"],
        [{ layer: "b" }, "M9 9", box(10, 10, 20, 10)],
      ]),
      10,
    );
    expect(one).toEqual({
      key: "0:0",
      order: 0,
      look: lookOf({ layer: "a" }),
      edges: [lineEdge(sheetPoint(0, 0), sheetPoint(30, 40))],
      closed: false,
      a: { x: 0, y: 0 },
      b: { x: 30, y: 40 },
      length: 50,
      box: { min: { x: 0, y: 0 }, max: { x: 30, y: 40 } },
    });
    expect(two).toMatchObject({
      key: "1:1",
      order: 1,
      closed: true,
      length: 600,
      box: { min: { x: 100, y: 100 }, max: { x: 300, y: 200 } },
    });
    expect(two?.edges).toHaveLength(4);
    expect(onSheet(2)({ x: 3, y: -4 })).toEqual({ x: 6, y: -8 });
  });

  it("is none where nothing is drawn, or a kilometre off", () => {
    expect(strokes("M5 5L5 5")).toEqual([]);
    expect(strokes("M5 5L5 5L6 5")[0]?.edges).toHaveLength(1);
    for (const far of ["1000001 0", "0 1000001", "-1000001 0", "0 -1000001"])
      expect(strokes(`M0 0L${far}`)).toEqual([]);
    for (const near of ["999999 0", "0 999999", "-999999 0", "0 -999999"])
      expect(strokes(`M0 0L${near}`)).toHaveLength(1);
  });

  it("is closed too where it comes back to within 0.02 mm, unless it is a millimetre long in all", () => {
    const closed = (path: string): boolean | undefined => strokes(path)[0]?.closed;
    expect(closed("M0 0L10 0L10 10L0.015 0")).toBe(true);
    expect(closed("M0 0L10 0L10 10L0.025 0")).toBe(false);
    expect(closed("M0 0L0.4 0L0 0.01")).toBe(false);
    expect(closed("M0 0L0.6 0L0 0.01")).toBe(true);
    expect(closed("M0 0L0.01 0")).toBe(false);
    expect(closed("M0 0L10 0L10 10Z")).toBe(true);
  });

  it("is followed by points, its ends among them and none twice", () => {
    const [line] = strokes("M0 0L10 0L10 10");
    expect(pointsAlong(line?.edges ?? [])).toEqual([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
    ]);
  });
});

describe("a small circle", () => {
  const isCircle = (path: string): boolean => strokes(path).some((stroke) => isSmallCircle(stroke));
  /** A polygon of equal sides in a circle. */
  const polygon = (sides: number, radius: number): string =>
    `${Array.from({ length: sides }, (_, i) => {
      const turn = (2 * Math.PI * i) / sides;
      return `${i === 0 ? "M" : "L"}${radius * Math.cos(turn)} ${radius * Math.sin(turn)}`;
    }).join("")}Z`;

  it("is at most 12 mm across (our own choice)", () => {
    expect(isCircle(circle(0, 0, 5.99))).toBe(true);
    expect(isCircle(circle(0, 0, 6.01))).toBe(false);
  });

  it("is round to a fifth, lying or standing", () => {
    expect(isCircle(circle(0, 0, 5, 4.1))).toBe(true);
    expect(isCircle(circle(0, 0, 4.1, 5))).toBe(true);
    expect(isCircle(circle(0, 0, 5, 3.9))).toBe(false);
    expect(isCircle(circle(0, 0, 3.9, 5))).toBe(false);
  });

  it("is closed, and no polygon of few sides", () => {
    expect(isCircle(circle(0, 0, 5).slice(0, -1).replace("5 0", "5 0.5"))).toBe(false);
    expect(isCircle(polygon(5, 5))).toBe(false);
    expect(isCircle(polygon(12, 5))).toBe(true);
    expect(isCircle(box(0, 0, 8, 8))).toBe(false);
  });

  it("is as long as one is round: a star is none", () => {
    // Twelve rays of 5 and 2.2: 24 sides of some 3.2, 77 mm in place of 31.
    const star = `${Array.from({ length: 24 }, (_, i) => {
      const [radius, turn] = [i % 2 === 0 ? 5 : 2.2, (Math.PI * i) / 12];
      return `${i === 0 ? "M" : "L"}${radius * Math.cos(turn)} ${radius * Math.sin(turn)}`;
    }).join("")}Z`;
    expect(isCircle(star)).toBe(false);
  });
});

describe("a cross", () => {
  const crosses = (...paths: string[]) =>
    crossesOf(strokes(...paths)).map(({ pair, at }) => [pair.map(({ key }) => key), at.x, at.y]);

  it("is two short lines square to each other, with one middle", () => {
    expect(crosses("M0 5L10 5", "M5 0L5 10")).toEqual([[["0:0", "0:1"], 5, 5]]);
    expect(crosses("M0 0L10 10", "M10 0L0 10")).toEqual([[["0:0", "0:1"], 5, 5]]);
    expect(crosses("M0 5L10 5", "M50 5L60 5", "M5 0L5 10", "M55 0L55 10")).toEqual([
      [["0:0", "0:2"], 5, 5],
      [["0:1", "0:3"], 55, 5],
    ]);
  });

  it("has arms of 24 mm at most (our own choice)", () => {
    expect(crosses("M0 12L23.9 12", "M12 0L12 23.9")).toHaveLength(1);
    expect(crosses("M0 12L24.1 12", "M12 0L12 24.1")).toEqual([]);
  });

  it("has middles within a millimetre, in whatever cell of the sheet each lies", () => {
    expect(crosses("M0 5L10 5", "M5.9 0L5.9 10")).toHaveLength(1);
    expect(crosses("M0 5L10 5", "M6.1 0L6.1 10")).toEqual([]);
    expect(crosses("M0 5L10 5", "M4.1 0L4.1 10")).toHaveLength(1);
    expect(crosses("M0 5.9L10 5.9", "M5 1.2L5 11.2")).toHaveLength(1);
    expect(crosses("M0 6.1L10 6.1", "M5 0.8L5 10.8")).toHaveLength(1);
    expect(crosses("M0 5L10 5", "M5 1.1L5 11.1")).toEqual([]);
  });

  it("has arms one not twice as long as the other, within a fifth of square", () => {
    expect(crosses("M0 5L10 5", "M5 -5L5 15")).toHaveLength(1);
    expect(crosses("M0 5L10 5", "M5 -5.3L5 15.3")).toEqual([]);
    expect(crosses("M5 -5.3L5 15.3", "M0 5L10 5")).toEqual([]);
    // Leaning by 0.19 and 0.21 of its length.
    expect(crosses("M0 5L10 5", "M4.05 0.09L5.95 9.91")).toHaveLength(1);
    expect(crosses("M0 5L10 5", "M3.95 0.11L6.05 9.89")).toEqual([]);
    expect(crosses("M0 5L10 5", "M0 5.1L10 5.1")).toEqual([]);
  });

  it("is made of single open lines, each of one cross alone", () => {
    expect(crosses("M0 5L10 5", "M5 0L5 10", "M5 0.2L5 9.8")).toHaveLength(1);
    expect(crosses("M0 5L10 5", "M5 0L5 5L5 10")).toEqual([]);
  });
});

describe("a frame", () => {
  const framed = (...paths: string[]): string[] => [...framesOf(strokes(...paths))].map(({ key }) => key);
  const two = [box(20, 20, 200, 300), box(300, 20, 200, 300)];

  it("is a rectangle as large as the sheet with two things in it", () => {
    expect(framed(box(0, 0, 600, 400), ...two)).toEqual(["0:0"]);
    expect(framed(...two, box(0, 0, 600, 400))).toEqual(["0:2"]);
    expect(framed(box(0, 0, 600, 400), box(0, 0, 600, 400), ...two)).toEqual(["0:0", "0:1"]);
    expect(framed()).toEqual([]);
  });

  it("is none with one thing in it, or two that run into one another, or one at its edge", () => {
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(150, 20, 300, 200))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(300, 20, 299, 300))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(300, 2, 200, 300))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(2, 20, 200, 300), box(300, 20, 200, 300))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(300, 20, 200, 379))).toEqual([]);
  });

  it("counts as things what covers two cells of a hundred, and no mark", () => {
    // Cells are 6 by 4: 14 by 14 cells are 196, 15 by 14 are 210.
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(300.5, 100.5, 80, 53))).toEqual([]);
    expect(framed(box(0, 0, 600, 400), box(20, 20, 200, 300), box(300.5, 100.5, 87, 53))).toEqual(["0:0"]);
  });

  it("has 97 of 100 parts of the drawing each way", () => {
    const with97 = (width: number, height: number) => framed(box(0, 0, width, height), ...two, "M600 0L600 400");
    expect(with97(583, 400)).toEqual(["0:0"]);
    expect(with97(581, 400)).toEqual([]);
    expect(framed(box(0, 0, 600, 389), ...two, "M0 400L600 400")).toEqual(["0:0"]);
    expect(framed(box(0, 0, 600, 387), ...two, "M0 400L600 400")).toEqual([]);
  });

  it("is closed, of eight straight ways at most, and square", () => {
    expect(framed("M0 0L600 0L600 400L0 400L0 1", ...two)).toEqual([]);
    expect(framed("M0 0L600 0L600 400L100 400Z", ...two)).toEqual([]);
    const eight = "M0 0L300 0L600 0L600 200L600 400L300 400L0 400L0 200Z";
    expect(framed(eight, ...two)).toEqual(["0:0"]);
    expect(framed(eight.replace("L300 0", "L200 0L300 0"), ...two)).toEqual([]);
  });
});

describe("a corner of an outline", () => {
  /** A triangle that turns by some degrees at its middle, then back by far more. */
  const turned = (degrees: number): readonly EdgeCurve<"sheet">[] => {
    const [a, b] = [sheetPoint(0, 0), sheetPoint(100, 0)];
    const way = (degrees * Math.PI) / 180;
    const c = sheetPoint(100 + 100 * Math.cos(way), 100 * Math.sin(way));
    return [lineEdge(a, b), lineEdge(b, c), lineEdge(c, a)];
  };
  it.each([
    [16, 3],
    [-16, 3],
    [14, 2],
    [-14, 2],
  ])("is where it turns by more than 15 degrees: by %s", (degrees, count) => {
    expect(sharpCorners(turned(degrees))).toHaveLength(count);
    expect(sharpCorners(turned(degrees))[0]).toEqual({ x: 0, y: 0 });
  });

  it("is none where it only passes from half a turn to the other", () => {
    // Ways of 175 and 185 degrees: ten apart, though their numbers are 350 apart.
    const [a, b, c] = [sheetPoint(0, 0), sheetPoint(-100, 8.75), sheetPoint(-200, 0)];
    expect(sharpCorners([lineEdge(a, b), lineEdge(b, c), lineEdge(c, a)])).not.toContainEqual({ x: -100, y: 8.75 });
  });
});

describe("dense lines", () => {
  const through = (places: readonly (readonly [number, number])[]): readonly EdgeCurve<"sheet">[] =>
    places.slice(1).map(([x, y], i) => lineEdge(sheetPoint(...(places[i] ?? [x, y])), sheetPoint(x, y)));
  const straight = (count: number) => through(Array.from({ length: count + 1 }, (_, i) => [i, 0] as const));

  it("are left alone up to 1200 stretches", () => {
    const edges = straight(1200);
    expect(thinned(edges)).toBe(edges);
  });

  it("are one where they are straight", () => {
    expect(thinned(straight(1201))).toEqual([lineEdge(sheetPoint(0, 0), sheetPoint(1201, 0))]);
  });

  it("keep their corners, to 0.02 mm", () => {
    const right = through([
      ...Array.from({ length: 701 }, (_, i) => [i, 0] as const),
      ...Array.from({ length: 600 }, (_, i) => [700, i + 1] as const),
    ]);
    const kept = thinned(right);
    expect(kept.map(({ b }) => [b.x, b.y])).toEqual([
      [700, 0],
      [700, 600],
    ]);
  });

  it("that turn back on themselves keep the place where they do", () => {
    const back = through([
      ...Array.from({ length: 801 }, (_, i) => [i, 0] as const),
      ...Array.from({ length: 500 }, (_, i) => [799 - i, 0] as const),
    ]);
    expect(thinned(back).map(({ b }) => b.x)).toEqual([800, 300]);
  });

  it.each([1, -1])("of a circle stay within 0.02 mm with as few as that needs, whichever way (%i)", (way) => {
    const radius = 300;
    const round = through(
      Array.from({ length: 2401 }, (_, i) => {
        const turn = (Math.PI * i) / 2400;
        return [radius * Math.cos(turn), way * radius * Math.sin(turn)] as const;
      }),
    );
    const kept = thinned(round);
    for (const { a, b } of kept) {
      expect(Math.hypot(a.x, a.y)).toBeCloseTo(radius, 9);
      // Sagitta of the chord.
      const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
      expect(radius - Math.sqrt(radius ** 2 - half ** 2)).toBeLessThan(0.021);
    }
    expect(kept[0]?.a).toEqual(round[0]?.a);
    expect(kept.at(-1)?.b).toEqual(round.at(-1)?.b);
    // A chord of sagitta 0.02 is 2 √(2 · 300 · 0.02) = 6.9 mm, a half circle 942: some 136 at the least; a narrower sleeve has more.
    expect(kept.length).toBeGreaterThan(130);
    expect(kept.length).toBeLessThan(250);
  });

  it("keep curves among them as they are", () => {
    const curve: EdgeCurve<"sheet"> = {
      a: sheetPoint(700, 0),
      b: sheetPoint(800, 0),
      curve: { c1: sheetPoint(730, 20), c2: sheetPoint(770, 20) },
    };
    const after = through(Array.from({ length: 701 }, (_, i) => [800 + i, 0] as const));
    expect(thinned([...straight(700), curve, ...after])).toEqual([
      lineEdge(sheetPoint(0, 0), sheetPoint(700, 0)),
      curve,
      lineEdge(sheetPoint(800, 0), sheetPoint(1500, 0)),
    ]);
  });

  it("pass over what wriggles by less", () => {
    const wriggled = through(Array.from({ length: 1302 }, (_, i) => [i, i % 2 === 0 ? 0 : 0.009] as const));
    expect(thinned(wriggled)).toHaveLength(1);
    const more = through(Array.from({ length: 1302 }, (_, i) => [i, i % 2 === 0 ? 0 : 0.06] as const));
    expect(thinned(more).length).toBeGreaterThan(400);
  });
});

it("items are grouped in the order in which each group first comes", () => {
  expect([...groupedBy([5, 2, 7, 4, 1], (one) => one % 2 === 0)]).toEqual([
    [false, [5, 7, 1]],
    [true, [2, 4]],
  ]);
});
