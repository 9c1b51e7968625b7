/** What a change makes fail, and no more than that. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { leftOutBy } from "../../../src/core/plan/leftOutBy";
import { newlyFailing } from "../../../src/core/plan/newlyFailing";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});

describe("what a change makes fail", () => {
  const past: Alteration = {
    kind: "dartEnd",
    id: "past",
    dart: ref("front", "waistDart"),
    shorten: -40,
    across: 0,
    hold: "mouth",
    giveBack: {},
  };

  it("is what held before, named once, and nothing that failed already", () => {
    const after = withAlterations(past);
    const failing = planOf(after).checks.filter(({ ok }) => !ok);
    expect(failing.length).toBeGreaterThan(0);
    expect(newlyFailing(testWork, after)).toEqual(failing);
    expect(newlyFailing(after, after)).toEqual([]);
    expect(newlyFailing(after, testWork)).toEqual([]);
    // What is further out than it was fails no more than it did.
    const worse = withAlterations({ ...past, shorten: -42 });
    const placesOf = (work: Work) => planOf(work).checks.flatMap(({ ok, ...one }) => (ok ? [] : [one.name]));
    expect(placesOf(worse)).toEqual(placesOf(after));
    expect(newlyFailing(after, worse)).toEqual([]);
    const broken: Work = { ...testWork, tapes: [{ readings: {} }] };
    expect(newlyFailing(broken, after)).toEqual([]);
    expect(newlyFailing(testWork, broken)).toEqual([]);
  });

  it("is one fault more where one more alteration is left out, though some were before", () => {
    const one = withAlterations(fit("shoulderSlope", 400));
    const two = withAlterations(fit("shoulderSlope", 400), fit("swayBack", 900));
    const faults = (work: Work) => planOf(work).checks.filter(({ ok, unit }) => !ok && unit === "faults");
    expect(faults(one).map(({ measured }) => measured)).toEqual([1]);
    expect(
      newlyFailing(one, two)
        .filter(({ unit }) => unit === "faults")
        .map(({ measured }) => measured),
    ).toEqual([2]);
    expect(newlyFailing(two, one).filter(({ unit }) => unit === "faults")).toEqual([]);
    // On the same piece, too.
    const both = withAlterations(fit("shoulderSlope", 400), fit("chestWidth", 4000));
    const more = newlyFailing(one, both).filter(({ unit }) => unit === "faults");
    expect(more.map(({ measured, pieces }) => [measured, pieces])).toEqual([[2, ["front"]]]);
    expect(newlyFailing(both, one).filter(({ unit }) => unit === "faults")).toEqual([]);
    // Another one in its place, on another piece, is newly left out, as many as there are.
    const other = withAlterations(fit("swayBack", 900));
    expect(newlyFailing(one, other).map(({ pieces }) => pieces)).toContainEqual(["back"]);
    expect(leftOutBy(two, "shoulderSlope")).toEqual([]);
    expect(leftOutBy(testWork, "none")).toEqual([]);
  });

  it("is another one where as many are left out as before, of which one is made on a piece that had none", () => {
    const gather = (piece: "front" | "back", dart: "neckDart" | "centreDart"): Alteration => ({
      kind: "dartGather",
      id: `${piece} ${dart}`,
      dart: ref(piece, dart),
    });
    const before = withAlterations(gather("front", "neckDart"), gather("front", "centreDart"));
    const after = withAlterations(gather("front", "neckDart"), gather("back", "neckDart"));
    const faults = newlyFailing(before, after).filter(({ unit }) => unit === "faults");
    expect(faults.map(({ measured, pieces }) => [measured, pieces])).toEqual([[2, ["front", "back"]]]);
    expect(newlyFailing(after, before)).toEqual([]);
  });
});
