/** A key costs one plan, and leaving the field none; on Darts what one tap would do is made and read then. */
import { act, fireEvent, screen } from "@testing-library/react";
import { expect, it, vi } from "vitest";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { App } from "../../../src/ui/app/App";
import { usePageState } from "../../../src/ui/session/pageState";
import { ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

vi.mock(import("../../../src/core/plan/derivePlan"), async (original) => {
  const module = await original();
  return { ...module, derivePlan: vi.fn<typeof derivePlan>(module.derivePlan) };
});
vi.setConfig({ testTimeout: 240_000 });

const slowly = { timeout: 20_000 };
const plans = vi.mocked(derivePlan);

it.each([
  ["tape", /^Waist/, ["7", "77", "77.", "77.7"], 0],
  ["darts", "Shorten by", ["2", "25", "25.", "25.5"], 20],
] as const)("on %s", async (step, name, texts, once) => {
  await renderWork(<App />, testWork);
  act(() => usePageState.getState().setStep(step));
  await screen.findByRole("textbox", { name }, slowly);
  // With the table on the page, which follows.
  await screen.findByRole("group", { name: /^Pattern pieces/ }, slowly);
  act(() => viewNow().setState({ selectedDart: ref("front", "waistDart") }));
  const input = screen.getByRole("textbox", { name });
  for (const text of texts) {
    plans.mockClear();
    fireEvent.change(input, { target: { value: text } });
    expect([text, plans.mock.calls.length <= 1]).toEqual([text, true]);
  }
  plans.mockClear();
  fireEvent.blur(input);
  // What else is asked of the plan once it is left was asked at the last key.
  expect(plans.mock.calls.length).toBeLessThanOrEqual(once);
});
