/**
 * Interfacing for button stands. Common practice, no source: half of the allowance is stand, half is turned in; the strip covers
 * the stand and as much inside the centre line, at least past the buttonholes, which end 12 mm inside it. mm.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Closure } from "../../../src/core/decisions/pattern";
import { dressOf } from "../../../src/core/dress/dressOf";
import { standStrips } from "../../../src/core/dress/standStrips";
import type { Part } from "../../../src/core/parts/part";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { HALVES_AGREE } from "../../../src/core/tolerance";
import { anyDressWork } from "../../support/arbitraryDress";
import { boxPiece } from "../../support/boxPiece";
import { rectanglePart, sectorPart } from "../../support/clothParts";

const buttoned = (belowWaist = 0): Closure => ({ place: "centreBack", belowWaist, buttons: 6 });
const bodiceOf = (length: number): PieceSet => setOf([boxPiece("back", 100, length)]);
const even = (length: number) => {
  const half = bodiceOf(length);
  return [half, half] as const;
};
const stripsOf = (more: Partial<Parameters<typeof standStrips>[0]> = {}) =>
  standStrips({ bodice: even(400), skirt: null, shell: [], closure: buttoned(), allowances: {}, ...more });
const lengthsOf = (more: Partial<Parameters<typeof standStrips>[0]>) =>
  stripsOf(more).map(({ key, cut, depth }) => [key, cut.count, depth]);

describe("the strips of interfacing for button stands", () => {
  it("are two, as long as the opening", () => {
    expect(stripsOf({ allowances: { centre: 30 } })).toEqual([
      {
        kind: "rectangle",
        key: "buttonStand",
        group: "buttonStand",
        cloth: "interfacing",
        cut: { onFold: false, count: 2 },
        half: null,
        grain: "along",
        name: "buttonStand",
        width: 30,
        depth: expect.closeTo(400, 6),
        allowances: { top: 0, bottom: 0, sides: 0 },
      },
    ]);
  });

  it.each([
    // The usual 15: 7.5 of stand, and 15 past the buttonholes.
    ["usual", {}, 22.5],
    ["20", { centre: 20 }, 25],
    ["30", { centre: 30 }, 30],
    ["50", { centre: 50 }, 50],
  ])("are as wide as allowance and buttonholes ask: %s", (_, allowances, width) => {
    expect(stripsOf({ allowances }).map((part) => part.width)).toEqual([width]);
  });

  it("go on down the skirt as far as the buttons do", () => {
    const drafted = setOf([boxPiece("skirtBack", 100, 600, ["waist", "hem"])]);
    const skirt = [drafted, drafted] as const;
    const near = (depth: number) => [["buttonStand", 2, expect.closeTo(depth, 6)]];
    expect(lengthsOf({ skirt, closure: buttoned(150) })).toEqual(near(550));
    const tiers = [rectanglePart("tier-1", 900, 200), rectanglePart("tier-2", 900, 250)];
    expect(lengthsOf({ shell: tiers, closure: buttoned(150) })).toEqual(near(550));
    // A skirt that is shorter than its opening ends it: 200 + 250, and a ring from 100 to 240.
    expect(lengthsOf({ shell: tiers, closure: buttoned(500) })).toEqual(near(850));
    expect(lengthsOf({ shell: [sectorPart("peplum", 100, 240, 3)], closure: buttoned(150) })).toEqual(near(540));
  });

  it("are cut for each half where the centre backs differ, and to one length where they are sewn to one", () => {
    const apart = [bodiceOf(400), bodiceOf(410)] as const;
    expect(stripsOf({ bodice: apart }).map(({ key, half, cut, depth }) => [key, half, cut.count, depth])).toEqual([
      ["buttonStand-left", "left", 1, expect.closeTo(400, 6)],
      ["buttonStand-right", "right", 1, expect.closeTo(410, 6)],
    ]);
    const near = [bodiceOf(400), bodiceOf(400.4)] as const;
    expect(lengthsOf({ bodice: near })).toEqual([["buttonStand", 2, expect.closeTo(400.4, 6)]]);
  });

  const onFold = setOf([{ ...boxPiece("back", 100, 400), centreOnFold: true }]);
  it.each<[string, Partial<Parameters<typeof standStrips>[0]>]>([
    ["a zip", { closure: { place: "centreBack", belowWaist: 120 } }],
    ["an opening at the side", { closure: { ...buttoned(), place: "side" } }],
    ["a back on the fold", { bodice: [onFold, onFold] }],
    ["an opening too short for two buttons", { bodice: even(24) }],
  ])("are none with %s", (_, more) => {
    expect(stripsOf(more)).toEqual([]);
  });
});

const areaOf = (part: Part): number => (part.kind === "rectangle" ? part.width * part.depth * part.cut.count : 0);

describe("of any dress, the strips", () => {
  it("are there with buttons at the centre back alone, as long as what opens, and bought", () => {
    let buttonedOnes = 0;
    fc.assert(
      fc.property(anyDressWork, (work) => {
        const dress = dressOf(work);
        fc.pre(dress.ok);
        const { parts, closure, notions, sewing } = dress.value;
        const strips = parts.filter(({ group }) => group === "buttonStand");
        const { place, buttons } = work.pattern.closure;
        const isThere = place === "centreBack" && buttons !== undefined;
        expect(strips.length > 0).toBe(isThere);
        expect(sewing.some(({ name }) => name === "fuseStands")).toBe(isThere);
        if (!isThere) return;
        buttonedOnes += 1;
        expect(strips.reduce((sum, { cut }) => sum + cut.count, 0)).toBe(2);
        // On the average of both halves, as a zip would be measured.
        const depth = strips.reduce((sum, part) => sum + (part.kind === "rectangle" ? part.depth : 0), 0);
        if (closure !== null)
          expect(Math.abs(depth / strips.length - closure.opening)).toBeLessThanOrEqual(HALVES_AGREE);
        const bought = notions.find(({ what }) => what === "interfacing")?.area ?? 0;
        const stands = strips.reduce((sum, part) => sum + areaOf(part), 0);
        if (parts.every(({ cloth, group }) => cloth !== "interfacing" || group === "buttonStand"))
          expect(bought).toBeCloseTo(stands, 3);
        else expect(bought).toBeGreaterThan(stands);
      }),
      { numRuns: 80 },
    );
    expect(buttonedOnes).toBeGreaterThan(10);
  });
});
