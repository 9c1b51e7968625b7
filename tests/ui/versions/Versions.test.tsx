import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { undo } from "../../../src/store/workStore";
import { Versions } from "../../../src/ui/versions/Versions";
import { PaperStep } from "../../../src/ui/paper/PaperStep";
import { usePageState } from "../../../src/ui/session/pageState";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

/** One trial, a fold pinched on it, an answer taken. */
function tried(): Work {
  const begun = applyCommand({ ...sampleWork, alterations: [] }, { kind: "beginTrial", id: "one", day: "2026-11-01" });
  const seen = applyCommand(begun, {
    kind: "putObservation",
    trial: "one",
    observation: { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 5 },
  });
  return applyCommand(seen, {
    kind: "takeTrialAnswer",
    trial: "one",
    answer: { causes: ["swayBack"], because: ["fold"], alterations: ["sway"] },
    alterations: [{ kind: "fit", id: "sway", fit: "swayBack", amount: 10 }],
  });
}

describe("versions", () => {
  it("are not there before there is a trial", async () => {
    await renderWork(<Versions />, {});
    expect(screen.queryByRole("heading", { name: "Versions" })).toBeNull();
  });

  it("hold what is decided now against the trial sewn last, with what asked for the change", async () => {
    await renderWork(<Versions />, tried());
    await screen.findByRole("heading", { name: "Versions" });
    const table = screen.getByRole("table", { name: "Alterations" });
    expect(within(table).getByRole("row", { name: /Sway back/ }).textContent).toContain("10 mm");
    expect(screen.getByText(/Trial 1: fold across, back above the waist, pinched 5 mm/)).toBeDefined();
    expect(screen.getByRole("img", { name: /Trial 1, 1 November 2026, dashed, and Now, unbroken/ })).toBeDefined();
  });

  it("go back in one step, which undo takes back, and offer a copy of what was never sewn", async () => {
    const { user, work, store } = await renderWork(<Versions />, tried());
    await user.click(await screen.findByRole("button", { name: /^Trial 1/ }));
    expect(screen.getByText(/never sewn/)).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Go back to trial 1" }));
    expect(work().alterations).toEqual([]);
    expect(work().trials).toHaveLength(1);
    undo(store);
    expect(work().alterations).toHaveLength(1);
  });

  it("branch off into a work of its own", async () => {
    const { user, work } = await renderWork(<Versions />, tried());
    await user.click(await screen.findByRole("button", { name: /^Trial 1/ }));
    await user.click(screen.getByRole("button", { name: "Branch from trial 1" }));
    await expect.poll(() => work().name).toMatch(/, from trial 1$/);
    expect(work().alterations).toEqual([]);
    expect(work().trials).toHaveLength(1);
  });

  it("lead to the sheet with what changes", async () => {
    const { user } = await renderWork(<Versions />, tried());
    await user.click(await screen.findByRole("link", { name: "Print what changes" }));
    expect(usePageState.getState().sheet).toBe("since");
  });
});

describe("alter your toile’s paper", () => {
  it("prints only what changed since the trial sewn last", async () => {
    const { user, container } = await renderWork(<PaperStep />, tried());
    await user.click(screen.getByRole("radio", { name: "Alter your toile’s paper" }));
    const sheet = container.querySelector(".printed-checklist");
    expect(sheet?.textContent).toMatch(/Take 10\smm out across the back waist/);
    expect(sheet?.textContent).toMatch(/The front.* as you have/);
    expect(sheet?.textContent).not.toContain("Trace the 12 line");
  });

  it("is not offered before there is a trial", async () => {
    await renderWork(<PaperStep />);
    expect(screen.queryByRole("radio", { name: "Alter your toile’s paper" })).toBeNull();
  });
});
