/** The table by hand and by keyboard: a handle moves its dart, Escape puts it back, one drag or one run of keys is one step. */
import { act, cleanup, createEvent, fireEvent, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { canUndo, undo } from "../../../src/store/workStore";
import { Table } from "../../../src/ui/table/Table";
import { testWork, withAlterations, ref } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

afterEach(cleanup);

const handle = () => screen.getByTestId("handle-front-waistDart-apex");

describe("a handle", () => {
  it("says what it is and the figures it changes", async () => {
    await renderWork(<Table />, testWork);
    expect(handle().getAttribute("aria-label")).toBe("front waist dart, end");
    expect(handle().getAttribute("aria-valuetext")).toMatch(
      /^\d+ mm short of the bust point\. Mouth \d+ mm, angle [\d.]+°, fullness \d+ mm$/,
    );
  });

  it("moves by 1 mm, with Shift by 10, and the run is one step of undo", async () => {
    const { store } = await renderWork(<Table />, testWork);
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowDown" });
    fireEvent.keyDown(handle(), { key: "ArrowDown", shiftKey: true });
    // The waist dart stands upright: down is towards its mouth.
    expect(store.getState().work.alterations).toMatchObject([
      { kind: "dartEnd", shorten: 11, across: 0, hold: "mouth" },
    ]);
    fireEvent.blur(handle());
    expect(store.getState().past).toHaveLength(1);
    expect(store.getState().gesture).toBeNull();
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

  it("says the new figures of its dart once the keys rest, and stands by the old ones until then", async () => {
    await renderWork(<Table />, testWork);
    const value = () => handle().getAttribute("aria-valuetext");
    const before = value();
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowDown", shiftKey: true });
    expect(value()).toBe(before);
    fireEvent.keyDown(handle(), { key: "Enter" });
    expect(value()).not.toBe(before);
    expect(value()).toContain("Mouth");
  });

  it("in inches moves by a sixteenth", async () => {
    const { store } = await renderWork(<Table />, { ...testWork, unit: "in" });
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: "ArrowDown" });
    expect(store.getState().work.alterations).toMatchObject([{ shorten: 1.5875 }]);
  });
});

/** Shows the table at two pixels to a millimetre: this environment lays nothing out. */
async function showToScale(work = testWork) {
  const rendered = await renderWork(<Table />, work);
  const sheet = screen.getByRole("group", { name: /^Pattern pieces/ });
  Object.assign(sheet, { getScreenCTM: () => ({ inverse: () => ({ a: 0.5, d: 0.5 }) }) });
  for (const part of [sheet, ...document.querySelectorAll(".handle")])
    Object.assign(part, { setPointerCapture: () => {} });
  return { ...rendered, sheet };
}

const pointer = { pointerId: 1, button: 0, isPrimary: true };
const down = (at: { clientX: number; clientY: number }) => fireEvent.pointerDown(handle(), { ...pointer, ...at });
const move = (at: { clientX: number; clientY: number }) => fireEvent.pointerMove(handle(), { ...pointer, ...at });

describe("a drag", () => {
  let frames: FrameRequestCallback[] = [];
  const nextFrame = () => act(() => frames.splice(0).forEach((show) => show(0)));

  beforeEach(() => {
    frames = [];
    vi.stubGlobal("requestAnimationFrame", (show: FrameRequestCallback) => frames.push(show));
    vi.stubGlobal("cancelAnimationFrame", () => {
      frames = [];
    });
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it("moves the end by half a millimetre a pixel, shows one plan a frame, and is one step of undo", async () => {
    const { store } = await showToScale();
    const before = store.getState().work;
    down({ clientX: 100, clientY: 100 });
    for (const clientY of [104, 110, 120, 130]) move({ clientX: 100, clientY });
    expect(store.getState().work).toBe(before);
    expect(frames).toHaveLength(1);
    nextFrame();
    expect(store.getState().work.alterations).toMatchObject([{ kind: "dartEnd", shorten: 15, across: 0 }]);
    // What was moved since the last frame counts when the finger is lifted.
    move({ clientX: 100, clientY: 140 });
    fireEvent.pointerUp(handle(), { ...pointer, clientX: 100, clientY: 140 });
    expect(store.getState().work.alterations).toMatchObject([{ shorten: 20 }]);
    expect(store.getState().past).toEqual([before]);
    act(() => undo(store));
    expect(store.getState().work.alterations).toEqual([]);
  });

  it.each([
    ["Escape", () => fireEvent.keyDown(window, { key: "Escape" })],
    ["a touch taken away by the system", () => fireEvent.pointerCancel(handle(), pointer)],
  ])("is put back exactly by %s, and later moves do nothing", async (_name, stop) => {
    const { store } = await showToScale();
    const before = store.getState().work;
    down({ clientX: 100, clientY: 100 });
    move({ clientX: 110, clientY: 150 });
    nextFrame();
    expect(store.getState().work).not.toBe(before);
    act(() => {
      stop();
    });
    expect(store.getState().work).toBe(before);
    expect(canUndo(store.getState())).toBe(false);
    move({ clientX: 100, clientY: 190 });
    nextFrame();
    expect(store.getState().work).toBe(before);
  });

  it("that moves nothing leaves nothing to undo, and chooses the dart", async () => {
    const { store } = await showToScale();
    down({ clientX: 100, clientY: 100 });
    fireEvent.pointerUp(handle(), { ...pointer, clientX: 100, clientY: 100 });
    expect(canUndo(store.getState())).toBe(false);
    expect(viewNow().getState().selectedDart).toEqual({ piece: "front", dart: "waistDart" });
  });

  it("takes no second dart in hand with a second finger", async () => {
    const { store } = await showToScale();
    down({ clientX: 100, clientY: 100 });
    move({ clientX: 100, clientY: 120 });
    nextFrame();
    const other = screen.getByTestId("handle-back-waistDart-apex");
    fireEvent.pointerDown(other, { pointerId: 2, button: 0, isPrimary: false, clientX: 300, clientY: 100 });
    fireEvent.pointerMove(other, { pointerId: 2, isPrimary: false, clientX: 300, clientY: 160 });
    nextFrame();
    fireEvent.pointerUp(handle(), { ...pointer, clientX: 100, clientY: 120 });
    expect(store.getState().work.alterations).toMatchObject([{ dart: { piece: "front" }, shorten: 10 }]);
    expect(store.getState().past).toHaveLength(1);
  });

  it("of a mouth end widens the dart along its mouth alone", async () => {
    const { store } = await showToScale();
    act(() => viewNow().getState().selectDart({ piece: "front", dart: "waistDart" }));
    const end = screen.getByTestId("handle-front-waistDart-outer");
    Object.assign(end, { setPointerCapture: () => {} });
    fireEvent.pointerDown(end, { ...pointer, clientX: 100, clientY: 100 });
    fireEvent.pointerMove(end, { ...pointer, clientX: 112, clientY: 100 });
    fireEvent.pointerUp(end, { ...pointer, clientX: 112, clientY: 100 });
    expect(store.getState().work.alterations).toMatchObject([{ kind: "dartMouth", inner: 0, outer: 6 }]);
  });
});

describe("the sheet", () => {
  const seen = (sheet: HTMLElement) => (sheet.getAttribute("viewBox") ?? "").split(" ").map(Number);

  it("moves with the arrow keys, zooms with plus and minus, and shows everything again with zero", async () => {
    const { sheet } = await showToScale();
    const start = seen(sheet);
    fireEvent.keyDown(sheet, { key: "ArrowRight" });
    expect(seen(sheet)[0]).toBeGreaterThan(start[0] ?? NaN);
    fireEvent.keyDown(sheet, { key: "+" });
    expect(seen(sheet)[2]).toBeLessThan(start[2] ?? NaN);
    fireEvent.keyDown(sheet, { key: "0" });
    expect(seen(sheet)).toEqual(start);
  });

  it("moves with the wheel and zooms with Ctrl and the wheel", async () => {
    const { sheet } = await showToScale();
    const start = seen(sheet);
    fireEvent.wheel(sheet, { deltaY: 100 });
    const moved = seen(sheet);
    expect(moved.slice(2)).toEqual(start.slice(2));
    expect(moved[1]).toBeGreaterThan(start[1] ?? NaN);
    // This environment's wheel knows no Ctrl and no place.
    const pinch = Object.assign(createEvent.wheel(sheet, { deltaY: -50 }), { ctrlKey: true, clientX: 10, clientY: 10 });
    fireEvent(sheet, pinch);
    expect(seen(sheet)[2]).toBeLessThan(start[2] ?? NaN);
  });

  it("zooms with two fingers drawn apart, without moving a dart", async () => {
    const { sheet, store } = await showToScale();
    const start = seen(sheet);
    fireEvent.pointerDown(sheet, { pointerId: 1, button: 0, clientX: 100, clientY: 100 });
    fireEvent.pointerDown(sheet, { pointerId: 2, button: 0, clientX: 200, clientY: 100 });
    fireEvent.pointerMove(sheet, { pointerId: 2, clientX: 300, clientY: 100 });
    // Twice as far apart: half as many millimetres in view.
    expect(seen(sheet)[2]).toBeCloseTo((start[2] ?? NaN) / 2, 6);
    fireEvent.pointerUp(sheet, { pointerId: 1 });
    fireEvent.pointerUp(sheet, { pointerId: 2 });
    const after = seen(sheet);
    fireEvent.pointerMove(sheet, { pointerId: 2, clientX: 400, clientY: 100 });
    expect(seen(sheet)).toEqual(after);
    expect(canUndo(store.getState())).toBe(false);
  });

  it("shows one piece, from a button or from the menu of a narrow table", async () => {
    const { sheet, user } = await showToScale();
    const start = seen(sheet);
    await user.click(screen.getByRole("button", { name: "Front" }));
    const front = seen(sheet);
    expect(front[2]).toBeLessThan(start[2] ?? NaN);
    await user.click(screen.getByRole("button", { name: "All" }));
    expect(seen(sheet)).toEqual(start);
    await user.selectOptions(screen.getByRole("combobox", { name: "Show one piece" }), "front");
    expect(seen(sheet)).toEqual(front);
  });

  it("writes at the same size on the screen at every zoom", async () => {
    const { sheet, container } = await showToScale();
    const pixels = () => {
      const size = Number(container.querySelector(".label-title text")?.getAttribute("font-size"));
      // This environment lays out nothing, so the sheet keeps the width it is given before it is measured.
      return (size * 800) / (seen(sheet)[2] ?? NaN);
    };
    const before = pixels();
    fireEvent.keyDown(sheet, { key: "+" });
    fireEvent.keyDown(sheet, { key: "+" });
    expect(pixels()).toBeCloseTo(before, 6);
    expect(before).toBeCloseTo(14, 6);
  });
});

describe("what lies on the table", () => {
  it("prints each size with a dash of its own, the frame unbroken, and its label once", async () => {
    const { container } = await showToScale();
    const printed = [...container.querySelectorAll(".printed > g:first-child .printed-size")];
    expect(printed).toHaveLength(testWork.pattern.chart.sizes.length);
    const dashes = printed.map((size) => size.querySelector("path")?.getAttribute("stroke-dasharray") ?? "unbroken");
    expect(dashes.filter((dash) => dash === "unbroken")).toHaveLength(1);
    // No two neighbours look alike.
    expect(dashes.some((dash, index) => dash === dashes[index + 1])).toBe(false);
  });

  it("shows all printed lines, those in use or none", async () => {
    const { container, user } = await showToScale();
    const select = screen.getByRole("combobox", { name: "Printed lines" });
    const count = () => container.querySelectorAll(".printed > g:first-child .printed-size").length;
    await user.selectOptions(select, "near");
    // The frame, two lines at the waist, two at the hip, some of them the same.
    expect(count()).toBeGreaterThanOrEqual(2);
    expect(count()).toBeLessThanOrEqual(5);
    await user.selectOptions(select, "none");
    expect(count()).toBe(0);
  });

  it("names the lines in use, however long their names are", async () => {
    const { chart } = testWork.pattern;
    const sizes = chart.sizes.map((size) => ({ ...size, label: `Grandmothers velvet ${size.label}` }));
    const { container, user } = await showToScale({
      ...testWork,
      pattern: { ...testWork.pattern, chart: { ...chart, sizes } },
      picks: {},
    });
    const named = () => [...container.querySelectorAll(".label-size")].map(({ textContent }) => textContent);
    const all = named().length;
    await user.selectOptions(screen.getByRole("combobox", { name: "Printed lines" }), "near");
    expect(named().length).toBeGreaterThanOrEqual(2);
    expect(named().length).toBeLessThanOrEqual(all);
    for (const name of named()) expect(name).toMatch(/^Grand…/);
  });

  it("hides the amounts, and lays the line from before her slips under the new one", async () => {
    const shortened = {
      kind: "dartEnd",
      id: "a",
      dart: ref("front", "waistDart"),
      shorten: 20,
      across: 0,
      hold: "mouth",
      giveBack: {},
    } as const;
    const { container, user } = await showToScale(withAlterations(shortened));
    expect(container.querySelectorAll(".label-cut")).toHaveLength(4);
    await user.click(screen.getByRole("checkbox", { name: "amounts" }));
    expect(container.querySelectorAll(".label-cut, .label-dart")).toHaveLength(0);
    expect(container.querySelectorAll(".label-title")).toHaveLength(4);
    expect(container.querySelectorAll(".before")).toHaveLength(0);
    await user.click(screen.getByRole("checkbox", { name: "before your slips" }));
    const legs = [...container.querySelectorAll(".working > g:first-child path")];
    const old = legs.filter((path) => path.classList.contains("before")).map((path) => path.getAttribute("d"));
    const now = legs.filter((path) => path.classList.contains("dart-legs")).map((path) => path.getAttribute("d"));
    // One of the two darts of the front has moved, the other lies where it lay.
    expect(now.filter((d) => old.includes(d))).toHaveLength(1);
  });

  it("lights the slips of a line or a dart that is touched, and rings what they moved", async () => {
    const shortened = {
      kind: "dartEnd",
      id: "a",
      dart: ref("front", "waistDart"),
      shorten: 20,
      across: 0,
      hold: "fullness",
      giveBack: { otherDart: 1 },
    } as const;
    const { container } = await showToScale(withAlterations(shortened));
    // The front's waist comes first.
    fireEvent.pointerDown(container.querySelector(".label-cut") ?? container);
    expect(viewNow().getState().litAlteration).toBe("blend-waist");
    const area = container.querySelector(".working > g:first-child .dart-area");
    fireEvent.pointerDown(area ?? container);
    expect(viewNow().getState()).toMatchObject({
      litAlteration: "a",
      selectedDart: { piece: "front", dart: "waistDart" },
    });
    // What is given back at the back's dart is ringed on the back, not on the front.
    const places = new Set([...container.querySelectorAll(".lit > g")].map((ring) => ring.getAttribute("transform")));
    expect(places.size).toBe(4);
  });

  it("shows the printed pieces alone while there is no plan yet", async () => {
    const { container } = await showToScale({ ...testWork, tapes: [{ readings: {} }] });
    expect(container.querySelectorAll(".printed-size").length).toBeGreaterThan(0);
    expect(container.querySelector(".new-line")).toBeNull();
    expect(screen.getByText(/Your own line appears/)).toBeTruthy();
  });
});
