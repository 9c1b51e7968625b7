/** Darts gathered, bowed, or joined into a seam. */
import { Bezier } from "bezier-js";
import { seamCornerAtDart } from "../../../../src/core/dart/trueSeam";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dartCap } from "../../../../src/core/dart/dartCap";
import { legsOf } from "../../../../src/core/dart/bowedLegs";
import { validateOutline } from "../../../../src/core/geometry/outline";
import { dartOf, pointNames, pointOf, type DartName, type Piece } from "../../../../src/core/pattern/piece";
import { outlineOf } from "../../../../src/core/pattern/ring";
import { anyAmount } from "../../../support/amounts";
import { crossesItself, seamByBezierJs } from "../../../support/independent";
import { anyFront, anyPlainFront, backAt, done, frontAt, gap, operate, pieceOf, worstSeam } from "./fronts";

const anyDart = fc.constantFrom<DartName>("sideDart", "waistDart");

/** How far the outline turns at a corner, degrees: by its tangents as bezier-js has them. */
function turnAt(piece: Piece, corner: string): number {
  const tangent = (index: number, t: 0 | 1): number => {
    const edge = piece.edges[index];
    if (edge === undefined) throw new Error("edge");
    const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
    const d =
      edge.curve === null
        ? { x: b.x - a.x, y: b.y - a.y }
        : new Bezier(a, edge.curve.c1, edge.curve.c2, b).derivative(t);
    return Math.atan2(d.y, d.x);
  };
  const into = piece.edges.findIndex(({ to }) => to === corner);
  const turn = tangent((into + 1) % piece.edges.length, 0) - tangent(into, 1);
  return (Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * 180) / Math.PI;
}

describe("a dart gathered", () => {
  it("keeps sewn seams, and its seam runs smooth over the open mouth", () => {
    fc.assert(
      fc.property(anyFront, anyDart, (front, dart) => {
        const gathered = pieceOf(done({ front }, "front", { kind: "dartGather", dart }), "front");
        expect(dartOf(gathered, dart).gathered).toBe(true);
        expect(worstSeam({ front }, { front: gathered })).toBeLessThan(0.05);
        expect(turnAt(gathered, `${dart}Inner`)).toBeLessThan(0.01);
        expect(turnAt(gathered, `${dart}Outer`)).toBeLessThan(0.01);
        expect(validateOutline(outlineOf(gathered))).toEqual([]);
        expect(crossesItself(gathered)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it("again changes nothing, and no leg of it can be bowed or split", () => {
    const once = done({ front: frontAt(880) }, "front", { kind: "dartGather", dart: "sideDart" });
    expect(done(once.pieces, "front", { kind: "dartGather", dart: "sideDart" }).pieces).toBe(once.pieces);
    expect(operate(once.pieces, "front", { kind: "dartLegs", dart: "sideDart", bow: 2 })).toMatchObject({
      failure: { code: "alteration/not-this-dart" },
    });
    expect(operate(once.pieces, "front", { kind: "dartSplit", dart: "sideDart", into: 2 })).toMatchObject({
      failure: { code: "alteration/not-this-dart" },
    });
  });

  it("has no cap: nothing is folded", () => {
    const gathered = pieceOf(done({ front: frontAt(880) }, "front", { kind: "dartGather", dart: "sideDart" }), "front");
    const [inner, tip, outer] = dartCap(gathered, "sideDart");
    if (inner === undefined || tip === undefined || outer === undefined) throw new Error("cap");
    expect(gap(tip, { x: (inner.x + outer.x) / 2, y: (inner.y + outer.y) / 2 })).toBeLessThan(1e-9);
  });

  it("can be moved to another seam, where it is a dart again, seams kept", () => {
    fc.assert(
      fc.property(anyPlainFront, fc.constantFrom(0.5, 1), (front, share) => {
        const gathered = done({ front }, "front", { kind: "dartGather", dart: "waistDart" });
        const moved = pieceOf(
          done(gathered.pieces, "front", { kind: "dartPivot", dart: "waistDart", to: "armhole", share }),
          "front",
        );
        expect(worstSeam({ front }, { front: moved })).toBeLessThan(0.05);
        expect(dartOf(moved, "armholeDart").gathered).toBeUndefined();
        expect(validateOutline(outlineOf(moved))).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});

describe("legs bowed", () => {
  it("leave the end, the mouth but for truing, and every sewn seam; are equally long; and the seam runs on over them", () => {
    fc.assert(
      fc.property(anyFront, anyDart, anyAmount(-6, 6), (front, dart, asked) => {
        const mouth = gap(pointOf(front, `${dart}Inner`), pointOf(front, `${dart}Outer`));
        const bow = Math.min(asked, mouth / 8 - 0.001);
        fc.pre(bow !== 0);
        const bowed = pieceOf(done({ front }, "front", { kind: "dartLegs", dart, bow }), "front");
        for (const name of pointNames(front)) expect(gap(pointOf(bowed, name), pointOf(front, name))).toBeLessThan(1);
        expect(pointOf(bowed, `${dart}Apex`)).toEqual(pointOf(front, `${dart}Apex`));
        for (const seam of ["waist", "side", "armhole", "neck"] as const) {
          expect(Math.abs(seamByBezierJs(bowed, seam) - seamByBezierJs(front, seam))).toBeLessThan(0.05);
        }
        expect(Math.abs(seamCornerAtDart(bowed, dart))).toBeLessThan(0.02);
        const { inner, outer } = legsOf(bowed, dart);
        expect(Math.abs(inner.length - outer.length)).toBeLessThan(0.05);
      }),
      { numRuns: 80 },
    );
  });

  it("stand off by the bow at their middle, bend one way and mirror each other", () => {
    fc.assert(
      fc.property(anyPlainFront, anyDart, anyAmount(0.5, 4), fc.constantFrom(1, -1), (front, dart, size, sign) => {
        const mouth = gap(pointOf(front, `${dart}Inner`), pointOf(front, `${dart}Outer`));
        fc.pre(size < mouth / 8);
        const bowed = pieceOf(done({ front }, "front", { kind: "dartLegs", dart, bow: sign * size }), "front");
        const end = pointOf(bowed, `${dart}Apex`);
        const legs = legsOf(bowed, dart);
        const middle = {
          x: (pointOf(bowed, `${dart}Inner`).x + pointOf(bowed, `${dart}Outer`).x) / 2,
          y: (pointOf(bowed, `${dart}Inner`).y + pointOf(bowed, `${dart}Outer`).y) / 2,
        };
        const offs = [legs.inner, legs.outer].map(({ curve }) => {
          if (curve.curve === null) throw new Error("straight");
          const bezier = new Bezier(curve.a, curve.curve.c1, curve.curve.c2, curve.b);
          expect(bezier.get(1)).toMatchObject({ x: end.x, y: end.y });
          const half = bezier.get(0.5);
          const chord = { x: (curve.a.x + curve.b.x) / 2, y: (curve.a.y + curve.b.y) / 2 };
          expect(gap(half, chord)).toBeCloseTo(size, 6);
          // No S: no place where the curvature changes its sign.
          expect(bezier.inflections()).toEqual([]);
          // The distance of the leg's middle from the dart's middle line, signed into the dart.
          const axis = Math.atan2(middle.y - end.y, middle.x - end.x);
          const across = (p: { x: number; y: number }): number =>
            Math.abs((p.x - end.x) * -Math.sin(axis) + (p.y - end.y) * Math.cos(axis));
          return across(chord) - across(half);
        });
        expect(offs[0]).toBeCloseTo(offs[1] ?? NaN, 3);
        expect(Math.sign(offs[0] ?? 0)).toBe(sign);
      }),
      { numRuns: 60 },
    );
  });

  // The arc of a shallow parabola: chord (1 + 8/3 (sagitta / chord)²), textbook series, from memory.
  it("are longer than straight ones by 8/3 of the square of the bow over the leg", () => {
    const front = frontAt(880);
    const straight = legsOf(front, "waistDart").inner.length;
    const bowed = legsOf(
      pieceOf(done({ front }, "front", { kind: "dartLegs", dart: "waistDart", bow: -5 }), "front"),
      "waistDart",
    );
    expect(bowed.inner.length - straight).toBeCloseTo((8 * 25) / (3 * straight), 1);
  });

  it("never cross: refused beyond an eighth of the mouth, or 6 mm", () => {
    const front = frontAt(880);
    const mouth = gap(pointOf(front, "waistDartInner"), pointOf(front, "waistDartOuter"));
    expect(operate({ front }, "front", { kind: "dartLegs", dart: "waistDart", bow: mouth / 8 + 0.1 })).toMatchObject({
      failure: { code: "alteration/too-much", most: mouth / 8 },
    });
    expect(operate({ front }, "front", { kind: "dartLegs", dart: "waistDart", bow: -6.1 })).toMatchObject({
      failure: { code: "alteration/too-much", most: -6 },
    });
  });

  it("at 0 are straight again", () => {
    const front = frontAt(880);
    const bowed = done({ front }, "front", { kind: "dartLegs", dart: "waistDart", bow: 3 });
    const back = pieceOf(done(bowed.pieces, "front", { kind: "dartLegs", dart: "waistDart", bow: 0 }), "front");
    expect(back.darts).toEqual(front.darts);
    for (const name of pointNames(front)) expect(gap(pointOf(back, name), pointOf(front, name))).toBeLessThan(0.1);
  });
});

describe("two darts joined into a seam", () => {
  const anySeam = fc.record({
    to: fc.constantFrom<"shoulder" | "armhole">("shoulder", "armhole"),
    share: fc.constantFrom(0.5, 1),
  });

  it("make two pieces of the front that keep waist, shoulder, armhole, neck and side, and walk", () => {
    fc.assert(
      fc.property(anyFront, anySeam, (front, { to, share }) => {
        const moved = done({ front, back: backAt(880) }, "front", { kind: "dartPivot", dart: "sideDart", to, share });
        const joined = done(moved.pieces, "front", { kind: "dartSeam", dart: `${to}Dart` });
        const { back: _back, ...fronts } = joined.pieces;
        expect(Object.keys(fronts).toSorted()).toEqual(["centreFront", "sideFront"]);
        expect(worstSeam({ front }, fronts, ["neck", "shoulder", "armhole", "side", "waist"])).toBeLessThan(0.05);
        const [centre, side] = [pieceOf(joined, "centreFront"), pieceOf(joined, "sideFront")];
        expect(Math.abs(seamByBezierJs(centre, "princess") - seamByBezierJs(side, "princess"))).toBeLessThan(0.05);
        for (const piece of [centre, side]) {
          expect(validateOutline(outlineOf(piece))).toEqual([]);
          expect(crossesItself(piece)).toBe(false);
          expect(piece.darts.every(({ aimsAt }) => aimsAt === null || piece.points[aimsAt] !== undefined)).toBe(true);
        }
        expect(side.darts.map(({ name }) => name)).toEqual(share === 1 ? [] : ["sideDart"]);
      }),
      { numRuns: 60 },
    );
  });

  it("are refused for a dart that is neither of the shoulder nor of the armhole, and where there is no front", () => {
    const front = frontAt(880);
    expect(operate({ front }, "front", { kind: "dartSeam", dart: "sideDart" })).toMatchObject({
      failure: { code: "alteration/not-this-dart" },
    });
    const back = backAt(880);
    expect(operate({ back }, "back", { kind: "dartSeam", dart: "waistDart" })).toMatchObject({
      failure: { code: "alteration/not-on-this-style" },
    });
  });
});
