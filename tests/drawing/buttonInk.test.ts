/** A button on a true-scale piece, as ink. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../src/core/geometry/point";
import { pieceInk } from "../../src/drawing/pieceInk";
import { HAND_FRONT } from "../support/truePieces";

const bare = { ...HAND_FRONT, bustPoint: null };
const marksOf = (drills: typeof HAND_FRONT.drills) =>
  pieceInk({ ...bare, drills }, { title: [], allowances: true })
    .filter((ink) => ink.kind === "line")
    .filter(({ role }) => role === "mark");
const button = { what: "button", at: piecePoint(0, 100), hole: [piecePoint(-3, 100), piecePoint(12, 100)] } as const;

describe("the ink of a button", () => {
  it("is a circle about its place, with an arm that stands out above and below", () => {
    const [circle, ...straight] = marksOf([button]);
    expect(circle?.closed).toBe(true);
    const radii = (circle?.edges ?? []).map(({ a }) => Math.hypot(a.x, a.y - 100));
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(1e-9);
    const upright = straight
      .flatMap(({ edges }) => edges)
      .filter(({ a, b }) => Math.abs(a.x) < 1e-9 && Math.abs(b.x) < 1e-9);
    expect(upright).toHaveLength(1);
    expect(Math.abs((upright[0]?.a.y ?? 0) - 100)).toBeGreaterThan(Math.max(...radii) + 0.5);
  });

  it("has its buttonhole as one line across the centre, barred where it begins and ends", () => {
    const lines = marksOf([button])
      .filter(({ closed }) => !closed)
      .flatMap(({ edges }) => edges);
    expect(lines.filter(({ a, b }) => a.x === -3 && b.x === 12 && a.y === 100 && b.y === 100)).toHaveLength(1);
    for (const x of [-3, 12])
      expect(
        lines.filter(({ a, b }) => Math.abs(a.x - x) < 1e-9 && Math.abs(b.x - x) < 1e-9 && a.y + b.y === 200),
      ).toHaveLength(1);
  });

  it("is larger than the end of a dart, which has no buttonhole", () => {
    const size = (drills: typeof HAND_FRONT.drills): number =>
      Math.max(
        ...marksOf(drills)
          .flatMap(({ edges }) => edges)
          .map(({ a }) => Math.hypot(a.x, a.y - 100)),
      );
    expect(size([{ what: "dartEnd", at: button.at }])).toBeLessThan(1.5);
    expect(size([button])).toBeGreaterThan(3);
  });
});
