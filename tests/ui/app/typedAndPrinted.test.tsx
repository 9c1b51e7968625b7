/** Printing by the browser's own command in the middle of an entry: what is typed is on the sheet. */
import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import { App } from "../../../src/ui/app/App";
import { usePageState, type Step } from "../../../src/ui/session/pageState";
import { undo } from "../../../src/store/workStore";
import { ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

vi.setConfig({ testTimeout: 240_000 });

const slowly = { timeout: 20_000 };
const goTo = (step: Step): void => act(() => usePageState.getState().setStep(step));
const field = (name: string | RegExp): Promise<HTMLElement> => screen.findByRole("textbox", { name }, slowly);
const type = async (name: string | RegExp, text: string): Promise<void> =>
  void fireEvent.change(await field(name), { target: { value: text } });
const print = (): void => act(() => void window.dispatchEvent(new Event("beforeprint")));
const printed = (name: string): string => screen.getByRole("article", { name }).textContent.replaceAll("\u00a0", " ");

async function show(step: Step) {
  const rendered = await renderWork(<App />, { ...testWork, invented: false });
  goTo("paper");
  await screen.findByRole("article", { name: "Alteration checklist" }, slowly);
  goTo(step);
  return rendered;
}

describe("what is typed in a field that is not left yet", () => {
  it("is on the checklist: an amount of a dart", async () => {
    const { store, work } = await show("darts");
    await screen.findByRole("button", { name: /^Front waist dart/ }, slowly);
    act(() => viewNow().setState({ selectedDart: ref("front", "waistDart") }));
    await type("Shorten by", "25");
    print();
    expect(printed("Alteration checklist")).toContain("Shorten the waist dart by 25 mm");
    expect([store.getState().gesture, store.getState().past.length]).toEqual([null, 1]);
    act(() => undo(store));
    expect(work().alterations).toEqual([]);
  });

  it("is on the checklist: names of the work and of the pattern", async () => {
    await show("envelope");
    await type("Pattern", "Moss");
    await type("Name of this work", "Green");
    print();
    expect(printed("Alteration checklist")).toContain("Pattern: Moss");
    expect(printed("Alteration checklist")).toContain("Green");
    // The field in the head of the page is still there, with its text.
    expect(await field("Name of this work")).toHaveProperty("value", "Green");
  });

  it("is on the measure sheet: whose they are, and a measure", async () => {
    await show("tape");
    await type("Whose measures these are", "Ada");
    await type(/^Waist/, "77.7");
    print();
    expect(printed("Measure sheet")).toContain("Test for Ada");
    expect(printed("Measure sheet")).toContain("last time 77.7 cm");
  });

  it("is on the trial record: whose it is", async () => {
    await show("tape");
    await type("Whose measures these are", "Ada");
    goTo("paper");
    act(() => usePageState.getState().showSheet("trial"));
    print();
    expect(printed("Trial record")).toContain("Test for Ada");
  });

  it("is taken before anything that is pressed is done with it, though the field keeps the focus", async () => {
    const { store, work } = await show("tape");
    await type(/^Waist/, "77.7");
    fireEvent.click(await field(/^Bust girth/));
    expect([store.getState().gesture, store.getState().past.length]).toEqual([null, 1]);
    expect(work().tapes[0]?.readings.waistGirth).toEqual([777]);
  });

  it("is a size of the chart where the new line is whole", async () => {
    const { work, store } = await show("envelope");
    const before = work().pattern.chart.sizes.length;
    for (const [name, text] of [
      ["Name", "30"],
      ["Bust", "132"],
      ["Waist", "114"],
      ["Hip", "138"],
    ] as const)
      // oxlint-disable-next-line no-await-in-loop -- one field after another
      await type(`${name} of the new size`, text);
    expect(work().pattern.chart.sizes).toHaveLength(before);
    print();
    expect(work().pattern.chart.sizes.slice(before)).toEqual([{ label: "30", bust: 1320, waist: 1140, hip: 1380 }]);
    expect([work().unread, store.getState().past.length]).toEqual([{}, 1]);
  });
});
