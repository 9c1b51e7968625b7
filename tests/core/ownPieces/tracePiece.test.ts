/** Rings of pieces made of outlines by hand: which way they stand, where they lie, their corners and darts, size by size. */
import { describe, expect, it } from "vitest";
import { cubicEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import type { OutlineGroup } from "../../../src/core/outlines/outlineReading";
import { shapeOf } from "../../../src/core/ownPieces/pieceShapes";
import { likeness } from "../../../src/core/ownPieces/tracePiece";
import { closedLine, innerLine, type At } from "../../support/outlineGroups";
import {
  corners,
  FRONT,
  inputOf,
  moved,
  named,
  NAMES,
  ringOf,
  rounded,
  STANDING,
  traced,
  turnedBy,
} from "./tracedByHand";

const likenessOf = (...given: Parameters<typeof inputOf>) => likeness(inputOf(...given));

describe("a piece", () => {
  it("lies with its centre at 0 and its waist at 420, wherever it was drawn", () => {
    const long = (a: At, b: At): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
    const starts = FRONT.map((_, index) =>
      FRONT.slice(0, index).reduce((sum, at, k) => sum + long(at, FRONT[k + 1] ?? at), 0),
    );
    const found = traced("front", { "10": moved(FRONT, 1000, 500) });
    expect(found).toEqual({
      corners: shapeOf("front", "sideDart")?.corners,
      extent: "half",
      turns: 0,
      turnedOver: false,
      line: "stitch",
      centreOnFold: true,
      cost: expect.any(Number) as number,
      problems: [],
      sizes: [
        {
          label: "10",
          place: { turns: 0, turnedOver: false, tilt: 0, dx: -1000, dy: -480 },
          mirror: null,
          ring: expect.objectContaining({ off: 0 }) as unknown,
          corners: NAMES.map((name, index) => ({
            name,
            s: expect.closeTo(starts[index] ?? NaN, 6) as number,
            by: "form",
          })),
          darts: [],
        },
      ],
    });
    expect(ringOf(found)).toEqual(STANDING);
    expect(found.cost).toBeLessThan(1.2);
  });

  it("is found however it lies: by quarters, and turned over", () => {
    const upright = likenessOf("front", { "10": FRONT });
    for (const turns of [0, 1, 2, 3] as const)
      for (const turnedOver of [false, true]) {
        // What is to be turned by quarters and then over was turned over and then back by as many.
        const drawn = turnedBy(
          FRONT.map(([x, y]): At => [turnedOver ? -x : x, y]),
          (-turns * Math.PI) / 2,
        );
        const found = traced("front", { "10": moved(drawn, 300, 700) });
        expect([found.turns, found.turnedOver, found.problems]).toEqual([turns, turnedOver, []]);
        expect(found.cost).toBeCloseTo(upright, 6);
        expect(corners(found)).toEqual(named(NAMES, STANDING));
        expect(found.sizes[0]?.ring.length).toBeCloseTo(
          closedLine(FRONT).reduce((sum, { a, b }) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0),
          6,
        );
      }
  });

  it("that lies askew is set upright, by its grain or its long straight lines", () => {
    const upright = likenessOf("front", { "10": FRONT });
    for (const by of [0.3, -0.4])
      for (const over of [false, true]) {
        const lay = (places: readonly At[]) =>
          turnedBy(
            places.map(([x, y]): At => [over ? -x : x, y]),
            by,
          );
        const grain = (length: number) =>
          innerLine(
            lay([
              [100, 200],
              [100, 200 + length],
            ]),
          );
        const found = traced("front", { "10": lay(FRONT) }, { group: { inner: [grain(100)] } });
        expect(found.cost).toBeCloseTo(upright, 6);
        expect([found.turns, found.turnedOver]).toEqual([0, over]);
        expect(corners(found)).toEqual(named(NAMES, STANDING));
        // Without a grain by what is long in the outline, as its side, 0.019 off the centre: that is then made upright.
        const bare = traced("front", { "10": lay(FRONT) });
        expect(bare.cost).toBeLessThan(1.2);
        expect(corners(bare)).toEqual(named(NAMES, STANDING));
      }
  });

  it("goes by lines of 70 mm and more, straight ones, the two leans that most of them have, and those of a twentieth alike", () => {
    const RECTANGLE = (width: number, height: number): At[] => [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ];
    const lean = (places: readonly At[], more: Partial<OutlineGroup> = {}, by = 0.5) =>
      likenessOf("strap", { "10": turnedBy(places, by) }, { style: "midriff", group: more });
    expect(lean(RECTANGLE(30, 71))).toBeCloseTo(0, 6);
    expect(lean(RECTANGLE(30, 69))).toBeGreaterThan(1);
    // Two straight stretches of 40 in one line are one of 80.
    const parted: At[] = [
      [0, 0],
      [30, 0],
      [30, 80],
      [0, 80],
      [0, 40],
    ];
    expect(lean(parted)).toBeCloseTo(0, 6);
    // Less than 0.06 off is upright enough.
    expect(lean(RECTANGLE(60, 200), {}, 0.05)).toBeGreaterThan(0.01);
    expect(lean(RECTANGLE(60, 200), {}, 0.07)).toBeCloseTo(0, 6);
    // A bent line says nothing of the grain.
    const [a, b] = turnedBy(
      [
        [10, 10],
        [10, 300],
      ],
      0.5,
    ).map((at) => sheetPoint(...at));
    if (a === undefined || b === undefined) throw new Error("grain");
    const bent = cubicEdge({ a, c1: sheetPoint(a.x + 9, a.y + 50), c2: sheetPoint(b.x + 9, b.y - 50), b });
    expect(lean(RECTANGLE(30, 60), { inner: [{ id: "bent", size: null, layer: "", edges: [bent] }] })).toBeGreaterThan(
      1,
    );
    const grain = (places: readonly At[]) => ({ inner: [innerLine(turnedBy(places, 0.5))] });
    expect(
      lean(
        RECTANGLE(30, 60),
        grain([
          [10, 0],
          [10, 80],
        ]),
      ),
    ).toBeCloseTo(0, 6);
    // One that turns on its way is none.
    expect(
      lean(
        RECTANGLE(30, 60),
        grain([
          [10, 0],
          [10, 80],
          [10, 160],
        ]),
      ),
    ).toBeGreaterThan(1);
    // Three lines that lean otherwise, each longer than the one that is right: only two of them are tried.
    const wrong = (count: number) =>
      Array.from({ length: count }, (_, k) => {
        const way = 0.5 + 0.2 * (k + 1);
        return innerLine([
          [0, 0],
          [-300 * Math.sin(way), 300 * Math.cos(way)],
        ]);
      });
    expect(lean(RECTANGLE(60, 200), { inner: wrong(1) })).toBeCloseTo(0, 6);
    expect(lean(RECTANGLE(30, 100), { inner: wrong(2) })).toBeGreaterThan(0.1);
  });

  it("keeps a lean of its centre line, where that is not straight by half a millimetre", () => {
    // The centre bows out to the left by 5 half way: it is laid by its top alone.
    const bowed = (by: number) => [...FRONT, [-by, 236] as const];
    const found = traced("front", { "10": moved(turnedBy(bowed(5), 0.01), 50, 60) });
    const [topX, topY] = turnedBy([[0, 72]], 0.01)[0] ?? [0, 0];
    const [, lowY] = turnedBy([[0, 400]], 0.01)[0] ?? [0, 0];
    expect(found.sizes[0]?.place.tilt).toBe(0);
    expect(corners(found).centreNeck).toEqual([0, rounded(420 - (lowY - topY)), "form"]);
    expect(found.sizes[0]?.place.dx).toBeCloseTo(-50 - topX, 6);
    // So it is drawn as one curve, that bows by three quarters of its handles.
    const curved = (by: number) => {
      const [top, c2, c1, low] = turnedBy(
        [
          [0, 72],
          [-by / 0.75, 150],
          [-by / 0.75, 320],
          [0, 400],
        ],
        0.01,
      ).map((at) => sheetPoint(...at));
      if (top === undefined || c1 === undefined || c2 === undefined || low === undefined) throw new Error("centre");
      const drawn = [...closedLine(turnedBy(FRONT, 0.01)).slice(0, -1), cubicEdge({ a: low, c1, c2, b: top })];
      return traced("front", { "10": drawn }).sizes[0]?.place.tilt;
    };
    expect(curved(5)).toBe(0);
    expect(curved(0.4)).toBeCloseTo(-0.01, 6);
    // One that bows less is straight, and upright.
    const straight = traced("front", { "10": moved(turnedBy(bowed(0.4), 0.01), 50, 60) });
    expect(straight.sizes[0]?.place.tilt).toBeCloseTo(-0.01, 6);
    expect(corners(straight).centreNeck).toEqual([0, 92, "form"]);
    expect(corners(straight).sideWaist).toEqual([190, 420, "form"]);
  });

  it.each([
    ["back", "sideDart", ["centreWaist", [0, 420]]],
    ["back", "midriff", ["underBustCentre", [0, 420]]],
    ["cup", "midriff", ["underBustCentre", [0, 325]]],
    ["frontBand", "midriff", ["centreWaist", [0, 420]]],
    ["backBand", "midriff", ["centreWaist", [0, 420]]],
    ["frontBasque", "sideDart", ["centreWaist", [0, 0]]],
    ["backBasque", "sideDart", ["centreWaist", [0, 0]]],
    ["strap", "midriff", ["strapBackInner", [0, 0]]],
    ["centreFront", "princessArmhole", ["centreWaist", [0, 420]]],
    ["centreFront", "princessShoulder", ["centreWaist", [0, 420]]],
    ["sideFront", "princessArmhole", ["princessWaist", [0, 420]]],
    ["sideFront", "princessShoulder", ["princessWaist", [0, 420]]],
  ] as const)("%s, %s, that is as usual, lies by its own corner", (name, style, [corner, at]) => {
    const shape = shapeOf(name, style);
    if (shape === null) throw new Error(name);
    // As wide and as high as makes its ways what they usually are.
    const [wide, high] = name === "strap" ? [40, 300] : name.endsWith("Band") ? [220, 120] : [210, 300];
    const places = shape.corners.map(({ x, y }): At => [x * wide, y * high]);
    const found = traced(name, { "10": moved(places, 40, 50) }, { style });
    const here = shape.corners.findIndex((one) => one.name === corner);
    const [ox, oy] = places[here] ?? [NaN, NaN];
    expect([found.turns, found.turnedOver, found.centreOnFold, found.problems]).toEqual([0, false, shape.onFold, []]);
    expect(corners(found)).toEqual(
      named(
        shape.corners.map((one) => one.name),
        moved(places, at[0] - ox, at[1] - oy),
      ),
    );
    expect(likenessOf(name, { "10": places }, { style })).toBeCloseTo(found.cost, 9);
  });

  it("without a name of ours keeps how it lies, its corners from the upper left one on", () => {
    const found = traced("other1", {
      "10": [
        [400, 300],
        [100, 300],
        [90, 110],
        [400, 100],
      ],
    });
    expect([found.turns, found.turnedOver, found.cost, found.centreOnFold, found.extent]).toEqual([
      0,
      false,
      Infinity,
      false,
      "half",
    ]);
    expect(
      found.corners.map(({ name, level, seam, way, x, y, turn }) => [name, level, seam, way, x, y, Math.round(turn)]),
    ).toEqual([
      ["corner00", "bust", "edge", 0, 90, 110, 91],
      ["corner01", "bust", "edge", 0, 400, 100, 92],
      ["corner02", "bust", "edge", 0, 400, 300, 90],
      ["corner03", "bust", "edge", 0, 100, 300, 87],
    ]);
    expect(found.sizes[0]?.place).toEqual({ turns: 0, turnedOver: false, tilt: 0, dx: 0, dy: 0 });
    expect(corners(found)).toEqual(
      named(
        ["corner00", "corner01", "corner02", "corner03"],
        [
          [90, 110],
          [400, 100],
          [400, 300],
          [100, 300],
        ],
      ),
    );
    const levels = { top: "neck", bottom: "hip" } as const;
    const said = traced("other2", { "10": FRONT }, { said: { levels, turns: 2, turnedOver: true } });
    // The underarm turns by 17.6 degrees: none.
    expect(said.corners.map(({ level }) => level)).toEqual(["neck", "neck", "neck", "neck", "neck"]);
    // Turned half round and then over: y alone goes the other way.
    expect(corners(said).corner00?.slice(0, 2)).toEqual([0, -400]);
    expect([said.turns, said.turnedOver]).toEqual([2, true]);
  });

  it("that has fewer than three corners, as a circle, is cut at four quarters of its way", () => {
    const k = (50 * 4 * (Math.SQRT2 - 1)) / 3;
    const quarter = (a: At, b: At, c: At, d: At) =>
      cubicEdge({ a: sheetPoint(...a), c1: sheetPoint(...b), c2: sheetPoint(...c), b: sheetPoint(...d) });
    const circle = [
      quarter([50, 0], [50, k], [k, 50], [0, 50]),
      quarter([0, 50], [-k, 50], [-50, k], [-50, 0]),
      quarter([-50, 0], [-50, -k], [-k, -50], [0, -50]),
      quarter([0, -50], [k, -50], [50, -k], [50, 0]),
    ];
    const found = traced("other1", { "10": circle });
    expect(Object.values(corners(found)).map(([x, y]) => [x, y])).toEqual([
      [-50, 0],
      [0, -50],
      [50, 0],
      [0, 50],
    ]);
    expect(found.corners.map(({ turn }) => turn)).toEqual([0, 0, 0, 0]);
  });

  it("turns by more than 18 degrees at a corner that has no name", () => {
    const roof = (rise: number) =>
      traced("other1", {
        "10": [
          [0, 0],
          [100, -rise],
          [200, 0],
          [200, 300],
          [0, 300],
        ],
      }).corners.length;
    // 2 atan(rise/100): 17.1 and 19.4 degrees.
    expect(roof(15)).toBe(4);
    expect(roof(17)).toBe(5);
  });

  it("is nothing where nothing of it is drawn, or it has too few corners", () => {
    const usual = shapeOf("front", "sideDart")?.corners ?? [];
    const none = { turns: 0, turnedOver: false, cost: Infinity, extent: "half", line: "stitch", centreOnFold: true };
    expect(traced("front", {})).toEqual({ ...none, corners: usual, sizes: [], problems: [] });
    expect(traced("front", { "16": FRONT })).toEqual({ ...none, corners: usual, sizes: [], problems: [] });
    const triangle = traced("front", {
      "10": [
        [0, 0],
        [200, 0],
        [0, 300],
      ],
    });
    expect(triangle).toEqual({
      ...none,
      corners: usual,
      sizes: [],
      problems: NAMES.map((corner) => ({ code: "own/corner-missing", corner, size: "10" })),
    });
    expect(traced("front", {}, { said: { turns: 3, turnedOver: true, line: "cutting", extent: "whole" } })).toEqual({
      ...none,
      turns: 3,
      turnedOver: true,
      line: "cutting",
      extent: "whole",
      corners: usual,
      sizes: [],
      problems: [],
    });
    // A piece of the dress is in no pattern.
    expect(traced("skirtFront", { "10": FRONT })).toMatchObject({
      corners: [],
      sizes: [],
      problems: [],
      cost: Infinity,
    });
    expect(likenessOf("skirtFront", { "10": FRONT })).toBe(Infinity);
    expect(likenessOf("front", {})).toBe(Infinity);
    // A line of two edges goes round nothing.
    const lens = [
      ...closedLine([
        [0, 0],
        [100, 0],
      ]),
    ];
    expect(traced("front", { "10": lens })).toMatchObject({ sizes: [], problems: [] });
  });

  it("is turned as is said, and no other way", () => {
    const found = traced("front", { "10": FRONT }, { said: { turns: 2 } });
    expect(found.turns).toBe(2);
    const over = traced("front", { "10": FRONT }, { said: { turnedOver: true } });
    expect(over.turnedOver).toBe(true);
    expect(traced("front", { "10": FRONT }, { said: { centreOnFold: false, line: "cutting" } })).toMatchObject({
      centreOnFold: false,
      line: "cutting",
    });
    // A strap stands upright, unless she lays it: of its ways the first.
    const strap: At[] = [
      [0, 0],
      [300, 0],
      [300, 40],
      [0, 40],
    ];
    expect(traced("strap", { "10": strap }, { style: "midriff" }).turns).toBe(1);
    expect(traced("strap", { "10": strap }, { style: "midriff", said: { turns: 0 } }).turns).toBe(0);
    expect(likenessOf("strap", { "10": strap }, { style: "midriff" })).toBeCloseTo(0, 9);
  });
});
