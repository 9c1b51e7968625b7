/** A dart split into two or three: the angles add up to the one that it was, the seam between them can be sewn. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validateOutline } from "../../../../src/core/geometry/outline";
import { pointOf, type DartName, type Piece } from "../../../../src/core/pattern/piece";
import { outlineOf } from "../../../../src/core/pattern/ring";
import { crossesItself, polygonOf } from "../../../support/independent";
import {
  angleAtPoint,
  anyFront,
  backAt,
  chordsOf,
  done,
  frontAt,
  gap,
  legsDiffer,
  operate,
  pieceOf,
  sumOfAngles,
  worstSeam,
} from "./fronts";

const anyDart = fc.constantFrom<DartName>("sideDart", "waistDart");
const anyNumber = fc.constantFrom<2 | 3>(2, 3);
const SEWN = 0.05;

const namesOf = (dart: DartName, into: 2 | 3): readonly DartName[] => {
  const home = dart === "sideDart" ? "side" : "waist";
  return ([`${home}Dart`, `${home}Dart2`, `${home}Dart3`] as const).slice(0, into);
};

/** Wide enough to be split at all. */
const canBeSplit = (front: Piece, dart: DartName): boolean =>
  gap(pointOf(front, `${dart}Inner`), pointOf(front, `${dart}Outer`)) > 14;

describe("a bust dart split", () => {
  it("keeps sewn seams, the whole angle in equal parts, equal legs, a sound outline", () => {
    fc.assert(
      fc.property(anyFront, anyDart, anyNumber, (front, dart, into) => {
        fc.pre(canBeSplit(front, dart));
        const split = pieceOf(done({ front }, "front", { kind: "dartSplit", dart, into }), "front");
        const bust = pointOf(split, "bustPoint");
        const angles = namesOf(dart, into).map((name) => angleAtPoint(split, name, bust));
        expect(worstSeam({ front }, { front: split })).toBeLessThan(SEWN);
        // The legs of fuller cups are first made equal: a fiftieth there, nothing on the drafted cup (see below).
        expect(Math.abs(sumOfAngles(split) / sumOfAngles(front) - 1)).toBeLessThan(0.02);
        expect(Math.max(...angles) - Math.min(...angles)).toBeLessThan(0.1);
        expect(Math.max(...split.darts.map(({ name }) => legsDiffer(split, name)))).toBeLessThan(SEWN);
        expect(validateOutline(outlineOf(split))).toEqual([]);
        expect(crossesItself(split)).toBe(false);
      }),
      { numRuns: 80 },
    );
  });

  it.each([760, 880, 1040, 1260])(
    "of the drafted cup at bust %d adds up to the old angle within 0.1 degrees",
    (bust) => {
      const front = frontAt(bust);
      for (const dart of ["sideDart", "waistDart"] as const) {
        for (const into of [2, 3] as const) {
          const split = pieceOf(done({ front }, "front", { kind: "dartSplit", dart, into }), "front");
          expect(Math.abs(sumOfAngles(split) - sumOfAngles(front))).toBeLessThan(0.1);
        }
      }
    },
  );

  it("stands in order from the centre or from above, with 25 to 30 mm of seam between mouths", () => {
    for (const dart of ["sideDart", "waistDart"] as const) {
      for (const into of [2, 3] as const) {
        const front = frontAt(880);
        const split = pieceOf(done({ front }, "front", { kind: "dartSplit", dart, into }), "front");
        const names = namesOf(dart, into);
        names.slice(1).forEach((name, i) => {
          const before = names[i];
          if (before === undefined) throw new Error("order");
          // Common practice, no source; measured straight.
          const strip = gap(pointOf(split, `${before}Outer`), pointOf(split, `${name}Inner`));
          expect(strip).toBeGreaterThan(25);
          expect(strip).toBeLessThan(30);
        });
      }
    }
  });

  it("ends each a little shorter than the one did", () => {
    const front = frontAt(880);
    const short = (piece: Piece, name: DartName): number =>
      gap(pointOf(piece, `${name}Apex`), pointOf(piece, "bustPoint"));
    for (const into of [2, 3] as const) {
      const split = pieceOf(done({ front }, "front", { kind: "dartSplit", dart: "waistDart", into }), "front");
      for (const name of namesOf("waistDart", into)) {
        expect(short(split, name) - short(front, "waistDart")).toBeGreaterThan(3);
        expect(short(split, name) - short(front, "waistDart")).toBeLessThan(15);
      }
    }
  });

  it("turns strips that keep their area", () => {
    fc.assert(
      fc.property(anyFront, anyDart, anyNumber, (front, dart, into) => {
        fc.pre(canBeSplit(front, dart));
        const { traces } = done({ front }, "front", { kind: "dartSplit", dart, into });
        expect(traces).toHaveLength(2);
        for (const part of traces.flatMap(({ parts }) => parts)) {
          expect(polygonOf(chordsOf(part.after)).area()).toBeCloseTo(polygonOf(chordsOf(part.before)).area(), 5);
        }
      }),
      { numRuns: 20 },
    );
  });

  it("merged again is one dart of the old angle", () => {
    fc.assert(
      fc.property(fc.integer({ min: 760, max: 1280 }), (bust) => {
        const front = frontAt(bust);
        const split = done({ front }, "front", { kind: "dartSplit", dart: "waistDart", into: 2 });
        const again = pieceOf(
          done(split.pieces, "front", { kind: "dartPivot", dart: "waistDart2", to: "waist", share: 1 }),
          "front",
        );
        expect(again.darts.map(({ name }) => name).toSorted()).toEqual(["sideDart", "waistDart"]);
        expect(Math.abs(sumOfAngles(again) - sumOfAngles(front))).toBeLessThan(0.2);
        expect(worstSeam({ front }, { front: again })).toBeLessThan(SEWN);
      }),
      { numRuns: 20 },
    );
  });

  it("works on a back, about the dart's own end", () => {
    const back = backAt(880);
    const split = pieceOf(done({ back }, "back", { kind: "dartSplit", dart: "waistDart", into: 2 }), "back");
    expect(worstSeam({ back }, { back: split })).toBeLessThan(SEWN);
    expect(split.darts).toHaveLength(2);
  });

  it("is refused where no name or no width is left for it", () => {
    const front = frontAt(880);
    const three = done({ front }, "front", { kind: "dartSplit", dart: "waistDart", into: 3 });
    expect(operate(three.pieces, "front", { kind: "dartSplit", dart: "waistDart", into: 2 })).toMatchObject({
      failure: { code: "alteration/too-many-darts" },
    });
    const small = frontAt(760, 24);
    expect(gap(pointOf(small, "sideDartInner"), pointOf(small, "sideDartOuter"))).toBeLessThan(12);
    const tiny = done({ front: small }, "front", { kind: "dartPivot", dart: "sideDart", to: "waist", share: 0.5 });
    expect(operate(tiny.pieces, "front", { kind: "dartSplit", dart: "sideDart", into: 2 })).toMatchObject({
      failure: { code: "alteration/dart-vanishes" },
    });
  });
});
