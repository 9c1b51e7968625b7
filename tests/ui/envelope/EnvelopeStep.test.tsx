import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { run, undo } from "../../../src/store/workStore";
import { EnvelopeStep } from "../../../src/ui/envelope/EnvelopeStep";
import { sampleWork } from "../../support/sampleWork";
import { testWork } from "../../support/works";
import { renderWork, type Rendered } from "../renderWork";

const field = (name: string): HTMLInputElement => screen.getByRole("textbox", { name });
const button = (name: string): HTMLElement => screen.getByRole("button", { name });
const chartOf = (work: Work) =>
  work.pattern.chart.sizes.map(({ label, bust, waist, hip }) => [label, bust, waist, hip]);
const withSizes = (count: number): Partial<Work> => ({
  pattern: {
    ...sampleWork.pattern,
    chart: { ...sampleWork.pattern.chart, sizes: sampleWork.pattern.chart.sizes.slice(0, count) },
  },
});

async function paste(text: string): Promise<Rendered> {
  const page = await renderWork(<EnvelopeStep />);
  await page.user.click(button("Paste a chart"));
  fireEvent.change(field("Paste the chart here"), { target: { value: text } });
  return page;
}

describe("typing the chart in", () => {
  it("makes a size of the last line by keyboard alone, and is ready for the next", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, withSizes(2));
    await user.click(field("Name of the new size"));
    await user.keyboard("12{Enter}88{Enter}70{Enter}94{Enter}");
    expect(chartOf(work()).at(-1)).toEqual(["12", 880, 700, 940]);
    expect(document.activeElement).toBe(field("Name of the new size"));
    expect(field("Name of the new size").value).toBe("");
  });

  it("keeps a line that is not whole yet, and says what of it does not read", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, withSizes(2));
    await user.type(field("Name of the new size"), "12");
    await user.type(field("Bust of the new size"), "88 88");
    await user.tab();
    expect(chartOf(work())).toHaveLength(2);
    expect(work().unread).toMatchObject({ "chart.new.label": "12", "chart.new.bust": "88 88" });
    expect(screen.getByText(/“88 88” could be read in more than one way/)).toBeTruthy();
  });

  it("changes a cell of the chart", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, withSizes(2));
    await user.clear(field("Waist of size 10"));
    await user.type(field("Waist of size 10"), "67{Enter}");
    expect(chartOf(work())[1]).toEqual(["10", 840, 670, 900]);
  });

  it("says beside the row what is wrong with it, and puts the sizes in order", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, withSizes(3));
    await user.clear(field("Bust of size 12"));
    await user.type(field("Bust of size 12"), "78{Enter}");
    const row = field("Bust of size 12").closest("li");
    expect(row?.textContent).toContain("To put right");
    expect(row?.textContent).toContain("smaller than that of size 10");
    await user.click(button("Put the sizes in order"));
    expect(chartOf(work()).map(([label]) => label)).toEqual(["12", "8", "10"]);
  });

  it("moves entries that could not be read up with their rows when a size goes", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, { ...withSizes(3), unread: { "chart.2.hip": "wide" } });
    expect(field("Hip of size 12").value).toBe("wide");
    await user.click(button("Remove size 8"));
    expect(work().unread).toEqual({ "chart.1.hip": "wide" });
    expect(field("Hip of size 12").value).toBe("wide");
  });

  it("takes finished measures where the chart prints them, and drops them again", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, withSizes(2));
    await user.click(screen.getByRole("checkbox", { name: /finished garment measures/ }));
    await user.type(field("Finished bust of size 8"), "88{Enter}");
    expect(work().pattern.chart.sizes[0]).toMatchObject({ finishedBust: 880 });
    await user.click(screen.getByRole("checkbox", { name: /finished garment measures/ }));
    expect(work().pattern.chart.sizes[0]).not.toHaveProperty("finishedBust");
  });
});

describe("cup versions", () => {
  it("come from A to D in one press, as one step, and only into an empty list", async () => {
    const { user, work, store } = await renderWork(<EnvelopeStep />, {
      pattern: { ...sampleWork.pattern, chart: { ...sampleWork.pattern.chart, cups: [], draftedDifference: 50 } },
    });
    await user.click(button("A to D"));
    expect(work().pattern.chart.cups).toEqual([
      { label: "A", difference: 25 },
      { label: "B", difference: 50 },
      { label: "C", difference: 75 },
      { label: "D", difference: 100 },
    ]);
    expect(store.getState().past).toHaveLength(1);
    expect(screen.queryByRole("button", { name: "A to D" })).toBeNull();
  });

  it("say on a tap what it means to be drafted for", async () => {
    const { user } = await renderWork(<EnvelopeStep />);
    const term = screen.getByRole("button", { name: "each version is drafted" });
    await user.click(term);
    expect(term.getAttribute("aria-expanded")).toBe("true");
    expect(screen.getByRole("note").textContent).toMatch(/the body a pattern is drawn for/);
    await user.keyboard("{Escape}");
    expect(screen.queryByRole("note")).toBeNull();
  });
});

describe("pasting a chart", () => {
  it("shows how it reads before anything is taken, then takes it as one step", async () => {
    const { user, work, store } = await paste("Size\tBust\tWaist\tHip\nS\t82\t64\t90\nM\t88\t70\t96\nL\t96\t78\t104");
    const preview = screen.getByRole("table", { name: /Sizes as read/ });
    expect(within(preview).getByRole("row", { name: "M 88 70 96" })).toBeTruthy();
    expect(work().pattern).toBe(sampleWork.pattern);
    await user.click(button("Use these 3 sizes"));
    expect(chartOf(work())).toEqual([
      ["S", 820, 640, 900],
      ["M", 880, 700, 960],
      ["L", 960, 780, 1040],
    ]);
    expect(work().unread).toEqual({});
    act(() => undo(store));
    expect(work().pattern.chart).toEqual(sampleWork.pattern.chart);
  });

  it("names the cell that does not read and takes the rest", async () => {
    const { user, work } = await paste("Size\tBust\tWaist\tHip\nS\t82\t64\t90\nM\tbig\t70\t96\nL\t96\t78\t104");
    expect(screen.getByText(/The bust of size M, “big”, does not read as a length/)).toBeTruthy();
    await user.click(button("Use these 2 sizes"));
    expect(chartOf(work()).map(([label]) => label)).toEqual(["S", "L"]);
  });

  it("says beside the row what is wrong with a size", async () => {
    await paste("Size\tBust\tWaist\tHip\nS\t82\t64\t90\nM\t80\t70\t96");
    expect(screen.getByText(/smaller than that of size S/)).toBeTruthy();
  });

  it("has none of what could not be read in the rows before, which come back with it on undo", async () => {
    const { user, work, store } = await paste("Size\tBust\tWaist\tHip\nS\t82\t64\t90\nM\t88\t70\t96\nL\t96\t78\t104");
    act(() => run(store, { kind: "setUnread", field: "chart.1.bust", text: "8o" }));
    act(() => run(store, { kind: "setUnread", field: "chart.2.lengths.backWaistLength", text: "4x" }));
    act(() => run(store, { kind: "setUnread", field: "measure.height", text: "tall" }));
    await user.click(button("Use these 3 sizes"));
    expect(work().unread).toEqual({ "measure.height": "tall" });
    act(() => undo(store));
    expect(work().unread).toEqual({
      "chart.1.bust": "8o",
      "chart.2.lengths.backWaistLength": "4x",
      "measure.height": "tall",
    });
  });

  it("keeps a paste that was not taken, and drops it when she leaves it", async () => {
    const { user, work } = await paste("nothing like a chart");
    expect(work().unread["chart.paste"]).toBe("nothing like a chart");
    expect(screen.queryByRole("button", { name: /^Use / })).toBeNull();
    await user.click(button("Leave it"));
    expect(work().unread).toEqual({});
    expect(work().pattern).toBe(sampleWork.pattern);
  });
});

describe("the rest of the envelope", () => {
  it("takes an invented chart, and undo brings the old one back", async () => {
    const { user, work, store } = await renderWork(<EnvelopeStep />);
    await user.click(button("Harbour bodice (invented)"));
    expect(work().pattern.name).toBe("Harbour bodice (invented)");
    act(() => undo(store));
    expect(work().pattern).toEqual(sampleWork.pattern);
  });

  it("adds a cup version a step fuller than the last, and removes one", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />);
    await user.click(button("Add a version"));
    expect(work().pattern.chart.cups.at(-1)).toEqual({ label: "DD", difference: 125 });
    await user.click(button("Remove cup version B"));
    expect(work().pattern.chart.cups.map((cup) => cup.label)).toEqual(["C", "D", "DD"]);
  });

  it("sets length and closure", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />);
    await user.click(screen.getByRole("radio", { name: "To the waist" }));
    await user.click(screen.getByRole("radio", { name: "Left side" }));
    expect(work().pattern.length).toBe("waist");
    expect(work().pattern.closure).toEqual({ place: "side", belowWaist: 180 });
  });
});

describe("what could not be read", () => {
  const typed = {
    unread: { "chart.1.waist": "wide", "cups.2": "much" },
    pattern: {
      ...testWork.pattern,
      chart: {
        ...testWork.pattern.chart,
        sizes: [800, 880, 840].map((bust, at) => ({ label: `S${at}`, bust, waist: bust - 180, hip: bust + 60 })),
      },
    },
  };
  const value = (name: string): string => screen.getByRole<HTMLInputElement>("textbox", { name }).value;

  it("goes along with its row where the sizes are put in order or one is taken out, as one step", async () => {
    const { user, store } = await renderWork(<EnvelopeStep />, typed);
    expect(value("Waist of size S1")).toBe("wide");
    await user.click(screen.getByRole("button", { name: "Put the sizes in order" }));
    expect([value("Waist of size S1"), value("Waist of size S2")]).toEqual(["wide", "66"]);
    await user.click(screen.getByRole("button", { name: "Remove size S0" }));
    expect([value("Waist of size S1"), value("Waist of size S2")]).toEqual(["wide", "66"]);
    await user.click(screen.getByRole("button", { name: "Remove cup version B" }));
    expect([value("Difference of D"), value("Difference of C")]).toEqual(["much", "7.5"]);
    expect(store.getState().past).toHaveLength(3);
    await user.click(screen.getByRole("button", { name: "Remove size S1" }));
    expect(store.getState().work.unread).toEqual({ "cups.1": "much" });
  });
});
