/** The most that can be had, in words: an amount that works just as it is told. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseAmount, type TypedUnit } from "../../src/core/measures/length";
import type { Mm } from "../../src/core/units";
import { formatMost } from "../../src/words/terms/length";
import { alterationFailureSentence } from "../../src/words/planned";
import { planOf, testWork } from "../support/works";

const read = (text: string, unit: TypedUnit): Mm => {
  const mm = parseAmount(text, unit);
  if (!mm.ok) throw new Error(`“${text}”: ${mm.failure.code}`);
  return mm.value;
};

/** Any length, and whole sixteenths of an inch, which entries round to 0.1 mm. */
const anyMost = fc.oneof(
  fc.double({ min: 0, max: 900, noNaN: true }),
  fc.nat(500).map((sixteenths) => (sixteenths * 25.4) / 16),
);

describe("formatMost", () => {
  it.each([
    [91.6, "cm", "91 mm"],
    [91, "cm", "91 mm"],
    [0.9, "cm", "0 mm"],
    [-91.6, "cm", "91 mm"],
    // 1/16 in is 1.5875 mm, so 14 mm are 8.8 sixteenths.
    [14, "in", "½ in"],
    [0, "in", "0 in"],
    [0.01, "in", "0 in"],
  ] as const)("of %d mm in %s is %s", (mm, unit, text) => {
    expect(formatMost(mm, unit)).toBe(text);
  });

  it("reads back as no more than there is, and as little less as the unit allows", () => {
    fc.assert(
      fc.property(anyMost, fc.constantFrom<TypedUnit>("cm", "in"), (most, unit) => {
        const told = read(formatMost(most, unit), unit);
        expect(told).toBeLessThanOrEqual(most);
        // A step, and the 0.1 mm that an entry in inches is rounded by.
        expect(told).toBeGreaterThan(most - (unit === "in" ? 25.4 / 16 + 0.1 : 1));
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a bust reduction that is too large", () => {
  const plannedAt = (bustAlteration: Mm) =>
    planOf({ ...testWork, picks: { bustAlteration } }).ledger.find(({ source }) => source === "bust")?.outcome;

  it.each(["cm", "in"] as const)("in %s tells how much can be taken out, and that can", (unit) => {
    const refused = plannedAt(-200);
    if (refused === undefined || refused.ok) throw new Error("not refused");
    const told = /([\d½¼¾/ ]+ (?:mm|in)) is the most/.exec(alterationFailureSentence(refused.failure, unit))?.[1] ?? "";
    const most = read(told, unit);
    expect(most).toBeGreaterThan(0);
    expect(plannedAt(-most)?.ok).toBe(true);
    expect(plannedAt(-most - (unit === "in" ? 2 * (25.4 / 16) : 2))?.ok).toBe(false);
  });
});
