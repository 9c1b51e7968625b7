import { alike } from "../support/halves";
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan, PlanHalf } from "../../src/core/plan/plan";
import { judgeDartEnd } from "../../src/core/dart/dartEndReading";
import { radians } from "../../src/core/units";
import { planDoubts } from "../../src/words/doubts";
import { sampleWork } from "../support/sampleWork";

const derived = derivePlan(sampleWork);
if (!derived.ok) throw new Error(derived.failure.code);
const plan: Plan = derived.value;

const bustOut = (by: number): Plan => ({
  ...plan,
  levels: plan.levels.map((level) => (level.level === "bust" ? { ...level, finished: level.target + by } : level)),
});
const sideDart = (drawn: { angle?: number; stop?: number }): Plan =>
  alike(plan, {
    darts: plan.left.darts.map((dart) =>
      dart.ref.dart === "sideDart"
        ? {
            ...dart,
            endJudged: judgeDartEnd({ along: drawn.stop ?? 30, across: 0 }, { least: 20, most: 40 }),
            drawn: {
              ...dart.drawn,
              angle: radians(drawn.angle ?? 0.4),
              end: { along: drawn.stop ?? 30, across: 0 },
            },
          }
        : dart,
    ),
  });
const notes = (of: Plan): string => planDoubts(of, "cm").notes.join(" ");

describe("what to look at before cutting", () => {
  it("says how far the bust comes out from what was asked, past what is left alone", () => {
    expect(notes(bustOut(60))).toContain("60 mm more than you asked");
    expect(notes(bustOut(-30))).toContain("30 mm less than you asked");
    expect(notes(bustOut(20))).toContain("20 mm more than you asked");
    expect(notes(bustOut(12))).not.toContain("than you asked");
  });

  it("says what of a bust adjustment could not be made, once", () => {
    const out = bustOut(-16);
    const bust = { ...out.sizing.bust, residual: 30, asked: 30, alteration: 14, leftAlone: false };
    const said = notes({ ...out, sizing: { ...out.sizing, bust } });
    expect(said).toContain("14 mm of 30 mm let in; the garment stays 16 mm tighter at the bust than asked.");
    expect(said).not.toContain("than you asked");
  });

  it("says when a dart is too deep to be sewn as one", () => {
    expect(notes(sideDart({ angle: 0.98 }))).toContain("56.1° wide");
    expect(notes(sideDart({ angle: 0.7 }))).not.toContain("deep for a single dart");
  });

  it("says when a dart stops out of the usual, and nothing within it", () => {
    expect(notes(sideDart({ stop: 47 }))).toContain("side dart ends 47 mm short");
    expect(notes(sideDart({ stop: 40 }))).not.toContain("side dart ends");
  });

  it("says of which half it is, where only one is so, and once what both are", () => {
    const [near, far, further] = [30, 47, 52].map((stop) => sideDart({ stop }).left);
    if (near === undefined || far === undefined || further === undefined) throw new Error("a half");
    const of = (left: PlanHalf, right: PlanHalf) =>
      planDoubts({ ...plan, left, right }, "cm").notes.filter((note) => note.includes("side dart ends"));
    expect(of(near, near)).toEqual([]);
    expect(of(far, far)).toEqual([expect.stringMatching(/^The front side dart ends 47 mm short/)]);
    expect(of(near, far)).toEqual([expect.stringMatching(/^On the right half: the front side dart ends 47 mm short/)]);
    expect(of(far, further)).toEqual([
      expect.stringMatching(/^On the left half: the front side dart ends 47 mm short/),
      expect.stringMatching(/^On the right half: the front side dart ends 52 mm short/),
    ]);
  });

  it("does not speak of a line past the printed ones where it is told as the last line itself", () => {
    const at = (size: number, share: number): Plan => ({
      ...plan,
      levels: plan.levels.map((level) =>
        level.level === "waist" ? { ...level, size, share, extrapolated: true } : level,
      ),
    });
    expect(notes(at(9.004, 1.004))).not.toContain("waist line lies past");
    expect(notes(at(9.3, 1.3))).toContain("waist line lies past");
  });
});
