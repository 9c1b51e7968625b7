/** The darts panel: what she types, what the dart then is, and what she is told. */
import { act, cleanup, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { afterEach, describe, expect, it } from "vitest";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { useHold } from "../../../src/ui/darts/holdState";
import { useViewState } from "../../../src/ui/app/viewState";
import { renderWork } from "../renderWork";
import { testWork } from "../../support/works";

afterEach(() => {
  cleanup();
  useHold.setState({ hold: "mouth" });
  useViewState.setState({ selectedDart: null, litSlip: null });
});

async function show(): Promise<void> {
  await renderWork(<DartsPanel />, testWork);
  act(() => useViewState.setState({ selectedDart: { piece: "front", dart: "waistDart" } }));
}

/** The last figure of a row: the dart as drawn. */
function drawn(row: string): number {
  const cells = within(screen.getByRole("row", { name: new RegExp(`^${row}`) })).getAllByRole("cell");
  return Number.parseFloat(cells.at(-1)?.textContent ?? "");
}

describe("DartsPanel", () => {
  it("shows a dart shortened with its mouth held as wider in angle and fuller, and too sharp in the end", async () => {
    await show();
    const before = { mouth: drawn("Mouth"), angle: drawn("Angle"), fullness: drawn("Fullness") };
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "40{Enter}");
    expect(drawn("Mouth")).toBe(before.mouth);
    expect(drawn("Angle")).toBeGreaterThan(before.angle + 4);
    expect(drawn("Fullness")).toBeGreaterThan(before.fullness);
    expect(screen.getByText(/Too sharp/)).toBeDefined();
  });

  it("keeps angle and fullness when the fullness is held, narrows the mouth, and shows where the width went", async () => {
    await show();
    const before = { mouth: drawn("Mouth"), angle: drawn("Angle"), fullness: drawn("Fullness") };
    await userEvent.click(screen.getByRole("radio", { name: "Hold the fullness" }));
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "40{Enter}");
    expect(drawn("Angle")).toBeCloseTo(before.angle, 0);
    expect(drawn("Fullness")).toBe(before.fullness);
    expect(drawn("Mouth")).toBeLessThan(before.mouth - 5);
    const shares = screen.getAllByRole("slider").filter((slider) => slider.closest(".shares") !== null);
    expect(shares.map((slider) => Number(slider.getAttribute("value"))).reduce((a, b) => a + b, 0)).toBe(100);
    expect(screen.getByText("Where did the width go?")).toBeDefined();
  });

  it("says beside the field why a dart cannot be that short, and the most that works", async () => {
    await show();
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "500{Enter}");
    expect(screen.getByText(/too short to sew; \d+ mm is the most/)).toBeDefined();
    expect(screen.getByLabelText("Shorten by").getAttribute("aria-invalid")).toBe("true");
  });

  it("keeps what cannot be read in the field, with a kind word", async () => {
    await show();
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "a bit{Enter}");
    expect(screen.getByDisplayValue("a bit")).toBe(screen.getByLabelText("Shorten by"));
    expect(screen.getByRole("alert").textContent).toContain("a bit");
  });
});
