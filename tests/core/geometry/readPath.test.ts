import { describe, expect, it } from "vitest";
import { filePoint } from "../../../src/core/geometry/point";
import { readPath } from "../../../src/core/geometry/readPath";

const read = (path: string) => readPath(path, filePoint(0, 0));

describe("path data read back", () => {
  it("gives lines and curves from point to point", () => {
    expect(read("M0 0L10 0 10 5C1 2 3 4 5 6")).toEqual({
      closed: false,
      edges: [
        { a: { x: 0, y: 0 }, b: { x: 10, y: 0 }, curve: null },
        { a: { x: 10, y: 0 }, b: { x: 10, y: 5 }, curve: null },
        { a: { x: 10, y: 5 }, b: { x: 5, y: 6 }, curve: { c1: { x: 1, y: 2 }, c2: { x: 3, y: 4 } } },
      ],
    });
  });

  it("closes with an edge only where the line is not back yet", () => {
    expect(read("M0 0L10 0L0 5Z")?.edges).toHaveLength(3);
    expect(read("M0 0L10 0L0 5L0 0Z")?.edges).toHaveLength(3);
    expect(read("M0 0L10 0L0 5Z")?.closed).toBe(true);
  });

  it("reads numbers in every way that they are written", () => {
    expect(read("M-.5-.25L1e2,-3.5E-1")?.edges[0]).toEqual({
      a: { x: -0.5, y: -0.25 },
      b: { x: 100, y: -0.35 },
      curve: null,
    });
  });

  it.each([
    "",
    "L0 0",
    "M0 0M1 1",
    "M0 0L1",
    "M0 0C1 1 2 2",
    "M0 0Z1 1",
    "M0 0ZL1 1",
    "M0 0Q1 1 2 2",
    "M1e999 0L1 1",
    "m0 0",
    "M0 0 1 1",
    "M0 0Lx",
  ])("refuses %j", (path) => expect(read(path)).toBeNull());
});
