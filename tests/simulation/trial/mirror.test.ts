import { describe, expect, it } from "vitest";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import { residualsOf } from "./body";
import { chancesOf } from "./chances";
import { lookInMirror, NO_NOISE, trulySeen, USUAL_NOISE, type Noise } from "./mirror";
import { kindOf, LOOSE_NAMES, ROW_NAMES, type Truth } from "./truths";
import { wearerOf, wearerWith, type Wearer } from "./wearers";

const look = (wearer: Wearer, noise: Noise, seed = 1): Trial =>
  lookInMirror({
    work: wearer.work,
    plan: wearer.plan,
    residuals: residualsOf(wearer.needs, wearer.plan),
    truths: wearer.truths,
    id: "trial",
    chances: chancesOf(seed),
    noise,
  });

/** What is put down of one truth alone, without any error; each line without its id. */
function shown(style: (typeof STYLE_NAMES)[number], ...truths: readonly Truth[]): readonly Omit<Observation, "id">[] {
  const wearer = wearerWith(style, truths);
  if (wearer === null) throw new Error("no such wearer");
  return look(wearer, NO_NOISE).observations.map((line) => {
    const { id: _, ...rest } = line;
    return rest;
  });
}

/** The amounts and halves of what is shown as one sign at one place. */
const seenAt = (lines: readonly Omit<Observation, "id">[], place: string, sign: string) =>
  lines
    .filter((line) => line.place === place && line.sign === sign)
    .map((line) => {
      const { place: _, sign: __, ...rest } = line;
      return rest;
    });

describe("the mirror, without any error", () => {
  const alone = [...ROW_NAMES, ...LOOSE_NAMES].flatMap((name) =>
    STYLE_NAMES.flatMap((style): readonly (readonly [string, Wearer])[] => {
      const isOneSided = kindOf(name).oneSided === 1;
      const wearer = wearerWith(style, [{ name, amount: 12, ...(isOneSided ? { half: "left" } : {}) }]);
      return wearer === null ? [] : [[`${name} of ${style}`, wearer]];
    }),
  );

  it.each(alone)("shows a truth that is there alone: %s", (_, wearer) => {
    expect(look(wearer, NO_NOISE).observations.length).toBeGreaterThan(0);
  });

  it("shows nothing of a garment that fits", () => {
    const wearer = wearerWith("sideDart", []);
    const trial = wearer === null ? null : look(wearer, NO_NOISE);
    expect(trial?.observations).toEqual([]);
    expect(Object.values(trial?.checks ?? {})).toEqual(Array.from({ length: 8 }, () => true));
  });

  it("folds what a sway back has too much of across the back, half of it pinched, and lets waist and hem drop by it", () => {
    const lines = shown("princessShoulder", { name: "swayBack", amount: 14 });
    expect(seenAt(lines, "backAboveWaist", "foldAcross")).toEqual([{ way: "pinched", amount: 7 }]);
    expect(seenAt(lines, "backWaist", "drops")).toEqual([{ way: "off", amount: 14 }]);
    expect(seenAt(lines, "backHem", "drops")).toEqual([{ way: "off", amount: 14 }]);
    expect(lines.length).toBe(3);
  });

  it("lets out what a round back has too little of, and pulls the back up by it", () => {
    const lines = shown("sideDart", { name: "roundBack", amount: 16 });
    expect(seenAt(lines, "blades", "tight")).toEqual([{ way: "letOut", amount: 16 }]);
    expect(seenAt(lines, "backWaist", "ridesUp")).toEqual([{ way: "off", amount: 16 }]);
    expect(seenAt(lines, "frontWaist", "ridesUp")).toEqual([]);
  });

  it("pins a sloping shoulder off at its seam, as deep as front and back are too high, on the half that has it", () => {
    const lines = shown("sideDart", { name: "slopingShoulders", amount: 11, half: "left" });
    expect(seenAt(lines, "shoulder", "foldAcross")).toEqual([{ way: "pinched", amount: 11, half: "left" }]);
    expect(lines.every(({ half }) => half === "left")).toBe(true);
  });

  it("adds up what hangs from above: short above the bust and long below it leaves the waist where it is", () => {
    const lines = shown("sideDart", { name: "longAboveBust", amount: 12 }, { name: "shortBelowBust", amount: 12 });
    expect(seenAt(lines, "backWaist", "ridesUp")).toEqual([]);
    expect(seenAt(lines, "backWaist", "drops")).toEqual([]);
    expect(seenAt(lines, "chest", "tight")).toEqual([{ way: "letOut", amount: 12 }]);
    expect(seenAt(lines, "underarm", "cutsIn")).toEqual([{ way: "off", amount: 12 }]);
    expect(seenAt(lines, "backAboveWaist", "foldAcross")[0]?.amount).toBeCloseTo(6, 0);
  });

  it("takes in the half at each side seam, and laps the closure by the whole", () => {
    const lines = shown("princessArmhole", { name: "smallerWaist", amount: 10 });
    expect(seenAt(lines, "sideSeam", "foldAlong")).toEqual([{ way: "pinched", amount: 5 }]);
    expect(seenAt(lines, "closureWaist", "overlaps")).toEqual([{ way: "off", amount: 20 }]);
  });

  it("tells halves apart where they differ by more than is noticed", () => {
    const lines = shown("sideDart", { name: "largerHip", amount: 10 }, { name: "slopingShoulders", amount: 9 });
    expect(lines.every(({ half }) => half === undefined)).toBe(true);
    const one = shown("sideDart", { name: "largerHip", amount: 12, half: "right" });
    expect(seenAt(one, "sideHip", "tight")).toEqual([{ way: "letOut", amount: 12, half: "right" }]);
    expect(seenAt(one, "closureHip", "doesNotMeet")).toEqual([{ way: "off", amount: 12 }]);
  });

  it("marks the bust point where it is, and the end of a dart alone where only that is off", () => {
    const low = shown("sideDart", { name: "lowBustPoint", amount: 13 });
    expect(seenAt(low, "bust", "bustPoint")).toEqual([{ mark: { out: 0, down: 13 } }]);
    const past = shown("sideDart", { name: "waistDartPastPoint", amount: 13 });
    expect(past.map(({ sign, dart, mark }) => [sign, dart?.dart, mark?.down])).toEqual([["dartEnds", "waistDart", 13]]);
  });

  it("shows a strap too long where the cup hangs by it", () => {
    const lines = shown("midriff", { name: "strapTooLong", amount: 18 });
    expect(seenAt(lines, "strap", "foldAcross")).toEqual([{ way: "pinched", amount: 9 }]);
    expect(seenAt(lines, "underBust", "drops")).toEqual([{ way: "off", amount: 18 }]);
    expect(seenAt(lines, "bust", "bustPoint")).toEqual([{ mark: { out: 0, down: -18 } }]);
  });

  it("leaves a check unticked that is not so", () => {
    const wearer = wearerWith("sideDart", [{ name: "swayBack", amount: 14 }]);
    expect(wearer === null ? null : look(wearer, NO_NOISE).checks).toMatchObject({
      waistOnWaist: false,
      hemLevel: false,
      shouldersStay: true,
    });
  });
});

describe("the mirror, as it is", () => {
  const wearers = Array.from({ length: 60 }, (_, at) => wearerOf(500 + at, 1 + (at % 3)));
  const looks = wearers.map((wearer, seed) => {
    const all = trulySeen(residualsOf(wearer.needs, wearer.plan), wearer.plan, wearer.truths);
    const keys = new Set(all.map(({ place, sign }) => `${place} ${sign}`));
    const { observations } = look(wearer, { ...USUAL_NOISE, otherwise: 0 }, 1 + seed);
    const wrong = observations.filter(({ place, sign }) => !keys.has(`${place} ${sign}`));
    return { all, observations, wrong };
  });
  const count = (of: (one: (typeof looks)[number]) => number): number => looks.reduce((sum, one) => sum + of(one), 0);

  it("misses a fifth, and a tenth of what it shows is not so", () => {
    const there = count(({ all }) => all.length);
    const put = count(({ observations }) => observations.length);
    const wrong = count((one) => one.wrong.length);
    // Some 300 signs: a share of a fifth is good to 2.5 in a hundred, one of a tenth to 2.
    expect(there).toBeGreaterThan(200);
    expect((put - wrong) / there).toBeGreaterThan(0.72);
    expect((put - wrong) / there).toBeLessThan(0.88);
    expect(wrong / put).toBeGreaterThan(0.04);
    expect(wrong / put).toBeLessThan(0.17);
  });

  it("puts down a tenth of folds by a place near by", () => {
    const wearer = wearerWith("sideDart", [{ name: "smallerWaist", amount: 16 }]);
    if (wearer === null) throw new Error("no wearer");
    const lines = Array.from({ length: 300 }, (_, seed) =>
      look(wearer, { ...NO_NOISE, otherwise: USUAL_NOISE.otherwise }, seed + 1).observations.filter(
        ({ sign }) => sign === "foldAlong",
      ),
    ).flat();
    const near = lines.filter(({ place }) => place === "frontWaist" || place === "backWaist");
    expect(lines.length).toBe(300);
    expect(near.every(({ amount }) => amount === 8)).toBe(true);
    // 300 draws of a tenth: good to 1.7 in a hundred.
    expect(near.length / 300).toBeGreaterThan(0.05);
    expect(near.length / 300).toBeLessThan(0.16);
  });

  it("shows the same to the same chances, and gives every line an id of its own", () => {
    const [wearer] = wearers;
    if (wearer === undefined) throw new Error("no wearer");
    expect(look(wearer, USUAL_NOISE, 9)).toEqual(look(wearer, USUAL_NOISE, 9));
    for (const { observations } of looks)
      expect(new Set(observations.map(({ id }) => id)).size).toBe(observations.length);
  });

  it("reads amounts with an error of 5 mm of cloth, and now and then not at all", () => {
    const wearer = wearerWith("sideDart", [{ name: "largerWaist", amount: 20 }]);
    if (wearer === null) throw new Error("no wearer");
    const lines = Array.from({ length: 400 }, (_, seed) =>
      look(wearer, USUAL_NOISE, seed + 1).observations.filter(({ place }) => place === "sideSeam"),
    )
      .flat()
      .filter(({ sign }) => sign === "tight");
    const amounts = lines.flatMap(({ amount }) => amount ?? []);
    const mean = amounts.reduce((a, b) => a + b, 0) / amounts.length;
    const spread = Math.sqrt(amounts.reduce((sum, one) => sum + (one - mean) ** 2, 0) / amounts.length);
    expect(mean).toBeGreaterThan(19);
    expect(mean).toBeLessThan(21);
    expect(spread).toBeGreaterThan(4.4);
    expect(spread).toBeLessThan(5.6);
    expect(1 - amounts.length / lines.length).toBeGreaterThan(0.1);
    expect(1 - amounts.length / lines.length).toBeLessThan(0.21);
  });
});
