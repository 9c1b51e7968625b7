/** The day of a set, sets of other days, and throwing them away. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { run, undo } from "../../../src/store/workStore";
import { TapeDays } from "../../../src/ui/tape/TapeDays";
import { renderWork } from "../renderWork";

const day = (): HTMLElement => screen.getByLabelText("Measured on");
const button = (name: string): HTMLElement => screen.getByRole("button", { name });
const sets = {
  tapes: [
    { taken: "2026-10-03", readings: { waistGirth: [770], hipGirth: [985] } },
    { taken: "2026-03-01", readings: { waistGirth: [738], hipGirth: [980] } },
    { readings: { neckBaseGirth: [370] } },
  ],
};

beforeEach(() => {
  vi.setSystemTime(new Date(2026, 9, 5, 12));
});
afterEach(() => {
  vi.useRealTimers();
});

describe("the day", () => {
  it("is kept where a part of it was taken out and not put in again", async () => {
    const { work } = await renderWork(<TapeDays />, sets);
    // As browsers have it: a date with a part missing is bad input, and its value is empty.
    Object.defineProperty(day(), "validity", { value: { badInput: true } });
    fireEvent.change(day(), { target: { value: "" } });
    fireEvent.blur(day());
    expect(work().tapes[0]?.taken).toBe("2026-10-03");
    expect(day()).toHaveProperty("value", "2026-10-03");
  });

  it("is taken as it is typed, as one step, and a year on the way is none", async () => {
    const { work, store } = await renderWork(<TapeDays />, sets);
    for (const value of ["0002-10-04", "0202-10-04"]) {
      fireEvent.change(day(), { target: { value } });
      expect([work().tapes[0]?.taken, work().unread]).toEqual(["2026-10-03", { taken: value }]);
      expect(day()).toHaveProperty("value", value);
      expect(day().getAttribute("aria-invalid")).toBe("false");
    }
    fireEvent.change(day(), { target: { value: "2026-10-04" } });
    expect([work().tapes[0]?.taken, work().unread]).toEqual(["2026-10-04", {}]);
    fireEvent.blur(day());
    expect(work().tapes[0]?.taken).toBe("2026-10-04");
    expect(store.getState().past).toHaveLength(1);
  });

  it("can be none", async () => {
    const { work } = await renderWork(<TapeDays />, sets);
    fireEvent.change(day(), { target: { value: "" } });
    fireEvent.blur(day());
    expect(work().tapes[0]?.taken).toBeUndefined();
  });

  it.each([
    ["2026-10-06", "This day is still to come."],
    ["0026-10-04", "Write the year with all four digits."],
  ])("is not %s: %s", async (value, said) => {
    const { work } = await renderWork(<TapeDays />, sets);
    fireEvent.change(day(), { target: { value } });
    fireEvent.blur(day());
    expect(work().tapes[0]?.taken).toBe("2026-10-03");
    expect(document.getElementById(day().getAttribute("aria-describedby") ?? "")?.textContent).toBe(said);
  });

  it("is today on one tap", async () => {
    const { user, work } = await renderWork(<TapeDays />, { tapes: [{ readings: {} }] });
    await user.click(button("today"));
    expect(work().tapes[0]?.taken).toBe("2026-10-05");
  });
});

describe("sets", () => {
  it("are begun anew today, and put back while nothing was taken", async () => {
    const { user, work } = await renderWork(<TapeDays />, sets);
    await user.click(button("Measure anew"));
    expect(work().tapes[0]).toEqual({ taken: "2026-10-05", readings: {} });
    expect(screen.queryByRole("button", { name: "Measure anew" })).toBeNull();
    await user.click(button("Back to the measures of before"));
    expect(work().tapes).toEqual(sets.tapes);
  });

  it("keep what could not be read of each, through another begun and sets thrown away", async () => {
    const begun = { "measure.waistGirth.1": "7o", taken: "0202-10-04", "measure.height": "tall" };
    const { user, work, store } = await renderWork(<TapeDays />, {
      ...sets,
      unread: { ...begun, "chart.0.bust": "8o" },
    });
    await user.click(button("Measure anew"));
    // Three sets were there: the newest of them is the third.
    const aside = {
      "set.3.measure.waistGirth.1": "7o",
      "set.3.taken": "0202-10-04",
      "set.3.measure.height": "tall",
      "chart.0.bust": "8o",
    };
    expect(work().unread).toEqual(aside);
    act(() => run(store, { kind: "setUnread", field: "measure.height", text: "taller" }));
    await user.click(button("Back to the measures of before"));
    expect(work().unread).toEqual({ ...begun, "chart.0.bust": "8o" });
    act(() => undo(store));
    expect(work().unread).toEqual({ ...aside, "measure.height": "taller" });
    // Of four sets the one of 1 March is the second: those younger than it move up.
    act(() => run(store, { kind: "setMeasure", measure: "waistGirth", value: 760 }));
    act(() => run(store, { kind: "setUnread", field: "set.2.measure.height", text: "small" }));
    await user.click(screen.getByText("Compare with an earlier set"));
    await user.selectOptions(screen.getByLabelText("Measures of"), "1 March 2026");
    await user.click(button("Throw away the earlier, of 1 March 2026"));
    expect(work().unread).toEqual({
      "set.2.measure.waistGirth.1": "7o",
      "set.2.taken": "0202-10-04",
      "set.2.measure.height": "tall",
      "measure.height": "taller",
      "chart.0.bust": "8o",
    });
  });

  it("stand beside each other, measure by measure", async () => {
    const { user } = await renderWork(<TapeDays />, sets);
    await user.click(screen.getByText("Compare with an earlier set"));
    // One reading each, spread 10: changed above 1.645 √200 = 23.3 mm.
    const rows = within(screen.getByRole("table"))
      .getAllByRole("row")
      .map((row) => row.textContent);
    expect(rows.slice(1)).toEqual([
      "waist77.0 cm73.8 cm+3.2 cm changed",
      "hip98.5 cm98.0 cm+0.5 cm within what a tape does",
    ]);
    await user.selectOptions(screen.getByLabelText("Measures of"), "a day not said");
    expect(screen.getByText("No measure was taken both times.")).toBeTruthy();
  });

  it("can be thrown away, either of the two, and come back on undo", async () => {
    const { user, work, store } = await renderWork(<TapeDays />, sets);
    await user.click(button("Throw away the earlier, of 1 March 2026"));
    expect(work().tapes.map(({ taken }) => taken)).toEqual(["2026-10-03", undefined]);
    act(() => undo(store));
    await user.click(button("Throw away this, of 3 October 2026"));
    expect(work().tapes.map(({ taken }) => taken)).toEqual(["2026-03-01", undefined]);
    act(() => undo(store));
    expect(work().tapes).toEqual(sets.tapes);
  });

  it("are as many as a work keeps", async () => {
    await renderWork(<TapeDays />, { tapes: Array.from({ length: 24 }, () => ({ readings: { waistGirth: [738] } })) });
    expect(screen.queryByRole("button", { name: "Measure anew" })).toBeNull();
    expect(screen.getByText(/^24 sets are kept\./)).toBeTruthy();
  });
});
