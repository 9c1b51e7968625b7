import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { act, fireEvent, screen, within } from "@testing-library/react";
import type { UserEvent } from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import { App } from "../../../src/ui/app/App";
import { STEP_PARTS } from "../../../src/ui/app/parts";
import { renderWork } from "../renderWork";

const steps = (): HTMLElement => screen.getByRole("navigation", { name: "Steps of the work" });
const waist = (): HTMLInputElement => screen.getByRole("textbox", { name: /^Waist girth/ });

function goTo(hash: string): void {
  act(() => {
    window.location.hash = hash;
    window.dispatchEvent(new Event("hashchange"));
  });
}

async function changeWaist(user: UserEvent): Promise<void> {
  await user.clear(waist());
  await user.type(waist(), "80{Enter}");
}

describe("the thread", () => {
  it("leads to any step at any time and says which one is open", async () => {
    await renderWork(<App />);
    for (const [hash, heading] of [
      ["#paper", "Paper"],
      ["#envelope", "Envelope"],
      ["#tissue", "Your tissue"],
      ["#darts", "Darts"],
      ["#blend", "Blend"],
      ["#tape", "Tape"],
    ] as const) {
      goTo(hash);
      expect(await screen.findByRole("heading", { level: 2, name: heading })).toBeTruthy();
      const here = within(steps())
        .getAllByRole("link")
        .filter((link) => link.hasAttribute("aria-current"));
      expect(here.map((link) => link.getAttribute("href"))).toEqual([hash]);
    }
  });

  it("goes on to the next step where a step ends", async () => {
    await renderWork(<App />);
    expect(screen.getByRole("link", { name: "On to Envelope" }).getAttribute("href")).toBe("#envelope");
    goTo("#paper");
    expect(screen.queryByRole("link", { name: /^On to/ })).toBeNull();
  });

  it("stays where it is for an address that names no step", async () => {
    await renderWork(<App />);
    goTo("#blend");
    goTo("#elsewhere");
    expect(await screen.findByRole("heading", { level: 2, name: "Blend" })).toBeTruthy();
  });
});

describe("the unit", () => {
  it("changes what every field shows and nothing of what was measured", async () => {
    const { user, work } = await renderWork(<App />, { tapes: tapesOf({ waistGirth: 762 }) });
    expect(waist().value).toBe("76.2");
    await user.click(screen.getByRole("radio", { name: "in" }));
    expect(waist().value).toBe("30");
    expect(measuresOf(work().tapes)).toEqual({ waistGirth: 762 });
    await user.clear(waist());
    await user.type(waist(), "30 1/2{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBeCloseTo(774.7, 6);
  });
});

describe("undo", () => {
  it("takes back and brings again, by button", async () => {
    const { user, work } = await renderWork(<App />, { tapes: tapesOf({ waistGirth: 762 }) });
    const undo = screen.getByRole("button", { name: "Undo" });
    expect(undo.getAttribute("aria-disabled")).toBe("true");
    await changeWaist(user);
    act(() => undo.focus());
    await user.keyboard("{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBe(762);
    // At the first step there is nothing more, and the focus stays where it is.
    expect(undo.getAttribute("aria-disabled")).toBe("true");
    expect(document.activeElement).toBe(undo);
    await user.keyboard("{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBe(762);
    await user.click(screen.getByRole("button", { name: "Redo" }));
    expect(measuresOf(work().tapes).waistGirth).toBe(800);
  });

  it("takes back and brings again, by keyboard", async () => {
    const { user, work } = await renderWork(<App />, { tapes: tapesOf({ waistGirth: 762 }) });
    await changeWaist(user);
    fireEvent.keyDown(document.body, { key: "z", ctrlKey: true });
    expect(measuresOf(work().tapes).waistGirth).toBe(762);
    fireEvent.keyDown(document.body, { key: "Z", metaKey: true, shiftKey: true });
    expect(measuresOf(work().tapes).waistGirth).toBe(800);
  });

  it("leaves the keys to the text while she types in a field", async () => {
    const { user, work } = await renderWork(<App />, { tapes: tapesOf({ waistGirth: 762 }) });
    await changeWaist(user);
    fireEvent.keyDown(waist(), { key: "z", ctrlKey: true });
    expect(measuresOf(work().tapes).waistGirth).toBe(800);
  });
});

describe("the page", () => {
  it("says that measures stay here", async () => {
    await renderWork(<App />);
    expect(screen.getByText(/Your measures stay in this browser/)).toBeTruthy();
  });

  it("closes the ledger and opens it again", async () => {
    const { user } = await renderWork(<App />);
    const ledger = screen.getByRole("complementary", { name: "Ledger of alterations and checks" });
    expect(await within(ledger).findByRole("heading", { name: "Ledger" })).toBeTruthy();
    await user.click(screen.getByRole("button", { name: "Close the ledger" }));
    expect(within(ledger).queryByRole("heading", { name: "Ledger" })).toBeNull();
    await user.click(screen.getByRole("button", { name: "Open the ledger" }));
    expect(within(ledger).getByRole("heading", { name: "Ledger" })).toBeTruthy();
  });

  it("turns to the paper when the browser is about to print", async () => {
    await renderWork(<App />);
    await act(() => STEP_PARTS.paper.fetchAhead());
    act(() => {
      window.dispatchEvent(new Event("beforeprint"));
    });
    expect(screen.getByRole("heading", { level: 2, name: "Paper" })).toBeTruthy();
    expect(screen.getByRole("article", { name: "Measure sheet" })).toBeTruthy();
  });

  it("renames the work", async () => {
    const { user, work } = await renderWork(<App />);
    const name = screen.getByRole("textbox", { name: "Name of this work" });
    await user.clear(name);
    await user.type(name, "Summer dress{Enter}");
    expect(work().name).toBe("Summer dress");
  });
});
