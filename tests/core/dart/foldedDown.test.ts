/** Which way darts are pressed, and the caps that come of it. */
import { describe, expect, it } from "vitest";
import { dartCap, isFoldedDown } from "../../../src/core/dart/dartCap";
import { DART_NAMES, homeOf } from "../../../src/core/pattern/dartNames";
import { dartOf, pointOf, type DartName } from "../../../src/core/pattern/piece";
import { done, frontAt, gap, pieceOf } from "../alterations/dartSurgery/fronts";

// published-figures.md section 2.2: vertical darts to the centre, horizontal darts down (common practice); a French dart
// slants up from low on the side seam and is pressed down as well (common practice, no source).
it.each(DART_NAMES)("%s", (name) => {
  expect(isFoldedDown(name)).toBe(["side", "french", "armhole", "centre"].includes(homeOf(name)));
});

describe("the cap of a moved or split dart", () => {
  const front = frontAt(880);
  const moved = (["french", "armhole", "shoulder", "neck", "centre"] as const).map(
    (to) =>
      [
        `${to}Dart`,
        pieceOf(done({ front }, "front", { kind: "dartPivot", dart: "sideDart", to, share: 1 }), "front"),
      ] as const,
  );
  const split = pieceOf(done({ front }, "front", { kind: "dartSplit", dart: "sideDart", into: 3 }), "front");
  const cases = [...moved, ...(["sideDart", "sideDart2", "sideDart3"] as const).map((name) => [name, split] as const)];

  // Smooth over the shut dart, the seam leaves the two legs at angles that add up to 180 degrees, so that both mouth ends are
  // alike far from the tip. A French dart comes to its seam at 60 degrees at
  // most, and its cap dips so far in: half the mouth at that slope, cos 8.75 + sin 8.75 tan 60 = 1.25 of a leg.
  it.each(cases)("of the %s has its tip on the dart's middle line, close to the mouth", (name: DartName, piece) => {
    const { apex, inner, outer } = dartOf(piece, name);
    const [end, a, b] = [pointOf(piece, apex), pointOf(piece, inner), pointOf(piece, outer)];
    const [, tip] = dartCap(piece, name);
    if (tip === undefined) throw new Error("cap");
    expect(Math.abs(gap(tip, a) - gap(tip, b))).toBeLessThan(0.1);
    expect(gap(tip, end)).toBeGreaterThan(0.85 * gap(a, end));
    expect(gap(tip, end)).toBeLessThan(1.25 * gap(a, end));
  });
});
