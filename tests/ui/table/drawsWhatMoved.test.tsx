/** A drag draws what moved and nothing else: every attribute written and every node put up in the middle of one is counted. */
import { act, fireEvent, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { demoWorks } from "../../../src/document/demo";
import { outlinePath } from "../../../src/core/geometry/svgPath";
import { settingOf } from "../../../src/core/plan/setDart";
import { onTable, placeKey, textPixels } from "../../../src/drawing/index";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { Table } from "../../../src/ui/table/Table";
import { invariant } from "../../../src/core/result";
import { renderWork } from "../renderWork";

vi.mock("../../../src/core/plan/setDart", { spy: true });
vi.mock("../../../src/core/geometry/svgPath", { spy: true });
vi.mock("../../../src/drawing/index", { spy: true });

const [hip, , , midriff] = demoWorks();

const DRAGS = [
  { name: "the hip demo", work: invariant(hip, "demo"), handle: "handle-front-waistDart-apex", piece: "front" },
  {
    name: "cups on a midriff",
    work: invariant(midriff, "demo"),
    handle: "handle-cup-underBustDart-apex",
    piece: "cup",
  },
] as const;

let frames: FrameRequestCallback[] = [];

beforeEach(() => {
  frames = [];
  vi.stubGlobal("requestAnimationFrame", (show: FrameRequestCallback) => frames.push(show));
  vi.stubGlobal("cancelAnimationFrame", () => {
    frames = [];
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const pointer = { pointerId: 1, button: 0, isPrimary: true };

/** The step of darts with a dart in the hand, some moves on, so that all that comes at its beginning is over. */
async function inHand({ work, handle }: (typeof DRAGS)[number]) {
  const rendered = await renderWork(
    <>
      <DartsPanel />
      <Table />
    </>,
    work,
  );
  const sheet = screen.getByRole("group", { name: /^Pattern pieces/ });
  // This environment lays nothing out: two pixels to a millimetre.
  Object.assign(sheet, { getScreenCTM: () => ({ inverse: () => ({ a: 0.5, d: 0.5 }) }) });
  const held = screen.getByTestId(handle);
  Object.assign(held, { setPointerCapture: () => {} });
  const to = (clientX: number, clientY: number): void => {
    fireEvent.pointerMove(held, { ...pointer, clientX, clientY });
    act(() => frames.splice(0).forEach((show) => show(0)));
  };
  fireEvent.pointerDown(held, { ...pointer, clientX: 0, clientY: 0 });
  to(0, 8);
  to(0, 12);
  return { ...rendered, held, to };
}

/** All that is changed on the page while something is done. */
function changesBy(doing: () => void): readonly MutationRecord[] {
  const observer = new MutationObserver(() => {});
  observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  doing();
  const records = observer.takeRecords();
  observer.disconnect();
  return records;
}

const isIn = (selector: string, { target }: MutationRecord): boolean =>
  (target instanceof Element ? target : target.parentElement)?.closest(selector) != null;

describe.each(DRAGS)("a dart's end dragged on $name", (drag) => {
  it("changes nothing of the pieces it is not on, and nothing of what is printed", async () => {
    const { to } = await inHand(drag);
    const changed = changesBy(() => to(0, 20));
    const others = [...document.querySelectorAll("[data-piece]")].filter(
      (group) => group.getAttribute("data-piece") !== drag.piece,
    );
    expect(others.length).toBeGreaterThan(2);
    expect(changed.filter((record) => others.some((group) => group.contains(record.target)))).toEqual([]);
    expect(changed.filter((record) => isIn(".printed", record))).toEqual([]);
    // It does move its own piece, by lines that are there already.
    expect(changed.some((record) => isIn(`[data-piece=${drag.piece}] .dart`, record))).toBe(true);
  });

  it("keeps every node of pieces, labels, handles and the bar, and puts up no other", async () => {
    const { to } = await inHand(drag);
    const labels = [...document.querySelectorAll(".labels *")];
    expect(labels.length).toBeGreaterThan(10);
    // Nor rings about what an alteration moved, nor what a figure over the table has changed by, which near its place is nothing.
    const nodes = [20, 4, 40, 28].flatMap((y) =>
      changesBy(() => to(0, y)).filter(
        ({ type, target, addedNodes, removedNodes }) =>
          type === "childList" &&
          target instanceof Element &&
          target.closest(".table") !== null &&
          [...addedNodes, ...removedNodes].some((node) => node instanceof Element),
      ),
    );
    expect(nodes).toEqual([]);
    expect([...document.querySelectorAll(".labels *")].every((node, index) => node === labels[index])).toBe(true);
  });

  it("writes each attribute on the table once, and none of a label or a handle that stays where it is", async () => {
    const { to } = await inHand(drag);
    const changed = changesBy(() => to(0, 20)).filter((record) => isIn(".table", record));
    expect(changed.length).toBeGreaterThan(5);
    const twice = changed.filter(
      (record, index) =>
        record.type === "attributes" &&
        changed.findIndex(
          (other) =>
            other.type === "attributes" &&
            other.target === record.target &&
            other.attributeName === record.attributeName,
        ) !== index,
    );
    expect(twice).toEqual([]);
    expect(changed.filter((record) => isIn(".label-size, .label-bustPoint, .label-guess", record))).toEqual([]);
    const handles = new Set(changed.filter((record) => isIn(".handle", record)).map(({ target }) => target));
    const moved = [...handles].filter((target) => target instanceof Element && target.hasAttribute("transform"));
    expect(moved.length).toBeLessThanOrEqual(3);
  });

  it("makes no plan where the finger has not come a step further, and lets go of what is shown", async () => {
    const { to, held, store } = await inHand(drag);
    to(0, 20);
    const { work } = store.getState();
    expect(changesBy(() => to(0, 20.1))).toEqual([]);
    expect(store.getState().work).toBe(work);
    fireEvent.pointerUp(held, { ...pointer, clientX: 0, clientY: 20.1 });
    expect(store.getState().work).toBe(work);
    expect(store.getState().past).toHaveLength(1);
  });

  it("works out one outline, and sets out again no printed line, no label and no handle that stays as it was", async () => {
    const { to } = await inHand(drag);
    const spies = [outlinePath, placeKey, textPixels, onTable].map((one) =>
      vi.mocked<(...given: never[]) => unknown>(one),
    );
    for (const spy of spies) spy.mockClear();
    to(0, 20);
    const [outlines, layers, labels, handles] = spies.map((spy) => spy.mock.calls.length);
    expect(outlines).toBe(1);
    // Once for each piece where her own lines are drawn; the printed ones would be as many again.
    expect(layers).toBe(document.querySelectorAll("[data-piece]").length);
    // The dragged dart's amount, and whatever stands by its end.
    expect(labels).toBeLessThanOrEqual(3);
    // All are held apart from each other; those of the dragged dart are drawn, and one beside it that it comes near to.
    expect(handles).toBeLessThanOrEqual(document.querySelectorAll(".handle").length + 4);
  });

  it("looks for no better place of the dart before it is let go", async () => {
    const sought = vi.mocked(settingOf);
    const { to, held } = await inHand(drag);
    sought.mockClear();
    to(0, 20);
    to(2, 26);
    to(4, 30);
    expect(sought).not.toHaveBeenCalled();
    fireEvent.pointerUp(held, { ...pointer, clientX: 4, clientY: 30 });
    expect(sought).toHaveBeenCalled();
  });

  it("leaves what is out of sight in the panel as it was until it is let go, and follows by keys", async () => {
    const seen = new Map<Element, (isIntersecting: boolean) => void>();
    vi.stubGlobal(
      "IntersectionObserver",
      class {
        constructor(private readonly heard: (entries: readonly { readonly isIntersecting: boolean }[]) => void) {}
        observe(element: Element): void {
          seen.set(element, (isIntersecting) => this.heard([{ isIntersecting }]));
        }
        disconnect(): void {}
      },
    );
    const { to, held, user } = await inHand(drag);
    const panel = (): Element | null => document.querySelector(".dart-editor");
    act(() => seen.forEach((tell) => tell(false)));
    const written = changesBy(() => to(0, 20));
    expect(written.length).toBeGreaterThan(5);
    expect(written.filter(({ target }) => panel()?.contains(target))).toEqual([]);
    act(() => seen.forEach((tell, element) => tell(element.matches(".figures"))));
    const followed = changesBy(() => to(0, 30)).filter(({ target }) => panel()?.contains(target));
    expect(followed.length).toBeGreaterThan(0);
    expect(followed.filter((record) => !isIn(".figures", record))).toEqual([]);
    act(() => seen.forEach((tell) => tell(false)));
    fireEvent.pointerUp(held, { ...pointer, clientX: 0, clientY: 30 });
    expect(screen.getByLabelText<HTMLInputElement>("Shorten by").value).toBe("15");
    // Whoever presses keys may read without seeing.
    act(() => held.focus());
    await user.keyboard("{ArrowDown}");
    expect(screen.getByLabelText<HTMLInputElement>("Shorten by").value).toBe("16");
  });

  it("shows in the panel what is on the table, at every move and when it is let go", async () => {
    const { to, held, store } = await inHand(drag);
    const shorten = (): string => screen.getByLabelText<HTMLInputElement>("Shorten by").value;
    for (const y of [20, 40, 28]) {
      to(0, y);
      const redraw = store.getState().work.alterations.find(({ kind }) => kind === "dartEnd");
      expect(shorten()).toBe(String(redraw?.kind === "dartEnd" ? redraw.shorten : NaN));
      // The last figures over the table are those of the column as drawn.
      const mouth = /mouth (\d+ mm)/.exec(document.querySelector(".table-readout")?.textContent ?? "")?.[1];
      const row = screen.getByRole("row", { name: /^Mouth/ });
      expect(row.querySelector(".drawn")?.textContent).toBe(mouth);
    }
    const before = store.getState().past.length;
    fireEvent.pointerUp(held, { ...pointer, clientX: 0, clientY: 28 });
    expect(store.getState().past).toHaveLength(before + 1);
    expect(shorten()).toBe("14");
  });
});
