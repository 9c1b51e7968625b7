/** The Fit step: found by what is seen, set, refused, on one half, taken out. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { demoWorks } from "../../../src/document/demo";
import { undo } from "../../../src/store/workStore";
import { FitStep } from "../../../src/ui/fit/FitStep";
import { testWork, withAlterations } from "../../support/works";
import { renderWork } from "../renderWork";

const face = (name: RegExp) => screen.getByRole("button", { name, expanded: false });

async function opened(name: RegExp, work = testWork) {
  const rendered = await renderWork(<FitStep />, work);
  await rendered.user.click(face(name));
  const row = screen.getByRole("button", { name, expanded: true }).closest("li");
  if (row === null) throw new Error("no row");
  const field = (): HTMLInputElement => within(row).getByRole("textbox");
  const type = async (amount: string): Promise<void> => {
    await rendered.user.clear(field());
    await rendered.user.type(field(), `${amount}{Enter}`);
  };
  return { ...rendered, row, field, type };
}

describe("Fit", () => {
  it("shows what is seen, under the phases of the trade", async () => {
    await renderWork(<FitStep />, testWork);
    expect(face(/^Bodice length below the bust/).textContent).toMatch(/folds lie across above the waist/);
    const headings = screen.getAllByRole("heading", { level: 3 }).map((heading) => heading.textContent);
    expect(headings.slice(0, 2)).toEqual(["From your measures", "Length"]);
    expect(headings).toContain("Widths");
    expect(headings).not.toContain("In use");
  });

  it("is searched by what is seen, and says how many were found", async () => {
    const { user } = await renderWork(<FitStep />, testWork);
    const all = screen.getAllByRole("button", { expanded: false }).length;
    await user.type(screen.getByRole("searchbox", { name: "What do you see?" }), "folds above waist");
    const found = screen.getAllByRole("button", { expanded: false });
    expect(found.length).toBeLessThan(all);
    expect(found.map((row) => row.textContent).join()).toContain("Bodice length below the bust");
    expect(screen.getByRole("status").textContent).toBe(`${found.length} found`);
    await user.type(screen.getByRole("searchbox"), " zebra");
    expect(screen.queryAllByRole("button", { expanded: false })).toEqual([]);
    expect(screen.getByRole("status").textContent).toMatch(/^Nothing here fits that/);
  });

  it("names what this style has no place for, and does not offer it", async () => {
    await renderWork(<FitStep />, testWork);
    expect(screen.getByText("6 not on this style").closest("details")?.textContent).toContain(
      "Depth of the midriff band",
    );
    expect(screen.queryByRole("button", { name: /^Depth of the midriff band/ })).toBeNull();
  });

  it("puts an alteration in the ledger under its own id, as one step of undo", async () => {
    const { type, work, store } = await opened(/^Bodice length below the bust/);
    await type("12");
    expect(work().alterations).toEqual([
      { kind: "fit", id: "fit-lengthBelowBust", fit: "lengthBelowBust", amount: 12 },
    ]);
    expect(store.getState().past).toHaveLength(1);
    expect(screen.getByRole("button", { name: /^Bodice length below the bust ?in use: 12 mm/ })).toBeDefined();
  });

  it("steps with the arrow keys, and Escape puts it back", async () => {
    const { field, work } = await opened(/^Bodice length below the bust/);
    act(() => field().focus());
    fireEvent.keyDown(field(), { key: "ArrowUp", shiftKey: true });
    fireEvent.keyDown(field(), { key: "ArrowUp" });
    expect(work().alterations).toMatchObject([{ amount: 11 }]);
    fireEvent.keyDown(field(), { key: "Escape" });
    expect(work().alterations).toEqual([]);
  });

  it("says beside the field why it cannot be made, with the most that can", async () => {
    const { type, field, work } = await opened(/^Bodice length below the bust/);
    await type("900");
    expect(work().alterations).toMatchObject([{ amount: 900 }]);
    expect(field().getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByRole("alert").textContent).toMatch(/is the most that can be made here/);
    await type("20");
    expect(field().getAttribute("aria-invalid")).toBe("false");
  });

  it("goes from both halves to one with its amount, in one step", async () => {
    const { type, row, user, work, store } = await opened(/^Bodice length below the bust/);
    await type("12");
    await user.click(within(row).getByRole("radio", { name: "left" }));
    expect(work().alterations).toEqual([
      { kind: "fit", id: "fit-lengthBelowBust-left", fit: "lengthBelowBust", amount: 12, half: "left" },
    ]);
    act(() => undo(store));
    expect(work().alterations).toMatchObject([{ id: "fit-lengthBelowBust", amount: 12 }]);
  });

  it("keeps an amount of its own for each half, and makes one of them for both again", async () => {
    const { type, row, user, work } = await opened(/^Bodice length below the bust/);
    await user.click(within(row).getByRole("radio", { name: "left" }));
    await type("6");
    await user.click(within(row).getByRole("radio", { name: "right" }));
    await type("9");
    expect(work().alterations).toMatchObject([
      { amount: 6, half: "left" },
      { amount: 9, half: "right" },
    ]);
    expect(within(row).getByText("6 mm left half, 9 mm right half", { exact: false })).toBeDefined();
    await user.click(within(row).getByRole("radio", { name: "both" }));
    expect(work().alterations).toEqual([{ kind: "fit", id: "fit-lengthBelowBust", fit: "lengthBelowBust", amount: 9 }]);
  });

  it("is taken out again", async () => {
    const used = withAlterations({ kind: "fit", id: "fit-lengthBelowBust", fit: "lengthBelowBust", amount: 12 });
    const { row, user, work } = await opened(/^Bodice length below the bust/, used);
    await user.click(within(row).getByRole("button", { name: "Take out: Bodice length below the bust" }));
    expect(work().alterations).toEqual([]);
    expect(within(row).queryByText(/in use/)).toBeNull();
  });

  it("speaks of both halves again once an undo has made one alteration of them", async () => {
    const both: Alteration = { kind: "fit", id: "fit-lengthBelowBust", fit: "lengthBelowBust", amount: 10 };
    const { user, row, field, store } = await opened(/^Bodice length below the bust/, withAlterations(both));
    await user.click(within(row).getByRole("radio", { name: "right" }));
    act(() => undo(store));
    expect(within(row).getByRole("radio", { name: "both", checked: true })).toBeDefined();
    expect(field().value).toBe("10");
  });

  it("shows first what is in use, also where the style has no place for it", async () => {
    await renderWork(
      <FitStep />,
      withAlterations(
        { kind: "fit", id: "fit-bandDepth", fit: "bandDepth", amount: 5 },
        { kind: "fit", id: "fit-lengthBelowBust-right", fit: "lengthBelowBust", amount: 8, half: "right" },
      ),
    );
    const used = within(screen.getByRole("region", { name: "In use" })).getAllByRole("button");
    expect(used.map((row) => row.textContent)).toEqual([
      expect.stringMatching(/^Bodice length below the bust.*8 mm right half/),
      expect.stringMatching(/^Depth of the midriff band.*5 mm, left out/),
    ]);
  });
});

it("says on its own row what it leaves no room for", async () => {
  const midriff = demoWorks().find(({ pattern }) => pattern.style === "midriff");
  if (midriff === undefined) throw new Error("no midriff");
  const dart = { piece: "cup", dart: "underBustDart" } as const;
  const shorter: Alteration = {
    kind: "dartEnd",
    id: "end",
    dart,
    shorten: 36,
    across: 0,
    hold: "mouth",
    giveBack: {},
  };
  const { row, type } = await opened(/^Height of the bust point/, { ...midriff, alterations: [shorter] });
  expect(within(row).queryByText(/^Left out/)).toBeNull();
  await type("13");
  expect(within(row).getByText(/^Left out on the cup: shorten the under-bust dart/).textContent).toContain(
    "too short to sew",
  );
  await type("0");
  expect(within(row).queryByText(/^Left out/)).toBeNull();
});
