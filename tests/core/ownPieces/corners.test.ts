/** Corners looked for and sizes matched, on boxes whose shares and turns are read off. */
import { describe, expect, it } from "vitest";
import { cubicEdge, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import {
  candidatesOf,
  findCorners,
  shapeAsFound,
  SIZE_SLACK,
  USUAL_SLACK,
  type Candidate,
} from "../../../src/core/ownPieces/findCorners";
import { matchSizes } from "../../../src/core/ownPieces/matchSizes";
import type { ShapeCorner } from "../../../src/core/ownPieces/pieceShapes";
import { tracedRing } from "../../../src/core/ownPieces/tracedRing";

type Place = readonly [number, number];
const p = piecePoint;
const line = (...places: Place[]): readonly EdgeCurve<"piece">[] =>
  places.slice(1).map((at, i) => lineEdge(p(...(places[i] ?? at)), p(...at)));
const ringOf = (...places: Place[]) => tracedRing(line(...places, places[0] ?? [0, 0]));
const near = (value: number, digits = 6): number => expect.closeTo(value, digits) as number;
const BOX = ringOf([0, 0], [200, 0], [200, 300], [0, 300]);

describe("places that may be corners", () => {
  it("are where a ring turns, with their turns, those at darts told", () => {
    expect(candidatesOf(BOX, [501])).toEqual([
      { s: 0, at: { x: 0, y: 0 }, turn: near(90), sharp: true, atDart: false },
      { s: 200, at: { x: 200, y: 0 }, turn: near(90), sharp: true, atDart: false },
      { s: 500, at: { x: 200, y: 300 }, turn: near(90), sharp: true, atDart: true },
      { s: 700, at: { x: 0, y: 300 }, turn: near(90), sharp: true, atDart: false },
    ]);
    // Within 2 mm, round the start too.
    const darts = (...ends: number[]): boolean[] => candidatesOf(BOX, ends).map(({ atDart }) => atDart);
    expect(darts(998.5, 202.5)).toEqual([true, false, false, false]);
    expect(darts(201.5, 697.5)).toEqual([false, true, false, false]);
  });

  it("turn by eight degrees at the least", () => {
    const roof = (rise: number) =>
      candidatesOf(ringOf([0, 0], [100, -rise], [200, 0], [200, 300], [0, 300]), []).length;
    // 2 atan(rise/100).
    expect(roof(7.2)).toBe(5);
    expect(roof(6.8)).toBe(4);
  });

  it("turn to the left with less than nothing", () => {
    const notched = candidatesOf(ringOf([0, 0], [200, 0], [200, 300], [100, 200], [0, 300]), []);
    expect(notched.map(({ turn }) => Math.round(turn))).toEqual([90, 90, 135, -90, 135]);
  });

  it("are the tightest places of bends too, that turn by 22 degrees within 7 mm either way", () => {
    /** The box with its lower right corner rounded by a quarter of a circle. */
    const rounded = (radius: number) => {
      const k = (radius * 4 * (Math.SQRT2 - 1)) / 3;
      return tracedRing([
        ...line([0, 0], [200, 0], [200, 300 - radius]),
        cubicEdge({
          a: p(200, 300 - radius),
          c1: p(200, 300 - radius + k),
          c2: p(200 - radius + k, 300),
          b: p(200 - radius, 300),
        }),
        ...line([200 - radius, 300], [0, 300], [0, 0]),
      ]);
    };
    // On a circle of radius r two chords of 7 mm of the way turn by 7/r.
    const bends = (radius: number): Candidate[] => candidatesOf(rounded(radius), []).filter(({ sharp }) => !sharp);
    expect(bends(25)).toEqual([]);
    const [bend, more] = bends(15);
    expect(more).toBeUndefined();
    expect(bend?.turn).toBeGreaterThan(22);
    expect(bend?.turn).toBeLessThan(((7 / 15) * 180) / Math.PI + 1.5);
    expect(bend?.atDart).toBe(false);
    // It lies on the quarter of the circle.
    expect(Math.hypot((bend?.at.x ?? 0) - 185, (bend?.at.y ?? 0) - 285)).toBeCloseTo(15, 1);
    // Tighter still it is a bend nearer than 9 mm to nothing, and one place alone.
    expect(bends(5)).toHaveLength(1);
  });
});

describe("corners found", () => {
  const corner = (
    name: ShapeCorner["name"],
    x: number,
    y: number,
    way: number,
    seam: ShapeCorner["seam"] = "side",
  ): ShapeCorner => ({ name, level: "bust", seam, turn: 90, x, y, way });
  const WANTED = [
    corner("centreNeck", 0, 0, 0, "neck"),
    corner("sideNeck", 1, 0, 90),
    corner("sideWaist", 1, 1, 180),
    corner("centreWaist", 0, 1, -90),
  ];
  const found = (ring = BOX, slack = USUAL_SLACK, fixed?: ReadonlyMap<ShapeCorner["name"], number>) =>
    findCorners(ring, candidatesOf(ring, []), WANTED, slack, fixed);

  it("are those that look as they should, and cost nothing where all does", () => {
    expect(found()).toEqual({
      cost: near(0),
      corners: [
        { name: "centreNeck", s: 0 },
        { name: "sideNeck", s: 200 },
        { name: "sideWaist", s: 500 },
        { name: "centreWaist", s: 700 },
      ],
    });
  });

  it("are found wherever the ring begins", () => {
    const turned = ringOf([200, 300], [0, 300], [0, 0], [200, 0]);
    expect(found(turned)?.corners.map(({ s }) => s)).toEqual([500, 700, 0, 200]);
    expect(found(turned)?.cost).toBeCloseTo(0, 9);
  });

  it("cost by how far off each turn, place and way is", () => {
    // The upper right corner pulled 20 out and 20 up: box 220 by 320 from (0, -20).
    const ring = ringOf([0, 0], [220, -20], [200, 300], [0, 300]);
    const degrees = (radians: number): number => (radians * 180) / Math.PI;
    const top = -degrees(Math.atan2(20, 220));
    const right = degrees(Math.atan2(320, -20));
    // The way comes to the first corner straight up, as it should, and goes on by `top`; and so on.
    const turns = [top, right - top - 90, 90 - right, 0];
    const places: Place[] = [
      [0, 20 / 320],
      [0, 0],
      [200 / 220 - 1, 0],
      [0, 0],
    ];
    const ways = [top, right - 90, 0, 0];
    let sum = 0;
    for (let i = 0; i < 4; i += 1) {
      const [x, y] = places[i] ?? [0, 0];
      sum += ((turns[i] ?? 0) / 35) ** 2 + ((x / 0.18) ** 2 + (y / 0.18) ** 2) / 2 + ((ways[i] ?? 0) / 18) ** 2;
    }
    expect(found(ring)?.cost).toBeCloseTo(sum / 4, 4);
    expect(found(ring, SIZE_SLACK)?.cost ?? 0).toBeGreaterThan(found(ring)?.cost ?? 0);
  });

  it("pass over a corner of the seam between by its turn, a neck's by a quarter, one at a dart for nothing", () => {
    const notch = (ends: number[], ...places: Place[]) => {
      const ring = ringOf(...places);
      return findCorners(ring, candidatesOf(ring, ends), WANTED, USUAL_SLACK)?.cost ?? NaN;
    };
    // In the right side, a step of 10 in by 45 degrees and back: turns of 45, -90 and 45.
    const side: Place[] = [
      [0, 0],
      [200, 0],
      [200, 130],
      [190, 140],
      [200, 150],
      [200, 300],
      [0, 300],
    ];
    const of = (turn: number): number => (turn / 60) ** 2;
    expect(notch([], ...side) * 4).toBeCloseTo(2 * of(45) + of(90), 1);
    const top: Place[] = [
      [0, 0],
      [90, 0],
      [100, 10],
      [110, 0],
      [200, 0],
      [200, 300],
      [0, 300],
    ];
    expect(notch([], ...top) * 4).toBeCloseTo((2 * of(45) + of(90)) / 4, 1);
    const step = 10 * Math.SQRT2;
    expect(notch([330, 330 + step, 330 + 2 * step], ...side) * 4).toBeCloseTo(0, 3);
  });

  it("are where they are said to be, though nothing turns there", () => {
    const said = found(BOX, USUAL_SLACK, new Map([["sideWaist", 450]]));
    expect(said?.corners.map(({ s }) => s)).toEqual([0, 200, 450, 700]);
    // As good as the corner itself: within half a millimetre.
    expect(found(BOX, USUAL_SLACK, new Map([["sideWaist", 500.4]]))?.corners[2]?.s).toBe(500);
    expect(found(BOX, USUAL_SLACK, new Map([["sideWaist", 500.6]]))?.corners[2]?.s).toBe(500.6);
  });

  it("are none where there are fewer places than corners, or none is wanted", () => {
    expect(found(ringOf([0, 0], [200, 0], [200, 300]))).toBeNull();
    expect(findCorners(BOX, candidatesOf(BOX, []), [], USUAL_SLACK)).toBeNull();
    // Said in an order that goes round the other way.
    expect(
      found(
        BOX,
        USUAL_SLACK,
        new Map([
          ["centreNeck", 0],
          ["sideNeck", 700],
          ["sideWaist", 200],
        ]),
      ),
    ).toBeNull();
  });

  /** The box with one more place in its right side, or in its upper one, as it is told. */
  const withPlace = (more: Partial<Candidate>, wanted = WANTED, s = 350) => {
    const at = s === 350 ? p(200, 150) : p(s, 0);
    const place = { s, at, turn: 45, sharp: true, atDart: false, ...more };
    const places = [...candidatesOf(BOX, []), place].toSorted((a, b) => a.s - b.s);
    return (findCorners(BOX, places, wanted, USUAL_SLACK)?.cost ?? NaN) * 4;
  };

  it("pass over a bend for less than a corner, and over what turns by less than 30 degrees or lies at a dart for nothing", () => {
    expect(withPlace({})).toBeCloseTo((45 / 60) ** 2, 9);
    expect(withPlace({ turn: -45 })).toBeCloseTo((45 / 60) ** 2, 9);
    expect(withPlace({ sharp: false })).toBeCloseTo(0.3 * (45 / 60) ** 2, 9);
    expect(withPlace({ atDart: true })).toBeCloseTo(0, 9);
    expect([withPlace({ turn: 29 }), withPlace({ turn: -29 })]).toEqual([near(0), near(0)]);
    expect(withPlace({ turn: 31 })).toBeCloseTo((31 / 60) ** 2, 9);
    // A neck or a hem may turn: a quarter.
    expect(withPlace({}, WANTED, 100)).toBeCloseTo((45 / 60) ** 2 / 4, 9);
    const hemmed = WANTED.map((one) => (one.name === "sideNeck" ? { ...one, seam: "hem" as const } : one));
    expect(withPlace({}, hemmed)).toBeCloseTo((45 / 60) ** 2 / 4, 9);
    // In the last seam, over the start of the ring.
    expect(withPlace({ at: p(0, 150) }, WANTED, 850)).toBeCloseTo((45 / 60) ** 2, 9);
  });

  it("are dearer by three at a dart, and each by its turn and place", () => {
    const places = candidatesOf(BOX, [500]);
    expect((findCorners(BOX, places, WANTED, USUAL_SLACK)?.cost ?? NaN) * 4).toBeCloseTo(3, 9);
    const turned = candidatesOf(BOX, []).map((place) => (place.s === 200 ? { ...place, turn: 90 - 35 } : place));
    expect((findCorners(BOX, turned, WANTED, USUAL_SLACK)?.cost ?? NaN) * 4).toBeCloseTo(1, 9);
    expect((findCorners(BOX, turned, WANTED, SIZE_SLACK)?.cost ?? NaN) * 4).toBeCloseTo((35 / 12) ** 2, 9);
    const beside = WANTED.map((one) => (one.name === "sideNeck" ? { ...one, x: 1 - 0.18, y: 0.36 } : one));
    expect((findCorners(BOX, candidatesOf(BOX, []), beside, USUAL_SLACK)?.cost ?? NaN) * 4).toBeCloseTo((1 + 4) / 2, 9);
  });

  it("have ways that are the same all round: a way of 180 is one of -180", () => {
    const lower = (by: number) => found(ringOf([0, 0], [200, 0], [200, 300], [0, 300 + by]))?.cost ?? NaN;
    expect(lower(4)).toBeLessThan(0.05);
    expect(lower(-4)).toBeLessThan(0.05);
    for (const way of [180, -180, 540])
      expect(
        findCorners(
          BOX,
          candidatesOf(BOX, []),
          WANTED.map((one) => (one.name === "sideWaist" ? { ...one, way } : one)),
          USUAL_SLACK,
        )?.cost,
      ).toBeCloseTo(0, 9);
    const off = WANTED.map((one) => (one.name === "sideWaist" ? { ...one, way: 162 } : one));
    expect((findCorners(BOX, candidatesOf(BOX, []), off, USUAL_SLACK)?.cost ?? NaN) * 4).toBeCloseTo(1, 9);
  });

  it("begin nowhere that costs thirty and more", () => {
    const first = (turn: number) => {
      const places = candidatesOf(BOX, []).map((place) => ({ ...place, turn: place.s === 0 ? turn : 90 }));
      return findCorners(BOX, places, WANTED, USUAL_SLACK)?.corners[0]?.s;
    };
    // Turns that differ by 190 and 193 degrees: 29.5 and 30.4. No other place lies as near.
    expect(first(-100)).toBe(0);
    expect(first(-103)).not.toBe(0);
  });

  it("are the 36 places that turn most, where there are more", () => {
    // Teeth along the lower side: 20 sharp ones of two places each, those further left blunter.
    const teeth = Array.from({ length: 40 }, (_, k): Place => [990 - k * 20, k % 2 === 0 ? 300 : 300 - 20 + k * 0.4]);
    const ring = ringOf([0, 0], [1000, 0], [1000, 300], ...teeth, [0, 300]);
    const places = candidatesOf(ring, []);
    expect(places).toHaveLength(36);
    expect(places.map(({ s }) => s)).toEqual(places.map(({ s }) => s).toSorted((a, b) => a - b));
    expect(places[0]?.s).toBe(0);
    // The bluntest are gone: those furthest left.
    expect(Math.min(...places.filter(({ at }) => at.y > 250 && at.x > 0).map(({ at }) => at.x))).toBeGreaterThan(200);
  });

  it("say what another size is to look like", () => {
    const ring = ringOf([0, 0], [220, -20], [200, 300], [0, 300]);
    const places = candidatesOf(ring, []);
    const corners = findCorners(ring, places, WANTED, USUAL_SLACK)?.corners ?? [];
    const shape = shapeAsFound(ring, places, WANTED, corners);
    expect(shape.map(({ name, x, y, way }) => [name, x, y, way])).toEqual([
      ["centreNeck", near(0), near(20 / 320), near((Math.atan2(-20, 220) * 180) / Math.PI)],
      ["sideNeck", near(1), near(0), near((Math.atan2(320, -20) * 180) / Math.PI)],
      ["sideWaist", near(200 / 220), near(1), near(180)],
      ["centreWaist", near(0), near(1), near(-90)],
    ]);
    expect(shape.map(({ turn }) => turn)).toEqual(places.map(({ turn }) => turn));
    const itself = findCorners(ring, places, shape, SIZE_SLACK);
    expect(itself?.cost).toBeCloseTo(0, 9);
  });
});

describe("sizes of a seam", () => {
  const shown = (chains: readonly (readonly EdgeCurve<"piece">[])[]): string[][] =>
    matchSizes(chains).edges.map((chain) =>
      chain.map(
        ({ a, b, curve }) =>
          `${Math.round(a.x * 100) / 100} ${Math.round(b.x * 100) / 100}${curve === null ? "" : " c"}`,
      ),
    );

  it("drawn alike are kept, straight where all are", () => {
    const [one, other] = [line([0, 0], [50, 20], [100, 0]), line([0, 0], [55, 20], [110, 0])];
    expect(matchSizes([one, other])).toEqual({ edges: [one, other], deviations: [0, 0] });
    const curved = [cubicEdge({ a: p(0, 0), c1: p(20, 0), c2: p(40, 10), b: p(55, 20) }), ...line([55, 20], [110, 0])];
    expect(shown([one, curved])).toEqual([
      ["0 50 c", "50 100"],
      ["0 55 c", "55 110"],
    ]);
    expect(matchSizes([one, []])).toEqual({ edges: [one, []], deviations: [0, 0] });
  });

  it("that have a corner at another share than a fifth off are cut at each one's own", () => {
    const [one, other] = [line([0, 0], [30, 30], [100, 0]), line([0, 0], [60, 30], [100, 0])];
    expect(shown([one, other])).toEqual([
      ["0 30", "30 100"],
      ["0 60", "60 100"],
    ]);
  });

  it("that lack a corner are cut by its share of their length", () => {
    // Half of the way of the first, by its legs of 5 and 5; the second is straight.
    const [one, other] = [line([0, 0], [3, 4], [6, 0]), line([0, 0], [100, 0])];
    expect(shown([one, other])).toEqual([
      ["0 3", "3 6"],
      ["0 50", "50 100"],
    ]);
  });

  it("that lack the second of two corners are cut between those they have", () => {
    // Corners of the first at 0.25 and 0.5 of four 25s; the second has one like the first of them, at 0.4 of 100.
    const first = line([0, 0], [25, 0], [25, 25], [75, 25]);
    const second = line([0, 0], [40, 0], [40, 60]);
    const made = matchSizes([first, second]).edges;
    expect(made.map((chain) => chain.length)).toEqual([3, 3]);
    expect(made[1]?.[0]?.b).toEqual({ x: 40, y: 0 });
    // From 0.4 on, a third of what is left, as 0.5 is between 0.25 and 1.
    expect(made[1]?.[1]?.b.y).toBeCloseTo(20, 6);
  });

  it("in short stretches of a curve are fitted to the curve", () => {
    const arc = (radius: number, count: number): readonly EdgeCurve<"piece">[] =>
      line(
        ...Array.from({ length: count + 1 }, (_, i): Place => {
          const turn = (Math.PI / 2) * (i / count);
          return [radius * Math.sin(turn), radius * (1 - Math.cos(turn))];
        }),
      );
    const { edges, deviations } = matchSizes([arc(100, 100), arc(110, 120)]);
    expect(edges.map((chain) => chain.length)).toEqual([edges[0]?.length, edges[0]?.length]);
    // Far fewer than were drawn.
    expect(edges[0]?.length ?? 99).toBeLessThan(25);
    for (const off of deviations) expect(off).toBeLessThan(0.05);
    expect(edges[1]?.at(-1)?.b).toEqual({ x: near(110), y: near(110) });
  });
});
