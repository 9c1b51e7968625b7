/** A small share of `npm run load`, and that its judges see what is planted. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { shareOf } from "../../support/share";
import { badNumber } from "./badNumber";
import { areaRound, crossedArea } from "./crossedArea";
import { askedOf, loaded } from "./loadFaults";
import { loadCase } from "./loadWork";

/** Every kind of work has its share of any hundred that follow each other. */
const SEEDS = Array.from({ length: 1000 }, (_, at) => at + 1);

const square = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
].map(([x = 0, y = 0]) => piecePoint(x, y));

describe("a share of the load", () => {
  it.each(shareOf(SEEDS, 50))("seed %d is planned, dressed and told without a fault", (seed) => {
    expect(loaded(loadCase(seed).work, askedOf(seed)).faults).toEqual([]);
  });

  it("has works of every kind in any hundred seeds, as many as are meant", () => {
    const kinds = SEEDS.slice(300, 400).map((seed) => (seed * 37) % 100);
    // 37 and 100 have no divisor in common, so a hundred seeds give a hundred different places.
    expect(new Set(kinds).size).toBe(100);
  });

  it("draws the same work for the same seed", () => {
    expect(loadCase(77)).toEqual(loadCase(77));
    expect(loadCase(77).work).not.toEqual(loadCase(78).work);
  });
});

describe("what judges it", () => {
  it("measures what a loop covers, and nothing of a line that does not cross itself", () => {
    // A square of 10 mm goes round 100 mm²; the bow goes once each way round a triangle of 25 mm².
    expect(areaRound(square)).toBe(100);
    expect(crossedArea(square)).toBe(0);
    const bow = [piecePoint(0, 0), piecePoint(10, 10), piecePoint(10, 0), piecePoint(0, 10)];
    expect(crossedArea(bow)).toBeCloseTo(50, 6);
    // A loop that goes the same way counts its 4 mm² twice.
    const looped = [
      [0, 0],
      [10, 0],
      [10, 10],
      [6, 10],
      [6, 6],
      [8, 6],
      [8, 8],
      [4, 8],
      [4, 10],
      [0, 10],
    ].map(([x = 0, y = 0]) => piecePoint(x, y));
    expect(crossedArea(looped)).toBeGreaterThan(3.9);
  });

  it("finds a number that is none wherever it hangs, but lets a margin be endless", () => {
    expect(badNumber({ a: [{ b: 1 }, { margin: Infinity }] })).toBeNull();
    expect(badNumber({ a: [{ b: 1 }, { c: Number.NaN }] })).toBe("a.1.c");
    expect(
      badNumber({
        a: {
          get late() {
            return [-Infinity];
          },
        },
      }),
    ).toBe("a.late.0");
    expect(badNumber(new Map([["x", { margin: -Infinity }]]))).toBe("x.margin");
  });

  it("tells what is thrown, and where", () => {
    const { work } = loadCase(77);
    const broken = {
      ...work,
      get tapes(): never {
        throw new Error("planted");
      },
    };
    expect(loaded(broken, askedOf(1)).faults).toEqual([expect.stringContaining("thrown: Error planted")]);
  });
});
