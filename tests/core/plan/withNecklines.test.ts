/** The neckline as the last stage of a plan: all that follows from the pieces follows it, and what fits them does not take it for fit. */
import { describe, expect, it } from "vitest";
import type { Neckline } from "../../../src/core/decisions/dress";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import type { Plan } from "../../../src/core/plan/plan";
import { pointOf, type Piece, type PieceName } from "../../../src/core/pattern/piece";
import { proposalsOf } from "../../../src/core/proposals/proposals";
import { invariant } from "../../../src/core/result";
import { withNeckline } from "../../support/necklines";
import { planOf, testWork } from "../../support/works";

const withEdge = (neckline: Neckline, work: Work = testWork): Work => ({ ...work, dress: { neckline } });

const pieceOf = (pieces: readonly Piece[], name: PieceName): Piece =>
  invariant(
    pieces.find((piece) => piece.name === name),
    name,
  );

const failing = ({ checks }: Plan): readonly string[] => checks.filter(({ ok }) => !ok).map(({ name }) => name);

const SQUARE: Neckline = { shape: "square", deeper: 60, wider: 20, backDeeper: 40 };

describe("a plan with a neckline", () => {
  it.each(STYLE_NAMES)("on %s keeps every check that held, whatever the shape", (style) => {
    const work: Work = { ...testWork, pattern: { ...testWork.pattern, style } };
    const plain = failing(planOf(work));
    for (let turn = 0; turn < 12; turn += 1) {
      const plan = planOf(withNeckline(work, turn));
      expect(failing(plan)).toEqual(plain);
      expect(plan.left.neckline?.ok).toBe(true);
      expect(plan.right).toBe(plan.left);
    }
  });

  it("has the pieces with the new edge, and beside them those it was drawn on", () => {
    const [plain, plan] = [planOf(testWork), planOf(withEdge(SQUARE))];
    expect(plan.left.fitted).toEqual(plain.left.pieces);
    expect(plain.left.fitted).toBe(plain.left.pieces);
    const [was, is] = [plain, plan].map(({ left }) => pointOf(pieceOf(left.pieces, "front"), "centreNeck").y);
    expect(is).toBeCloseTo(invariant(was, "height") + 60, 9);
  });

  it("is as it was where the edge of the pattern is asked for", () => {
    const plain: Work = { ...testWork, dress: {} };
    expect(planOf(withEdge({ shape: "asPattern", deeper: 50, pinched: true }))).toEqual(planOf(plain));
  });

  it("leaves the pieces as they are where the neckline cannot be had, and says so", () => {
    const plan = planOf(withEdge({ shape: "vee", deeper: 300 }));
    expect(plan.left.neckline).toMatchObject({ ok: false, failure: { code: "neckline/too-deep", of: "front" } });
    expect(plan.left.pieces).toEqual(planOf(testWork).left.pieces);
    expect(plan.checklist).toEqual(planOf(testWork).checklist);
  });

  it("has it on the overlay, and told on each piece after all other work on it", () => {
    const plan = planOf(withEdge(SQUARE));
    const moved = overlayOf(plan, ["front", "back"], 271).patches.map(({ piece }) => piece);
    expect(new Set(moved)).toEqual(new Set(["front", "back"]));
    for (const name of ["front", "back"] as const) {
      const steps = plan.checklist.filter(({ piece, step }) => piece === name && step.kind !== "walk");
      expect(steps.filter(({ step }) => step.kind === "neckline")).toHaveLength(1);
      expect(steps.at(-1)?.step.kind).toBe("neckline");
    }
  });

  it("asks for no alteration: what her lengths ask for is asked of the fitted pieces", () => {
    const [tape] = testWork.tapes;
    const readings = { ...tape?.readings, shoulderLength: [128], acrossFront: [330], backWaistLength: [410] };
    const measured: Work = { ...testWork, tapes: [{ readings }] };
    const [plain, dressed] = [measured, withEdge({ ...SQUARE, pinched: false }, measured)].map((work) =>
      proposalsOf(work, planOf(work)),
    );
    expect(dressed).toEqual(plain);
  });

  it("is drawn on both halves where they differ, and on neither where one cannot have it", () => {
    const uneven: Work = {
      ...testWork,
      alterations: [{ kind: "fit", id: "a", fit: "shoulderWidth", amount: -12, half: "left" }],
    };
    const plan = planOf(withEdge(SQUARE, uneven));
    expect(plan.left).not.toBe(plan.right);
    expect(failing(plan)).toEqual(failing(planOf(uneven)));
    const [left, right] = [plan.left, plan.right].map(
      ({ pieces }) => pointOf(pieceOf(pieces, "front"), "centreNeck").y,
    );
    expect(left).toBeCloseTo(invariant(right, "height"), 6);
    const room = planOf(withEdge({ shape: "scoop", wider: 400 }, uneven));
    const most = [room.left, room.right].map(({ neckline }) => (neckline?.ok === false ? neckline.failure : null));
    expect(most[0]).toMatchObject({ code: "neckline/too-wide" });
    expect(most[1]).toEqual(most[0]);
    expect(room.right.pieces).toEqual(planOf(uneven).right.pieces);
  });

  it("claims the bust that a pinch leaves, and no other girth", () => {
    const plan = planOf(withEdge({ ...SQUARE, deeper: 90, pinched: true }));
    expect(plan.left.neckline).toMatchObject({ ok: true });
    expect(failing(plan)).toEqual([]);
    const girth = (of: Plan, level: string): number =>
      invariant(
        of.levels.find((one) => one.level === level),
        level,
      ).finished;
    const plain = planOf(testWork);
    expect(girth(plan, "waist")).toBeCloseTo(girth(plain, "waist"), 2);
    expect(girth(plan, "hip")).toBeCloseTo(girth(plain, "hip"), 2);
  });
});
