/**
 * Widths at levels: closed forms on pieces made by hand, and the cloth along the line by flatten-js on arbitrary drafted
 * and altered pieces of every style.
 */
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { levelWidth, takenAtBust, widthAtHeight } from "../../../src/core/girth/levelWidth";
import {
  pointOf,
  type Dart,
  type DartName,
  type DartRef,
  type Edge,
  type NamedPoint,
  type Piece,
  type PointName,
  type SeamName,
} from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { halvesOf } from "../../../src/core/plan/plan";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyAmount } from "../../support/amounts";
import { anyChainWork } from "../../support/anyChainWork";
import { clothCorners, lengthOnCloth, polygonOf } from "../../support/independent";
import { ref } from "../../support/works";

type At = readonly [number, number];

interface HandMade {
  /** Corners of the outline: centre and side above, side and centre below. */
  readonly corners?: readonly [At, At, At, At];
  /** Mouth ends in the order of the outline, and the end; on the waist below unless another seam is named. */
  readonly darts?: readonly {
    readonly name: DartName;
    readonly inner: At;
    readonly outer: At;
    readonly end: At;
    readonly seam?: SeamName;
  }[];
  /** The bust line, from the centre to the side. */
  readonly line?: readonly At[];
}

const RECTANGLE: readonly [At, At, At, At] = [
  [0, 0],
  [200, 0],
  [200, 300],
  [0, 300],
];
const LINE_POINTS = ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] as const;

/** A piece of four straight edges: neck above, side, waist below, centre; darts open on the waist or above. */
function handMade({ corners = RECTANGLE, darts = [], line = [] }: HandMade): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  const put = (name: PointName, [x, y]: At): PointName => {
    points[name] = { at: piecePoint(x, y), level: "bust" };
    return name;
  };
  const [centreTop, sideTop, sideLow, centreLow] = corners;
  const edge = (from: PointName, to: PointName, seam: SeamName, mouthOf: DartName | null = null): Edge => ({
    from,
    to,
    seam,
    curve: null,
    mouthOf,
  });
  const made = darts.map(({ name, inner, outer, end, seam = "waist" }): Dart => ({
    name,
    seam,
    inner: put(`${name}Inner`, inner),
    outer: put(`${name}Outer`, outer),
    apex: put(`${name}Apex`, end),
    aimsAt: null,
  }));
  /** A seam from corner to corner with the mouths on it, as the outline runs. */
  const along = (seam: SeamName, from: PointName, to: PointName, way: 1 | -1): Edge[] => {
    const mouths = made.filter((dart) => dart.seam === seam);
    const ends = mouths.flatMap(({ name, inner, outer }) =>
      way === 1 ? [{ name, first: inner, last: outer }] : [{ name, first: outer, last: inner }],
    );
    const ordered = way === 1 ? ends : ends.toReversed();
    const starts = [from, ...ordered.map(({ last }) => last)];
    return starts.flatMap((start, i) => {
      const mouth = ordered[i];
      return mouth === undefined
        ? [edge(start, to, seam)]
        : [edge(start, mouth.first, seam), edge(mouth.first, mouth.last, seam, mouth.name)];
    });
  };
  put("centreNeck", centreTop);
  put("sideNeck", sideTop);
  put("sideWaist", sideLow);
  put("centreWaist", centreLow);
  line.forEach((at, i) => put(LINE_POINTS[line.length === 2 && i === 1 ? 3 : i] ?? "sideBust", at));
  const chain = LINE_POINTS.filter((name) => points[name] !== undefined);
  return {
    name: "front",
    points,
    edges: [
      ...along("neck", "centreNeck", "sideNeck", 1),
      ...along("side", "sideNeck", "sideWaist", 1),
      ...along("waist", "sideWaist", "centreWaist", -1),
      ...along("centre", "centreWaist", "centreNeck", 1),
    ],
    darts: made,
    levelLines: [
      ...(line.length === 0 ? [] : [{ level: "bust" as const, along: { points: chain } }]),
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: true,
  };
}

/** From below: 40 mm wide at 300, its end at 60; a level at y is 40·(y − 60)/240 wide across it. */
const waistDart = { name: "waistDart", inner: [80, 300], outer: [120, 300], end: [100, 60] } as const;
const level = (y: number): readonly At[] => [
  [0, y],
  [200, y],
];

describe("levelWidth of a piece made by hand", () => {
  it("is the width of a rectangle, on the level and along a slant", () => {
    expect(levelWidth(handMade({ line: level(120) }), "bust")).toBe(200);
    expect(
      levelWidth(
        handMade({
          line: [
            [0, 100],
            [200, 250],
          ],
        }),
        "bust",
      ),
    ).toBeCloseTo(250, 9);
  });

  it("adds up the stretches of a line that is led by a place beside the bust point", () => {
    const led = handMade({
      line: [
        [0, 100],
        [60, 180],
        [80, 180],
        [200, 90],
      ],
    });
    expect(levelWidth(led, "bust")).toBeCloseTo(100 + 20 + 150, 9);
  });

  it("counts a lap once: the line runs back across it", () => {
    // 20 mm of the inner part lie under the outer part.
    expect(
      levelWidth(
        handMade({
          line: [
            [0, 120],
            [110, 120],
            [90, 120],
            [200, 120],
          ],
        }),
        "bust",
      ),
    ).toBe(110 - 20 + 110);
  });

  it.each([
    // By similar triangles, a quarter and half of the way down the dart.
    [120, 10],
    [180, 20],
    // At its end, and above it.
    [60, 0],
    [40, 0],
  ])("at %d mm is less by the %d mm that the waist dart is wide there", (y, chord) => {
    const piece = handMade({ darts: [waistDart], line: level(y) });
    expect(levelWidth(piece, "bust")).toBeCloseTo(200 - chord, 9);
    expect(takenAtBust(piece)).toBeCloseTo(chord, 9);
  });

  it("is whole across a dart that is drawn shut", () => {
    const shut = { ...waistDart, inner: [100, 300], outer: [100, 300] } as const;
    expect(levelWidth(handMade({ darts: [shut], line: level(120) }), "bust")).toBe(200);
  });

  it("is less by what a dart from above takes, and not by one that ends above the level", () => {
    const neckDart = { name: "neckDart", inner: [80, 0], outer: [130, 0], end: [100, 200], seam: "neck" } as const;
    expect(levelWidth(handMade({ darts: [neckDart], line: level(120) }), "bust")).toBeCloseTo(200 - (50 * 80) / 200, 9);
    expect(levelWidth(handMade({ darts: [neckDart], line: level(210) }), "bust")).toBe(200);
  });

  it("is less by each of two darts, also where they are crossed by different stretches of the line", () => {
    const second = { name: "waistDart2", inner: [140, 300], outer: [170, 300], end: [150, 100] } as const;
    const darts = [waistDart, second];
    // 40·(180 − 60)/240 and 30·(180 − 100)/200.
    expect(levelWidth(handMade({ darts, line: level(180) }), "bust")).toBeCloseTo(200 - 20 - 12, 9);
    const led = handMade({
      darts,
      line: [
        [0, 180],
        [130, 180],
        [135, 180],
        [200, 180],
      ],
    });
    expect(levelWidth(led, "bust")).toBeCloseTo(200 - 20 - 12, 9);
    expect(takenAtBust(led)).toBeCloseTo(32, 9);
  });

  it("is less by a dart that the line crosses where it is led by a place between the legs", () => {
    // As a dart that is drawn on past the bust point: its legs lie on either side of it.
    const led = handMade({
      darts: [waistDart],
      line: [
        [0, 180],
        [100, 180],
        [100, 180],
        [200, 180],
      ],
    });
    expect(levelWidth(led, "bust")).toBeCloseTo(200 - 20, 9);
    expect(takenAtBust(led)).toBeCloseTo(20, 9);
    const bent = handMade({
      darts: [waistDart],
      line: [
        [0, 180],
        [100, 180],
        [100, 180],
        [200, 80],
      ],
    });
    // The outer leg is x = 100 + (y − 60)/12, the line y = 280 − x: they meet at x = 100 + 120/13.
    expect(takenAtBust(bent)).toBeCloseTo(10 + (120 / 13) * Math.SQRT2, 9);
    expect(levelWidth(bent, "bust")).toBeCloseTo(100 + 100 * Math.SQRT2 - 10 - (120 / 13) * Math.SQRT2, 9);
  });

  it("is less by a dart once where a lap lies over it", () => {
    const lapped = handMade({
      darts: [waistDart],
      line: [
        [0, 120],
        [110, 120],
        [90, 120],
        [200, 120],
      ],
    });
    expect(levelWidth(lapped, "bust")).toBeCloseTo(200 - 10, 9);
    expect(takenAtBust(lapped)).toBeCloseTo(10, 9);
  });

  it("takes the straight distance between the legs along a slanted line", () => {
    // One leg upright at x = 80; the other runs x = 80 + (y − 60)/6. The line y = 100 + x/5 meets them at 80 and at
    // (80 + 40/6)/(1 − 1/30).
    const dart = { ...waistDart, end: [80, 60] } as const;
    const chord = ((80 + 40 / 6) / (1 - 1 / 30) - 80) * Math.hypot(1, 1 / 5);
    const piece = handMade({
      darts: [dart],
      line: [
        [0, 100],
        [200, 140],
      ],
    });
    expect(levelWidth(piece, "bust")).toBeCloseTo(Math.hypot(200, 40) - chord, 9);
  });

  it("is not less by a dart that lies along the line, from the side or from the centre", () => {
    const side = { name: "sideDart", inner: [200, 100], outer: [200, 140], end: [120, 120], seam: "side" } as const;
    const centre = { name: "centreDart", inner: [0, 140], outer: [0, 100], end: [70, 120], seam: "centre" } as const;
    // A French dart opens low on the side and crosses the line on its way up.
    const french = { name: "frenchDart", inner: [200, 200], outer: [200, 240], end: [120, 60], seam: "side" } as const;
    for (const dart of [side, centre, french]) {
      const piece = handMade({ darts: [dart], line: level(122) });
      expect(levelWidth(piece, "bust")).toBe(200);
      expect(takenAtBust(piece)).toBe(0);
    }
  });

  it("is the sewn length of a seam, mouths left out, where the level runs along one", () => {
    const second = { name: "waistDart2", inner: [140, 300], outer: [170, 300], end: [150, 100] } as const;
    expect(levelWidth(handMade({}), "waist")).toBe(200);
    expect(levelWidth(handMade({ darts: [waistDart, second] }), "waist")).toBe(200 - 40 - 30);
  });

  it("is null where the piece has no such line, and nothing is taken there", () => {
    expect(levelWidth(handMade({}), "bust")).toBeNull();
    expect(levelWidth(handMade({}), "underBust")).toBeNull();
    expect(takenAtBust(handMade({ darts: [waistDart] }))).toBe(0);
  });

  it("is taken at the height of the under-bust's centre where that has no line of its own", () => {
    const piece = handMade({ darts: [waistDart] });
    const marked: Piece = {
      ...piece,
      points: { ...piece.points, underBustCentre: { at: piecePoint(0, 180), level: "underBust" } },
    };
    expect(levelWidth(marked, "underBust")).toBeCloseTo(180, 9);
  });
});

describe("widthAtHeight of a piece made by hand", () => {
  /** 100 mm wide above, 220 mm below, its centre 30 mm from the middle of the body. */
  const trapezoid = {
    corners: [
      [30, 0],
      [130, 0],
      [250, 300],
      [30, 300],
    ],
  } as const;

  it("grows evenly down a trapezoid, wherever its centre lies", () => {
    const piece = handMade(trapezoid);
    for (const [y, width] of [
      [0, 100],
      [75, 130],
      [150, 160],
      [300, 220],
    ] as const)
      expect(widthAtHeight(piece, y)).toBeCloseTo(width, 9);
  });

  it("is less by the darts that it crosses", () => {
    const piece = handMade({ ...trapezoid, darts: [waistDart] });
    expect(widthAtHeight(piece, 180)).toBeCloseTo(100 + (120 * 180) / 300 - 20, 9);
    expect(widthAtHeight(piece, 50)).toBeCloseTo(120, 9);
  });

  it("is nothing above and below the piece", () => {
    expect(widthAtHeight(handMade(trapezoid), -1)).toBe(0);
    expect(widthAtHeight(handMade(trapezoid), 301)).toBe(0);
  });

  it("reaches to a curved side", () => {
    const piece = handMade({});
    // A cubic that bulges by 40 at both handles lies three quarters of that off its chord at the middle.
    const curve = { c1: piecePoint(240, 100), c2: piecePoint(240, 200) };
    const bowed: Piece = {
      ...piece,
      edges: piece.edges.map((edge) => (edge.seam === "side" ? { ...edge, curve } : edge)),
    };
    expect(widthAtHeight(bowed, 150)).toBeCloseTo(230, 6);
  });
});

/** mm. What the chords that stand for curves may leave out. */
const CHORDED = 0.05;

/** Darts that can be drawn on until they cross the bust line or the hip. */
const CROSSING: Readonly<Record<StyleName, readonly DartRef[]>> = {
  sideDart: [ref("front", "waistDart"), ref("back", "waistDart"), ref("frontBasque", "waistDart")],
  midriff: [ref("cup", "underBustDart"), ref("back", "underBustDart"), ref("frontBasque", "waistDart")],
  princessArmhole: [ref("back", "waistDart"), ref("frontBasque", "waistDart")],
  princessShoulder: [ref("back", "waistDart"), ref("backBasque", "waistDart")],
};

/** Any chain, with the style's darts drawn longer first. */
const anyCrossed = (style: StyleName): fc.Arbitrary<Work> =>
  fc
    .record({ work: anyChainWork(style), longer: fc.array(anyAmount(10, 130), { minLength: 3, maxLength: 3 }) })
    .map(({ work, longer }) => ({
      ...work,
      alterations: [
        ...CROSSING[style].map((dart, i): Alteration => ({
          kind: "dartEnd",
          id: `longer${i}`,
          dart,
          shorten: -(longer[i] ?? 0),
          across: 0,
          hold: "mouth",
          giveBack: {},
        })),
        ...work.alterations,
      ],
    }));

/** How often a level line crosses an outline, its darts closed; in chords. */
function crossingsAt(piece: Piece, y: number): number {
  const corners = clothCorners(piece, Object.fromEntries(piece.darts.map(({ name }) => [name, []])));
  return corners.filter((corner, i) => corner.y < y !== (corners.at(i - 1)?.y ?? NaN) < y).length;
}

const apart = (a: PiecePoint, b: PiecePoint): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The cloth of a piece: darts cut out, but for those along the bust line, which take length there and no girth. */
const clothOf = (piece: Piece) =>
  polygonOf(
    clothCorners(
      piece,
      Object.fromEntries(
        piece.darts.flatMap(({ name, seam }) => (seam === "side" || seam === "centre" ? [[name, []]] : [])),
      ),
    ),
  );

describe.each(STYLE_NAMES)("on the pieces of any chain on the style %s", { timeout: 240_000 }, (style) => {
  it("finds what lies on the cloth along each level, and across at a height, by flatten-js", () => {
    let crossed = 0;
    fc.assert(
      fc.property(anyCrossed(style), anyAmount(0.5, 0.9), (work, share) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        for (const piece of halvesOf(derived.value).flatMap(({ pieces }) => pieces)) {
          if (piece.name === "strap") continue;
          const cloth = clothOf(piece);
          for (const { level: name, along } of piece.levelLines) {
            if ("seam" in along) continue;
            const places = along.points.map((point) => pointOf(piece, point));
            const stretches = places.slice(1).flatMap((to, i): readonly (readonly [PiecePoint, PiecePoint])[] => {
              const from = places[i];
              return from === undefined || apart(from, to) < 1e-9 ? [] : [[from, to]];
            });
            const whole = stretches.reduce((sum, [a, b]) => sum + Math.sign(b.x - a.x) * apart(a, b), 0);
            const onCloth = stretches.reduce(
              (sum, [a, b]) => sum + Math.sign(b.x - a.x) * lengthOnCloth(cloth, a, b),
              0,
            );
            expect(Math.abs((levelWidth(piece, name) ?? NaN) - onCloth)).toBeLessThan(CHORDED);
            if (whole - onCloth > 1) crossed += 1;
          }
          const corners = clothCorners(piece).map(({ y }) => y);
          const y = Math.min(...corners) + share * (Math.max(...corners) - Math.min(...corners));
          // Where the outline is hollow there, the line leaves the cloth and comes back: that is no width.
          if (crossingsAt(piece, y) !== 2) continue;
          const across = lengthOnCloth(cloth, { x: -500, y }, { x: 1000, y });
          expect(Math.abs(widthAtHeight(piece, y) - across)).toBeLessThan(CHORDED);
        }
      }),
      { numRuns: 6 },
    );
    expect(crossed).toBeGreaterThan(3);
  });
});
