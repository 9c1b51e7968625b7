/** Which outlines are one piece and what lies in it, on boxes. */
import { describe, expect, it } from "vitest";
import { groupOutlines, shapeOf, type GroupsIn, type Shape } from "../../../src/core/outlines/groupOutlines";
import type { Mark, OutlineGroup } from "../../../src/core/outlines/outlineReading";
import type { LineRole } from "../../../src/core/outlines/sortLines";
import { sheetPoint } from "../../../src/core/geometry/point";
import { strokesOf } from "../../../src/core/outlines/strokes";
import { box, drawn } from "./handStrokes";

interface Drawn {
  readonly path: string;
  readonly size?: string;
  readonly role?: LineRole;
  readonly group?: string;
  readonly square?: true;
}

/** Shapes named by their place in the list: "a", "b", and so on. */
const shapesOf = (list: readonly Drawn[]): readonly Shape[] =>
  list.map(({ path, size = null, role = "outline", group = "", square }, at) => {
    const some = strokesOf(drawn([[{ group }, path]]), 1);
    const [stroke] = some;
    if (stroke === undefined) throw new Error("no stroke");
    const id = String.fromCodePoint(97 + at);
    return shapeOf({ id, size, edges: stroke.edges, widestGap: 0 }, role, some, square === true);
  });

const grouped = (list: readonly Drawn[], more: Partial<GroupsIn> = {}) =>
  groupOutlines({
    shapes: shapesOf(list),
    inner: [],
    marks: [],
    writings: [],
    drawing: drawn([]),
    sizes: ["10", "12", "14"],
    ...more,
  });
const outlines = (list: readonly Drawn[], more: Partial<GroupsIn> = {}): OutlineGroup["outlines"][] =>
  grouped(list, more).groups.map((group) => group.outlines);

const nested = (x: number, width = 200, height = 300): Drawn[] =>
  ["10", "12", "14"].map((size, i) => ({ path: box(x, 0, width + 10 * i, height + 10 * i), size }));

describe("a shape", () => {
  it("has its box, its area and its ring", () => {
    const [shape] = shapesOf([{ path: box(10, 20, 30, 40), square: true, role: "sew" }]);
    expect(shape).toMatchObject({
      role: "sew",
      area: 1200,
      isSquare: true,
      box: { min: { x: 10, y: 20 }, max: { x: 40, y: 60 } },
      points: [
        { x: 10, y: 20 },
        { x: 40, y: 20 },
        { x: 40, y: 60 },
        { x: 10, y: 60 },
      ],
    });
    expect(shape?.ring.map(({ a, b }) => [a.x, a.y, b.x, b.y])).toEqual([
      [10, 20, 40, 20],
      [40, 20, 40, 60],
      [40, 60, 10, 60],
      [10, 60, 10, 20],
    ]);
  });
});

describe("outlines of several sizes", () => {
  it("that lie in one another are one piece, named by the largest", () => {
    expect(grouped([...nested(0), ...nested(400, 150, 250)])).toEqual({
      groups: [
        {
          id: "c",
          outlines: { "10": "a", "12": "b", "14": "c" },
          shift: { "10": { x: 0, y: 0 }, "12": { x: 0, y: 0 }, "14": { x: 0, y: 0 } },
          inner: [],
          innerClosed: [],
          marks: [],
          writings: [],
          nameInFile: "",
          isSquare: false,
        },
        {
          id: "f",
          outlines: { "10": "d", "12": "e", "14": "f" },
          shift: { "10": { x: 0, y: 0 }, "12": { x: 0, y: 0 }, "14": { x: 0, y: 0 } },
          inner: [],
          innerClosed: [],
          marks: [],
          writings: [],
          nameInFile: "",
          isSquare: false,
        },
      ],
      isCut: false,
      outside: [],
    });
  });

  it("are each paired with the one it covers best", () => {
    expect(
      outlines([
        { path: box(0, 0, 200, 300), size: "10" },
        { path: box(60, 0, 200, 300), size: "10" },
        { path: box(55, 0, 210, 300), size: "12" },
        { path: box(0, 0, 210, 300), size: "12" },
      ]),
    ).toEqual([
      { "10": "a", "12": "d" },
      { "10": "b", "12": "c" },
    ]);
  });

  it("of no known size stay by themselves", () => {
    expect(outlines([{ path: box(0, 0, 200, 300) }, { path: box(300, 0, 200, 300) }])).toEqual([
      { "": "a" },
      { "": "b" },
    ]);
    expect(outlines([{ path: box(0, 0, 200, 300) }, { path: box(150, 0, 210, 300), size: "10" }])).toEqual([
      { "": "a" },
      { "10": "b" },
    ]);
  });

  it("are four tenths as large as one another at the least (our own choice)", () => {
    /** An L in the very box of the other: of 60000 it has 500 · wide - wide². */
    const angle = (wide: number): string => `M0 0L200 0L200 ${wide}L${wide} ${wide}L${wide} 300L0 300Z`;
    const pair = (wide: number) =>
      outlines([
        { path: box(0, 0, 200, 300), size: "10" },
        { path: angle(wide), size: "12" },
      ]);
    expect(pair(60)).toEqual([{ "10": "a", "12": "b" }]);
    expect(pair(45)).toEqual([{ "10": "a" }, { "12": "b" }]);
  });

  it("and two of one size that cover most of each other are two, for neither is a sewing line", () => {
    const pair = (role: LineRole) =>
      grouped([
        { path: box(0, 0, 200, 300), size: "10" },
        { path: box(30, 0, 200, 300), size: "10", role },
      ]).groups.map(({ outlines: of, sewing }) => [of, sewing]);
    expect(pair("outline")).toEqual([
      [{ "10": "a" }, undefined],
      [{ "10": "b" }, undefined],
    ]);
    expect(pair("sew")).toEqual([[{ "10": "a" }, { "10": "b" }]]);
  });

  it("of which two are as large are called by the first", () => {
    const same = ["12", "10"].map((size): Drawn => ({ path: box(0, 0, 200, 300), size }));
    expect(grouped(same).groups.map(({ id, outlines: of }) => [id, of])).toEqual([["b", { "10": "b", "12": "a" }]]);
  });

  it("share 35 of 100 parts of what their boxes cover together, at the least (our own choice)", () => {
    // Squares of 200, moved by so much: of 200 + by they share 200 - by. 95: 105 of 295, 0.356; 97: 103 of 297, 0.347.
    const moved = (x: number, y: number) =>
      grouped([
        { path: box(0, 0, 200, 200), size: "10" },
        { path: box(x, y, 200, 200), size: "12" },
      ]).groups.map(({ shift }) => shift);
    expect(moved(95, 0)).toEqual([{ "10": { x: 0, y: 0 }, "12": { x: 0, y: 0 } }]);
    expect(moved(0, -95)).toEqual([{ "10": { x: 0, y: 0 }, "12": { x: 0, y: 0 } }]);
    // Else they are laid side by side.
    expect(moved(97, 0)).toEqual([{ "10": { x: 0, y: 0 }, "12": { x: -97, y: 0 } }]);
    expect(moved(0, -97)).toEqual([{ "10": { x: 0, y: 0 }, "12": { x: 0, y: 97 } }]);
    expect(moved(-250, 250)).toEqual([{ "10": { x: 0, y: 0 }, "12": { x: 250, y: -250 } }]);
  });

  it("are sixty pieces at the most, of 900 outlines: the largest", () => {
    const row = (count: number) =>
      grouped(
        Array.from({ length: count }, (_, i): Drawn => ({ path: box(300 * i, 0, 100 + i, 100 + 8 * i), size: "10" })),
      );
    expect([row(60).groups.length, row(60).isCut]).toEqual([60, false]);
    const cut = row(61);
    expect([cut.groups.length, cut.isCut, cut.groups.at(-1)?.id]).toEqual([60, true, "b"]);
    const marked = (count: number) =>
      grouped([
        { path: box(0, 0, 400, 400), size: "10" },
        ...Array.from({ length: count }, (_, i): Drawn => ({
          path: box(5 + 10 * (i % 30), 5 + 10 * Math.floor(i / 30), 2, 2),
          size: "10",
        })),
      ]);
    expect([marked(899).isCut, marked(899).groups.map(({ innerClosed }) => innerClosed.length)]).toEqual([
      false,
      [899],
    ]);
    expect([marked(900).isCut, marked(900).groups.map(({ innerClosed }) => innerClosed.length)]).toEqual([true, [899]]);
  });

  it("in the order of the chart, those that it does not name last", () => {
    const found = outlines([
      { path: box(0, 0, 220, 320), size: "more" },
      { path: box(0, 0, 210, 310), size: "12" },
      { path: box(0, 0, 200, 300), size: "10" },
    ]);
    expect(found.map((one) => Object.keys(one))).toEqual([["10", "12", "more"]]);
  });
});

describe("sizes laid side by side", () => {
  const side = (
    ...sizes: readonly (readonly [size: string, x: number, width: number, height: number, group?: string])[]
  ) => sizes.map(([size, x, width, height, group = ""]): Drawn => ({ path: box(x, 0, width, height), size, group }));

  it("are brought onto the largest by their middles", () => {
    const [group, more] = grouped(side(["10", 0, 200, 300], ["12", 300, 210, 310], ["14", 600, 220, 330])).groups;
    expect(more).toBeUndefined();
    expect(group?.shift).toEqual({ "10": { x: 610, y: 15 }, "12": { x: 305, y: 10 }, "14": { x: 0, y: 0 } });
  });

  it("are told apart by their form, and of two alike by the order in which they are laid", () => {
    expect(
      outlines(side(["10", 0, 200, 300], ["10", 300, 100, 500], ["12", 600, 105, 510], ["12", 900, 210, 310])),
    ).toEqual([
      { "10": "a", "12": "d" },
      { "10": "b", "12": "c" },
    ]);
    expect(
      outlines(side(["10", 300, 200, 300], ["10", 0, 200, 300], ["12", 900, 205, 305], ["12", 600, 205, 305])),
    ).toEqual(
      expect.arrayContaining([
        { "10": "a", "12": "c" },
        { "10": "b", "12": "d" },
      ]),
    );
  });

  it("of one form are paired from left to right, and of what stands in one column from above", () => {
    const at = (size: string, x: number, y: number, more = 0): Drawn => ({
      path: box(x, y, 200 + more, 300 + more),
      size,
    });
    const pairs = (...list: readonly Drawn[]) =>
      outlines(list)
        .map((one) => `${one["10"]}${one["12"]}`)
        .toSorted();
    // From left to right a, b and d, c, however high each lies.
    expect(pairs(at("10", 0, 400), at("10", 300, 0), at("12", 900, 400, 5), at("12", 600, 0, 5))).toEqual(["ad", "bc"]);
    expect(pairs(at("10", 0, 0), at("10", 0, 400), at("12", 600, 400, 5), at("12", 600, 0, 5))).toEqual(["ad", "bc"]);
  });

  it("are unlike beyond a quarter in logarithms of lengths, with the same name beyond six tenths (our own choice)", () => {
    // The height alone: its logarithm is the worst of all.
    const pair = (share: number, group = "") =>
      outlines(side(["10", 0, 200, 300, group], ["12", 300, 200, 300 * Math.exp(share), group]));
    expect(pair(0.24)).toHaveLength(1);
    expect(pair(0.26)).toHaveLength(2);
    expect(pair(0.58, "FRONT")).toHaveLength(1);
    expect(pair(0.62, "FRONT")).toHaveLength(2);
    expect(outlines(side(["10", 0, 200, 300, "FRONT"], ["12", 300, 200, 300, "BACK"]))).toHaveLength(2);
    expect(outlines(side(["10", 0, 200, 300, "FRONT"], ["12", 300, 200, 300, "front"]))).toHaveLength(1);
    expect(outlines(side(["10", 0, 200, 300, "FRONT"], ["12", 300, 200, 300]))).toHaveLength(1);
  });

  it("are unlike beyond a quarter in width, in the root of their area, or in their way round", () => {
    const apart = (path: string): number =>
      outlines([
        { path: box(0, 0, 200, 300), size: "10" },
        { path, size: "12" },
      ]).length;
    expect(apart(box(300, 0, 200 * Math.exp(0.24), 300))).toBe(1);
    expect(apart(box(300, 0, 200 * Math.exp(0.26), 300))).toBe(2);
    expect(apart(box(300, 0, 200 * Math.exp(-0.24), 300))).toBe(1);
    expect(apart(box(300, 0, 200 * Math.exp(-0.26), 300))).toBe(2);
    // A cross: as far round as its box. Of 60000 it lacks four corners: 37500, a logarithm of 0.235 in the root; 34400, 0.278.
    const path = (...places: readonly (readonly [number, number])[]): string =>
      `M${places.map(([x, y]) => `${300 + x} ${y}`).join("L")}Z`;
    const cross = (a: number): string =>
      path(
        ...([
          [a, 0],
          [200 - a, 0],
          [200 - a, a],
          [200, a],
          [200, 300 - a],
          [200 - a, 300 - a],
        ] as const),
        ...([
          [200 - a, 300],
          [a, 300],
          [a, 300 - a],
          [0, 300 - a],
          [0, a],
          [a, a],
        ] as const),
      );
    expect(apart(cross(75))).toBe(1);
    expect(apart(cross(80))).toBe(2);
    // Slit from both sides, each slit there and back: 1000 round and 240 more, 0.215; 320 more, 0.278.
    const slit = (deep: number): string =>
      path(
        ...([
          [0, 0],
          [200, 0],
          [200, 149],
          [200 - deep, 149],
          [200 - deep, 151],
          [200, 151],
        ] as const),
        ...([
          [200, 300],
          [0, 300],
          [0, 151],
          [deep, 151],
          [deep, 149],
          [0, 149],
        ] as const),
      );
    expect(apart(slit(60))).toBe(1);
    expect(apart(slit(80))).toBe(2);
  });

  it("are told by the size before them, not by the first", () => {
    // A fifth in logarithms from each to the next: two fifths from the first to the third.
    const grown = (...sizes: readonly string[]) =>
      outlines(side(...sizes.map((size, i) => [size, 300 * i, 200, 300 * Math.exp(0.2 * i)] as const)));
    expect(grown("10", "12", "14")).toEqual([{ "10": "a", "12": "b", "14": "c" }]);
    expect(outlines(side(["10", 0, 200, 300], ["14", 300, 200, 300 * Math.exp(0.4)]))).toHaveLength(2);
  });

  it("out of the order in which they are laid are a twentieth less alike (our own choice)", () => {
    // Each of the second size has the very form of one of the first, the other way about; half of what heights differ counts.
    const pair = (share: number) => {
      const tall = 300 * Math.exp(share);
      return outlines(side(["10", 0, 200, 300], ["10", 300, 200, tall], ["12", 600, 200, tall], ["12", 900, 200, 300]))
        .map((one) => `${one["10"]}${one["12"]}`)
        .toSorted();
    };
    expect(pair(0.09)).toEqual(["ac", "bd"]);
    expect(pair(0.11)).toEqual(["ad", "bc"]);
  });

  it("join others that lie in one another already, where none has a size of theirs", () => {
    const both = (size: string): Drawn[] => [
      { path: box(300, 0, 210, 310), size: "12" },
      { path: box(300, 0, 220, 320), size },
    ];
    const [group, more] = grouped([{ path: box(0, 0, 200, 300), size: "10" }, ...both("14")]).groups;
    expect(more).toBeUndefined();
    expect(group).toMatchObject({
      outlines: { "10": "a", "12": "b", "14": "c" },
      shift: { "10": { x: 310, y: 10 }, "12": { x: 0, y: 0 }, "14": { x: 0, y: 0 } },
    });
    const clash = outlines([
      { path: box(0, 0, 200, 300), size: "10" },
      { path: box(0, 0, 205, 305), size: "14" },
      ...both("14"),
    ]);
    expect(clash).toEqual([
      { "10": "a", "14": "b" },
      { "12": "c", "14": "d" },
    ]);
  });

  it("are none where they are squares, or of no known size", () => {
    const apart = (more: Partial<Drawn>) =>
      outlines([
        { path: box(0, 0, 100, 100), size: "10", ...more },
        { path: box(300, 0, 100, 100), size: "12" },
      ]).length;
    expect(apart({})).toBe(1);
    expect(apart({ square: true })).toBe(2);
    expect(outlines([{ path: box(0, 0, 100, 100) }, { path: box(300, 0, 100, 100), size: "12" }])).toHaveLength(2);
  });

  it("have one name where their sizes stand in it, behind a letter too", () => {
    expect(outlines(side(["10", 0, 200, 300, "FRONT T10"], ["12", 300, 200, 450, "FRONT T12"]))).toHaveLength(1);
  });

  it("lean to the same side", () => {
    const triangle = (x: number, tip: number): string => `M${x} 300L${x + 200} 300L${x + tip} 0Z`;
    const pair = (tip: number) =>
      outlines([
        { path: triangle(0, 20), size: "10" },
        { path: triangle(300, tip), size: "12" },
      ]);
    expect(pair(25)).toHaveLength(1);
    expect(pair(180)).toHaveLength(2);
    // Up or down: a flat triangle has its way round seven tenths down its box, the same on its head three.
    const flat = (tip: number, foot: number): string => `M300 ${foot}L500 ${foot}L400 ${tip}Z`;
    const stands: Drawn = { path: "M0 100L200 100L100 0Z", size: "10" };
    expect(outlines([stands, { path: flat(0, 100), size: "12" }])).toHaveLength(1);
    expect(outlines([stands, { path: flat(100, 0), size: "12" }])).toHaveLength(2);
  });
});

describe("what lies in an outline", () => {
  const PIECE: Drawn = { path: box(0, 0, 200, 300), size: "10" };

  it("is a mark inside where it is smaller than a tenth, and a piece where it is larger", () => {
    // A tenth of 60000.
    const small = grouped([PIECE, { path: box(50, 50, 59, 100), size: "10" }]);
    expect(small.groups.map(({ id, innerClosed }) => [id, innerClosed])).toEqual([["a", ["b"]]]);
    expect(outlines([PIECE, { path: box(50, 50, 61, 100), size: "10" }])).toHaveLength(2);
    // Of all sizes in one of a size: half.
    expect(grouped([PIECE, { path: box(10, 10, 145, 200) }]).groups.map(({ innerClosed }) => innerClosed)).toEqual([
      ["b"],
    ]);
    expect(outlines([PIECE, { path: box(10, 10, 155, 200) }])).toHaveLength(2);
    expect(outlines([{ path: box(0, 0, 200, 300) }, { path: box(10, 10, 145, 200) }])).toHaveLength(2);
  });

  it("is held against the smallest that it lies in", () => {
    // 22500 of 160000 are a piece; 3600 are a mark of the large one and a piece in the small one, 2000 a mark in either.
    const inner = (width: number, height: number) =>
      grouped([
        { path: box(0, 0, 400, 400), size: "10" },
        { path: box(100, 100, 150, 150), size: "10" },
        { path: box(120, 120, width, height), size: "10" },
      ]).groups.map(({ id, innerClosed }) => [id, innerClosed]);
    expect(inner(60, 60)).toEqual([
      ["a", []],
      ["b", []],
      ["c", []],
    ]);
    expect(inner(50, 40)).toEqual([
      ["a", []],
      ["b", ["c"]],
    ]);
  });

  it("lies in it with more than half of its places", () => {
    const piece: Drawn = { path: box(0, 0, 200, 300), size: "10" };
    const line = (...places: readonly (readonly [number, number])[]) => {
      const { groups, outside } = grouped([piece], {
        inner: [
          { line: { id: "l", size: "10", edges: [], layer: "" }, points: places.map(([x, y]) => sheetPoint(x, y)) },
        ],
      });
      return [groups[0]?.inner.length, outside.length];
    };
    // Middles at 150 and 250 of 200: half of them.
    expect(line([100, 50], [200, 50], [300, 50])).toEqual([0, 1]);
    expect(line([100, 50], [190, 50], [200, 50], [300, 50])).toEqual([1, 0]);
    expect(line([100, 50])).toEqual([1, 0]);
    expect(line([210, 50])).toEqual([0, 1]);
    // Of forty places every fourth is asked: those that lie outside are none of them.
    const some = Array.from({ length: 41 }, (_, i): readonly [number, number] => [i % 4 === 0 ? 100 : 390, 50]);
    expect(line(...some)).toEqual([0, 1]);
  });

  it("is a mark where it was drawn as one, whatever its size, and nothing where it lies nowhere", () => {
    const found = grouped([PIECE, { path: box(5, 5, 190, 290), size: "10", role: "inner" }]);
    expect(found.groups.map(({ innerClosed, sewing }) => [innerClosed, sewing])).toEqual([[["b"], undefined]]);
    expect(outlines([PIECE, { path: box(500, 5, 190, 290), size: "10", role: "inner" }])).toHaveLength(1);
  });

  it("is a sewing line from six tenths on, of its own size and one for each", () => {
    const sewing = (...more: Drawn[]) => grouped([PIECE, ...more]).groups.map((group) => group.sewing);
    expect(sewing({ path: box(10, 10, 180, 280), size: "10" })).toEqual([{ "10": "b" }]);
    expect(sewing({ path: box(10, 10, 130, 280), size: "10" })).toEqual([{ "10": "b" }]);
    expect(sewing({ path: box(10, 10, 128, 280), size: "10" })).toEqual([undefined, undefined]);
    expect(
      sewing({ path: box(10, 10, 180, 280), size: "10" }, { path: box(15, 15, 170, 270), size: "10" }),
    ).toHaveLength(2);
    // One of no size in an outline of a size is a piece.
    expect(sewing({ path: box(10, 10, 180, 280) })).toEqual([undefined, undefined]);
    // Where nothing is allowed it is as large as what it lies in.
    expect(sewing({ path: box(0, 0, 200, 300), size: "10", role: "sew" })).toEqual([{ "10": "b" }]);
    expect(sewing({ path: box(0, 0, 201, 301), size: "10", role: "sew" })).toEqual([{ "10": "b" }]);
    expect(sewing({ path: box(0, 0, 200, 300), size: "12" })).toEqual([undefined]);
  });

  it("are lines, marks and writings of the smallest piece that holds them, or of their own size", () => {
    const mark = (x: number, y: number, size: string | null = null): Mark => ({
      at: sheetPoint(x, y),
      size,
      layer: "",
      form: "point",
    });
    const line = (id: string, size: string | null, ...places: readonly (readonly [number, number])[]) => ({
      line: { id, size, edges: [], layer: "" },
      points: places.map(([x, y]) => sheetPoint(x, y)),
    });
    const { groups, outside } = grouped(
      [
        { path: box(0, 0, 200, 300), size: "10" },
        { path: box(300, 0, 100, 100), size: "10" },
        { path: box(0, 0, 250, 350), size: "12" },
      ],
      {
        marks: [mark(20, 20), mark(350, 50), mark(700, 50), mark(220, 320, "12"), mark(220, 320, "10")],
        writings: [
          { at: sheetPoint(30, 30), text: "Front" },
          { at: sheetPoint(700, 30), text: "elsewhere" },
        ],
        inner: [
          // A dart's legs: their ends lie on the outline itself.
          line("dart", "10", [80, 300], [100, 200], [120, 300]),
          line("out", "10", [500, 300], [500, 200]),
          line("most", null, [350, 50], [350, 90], [350, 95], [350, 300]),
        ],
      },
    );
    expect(groups.map(({ id }) => id)).toEqual(["c", "b"]);
    expect(groups.map(({ marks }) => marks.map(({ at, size }) => [at.x, size]))).toEqual([
      [
        [20, null],
        [220, "12"],
      ],
      [[350, null]],
    ]);
    expect(groups.map(({ writings }) => writings.map(({ text }) => text))).toEqual([["Front"], []]);
    expect(groups.map(({ inner }) => inner.map(({ id }) => id))).toEqual([["dart"], ["most"]]);
    expect(outside.map(({ id }) => id)).toEqual(["out"]);
  });
});

describe("squares and frames", () => {
  it("hold nothing and are no sizes of one another", () => {
    const { groups } = grouped(
      [
        { path: box(0, 0, 100, 100), square: true, size: "10" },
        { path: box(0, 0, 100, 100), square: true, size: "12" },
        { path: box(10, 10, 20, 20), size: "10" },
      ],
      { marks: [{ at: sheetPoint(80, 80), size: null, layer: "", form: "point" }] },
    );
    expect(groups.map(({ isSquare, outlines: of, marks }) => [isSquare, of, marks.length])).toEqual([
      [true, { "10": "a" }, 0],
      [true, { "12": "b" }, 0],
      [false, { "10": "c" }, 0],
    ]);
  });

  it("are told where a rectangle lies round two things apart", () => {
    const frame = (...more: Drawn[]) =>
      grouped([{ path: box(0, 0, 1000, 1000) }, ...more]).groups.map(({ id, isFrame }) => [id, isFrame === true]);
    const [one, other]: readonly Drawn[] = [{ path: box(10, 10, 300, 400) }, { path: box(500, 10, 300, 400) }];
    if (one === undefined || other === undefined) throw new Error("no boxes");
    expect(frame(one, other)).toEqual([
      ["a", true],
      ["b", false],
      ["c", false],
    ]);
    expect(frame(one)).not.toContainEqual(["a", true]);
    // A corner cut off: 0.995 of its box, and 0.955.
    const cut = (by: number): Drawn => ({ path: `M0 0L1000 0L1000 ${1000 - by}L${1000 - by} 1000L0 1000Z` });
    const isFramed = (by: number): boolean =>
      grouped([cut(by), one, other]).groups.some(({ id, isFrame }) => id === "a" && isFrame === true);
    expect([isFramed(100), isFramed(300)]).toEqual([true, false]);
    // Two that lie in one another, one that is a mark, one that runs out of it.
    expect(frame(one, { path: box(20, 20, 300, 400) })).not.toContainEqual(["a", true]);
    expect(frame(one, { path: box(500, 10, 100, 190) })).not.toContainEqual(["a", true]);
    expect(frame(one, { path: box(500, 10, 510, 400) })).not.toContainEqual(["a", true]);
    expect(frame(one, { path: box(500, 10, 100, 210) })).toContainEqual(["a", true]);
    // One of them 0.81 of it, and 0.79.
    const low: Drawn = { path: box(0, 850, 900, 100) };
    expect(frame({ path: box(0, 0, 1000, 810) }, low)).not.toContainEqual(["a", true]);
    expect(frame({ path: box(0, 0, 1000, 790) }, low)).toContainEqual(["a", true]);
    // Each side of it may be touched, and none passed.
    for (const [x, y, width, height] of [
      [-1, 10, 301, 400],
      [10, -1, 300, 401],
      [10, 599, 300, 402],
      [10, 600, 300, 400],
    ] as const)
      expect(frame(other, { path: box(x, y, width, height) }).some(([, isTold]) => isTold)).toBe(y === 600);
  });
});

describe("the name that a file gives a piece", () => {
  const names = (
    list: readonly Drawn[],
    writings: readonly (readonly [text: string, group: string])[] = [],
  ): string[] =>
    grouped(list, {
      drawing: drawn([], { writings: writings.map(([text, group]) => ({ text, group, x: 0, y: 0, layer: "" })) }),
    }).groups.map(({ nameInFile }) => nameInFile);
  const one = (group: string): Drawn => ({ path: box(0, 0, 200, 300), size: "10", group });

  it.each([
    ["FRONT", "FRONT"],
    ["FRONT_10", "FRONT"],
    ["10 FRONT", "FRONT"],
    ["Front size 10", "Front"],
    ["Front size10", "Front"],
    ["Front, gr. 10", "Front"],
    ["Font10", "Font10"],
    ["FRONT-T10", "FRONT"],
    ["10 - FRONT", "FRONT"],
    ["FRONT -: 10", "FRONT"],
    ["FRONT 100", "FRONT 100"],
    ["A / BACK", "BACK"],
    ["10 / BACK 10 / path 3", "BACK"],
    ["10", ""],
    ["x1", ""],
    ["", ""],
  ])("of the group %j is %j", (group, name) => {
    expect(names([one(group)])).toEqual([name]);
  });

  it("is what is written in its block, or in one that its own lies in", () => {
    expect(names([one("P1")], [["Piece Name: Cup", "P1"]])).toEqual(["Cup"]);
    expect(names([one("P1 / inner")], [["Piece Name: Cup", "P1"]])).toEqual(["Cup"]);
    expect(names([one("P12")], [["Piece Name: Cup", "P1"]])).not.toEqual(["Cup"]);
    expect(names([one("FRONT")], [["Size: 10", "FRONT"]])).toEqual(["FRONT"]);
    expect(names([one("")], [["Piece Name: Cup", ""]])).toEqual([""]);
  });

  it("is none that three pieces of a size share", () => {
    const three = (last: string): Drawn[] => [
      { path: box(0, 0, 200, 300), size: "10", group: "Sheet" },
      { path: box(300, 0, 100, 300), size: "10", group: "Sheet" },
      { path: box(600, 0, 200, 100), size: "10", group: last },
    ];
    expect(names(three("Sheet"))).toEqual(["", "", ""]);
    expect(names(three("Sheet").slice(1))).toEqual(["Sheet", "Sheet"]);
    expect(names(three("Other"))).toEqual(["Sheet", "Sheet", "Other"]);
    // Three sizes of one piece are no three pieces of a size; a square is none.
    const sizes = ["10", "12", "14"].map((size, i): Drawn => ({ path: box(0, 0, 200 + i, 300), size, group: "Front" }));
    expect(names(sizes)).toEqual(["Front"]);
    expect(names(three("Sheet").map((drawing, i) => (i === 0 ? { ...drawing, square: true } : drawing)))).toEqual([
      "Sheet",
      "Sheet",
      "Sheet",
    ]);
  });
});
