/** Any dress on any body, held against rules written apart from the core (`npm run dresses` holds thousands). */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyDressedWork } from "../../support/anyDressedWork";
import { faultsOfDress } from "../../support/faultsOfDress";

/** Works whose bodice is itself at fault are passed over: no more than so many of a hundred. */
const MOST_PASSED_OVER = 10;
const RUNS = 60;

describe("any dress on any body", () => {
  it("keeps the rules", () => {
    const works = fc.sample(anyDressedWork(1), { seed: 11, numRuns: RUNS });
    const faults = works.map(faultsOfDress);
    expect(faults.flatMap((found, at) => (found ?? []).map((fault) => `${at} ${fault}`))).toEqual([]);
    expect((100 * faults.filter((found) => found === null).length) / RUNS).toBeLessThan(MOST_PASSED_OVER);
  });
});
