/** The blend of a nest: the same on every piece, exact at whole sizes, in proportion between. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blendPiece, levelSizes, neighbours } from "../../../src/core/blend/blendPiece";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointNames, pointOf, type Piece } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { draftBlocks } from "../../../src/core/nest/printedNest";
import { anyAmount } from "../../support/amounts";
import { planOf, testWork } from "../../support/works";

const blocks = draftBlocks(testWork.pattern);
const all = [blocks.front, blocks.back, blocks.frontBasque, blocks.backBasque];
const last = blocks.front.length - 1;
const size: fc.Arbitrary<number> = anyAmount(0, last);

describe("blendPiece", () => {
  it.each([0, 3, last])("at whole size %d is the printed block, exactly", (index) => {
    for (const sizes of all) expect(blendPiece(sizes, levelSizes(index, index, index))).toEqual(sizes[index]);
  });

  it("puts a point across the piece in proportion between its two printed lines, at the frame's height", () => {
    const at = levelSizes(3, 4.25, 3);
    const [low, high] = [blocks.front[4], blocks.front[5]];
    if (low === undefined || high === undefined) throw new Error("sizes");
    const x = pointOf(low, "sideWaist").x * 0.75 + pointOf(high, "sideWaist").x * 0.25;
    const blended = blendPiece(blocks.front, at);
    expect(pointOf(blended, "sideWaist").x).toBeCloseTo(x, 9);
    expect(pointOf(blended, "sideWaist").y).toBeCloseTo(pointOf(blocks.front[3] ?? low, "sideWaist").y, 9);
    expect(pointOf(blended, "underarm")).toEqual(pointOf(blocks.front[3] ?? low, "underarm"));
  });

  it("keeps the side seams of front and back together, and the waists of bodice and basque, at any blend", () => {
    fc.assert(
      fc.property(fc.nat(last), size, size, (baseSize, waist, hip) => {
        // Few bodies are more than four sizes from their frame at waist or hip.
        const near = (s: number): number => Math.min(Math.max(s, baseSize - 4), baseSize + 4, last);
        const at = levelSizes(baseSize, near(waist), near(hip));
        const [front, back, frontBasque, backBasque] = all.map((sizes) => blendPiece(sizes, at)) as [
          Piece,
          Piece,
          Piece,
          Piece,
        ];
        expect(Math.abs(seamLength(front, "side") - seamLength(back, "side"))).toBeLessThan(1);
        expect(Math.abs(seamLength(frontBasque, "side") - seamLength(backBasque, "side"))).toBeLessThan(1);
        expect(Math.abs(seamLength(front, "waist") - seamLength(frontBasque, "waist"))).toBeLessThan(1);
        expect(Math.abs(seamLength(back, "waist") - seamLength(backBasque, "waist"))).toBeLessThan(1);
      }),
    );
  });

  it("never makes a larger size narrower: waist and hip grow with their own size, from two below the first to two past the last", () => {
    fc.assert(
      fc.property(fc.nat(last), anyAmount(-2, last + 1.5), anyAmount(0.02, 0.5), (baseSize, from, step) => {
        for (const sizes of all) {
          const [low, high] = [from, from + step].map((at) => blendPiece(sizes, levelSizes(baseSize, at, at)));
          if (low === undefined || high === undefined) throw new Error("no piece");
          const x = (piece: Piece, name: "sideWaist" | "sideHip"): number | undefined => piece.points[name]?.at.x;
          for (const name of ["sideWaist", "sideHip"] as const) {
            // Every piece has a side waist, only a basque a side hip.
            expect(x(high, name) ?? Infinity).toBeGreaterThan(x(low, name) ?? 0);
          }
        }
      }),
    );
  });

  it("runs the side seam without a corner at the waist's own blend, within two sizes of the frame", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: last - 2 }), anyAmount(-2, 2), anyAmount(-2, 2), (baseSize, waist, hip) => {
        const blended = blendPiece(blocks.front, levelSizes(baseSize, baseSize + waist, baseSize + hip));
        const upper = blended.edges.find(({ to }) => to === "sideBust");
        const lower = blended.edges.find(({ from }) => from === "sideBust");
        if (upper === undefined || lower?.curve === undefined || lower.curve === null) throw new Error("side");
        const [a, b, c] = [pointOf(blended, upper.from), pointOf(blended, "sideBust"), lower.curve.c1];
        const turn = Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x);
        const printed = invariant(blocks.front[baseSize], "baseSize").edges.find(({ from }) => from === "sideBust")
          ?.curve?.c1;
        const own = pointOf(invariant(blocks.front[baseSize], "baseSize"), "sideBust");
        const before = Math.atan2((printed?.y ?? NaN) - own.y, (printed?.x ?? NaN) - own.x) - Math.PI / 2;
        // The printed block has this much of a corner there itself; the blend adds none.
        expect(Math.abs(turn - before)).toBeLessThan(1e-9);
      }),
    );
  });

  it("has every size in the same points and edges", () => {
    for (const sizes of all) {
      for (const piece of sizes) {
        expect(pointNames(piece)).toEqual(pointNames(sizes[0] ?? piece));
        expect(piece.edges.map(({ from, to, seam }) => [from, to, seam])).toEqual(
          (sizes[0] ?? piece).edges.map(({ from, to, seam }) => [from, to, seam]),
        );
      }
    }
  });
});

describe("neighbours", () => {
  it.each([
    [2.4, 2, 0.4],
    [0, 0, 0],
    [11, 10, 1],
    [-1.5, 0, -1.5],
    [12.5, 10, 2.5],
  ])("of size %d among twelve are %d and the next, share %d", (at, lower, share) => {
    expect(neighbours(at, 12).lower).toBe(lower);
    expect(neighbours(at, 12).share).toBeCloseTo(share, 12);
  });
});

describe("the plan's cut lines", () => {
  it("run between the same sizes at one level, with the same share on pieces that are blended alike", () => {
    const { cutLines } = planOf(testWork).left;
    for (const level of ["waist", "hip"]) {
      const lines = cutLines.filter((line) => line.level === level);
      expect(lines.length).toBeGreaterThanOrEqual(2);
      expect(new Set(lines.map(({ between }) => JSON.stringify(between))).size).toBe(1);
      // Two basques with darts of unlike lengths are walked to the bodice: a few tenths of a millimetre of 10 mm a size.
      const shares = lines.map(({ share }) => share);
      expect(Math.max(...shares) - Math.min(...shares)).toBeLessThan(0.03);
      const bodice = lines.filter(({ piece }) => !piece.endsWith("Basque")).map(({ share }) => share);
      expect(Math.max(...bodice) - Math.min(...bodice)).toBeLessThan(1e-9);
    }
  });

  it("lie a quarter of the girth's share outside the lower line: 30 % of 40 mm, a quarter of that is 3 mm", () => {
    const front = planOf(testWork).left.cutLines.find(({ piece, level }) => piece === "front" && level === "waist");
    expect(front?.offset).toBeCloseTo(3, 0);
  });
});
