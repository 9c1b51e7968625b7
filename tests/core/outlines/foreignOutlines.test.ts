/**
 * Nests of other houses, drawn in many ways, come back: outlines, sizes, pieces. In `npm test` some houses for each way,
 * others for the next; `npm run whole -- foreignOutlines` has all of them drawn in all ways.
 */
import { describe, expect, it } from "vitest";
import { edgeNearest, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { readOutlines } from "../../../src/core/outlines/readOutlines";
import type { ClosedOutline } from "../../../src/core/outlines/outlineReading";
import { drawingOf, type DrawnHow, type TrueOutline } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import { pointAt } from "../../support/foreign/plane";
import { shareOf } from "../../support/share";

const SHARES = [0, 0.17, 0.41, 0.66, 0.83];

type Edge = ClosedOutline["edges"][number];
interface Boxed {
  readonly edge: Edge;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** An edge in the box of its ends and controls, which it does not leave. */
function boxed(edge: Edge): Boxed {
  const points = [edge.a, edge.b, ...(edge.curve === null ? [] : [edge.curve.c1, edge.curve.c2])];
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { edge, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function offFrom(x: number, y: number, edges: readonly Boxed[]): number {
  let least = Infinity;
  for (const { edge, left, right, top, bottom } of edges) {
    // What lies in a box further off is not looked for.
    if (Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom)) >= least) continue;
    least = Math.min(least, edgeNearest(edge, sheetPoint(x, y)).distance);
  }
  return least;
}

/** How far the true outline and the one that was read leave each other, mm; no more is looked at once it is too far. */
function apart(truth: TrueOutline, read: ClosedOutline, tooFar = Infinity): number {
  const ring = truth.ring.map(({ a, b, c }) =>
    boxed({
      a: sheetPoint(a.x, a.y),
      b: sheetPoint(b.x, b.y),
      curve: c === undefined ? null : { c1: sheetPoint(c[0].x, c[0].y), c2: sheetPoint(c[1].x, c[1].y) },
    }),
  );
  const edges = read.edges.map(boxed);
  let worst = 0;
  for (const s of truth.ring)
    for (const t of SHARES) {
      const { x, y } = pointAt(s, t);
      worst = Math.max(worst, offFrom(x, y, edges));
      if (worst > tooFar) return worst;
    }
  for (const edge of read.edges)
    for (const t of SHARES) {
      const { x, y } = edgePointAt(edge, t);
      worst = Math.max(worst, offFrom(x, y, ring));
      if (worst > tooFar) return worst;
    }
  return worst;
}

function expectBack(seed: number, how: DrawnHow, within: number): void {
  const nest = foreignNest({ seed });
  const { drawing, truth } = drawingOf(nest, { seed, ...how });
  const labels = nest.chart.map(({ label }) => label);
  const reading = readOutlines({ own: { file: "nest", drawing, pieces: [] }, labels });
  const groups = reading.groups.filter(({ isSquare, isFrame }) => !isSquare && isFrame !== true);
  expect(reading.unclosed.map(({ gap }) => gap)).toEqual([]);
  expect(groups.length).toBe(nest.pieces.length);
  for (const piece of nest.pieces) {
    const true0 = truth.find((one) => one.piece === piece.name);
    if (true0 === undefined) throw new Error("no truth");
    const byId = (id: string | undefined): ClosedOutline | undefined => reading.outlines.find((one) => one.id === id);
    const near = groups.filter(({ outlines }) => {
      const read = byId(outlines[true0.size]);
      return read !== undefined && apart(true0, read, within) <= within;
    });
    expect(near.length, `${piece.name} ${true0.size}`).toBe(1);
    for (const one of truth.filter((other) => other.piece === piece.name)) {
      const read = byId(near[0]?.outlines[one.size]);
      expect(read === undefined ? Infinity : apart(one, read), `${one.piece} ${one.size}`).toBeLessThan(within);
    }
  }
}

const WAYS: readonly (readonly [string, DrawnHow])[] = [
  ["by named layers", { by: "layer" }],
  ["by layers without names", { by: "layer", named: false }],
  ["by groups", { by: "group" }],
  ["by colour", { by: "colour" }],
  ["by dash", { by: "dash", named: false }],
  ["by width", { by: "width" }],
  ["turned, in inches", { by: "layer", turn: 0.6, unit: 25.4 }],
  ["broken", { by: "layer", broken: 6 }],
  ["broken, by colour, turned", { by: "colour", broken: 4, turn: -1.1 }],
  ["with a shared centre line", { by: "layer", sharedCentre: true }],
  ["with a shared centre line, broken, turned", { by: "dash", sharedCentre: true, broken: 5, turn: 2.2 }],
  ["doubled", { by: "layer", doubled: 0.5, broken: 3 }],
  ["darts cut", { by: "colour", darts: "cut", broken: 2 }],
  ["side by side by groups", { by: "group", layout: "side by side", format: "dxf" }],
  ["side by side by layers, turned", { by: "layer", layout: "side by side", turn: 0.3 }],
  ["with a frame and a square", { by: "layer", frame: true, square: 100, squareWritten: "10 cm", titles: true }],
  ["with a frame, by colour", { by: "colour", frame: true, square: 50.8 }],
];

const HOUSES = Array.from({ length: 12 }, (_, seed) => seed);
const CASES = WAYS.map(([name, how], at) => [name, how, shareOf(HOUSES, 4, at)] as const);

describe("foreign nests drawn", () => {
  it.each(CASES)("%s come back", (_, how, seeds) => {
    for (const seed of seeds) expectBack(seed, how, 0.05);
  });

  it("with gaps come back as near as the gaps", () => {
    for (const seed of shareOf(HOUSES, 4, WAYS.length)) expectBack(seed, { by: "layer", broken: 3, gaps: 0.3 }, 0.3);
  });
});
