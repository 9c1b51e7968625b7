/** A redrawn upper edge: its shapes by closed forms, and what must hold of it on any garment. Proportions are common practice, no source. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NECKLINE_SHAPES, type Neckline } from "../../../src/core/decisions/dress";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { gapeOver } from "../../../src/core/neckline/gapeOfEdge";
import type { NecklineFailure } from "../../../src/core/neckline/necklineFailure";
import { redrawNeckline, type RedrawnNeckline } from "../../../src/core/neckline/redrawNeckline";
import { dartOf, pointOf, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { trueAll } from "../../../src/core/truing/trueAll";
import { radians } from "../../../src/core/units";
import {
  anyGarmentOf,
  bustPointOf,
  changedPieces,
  cornerAt,
  garment as untrued,
  missesOf,
  STYLE_NAMES,
  type Garment,
} from "../../support/garments";
import { crossesItself, seamByBezierJs } from "../../support/independent";

/** As a plan has it: its basques walked. */
const garment = (options: Garment): PieceSet => trueAll(untrued(options)).pieces;

const SHAPES = NECKLINE_SHAPES.filter((shape) => shape !== "asPattern");

function drawn(pieces: PieceSet, neckline: Neckline): RedrawnNeckline {
  const done = redrawNeckline(pieces, neckline);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
}

function refused(pieces: PieceSet, neckline: Neckline): NecklineFailure {
  const done = redrawNeckline(pieces, neckline);
  if (done.ok) throw new Error("drawn after all");
  return done.failure;
}

const frontOf = ({ front, centreFront, cup }: PieceSet): Piece => invariant(front ?? centreFront ?? cup, "front");

const neckOf = ({ edges }: Piece): readonly Edge[] => edges.filter(({ seam }) => seam === "neck");

const at = (piece: Piece, name: PointName): readonly [number, number] => {
  const { x, y } = pointOf(piece, name);
  return [x, y];
};

/** A cubic, or the straight line, at a parameter: from the control points alone. */
function onEdge(piece: Piece, { from, to, curve }: Edge, t: number): readonly [number, number] {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  const { c1, c2 } = curve ?? { c1: a, c2: b };
  const mix = (p: number, q: number, r: number, s: number): number =>
    (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t * t * r + t ** 3 * s;
  return curve === null
    ? [a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]
    : [mix(a.x, c1.x, c2.x, b.x), mix(a.y, c1.y, c2.y, b.y)];
}

/** Seams that miss by more than they did, beyond half a tenth of a millimetre. */
const missingMore = (before: PieceSet, after: PieceSet): readonly number[] => {
  const was = missesOf(before);
  return missesOf(after).filter((miss, i) => !(Math.abs(miss) <= Math.abs(invariant(was[i], "pair")) + 0.05));
};

const base = garment({ style: "sideDart" });
const front = pieceIn(base, "front");
const back = pieceIn(base, "back");

/** How steeply the draft's shoulders fall, degrees: front and back. */
const FALLS = { front: 23, back: 19 };
const fallBy = (degrees: number, length: number): readonly [number, number] => [
  length * Math.cos((degrees * Math.PI) / 180),
  length * Math.sin((degrees * Math.PI) / 180),
];

describe("a V", () => {
  const { pieces } = drawn(base, { shape: "vee", deeper: 70, wider: 20 });
  const made = pieceIn(pieces, "front");

  it("is one straight line from so far down the centre to so far along the shoulder", () => {
    const [x, y] = at(front, "sideNeck");
    const [dx, dy] = fallBy(FALLS.front, 20);
    const [edge, ...others] = neckOf(made);
    expect(others).toEqual([]);
    expect(edge).toMatchObject({ from: "centreNeck", to: "sideNeck", curve: null });
    expect(at(made, "centreNeck")[0]).toBe(0);
    expect(at(made, "centreNeck")[1]).toBeCloseTo(at(front, "centreNeck")[1] + 70, 9);
    expect(at(made, "sideNeck")[0]).toBeCloseTo(x + dx, 6);
    expect(at(made, "sideNeck")[1]).toBeCloseTo(y + dy, 6);
    expect(seamByBezierJs(made, "neck")).toBeCloseTo(Math.hypot(x + dx, y + dy - at(front, "centreNeck")[1] - 70), 6);
  });

  it("takes as much off the back's shoulder, and runs straight on over the seam", () => {
    const other = pieceIn(pieces, "back");
    const [dx, dy] = fallBy(FALLS.back, 20);
    const [x, y] = at(back, "sideNeck");
    expect(at(other, "sideNeck")[0]).toBeCloseTo(x + dx, 6);
    expect(at(other, "sideNeck")[1]).toBeCloseTo(y + dy, 6);
    expect(at(other, "centreNeck")).toEqual(at(back, "centreNeck"));
    expect(cornerAt(made, "sideNeck") + cornerAt(other, "sideNeck")).toBeCloseTo(180, 6);
    expect(cornerAt(other, "centreNeck")).toBeCloseTo(90, 6);
  });
});

it("a square has a right corner below the end of the shoulder, level with the centre", () => {
  const { pieces } = drawn(base, { shape: "square", deeper: 50, wider: 10 });
  const made = pieceIn(pieces, "front");
  expect(neckOf(made).map(({ from, to, curve }) => [from, to, curve])).toEqual([
    ["centreNeck", "neckCorner", null],
    ["neckCorner", "sideNeck", null],
  ]);
  const [x, y] = at(made, "neckCorner");
  expect(x).toBeCloseTo(at(made, "sideNeck")[0], 9);
  expect(y).toBeCloseTo(at(front, "centreNeck")[1] + 50, 9);
  // Looked at from the cloth, a corner cut into it: three right angles.
  expect(cornerAt(made, "neckCorner")).toBeCloseTo(270 - 360 * Number(cornerAt(made, "neckCorner") < 0), 6);
});

/** How wide an edge is at half its height, as a share of its width at the shoulder: of a V a half, of a quarter of an ellipse 0.87. */
function halfWay(piece: Piece): number {
  const [edge, ...others] = neckOf(piece);
  if (edge === undefined || others.length > 0) throw new Error("not one edge");
  const [[ax, ay], [bx, by]] = [at(piece, "centreNeck"), at(piece, edge.to)];
  const places = Array.from({ length: 2001 }, (_, i) => onEdge(piece, edge, i / 2000));
  const off = ([, y]: readonly [number, number]): number => Math.abs(y - (ay + by) / 2);
  const [x] = places.reduce((best, place) => (off(place) < off(best) ? place : best));
  return (x - ax) / (bx - ax);
}

it("a shallow scoop meets the shoulder as the pattern's edge did", () => {
  const { pieces } = drawn(base, { shape: "scoop", deeper: 20, wider: 50 });
  expect(cornerAt(pieceIn(pieces, "front"), "sideNeck")).toBeCloseTo(cornerAt(front, "sideNeck"), 6);
});

it.each(STYLE_NAMES)("a scoop on %s is round however deep it is, no V; so is the back of any shape", (style) => {
  const isStrapped = style === "midriff";
  const rounds = [780, 880, 1120].flatMap((bust) =>
    (isStrapped ? [0, 10, 30] : [40, 80, 110]).map((deeper) => {
      const pieces = garment({ style, bust });
      const of = (shape: "scoop" | "sweetheart"): PieceSet =>
        drawn(pieces, isStrapped ? { shape, deeper } : { shape, deeper, wider: 10, backDeeper: deeper }).pieces;
      return {
        front: halfWay(frontOf(of("scoop"))),
        // A cup's back keeps its own edge here.
        backs: isStrapped ? [] : [of("scoop"), of("sweetheart")].map((made) => halfWay(pieceIn(made, "back"))),
      };
    }),
  );
  expect(Math.min(...rounds.map(({ front: share }) => share))).toBeGreaterThan(0.7);
  expect(Math.min(...rounds.flatMap(({ backs }) => backs))).toBeGreaterThan(0.64);
});

it("a scoop leaves the centre square, and is hollow all the way", () => {
  const { pieces } = drawn(base, { shape: "scoop", deeper: 80, wider: 15 });
  const made = pieceIn(pieces, "front");
  expect(cornerAt(made, "centreNeck")).toBeCloseTo(90, 6);
  const edge = invariant(neckOf(made)[0], "neck");
  const [[ax, ay], [bx, by]] = [at(made, "centreNeck"), at(made, "sideNeck")];
  for (const t of [0.1, 0.3, 0.5, 0.7, 0.9]) {
    const [x, y] = onEdge(made, edge, t);
    expect((bx - ax) * (y - ay) - (by - ay) * (x - ax)).toBeGreaterThan(0);
  }
});

it("a sweetheart has its peak at the centre, and over the bust a curve that rises above it and is round", () => {
  const { pieces } = drawn(base, { shape: "sweetheart", deeper: 90, wider: 10 });
  const made = pieceIn(pieces, "front");
  const over = invariant(neckOf(made)[0], "neck");
  // Both halves together dip to a point.
  expect(cornerAt(made, "centreNeck")).toBeGreaterThan(115);
  const [[ax, ay], [bx, by]] = [at(made, "centreNeck"), at(made, "neckCorner")];
  for (const t of [0.2, 0.5, 0.8]) {
    const [x, y] = onEdge(made, over, t);
    expect((bx - ax) * (y - ay) - (by - ay) * (x - ax)).toBeLessThan(0);
    expect(y).toBeLessThan(ay);
  }
});

it("on cups runs from the centre to the strap: straight, square, round or full", () => {
  const cups = garment({ style: "midriff" });
  const cup = pieceIn(cups, "cup");
  for (const shape of SHAPES) {
    const { pieces } = drawn(cups, { shape, deeper: -6 });
    const made = pieceIn(pieces, "cup");
    expect(changedPieces(cups, pieces)).toEqual(["cup"]);
    expect(at(made, "centreNeck")[0]).toBeCloseTo(0, 9);
    expect(at(made, "centreNeck")[1]).toBeCloseTo(at(cup, "centreNeck")[1] - 6, 9);
    expect(at(made, "strapInner")).toEqual(at(cup, "strapInner"));
  }
  expect(refused(cups, { shape: "vee", wider: 5 })).toEqual({ code: "neckline/too-wide", most: 0 });
});

it("gives the very same pieces back where the pattern's edge is kept", () => {
  for (const style of STYLE_NAMES) {
    const pieces = garment({ style });
    const done = drawn(pieces, { shape: "asPattern", deeper: 40, wider: 20, backDeeper: 30, pinched: true });
    expect(done.pieces).toBe(pieces);
    expect(done.after).toBe(done.before);
    expect(done.front.gape).toBe(0);
  }
});

const anyNeckline: fc.Arbitrary<Required<Neckline>> = fc.record({
  shape: fc.constantFrom(...SHAPES),
  deeper: fc.integer({ min: -15, max: 130 }),
  wider: fc.integer({ min: -10, max: 60 }),
  backDeeper: fc.integer({ min: -10, max: 120 }),
  pinched: fc.boolean(),
});

describe.each(STYLE_NAMES)("on any garment of the style %s", (style) => {
  it("can be sewn, is one line over the shoulder, keeps clear of bust and armhole, and changes nothing else", () => {
    let count = 0;
    fc.assert(
      fc.property(anyGarmentOf(style), anyNeckline, (options, asked) => {
        const pieces = garment(options);
        const neckline = style === "midriff" ? { ...asked, wider: 0, deeper: Math.min(asked.deeper, 8) } : asked;
        const done = redrawNeckline(pieces, neckline);
        if (!done.ok) return;
        count += 1;
        const made = done.value.pieces;
        expect(missingMore(pieces, made)).toEqual([]);
        const [one, other] = [frontOf(made), pieceIn(made, "back")];
        const isStrapped = one.points.sideNeck === undefined;
        const over = isStrapped ? 180 : cornerAt(one, "sideNeck") + cornerAt(other, "sideNeck");
        expect(over).toBeCloseTo(180, 3);
        expect(seamByBezierJs(other, "shoulder")).toBeCloseTo(
          seamByBezierJs(pieceIn(pieces, "back"), "shoulder") - neckline.wider,
          4,
        );
        expect(piecesOf(made).filter(crossesItself)).toEqual([]);
        const untouched = piecesOf(pieces).filter(({ name }) => made[name] !== pieces[name]);
        const mayChange = neckline.pinched
          ? ["front", "centreFront", "sideFront", "cup", "back"]
          : ["front", "centreFront", "cup", "back"];
        expect(untouched.map(({ name }) => name).filter((name) => !mayChange.includes(name))).toEqual([]);
        const bust = bustPointOf(pieces);
        for (const edge of neckOf(one))
          for (let t = 0; t <= 1; t += 0.05) {
            const [x, y] = onEdge(one, edge, t);
            expect(Math.hypot(x - bust.x, y - bust.y)).toBeGreaterThan(29.5);
          }
      }),
      { numRuns: 60 },
    );
    expect(count).toBeGreaterThan(10);
  });

  it("is the most that can be had where it is refused: that works, and a little more does not", () => {
    fc.assert(
      fc.property(anyGarmentOf(style), fc.constantFrom(...SHAPES), (options, shape) => {
        const pieces = garment(options);
        const failure = refused(pieces, { shape, deeper: 400 });
        if (failure.code !== "neckline/too-deep") throw new Error(failure.code);
        expect(failure.of).toBe("front");
        drawn(pieces, { shape, deeper: failure.most });
        refused(pieces, { shape, deeper: failure.most + 0.5 });
      }),
      { numRuns: 8 },
    );
  });
});

describe("the gape", () => {
  const ring = (radius: number): readonly PiecePoint[] =>
    Array.from({ length: 91 }, (_, i) => {
      const way = ((-180 + i) * Math.PI) / 180;
      return piecePoint(radius * Math.cos(way), radius * Math.sin(way));
    });

  it("is the angle of the darts, times how much nearer the edge comes, for as much of a turn as it spans", () => {
    // A quarter of a turn, 40 nearer, 0.4 shaped: 0.4 × 40 / 4.
    expect(gapeOver(piecePoint(0, 0), radians(0.4), ring(100), ring(60))).toBeCloseTo(4, 2);
    expect(gapeOver(piecePoint(0, 0), radians(0.4), ring(100), ring(100))).toBeCloseTo(0, 9);
    expect(gapeOver(piecePoint(0, 0), radians(0.4), ring(60), ring(100))).toBe(0);
  });

  it.each(STYLE_NAMES)("on %s grows with depth and width, and with the cup; none where the edge is raised", (style) => {
    const gape = (neckline: Neckline, difference = 75): number | null => {
      const done = redrawNeckline(garment({ style, difference }), neckline);
      return done.ok ? done.value.front.gape : null;
    };
    const isGrowing = (all: readonly (number | null)[]): boolean => {
      const found = all.filter((one) => one !== null);
      return found.length > 3 && found.every((one, i) => one >= (found[i - 1] ?? 0) - 1e-9);
    };
    const steps = style === "midriff" ? [0, 2, 4, 6, 8, 10] : [0, 20, 40, 60, 80, 100, 120];
    expect(isGrowing(steps.map((deeper) => gape({ shape: "scoop", deeper })))).toBe(true);
    expect(isGrowing(steps.map((deeper) => gape({ shape: "vee", deeper })))).toBe(true);
    if (style === "midriff") return;
    expect(isGrowing([0, 10, 20, 30, 40].map((wider) => gape({ shape: "scoop", deeper: 50, wider })))).toBe(true);
    expect(gape({ shape: "scoop", deeper: -10 })).toBeLessThan(0.05);
    const [small, large] = [50, 100].map((difference) => gape({ shape: "square", deeper: 80 }, difference) ?? 0);
    expect(large).toBeGreaterThan(invariant(small, "gape") + 1);
  });

  it("comes near what the trade pinches out: 6 to 13 mm on the half of a low square, less of a scoop", () => {
    const { front: gape } = drawn(base, { shape: "square", deeper: 100, wider: 30 });
    expect(gape.gape).toBeGreaterThan(6);
    expect(gape.gape).toBeLessThan(13);
    expect(drawn(base, { shape: "scoop", deeper: 40 }).front.gape).toBeLessThan(2);
  });

  it.each(STYLE_NAMES)(
    "is pinched out on %s: the edge is shorter by about that, the dart or the seam takes it",
    (style) => {
      const pieces = garment({ style });
      const neckline: Neckline =
        style === "midriff" ? { shape: "square", deeper: -4 } : { shape: "scoop", deeper: 90, wider: 20 };
      const [plain, pinched] = [drawn(pieces, neckline), drawn(pieces, { ...neckline, pinched: true })];
      expect(pinched.front.gape).toBeCloseTo(plain.front.gape, 9);
      expect(pinched.front.pinched).toBeCloseTo(plain.front.gape, 6);
      const shorter = plain.after - pinched.after;
      expect(shorter).toBeGreaterThan(0.6 * pinched.front.pinched);
      expect(shorter).toBeLessThan(style === "midriff" ? 4 * pinched.front.pinched : 1.6 * pinched.front.pinched);
      // What it was drawn on is the garment with the wedge closed and its own edge.
      expect(changedPieces(pieces, pinched.under)).toContain(frontOf(pieces).name);
      expect(missingMore(pieces, pinched.pieces)).toEqual([]);
      expect(at(frontOf(pinched.pieces), "centreNeck")).toEqual(at(frontOf(plain.pieces), "centreNeck"));
    },
  );
});

describe("over a princess seam in the shoulder", () => {
  const pieces = garment({ style: "princessShoulder" });
  const neckline: Neckline = { shape: "scoop", deeper: 40, wider: 80, backDeeper: 20 };

  it("goes on over the side front: one line at the seam and at the shoulder, both seams as long as each other", () => {
    for (const shape of SHAPES) {
      const made = drawn(pieces, { ...neckline, shape }).pieces;
      const [centre, side, other] = (["centreFront", "sideFront", "back"] as const).map((name) => pieceIn(made, name));
      if (centre === undefined || side === undefined || other === undefined) throw new Error("a piece is missing");
      expect(centre.points.sideNeck).toBeUndefined();
      expect(seamByBezierJs(centre, "shoulder")).toBe(0);
      expect(cornerAt(centre, "princessTop") + cornerAt(side, "princessTop")).toBeCloseTo(180, 3);
      expect(cornerAt(side, "sideNeck") + cornerAt(other, "sideNeck")).toBeCloseTo(180, 3);
      expect(seamByBezierJs(side, "princess")).toBeCloseTo(seamByBezierJs(centre, "princess"), 2);
      const before = ["centreFront", "sideFront"].map((name) =>
        seamByBezierJs(pieceIn(pieces, name === "centreFront" ? "centreFront" : "sideFront"), "shoulder"),
      );
      expect(seamByBezierJs(side, "shoulder")).toBeCloseTo(before.reduce((sum, one) => sum + one, 0) - 80, 4);
      expect([centre, side, other].filter(crossesItself)).toEqual([]);
      expect(missingMore(pieces, made)).toEqual([]);
    }
  });

  it("is refused where it would end beside the seam, and may be had beyond it", () => {
    const whole = seamByBezierJs(pieceIn(pieces, "centreFront"), "shoulder");
    const failure = refused(pieces, { ...neckline, wider: whole + 4 });
    if (failure.code !== "neckline/too-wide") throw new Error(failure.code);
    expect(failure.most).toBeLessThanOrEqual(whole - 10);
    expect(failure.most).toBeGreaterThan(whole - 15);
    drawn(pieces, { ...neckline, wider: whole + 11 });
  });
});

it("goes into the bust dart, where it is pinched out", () => {
  const { pieces } = drawn(base, { shape: "scoop", deeper: 90, wider: 20, pinched: true });
  const mouth = (piece: Piece): number => {
    const { inner, outer } = dartOf(piece, "sideDart");
    return Math.hypot(at(piece, inner)[0] - at(piece, outer)[0], at(piece, inner)[1] - at(piece, outer)[1]);
  };
  expect(mouth(pieceIn(pieces, "front"))).toBeGreaterThan(mouth(front) + 2);
});

it("dips below the bust line on cups, but leaves the centre a seam", () => {
  const cups = garment({ style: "midriff" });
  const cup = pieceIn(cups, "cup");
  const { pieces } = drawn(cups, { shape: "sweetheart", deeper: 40 });
  const made = pieceIn(pieces, "cup");
  const line = at(cup, "centreBust")[1];
  expect(at(made, "centreNeck")[1]).toBeGreaterThan(line);
  expect(at(made, "centreBust")[1]).toBe(line);
  expect(at(made, "underBustCentre")[1]).toBeGreaterThan(at(made, "centreNeck")[1] + 14);
  const failure = refused(cups, { shape: "vee", deeper: 90 });
  expect(failure).toMatchObject({ code: "neckline/too-deep", of: "front" });
});
