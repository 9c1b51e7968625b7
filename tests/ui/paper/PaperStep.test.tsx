import { act, screen } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { runAll } from "../../../src/store/workStore";
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

  it("has the sheets of the dress only where one is decided", async () => {
    const { container, store } = await renderWork(<PaperStep />);
    expect(screen.queryByRole("radio", { name: "Dress" })).toBeNull();
    act(() => {
      runAll(store, [{ kind: "setDress", part: "skirt", value: { kind: "gathered", length: 600 } }]);
      usePageState.getState().showSheet("dress");
    });
    expect(screen.getByRole("radio", { name: "Dress" })).toHaveProperty("checked", true);
    expect(container.querySelector(".printed-dress")?.textContent).toContain("Gathered skirt");
    // Gone with the dress, though it was chosen.
    act(() => runAll(store, [{ kind: "setDress", part: "skirt", value: null }]));
    expect(screen.queryByRole("radio", { name: "Dress" })).toBeNull();
    expect(container.textContent).toContain("Alteration checklist");
  });

  it("is led to from the tape with the measure sheet chosen", async () => {
    const { user } = await renderWork(<PrintMeasureSheet />);
    await user.click(screen.getByRole("link", { name: "Print a measure sheet" }));
    expect(usePageState.getState().sheet).toBe("measures");
  });
});
