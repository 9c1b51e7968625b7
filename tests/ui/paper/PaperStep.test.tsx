import { screen } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { usePageState } from "../../../src/ui/session/pageState";
import { PaperStep } from "../../../src/ui/paper/PaperStep";
import { PrintMeasureSheet } from "../../../src/ui/tape/PrintMeasureSheet";
import { renderWork } from "../renderWork";

describe("paper", () => {
  beforeEach(() => usePageState.getState().showSheet("checklist"));

  it("prints the checklist or the measure sheet, as she chooses", async () => {
    const { user, container } = await renderWork(<PaperStep />);
    expect(container.textContent).toContain("Alteration checklist");
    await user.click(screen.getByRole("radio", { name: "Measure sheet" }));
    expect(container.querySelector(".measure-sheet")).not.toBeNull();
    expect(container.textContent).not.toContain("Alteration checklist");
  });

  it("has the measure sheet even where there is no plan yet", async () => {
    const { user, container } = await renderWork(<PaperStep />, { tapes: [{ readings: {} }] });
    await user.click(screen.getByRole("radio", { name: "Measure sheet" }));
    expect(container.querySelector(".measure-sheet")).not.toBeNull();
  });

  it("is led to from the tape with the measure sheet chosen", async () => {
    const { user } = await renderWork(<PrintMeasureSheet />);
    await user.click(screen.getByRole("link", { name: "Print a measure sheet" }));
    expect(usePageState.getState().sheet).toBe("measures");
  });
});
