/**
 * Alterations of one half after which it could not be sewn to the other: refused with how far apart they set the centres, which
 * is the amount itself where a length is let in straight.
 */
import { describe, expect, it } from "vitest";
import { HALVES, type Alteration, type Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import type { Plan } from "../../../src/core/plan/plan";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: half === undefined ? name : `${name} ${half}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const plans = (...alterations: readonly Alteration[]): Plan => planOf(withAlterations(...alterations));
/** What became of each: made, or how far apart it would set which piece. */
const told = ({ ledger }: Plan) =>
  ledger.flatMap(({ id, source, outcome }) => {
    if (source !== "wearer") return [];
    if (outcome.ok) return [[id, "made"]];
    const { failure } = outcome;
    return [
      failure.code === "alteration/halves-apart" ? [id, failure.piece, failure.seam, failure.off] : [id, failure.code],
    ];
  });
const pieceOf = (plan: Plan, half: Half, name: string): Piece => {
  const found = plan[half].pieces.find((piece) => piece.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};

describe("one half longer than the other", () => {
  it.each([
    ["lengthBasque", 20, "backBasque"],
    ["lengthBelowBust", 10, "back"],
    ["lengthAboveBust", -8, "back"],
  ] as const)("is not made by %s, and both halves stay as they are", (name, amount, piece) => {
    for (const half of ["left", "right"] as const) {
      const plan = plans(fit(name, amount, half));
      expect(told(plan)).toEqual([[`${name} ${half}`, piece, "centre", expect.closeTo(Math.abs(amount), 1)]]);
      expect(plan.left.pieces).toEqual(planOf(testWork).left.pieces);
      expect(plan.right.pieces).toEqual(planOf(testWork).left.pieces);
    }
  });

  it("is made on both alike, or on one by as much as goes off it again", () => {
    expect(told(plans(fit("lengthBelowBust", 10)))).toEqual([["lengthBelowBust", "made"]]);
    expect(told(plans(fit("lengthBelowBust", 10, "left"), fit("lengthBelowBust", 10, "right")))).toEqual([
      ["lengthBelowBust left", "made"],
      ["lengthBelowBust right", "made"],
    ]);
    expect(told(plans(fit("lengthBelowBust", 10, "left"), fit("lengthAboveBust", -10, "left")))).toEqual([
      ["lengthBelowBust left", "made"],
      ["lengthAboveBust left", "made"],
    ]);
  });

  it("is refused for each that sets them apart, and for no other", () => {
    expect(told(plans(fit("lengthBelowBust", 10, "left"), fit("lengthAboveBust", 6, "left")))).toEqual([
      ["lengthBelowBust left", "back", "centre", expect.closeTo(10, 1)],
      ["lengthAboveBust left", "back", "centre", expect.closeTo(6, 1)],
    ]);
    // Both are shortened by 10; only the right is let out at the back besides.
    const plan = plans(
      fit("swayBack", 10, "left"),
      fit("shoulderSlope", 4, "left"),
      fit("roundBack", 5, "right"),
      fit("swayBack", 10, "right"),
    );
    expect(told(plan)).toEqual([
      ["swayBack left", "made"],
      ["shoulderSlope left", "made"],
      ["roundBack right", "back", "centre", expect.closeTo(5, 1)],
      ["swayBack right", "made"],
    ]);
    const [left, right] = (["left", "right"] as const).map((half) =>
      pointOf(pieceOf(plan, half, "back"), "centreWaist"),
    );
    expect(right).toEqual(left);
  });
});

describe("a centre", () => {
  it("that becomes a seam on one half is one on the other, since they are sewn to each other", () => {
    const off: Alteration = {
      kind: "dartPlace",
      id: "off",
      dart: ref("front", "waistDart"),
      by: 10,
      how: "offCentreSeam",
      giveBack: {},
      half: "left",
    };
    const plan = plans(off);
    expect(told(plan)).toEqual([["off", "made"]]);
    expect(pieceOf(planOf(testWork), "left", "front").centreOnFold).toBe(true);
    expect(pieceOf(plan, "left", "front").centreOnFold).toBe(false);
    expect(pieceOf(plan, "right", "front").centreOnFold).toBe(false);
  });

  const shoulder: Alteration = {
    kind: "dartPivot",
    id: "to",
    dart: ref("front", "sideDart"),
    to: "shoulder",
    share: 1,
  };
  const seamOn = (half: Half): Alteration => ({
    kind: "dartSeam",
    id: `seam ${half}`,
    dart: ref("front", "shoulderDart"),
    half,
  });

  it.each(HALVES)("by a seam that parts the front of one half alone, on the %s, is left out and told", (half) => {
    const plan = plans(shoulder, seamOn(half));
    expect(told(plan)).toEqual([
      ["to", "made"],
      [`seam ${half}`, "alteration/other-pieces"],
    ]);
    // What is printed, laid and sewn goes by one list of pieces.
    expect(plan.left.pieces.map(({ name }) => name)).toEqual(plan.right.pieces.map(({ name }) => name));
    expect(plan.right.pieces.some(({ name }) => name === "sideFront")).toBe(false);
  });

  it("by a seam on each half, one after the other, is made: both have the same pieces", () => {
    const plan = plans(shoulder, seamOn("left"), seamOn("right"));
    expect(told(plan).map(([, what]) => what)).toEqual(["made", "made", "made"]);
    for (const half of HALVES) expect(pieceOf(plan, half, "sideFront").darts).toEqual([]);
  });
});

describe("what is made", () => {
  it("stands with its phase, the piece it is made on, and, left out, the first piece it would have been made on", () => {
    const plan = plans(fit("shoulderSlope", 400), fit("swayBack", 10), {
      kind: "dartLegs",
      id: "legs",
      dart: ref("back", "waistDart"),
      bow: 2,
    });
    expect(plan.ledger.map(({ id, source, phase, piece, outcome }) => [id, source, phase, piece, outcome.ok])).toEqual([
      ["shoulderSlope", "wearer", "edges", "front", false],
      ["swayBack", "wearer", "length", "back", true],
      ["legs", "wearer", "darts", "back", true],
      ["blend-front-waist", "blend", "widthsTraced", "front", true],
      ["blend-back-waist", "blend", "widthsTraced", "back", true],
      ["blend-frontBasque-waist", "blend", "widthsTraced", "frontBasque", true],
      ["blend-frontBasque-hip", "blend", "widthsTraced", "frontBasque", true],
      ["blend-backBasque-waist", "blend", "widthsTraced", "backBasque", true],
      ["blend-backBasque-hip", "blend", "widthsTraced", "backBasque", true],
    ]);
    expect(plan.left.alterations).toBe(plan.ledger);
  });

  it("tells how far truing moved the ends of a mouth along its legs: longer is positive", () => {
    const across: Alteration = {
      kind: "dartEnd",
      id: "across",
      dart: ref("front", "waistDart"),
      shorten: 0,
      across: 6,
      hold: "mouth",
      giveBack: {},
    };
    const dart = dartIn(plans(across), "front", "waistDart");
    // The legs run down to the waist, where the mouth lay: what they gained or lost is how far it lies lower or higher.
    for (const end of ["inner", "outer"] as const) {
      const was = dart.printed?.[end] ?? { x: Number.NaN, y: Number.NaN };
      const by = Math.hypot(dart.drawn[end].x - was.x, dart.drawn[end].y - was.y);
      expect(dart.truing[end]).toBeCloseTo(by * Math.sign(dart.drawn[end].y - was.y), 1);
    }
    expect(Math.max(Math.abs(dart.truing.inner), Math.abs(dart.truing.outer))).toBeGreaterThan(0.4);
    const still: Alteration = {
      kind: "dartMouth",
      id: "mouth",
      dart: ref("front", "waistDart"),
      inner: 0,
      outer: 0,
      giveBack: {},
    };
    const twice = dartIn(plans(across, still), "front", "waistDart");
    expect(twice.truing.inner).toBeCloseTo(dart.truing.inner, 1);
    expect(twice.truing.outer).toBeCloseTo(dart.truing.outer, 1);
  });

  it("tells of no truing at the end where a dart alone was redrawn: a basque is out by tenths then", () => {
    const mouth: Alteration = {
      kind: "dartMouth",
      id: "mouth",
      dart: ref("front", "waistDart"),
      inner: -3,
      outer: -3,
      giveBack: { sideSeam: 1 },
    };
    expect(plans(mouth).left.truing).toEqual([]);
    expect(planOf(testWork).left.truing).toEqual([]);
  });

  it("of a bust that was set is told with what it spreads and what is lower for it, or that it is too much", () => {
    const bust = (bustAlteration: number) =>
      planOf({ ...testWork, picks: { baseSize: "12", cup: "B", bustAlteration } }).ledger.find(
        ({ source }) => source === "bust",
      );
    const made = bust(20);
    expect(made).toMatchObject({
      id: "bust",
      phase: "bust",
      piece: "front",
      what: { amount: 20, asked: 20, spread: 10 },
    });
    const notes = made?.outcome.ok === true ? made.outcome.value.notes : [];
    const drop = made?.what.kind === "bust" ? made.what.drop : Number.NaN;
    expect(notes.filter(({ code }) => code !== "armholeSmoothed")).toEqual([
      { code: "centreLengthened", amount: drop },
    ]);
    expect(drop).toBeGreaterThan(0);
    expect(bust(0)).toBeUndefined();
    const most = bust(4000);
    const failure = most?.outcome.ok === false ? most.outcome.failure : null;
    expect(failure).toMatchObject({ code: "alteration/bust-too-much", asked: 4000 });
    expect(most?.what).toEqual({ kind: "bust", amount: 4000, asked: 4000, spread: 2000, drop: 0, turn: 0 });
    // What it says goes, does go; and a little more does not.
    const limit = failure?.code === "alteration/bust-too-much" ? failure.most : Number.NaN;
    expect([bust(limit - 1)?.outcome.ok, bust(limit + 1)?.outcome.ok]).toEqual([true, false]);
  });
});
