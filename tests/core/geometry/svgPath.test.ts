import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicEdge, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { chainPath, outlinePath } from "../../../src/core/geometry/svgPath";
import { anyCubic, anyPoint, cubicOf, RUNS } from "../../support/curves";

const at = piecePoint;

describe("outlinePath", () => {
  it("writes a move, lines, curves and a close", () => {
    const edges = [
      lineEdge(at(0, 0), at(100, 0)),
      cubicEdge(cubicOf([100, 0], [100, 55.5], [55.25, 100], [0, 100])),
      lineEdge(at(0, 100), at(0, 0)),
    ];
    expect(outlinePath(edges)).toBe("M0 0L100 0C100 55.5 55.25 100 0 100L0 0Z");
    expect(chainPath(edges)).toBe("M0 0L100 0C100 55.5 55.25 100 0 100L0 0");
  });

  it.each([
    [1.234, "1.23"],
    [1.236, "1.24"],
    [-1.236, "-1.24"],
    [-0.001, "0"],
    [1e-7, "0"],
    [0.1 + 0.2, "0.3"],
    [123_456.789, "123456.79"],
    [1e9, "1000000000"],
    [0.07, "0.07"],
    [-0.01, "-0.01"],
  ])("rounds %d to %s", (x, text) => {
    expect(chainPath([lineEdge(at(x, 0), at(0, x))])).toBe(`M${text} 0L0 ${text}`);
  });

  it("writes numbers of at most two decimals, within 0.005 mm, and no exponents", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, (c, p) => {
        const path = outlinePath([cubicEdge(c), lineEdge(c.b, p), lineEdge(p, c.a)]);
        expect(path).toMatch(/^M(-?\d+(\.\d{1,2})?[ LCZ]?)+/);
        expect(path).not.toMatch(/e|NaN|-0(?![.\d])/);
        const numbers = [...path.matchAll(/-?[\d.]+/g)].map(([text]) => Number(text));
        const expected = [c.a, c.c1, c.c2, c.b, p, c.a].flatMap(({ x, y }) => [x, y]);
        expect(numbers.length).toBe(expected.length);
        const off = numbers.map((value, i) => Math.abs(value - (expected[i] ?? Number.NaN)));
        expect(Math.max(...off)).toBeLessThanOrEqual(0.005 + 1e-9);
      }),
      RUNS,
    );
  });

  it("writes nothing for nothing", () => {
    expect(outlinePath([])).toBe("");
    expect(chainPath([])).toBe("");
  });
});
