/**
 * Cutting lines against closed forms on pieces made by hand, and on any plan against what a line so far outside another is,
 * measured by bezier-js (distances) and @flatten-js/core (insides).
 */
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { Bezier } from "bezier-js";
import { Point } from "@flatten-js/core";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cuttingLine } from "../../../src/core/allowance/cuttingLine";
import type { Stretch } from "../../../src/core/allowance/cutStretch";
import { stretchesOf } from "../../../src/core/cutting/stretches";
import type { RingPoint } from "../../../src/core/cutting/truePiece";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece, PointName, SeamName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { anyAmount } from "../../support/amounts";
import { anyChainWork } from "../../support/anyChainWork";
import { polygonOf } from "../../support/independent";

/** How many plans of each style; more by hand, to look for what is rare. */
const RUNS = Number(process.env.CHAINS ?? 12);

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A ring of straight seams from corner to corner, each with its allowance. */
function ring(sides: readonly (readonly [number, number, SeamName, number])[]): readonly Stretch[] {
  return sides.map(([x, y, seam, allowance], index) => {
    const [toX, toY] = sides[(index + 1) % sides.length] ?? [0, 0];
    return { curve: lineEdge(piecePoint(x, y), piecePoint(toX, toY)), seam, allowance, fold: false, cap: false };
  });
}

const places = (cutting: readonly RingPoint[]): readonly Place[] => cutting.map(({ at }) => at);
const has = (cutting: readonly RingPoint[], x: number, y: number): boolean =>
  cutting.some(({ at }) => Math.hypot(at.x - x, at.y - y) < 0.001);

describe("a cutting line about straight seams", () => {
  it("is a larger rectangle about a rectangle, each side by its own allowance", () => {
    const cutting = cuttingLine(
      ring([
        [0, 0, "waist", 15],
        [200, 0, "side", 20],
        [200, 100, "hem", 30],
        [0, 100, "centre", 10],
      ]),
    );
    expect(cutting).toHaveLength(4);
    expect(cutting.every(({ corner }) => corner)).toBe(true);
    for (const [x, y] of [
      [-10, -15],
      [220, -15],
      [220, 130],
      [-10, 130],
    ] as const)
      expect(has(cutting, x, y)).toBe(true);
  });

  it("turns up at a slanting side so that the hem, folded up, lies along the side's cutting line", () => {
    // The side slants out by 1 in 5: its cutting line is 15 mm square outside it.
    const cutting = cuttingLine(
      ring([
        [0, 0, "waist", 15],
        [100, 0, "side", 15],
        [140, 200, "hem", 30],
        [0, 200, "centre", 15],
      ]),
    );
    const length = Math.hypot(40, 200);
    const offSide = ({ x, y }: Place): number => ((x - 100) * 200 - y * 40) / length;
    // The folded end: below the hem and to the right.
    const end = places(cutting).filter(({ x, y }) => y > 200.5 && x > 100);
    expect(end).toHaveLength(1);
    const folded = end.map(({ x, y }) => ({ x, y: 400 - y }));
    expect(offSide(folded[0] ?? { x: 0, y: 0 })).toBeCloseTo(15, 3);
    expect(end[0]?.y).toBeCloseTo(230, 3);
  });

  it("ends the side seam's allowance so that, pressed open, it lies along the waist's cutting line", () => {
    // The waist slants up to the side by 1 in 4.
    const cutting = cuttingLine(
      ring([
        [0, 0, "waist", 15],
        [120, -30, "side", 15],
        [120, 200, "hem", 0],
        [0, 200, "centre", 0],
      ]),
    );
    const length = Math.hypot(120, -30);
    const offWaist = ({ x, y }: Place): number => (x * -30 - y * 120) / length;
    const end = places(cutting).filter(({ x, y }) => x > 120.5 && y < 100);
    expect(end).toHaveLength(1);
    // Folded over the side seam, which stands upright at x = 120.
    expect(offWaist({ x: 240 - (end[0]?.x ?? 0), y: end[0]?.y ?? 0 })).toBeCloseTo(15, 3);
  });

  it("keeps to the inner side of a corner that turns in", () => {
    const cutting = cuttingLine(
      ring([
        [0, 0, "neck", 10],
        [100, 0, "neck", 10],
        [100, 100, "neck", 10],
        [50, 100, "neck", 10],
        [50, 50, "neck", 10],
        [0, 50, "neck", 10],
      ]),
    );
    expect(cutting).toHaveLength(6);
    expect(has(cutting, 40, 60)).toBe(true);
    expect(has(cutting, 110, 110)).toBe(true);
  });

  it("cuts a very sharp corner off square in place of running far out", () => {
    const cutting = cuttingLine(
      ring([
        [0, 0, "princess", 15],
        [200, 10, "princess", 15],
        [0, 20, "centre", 15],
      ]),
    );
    expect(Math.max(...places(cutting).map(({ x }) => x))).toBeCloseTo(
      200 + 15 * Math.cos(Math.atan2(10, 200)) + 15 * Math.sin(Math.atan2(10, 200)),
      1,
    );
  });

  it("is the stitch line itself where nothing is allowed", () => {
    const cutting = cuttingLine(
      ring([
        [0, 0, "waist", 0],
        [200, 0, "side", 0],
        [200, 100, "hem", 0],
        [0, 100, "centre", 0],
      ]),
    );
    expect(
      places(cutting)
        .map(({ x, y }) => `${x} ${y}`)
        .toSorted(),
    ).toEqual(["0 0", "0 100", "200 0", "200 100"]);
  });
});

function distanceTo(points: readonly Place[], p: Place): number {
  let square = Infinity;
  for (const { x, y } of points) square = Math.min(square, (x - p.x) * (x - p.x) + (y - p.y) * (y - p.y));
  return Math.sqrt(square);
}

/** Points every half millimetre along a closed ring of straight stretches. */
const onRing = (corners: readonly Place[]): readonly Place[] =>
  corners.flatMap((a, index) => {
    const b = corners[(index + 1) % corners.length] ?? a;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) * 2));
    return Array.from({ length: count }, (_, i) => ({
      x: a.x + ((b.x - a.x) * i) / count,
      y: a.y + ((b.y - a.y) * i) / count,
    }));
  });

/** Points every half millimetre along a stretch, by bezier-js. */
function densely({ curve: { a, b, curve } }: Stretch): readonly Place[] {
  const bezier = curve === null ? new Bezier(a, a, b, b) : new Bezier(a, curve.c1, curve.c2, b);
  const count = Math.max(2, Math.ceil(bezier.length() * 2));
  return Array.from({ length: count + 1 }, (_, i) => bezier.get(i / count));
}

/** Which darts lie down when folded; all others lie to the centre (common practice, no source). */
const FOLDED_DOWN: ReadonlySet<string> = new Set(["side", "french", "centre", "armhole"]);

/**
 * Where the cutting line over a dart, folded as the dart is, lies less than its allowance outside the seam that it is
 * caught in: nowhere. The half beside the leg that it is folded onto is turned over that leg, the other half over the
 * dart's middle first.
 */
function foldedShort(
  piece: Piece,
  { name, seam, inner, outer, apex, gathered }: Piece["darts"][number],
  stretches: readonly Stretch[],
  outline: readonly Place[],
): readonly string[] {
  if (gathered === true) return [];
  const at = (point: PointName): Place => piece.points[point]?.at ?? { x: NaN, y: NaN };
  const isDown = [...FOLDED_DOWN].some((home) => name.startsWith(home));
  const [end, onto, other] = isDown ? [at(apex), at(outer), at(inner)] : [at(apex), at(inner), at(outer)];
  const middle = { x: (onto.x + other.x) / 2, y: (onto.y + other.y) / 2 };
  const sewn = stretches.filter((one) => one.seam === seam && !one.cap && !one.fold);
  const allowance = Math.min(...sewn.map((one) => one.allowance));
  const line = sewn.flatMap(densely);
  const inside = stitchOf(stretches);
  const way = (p: Place): number => Math.atan2(p.y - end.y, p.x - end.x);
  const turn = (from: number, to: number): number => Math.atan2(Math.sin(to - from), Math.cos(to - from));
  const half = turn(way(onto), way(middle));
  const beyond = Math.hypot(middle.x - end.x, middle.y - end.y) * 0.9;
  return outline.flatMap((p) => {
    const share = turn(way(onto), way(p)) / half;
    // What lies between the legs, with a hair left out at either leg.
    if (!(share > 0.02 && share < 1.98) || Math.hypot(p.x - end.x, p.y - end.y) < beyond) return [];
    const folded = mirrored(share > 1 ? mirrored(p, end, middle) : p, end, onto);
    const off = distanceTo(line, folded);
    const isShort = off < allowance - 0.1 || (off < 40 && inside.contains(new Point(folded.x, folded.y)));
    return isShort ? [`${piece.name} ${name}: folded, ${off} outside for ${allowance}`] : [];
  });
}

/** Inside of the stitch line, the caps of darts left out: straight across their mouths. */
const stitchOf = (stretches: readonly Stretch[]) =>
  polygonOf(stretches.filter(({ cap }) => !cap).flatMap((one) => densely(one).slice(0, -1)));

/** Finished, mm; as the styles are drawn. */
const STRAP_WIDTHS = { thin: 12, wide: 40 } as const;

const anyAllowances = fc.record({
  side: anyAmount(6, 25),
  waist: anyAmount(6, 25),
  hem: anyAmount(10, 45),
  armhole: anyAmount(6, 15),
  neck: anyAmount(6, 15),
});

describe.each(STYLE_NAMES)("cutting lines of any plan, %s", (style) => {
  it("lie their allowance outside the stitch line, all round it, and cross nothing", () => {
    let drawn = 0;
    fc.assert(
      fc.property(anyChainWork(style), anyAllowances, (work, allowances) => {
        const plan = derivePlan(work);
        const pieces =
          plan.ok && plan.value.checks.every(({ name, ok }) => name !== "outlineClosed" || ok)
            ? plan.value.left.pieces
            : [];
        const faults = pieces.flatMap((piece) => {
          drawn += 1;
          const offs: string[] = [];
          const stretches = stretchesOf(piece, allowances);
          const cutting = places(cuttingLine(stretches));
          const cut = onRing(cutting);
          const dense = stretches.map(densely);
          const sewn = dense.flat();
          const allowed: Readonly<Partial<Record<SeamName, number>>> = allowances;
          stretches.forEach(({ curve, seam, fold, cap }, index) => {
            // The usual elsewhere: 15 mm (common practice, no source).
            // A strap is turned through itself: half its finished width has to hold an allowance (common practice, no source).
            const most = piece.name === "strap" && seam !== "strap" ? STRAP_WIDTHS[work.pattern.strap] / 2 : Infinity;
            const own = fold ? 0 : Math.min(allowed[seam] ?? 15, most);
            const points = dense[index] ?? [];
            const middle = points[Math.floor(points.length / 2)];
            // The middle of a seam that is long enough: no corner has anything to do with it.
            if (cap || middle === undefined || points.length / 2 < 5 * own || (curve.curve === null && own === 0))
              return;
            const off = distanceTo(cut, middle);
            if (Math.abs(off - own) > 0.15) offs.push(`${piece.name} ${seam}: ${off} for ${own}`);
          });
          const least = Math.min(...stretches.filter(({ fold }) => !fold).map(({ allowance }) => allowance));
          const centre = stretches.filter(({ fold }) => fold).flatMap(densely);
          const found: string[] = [...offs];
          const polygon = polygonOf(cutting);
          if (!polygon.isValid() || cutting.length < 4) found.push(`${piece.name}: not one ring`);
          for (const p of cutting) {
            const near = distanceTo(sewn, p);
            // On the fold nothing is allowed; everywhere else the smallest allowance at the least.
            if (near < least - 0.06 && distanceTo(centre, p) > 46)
              found.push(`${piece.name}: ${near} outside at ${p.x}, ${p.y}`);
          }
          for (const p of sewn.filter((_, index) => index % 20 === 0)) {
            if (!polygon.contains(new Point(p.x, p.y)) && distanceTo(cutting, p) > 0.2 && distanceTo(centre, p) > 1)
              found.push(`${piece.name}: ${p.x}, ${p.y} is cut off`);
          }
          found.push(...piece.darts.flatMap((dart) => foldedShort(piece, dart, stretches, cut)));
          return found;
        });
        expect(faults).toEqual([]);
      }),
      { numRuns: RUNS },
    );
    expect(drawn).toBeGreaterThan(RUNS);
  }, 300_000);
});

/** A square piece with one dart in its lower edge, 30 mm wide and 80 long, upright. */
const named = (x: number, y: number) => ({ at: piecePoint(x, y), level: "waist" as const });
const straight = (from: PointName, to: PointName, seam: SeamName, mouthOf: "waistDart" | null = null) => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf,
});
const darted: Piece = {
  name: "front",
  points: {
    centreNeck: named(0, 0),
    underarm: named(120, 0),
    sideWaist: named(120, 100),
    waistDartOuter: named(70, 100),
    waistDartInner: named(40, 100),
    waistDartApex: named(55, 20),
    centreWaist: named(0, 100),
  },
  edges: [
    straight("centreNeck", "underarm", "neck"),
    straight("underarm", "sideWaist", "side"),
    straight("sideWaist", "waistDartOuter", "waist"),
    straight("waistDartOuter", "waistDartInner", "waist", "waistDart"),
    straight("waistDartInner", "centreWaist", "waist"),
    straight("centreWaist", "centreNeck", "centre"),
  ],
  darts: [
    {
      name: "waistDart",
      seam: "waist",
      inner: "waistDartInner",
      outer: "waistDartOuter",
      apex: "waistDartApex",
      aimsAt: null,
    },
  ],
  levelLines: [],
  centreOnFold: true,
};

/** The mirror image of p in the line through a and b, by complex numbers: nothing of the core's. */
function mirrored(p: Place, a: Place, b: Place): Place {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const [px, py] = [p.x - a.x, p.y - a.y];
  const square = dx * dx + dy * dy;
  // (p / d)* d
  const [re, im] = [(px * dx + py * dy) / square, (py * dx - px * dy) / square];
  return { x: a.x + re * dx + im * dy, y: a.y + re * dy - im * dx };
}

describe("the cutting line across a dart", () => {
  const cutting = places(cuttingLine(stretchesOf(darted, { waist: 15, side: 15, neck: 15 })));
  const [end, inner, outer] = [
    { x: 55, y: 20 },
    { x: 40, y: 100 },
    { x: 70, y: 100 },
  ];

  it("lies along the seam's own cutting line once the dart is folded towards the centre", () => {
    // The peak between the legs, the lowest of all, is folded over the inner leg.
    const [peak] = cutting.toSorted((p, q) => q.y - p.y);
    expect(peak?.x).toBeCloseTo(55, 3);
    expect(mirrored(peak ?? end, end, inner).y).toBeCloseTo(115, 3);
  });

  it("turns in the legs themselves, which are folded edges", () => {
    for (const mouth of [inner, outer]) {
      // The leg, continued, meets the cutting line of the waist 15 mm below the stitch line.
      const share = 95 / 80;
      const corner = { x: end.x + (mouth.x - end.x) * share, y: 115 };
      expect(distanceTo(cutting, corner)).toBeLessThan(0.001);
    }
  });

  it("is not cut along the fold: there it runs on the centre line", () => {
    expect(Math.min(...cutting.map(({ x }) => x))).toBe(0);
    expect(
      cutting
        .filter(({ x }) => x === 0)
        .map(({ y }) => y)
        .toSorted((a, b) => a - b),
    ).toEqual([-15, 115]);
  });
});

describe("the cutting line across a dart in a seam that bends", () => {
  // The seam is a circle about the dart's end: folded anywhere it lies on itself, and so does all that is parallel to it.
  const [radius, half, reach] = [66, (31 * Math.PI) / 180, (50 * Math.PI) / 180];
  const onCircle = (angle: number) => piecePoint(100 + radius * Math.sin(angle), radius * Math.cos(angle));
  // A cubic whose controls lie 4/3 tan(a/4) of the radius along its tangents is a circle to within 0.03 %.
  const arc = (from: number, to: number) => {
    const [a, b] = [onCircle(from), onCircle(to)];
    const k = (4 / 3) * Math.tan((to - from) / 4) * radius;
    return {
      c1: piecePoint(a.x + k * Math.cos(from), a.y - k * Math.sin(from)),
      c2: piecePoint(b.x - k * Math.cos(to), b.y + k * Math.sin(to)),
    };
  };
  const round: Piece = {
    ...darted,
    points: {
      centreNeck: named(-20, -80),
      underarm: named(220, -80),
      sideWaist: { ...named(0, 0), at: onCircle(half + reach) },
      waistDartOuter: { ...named(0, 0), at: onCircle(half) },
      waistDartInner: { ...named(0, 0), at: onCircle(-half) },
      waistDartApex: named(100, 0),
      centreWaist: { ...named(0, 0), at: onCircle(-half - reach) },
    },
    edges: darted.edges.map((edge) =>
      edge.from === "sideWaist"
        ? { ...edge, curve: arc(half + reach, half) }
        : edge.from === "waistDartInner"
          ? { ...edge, curve: arc(-half, -half - reach) }
          : edge,
    ),
    centreOnFold: false,
  };

  it("keeps the allowance all the way over a fold of 62 degrees", () => {
    const over = onRing(places(cuttingLine(stretchesOf(round, { waist: 6 })))).filter(
      ({ x, y }) => y > 0 && Math.abs(Math.atan2(x - 100, y)) < half,
    );
    expect(over.length).toBeGreaterThan(100);
    for (const { x, y } of over) expect(Math.abs(Math.hypot(x - 100, y) - (radius + 6))).toBeLessThan(0.05);
  });
});

describe("a neckline that leaves the fold aslant", () => {
  it.each([60, 29, 20, 8])("meets it on the fold, whatever the shoulder takes off: %d degrees from it", (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const [x, y] = [70, 130 - 70 / Math.tan(angle)];
    const sides = ring([
      [0, 130, "neck", 15],
      [x, y, "shoulder", 15],
      [x + 116, y + 40, "side", 15],
      [x + 110, 400, "waist", 15],
      [0, 400, "centre", 0],
    ]).map((one) => ({ ...one, fold: one.seam === "centre" }));
    const cutting = cuttingLine(sides);
    // The parallel of a line at an angle to the fold meets it so far up.
    expect(has(cutting, 0, 130 - 15 / Math.sin(angle))).toBe(true);
    expect(Math.min(...places(cutting).map((place) => place.x))).toBeGreaterThan(-0.001);
  });
});
