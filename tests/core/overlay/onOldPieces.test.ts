/** Strips laid on the pieces of another version: what changed between the two, and nothing else. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { edgeNearest, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import type { Piece } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import { sewnLegs, sewnRing } from "../../../src/core/overlay/sewnLines";
import { checklistSince } from "../../../src/core/versions/checklistSince";
import { layOnLines, lineCalled, withoutStrips } from "../../../src/words/overlay";
import { anyChainWork } from "../../support/anyChainWork";
import { planOf, testWork, withAlterations } from "../../support/works";

const A4: number = 271;
const sway = (amount: number): Alteration => ({ kind: "fit", id: "sway", fit: "swayBack", amount });
const overlay = (from: Plan, to: Plan) =>
  overlayOf(
    to,
    to.left.pieces.map(({ name }) => name),
    A4,
    from,
  );

const curvesOf = (piece: Piece | undefined) =>
  piece === undefined ? [] : [...sewnRing(piece), ...sewnLegs(piece)].map(({ curve }) => curve);

describe("strips on the pieces of another version", () => {
  it("are of the pieces that changed alone, and laid on their old lines", () => {
    const [from, to] = [planOf(withAlterations(sway(10))), planOf(withAlterations(sway(18)))];
    const { patches, same, baseSize } = overlay(from, to);
    expect(baseSize.label).toBeNull();
    expect([...new Set(patches.map(({ piece }) => piece))]).toContain("back");
    expect(same.map(({ piece }) => piece)).toContain("front");
    const old = from.left.pieces.find(({ name }) => name === "back");
    const printed = to.printed.find(({ name }) => name === "back");
    for (const patch of patches.filter(({ piece }) => piece === "back")) {
      // What it is laid on is the old piece, which a sway back of 10 mm has taken off the printed one.
      for (const at of patch.layOn.map((point) => point.at))
        expect(Object.values(old?.points ?? {}).some((point) => point?.at === at)).toBe(true);
      expect(patch.layOn.length).toBeGreaterThan(1);
      const sewn = patch.baseSize.filter(({ kind }) => kind !== "level").flatMap(({ edges }) => edges);
      const off = (curves: ReturnType<typeof curvesOf>): number =>
        Math.max(
          ...sewn.map((edge) =>
            Math.min(...curves.map((curve) => edgeNearest(curve, edgePointAt(edge, 0.5)).distance)),
          ),
        );
      expect(off(curvesOf(old))).toBeLessThan(0.01);
      expect(off(curvesOf(printed))).toBeGreaterThan(0.5);
      expect(patch.neighbours).toEqual([]);
      expect(patch.amounts).toEqual([]);
    }
  });

  it("are none where nothing changed", () => {
    const made = overlay(planOf(testWork), planOf({ ...testWork, name: "Another" }));
    expect(made.patches).toEqual([]);
    expect(made.tooMuch).toEqual([]);
    expect(withoutStrips(made).join(" ")).toContain("As they were, nothing to lay on");
  });

  it("say what they are laid on", () => {
    const said = layOnLines({ piece: "back", tissue: "back", half: null }, lineCalled(null));
    expect(said).toEqual(["Lay the dashed line on the old line of the back."]);
  });

  it.each(STYLE_NAMES)("are of the very pieces that the steps change, on the style %s", (style) => {
    let count = 0;
    fc.assert(
      fc.property(anyChainWork(style), fc.integer({ min: 1, max: 3 }), (work: Work, fewer) => {
        const before = { ...work, alterations: work.alterations.slice(0, -fewer) };
        const [from, to] = [derivePlan(before), derivePlan(work)];
        if (!from.ok || !to.ok) return;
        const since = checklistSince(from.value, to.value);
        const { patches, tooMuch, same } = overlay(from.value, to.value);
        const isOf = (one: { readonly piece: string; readonly half: unknown }) => (other: typeof one) =>
          one.piece === other.piece && (one.half === null || other.half === null || one.half === other.half);
        for (const one of since.stays) expect(same.some(isOf(one))).toBe(true);
        for (const one of since.changed) expect([...patches, ...tooMuch].some(isOf(one))).toBe(true);
        count += since.changed.length;
      }),
      { numRuns: 10 },
    );
    expect(count).toBeGreaterThan(3);
  });
});
