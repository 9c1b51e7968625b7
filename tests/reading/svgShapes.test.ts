/** Lines, curves and plain shapes of SVG: expected places are worked out by hand or by bezier-js. */
import { Bezier } from "bezier-js";
import { describe, expect, it } from "vitest";
import { invariant } from "../../src/core/result";
import { cornersOf, cubicsOf, pathsOf, stepsOf, svg, type Pair } from "./readings";

const path = (d: string): string => pathsOf(svg(`<path d="${d}"/>`))[0] ?? "";
const paths = (d: string): string[] => pathsOf(svg(`<path d="${d}"/>`));

/** How far places along the cubics lie from a circle. */
const offCircle = (line: string, centre: Pair, radius: number): number =>
  Math.max(
    ...cubicsOf(line).flatMap((points) => {
      const curve = new Bezier(points.map(([x, y]) => ({ x, y })));
      return Array.from({ length: 21 }, (_, i) => curve.get(i / 20)).map(({ x, y }) =>
        Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius),
      );
    }),
  );

describe("path data", () => {
  it.each([
    ["straight parts, from where it is", "M1 2L3 4l5 6H20h-1V30v-2", "M1 2L3 4 8 10 20 10 19 10 19 30 19 28"],
    ["more places behind M and m", "M1 2 3 4m1 1 2 2", "M1 2L3 4"],
    ["numbers without room between them", "M1-2.5.5.25L-1e1+3", "M1 -2.5L0.5 0.25 -10 3"],
    ["a closed line", "M0 0L10 0 10 10Z", "M0 0L10 0 10 10Z"],
    ["a closed line that says its way back", "M0 0L10 0 10 10 0 0z", "M0 0L10 0 10 10Z"],
    ["cubics", "M0 0C1 2 3 4 5 6c1 1 2 2 3 3", "M0 0C1 2 3 4 5 6 6 7 7 8 8 9"],
    // The mirror image of 3 4 about 5 6 is 7 8; without a cubic before it is the place itself.
    ["cubics that go on smoothly", "M0 0C1 2 3 4 5 6S8 9 10 10", "M0 0C1 2 3 4 5 6 7 8 8 9 10 10"],
    ["a smooth one after a straight part", "M0 0L5 6s3 3 5 4", "M0 0L5 6C5 6 8 9 10 10"],
    // A quadratic of 0 0, 3 3, 6 0 is a cubic whose control points lie at two thirds.
    ["quadratics", "M0 0Q3 3 6 0", "M0 0C2 2 4 2 6 0"],
    // The mirror image of 3 3 about 6 0 is 9 -3.
    ["quadratics that go on smoothly", "M0 0Q3 3 6 0T12 0", "M0 0C2 2 4 2 6 0 8 -2 10 -2 12 0"],
    ["an arc without a radius", "M0 0A0 5 0 0 1 10 0", "M0 0L10 0"],
  ])("reads %s", (_what, data, expected) => {
    expect(path(data)).toBe(expected);
  });

  it("parts unbroken lines, and goes on from the beginning of a closed one", () => {
    expect(paths("M0 0h5zl0 5M20 20h1")).toEqual(["M0 0L5 0Z", "M0 0L0 5", "M20 20L21 20"]);
  });

  it("takes what stands before a fault, and nothing that does not begin with M", () => {
    expect(paths("M0 0L10 0L20")).toEqual(["M0 0L10 0"]);
    expect(paths("M0 0L10 0 20L30 30")).toEqual(["M0 0L10 0"]);
    expect(paths("M0 0L10 0 NaN 4")).toEqual(["M0 0L10 0"]);
    expect(pathsOf(svg(`<path d="L5 5"/><path d="M1 1h1"/>`))).toEqual(["M1 1L2 1"]);
  });

  it.each([
    // A quarter of a circle about 0 0, 0 100 and so on: by the four pairs of flags.
    ["the short way, with the clock", "M100 0A100 100 0 0 1 0 100", [0, 0], 1],
    ["the short way, against it", "M100 0A100 100 0 0 0 0 100", [100, 100], 1],
    ["the long way, with the clock", "M100 0A100 100 0 1 1 0 100", [100, 100], 3],
    ["the long way, against it", "M100 0A100 100 0 1 0 0 100", [0, 0], 3],
  ] as const)("reads an arc %s", (_what, data, centre, quarters) => {
    const line = path(data);
    expect(offCircle(line, centre, 100)).toBeLessThan(0.001);
    const length = cubicsOf(line).reduce(
      (sum, points) => sum + new Bezier(points.map(([x, y]) => ({ x, y }))).length(),
      0,
    );
    expect(length).toBeCloseTo((quarters * Math.PI * 100) / 2, 1);
    expect(cornersOf(line).at(-1)).toEqual([0, 100]);
  });

  it("reads flags without room between them, and widens an arc that is too small", () => {
    expect(cornersOf(path("M0 0a5 5 0 0110 0")).at(-1)).toEqual([10, 0]);
    // Half a circle of 50 about 50 0, however small it is said to be.
    expect(offCircle(path("M0 0A1 1 0 0 1 100 0"), [50, 0], 50)).toBeLessThan(0.001);
  });

  it("reads an arc of a turned ellipse", () => {
    // Half the ellipse of 200 by 100, turned by 30 degrees: x = 200 cos t, y = 100 sin t before.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const line = path(`M${200 * c} ${200 * s}A200 100 30 0 1 ${-200 * c} ${-200 * s}`);
    const off = cubicsOf(line).flatMap((points) => {
      const curve = new Bezier(points.map(([x, y]) => ({ x, y })));
      return Array.from({ length: 11 }, (_, i) => curve.get(i / 10)).map(({ x, y }) => {
        const [u, v] = [(x * c + y * s) / 200, (y * c - x * s) / 100];
        return Math.abs(Math.hypot(u, v) - 1);
      });
    });
    expect(Math.max(...off)).toBeLessThan(1e-5);
  });
});

describe("plain shapes", () => {
  it.each([
    ["a line", `<line x1="1" y1="2" x2="3" y2="4"/>`, "M1 2L3 4"],
    ["a polyline", `<polyline points="0,0 10,0 10,5"/>`, "M0 0L10 0 10 5"],
    ["a polygon", `<polygon points="0 0 10 0 10 5"/>`, "M0 0L10 0 10 5Z"],
    ["a rectangle", `<rect x="1" y="2" width="10" height="20"/>`, "M1 2L11 2 11 22 1 22Z"],
  ])("reads %s", (_what, shape, expected) => {
    expect(pathsOf(svg(shape))).toEqual([expected]);
  });

  it("reads a circle and an ellipse", () => {
    const [circle = "", ellipse = ""] = pathsOf(svg(`<circle cx="10" cy="20" r="5"/><ellipse rx="4" ry="2"/>`));
    expect(offCircle(circle, [10, 20], 5)).toBeLessThan(0.001);
    expect(circle.endsWith("Z")).toBe(true);
    expect(cornersOf(ellipse).filter(([x, y]) => x === 0 || y === 0)).toEqual([
      [4, 0],
      [0, 2],
      [-4, 0],
      [0, -2],
      [4, 0],
    ]);
  });

  it("reads a rectangle with round corners", () => {
    const [line = ""] = pathsOf(svg(`<rect width="100" height="60" rx="10"/>`));
    const ends = cornersOf(line);
    for (const corner of [
      [10, 0],
      [90, 0],
      [100, 10],
      [100, 50],
      [90, 60],
      [10, 60],
      [0, 50],
      [0, 10],
    ])
      expect(ends).toContainEqual(corner);
    const length = cubicsOf(line).reduce(
      (sum, points) => sum + new Bezier(points.map(([x, y]) => ({ x, y }))).length(),
      0,
    );
    expect(length).toBeCloseTo(2 * (80 + 40) + 2 * Math.PI * 10, 2);
  });

  it("leaves what has no extent", () => {
    expect(pathsOf(svg(`<rect width="0" height="5"/><circle r="0"/><path d="M5 5z"/><path d="M0 0h1"/>`))).toEqual([
      "M0 0L1 0",
    ]);
  });

  it("has one letter for a run of parts of one kind", () => {
    const [line] = pathsOf(
      svg(`<polyline points="${Array.from({ length: 50 }, (_, i) => `${i},${i * i}`).join(" ")}"/>`),
    );
    expect(stepsOf(invariant(line, "a line")).map(({ letter }) => letter)).toEqual(["M", "L"]);
  });
});
