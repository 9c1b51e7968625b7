import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { measuresOf, tapesOf, type Tapes } from "../../../src/core/measures/tape";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const panel = (): HTMLElement => screen.getByRole("region", { name: "How sure this is" });
const measured = measuresOf(sampleWork.tapes);
const five = (value: number): readonly number[] => Array<number>(5).fill(value);

/** Bars as read: what they stand for and the figure. */
const bars = (): (string | null)[][] =>
  within(panel())
    .getAllByRole("listitem")
    .map((item) => [
      item.querySelector(".sure-label")?.textContent ?? null,
      item.querySelector(".sure-said")?.textContent ?? null,
    ]);

describe("how sure this is", () => {
  it("says it of size, cup and lines, under the picks", async () => {
    // Upper chest 850 is the bound between 12 (830) and 14 (870): an even chance.
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measured, upperChestGirth: 850, bustGirth: 925 }) });
    expect(panel().textContent).toContain("as likely as not (about 50 of 100 and 50)");
    expect(panel().textContent).toContain(
      "On this frame the true waist and hip lines lie within 4 mm either way of where your measures put them",
    );
    expect(screen.getAllByRole("region")[0]?.getAttribute("aria-label")).toBe("Frame");
  });

  it("shows the ways as bars, the planner's own marked by more than its colour", async () => {
    await renderWork(<BlendStep />);
    const [first] = within(panel()).getAllByRole("listitem");
    expect(bars()[0]?.[0]).toBe("Size 14, cup C");
    expect(first?.hasAttribute("data-picked")).toBe(true);
    expect(
      within(panel())
        .getAllByRole("listitem")
        .filter((item) => item.hasAttribute("data-picked")),
    ).toHaveLength(1);
  });

  it("says the same of another frame as the frame's own sentence", async () => {
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measured, upperChestGirth: 848 }) });
    // 2 mm of a spread of 12 mm: Φ(1/6) = 0.566 (printed table).
    expect(panel().textContent).toContain("Size 12 or 14, as likely as not (about 55 of 100 and 45)");
    expect(screen.getByRole("region", { name: "Frame" }).textContent).toContain("the chance of 14 is about 45 of 100");
  });

  it("leads to the tape for the measure that settles most", async () => {
    const { upperChestGirth: _, ...others } = measured;
    await renderWork(<BlendStep />, { tapes: tapesOf(others) });
    const link = within(panel()).getByRole("link", { name: "Measure the upper chest, twice" });
    expect(link.getAttribute("href")).toBe("#tape");
    expect(panel().textContent).toContain("Without an upper chest the cup can only be guessed");
  });

  it("asks for nothing more where all is settled", async () => {
    const tapes: Tapes = [
      { readings: { bustGirth: five(945), upperChestGirth: five(870), waistGirth: five(738), hipGirth: five(1000) } },
    ];
    await renderWork(<BlendStep />, { tapes });
    expect(panel().textContent).toContain("Size 14, nearly sure (more than 95 of 100)");
    expect(within(panel()).queryByRole("link")).toBeNull();
  });

  it("says that picks of her own are laid aside, and says why it is no surer", async () => {
    await renderWork(<BlendStep />, { picks: { baseSize: "12" } });
    expect(panel().textContent).toContain("the picks you set yourself are laid aside here");
    expect(bars()[0]?.[0]).toBe("Size 14, cup C");
    const sum = within(panel()).getByText("Why no surer?").closest("details");
    expect(sum?.textContent).toContain("Your upper chest, read once± 12 mm");
    expect(sum?.textContent).toContain("Bust less upper chest, both errors together± 16 mm");
  });

  it("says why the planner's way is not the first of the list, and nothing where she picked", async () => {
    // Upper chest 890 is the bound of 14 and 16, so she gets 16; but bust, waist and hip lie nearer 14.
    const tapes = tapesOf({ bustGirth: 969, upperChestGirth: 890, waistGirth: 740, hipGirth: 976 });
    const { user } = await renderWork(<BlendStep />, { tapes });
    const ways = (): string => screen.getByRole("region", { name: "Other ways to cut it" }).textContent;
    expect(screen.getByRole("region", { name: "Frame" }).textContent).toContain("Size 16");
    expect(ways()).toContain("The planner picks the frame by the upper chest alone");
    expect(ways()).toContain("With everything weighed together, as in this list, size 14");
    await user.selectOptions(screen.getByRole("combobox", { name: "Take another frame" }), "16");
    expect(ways()).not.toContain("The planner picks the frame");
  });
});
