/** What the alterations of the ledger say. */
import { describe, expect, it } from "vitest";
import type { PlannedAlteration } from "../../src/core/plan/plan";
import {
  plannedAmount,
  ledgerGroup,
  alterationNoteSentence,
  plannedTitle,
  alterationWhy,
} from "../../src/words/ledger";
import { planOf, ref, testWork, withAlterations } from "../support/works";

const first = (alterations: readonly PlannedAlteration[], source: PlannedAlteration["source"]): PlannedAlteration => {
  const found = alterations.find((planned) => planned.source === source);
  if (found === undefined) throw new Error(`no slip from ${source}`);
  return found;
};

describe("a slip", () => {
  it("of the blend tells the lines it runs between and how far outside the lower one", () => {
    // Waist 752 + ease 40 = 792 lies 12 of 40 mm past the finished waist of 14, which is 780; a quarter of it is on each half piece.
    const planned = first(planOf(testWork).ledger, "blend");
    expect(plannedTitle(planned, "cm")).toBe("Waist: 30 % from 14 to 16");
    expect(plannedAmount(planned, "cm")).toBe("3 mm outside 14");
    expect(alterationWhy(planned)).toContain("finished waist");
  });

  it("of the blend is one for all pieces at a level", () => {
    const groups = planOf(testWork)
      .ledger.filter(({ source }) => source === "blend")
      .map(ledgerGroup);
    expect(new Set(groups)).toEqual(new Set(["blend-waist", "blend-hip"]));
  });

  it.each([
    [30, "Full bust adjustment", "15 mm on the half"],
    [-20, "Small bust adjustment", "10 mm on the half"],
  ])("of the bust, %d mm in all", (bustAlteration, title, amount) => {
    const planned = first(planOf({ ...testWork, picks: { bustAlteration } }).ledger, "bust");
    expect(plannedTitle(planned, "cm")).toBe(title);
    expect(plannedAmount(planned, "cm")).toBe(amount);
  });

  it("of the wearer tells how far the end went in a straight line", () => {
    const alteration = {
      kind: "dartEnd",
      id: "a",
      dart: ref("front", "waistDart"),
      shorten: 30,
      across: 40,
      hold: "mouth",
      giveBack: {},
    } as const;
    const planned = first(planOf(withAlterations(alteration)).ledger, "wearer");
    expect(plannedAmount(planned, "cm")).toBe("50 mm");
    expect(ledgerGroup(planned)).toBe("a");
  });
});

it("tells what came with a slip", () => {
  expect(alterationNoteSentence({ code: "centreNowSeam" }, "front", "cm")).toBe(
    "The centre front no longer lies on a fold: cut it with a seam.",
  );
  expect(alterationNoteSentence({ code: "bustLoses", amount: 12 }, "front", "cm")).toContain(
    "loses 12 mm round the bust",
  );
  expect(alterationNoteSentence({ code: "legsTrued", amount: 2 }, "front", "cm")).toContain("by 2 mm each");
  expect(alterationNoteSentence({ code: "centreLengthened", amount: -7 }, "front", "cm")).toContain(
    "shortened by 7 mm",
  );
  expect(alterationNoteSentence({ code: "centreLengthened", amount: 7 }, "front", "cm")).toContain(
    "lengthened by 7 mm",
  );
});
