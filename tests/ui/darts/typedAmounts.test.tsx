/** What is typed or slid on the way to an amount leaves nothing behind, and what is seen of a dart is in the work. */
import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { ref, testWork, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const waistDart = ref("front", "waistDart");
const end = {
  kind: "dartEnd",
  id: "dartEnd-front-waistDart",
  dart: waistDart,
  shorten: 20,
  across: 0,
  hold: "fullness",
  giveBack: { sideSeam: 0.5, centreSeam: 0.3, otherDart: 0.2 },
} as const satisfies Alteration;

async function show(work: Work) {
  const rendered = await renderWork(<DartsPanel />, work);
  act(() => viewNow().setState({ selectedDart: waistDart }));
  return rendered;
}

const change = (field: HTMLElement, values: readonly string[]): void => {
  for (const value of values) fireEvent.change(field, { target: { value } });
};

describe("an amount", () => {
  it("that is nothing on the way keeps how the dart is held, and where its width goes", async () => {
    const { work } = await show(withAlterations(end));
    const shorten = screen.getByRole("textbox", { name: "Shorten by" });
    change(shorten, ["", "0", "0."]);
    expect(work().alterations).toEqual([]);
    change(shorten, ["0.5"]);
    expect(work().alterations).toEqual([{ ...end, shorten: 0.5 }]);
  });
});

describe("a share", () => {
  it("that is slid to the whole and back leaves the others as they were to each other", async () => {
    const { work } = await show(withAlterations(end));
    const [side] = screen.getAllByRole("slider").filter((slider) => slider.closest(".shares") !== null);
    expect(side).toBeDefined();
    if (side === undefined) return;
    change(side, ["100", "50"]);
    expect(work().alterations).toEqual([end]);
  });
});

describe("what is seen of a sewn dart", () => {
  const open = async (): Promise<HTMLElement> => {
    const details = screen.getByText("Sewn, it comes out wrong").closest("details");
    if (details !== null) {
      details.open = true;
      fireEvent(details, new Event("toggle"));
    }
    return screen.findByRole("textbox", { name: /^Its end lies past the bust point/ });
  };

  it("is in the work, each half for itself, and stays with the answer that is taken, in one step", async () => {
    const { user, work, store } = await show(testWork);
    const past = await open();
    change(past, ["1", "12"]);
    expect(work().seen).toMatchObject([{ ...waistDart, half: "left", pastBustPoint: 12 }]);
    fireEvent.blur(past);
    await user.click(screen.getByRole("radio", { name: /pointed/i }));
    expect(work().seen).toMatchObject([{ pastBustPoint: 12, pointed: "pointed" }]);
    expect(store.getState().past).toHaveLength(2);
    const seen = work();
    const [first] = screen.getAllByRole("button", { name: /^Take this one/ });
    expect(first).toBeDefined();
    if (first !== undefined) await user.click(first);
    expect(work().alterations.length).toBeGreaterThan(0);
    expect(work().seen).toMatchObject([{ pastBustPoint: 12, pointed: "pointed", sewn: [], taken: {} }]);
    act(() => undo(store));
    expect(work()).toEqual(seen);
  });
});
