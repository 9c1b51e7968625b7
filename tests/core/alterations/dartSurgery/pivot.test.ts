/** A dart moved to another seam: what is sewn stays, angles about one point add up, there and back changes nothing. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validateOutline } from "../../../../src/core/geometry/outline";
import { levelWidth } from "../../../../src/core/girth/levelWidth";
import { pointNames, pointOf, type DartHome, type DartName, type Piece } from "../../../../src/core/pattern/piece";
import { outlineOf } from "../../../../src/core/pattern/ring";
import { clothCorners, crossesItself, polygonOf } from "../../../support/independent";
import { anyAmount } from "../../../support/amounts";
import {
  angleAtPoint,
  anyFront,
  anyPlainFront,
  backAt,
  chordsOf,
  done,
  frontAt,
  fullFront,
  gap,
  legsDiffer,
  operate,
  pieceOf,
  smallFront,
  sumOfAngles,
  worstSeam,
} from "./fronts";

const FROM_SIDE: readonly DartHome[] = ["french", "waist", "shoulder", "armhole", "neck", "centre"];
const FROM_WAIST: readonly DartHome[] = ["side", "french", "shoulder", "armhole", "neck", "centre"];
const anyMove: fc.Arbitrary<readonly [DartName, DartHome]> = fc.oneof(
  fc.constantFrom(...FROM_SIDE).map((to) => ["sideDart", to] as const),
  fc.constantFrom(...FROM_WAIST).map((to) => ["waistDart", to] as const),
);
const anyShare = fc.oneof(fc.constant(1), fc.constantFrom(0.5, 1 / 3), anyAmount(0.35, 0.7));
/** mm. */
const SEWN = 0.05;

/** Wide enough that a third of it can still be sewn at the seam nearest the bust point. */
const isWide = (front: Piece, dart: DartName): boolean =>
  gap(pointOf(front, `${dart}Inner`), pointOf(front, `${dart}Outer`)) > 20;

describe("a bust dart moved to another seam", () => {
  it("keeps every sewn seam, equal legs and a sound outline", () => {
    fc.assert(
      fc.property(anyFront, anyMove, anyShare, (front, [dart, to], share) => {
        fc.pre(isWide(front, dart));
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        expect(worstSeam({ front }, { front: moved })).toBeLessThan(SEWN);
        expect(Math.max(...moved.darts.map(({ name }) => legsDiffer(moved, name)))).toBeLessThan(SEWN);
        expect(validateOutline(outlineOf(moved))).toEqual([]);
        expect(crossesItself(moved)).toBe(false);
      }),
      { numRuns: 120 },
    );
  });

  // Gauss-Bonnet, published-figures.md section 3: deficits about one point add as angles.
  it("keeps the sum of the angles about the bust point", () => {
    fc.assert(
      fc.property(anyPlainFront, anyMove, anyShare, (front, [dart, to], share) => {
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        expect(Math.abs(sumOfAngles(moved) - sumOfAngles(front))).toBeLessThan(0.2);
        const before = angleAtPoint(front, dart, pointOf(front, "bustPoint"));
        const left = moved.darts.some(({ name }) => name === dart)
          ? angleAtPoint(moved, dart, pointOf(moved, "bustPoint"))
          : 0;
        expect(Math.abs(left - (1 - share) * before)).toBeLessThan(0.2);
      }),
      { numRuns: 80 },
    );
  });

  it("of a fuller or smaller cup keeps it to a fiftieth, whose legs are first made equal", () => {
    fc.assert(
      fc.property(anyFront, anyMove, anyShare, (front, [dart, to], share) => {
        fc.pre(isWide(front, dart));
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        expect(Math.abs(sumOfAngles(moved) / sumOfAngles(front) - 1)).toBeLessThan(0.02);
      }),
      { numRuns: 60 },
    );
  });

  it("keeps the cloth, darts cut out to the bust point, but for what truing bends", () => {
    fc.assert(
      fc.property(anyPlainFront, anyMove, anyShare, (front, [dart, to], share) => {
        const cloth = (piece: typeof front): number =>
          polygonOf(
            clothCorners(piece, Object.fromEntries(piece.darts.map(({ name }) => [name, ["bustPoint" as const]]))),
          ).area();
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        // Slivers of under 1 mm along 200 mm of seam, of some 70 000 mm².
        expect(Math.abs(cloth(moved) - cloth(front))).toBeLessThan(200);
      }),
      { numRuns: 20 },
    );
  });

  it("turns one part that keeps its area and shape", () => {
    fc.assert(
      fc.property(anyFront, anyMove, anyShare, (front, [dart, to], share) => {
        fc.pre(isWide(front, dart));
        const { traces } = done({ front }, "front", { kind: "dartPivot", dart, to, share });
        expect(traces.map(({ parts }) => parts.length)).toEqual([1]);
        for (const part of traces.flatMap(({ parts }) => parts)) {
          const [was, is] = [chordsOf(part.before), chordsOf(part.after)];
          expect(polygonOf(is).area()).toBeCloseTo(polygonOf(was).area(), 5);
          const sides = (corners: typeof was): number[] =>
            corners.map((corner, i) => gap(corner, corners[(i + 7) % corners.length] ?? corner));
          sides(is).forEach((length, i) => expect(Math.abs(length - (sides(was)[i] ?? NaN))).toBeLessThan(1e-6));
        }
      }),
      { numRuns: 20 },
    );
  });

  it("there and back is the piece that it was", () => {
    const there = fc.oneof(
      fc
        .constantFrom<DartHome>("french", "shoulder", "armhole", "neck", "centre")
        .map((to) => ["sideDart", "side", to] as const),
      fc
        .constantFrom<DartHome>("french", "shoulder", "armhole", "neck", "centre")
        .map((to) => ["waistDart", "waist", to] as const),
    );
    fc.assert(
      fc.property(anyPlainFront, there, (front, [dart, home, to]) => {
        const away = done({ front }, "front", { kind: "dartPivot", dart, to, share: 1 });
        const back = pieceOf(
          done(away.pieces, "front", { kind: "dartPivot", dart: `${to}Dart`, to: home, share: 1 }),
          "front",
        );
        expect([...pointNames(back)].toSorted()).toEqual([...pointNames(front)].toSorted());
        for (const name of pointNames(front)) expect(gap(pointOf(back, name), pointOf(front, name))).toBeLessThan(0.1);
      }),
      { numRuns: 60 },
    );
  });

  it("leaves the neck end of the centre line where it is", () => {
    fc.assert(
      fc.property(anyFront, anyMove, anyShare, (front, [dart, to], share) => {
        fc.pre(isWide(front, dart));
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        expect(pointOf(moved, "centreNeck")).toEqual(pointOf(front, "centreNeck"));
        expect(gap(pointOf(moved, "bustPoint"), pointOf(front, "bustPoint"))).toBeLessThan(1e-9);
        expect(moved.centreOnFold).toBe(to !== "centre");
      }),
      { numRuns: 40 },
    );
  });
});

describe("the bust girth of a front whose dart was moved", () => {
  it("is what it was: nothing that is sewn has changed", () => {
    fc.assert(
      fc.property(fullFront, anyMove, anyShare, (front, [dart, to], share) => {
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart, to, share }), "front");
        expect(Math.abs((levelWidth(moved, "bust") ?? NaN) - (levelWidth(front, "bust") ?? NaN))).toBeLessThan(0.05);
      }),
      { numRuns: 100 },
    );
  });

  it("of a small cup, measured along a lap before, is off by no more than is said", () => {
    fc.assert(
      fc.property(smallFront, anyMove, (front, [dart, to]) => {
        const { pieces, girths } = done({ front }, "front", { kind: "dartPivot", dart, to, share: 1 });
        const change = (levelWidth(pieceOf({ pieces }, "front"), "bust") ?? NaN) - (levelWidth(front, "bust") ?? NaN);
        expect(Math.abs(change)).toBeLessThan(2);
        expect(Math.abs((girths?.bust ?? 0) - 2 * change)).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });
});

describe("the width of a moved dart", () => {
  // published-figures.md section 3: chord 2 L sin(θ/2), so that widths go as the distances from the bust point.
  it("is that of its angle at its distance from the bust point", () => {
    fc.assert(
      fc.property(anyPlainFront, fc.constantFrom<DartHome>("french", "shoulder", "armhole", "neck"), (front, to) => {
        const moved = pieceOf(done({ front }, "front", { kind: "dartPivot", dart: "sideDart", to, share: 1 }), "front");
        const [bust, old] = [pointOf(moved, "bustPoint"), pointOf(front, "bustPoint")];
        const far = gap(bust, pointOf(moved, `${to}DartInner`));
        const near = gap(old, pointOf(front, "sideDartInner"));
        const theta = (angleAtPoint(front, "sideDart", old) * Math.PI) / 180;
        const width = gap(pointOf(moved, `${to}DartInner`), pointOf(moved, `${to}DartOuter`));
        expect(Math.abs(width - 2 * far * Math.sin(theta / 2))).toBeLessThan(0.3);
        expect(
          width / gap(pointOf(front, "sideDartInner"), pointOf(front, "sideDartOuter")) / (far / near),
        ).toBeCloseTo(1, 2);
      }),
      { numRuns: 60 },
    );
  });

  // As "8 + 11.5 deg = 19.5 deg in one dart", published-figures.md section 3.
  it("two darts in one have both angles", () => {
    const front = frontAt(880);
    const bust = pointOf(front, "bustPoint");
    const merged = pieceOf(
      done({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: "waist", share: 1 }),
      "front",
    );
    expect(merged.darts.map(({ name }) => name)).toEqual(["waistDart"]);
    expect(angleAtPoint(merged, "waistDart", bust)).toBeCloseTo(
      angleAtPoint(front, "waistDart", bust) + angleAtPoint(front, "sideDart", bust),
      1,
    );
  });
});

describe("where a new dart lies and ends", () => {
  const front = frontAt(880);
  const to = (home: DartHome, share = 1) =>
    pieceOf(done({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: home, share }), "front");
  const short = (piece: typeof front, dart: DartName): number =>
    gap(pointOf(piece, `${dart}Apex`), pointOf(piece, "bustPoint"));

  // published-figures.md section 2.2: 2.5 to 3.8 cm, waist darts 1.5 to 2.5 cm (common practice).
  it.each(FROM_SIDE.filter((home) => home !== "waist"))("to the %s: 25 to 38 mm short of the bust point", (home) => {
    expect(short(to(home), `${home}Dart`)).toBeGreaterThan(25);
    expect(short(to(home), `${home}Dart`)).toBeLessThan(38);
  });

  it("what is left ends where it ended", () => {
    expect(short(to("armhole", 0.5), "sideDart")).toBeCloseTo(short(front, "sideDart"), 1);
  });

  it("a waist dart stands plumb below the bust point again", () => {
    const none = done({ front }, "front", { kind: "dartPivot", dart: "waistDart", to: "armhole", share: 1 });
    const again = pieceOf(
      done(none.pieces, "front", { kind: "dartPivot", dart: "sideDart", to: "waist", share: 1 }),
      "front",
    );
    const middle = (pointOf(again, "waistDartInner").x + pointOf(again, "waistDartOuter").x) / 2;
    const [inner, outer] = [pointOf(again, "waistDartInner"), pointOf(again, "waistDartOuter")];
    const lean = (Math.atan2(outer.y - inner.y, outer.x - inner.x) * 180) / Math.PI;
    // It opens where the old one was joined up, which was for a dart of 2 degrees less.
    expect(Math.abs(lean)).toBeLessThan(1.5);
    expect(Math.abs(middle - pointOf(again, "bustPoint").x)).toBeLessThan(4);
  });
});

describe("what is refused", () => {
  const front = frontAt(880);
  const back = backAt(880);
  const failure = (...args: Parameters<typeof operate>) => {
    const result = operate(...args);
    return result.ok ? null : result.failure;
  };

  it("a seam that is not there", () => {
    expect(failure({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: "underBust", share: 1 })).toEqual({
      code: "alteration/not-on-this-style",
    });
  });

  it("a share that leaves, or opens, less than can be sewn", () => {
    expect(
      failure({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: "waist", share: 0.97 }),
    ).toMatchObject({ code: "alteration/dart-vanishes", smallest: 3 });
    expect(
      failure({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: "armhole", share: 0.05 }),
    ).toMatchObject({ code: "alteration/dart-vanishes", smallest: 3 });
  });

  it("the seam that it opens on already", () => {
    expect(failure({ front }, "front", { kind: "dartPivot", dart: "sideDart", to: "side", share: 1 })).toMatchObject({
      code: "alteration/not-this-dart",
    });
  });

  it("a back dart to a seam that it is never moved to", () => {
    expect(failure({ back }, "back", { kind: "dartPivot", dart: "waistDart", to: "armhole", share: 1 })).toMatchObject({
      code: "alteration/not-this-dart",
    });
    expect(failure({ back }, "back", { kind: "dartPivot", dart: "waistDart", to: "centre", share: 1 })).toMatchObject({
      code: "alteration/not-this-dart",
    });
  });
});

describe("a back waist dart", () => {
  it("goes to shoulder, neck or side about its own end, seams kept", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 760, max: 1280 }),
        fc.constantFrom<DartHome>("shoulder", "neck", "side"),
        fc.constantFrom(0.4, 0.6, 1),
        (bust, to, share) => {
          const back = backAt(bust);
          const moved = pieceOf(done({ back }, "back", { kind: "dartPivot", dart: "waistDart", to, share }), "back");
          const end = pointOf(back, "waistDartApex");
          expect(worstSeam({ back }, { back: moved })).toBeLessThan(SEWN);
          expect(validateOutline(outlineOf(moved))).toEqual([]);
          expect(
            Math.abs(angleAtPoint(moved, `${to}Dart`, end) - share * angleAtPoint(back, "waistDart", end)),
          ).toBeLessThan(0.2);
        },
      ),
      { numRuns: 30 },
    );
  });
});
