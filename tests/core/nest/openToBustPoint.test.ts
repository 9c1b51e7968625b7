/** Printed pieces made ready for their bust: what is moved, and what is put in where a piece has none of it. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { openToBustPoint, sideNeckOf } from "../../../src/core/nest/openToBustPoint";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { withArmholeHinge } from "../../../src/core/surgery/fullBust";
import { straightNest } from "../../support/straightNest";
import { testWork } from "../../support/works";

const { pattern } = testWork;
const front = invariant(
  straightNest([{ label: "", front: { bust: 200, waist: 180, dart: 20 }, back: { bust: 1, waist: 1, dart: 0 } }])
    .sizes[0]?.pieces[0],
  "front",
);
const opened = (piece: Piece): Piece =>
  invariant(openToBustPoint(setOf([piece]), piece.name, pattern, 3)[piece.name], "piece");
/** The fourth size of the chart as it is drafted. */
const draft = withArmholeHinge(
  draftFrontBlock(draftMeasuresFor(invariant(pattern.chart.sizes[3], "row"), pattern.chart, pattern.ease)),
);
const fromBustPoint = (name: "armholeHinge" | "sideNeck"): readonly [number, number] => {
  const [from, to] = [pointOf(draft, "bustPoint"), pointOf(draft, name)];
  return [to.x - from.x, to.y - from.y];
};

describe("a piece opened to its bust point", () => {
  it("has its bust darts reach it, and its bust line parted there", () => {
    const bust = { at: piecePoint(95, 250), level: "bust" };
    expect(opened(front)).toEqual({
      ...front,
      points: {
        ...front.points,
        waistDartApex: bust,
        sideDartApex: bust,
        bustLineInner: bust,
        bustLineOuter: bust,
      },
      levelLines: [
        { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
        { level: "waist", along: { seam: "waist" } },
      ],
    });
  });

  it("keeps darts that serve something else, the parts that it has, and lines of other levels or along a seam", () => {
    const own = { at: piecePoint(90, 251), level: "bust" } as const;
    const piece: Piece = {
      ...front,
      points: { ...front.points, bustLineInner: own, bustLineOuter: own },
      darts: front.darts.map((dart) => (dart.name === "sideDart" ? { ...dart, aimsAt: null } : dart)),
      levelLines: [
        { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
        { level: "bust", along: { points: ["centreBust", "bustPoint", "sideBust"] } },
        { level: "hip", along: { points: ["centreBust", "sideBust"] } },
        { level: "bust", along: { seam: "side" } },
      ],
    };
    const made = opened(piece);
    expect(made.points).toEqual({ ...piece.points, waistDartApex: { at: piecePoint(95, 250), level: "bust" } });
    expect(made.levelLines).toEqual([
      piece.levelLines[0],
      { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
      piece.levelLines[2],
      piece.levelLines[3],
    ]);
  });

  it("is left as it is where it is a centre front", () => {
    const pieces = setOf([{ ...front, name: "centreFront" }]);
    expect(openToBustPoint(pieces, "centreFront", pattern, 3)).toBe(pieces);
  });

  it("gets a hinge as far from the bust point as our draft of its size has it where it is a cup without one", () => {
    const [dx, dy] = fromBustPoint("armholeHinge");
    const cup: Piece = { ...front, name: "cup" };
    const { armholeHinge } = opened(cup).points;
    expect(armholeHinge?.level).toBe("shoulder");
    expect(armholeHinge?.at.x).toBeCloseTo(95 + dx, 9);
    expect(armholeHinge?.at.y).toBeCloseTo(250 + dy, 9);
    const own = { at: piecePoint(170, 130), level: "shoulder" } as const;
    expect(opened({ ...cup, points: { ...cup.points, armholeHinge: own } }).points.armholeHinge).toBe(own);
    expect(opened(front).points.armholeHinge).toBeUndefined();
  });
});

describe("the side neck of a piece with a bust point", () => {
  it("is its own, or as far off as in our draft of its size", () => {
    expect(sideNeckOf(front, pattern, 3)).toEqual(piecePoint(70, 0));
    const { sideNeck: _, ...points } = front.points;
    const [dx, dy] = fromBustPoint("sideNeck");
    const found = sideNeckOf({ ...front, points }, pattern, 3);
    expect(found.x).toBeCloseTo(95 + dx, 9);
    expect(found.y).toBeCloseTo(250 + dy, 9);
  });
});
