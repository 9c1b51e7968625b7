/** A bust that asks for more than can sensibly be let in: the most is made, and the rest is said. */
import { describe, expect, it } from "vitest";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import type { Work } from "../../../src/core/decisions/work";
import { demoWorks } from "../../../src/document/demo";
import { planDoubts } from "../../../src/words/doubts";
import { planOf } from "../../support/works";

const WIDEST = 70;

const demo = (style: string): Work => {
  const work = demoWorks().find(({ pattern }) => pattern.style === style);
  if (work === undefined) throw new Error(style);
  const { bustPointWidth: _width, sideNeckToBustPoint: _depth, ...readings } = measuresOf(work.tapes);
  return { ...work, tapes: tapesOf(readings), alterations: [], picks: {} };
};

const withBust = (work: Work, bustGirth: number, upperChestGirth: number): Work => ({
  ...work,
  tapes: tapesOf({ ...measuresOf(work.tapes), bustGirth, upperChestGirth }),
});

/** The angle at a dart's end by the cosine rule, from its legs and its mouth. */
const widest = (work: Work): number =>
  Math.max(
    ...planOf(work)
      .left.darts.filter(({ drawn }) => drawn.end !== null)
      .map(({ drawn: { legInner: a, legOuter: b, intake: c } }) => Math.acos((a * a + b * b - c * c) / (2 * a * b))),
  ) *
  (180 / Math.PI);

describe("a full bust adjustment", () => {
  const plain = demo("sideDart");

  it("stops where a dart would be wider than can be sewn as one, and says what is missing", () => {
    const work = withBust(plain, 1139, 880);
    const plan = planOf(work);
    const { asked, alteration } = plan.sizing.bust;
    expect(asked).toBeGreaterThan(100);
    expect(alteration).toBeLessThan(asked);
    expect(alteration).toBeGreaterThan(100);
    expect(widest(work)).toBeLessThanOrEqual(WIDEST + 0.1);
    expect(widest(work)).toBeGreaterThan(WIDEST - 2);
    // By whole millimetres, and with one more let in by hand it is too wide.
    expect(Number.isInteger(alteration)).toBe(true);
    const { baseSize, cup } = plan.sizing;
    const more = { baseSize: baseSize.label, cup: cup.label ?? "", bustAlteration: alteration + 1.5 };
    expect(widest({ ...work, picks: more })).toBeGreaterThan(WIDEST);
    expect(planDoubts(plan, "cm").notes.join(" ")).toContain(
      `mm tighter at the bust than asked. Look at a larger frame or another pattern.`,
    );
    expect(plan.checks.filter(({ name, ok }) => name === "girthAsClaimed" && !ok)).toEqual([]);
  });

  it("is made whole where its darts can be sewn, and where she set it herself", () => {
    const fuller = planOf(withBust(plain, 960, 860)).sizing.bust;
    expect(fuller.alteration).toBe(fuller.asked);
    const own = planOf({ ...withBust(plain, 1139, 880), picks: { bustAlteration: 200 } });
    expect(own.sizing.bust.alteration).toBe(own.sizing.bust.asked);
  });

  it("is not held back by an under-bust dart, which can be gathered instead", () => {
    const { asked, alteration } = planOf(withBust(demo("midriff"), 1040, 880)).sizing.bust;
    expect(asked).toBeGreaterThan(40);
    expect(alteration).toBe(asked);
  });

  it("gives a larger bust no smaller garment", () => {
    const finished = [1000, 1030, 1060, 1090, 1120, 1150].map(
      (bust) => planOf(withBust(plain, bust, 880)).levels.find(({ level }) => level === "bust")?.finished ?? NaN,
    );
    for (const [at, one] of finished.entries()) expect(one).toBeGreaterThanOrEqual((finished[at - 1] ?? 0) - 1);
  });
});
