/** What darts take of a line, by similar triangles, at heights that are no halves. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { clothBetween, levelWidth, takenAtBust, widthAtHeight, widthUpTo } from "../../../src/core/girth/levelWidth";
import { mouth, straight } from "../../../src/core/pattern/namedEdges";
import type { Dart, NamedPoint, Piece, PointName } from "../../../src/core/pattern/piece";

const at = (x: number, y: number): NamedPoint => ({ at: piecePoint(x, y), level: "bust" });

/** 200 wide, 400 high; a dart from the side up to (100, 100), its mouth leaning: 20 across and 20 down. */
const french = (name: "frenchDart" | "frenchDart2" | "sideDart" = "frenchDart"): Piece => ({
  name: "front",
  points: {
    corner00: at(0, 0),
    corner01: at(200, 0),
    sideDartInner: at(210, 190),
    sideDartOuter: at(190, 210),
    corner02: at(200, 400),
    corner03: at(0, 400),
    sideDartApex: at(100, 100),
  },
  edges: [
    straight("corner00", "corner01", "neck"),
    straight("corner01", "sideDartInner", "side"),
    mouth("sideDartInner", "sideDartOuter", "side", name),
    straight("sideDartOuter", "corner02", "side"),
    straight("corner02", "corner03", "waist"),
    straight("corner03", "corner00", "centre"),
  ],
  darts: [{ name, seam: "side", inner: "sideDartInner", outer: "sideDartOuter", apex: "sideDartApex", aimsAt: null }],
  levelLines: [],
  centreOnFold: true,
});

/** The side above the mouth leans out by 10 over 190. */
const sideAt = (y: number): number => 200 + (10 * y) / 190;

describe("a dart that rises aslant from the side", () => {
  it.each([
    [110, 2],
    [125, 5],
    [150, 10],
    [175, 15],
  ])("takes of the level at %d what it is wide there, across: %d", (y, taken) => {
    // Its axis goes from 100 to 200: a tenth of the way down a tenth of its 20.
    expect(widthAtHeight(french(), y)).toBeCloseTo(sideAt(y) - taken, 9);
    expect(widthUpTo(french(), piecePoint(sideAt(y), y))).toBeCloseTo(sideAt(y) - taken, 9);
    expect(widthAtHeight(french("frenchDart2"), y)).toBeCloseTo(sideAt(y) - taken, 9);
    // A side dart lies along the line and takes nothing of it.
    expect(widthAtHeight(french("sideDart"), y)).toBeCloseTo(sideAt(y), 9);
  });

  it("takes nothing of what its axis does not meet, its end and the middle of its mouth included", () => {
    expect(widthAtHeight(french(), 100)).toBeCloseTo(sideAt(100), 9);
    expect(widthAtHeight(french(), 60)).toBeCloseTo(sideAt(60), 9);
    expect(widthAtHeight(french(), 200)).toBeCloseTo(200, 9);
    expect(widthAtHeight(french(), 300)).toBeCloseTo(190 + (10 * 90) / 190, 9);
  });

  it("is left out of a line between two places, and of the bust line", () => {
    expect(clothBetween(french(), piecePoint(0, 150), piecePoint(200, 150))).toBe(200);
    const lined: Piece = { ...french(), levelLines: [{ level: "bust", along: { points: ["corner00", "corner02"] } }] };
    expect(takenAtBust(lined)).toBe(0);
  });
});

describe("a width up to a place", () => {
  it("begins where the outline first crosses the level, though that is behind the place", () => {
    // The centre leans in to 40 at the waist: a quarter down it is at 10.
    const piece = french("sideDart");
    const leaning: Piece = { ...piece, points: { ...piece.points, corner03: at(40, 400) } };
    expect(widthUpTo(leaning, piecePoint(150, 100))).toBeCloseTo(140, 9);
    expect(widthUpTo(leaning, piecePoint(10, 100))).toBeCloseTo(0, 9);
    expect(widthAtHeight(leaning, 100)).toBeCloseTo(sideAt(100) - 10, 9);
    expect(widthAtHeight(leaning, -1)).toBe(0);
    expect(widthAtHeight(leaning, 401)).toBe(0);
  });
});

describe("a dart from below", () => {
  /** Its mouth from 80 to 120 at 400, its end at (100, 200); or bound to another seam, or drawn the other way round. */
  const darted = (dart: Partial<Dart> = {}, more: Partial<Record<PointName, NamedPoint>> = {}): Piece => ({
    ...french(),
    points: {
      ...french().points,
      waistDartInner: at(80, 400),
      waistDartOuter: at(120, 400),
      waistDartApex: at(100, 200),
      ...more,
    },
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
        ...dart,
      },
    ],
  });
  const taken = (piece: Piece, [x1, y1]: readonly [number, number], [x2, y2]: readonly [number, number]): number =>
    Math.hypot(x2 - x1, y2 - y1) - clothBetween(piece, piecePoint(x1, y1), piecePoint(x2, y2));

  it.each<readonly [string, Partial<Dart>]>([
    ["as it is", {}],
    ["its ends told the other way round", { inner: "waistDartOuter", outer: "waistDartInner" }],
  ])("takes what lies between its legs, %s", (_, dart) => {
    const piece = darted(dart);
    // Wide by a fifth of the way below its end.
    expect(taken(piece, [0, 250], [200, 250])).toBeCloseTo(10, 9);
    expect(taken(piece, [200, 350], [0, 350])).toBeCloseTo(30, 9);
    // From within it, up to within it, and all within.
    expect(taken(piece, [100, 300], [200, 300])).toBeCloseTo(10, 9);
    expect(taken(piece, [0, 300], [95, 300])).toBeCloseTo(5, 9);
    expect(taken(piece, [95, 300], [103, 300])).toBeCloseTo(8, 9);
    // Down its axis: from its end to its mouth, and not beyond.
    expect(taken(piece, [100, 100], [100, 380])).toBeCloseTo(180, 9);
    expect(taken(piece, [100, 100], [100, 500])).toBeCloseTo(200, 9);
    // Past it on either side, above and below.
    for (const [a, b] of [
      [
        [0, 300],
        [85, 300],
      ],
      [
        [115, 300],
        [200, 300],
      ],
      [
        [0, 199],
        [200, 199],
      ],
      [
        [0, 401],
        [200, 401],
      ],
      [
        [0, 200],
        [200, 200],
      ],
    ] as const)
      expect(taken(piece, a, b)).toBeCloseTo(0, 9);
    // Along its mouth all of it; aslant through it from (90, 300) on its leg to (110, 300)… by a line from corner to corner.
    expect(taken(piece, [0, 400], [200, 400])).toBeCloseTo(40, 9);
  });

  it("takes of a slanting line what lies between, by the crossing of three lines", () => {
    // y = 200 + x meets the leg x = 100 − (y − 200)∕10 at x = 1000∕11, the other, x = 100 + (y − 200)∕10, at 1000∕9.
    expect(taken(darted(), [0, 200], [200, 400])).toBeCloseTo((1000 / 9 - 1000 / 11) * Math.SQRT2, 9);
  });

  it("that is shut takes nothing, nor one from the centre", () => {
    const shut = darted({}, { waistDartOuter: at(80, 400) });
    expect(taken(shut, [0, 300], [200, 300])).toBe(0);
    expect(taken(darted({ seam: "centre" }), [0, 300], [200, 300])).toBe(0);
    expect(taken(darted({ seam: "side" }), [0, 300], [200, 300])).toBe(0);
    expect(taken(darted({ seam: "underBust" }), [0, 300], [200, 300])).toBeCloseTo(20, 9);
  });

  it("takes its part of the bust line stretch by stretch, less where that runs back", () => {
    const points = {
      centreBust: at(0, 300),
      bustLineInner: at(104, 300),
      bustLineOuter: at(96, 300),
      sideBust: at(200, 300),
    };
    const line = (names: readonly PointName[]): Piece => ({
      ...darted({}, points),
      levelLines: [
        { level: "hip", along: { seam: "neck" } },
        { level: "bust", along: { points: names } },
      ],
    });
    // 14 as far as 104, back over 8, and on from 96: 14.
    const lapped = line(["centreBust", "bustLineInner", "bustLineOuter", "sideBust"]);
    expect(takenAtBust(lapped)).toBeCloseTo(20, 9);
    expect(levelWidth(lapped, "bust")).toBeCloseTo(180, 9);
    expect(takenAtBust(line(["centreBust", "sideBust"]))).toBeCloseTo(20, 9);
    expect(takenAtBust(line(["centreBust"]))).toBe(0);
    expect(levelWidth(lapped, "hip")).toBe(200);
    expect(levelWidth(lapped, "neck")).toBeNull();
    expect(takenAtBust({ ...lapped, levelLines: [{ level: "bust", along: { seam: "neck" } }] })).toBe(0);
    expect(levelWidth(lapped, "underBust")).toBeNull();
  });

  it("leaves the under-bust its own line where it has one, else the height of its centre", () => {
    const centred = darted({}, { underBustCentre: at(0, 350) });
    // 30 of it in the dart; the side leans from 190 at 210 to 200 at 400.
    expect(levelWidth(centred, "underBust")).toBeCloseTo(190 + (10 * 140) / 190 - 30, 9);
    const own: Piece = {
      ...centred,
      levelLines: [{ level: "underBust", along: { points: ["corner03", "corner02"] } }],
    };
    expect(levelWidth(own, "underBust")).toBeCloseTo(160, 9);
  });
});
