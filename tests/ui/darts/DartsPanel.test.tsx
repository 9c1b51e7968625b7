/** The darts panel: what she types, what the dart then is, and what she is told. */
import type { Alteration, DartEndAlteration } from "../../../src/core/decisions/alteration";
import { act, cleanup, fireEvent, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { afterEach, describe, expect, it } from "vitest";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import type { DartRef } from "../../../src/core/pattern/piece";
import type { Work } from "../../../src/core/decisions/work";
import { undo } from "../../../src/store/workStore";
import { renderWork, viewNow, type Rendered } from "../renderWork";
import { ref, testWork, withAlterations } from "../../support/works";

const shortened: DartEndAlteration = {
  kind: "dartEnd",
  id: "a",
  dart: ref("front", "waistDart"),
  shorten: 30,
  across: 0,
  hold: "fullness",
  giveBack: {},
};

afterEach(cleanup);

async function show(work: Work = testWork, dart: DartRef = ref("front", "waistDart")): Promise<Rendered> {
  const rendered = await renderWork(<DartsPanel />, work);
  act(() => viewNow().setState({ selectedDart: dart }));
  return rendered;
}

/** The last figure of a row: the dart as drawn. */
function drawn(row: string): number {
  const cells = within(screen.getByRole("row", { name: new RegExp(`^${row}`) })).getAllByRole("cell");
  return Number.parseFloat(cells.at(-1)?.textContent ?? "");
}

describe("DartsPanel", () => {
  it("shows a dart shortened with its mouth held as wider in angle and fuller, and too sharp in the end", async () => {
    await show();
    const before = { mouth: drawn("Mouth"), angle: drawn("Angle"), fullness: drawn("Fullness") };
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "40{Enter}");
    expect(drawn("Mouth")).toBe(before.mouth);
    expect(drawn("Angle")).toBeGreaterThan(before.angle + 4);
    expect(drawn("Fullness")).toBeGreaterThan(before.fullness);
    expect(screen.getByText(/Too sharp/)).toBeDefined();
  });

  it("shows the half that the table shows, by its name where the halves differ", async () => {
    const gape: Alteration = { kind: "fit", id: "g", fit: "armholeGape", amount: 12, half: "right" };
    await show(withAlterations(gape), ref("front", "sideDart"));
    expect(screen.getByRole("heading", { name: "Front side dart, left half" })).toBeDefined();
    const left = drawn("Mouth");
    act(() => viewNow().setState({ half: "right" }));
    expect(screen.getByRole("heading", { name: "Front side dart, right half" })).toBeDefined();
    // What is closed at the armhole goes into the dart.
    expect(drawn("Mouth")).toBeGreaterThan(left + 10);
    cleanup();
    await show(testWork, ref("front", "sideDart"));
    expect(screen.getByRole("heading", { name: "Front side dart" })).toBeDefined();
  });

  it("keeps angle and fullness when the fullness is held, narrows the mouth, and shows where the width went", async () => {
    await show();
    const before = { mouth: drawn("Mouth"), angle: drawn("Angle"), fullness: drawn("Fullness") };
    // There is nothing to be held before the end has moved.
    expect(screen.queryByRole("radio", { name: "Hold the fullness" })).toBeNull();
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "40{Enter}");
    await userEvent.click(screen.getByRole("radio", { name: "Hold the fullness" }));
    expect(drawn("Angle")).toBeCloseTo(before.angle, 0);
    expect(drawn("Fullness")).toBe(before.fullness);
    expect(drawn("Mouth")).toBeLessThan(before.mouth - 5);
    const shares = screen.getAllByRole("slider").filter((slider) => slider.closest(".shares") !== null);
    expect(shares.map((slider) => Number(slider.getAttribute("value"))).reduce((a, b) => a + b, 0)).toBe(100);
    expect(screen.getByText("Where did the width go?")).toBeDefined();
  });

  it("says beside the field why a dart cannot be that short, and the most that works", async () => {
    await show();
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "500{Enter}");
    expect(screen.getByText(/too short to sew; \d+ mm is the most/)).toBeDefined();
    expect(screen.getByLabelText("Shorten by").getAttribute("aria-invalid")).toBe("true");
  });

  it("keeps what cannot be read in the field, with a kind word", async () => {
    await show();
    await userEvent.clear(screen.getByLabelText("Shorten by"));
    await userEvent.type(screen.getByLabelText("Shorten by"), "a bit{Enter}");
    expect(screen.getByDisplayValue("a bit")).toBe(screen.getByLabelText("Shorten by"));
    expect(screen.getByRole("alert").textContent).toContain("a bit");
  });
});

describe("choosing a dart", () => {
  it("names every dart by its piece, shows the chosen one, and says in words which are to look at", async () => {
    await show(withAlterations({ ...shortened, shorten: 60, hold: "mouth" }));
    const names = within(screen.getByRole("list", { name: "Darts by piece" }))
      .getAllByRole("button")
      .map((button) => button.textContent);
    expect(names).toEqual([
      "Front waist dart, to look at",
      "Front side dart",
      "Back waist dart",
      "Front basque waist dart",
      "Back basque waist dart",
    ]);
    await userEvent.click(screen.getByRole("button", { name: "Back waist dart" }));
    expect(screen.getByRole("heading", { name: "Back waist dart" })).toBeDefined();
    // A back dart serves no bust: nothing is asked of it, and it has no distance to the bust point.
    expect(screen.queryByRole("columnheader", { name: "your cup asks" })).toBeNull();
    expect(screen.queryByRole("row", { name: /^Short of the bust point/ })).toBeNull();
  });

  it("warns of a dart that runs past the bust point", async () => {
    await show(withAlterations({ ...shortened, shorten: -40, hold: "mouth" }));
    expect(screen.getByText(/It ends \d+ mm past the bust point: shorten it/)).toBeDefined();
  });
});

describe("where an amount cannot be had", () => {
  it("says so beside the amount that went too far, with the most that stays on the piece", async () => {
    await show();
    const across = screen.getByLabelText("Move its end towards the centre front by");
    await userEvent.clear(across);
    await userEvent.type(across, "300{Enter}");
    expect(across.getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByLabelText("Shorten by").getAttribute("aria-invalid")).toBe("false");
    const most = Number(/(\d+) mm is the most that stays on it/.exec(screen.getByRole("alert").textContent)?.[1]);
    await userEvent.clear(across);
    await userEvent.type(across, `${most - 1}{Enter}`);
    expect(across.getAttribute("aria-invalid")).toBe("false");
  });

  it("says at the outer mouth end what went wrong there", async () => {
    await show();
    const outer = screen.getByLabelText("Widen: mouth end nearer the side seam");
    await userEvent.clear(outer);
    await userEvent.type(outer, "-300{Enter}");
    expect(outer.getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByLabelText("Widen: mouth end nearer the centre front").getAttribute("aria-invalid")).toBe(
      "false",
    );
    expect(screen.getByRole("alert").textContent).toContain("would vanish");
  });
});

describe("what the dart sets free", () => {
  const slider = (name: string) => screen.getByRole("slider", { name });
  const percent = (name: string) => screen.getByRole<HTMLInputElement>("textbox", { name: `${name}, per cent` });

  it("is shared by sliding, as one step of undo, and the shares stay whole", async () => {
    const { store } = await show(withAlterations(shortened));
    const before = store.getState().work;
    fireEvent.change(slider("centre front seam"), { target: { value: "20" } });
    fireEvent.change(slider("centre front seam"), { target: { value: "40" } });
    fireEvent.pointerUp(slider("centre front seam"));
    expect(store.getState().work.alterations).toMatchObject([
      { giveBack: { sideSeam: 0.6, centreSeam: 0.4, otherDart: 0 } },
    ]);
    expect(store.getState().past).toEqual([before]);
    act(() => undo(store));
    expect(store.getState().work).toEqual(before);
  });

  it("is shared by a number, and a number that is no share stays as typed with a kind word", async () => {
    const { store } = await show(withAlterations(shortened));
    const field = percent("back waist dart");
    await userEvent.clear(field);
    await userEvent.type(field, "30{Enter}");
    expect(store.getState().work.alterations).toMatchObject([{ giveBack: { sideSeam: 0.7, otherDart: 0.3 } }]);
    expect(store.getState().past).toHaveLength(1);
    await userEvent.clear(field);
    await userEvent.type(field, "130{Enter}");
    expect(field.value).toBe("130");
    expect(screen.getByText("Write a share from 0 to 100.")).toBeDefined();
    expect(store.getState().past).toHaveLength(1);
    await userEvent.keyboard("{Escape}");
    expect(field.value).toBe("30");
    expect(screen.queryByText("Write a share from 0 to 100.")).toBeNull();
  });

  it("shows where it went, and the finished waist before and after, the same", async () => {
    await show(withAlterations({ ...shortened, giveBack: { sideSeam: 0.5, centreSeam: 0.5 } }));
    await userEvent.click(screen.getByText("Where did the width go?"));
    const sum = screen.getByText("Where did the width go?").closest("details")?.textContent ?? "";
    const free = Number(/would change by\+(\d+) mm/.exec(sum)?.[1]);
    const parts = [...sum.matchAll(/taken in at the [a-z ,]+?(\d+) mm/g)].map(([, amount]) => Number(amount));
    expect(parts).toHaveLength(2);
    expect(Math.abs(parts.reduce((a, b) => a + b, 0) - free)).toBeLessThanOrEqual(1);
    const [, before, after] = /([\d.]+) cm before, ([\d.]+) cm after/.exec(sum) ?? [];
    expect(before).toBeDefined();
    expect(after).toBe(before);
  });

  it("is not asked about where nothing was changed", async () => {
    await show();
    expect(screen.queryByRole("group", { name: /sets free/ })).toBeNull();
    expect(screen.queryByText("Where did the width go?")).toBeNull();
  });
});

describe("moving a whole dart", () => {
  it("asks of the front waist dart alone how it is to be moved, and takes it off the centre seam", async () => {
    const { store } = await show();
    const by = screen.getByLabelText("Move the whole dart towards the centre front by");
    await userEvent.clear(by);
    await userEvent.type(by, "6{Enter}");
    await userEvent.click(screen.getByRole("radio", { name: "taking it off the centre seam" }));
    expect(store.getState().work.alterations).toMatchObject([{ kind: "dartPlace", by: 6, how: "offCentreSeam" }]);
    act(() => viewNow().setState({ selectedDart: ref("back", "waistDart") }));
    const back = screen.getByLabelText("Move the whole dart towards the centre back by");
    await userEvent.clear(back);
    await userEvent.type(back, "6{Enter}");
    expect(screen.queryByRole("radio", { name: "taking it off the centre seam" })).toBeNull();
  });

  it("puts a dart back as printed", async () => {
    const { store } = await show(withAlterations(shortened));
    await userEvent.click(screen.getByRole("button", { name: "Put its end back as printed" }));
    expect(store.getState().work.alterations).toEqual([]);
    expect(screen.getByLabelText<HTMLInputElement>("Shorten by").value).toBe("0");
  });
});

describe("an amount that is stepped with the keys", () => {
  it("is one step of undo for one visit, and Escape puts it back", async () => {
    const { store } = await show();
    const before = store.getState().work;
    screen.getByLabelText("Shorten by").focus();
    await userEvent.keyboard("{ArrowUp}{ArrowUp}{Shift>}{ArrowUp}{/Shift}");
    expect(store.getState().work.alterations).toMatchObject([{ shorten: 12 }]);
    await userEvent.keyboard("{Escape}");
    expect(store.getState().work).toBe(before);
    await userEvent.keyboard("{ArrowUp}{ArrowDown}{ArrowUp}{Tab}");
    expect(store.getState().past).toEqual([before]);
  });
});

describe("truing", () => {
  it("is told where the legs had to be made alike, and not where they were", async () => {
    await show(withAlterations({ ...shortened, shorten: 0, across: 15, hold: "mouth" }));
    // Towards the centre front the inner leg gets the shorter one, so its mouth end is carried out along it.
    expect(screen.getByText(/the mouth end nearer the centre front is carried \d+ mm out along its leg/)).toBeDefined();
    act(() => viewNow().setState({ selectedDart: ref("back", "waistDart") }));
    expect(screen.queryByText(/^Trued/)).toBeNull();
  });
});
