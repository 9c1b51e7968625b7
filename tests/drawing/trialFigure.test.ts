import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import { Point } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { edgePointAt } from "../../src/core/geometry/edgeCurve";
import { outlineOf } from "../../src/core/pattern/ring";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { boundsOf } from "../../src/drawing/index";
import { trialFigure } from "../../src/drawing/trialFigure";
import { polygonOf } from "../support/independent";
import { demoWorks } from "../../src/document/demo";
import { sampleWork } from "../support/sampleWork";

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const plain: Work = { ...sampleWork, alterations: [] };
const styled = STYLE_NAMES.map((style) => ({
  style,
  plan: planOf({ ...plain, pattern: { ...plain.pattern, style } }),
}));

describe("trialFigure", () => {
  it.each(styled)("draws every piece of a $style but its strap once on each half", ({ plan }) => {
    const wanted = plan.left.pieces.map(({ name }) => name).filter((name) => name !== "strap");
    for (const half of [0, 1] as const) {
      const drawn = trialFigure(plan).flatMap((view) => view.halves[half].pieces.map(({ piece }) => piece));
      expect(drawn.toSorted()).toEqual(wanted.toSorted());
    }
  });

  it("leaves out facings and the like, which lie on no place of the body", () => {
    const own = demoWorks().find(({ pattern }) => pattern.own !== undefined);
    if (own === undefined) throw new Error("no demo on pieces of its own");
    const plan = planOf(own);
    expect(plan.left.pieces.some(({ name }) => name.startsWith("other"))).toBe(true);
    for (const { box, halves } of trialFigure(plan)) {
      expect(halves.flatMap(({ pieces }) => pieces.filter(({ piece }) => piece.startsWith("other")))).toEqual([]);
      // No wider than a body.
      expect(box.width).toBeLessThan(700);
    }
  });

  it.each(styled)("hangs the basques of a $style clear under what they are sewn to, within the box", ({ plan }) => {
    const bounds = new Map(plan.left.pieces.map((piece) => [piece.name, boundsOf(piece)]));
    for (const { box, halves } of trialFigure(plan)) {
      const spans = halves[0].pieces.map(({ piece, down, across }) => {
        const own = bounds.get(piece);
        if (own === undefined) throw new Error(piece);
        return {
          isBasque: piece.endsWith("Basque"),
          top: own.y + down,
          foot: own.y + own.height + down,
          side: own.x + own.width + across,
        };
      });
      const foot = Math.max(...spans.filter(({ isBasque }) => !isBasque).map((span) => span.foot));
      const tops = spans.filter(({ isBasque }) => isBasque).map(({ top }) => top);
      expect(tops).toHaveLength(1);
      expect(Math.min(...tops)).toBeGreaterThan(foot);
      expect(Math.min(...spans.map(({ top }) => top))).toBeGreaterThanOrEqual(box.y);
      expect(Math.max(...spans.map((span) => span.foot))).toBeLessThanOrEqual(box.y + box.height + 1e-9);
      expect(Math.max(...spans.map(({ side }) => side))).toBeLessThanOrEqual(box.x + box.width + 1e-9);
      expect(box.x).toBe(-(box.x + box.width));
    }
  });

  // Let out, a side front comes to lie on what is inside it.
  const fuller = (["princessArmhole", "princessShoulder"] as const).map((style) => ({
    style: `${style} let out` as const,
    plan: planOf({ ...plain, picks: { bustAlteration: 90 }, pattern: { ...plain.pattern, style } }),
  }));

  it.each([...styled, ...fuller])("lays no piece of a $style over another", ({ plan }) => {
    for (const { halves } of trialFigure(plan)) {
      const rings = halves[1].pieces.map(({ piece, down, across }) => {
        const own = plan.left.pieces.find(({ name }) => name === piece);
        if (own === undefined) throw new Error(piece);
        return outlineOf(own).flatMap((edge) =>
          Array.from({ length: 120 }, (_, i) => edgePointAt(edge, i / 120)).map(({ x, y }) => ({
            x: x + across,
            y: y + down,
          })),
        );
      });
      const over = rings.flatMap((ring, index) => {
        const polygon = polygonOf(ring);
        // A cup and its band share a seam, and touch along it.
        const isDeep = (p: { readonly x: number; readonly y: number }): boolean =>
          polygon.contains(new Point(p.x, p.y)) && ring.every(({ x, y }) => Math.hypot(x - p.x, y - p.y) > 3);
        return rings.filter((_, other) => other !== index).flatMap((other) => other.filter(isDeep));
      });
      expect(over).toEqual([]);
    }
  });

  it("mirrors the half at the left of the paper: hers the right one from before, the left one from behind", () => {
    const [front, back] = trialFigure(planOf(plain));
    expect(front.halves.map(({ half, mirrored }) => [half, mirrored])).toEqual([
      ["right", true],
      ["left", false],
    ]);
    expect(back.halves.map(({ half, mirrored }) => [half, mirrored])).toEqual([
      ["left", true],
      ["right", false],
    ]);
  });

  it("draws each half from its own pieces where they differ, and both alike where not", () => {
    const even = trialFigure(planOf(plain))[0];
    expect(even.halves[0].pieces).toEqual(even.halves[1].pieces);
    const uneven = trialFigure(
      planOf({ ...plain, alterations: [{ kind: "fit", id: "a", fit: "shoulderSlope", amount: 8, half: "right" }] }),
    )[0];
    const [right, left] = uneven.halves.map(({ pieces }) => pieces.find(({ piece }) => piece === "front")?.outline);
    expect(left).toBe(even.halves[1].pieces.find(({ piece }) => piece === "front")?.outline);
    expect(right).not.toBe(left);
  });

  it("shows the straps of a strapped bodice, and none elsewhere", () => {
    const strapped = styled
      .filter(({ plan }) => trialFigure(plan)[0].halves[0].pieces.some(({ strap }) => strap !== ""))
      .map(({ style }) => style);
    expect(strapped).toEqual(["midriff"]);
  });
});
