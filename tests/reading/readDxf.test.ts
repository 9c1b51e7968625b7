/** Files of DXF: places by hand or in closed form, curves held against independent libraries. */
import { Bezier } from "bezier-js";
import Parser, { type IEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { invariant } from "../../src/core/result";
import {
  cornersOf,
  cubicsOf,
  dxf,
  dxfText,
  lineEntity,
  pathsOf,
  type DxfParts,
  type Groups,
  type Pair,
} from "./readings";

const LINE = lineEntity("0", [1, 2], [3, 4]);
const INSERT = (block: string, [x, y]: Pair, more: Groups = [], layer = "0"): Groups => [
  [0, "INSERT"],
  [8, layer],
  [2, block],
  [10, x],
  [20, y],
  ...more,
];
const BLOCK = (name: string, entities: Groups, [x, y]: Pair = [0, 0]): Groups => [
  [0, "BLOCK"],
  [8, "0"],
  [2, name],
  [10, x],
  [20, y],
  ...entities,
  [0, "ENDBLK"],
];
const LAYER = (name: string, more: Groups): Groups => [[0, "LAYER"], [2, name], ...more];
const TEXT = (text: string): Groups => [
  [0, "TEXT"],
  [8, "1"],
  [10, 0],
  [20, 0],
  [40, 5],
  [1, text],
];
const UNITS = (number: number): Groups => [
  [9, "$INSUNITS"],
  [70, number],
];
const one = (entities: Groups, more: DxfParts = {}): string => pathsOf(dxf({ ...more, entities }))[0] ?? "";

/** Places along the cubics of a line. */
const along = (line: string): Pair[] =>
  cubicsOf(line).flatMap((points) => {
    const curve = new Bezier(points.map(([x, y]) => ({ x, y })));
    return Array.from({ length: 21 }, (_, i) => curve.get(i / 20)).map(({ x, y }): Pair => [x, y]);
  });
const offCircle = (line: string, [cx, cy]: Pair, radius: number): number =>
  Math.max(...along(line).map(([x, y]) => Math.abs(Math.hypot(x - cx, y - cy) - radius)));

describe("the length of a unit", () => {
  it.each([
    ["mm", { header: UNITS(4) }, { mm: 1, saidBy: "header" }],
    ["inches", { header: UNITS(1) }, { mm: 25.4, saidBy: "header" }],
    ["cm", { header: UNITS(5) }, { mm: 10, saidBy: "header" }],
    ["metres", { header: UNITS(6) }, { mm: 1000, saidBy: "header" }],
    ["none", { header: UNITS(0) }, null],
    ["nothing", {}, null],
    [
      "only that it measures in metres",
      {
        header: [
          [9, "$MEASUREMENT"],
          [70, 1],
        ] as Groups,
      },
      null,
    ],
    ["a writing, metric", { entities: [...LINE, ...TEXT("Units: METRIC")] }, { mm: 1, saidBy: "text" }],
    ["a writing, English", { entities: [...LINE, ...TEXT("UNITS: ENGLISH")] }, { mm: 25.4, saidBy: "text" }],
    ["both alike", { header: UNITS(4), entities: [...LINE, ...TEXT("Units: METRIC")] }, { mm: 1, saidBy: "header" }],
    ["both, and not alike", { header: UNITS(1), entities: [...LINE, ...TEXT("Units: METRIC")] }, null],
    ["writings that disagree", { entities: [...LINE, ...TEXT("Units: METRIC"), ...TEXT("Units: ENGLISH")] }, null],
  ] as const)("is read of %s", (_what, parts, unit) => {
    expect(dxf({ entities: LINE, ...parts }).unit).toEqual(unit);
  });
});

describe("single entities", () => {
  it("turns y downward", () => {
    expect(one(LINE)).toBe("M1 -2L3 -4");
  });

  it("reads a polyline of either kind, open and closed", () => {
    const light: Groups = [
      [0, "LWPOLYLINE"],
      [8, "0"],
      [90, 3],
      [70, 1],
      [10, 0],
      [20, 0],
      [10, 10],
      [20, 0],
      [10, 10],
      [20, 5],
    ];
    expect(one(light)).toBe("M0 0L10 0 10 -5Z");
    const vertex = ([x, y]: Pair, more: Groups = []): Groups => [[0, "VERTEX"], [8, "0"], [10, x], [20, y], ...more];
    const old: Groups = [
      [0, "POLYLINE"],
      [8, "0"],
      [66, 1],
      [70, 0],
      ...vertex([0, 0]),
      ...vertex([5, 5], [[70, 16]]),
      ...vertex([10, 0]),
      ...vertex([10, 5]),
      [0, "SEQEND"],
      [8, "0"],
    ];
    // The vertex of the frame of a spline is none of the line's.
    expect(one(old)).toBe("M0 0L10 0 10 -5");
    expect(pathsOf(dxf({ entities: [...old, ...LINE] }))).toHaveLength(2);
  });

  it.each([
    // A bulge of 1 is half a circle, against the clock; y up, from 0 0 to 10 0 it runs below.
    ["half a circle", 1, 5, [5, 0], Math.PI * 5],
    ["half a circle, with the clock", -1, 5, [5, 0], Math.PI * 5],
    // The tangent of an eighth of a turn's quarter: a quarter of a circle, about 5 5.
    ["a quarter", Math.tan(Math.PI / 8), Math.SQRT2 * 5, [5, -5], (Math.PI / 2) * Math.SQRT2 * 5],
    ["three quarters", Math.tan((3 * Math.PI) / 8), Math.SQRT2 * 5, [5, 5], (3 / 2) * Math.PI * Math.SQRT2 * 5],
  ] as const)("reads a bulge of %s", (_what, bulge, radius, centre, length) => {
    const line = one([
      [0, "LWPOLYLINE"],
      [8, "0"],
      [10, 0],
      [20, 0],
      [42, bulge],
      [10, 10],
      [20, 0],
    ]);
    expect(offCircle(line, centre, radius)).toBeLessThan(2e-4);
    const found = cubicsOf(line).reduce((sum, p) => sum + new Bezier(p.map(([x, y]) => ({ x, y }))).length(), 0);
    expect(found).toBeCloseTo(length, 2);
    expect(cornersOf(line).at(-1)).toEqual([10, 0]);
    const middle = along(line)[Math.floor(along(line).length / 2)];
    // Against the clock it bows to the right of its way: down on paper.
    expect(Math.sign(middle?.[1] ?? 0)).toBe(Math.sign(bulge));
  });

  it("reads the bulge of the way back", () => {
    const line = one([
      [0, "LWPOLYLINE"],
      [8, "0"],
      [70, 1],
      [10, 0],
      [20, 0],
      [10, 10],
      [20, 0],
      [42, 1],
    ]);
    expect(line.endsWith("Z")).toBe(true);
    expect(cornersOf(line).at(-1)).toEqual([0, 0]);
    expect(along(line).some(([x, y]) => Math.abs(x - 5) < 0.01 && Math.abs(y + 5) < 0.01)).toBe(true);
  });

  it("reads circles and arcs", () => {
    const round: Groups = [
      [8, "0"],
      [10, 10],
      [20, 20],
      [40, 50],
    ];
    expect(offCircle(one([[0, "CIRCLE"], ...round]), [10, -20], 50)).toBeLessThan(5e-4);
    const arc = one([[0, "ARC"], ...round, [50, 350], [51, 80]]);
    expect(offCircle(arc, [10, -20], 50)).toBeLessThan(5e-4);
    const [start, end] = [cornersOf(arc)[0], cornersOf(arc).at(-1)];
    const at = (degrees: number): Pair => [
      10 + 50 * Math.cos((degrees * Math.PI) / 180),
      -20 - 50 * Math.sin((degrees * Math.PI) / 180),
    ];
    expect(start?.[0]).toBeCloseTo(at(350)[0], 3);
    expect(start?.[1]).toBeCloseTo(at(350)[1], 3);
    expect(end?.[0]).toBeCloseTo(at(80)[0], 3);
    expect(end?.[1]).toBeCloseTo(at(80)[1], 3);
  });

  it("reads ellipses, whole and in part", () => {
    const turned: Groups = [
      [0, "ELLIPSE"],
      [8, "0"],
      [10, 5],
      [20, 5],
      // As long as 50, up; half as wide.
      [11, 0],
      [21, 50],
      [40, 0.5],
    ];
    const off = (line: string): number =>
      Math.max(...along(line).map(([x, y]) => Math.abs(Math.hypot((x - 5) / 25, (y + 5) / 50) - 1)));
    const whole = one([...turned, [41, 0], [42, 6.283185307]]);
    expect(off(whole)).toBeLessThan(1e-5);
    expect(whole.endsWith("Z")).toBe(true);
    // The first quarter goes from the top against the clock: to the left.
    const quarter = one([...turned, [41, 0], [42, Math.PI / 2]]);
    expect(cornersOf(quarter)[0]).toEqual([5, -55]);
    expect(cornersOf(quarter).at(-1)).toEqual([-20, -5]);
    expect(quarter.endsWith("Z")).toBe(false);
  });

  it("reads points and writing", () => {
    const drawing = dxf({
      entities: [
        [0, "POINT"],
        [8, "4"],
        [10, 5],
        [20, 6],
        [0, "TEXT"],
        [8, "1"],
        [10, 1],
        [20, 1],
        [11, 3],
        [21, 4],
        [72, 1],
        [1, "90%%d, 5%%c \\U+00e9t\\U+00e9"],
        [0, "MTEXT"],
        [8, "1"],
        [10, 7],
        [20, 8],
        [3, "{\\fArial|b0|i0;\\H2.5x;Piece Name:}\\P"],
        [1, "Fr\\{on\\}t \\S1/2;"],
      ],
    });
    expect(drawing.points).toEqual([{ x: 5, y: -6, layer: "4", group: "" }]);
    expect(drawing.writings).toEqual([
      { x: 3, y: -4, text: "90°, 5⌀ été", layer: "1", group: "" },
      { x: 7, y: -8, text: "Piece Name: Fr{on}t 1/2", layer: "1", group: "" },
    ]);
  });

  it("reads what lies on a plane seen from behind, mirrored", () => {
    const behind: Groups = [[230, -1]];
    expect(
      offCircle(one([[0, "CIRCLE"], [8, "0"], [10, 10], [20, 20], [40, 5], ...behind]), [-10, -20], 5),
    ).toBeLessThan(5e-4);
    expect(one([[0, "LWPOLYLINE"], [8, "0"], [10, 1], [20, 2], [10, 3], [20, 5], ...behind])).toBe("M-1 -2L-3 -5");
    // Lines and splines have no plane of their own.
    expect(one(lineEntity("0", [1, 2], [3, 4], behind))).toBe("M1 -2L3 -4");
  });

  it("leaves hatching, dimensions, layouts and what it does not know", () => {
    const drawing = dxf({
      entities: [
        ...LINE,
        ...lineEntity("0", [0, 0], [9, 9], [[67, 1]]),
        [0, "HATCH"],
        [8, "0"],
        [10, 0],
        [20, 0],
        [0, "DIMENSION"],
        [8, "0"],
        [0, "SOMETHING"],
        [8, "0"],
      ],
    });
    expect(pathsOf(drawing)).toEqual(["M1 -2L3 -4"]);
  });
});

describe("splines", () => {
  const spline = (degree: number, knots: readonly number[], points: readonly Pair[], more: Groups = []): string =>
    one([
      [0, "SPLINE"],
      [8, "0"],
      [70, 8],
      [71, degree],
      ...knots.map((knot) => [40, knot] as const),
      ...points.flatMap(([x, y]): Groups => [
        [10, x],
        [20, y],
      ]),
      ...more,
    ]);

  it("of one stretch is its Bézier curve", () => {
    expect(
      spline(
        3,
        [0, 0, 0, 0, 1, 1, 1, 1],
        [
          [0, 0],
          [1, 2],
          [3, 2],
          [4, 0],
        ],
      ),
    ).toBe("M0 0C1 -2 3 -2 4 0");
  });

  it("of degree 1 is straight, of degree 2 a raised cubic", () => {
    const corner: Pair[] = [
      [0, 0],
      [3, 3],
      [6, 0],
    ];
    expect(spline(1, [0, 0, 1, 2, 2], corner)).toBe("M0 0L3 -3 6 0");
    expect(spline(2, [0, 0, 0, 1, 1, 1], corner)).toBe("M0 0C2 -2 4 -2 6 0");
  });

  // The value of a spline by its defining recursion.
  const basis = (i: number, p: number, t: number, knots: readonly number[]): number => {
    const [a = 0, b = 0, c = 0, d = 0] = [knots[i], knots[i + 1], knots[i + p], knots[i + p + 1]];
    if (p === 0) return t >= a && t < b ? 1 : 0;
    const left = c > a ? ((t - a) / (c - a)) * basis(i, p - 1, t, knots) : 0;
    const right = d > b ? ((d - t) / (d - b)) * basis(i + 1, p - 1, t, knots) : 0;
    return left + right;
  };
  const value = (
    points: readonly Pair[],
    weights: readonly number[],
    p: number,
    t: number,
    knots: readonly number[],
  ): Pair => {
    const shares = points.map((_, i) => basis(i, p, t, knots) * (weights[i] ?? 1));
    const all = shares.reduce((sum, share) => sum + share, 0);
    const of = (axis: 0 | 1): number => points.reduce((sum, point, i) => sum + point[axis] * (shares[i] ?? 0), 0) / all;
    return [of(0), -of(1)];
  };
  const POINTS: Pair[] = [
    [0, 0],
    [10, 30],
    [40, 35],
    [60, 5],
    [90, 10],
    [100, 60],
    [140, 20],
  ];

  it.each([
    ["uneven knots", 3, [0, 0, 0, 0, 1, 3, 3.5, 7, 7, 7, 7], []],
    ["a double knot", 3, [0, 0, 0, 0, 2, 2, 5, 6, 6, 6, 6], []],
    ["knots that do not begin with its end", 3, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], []],
    ["degree 2", 2, [0, 0, 0, 1, 2, 3, 4, 5, 5, 5], []],
    ["degree 5", 5, [0, 0, 0, 0, 0, 0, 2, 5, 5, 5, 5, 5, 5], []],
    ["weights", 3, [0, 0, 0, 0, 1, 3, 3.5, 7, 7, 7, 7], [1, 2, 0.5, 1, 3, 1, 1]],
    ["weights all alike", 3, [0, 0, 0, 0, 1, 3, 3.5, 7, 7, 7, 7], [2, 2, 2, 2, 2, 2, 2]],
  ] as const)("of %s goes where its recursion says", (_what, degree, knots, weights) => {
    const line = spline(
      degree,
      knots,
      POINTS,
      weights.map((weight) => [41, weight] as const),
    );
    const curves = cubicsOf(line).map((points) => new Bezier(points.map(([x, y]) => ({ x, y }))));
    // Chords so short that they leave the curve by less than a thousandth.
    const places = curves.flatMap((curve) => Array.from({ length: 501 }, (_, i) => curve.get(i / 500)));
    const offChords = (x: number, y: number): number =>
      places.slice(1).reduce((least, q, i) => {
        const p = places[i] ?? q;
        const [u, v] = [q.x - p.x, q.y - p.y];
        const share = Math.max(0, Math.min(1, ((x - p.x) * u + (y - p.y) * v) / (u * u + v * v || 1)));
        return Math.min(least, Math.hypot(p.x + share * u - x, p.y + share * v - y));
      }, Infinity);
    const [from = 0, to = 0] = [knots[degree], knots[POINTS.length]];
    const off = Array.from({ length: 60 }, (_, i) => from + ((to - from) * (i + 0.5)) / 60).map((t) => {
      const [x, y] = value(POINTS, weights, degree, t, knots);
      return offChords(x, y);
    });
    expect(Math.max(...off)).toBeLessThan(1e-3);
    if (weights.length === 0 && degree <= 3)
      expect(curves).toHaveLength(new Set(knots.slice(degree, POINTS.length + 1)).size - 1);
  });

  it("with weights is a circle where it is said to be one", () => {
    const half = Math.SQRT1_2;
    const line = spline(
      2,
      [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
      [
        [100, 0],
        [100, 100],
        [0, 100],
        [-100, 100],
        [-100, 0],
        [-100, -100],
        [0, -100],
        [100, -100],
        [100, 0],
      ],
      [1, half, 1, half, 1, half, 1, half, 1].map((weight) => [41, weight] as const),
    );
    expect(offCircle(line, [0, 0], 100)).toBeLessThan(5e-4);
  });

  it("through points goes through them, smoothly", () => {
    const through: Pair[] = [
      [0, 0],
      [10, 5],
      [30, -5],
      [60, 0],
    ];
    const line = one([
      [0, "SPLINE"],
      [8, "0"],
      [70, 8],
      [71, 3],
      ...through.flatMap(([x, y]): Groups => [
        [11, x],
        [21, y],
      ]),
    ]);
    expect(cornersOf(line)).toEqual(through.map(([x, y]) => [x, -y + 0]));
    const cubics = cubicsOf(line);
    const slope = (p: Pair | undefined, q: Pair | undefined): number =>
      Math.atan2((q?.[1] ?? NaN) - (p?.[1] ?? NaN), (q?.[0] ?? NaN) - (p?.[0] ?? NaN));
    for (let i = 1; i < cubics.length; i += 1)
      expect(slope(cubics[i - 1]?.[2], cubics[i - 1]?.[3])).toBeCloseTo(slope(cubics[i]?.[0], cubics[i]?.[1]), 3);
  });

  it("through points of a circle, closed, is nearly round", () => {
    const line = one([
      [0, "SPLINE"],
      [8, "0"],
      [70, 9],
      [71, 3],
      ...Array.from({ length: 12 }, (_, i): Groups => {
        const angle = (i * Math.PI) / 6;
        return [
          [11, 100 * Math.cos(angle)],
          [21, 100 * Math.sin(angle)],
        ];
      }).flat(),
    ]);
    expect(line.endsWith("Z")).toBe(true);
    // A periodic cubic spline through n points of a circle leaves it by some (2π/n)^4 / 384 of its radius.
    expect(offCircle(line, [0, 0], 100)).toBeLessThan(0.06);
  });
});

describe("blocks", () => {
  const SQUARE: Groups = [
    [0, "LWPOLYLINE"],
    [8, "0"],
    [70, 1],
    [10, 0],
    [20, 0],
    [10, 2],
    [20, 0],
    [10, 2],
    [20, 1],
  ];
  const blocks = BLOCK("Front", SQUARE);

  it.each([
    ["moved", [], "M10 -20L12 -20 12 -21Z"],
    [
      "scaled",
      [
        [41, 2],
        [42, 3],
      ],
      "M10 -20L14 -20 14 -23Z",
    ],
    ["mirrored", [[41, -1]], "M10 -20L8 -20 8 -21Z"],
    // A quarter turn against the clock: x goes up.
    ["turned", [[50, 90]], "M10 -20L10 -22 9 -22Z"],
    [
      "mirrored, then turned",
      [
        [41, -1],
        [50, 90],
      ],
      "M10 -20L10 -18 9 -18Z",
    ],
    ["from behind", [[230, -1]], "M-10 -20L-12 -20 -12 -21Z"],
  ] as const)("%s", (_what, more, expected) => {
    expect(one(INSERT("Front", [10, 20], more), { blocks })).toBe(expected);
  });

  it("in columns and rows, turned with the block", () => {
    const places = pathsOf(
      dxf({
        blocks,
        entities: INSERT(
          "FRONT",
          [0, 0],
          [
            [70, 2],
            [71, 2],
            [44, 10],
            [45, 100],
            [50, 90],
          ],
        ),
      }),
    ).map((path) => cornersOf(path)[0]);
    expect(places).toEqual([
      [0, 0],
      [0, -10],
      [-100, 0],
      [-100, -10],
    ]);
  });

  it("in blocks, from their base points", () => {
    const nested = [
      ...BLOCK("inner", lineEntity("0", [5, 5], [6, 5]), [5, 5]),
      ...BLOCK("outer", INSERT("inner", [1, 1])),
    ];
    const drawing = dxf({ blocks: nested, entities: INSERT("outer", [10, 10], [[41, 2]]) });
    expect(pathsOf(drawing)).toEqual(["M12 -11L14 -11"]);
    expect(drawing.lines[0]?.look.group).toBe("outer / inner");
  });

  it("are drawn once where nothing inserts them", () => {
    const two = [...BLOCK("A", SQUARE), ...BLOCK("*Model_Space", LINE), ...BLOCK("B", LINE)];
    const drawing = dxf({ blocks: two, entities: TEXT("Style Name: x") });
    expect(drawing.lines.map(({ look }) => look.group)).toEqual(["A", "B"]);
  });

  it("give layer, colour and line type to what has none", () => {
    const inside: Groups = [
      ...lineEntity(
        "0",
        [0, 0],
        [1, 0],
        [
          [62, 0],
          [6, "BYBLOCK"],
          [370, -2],
        ],
      ),
      ...lineEntity("14", [0, 0], [2, 0], [[62, 5]]),
      ...lineEntity("14", [0, 0], [3, 0]),
    ];
    const drawing = dxf({
      header: UNITS(4),
      tables: [
        ...LAYER("14", [
          [62, 3],
          [6, "DASHED"],
          [370, 35],
        ]),
        ...LAYER("Size 10", [
          [62, 1],
          [6, "Continuous"],
        ]),
      ],
      blocks: BLOCK("Back", inside),
      entities: INSERT(
        "Back",
        [0, 0],
        [
          [62, 6],
          [6, "HIDDEN"],
          [370, 50],
        ],
        "Size 10",
      ),
    });
    expect(drawing.lines.map(({ look: { layer, colour, dash, width } }) => [layer, colour, dash, width])).toEqual([
      ["Size 10", "#ff00ff", "HIDDEN", 0.5],
      ["14", "#0000ff", "DASHED", 0.35],
      ["14", "#00ff00", "DASHED", 0.35],
    ]);
  });
});

describe("layers", () => {
  it("that are off or frozen are read, and listed", () => {
    const drawing = dxf({
      tables: [
        ...LAYER("ten", [[62, -1]]),
        ...LAYER("Twelve", [
          [70, 1],
          [62, 2],
        ]),
        ...LAYER("fourteen", [[62, 3]]),
      ],
      entities: [
        ...lineEntity("ten", [0, 0], [1, 0]),
        ...lineEntity("TWELVE", [0, 0], [2, 0]),
        ...lineEntity("fourteen", [0, 0], [3, 0]),
        ...lineEntity("fourteen", [0, 0], [4, 0], [[60, 1]]),
      ],
    });
    expect(drawing.lines.map(({ look }) => [look.layer, look.colour])).toEqual([
      ["ten", "#ff0000"],
      ["Twelve", "#ffff00"],
      ["fourteen", "#00ff00"],
      ["fourteen (off)", "#00ff00"],
    ]);
    expect(drawing.hiddenLayers).toEqual(["ten", "Twelve", "fourteen (off)"]);
  });

  it("hide a block that is inserted on a frozen one, and not on one that is only off", () => {
    const hidden = (more: Groups): readonly string[] =>
      dxf({
        tables: LAYER("kept", more),
        blocks: BLOCK("A", lineEntity("1", [0, 0], [1, 0])),
        entities: INSERT("A", [0, 0], [], "kept"),
      }).hiddenLayers;
    expect(hidden([[70, 1]])).toEqual(["1"]);
    expect(hidden([[62, -7]])).toEqual([]);
  });

  it("have true colours too", () => {
    expect(dxf({ entities: lineEntity("0", [0, 0], [1, 0], [[420, 0x123456]]) }).lines[0]?.look.colour).toBe("#123456");
  });
});

/** A line as dxf-parser gives it. */
interface ParsedLine extends IEntity {
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
}

describe("an independent reader", () => {
  it("finds the same places and colours", () => {
    const parts = {
      header: UNITS(4),
      entities: [1, 2, 3, 4, 5, 6, 10, 30, 50, 90, 130, 170, 210].flatMap((number) =>
        lineEntity("0", [number, 0], [2 * number, 1], [[62, number]]),
      ),
    };
    const parsed = invariant(new Parser().parseSync(dxfText(parts)), "a drawing");
    const expected = (parsed.entities as ParsedLine[]).map(({ vertices = [], color }) => [
      vertices.map(({ x, y }) => [x, -y + 0]),
      `#${color.toString(16).padStart(6, "0")}`,
    ]);
    const found = dxf(parts).lines.flatMap(({ look, paths }) => paths.map((path) => [cornersOf(path), look.colour]));
    const byPlace = (all: readonly unknown[]): string[] => all.map((one) => JSON.stringify(one)).toSorted();
    expect(byPlace(found)).toEqual(byPlace(expected));
  });
});
