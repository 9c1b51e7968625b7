/** Corners of outlines by hand: what a protractor on the paper would read. */
import { piecePoint } from "../../../src/core/geometry/point";
import { cornerAtDegrees, turnAtDegrees } from "../../../src/core/girth/cornerAngle";
import type { Edge, Piece, PointName } from "../../../src/core/pattern/piece";
import { expect, test } from "vitest";

type At = readonly [number, number];
const NAMES = ["centreNeck", "sideNeck", "sideWaist", "centreWaist", "centreBust"] as const;

/** An outline through places, clockwise on screen; handles of the edge that starts at each, where it is a curve. */
function outline(places: readonly At[], handles: Readonly<Record<number, readonly [At, At]>> = {}): Piece {
  const nameAt = (i: number): PointName => NAMES[i % places.length] ?? "centreNeck";
  return {
    name: "front",
    points: Object.fromEntries(
      places.map(([x, y], i) => [nameAt(i), { at: piecePoint(x, y), level: "waist" as const }]),
    ),
    edges: places.map((_, i): Edge => {
      const [c1, c2] = handles[i] ?? [];
      const curve = c1 === undefined || c2 === undefined ? null : { c1: piecePoint(...c1), c2: piecePoint(...c2) };
      return { from: nameAt(i), to: nameAt(i + 1), seam: "side", curve, mouthOf: null };
    }),
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

const square: readonly At[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];

test("a square has four square corners, each a quarter turn to the right", () => {
  for (const name of ["centreNeck", "sideNeck", "sideWaist", "centreWaist"] as const) {
    expect(cornerAtDegrees(outline(square), name)).toBeCloseTo(90, 9);
    expect(turnAtDegrees(outline(square), name)).toBeCloseTo(90, 9);
  }
});

test("a sharp corner is less than square, a blunt one more, a hollow one more than straight", () => {
  // The side leans in by 45° from the top, so 45° above and 135° below; the corner let in at the middle is hollow.
  const leaning = outline([
    [0, 0],
    [100, 0],
    [50, 50],
    [0, 50],
  ]);
  expect(cornerAtDegrees(leaning, "sideNeck")).toBeCloseTo(45, 9);
  expect(cornerAtDegrees(leaning, "sideWaist")).toBeCloseTo(135, 9);
  const hollow = outline([
    [0, 0],
    [100, 0],
    [50, 50],
    [100, 100],
    [0, 100],
  ]);
  expect(cornerAtDegrees(hollow, "sideWaist")).toBeCloseTo(270, 9);
  expect(turnAtDegrees(hollow, "sideWaist")).toBeCloseTo(-90, 9);
});

test("a point within a straight edge is no corner", () => {
  const marked = outline([
    [0, 0],
    [60, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]);
  expect(turnAtDegrees(marked, "sideNeck")).toBeCloseTo(0, 9);
  expect(cornerAtDegrees(marked, "sideNeck")).toBeCloseTo(180, 9);
});

test("a curve comes in and goes out the way its handles lie, whatever its other end does", () => {
  // Down the side: it leaves the top straight down, and comes to the bottom 30° off from straight down, to the left.
  const tan = Math.tan(Math.PI / 6);
  const curved = outline(square, {
    1: [
      [100, 40],
      [100 + 30 * tan, 70],
    ],
  });
  expect(cornerAtDegrees(curved, "sideNeck")).toBeCloseTo(90, 9);
  // Arriving turned by 30° towards the centre, it has 60° of the quarter turn left to make.
  expect(turnAtDegrees(curved, "sideWaist")).toBeCloseTo(60, 9);
  expect(cornerAtDegrees(curved, "sideWaist")).toBeCloseTo(120, 9);
});
