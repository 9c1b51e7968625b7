/** The outlines in the plan's JSON, measured by bezier-js and by hand: whole, closed, and as they are sewn together. */
import { Bezier } from "bezier-js";
import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import type { ReportPiece, ReportPieceDart } from "../../src/cli/pieceReport";
import { invariant } from "../../src/core/result";
import { DEMO_FILES, HALVES_FILE, planJson } from "../support/doors";
import { cornerOf, distanceOf, lengthOf, placeOf, seamOn, stretchOf, type Place } from "../support/reportedPieces";

const FILES = [...DEMO_FILES, HALVES_FILE].map((file) => [basename(file), planJson(file)] as const);
const HALVES = invariant(FILES.at(-1), "a work")[1].pieces;

const FRONTS = ["front", "centreFront", "sideFront", "cup", "frontBand"];
const BACKS = ["back", "backBand"];

/** What dressmakers sew to what; each side all the pieces that can make it up. */
const SEWN: readonly (readonly [seam: string, one: readonly string[], other: readonly string[]])[] = [
  ["side", FRONTS, BACKS],
  ["side", ["frontBasque"], ["backBasque"]],
  ["princess", ["centreFront"], ["sideFront"]],
  ["underBust", ["cup"], ["frontBand"]],
  ["underBust", ["back"], ["backBand"]],
];
const WAISTS: readonly (readonly [readonly string[], readonly string[]])[] = [
  [FRONTS, ["frontBasque"]],
  [BACKS, ["backBasque"]],
];

const named = (pieces: readonly ReportPiece[], name: string): ReportPiece =>
  invariant(
    pieces.find((piece) => piece.name === name),
    name,
  );

const dartNamed = ({ darts, name }: ReportPiece, dart: string): ReportPieceDart =>
  invariant(
    darts.find((one) => one.name === dart),
    `${name}.${dart}`,
  );

/** Twice the area, positive where the ring goes clockwise as seen with y down. */
const turning = (ring: readonly Place[]): number =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);

describe.each(FILES)("the pieces of %s", (_name, { pieces, darts }) => {
  const all = [...pieces.left, ...pieces.right];

  it("are there for both halves, and the very same where they say so", () => {
    expect(pieces.left.length).toBeGreaterThan(1);
    expect(pieces.right.map(({ name }) => name)).toEqual(pieces.left.map(({ name }) => name));
    pieces.left.forEach((left, index) => {
      const right = invariant(pieces.right[index], left.name);
      expect(right.same_on_both).toBe(left.same_on_both);
      expect(JSON.stringify(right) === JSON.stringify(left)).toBe(left.same_on_both);
    });
  });

  it("have outlines that close, corner to corner, clockwise as they are seen", () => {
    for (const piece of all) {
      const { edges, corners_mm } = piece;
      edges.forEach(({ to }, index) => expect(edges[(index + 1) % edges.length]?.from).toBe(to));
      expect(Object.keys(corners_mm).toSorted()).toEqual(edges.map(({ from }) => from).toSorted());
      expect(turning(edges.map(({ from }) => cornerOf(piece, from)))).toBeGreaterThan(0);
      for (const edge of edges) expect(lengthOf(stretchOf(piece, edge))).toBeGreaterThan(0.5);
    }
  });

  it("lie to the side of their centre line", () => {
    for (const { corners_mm, name } of all) {
      if (name === "strap") continue;
      for (const [x] of Object.values(corners_mm)) expect(x).toBeGreaterThan(-0.001);
    }
  });

  it("say which lines run across a dart's mouth, straight from one end to the other", () => {
    for (const piece of all) {
      const mouths = piece.edges.filter(({ line }) => line === "mouth");
      expect(mouths.map(({ dart }) => dart ?? "").toSorted()).toEqual(piece.darts.map(({ name }) => name).toSorted());
      for (const { from, to, dart, seam, controls_mm } of mouths) {
        const { inner, outer, seam: home } = dartNamed(piece, dart ?? "");
        expect([from, to].toSorted()).toEqual([inner, outer].toSorted());
        expect([seam, controls_mm]).toEqual([home, null]);
      }
      for (const { line, dart } of piece.edges) expect(dart === null).toBe(line !== "mouth");
    }
  });

  it("have darts whose figures agree with their points", () => {
    for (const piece of all) {
      for (const dart of piece.darts) {
        const [inner, outer] = [cornerOf(piece, dart.inner), cornerOf(piece, dart.outer)];
        const end = placeOf(dart.apex_mm);
        expect(distanceOf(inner, outer)).toBeCloseTo(dart.intake_mm, 3);
        // The law of cosines.
        const [a, b] = [distanceOf(inner, end), distanceOf(outer, end)];
        const cosine = (a * a + b * b - dart.intake_mm ** 2) / (2 * a * b);
        expect((Math.acos(cosine) * 180) / Math.PI).toBeCloseTo(dart.angle_deg, 2);
        if (dart.legs === null) continue;
        for (const [leg, from] of [
          [dart.legs.inner, inner],
          [dart.legs.outer, outer],
        ] as const)
          expect(lengthOf([from, ...(leg.controls_mm ?? []).map(placeOf), end])).toBeCloseTo(leg.length_mm, 2);
      }
    }
  });

  it("hold the darts that are told apart from them, of the left half", () => {
    expect(darts).toHaveLength(pieces.left.reduce((sum, piece) => sum + piece.darts.length, 0));
    for (const { piece, name, apex_mm, mouth_mm, angle_deg } of darts) {
      const owner = named(pieces.left, piece);
      const dart = dartNamed(owner, name);
      expect(distanceOf(placeOf(dart.apex_mm), placeOf(apex_mm))).toBeLessThan(0.01);
      expect(distanceOf(cornerOf(owner, dart.inner), placeOf(mouth_mm[0]))).toBeLessThan(0.01);
      expect(distanceOf(cornerOf(owner, dart.outer), placeOf(mouth_mm[1]))).toBeLessThan(0.01);
      expect(dart.angle_deg).toBeCloseTo(angle_deg, 2);
    }
  });

  it.each(["left", "right"] as const)(
    "are as long as each other where they are sewn together, on the %s half",
    (half) => {
      const own = pieces[half];
      const has = (name: string): boolean => own.some((piece) => piece.name === name);
      expect(seamOn(own, FRONTS, "side")).toBeGreaterThan(100);
      for (const [seam, one, other] of SEWN) {
        if (!one.some(has) || !other.some(has)) continue;
        expect(Math.abs(seamOn(own, one, seam) - seamOn(own, other, seam))).toBeLessThan(1);
      }
      for (const [bodice, basque] of WAISTS) {
        if (!basque.some(has)) continue;
        expect(Math.abs(seamOn(own, bodice, "waist") - seamOn(own, basque, "waist"))).toBeLessThan(1);
      }
    },
  );

  it("have their fold on the centre line, whole, or none of it", () => {
    const folded = all.filter(({ fold_mm }) => fold_mm !== null);
    for (const piece of folded) {
      const centre = piece.edges.filter(({ seam }) => seam === "centre");
      expect(centre.every(({ line }) => line === "fold")).toBe(true);
      const [[topX, topY], [bottomX, bottomY]] = invariant(piece.fold_mm ?? undefined, "a fold");
      expect([topX, bottomX]).toEqual([0, 0]);
      expect(centre.reduce((sum, edge) => sum + lengthOf(stretchOf(piece, edge)), 0)).toBeCloseTo(bottomY - topY, 3);
    }
    const others = all.filter((piece) => !folded.includes(piece));
    expect(others.flatMap(({ edges }) => edges.filter(({ line }) => line === "fold"))).toEqual([]);
    // No back is cut on the fold: it opens there, or has a seam.
    expect(others.map(({ name }) => name)).toContain("back");
  });
});

describe("pieces whose halves differ", () => {
  const [left, right] = [named(HALVES.left, "back"), named(HALVES.right, "back")];

  it("are those that the alteration is made on", () => {
    expect(HALVES.left.filter((piece) => !piece.same_on_both).map(({ name }) => name)).toEqual(["front", "back"]);
  });

  it("differ by what was asked: the end of the shoulder is 8 mm higher on the right", () => {
    expect(cornerOf(left, "shoulderTip").y - cornerOf(right, "shoulderTip").y).toBeCloseTo(8, 2);
    expect(cornerOf(left, "sideNeck")).toEqual(cornerOf(right, "sideNeck"));
  });

  it("have darts of their own: the gape taken out of the neckline widens the right half's", () => {
    const [one, other] = [HALVES.left, HALVES.right].map((pieces) => dartNamed(named(pieces, "front"), "sideDart"));
    expect(invariant(other, "right").angle_deg).toBeGreaterThan(invariant(one, "left").angle_deg + 1);
  });

  it("say of a dart that it is gathered, and give no legs of it", () => {
    const dart = dartNamed(named(HALVES.right, "front"), "sideDart");
    expect([dart.gathered, dart.legs]).toEqual([true, null]);
  });

  it("give bowed legs as cubics: 2.5 mm square off the middle of each, towards the other", () => {
    const front = named(HALVES.left, "front");
    const dart = dartNamed(front, "waistDart");
    const legs = invariant(dart.legs ?? undefined, "legs");
    const end = placeOf(dart.apex_mm);
    for (const [leg, from, other] of [
      [legs.inner, dart.inner, dart.outer],
      [legs.outer, dart.outer, dart.inner],
    ] as const) {
      const [c1, c2] = invariant(leg.controls_mm ?? undefined, "controls").map(placeOf);
      const mouth = cornerOf(front, from);
      const middle = new Bezier([mouth, invariant(c1, "c1"), invariant(c2, "c2"), end]).get(0.5);
      const straight = { x: (mouth.x + end.x) / 2, y: (mouth.y + end.y) / 2 };
      expect(distanceOf(middle, straight)).toBeCloseTo(2.5, 2);
      const across = cornerOf(front, other);
      expect(distanceOf(middle, across)).toBeLessThan(distanceOf(straight, across));
    }
  });

  it("share the wearer's own bust point where it was measured: half of 190 mm from the centre", () => {
    for (const pieces of [HALVES.left, HALVES.right]) {
      expect(named(pieces, "front").bust_point_mm?.[0]).toBe(95);
      expect(named(pieces, "back").bust_point_mm).toBeNull();
    }
  });
});
