/** What an alteration crowds out: a shoulder raised so far that the armhole cannot be lowered as well. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { leftOutBy } from "../../../src/core/plan/leftOutBy";
import { testWork, withAlterations } from "../../support/works";

const shoulder = (half?: Half): Alteration => ({
  kind: "fit",
  id: "shoulder",
  fit: "shoulderSlope",
  amount: -10,
  ...(half === undefined ? {} : { half }),
});
const armhole: Alteration = { kind: "fit", id: "armhole", fit: "armholeDepth", amount: 15 };
const tooMuch: Alteration = { kind: "fit", id: "tooMuch", fit: "swayBack", amount: 900 };
const small: Alteration = { kind: "fit", id: "small", fit: "chestWidth", amount: 4 };
const ids = (work: Work, id: string) => leftOutBy(work, id).map((planned) => planned.id);

describe("what is left out for an alteration's sake", () => {
  it("is what could be made without it, and not what cannot be made anyway", () => {
    const work = withAlterations(tooMuch, shoulder(), armhole, small);
    expect(ids(work, "shoulder")).toEqual(["armhole"]);
    expect(ids(work, "small")).toEqual([]);
    expect(ids(work, "armhole")).toEqual([]);
    expect(ids(work, "none")).toEqual([]);
  });

  it("is for the sake of one on one half too, what is for both being left out on both", () => {
    for (const half of ["left", "right"] as const)
      expect(ids(withAlterations(shoulder(half), armhole), "shoulder")).toEqual(["armhole"]);
  });

  it("is nothing where all is made, or where there is no plan", () => {
    expect(ids(withAlterations(armhole, small), "small")).toEqual([]);
    expect(ids({ ...withAlterations(shoulder(), armhole), tapes: [{ readings: {} }] }, "shoulder")).toEqual([]);
    expect(ids(testWork, "shoulder")).toEqual([]);
  });
});
