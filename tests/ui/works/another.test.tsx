/** What the page remembers of one work must never answer for another: the copy has the very same darts, alterations and sizes. */
import { act, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { App } from "../../../src/ui/app/App";
import { usePageState } from "../../../src/ui/session/pageState";
import { useViewState } from "../../../src/ui/session/viewState";
import { useChoices } from "../../../src/ui/paper/choicesState";
import { sampleWork } from "../../support/sampleWork";
import { renderWork, type Rendered } from "../renderWork";

/** A waist let out on the left half alone, so that there are two halves to look at. */
const uneven: Partial<Work> = {
  alterations: [
    ...sampleWork.alterations,
    { kind: "fit", id: "fit-sideSeamWaist-left", fit: "sideSeamWaist", amount: 6, half: "left" },
  ],
};

const COPY = `${sampleWork.name} (copy)`;

async function openWork({ user, work }: Rendered, name: string): Promise<void> {
  await user.click(screen.getByRole("button", { name: "Works" }));
  const menu = screen.getByRole("region", { name: "Your works" });
  await user.click(await within(menu).findByRole("button", { name: `Open ${name}` }));
  await waitFor(() => expect(work().name).toBe(name));
}

/** The page with a work and its copy, the first one open. */
async function withCopy(): Promise<Rendered> {
  const rendered = await renderWork(<App />, uneven);
  const { user, work } = rendered;
  await user.click(screen.getByRole("button", { name: "Works" }));
  await user.click(await screen.findByRole("button", { name: `Copy ${sampleWork.name}` }));
  await waitFor(() => expect(work().name).toBe(COPY));
  await openWork(rendered, sampleWork.name);
  return rendered;
}

const goTo = (step: "tape" | "darts" | "fit" | "paper"): void => act(() => usePageState.getState().setStep(step));

describe("another work, opened through the menu", () => {
  it("is shown with nothing of what was remembered of the last", async () => {
    const rendered = await withCopy();
    const before = rendered.showing();
    act(() => {
      useViewState.of(before).setState({
        selectedDart: { piece: "back", dart: "waistDart" },
        litAlteration: "end-1",
        litShare: 0.3,
        half: "right",
      });
      useChoices
        .of(before)
        .getState()
        .choose({ size: "12", leftOut: ["back"], under: ["14"], before: true });
    });
    await openWork(rendered, COPY);
    const after = rendered.showing();
    expect(after).not.toBe(before);
    for (const store of [useViewState, useChoices]) {
      expect(store.of(before).getState()).not.toEqual(store.of(before).getInitialState());
      expect(store.of(after).getState()).toEqual(store.of(after).getInitialState());
    }
    expect(useViewState.of(after).getState()).toMatchObject({
      selectedDart: null,
      litAlteration: null,
      litShare: 1,
      half: "left",
    });
    expect(useChoices.of(after).getState()).toMatchObject({ size: null, leftOut: [], under: [], before: false });
  });

  it("has its darts as they are: none chosen, nothing seen of them, the left half", async () => {
    const rendered = await withCopy();
    const { user } = rendered;
    goTo("darts");
    await user.click(await screen.findByRole("button", { name: /^Front waist dart/ }));
    await user.click(screen.getByText("Sewn, it comes out wrong"));
    const past = (): Promise<HTMLInputElement> =>
      screen.findByRole("textbox", { name: /^Its end lies past the bust point by/ });
    const first = (await past()).value;
    await user.clear(await past());
    await user.type(await past(), "15{Enter}");
    expect((await past()).value).toBe("15");
    await user.click(screen.getByRole("button", { name: /^Back waist dart/ }));
    await user.click(await screen.findByRole("radio", { name: "your right" }));

    await openWork(rendered, COPY);
    expect((await screen.findByRole("button", { name: /^Front side dart/ })).getAttribute("aria-pressed")).toBe("true");
    expect((await screen.findByRole<HTMLInputElement>("radio", { name: "your left" })).checked).toBe(true);
    await user.click(screen.getByRole("button", { name: /^Front waist dart/ }));
    await user.click(screen.getByText("Sewn, it comes out wrong"));
    expect((await past()).value).toBe(first);
  });

  it("has nothing in its fields of what was only begun in those of the last", async () => {
    const rendered = await withCopy();
    const { user } = rendered;
    goTo("fit");
    await user.type(await screen.findByRole("searchbox", { name: "What do you see?" }), "fold");
    await openWork(rendered, COPY);
    expect((await screen.findByRole<HTMLInputElement>("searchbox", { name: "What do you see?" })).value).toBe("");
  });

  it("keeps what is about the page: the step, the sheet, and whether the ledger is open", async () => {
    const rendered = await withCopy();
    goTo("paper");
    act(() => usePageState.getState().showSheet("trial"));
    await rendered.user.click(screen.getByRole("button", { name: "Close the ledger" }));
    await openWork(rendered, COPY);
    expect(usePageState.getState()).toMatchObject({ step: "paper", sheet: "trial", ledgerOpen: false });
  });
});
