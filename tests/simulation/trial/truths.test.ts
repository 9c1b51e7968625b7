import { describe, expect, it } from "vitest";
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { HALVES, idealWork, measured, needsOf, ownOf, residualsOf, soundPlan } from "./body";
import { DIMENSIONS, measure, type Dimension } from "./dimensions";
import { hasRow, kindOf, ROW_NAMES, type Truth, type TruthName } from "./truths";
import { wearerWith, type Wearer } from "./wearers";

/** mm of cloth. */
const AMOUNT = 12;
const VANISHES = 2;
/** A princess seam from the armhole is walked after its bend has moved, and gives back some of it. */
const LEAVES_MORE: Readonly<Partial<Record<TruthName, Partial<Record<StyleName, number>>>>> = {
  lowBustPoint: { princessArmhole: 0.3 * AMOUNT },
  highBustPoint: { princessArmhole: 0.3 * AMOUNT },
  // The chart's next cup is a whole girth of 30 mm away: 15 on the half.
  oneBreastFuller: { midriff: 15 - AMOUNT + 0.1 },
  oneBreastSmaller: { midriff: 15 - AMOUNT + 0.1 },
};
/** What an alteration may move beside, where it rightly changes nothing else. */
const MOVES_BESIDE = 4;

const wearers = ROW_NAMES.flatMap((name) =>
  STYLE_NAMES.flatMap((style): readonly (readonly [string, Wearer, StyleName])[] => {
    const isOneSided = kindOf(name).oneSided === 1;
    const wearer = wearerWith(style, [{ name, amount: AMOUNT, ...(isOneSided ? { half: "left" } : {}) }]);
    return wearer === null ? [] : [[`${name} of ${style}`, wearer, style]];
  }),
);

function afterIdeal({ work, plan, truths, needs }: Wearer) {
  const ideal = idealWork(work, plan, truths);
  const made = ideal === null ? null : soundPlan(ideal);
  return made === null ? null : residualsOf(needs, made);
}

const off = (residuals: ReturnType<typeof residualsOf>, name: Dimension): number =>
  Math.max(...HALVES.map((half) => Math.abs(residuals[half][name] ?? 0)));

describe("a hidden truth", () => {
  it("of every name can be had by some garment", () => {
    const had = new Set(wearers.flatMap(([, { truths }]) => truths.map(({ name }) => name)));
    expect(ROW_NAMES.filter((name) => !had.has(name))).toEqual([]);
  });

  it.each(wearers)("is off by itself, and vanishes by what a handbook does: %s", (_, wearer, style) => {
    const [truth] = wearer.truths;
    if (truth === undefined) throw new Error("no truth");
    const before = residualsOf(wearer.needs, wearer.plan);
    const own = ownOf(truth, wearer.needs.left);
    expect(own.length).toBeGreaterThan(0);
    for (const name of own) expect(before.left[name]).toBeCloseTo(AMOUNT * (kindOf(truth.name).needs[name] ?? 0), 6);
    const after = afterIdeal(wearer);
    if (after === null) throw new Error("cannot be made");
    const most = LEAVES_MORE[truth.name]?.[style] ?? VANISHES;
    expect(own.filter((name) => off(after, name) > most)).toEqual([]);
    expect(DIMENSIONS.filter((name) => !own.includes(name) && off(after, name) > MOVES_BESIDE)).toEqual([]);
  });

  it("on one half alone is needed and answered there alone", () => {
    const truth: Truth = { name: "slopingShoulders", amount: AMOUNT, half: "right" };
    const wearer = wearerWith("sideDart", [truth]);
    if (wearer === null) throw new Error("no wearer");
    const before = residualsOf(wearer.needs, wearer.plan);
    expect(before.right.slope).toBeCloseTo(AMOUNT, 6);
    expect(before.left.slope).toBe(0);
    const after = afterIdeal(wearer);
    expect(Math.abs(after?.right.slope ?? NaN)).toBeLessThan(VANISHES);
    expect(after?.left.slope).toBe(0);
  });

  it("without a row has no ideal", () => {
    expect(hasRow("offGrain")).toBe(false);
    const wearer = wearerWith("sideDart", [{ name: "offGrain", amount: AMOUNT }]);
    expect(wearer === null ? null : idealWork(wearer.work, wearer.plan, wearer.truths)).toBeNull();
  });

  it("is added to others", () => {
    const wearer = wearerWith("sideDart", []);
    if (wearer === null) throw new Error("no wearer");
    const base = measured(wearer.plan);
    const needs = needsOf(wearer.work, wearer.plan, [
      { name: "swayBack", amount: 10 },
      { name: "largerWaist", amount: 14, half: "left" },
    ]);
    expect((needs?.left.backCentre ?? 0) - (base.left.backCentre ?? 0)).toBeCloseTo(-10, 6);
    expect((needs?.left.waist ?? 0) - (base.left.waist ?? 0)).toBeCloseTo(14, 6);
    expect(needs?.right.waist).toBe(base.right.waist);
  });
});

/** A piece with a point moved by hand, and the edges with it where they are straight. */
function pushed(pieces: PieceSet, piece: keyof PieceSet, name: PointName, dx: number, dy: number): PieceSet {
  const one: Piece | undefined = pieces[piece];
  const point = one?.points[name];
  if (one === undefined || point === undefined) throw new Error(name);
  const at = { ...point.at, x: pointOf(one, name).x + dx, y: pointOf(one, name).y + dy };
  return { ...pieces, [piece]: { ...one, points: { ...one.points, [name]: { ...point, at } } } };
}

describe("what is measured", () => {
  const wearer = wearerWith("sideDart", []);
  const pieces = setOf(wearer?.plan.left.pieces ?? []);
  const base = measure(pieces);
  const change = (after: PieceSet, name: Dimension): number => (measure(after)[name] ?? NaN) - (base[name] ?? NaN);

  it("is the back's turn of the armhole, where it lies", () => {
    expect(change(pushed(pieces, "back", "armholeTouch", 7, 0), "backWidth")).toBeCloseTo(7, 6);
  });
  it("is where bust darts end", () => {
    expect(change(pushed(pieces, "front", "sideDartApex", 9, 0), "sideDartOut")).toBeCloseTo(9, 6);
    expect(change(pushed(pieces, "front", "sideDartApex", 0, 9), "bustLevel")).toBeCloseTo(9, 6);
    expect(change(pushed(pieces, "front", "waistDartApex", -6, 0), "bustOut")).toBeCloseTo(-6, 6);
  });
  it("is the fall of the shoulder: half from the back, half from the front", () => {
    const lowered = pushed(pieces, "back", "shoulderTip", 0, 10);
    // A usual shoulder of 125 falls as this one of its own length does, within a tenth.
    expect(change(lowered, "slope")).toBeGreaterThan(3.5);
    expect(change(lowered, "slope")).toBeLessThan(5.5);
    // What is lower on the back alone lies further back.
    expect(change(lowered, "forward")).toBeCloseTo(-5 / 0.93, 6);
  });
  it("is how much a dart opens: a mouth wider by 10 on legs of about 120 opens by about 10", () => {
    const mouth = pushed(pushed(pieces, "front", "sideDartInner", 0, -5), "front", "sideDartOuter", 0, 5);
    expect(change(mouth, "sharp")).toBeGreaterThan(7);
    expect(change(mouth, "sharp")).toBeLessThan(13);
  });
});
