/**
 * What an opening lets through, on garments of straight pieces whose girth at every level is plain to see, and on the pieces
 * of every style by an independent library. Over any level: its girth, and twice the way from it down to the opening's end.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CheckResult } from "../../../src/core/checks/check";
import { openingPasses } from "../../../src/core/checks/openingPasses";
import { STYLE_NAMES, type Closure } from "../../../src/core/decisions/pattern";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Dart, Piece, PieceName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { clothCorners, lengthOnCloth, polygonOf, seamByBezierJs } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

/** Half widths of a piece from its upper edge down: [y, x], straight from one to the next. */
type Profile = readonly (readonly [y: number, x: number])[];

const CORNERS = ["underarm", "sideBust", "sideWaist"] as const;
const BELOW = ["sideWaist", "sideHip", "sideHem"] as const;

/** A half bodice, its waist at y = 0: three corners down the side, the neck edge the whole of its upper edge. */
function bodice(name: PieceName, [top, middle, waist]: Profile): Piece {
  const at = [top, middle, waist].map((corner) => invariant(corner, "corner"));
  const [first] = at;
  const points = Object.fromEntries(at.map(([y, x], i) => [CORNERS[i], named(x, y, "bust")]));
  return {
    name,
    points: { ...points, centreNeck: named(0, invariant(first, "top")[0], "neck"), centreWaist: named(0, 0, "waist") },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideBust", "side"),
      straight("sideBust", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  };
}

/** A half basque, its waist at y = 0, with the hip line at the second corner. */
function basque(name: PieceName, profile: Profile, dart: number | null = null): Piece {
  const at = profile.map(([y, x]) => named(x, y, "hip"));
  const depth = invariant(profile[2], "hem")[0];
  const points = Object.fromEntries(at.map((point, i) => [BELOW[i], point]));
  const waist =
    dart === null
      ? [straight("centreWaist", "sideWaist", "waist")]
      : [
          straight("centreWaist", "waistDartInner", "waist"),
          mouth("waistDartInner", "waistDartOuter", "waist", "waistDart"),
          straight("waistDartOuter", "sideWaist", "waist"),
        ];
  const darts: readonly Dart[] =
    dart === null
      ? []
      : [
          {
            name: "waistDart",
            seam: "waist",
            inner: "waistDartInner",
            outer: "waistDartOuter",
            apex: "waistDartApex",
            aimsAt: null,
          },
        ];
  return {
    name,
    points: {
      ...points,
      centreWaist: named(0, 0, "waist"),
      centreHip: named(0, invariant(profile[1], "hip")[0], "hip"),
      centreHem: named(0, depth, "hip"),
      ...(dart === null
        ? {}
        : {
            waistDartInner: named(60, 0, "waist"),
            waistDartOuter: named(60 + dart, 0, "waist"),
            waistDartApex: named(60 + dart / 2, 100, "waist"),
          }),
    },
    edges: [
      ...waist,
      straight("sideWaist", "sideHip", "side"),
      straight("sideHip", "sideHem", "side"),
      straight("sideHem", "centreHem", "hem"),
      straight("centreHem", "centreHip", "centre"),
      straight("centreHip", "centreWaist", "centre"),
    ],
    darts,
    levelLines: [],
    centreOnFold: false,
  };
}

/** Front and back alike. */
const garment = (above: Profile, below: Profile, dart: number | null = null): PieceSet =>
  setOf([
    bodice("front", above),
    bodice("back", above),
    basque("frontBasque", below, dart),
    basque("backBasque", below, dart),
  ]);

/** Straight down from the underarm, 300 above the waist. */
const even = (width: number): Profile => [
  [-300, width],
  [-100, width],
  [0, width],
];

interface Asked {
  readonly bust?: number;
  readonly hip?: number | null;
  readonly place?: Closure["place"];
  readonly other?: PieceSet;
}

function results(pieces: PieceSet, belowWaist: number, { bust = 2000, hip = 1000, place, other }: Asked = {}) {
  return openingPasses({
    pieces,
    halves: [pieces, other ?? pieces],
    levels: [],
    darts: [],
    alterations: [],
    closure: { place: place ?? "centreBack", belowWaist },
    body: { bust, hip },
  });
}

function only(all: readonly CheckResult[]): CheckResult {
  expect(all).toHaveLength(1);
  return invariant(all[0], "result");
}

describe("closed forms, centre back", () => {
  it("a tube lets its girth through, and has to be open from the hip line by half of what it lacks", () => {
    // 4 × 180 = 720 all the way; hips of 1000 and 20 go down to the hip line at 150.
    const tube = garment(even(180), [
      [0, 180],
      [150, 180],
      [600, 180],
    ]);
    const result = only(results(tube, 80));
    expect(result).toEqual({
      name: "openingPasses",
      ok: false,
      measured: expect.closeTo(720, 6),
      expected: 1020,
      tolerance: 0,
      unit: "mm",
      level: "hip",
      pieces: ["frontBasque", "backBasque"],
      tightest: {
        way: "steppingIn",
        belowWaist: expect.any(Number),
        longer: expect.closeTo(150 + (1020 - 720) / 2 - 80, 6),
      },
    });
    expect(result.measured).toBeCloseTo(720, 6);
    expect(result.tightest?.longer).toBeCloseTo(150 + (1020 - 720) / 2 - 80, 6);
  });

  it("a steep cone is tightest at the waist: 720 with 80 open below gives 880, whatever the skirt measures there", () => {
    // Each half piece a millimetre wider a millimetre down: 720 + 4 × 80 = 1040 where the opening ends.
    const steep = garment(even(180), [
      [0, 180],
      [200, 380],
      [600, 780],
    ]);
    const result = only(results(steep, 80));
    expect(result).toMatchObject({ ok: false, level: "waist", pieces: ["frontBasque", "backBasque"] });
    expect(result.measured).toBeCloseTo(880, 6);
    expect(result.tightest).toMatchObject({ way: "steppingIn", belowWaist: 0 });
    expect(result.tightest?.longer).toBeCloseTo(70, 6);
    expect(only(results(steep, 150)).ok).toBe(true);
    expect(only(results(steep, 149.9)).ok).toBe(false);
  });

  it("a slight cone is tightest where the opening ends", () => {
    // Wider by one in girth a millimetre down, less than the two that the way gains.
    const slight = garment(even(180), [
      [0, 180],
      [200, 230],
      [600, 330],
    ]);
    const result = only(results(slight, 80));
    expect(result.level).toBe("hip");
    expect(result.measured).toBeCloseTo(800, 6);
    expect(result.tightest?.belowWaist).toBeCloseTo(80, 6);
  });

  it("a belt narrower than the waist, above the opening's end, is found", () => {
    const belted = garment(even(200), [
      [0, 200],
      [60, 150],
      [200, 290],
    ]);
    const result = only(results(belted, 100));
    expect(result.measured).toBeCloseTo(4 * 150 + 2 * 40, 6);
    expect(result.tightest?.belowWaist).toBeCloseTo(60, 6);
  });

  it("so is one above the waist", () => {
    const high = garment(
      [
        [-300, 250],
        [-100, 90],
        [0, 250],
      ],
      [
        [0, 250],
        [200, 250],
        [400, 250],
      ],
    );
    const result = only(results(high, 50));
    expect(result).toMatchObject({ level: "bust", pieces: [] });
    expect(result.measured).toBeCloseTo(4 * 90 + 2 * 150, 6);
    expect(result.tightest?.belowWaist).toBeCloseTo(-100, 6);
  });

  it("the neck edge is a level too", () => {
    const high: Profile = [
      [-300, 40],
      [-299, 300],
      [0, 300],
    ];
    const skirt: Profile = [
      [0, 300],
      [200, 300],
      [400, 300],
    ];
    const result = only(results(garment(high, skirt), 50));
    expect(result).toMatchObject({ level: "neck", pieces: ["front", "back"] });
    expect(result.measured).toBeCloseTo(4 * 40 + 2 * 350, 6);
  });

  it("what a dart takes is no cloth", () => {
    // 40 a piece at the waist, none at the dart's end 100 below.
    const darted = garment(
      even(180),
      [
        [0, 220],
        [200, 420],
        [600, 820],
      ],
      40,
    );
    const result = only(results(darted, 80));
    expect(result.measured).toBeCloseTo(4 * 180 + 160, 6);
    expect(result.level).toBe("waist");
  });

  it("halves that differ bring half of the girth each, whichever is asked first", () => {
    const skirt: Profile = [
      [0, 180],
      [200, 380],
      [600, 780],
    ];
    const [slim, wide] = [
      garment(even(180), skirt),
      garment(
        even(200),
        skirt.map(([y, x]) => [y, x + 20] as const),
      ),
    ];
    for (const [one, other] of [
      [slim, wide],
      [wide, slim],
    ] as const) {
      expect(only(results(one, 80, { other })).measured).toBeCloseTo(2 * 180 + 2 * 200 + 160, 6);
    }
  });
});

describe("cups on a band", () => {
  /** A half band 100 deep, straight up from the waist, joined to what lies above along its upper edge. */
  const band = (name: PieceName, width: number): Piece => ({
    name,
    points: {
      underBustCentre: named(0, -100, "underBust"),
      sideUnderBust: named(width, -100, "underBust"),
      sideWaist: named(width, 0, "waist"),
      centreWaist: named(0, 0, "waist"),
    },
    edges: [
      straight("underBustCentre", "sideUnderBust", "underBust"),
      straight("sideUnderBust", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "underBustCentre", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  });
  const skirt: Profile = [
    [0, 180],
    [200, 330],
    [600, 630],
  ];
  const cupped = (above: Profile, width = 180): PieceSet =>
    setOf([
      bodice("cup", above),
      bodice("back", above),
      band("frontBand", width),
      band("backBand", width),
      basque("frontBasque", skirt),
      basque("backBasque", skirt),
    ]);

  it("count the way over the band: a narrow place 50 above it lies 150 above the waist", () => {
    const narrow = cupped([
      [-200, 180],
      [-50, 100],
      [0, 180],
    ]);
    // 4 × 100 round, and twice 80 + 100 + 50 down to the end; the waist lets 720 + 160 through.
    const result = only(results(narrow, 80));
    expect(result.measured).toBeCloseTo(400 + 2 * 230, 6);
    expect(result.tightest?.belowWaist).toBeCloseTo(-150, 6);
  });

  it("count the seam at the under-bust where it lies: 100 above the waist", () => {
    const tight = cupped(even(180), 110);
    // The seam 4 × 110 and twice 80 + 100; the band just above the waist is as narrow and lets no more through than this.
    const result = only(results(tight, 80));
    expect(result.measured).toBeCloseTo(440 + 2 * 80, 6);
    const open = only(results(cupped(even(180)), 80));
    expect(open.measured).toBeCloseTo(720 + 2 * 80, 6);
  });
});

describe("either way in", () => {
  const steep = garment(even(180), [
    [0, 180],
    [200, 380],
    [600, 780],
  ]);

  it("takes the easier: overhead, bust and shoulders go through what hips do not", () => {
    const result = only(results(steep, 80, { bust: 800 }));
    expect(result).toMatchObject({ ok: true, expected: 860, tightest: { way: "overhead", longer: 0 } });
    expect(only(results(steep, 80, { bust: 821 }))).toMatchObject({ ok: false, expected: 881 });
  });

  it("overhead goes through every closed level down to the hem, stepping in only to the hip line", () => {
    const pegged = garment(even(180), [
      [0, 180],
      [200, 260],
      [600, 120],
    ]);
    // 480 at the hem, under the hips' way; at the end of the opening 720 + 1.6 × 150, and the waist 720 + 300.
    const stepping = only(results(pegged, 150, { hip: 900, bust: 880 }));
    expect(stepping).toMatchObject({ ok: true, expected: 920, tightest: { way: "steppingIn" } });
    expect(stepping.measured).toBeCloseTo(960, 6);
    const overhead = only(results(pegged, 150, { hip: null, bust: 880 }));
    expect(overhead).toMatchObject({ ok: false, expected: 940, tightest: { way: "overhead" } });
    expect(overhead.measured).toBeCloseTo(480, 6);
    // Open to the hem, nothing is closed.
    expect(overhead.tightest?.longer).toBeCloseTo(450, 6);
    expect(results(pegged, 600, { hip: null, bust: 880 })).toEqual([]);
  });
});

describe("at the side", () => {
  // The side seam runs 3 across for 4 down, so 80 down is 100 along it.
  const flared = garment(even(180), [
    [0, 180],
    [200, 330],
    [600, 630],
  ]);

  it("the way is along the seam that opens, and the neck stays closed", () => {
    const all = results(flared, 100, { place: "side", bust: 800 });
    expect(all.map(({ level, ok }) => [level, ok])).toEqual([
      ["neck", true],
      ["waist", true],
    ]);
    expect(all[0]).toMatchObject({ measured: 720, expected: 570 });
    expect(all[1]?.measured).toBeCloseTo(720 + 2 * 100, 6);
  });

  it("a neck that hips go through lets her step in", () => {
    const wide = garment(even(260), [
      [0, 180],
      [200, 330],
      [600, 630],
    ]);
    const all = results(wide, 150, { place: "side" });
    expect(all).toMatchObject([
      { level: "neck", measured: 1040, expected: 1020, ok: true },
      { level: "waist", measured: 1020, expected: 1020, ok: true, tightest: { way: "steppingIn" } },
    ]);
  });

  it("a bodice that ends at the waist has only its neck to pass", () => {
    const short = setOf([bodice("front", even(180)), bodice("back", even(100))]);
    expect(results(short, 0, { place: "side" })).toMatchObject([
      { level: "neck", measured: 560, expected: 570, ok: false },
    ]);
    expect(results(short, 0)).toEqual([]);
  });
});

describe("every style, by flatten-js and bezier-js", () => {
  it.each(STYLE_NAMES)("%s: the least over the waist and each level below it", (style) => {
    for (const belowWaist of [40, 170]) {
      const { left, checks } = planOf({
        ...testWork,
        pattern: { ...testWork.pattern, style, length: "hip", closure: { place: "centreBack", belowWaist } },
      });
      const pieces = setOf(left.pieces);
      const basques = (["frontBasque", "backBasque"] as const).map((name) => pieceIn(pieces, name));
      const girthAt = (y: number): number =>
        basques.reduce(
          (sum, piece) => sum + 2 * lengthOnCloth(polygonOf(clothCorners(piece)), { x: -200, y }, { x: 900, y }),
          0,
        );
      const hipLine = invariant(basques[1]?.points.centreHip, "hip").at.y;
      const heights = [...Array.from({ length: Math.ceil(hipLine / 5) }, (_, at) => 5 * at), hipLine];
      const levels = heights.map((y) => girthAt(y) + 2 * Math.max(0, belowWaist - y));
      const waist = basques.reduce((sum, piece) => sum + 2 * seamByBezierJs(piece, "waist"), 0);
      const result = invariant(
        checks.find(({ name }) => name === "openingPasses"),
        "opening",
      );
      expect(Math.abs(result.measured - Math.min(waist + 2 * belowWaist, ...levels))).toBeLessThan(0.3);
    }
  });
});

describe("any straight garment", () => {
  const width = fc.integer({ min: 60, max: 400 });
  const any = fc.record({
    above: fc.tuple(width, width, width),
    below: fc.tuple(width, width),
    end: fc.integer({ min: 0, max: 380 }),
    more: fc.integer({ min: 1, max: 200 }),
    place: fc.constantFrom("centreBack" as const, "side" as const),
    hip: fc.integer({ min: 500, max: 1500 }),
    bust: fc.integer({ min: 500, max: 1500 }),
  });
  const made = ({ above: [a, b, c], below: [d, e] }: { above: readonly number[]; below: readonly number[] }) =>
    garment(
      [
        [-300, a ?? 0],
        [-100, b ?? 0],
        [0, c ?? 0],
      ],
      [
        [0, c ?? 0],
        [200, d ?? 0],
        [400, e ?? 0],
      ],
    );
  const roomOf = (all: readonly CheckResult[]): number =>
    Math.min(Infinity, ...all.map(({ measured, expected }) => measured - expected));

  it("a longer opening is never the worse", () => {
    fc.assert(
      fc.property(any, ({ above, below, end, more, place, hip, bust }) => {
        const pieces = made({ above, below });
        const [one, longer] = [end, end + more].map((to) => results(pieces, to, { hip, bust, place }));
        const passes = (all: readonly CheckResult[] | undefined): boolean => (all ?? []).every(({ ok }) => ok);
        expect(passes(one) && !passes(longer)).toBe(false);
        const [hipsAlone, hipsLonger] = [end, end + more].map((to) => results(pieces, to, { hip, bust: 9000 }));
        expect(roomOf(hipsLonger ?? [])).toBeGreaterThanOrEqual(roomOf(hipsAlone ?? []) - 1e-9);
      }),
    );
  });

  it("passes once it is as much longer as is said, and not a millimetre less", () => {
    fc.assert(
      fc.property(any, ({ above, below, end, hip }) => {
        const pieces = made({ above, below });
        const asked = { hip, bust: 9000 };
        const longer = results(pieces, end, asked)[0]?.tightest?.longer ?? 0;
        const isPassed = (to: number): boolean => results(pieces, to, asked).every(({ ok }) => ok);
        expect(isPassed(end + longer + 1e-6)).toBe(true);
        expect(longer > 1 && isPassed(end + longer - 1)).toBe(false);
      }),
    );
  });
});
