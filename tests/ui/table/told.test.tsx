/** What is told to who does not see the page: each step once, when it has come to rest, from one place. */
import { act, fireEvent, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { tapesOf } from "../../../src/core/measures/tape";
import { redo, run, undo } from "../../../src/store/workStore";
import { Said } from "../../../src/ui/app/Said";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { FromMeasures } from "../../../src/ui/fit/FromMeasures";
import { useSettledPlan } from "../../../src/ui/session/usePlan";
import { useSettledWork } from "../../../src/ui/session/useWork";
import { Table } from "../../../src/ui/table/Table";
import { ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const LIVE = "[role=status]:not([aria-live=off]), [role=alert], [aria-live=polite]";

/** Listens as a screen reader does: to live regions, and to the value of what has the focus. */
function listen() {
  const told: string[] = [];
  const take = (records: readonly MutationRecord[]): void => {
    const regions = new Set<Element>();
    for (const { type, target } of records) {
      const element = target instanceof Element ? target : target.parentElement;
      if (type === "attributes" && element === document.activeElement)
        told.push(`value: ${element?.getAttribute("aria-valuetext")}`);
      if (type === "attributes" || element === null) continue;
      const region = element.closest(LIVE);
      for (const one of region === null ? element.querySelectorAll("[role=alert]") : [region]) regions.add(one);
    }
    for (const { textContent } of regions) if (textContent !== "") told.push(textContent);
  };
  const observer = new MutationObserver(take);
  observer.observe(document.body, {
    subtree: true,
    childList: true,
    characterData: true,
    attributeFilter: ["aria-valuetext"],
  });
  return async (): Promise<readonly string[]> => {
    await act(() => vi.advanceTimersByTimeAsync(5000));
    take(observer.takeRecords());
    return told.splice(0);
  };
}

const handle = () => screen.getByTestId("handle-front-waistDart-apex");

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

async function show() {
  const rendered = await renderWork(
    <>
      <Said />
      <Table />
      <DartsPanel />
    </>,
    testWork,
  );
  act(() => viewNow().getState().selectDart(ref("front", "waistDart")));
  return { ...rendered, told: listen() };
}

describe("is told once", () => {
  it("a run of ten keys at a handle, by the value of the handle itself, and its undo and redo", async () => {
    const { store, told } = await show();
    act(() => handle().focus());
    for (let pressed = 0; pressed < 10; pressed += 1) fireEvent.keyDown(handle(), { key: "ArrowDown" });
    const all = await told();
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^value: \d+ mm short of the bust point\. Mouth \d+ mm/);
    act(() => handle().blur());
    act(() => undo(store));
    expect(await told()).toEqual(["Undone: Shorten the waist dart by 10 mm, its mouth held."]);
    act(() => redo(store));
    expect(await told()).toEqual(["Done again: Shorten the waist dart by 10 mm, its mouth held."]);
    act(() => undo(store));
    expect(await told()).toHaveLength(1);
  });

  it("an undo with the focus on the handle: what was undone by the page, the figures by the handle alone", async () => {
    const { store, told } = await show();
    act(() => handle().focus());
    const before = handle().getAttribute("aria-valuetext");
    for (let pressed = 0; pressed < 10; pressed += 1) fireEvent.keyDown(handle(), { key: "ArrowDown" });
    const [moved] = await told();
    act(() => undo(store));
    expect(document.activeElement).toBe(handle());
    expect([...(await told())].toSorted()).toEqual([
      "Undone: Shorten the waist dart by 10 mm, its mouth held.",
      `value: ${before}`,
    ]);
    act(() => redo(store));
    expect([...(await told())].toSorted()).toEqual([
      "Done again: Shorten the waist dart by 10 mm, its mouth held.",
      moved,
    ]);
  });

  it("what is done elsewhere while a handle has the focus, which says nothing of it", async () => {
    const { store, told } = await show();
    act(() => screen.getByTestId("handle-back-waistDart-apex").focus());
    await told();
    const id = "dartEnd-front-waistDart";
    const dart = ref("front", "waistDart");
    act(() =>
      run(store, {
        kind: "putAlteration",
        alteration: { kind: "dartEnd", id, dart, shorten: 8, across: 0, hold: "mouth", giveBack: {} },
      }),
    );
    const all = await told();
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^In the ledger: Shorten the waist dart by 8 mm, its mouth held\. Mouth/);
  });

  it("a drag by a finger, with its figures", async () => {
    const { told } = await show();
    const pointer = { pointerId: 1, button: 0, isPrimary: true, pointerType: "touch" };
    const sheet = screen.getByRole("group", { name: /^Pattern pieces/ });
    Object.assign(sheet, { getScreenCTM: () => ({ inverse: () => ({ a: 1, d: 1 }) }) });
    Object.assign(handle(), { setPointerCapture: () => {} });
    fireEvent.pointerDown(handle(), { ...pointer, clientX: 0, clientY: 0 });
    for (const clientY of [10, 14, 20]) fireEvent.pointerMove(handle(), { ...pointer, clientX: 0, clientY });
    expect(await told()).toEqual([]);
    fireEvent.pointerUp(handle(), { ...pointer, clientX: 0, clientY: 20 });
    const all = await told();
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(
      /^In the ledger: Shorten the waist dart by 20 mm, its mouth held\. Mouth \d+ mm, angle [\d.]+°, fullness \d+ mm\.$/,
    );
  });

  it("a typed amount, what is refused, and what is taken out", async () => {
    const { store, told } = await show();
    const type = (value: string): void => {
      const field = screen.getByLabelText("Shorten by");
      act(() => field.focus());
      fireEvent.change(field, { target: { value } });
      fireEvent.keyDown(field, { key: "Enter" });
      act(() => field.blur());
    };
    type("8");
    const taken = await told();
    expect(taken).toHaveLength(1);
    expect(taken[0]).toMatch(/^In the ledger: Shorten the waist dart by 8 mm/);
    type("900");
    const refused = await told();
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatch(/is the most/);
    const [first] = store.getState().work.alterations;
    act(() => run(store, { kind: "removeAlteration", id: first?.id ?? "" }));
    const out = await told();
    expect(out).toEqual(["Taken out: Shorten the waist dart by 900 mm, its mouth held."]);
  });

  it("what is refused where no field says so", async () => {
    const { store, told } = await renderWork(
      <>
        <Said />
        <Table />
      </>,
      testWork,
    ).then((rendered) => ({ ...rendered, told: listen() }));
    const id = "dartEnd-front-waistDart";
    const dart = ref("front", "waistDart");
    act(() =>
      run(store, {
        kind: "putAlteration",
        alteration: { kind: "dartEnd", id, dart, shorten: 900, across: 0, hold: "mouth", giveBack: {} },
      }),
    );
    const all = await told();
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^Left out: Shorten the waist dart by 900 mm.*is the most/);
  });

  it("a proposal taken by a tap, and the undo of what is no slip by the name of that part", async () => {
    const Proposals = () => {
      const plan = useSettledPlan();
      const work = useSettledWork((current) => current);
      return plan.ok ? <FromMeasures plan={plan.value} work={work} /> : null;
    };
    const body = { bustGirth: 880, upperChestGirth: 830, waistGirth: 700, hipGirth: 940, shoulderLength: 124 };
    const lengths = { neckBaseGirth: 400, sideNeckToBustPoint: 265, backWaistLength: 390, bustPointWidth: 154 };
    const { store } = await renderWork(
      <>
        <Said />
        <Table />
        <Proposals />
      </>,
      { ...testWork, tapes: tapesOf({ ...body, ...lengths }) },
    );
    const told = listen();
    fireEvent.click(screen.getByRole("button", { name: "Take: Shorten the bodice below the bust by 20 mm" }));
    expect(await told()).toEqual(["In the ledger: Shorten the bodice below the bust by 20 mm."]);
    act(() => run(store, { kind: "setName", name: "Another" }));
    expect(await told()).toEqual([]);
    act(() => undo(store));
    expect(await told()).toEqual(["Undone: the name of this work."]);
  });
});
