/**
 * Nests of another house, drawn in any way that files are drawn, come back as pieces: to 0.05 mm, and to 0.1 mm where their curves
 * were written as straight stretches that leave them by 0.05.
 *
 * Truth is the foreign nest's own; distances are measured by the test's own sampling.
 */
import { assert as assertAll, boolean, constantFrom, integer, property, record } from "fast-check";
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import type { Piece } from "../../../src/core/pattern/piece";
import { chartOf } from "../../support/foreign/asTraced";
import { drawingOf, type DrawnHow } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import { pointAt, type Segment, type XY } from "../../support/foreign/plane";
import { sampleWork } from "../../support/sampleWork";

/** The curves of a drawing as straight stretches, each as many as leave it by no more than asked (Wang's bound). */
function flattened(drawing: FileDrawing, within: number): FileDrawing {
  const flat = (path: string): string => {
    let at: XY = { x: 0, y: 0 };
    return path.replaceAll(/([MLC])([^MLCZ]*)/g, (text, step: string, rest: string) => {
      const n = rest.trim().split(/\s+/).map(Number);
      const end = { x: n.at(-2) ?? 0, y: n.at(-1) ?? 0 };
      const from = at;
      at = end;
      if (step !== "C") return text;
      const [c1, c2] = [
        { x: n[0] ?? 0, y: n[1] ?? 0 },
        { x: n[2] ?? 0, y: n[3] ?? 0 },
      ];
      const bend = Math.max(
        Math.hypot(from.x - 2 * c1.x + c2.x, from.y - 2 * c1.y + c2.y),
        Math.hypot(c1.x - 2 * c2.x + end.x, c1.y - 2 * c2.y + end.y),
      );
      const count = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / within)));
      return Array.from({ length: count }, (_, i) => {
        const { x, y } = pointAt({ a: from, b: end, c: [c1, c2] }, (i + 1) / count);
        return `L${x} ${y}`;
      }).join("");
    });
  };
  return { ...drawing, lines: drawing.lines.map(({ look, paths }) => ({ look, paths: paths.map(flat) })) };
}

/** Points along a segment that are held against the other ring, and that stand for it. */
const FEW = 8;
const MANY = 60;

const ringOf = ({ points, edges }: Piece): Segment[] =>
  edges.map(({ from, to, curve }) => {
    const [a, b] = [points[from]?.at, points[to]?.at];
    if (a === undefined || b === undefined) throw new Error(from);
    return { a, b, ...(curve === null ? {} : { c: [curve.c1, curve.c2] as const }) };
  });

const sampled = (ring: readonly Segment[], steps: number): XY[] =>
  ring.flatMap((s) => {
    const count = s.c === undefined ? Math.min(steps, 4) : steps;
    return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
  });

function toLine(p: XY, a: XY, b: XY): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const along = dx * dx + dy * dy;
  const t = along === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / along));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

const furthest = (from: readonly XY[], to: readonly XY[]): number =>
  Math.max(...from.map((p) => Math.min(...to.map((a, i) => toLine(p, a, to[(i + 1) % to.length] ?? a)))));

/** How far two rings leave each other once two places of each lie on one another. */
function apart(
  one: readonly Segment[],
  at: readonly [XY, XY],
  other: readonly Segment[],
  to: readonly [XY, XY],
): number {
  const way = ([p, q]: readonly [XY, XY]): number => Math.atan2(q.y - p.y, q.x - p.x);
  const [cos, sin] = [Math.cos(way(to) - way(at)), Math.sin(way(to) - way(at))];
  const lay = (p: XY): XY => {
    const [dx, dy] = [p.x - at[0].x, p.y - at[0].y];
    return { x: to[0].x + dx * cos - dy * sin, y: to[0].y + dx * sin + dy * cos };
  };
  return Math.max(
    furthest(sampled(one, FEW).map(lay), sampled(other, MANY)),
    furthest(sampled(other, FEW), sampled(one, MANY).map(lay)),
  );
}

function expectBack(seed: number, how: DrawnHow, flat: number | null, within: number): void {
  const nest = foreignNest({ seed });
  const { drawing, truth } = drawingOf(nest, { seed, titles: true, ...how });
  const unit = how.unit ?? 1;
  const pattern: Pattern = {
    ...sampleWork.pattern,
    chart: chartOf(nest),
    style: nest.style,
    length: nest.options.basque ? "hip" : "waist",
  };
  const own = { file: "nest", drawing: flat === null ? drawing : flattened(drawing, flat / unit), pieces: [] };
  const read = readOwn({ own, pattern });
  expect(read.missing).toEqual([]);
  for (const one of truth.filter(({ piece }) => piece !== "other1")) {
    const sizes = read.nest?.sizes.find(({ label }) => label === one.size);
    const made = sizes?.pieces.find(({ name }) => name === one.piece);
    if (made === undefined) throw new Error(`${one.piece} ${one.size}`);
    const names = (["sideWaist", "underarm", "centreHem", "centreWaist", "centreNeck"] as const)
      .filter((name) => one.corners[name] !== undefined)
      .slice(0, 2);
    const [p, q] = names.map((name) => made.points[name]?.at);
    const [from, to] = names.map((name) => one.corners[name]);
    if (p === undefined || q === undefined || from === undefined || to === undefined) throw new Error(one.piece);
    expect(apart(ringOf(made), [p, q], one.ring, [from, to]), `${one.piece} ${one.size}`).toBeLessThan(within);
    for (const dart of one.darts) {
      const apex = made.points[`${dart.name}Apex` as "sideDartApex"]?.at;
      const reach = (a: XY | undefined, b: XY): number =>
        a === undefined ? Infinity : Math.hypot(a.x - b.x, a.y - b.y);
      expect(Math.abs(reach(apex, p) - reach(dart.apex, from)), `${one.piece} ${dart.name}`).toBeLessThan(within);
    }
  }
}

const ways = record({
  seed: integer({ min: 1, max: 400 }),
  turn: constantFrom(0, Math.PI / 2, Math.PI, 0.35, -0.8),
  unit: constantFrom(1, 10, 25.4, 0.352_777_8),
  by: constantFrom("layer" as const, "colour" as const, "group" as const),
  layout: constantFrom("nested" as const, "side by side" as const),
  broken: constantFrom(0, 0, 4),
  sharedCentre: boolean(),
  doubled: constantFrom(0, 0.3),
  flat: constantFrom(null, 0.01, 0.05),
});

/** More by `RUNS=500 npx vitest run tests/core/ownPieces/anyDrawing.test.ts`. */
const RUNS = Number(process.env.RUNS ?? 5);

describe("any nest, drawn any way", { timeout: 600_000 }, () => {
  it("comes back to 0.05 mm", () => {
    assertAll(
      property(ways, ({ seed, flat, ...how }) => {
        // Of a line that was flattened the file holds no curve: that it is found again as near as this is more than it says.
        expectBack(seed, how, flat, flat === null ? 0.05 : 0.1);
      }),
      { numRuns: RUNS, seed: 20 },
    );
  });

  it("comes back to what its ends are apart", () => {
    assertAll(
      property(integer({ min: 1, max: 400 }), (seed) => {
        expectBack(seed, { broken: 3, gaps: 0.3 }, null, 0.35);
      }),
      { numRuns: Math.ceil(RUNS / 5), seed: 20 },
    );
  });
});
