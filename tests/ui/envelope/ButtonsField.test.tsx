import type { Closure } from "../../../src/core/decisions/pattern";
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { EnvelopeStep } from "../../../src/ui/envelope/EnvelopeStep";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

const LABEL = "Buttons down the centre back";
const field = (): HTMLInputElement => screen.getByRole("textbox", { name: LABEL });
const hint = (): string => document.getElementById(field().getAttribute("aria-describedby") ?? "")?.textContent ?? "";
const closing = (closure: Closure): Work => ({ ...testWork, pattern: { ...testWork.pattern, closure } });
const back = (buttons?: number): Work =>
  closing({ place: "centreBack", belowWaist: 180, ...(buttons === undefined ? {} : { buttons }) });

describe("buttons down the centre back", () => {
  it("are none to begin with, which is a zip", async () => {
    await renderWork(<EnvelopeStep />, back());
    expect(field().value).toBe("");
    expect(hint()).toBe("Leave it empty for a zip.");
  });

  it("are counted, and their distance told", async () => {
    const { user, work, store } = await renderWork(<EnvelopeStep />, back());
    await user.type(field(), "2{Enter}");
    expect(work().pattern.closure).toEqual({ place: "centreBack", belowWaist: 180, buttons: 2 });
    const whole = Number(
      /^(\d+) mm from one to the next, the first 12 mm below the neck edge, the last 12 mm above/.exec(hint())?.[1],
    );
    await user.clear(field());
    await user.type(field(), "5{Enter}");
    // Four parts of what was one; either is told to a whole millimetre.
    const part = Number(/^(\d+) mm from one to the next/.exec(hint())?.[1]);
    expect(Math.abs(part * 4 - whole)).toBeLessThanOrEqual(2.5);
    act(() => undo(store));
    expect(work().pattern.closure.buttons).toBe(2);
  });

  it("give way to a zip where the field is emptied", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, back(7));
    expect(field().value).toBe("7");
    await user.clear(field());
    await user.tab();
    expect(work().pattern.closure).toEqual({ place: "centreBack", belowWaist: 180 });
  });

  it.each(["1", "21", "7.5", "a few", "-4"])(
    "that are no such number stay as typed, beside the reason: %s",
    async (typed) => {
      const { user, work } = await renderWork(<EnvelopeStep />, back(7));
      await user.clear(field());
      await user.type(field(), `${typed}{Enter}`);
      expect(work().pattern.closure.buttons).toBe(7);
      expect(field().value).toBe(typed);
      expect(hint()).toBe("Write a whole number from 2 to 20, or leave it empty for a zip.");
      await user.clear(field());
      await user.type(field(), "9{Enter}");
      expect([work().pattern.closure.buttons, Object.keys(work().unread)]).toEqual([9, []]);
    },
  );

  it("are not asked for at a side opening, and are there again after it", async () => {
    const { user, work } = await renderWork(<EnvelopeStep />, back(7));
    await user.click(screen.getByRole("radio", { name: "Left side" }));
    expect(screen.queryByRole("textbox", { name: LABEL })).toBeNull();
    await user.click(screen.getByRole("radio", { name: "Centre back" }));
    expect(field().value).toBe("7");
    expect(work().pattern.closure.buttons).toBe(7);
  });
});
