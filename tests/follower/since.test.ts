/** The paper of one version, changed as is printed, is that of the other: to within a ruler and what the sheet rounds off. */
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Alteration } from "../../src/core/decisions/alteration";
import type { Decided } from "../../src/core/decisions/decided";
import type { Work } from "../../src/core/decisions/work";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChainWork } from "../support/anyChainWork";
import { ref, testWork } from "../support/works";
import { tooFar } from "./arrival";
import { wayFrom, type Way } from "./since";

const RUNS = 8;
const PATIENCE = 240_000;

const wrong = ({ arrival }: Way): readonly string[] => [
  ...arrival.notCovered,
  ...arrival.atFault,
  ...tooFar(arrival).map(({ what, by, allowed }) => `${what}: ${by.toFixed(2)} off, ${allowed.toFixed(2)} allowed`),
];

const way = (from: Decided, to: Decided, change?: (text: string) => string): Way => {
  const made = wayFrom(from, to, "cm", change);
  if (made === null) throw new Error("no plan");
  return made;
};

const fit = (name: "swayBack" | "waistDropFront" | "chestWidth" | "shoulderSlope", amount: number): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
});
const withAll = (...alterations: readonly Alteration[]): Work => ({ ...testWork, alterations });

describe("from a trial to what is wanted next", { timeout: PATIENCE }, () => {
  it("a sway back of 8 mm more is told as 8 mm, and only the back changes", () => {
    const made = way(withAll(fit("swayBack", 10)), withAll(fit("swayBack", 18)));
    expect(wrong(made)).toEqual([]);
    expect(made.said.pieces.map(({ piece }) => piece)).toContain("back");
    expect(made.said.pieces.map(({ piece }) => piece)).not.toContain("front");
    const lines = made.said.pieces.find(({ piece }) => piece === "back")?.lines ?? [];
    expect(lines.map(({ text }) => text).join(" ")).toContain("Take 8 mm out across the back waist");
    expect(lines.map(({ text }) => text).join(" ")).toContain("10 mm so far, 18 mm now");
  });

  it("what was undone is put back", () => {
    const made = way(withAll(fit("swayBack", 10)), withAll());
    expect(wrong(made)).toEqual([]);
    expect(made.said.pieces.flatMap(({ lines }) => lines.map(({ text }) => text)).join(" ")).toContain("put back");
  });

  it("a dart's end moved is drawn anew from where it was", () => {
    const end = (shorten: number): Alteration => ({
      kind: "dartEnd",
      id: "end",
      dart: ref("front", "sideDart"),
      shorten,
      across: 0,
      hold: "mouth",
      giveBack: {},
    });
    const made = way(withAll(end(10)), withAll(end(22)));
    expect(wrong(made)).toEqual([]);
    const [front] = made.said.pieces;
    expect(front?.piece).toBe("front");
    expect(front?.lines.flatMap(({ moves }) => moves).join(" ")).toMatch(
      /Its end, from where it was: .*12 mm outwards/,
    );
  });

  it("a piece with other darts is made anew from the tissue, and so is one whose darts are put back", () => {
    const pivot: Alteration = {
      kind: "dartPivot",
      id: "pivot",
      dart: ref("front", "sideDart"),
      to: "shoulder",
      share: 1,
    };
    for (const [from, to] of [
      [withAll(), withAll(pivot)],
      [withAll(pivot), withAll()],
    ] as const) {
      const made = way(from, to);
      expect(wrong(made)).toEqual([]);
      const front = made.said.pieces.find(({ piece }) => piece === "front");
      expect(front?.anew).toContain("other darts");
      expect(front?.lines[0]?.text).toMatch(/^Trace the \S+ line of the front/);
    }
  });

  it("a change of one half alone leaves the other as it is", () => {
    const tip: Alteration = { kind: "fit", id: "tip", fit: "shoulderSlope", amount: 6, half: "right" };
    const made = way(withAll(), withAll(tip));
    expect(wrong(made)).toEqual([]);
    const front = made.said.pieces.find(({ piece }) => piece === "front");
    expect(front?.lines.every(({ text }) => text.startsWith("On the right half: "))).toBe(true);
    expect(made.said.stays).toContain("he front of the left half");
  });

  it("the very same says nothing", () => {
    const made = way(withAll(fit("swayBack", 10)), withAll(fit("swayBack", 10)));
    expect(made.said.pieces).toEqual([]);
    expect(made.said.together).toBeNull();
  });

  it("leads nowhere near once a printed amount is another one", () => {
    const [from, to] = [withAll(fit("waistDropFront", 5)), withAll(fit("waistDropFront", 15))];
    expect(wrong(way(from, to))).toEqual([]);
    expect(wrong(way(from, to, (text) => text.replaceAll("10 mm down", "14 mm down")))).not.toEqual([]);
  });
});

describe.each(STYLE_NAMES)("between any two chains on the style %s", { timeout: PATIENCE }, (style) => {
  it("the changes lead from the pieces of one to those of the other", () => {
    let count = 0;
    fc.assert(
      fc.property(
        anyChainWork(style),
        anyChainWork(style),
        fc.constantFrom("cm" as const, "in" as const),
        fc.boolean(),
        (one, other, unit, isSameBody) => {
          // Mostly the next toile is of the same body: a few alterations more or less.
          const from = isSameBody ? { ...one, tapes: other.tapes, pattern: other.pattern } : one;
          const made = wayFrom(from, other, unit);
          if (made === null) return;
          expect(wrong(made)).toEqual([]);
          count += 1;
        },
      ),
      { numRuns: RUNS },
    );
    expect(count).toBeGreaterThan(RUNS / 2);
  });
});
