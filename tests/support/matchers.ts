/** Comparisons for tests. Each has a test that it fails: see matchers.test.ts. */
import { expect } from "vitest";

/** Loose on purpose, so that a test may hand over what lacks a coordinate and see the comparison fail. */
export interface MaybePoint {
  readonly x?: number | undefined;
  readonly y?: number | undefined;
}

const written = (p: MaybePoint | undefined): string => (p === undefined ? "no point" : `(${p.x}, ${p.y})`);

/** Whether both are points with finite coordinates no more than `tolerance` mm apart. */
export function arePointsClose(p: MaybePoint | undefined, q: MaybePoint | undefined, tolerance: number): boolean {
  if (p?.x === undefined || p.y === undefined || q?.x === undefined || q.y === undefined) return false;
  // A comparison with NaN is false, so neither NaN nor infinity minus infinity passes.
  return Math.hypot(p.x - q.x, p.y - q.y) <= tolerance;
}

/** Expects two points within `tolerance` mm of each other; a missing or non-finite coordinate fails. */
export function expectPointClose(p: MaybePoint | undefined, q: MaybePoint | undefined, tolerance: number): void {
  if (!arePointsClose(p, q, tolerance)) {
    expect.fail(`${written(p)} should be within ${tolerance} mm of ${written(q)}`);
  }
}

/** Expects the same number of points, each expected one met by a found one of its own within `tolerance` mm. */
export function expectSamePoints(
  found: readonly MaybePoint[],
  expected: readonly MaybePoint[],
  tolerance: number,
): void {
  const message = `${found.map(written).join(" ")} should be ${expected.map(written).join(" ")}`;
  if (found.length !== expected.length) expect.fail(message);
  const left = [...found];
  for (const q of expected) {
    const index = left.findIndex((p) => arePointsClose(p, q, tolerance));
    if (index === -1) expect.fail(`${message}: none for ${written(q)}`);
    left.splice(index, 1);
  }
}
