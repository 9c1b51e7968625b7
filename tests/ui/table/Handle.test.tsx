/** Handles by keyboard: where each arrow takes them as seen on the table, and when a run of keys is over. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { DartRef } from "../../../src/core/pattern/piece";
import { canUndo, undo } from "../../../src/store/workStore";
import { Table } from "../../../src/ui/table/Table";
import { ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

async function show() {
  const rendered = await renderWork(<Table />, testWork);
  return { ...rendered, steps: () => rendered.store.getState().past.length };
}

const handle = ({ piece, dart }: DartRef, end = "apex"): HTMLElement =>
  screen.getByTestId(`handle-${piece}-${dart}-${end}`);

/** Where it is drawn. */
function spotOf(element: HTMLElement): { x: number; y: number } {
  const [x = NaN, y = NaN] = (element.getAttribute("transform")?.match(/-?[\d.]+(e-?\d+)?/g) ?? []).map(Number);
  return { x, y };
}

const DARTS = [
  ref("front", "waistDart"),
  ref("front", "sideDart"),
  ref("back", "waistDart"),
  ref("frontBasque", "waistDart"),
  ref("backBasque", "waistDart"),
];
const ARROWS = [
  ["ArrowLeft", -10, 0],
  ["ArrowRight", 10, 0],
  ["ArrowUp", 0, -10],
  ["ArrowDown", 0, 10],
] as const;

describe("an arrow key", () => {
  it.each(DARTS.map((dart) => [`${dart.piece} ${dart.dart}`, dart] as const))(
    "takes the end of the %s the way it points",
    async (_, dart) => {
      const { work, unmount } = await show();
      const before = work();
      for (const [key, dx, dy] of ARROWS) {
        const from = spotOf(handle(dart));
        act(() => handle(dart).focus());
        fireEvent.keyDown(handle(dart), { key, shiftKey: true });
        const to = spotOf(handle(dart));
        // The move is kept to whole millimetres along and across the dart: half of one each way.
        expect(Math.hypot(to.x - from.x - dx, to.y - from.y - dy)).toBeLessThan(0.75);
        fireEvent.keyDown(handle(dart), { key: "Escape" });
        expect(spotOf(handle(dart))).toEqual(from);
        expect(work()).toBe(before);
      }
      unmount();
    },
  );

  it.each([
    ["outer", "ArrowRight", { inner: 0, outer: 1 }],
    ["outer", "ArrowLeft", { inner: 0, outer: -1 }],
    // The inner mouth end lies nearer the centre front, at the left.
    ["inner", "ArrowLeft", { inner: 1, outer: 0 }],
    ["inner", "ArrowRight", { inner: -1, outer: 0 }],
  ] as const)("at the %s mouth end, %s, widens outwards and narrows inwards", async (end, key, amounts) => {
    const { work } = await show();
    act(() => viewNow().getState().selectDart(ref("front", "waistDart")));
    act(() => handle(ref("front", "waistDart"), end).focus());
    fireEvent.keyDown(handle(ref("front", "waistDart"), end), { key });
    expect(work().alterations).toMatchObject([{ kind: "dartMouth", ...amounts }]);
  });

  it("with Ctrl, Alt or the command key is not the handle's", async () => {
    const { work } = await show();
    const before = work();
    act(() => handle(ref("front", "waistDart")).focus());
    for (const modifier of ["ctrlKey", "altKey", "metaKey"]) {
      expect(fireEvent.keyDown(handle(ref("front", "waistDart")), { key: "ArrowDown", [modifier]: true })).toBe(true);
    }
    expect(work()).toBe(before);
  });

  it("moves the dart and not the table under it, nor the page", async () => {
    await show();
    const sheet = screen.getByRole("group", { name: /^Pattern pieces/ });
    const seen = sheet.getAttribute("viewBox");
    expect(fireEvent.keyDown(handle(ref("front", "waistDart")), { key: "ArrowDown" })).toBe(false);
    expect(sheet.getAttribute("viewBox")).toBe(seen);
  });
});

describe("a run of keys", () => {
  const front = ref("front", "waistDart");
  const press = (count: number) => {
    for (let pressed = 0; pressed < count; pressed += 1) fireEvent.keyDown(handle(front), { key: "ArrowDown" });
  };
  const rest = (ms: number): Promise<unknown> => act(() => vi.advanceTimersByTimeAsync(ms));

  it("is over once the keys rest, so that the next run is a step of its own", async () => {
    const { store, work, steps } = await show();
    act(() => handle(front).focus());
    press(3);
    await rest(500);
    press(2);
    expect(steps()).toBe(0);
    await rest(5000);
    expect(steps()).toBe(1);
    press(4);
    await rest(5000);
    expect(steps()).toBe(2);
    expect(work().alterations).toMatchObject([{ shorten: 9 }]);
    act(() => undo(store));
    expect(work().alterations).toMatchObject([{ shorten: 5 }]);
    act(() => undo(store));
    expect(work().alterations).toEqual([]);
  });

  it("that is over is not put back by Escape, which then goes on to whatever else listens", async () => {
    const { work, steps } = await show();
    act(() => handle(front).focus());
    press(3);
    await rest(5000);
    expect(fireEvent.keyDown(handle(front), { key: "Escape" })).toBe(true);
    expect(work().alterations).toMatchObject([{ shorten: 3 }]);
    expect(steps()).toBe(1);
  });

  it("is over with Enter", async () => {
    const { steps } = await show();
    act(() => handle(front).focus());
    press(3);
    fireEvent.keyDown(handle(front), { key: "Enter" });
    expect(steps()).toBe(1);
  });

  it("is over with undo, so that the next key begins another from where the dart lies", async () => {
    const { store, work, steps } = await show();
    act(() => handle(front).focus());
    press(3);
    act(() => undo(store));
    press(2);
    await rest(5000);
    expect(work().alterations).toMatchObject([{ shorten: 2 }]);
    expect(steps()).toBe(1);
  });

  it("is kept where the table goes away in the middle of it", async () => {
    const { store, work, unmount } = await show();
    act(() => handle(front).focus());
    press(3);
    unmount();
    expect(work().alterations).toMatchObject([{ shorten: 3 }]);
    expect(store.getState().past).toHaveLength(1);
    expect(store.getState().gesture).toBeNull();
  });

  it("there and back again is nothing to undo", async () => {
    const { store } = await show();
    act(() => handle(front).focus());
    press(1);
    fireEvent.keyDown(handle(front), { key: "ArrowUp" });
    await rest(5000);
    expect(canUndo(store.getState())).toBe(false);
  });

  it("lights the slip it makes", async () => {
    const { work } = await show();
    act(() => handle(front).focus());
    press(1);
    expect(viewNow().getState().litAlteration).toBe(work().alterations[0]?.id);
  });
});

describe("what a handle is called", () => {
  it("is a name of its own for each, with help that is there, and a place in the order of keys", async () => {
    await show();
    act(() => viewNow().getState().selectDart(ref("front", "sideDart")));
    const handles = screen.getAllByTestId(/^handle-/);
    const names = handles.map((one) => one.getAttribute("aria-label") ?? "");
    expect(handles.length).toBeGreaterThanOrEqual(DARTS.length);
    expect(new Set(names).size).toBe(names.length);
    for (const one of handles) {
      expect(one.getAttribute("role")).toBe("slider");
      expect(one.getAttribute("aria-roledescription")).toBe("dart handle");
      expect(document.getElementById(one.getAttribute("aria-describedby") ?? "")?.textContent).toMatch(/arrow keys/i);
    }
    expect(names.filter((name) => name === "front side dart, upper mouth end")).toHaveLength(1);
    expect(names.filter((name) => name === "front side dart, lower mouth end")).toHaveLength(1);
  });

  it("is one stop of the Tab key for each dart, and Page Down and Page Up go round the ends of one", async () => {
    await show();
    const stops = () => screen.getAllByTestId(/^handle-/).filter((one) => one.getAttribute("tabindex") === "0");
    const side = ref("front", "sideDart");
    expect(stops()).toHaveLength(DARTS.length);
    act(() => handle(side).focus());
    expect(stops()).toHaveLength(DARTS.length);
    for (const [key, end] of [
      ["PageDown", "inner"],
      ["PageDown", "outer"],
      ["PageDown", "apex"],
      ["PageUp", "outer"],
    ] as const) {
      fireEvent.keyDown(document.activeElement ?? document.body, { key });
      expect(document.activeElement).toBe(handle(side, end));
      expect(stops()).toContain(handle(side, end));
      expect(stops()).toHaveLength(DARTS.length);
    }
  });

  it("stands in the group of its piece, in the order in which the pieces lie", async () => {
    await show();
    const groups = screen
      .getAllByRole("group")
      .map((one) => one.getAttribute("aria-label") ?? "")
      .filter((name) => name.includes("frame size"));
    expect(groups.map((name) => name.split(",")[0])).toEqual(["Front", "Front basque", "Back", "Back basque"]);
    expect(groups[0]).toMatch(/^Front, frame size \S+, (.+ )?2 darts$/);
    expect(groups[2]).toMatch(/1 dart$/);
    const own = handle(ref("back", "waistDart")).closest("[role=group]");
    expect(own?.getAttribute("aria-label")).toBe(groups[2]);
  });

  it("is there in words for who sees nothing of it", async () => {
    await show();
    const words = screen.getByRole("region", { name: "The pieces in words" });
    const [front] = within(words).getAllByRole("listitem");
    expect(front?.textContent).toMatch(/^Front, .*Sewn, darts shut: .*shoulder seam [\d.]+ cm/);
    expect(front?.textContent).toMatch(/Waist dart: mouth \d+ mm, angle [\d.]+°, fullness \d+ mm\./);
  });
});
