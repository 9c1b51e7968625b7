import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import type { SewingStep, SewingStepName } from "../../../src/core/sewing/sewingStep";
import type { Work } from "../../../src/core/decisions/work";
import type { Part } from "../../../src/core/parts/part";
import { anyDressWork } from "../../support/arbitraryDress";
import { isBelowWaist, tradeFaults } from "./tradeRules";

/** Steps that only touch a part, and sew nothing of it. */
const TOUCHES: ReadonlySet<SewingStepName> = new Set([
  "washCloth",
  "cutOut",
  "markDarts",
  "fitBeforeTopEdge",
  "fitBeforeWaist",
  "zipMarks",
  "hang",
  "levelHem",
  "press",
]);

const dressedOf = (work: Work): DressPlan | null => {
  const dress = dressOf(work);
  return dress.ok ? dress.value : null;
};

describe("the order of sewing, of any dress", () => {
  it("keeps the rules of the trade, sews every part that is there and no other, by seams that have a length", () => {
    fc.assert(
      fc.property(anyDressWork, (work) => {
        const dress = dressedOf(work);
        fc.pre(dress !== null);
        const { sewing, parts } = dress;
        expect(sewing.length).toBeGreaterThan(0);
        for (const [at, { after, seams, length }] of sewing.entries()) {
          expect(after.every((other) => other < at)).toBe(true);
          expect(new Set(after).size).toBe(after.length);
          expect(seams.every((seam) => Number.isFinite(seam.length) && seam.length > 0 && seam.count > 0)).toBe(true);
          expect(length === null).toBe(seams.length === 0);
        }
        expect(tradeFaults(dress, work)).toEqual([]);
        const names = sewing.map(({ name, at }) => `${name} ${at ?? ""}`);
        expect(new Set(names).size).toBe(names.length);
        const keys = new Set(parts.map(({ key }) => key));
        expect(sewing.flatMap((step) => step.parts.filter((key) => !keys.has(key)))).toEqual([]);
        expect(sewing.filter((step) => step.parts.length === 0).map(({ name }) => name)).toEqual([]);
        const sewn = new Set(sewing.filter(({ name }) => !TOUCHES.has(name)).flatMap((step) => step.parts));
        expect(parts.map(({ key }) => key).filter((key) => !sewn.has(key))).toEqual([]);
        expect(partlessSteps(sewing, parts)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});

/** By what a step says it is done on, in the trade's own sense. */
function partlessSteps(sewing: readonly SewingStep[], parts: readonly Part[]): readonly string[] {
  const has = (is: (part: Part) => boolean): boolean => parts.some(is);
  const needs: readonly (readonly [RegExp, boolean])[] = [
    [/strap/i, has(({ group }) => group === "strap")],
    [/^(?:face|facing)|Facing$/, has(({ group }) => group === "facing")],
    [/^bind/, has(({ group }) => group === "binding")],
    [/^liningSkirt/, has(({ group }) => group === "skirtLining")],
    [/^lining(?!Skirt)|closeLiningWaist/, has(({ group }) => group === "bodiceLining")],
    [/^hemLining|handSewLining/, has(({ group }) => group === "skirtLining" || group === "bodiceLining")],
    [
      /^skirt|^panel|^vent|^gather|tier|sector|^stayWaist|^levelHem|^hang$|^shapeTop/i,
      has(({ group }) => group === "skirt"),
    ],
    [/tier|gatherSkirt/i, has((part) => part.group === "skirt" && part.kind === "rectangle")],
    [/sector|stayWaist/i, has((part) => part.group === "skirt" && part.kind === "sector")],
    [/^panel|^skirtSides|^skirtDarts|^vent|^pockets/, has((part) => part.group === "skirt" && part.kind === "piece")],
    [/^basque/, has((part) => isBelowWaist(part))],
    [/underlining/i, has(({ group }) => group === "underlining")],
    [/^fuse/, has(({ cloth }) => cloth === "interfacing")],
    [/^fitBeforeWaist$/, has((part) => part.group === "skirt" || isBelowWaist(part))],
  ];
  return sewing.flatMap(({ name }) => needs.flatMap(([step, there]) => (step.test(name) && !there ? [name] : [])));
}
