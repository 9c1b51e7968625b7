/** Plans on her own outlines. Nests of straight lines give closed forms; foreign ones say themselves what is true of them. */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Pattern } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { ownNestOf, ownPieces } from "../../../src/core/nest/ownPieces";
import type { TracedNest } from "../../../src/core/ownPieces/ownReading";
import { dartOf, pointNames, pointOf, type Piece } from "../../../src/core/pattern/piece";
import { derivePlan, planOn } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { invariant } from "../../../src/core/result";
import { chartOf, tracedOf } from "../../support/foreign/asTraced";
import { foreignNest } from "../../support/foreign/foreignNest";
import type { ForeignOptions } from "../../support/foreign/foreignTypes";
import { seamByBezierJs } from "../../support/independent";
import { straightNest, type StraightSize } from "../../support/straightNest";
import { testWork } from "../../support/works";

const BUSTS = [800, 840, 880, 930, 990, 1040];
/** Uneven steps at the waist: 40, 30, 60, 50, 60. */
const WAISTS = [620, 660, 690, 750, 800, 860];
const chart: SizeChart = {
  sizes: BUSTS.map((bust, index) => ({
    label: String(8 + 2 * index),
    bust,
    waist: WAISTS[index] ?? 0,
    hip: bust + 80,
  })),
  draftedDifference: 50,
  cups: [],
};
const patternOf = (of: Partial<Pattern> = {}): Pattern => ({ ...testWork.pattern, chart, length: "waist", ...of });

interface Body {
  readonly bust: number;
  readonly waist: number;
  readonly hip?: number;
}
const workOn = (pattern: Pattern, { bust, waist, hip }: Body): Work => ({
  ...testWork,
  pattern,
  tapes: tapesOf({
    bustGirth: bust,
    upperChestGirth: bust - 50,
    waistGirth: waist,
    ...(hip === undefined ? {} : { hipGirth: hip }),
  }),
});

function planned(traced: TracedNest, pattern: Pattern, body: Body, change: Partial<Work> = {}): Plan {
  const plan = planOn(ownPieces(traced, pattern), { ...workOn(pattern, body), ...change });
  if (!plan.ok) throw new Error(JSON.stringify(plan.failure));
  return plan.value;
}
const levelOf = (plan: Plan, level: "bust" | "waist" | "hip") =>
  invariant(
    plan.levels.find((one) => one.level === level),
    level,
  );

/** A size by quarters of its chart's girths: 15 mm more each at the bust, at the waist 8 and the dart. */
const sizeOf = (label: string, bust: number, waist: number, dart = 24): StraightSize => ({
  label,
  front: { bust: bust / 4 + 15, waist: waist / 4 + 8 + dart, dart },
  back: { bust: bust / 4 + 15, waist: waist / 4 + 8 + dart, dart },
});
const allStraight = (dart: (index: number) => number = () => 24): StraightSize[] =>
  chart.sizes.map(({ label, bust, waist }, index) => sizeOf(label, bust, waist, dart(index)));

describe("a nest of straight lines", () => {
  it("has the ease that it measures, whatever the envelope says of it", () => {
    const plan = planned(straightNest(allStraight()), patternOf({ ease: { bust: 1, waist: 2, hip: 3 } }), {
      bust: 880,
      waist: 690,
    });
    // Four quarters of 15 and of 8.
    expect(plan.drafted.bust).toBeCloseTo(60, 6);
    expect(plan.drafted.waist).toBeCloseTo(32, 6);
    expect(plan.isEaseMeasured).toBe(true);
    expect(plan.nest.source).toBe("own");
  });

  it.each([
    [690, 2, 2],
    // 690 to 750: a third of the way.
    [710, 2 + 1 / 3, 2],
    // 620 to 660.
    [640, 0.5, 0],
    [630, 0.25, 4],
  ])("darts of one intake: a waist of %d lies at %d, whatever the frame", (waist, at, frame) => {
    const plan = planned(
      straightNest(allStraight()),
      patternOf(),
      { bust: 880, waist },
      { picks: { baseSize: String(8 + 2 * frame) } },
    );
    const level = levelOf(plan, "waist");
    expect(level.size).toBeCloseTo(at, 6);
    // Walking the side seams over a shut dart moves its lower corner by less than this.
    expect(level.finished).toBeCloseTo(waist + 32, 2);
  });

  it("darts wider in larger sizes: the frame's darts are sewn in another size's waist", () => {
    // Size 12 (index 2) has darts of 30, size 14 of 36. At waist size s the half front is w(s) wide, open:
    // w(2) = 690/4 + 8 + 30 = 210.5, w(3) = 750/4 + 8 + 36 = 231.5; sewn with the darts of 30.
    // A body of 710 wants 710/4 + 8 = 185.5 sewn, so 215.5 open: 5 of 21.
    const plan = planned(straightNest(allStraight((index) => 18 + 6 * index)), patternOf(), { bust: 880, waist: 710 });
    const level = levelOf(plan, "waist");
    expect(level.size).toBeCloseTo(2 + 5 / 21, 6);
    expect(level.finished).toBeCloseTo(742, 4);
  });

  it("the same share lies on every piece", () => {
    const plan = planned(straightNest(allStraight()), patternOf(), { bust: 880, waist: 722 });
    const shares = plan.left.cutLines.map(({ share }) => share);
    expect(shares).toHaveLength(2);
    for (const share of shares) expect(share).toBeCloseTo(32 / 60, 3);
  });

  it("the side seam stays a line through its dart, on the place of the back's", () => {
    const plan = planned(straightNest(allStraight()), patternOf(), { bust: 880, waist: 722 });
    const [front, back] = ["front", "back"].map((name) =>
      invariant(
        plan.left.pieces.find((piece) => piece.name === name),
        name,
      ),
    );
    if (front === undefined || back === undefined) throw new Error("pieces");
    for (const name of ["sideDartInner", "sideDartOuter"] as const) {
      const { x, y } = pointOf(front, name);
      const [from, to] = [pointOf(back, "sideBust"), pointOf(back, "sideWaist")];
      // Sewn, the dart is shut: its ends are together, a little above half-way by their way along the seam.
      expect(Math.abs(x - (from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)))).toBeLessThan(6);
    }
    expect(pointOf(front, "sideWaist").x).toBeCloseTo(pointOf(back, "sideWaist").x, 4);
  });
});

describe("sizes that were not traced", () => {
  const two = [invariant(allStraight()[1], "10"), invariant(allStraight()[4], "16")];

  it("lie between those that were by the chart's girth at each level", () => {
    const { nest } = ownNestOf(straightNest(two), patternOf());
    nest.sizes.forEach((pieces, index) => {
      for (const piece of pieces) {
        // Quarters of the chart's girths, as if all had been traced: the steps of bust and waist are not alike.
        expect(pointOf(piece, "sideBust").x).toBeCloseTo((BUSTS[index] ?? 0) / 4 + 15, 6);
        expect(pointOf(piece, "sideWaist").x).toBeCloseTo((WAISTS[index] ?? 0) / 4 + 32, 6);
      }
    });
    expect(nest.traced).toEqual([false, true, false, false, true, false]);
  });

  it("give the plan that all of them give, and are told", () => {
    const [few, all] = [two, allStraight()].map((sizes) =>
      planned(straightNest(sizes), patternOf(), { bust: 930, waist: 722 }),
    );
    if (few === undefined || all === undefined) throw new Error("plans");
    expect(levelOf(few, "waist").size).toBeCloseTo(levelOf(all, "waist").size, 6);
    expect(levelOf(few, "waist").finished).toBeCloseTo(722 + 32, 4);
    expect(levelOf(few, "bust").untraced).toEqual(["14"]);
    expect(levelOf(few, "waist").untraced).toEqual(["12", "14"]);
    expect(levelOf(all, "waist").untraced).toBeUndefined();
  });

  it("come from one by the steps measured on the tissue", () => {
    // From size 12 to 14: bust 50/4, waist 60/4.
    const lengths = { bustStep: 12.5, waistStep: 15 };
    const tissue = { size: "12", pieces: { front: lengths, back: lengths } };
    const one = straightNest([invariant(allStraight()[2], "12")]);
    const plan = planned(one, patternOf({ tissue }), { bust: 880, waist: 710 });
    expect(levelOf(plan, "waist").size).toBeCloseTo(2 + 1 / 3, 6);
    expect(levelOf(plan, "waist").finished).toBeCloseTo(742, 4);
    expect(levelOf(plan, "waist").untraced).toEqual(["14"]);
  });

  it("come from steps of another line by the chart's own steps there and here", () => {
    // From size 10 to 12: bust 40/4, waist 30/4. The chart's steps from 12 to 14 are 50 and 60, from 16 to 18 the same.
    const lengths = { bustStep: 10, waistStep: 7.5 };
    const tissue = { size: "10", pieces: { front: lengths, back: lengths } };
    const upwards = planned(straightNest([invariant(allStraight()[2], "12")]), patternOf({ tissue }), {
      bust: 880,
      waist: 710,
    });
    expect(levelOf(upwards, "waist").size).toBeCloseTo(2 + 1 / 3, 6);
    expect(levelOf(upwards, "waist").finished).toBeCloseTo(742, 4);
    const downwards = planned(straightNest([invariant(allStraight()[5], "18")]), patternOf({ tissue }), {
      bust: 1040,
      waist: 830,
    });
    expect(levelOf(downwards, "waist").size).toBeCloseTo(4.5, 6);
    expect(levelOf(downwards, "waist").finished).toBeCloseTo(862, 4);
  });

  it("do not come from steps of a line that the chart has no more", () => {
    const lengths = { bustStep: 12.5, waistStep: 15 };
    const tissue = { size: "11", pieces: { front: lengths, back: lengths } };
    const one = straightNest([invariant(allStraight()[2], "12")]);
    const plan = planned(one, patternOf({ tissue }), { bust: 880, waist: 710 });
    expect(levelOf(plan, "waist").isHeld).toBe(true);
  });
});

describe("one size alone", () => {
  const one = straightNest([invariant(allStraight()[2], "12")]);

  it("is traced as it is where the body picks it, and what its waist gives is told", () => {
    const plan = planned(one, patternOf(), { bust: 880, waist: 710 });
    const level = levelOf(plan, "waist");
    expect([level.isHeld, level.size]).toEqual([true, 2]);
    // What it is: 690 + 32; what is wanted: 710 + 32.
    expect(level.finished).toBeCloseTo(722, 6);
    expect(level.target).toBeCloseTo(742, 6);
    expect(plan.checks.filter(({ name, ok }) => name === "girthAsClaimed" && !ok)).toEqual([]);
  });

  it("is no other size", () => {
    const pattern = patternOf();
    const plan = planOn(ownPieces(one, pattern), workOn(pattern, { bust: 930, waist: 750 }));
    expect(plan).toEqual({
      ok: false,
      failure: { code: "plan/one-size-traced", picked: "14", traced: ["12"] },
    });
  });
});

describe("one cup version alone", () => {
  const cups = [
    { label: "B", difference: 50 },
    { label: "D", difference: 100 },
  ];
  const pattern = patternOf({ chart: { ...chart, cups } });

  it("is picked from, the bust altered from it", () => {
    const plan = planned(straightNest(allStraight(), "D"), pattern, { bust: 880, waist: 690 }, { picks: { cup: "B" } });
    expect(plan.sizing.cup.label).toBe("D");
    // Upper chest 830 is the frame 880's; a D is drafted for 930 there.
    expect(plan.sizing.baseSize.label).toBe("12");
    expect(plan.sizing.bust.residual).toBeCloseTo(-50, 6);
    // 880 / 4 + 15 a quarter, for a body of 930.
    expect(plan.drafted.bust).toBeCloseTo(10, 6);
  });
});

const furthestMoved = (before: readonly Piece[], after: readonly Piece[]): number =>
  Math.max(
    ...before.flatMap((piece) => {
      const same = invariant(
        after.find(({ name }) => name === piece.name),
        piece.name,
      );
      return [
        ...pointNames(piece).map((name) => {
          const [a, b] = [pointOf(piece, name), pointOf(same, name)];
          return Math.hypot(a.x - b.x, a.y - b.y);
        }),
        ...piece.edges.flatMap(({ curve }, index) => {
          const other = same.edges[index]?.curve;
          return curve === null || other === null || other === undefined
            ? []
            : [
                Math.hypot(curve.c1.x - other.c1.x, curve.c1.y - other.c1.y),
                Math.hypot(curve.c2.x - other.c2.x, curve.c2.y - other.c2.y),
              ];
        }),
      ];
    }),
  );

interface Planned {
  readonly traced: TracedNest;
  readonly plan: (body: Partial<Body> & { readonly waistShare?: number; readonly bustMore?: number }) => Plan;
  readonly foreign: ReturnType<typeof foreignNest>;
}

/** A foreign nest, and plans on it for bodies about its second size. */
function foreignPlans(options: ForeignOptions): Planned {
  const foreign = foreignNest(options);
  const traced = tracedOf(foreign);
  const pattern = patternOf({
    chart: chartOf(foreign),
    style: foreign.style,
    length: foreign.options.basque ? "hip" : "waist",
  });
  const [row, next] = [foreign.chart[1], foreign.chart[2] ?? foreign.chart[0]];
  if (row === undefined || next === undefined) throw new Error("two sizes");
  return {
    foreign,
    traced,
    plan: ({ waistShare = 0, bustMore = 0 }) => {
      const body = {
        bust: row.bust + bustMore,
        waist: row.waist + waistShare * (next.waist - row.waist),
        hip: row.hip + waistShare * (next.hip - row.hip),
      };
      const plan = planOn(ownPieces(traced, pattern), {
        ...workOn(pattern, body),
        tapes: tapesOf({
          bustGirth: body.bust,
          upperChestGirth: row.bust - 50,
          waistGirth: body.waist,
          ...(foreign.options.basque ? { hipGirth: body.hip } : {}),
        }),
      });
      if (!plan.ok) throw new Error(JSON.stringify(plan.failure));
      return plan.value;
    },
  };
}

const SEEDS = Array.from({ length: 24 }, (_, seed) => seed);

describe.each(SEEDS)("foreign nest %i", (seed) => {
  const { foreign, traced, plan } = foreignPlans({ seed });

  it("comes out as it was read where nothing is altered", () => {
    const made = plan({});
    const read = invariant(traced.sizes[1], "size").pieces;
    expect(made.left.pieces.map(({ name }) => name).toSorted()).toEqual(read.map(({ name }) => name).toSorted());
    expect(furthestMoved(read, made.left.pieces)).toBeLessThan(0.001);
    expect(made.left.truing).toEqual([]);
    expect(made.checks.filter(({ ok }) => !ok)).toEqual([]);
    const levels = (["bust", "waist", "hip"] as const).filter((level) => level !== "hip" || foreign.options.basque);
    for (const level of levels) expect(made.drafted[level]).toBeCloseTo(foreign.ease[level], 2);
  });

  it("finishes at what is wanted where it is blended, the seams as long together as they were", () => {
    const made = plan({ waistShare: 0.6 });
    const [waist] = made.levels.filter(({ level }) => level === "waist");
    expect(Math.abs((waist?.finished ?? 0) - (waist?.target ?? 1))).toBeLessThan(0.05);
    const sideOf = (names: readonly string[]): number =>
      made.left.pieces
        .filter(({ name }) => names.includes(name))
        .reduce((sum, piece) => sum + seamByBezierJs(piece, "side"), 0);
    expect(sideOf(["front", "sideFront"]) - sideOf(["back"])).toBeCloseTo(0, 2);
    expect(sideOf(["frontBasque"]) - sideOf(["backBasque"])).toBeCloseTo(0, 2);
    for (const hip of made.levels.filter(({ level }) => level === "hip"))
      expect(Math.abs(hip.finished - hip.target)).toBeLessThan(0.05);
  });

  it("takes a fuller bust at whatever darts it has, or says how much of it", () => {
    const made = plan({ bustMore: 30, waistShare: 0.6 });
    const { asked, alteration } = made.sizing.bust;
    expect(asked).toBeCloseTo(30, 6);
    const bust = levelOf(made, "bust");
    expect(Math.abs(bust.finished - (foreign.chart[1]?.bust ?? 0) - foreign.ease.bust - alteration)).toBeLessThan(0.05);
    expect(alteration).toBeGreaterThan(20);
    const waist = levelOf(made, "waist");
    expect(Math.abs(waist.finished - waist.target)).toBeLessThan(0.05);
  });
});

describe("the darts of a bust adjustment", () => {
  it("end from the bust point as hers do, and point beside it as hers do", () => {
    const { plan } = foreignPlans({ seed: 3, front: "side", side: "straight" });
    const [before, after] = [plan({}), plan({ bustMore: 30 })];
    for (const dart of ["sideDart", "waistDart"] as const) {
      const [was, is] = [before, after].map(
        (made) => made.left.darts.find(({ ref }) => ref.piece === "front" && ref.dart === dart)?.drawn.end ?? null,
      );
      // Each 5 mm of cup difference take a side dart 1 mm further off (common practice), a waist dart none.
      expect((is?.along ?? 0) - (was?.along ?? 0)).toBeCloseTo(dart === "sideDart" ? 6 : 0, 3);
      expect((is?.across ?? 0) - (was?.across ?? 0)).toBeCloseTo(0, 3);
    }
  });

  it("are opened where there are none", () => {
    const { plan } = foreignPlans({ seed: 5, front: "waist" });
    expect(plan({}).left.darts.some(({ ref }) => ref.dart === "sideDart")).toBe(false);
    const front = invariant(
      plan({ bustMore: 40 }).left.pieces.find(({ name }) => name === "front"),
      "front",
    );
    const { inner, outer } = dartOf(front, "sideDart");
    const [a, b] = [pointOf(front, inner), pointOf(front, outer)];
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(5);
  });

  it("are not made smaller than a dart can be", () => {
    const made = foreignPlans({ seed: 5, front: "waist" }).plan({ bustMore: -40 });
    expect(made.sizing.bust.asked).toBeCloseTo(-40, 6);
    expect(made.sizing.bust.alteration).toBe(0);
  });
});

describe("lengths measured on pieces that the style does not have", () => {
  it("leave the stand-in what it is", () => {
    const sourceOf = (piece: "cup" | "front"): string => {
      const tissue = { size: chart.sizes[2]?.label ?? "", pieces: { [piece]: { centreLength: 330 } } };
      const plan = derivePlan(workOn(patternOf({ tissue }), { bust: 880, waist: 690 }));
      return plan.ok ? plan.value.nest.source : plan.failure.code;
    };
    expect([sourceOf("cup"), sourceOf("front")]).toEqual(["standIn", "fitted"]);
  });
});
