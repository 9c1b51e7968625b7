/** Halves of two cups, whose centres are brought together: by how much is told from each cup's pieces alone. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { levelHalves } from "../../../src/core/plan/levelHalves";
import type { Plan, PlanHalf } from "../../../src/core/plan/plan";
import { planOf, testWork } from "../../support/works";

const picked = (picks: Work["picks"]): Work => ({
  ...testWork,
  picks: { baseSize: "12", bustAlteration: 0, waist: 3, hip: 3, ...picks },
});
const frontOf = ({ pieces }: PlanHalf): Piece => {
  const found = pieces.find(({ name }) => name === "front");
  if (found === undefined) throw new Error("no front");
  return found;
};
/** Straight down the centre, which is a straight line. */
const centreOf = (piece: Piece): number => pointOf(piece, "centreWaist").y - pointOf(piece, "centreNeck").y;
const levelJobs = ({ checklist }: Plan) => checklist.filter(({ step }) => step.kind === "level");

describe("halves of two cups", () => {
  const [small, full] = [planOf(picked({ cup: "B" })), planOf(picked({ cup: "D" }))];
  const apart = centreOf(frontOf(full.left)) - centreOf(frontOf(small.left));

  it("are brought to the longer centre, on the half with the smaller cup alone", () => {
    // A fuller cup of the same base is longer at the centre front.
    expect(apart).toBeGreaterThan(1);
    const plan = planOf(picked({ cup: "B", halfCups: { right: "D" } }));
    expect(plan.right.levelled).toBeNull();
    expect(plan.left.levelled?.amount).toBeCloseTo(apart, 6);
    expect(centreOf(frontOf(plan.left))).toBeCloseTo(centreOf(frontOf(plan.right)), 3);
    expect(frontOf(plan.right)).toEqual(frontOf(full.left));
    expect([plan.left, plan.right, plan].map(({ sizing }) => sizing.cup.label)).toEqual(["B", "D", "B"]);
    // Turned about the side seam, which keeps its length.
    expect(seamLength(frontOf(plan.left), "side")).toBeCloseTo(seamLength(frontOf(small.left), "side"), 1);
    expect(levelJobs(plan).map(({ piece, half }) => [piece, half])).toEqual([["front", "left"]]);
    expect(levelJobs(plan)[0]?.amount).toBeCloseTo(apart, 6);
  });

  it("are so whichever half it is", () => {
    const plan = planOf(picked({ cup: "B", halfCups: { left: "D" } }));
    expect([plan.left.levelled, plan.right.levelled === null]).toEqual([null, false]);
    expect(plan.right.levelled?.amount).toBeCloseTo(apart, 6);
    expect(levelJobs(plan).map(({ half }) => half)).toEqual(["right"]);
  });

  it("of one cup are one half twice, and nothing is let in", () => {
    expect(small.left).toBe(small.right);
    expect(levelJobs(small)).toEqual([]);
    const pieces = setOf(small.left.pieces);
    expect(levelHalves(pieces, pieces, "front")).toEqual({
      left: { pieces, level: null },
      right: { pieces, level: null },
    });
  });

  it("bring half of their girths each, at waist and bust", () => {
    const plan = planOf(picked({ cup: "B", halfCups: { right: "D" } }));
    const at = (of: Plan, name: string): number =>
      of.levels.find(({ level }) => level === name)?.finished ?? Number.NaN;
    expect(at(plan, "bust")).toBeCloseTo((at(small, "bust") + at(full, "bust")) / 2, 1);
    expect(at(plan, "waist")).toBeCloseTo((at(small, "waist") + at(full, "waist")) / 2, 1);
    expect(plan.sizing.bust.alteration).toBe(0);
  });
});
