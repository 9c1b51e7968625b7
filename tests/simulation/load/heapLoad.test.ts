/** What judges the memory of many drags, by measures made up. */
import { describe, expect, it } from "vitest";
import { growing } from "./heapLoad";

describe("what judges the memory", () => {
  const heaps = (grows: { bytes?: number; nodes?: number; listeners?: number }) =>
    Array.from({ length: 11 }, (_, at) => ({
      moves: 1000 * at,
      // Until the history is full all of it may grow.
      bytes: 11e6 + Math.min(at, 3) * 1e6 + at * (grows.bytes ?? 0),
      nodes: 9000 + at * (grows.nodes ?? 0),
      listeners: 400 + at * (grows.listeners ?? 0),
    }));

  it("has nothing against a history that fills", () => {
    expect(growing(heaps({}))).toEqual([]);
  });

  it.each([
    [{ bytes: 100_000 }, "heap: 100 bytes a move"],
    [{ nodes: 100 }, "nodes: 9300 to 10000"],
    [{ listeners: 10 }, "listeners: 430 to 500"],
  ])("tells what grows after that: %o", (grows, told) => {
    expect(growing(heaps(grows))).toEqual([told]);
  });

  it("says nothing of too few moves", () => {
    expect(growing(heaps({}).slice(0, 3))).toBeNull();
  });
});
