/**
 * The paper leads to the pieces: whoever has the tissue and the printed text, and does what it says, comes out at the plan's
 * corners to within a ruler and what the sheet rounds off, and at seams that walk.
 */
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Alteration } from "../../src/core/decisions/alteration";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import type { Work } from "../../src/core/decisions/work";
import { demoWorks } from "../../src/document/demo";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { fitOf } from "../../src/core/alterations/fit/index";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checklistText } from "../../src/cli/text";
import { anyChainWork } from "../support/anyChainWork";
import { foreignNest } from "../support/foreign/foreignNest";
import type { ForeignFront } from "../support/foreign/foreignTypes";
import { anyForeignWork, bodyOfSize, planOfForeign, workOn } from "../support/foreign/foreignWork";
import { unevenCup, unevenDarts } from "../support/unevenDarts";
import { ref, testWork } from "../support/works";
import { arrivalOf, tooFar, type Arrival } from "./arrival";
import { arrivalOnForeign, FOREIGN_FRONTS } from "./foreign";
import { FOLLOWED, NOT_FOLLOWED, type Followable } from "./coverage";

/** Plans of each style. */
const RUNS = 12;
/** ms. A busy machine is slow. */
const PATIENCE = 240_000;

const wrong = (arrival: Arrival): readonly string[] => [
  ...arrival.notCovered,
  ...arrival.atFault,
  ...tooFar(arrival).map(({ what, by, allowed }) => `${what}: ${by.toFixed(2)} off, ${allowed.toFixed(2)} allowed`),
];

const followed = (work: Work, change?: (text: string) => string): Arrival => {
  const arrival = arrivalOf(work, change);
  if (arrival === null) throw new Error(`${work.name}: no plan`);
  return arrival;
};

describe("the sheets of the demos", { timeout: PATIENCE }, () => {
  const cases = demoWorks().flatMap((work) => (["cm", "in"] as const).map((unit) => ({ ...work, unit })));
  it.each(cases)("of $name in $unit lead to their pieces", (work) => {
    const arrival = followed(work);
    expect(wrong(arrival)).toEqual([]);
    expect(arrival.corners.length).toBeGreaterThan(20);
    expect(arrival.seams.length).toBeGreaterThan(1);
  });

  it("lead nowhere near once a printed amount is another one", () => {
    const [hip] = demoWorks();
    if (hip === undefined) throw new Error("no demo");
    const plain = followed(hip);
    const change = (from: RegExp, to: string): readonly string[] => {
      const changed = followed(hip, (text) => text.replace(from, to));
      expect(changed).not.toEqual(plain);
      return wrong(changed);
    };
    expect(change(/side seam 3 mm outside/, "side seam 6 mm outside")).not.toEqual([]);
    expect(change(/3 mm outside the waist end of the 14 line/, "3 mm inside the waist end of the 14 line")).not.toEqual(
      [],
    );
    expect(change(/Trace the 12 line of the back,/, "Trace the 14 line of the back,")).not.toEqual([]);
  });
});

describe.each(STYLE_NAMES)("the sheet of any chain on the style %s", { timeout: PATIENCE }, (style) => {
  it("leads to its pieces", () => {
    let count = 0;
    fc.assert(
      fc.property(anyChainWork(style), fc.constantFrom("cm" as const, "in" as const), (work, unit) => {
        const arrival = arrivalOf({ ...work, unit });
        if (arrival === null) return;
        expect(wrong(arrival)).toEqual([]);
        count += 1;
      }),
      { numRuns: RUNS },
    );
    expect(count).toBeGreaterThan(RUNS / 2);
  });
});

describe.each(STYLE_NAMES)(
  "the sheet of a chain whose darts and cup versions differ on both halves, style %s",
  { timeout: PATIENCE },
  (style) => {
    it("leads to the pieces of either half", () => {
      let count = 0;
      fc.assert(
        fc.property(anyChainWork(style), fc.nat(5), (work, turn) => {
          const arrival = arrivalOf(unevenCup(unevenDarts(work, turn), turn));
          if (arrival === null) return;
          expect(wrong(arrival)).toEqual([]);
          count += 1;
        }),
        { numRuns: RUNS / 2 },
      );
      expect(count).toBeGreaterThan(RUNS / 4);
    });
  },
);

describe.each(FOREIGN_FRONTS)(
  "the sheet of any chain on pieces of another house, front %s",
  { timeout: PATIENCE },
  (front) => {
    it("leads to its pieces", () => {
      let count = 0;
      fc.assert(
        fc.property(anyForeignWork({ front }, 3), fc.constantFrom("cm" as const, "in" as const), (made, unit) => {
          const arrival = arrivalOnForeign(made, unit);
          if (arrival === null) return;
          expect(wrong(arrival)).toEqual([]);
          count += 1;
        }),
        { numRuns: RUNS / 3 },
      );
      expect(count).toBeGreaterThan(0);
    });
  },
);

describe("a front spread at darts of another house", { timeout: PATIENCE }, () => {
  const fullerOn = (front: ForeignFront): string => {
    const foreign = foreignNest({ seed: 21, front, basque: false, other: true });
    const { work } = workOn(foreign, bodyOfSize(foreign, 2, { bust: 0, out: 0, waist: 0, hip: 0 }));
    const plan = planOfForeign({ foreign, work: { ...work, picks: { bustAlteration: 24 } } });
    if (!plan.ok) throw new Error(plan.failure.code);
    return checklistText({ ...work, picks: { bustAlteration: 24 } }, plan.value).replaceAll(/\s+/g, " ");
  };

  it("is cut through the darts that it has", () => {
    expect(fullerOn("side")).toMatch(/middle of the waist dart up .* through the middle of the side dart/);
    const french = fullerOn("french");
    expect(french).toMatch(/middle of the waist dart up .* through the middle of the French dart/);
    expect(french).toContain("The French dart opens by itself.");
    expect(french).not.toContain("side dart");
    // A mouth in the side seam has one end above the other.
    expect(french).toMatch(/French dart, all the above included.* Its mouth, from where it is printed: upper end/);
    expect(french).toContain("Fold the French dart closed, its bulk down");
  });

  it("is told where a dart is opened that was not there", () => {
    expect(fullerOn("waist")).toMatch(
      /middle of the waist dart up .* Draw another from the side seam, 35 mm below the side at the bust line, measured straight, to the bust point/,
    );
    const none = fullerOn("none");
    expect(none).toMatch(
      /Draw a line from the waist seam, straight below the bust point, up to the bust point .* another from the side seam, 35 mm below/,
    );
    expect(none).not.toContain("middle of the waist dart");
  });

  it("comes with the collar called by its name, as traced", () => {
    const text = fullerOn("side");
    expect(text).toContain("of the collar, with notches and grain.");
    expect(text).not.toMatch(/other piece|the corner/);
  });
});

/** A work for each thing that can be followed, in a style that has it. */
function workWith(name: Followable): Work {
  const dart = ref("front", "waistDart");
  const back = ref("back", "waistDart");
  const side = ref("front", "sideDart");
  const own: Readonly<Partial<Record<Followable, readonly Alteration[]>>> = {
    dartEnd: [{ kind: "dartEnd", id: "a", dart, shorten: 15, across: 4, hold: "fullness", giveBack: {} }],
    dartMouth: [{ kind: "dartMouth", id: "a", dart: back, inner: -3, outer: 2, giveBack: {} }],
    dartPlace: [{ kind: "dartPlace", id: "a", dart, by: 8, how: "redraw", giveBack: {} }],
    dartPivot: [{ kind: "dartPivot", id: "a", dart: side, to: "armhole", share: 1 }],
    dartSplit: [{ kind: "dartSplit", id: "a", dart: back, into: 2 }],
    dartGather: [{ kind: "dartGather", id: "a", dart }],
    dartLegs: [{ kind: "dartLegs", id: "a", dart: back, bow: 4 }],
    dartSeam: [
      { kind: "dartPivot", id: "to", dart: side, to: "shoulder", share: 1 },
      { kind: "dartSeam", id: "a", dart: ref("front", "shoulderDart") },
    ],
  };
  const base: Work = { ...testWork, pattern: { ...testWork.pattern, style: "sideDart", length: "hip" } };
  if (name === "bust") return { ...base, picks: { ...base.picks, bustAlteration: 24 } };
  const fit = FIT_NAMES.find((one) => one === name);
  if (fit === undefined) return { ...base, alterations: own[name] ?? [] };
  const { most } = fitOf(fit).range;
  const alterations: readonly Alteration[] = [{ kind: "fit", id: "a", fit, amount: Math.min(most / 3, 12) }];
  const worksOf = STYLE_NAMES.map((style): Work => ({ ...base, pattern: { ...base.pattern, style }, alterations }));
  return worksOf.find(isMade) ?? { ...base, alterations };
}

const isMade = (work: Work): boolean => {
  const plan = derivePlan(work);
  return plan.ok && plan.value.ledger.every(({ outcome }) => outcome.ok);
};

describe("what is followed", { timeout: PATIENCE }, () => {
  it.each(FOLLOWED)("%s leads to its pieces", (name) => {
    const work = workWith(name);
    expect(isMade(work)).toBe(true);
    expect(wrong(followed(work))).toEqual([]);
  });

  it.each(NOT_FOLLOWED)("%s is said not to be", (name) => {
    const work = workWith(name);
    expect(isMade(work)).toBe(true);
    expect(followed(work).notCovered).not.toEqual([]);
  });
});
