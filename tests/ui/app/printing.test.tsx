/** Printing by the browser's own command while the sheets may not be loaded yet. Parts are loaded once for a whole file of tests. */
import { act, screen } from "@testing-library/react";
import { expect, it } from "vitest";
import { App } from "../../../src/ui/app/App";
import { usePageState } from "../../../src/ui/session/pageState";
import { STEP_PARTS } from "../../../src/ui/app/parts";
import { renderWork } from "../renderWork";

const print = (): void => {
  act(() => void window.dispatchEvent(new Event("beforeprint")));
  act(() => void window.dispatchEvent(new Event("afterprint")));
};
const instead = (): HTMLElement | null => screen.queryByText(/^The sheet was not loaded yet/);

it("prints a plain sentence before the sheets are there, and says to print again until she does", async () => {
  await renderWork(<App />);
  expect(STEP_PARTS.paper.get().kind).toBe("waiting");
  print();
  expect(instead()?.classList).toContain("print-instead");
  // Once the sheet stands there, it is still to be printed.
  expect(await screen.findByRole("article", { name: "Measure sheet" })).toBeTruthy();
  expect(instead()?.textContent).toContain("Print again");
  print();
  expect(instead()).toBeNull();
  expect(screen.getByRole("article", { name: "Measure sheet" })).toBeTruthy();
});

it("prints the checklist from any other step, in the very breath in which it is asked for", async () => {
  await renderWork(<App />);
  act(() => usePageState.getState().setStep("blend"));
  act(() => void window.dispatchEvent(new Event("beforeprint")));
  expect(instead()).toBeNull();
  expect(screen.getByRole("article", { name: "Alteration checklist" }).textContent).toContain("Alteration checklist");
});

it("says nothing of it any more on another step", async () => {
  await renderWork(<App />);
  act(() => usePageState.getState().setPrintedTooSoon(true));
  expect(instead()).not.toBeNull();
  act(() => usePageState.getState().setStep("blend"));
  expect(instead()).toBeNull();
});
