/** Whoever draws the neckline as the sheet says, on a piece that the sheet led to, comes out at the plan's edge. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { anyChainWork } from "../support/anyChainWork";
import { withNeckline } from "../support/necklines";
import { testWork } from "../support/works";
import { arrivalOf, tooFar, type Arrival } from "./arrival";

const RUNS = 8;
/** ms. A busy machine is slow. */
const PATIENCE = 240_000;

const wrong = ({ notCovered, atFault, ...arrival }: Arrival): readonly string[] => [
  ...notCovered,
  ...atFault,
  ...tooFar({ notCovered, atFault, ...arrival }).map(({ what, by }) => `${what}: ${by.toFixed(2)} off`),
];

describe.each(STYLE_NAMES)("the sheet of a new neckline on %s", { timeout: PATIENCE }, (style) => {
  it("leads to its pieces, on any chain", () => {
    let count = 0;
    fc.assert(
      fc.property(
        anyChainWork(style),
        fc.nat(40),
        fc.constantFrom("cm" as const, "in" as const),
        (work, turn, unit) => {
          const arrival = arrivalOf(withNeckline({ ...work, unit }, turn));
          if (arrival === null) return;
          count += 1;
          expect(wrong(arrival)).toEqual([]);
        },
      ),
      { numRuns: RUNS },
    );
    expect(count).toBeGreaterThan(RUNS / 2);
  });
});

describe("a sheet that says otherwise", () => {
  const work: Work = {
    ...testWork,
    dress: { neckline: { shape: "square", deeper: 60, wider: 20, backDeeper: 40, pinched: true } },
  };
  const said = (from: RegExp, to: string): readonly string[] => {
    let isThere = false;
    const arrival = arrivalOf(work, (text) => text.replace(from, () => ((isThere = true), to)));
    expect(isThere).toBe(true);
    if (arrival === null) throw new Error("no plan");
    return wrong(arrival);
  };

  it("leads elsewhere", () => {
    expect(said(/Centre front at the neck: 60 mm down/, "Centre front at the neck: 63 mm down")).not.toEqual([]);
    expect(said(/Neck end of the shoulder: 19 mm outwards/, "Neck end of the shoulder: 15 mm outwards")).not.toEqual(
      [],
    );
    expect(said(/77 mm outwards and 60 mm down/, "60 mm outwards and 60 mm down")).not.toEqual([]);
    expect(said(/each point\s+from where it lies now/, "each point")).not.toEqual([]);
    expect(said(/Draw the new neckline/, "Leave the new neckline")).not.toEqual([]);
  });
});
