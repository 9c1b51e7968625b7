/** What a hand asks of the table: by long press, the other button and keys; and what it does not mean. */
import { act, createEvent, fireEvent, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { usePageState } from "../../../src/ui/session/pageState";
import { Table } from "../../../src/ui/table/Table";
import { ref, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const sheet = () => screen.getByRole("group", { name: /^Pattern pieces/ });
const handle = () => screen.getByTestId("handle-front-waistDart-apex");
const menu = () => screen.queryByRole("menu");
const items = () => within(screen.getByRole("menu")).getAllByRole("menuitem");
const wait = (ms: number) => act(() => vi.advanceTimersByTimeAsync(ms));

const shortened = withAlterations({
  kind: "dartEnd",
  id: "dartEnd-front-waistDart",
  dart: ref("front", "waistDart"),
  shorten: 8,
  across: 0,
  hold: "mouth",
  giveBack: {},
});

/** This environment lays nothing out: under every place lies what is given here. */
async function show(under: () => Element | null = handle) {
  const rendered = await renderWork(<Table />, shortened);
  Object.assign(document, { elementsFromPoint: () => [under()].filter((one) => one !== null) });
  Object.assign(sheet(), {
    getScreenCTM: () => ({ inverse: () => ({ a: 1, d: 1 }) }),
    setPointerCapture: () => {},
  });
  for (const one of document.querySelectorAll(".handle")) Object.assign(one, { setPointerCapture: () => {} });
  return rendered;
}

const finger = { pointerId: 1, button: 0, isPrimary: true, pointerType: "touch", clientX: 100, clientY: 100 };

describe("a long press", () => {
  it("on a dart says what it is and offers what can be done with it, and drags nothing", async () => {
    const { store } = await show();
    const before = store.getState().work;
    fireEvent.pointerDown(handle(), finger);
    await wait(600);
    // It may still become a drag.
    expect(menu()).toBeNull();
    const up = createEvent.pointerUp(handle(), finger);
    Object.defineProperty(up, "timeStamp", { value: up.timeStamp + 600 });
    fireEvent(handle(), up);
    expect(menu()?.textContent).toMatch(/^Front waist dart\. \d+ mm short of the bust point.*Mouth \d+ mm/);
    expect(items().map((one) => one.textContent)).toEqual([
      "Work on this dart",
      "Open its slip: Shorten the waist dart by 8 mm, its mouth held",
      "Show only the front",
      "Show everything",
    ]);
    expect(store.getState().work).toBe(before);
    expect(store.getState().gesture).toBeNull();
  });

  it("that begins to move is a drag", async () => {
    const { store } = await show();
    fireEvent.pointerDown(handle(), finger);
    // However slow she is to begin.
    await wait(900);
    fireEvent.pointerMove(handle(), { ...finger, clientY: 130 });
    await wait(900);
    expect(menu()).toBeNull();
    fireEvent.pointerUp(handle(), { ...finger, clientY: 130 });
    expect(store.getState().past).toHaveLength(1);
  });

  it("on a piece offers it alone, on a printed line says its size", async () => {
    let under: Element | null = null;
    await show(() => under);
    under = document.querySelector(".working [data-piece=back] .paper");
    fireEvent.pointerDown(sheet(), finger);
    await wait(600);
    expect(menu()?.textContent).toMatch(/^Back, frame size \S+,/);
    expect(items()[0]?.textContent).toBe("Show only the back");
    fireEvent.keyDown(items()[0] ?? sheet(), { key: "Escape" });
    expect(menu()).toBeNull();
    fireEvent.pointerUp(sheet(), finger);
    under = document.querySelector(".printed-size[data-size='14'] path");
    fireEvent.pointerDown(sheet(), finger);
    await wait(600);
    expect(menu()?.textContent).toMatch(/^Front, printed line of size 14/);
  });
});

describe("the menu", () => {
  it("is opened by keys, gone through by arrows, and gives the focus back", async () => {
    await show();
    act(() => handle().focus());
    expect(fireEvent.keyDown(handle(), { key: "F10", shiftKey: true })).toBe(false);
    expect(document.activeElement).toBe(items()[0]);
    fireEvent.keyDown(items()[0] ?? sheet(), { key: "ArrowUp" });
    expect(document.activeElement).toBe(items().at(-1));
    fireEvent.keyDown(document.activeElement ?? sheet(), { key: "Escape" });
    expect(menu()).toBeNull();
    expect(document.activeElement).toBe(handle());
  });

  it("is opened by the other button in place of the browser's own", async () => {
    await show();
    expect(fireEvent.contextMenu(handle(), { clientX: 5, clientY: 5 })).toBe(false);
    expect(items()).toHaveLength(4);
  });

  it("leads to the slip, and opens the ledger for it", async () => {
    await show();
    usePageState.setState({ ledgerOpen: false });
    fireEvent.contextMenu(handle());
    fireEvent.click(screen.getByRole("menuitem", { name: /^Open its slip/ }));
    expect(viewNow().getState().litAlteration).toBe("dartEnd-front-waistDart");
    expect(usePageState.getState().ledgerOpen).toBe(true);
    expect(menu()).toBeNull();
  });
});

describe("what is not meant", () => {
  const seen = () => sheet().getAttribute("viewBox");
  const other = { ...finger, pointerId: 2, isPrimary: false };

  it("a second finger beside a dart that is held does not move the table", async () => {
    await show();
    const before = seen();
    fireEvent.pointerDown(handle(), finger);
    fireEvent.pointerDown(sheet(), other);
    fireEvent.pointerMove(sheet(), { ...other, clientX: 180 });
    expect(seen()).toBe(before);
    fireEvent.pointerUp(handle(), finger);
    fireEvent.pointerUp(sheet(), other);
    // Let go, the table is a finger's again.
    fireEvent.pointerDown(sheet(), finger);
    fireEvent.pointerMove(sheet(), { ...finger, clientX: 180 });
    expect(seen()).not.toBe(before);
  });

  it("a palm, before the pen or while it draws, is not a hand on the table", async () => {
    await show();
    const palm = { ...finger, pointerId: 3 };
    const pen = { ...finger, pointerType: "pen", pointerId: 4 };
    fireEvent.pointerDown(sheet(), palm);
    fireEvent.pointerDown(handle(), { ...pen, clientX: 0, clientY: 0 });
    const before = seen();
    fireEvent.pointerMove(sheet(), { ...palm, clientX: 180 });
    expect(seen()).toBe(before);
    fireEvent.pointerDown(sheet(), { ...palm, pointerId: 5 });
    fireEvent.pointerMove(sheet(), { ...palm, pointerId: 5, clientX: 180 });
    expect(seen()).toBe(before);
    // Nor beside a pen that is on the table itself.
    fireEvent.pointerUp(handle(), pen);
    fireEvent.pointerDown(sheet(), pen);
    fireEvent.pointerDown(sheet(), { ...palm, pointerId: 6 });
    fireEvent.pointerMove(sheet(), { ...palm, pointerId: 6, clientX: 180, clientY: 160 });
    expect(seen()).toBe(before);
  });

  it("a pen beside the dot is on the table, and its other button drags nothing", async () => {
    const { store } = await show();
    const pen = { ...finger, pointerType: "pen" };
    fireEvent.pointerDown(handle(), { ...pen, clientX: 15, clientY: 0 });
    fireEvent.pointerMove(handle(), { ...pen, clientX: 15, clientY: 40 });
    expect(store.getState().gesture).toBeNull();
    fireEvent.pointerUp(handle(), pen);
    fireEvent.pointerDown(handle(), { ...pen, button: 2, clientX: 0, clientY: 0 });
    fireEvent.pointerMove(handle(), { ...pen, clientX: 0, clientY: 40 });
    expect(store.getState().gesture).toBeNull();
  });

  it("a third finger has no say in what two do", async () => {
    await show();
    fireEvent.pointerDown(sheet(), finger);
    fireEvent.pointerDown(sheet(), { ...other, clientX: 200 });
    const before = seen();
    fireEvent.pointerDown(sheet(), { ...other, pointerId: 3 });
    fireEvent.pointerMove(sheet(), { ...other, pointerId: 3, clientX: 300, clientY: 300 });
    expect(seen()).toBe(before);
  });
});

it("two taps look closely at a piece, and back at everything; a drag and a tap do not", async () => {
  let under: Element | null = null;
  await show(() => under);
  under = document.querySelector(".working [data-piece=back] .paper");
  // There and back again leaves what no screen shows.
  const seen = () => (sheet().getAttribute("viewBox") ?? "").split(" ").map((part) => Number(part).toFixed(6));
  const all = seen();
  const tap = (): void => {
    fireEvent.pointerDown(sheet(), finger);
    fireEvent.pointerUp(sheet(), finger);
    fireEvent.click(sheet(), { clientX: 100, clientY: 100 });
  };
  tap();
  expect(seen()).toEqual(all);
  tap();
  const near = seen();
  expect(near).not.toEqual(all);
  tap();
  tap();
  expect(seen()).toEqual(all);
  fireEvent.pointerDown(sheet(), finger);
  fireEvent.pointerMove(sheet(), { ...finger, clientX: 160 });
  fireEvent.pointerMove(sheet(), finger);
  fireEvent.pointerUp(sheet(), finger);
  fireEvent.click(sheet(), { clientX: 100, clientY: 100 });
  tap();
  expect(seen()).toEqual(all);
});
