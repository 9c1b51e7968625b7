/** What the slips of the ledger say. */
import { describe, expect, it } from "vitest";
import type { Slip } from "../../src/core/plan/plan";
import { slipAmount, slipGroup, slipNoteSentence, slipTitle, slipWhy } from "../../src/words/ledger";
import { planOf, ref, testWork, withAlterations } from "../support/works";

const first = (slips: readonly Slip[], source: Slip["source"]): Slip => {
  const found = slips.find((slip) => slip.source === source);
  if (found === undefined) throw new Error(`no slip from ${source}`);
  return found;
};

describe("a slip", () => {
  it("of the blend tells the lines it runs between and how far outside the lower one", () => {
    // Waist 752 + ease 40 = 792 lies 12 of 40 mm past the finished waist of 14, which is 780; a quarter of it is on each half piece.
    const slip = first(planOf(testWork).slips, "blend");
    expect(slipTitle(slip, "cm")).toBe("Waist: 30 % from 14 to 16");
    expect(slipAmount(slip, "cm")).toBe("3 mm outside 14");
    expect(slipWhy(slip)).toContain("finished waist");
  });

  it("of the blend is one for all pieces at a level", () => {
    const groups = planOf(testWork)
      .slips.filter(({ source }) => source === "blend")
      .map(slipGroup);
    expect(new Set(groups)).toEqual(new Set(["blend-waist", "blend-hip"]));
  });

  it.each([
    [30, "Full bust adjustment", "15 mm on the half"],
    [-20, "Small bust adjustment", "10 mm on the half"],
  ])("of the bust, %d mm in all", (bustAlteration, title, amount) => {
    const slip = first(planOf({ ...testWork, picks: { bustAlteration } }).slips, "bust");
    expect(slipTitle(slip, "cm")).toBe(title);
    expect(slipAmount(slip, "cm")).toBe(amount);
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
    const slip = first(planOf(withAlterations(alteration)).slips, "wearer");
    expect(slipAmount(slip, "cm")).toBe("50 mm");
    expect(slipGroup(slip)).toBe("a");
  });
});

it("tells what came with a slip", () => {
  expect(slipNoteSentence({ code: "centreNowSeam" }, "front", "cm")).toBe(
    "The centre front no longer lies on a fold: cut it with a seam.",
  );
  expect(slipNoteSentence({ code: "bustLoses", amount: 12 }, "front", "cm")).toContain("loses 12 mm round the bust");
  expect(slipNoteSentence({ code: "legsTrued", amount: 2 }, "front", "cm")).toContain("by 2 mm each");
  expect(slipNoteSentence({ code: "centreLengthened", amount: -7 }, "front", "cm")).toContain("shortened by 7 mm");
  expect(slipNoteSentence({ code: "centreLengthened", amount: 7 }, "front", "cm")).toContain("lengthened by 7 mm");
});
