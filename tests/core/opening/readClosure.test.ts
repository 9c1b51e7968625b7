/**
 * Getting into a dress: hand-made loops, and the least over every level by sampling finely, on straight bodices with any skirt
 * and lining. Zips by the lists of what is sold.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { STYLE_NAMES, type Closure } from "../../../src/core/decisions/pattern";
import { tightestOf } from "../../../src/core/opening/gettingThrough";
import { readClosure, type ClosureAsked } from "../../../src/core/opening/readClosure";
import { named, straight } from "../../../src/core/pattern/namedEdges";
import { isBasque } from "../../../src/core/pattern/pieceGroups";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { clothCorners, lengthOnCloth, polygonOf, seamByBezierJs } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

/** Half width at the underarm 300 above the waist, and at the waist; its whole upper edge is the neck. */
function box(name: PieceName, top: number, waist: number): Piece {
  return {
    name,
    points: {
      centreNeck: named(0, -300, "neck"),
      underarm: named(top, -300, "bust"),
      sideWaist: named(waist, 0, "waist"),
      centreWaist: named(0, 0, "waist"),
    },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  };
}

const bodice = (top: number, waist: number): PieceSet => setOf([box("front", top, waist), box("back", top, waist)]);

type Asked = Partial<Omit<ClosureAsked, "closure" | "bodice">> & {
  readonly place?: Closure["place"];
  readonly buttons?: number;
  readonly pieces?: PieceSet;
  readonly bust?: number;
  readonly hip?: number | null;
  readonly hipDepth?: number;
  readonly shoulderGirth?: number | null;
};

function read(belowWaist: number, asked: Asked = {}) {
  const { place = "centreBack", buttons, pieces = bodice(180, 180), bust = 2000, hip = 1000 } = asked;
  const { hipDepth = 200, shoulderGirth = null, ...more } = asked;
  return invariant(
    readClosure({
      zip: "lapped",
      skirt: [],
      lining: [],
      ...more,
      bodice: [pieces, pieces],
      closure: { place, belowWaist, ...(buttons === undefined ? {} : { buttons }) },
      body: { bust, hip, shoulderGirth, hipDepth },
    }),
    "reading",
  );
}

/** 1152 wide at once, to 600 below the waist. */
const tier = [
  { below: 0, girth: 1152 },
  { below: 600, girth: 1152 },
];

describe("a waist of 720 over a tier of 1152", () => {
  it("lets 880 through with 80 open below, though the tier is wide enough", () => {
    const reading = read(80, { skirt: tier });
    expect(reading.passes).toBe(false);
    const [easier] = reading.ways;
    expect(easier).toMatchObject({
      way: "steppingIn",
      needed: 1020,
      passes: false,
      tightest: { below: 0, girth: 720, lets: 880, of: "shell", at: "waist" },
    });
    expect(easier?.longer).toBeCloseTo(70, 6);
    expect(reading.leastOpening).toBeCloseTo(300 + 150, 6);
    expect(reading.opening).toBe(380);
  });

  it("passes just from 150 on", () => {
    expect(read(150, { skirt: tier }).passes).toBe(true);
    expect(read(149.9, { skirt: tier }).passes).toBe(false);
  });

  it("overhead it is bust and 60, or the shoulders where they are more", () => {
    expect(read(80, { skirt: tier, bust: 820 }).ways[0]).toMatchObject({ way: "overhead", needed: 880, passes: true });
    expect(read(80, { skirt: tier, bust: 821 }).passes).toBe(false);
    expect(read(80, { skirt: tier, bust: 800, shoulderGirth: 870 }).ways[0]).toMatchObject({
      needed: 870,
      passes: true,
    });
    expect(read(80, { skirt: tier, bust: 800, shoulderGirth: 890 }).passes).toBe(false);
  });

  it("the hips go no further than they are, bust and shoulders through the hem too", () => {
    const pegged = [
      { below: 0, girth: 720 },
      { below: 200, girth: 1100 },
      { below: 600, girth: 700 },
    ];
    expect(read(160, { skirt: pegged })).toMatchObject({
      passes: true,
      ways: [{ way: "steppingIn" }, { way: "overhead", passes: false }],
    });
    const overhead = read(160, { skirt: pegged, hip: null, bust: 700 });
    expect(overhead.ways).toMatchObject([{ way: "overhead", passes: false, tightest: { below: 600, lets: 700 } }]);
  });

  it("a lining is a loop of its own, open as much further as its V", () => {
    const lining = [
      { below: 0, girth: 710 },
      { below: 200, girth: 1010 },
      { below: 580, girth: 1200 },
    ];
    // At its own waist 710 + 2 × (160 + 25); where its V ends, at 185 below, 710 + 1.5 × 185 = 987.5.
    const reading = read(160, { skirt: tier, lining, liningFree: 25 });
    expect(reading.passes).toBe(false);
    expect(reading.ways[0]?.tightest).toMatchObject({ of: "lining", below: 185 });
    expect(reading.ways[0]?.tightest.lets).toBeCloseTo(987.5, 6);
    // The hips go 200 down, where it is 1010 wide: its V has to end at 205, the zip 25 above that; its waist is long enough then.
    expect(reading.leastOpening).toBeCloseTo(300 + 180, 6);
    expect(read(179.9, { skirt: tier, lining, liningFree: 25 }).passes).toBe(false);
    expect(read(180, { skirt: tier, lining, liningFree: 25 }).passes).toBe(true);
  });
});

describe("a loop that is just wide enough", () => {
  it("ends what the loops above it ask for: there nothing is lacking any more", () => {
    // 1020 needed: of 720 at the waist 300 are lacking, at 200 below it none. Half-way 150 lack, and so on: open to 200.
    const just = [
      { below: 0, girth: 720 },
      { below: 200, girth: 1020 },
      { below: 600, girth: 1020 },
    ];
    expect(read(80, { skirt: just }).leastOpening).toBeCloseTo(300 + 200, 9);
    expect([read(199.9, { skirt: just }).passes, read(200, { skirt: just }).passes]).toEqual([false, true]);
  });

  it("lets as far up as down: one above the opening by twice the way to its end", () => {
    const { ways } = read(100, { skirt: tier, hip: 1100, bust: 2000 });
    // 720 + 2 × 100 at the waist.
    expect(ways.find(({ way }) => way === "steppingIn")?.tightest).toEqual({
      girth: 720,
      lets: 920,
      of: "shell",
      at: "waist",
      below: 0,
    });
  });
});

describe("how far down the hips go", () => {
  const tight = [
    { below: 0, girth: 1100 },
    { below: 220, girth: 1100 },
    { below: 240, girth: 900 },
    { below: 600, girth: 900 },
  ];

  it("is told of her lining by itself, where it hangs otherwise", () => {
    const lined = (liningHipDepth?: number) =>
      read(180, { skirt: tier, lining: tight, ...(liningHipDepth === undefined ? {} : { liningHipDepth }) });
    // Her hips go 200 down, where it is 1100 wide; 250 along the lining it is 900, of 1020 needed.
    expect([lined().passes, lined(210).passes, lined(250).passes]).toEqual([true, true, false]);
    expect(lined(250).ways[0]?.tightest).toMatchObject({ of: "lining", lets: 900 });
  });

  it("is the hip line of the garment's own basques where her own is not told, of halves the lower one", () => {
    /** From the waist, 180 and 190 wide, out to 250 at the hip line and as wide below. */
    const basque = (name: PieceName, hip: number): Piece => ({
      name,
      points: {
        centreWaist: named(0, 0, "waist"),
        sideWaist: named(180, 0, "waist"),
        sideHip: named(260, hip, "hip"),
        sideHem: named(200, 300, "hip"),
        centreHem: named(0, 300, "hip"),
        centreHip: named(0, hip, "hip"),
      },
      edges: [
        straight("centreWaist", "sideWaist", "waist"),
        straight("sideWaist", "sideHip", "side"),
        straight("sideHip", "sideHem", "side"),
        straight("sideHem", "centreHem", "hem"),
        straight("centreHem", "centreHip", "centre"),
        straight("centreHip", "centreWaist", "centre"),
      ],
      darts: [],
      levelLines: [],
      centreOnFold: false,
    });
    const half = (hip: number): PieceSet =>
      setOf([box("front", 180, 180), box("back", 180, 180), basque("frontBasque", hip), basque("backBasque", hip)]);
    const read200 = (left: number, right: number, place: Closure["place"] = "centreBack", belowWaist = 180) =>
      readClosure({
        zip: "lapped",
        skirt: [],
        lining: [],
        bodice: [half(left), half(right)],
        closure: { place, belowWaist },
        body: { bust: 2000, hip: 1000, shoulderGirth: null },
      });
    // To a hip line at 150 it is wide enough; below it comes in to 4 × 200, which hips that go on to 290 meet.
    expect(read200(150, 150).passes).toBe(true);
    expect([read200(290, 290).passes, read200(150, 290).passes, read200(290, 150).passes]).toEqual(
      Array.from({ length: 3 }, () => read200(290, 290).passes),
    );
    // It is open no further than it is long: 300 at the centre back, along the side the slants of all of it.
    const slant = Math.hypot(80, 150) + Math.hypot(60, 150);
    expect(read200(150, 150, "centreBack", 900)).toMatchObject({ comesApart: true, opening: 600 });
    expect(read200(150, 150, "side", 900).opening).toBeCloseTo(300 + slant, 6);
    const longer = setOf([
      ...piecesOf(half(150)).filter(({ name }) => name !== "frontBasque"),
      basque("frontBasque", 20),
    ]);
    const uneven = readClosure({
      zip: "lapped",
      skirt: [],
      lining: [],
      bodice: [longer, longer],
      closure: { place: "side", belowWaist: 900 },
      body: { bust: 2000, hip: 1000, shoulderGirth: null },
    });
    // The longer of both sides that are sewn there.
    const other = Math.hypot(80, 20) + Math.hypot(60, 280);
    expect(uneven.opening).toBeCloseTo(300 + Math.max(slant, other), 6);
  });
});

describe("the way that is easier", () => {
  it("comes first: by how much longer the opening had to be, and of two that pass by the room", () => {
    const ways = (bust: number, hip: number) => read(150, { skirt: tier, bust, hip }).ways.map(({ way }) => way);
    // 1020 lets through just 1000 and 20; 960 and 60 overhead.
    expect([ways(959, 1000), ways(960, 1000), ways(961, 1000)]).toEqual([
      ["overhead", "steppingIn"],
      ["steppingIn", "overhead"],
      ["steppingIn", "overhead"],
    ]);
    expect([ways(900, 900), ways(820, 900), ways(2000, 1500)]).toEqual([
      ["steppingIn", "overhead"],
      ["overhead", "steppingIn"],
      ["steppingIn", "overhead"],
    ]);
  });
});

describe("a closed neck", () => {
  it("has to pass a head of 570", () => {
    const around = (top: number) =>
      read(200, { place: "side", skirt: tier, bust: 700, hip: null, pieces: bodice(top, 180) }).passes;
    // Four quarters of 142.5 round the neck; at the underarm the side opens.
    expect([around(142.5), around(142.4)]).toEqual([true, false]);
  });

  it("opens at the centre back with the rest: twice the way from its upper end", () => {
    const wide = [
      { below: 0, girth: 1600 },
      { below: 600, girth: 1600 },
    ];
    // 80 round the neck, and 300 down to the waist on both sides.
    const reading = read(0, { skirt: wide, bust: 400, hip: null, pieces: bodice(20, 400) });
    expect(reading.ways[0]).toMatchObject({
      needed: 570,
      tightest: { at: "neck", girth: 80, lets: 680, below: -300, of: "shell" },
    });
  });

  it("goes over straps as they are made", () => {
    const strap: Piece = {
      ...box("strap", 40, 40),
      edges: box("strap", 40, 40).edges.map((edge) => (edge.seam === "neck" ? edge : { ...edge, seam: "armhole" })),
    };
    const pieces = setOf([box("front", 80, 180), box("back", 80, 180), strap]);
    const neck = (strapLengths?: readonly [number, number]) =>
      read(200, {
        place: "side",
        skirt: tier,
        bust: 700,
        hip: null,
        pieces,
        ...(strapLengths === undefined ? {} : { strapLengths }),
      }).ways[0]?.tightest;
    // Two of 80 and one of 40 on each half, or one as long as it is made.
    expect(neck()).toMatchObject({ at: "neck", girth: 400 });
    expect(neck([90, 90])).toMatchObject({ at: "neck", girth: 500 });
    // Each by its own.
    expect(neck([90, 60])).toMatchObject({ at: "neck", girth: 470 });
  });
});

it("of no loops none is the tightest", () => {
  expect(tightestOf([])).toBeNull();
});

describe("where the tapes are marked", () => {
  it("is at the seam of a band too, half-way between halves that differ", () => {
    const banded = (deep: number): PieceSet => {
      const band = box("backBand", 180, 180);
      return setOf([
        box("front", 180, 180),
        box("back", 180, 180),
        {
          ...band,
          points: {
            ...band.points,
            centreNeck: named(0, -deep, "underBust"),
            underarm: named(180, -deep, "underBust"),
          },
        },
      ]);
    };
    const marks = (left: number, right: number, place: Closure["place"]) =>
      readClosure({
        zip: "lapped",
        skirt: tier,
        lining: [],
        bodice: [banded(left), banded(right)],
        closure: { place, belowWaist: 150 },
        body: { bust: 700, hip: null, shoulderGirth: null },
      }).levelMarks;
    expect(marks(60, 80, "centreBack")).toEqual([
      { at: "topEdge", from: 0 },
      { at: "underBust", from: 300 },
      { at: "waist", from: 370 },
      { at: "end", from: 520 },
    ]);
    // Of a side those of her left.
    expect(marks(60, 80, "side").map(({ from }) => from)).toEqual([0, 300, 360, 510]);
    expect(read(0, { skirt: tier }).levelMarks).toEqual([
      { at: "topEdge", from: 0 },
      { at: "waist", from: 300 },
    ]);
  });
});

describe("halves that differ", () => {
  it("are sewn into one zip at the centre back: it begins half-way between both", () => {
    const longer = setOf(
      [box("front", 180, 180), box("back", 180, 180)].map((piece) => ({
        ...piece,
        points: { ...piece.points, centreNeck: named(0, -320, "neck") },
      })),
    );
    const closure = readClosure({
      zip: "lapped",
      skirt: [],
      lining: [],
      bodice: [bodice(180, 180), longer],
      closure: { place: "centreBack", belowWaist: 0 },
      body: { bust: 900, hip: null, shoulderGirth: null },
    });
    expect(closure.opening).toBeCloseTo((300 + 320) / 2, 6);
  });
});

describe("at her left side", () => {
  it("the neck stays closed, and the way is along the side", () => {
    const reading = read(200, { skirt: tier, place: "side" });
    // 720 round the neck: no hips go through; 2060 of bust and shoulders only where it is open to the hem.
    expect(reading).toMatchObject({ passes: false, leastOpening: 900, zip: { cm: null, in: null } });
    expect(reading.ways.find(({ way }) => way === "steppingIn")).toMatchObject({
      longer: null,
      tightest: { at: "neck", lets: 720, below: -300 },
    });
    const overhead = read(200, { skirt: tier, place: "side", bust: 900 });
    expect(overhead).toMatchObject({ passes: true, leastOpening: 300 + 120 });
  });

  it("tied straps are no closed neck", () => {
    expect(read(200, { skirt: tier, place: "side", isNeckUntied: true }).passes).toBe(true);
  });

  it("the zip begins at the underarm: 5 along for 4 down", () => {
    const reading = read(100, { place: "side", pieces: bodice(180 + 225, 180), skirt: tier });
    expect(reading.opening).toBeCloseTo(375 + 100, 6);
    expect(reading.levelMarks.map(({ at, from }) => [at, Math.round(from)])).toEqual([
      ["topEdge", 0],
      ["waist", 375],
      ["end", 475],
    ]);
  });
});

describe("the zip", () => {
  it.each([
    ["lapped", 150, 460, 18 * 25.4],
    ["lapped", 160, 460, 20 * 25.4],
    ["lapped", 161, 510, 20 * 25.4],
    ["invisible", 150, 510, 20 * 25.4],
    ["invisible", 135, 510, 20 * 25.4],
    ["invisible", 286, 600, 24 * 25.4],
    ["lapped", 300, 600, 24 * 25.4],
    ["lapped", 305, 600, 24 * 25.4],
  ] as const)("%s, open %i below the waist", (zip, belowWaist, cm, inches) => {
    // The bodice is 300 long; where 150 is not reached, the zip is that of the least opening.
    const reading = read(belowWaist, { skirt: tier, zip });
    expect(reading.zip.cm?.length ?? null).toBe(cm);
    expect(reading.zip.in?.length ?? -1).toBeCloseTo(inches ?? -1, 6);
  });

  it.each([
    // 279 is 579 from the top: 60 cm less 25 closes 575, and 450 lets her in; 24 in closes 584.6.
    ["invisible", 279, 575, null],
    ["invisible", 274, null, null],
    ["invisible", 286, 575, 24 * 25.4 - 25],
    ["lapped", 305, 600, null],
    ["lapped", 299, null, null],
  ] as const)("%s, open %i below the waist: where it ends for the longest sold", (zip, belowWaist, cm, inches) => {
    const { endsAt } = read(belowWaist, { skirt: tier, zip });
    expect(endsAt.cm).toBe(cm);
    expect(endsAt.in === null).toBe(inches === null);
    expect(endsAt.in ?? 0).toBeCloseTo(inches ?? 0, 6);
  });

  it("is none where even the longest would not let her in", () => {
    // Hips of 1620 and 20 over a waist of 720 ask for 460 below it, 760 in all.
    const reading = read(500, { skirt: [tier[0], { below: 900, girth: 1700 }].flatMap((one) => one ?? []), hip: 1620 });
    expect(reading).toMatchObject({ passes: true, zip: { cm: null, in: null }, endsAt: { cm: null, in: null } });
  });

  it("at the side it is a zip, whatever buttons were chosen for the back", () => {
    const pieces = setOf(
      [...(["front", "back"] as const)].map((name) => ({ ...box(name, 180, 180), centreOnFold: false })),
    );
    const asked = { skirt: tier, place: "side", pieces, bust: 700 } as const;
    expect(read(160, { ...asked, buttons: 8 }).zip).toEqual(read(160, asked).zip);
  });

  it("is none where buttons close it, or where it comes apart", () => {
    expect(read(160, { skirt: tier, buttons: 8 }).zip).toEqual({ cm: null, in: null });
    expect(read(0)).toMatchObject({
      comesApart: true,
      passes: true,
      opening: 300,
      ways: [],
      zip: { cm: null, in: null },
    });
  });
});

const SOLD_CM = [18, 20, 23, 25, 30, 35, 40, 46, 51, 56, 60].map((cm) => 10 * cm);
const SOLD_IN = [7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24].map((inch) => 25.4 * inch);

describe("any dress on any body", () => {
  const girth = fc.integer({ min: 500, max: 1800 });
  const any = fc.record({
    top: fc.integer({ min: 120, max: 300 }),
    waist: fc.integer({ min: 120, max: 260 }),
    girths: fc.array(girth, { minLength: 2, maxLength: 6 }),
    deep: fc.integer({ min: 300, max: 1200 }),
    lining: fc.option(fc.tuple(girth, girth, girth), { nil: null }),
    free: fc.integer({ min: 0, max: 40 }),
    belowWaist: fc.integer({ min: 0, max: 290 }),
    bust: fc.integer({ min: 700, max: 1400 }),
    hip: fc.option(fc.integer({ min: 700, max: 1500 }), { nil: null }),
    hipDepth: fc.integer({ min: 150, max: 250 }),
    shoulderGirth: fc.option(fc.integer({ min: 800, max: 1500 }), { nil: null }),
    zip: fc.constantFrom("invisible" as const, "lapped" as const),
  });

  const STEP = 0.5;

  interface Sampled {
    readonly y: number;
    readonly girth: number;
    readonly free: number;
  }

  const evenly = (levels: readonly { readonly below: number; readonly girth: number }[], free: number): Sampled[] =>
    levels.slice(1).flatMap((to, at) => {
      const from = invariant(levels[at], "level");
      const steps = Math.max(1, Math.round((to.below - from.below) / STEP));
      return Array.from({ length: steps + 1 }, (_, i) => ({
        y: from.below + ((to.below - from.below) * i) / steps,
        girth: from.girth + ((to.girth - from.girth) * i) / steps,
        free,
      }));
    });

  it("the least loop, the least opening and the zip are those of a fine search", () => {
    fc.assert(
      fc.property(any, (one) => {
        const { top, waist, girths, deep, belowWaist, bust, hip, hipDepth, shoulderGirth, zip, free } = one;
        const skirt = girths.map((g, at) => ({ below: (deep * at) / (girths.length - 1), girth: g }));
        const [w, h, m] = one.lining ?? [0, 0, 0];
        const lining =
          one.lining === null
            ? []
            : [
                { below: 0, girth: w },
                { below: 200, girth: h },
                { below: deep - 25, girth: m },
              ];
        const pieces = bodice(top, waist);
        const reading = read(belowWaist, {
          skirt,
          lining,
          liningFree: free,
          pieces,
          bust,
          hip,
          hipDepth,
          shoulderGirth,
          zip,
        });
        const levels: Sampled[] = [
          // The neck edge at the top of the opening goes with the head, and with the hips.
          ...evenly(
            [
              { below: -300, girth: 4 * top },
              { below: 0, girth: 4 * waist },
            ],
            0,
          ),
          ...evenly(skirt, 0),
          ...evenly(lining, free),
        ];
        const lets = ({ y, girth: g, free: v }: Sampled, end: number) => g + 2 * Math.max(0, end + v - y);
        const over = Math.max(bust + 60, shoulderGirth ?? 0);
        const passesAt = (way: "steppingIn" | "overhead", end: number, slack: number): boolean =>
          way === "steppingIn"
            ? hip !== null && levels.every((l) => l.y > hipDepth || lets(l, end) + slack >= hip + 20)
            : levels.every((l) => lets(l, end) + slack >= over) && 4 * top + 2 * (end + 300) + slack >= 570;
        const faults: string[] = [];
        const hold = (isHeld: boolean, claim: string): void => {
          if (!isHeld) faults.push(claim);
        };
        for (const { way, passes, tightest, needed } of reading.ways) {
          const reached = levels.filter(({ y }) => way === "overhead" || y <= hipDepth);
          const least = Math.min(...reached.map((l) => lets(l, belowWaist)));
          const neck = 4 * top + 2 * (belowWaist + 300) - 570;
          const room = way === "steppingIn" ? least - (hip ?? 0) - 20 : Math.min(least - over, neck);
          // A girth changes by up to 22 over a millimetre here, and samples lie half a millimetre apart.
          hold(Math.abs(room - (tightest.lets - needed)) < 12, `${way}: another loop is the least`);
          hold(!passes || passesAt(way, belowWaist, 7), `${way}: does not pass`);
        }
        hold(reading.passes === reading.ways.some(({ passes }) => passes), "either way suffices");
        const end = (reading.leastOpening ?? 0) - 300;
        const isWithin = reading.leastOpening !== null && end < deep;
        const opens = (at: number, slack: number) =>
          passesAt("steppingIn", at, slack) || passesAt("overhead", at, slack);
        hold(!isWithin || opens(end, 7), "the least opening is enough");
        hold(!isWithin || end <= -280 || !opens(end - 2, -0.01), "and none shorter is");
        const closed = reading.passes ? reading.opening : reading.leastOpening;
        const needs = (closed ?? Infinity) + (zip === "invisible" ? 25 : 0);
        for (const [unit, sold] of [
          ["cm", SOLD_CM],
          ["in", SOLD_IN],
        ] as const) {
          const length = reading.zip[unit]?.length ?? null;
          const longer = sold.filter((packet) => packet >= needs - 1e-9);
          const longest = Math.max(...sold);
          const own = (reading.leastOpening ?? Infinity) + (zip === "invisible" ? 25 : 0);
          const isEnded = longer.length === 0 && own <= longest + 1e-9;
          hold((reading.endsAt[unit] !== null) === isEnded, `ended for the longest in ${unit}`);
          if (isEnded) {
            hold(length === longest, `the longest in ${unit}`);
            continue;
          }
          hold(Math.abs((length ?? 0) - (longer[0] ?? 0)) < 1e-6, `the next longer zip in ${unit}`);
          hold(length === null || length >= needs, `a zip too short in ${unit}`);
        }
        expect(faults).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

describe("a bodice without a basque, by flatten-js and bezier-js", () => {
  it.each(STYLE_NAMES)("%s: the least over the bodice's levels, its waist and the skirt", (style) => {
    const { left } = planOf({ ...testWork, pattern: { ...testWork.pattern, style } });
    const pieces = setOf(left.pieces.filter(({ name }) => !isBasque(name)));
    const waist = left.pieces
      .filter(({ name }) => !isBasque(name))
      .reduce((sum, piece) => sum + 2 * seamByBezierJs(piece, "waist"), 0);
    const skirt = [
      { below: 0, girth: 1200 },
      { below: 500, girth: 1500 },
    ];
    const stepping = invariant(
      read(100, { pieces, skirt, hip: 1000 }).ways.find(({ way }) => way === "steppingIn"),
      "way",
    );
    // Only a front in one piece can be sliced straight across from centre to side, a little above the waist.
    const fronts = style === "sideDart" ? (["front", "back"] as const) : null;
    const levels =
      fronts === null
        ? []
        : [10, 30].map(
            (up) =>
              fronts.reduce((sum, name) => {
                const piece = pieceIn(pieces, name);
                const foot = invariant(piece.points.sideWaist, "side").at.y - up;
                return (
                  sum + 2 * lengthOnCloth(polygonOf(clothCorners(piece)), { x: -200, y: foot }, { x: 900, y: foot })
                );
              }, 0) +
              2 * (100 + up),
          );
    expect(stepping.tightest.lets).toBeLessThanOrEqual(Math.min(waist + 200, ...levels) + 0.5);
    expect(stepping.tightest.at === "waist" ? stepping.tightest.lets : waist + 200).toBeCloseTo(waist + 200, 1);
    expect(stepping.tightest.below).toBeLessThanOrEqual(0);
  });
});
