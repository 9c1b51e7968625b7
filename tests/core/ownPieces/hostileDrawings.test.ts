/** Drawings that a work file may hold and no pattern has: read to an end, with a name for what stands in the way. */
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { readingOf } from "../../../src/core/nest/piecesOfPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { LIMITS } from "../../../src/core/decisions/limits";
import { sampleWork } from "../../support/sampleWork";
import { diceOf } from "../../support/foreign/dice";

const { chart } = sampleWork.pattern;
const [first, second, third] = chart.sizes.map(({ label }) => label);

const many = (count: number, one: (at: number) => string): string[] =>
  Array.from({ length: count }, (_, at) => one(at));
const rounded = (value: number): string => value.toFixed(2);

/** A closed line round a place, as far from it at each of its points as asked. */
const ring = (count: number, radius: (at: number) => number): string =>
  `M${many(count, (at) => {
    const way = (at / count) * 2 * Math.PI;
    return `${rounded(400 + radius(at) * Math.cos(way))} ${rounded(400 + radius(at) * Math.sin(way))}`;
  }).join("L")}Z`;

function patternOf(bySize: readonly (readonly string[])[]): Pattern {
  const lines = bySize.map((paths, at) => ({
    look: { layer: [first, second, third][at] ?? "", group: "", colour: "#000000", dash: "", width: 1 },
    paths,
  }));
  const drawing = {
    format: "svg" as const,
    unit: { mm: 1, saidBy: "size" as const },
    lines,
    points: [],
    writings: [],
    hiddenLayers: [],
  };
  return { ...sampleWork.pattern, own: { file: "hostile", drawing, pieces: [], inUse: true } };
}

const dice = diceOf(5);
const place = (): string => `${rounded(dice.from(0, 1000))} ${rounded(dice.from(0, 1000))}`;

const cases: readonly (readonly [string, () => readonly (readonly string[])[]])[] = [
  ["one line that turns two hundred thousand times", () => [[`M0 0${many(200_000, () => `L${place()}`).join("")}Z`]]],
  ["rings that tremble", () => [300, 320].map((r) => [ring(60_000, () => r + dice.from(0, 20))])],
  ["rings with teeth", () => [300, 320].map((r) => [ring(8000, (at) => r + (at % 2) * 30)])],
  [
    "tangles side by side",
    () => [0, 1].map(() => many(30, () => `M${place()}${many(1600, () => `L${place()}`).join("")}Z`)),
  ],
];

describe("a drawing that is no pattern", { timeout: 120_000 }, () => {
  it.each(cases)("has no groups, and more than was looked at: %s", (_, drawn) => {
    const pattern = patternOf(drawn());
    const reading = readingOf(pattern);
    expect(reading?.outlines.groups).toEqual([]);
    expect(reading?.missing).toEqual([{ code: "missing/too-much" }]);
    expect(derivePlan({ ...sampleWork, pattern })).toMatchObject({
      ok: false,
      failure: { code: "plan/pieces-unready" },
    });
  });

  it("of thousands of outlines has the largest as groups", () => {
    const boxes = (grown: number): string[] =>
      many(2000, (at) => {
        const [x, y, side] = [(at % 50) * 40, Math.floor(at / 50) * 40, 10 + at / 100 + grown];
        return `M${x} ${y}L${x + side} ${y}L${x + side} ${y + side / 2}L${x} ${y + side / 2}Z`;
      });
    const reading = readingOf(patternOf([boxes(0), boxes(0.5), boxes(1)]));
    expect(reading?.outlines.groups.length).toBe(LIMITS.filePieces);
    expect(reading?.outlines.isCut).toBe(true);
    expect(reading?.missing.map(({ code }) => code)).toContain("missing/too-much");
  });

  it("is looked at so long and no longer to propose names", () => {
    // Sixty outlines that each turn a thousand times may each be any piece of the style.
    const tangles = (grown: number): string[] =>
      many(LIMITS.filePieces, (at) =>
        ring(1000, (step) => 100 + grown + (step % 2) * 30).replaceAll(
          /([\d.]+) ([\d.]+)/g,
          (__, x: string, y: string) => `${rounded(Number(x) + at * 700)} ${y}`,
        ),
      );
    const reading = readingOf(patternOf([tangles(0), tangles(1)]));
    expect(reading?.outlines.isCut).toBeUndefined();
    expect(reading?.missing.map(({ code }) => code)).toContain("missing/too-much");
  });

  it("may be a line of as many points as a work file holds", () => {
    const reading = readingOf(patternOf([300, 320].map((r) => [ring(90_000, () => r)])));
    // A circle: thinned, it is a line like any other, and no piece of a bodice.
    expect(reading?.outlines.isCut).toBeUndefined();
    expect(reading?.outlines.groups.length).toBe(1);
    expect(reading?.nest).toBeNull();
    const [one] = reading?.outlines.outlines ?? [];
    expect(one?.edges.length).toBeLessThan(1500);
    // Each stretch leaves the circle by no more than thinning may, and what the file's own rounding leaves.
    for (const { a } of one?.edges ?? []) expect(Math.abs(Math.hypot(a.x - 400, a.y - 400) - 300)).toBeLessThan(0.01);
    for (const { a, b } of one?.edges ?? [])
      expect(300 - Math.hypot((a.x + b.x) / 2 - 400, (a.y + b.y) / 2 - 400)).toBeLessThan(0.02 + 0.01);
  });
});
