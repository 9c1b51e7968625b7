/** A small share of `npm run tissue`: foreign nests, read by a tape that is 2 mm off. */
import { describe, expect, it } from "vitest";
import { NINE_OF_TEN } from "../../../src/core/statistics/normal";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf } from "../../../src/core/pattern/piece";
import { distance } from "../../../src/core/geometry/point";
import {
  caseOf,
  cornerErrors,
  fitOf,
  houseOf,
  planWaist,
  stepsOf,
  tapeBound,
  type Case,
} from "../../support/tissueTally";

const SEEDS = Array.from({ length: 12 }, (_, at) => at + 1);
const cases = SEEDS.map((seed) => caseOf(seed, houseOf(seed, false)));
const read = cases.map((c) => {
  const steps = stepsOf(c, false);
  return { c, steps, fit: fitOf(c, 100, c.measured + steps), bound: tapeBound(c, steps) };
});
const squares = (all: readonly number[]): number => Math.sqrt(all.reduce((sum, x) => sum + x * x, 0) / all.length);

describe("the plan's waist on tapes of foreign nests", () => {
  const misses = read.map(({ c, steps, fit }) => planWaist(fit.nest, c, steps).miss);

  it("misses by no more than the tape itself leaves", () => {
    expect(squares(misses)).toBeLessThan(1.2 * squares(read.map(({ bound }) => bound)));
  });

  it("misses by less than the stand-in does", () => {
    const plain = read.map(({ c, steps }) => planWaist(c.standIn, c, steps).miss);
    expect(squares(misses)).toBeLessThan(squares(plain));
  });

  it("is told with a doubt that holds it about nine times of ten, and is not wider than need be", () => {
    const off = misses.map((miss, at) => miss / (read[at]?.fit.doubt.finished.waist ?? NaN));
    expect(off.filter((x) => Math.abs(x) <= NINE_OF_TEN).length).toBeGreaterThanOrEqual(9);
    expect(squares(off)).toBeGreaterThan(0.4);
    expect(squares(off)).toBeLessThan(1.5);
  });

  it("is less doubted with the tape than without", () => {
    const without = cases.map((c, at) => fitOf(c, 0, c.measured + (read[at]?.steps ?? 0)).doubt.finished.waist ?? NaN);
    const open = read.flatMap(({ c, fit }, at) =>
      c.printed ? [] : [(fit.doubt.finished.waist ?? NaN) / (without[at] ?? NaN)],
    );
    expect(Math.max(...open)).toBeLessThan(1);
  });
});

it("corners lie where they are told in nine of ten", () => {
  const off = read.flatMap(({ c, fit }) => cornerErrors(c, fit).map(({ off: by, spread }) => by / spread));
  const share = off.filter((x) => Math.abs(x) <= NINE_OF_TEN).length / off.length;
  expect(share).toBeGreaterThan(0.85);
  expect(share).toBeLessThan(0.97);
});

describe("a reading that is wrong", () => {
  /** A reading by itself off, the others as they are. */
  const withWrong = (c: Case, length: string, by: number): Case => {
    const at = c.readings.find((one) => one.length === length && one.piece === "back");
    return { ...c, readings: c.readings.map((one) => (one === at ? { ...one, read: one.true + by } : one)) };
  };

  it("by 16 mm at a seam that was read on both its pieces is named, the other among what it contradicts", () => {
    for (const c of cases.slice(0, 4)) {
      const beyond = fitOf(withWrong(c, "sideLength", 16), 100).misfits.filter(({ withinTape }) => !withinTape);
      const named = beyond.flatMap((m) => [m, ...m.against]).filter(({ length }) => length === "sideLength");
      expect(named.length).toBeGreaterThan(1);
    }
  });

  it("is not seen where there is none but for one nest", () => {
    const alarmed = read.filter(({ fit }) => fit.misfits.some(({ withinTape }) => !withinTape));
    expect(alarmed.length).toBeLessThanOrEqual(1);
  });
});

it("a dart low on the side is told as another, and the stand-in's stays as it is", () => {
  const c = caseOf(1, { front: "french" });
  const front = { ...c, pattern: { ...c.pattern } };
  const isOnFront = front.readings.some(({ piece, length }) => piece === "front" && length === "bustDartFromUnderarm");
  expect(isOnFront).toBe(true);
  const fit = fitOf(front, 100);
  expect(fit.otherCut.map(({ length }) => length).toSorted()).toEqual([
    "bustDartFromUnderarm",
    "bustDartLength",
    "bustDartMouth",
  ]);
  expect(fit.doubt.corners.front?.sideDartInner).toBeUndefined();
  const mouth = (pieces: Case["standIn"]["sizes"][number]): number => {
    const own = pieceIn(setOf(pieces), "front");
    return distance(pointOf(own, "sideDartInner"), pointOf(own, "sideDartOuter"));
  };
  expect(Math.abs(mouth(fit.nest.sizes[c.measured] ?? []) - mouth(c.standIn.sizes[c.measured] ?? []))).toBeLessThan(8);
});
