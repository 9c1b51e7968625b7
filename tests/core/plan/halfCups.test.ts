/** A cup version of its own for one half: each half is cut in its cup, and both are sewn together. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HALVES, type Half } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Picks } from "../../../src/core/decisions/decided";
import type { Work } from "../../../src/core/decisions/work";
import { seamLength } from "../../../src/core/girth/seamLength";
import { tapesOf } from "../../../src/core/measures/tape";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { applyCommand } from "../../../src/core/plan/commands";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { keepHalf } from "../../../src/core/plan/halfEdit";
import { ledgerOfHalves, namedApart } from "../../../src/core/plan/halves";
import type { Plan, PlanHalf } from "../../../src/core/plan/plan";
import { invariant } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";
import { seamByBezierJs } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

/** ms. A busy machine is slow. */
const PATIENCE = 120_000;

const withPicks = (picks: Picks, work: Work = testWork): Work => ({ ...work, picks });
const bustOf = (plan: Plan) =>
  invariant(
    plan.levels.find(({ level }) => level === "bust"),
    "bust",
  );
const centreFront = ({ pieces }: PlanHalf): number =>
  pieces
    .filter(({ name }) => name === "front" || name === "centreFront")
    .reduce((sum, piece) => sum + seamByBezierJs(piece, "centre"), 0);

describe("the cup of one half", () => {
  it("goes before the one for both, on that half alone", () => {
    const plan = planOf(withPicks({ cup: "B", halfCups: { left: "C" } }));
    expect([plan.left, plan.right, plan].map(({ sizing }) => sizing.cup.label)).toEqual(["C", "B", "B"]);
    expect([plan.left, plan.right].map(({ sizing }) => sizing.cup.drafted)).toEqual([75, 50]);
  });

  it("that is the one for both as well changes nothing", () => {
    const plan = planOf(withPicks({ cup: "B", halfCups: { left: "B", right: "B" } }));
    expect(plan.left).toBe(plan.right);
    expect(plan.left.pieces).toEqual(planOf(withPicks({ cup: "B" })).left.pieces);
  });

  it("that the pattern does not have is refused as the one for both is", () => {
    expect(derivePlan(withPicks({ halfCups: { right: "Q" } }))).toMatchObject({
      ok: false,
      failure: { code: "plan/cup-unknown", label: "Q" },
    });
  });

  it("is passed over where the pattern has no cup versions", () => {
    const { pattern } = testWork;
    const plain: Work = { ...testWork, pattern: { ...pattern, chart: { ...pattern.chart, cups: [] } } };
    const plan = planOf(withPicks({ halfCups: { left: "C" } }, plain));
    expect(plan.left).toBe(plan.right);
    expect(plan.left.pieces).toEqual(planOf(plain).left.pieces);
  });

  // C is drafted for 75 and B for 50 over the upper chest: the middle of the two for 12.5 less than C.
  it("leaves the bust lacking what the middle of the two does", () => {
    const [both, apart] = [{ cup: "C" }, { cup: "C", halfCups: { right: "B" } }].map((picks) =>
      planOf(withPicks({ ...picks, baseSize: "12" })),
    );
    const [of, middle] = [invariant(both, "both").sizing.bust, invariant(apart, "apart").sizing.bust];
    expect(middle.residual - of.residual).toBeCloseTo(12.5, 9);
    expect(middle.drafted - of.drafted).toBeCloseTo(-12.5, 9);
  });

  it("is put and cleared without the other half's", () => {
    const run = (picks: Picks, ...commands: readonly Parameters<typeof applyCommand>[1][]): Picks =>
      commands.reduce(applyCommand, withPicks(picks)).picks;
    const left = { kind: "setPick", picks: { halfCups: { left: "C" } } } as const;
    expect(run({ halfCups: { right: "D" } }, left)).toEqual({ halfCups: { left: "C", right: "D" } });
    expect(run({ cup: "B" }, left)).toEqual({ cup: "B", halfCups: { left: "C" } });
    const clear = (half?: Half) =>
      ({ kind: "clearPick", pick: "halfCups", ...(half === undefined ? {} : { half }) }) as const;
    expect(run({ halfCups: { left: "C", right: "D" } }, clear("left"))).toEqual({ halfCups: { right: "D" } });
    expect(run({ cup: "B", halfCups: { left: "C" } }, clear("left"))).toEqual({ cup: "B" });
    expect(run({ cup: "B", halfCups: { left: "C", right: "D" } }, clear())).toEqual({ cup: "B" });
  });
});

describe("one half kept", () => {
  it("brings its cup to both, on the size that was sewn", () => {
    const work = withPicks({ halfCups: { left: "D" } });
    const before = planOf(work);
    const kept = keepHalf(work, "left");
    if (!kept.ok) throw new Error(kept.failure.code);
    const after = applyCommand(work, kept.value);
    expect(after.picks).toMatchObject({ cup: "D" });
    expect(after.picks.halfCups).toBeUndefined();
    expect(planOf(after).sizing.baseSize.label).toBe(before.sizing.baseSize.label);
    const other = keepHalf(work, "right");
    if (!other.ok) throw new Error(other.failure.code);
    expect(applyCommand(work, other.value).picks).toEqual({});
  });

  it("holds the size that was sewn where the planner would pick another for that cup", () => {
    // Of 14 in B for both; in D for both 12 is the better base.
    const tapes = tapesOf({ bustGirth: 915, upperChestGirth: 850, waistGirth: 725, hipGirth: 955 });
    const body: Work = { ...testWork, tapes };
    const sizeOf = (work: Work): string => planOf(work).sizing.baseSize.label;
    const work = withPicks({ halfCups: { left: "D" } }, body);
    expect([sizeOf(work), sizeOf(withPicks({ cup: "D" }, body))]).toEqual(["14", "12"]);
    const kept = keepHalf(work, "left");
    if (!kept.ok) throw new Error(kept.failure.code);
    expect(sizeOf(applyCommand(work, kept.value))).toBe("14");
  });

  it("has no middle of two cups", () => {
    expect(keepHalf(withPicks({ cup: "B", halfCups: { left: "D" } }), "mean")).toEqual({
      ok: false,
      failure: { code: "keep/cups-unlike", left: "D", right: "B" },
    });
  });
});

const anyCups = fc.constantFrom("B", "C", "D");

describe.each(STYLE_NAMES)("two cups on the style %s", { timeout: PATIENCE }, (style) => {
  it("give each half's own pieces, a bust that is the sum of the halves, and centres that can be sewn together", () => {
    let [compared, levelled] = [0, 0];
    fc.assert(
      fc.property(
        fc.record({
          left: anyCups,
          right: anyCups,
          bust: anyAmount(820, 1050),
          out: anyAmount(30, 110),
          own: fc.constantFrom(undefined, 0, 20, -12),
        }),
        ({ left, right, bust, out, own }) => {
          const body: Work = {
            ...testWork,
            pattern: { ...testWork.pattern, style },
            tapes: tapesOf({
              bustGirth: bust,
              upperChestGirth: bust - out,
              waistGirth: bust - 160,
              hipGirth: bust + 90,
            }),
          };
          const set: Picks = own === undefined ? {} : { bustAlteration: own };
          const derived = derivePlan(withPicks({ ...set, halfCups: { left, right } }, body));
          if (!derived.ok) return;
          const plan = derived.value;
          const baseSize = plan.sizing.baseSize.label;
          // The same waist and hip lines, so that nothing but the cup tells the halves apart.
          const [waist, hip] = (["waist", "hip"] as const).map(
            (level) => plan.levels.find((one) => one.level === level)?.size,
          );
          const lines = { ...(waist === undefined ? {} : { waist }), ...(hip === undefined ? {} : { hip }) };
          const alone = HALVES.map((half) => {
            const cup = plan[half].sizing.cup.label ?? "";
            const bustAlteration = plan.sizing.bust.asked;
            return derivePlan(withPicks({ ...lines, baseSize, cup, bustAlteration }, body));
          });
          expect(plan.checks.filter(({ name, ok }) => name === "halvesWalk" && !ok)).toEqual([]);
          expect(centreFront(plan.left)).toBeCloseTo(centreFront(plan.right), 3);
          expect(bustOf(plan).finished).toBeCloseTo(bustOf(plan).claim, 1);
          const [ofLeft, ofRight] = alone;
          if (!ofLeft?.ok || !ofRight?.ok) return;
          const isWhole = [plan.left, plan.right].every(
            ({ sizing }) => sizing.bust.alteration === plan.sizing.bust.asked,
          );
          if (!isWhole || ![ofLeft, ofRight].every(({ value }) => value.ledger.every(({ outcome }) => outcome.ok)))
            return;
          expect(bustOf(plan).finished).toBeCloseTo(
            (bustOf(ofLeft.value).finished + bustOf(ofRight.value).finished) / 2,
            1,
          );
          for (const [half, { value }] of [["left", ofLeft] as const, ["right", ofRight] as const]) {
            const { pieces, levelled: by } = plan[half];
            expect(by === null ? pieces : []).toEqual(by === null ? value.left.pieces : []);
            if (by !== null) levelled += 1;
            const [mine, plain] = [setOf(pieces), setOf(value.left.pieces)];
            // Let in at the centre front: the side seam and the waist stay as long as they were.
            const off = (["front", "sideFront"] as const).flatMap((name) =>
              (["side", "waist"] as const).map((seam) => {
                const [now, was] = [mine[name], plain[name]];
                return now === undefined || was === undefined ? 0 : seamLength(now, seam) - seamLength(was, seam);
              }),
            );
            expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.05);
            compared += 1;
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(compared).toBeGreaterThan(20);
    expect(levelled > 5).toBe(style !== "midriff");
  });
});

describe("the ledger of halves with cups of their own", () => {
  /** The right half is cut for a bust 50 mm fuller than the left. */
  const work = withPicks({ cup: "B", halfCups: { right: "D" }, bustAlteration: 24 });

  it("has one line where both are altered alike", () => {
    const lines = planOf(work).ledger.filter(({ source }) => source === "bust");
    expect(lines.map(({ half }) => half)).toEqual([undefined]);
  });

  it("has one for each where one half cannot take it, and says of which it is", () => {
    const plan = planOf(testWork);
    const [line] = planOf(work).left.alterations.filter(({ source }) => source === "bust");
    if (line === undefined) throw new Error("no bust alteration");
    const refused = {
      ...line,
      outcome: { ok: false as const, failure: { code: "alteration/not-on-this-style" as const } },
    };
    const [left, right] = namedApart({ ...plan.left, alterations: [line] }, { ...plan.right, alterations: [refused] });
    const ledger = ledgerOfHalves(work, left, right);
    expect(ledger.map(({ id, half, outcome }) => [id, half, outcome.ok])).toEqual([
      ["bust", "left", true],
      ["bust", "right", false],
    ]);
  });
});
