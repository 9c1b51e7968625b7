/** What every alteration keeps, for arbitrary amounts: the sewn seam, the walk of seams, equal legs; and each kind's own effect. */
import type { Alteration, GiveBack } from "../../../src/core/decisions/alteration";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mouthForAngle } from "../../../src/core/alterations/redraw/moveDartEnd";
import { degreesFrom, radiansFromDegrees } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";
import { runsOf } from "../../support/share";

const plain = planOf(testWork);
const waist = ref("front", "waistDart");
const side = ref("front", "sideDart");

const amount = (most: number) => anyAmount(-most, most);
const waistShares: fc.Arbitrary<GiveBack> = fc
  .tuple(fc.nat(100), fc.nat(100), fc.nat(100))
  .filter(([a, b, c]) => a + b + c > 0)
  .map(([a, b, c]) => ({ centreSeam: a / (a + b + c), sideSeam: b / (a + b + c), otherDart: c / (a + b + c) }));
const sideShares: fc.Arbitrary<GiveBack> = fc
  .integer({ min: 0, max: 100 })
  .map((a) => ({ underarm: a / 100, waistEnd: 1 - a / 100 }));

const alterations = (dart: typeof waist, shares: fc.Arbitrary<GiveBack>): fc.Arbitrary<Alteration> =>
  fc.oneof(
    fc.record({
      kind: fc.constant("dartEnd" as const),
      id: fc.constant("a"),
      dart: fc.constant(dart),
      shorten: amount(35),
      across: amount(15),
      hold: fc.constantFrom("mouth" as const, "fullness" as const),
      giveBack: shares,
    }),
    fc.record({
      kind: fc.constant("dartMouth" as const),
      id: fc.constant("b"),
      dart: fc.constant(dart),
      inner: amount(8),
      outer: amount(8),
      giveBack: shares,
    }),
    fc.record({
      kind: fc.constant("dartPlace" as const),
      id: fc.constant("c"),
      dart: fc.constant(dart),
      by: amount(12),
      how: fc.constant("redraw" as const),
      giveBack: shares,
    }),
  );

describe.each([
  ["the waist dart", waist, waistShares],
  ["the side dart", side, sideShares],
] as const)("any slip of %s", (_name, dart, shares) => {
  it("keeps the finished waist and hip, the walk of every seam and the equality of the legs", () => {
    fc.assert(
      fc.property(alterations(dart, shares), (planned) => {
        const plan = planOf(withAlterations(planned));
        for (const level of ["waist", "hip"]) {
          const before = plain.levels.find((l) => l.level === level)?.finished ?? NaN;
          const after = plan.levels.find((l) => l.level === level)?.finished ?? NaN;
          expect(Math.abs(after - before)).toBeLessThan(0.01);
        }
        const kept = new Set(["dartLegsEqual", "seamsWalk", "outlineClosed"]);
        const results = plan.checks.filter(({ name }) => kept.has(name));
        expect(new Set(results.map(({ name }) => name))).toEqual(kept);
        expect(results.filter(({ ok }) => !ok)).toEqual([]);
        expect(plan.checks.filter(({ measured }) => !Number.isFinite(measured))).toEqual([]);
        const done = plan.ledger.flatMap(({ id, outcome }) => (id === planned.id && outcome.ok ? [outcome.value] : []));
        for (const { seamBefore, seamUngiven, seamAfter, given } of done) {
          expect(seamAfter).toBeCloseTo(seamBefore, 4);
          const taken = given.reduce((sum, { amount: one }) => sum + one, 0);
          // What was set free is what was given back, but for fractions of a millimetre that redrawing smooth takes.
          expect(Math.abs(taken - (seamUngiven - seamBefore))).toBeLessThan(1);
        }
      }),
      { numRuns: 120 },
    );
  }, 120_000);
});

describe("each kind", () => {
  const end = (hold: "mouth" | "fullness", shorten: number, giveBack: GiveBack = {}): Alteration => ({
    kind: "dartEnd",
    id: "a",
    dart: waist,
    shorten,
    across: 0,
    hold,
    giveBack,
  });
  const printed = dartIn(plain, "front", "waistDart").drawn;

  it("shortened with the mouth held: the same mouth, the angle of a shorter dart, fuller", () => {
    const { drawn } = dartIn(planOf(withAlterations(end("mouth", 30))), "front", "waistDart");
    const axis = Math.sqrt(printed.legInner ** 2 - (printed.intake / 2) ** 2);
    const angle = (2 * Math.atan(printed.intake / 2 / (axis - 30)) * 180) / Math.PI;
    expect(drawn.intake).toBeCloseTo(printed.intake, 3);
    expect(degreesFrom(drawn.angle)).toBeCloseTo(angle, 2);
    expect(drawn.fullness).toBeGreaterThan(printed.fullness);
  });

  it("shortened with the fullness held: the same angle, a mouth in proportion to the legs", () => {
    const { drawn } = dartIn(planOf(withAlterations(end("fullness", 30))), "front", "waistDart");
    expect(degreesFrom(drawn.angle)).toBeCloseTo(degreesFrom(printed.angle), 2);
    expect(drawn.intake).toBeCloseTo((printed.intake * drawn.legInner) / printed.legInner, 1);
  });

  it("taken in at the side seam by 10 mm, the side seam still walks against the back", () => {
    const work = {
      ...withAlterations(end("fullness", 20, { sideSeam: 1 })),
      picks: { baseSize: "14", cup: "D", bustAlteration: 40 },
    };
    const walk = planOf(work).checks.find(
      ({ name, seam, pieces }) => name === "seamsWalk" && seam === "side" && pieces[0] === "back",
    );
    expect(Math.abs(walk?.measured ?? NaN)).toBeLessThan(0.1);
  });

  it.each([-18, -14])("refuses to lower the underarm past its own short edge (mouth ends moved by %d mm)", (by) => {
    const planned: Alteration = {
      kind: "dartMouth",
      id: "b",
      dart: side,
      inner: by,
      outer: by,
      giveBack: { underarm: 1 },
    };
    const plan = planOf({ ...withAlterations(planned), picks: { bustAlteration: 60 } });
    expect(plan.ledger.find(({ id }) => id === "b")?.outcome).toMatchObject({
      ok: false,
      failure: { code: "alteration/not-given-back" },
    });
    // Left out, it leaves nothing behind.
    expect(plan.left.pieces).toEqual(planOf({ ...testWork, picks: { bustAlteration: 60 } }).left.pieces);
  });

  it("gives back by the shares asked for", () => {
    const plan = planOf(withAlterations(end("fullness", 30, { sideSeam: 0.5, centreSeam: 0.3, otherDart: 0.2 })));
    const outcome = plan.ledger.find(({ id }) => id === "a")?.outcome;
    if (outcome?.ok !== true) throw new Error("refused");
    const total = outcome.value.given.reduce((sum, { amount: one }) => sum + one, 0);
    expect(outcome.value.given.map(({ place, amount: one }) => [place, Math.round((one / total) * 100)])).toEqual([
      ["sideSeam", 50],
      ["centreSeam", 30],
      ["otherDart", 20],
    ]);
    expect(outcome.value.notes).toContainEqual({ code: "centreNowSeam" });
    // The back dart took its share, and the basque went along.
    const back = dartIn(plan, "back", "waistDart");
    expect(back.drawn.intake - (back.printed?.intake ?? NaN)).toBeCloseTo(total * 0.2, 1);
    const basque = dartIn(plan, "backBasque", "waistDart");
    expect(basque.drawn.intake - (basque.printed?.intake ?? NaN)).toBeCloseTo(total * 0.2, 1);
  });

  it("refuses a dart too short to sew and says how far it can go; that far works", () => {
    const refusal = planOf(withAlterations(end("mouth", 500))).ledger.find(({ id }) => id === "a")?.outcome;
    if (refusal?.ok !== false || refusal.failure.code !== "alteration/too-short") throw new Error("not refused");
    const again = planOf(withAlterations(end("mouth", refusal.failure.most))).ledger.find(
      ({ id }) => id === "a",
    )?.outcome;
    expect(again?.ok).toBe(true);
  });

  it("refuses a mouth that would close, and shares that are not whole", () => {
    const shut: Alteration = { kind: "dartMouth", id: "b", dart: waist, inner: -40, outer: -40, giveBack: {} };
    const outcomes = [shut, end("fullness", 20, { sideSeam: 0.4 })].map(
      (planned) => planOf(withAlterations(planned)).ledger.find(({ id }) => id === planned.id)?.outcome,
    );
    expect(outcomes).toMatchObject([
      { ok: false, failure: { code: "alteration/dart-vanishes" } },
      { ok: false, failure: { code: "alteration/shares-not-whole", sum: 0.4 } },
    ]);
  });

  it("is refused where the dart that is to give back has too little, and the waist seams still walk", () => {
    // The back dart is some 36 mm wide, and its basque's narrower still.
    for (const wider of [32, 50]) {
      const planned: Alteration = {
        kind: "dartMouth",
        id: "b",
        dart: waist,
        inner: wider / 2,
        outer: wider / 2,
        giveBack: { otherDart: 1 },
      };
      const plan = planOf(withAlterations(planned));
      expect(plan.ledger.find(({ id }) => id === "b")?.outcome).toMatchObject({
        ok: false,
        failure: { code: "alteration/dart-vanishes" },
      });
      expect(plan.left.pieces).toEqual(plain.left.pieces);
      expect(plan.checks.filter(({ ok }) => !ok).map(({ name }) => name)).toEqual(["alterationsMade"]);
    }
  });

  it.each([ref("back", "waistDart"), ref("front", "sideDart"), ref("frontBasque", "waistDart")])(
    "refuses an end that would leave the piece and says how far it can go; that far works: $piece $dart",
    (dart) => {
      const lengthen = (by: number) => {
        const planned: Alteration = {
          kind: "dartEnd",
          id: "a",
          dart,
          shorten: -by,
          across: 0,
          hold: "mouth",
          giveBack: {},
        };
        return planOf(withAlterations(planned)).ledger.find(({ id }) => id === "a")?.outcome;
      };
      const refusal = lengthen(600);
      if (refusal?.ok !== false || refusal.failure.code !== "alteration/end-outside-piece")
        throw new Error("not refused");
      expect(lengthen(refusal.failure.most)?.ok).toBe(true);
      expect(lengthen(refusal.failure.most + 1)?.ok).toBe(false);
    },
  );

  it("moves a dart along its seam by the amount, its figures kept", () => {
    const planned: Alteration = { kind: "dartPlace", id: "c", dart: waist, by: 10, how: "redraw", giveBack: {} };
    const { drawn } = dartIn(planOf(withAlterations(planned)), "front", "waistDart");
    expect(printed.apex.x - drawn.apex.x).toBeCloseTo(10, 1);
    expect(drawn.intake).toBeCloseTo(printed.intake, 0);
  });

  it("off the centre seam brings the dart nearer the centre and takes twice the amount round the bust", () => {
    const planned: Alteration = { kind: "dartPlace", id: "c", dart: waist, by: 6, how: "offCentreSeam", giveBack: {} };
    const plan = planOf(withAlterations(planned));
    const bust = (p: typeof plan): number => p.levels.find(({ level }) => level === "bust")?.finished ?? NaN;
    expect(bust(plain) - bust(plan)).toBeCloseTo(12, 3);
    expect(plan.checks.filter(({ ok }) => !ok)).toEqual([]);
  });

  it.each([-200, 200])("off the centre seam by %d mm is refused, and the finished waist stays as it was", (by) => {
    const plan = planOf(
      withAlterations({ kind: "dartPlace", id: "c", dart: waist, by, how: "offCentreSeam", giveBack: {} }),
    );
    expect(plan.ledger.find(({ id }) => id === "c")?.outcome).toMatchObject({
      ok: false,
      failure: { code: "alteration/off-the-seam" },
    });
    expect(plan.levels).toEqual(plain.levels);
  });

  it("does nothing at amount 0, and is gone when it is taken out", () => {
    const plan = planOf(
      withAlterations(end("mouth", 0), { kind: "dartMouth", id: "b", dart: side, inner: 0, outer: 0, giveBack: {} }),
    );
    expect(plan.left.darts.map(({ drawn }) => drawn.intake)).toEqual(
      plain.left.darts.map(({ drawn }) => expect.closeTo(drawn.intake, 3)),
    );
    expect(planOf(withAlterations())).toEqual(plain);
  });
});

describe("chains", () => {
  it("of up to eight slips end in a plan without NaN; a crossed outline is never passed", () => {
    const any = fc.oneof(
      alterations(waist, waistShares),
      alterations(side, sideShares),
      alterations(ref("back", "waistDart"), waistShares),
    );
    fc.assert(
      fc.property(fc.array(any, { maxLength: 8 }), fc.integer({ min: -120, max: 120 }), (chain, bustAlteration) => {
        const plan = planOf({
          ...testWork,
          picks: { bustAlteration },
          alterations: chain.map((planned, i) => ({ ...planned, id: `s${i}` })),
        });
        expect(JSON.stringify(plan)).not.toMatch(/NaN/);
        for (const { drawn } of plan.left.darts) expect(Number.isFinite(drawn.fullness)).toBe(true);
        const waistGirth = plan.levels.find(({ level }) => level === "waist");
        expect(Math.abs((waistGirth?.finished ?? NaN) - (waistGirth?.claim ?? NaN))).toBeLessThan(1);
      }),
      { numRuns: runsOf(150) },
    );
  }, 240_000);
});

// The angle at the end between the two mouth ends, by the difference of their directions.
it.each([
  [14.36, 120, 0],
  [60, 40, 25],
  [90, 40, 10],
  [110, 30, 0],
  [140, 30, 12],
])("the mouth that keeps an angle of %d° makes that angle again", (degrees, length, aside) => {
  const half = mouthForAngle(radiansFromDegrees(degrees), length, aside) / 2;
  const made = Math.atan2(aside + half, length) - Math.atan2(aside - half, length);
  expect((made * 180) / Math.PI).toBeCloseTo(degrees, 9);
});
