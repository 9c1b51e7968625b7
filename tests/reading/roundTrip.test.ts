/**
 * Every demonstration written as SVG and as DXF by our own export of all sizes, read back as if it were a pattern from
 * elsewhere: the pieces to 0.05 mm, and the plan on them that of the stand-in. In `npm test` each in one of both formats;
 * `npm run whole -- roundTrip` has each in both.
 *
 * Distances are measured by the test's own sampling, not by the core.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { answerPaper } from "../../src/cli/answerPaper";
import type { OwnPattern } from "../../src/core/decisions/ownPattern";
import type { Work } from "../../src/core/decisions/work";
import { readOwn } from "../../src/core/ownPieces/readOwn";
import type { Piece } from "../../src/core/pattern/piece";
import type { CheckResult } from "../../src/core/checks/check";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { planOf as planOfWork } from "../../src/core/plan/planOf";
import { invariant } from "../../src/core/result";
import { readWorkFile } from "../../src/document/workFile";
import { readPatternFile } from "../../src/reading/readPatternFile";
import { DEMO_FILES } from "../support/doors";
import { shareOf } from "../support/share";

interface XY {
  readonly x: number;
  readonly y: number;
}

const STEPS = 60;

/** Points close together along every edge, by Bernstein's polynomials. */
function sampled({ points, edges }: Piece): XY[] {
  return edges.flatMap(({ from, to, curve }) => {
    const [a, b] = [invariant(points[from], from).at, invariant(points[to], to).at];
    return Array.from({ length: STEPS }, (_, k): XY => {
      const [t, u] = [k / STEPS, 1 - k / STEPS];
      const at = (key: "x" | "y"): number =>
        curve === null
          ? u * a[key] + t * b[key]
          : u ** 3 * a[key] + 3 * u * u * t * curve.c1[key] + 3 * u * t * t * curve.c2[key] + t ** 3 * b[key];
      return { x: at("x"), y: at("y") };
    });
  });
}

/** The square of the distance from a point to a stretch of a line. */
function squareFromLine({ x, y }: XY, a: XY, b: XY): number {
  const [dx, dy, px, py] = [b.x - a.x, b.y - a.y, x - a.x, y - a.y];
  const along = dx * dx + dy * dy;
  const t = along === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / along));
  const [offX, offY] = [px - t * dx, py - t * dy];
  return offX * offX + offY * offY;
}

/** The largest distance from any of the points to the nearest stretch of the ring through the others. */
function furthest(from: readonly XY[], to: readonly XY[]): number {
  if (![...from, ...to].every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return NaN;
  let [worst, near] = [0, 0];
  for (const p of from) {
    const start = near;
    let least = Infinity;
    // The next point's nearest stretch lies beside the last one's: looked at first, it settles most of them.
    for (let k = 0; k < to.length && least > worst; k += 1) {
      const at = (start + (k % 2 === 0 ? k / 2 : to.length - (k + 1) / 2)) % to.length;
      const square = squareFromLine(p, invariant(to[at], "point"), invariant(to[(at + 1) % to.length], "point"));
      if (square < least) {
        least = square;
        near = at;
      }
    }
    worst = Math.max(worst, least);
  }
  return Math.sqrt(worst);
}

/** How far two outlines leave each other, moved so that their centres of gravity of corners that both have lie together. */
function apart(one: Piece, other: Piece): number {
  const shared = Object.entries(one.points).flatMap(([name, { at }]) => {
    const twin = Object.entries(other.points).find(([own]) => own === name)?.[1];
    const onRing = one.edges.some(({ from }) => from === name) && other.edges.some(({ from }) => from === name);
    return twin === undefined || !onRing ? [] : [{ x: twin.at.x - at.x, y: twin.at.y - at.y }];
  });
  const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
  const by = { x: middle(shared.map(({ x }) => x)), y: middle(shared.map(({ y }) => y)) };
  const [here, there] = [sampled(one).map(({ x, y }) => ({ x: x + by.x, y: y + by.y })), sampled(other)];
  return Math.max(furthest(here, there), furthest(there, here));
}

function ownFrom(file: string, as: "svg" | "dxf", work: Work, cup: string | null): OwnPattern {
  const made = answerPaper([file, "--as", as, "--all-sizes", "--out", "-"], "2026-11-25");
  if (!made.ok) throw new Error(made.failure);
  const bytes = typeof made.value === "string" ? new TextEncoder().encode(made.value) : made.value;
  const read = readPatternFile({ name: `${work.name}.${as}`, bytes });
  if (!read.ok) throw new Error(JSON.stringify(read.failure));
  return { file: `nest.${as}`, drawing: read.value, pieces: [], ...(cup === null ? {} : { cup }), inUse: true };
}

const CASES = DEMO_FILES.flatMap((file, at) =>
  shareOf(["svg", "dxf"] as const, 2, at).map((as) => ({ name: `${file.replace(/^.*\//, "")} as ${as}`, file, as })),
);

/** A nest of ten sizes is written, read and joined: slow on a busy machine. */
const PATIENCE = 120_000;

describe.each(CASES)("$name, written in all sizes and read back", { timeout: PATIENCE }, ({ file, as }) => {
  const read = readWorkFile(readFileSync(file, "utf8"));
  const work = invariant(read.ok ? read.value : null, "demo");
  const planned = planOfWork(work);
  const plan = invariant(planned.ok ? planned.value : null, "plan");
  const own = ownFrom(file, as, work, plan.sizing.cup.label);
  const reading = readOwn({ own, pattern: work.pattern });

  it("has every piece in every size, and nothing is missing", () => {
    expect(reading.missing).toEqual([]);
    expect(reading.nest?.sizes.map(({ label }) => label)).toEqual(plan.nest.labels);
    const names = (pieces: readonly Piece[]): string[] => pieces.map(({ name }) => name).toSorted();
    for (const { pieces } of reading.nest?.sizes ?? []) expect(names(pieces)).toEqual(names(plan.printed));
  });

  it("has the pieces to 0.05 mm", () => {
    for (const { label, pieces } of reading.nest?.sizes ?? []) {
      const printed = invariant(plan.nest.sizes[plan.nest.labels.indexOf(label)], label);
      for (const piece of pieces) {
        const twin = invariant(
          printed.find(({ name }) => name === piece.name),
          piece.name,
        );
        expect(apart(twin, piece), `${piece.name} ${label}`).toBeLessThan(as === "svg" ? 0.05 : 0.1);
      }
    }
  });

  it("gives the same plan", () => {
    const again = derivePlan({ ...work, pattern: { ...work.pattern, own } });
    const other = invariant(again.ok ? again.value : null, "plan on own pieces");
    expect(other.nest.source).toBe("own");
    expect(other.sizing.baseSize.label).toBe(plan.sizing.baseSize.label);
    expect(other.sizing.cup.label).toBe(plan.sizing.cup.label);
    expect(other.sizing.bust.alteration).toBeCloseTo(plan.sizing.bust.alteration, 6);
    for (const level of plan.levels) {
      const twin = invariant(
        other.levels.find((one) => one.level === level.level),
        level.level,
      );
      if (level.level === "bust") continue;
      // A midriff of the stand-in is cut anew from the blended block, square to the blended side: hers, right to 0.05 mm as
      // above, is blended as she has it.
      const within = work.pattern.style === "midriff" ? 0.05 : 0.02;
      expect(Math.abs(twin.size - level.size)).toBeLessThan(within);
      // Of a curve that was flattened each of the four quarters may be off at its side by what the flattening left.
      expect(Math.abs(twin.finished - level.finished)).toBeLessThan(as === "svg" ? 0.1 : 0.2);
    }
    // What the flattening left at a side is in the girth there, too.
    const isFlattened = ({ unit, measured, expected }: CheckResult): boolean =>
      as === "dxf" && unit === "mm" && Math.abs(measured - expected) < 0.2;
    expect(other.checks.filter((check) => !check.ok && !isFlattened(check))).toEqual([]);
  });
});
