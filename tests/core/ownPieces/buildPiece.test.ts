/** Pieces of the plan made of what was traced: every point, edge and level line of straight figures, worked by hand. */
import { describe, expect, it } from "vitest";
import { cubicEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, sheetPoint, type PiecePoint } from "../../../src/core/geometry/point";
import { buildPiece, NOTHING_KNOWN, type BuiltPiece, type FromOthers } from "../../../src/core/ownPieces/buildPiece";
import { shapeOf } from "../../../src/core/ownPieces/pieceShapes";
import type { LevelName, Piece, PieceName } from "../../../src/core/pattern/piece";
import { crossAt, innerLine, openLine, type At } from "../../support/outlineGroups";
import { FRONT, inputOf, lying, moved, rounded, xy } from "./tracedByHand";

type Given = NonNullable<Parameters<typeof inputOf>[2]> & {
  readonly bust?: Readonly<Record<string, At>>;
  readonly others?: Partial<FromOthers>;
};
const built = (name: PieceName, sizes: Parameters<typeof inputOf>[1], given: Given = {}): BuiltPiece => {
  const { bust = {}, others = {}, ...more } = given;
  const { group, said } = inputOf(name, sizes, more);
  return buildPiece(lying(name, sizes, more), name, {
    said,
    marks: group.marks,
    bustSaid: new Map(Object.entries(bust).map(([label, at]) => [label, piecePoint(...at)])),
    others: { ...NOTHING_KNOWN, ...others },
  });
};
/** Points by name: where, and at which level. */
const points = ({ pieces }: BuiltPiece, size = 0) =>
  Object.fromEntries(
    Object.entries(pieces[size]?.points ?? {}).map(([name, { at, level, towards }]) => [
      name,
      [...xy(at), level, ...(towards === undefined ? [] : [towards.level, rounded(towards.share)])],
    ]),
  );
const edgesOf = (piece: Piece | undefined) =>
  piece?.edges.map(
    ({ from, to, seam, curve, mouthOf }) =>
      `${from} ${to} ${seam}${curve === null ? "" : " curved"}${mouthOf === null ? "" : ` ${mouthOf}`}`,
  );
const edges = ({ pieces }: BuiltPiece, size = 0) => edgesOf(pieces[size]);
const names = (made: BuiltPiece, size = 0) => edges(made, size)?.map((edge) => edge.split(" ")[0]);
/** So far of the way from one place to another. */
const share = (a: At, b: At, by: number): At => [
  rounded(a[0] + (b[0] - a[0]) * by),
  rounded(a[1] + (b[1] - a[1]) * by),
];
const apart = (a: At, b: At): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const BUST = { bust: { "10": [95, 260] as const } };
const [NECK, , TIP, UNDERARM, SIDE] = moved(FRONT, 0, 20);
if (NECK === undefined || TIP === undefined || UNDERARM === undefined || SIDE === undefined) throw new Error("front");
/** The usual shape in a box, laid as it is in the piece frame. */
const usual = (name: PieceName, style: Parameters<typeof shapeOf>[1], wide: number, high: number) =>
  Object.fromEntries(
    (shapeOf(name, style)?.corners ?? []).map((corner) => [corner.name, [corner.x * wide, corner.y * high] as const]),
  );
const at = (level: LevelName, place: At) => [rounded(place[0]), rounded(place[1]), level];

describe("a front", () => {
  it("has all that alterations ask for: its points at their levels, its edges, its level lines", () => {
    const made = built("front", { "10": FRONT }, BUST);
    const bust = at("bust", [95, 280]);
    expect(points(made)).toEqual({
      centreNeck: at("neck", [0, 92]),
      sideNeck: at("neck", [60, 20]),
      shoulderTip: at("shoulder", [150, 60]),
      // Nothing of a straight armhole comes nearer to the centre than its ends: 0.45 of it, then a fifth of what is left.
      armholeTouch: at("shoulder", share(TIP, UNDERARM, 0.45)),
      armholeHinge: at("shoulder", share(TIP, UNDERARM, 0.56)),
      underarm: at("underarm", UNDERARM),
      sideBust: at("bust", [194 - (4 * 72) / 212, 280]),
      sideWaist: at("waist", [190, 420]),
      centreWaist: at("waist", [0, 420]),
      centreBust: at("bust", [0, 280]),
      bustPoint: bust,
      bustLineInner: bust,
      bustLineOuter: bust,
      // 0.41 of the way down to the waist (our own choice).
      underBustCentre: at("underBust", [0, 280 + 0.41 * 140]),
    });
    expect(made.pieces).toMatchObject([
      {
        name: "front",
        darts: [],
        levelLines: [
          { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
          { level: "waist", along: { seam: "waist" } },
        ],
        centreOnFold: true,
      },
    ]);
    expect(edges(made)).toEqual([
      "centreNeck sideNeck neck",
      "sideNeck shoulderTip shoulder",
      "shoulderTip armholeTouch armhole",
      "armholeTouch armholeHinge armhole",
      "armholeHinge underarm armhole",
      "underarm sideBust side",
      "sideBust sideWaist side",
      "sideWaist centreWaist waist",
      "centreWaist centreBust centre",
      "centreBust centreNeck centre",
    ]);
    expect(made.derived.map(({ name, at: places }) => [name, places.map((place) => xy(place))])).toEqual([
      ["armholeTouch", [share(TIP, UNDERARM, 0.45)]],
      ["armholeHinge", [share(TIP, UNDERARM, 0.56)]],
      ["sideBust", [[rounded(194 - (4 * 72) / 212), 280]]],
      ["centreBust", [[0, 280]]],
    ]);
    expect(made).toMatchObject({ deviations: [0], problems: [], bustPoints: [{ by: "her" }] });
    expect(made.traced).toHaveLength(1);
  });

  it("without a bust point has its bust line 30 mm below the underarm, or as far as is known, and that is told", () => {
    const made = built("front", { "10": FRONT });
    expect(made.problems).toEqual([{ code: "own/no-bust-point", size: "10" }]);
    const down = share(UNDERARM, SIDE, 30 / apart(UNDERARM, SIDE));
    expect(points(made)).toMatchObject({ sideBust: at("bust", down), centreBust: at("bust", [0, down[1]]) });
    expect(points(made).bustPoint).toBeUndefined();
    expect(made.pieces[0]?.levelLines).toEqual([
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ]);
    const known = built("front", { "10": FRONT }, { others: { sideDepth: new Map([["10", 50]]) } });
    const there = share(UNDERARM, SIDE, 50 / apart(UNDERARM, SIDE));
    expect(points(known)).toMatchObject({ sideBust: at("bust", there), centreBust: at("bust", [0, there[1]]) });
    // Of a side of 40 mm six tenths of it.
    const short = moved(FRONT, 0, 0).map(([x, y]): At => (y === 188 ? [194, 360] : [x, y]));
    const near = share([194, 380], [190, 420], (0.6 * apart([194, 380], [190, 420])) / apart([194, 380], [190, 420]));
    expect(points(built("front", { "10": short })).sideBust).toEqual(at("bust", near));
  });

  it("led to by a dart only is told to have no bust point", () => {
    const inner = [
      innerLine([
        [80, 400],
        [95, 280],
        [110, 400],
      ]),
    ];
    const made = built("front", { "10": FRONT }, { group: { inner } });
    expect(made.problems).toEqual([{ code: "own/no-bust-point", size: "10" }]);
    // 22 mm on from its end at 300.
    expect(made.bustPoints).toEqual([
      { at: { x: expect.closeTo(95, 6) as number, y: expect.closeTo(278, 6) as number }, by: "darts" },
    ]);
    const marked = [crossAt([96, 250])];
    expect(built("front", { "10": FRONT }, { group: { inner, marks: marked } })).toMatchObject({
      problems: [],
      bustPoints: [{ at: { x: 96, y: 270 }, by: "mark" }],
    });
  });

  it("has its darts as mouths, with their ends, aimed at the bust point where they pass it by 50 mm at most", () => {
    const inner = [
      innerLine([
        [80, 400],
        [95, 280],
        [110, 400],
      ]),
    ];
    const dart = (x: number) => built("front", { "10": FRONT }, { group: { inner }, bust: { "10": [x, 260] } });
    const made = dart(95);
    expect(made.pieces[0]?.darts).toEqual([
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: "bustPoint",
      },
    ]);
    expect(points(made)).toMatchObject({
      waistDartInner: at("bust", [80, 420]),
      waistDartOuter: at("bust", [110, 420]),
      waistDartApex: at("bust", [95, 300]),
    });
    expect(edges(made)?.slice(7, 10)).toEqual([
      "sideWaist waistDartOuter waist",
      "waistDartOuter waistDartInner waist waistDart",
      "waistDartInner centreWaist waist",
    ]);
    expect(made.derived.map(({ name }) => name)).toEqual(["armholeTouch", "armholeHinge", "sideBust", "centreBust"]);
    expect(
      [dart(95 + 49), dart(95 - 49), dart(95 + 51), dart(95 - 51)].map(({ pieces }) => pieces[0]?.darts[0]?.aimsAt),
    ).toEqual(["bustPoint", "bustPoint", null, null]);
    const levels = (line: readonly At[]) =>
      Object.entries(points(built("front", { "10": FRONT }, { ...BUST, group: { inner: [innerLine(line)] } }))).flatMap(
        ([name, [, , level]]) => (/Dart(Inner|Outer)$/.test(name) ? [`${name} ${level}`] : []),
      );
    expect(
      levels([
        [90, 40 / 3],
        [95, 200],
        [105, 20],
      ]).toSorted(),
    ).toEqual(["shoulderDartInner shoulder", "shoulderDartOuter shoulder"]);
    expect(
      levels([
        [20, 48],
        [90, 180],
        [30, 36],
      ]).toSorted(),
    ).toEqual(["neckDartInner neck", "neckDartOuter neck"]);
  });

  it("has no end of a dart outside, and that is told", () => {
    const place = ([x, y]: At) => ({ x, y });
    const darts = [
      { name: "waistDart", size: "10", inner: place([80, 400]), outer: place([110, 400]), apex: place([95, 430]) },
    ] as const;
    expect(built("front", { "10": FRONT }, { ...BUST, said: { darts } }).problems).toEqual([
      { code: "own/dart-no-end", dart: "waistDart", size: "10" },
    ]);
  });

  it("has its armhole turn where it comes nearest to the centre, at what is drawn there", () => {
    // Bent in at (140, 110), 0.43 of the way down.
    const bent: At[] = [...FRONT.slice(0, 3), [140, 110], ...FRONT.slice(3)];
    expect(points(built("front", { "10": bent }, BUST)).armholeTouch).toEqual(at("shoulder", [140, 130]));
  });

  it("has it turn on a curve too, where that is well between its ends", () => {
    const curve = (c1: At, c2: At) => {
      const sheet = (place: At) => sheetPoint(...place);
      const [from, to] = [FRONT[2], FRONT[3]];
      if (from === undefined || to === undefined) throw new Error("armhole");
      const drawn = [
        ...openLine(FRONT.slice(0, 3)),
        cubicEdge({ a: sheet(from), c1: sheet(c1), c2: sheet(c2), b: sheet(to) }),
        ...openLine([...FRONT.slice(3), [0, 72]]),
      ];
      // Walked in a thousand steps; the piece lies 20 lower.
      const walk = Array.from({ length: 1001 }, (_, i): At => {
        const [t, r] = [i / 1000, 1 - i / 1000];
        const of = (k: 0 | 1): number =>
          r ** 3 * from[k] + 3 * r * r * t * c1[k] + 3 * r * t * t * c2[k] + t ** 3 * to[k];
        return [of(0), of(1) + 20];
      });
      const lengths = walk.slice(1).map((place, k) => apart(walk[k] ?? place, place));
      const whole = lengths.reduce((sum, length) => sum + length, 0);
      const inmost = walk.reduce((best, [x], k) => (x < (walk[best]?.[0] ?? NaN) ? k : best), 0);
      const touch = points(built("front", { "10": drawn }, BUST)).armholeTouch;
      const at45 =
        walk[lengths.findIndex((_, k) => lengths.slice(0, k).reduce((sum, length) => sum + length, 0) > 0.45 * whole)];
      return {
        touch: [Number(touch?.[0]), Number(touch?.[1])] as const,
        inmost: walk[inmost] ?? [NaN, NaN],
        at45: at45 ?? [NaN, NaN],
      };
    };
    // To an eightieth of its way.
    const hollow = curve([120, 80], [120, 140]);
    expect(apart(hollow.touch, hollow.inmost)).toBeLessThan(2);
    expect(apart(hollow.touch, hollow.at45)).toBeGreaterThan(4);
    // Within the first 0.12 of it, it turns nowhere: 0.45 of the whole way.
    const outward = curve([148, 60], [180, 180]);
    expect(apart(outward.touch, outward.at45)).toBeLessThan(1);
  });
});

describe("a line that is parted where a level comes", () => {
  /** The side seam with joints so far down, each a little out of its straight way. */
  const side = (...joints: readonly number[]): At[] => [
    ...FRONT.slice(0, 4),
    ...joints.map((y, k): At => [194 - (4 * (y - 188)) / 212 + (k % 2 === 0 ? 1.5 : 1), y]),
    ...FRONT.slice(4),
  ];
  const bustAt = (height: number, ...joints: readonly number[]) =>
    points(built("front", { "10": side(...joints) }, { bust: { "10": [95, height] } })).sideBust?.[1];

  it("keeps its own joint: the only one within 75 mm and seven tenths of its way", () => {
    expect([bustAt(260, 290), bustAt(260, 230)]).toEqual([310, 250]);
    expect([bustAt(260, 260 + 74), bustAt(260, 260 + 77)]).toEqual([354, 280]);
    // Seven tenths of a side of 80 mm: 56.
    const low = (...joints: readonly number[]) => {
      const places = [...FRONT.slice(0, 3), [194, 320] as const, ...joints.map((y): At => [193, y]), ...FRONT.slice(4)];
      return points(built("front", { "10": places }, { bust: { "10": [95, 332] } })).sideBust?.[1];
    };
    expect(low(386)).toBe(406);
    expect(low(390)).toBe(352);
  });

  it("of two joints the nearest within 28 mm or a quarter of its way, of five none", () => {
    expect([bustAt(260, 250, 330), bustAt(260, 230, 278), bustAt(260, 278, 300)]).toEqual([270, 298, 298]);
    // A quarter of 212: 53.
    expect([bustAt(260, 200, 209), bustAt(264, 200, 209)]).toEqual([229, 284]);
    expect([bustAt(260, 312, 330), bustAt(260, 315, 330)]).toEqual([332, 280]);
    expect(bustAt(260, 250, 270, 290, 310)).not.toBe(280);
    expect(bustAt(260, 250, 270, 290, 310, 330)).toBe(280);
  });

  it("in every size, or in none", () => {
    const two = (other: readonly At[]) => {
      const made = built("front", { "10": side(290), "12": other }, { bust: { "10": [95, 260], "12": [95, 260] } });
      return [0, 1].map((size) => points(made, size).sideBust?.[1]);
    };
    expect(two(side(300))).toEqual([310, 320]);
    expect(two(side(300, 340))).toEqual([280, 280]);
    expect(two(FRONT)).toEqual([280, 280]);
  });
});

describe("a bust line", () => {
  it("keeps 10 mm clear of the ends of the side, and of a dart there", () => {
    const high = built("front", { "10": FRONT }, { bust: { "10": [95, 190] } });
    expect(points(high).sideBust).toEqual(at("bust", share(UNDERARM, SIDE, 10 / apart(UNDERARM, SIDE))));
    const low = built("front", { "10": FRONT }, { bust: { "10": [95, 397] } });
    expect(points(low).sideBust).toEqual(at("bust", share(SIDE, UNDERARM, 10 / apart(UNDERARM, SIDE))));
    // Above the underarm: the nearer end, then clear of it.
    const above = built("front", { "10": FRONT }, { bust: { "10": [95, 120] } });
    expect(points(above).sideBust).toEqual(at("bust", share(UNDERARM, SIDE, 10 / apart(UNDERARM, SIDE))));
    const below = built("front", { "10": FRONT }, { bust: { "10": [95, 399.9] } });
    expect(points(below).sideBust).toEqual(at("bust", share(SIDE, UNDERARM, 10 / apart(UNDERARM, SIDE))));
    /** Where the side lies at a height. */
    const on = (y: number): At => [194 - (4 * (y - 208)) / 212, y];
    const dart = (bust: number) => {
      const inner = [
        innerLine([
          [on(260)[0], 240],
          [120, 255],
          [on(290)[0], 270],
        ]),
      ];
      return points(built("front", { "10": FRONT }, { group: { inner }, bust: { "10": [95, bust - 20] } })).sideBust;
    };
    // Its mouth lies from 260 to 290: in it, and less than clear below, the line lies clear above it.
    const clear = (y: number, by: number) => at("bust", on(y + (by * 212) / apart(UNDERARM, SIDE)));
    expect(dart(275)).toEqual(clear(260, -10));
    expect(dart(299)).toEqual(clear(260, -10));
    expect(dart(255)).toEqual(clear(260, -10));
    expect(dart(240)).toEqual(at("bust", on(240)));
    expect(dart(301)).toEqual(at("bust", on(301)));
    expect(dart(330)).toEqual(at("bust", on(330)));
  });

  it("goes by the darts of the side from the upper one on, though the lower one is the first dart", () => {
    const on = (y: number): At => [194 - (4 * (y - 208)) / 212, y];
    const dart = (top: number, low: number) =>
      innerLine([
        [on(top)[0], top - 20],
        [120, (top + low) / 2 - 20],
        [on(low)[0], low - 20],
      ]);
    const inner = [dart(300, 340), dart(240, 260)];
    const made = built("front", { "10": FRONT }, { group: { inner }, bust: { "10": [95, 230] } });
    expect(made.pieces[0]?.darts.map(({ name }) => name)).toEqual(["sideDart", "sideDart2"]);
    expect(points(made).sideBust?.[1]).toBeCloseTo(240 - 10, 1);
  });

  it("in little room is a third of it clear of either end", () => {
    // From the underarm at 208 to a dart from 226 on: 6 mm.
    const on = (y: number): At => [194 - (4 * (y - 208)) / 212, y];
    const inner = [
      innerLine([
        [on(226)[0], 206],
        [120, 220],
        [on(256)[0], 236],
      ]),
    ];
    const made = built("front", { "10": FRONT }, { group: { inner }, bust: { "10": [95, 220] } });
    expect(points(made).sideBust?.[1]).toBeCloseTo(226 - 6, 2);
  });
});

describe("a back", () => {
  const corner = usual("back", "sideDart", 210, 300);
  const places = Object.values(corner);
  const [cn, , st, ua, sw] = moved(places, 0, 120);
  if (cn === undefined || st === undefined || ua === undefined || sw === undefined) throw new Error("back");

  it("has its bust line by the front's side seam, and no bust point", () => {
    const made = built("back", { "10": places }, { others: { sideDepth: new Map([["10", 40]]) } });
    const bust = share(ua, sw, 40 / apart(ua, sw));
    expect(points(made)).toEqual({
      centreNeck: at("neck", [0, 135]),
      sideNeck: at("neck", [63, 120]),
      shoulderTip: at("shoulder", [163.8, 150]),
      armholeTouch: at("shoulder", share(st, ua, 0.45)),
      underarm: at("underarm", ua),
      sideBust: at("bust", bust),
      sideWaist: at("waist", sw),
      centreWaist: at("waist", [0, 420]),
      centreBust: at("bust", [0, bust[1]]),
      underBustCentre: at("underBust", [0, bust[1] + 0.41 * (420 - bust[1])]),
    });
    expect(names(made)).toEqual([
      "centreNeck",
      "sideNeck",
      "shoulderTip",
      "armholeTouch",
      "underarm",
      "sideBust",
      "sideWaist",
      "centreWaist",
      "centreBust",
    ]);
    expect(made).toMatchObject({ bustPoints: [null], problems: [] });
    expect(made.pieces[0]).toMatchObject({
      centreOnFold: false,
      levelLines: [
        { level: "bust", along: { points: ["centreBust", "sideBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
    });
    const unknown = built("back", { "10": places });
    expect(points(unknown).sideBust).toEqual(at("bust", share(ua, sw, 30 / apart(ua, sw))));
    // Its darts aim at nothing.
    const inner = [
      innerLine([
        [80, 300],
        [95, 180],
        [110, 300],
      ]),
    ];
    expect(built("back", { "10": places }, { group: { inner } }).pieces[0]?.darts).toMatchObject([
      { name: "waistDart", aimsAt: null },
    ]);
  });

  it("with a strap ends under the bust, and its strap goes square up from its seam", () => {
    const strapped = usual("back", "midriff", 210, 200);
    const high = moved(Object.values(strapped), 0, 220);
    const [, inner, outer, underarm, low] = high;
    if (inner === undefined || outer === undefined || underarm === undefined || low === undefined)
      throw new Error("back");
    const made = built("back", { "10": Object.values(strapped) }, { style: "midriff" });
    const bust = share(underarm, low, 30 / apart(underarm, low));
    // 0.57 of the usual strap of 320 and 15 (common practice, no source), to the left of the way outwards.
    const aim = (length: number): At => {
      const long = apart(inner, outer);
      return [
        (inner[0] + outer[0]) / 2 + ((outer[1] - inner[1]) / long) * length,
        (inner[1] + outer[1]) / 2 - ((outer[0] - inner[0]) / long) * length,
      ];
    };
    expect(points(made)).toEqual({
      centreNeck: at("neck", [0, 276]),
      strapInner: at("shoulder", inner),
      strapOuter: at("shoulder", outer),
      underarm: at("underarm", underarm),
      sideUnderBust: at("underBust", low),
      underBustCentre: at("underBust", [0, 420]),
      sideBust: at("bust", bust),
      centreBust: at("bust", [0, bust[1]]),
      strapAim: at("shoulder", aim(335 * 0.57)),
    });
    expect(made.pieces[0]?.levelLines).toEqual([{ level: "bust", along: { points: ["centreBust", "sideBust"] } }]);
    const known = built(
      "back",
      { "10": Object.values(strapped) },
      { style: "midriff", others: { strapLength: new Map([["10", 300]]) } },
    );
    expect(points(known).strapAim).toEqual(at("shoulder", aim(315 * 0.57)));
  });
});

describe("other pieces of a style", () => {
  it("a cup lies from its bust line to the band, its strap less long than at the back", () => {
    const cup = moved(Object.values(usual("cup", "midriff", 210, 300)), 0, 25);
    const [, inner, outer, underarm, low, centre] = cup;
    if (
      inner === undefined ||
      outer === undefined ||
      underarm === undefined ||
      low === undefined ||
      centre === undefined
    )
      throw new Error("cup");
    const made = built("cup", { "10": moved(cup, 0, -25) }, { style: "midriff", bust: { "10": [100, 210] } });
    const y = 235;
    const side = share(underarm, low, (y - underarm[1]) / (low[1] - underarm[1]));
    const long = apart(inner, outer);
    const aim = 335 * 0.43;
    expect(points(made)).toEqual({
      centreNeck: at("neck", [0, 160]),
      strapInner: at("shoulder", inner),
      strapOuter: at("shoulder", outer),
      underarm: at("underarm", underarm),
      sideUnderBust: at("underBust", low),
      underBustCentre: at("underBust", [0, 325]),
      sideBust: at("bust", side),
      centreBust: at("bust", [0, y]),
      bustPoint: at("bust", [100, y]),
      bustLineInner: at("bust", [100, y]),
      bustLineOuter: at("bust", [100, y]),
      strapAim: at("shoulder", [
        (inner[0] + outer[0]) / 2 + ((outer[1] - inner[1]) / long) * aim,
        (inner[1] + outer[1]) / 2 - ((outer[0] - inner[0]) / long) * aim,
      ]),
    });
    expect(made.pieces[0]?.levelLines).toEqual([
      { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
    ]);
    expect(built("cup", { "10": moved(cup, 0, -25) }, { style: "midriff" }).problems).toEqual([
      { code: "own/no-bust-point", size: "10" },
    ]);
  });

  it("a centre front has its bust point on its princess seam, and its bust line there", () => {
    const places = Object.values(usual("centreFront", "princessArmhole", 210, 400));
    const [, , , top, low] = moved(places, 0, 28);
    if (top === undefined || low === undefined) throw new Error("centre front");
    const made = built("centreFront", { "10": places }, { style: "princessArmhole", bust: { "10": [180, 260] } });
    // The foot of the perpendicular from (180, 288).
    const [ux, uy] = [low[0] - top[0], low[1] - top[1]];
    const t = ((180 - top[0]) * ux + (288 - top[1]) * uy) / (ux * ux + uy * uy);
    const bust = share(top, low, t);
    expect(
      points(made)
        .bustPoint?.slice(0, 2)
        .map((value) => Math.round(Number(value) * 100) / 100),
    ).toEqual(bust.map((value) => Math.round(value * 100) / 100));
    expect(points(made).princessBust).toEqual(points(made).bustPoint);
    expect(points(made).centreBust).toEqual([0, points(made).bustPoint?.[1], "bust"]);
    expect(points(made).bustLineInner).toBeUndefined();
    expect(names(made)).toEqual([
      "centreNeck",
      "sideNeck",
      "shoulderTip",
      "princessTop",
      "princessBust",
      "princessWaist",
      "centreWaist",
      "centreBust",
    ]);
    expect(made.pieces[0]).toMatchObject({
      centreOnFold: true,
      levelLines: [
        { level: "bust", along: { points: ["centreBust", "princessBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
    });
    expect(made.problems).toEqual([]);
    // Where nothing is said, half way down its seam, and that is told no more than where darts lead.
    expect(built("centreFront", { "10": places }, { style: "princessArmhole" }).problems).toEqual([
      { code: "own/no-bust-point", size: "10" },
    ]);
  });

  it("a side front lies where its bust point is the centre front's, as far down its seam", () => {
    const places = Object.values(usual("sideFront", "princessArmhole", 200, 260));
    // Its lower end of the princess seam lies at (0, 420).
    const [top, underarm, side, low] = moved(places, -24, 160);
    if (top === undefined || underarm === undefined || side === undefined || low === undefined) throw new Error("side");
    const long = apart(top, low);
    const made = (others: Partial<FromOthers>) =>
      built("sideFront", { "10": places }, { style: "princessArmhole", others });
    const alone = made({});
    const depth = share(underarm, side, 30 / apart(underarm, side));
    expect(points(alone)).toEqual({
      princessTop: at("bust", top),
      armholeTouch: expect.any(Array) as unknown,
      underarm: at("underarm", underarm),
      sideBust: at("bust", depth),
      sideWaist: at("waist", side),
      princessWaist: at("bust", [0, 420]),
      princessBust: at("bust", share(low, top, 0.5)),
    });
    expect(alone.pieces[0]).toMatchObject({
      centreOnFold: false,
      levelLines: [
        { level: "bust", along: { points: ["princessBust", "sideBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
    });
    const known = made({
      princessUpper: new Map([["10", 90]]),
      sideDepth: new Map([["10", 44]]),
      bustPoint: new Map<string, PiecePoint>([["10", piecePoint(101, 277)]]),
    });
    const was = share(top, low, 90 / long);
    const by: At = [101 - was[0], 277 - was[1]];
    const to = (place: At): At => [place[0] + by[0], place[1] + by[1]];
    const near = (place: At, level: LevelName) => [expect.closeTo(place[0], 3), expect.closeTo(place[1], 3), level];
    expect(points(known)).toMatchObject({
      princessBust: near([101, 277], "bust"),
      princessTop: near(to(top), "bust"),
      underarm: near(to(underarm), "underarm"),
      sideBust: near(to(share(underarm, side, 44 / apart(underarm, side))), "bust"),
      sideWaist: near(to(side), "waist"),
      princessWaist: near(to([0, 420]), "bust"),
    });
    // At least a tenth of the seam stays below.
    expect(points(made({ princessUpper: new Map([["10", 500]]) })).princessBust).toEqual(
      at("bust", share(low, top, 0.1)),
    );
    const other = new Map<string, PiecePoint>([["12", piecePoint(101, 277)]]);
    expect(points(made({ bustPoint: other }))).toEqual(points(alone));
  });

  it("basques have their hip 200 mm below the waist, or at 0.87 of their height (common practice)", () => {
    const [, side, hem] = moved(Object.values(usual("frontBasque", "sideDart", 200, 200)), 0, -12);
    const tall = (height: number): At[] => [
      [0, 12],
      [174, 0],
      [200, height - 6],
      [0, height],
    ];
    if (side === undefined || hem === undefined) throw new Error("basque");
    for (const name of ["frontBasque", "backBasque"] as const)
      for (const height of [200, 300]) {
        const made = built(name, { "10": tall(height) });
        // Laid with its waist at 0 in the centre.
        const hip = Math.min(200, 0.87 * (height - 12));
        const across = share([174, -12], [200, height - 18], (hip + 12) / (height - 6));
        expect(points(made)).toEqual({
          centreWaist: at("waist", [0, 0]),
          sideWaist: at("waist", [174, -12]),
          sideHip: at("hip", across),
          sideHem: at("hip", [200, height - 18]),
          centreHem: at("hip", [0, height - 12]),
          centreHip: at("hip", [0, hip]),
        });
        expect(made.pieces[0]).toMatchObject({
          name,
          centreOnFold: name === "frontBasque",
          levelLines: [
            { level: "waist", along: { seam: "waist" } },
            { level: "hip", along: { points: ["centreHip", "sideHip"] } },
          ],
        });
        expect(made.problems).toEqual([]);
      }
  });

  it("bands are parted at 0.4 of their upper seam from the centre, and at the waist alike", () => {
    const places: At[] = [
      [0, 3],
      [220, 30],
      [190, 120],
      [0, 90],
    ];
    for (const name of ["frontBand", "backBand"] as const) {
      const made = built(name, { "10": places }, { style: "midriff" });
      expect(points(made)).toEqual({
        underBustCentre: at("underBust", [0, 333]),
        bandTopMiddle: at("bust", share([0, 333], [220, 360], 0.4)),
        sideUnderBust: at("underBust", [220, 360]),
        sideWaist: at("waist", [190, 450]),
        waistMiddle: at("bust", share([190, 450], [0, 420], 0.6)),
        centreWaist: at("waist", [0, 420]),
      });
      expect(made.pieces[0]?.levelLines).toEqual([
        { level: "underBust", along: { seam: "underBust" } },
        { level: "waist", along: { seam: "waist" } },
      ]);
    }
  });

  it("a strap has its corners and nothing else", () => {
    const made = built(
      "strap",
      {
        "10": [
          [0, 0],
          [40, 0],
          [40, 300],
          [0, 300],
        ],
      },
      { style: "midriff" },
    );
    expect(edges(made)).toEqual([
      "strapBackInner strapBackOuter strap",
      "strapBackOuter strapFrontOuter armhole",
      "strapFrontOuter strapFrontInner strap",
      "strapFrontInner strapBackInner neck",
    ]);
    expect(made.pieces[0]).toMatchObject({ darts: [], levelLines: [], centreOnFold: false });
    expect(made.derived).toEqual([]);
  });

  it("one without a name of ours goes from its upper level to its lower one by its height", () => {
    const places: At[] = [
      [0, 10],
      [200, 10],
      [210, 60],
      [200, 110],
      [0, 110],
    ];
    const levels = { top: "neck", bottom: "bust" } as const;
    const made = built("other1", { "10": places }, { said: { levels } });
    expect(points(made)).toEqual({
      corner00: [0, 10, "neck"],
      corner01: [200, 10, "neck"],
      corner02: [210, 60, "neck", "bust", 0.5],
      corner03: [200, 110, "bust"],
      corner04: [0, 110, "bust"],
    });
    expect(edges(made)?.[0]).toBe("corner00 corner01 edge");
    expect(made.pieces[0]).toMatchObject({ levelLines: [], centreOnFold: false });
    expect(new Set(Object.values(points(built("other1", { "10": places }))).map(([, , level]) => level))).toEqual(
      new Set(["bust"]),
    );
    const same = built("other1", { "10": places }, { said: { levels: { top: "waist", bottom: "waist" } } });
    expect(points(same).corner02).toEqual([210, 60, "waist"]);
  });
});

describe("sizes", () => {
  it("have the same bends: where one turns and the others do not, at its share", () => {
    // The waist of one has a corner in its middle, 12 mm up; half of its own way.
    const turned: At[] = [...FRONT.slice(0, 5), [95, 388], [0, 400]];
    const made = built("front", { "10": turned, "12": FRONT }, { bust: { "10": [95, 260], "12": [95, 260] } });
    expect(names(made, 0)).toEqual(names(made, 1));
    expect(points(made, 0).bend000?.slice(0, 2)).toEqual([95, 408]);
    expect(points(made, 1).bend000?.slice(0, 2)).toEqual([95, 420]);
    expect(edges(made, 1)?.filter((edge) => edge.includes("bend"))).toEqual([
      "sideWaist bend000 waist",
      "bend000 centreWaist waist",
    ]);
    expect([made.deviations.map(rounded), made.problems]).toEqual([[0, 0], []]);
  });

  it("leave what is drawn by what its stretches do and what its fit does, together", () => {
    // A waist in shallow teeth: the curves meant leave its stretches, and the fit those.
    const teeth = Array.from({ length: 37 }, (_, k): At => [190 - (k + 1) * 5, k % 2 === 0 ? 399.8 : 400]);
    const made = built("front", { "10": [...FRONT.slice(0, 5), ...teeth, [0, 400]] }, BUST);
    const meant = made.traced[0]?.ring.off ?? NaN;
    expect(meant).toBeGreaterThan(0.02);
    expect(made.deviations[0]).toBeGreaterThan(meant + 0.02);
    expect(made.deviations[0]).toBeLessThan(0.5);
  });

  it("that have their marks in another order are not built", () => {
    const inner = [
      innerLine(
        [
          [80, 400],
          [95, 280],
          [110, 400],
        ],
        "10",
      ),
      innerLine(
        [
          [80, 400],
          [95, 280],
          [110, 400],
        ],
        "12",
      ),
    ];
    const traced = lying("front", { "10": FRONT, "12": FRONT }, { group: { inner } });
    const [one, other] = traced.sizes;
    if (one === undefined || other === undefined) throw new Error("sizes");
    const bustSaid = new Map([
      ["10", piecePoint(95, 260)],
      ["12", piecePoint(95, 260)],
    ]);
    const given = { said: undefined, marks: [], bustSaid, others: NOTHING_KNOWN };
    const swapped = { ...other, darts: other.darts.map((dart) => ({ ...dart, innerFirst: !dart.innerFirst })) };
    const unlike = buildPiece({ ...traced, sizes: [one, swapped] }, "front", given);
    expect([unlike.pieces, unlike.deviations]).toEqual([[], [0, 0]]);
    expect(unlike.problems).toEqual([
      { code: "own/sizes-unlike", size: "10" },
      { code: "own/sizes-unlike", size: "12" },
    ]);
    const fewer = buildPiece({ ...traced, sizes: [one, { ...other, darts: [] }] }, "front", given);
    expect(fewer.problems).toEqual(unlike.problems);
    expect(buildPiece(traced, "front", given).pieces).toHaveLength(2);
    // None of a piece in which no corners were found.
    expect(buildPiece({ ...traced, sizes: [] }, "front", given)).toEqual({
      pieces: [],
      traced: [],
      bustPoints: [],
      derived: [],
      deviations: [],
      problems: [],
    });
  });

  it("in which two corners lie in one place lack the second", () => {
    const traced = lying("front", { "10": FRONT });
    const [one] = traced.sizes;
    if (one === undefined) throw new Error("size");
    const corners = one.corners.map((corner) =>
      corner.name === "sideNeck" ? { ...corner, s: one.corners[2]?.s ?? NaN } : corner,
    );
    const made = buildPiece({ ...traced, sizes: [{ ...one, corners }] }, "front", {
      said: undefined,
      marks: [],
      bustSaid: new Map([["10", piecePoint(95, 260)]]),
      others: NOTHING_KNOWN,
    });
    expect([made.pieces, made.problems]).toEqual([
      [],
      [{ code: "own/corner-missing", corner: "shoulderTip", size: "10" }],
    ]);
  });

  it("say in which seam they turn more than 300 times", () => {
    const saw = (count: number): At[] => [
      ...FRONT.slice(0, 5),
      ...Array.from({ length: count }, (_, k): At => [190 - ((k + 1) * 190) / (count + 1), k % 2 === 0 ? 399 : 400]),
      [0, 400],
    ];
    const made = (count: number) => built("front", { "10": saw(count) }, BUST);
    expect(made(301)).toMatchObject({ pieces: [], problems: [{ code: "own/seam-too-long", seam: "waist", size: "" }] });
    expect(made(200)).toMatchObject({ pieces: [{ name: "front" }], problems: [] });
  });
});
