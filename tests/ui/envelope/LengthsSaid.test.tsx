/** What the pattern says of lengths: one figure or one by size, nothing lost, nothing left behind. */
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { undo } from "../../../src/store/workStore";
import { EnvelopeStep } from "../../../src/ui/envelope/EnvelopeStep";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

const sizes = testWork.pattern.chart.sizes.slice(2, 4);
const pattern = { ...testWork.pattern, chart: { ...testWork.pattern.chart, sizes } };
const shown = () => renderWork(<EnvelopeStep />, { ...testWork, pattern });
const field = (name: string): HTMLInputElement => screen.getByRole("textbox", { name });

describe("what the pattern says of lengths", () => {
  it("is folded away, and says what stands in its place", async () => {
    await shown();
    const details = screen.getByText(/^What the pattern says of lengths/).closest("details");
    expect(details?.open).toBe(false);
    // At busts of 840 and 880: 410 less 3, and 410.
    expect(details?.textContent).toContain("our draft’s figure: 40.7 to 41.0 cm, by size");
  });

  it("is one figure for all sizes; emptied, nothing is said any more", async () => {
    const { user, work, store } = await shown();
    await user.type(field("Back waist length"), "41.5{Enter}");
    expect(work().pattern.lengths).toEqual({ backWaistLength: { all: 415 } });
    await user.clear(field("Back waist length"));
    await user.tab();
    expect("lengths" in work().pattern).toBe(false);
    act(() => undo(store));
    expect(work().pattern.lengths).toEqual({ backWaistLength: { all: 415 } });
  });

  it("is one by size where she asks for it", async () => {
    const { user, work } = await shown();
    await user.click(screen.getByRole("button", { name: "Across back, a figure for each size" }));
    await user.type(field("Across back, size 12"), "34{Enter}");
    expect(work().pattern.lengths).toEqual({ acrossBack: { bySize: { "12": 340 } } });
  });

  it("goes along with a size that is renamed, and away with one that is taken out", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, {
      ...testWork,
      pattern: { ...pattern, lengths: { acrossBack: { bySize: { "10": 330, "12": 340 } } } },
    });
    await user.clear(field("Name of size 2"));
    await user.type(field("Name of size 2"), "12W{Enter}");
    expect(work().pattern.lengths?.acrossBack?.bySize).toEqual({ "10": 330, "12W": 340 });
    await user.click(screen.getByRole("button", { name: "Remove size 10" }));
    expect(work().pattern.lengths?.acrossBack?.bySize).toEqual({ "12W": 340 });
  });

  it("keeps what cannot be read as it was typed, and with its size", async () => {
    const { user, work } = await shown();
    await user.click(screen.getByRole("button", { name: "Across back, a figure for each size" }));
    await user.type(field("Across back, size 12"), "wide{Enter}");
    expect(work().unread).toEqual({ "chart.1.lengths.acrossBack": "wide" });
    await user.click(screen.getByRole("button", { name: "Remove size 10" }));
    expect(work().unread).toEqual({ "chart.0.lengths.acrossBack": "wide" });
    expect(field("Across back, size 12").value).toBe("wide");
  });

  it("refuses what no body has", async () => {
    const { user, work } = await shown();
    await user.type(field("Back waist length"), "4.1{Enter}");
    expect(work().pattern.lengths).toBeUndefined();
    expect(screen.getByRole("alert").textContent).toMatch(/^Back waist length is taken from/);
  });
});
