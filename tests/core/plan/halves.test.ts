/** What two halves have in common, over lists of a few things made up by hand: alike once, the rest beside its like. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { CheckResult } from "../../../src/core/checks/check";
import { checksOfHalves, ledgerOfHalves, namedApart, workOfHalves } from "../../../src/core/plan/halves";
import type { ChecklistItem, CutLine, PlanHalf, PlannedAlteration } from "../../../src/core/plan/plan";
import { fail } from "../../../src/core/result";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const check = (measured: number, more: Partial<CheckResult> = {}): CheckResult => ({
  name: "seamsWalk",
  ok: true,
  measured,
  expected: 0,
  tolerance: 1,
  unit: "mm",
  pieces: ["front"],
  ...more,
});
const of = (half: Half, one: CheckResult): CheckResult => ({ ...one, half });

describe("checks of both halves", () => {
  it("are the left's own where the halves are alike", () => {
    const left = [check(1)];
    expect(checksOfHalves(left, null)).toBe(left);
  });

  it("stand once where all that is read is the same, to a tenth", () => {
    expect(checksOfHalves([check(0.52)], [check(0.54)])).toEqual([check(0.52)]);
    expect(checksOfHalves([check(0.5)], [check(0.7)])).toEqual([of("left", check(0.5)), of("right", check(0.7))]);
    // Half a tenth either way of what is typed by tenths reads alike.
    expect(checksOfHalves([check(0.25)], [check(0.25 - 1e-9)])).toEqual([check(0.25)]);
  });

  it.each<Partial<CheckResult>>([
    { name: "seamsSmooth" },
    { ok: false },
    { expected: 2 },
    { tolerance: 2 },
    { unit: "degrees" },
    { pieces: ["front", "back"] },
    { seam: "side" },
  ])("are told apart by %o", (other) => {
    expect(checksOfHalves([check(1)], [check(1, other)])).toEqual([of("left", check(1)), of("right", check(1, other))]);
  });

  it("keep each half's order, what is of one half beside its like", () => {
    const [a, b, c, d] = [check(1), check(2), check(3), check(4)];
    expect(checksOfHalves([a, c], [a, b, c])).toEqual([a, of("right", b), c]);
    expect(checksOfHalves([a, b, c], [a, c])).toEqual([a, of("left", b), c]);
    expect(checksOfHalves([a, b], [a, b, c, d])).toEqual([a, b, of("right", c), of("right", d)]);
    expect(checksOfHalves([b, a], [a, b])).toEqual([b, a]);
    expect(checksOfHalves([], [a])).toEqual([of("right", a)]);
    // What stands twice on the right counts where it stands first.
    expect(checksOfHalves([a], [a, b, a])).toEqual([a, of("right", b)]);
    expect(checksOfHalves([a, b], [c, a, d, b])).toEqual([of("right", c), a, of("right", d), b]);
  });
});

describe("work of both halves", () => {
  const trued = (amount: number, piece: ChecklistItem["piece"] = "front"): ChecklistItem => ({
    piece,
    step: { kind: "trueDart", dart: ref("front", "waistDart"), amount },
    amount,
  });
  const trace = (isTwice: boolean, out = 0): ChecklistItem => ({
    piece: "front",
    step: {
      kind: "trace",
      size: "12",
      cup: null,
      isTwice,
      own: { fromCentre: out, fromSideNeck: null, fromPrinted: null, isMoved: false },
    },
    amount: 0,
  });

  it("is the left's own where the halves are alike, and once where it reads alike", () => {
    const left = [trued(1)];
    expect(workOfHalves(left, null)).toBe(left);
    expect(workOfHalves([trued(1.01)], [trued(1.03)])).toEqual([trued(1.01)]);
    expect(workOfHalves([trued(1)], [trued(1.2)])).toEqual([
      { ...trued(1), half: "left" },
      { ...trued(1.2), half: "right" },
    ]);
  });

  it("is told apart by what is deep in a step, and brought into the order of work", () => {
    expect(workOfHalves([trace(false, 3)], [trace(false, 3.01)])).toHaveLength(1);
    expect(workOfHalves([trace(false, 3)], [trace(false, 3.2)]).map(({ half }) => half)).toEqual(["left", "right"]);
    expect(workOfHalves([trace(false)], [trace(true)])).toHaveLength(2);
    expect(workOfHalves([trued(2), trace(false)], [trace(false), trued(2)])).toEqual([trace(false), trued(2)]);
    expect(workOfHalves([trued(1, "back"), trued(1)], [trued(1)]).map(({ piece, half }) => [piece, half])).toEqual([
      ["front", undefined],
      ["back", "left"],
    ]);
  });
});

const fit = (id: string, half?: Half): Alteration => ({
  kind: "fit",
  id,
  fit: "swayBack",
  amount: 6,
  ...(half === undefined ? {} : { half }),
});

describe("what is told of a step", () => {
  const plan = planOf(testWork);
  const blend = plan.checklist.find(({ step }) => step.kind === "blend") ?? raise();
  const lineWith = (more: Partial<CutLine>): ChecklistItem => {
    const { step } = blend;
    return step.kind === "blend" ? { ...blend, step: { ...step, cutLine: { ...step.cutLine, ...more } } } : raise();
  };
  const refused = (id: string, most: number): ChecklistItem => ({
    piece: "front",
    amount: 5,
    step: {
      kind: "alteration",
      planned: {
        id,
        source: "wearer",
        phase: "length",
        piece: "front",
        what: { kind: "alteration", alteration: fit(id) },
        outcome: fail({ code: "alteration/too-much", most }),
      },
    },
  });
  const isOne = (left: ChecklistItem, right: ChecklistItem): boolean => workOfHalves([left], [right]).length === 1;

  it("of a line is where it is marked, whatever alterations move afterwards", () => {
    expect(isOne(lineWith({}), lineWith({ alterationMove: 7 }))).toBe(true);
    expect(isOne(lineWith({}), lineWith({ offset: 7 }))).toBe(false);
  });

  it("of an alteration that is left out is which, and why", () => {
    expect(isOne(refused("a", 3), refused("a", 3))).toBe(true);
    expect(isOne(refused("a", 3), refused("a", 4))).toBe(false);
    expect(isOne(refused("a", 3), refused("b", 3))).toBe(false);
  });

  it("of what is let in at the centre is how much", () => {
    const uneven = planOf({
      ...testWork,
      picks: { baseSize: "12", cup: "B", bustAlteration: 0, halfCups: { right: "D" } },
    });
    const level = uneven.checklist.find(({ step }) => step.kind === "level") ?? raise();
    const other = level.step.kind === "level" ? level.step.level : raise();
    const { piece } = other.trace;
    const same: ChecklistItem = {
      ...level,
      step: { kind: "level", level: { ...other, trace: { ...other.trace, piece } } },
    };
    const more: ChecklistItem = { ...level, step: { kind: "level", level: { ...other, amount: other.amount + 1 } } };
    const elsewhere: ChecklistItem = {
      ...level,
      step: { kind: "level", level: { ...other, trace: { ...other.trace, seamBefore: 99 } } },
    };
    expect([isOne(level, same), isOne(level, elsewhere), isOne(level, more)]).toEqual([true, true, false]);
  });
});

describe("the ledger of both halves", () => {
  const plan = planOf(testWork);
  const planned = (id: string, half?: Half): PlannedAlteration => ({
    id,
    source: "wearer",
    phase: "length",
    piece: "back",
    what: { kind: "alteration", alteration: fit(id, half) },
    outcome: fail({ code: "alteration/not-on-this-style" }),
  });
  const bust = (amount: number, asked = amount): PlannedAlteration => ({
    ...planned("bust"),
    source: "bust",
    what: {
      kind: "bust",
      amount,
      asked,
      spread: amount / 2,
      drop: 0,
      turn: plan.left.darts[0]?.drawn.angle ?? raise(),
    },
  });
  const blend = plan.left.alterations[0] ?? raise();
  const withLines = (...alterations: readonly PlannedAlteration[]): PlanHalf => ({ ...plan.left, alterations });
  const ids = (lines: readonly PlannedAlteration[]) =>
    lines.map(({ id, half }) => (half === undefined ? id : `${id} ${half}`));

  it("has the bust first, then the wearer's in the order they are made, the blend last", () => {
    const work = withAlterations(fit("r", "right"), fit("a"), fit("l", "left"));
    const left = withLines(blend, planned("a"), planned("l", "left"), bust(10));
    const right = withLines(blend, planned("r", "right"), planned("a"), bust(10));
    expect(ids(ledgerOfHalves(work, left, right))).toEqual(["bust", "r", "a", "l", blend.id]);
    const one = withLines(blend, planned("a"));
    expect(ledgerOfHalves(work, one, one)).toBe(one.alterations);
  });

  it("names as their own what comes out otherwise on the other half, and nothing else", () => {
    const [same, other] = namedApart(withLines(planned("a"), blend), withLines(planned("a"), blend));
    expect([ids(same.alterations), ids(other.alterations)]).toEqual([
      ["a", blend.id],
      ["a", blend.id],
    ]);
    const refused: PlannedAlteration = { ...planned("a"), outcome: fail({ code: "alteration/too-much", most: 3 }) };
    const apart = namedApart(withLines(planned("a"), planned("l", "left"), blend), withLines(refused, blend));
    expect(apart.map(({ alterations }) => ids(alterations))).toEqual([
      ["a left", "l", blend.id],
      ["a right", blend.id],
    ]);
    expect(ids(ledgerOfHalves(withAlterations(fit("a"), fit("l", "left")), apart[0], apart[1]))).toEqual([
      "a left",
      "a right",
      "l",
      blend.id,
    ]);
    const alone = withLines(planned("a"));
    expect(namedApart(alone, alone)).toEqual([alone, alone]);
  });

  it("tells a bust apart by how much of it is made, to a tenth", () => {
    const told = (a: PlannedAlteration, b: PlannedAlteration) =>
      namedApart(withLines(a), withLines(b)).flatMap(({ alterations }) => ids(alterations));
    expect(told(bust(10), bust(10.04))).toEqual(["bust", "bust"]);
    expect(told(bust(10), bust(12))).toEqual(["bust left", "bust right"]);
    expect(told(bust(10), bust(10, 12))).toEqual(["bust left", "bust right"]);
    expect(namedApart(withLines(bust(10)), withLines()).flatMap(({ alterations }) => ids(alterations))).toEqual([
      "bust left",
    ]);
  });
});

function raise(): never {
  throw new Error("nothing there");
}
