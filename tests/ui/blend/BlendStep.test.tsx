import { planOf } from "../../../src/core/plan/planOf";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { undo } from "../../../src/store/workStore";
import { usePageState } from "../../../src/ui/session/pageState";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import type { Plan } from "../../../src/core/plan/plan";
import type { Work } from "../../../src/core/decisions/work";
import { unevenChart } from "../../support/steppedCharts";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const pick = (name: string): HTMLElement => screen.getByRole("region", { name });

function plan(work: Work): Plan {
  const result = planOf(work);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

describe("the blend", () => {
  // Upper chest 860 and a drafted difference of 50: size 14 is drafted for 920 − 50 = 870, size 12 for 830.
  // Size 14 with cup B is drafted for 920: the bust of 930 is 10 mm more, and left alone; C is 15 mm too large. Waist 738 + 40 = 778 lies between 12 (740) and 14 (780), 38/40 of the way.
  it("says frame, cup, bust and the lines between the printed ones", async () => {
    await renderWork(<BlendStep />);
    expect(pick("Frame").textContent).toContain("Size 14");
    expect(pick("Cup").textContent).toContain("Version B");
    expect(pick("Bust").textContent).toContain("no alteration");
    expect(pick("Waist").textContent).toContain("95 % of the way from the 12 line to the 14 line");
    expect(within(pick("Hip")).getByRole("heading").textContent).toMatch(/^Hip \d+ % from 14 to 16$/);
  });

  it("shows the sum behind the frame", async () => {
    await renderWork(<BlendStep />);
    const sum = within(pick("Frame")).getByText("Why 14?").closest("details");
    expect(sum?.textContent).toContain("Your upper chest86.0 cm");
    expect(sum?.textContent).toContain("Bust of size 14 on the chart92.0 cm");
    expect(sum?.textContent).toContain("less the difference it is drafted for− 5.0 cm");
    expect(sum?.textContent).toContain("Upper chest of size 1487.0 cm");
  });

  it("says how near another pick was, and marks it where it is a near thing", async () => {
    // 2 mm short of the middle between 12 (830) and 14 (870); size 12 with cup D is drafted for her very bust.
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measuresOf(sampleWork.tapes), upperChestGirth: 848 }) });
    expect(pick("Frame").textContent).toContain("Size 12");
    // Hardly surer than not.
    expect(pick("Frame").querySelector("summary")?.textContent).toMatch(/open$/);
    expect(pick("Frame").textContent).toMatch(
      /A tape out by \d mm would make it 14; the chance of 14 is about 45 of 100\./,
    );
    expect(pick("Frame").textContent).toContain(
      "bust (read once) and upper chest (read once): they are then right to within 10 mm and 12 mm about two times in three",
    );
  });

  it("lets her take another frame, says what follows, and goes back", async () => {
    const { user, work } = await renderWork(<BlendStep />);
    await user.selectOptions(screen.getByRole("combobox", { name: "Take another frame" }), "12");
    expect(work().picks).toEqual({ baseSize: "12" });
    expect(pick("Frame").textContent).toContain("your pick");
    expect(pick("Frame").textContent).toContain("The planner would take size 14");
    // The rest is chosen around it: 830 + 100 is her bust.
    expect(pick("Cup").textContent).toContain("Version D");
    expect(pick("Bust").textContent).toContain("no alteration");
    await user.selectOptions(screen.getByRole("combobox", { name: "Take another cup" }), "C");
    // 930 − (830 + 75): 25 mm are missing at the bust.
    expect(pick("Bust").textContent).toContain("+25 mm");
    expect(pick("Bust").textContent).toContain("Full bust adjustment of 25 mm altogether");
    await user.click(within(pick("Cup")).getByRole("button", { name: "Go back to that" }));
    await user.click(within(pick("Frame")).getByRole("button", { name: "Go back to that" }));
    expect(work().picks).toEqual({});
    expect(pick("Frame").textContent).toContain("Size 14");
  });

  it("says with the waist line what is taken for granted of the tissue's darts", async () => {
    // Where bust and waist step unlike each other, our darts differ from size to size.
    await renderWork(<BlendStep />, {
      pattern: { ...sampleWork.pattern, chart: unevenChart },
      tapes: tapesOf({ ...measuresOf(sampleWork.tapes), waistGirth: 800 }),
    });
    expect(pick("Waist").textContent).toContain("If your tissue prints them equally wide");
    expect(pick("Hip").textContent).not.toContain("equally wide");
  });

  it("moves the waist line as one step of undo and says what it does to the garment", async () => {
    const { work, store } = await renderWork(<BlendStep />);
    const slider = screen.getByRole("slider", { name: "Set the waist line yourself" });
    fireEvent.change(slider, { target: { value: "4" } });
    fireEvent.change(slider, { target: { value: "4.5" } });
    fireEvent.pointerUp(slider);
    expect(work().picks).toEqual({ waist: 4.5 });
    const finished = plan(work()).levels.find((level) => level.level === "waist")?.finished ?? 0;
    expect(pick("Waist").textContent).toContain(
      `With your line the garment measures ${(Math.round(finished) / 10).toFixed(1)} cm`,
    );
    expect(pick("Waist").textContent).toContain("more than wanted");
    expect(slider.getAttribute("aria-valuetext")).toBe("50 % of the way from the 16 line to the 18 line");
    act(() => undo(store));
    expect(work().picks).toEqual({});
  });

  it("sets the bust alteration, smaller as well as larger", async () => {
    const { user, work } = await renderWork(<BlendStep />);
    const entry = screen.getByRole("textbox", { name: "Set the bust alteration" });
    await user.clear(entry);
    await user.type(entry, "-2{Enter}");
    expect(work().picks.bustAlteration).toBe(-20);
    expect(pick("Bust").textContent).toContain("Small bust adjustment of 20 mm altogether");
    await user.click(screen.getByRole("button", { name: "Leave the bust as printed" }));
    expect(work().picks.bustAlteration).toBe(0);
  });

  it("takes one of the ranked other ways", async () => {
    const { user, work } = await renderWork(<BlendStep />);
    const ways = screen.getByRole("region", { name: "Other ways to cut it" });
    const first = within(ways).getAllByRole("button", { name: /^Take this/ })[0];
    if (first === undefined) throw new Error("there is no other way");
    const name = (first.getAttribute("aria-label") ?? "").replace("Take this: ", "");
    await user.click(first);
    const { baseSize, cup } = plan(work()).sizing;
    expect(`Size ${baseSize.label}, cup ${cup.label ?? ""}`).toBe(name);
  });

  it("takes the ease she wants and the pattern's own again", async () => {
    const { user, work } = await renderWork(<BlendStep />);
    const entry = screen.getByRole("textbox", { name: "At the waist" });
    expect(entry.getAttribute("placeholder")).toBe("4");
    await user.type(entry, "6{Enter}");
    expect(work().easeWanted).toEqual({ waist: 60 });
    // 738 + 60 = 798: 18/40 of the way from 14 (780) to 16 (820).
    expect(pick("Waist").textContent).toContain("45 % of the way from the 14 line to the 16 line");
    await user.clear(entry);
    await user.tab();
    expect(work().easeWanted).toEqual({});
  });

  it("carries a line past the printed ones with a warning", async () => {
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measuresOf(sampleWork.tapes), waistGirth: 990 }) });
    expect(pick("Waist").textContent).toContain("past the printed lines");
    expect(pick("Waist").textContent).toContain("beyond the 26 line");
  });
});

describe("without a plan", () => {
  it("says which measures are missing and where to enter them", async () => {
    await renderWork(<BlendStep />, { tapes: tapesOf({ bustGirth: 930 }) });
    act(() => usePageState.getState().setStep("blend"));
    const note = screen.getByText("Not enough on the tape yet").closest(".note");
    expect(note?.textContent).toContain("waist and hip girths");
    expect(screen.getByRole("link", { name: "Go to Tape" }).getAttribute("href")).toBe("#tape");
  });

  it("says how far the pattern reaches where a body lies outside", async () => {
    await renderWork(<BlendStep />, { tapes: tapesOf({ ...measuresOf(sampleWork.tapes), hipGirth: 1600 }) });
    const note = screen.getByText("This pattern does not reach your hip").closest(".note");
    expect(note?.textContent).toContain("larger size range");
  });

  it("lets her drop a pick that the chart no longer has", async () => {
    const { user, work } = await renderWork(<BlendStep />, { picks: { baseSize: "99" } });
    expect(screen.getByText("There is no size 99 on this chart")).toBeTruthy();
    await user.click(screen.getByRole("button", { name: "Drop your own frame" }));
    expect(work().picks).toEqual({});
    expect(pick("Frame").textContent).toContain("Size 14");
  });
});
