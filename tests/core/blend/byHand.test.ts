/** A nest of two or three sizes of one small piece, blended by hand. */
import { describe, expect, it } from "vitest";
import { blendPiece, levelSizes, neighbours } from "../../../src/core/blend/blendPiece";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import {
  pointOf,
  type Edge,
  type LevelName,
  type NamedPoint,
  type Piece,
  type PointName,
} from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";

type At = readonly [x: number, y: number];
interface Legs {
  readonly points: readonly (readonly [PointName, At, LevelName, (NamedPoint["towards"] | undefined)?])[];
  /** From, to, handles. */
  readonly edges: readonly (readonly [PointName, PointName, Edge["seam"], (readonly [At, At])?])[];
}

const at = ([x, y]: At): PiecePoint => piecePoint(x, y);

function pieceOf({ points, edges }: Legs): Piece {
  return {
    name: "back",
    points: Object.fromEntries(
      points.map(([name, place, level, towards]) => [
        name,
        towards === undefined ? { at: at(place), level } : { at: at(place), level, towards },
      ]),
    ),
    edges: edges.map(([from, to, seam, handles]): Edge => {
      const curve = handles === undefined ? null : { c1: at(handles[0]), c2: at(handles[1]) };
      return { from, to, seam, curve, mouthOf: null };
    }),
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

/** The piece with all that is drawn moved across. */
const across = (by: number, legs: Legs): Legs => ({
  points: legs.points.map(([name, [x, y], level, towards]) => [name, [x + by, y], level, towards]),
  edges: legs.edges.map(([from, to, seam, handles]) =>
    handles === undefined
      ? [from, to, seam]
      : [
          from,
          to,
          seam,
          [
            [handles[0][0] + by, handles[0][1]],
            [handles[1][0] + by, handles[1][1]],
          ],
        ],
  ),
});

const curveOf = (piece: Piece, from: PointName): NonNullable<Edge["curve"]> =>
  invariant(piece.edges.find((edge) => edge.from === from)?.curve, from);

/** Places as x, y, x, y …, near to what they should be. */
function expectClose(places: readonly PiecePoint[], wanted: readonly At[]): void {
  expect(places).toHaveLength(wanted.length);
  places.forEach(({ x, y }, i) => {
    expect(x).toBeCloseTo(wanted[i]?.[0] ?? Number.NaN, 9);
    expect(y).toBeCloseTo(wanted[i]?.[1] ?? Number.NaN, 9);
  });
}

/** Points of a cubic, and both parts of one, by halving and mixing: de Casteljau's own construction. */
function cut(cubic: readonly At[], share: number): { readonly first: readonly At[]; readonly rest: readonly At[] } {
  const first: At[] = [];
  const rest: At[] = [];
  let row = [...cubic];
  while (row.length > 0) {
    first.push(row.at(0) ?? [0, 0]);
    rest.unshift(row.at(-1) ?? [0, 0]);
    row = row.slice(1).map(([x, y], i): At => {
      const [fromX, fromY] = row[i] ?? [0, 0];
      return [fromX + (x - fromX) * share, fromY + (y - fromY) * share];
    });
  }
  return { first, rest };
}

/** The side from underarm to waist as one cubic, and a straight rest. */
const SIDE: readonly At[] = [
  [200, 0],
  [190, 40],
  [170, 80],
  [180, 120],
];
const REST: Legs["edges"] = [
  ["sideWaist", "centreWaist", "waist"],
  ["centreWaist", "underarm", "centre"],
];
const ENDS: Legs["points"] = [
  ["underarm", SIDE[0] ?? [0, 0], "bust"],
  ["sideWaist", SIDE[3] ?? [0, 0], "waist"],
  ["centreWaist", [0, 120], "waist"],
];
const whole: Legs = {
  points: ENDS,
  edges: [["underarm", "sideWaist", "side", [SIDE[1] ?? [0, 0], SIDE[2] ?? [0, 0]]], ...REST],
};
/** A place at parameter t of a cubic between two levels takes 3t² − 2t³ of the second. */
const takes = (t: number): number => 3 * t ** 2 - 2 * t ** 3;

/** The same side parted at two parameters by bends that take their share of the waist. */
function partedAt(t: number, u: number): Legs {
  const { first, rest } = cut(SIDE, t);
  const { first: middle, rest: last } = cut(rest, (u - t) / (1 - t));
  const handles = (cubic: readonly At[]): readonly [At, At] => [cubic[1] ?? [0, 0], cubic[2] ?? [0, 0]];
  const towards = (share: number): NamedPoint["towards"] => ({ level: "waist", share: takes(share) });
  return {
    points: [
      ...ENDS,
      ["bend000", middle[0] ?? [0, 0], "bust", towards(t)],
      ["bend001", last[0] ?? [0, 0], "bust", towards(u)],
    ],
    edges: [
      ["underarm", "bend000", "side", handles(first)],
      ["bend000", "bend001", "side", handles(middle)],
      ["bend001", "sideWaist", "side", handles(last)],
      ...REST,
    ],
  };
}

const turnedRound = ({ points, edges }: Legs): Legs => ({
  points,
  edges: edges
    .toReversed()
    .map(([from, to, seam, handles]) =>
      handles === undefined ? [to, from, seam] : [to, from, seam, [handles[1], handles[0]]],
    ),
});

describe("a piece between its sizes", () => {
  const nest = [0, 8, 20].map((by) => pieceOf(across(by, whole)));

  it("takes each point and its handle from the size of its level, heights from the base size", () => {
    // Half-way from the second size to the third is 14 across, a quarter past the first 2.
    const blended = blendPiece(nest, levelSizes(0.25, 1.5, 0));
    expectClose(
      [pointOf(blended, "underarm"), pointOf(blended, "sideWaist"), pointOf(blended, "centreWaist")],
      [
        [202, 0],
        [194, 120],
        [14, 120],
      ],
    );
    const { c1, c2 } = curveOf(blended, "underarm");
    expectClose(
      [c1, c2],
      [
        [192, 40],
        [184, 80],
      ],
    );
    expect(blended.edges.slice(1)).toEqual(nest[0]?.edges.slice(1));
  });

  it("goes on past the last size as between the two last, and before the first as between the two first", () => {
    // 20 + 12 ∕ 2, and 8 × −1.
    expect(pointOf(blendPiece(nest, levelSizes(0, 2.5, 0)), "sideWaist").x).toBeCloseTo(206, 12);
    expect(pointOf(blendPiece(nest, levelSizes(0, -1, 0)), "sideWaist").x).toBeCloseTo(172, 12);
  });

  it("takes heights from between two base sizes", () => {
    const [low, high] = [0, 10].map((longer) =>
      pieceOf({
        points: whole.points.map(([name, [x, y], level]) => [name, [x, y * (1 + longer / 100)], level]),
        edges: whole.edges,
      }),
    );
    const blended = blendPiece([invariant(low, "size"), invariant(high, "size")], levelSizes(0.3, 0, 1));
    // 120 and 132: 3.6 of the 12 between.
    expect(pointOf(blended, "sideWaist")).toEqual(piecePoint(180, 123.6));
  });

  it("is the one size of a nest of one, whatever is asked for", () => {
    const [only] = nest;
    expect(blendPiece([invariant(only, "size")], levelSizes(0.5, 2, -1))).toEqual(only);
  });

  it("of a nest of none is a bug of ours", () => {
    expect(() => blendPiece([], levelSizes(0, 0, 0))).toThrow("missing: a nest with a size");
  });

  it("gives one seam alone where nothing else is asked: its edges and the points on them", () => {
    const sizes = levelSizes(0.25, 1.5, 0);
    const all = blendPiece(nest, sizes);
    const alone = blendPiece(nest, sizes, "side");
    expect(alone.edges).toEqual(all.edges.slice(0, 1));
    expect(alone.points).toEqual({ underarm: all.points.underarm, sideWaist: all.points.sideWaist });
    expect(blendPiece(nest, sizes, "waist").edges).toEqual(all.edges.slice(1, 2));
    expect(blendPiece(nest, sizes, "hem")).toEqual({ ...all, points: {}, edges: [] });
  });

  it("has a size for each level: the base size at all but waist and hip", () => {
    expect(levelSizes(1, 2, 3)).toEqual({
      neck: 1,
      shoulder: 1,
      underarm: 1,
      bust: 1,
      underBust: 1,
      waist: 2,
      hip: 3,
    });
  });

  it("lies between two neighbours, the last two at the end", () => {
    expect(neighbours(1, 3)).toEqual({ lower: 1, share: 0 });
    expect(neighbours(2, 3)).toEqual({ lower: 1, share: 1 });
    expect(neighbours(4, 3)).toEqual({ lower: 1, share: 3 });
    expect(neighbours(-2, 3)).toEqual({ lower: 0, share: -2 });
    expect(neighbours(0.5, 1)).toEqual({ lower: 0, share: 0.5 });
    expect(neighbours(3, 0)).toEqual({ lower: 0, share: 3 });
  });
});

describe("a seam parted by bends", () => {
  const sizes = levelSizes(0.5, 1.75, 0);
  const blendOf = (legs: Legs): Piece =>
    blendPiece(
      [0, 8, 20].map((by) => pieceOf(across(by, legs))),
      sizes,
    );
  const line = (() => {
    const blended = blendOf(whole);
    const { c1, c2 } = curveOf(blended, "underarm");
    return [pointOf(blended, "underarm"), c1, c2, pointOf(blended, "sideWaist")].map(({ x, y }): At => [x, y]);
  })();

  it.each([
    [0.3, 0.7],
    [0.2, 0.35],
    [0.6, 0.9],
  ])("at %s and %s keeps the line of one that is not, whichever way it runs", (t, u) => {
    const { first, rest } = cut(line, t);
    const { first: middle, rest: last } = cut(rest, (u - t) / (1 - t));
    const parts = [first, middle, last];
    const legs = partedAt(t, u);
    const down = blendOf(legs);
    for (const [i, from] of (["underarm", "bend000", "bend001"] as const).entries()) {
      const { c1, c2 } = curveOf(down, from);
      expectClose([pointOf(down, from), c1, c2], parts[i]?.slice(0, 3) ?? []);
    }
    const up = blendOf(turnedRound(legs));
    for (const [i, from] of (["bend000", "bend001", "sideWaist"] as const).entries()) {
      const { c1, c2 } = curveOf(up, from);
      expectClose([pointOf(up, from), c1, c2], parts[i]?.toReversed().slice(0, 3) ?? []);
    }
  });

  it("by a bend that goes with other levels has each handle go with its point", () => {
    // The waist is 17 across (8 + 0.75 · 12), the bust 4, the hip none.
    const { points, edges: smooth } = partedAt(0.3, 0.7);
    // With a corner at each bend, so that nothing is made smooth there.
    const edges = smooth.map((edge): Legs["edges"][number] => {
      const [from, to, seam, handles] = edge;
      if (handles === undefined || !from.startsWith("bend")) return edge;
      const [[x, y], c2] = handles;
      return [from, to, seam, [[x + 9, y], c2]];
    });
    const other = blendOf({
      points: points.map(([name, place, level, towards]) =>
        name === "bend001" ? [name, place, "waist", { level: "hip", share: 0.25 }] : [name, place, level, towards],
      ),
      edges,
    });
    const before = pieceOf({ points, edges });
    const moved = (from: PointName): readonly number[] => {
      const [own, was] = [curveOf(other, from), curveOf(before, from)];
      return [own.c1.x - was.c1.x, own.c2.x - was.c2.x];
    };
    const [bend0, bend1] = [4 + (17 - 4) * takes(0.3), 17 + (0 - 17) * 0.25];
    expect(moved("bend000")[0]).toBeCloseTo(bend0, 9);
    expect(moved("bend000")[1]).toBeCloseTo(bend1, 9);
    // Back from the bend to the waist: a quarter is taken at t = 1∕2 − sin 10°, and a part of t to 0 has its first control at
    // w − w′ t ∕ 3 with w′ = 6 t (1 − t), and its second at 0, the waist's own.
    const t = 1 / 2 - Math.sin(Math.PI / 18);
    expect(takes(t)).toBeCloseTo(0.25, 12);
    expect(moved("bend001")[0]).toBeCloseTo(17 - 17 * (0.25 - 2 * t * t * (1 - t)), 9);
    expect(moved("bend001")[1]).toBeCloseTo(17, 9);

    // To a corner of a third level: each its own.
    const third = blendOf({
      points: points.map(([name, place, level, towards]) =>
        name === "sideWaist" ? ["sideWaist", place, "hip"] : [name, place, level, towards],
      ),
      edges,
    });
    const [own, was] = [curveOf(third, "bend001"), curveOf(before, "bend001")];
    expect(own.c1.x - was.c1.x).toBeCloseTo(4 + (17 - 4) * takes(0.7), 9);
    expect(own.c2.x - was.c2.x).toBeCloseTo(0, 9);
  });
});

describe("a line that runs smooth through a bend in every size", () => {
  /** The bend's handles stand upright, of lengths that differ; its share of the waist is a half. */
  const size = (x: number, handles: readonly [above: number, below: number], turned: number, from: number): Piece => {
    const bend: At = [x, 50];
    const edges: Legs["edges"] = [
      [
        "underarm",
        "bend000",
        "side",
        [
          [x, 10],
          [x, 50 - handles[0]],
        ],
      ],
      [
        "bend000",
        "sideWaist",
        "side",
        [
          [x + handles[1] * Math.sin(turned), 50 + handles[1] * Math.cos(turned)],
          [x, 95],
        ],
      ],
      ...REST,
    ];
    return pieceOf({
      points: [
        ["underarm", [x, 0], "bust"],
        ["bend000", bend, "bust", { level: "waist", share: 0.5 }],
        ["sideWaist", [x, 100], "waist"],
        ["centreWaist", [0, 100], "waist"],
      ],
      edges: [...edges.slice(from), ...edges.slice(0, from)],
    });
  };
  const nest = (turned: number, from = 0): readonly Piece[] => [
    size(110, [20, 30], turned, from),
    size(120, [10, 10], 0, from),
  ];
  const AT: At = [115, 50];
  // Bust of the first, waist of the second: the bend goes half of 10 across; the handle before it a quarter, the one behind it
  // three quarters, as a cubic from level to level takes them: (−2.5, −20) and (2.5, 30) from the bend.
  const [before, behind] = [Math.hypot(2.5, 20), Math.hypot(2.5, 30)];
  const mean = (Math.atan2(2.5, 20) + Math.atan2(2.5, 30)) / 2;

  it.each([0, 1, 2, 3])(
    "does so between sizes: both handles turned by half of what is missing (the ring from edge %d)",
    (from) => {
      const blended = blendPiece(nest(0, from), levelSizes(0, 1, 0));
      expectClose(
        [pointOf(blended, "bend000"), curveOf(blended, "underarm").c2, curveOf(blended, "bend000").c1],
        [
          AT,
          [115 - before * Math.sin(mean), 50 - before * Math.cos(mean)],
          [115 + behind * Math.sin(mean), 50 + behind * Math.cos(mean)],
        ],
      );
      // The other handles have nothing to do with it.
      expectClose(
        [curveOf(blended, "underarm").c1, curveOf(blended, "bend000").c2],
        [
          [110, 10],
          [120, 95],
        ],
      );
    },
  );

  it("is smooth still where a size turns by less than half a degree, and is left where one turns by more", () => {
    const handles = (turned: number): readonly PiecePoint[] => {
      const blended = blendPiece(nest(turned), levelSizes(0, 1, 0));
      return [curveOf(blended, "underarm").c2, curveOf(blended, "bend000").c1];
    };
    const off = ([c2, c1]: readonly PiecePoint[]): number =>
      Math.atan2(115 - (c2?.x ?? 0), 50 - (c2?.y ?? 0)) - Math.atan2((c1?.x ?? 0) - 115, (c1?.y ?? 0) - 50);
    expect(off(handles(0.0089))).toBeCloseTo(0, 9);
    expect(off(handles(-0.0089))).toBeCloseTo(0, 9);
    // Left: the handle behind lies where the two sizes put it, a quarter of the first's and three of the second's across.
    for (const turned of [0.0091, -0.0091])
      expectClose(handles(turned), [
        [112.5, 30],
        [110 + 30 * Math.sin(turned) + 0.75 * (10 - 30 * Math.sin(turned)), 50 + 30 * Math.cos(turned)],
      ]);
  });

  it("is left where a straight edge comes to the bend, and at a corner that is none", () => {
    const [low, high] = nest(0);
    const straightened = [low, high].map((piece) => {
      const { edges, ...rest } = invariant(piece, "size");
      return { ...rest, edges: edges.with(0, { ...invariant(edges[0], "edge"), curve: null }) };
    });
    const blended = blendPiece(straightened, levelSizes(0, 1, 0));
    expectClose([curveOf(blended, "bend000").c1], [[117.5, 80]]);
    expect(blended.edges[0]?.curve).toBeNull();
    const cornered = [low, high].map((piece): Piece => {
      const { points, edges, ...rest } = invariant(piece, "size");
      const { bend000, ...others } = points;
      return {
        ...rest,
        points: { ...others, sideBust: invariant(bend000, "bend") },
        edges: edges.map((edge) => ({
          ...edge,
          from: edge.from === "bend000" ? "sideBust" : edge.from,
          to: edge.to === "bend000" ? "sideBust" : edge.to,
        })),
      };
    });
    const corner = blendPiece(cornered, levelSizes(0, 1, 0));
    expectClose(
      [curveOf(corner, "underarm").c2, curveOf(corner, "sideBust").c1],
      [
        [112.5, 30],
        [117.5, 80],
      ],
    );
  });

  it("is left where it bends in the blend no more than in some size", () => {
    // Half a size more at the waist than at the bust bends it by half as much: atan(2.5∕40)… of handles 1.25 across.
    const own = Math.atan2(1.25, 20) - Math.atan2(1.25, 30);
    expect(own).toBeGreaterThan(0.0091);
    const blended = blendPiece(nest(0), levelSizes(0, 0.2, 0));
    // A fifth: 0.5 across, 0.025 and 0.0167 radians; turned straight too, for no size turns at all.
    const { c2 } = curveOf(blended, "underarm");
    const { c1 } = curveOf(blended, "bend000");
    expect(Math.atan2(111 - c2.x, 50 - c2.y)).toBeCloseTo(Math.atan2(c1.x - 111, c1.y - 50), 9);
    // Its sizes turned by 0.0089 the other way leave room for as much: 0.005 of handles 0.3 across is within it.
    const turned = 0.0089;
    const leaning = blendPiece(
      [size(110, [20, 30], turned, 0), size(120, [10, 10], turned, 0)],
      levelSizes(0, 0.02, 0),
    );
    expectClose([curveOf(leaning, "underarm").c2], [[110 + 0.25 * 0.2, 30]]);
  });
});

describe("what a pattern was drawn with", () => {
  const turns: Piece = {
    ...pieceOf(whole),
    drawnTurns: { sideWaist: 80, centreWaist: 90, bustPoint: 5 },
    darts: [
      {
        name: "sideDart",
        seam: "side",
        inner: "underarm",
        outer: "sideWaist",
        apex: "bustPoint",
        aimsAt: null,
        drawnTurn: 4,
        drawnLegs: 1,
      },
      { name: "waistDart", seam: "waist", inner: "underarm", outer: "sideWaist", apex: "bustPoint", aimsAt: null },
    ],
  };
  const [side, waist] = turns.darts;
  const other: Piece = {
    ...turns,
    drawnTurns: { sideWaist: 90 },
    darts: [
      { ...invariant(side, "dart"), drawnTurn: 8, drawnLegs: -1 },
      { ...invariant(waist, "dart"), drawnTurn: 3 },
    ],
  };

  it("is taken by the base size's share; a corner that is none of the outline is let go", () => {
    const blended = blendPiece([turns, other], levelSizes(0.25, 1, 1));
    // 80 + 10 ∕ 4; 90 to nothing; 4 + 4 ∕ 4; 1 − 2 ∕ 4. What the first size has not is not taken from the next.
    expect(blended.drawnTurns).toEqual({ sideWaist: 82.5, centreWaist: 67.5 });
    expect(blended.darts).toEqual([{ ...side, drawnTurn: 5, drawnLegs: 0.5 }, waist]);
  });

  it("is nothing on a draft of ours", () => {
    const { drawnTurns: _, ...plain } = turns;
    const blended = blendPiece([plain, { ...other }], levelSizes(0.25, 1, 1));
    expect(blended.drawnTurns).toBeUndefined();
    expect(blended.darts).toEqual(turns.darts);
  });
});
