/** What a dart can be set to is sought a plan at a time where the ledger is long, so that the page is never held up by it. */
import { screen } from "@testing-library/react";
import { expect, it, vi } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { settingOf } from "../../../src/core/plan/setDart";
import { invariant } from "../../../src/core/result";
import { demoWorks } from "../../../src/document/demo";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { renderWork } from "../renderWork";

vi.mock("../../../src/core/plan/setDart", { spy: true });

const midriff = invariant(demoWorks()[3], "demo");
const SET = { name: "Set it as your cup asks" };

/** To and fro, so that all of them can be made and none is left of it. */
const longLedger = Array.from({ length: 42 }, (_, i): Alteration => ({
  kind: "dartEnd",
  id: `end${i}`,
  dart: { piece: "back", dart: "underBustDart" },
  shorten: i % 2 === 0 ? 1 : -1,
  across: 0,
  hold: "fullness",
  giveBack: {},
}));

it("is there at once where the ledger is short", async () => {
  await renderWork(<DartsPanel />, midriff);
  expect(screen.getByRole("button", SET)).toBeDefined();
});

it("comes a moment later where it is long, is found piece by piece, and does the same", async () => {
  vi.mocked(settingOf).mockClear();
  const { user, work } = await renderWork(<DartsPanel />, { ...midriff, alterations: longLedger });
  expect(screen.queryByRole("button", SET)).toBeNull();
  expect(screen.getByText(/^Too flat/)).toBeDefined();
  const button = await screen.findByRole("button", SET, { timeout: 20_000 });
  expect(settingOf).not.toHaveBeenCalled();
  await user.click(button);
  expect(work().alterations.length).toBeGreaterThan(longLedger.length);
  expect(screen.queryByText(/^Too flat/)).toBeNull();
});
