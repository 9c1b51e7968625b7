/** Cubics fitted to curves whose every point is known in closed form. */
import { describe, expect, it } from "vitest";
import { edgePointAt, edgeTangentAt, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { fitAlike as fitCurves } from "../../../src/core/ownPieces/fitCubics";
import { curvesMeant } from "../../../src/core/ownPieces/curvesMeant";
import { matchSizes } from "../../../src/core/ownPieces/matchSizes";
import type { Chain } from "../../../src/core/ownPieces/tracedRing";

/** Lines in short stretches, as they are read. */
const fitAlike = (lines: readonly Chain[]) => fitCurves(lines.map((line) => curvesMeant(line).edges)).edges;

const through = (points: readonly PiecePoint[]): Chain =>
  points.slice(1).map((b, index) => lineEdge(points[index] ?? b, b));

const arc = (radius: number, count: number): Chain =>
  through(
    Array.from({ length: count + 1 }, (_, i) => {
      const angle = (Math.PI / 2) * (i / count);
      return piecePoint(radius * Math.cos(angle), radius * Math.sin(angle));
    }),
  );

const SHARES = [0, 0.2, 0.4, 0.6, 0.8, 1];
const pointsOn = (chain: Chain): PiecePoint[] => chain.flatMap((edge) => SHARES.map((t) => edgePointAt(edge, t)));

describe("a fit", () => {
  it.each([60, 90, 180])("of a quarter circle drawn in short stretches is that circle, radius %d", (radius) => {
    const [fit = []] = fitAlike([arc(radius, 48)]);
    for (const { x, y } of pointsOn(fit)) expect(Math.abs(Math.hypot(x, y) - radius)).toBeLessThan(0.03);
    expect(fit.length).toBeLessThanOrEqual(4);
  });

  it("of a parabola is that parabola in one cubic", () => {
    const points = Array.from({ length: 41 }, (_, i) => piecePoint(i * 5, (i * 5 - 100) ** 2 / 400));
    const [fit = []] = fitAlike([through(points)]);
    for (const { x, y } of pointsOn(fit)) expect(Math.abs(y - (x - 100) ** 2 / 400)).toBeLessThan(0.05);
    expect(fit.length).toBe(1);
  });

  it("of two sizes has as many edges in both, and is smooth where they meet", () => {
    const fits = fitAlike([arc(70, 30), arc(140, 55)]);
    expect(fits[0]?.length).toBe(fits[1]?.length);
    const turns = fits.flatMap((fit) =>
      fit.slice(1).map((edge, index) => edgeTangentAt(edge, 0) - edgeTangentAt(fit[index] ?? edge, 1)),
    );
    for (const turn of turns) expect(turn).toBeCloseTo(0, 6);
  });

  it("of straight stretches in one line is one straight edge", () => {
    const [fit = []] = fitAlike([through([0, 10, 25, 80].map((x) => piecePoint(x, x / 2)))]);
    expect(fit).toEqual([lineEdge(piecePoint(0, 0), piecePoint(80, 40))]);
  });
});

describe("sizes matched", () => {
  const square = (side: number): PiecePoint[] => [piecePoint(0, 0), piecePoint(side, 0), piecePoint(side, side)];

  it("keep a corner, and put it by its share of the length where a size lacks it", () => {
    const { edges, deviations } = matchSizes([through(square(60)), through([piecePoint(0, 0), piecePoint(100, 0)])]);
    expect(edges[0]).toEqual(through(square(60)));
    expect(edges[1]).toEqual(through([0, 50, 100].map((x) => piecePoint(x, 0))));
    expect(Math.max(...deviations)).toBeLessThan(1e-9);
  });

  it("keep curves that all sizes have alike to the last digit", () => {
    const curve = (k: number): Chain => [
      {
        a: piecePoint(0, 0),
        b: piecePoint(50 * k, 20),
        curve: { c1: piecePoint(11.3 * k, 0), c2: piecePoint(40, 3.7) },
      },
    ];
    expect(matchSizes([curve(1), curve(1.1)]).edges).toEqual([curve(1), curve(1.1)]);
  });
});
