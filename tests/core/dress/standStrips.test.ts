/**
 * Interfacing for button stands. Common practice, no source: half of the allowance is stand, half is turned in; the strip covers
 * the stand and as much inside the centre line, at least past the buttonholes, which end 12 mm inside it. mm.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Skirt } from "../../../src/core/decisions/dress";
import type { Closure } from "../../../src/core/decisions/pattern";
import { dressOf } from "../../../src/core/dress/dressOf";
import { standStrips } from "../../../src/core/dress/standStrips";
import type { Part, RectanglePart } from "../../../src/core/parts/part";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { HALVES_AGREE } from "../../../src/core/tolerance";
import { anyDressWork } from "../../support/arbitraryDress";
import { boxPiece } from "../../support/boxPiece";
import { sampleWork } from "../../support/sampleWork";
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

  it("are none where nothing is allowed to turn in, nor for a skirt that cannot be drafted", () => {
    expect(stripsOf({ allowances: { centre: 0 } })).toEqual([]);
    const keys = (skirt: Skirt): readonly string[] => {
      const work = { ...sampleWork, pattern: { ...sampleWork.pattern, closure: buttoned() }, dress: { skirt } };
      const made = dressOf(work);
      if (!made.ok) throw new Error("no dress");
      return made.value.parts.map(({ key }) => key).filter((key) => key.startsWith("buttonStand"));
    };
    expect(keys({ kind: "aLine", length: 600 })).toEqual(["buttonStand"]);
    expect(keys({ kind: "aLine", length: 4000 })).toEqual([]);
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
    // The first tier cut 30 lower at the centre back is as much shorter there.
    const lower = { ...rectanglePart("tier-1", 900, 200), upperEdge: { front: 0, side: 10, back: 30 } };
    expect(lengthsOf({ shell: [lower, ...tiers.slice(1)], closure: buttoned(500) })).toEqual(near(820));
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

const isStand = ({ group }: Part): boolean => group === "buttonStand";
const sumOf = (parts: readonly Part[], of: (part: RectanglePart) => number): number =>
  parts.reduce((sum, part) => sum + (part.kind === "rectangle" ? of(part) : 0), 0);

describe("of any dress, the strips", () => {
  it("are there with buttons at the centre back alone, two of them, fused in their own step", () => {
    let buttonedOnes = 0;
    fc.assert(
      fc.property(anyDressWork, (work) => {
        const dress = dressOf(work);
        fc.pre(dress.ok);
        const { parts, sewing, closure } = dress.value;
        const { place, buttons } = work.pattern.closure;
        // Of a skirt that cannot be drafted no opening is known.
        const isThere = place === "centreBack" && buttons !== undefined && closure !== null;
        if (isThere) buttonedOnes += 1;
        expect(sumOf(parts.filter(isStand), ({ cut }) => cut.count)).toBe(isThere ? 2 : 0);
        expect(sewing.some(({ name }) => name === "fuseStands")).toBe(isThere);
      }),
      { numRuns: 80 },
    );
    expect(buttonedOnes).toBeGreaterThan(10);
  });

  it("are as long as what opens, on the average of both halves as a zip is measured, and bought", () => {
    fc.assert(
      fc.property(anyDressWork, fc.integer({ min: 4, max: 12 }), (work, buttons) => {
        const closure = { ...work.pattern.closure, place: "centreBack" as const, buttons };
        const dress = dressOf({ ...work, pattern: { ...work.pattern, closure } });
        fc.pre(dress.ok && dress.value.closure !== null);
        const { parts, notions, closure: reading } = dress.value;
        const strips = parts.filter(isStand);
        const length = sumOf(strips, ({ depth }) => depth) / strips.length;
        expect(Math.abs(length - (reading?.opening ?? Number.NaN))).toBeLessThanOrEqual(HALVES_AGREE);
        const bought = notions.find(({ what }) => what === "interfacing")?.area ?? 0;
        const area = sumOf(strips, ({ width, depth, cut }) => width * depth * cut.count);
        const isAlone = parts.every((part) => part.cloth !== "interfacing" || isStand(part));
        expect(isAlone ? Math.abs(bought - area) < 1e-3 : bought > area).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
