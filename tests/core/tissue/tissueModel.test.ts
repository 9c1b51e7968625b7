/** What answers to what, on pieces of round numbers: slopes are read off how each point lies. */
import { describe, expect, it } from "vitest";
import type { Nest, Piece } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { SHOULDER_EASE } from "../../../src/core/pattern/shoulderEase";
import { evenlyTaken, takenQuantities } from "../../../src/core/tissue/evenDarts";
import { FREEDOMS } from "../../../src/core/tissue/freedoms";
import {
  answersOf,
  AS_MEASURED,
  finishedQuantity,
  FREEDOM_COUNT,
  lengthQuantity,
  modelOf,
  reshaped,
  sewnOf,
  valuesOf,
  type Quantity,
} from "../../../src/core/tissue/tissueModel";
import { handBack, handBand, handBasque, handCentreFront, handFront, handSideFront } from "./handPieces";

const { hypot } = Math;
const at = (name: string): number => FREEDOMS.findIndex((one) => one.name === name);
const spread = (name: string): number => FREEDOMS[at(name)]?.spread ?? NaN;
/** Freedoms set, all others at nothing. */
const set = (freedoms: Readonly<Record<string, number>>): number[] => {
  const z = Array.from({ length: FREEDOM_COUNT }, () => 0);
  for (const [name, value] of Object.entries(freedoms)) z[at(name)] = value;
  return z;
};
const STILL = set({});
const found = (quantity: Quantity | null): Quantity => {
  if (quantity === null) throw new Error("no quantity");
  return quantity;
};
/** The freedoms that a row answers to, beyond what a difference quotient over a hundredth of a millimetre leaves. */
const answering = (row: readonly number[] | undefined): string[] =>
  FREEDOMS.flatMap(({ name }, k) => (Math.abs(row?.[k] ?? 0) > 0.01 ? [name] : []));

describe("pieces with freedoms set", () => {
  const pieces = [handFront(), handBack()];
  const model = modelOf(pieces, undefined);

  it("are the same objects where none is, and where what grows from size to size is at the size measured", () => {
    expect(reshaped(model.pieces, model.moves, STILL, AS_MEASURED).front).toBe(pieces[0]);
    expect(reshaped(model.pieces, model.moves, set({ waistGrade: 5 }), AS_MEASURED).front).toBe(pieces[0]);
    expect(reshaped(model.pieces, model.moves, set({ "dartMouth:front": 1 }), AS_MEASURED).back).toBe(pieces[1]);
  });

  it("have their points moved by spreads, added up, and steps by how many there are", () => {
    const moved = reshaped(model.pieces, model.moves, set({ waistGirth: 2, sideWaist: -1, waistGrade: 3 }), {
      bust: 0,
      waist: -2,
      hip: 0,
    });
    const { x, y } = moved.back?.points.sideWaist?.at ?? { x: NaN, y: NaN };
    expect(x).toBeCloseTo(230 + 2 * spread("waistGirth") - 2 * 3 * spread("waistGrade"), 9);
    expect(y).toBeCloseTo(420 - spread("sideWaist"), 9);
    expect(moved.back?.points.centreWaist?.at).toEqual({ x: 10, y: 420 });
  });
});

describe("what must stay", () => {
  it("is seams by pairs with their ease, and the legs of darts", () => {
    const sewn = sewnOf(setOf([handFront(), handBack()]));
    expect(sewn.map(({ key, of, usesNext, wanted }) => [key, of, usesNext, wanted])).toEqual([
      ["shoulder back front", ["back", "front"], false, SHOULDER_EASE],
      ["side back front", ["back", "front"], false, 0],
      ["front sideDart", ["front"], false, expect.closeTo(hypot(109, 15) - hypot(105, 15), 9)],
      ["front waistDart", ["front"], false, 0],
    ]);
    const values = valuesOf(modelOf([handFront(), handBack()], undefined), sewn, STILL);
    expect(values).toEqual([
      expect.closeTo(hypot(100, 30) - hypot(100, 40), 9),
      expect.closeTo(hypot(20, 220) - 2 * hypot(3, 20) - hypot(10, 130), 9),
      expect.closeTo(hypot(109, 15) - hypot(105, 15), 9),
      0,
    ]);
    expect(sewn.map(({ pair }) => pair?.seam)).toEqual(["shoulder", "side", undefined, undefined]);
  });

  it("counts all pieces of a side", () => {
    const pieces = [handCentreFront(), handSideFront(), handBack()];
    const shoulder = sewnOf(setOf(pieces)).find(({ pair }) => pair?.seam === "shoulder");
    expect(shoulder?.of).toEqual(["back", "centreFront", "sideFront"]);
    expect(valuesOf(modelOf(pieces, undefined), [found(shoulder ?? null)], STILL)[0]).toBeCloseTo(
      hypot(100, 30) - 2 * hypot(50, 20),
      9,
    );
  });
});

describe("finished girths", () => {
  it("are twice what all pieces of the level have, the basque's hip by itself", () => {
    const back: Piece = { ...handBack(), levelLines: [{ level: "waist", along: { seam: "waist" } }] };
    const pieces = [handFront(), back, handBasque("frontBasque"), handBasque("backBasque")];
    const model = modelOf(pieces, undefined);
    const [waist, hip] = [found(finishedQuantity(model.pieces, "waist")), found(finishedQuantity(model.pieces, "hip"))];
    expect(waist).toMatchObject({ of: ["front", "back"], key: "waist", usesNext: false });
    expect(hip).toMatchObject({ of: ["frontBasque", "backBasque"], key: "hip", usesNext: false });
    // 90 + 90 of the front, 220 of the back; 250 and 250.
    expect(valuesOf(model, [waist, hip], STILL)).toEqual([800, 1000]);
    const [ofWaist, ofHip] = answersOf(model, [waist, hip], STILL);
    // The side goes straight out on both pieces, on both halves of the body.
    expect(ofWaist?.[at("waistGirth")]).toBeCloseTo(4 * spread("waistGirth"), 6);
    expect(ofWaist?.[at("waistShared")]).toBeCloseTo(0, 6);
    expect(ofHip?.[at("hipGirth")]).toBeCloseTo(4 * spread("hipGirth"), 6);
    // A wider mouth takes nothing of it, and what grows with size is nothing here.
    expect(ofWaist?.[at("dartMouth:front")]).toBeCloseTo(0, 6);
    expect(ofWaist?.[at("waistGrade")]).toBe(0);
  });

  it("are none where no piece has the level", () => {
    expect(finishedQuantity(setOf([handBack()]), "waist")).toBeNull();
    expect(finishedQuantity(setOf([handFront()]), "hip")).toBeNull();
    expect(finishedQuantity(setOf([handBasque("backBasque")]), "waist")).toBeNull();
  });
});

describe("lengths", () => {
  const model = modelOf([handFront()], [handFront({ bust: 6, waist: 5, mouth: 3 })]);
  const quantity = (length: Parameters<typeof lengthQuantity>[2], of = model): Quantity =>
    found(lengthQuantity(of, "front", length));

  it("answer to what moves their ends", () => {
    const [width, mouth] = answersOf(model, [quantity("neckWidth"), quantity("waistDartMouth")], STILL);
    expect(answering(width)).toEqual(["neckWidth", "neckWidthFront"]);
    expect(width?.[at("neckWidth")]).toBeCloseTo(spread("neckWidth"), 6);
    expect(width?.[at("neckWidthFront")]).toBeCloseTo(spread("neckWidthFront"), 6);
    expect(answering(mouth)).toEqual(["dartMouth:front"]);
    expect(mouth?.[at("dartMouth:front")]).toBeCloseTo(spread("dartMouth:front"), 6);
  });

  it("to the next size answer to what grows, and to what makes both sizes alike not at all", () => {
    const step = quantity("waistStep");
    expect(step).toMatchObject({ of: ["front"], usesNext: true });
    expect(valuesOf(model, [step], STILL)).toEqual([5]);
    const [row] = answersOf(model, [step], STILL);
    expect(answering(row)).toEqual(["waistGrade", "waistGradeShared", "intakeGrade", "dartMouthGrade:front"]);
    for (const name of ["waistGrade", "waistGradeShared", "intakeGrade", "dartMouthGrade:front"])
      expect(row?.[at(name)]).toBeCloseTo(spread(name), 6);
    // Two sizes up the size itself has two steps and the one above it three: still one between them.
    const [higher] = answersOf(model, [step], STILL, { bust: 2, waist: 2, hip: 2 });
    expect(higher?.[at("waistGrade")]).toBeCloseTo(spread("waistGrade"), 6);
    expect(valuesOf(model, [step], set({ waistGrade: 2 }), { bust: 2, waist: 2, hip: 2 })[0]).toBeCloseTo(
      5 + 2 * spread("waistGrade"),
      9,
    );
  });

  it("know which of them need the next size", () => {
    expect(quantity("waistDartMouthNext").usesNext).toBe(true);
    expect(quantity("bustStep").usesNext).toBe(true);
    expect(quantity("waistDartMouth").usesNext).toBe(false);
    const alone = modelOf([handFront()], undefined);
    expect(quantity("waistDartMouth", alone).usesNext).toBe(false);
    expect(lengthQuantity(alone, "front", "waistStep")).toBeNull();
    expect(lengthQuantity(alone, "back", "neckWidth")).toBeNull();
    expect(lengthQuantity(alone, "front", "hipWidth")).toBeNull();
  });

  it("answer where the freedoms stand: a slope is that of the moved pieces", () => {
    // From the neck point to the bust point: a bust point moved far out leans it, and widening the neck counts by that lean.
    const z = set({ bustPoint: 10 });
    const [row] = answersOf(model, [quantity("bustPointFromSideNeck")], z);
    const [dx, dy] = [30 + 10 * spread("bustPoint"), 255];
    expect(row?.[at("neckRise")]).toBeCloseTo((-dy / hypot(dx, dy)) * spread("neckRise"), 3);
    expect(row?.[at("neckWidth")]).toBeCloseTo((-dx / hypot(dx, dy)) * spread("neckWidth"), 2);
  });
});

describe("what darts take", () => {
  const values = (pieces: readonly Piece[]): unknown[] =>
    takenQuantities(setOf(pieces)).map(({ key, of, usesNext, value }) => [
      key,
      of,
      usesNext,
      value(setOf(pieces), setOf(pieces)),
    ]);

  it("is how far the side lies beyond what is sewn of the waist", () => {
    expect(values([handBack(), handFront()])).toEqual([
      ["sewn front", ["front"], false, 180],
      ["beyond front", ["front"], false, 40],
      ["sewn back", ["back"], false, 220],
      ["beyond back", ["back"], false, 10],
    ]);
    // The piece at the side last; what has no waist seam, or lies below it, is not asked.
    expect(values([handSideFront(), handCentreFront(), handBasque("frontBasque"), handBasque("backBasque")])).toEqual([
      ["sewn centreFront,sideFront", ["centreFront", "sideFront"], false, 180],
      ["beyond centreFront,sideFront", ["centreFront", "sideFront"], false, 40],
    ]);
    expect(values([handCentreFront()])).toEqual([]);
  });

  /** Mouths that grow by 3 and then by 9, the side of the waist by 10 each. */
  const nest = (mouths: readonly number[]): Nest => ({
    source: "standIn",
    labels: mouths.map(String),
    sizes: mouths.map((mouth, size) => [handFront({ bust: 0, waist: 10 * size, mouth })]),
  });
  const taken = (
    mouths: readonly number[],
    measured: number,
    index: number,
    stepsOf = (size: number) => size - measured,
  ) => evenlyTaken(nest(mouths), measured, index, stepsOf).map(({ quantity, wanted }) => [quantity.key, wanted]);

  it("is made even over the whole chart from the size measured, the sewn waist kept", () => {
    expect(taken([0, 3, 12], 0, 1)).toEqual([
      ["sewn front", 187],
      ["beyond front", 46],
    ]);
    expect(taken([0, 3, 12], 1, 0)).toEqual([
      ["sewn front", 180],
      ["beyond front", 37],
    ]);
    expect(taken([0, 3, 12], 1, 2)).toEqual([
      ["sewn front", 188],
      ["beyond front", 49],
    ]);
    // By steps of the bust, which need not be as many as sizes: 12 over 4 steps, 3 of them to the second size.
    expect(taken([0, 3, 12], 0, 1, (size) => [0, 3, 4][size] ?? NaN)[1]).toEqual(["beyond front", 49]);
  });

  it("stays as it is where the chart has no steps", () => {
    expect(taken([0, 3, 12], 0, 1, () => 0)).toEqual([
      ["sewn front", 187],
      ["beyond front", 43],
    ]);
  });
});

it("pieces without darts have no legs to keep", () => {
  expect(sewnOf(setOf([handBand()]))).toEqual([]);
});
