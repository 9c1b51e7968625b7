/** The order of the slips: moved by keys and by hand, told where it is not the trade's, put right. */
import type { Alteration } from "../../../src/core/decisions/alteration";
import { fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { Said } from "../../../src/ui/app/Said";
import { Ledger } from "../../../src/ui/ledger/Ledger";
import { planOf, ref, withAlterations } from "../../support/works";
import { renderWork } from "../renderWork";
import { runsOf } from "../../../src/ui/ledger/runs";

const length: Alteration = { kind: "fit", id: "l", fit: "lengthBelowBust", amount: 10 };
const side: Alteration = { kind: "fit", id: "s", fit: "sideSeamWaist", amount: 5 };
const end: Alteration = {
  kind: "dartEnd",
  id: "e",
  dart: ref("front", "waistDart"),
  shorten: 10,
  across: 0,
  hold: "mouth",
  giveBack: {},
};
const ids = (alterations: readonly Alteration[]) => alterations.map(({ id }) => id);
const headings = () => [...document.querySelectorAll(".phase-title")].map((title) => title.textContent);

describe("the slips", () => {
  it("stand under the phases of the trade, in the order they are made", async () => {
    await renderWork(<Ledger />, { ...withAlterations(length, end, side), picks: { bustAlteration: 30 } });
    expect(headings().slice(0, 5)).toEqual(["Blend", "Length", "Bust", "Darts", "Widths"]);
    expect(screen.queryByRole("button", { name: "Put in the trade’s order" })).toBeNull();
  });

  it("leave the focus in the ledger as they are taken out: at the next one, at the last", async () => {
    const { user } = await renderWork(<Ledger />, withAlterations(length, end, side));
    const takeOut = async (name: RegExp): Promise<string> => {
      await user.click(screen.getByRole("button", { name }));
      return document.activeElement?.textContent ?? "";
    };
    expect(await takeOut(/^Take out: Lengthen/)).toContain("waist dart");
    expect(await takeOut(/^Take out: .*side seam/)).toContain("waist dart");
  });

  it("move earlier and later by their buttons, each one step, and it is said where they are", async () => {
    const { user, work, store } = await renderWork(
      <>
        <Said />
        <Ledger />
      </>,
      withAlterations(length, end, side),
    );
    expect(screen.getByRole("button", { name: /^Earlier: Lengthen/ })).toHaveProperty("disabled", true);
    expect(screen.getByRole("button", { name: /^Later: .*side seam/ })).toHaveProperty("disabled", true);
    screen.getByRole("button", { name: /^Earlier: .*side seam/ }).focus();
    await user.keyboard("{Enter}");
    expect(ids(work().alterations)).toEqual(["l", "s", "e"]);
    await user.keyboard("{Enter}");
    expect(ids(work().alterations)).toEqual(["s", "l", "e"]);
    expect(screen.getByText(/: now 1 of 3\.$/)).toBeDefined();
    await user.click(screen.getByRole("button", { name: /^Later: .*side seam/ }));
    expect(ids(work().alterations)).toEqual(["l", "s", "e"]);
    expect(store.getState().past).toHaveLength(3);
  });

  it("say where they are made before what the trade does first, and why; one button puts them right", async () => {
    const { user, work, store } = await renderWork(<Ledger />, withAlterations(side, end, length));
    expect(
      screen.getAllByText(/^Made before the length is changed: the trade does length first, because/),
    ).toHaveLength(2);
    expect(headings().slice(0, 4)).toEqual(["Blend", "Widths", "Darts", "Length"]);
    await user.click(screen.getByRole("button", { name: "Put in the trade’s order" }));
    expect(ids(work().alterations)).toEqual(["l", "e", "s"]);
    expect(store.getState().past).toHaveLength(1);
    expect(screen.queryByText(/^Made before/)).toBeNull();
  });

  it("name the other slip that moves the same seam", async () => {
    await renderWork(<Ledger />, withAlterations(length, side));
    const paper = screen.getByRole("button", { name: /^Earlier: .*side seam/ }).closest("li");
    expect(paper?.textContent).toMatch(
      /Also moves .*side seam of the front and the back.*: see “Lengthen the bodice below the bust by 10 mm”\./,
    );
  });

  it("of one half carry its badge", async () => {
    await renderWork(<Ledger />, withAlterations(length, { ...side, half: "right" }));
    const badges = [...document.querySelectorAll(".slip-half")].map((badge) => badge.textContent);
    expect(badges).toEqual(["right half"]);
  });

  it("are not to be moved where there is but one", async () => {
    await renderWork(<Ledger />, withAlterations(length));
    expect(screen.queryByRole("button", { name: /^(?:Earlier|Later):/ })).toBeNull();
    expect(screen.getByRole("button", { name: /^Take out: Lengthen/ })).toBeDefined();
  });

  it("of uneven halves stand in the order of the work, not left before right", () => {
    const right: Alteration = { ...length, half: "right" };
    const plan = planOf(withAlterations(right, side));
    const wearers = runsOf(plan.ledger, ["l", "s"])
      .flatMap(({ lines }) => lines)
      .filter(({ planned }) => planned.source === "wearer");
    expect(wearers.map(({ group }) => group)).toEqual(["l", "s"]);
  });
});

describe("a drag", () => {
  async function ready() {
    const rendered = await renderWork(<Ledger />, withAlterations(length, end, side));
    // This environment lays nothing out: 100 px for each slip, one under the other.
    const papers = [...document.querySelectorAll<HTMLElement>("[data-move]")];
    papers.forEach((paper, index) =>
      Object.assign(paper, { getBoundingClientRect: () => new DOMRect(0, 100 * index, 300, 100) }),
    );
    const grip = papers[2]?.querySelector(".slip-grip");
    if (!(grip instanceof HTMLElement)) throw new Error("no grip");
    Object.assign(grip, { setPointerCapture: () => {} });
    const pointer = { pointerId: 1, button: 0, isPrimary: true };
    return { ...rendered, papers, grip, pointer };
  }

  it("moves a slip to where it is let go, and shows where that is", async () => {
    const { grip, pointer, papers, work } = await ready();
    fireEvent.pointerDown(grip, { ...pointer, clientY: 250 });
    fireEvent.pointerMove(grip, { ...pointer, clientY: 20 });
    expect(papers[0]?.dataset["drop"]).toBe("before");
    fireEvent.pointerUp(grip, { ...pointer, clientY: 20 });
    expect(ids(work().alterations)).toEqual(["s", "l", "e"]);
  });

  it("let go near where it began, or stopped by Escape, changes nothing", async () => {
    const { grip, pointer, work, store } = await ready();
    fireEvent.pointerDown(grip, { ...pointer, clientY: 250 });
    fireEvent.pointerUp(grip, { ...pointer, clientY: 270 });
    fireEvent.pointerDown(grip, { ...pointer, clientY: 250 });
    fireEvent.pointerMove(grip, { ...pointer, clientY: 20 });
    fireEvent.keyDown(document, { key: "Escape" });
    fireEvent.pointerUp(grip, { ...pointer, clientY: 20 });
    expect(ids(work().alterations)).toEqual(["l", "e", "s"]);
    expect(store.getState().past).toEqual([]);
  });
});

describe("truing", () => {
  it("is told only where something was trued", async () => {
    const { container } = await renderWork(<Ledger />, withAlterations(length, end, side));
    const plan = planOf(withAlterations(length, end, side));
    const told = within(container)
      .queryAllByRole("listitem")
      .filter((item) => item.closest(".trued") !== null);
    expect(told.length > 0).toBe(plan.left.truing.length > 0);
  });
});
