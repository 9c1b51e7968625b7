import type { Closure } from "../../../src/core/decisions/pattern";
import { screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { AllowanceFields } from "../../../src/ui/paper/AllowanceFields";
import { planOf, testWork } from "../../support/works";
import { renderWork } from "../renderWork";

const { pieces } = planOf(testWork).left;
const closing = (closure: Closure): Work => ({ ...testWork, pattern: { ...testWork.pattern, closure } });
const buttoned = closing({ place: "centreBack", belowWaist: 180, buttons: 9 });

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

  it.each<[string, Work]>([
    ["a zip", closing({ place: "centreBack", belowWaist: 180 })],
    ["an opening at the side", closing({ place: "side", belowWaist: 180, buttons: 9 })],
  ])("is none with %s", async (_, work) => {
    await renderWork(<AllowanceFields pieces={pieces} />, work);
    expect(screen.queryByText(/button stand/)).toBeNull();
  });
});
