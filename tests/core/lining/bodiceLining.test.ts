import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { edgeFlatten } from "../../../src/core/geometry/edgeCurve";
import { validateOutline } from "../../../src/core/geometry/outline";
import { bodiceLining, isLined, type HalfAsked } from "../../../src/core/lining/bodiceLining";
import { setBack } from "../../../src/core/lining/setBack";
import { pointOf, type Piece, type SeamName } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { curveOf, outlineOf } from "../../../src/core/pattern/ring";
import { seamPairsOf } from "../../../src/core/pattern/sewnTogether";
import { anyGarmentOf, garment, STYLE_NAMES } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";

interface Place {
  readonly x: number;
  readonly y: number;
}

const FINE = 0.002;
const ringOf = (piece: Piece): Place[] => outlineOf(piece).flatMap((edge) => edgeFlatten(edge, FINE).slice(1));

const fromSegment = ({ x, y }: Place, a: Place, b: Place): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square));
  return Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
};

const fromRing = (at: Place, ring: readonly Place[]): number =>
  Math.min(...ring.map((b, index) => fromSegment(at, ring.at(index - 1) ?? b, b)));

/** The outline moved inwards by an independent library. */
const inside = (piece: Piece, by: number): readonly Place[][] =>
  inflatePathsD([ringOf(piece)], -by, JoinType.Miter, EndType.Polygon, 4, 6).map((path) =>
    path.map(({ x, y }) => ({ x, y })),
  );

/** Points of a seam of a piece, `clear` of either end of each edge (share). */
const along = (piece: Piece, seam: SeamName, clear = 0): readonly Place[] =>
  piece.edges
    .filter((edge) => edge.seam === seam && edge.mouthOf === null)
    .flatMap((edge) => {
      const points = edgeFlatten(curveOf(piece, edge), 0.02);
      const skip = Math.ceil(points.length * clear);
      return points.slice(skip, points.length - skip);
    });

const asked = (pieces: PieceSet, more: Partial<HalfAsked> = {}): HalfAsked => ({
  pieces,
  at: "centreBack",
  ease: 2.5,
  beside: 6,
  below: 205,
  ...more,
});

const bodiceOf = (pieces: PieceSet): PieceSet => {
  const { frontBasque: _front, backBasque: _back, strap: _strap, ...bodice } = pieces;
  return bodice;
};

test("neck, armhole and strap seam lie 1.5 inside the shell's, by an independent offset of the shell", () => {
  for (const style of STYLE_NAMES) {
    const shell = bodiceOf(garment({ style }));
    const lining = bodiceLining(asked(shell, { at: null, ease: 0 }));
    for (const piece of piecesOf(lining)) {
      const goal = inside(pieceIn(shell, piece.name), 1.5).flat();
      for (const seam of ["neck", "armhole", "strap"] as const)
        for (const at of along(piece, seam, 0.1))
          expect([piece.name, seam, fromRing(at, goal) < 0.1]).toEqual([piece.name, seam, true]);
    }
  }
});

test("beside a zip in the centre back all of it lies 6 inside, at the side both front and back do, on the open half alone", () => {
  for (const style of STYLE_NAMES) {
    const shell = bodiceOf(garment({ style }));
    for (const [at, seam] of [
      ["centreBack", "centre"],
      ["side", "side"],
    ] as const) {
      const lining = bodiceLining(asked(shell, { at }));
      const opening = piecesOf(lining).filter(({ name, centreOnFold, edges }) =>
        at === "side" ? edges.some((edge) => edge.seam === "side") : name.startsWith("back") && !centreOnFold,
      );
      expect(opening.length).toBeGreaterThan(0);
      for (const piece of opening) {
        const goal = inside(pieceIn(shell, piece.name), 6).flat();
        for (const place of along(piece, seam, 0.1)) expect(fromRing(place, goal)).toBeLessThan(0.1);
        const waist = seamByBezierJs(pieceIn(shell, piece.name), "waist");
        // An upper part ends above the waist.
        expect(seamByBezierJs(piece, "waist")).toBeCloseTo(Math.max(0, waist - 6), 2);
      }
    }
  }
});

test("the ease lies in the side seam between underarm and waist, a third of the way down all of it, and none in the waist", () => {
  const shell = bodiceOf(garment({ style: "princessShoulder" }));
  const lining = bodiceLining(asked(shell, { at: null, ease: 3 }));
  for (const name of ["sideFront", "back"] as const) {
    const [one, other] = [pieceIn(shell, name), pieceIn(lining, name)];
    const ring = ringOf(one);
    const out = along(other, "side").map((at) => fromRing(at, ring));
    expect(Math.max(...out)).toBeCloseTo(3, 1);
    expect(Math.abs(pointOf(one, "sideWaist").x - pointOf(other, "sideWaist").x)).toBeLessThan(0.01);
    expect(seamByBezierJs(other, "waist")).toBeCloseTo(seamByBezierJs(one, "waist"), 3);
  }
});

test("on a bodice in two above the waist the ease goes on over the under-bust seam, cups and bands alike", () => {
  const shell = bodiceOf(garment({ style: "midriff" }));
  const lining = bodiceLining(asked(shell, { at: null, ease: 3 }));
  const out = (name: "cup" | "frontBand" | "back" | "backBand", end: "underarm" | "sideUnderBust" | "sideWaist") => {
    const [one, other] = [pieceIn(shell, name), pieceIn(lining, name)];
    return Math.hypot(pointOf(one, end).x - pointOf(other, end).x, pointOf(one, end).y - pointOf(other, end).y);
  };
  // 27/4 · s · (1 − s)² of 3 at the share s of the side above the band.
  const [above, below] = (["cup", "frontBand"] as const).map((name) => seamByBezierJs(pieceIn(shell, name), "side"));
  const share = (above ?? 0) / ((above ?? 0) + (below ?? 0));
  const expected = 3 * (27 / 4) * share * (1 - share) ** 2;
  expect(expected).toBeGreaterThan(1);
  for (const name of ["cup", "frontBand", "back", "backBand"] as const)
    expect(Math.abs(out(name, "sideUnderBust") - expected)).toBeLessThan(0.35);
  for (const name of ["frontBand", "backBand"] as const) expect(out(name, "sideWaist")).toBeLessThan(0.2);
});

test("gathers are not copied: a dart of the same intake takes their place, its legs alike", () => {
  const { cup, ...others } = bodiceOf(garment({ style: "midriff" }));
  const shell =
    cup === undefined
      ? others
      : { ...others, cup: { ...cup, darts: cup.darts.map((dart) => ({ ...dart, gathered: true as const })) } };
  const { cup: lined } = bodiceLining(asked(shell));
  expect(lined?.darts).toHaveLength(1);
  for (const { gathered, inner, outer, apex } of lined?.darts ?? []) {
    if (lined === undefined || cup === undefined) throw new Error("no cup");
    expect(gathered).toBeUndefined();
    const wide = (piece: Piece) =>
      Math.hypot(pointOf(piece, inner).x - pointOf(piece, outer).x, pointOf(piece, inner).y - pointOf(piece, outer).y);
    expect(wide(lined)).toBeCloseTo(wide(cup), 0);
    const leg = (end: typeof inner) =>
      Math.hypot(pointOf(lined, end).x - pointOf(lined, apex).x, pointOf(lined, end).y - pointOf(lined, apex).y);
    expect(leg(inner)).toBeCloseTo(leg(outer), 1);
  }
});

test("what is lined twice alike is worked out once", () => {
  const shell = bodiceOf(garment({ style: "sideDart" }));
  expect(bodiceLining(asked(shell))).toBe(bodiceLining(asked({ ...shell })));
  expect(bodiceLining(asked(shell, { beside: 8 }))).not.toBe(bodiceLining(asked(shell)));
});

test("straps and what has no name are not lined; a basque is, its ends left free", () => {
  expect((["strap", "other1", "front", "backBasque"] as const).map(isLined)).toEqual([false, false, true, true]);
  const lining = bodiceLining(asked(garment({ style: "midriff" })));
  expect(lining.strap).toBeUndefined();
  expect(pieceIn(lining, "backBasque").points.cut1?.at.y).toBeCloseTo(205, 6);
});

test("an edge that its neighbours would use up is told by null", () => {
  const shell = pieceIn(garment({ style: "sideDart" }), "front");
  expect(setBack(shell, ({ seam }) => (seam === "neck" || seam === "armhole" ? 90 : 0))).toBeNull();
  expect(setBack(shell, () => 0)).toEqual(shell);
});

test("over random bodies in every style, every seam of the lining walks, and its outline can be cut", () => {
  fc.assert(
    fc.property(
      anyGarmentOf(...STYLE_NAMES),
      fc.constantFrom("centreBack" as const, "side" as const, null),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 10 }),
      (made, at, ease, beside) => {
        const shell = bodiceOf(garment(made));
        const lining = bodiceLining(asked(shell, { at, ease: ease / 4, beside }));
        const length = (names: readonly Piece["name"][], seam: SeamName) =>
          names.reduce((sum, name) => sum + seamByBezierJs(pieceIn(lining, name), seam), 0);
        for (const { seam, first, second, ease: eased } of seamPairsOf(lining))
          expect(Math.abs(length(first, seam) - length(second, seam) - eased)).toBeLessThan(0.1);
        for (const piece of piecesOf(lining)) {
          expect(validateOutline(outlineOf(piece)).map(({ code }) => code)).toEqual([]);
          const opens =
            at === "side"
              ? piece.edges.some(({ seam }) => seam === "side")
              : at === "centreBack" && piece.name.startsWith("back");
          const waist = seamByBezierJs(pieceIn(shell, piece.name), "waist");
          const expected = Math.max(0, waist - (opens ? beside : 0));
          expect(Math.abs(seamByBezierJs(piece, "waist") - expected)).toBeLessThan(0.05);
          const goal = ringOf(pieceIn(shell, piece.name));
          for (const seam of ["neck", "armhole"] as const)
            for (const place of along(piece, seam, 0.2)) {
              const off = fromRing(place, goal);
              expect([piece.name, seam, off > 1 && off < 2.1]).toEqual([piece.name, seam, true]);
            }
        }
      },
    ),
  );
});
