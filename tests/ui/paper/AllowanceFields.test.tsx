import type { Closure } from "../../../src/core/decisions/pattern";
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { AllowanceFields } from "../../../src/ui/paper/AllowanceFields";
import { planOf, testWork } from "../../support/works";
import { useSaid } from "../../../src/ui/session/useSaid";
import { renderWork } from "../renderWork";

const { pieces } = planOf(testWork).left;
const closing = (closure: Closure): Work => ({ ...testWork, pattern: { ...testWork.pattern, closure } });
const buttoned = closing({ place: "centreBack", belowWaist: 180, buttons: 9 });

/** All that is said beside the fields. */
const said = (): string => (document.body.textContent ?? "").replaceAll("\u00A0", " ");

describe("the button stand beside the allowances", () => {
  it("is called narrow until 30 mm or more are allowed at the centre seam", async () => {
    const { user, work } = await renderWork(<AllowanceFields pieces={pieces} />, buttoned);
    expect(
      screen.getByText("Only 15 mm at the centre seam: narrow for a button stand. Allow 30 mm or more."),
    ).toBeTruthy();
    await user.type(screen.getByRole("textbox", { name: "Centre seam" }), "3{Enter}");
    expect(work().allowances).toEqual({ centre: 30 });
    expect(screen.queryByText(/button stand/)).toBeNull();
  });

  it.each([
    // 1 1/4 in is 31.75 mm, kept to a tenth; 30 mm lie between two marks of the tape.
    { unit: "cm", only: "15 mm", name: "Make it 30 mm", centre: 30 },
    { unit: "in", only: "about 19/32 in", name: "Make it 1 ¼ in", centre: 31.8 },
  ] as const)("is made wide enough by one press: $name", async ({ unit, only, name, centre }) => {
    const { user, work, store, showing } = await renderWork(<AllowanceFields pieces={pieces} />, { ...buttoned, unit });
    const before = work();
    expect(said()).toContain(`Only ${only} at the centre seam`);
    screen.getByRole("button", { name: new RegExp(`^${name.replaceAll(" ", "\\s")}$`) }).focus();
    await user.keyboard("{Enter}");
    expect(work()).toEqual({ ...before, allowances: { centre } });
    expect(screen.queryByText(/button stand/)).toBeNull();
    expect(screen.queryByRole("button")).toBeNull();
    const told = useSaid.of(showing()).getState().text.replaceAll("\u00A0", " ");
    expect(told).toBe(`The centre seam has ${name.replace("Make it ", "")} now.`);
    // The focus does not go with the button.
    expect(document.activeElement).toBe(screen.getByText(/^Seam and hem allowances/));
    act(() => undo(store));
    expect(work()).toEqual(before);
    expect(screen.getByRole("button", { name: /^Make it/ })).toBeTruthy();
  });

  it("is left to her where she chose an allowance of her own, or is typing one", async () => {
    const { unmount } = await renderWork(<AllowanceFields pieces={pieces} />, {
      ...buttoned,
      allowances: { centre: 20 },
    });
    expect(screen.getByText(/Only 20\smm at the centre seam/)).toBeTruthy();
    expect(screen.queryByRole("button")).toBeNull();
    unmount();
    await renderWork(<AllowanceFields pieces={pieces} />, { ...buttoned, unread: { "allowance.centre": "9" } });
    expect(screen.getByText(/narrow for a button stand/)).toBeTruthy();
    expect(screen.queryByRole("button")).toBeNull();
  });

  it("is offered too where the usual allowance stands in the work, as in a new one in inches", async () => {
    await renderWork(<AllowanceFields pieces={pieces} />, { ...buttoned, unit: "in", allowances: { centre: 15.9 } });
    expect(said()).toContain("Only 5/8 in at the centre seam: narrow for a button stand. Allow 1 ¼ in or more.");
    expect(screen.getByRole("button", { name: /^Make it 1\s¼\sin$/ })).toBeTruthy();
  });

  it.each<[string, Work]>([
    ["a zip", closing({ place: "centreBack", belowWaist: 180 })],
    ["an opening at the side", closing({ place: "side", belowWaist: 180, buttons: 9 })],
  ])("is none with %s", async (_, work) => {
    await renderWork(<AllowanceFields pieces={pieces} />, work);
    expect(screen.queryByText(/button stand/)).toBeNull();
  });
});
