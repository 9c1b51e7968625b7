import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Work } from "../../src/core/decisions/work";
import { TrialRecord } from "../../src/print/TrialRecord";
import { SEEN } from "../../src/words/trial";
import { printCases } from "./printCases";

afterEach(cleanup);

function show(work: Work): HTMLElement {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  render(<TrialRecord work={work} plan={plan.value} />);
  return screen.getByRole("article", { name: "Trial record" });
}

const textOf = (element: Element): string => (element.textContent ?? "").replaceAll("\u00A0", " ");

describe("TrialRecord", () => {
  it("opens with lines to fill in by hand and what the toile was cut by", () => {
    const sheet = show(printCases.sample);
    for (const label of ["Date", "Trial no.", "Cloth", "Pinned by", "Next trial no."])
      expect(within(sheet).getByText(label)).toBeDefined();
    expect(textOf(sheet)).toContain("Frame 14; cup B");
    expect(textOf(sheet)).toContain("Left and right halves are cut alike.");
  });

  it("says whose left it is: before the wearer her right half is at the left, behind her the left one", () => {
    const sheet = show(printCases.sample);
    const named = [...sheet.querySelectorAll(".tr-halves")].map((row) => [...row.children].map(textOf));
    expect(named).toEqual([
      ["Your right half", "Your left half"],
      ["Your left half", "Your right half"],
    ]);
    const drawn = [...sheet.querySelectorAll("svg")].map((svg) =>
      [...svg.querySelectorAll("[data-half]")].map((half) => [
        half.getAttribute("data-half"),
        half.getAttribute("transform"),
      ]),
    );
    expect(drawn).toEqual([
      [
        ["right", "scale(-1 1)"],
        ["left", null],
      ],
      [
        ["left", "scale(-1 1)"],
        ["right", null],
      ],
    ]);
  });

  it("names what is done to one half alone, and draws the halves apart", () => {
    const sheet = show(printCases.halves);
    expect(textOf(sheet)).toContain("The halves differ:");
    expect(textOf(sheet)).toMatch(/by 8 mm, on the right half only\./);
    expect(textOf(sheet)).toMatch(/at the waist, 6 mm, on the left half only\./);
    const [front] = sheet.querySelectorAll("svg");
    const outlines = [...(front?.querySelectorAll("[data-half]") ?? [])].map((half) =>
      half.querySelector(".tr-outline")?.getAttribute("d"),
    );
    expect(outlines).toHaveLength(2);
    expect(outlines[0]).not.toBe(outlines[1]);
  });

  it("offers in each row what can be seen, which half, and room to write", () => {
    const sheet = show(printCases.letter);
    const rows = within(sheet).getAllByRole("row").slice(1);
    expect(rows.length).toBeGreaterThanOrEqual(5);
    for (const row of rows) {
      for (const word of [...SEEN, "fold pinched", "slit let out", "left", "right", "both"])
        expect(within(row).getByText(word)).toBeDefined();
    }
    expect(textOf(sheet)).toContain("Cloth, in");
  });

  it("lists what both halves were sewn with, and offers a blank for each dart that serves the bust", () => {
    const sheet = show(printCases.sample);
    expect(textOf(sheet)).toMatch(/Sewn with: Front: shorten the waist dart by 15 mm, /u);
    expect(textOf(sheet)).toContain("twice its depth");
    const blanks = [...sheet.querySelectorAll(".tr-balance li")]
      .map(textOf)
      .filter((text) => text.includes("bust point"));
    expect(blanks).toEqual(["Waist dart’s end to bust point  mm", "Side dart’s end to bust point  mm"]);
  });

  it("offers a blank for either half where they differ", () => {
    const sheet = show(printCases.halves);
    const blanks = [...sheet.querySelectorAll(".tr-balance li")]
      .map(textOf)
      .filter((text) => text.includes("bust point"));
    expect(blanks).toEqual([
      "Waist dart’s end to bust pointleft  mmright  mm",
      "Side dart’s end to bust pointleft  mmright  mm",
    ]);
  });

  it("asks for sitting, reaching and breathing only with every pin out, as the caution has it", () => {
    const sheet = show(printCases.sample);
    const moving = within(sheet).getByRole("heading", { name: "Basted, every pin out" }).parentElement;
    const standing = within(sheet).getByRole("heading", { name: "Standing at ease, pinned shut" }).parentElement;
    for (const what of ["Can sit", "Can reach forwards and up", "Can breathe in deeply"]) {
      expect(textOf(moving ?? sheet)).toContain(what);
      expect(textOf(standing ?? sheet)).not.toContain(what);
    }
    expect(textOf(sheet)).toContain("Do not sit, reach or undress until every one is out");
    expect(textOf(sheet)).toContain("A helper.");
  });

  it("speaks of straps and princess seams where the toile has them", () => {
    expect(textOf(show({ ...printCases.plain, pattern: { ...printCases.plain.pattern, style: "midriff" } }))).toContain(
      "Straps stay on the shoulders",
    );
    cleanup();
    const princess = textOf(
      show({
        ...printCases.sample,
        alterations: [],
        pattern: { ...printCases.sample.pattern, style: "princessArmhole" },
      }),
    );
    expect(princess).toContain("Princess seam to bust point");
    expect(princess).toContain("Shoulder seams on the shoulders");
  });
});
