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
    // Upper chest 850 is the bound between 12 (830) and 14 (870), and 925 is 5 from both 12's cup D and 14's B.
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measured, upperChestGirth: 850, bustGirth: 925 }) });
    expect(panel().textContent).toMatch(/Size 1[24] \(about 50 of 100\), or 1[24] \(50\)\./);
    expect(panel().textContent).toContain(
      "On this frame the true waist and hip lines lie within 4 mm either way of where your measures put them",
    );
    expect(screen.getAllByRole("region")[0]?.getAttribute("aria-label")).toBe("Frame");
  });

  it("shows the ways as bars, the planner's own marked by more than its colour", async () => {
    await renderWork(<BlendStep />);
    const [first] = within(panel()).getAllByRole("listitem");
    expect(bars()[0]?.[0]).toBe("Size 14, cup B");
    expect(first?.hasAttribute("data-picked")).toBe(true);
    expect(
      within(panel())
        .getAllByRole("listitem")
        .filter((item) => item.hasAttribute("data-picked")),
    ).toHaveLength(1);
  });

  it("says the same of another frame as the frame's own sentence", async () => {
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measured, upperChestGirth: 848 }) });
    expect(panel().textContent).toContain("Size 12 (about 55 of 100), or 14 (45)");
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

  it("tells of a frame of her own that it is hers, of the rest around it, and why it is no surer", async () => {
    await renderWork(<BlendStep />, { picks: { baseSize: "12" } });
    expect(panel().textContent).toContain("Size 12: your own pick.");
    // 830 + 100 is her bust.
    expect(bars()[0]?.[0]).toBe("Size 12, cup D");
    const sum = within(panel()).getByText("Why no surer?").closest("details");
    expect(sum?.textContent).toContain("Your upper chest, read once± 12 mm");
    expect(sum?.textContent).toContain("Bust less upper chest, both errors together± 16 mm");
  });

  it("has the likeliest other way one tap away", async () => {
    const { user, work } = await renderWork(<BlendStep />);
    await user.click(within(panel()).getByRole("button", { name: /^Size 14, cup C instead: about \d+ of 100$/ }));
    expect(work().picks).toEqual({ baseSize: "14", cup: "C" });
    expect(panel().textContent).toContain("Cup C: your own pick.");
  });

  it("lists the way that the planner cuts first, whatever she picks", async () => {
    const { user } = await renderWork(<BlendStep />);
    const titles = (): (string | null)[] =>
      within(screen.getByRole("region", { name: "Other ways to cut it" }))
        .getAllByRole("heading", { level: 4 })
        .map(({ textContent }) => textContent);
    expect(titles()[0]).toBe("Size 14, cup B");
    await user.selectOptions(screen.getByRole("combobox", { name: "Take another frame" }), "16");
    expect(titles()[0]).toBe("Size 14, cup B");
    expect(titles()).toContain("Size 16, cup B");
  });
});
