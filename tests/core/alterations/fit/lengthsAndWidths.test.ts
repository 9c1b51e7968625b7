/** Fit alterations of length, of the waist's tilt, of widths and straps: closed forms, and what must never change. */
import type { StyleName } from "../../../../src/core/decisions/pattern";
import type { FitName } from "../../../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import type { FitApplied } from "../../../../src/core/alterations/outcome/definition";
import { applyAlteration } from "../../../../src/core/alterations/applyAlteration";
import { piecesOf, type PieceSet } from "../../../../src/core/pattern/pieceSet";
import { cornersSquare } from "../../../../src/core/checks/cornersSquare";
import { seamCornerAtDart } from "../../../../src/core/dart/trueSeam";
import { cornerAtDegrees } from "../../../../src/core/girth/cornerAngle";
import { pointNames, pointOf, type PieceName, type PointName, type SeamName } from "../../../../src/core/pattern/piece";
import { joinsOf, seamPairsOf } from "../../../../src/core/pattern/sewnTogether";
import { invariant } from "../../../../src/core/result";
import { anyAmount } from "../../../support/amounts";
import { seamByBezierJs } from "../../../support/independent";
import { expectPointClose } from "../../../support/matchers";
import { anyGarment, bustPointIn, pieceNamed, printedSet, type Garment } from "../../../support/printedSet";

const NAMES = [
  "lengthAboveBust",
  "lengthBelowBust",
  "lengthBasque",
  "bandDepth",
  "swayBack",
  "roundBack",
  "waistDropFront",
  "waistDropBack",
  "bustPointLevel",
  "chestWidth",
  "backWidth",
  "strapLength",
  "strapWidth",
  "strapPlace",
] as const satisfies readonly FitName[];

/** The styles that each alteration has something to do on (what the styles' pieces are, by the brief of the styles). */
const CLOSED: readonly StyleName[] = ["sideDart", "princessArmhole", "princessShoulder"];
const ALL: readonly StyleName[] = [...CLOSED, "midriff"];
const STRAPPED: readonly StyleName[] = ["midriff"];
const ON: Readonly<Record<(typeof NAMES)[number], readonly StyleName[]>> = {
  lengthAboveBust: CLOSED,
  lengthBelowBust: CLOSED,
  lengthBasque: ALL,
  bandDepth: STRAPPED,
  swayBack: ALL,
  roundBack: CLOSED,
  waistDropFront: ALL,
  waistDropBack: ALL,
  bustPointLevel: ALL,
  chestWidth: CLOSED,
  backWidth: CLOSED,
  strapLength: STRAPPED,
  strapWidth: STRAPPED,
  strapPlace: STRAPPED,
};

const GARMENT: Garment = { style: "sideDart", size: 4, difference: 50 };

function applied(name: FitName, pieces: PieceSet, amount: number, style: StyleName): FitApplied {
  const done = fitOf(name).apply(pieces, amount, { bustPoint: bustPointIn(pieces, style) });
  if (!done.ok) throw new Error(`${name} by ${amount} on ${style}: ${JSON.stringify(done.failure)}`);
  return done.value;
}

/** Sewn length by an independent library. */
const sewn = seamByBezierJs;

const sewnOf = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): number =>
  names.reduce((sum, name) => sum + sewn(pieceNamed(pieces, name), seam), 0);

/** Amounts that work on every printed size: half of what is offered, and less where a seam is short. */
const amountOf = (name: (typeof NAMES)[number]): fc.Arbitrary<number> => {
  const { least, most } = fitOf(name).range;
  return name === "bustPointLevel" ? anyAmount(-8, 8) : anyAmount(Math.max(least, -20), Math.min(most, 20));
};

const anyCase = (name: (typeof NAMES)[number]) => fc.record({ garment: anyGarment(ON[name]), amount: amountOf(name) });

describe.each(NAMES)("%s", (name) => {
  test("is offered on just the styles that have what it is made on", () => {
    const offered = ALL.filter((style) => fitOf(name).applies(printedSet({ ...GARMENT, style })));
    expect(offered).toEqual(ON[name]);
  });

  test("keeps every pair of seams walking, joined corners straight and centre corners square", () => {
    fc.assert(
      fc.property(anyCase(name), ({ garment, amount }) => {
        const before = printedSet(garment);
        const { pieces } = applied(name, before, amount, garment.style);
        for (const { seam, first, second } of seamPairsOf(before)) {
          const gap = (set: PieceSet): number => sewnOf(set, first, seam) - sewnOf(set, second, seam);
          expect(Math.abs(gap(pieces) - gap(before))).toBeLessThan(0.05);
        }
        for (const { point, first, second } of joinsOf(pieces)) {
          const corner =
            cornerAtDegrees(pieceNamed(pieces, first), point) + cornerAtDegrees(pieceNamed(pieces, second), point);
          expect({ point, offBy: Math.abs(corner - 180) < 3 ? 0 : corner - 180 }).toEqual({ point, offBy: 0 });
        }
        const context = { pieces } as Parameters<typeof cornersSquare>[0];
        expect(cornersSquare(context).filter(({ ok }) => !ok)).toEqual([]);
      }),
      { numRuns: 12 },
    );
  });

  test("moves parts of paper without stretching them", () => {
    fc.assert(
      fc.property(anyCase(name), ({ garment, amount }) => {
        for (const { parts } of applied(name, printedSet(garment), amount, garment.style).traces) {
          for (const { before, after } of parts) {
            const sides = (ring: typeof before): number[] => ring.map(({ a, b }) => Math.hypot(b.x - a.x, b.y - a.y));
            const [was, is] = [sides(before), sides(after)];
            was.forEach((side, index) => expect(Math.abs(side - invariant(is[index], "side"))).toBeLessThan(1e-9));
            const shoelace = (ring: typeof before): number =>
              ring.reduce((sum, { a, b }) => sum + (a.x * b.y - b.x * a.y) / 2, 0);
            expect(Math.abs(shoelace(before) - shoelace(after))).toBeLessThan(1e-6);
          }
        }
      }),
      { numRuns: 6 },
    );
  });

  test("is undone by the same amount the other way, and 0 changes nothing", () => {
    fc.assert(
      fc.property(anyCase(name), ({ garment, amount }) => {
        const before = printedSet(garment);
        const there = applied(name, before, amount, garment.style).pieces;
        const back = applied(name, there, -amount, garment.style).pieces;
        for (const piece of piecesOf(before)) {
          const again = pieceNamed(back, piece.name);
          expect(again.edges.map((edge) => edge.from)).toEqual(piece.edges.map((edge) => edge.from));
          for (const point of pointNames(piece))
            expectPointClose(pointOf(again, point), pointOf(piece, point), UNDONE[name] ?? 0.05);
        }
        const context = { bustPoint: bustPointIn(before, garment.style) };
        const still = applyAlteration(before, { kind: "fit", id: "a", fit: name, amount: 0 }, context);
        expect(still.ok && still.value.pieces).toBe(before);
      }),
      { numRuns: 8 },
    );
  });
});

/**
 * mm. A waist seam that is turned takes its hinge from the seam as it then lies, and a princess seam and the side seam over a moved dart are drawn anew: what
 * comes back differs by a small part of a millimetre.
 */
const UNDONE: Readonly<Partial<Record<FitName, number>>> = {
  waistDropFront: 0.25,
  waistDropBack: 0.15,
  swayBack: 0.15,
  roundBack: 0.1,
  bustPointLevel: 0.5,
};

const xy = (pieces: PieceSet, piece: PieceName, point: PointName) => pointOf(pieceNamed(pieces, piece), point);

describe("lengths", () => {
  test.each(["lengthAboveBust", "lengthBelowBust"] as const)(
    "%s: front and back get longer at the centre by the amount, and paper as wide as the cut",
    (name) => {
      const before = printedSet(GARMENT);
      const { pieces, traces } = applied(name, before, 20, "sideDart");
      for (const piece of ["front", "back"] as const) {
        expect(xy(pieces, piece, "centreWaist").y - xy(before, piece, "centreWaist").y).toBeCloseTo(20, 9);
        expect(xy(pieces, piece, "centreNeck")).toEqual(xy(before, piece, "centreNeck"));
      }
      expect(traces.map(({ piece }) => piece)).toEqual(["front", "back"]);
      for (const { cuts, area } of traces) {
        const [a, b] = [invariant(cuts[0]?.[0], "cut"), invariant(cuts[0]?.at(-1), "cut")];
        expect(area).toBeCloseTo(Math.abs(a.x - b.x) * 20, 6);
      }
    },
  );

  test("above the bust the underarm goes down, the shoulder stays; below it the side dart and all above stay", () => {
    const before = printedSet({ ...GARMENT, difference: 75 });
    const above = applied("lengthAboveBust", before, 15, "sideDart").pieces;
    expect(xy(above, "front", "underarm").y - xy(before, "front", "underarm").y).toBeCloseTo(15, 9);
    expectPointClose(xy(above, "front", "shoulderTip"), xy(before, "front", "shoulderTip"), 1e-9);
    const below = applied("lengthBelowBust", before, 15, "sideDart").pieces;
    for (const point of ["sideDartInner", "sideDartOuter", "sideDartApex", "bustPoint", "waistDartApex"] as const) {
      expectPointClose(xy(below, "front", point), xy(before, "front", point), 1e-9);
    }
  });

  test("the band keeps both its long seams, the waist keeps its length", () => {
    const before = printedSet({ ...GARMENT, style: "midriff" });
    const { pieces } = applied("bandDepth", before, 18, "midriff");
    for (const band of ["frontBand", "backBand"] as const) {
      for (const seam of ["underBust", "waist"] as const) {
        expect(sewn(pieceNamed(pieces, band), seam)).toBeCloseTo(sewn(pieceNamed(before, band), seam), 1);
      }
      expect(sewn(pieceNamed(pieces, band), "centre") - sewn(pieceNamed(before, band), "centre")).toBeCloseTo(18, 6);
    }
  });

  test.each(["lengthAboveBust", "lengthBelowBust", "lengthBasque", "bandDepth", "strapLength"] as const)(
    "%s: too much shortening names the most that works, and that works",
    (name) => {
      const style = invariant(ON[name].at(-1), "style");
      const before = printedSet({ ...GARMENT, style });
      const refused = fitOf(name).apply(before, -1000, { bustPoint: bustPointIn(before, style) });
      expect(refused).toMatchObject({ ok: false, failure: { code: "alteration/too-much" } });
      const most = !refused.ok && "most" in refused.failure ? refused.failure.most : Number.NaN;
      expect(most).toBeLessThan(0);
      expect(fitOf(name).apply(before, most, { bustPoint: bustPointIn(before, style) }).ok).toBe(true);
      expect(fitOf(name).apply(before, most - 0.01, { bustPoint: bustPointIn(before, style) }).ok).toBe(false);
    },
  );
});

describe("what a cut crosses is trued", () => {
  test.each([
    ["lengthBelowBust", 40, "sideDart"],
    ["swayBack", 20, "sideDart"],
    ["waistDropFront", -20, "sideDart"],
  ] as const)(
    "%s by %d: the legs of every dart are equal, and the seam is as smooth over it as it was",
    (name, amount, style) => {
      const before = printedSet({ ...GARMENT, style });
      const { pieces } = applied(name, before, amount, style);
      const legs = (piece: PieceName, ...names: readonly [PointName, PointName]): number => {
        const [a, b] = names.map((point) => xy(pieces, piece, point));
        return Math.hypot(invariant(a, "a").x - invariant(b, "b").x, invariant(a, "a").y - invariant(b, "b").y);
      };
      for (const piece of piecesOf(pieces)) {
        for (const dart of piece.darts) {
          expect(
            Math.abs(legs(piece.name, dart.apex, dart.inner) - legs(piece.name, dart.apex, dart.outer)),
          ).toBeLessThan(0.3);
          expect(seamCornerAtDart(piece, dart.name)).toBeCloseTo(
            seamCornerAtDart(pieceNamed(before, piece.name), dart.name),
            4,
          );
        }
      }
    },
  );

  test.each(["lengthBelowBust", "bandDepth", "lengthBasque"] as const)(
    "%s: the side seams differ by just as much as before",
    (name) => {
      for (const style of ON[name]) {
        const before = printedSet({ ...GARMENT, style, difference: 100 });
        const { pieces } = applied(name, before, 40, style);
        for (const { seam, first, second } of seamPairsOf(before).filter((pair) => pair.seam === "side")) {
          const gap = (set: PieceSet): number => sewnOf(set, first, seam) - sewnOf(set, second, seam);
          expect(gap(pieces)).toBeCloseTo(gap(before), 4);
        }
      }
    },
  );
});

describe("wedges", () => {
  test.each([
    ["swayBack", -1],
    ["roundBack", 1],
  ] as const)("%s: turns by 2 asin(p / 2R); paper of half R squared times the sine", (name, sign) => {
    const amount = 12;
    const { traces } = applied(name, printedSet(GARMENT), amount, "sideDart");
    const { hinges, cuts, area, parts } = invariant(traces[0], "trace");
    const hinge = invariant(hinges[0], "hinge");
    const open = invariant(
      cuts[0]?.find((p) => Math.abs(p.x) < 1e-9),
      "open end",
    );
    const turn = 2 * Math.asin(amount / (2 * (hinge.x - open.x)));
    expect(Math.abs(invariant(parts[0], "part").motion.angle)).toBeCloseTo(turn, 9);
    const radius = Math.hypot(hinge.x - open.x, hinge.y - open.y);
    expect(area).toBeCloseTo((sign * radius * radius * Math.sin(turn)) / 2, 4);
  });

  test("the waist goes down at the centre by the amount on the bodice, and up to meet it on the basque", () => {
    for (const [name, bodice, basque] of [
      ["waistDropFront", "front", "frontBasque"],
      ["waistDropBack", "back", "backBasque"],
    ] as const) {
      const before = printedSet(GARMENT);
      const { pieces } = applied(name, before, 10, "sideDart");
      expect(sewn(pieceNamed(pieces, bodice), "centre") - sewn(pieceNamed(before, bodice), "centre")).toBeCloseTo(
        10,
        6,
      );
      expect(sewn(pieceNamed(pieces, basque), "centre") - sewn(pieceNamed(before, basque), "centre")).toBeCloseTo(
        -10,
        6,
      );
      for (const piece of [bodice, basque]) {
        expect(sewn(pieceNamed(pieces, piece), "side")).toBeCloseTo(sewn(pieceNamed(before, piece), "side"), 4);
        expect(sewn(pieceNamed(pieces, piece), "waist")).toBeCloseTo(sewn(pieceNamed(before, piece), "waist"), 3);
      }
    }
  });

  test("a round back keeps neckline, shoulder and side seam, and gets a centre seam", () => {
    const printed = printedSet(GARMENT);
    const before: PieceSet = { ...printed, back: { ...pieceNamed(printed, "back"), centreOnFold: true } };
    const { pieces } = applied("roundBack", before, 15, "sideDart");
    for (const seam of ["neck", "shoulder", "side", "waist"] as const) {
      expect(sewn(pieceNamed(pieces, "back"), seam)).toBeCloseTo(sewn(pieceNamed(before, "back"), seam), 6);
    }
    expect(pieceNamed(pieces, "back").centreOnFold).toBe(false);
    expect(xy(pieces, "back", "centreNeck").y).toBeLessThan(xy(before, "back", "centreNeck").y - 12);
  });
});

describe("widths and straps", () => {
  test.each([
    ["backWidth", "back", "sideDart"],
    ["chestWidth", "front", "sideDart"],
    ["chestWidth", "sideFront", "princessArmhole"],
    ["chestWidth", "sideFront", "princessShoulder"],
  ] as const)("%s on the %s (%s): the armhole goes out by half, its ends and all else stay", (name, piece, style) => {
    const before = printedSet({ ...GARMENT, style });
    const { pieces } = applied(name, before, 14, style);
    for (const point of pointNames(pieceNamed(before, piece))) {
      const moved = point === "armholeTouch" ? 7 : 0;
      const at = xy(before, piece, point);
      expectPointClose(xy(pieces, piece, point), { x: at.x + moved, y: at.y }, 1e-9);
    }
  });

  test("a wider strap is as wide as the seams it is sewn on", () => {
    const before = printedSet({ ...GARMENT, style: "midriff" });
    const { pieces } = applied("strapWidth", before, 9, "midriff");
    for (const piece of ["cup", "back"] as const) {
      expect(sewn(pieceNamed(pieces, piece), "strap")).toBeCloseTo(sewn(pieceNamed(before, piece), "strap") + 9, 6);
      expect(sewn(pieceNamed(pieces, "strap"), "strap") / 2).toBeCloseTo(sewn(pieceNamed(pieces, piece), "strap"), 6);
    }
  });

  test.each([
    ["strapWidth", -34],
    ["strapPlace", 400],
    ["strapPlace", -400],
  ] as const)("%s by %s names the most that works", (name, amount) => {
    const before = printedSet({ ...GARMENT, style: "midriff" });
    const refused = fitOf(name).apply(before, amount * 2, { bustPoint: bustPointIn(before, "midriff") });
    const most = !refused.ok && "most" in refused.failure ? refused.failure.most : Number.NaN;
    expect(Math.sign(most)).toBe(Math.sign(amount));
    expect(fitOf(name).apply(before, most, { bustPoint: bustPointIn(before, "midriff") }).ok).toBe(true);
  });
});

describe("height of the bust point", () => {
  test("dart ends and bust point go straight down by the amount; both sewn seams keep their length", () => {
    const before = printedSet(GARMENT);
    const { pieces } = applied("bustPointLevel", before, 12, "sideDart");
    for (const point of ["bustPoint", "sideDartApex", "waistDartApex"] as const) {
      const at = xy(before, "front", point);
      expectPointClose(xy(pieces, "front", point), { x: at.x, y: at.y + 12 }, 1e-9);
    }
    for (const seam of ["side", "waist"] as const) {
      expect(sewn(pieceNamed(pieces, "front"), seam)).toBeCloseTo(sewn(pieceNamed(before, "front"), seam), 3);
    }
  });

  test("too much names the most that works", () => {
    const before = printedSet({ ...GARMENT, style: "midriff" });
    const context = { bustPoint: bustPointIn(before, "midriff") };
    const refused = fitOf("bustPointLevel").apply(before, 200, context);
    const most = !refused.ok && "most" in refused.failure ? refused.failure.most : Number.NaN;
    expect(most).toBeGreaterThan(5);
    expect(fitOf("bustPointLevel").apply(before, most, context).ok).toBe(true);
  });
});
