/** What an answer costs, summed by hand: 4 a millimetre of fullness, 5 a seam, the farthest, 1 a millimetre off the centre (our own choice, no source). */
import { expect, it } from "vitest";
import type { GiveBackPlace } from "../../../src/core/decisions/alteration";
import { costOf } from "../../../src/core/pointedDart/pointedDartCost";

const still = { given: [], offCentre: 0, centreNowSeam: false };
const at = (...given: readonly (readonly [GiveBackPlace, number])[]): number =>
  costOf(0, { ...still, given: given.map(([place, amount]) => ({ place, amount })) });

it("nothing moved costs nothing, and fullness four times what it is out by, either way", () => {
  expect([costOf(0, still), costOf(0.25, still), costOf(-0.25, still)]).toEqual([0, 1, 1]);
});

it("a seam is 5 and as far as it moves, in or out; another dart and the underarm are two seams", () => {
  const one: readonly GiveBackPlace[] = ["sideSeam", "waistEnd", "centreSeam", "armholeEnd", "neckEnd", "centreEnd"];
  expect(one.map((place) => at([place, 3]))).toEqual([8, 8, 8, 8, 8, 8]);
  expect((["otherDart", "underarm"] as const).map((place) => at([place, -3]))).toEqual([13, 13]);
});

it("of several the farthest counts, and each that moves by a tenth is cut", () => {
  expect(at(["sideSeam", 2], ["otherDart", -6])).toBe(15 + 6);
  expect([at(["sideSeam", 2], ["underarm", 0.1]), at(["sideSeam", 2], ["underarm", -0.0625])]).toEqual([17, 7]);
});

it("a centre front that is no fold any more is a seam, and what comes off it is moved, and lost twice of the bust", () => {
  expect(costOf(0, { ...still, centreNowSeam: true })).toBe(5);
  expect(costOf(0, { given: [{ place: "sideSeam", amount: 1 }], offCentre: 15, centreNowSeam: true })).toBe(
    10 + 15 + 15,
  );
  expect(costOf(0, { given: [{ place: "sideSeam", amount: 20 }], offCentre: -15, centreNowSeam: true })).toBe(
    10 + 20 + 15,
  );
});
