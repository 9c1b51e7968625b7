/** Bust adjustment against closed forms worked out by hand, and its invariants. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { angleAt, distance, piecePoint } from "../../../src/core/geometry/point";
import { levelWidth, takenAtBust } from "../../../src/core/girth/levelWidth";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointNames, pointOf, type Piece } from "../../../src/core/pattern/piece";
import { withSideDart } from "../../../src/core/style/sideDartStyle";
import { adjustFullBust, hingeTurn, tooMuchSpread } from "../../../src/core/surgery/fullBust";
import { degreesFrom } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";
import { clothCorners, polygonOf, seamByBezierJs } from "../../support/independent";

const apex = piecePoint(95, 235);
const hinge = piecePoint(185, 150);

describe("a spread that cannot be made", () => {
  it("has the largest that can sought when it is asked for, and once", () => {
    let sought = 0;
    const refused = tooMuchSpread("fullBust/out-of-reach", () => {
      sought += 1;
      return 7;
    });
    if (refused.ok) throw new Error("not refused");
    expect([refused.failure.code, sought]).toEqual(["fullBust/out-of-reach", 0]);
    expect([refused.failure.most, refused.failure.most, sought]).toEqual([7, 7, 1]);
  });
});

describe("hingeTurn", () => {
  // cos(α + φ) = cos α + g / R with α the direction from hinge to apex: values worked out separately.
  it.each([
    [12.5, 7.878, 11.53],
    [25, 14.964, 20.36],
    [6, 3.906, 5.93],
    [-6, 4.212, -6.84],
    [-12.5, 9.256, -15.58],
  ])("for a spread of %d mm turns by %d° and drops by %d mm", (spread, degrees, drop) => {
    const found = hingeTurn(apex, hinge, spread);
    if (!found.ok) throw new Error(found.failure.code);
    expect(Math.abs(degreesFrom(found.value.turn))).toBeCloseTo(degrees, 2);
    expect(found.value.drop).toBeCloseTo(drop, 1);
  });

  it("turns the other way for a smaller bust", () => {
    const fuller = hingeTurn(apex, hinge, 12.5);
    const smaller = hingeTurn(apex, hinge, -12.5);
    if (!fuller.ok || !smaller.ok) throw new Error("refused");
    expect(Math.sign(fuller.value.turn)).toBe(-Math.sign(smaller.value.turn));
  });

  it("refuses what the circle about the hinge cannot reach, and says how far it goes", () => {
    const radius = Math.hypot(90, 85);
    const found = hingeTurn(apex, hinge, 500);
    expect(found).toMatchObject({ ok: false, failure: { code: "fullBust/out-of-reach" } });
    const most = found.ok ? NaN : found.failure.most;
    expect(most).toBeCloseTo(90 + radius, 6);
  });
});

const front = withSideDart(
  draftFrontBlock(
    draftMeasuresFor(
      { label: "12", bust: 880, waist: 700, hip: 940 },
      { sizes: [], draftedDifference: 50, cups: [] },
      { bust: 80, waist: 40, hip: 50 },
    ),
  ),
);

function adjusted(piece: Piece, spread: number): Piece {
  const done = adjustFullBust(piece, spread);
  if (!done.ok) throw new Error(done.failure.code);
  return done.value.piece;
}

const legs = (piece: Piece, dart: "sideDart" | "waistDart"): number =>
  distance(pointOf(piece, `${dart}Inner`), pointOf(piece, `${dart}Outer`));

describe("adjustFullBust", () => {
  it("moves points of each part rigidly and gains the spread at the bust line, for any spread", () => {
    fc.assert(
      fc.property(anyAmount(-14, 40), (spread) => {
        const after = adjusted(front, spread);
        // The whole line: from 33 mm on the centre part is lowered past the end of the waist dart, which then takes of it.
        const line = (piece: Piece): number => (levelWidth(piece, "bust") ?? NaN) + takenAtBust(piece);
        expect(line(after) - line(front)).toBeCloseTo(spread, 6);
        // Within the upper side part, within the lower one and within the centre part nothing changes its distance.
        const parts = [
          ["underarm", "sideBust", "sideDartInner"],
          ["sideDartOuter", "sideWaist", "waistDartOuter"],
          ["waistDartInner", "centreWaist"],
          ["sideNeck", "centreNeck", "shoulderTip", "armholeTouch"],
        ] as const;
        for (const part of parts) {
          for (const a of part) {
            for (const b of part) {
              expect(distance(pointOf(after, a), pointOf(after, b))).toBeCloseTo(
                distance(pointOf(front, a), pointOf(front, b)),
                6,
              );
            }
          }
        }
        for (const seam of ["side", "waist", "neck", "shoulder"] as const) {
          expect(seamLength(after, seam)).toBeCloseTo(seamLength(front, seam), 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("widens the waist dart by the spread, and keeps the finished waist", () => {
    expect(legs(adjusted(front, 12.5), "waistDart") - legs(front, "waistDart")).toBeCloseTo(12.5, 6);
  });

  it("comes back to the same piece by the opposite spread", () => {
    const back = adjusted(adjusted(front, 12.5), -12.5);
    for (const name of [
      "underarm",
      "sideBust",
      "sideWaist",
      "centreWaist",
      "waistDartOuter",
      "sideDartInner",
    ] as const) {
      expect(distance(pointOf(back, name), pointOf(front, name))).toBeLessThan(1e-6);
    }
  });

  it("refuses a reduction that would close a dart, and the most it names still works", () => {
    const refused = adjustFullBust(front, -35);
    if (refused.ok) throw new Error("not refused");
    expect(refused.failure.code).toBe("fullBust/dart-vanishes");
    expect(refused.failure.most).toBeLessThan(0);
    expect(refused.failure.most).toBeGreaterThan(-35);
    expect(adjustFullBust(front, refused.failure.most * 0.9).ok).toBe(true);
  });

  it.each([-25, -35, -60, -190, 400])("names the very most that works for a spread of %d, near it or far", (spread) => {
    const refused = adjustFullBust(front, spread);
    if (refused.ok) throw new Error("not refused");
    const { most } = refused.failure;
    expect(Math.sign(most)).toBe(Math.sign(spread));
    expect(adjustFullBust(front, most).ok).toBe(true);
    expect(adjustFullBust(front, most + Math.sign(spread) * 0.01).ok).toBe(false);
  });

  it("gains no area but the paper let in: a wedge at the armhole, a strip under the bust, and the corner between", () => {
    // The darts are cut out to the ends of the cut, so that what they take in does not count.
    const area = (piece: Piece): number =>
      Math.abs(
        polygonOf(
          clothCorners(piece, { sideDart: ["bustLineOuter"], waistDart: ["bustLineInner", "bustLineOuter"] }),
        ).area(),
      );
    fc.assert(
      fc.property(anyAmount(-14, 35), (spread) => {
        const after = adjusted(front, spread);
        const done = adjustFullBust(front, spread);
        if (!done.ok) throw new Error(done.failure.code);
        const radius = distance(pointOf(after, "armholeHinge"), pointOf(front, "bustPoint"));
        const { turn, drop } = done.value;
        // Isosceles wedge, the centre part's strip (95 mm to the bust point), the triangle between the two ends of the cut.
        const wedge = (radius * radius * Math.sin(-turn)) / 2;
        const letIn = wedge + pointOf(front, "bustPoint").x * drop + (spread * drop) / 2;
        // The armhole is redrawn smooth through the hinge; that sliver is not paper let in.
        const sliver = 0.5 * Math.abs(degreesFrom(turn)) * 10 + 1;
        expect(Math.abs(area(after) - area(front) - letIn)).toBeLessThan(sliver);
      }),
      { numRuns: 40 },
    );
  });

  it("there and back is the same piece in every point and in the controls of every edge but the armhole's, for any spread", () => {
    fc.assert(
      fc.property(anyAmount(-14, 35), (spread) => {
        const back = adjusted(adjusted(front, spread), -spread);
        for (const name of pointNames(front))
          expect(distance(pointOf(back, name), pointOf(front, name))).toBeLessThan(1e-6);
        for (const edge of front.edges) {
          if (edge.seam === "armhole" || edge.curve === null) continue;
          const same = back.edges.find(({ from, to }) => from === edge.from && to === edge.to);
          expect(distance(same?.curve?.c1 ?? hinge, edge.curve.c1)).toBeLessThan(1e-6);
          expect(distance(same?.curve?.c2 ?? hinge, edge.curve.c2)).toBeLessThan(1e-6);
        }
        // The armhole was redrawn smooth at its hinge, and keeps its length to the width of a pencil line.
        expect(Math.abs(seamByBezierJs(back, "armhole") - seamByBezierJs(front, "armhole"))).toBeLessThan(0.5);
      }),
      { numRuns: 60 },
    );
  });

  it("opens the side dart by the very turn, and leaves the armhole without a corner at the hinge", () => {
    const angle = (piece: Piece): number =>
      angleAt(pointOf(piece, "bustLineOuter"), pointOf(piece, "sideDartInner"), pointOf(piece, "sideDartOuter"));
    for (const spread of [-10, 8, 25]) {
      const done = adjustFullBust(front, spread);
      if (!done.ok) throw new Error(done.failure.code);
      expect(angle(done.value.piece) - angle(front)).toBeCloseTo(Math.sign(spread) * Math.abs(done.value.turn), 9);
      const [into, out] = ["to", "from"].map(
        (end) => done.value.piece.edges.find((edge) => edge[end === "to" ? "to" : "from"] === "armholeHinge")?.curve,
      );
      const at = pointOf(done.value.piece, "armholeHinge");
      expect(angleAt(at, into?.c2 ?? at, out?.c1 ?? at)).toBeCloseTo(Math.PI, 6);
    }
  });
});
