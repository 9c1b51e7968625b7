/** Small amounts: what cannot be read stays, also when its field goes and comes back. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { undo } from "../../../src/store/workStore";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { AmountField } from "../../../src/ui/fields/AmountField";
import { useWork } from "../../../src/ui/session/useWork";
import { renderWork } from "../renderWork";

/** The drafted difference stands in for any amount of the work. */
function Amount() {
  const value = useWork((work) => work.pattern.chart.draftedDifference);
  return (
    <AmountField
      label="Amount"
      field="amount"
      value={value}
      unit="cm"
      step={1}
      set={(next) => [{ kind: "setDraftedDifference", value: next }]}
    />
  );
}

const amount = (): HTMLInputElement => screen.getByRole("textbox", { name: "Amount" });

describe("AmountField", () => {
  it("keeps what it cannot read in the work, with the reason, and goes on with the old amount", async () => {
    const { user, work } = await renderWork(<Amount />);
    const before = work().pattern.chart.draftedDifference;
    await user.clear(amount());
    await user.type(amount(), "a bit{Enter}");
    expect(work().unread).toEqual({ amount: "a bit" });
    expect(amount().value).toBe("a bit");
    expect(document.getElementById(amount().getAttribute("aria-describedby") ?? "")?.textContent).toContain("“a bit”");
    expect(work().pattern.chart.draftedDifference).toBe(before);
  });

  it("shows it again after a reload, and forgets it once a good one is there", async () => {
    const { user, work } = await renderWork(<Amount />, { unread: { amount: "a bit" } });
    expect(amount().value).toBe("a bit");
    expect(screen.getByRole("alert")).toBeTruthy();
    await user.clear(amount());
    await user.type(amount(), "33{Enter}");
    expect(work().unread).toEqual({});
    expect(work().pattern.chart.draftedDifference).toBe(33);
    expect(screen.queryByRole("alert")).toBeNull();
  });

  it("lets it go on Escape, and on a step of the arrow keys", async () => {
    const { user, work } = await renderWork(<Amount />, { unread: { amount: "a bit" } });
    const before = work().pattern.chart.draftedDifference;
    await user.click(amount());
    await user.keyboard("{Escape}");
    expect(work().unread).toEqual({});
    expect(Number(amount().value)).toBe(before);
    await user.clear(amount());
    await user.type(amount(), "x{Enter}{ArrowUp}{Enter}");
    expect(work().unread).toEqual({});
    expect(work().pattern.chart.draftedDifference).toBe(before + 1);
  });

  it("is one step of undo with what was stepped and typed in one visit", async () => {
    const { user, work, store } = await renderWork(<Amount />);
    const before = work().pattern.chart.draftedDifference;
    await user.click(amount());
    await user.keyboard("{ArrowUp}{ArrowUp}");
    await user.tab();
    expect(work().pattern.chart.draftedDifference).toBe(before + 2);
    act(() => undo(store));
    expect(work().pattern.chart.draftedDifference).toBe(before);
  });

  it("keeps what was typed for one dart while another is looked at", async () => {
    const { user } = await renderWork(<DartsPanel />);
    const shorten = (): HTMLInputElement => screen.getByRole("textbox", { name: "Shorten by" });
    const dart = (name: RegExp): HTMLElement =>
      within(screen.getByRole("list", { name: "Darts by piece" })).getByRole("button", { name });
    await user.click(dart(/^Front waist dart/));
    await user.clear(shorten());
    await user.type(shorten(), "some");
    await user.click(dart(/^Back waist dart/));
    expect(shorten().value).not.toBe("some");
    await user.click(dart(/^Front waist dart/));
    expect(shorten().value).toBe("some");
    expect(screen.getByText(/“some”/)).toBeTruthy();
  });
});
