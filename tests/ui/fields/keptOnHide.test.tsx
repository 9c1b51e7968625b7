/** What is typed but not yet left is kept when the page goes away. */
import { act, screen } from "@testing-library/react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { useGesture, useWork } from "../../../src/ui/session/useWork";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { AmountField } from "../../../src/ui/fields/AmountField";
import { LengthField } from "../../../src/ui/fields/LengthField";
import { renderWork } from "../renderWork";

function Fields() {
  const gesture = useGesture();
  const waist = useWork((work) => measuresOf(work.tapes).waistGirth);
  const difference = useWork((work) => work.pattern.chart.draftedDifference);
  return (
    <>
      <LengthField
        label="Waist"
        field="waist"
        value={waist}
        set={(value) => ({ kind: "setMeasure", measure: "waistGirth", value })}
      />
      <AmountField
        label="Amount"
        field="amount"
        value={difference}
        unit="cm"
        step={1}
        onStart={gesture.begin}
        onPreview={(value) => gesture.preview({ kind: "setDraftedDifference", value })}
        onCommit={gesture.commit}
        onCancel={gesture.cancel}
      />
    </>
  );
}

const input = (name: string): HTMLInputElement => screen.getByRole("textbox", { name });
/** The page saves itself on both, which takes its time. */
const leave = (): Promise<void> => act(async () => void window.dispatchEvent(new Event("pagehide")));
const hidden = (state: DocumentVisibilityState): Promise<void> => {
  vi.spyOn(document, "visibilityState", "get").mockReturnValue(state);
  return act(async () => void document.dispatchEvent(new Event("visibilitychange", { bubbles: true })));
};

afterEach(() => {
  vi.restoreAllMocks();
});

describe("a page that goes away", () => {
  it("keeps a length and an amount on pagehide, before anybody who saves on it", async () => {
    const { user, work } = await renderWork(<Fields />, { tapes: tapesOf({ waistGirth: 700 }) });
    const seen: (number | undefined)[] = [];
    const saves = (): void => void seen.push(measuresOf(work().tapes).waistGirth);
    window.addEventListener("pagehide", saves);
    await user.clear(input("Waist"));
    await user.type(input("Waist"), "74.5");
    await leave();
    window.removeEventListener("pagehide", saves);
    expect(seen).toEqual([745]);
    await user.clear(input("Amount"));
    await user.type(input("Amount"), "31");
    await leave();
    expect(work().pattern.chart.draftedDifference).toBe(31);
  });

  it("keeps what cannot be read as it was typed", async () => {
    const { user, work } = await renderWork(<Fields />, { tapes: tapesOf({ waistGirth: 700 }) });
    await user.clear(input("Waist"));
    await user.type(input("Waist"), "seventy");
    await leave();
    expect(work().unread).toEqual({ waist: "seventy" });
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
  });

  it("does so when it is hidden, and not when it comes back", async () => {
    const { user, work } = await renderWork(<Fields />, { tapes: tapesOf({ waistGirth: 700 }) });
    await user.clear(input("Waist"));
    await user.type(input("Waist"), "74");
    await hidden("visible");
    expect(measuresOf(work().tapes).waistGirth).toBe(700);
    await hidden("hidden");
    expect(measuresOf(work().tapes).waistGirth).toBe(740);
    // She comes back and types on.
    await user.type(input("Waist"), ".5{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBe(745);
  });

  it("changes nothing where nothing waits", async () => {
    const { work, store } = await renderWork(<Fields />, { tapes: tapesOf({ waistGirth: 700 }) });
    const before = work();
    await leave();
    expect(work()).toBe(before);
    expect(store.getState().past).toHaveLength(0);
  });
});
