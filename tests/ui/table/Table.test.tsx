/** The table by keyboard: a handle moves its dart, Escape puts it back, a run of keys is one step. */
import { act, cleanup, fireEvent, screen } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { canUndo } from "../../../src/store/workStore";
import { useHold } from "../../../src/ui/darts/holdState";
import { Table } from "../../../src/ui/table/Table";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

afterEach(() => {
  cleanup();
  useHold.setState({ hold: "mouth" });
});

const handle = () => screen.getByTestId("handle-front-waistDart-apex");

describe("a handle", () => {
  it("says what it is and the figures it changes", async () => {
    await renderWork(<Table />, testWork);
    expect(handle().getAttribute("aria-label")).toMatch(/^front waist dart, end\. Mouth \d+ mm, angle [\d.]+°, fullness \d+ mm$/);
  });

  it("moves by 1 mm, with Shift by 10, and the run is one step of undo", async () => {
    const { store } = await renderWork(<Table />, testWork);
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowDown" });
    fireEvent.keyDown(handle(), { key: "ArrowDown", shiftKey: true });
    // The waist dart stands upright: down is towards its mouth.
    expect(store.getState().work.alterations).toMatchObject([{ kind: "dartEnd", shorten: 11, across: 0, hold: "mouth" }]);
    fireEvent.blur(handle());
    expect(store.getState().past).toHaveLength(1);
    expect(store.getState().gestureStart).toBeNull();
  });

  it("is put back by Escape, and nothing is left to undo", async () => {
    const { store } = await renderWork(<Table />, testWork);
    const before = store.getState().work;
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowRight" });
    expect(store.getState().work).not.toBe(before);
    fireEvent.keyDown(handle(), { key: "Escape" });
    expect(store.getState().work).toBe(before);
    expect(canUndo(store.getState())).toBe(false);
  });

  it("in inches moves by a sixteenth", async () => {
    const { store } = await renderWork(<Table />, { ...testWork, unit: "in" });
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowDown" });
    expect(store.getState().work.alterations).toMatchObject([{ shorten: 1.5875 }]);
  });
});
