import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Tissue } from "../../../src/core/decisions/tissue";
import type { Work } from "../../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { printedNestOf } from "../../../src/core/plan/planOf";
import { pointOf } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { undo } from "../../../src/store/workStore";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import { TissueStep } from "../../../src/ui/tissue/TissueStep";
import { useTissueView } from "../../../src/ui/tissue/tissueView";
import { sampleWork } from "../../support/sampleWork";
import { unevenChart } from "../../support/steppedCharts";
import { renderWork } from "../renderWork";

const door = (): HTMLDetailsElement =>
  invariant(screen.getByText("By tape on the tissue").closest("details"), "details");

const openDoor = (): void =>
  act(() => {
    door().open = true;
    fireEvent(door(), new Event("toggle"));
  });

const field = (name: string): HTMLInputElement => screen.getByRole("textbox", { name });

const on = (tissue: Tissue, change: Partial<Work["pattern"]> = {}): Partial<Work> => ({
  pattern: { ...sampleWork.pattern, length: "waist", ...change, tissue },
});

const plain: Partial<Work> = { pattern: { ...sampleWork.pattern, length: "waist" } };

async function show(change: Partial<Work> = plain) {
  const rendered = await renderWork(<TissueStep />, change);
  openDoor();
  const type = async (name: string, text: string): Promise<void> => {
    await rendered.user.clear(field(name));
    await rendered.user.type(field(name), `${text}{Tab}`);
  };
  return { ...rendered, type };
}

/** The mouth of the front's waist dart as it lies in the pieces printed. */
function printedMouth(work: Work, size: string): number {
  const nest = printedNestOf(work);
  if (!nest.ok) throw new Error(nest.failure.code);
  const at = nest.value.labels.indexOf(size);
  const front = invariant(
    nest.value.sizes[at]?.find(({ name }) => name === "front"),
    "front",
  );
  const [a, b] = [pointOf(front, "waistDartInner"), pointOf(front, "waistDartOuter")];
  return Math.hypot(b.x - a.x, b.y - a.y);
}

describe("your tissue", () => {
  it("says in a word where the pieces come from, and folds both ways in to their answers", async () => {
    await renderWork(<TissueStep />, plain);
    expect(screen.getByText("Stand-in.")).toBeTruthy();
    expect(door().open).toBe(false);
    expect(door().textContent).toContain("nothing measured yet");
    expect(screen.getByText("From a file").closest("details")?.open).toBe(false);
  });

  it("takes a number along the base size's line, makes the pieces by it, and is one step of undo", async () => {
    const { type, work, store } = await show();
    const size = screen.getByRole<HTMLSelectElement>("combobox", { name: /^Measure along the line/ }).value;
    const before = printedMouth(work(), size);
    await type("Front: Waist dart’s mouth", String((before + 8) / 10));
    expect(work().pattern.tissue?.size).toBe(size);
    expect(work().pattern.tissue?.pieces.front?.waistDartMouth).toBeCloseTo(before + 8, 1);
    expect(printedMouth(work(), size)).toBeCloseTo(before + 8, 1);
    expect(screen.getByText("Stand-in, fitted to your tissue.")).toBeTruthy();
    expect(invariant(field("Front: Waist dart’s mouth").closest(".field"), "field").textContent).toContain(
      "+8 mm on the stand-in",
    );
    expect(door().textContent).toContain(`1 measured along size ${size}`);
    act(() => undo(store));
    expect(work().pattern.tissue).toBeUndefined();
  });

  it("shows the stand-in's own figure in an empty field, in inches as well", async () => {
    const { work, store } = await show();
    const size = screen.getByRole<HTMLSelectElement>("combobox", { name: /^Measure along the line/ }).value;
    const mouth = printedMouth(work(), size);
    expect(field("Front: Waist dart’s mouth").placeholder).toBe((Math.round(mouth) / 10).toFixed(1));
    act(() => store.setState({ work: { ...work(), unit: "in" } }));
    const sixteenths = Math.round((mouth / 25.4) * 16);
    expect(field("Front: Waist dart’s mouth").placeholder).toMatch(new RegExp(`^${Math.floor(sixteenths / 16)}( |$)`));
  });

  it("measures along another line where she says so, before and after the first number", async () => {
    const { type, work, user } = await show();
    await user.selectOptions(screen.getByRole("combobox", { name: /^Measure along the line/ }), "16");
    await type("Front: Side seam", "20");
    expect(work().pattern.tissue).toEqual({ size: "16", pieces: { front: { sideLength: 200 } } });
    await user.selectOptions(screen.getByRole("combobox", { name: /^Measure along the line/ }), "12");
    expect(work().pattern.tissue?.size).toBe("12");
  });

  it("names what contradicts at the top and beside its field, and what it contradicts", async () => {
    // Front and back side seams are sewn together: 40 mm apart they cannot both be right.
    await show(on({ size: "14", pieces: { front: { sideLength: 180 }, back: { sideLength: 220 } } }));
    const told = /4\d mm (?:less|more) than the (?:front|back) side seam allows\. Measure both again/;
    const again = screen.getAllByText(told);
    expect(again).toHaveLength(2);
    const fields = ["Front: Side seam", "Back: Side seam"].map((name) => field(name).closest(".field"));
    expect(fields.some((one) => told.test(one?.textContent ?? ""))).toBe(true);
  });

  it("leads to what is worth measuring next", async () => {
    const { user } = await show();
    const next = screen.getByText(/^Next best:/);
    const link = within(next).getByRole("button");
    expect(next.textContent).toMatch(/known to ±\d+ mm, with it to ±\d+ mm\.$/);
    await user.click(link);
    const name =
      document.activeElement instanceof HTMLInputElement ? document.activeElement.labels?.[0]?.textContent : "";
    expect(name?.toLowerCase().replace(/^. /, "").replace(": ", " ")).toBe(link.textContent?.toLowerCase());
  });

  it("lights on the figure the place whose field she is in", async () => {
    await show();
    act(() => field("Back: Side seam").focus());
    expect(document.querySelector(".tissue-figure")?.getAttribute("data-lit")).toBe("sideLength");
    expect(screen.getByRole("complementary", { name: "Where the tape is laid" }).textContent).toContain(
      "From end to end",
    );
    act(() => field("Front: Waist dart’s length").focus());
    expect(document.querySelector(".tissue-figure")?.getAttribute("data-lit")).toBe("waistDartLength");
  });

  it("keeps what could not be read, and opens for it", async () => {
    const { type, work } = await show();
    await type("Front: Side seam", "nineteen");
    expect(work().unread).toEqual({ "tissue.front.sideLength": "nineteen" });
    expect(work().pattern.tissue).toBeUndefined();
    await renderWork(<TissueStep />, { ...plain, unread: { "tissue.front.sideLength": "nineteen" } });
    const last = screen.getAllByText("By tape on the tissue").at(-1)?.closest("details");
    expect(last?.open).toBe(true);
  });

  it("forgets an emptied field, and what another style has no place for when asked to", async () => {
    const { type, work, user } = await show(
      on({ size: "14", pieces: { front: { sideLength: 200 }, cup: { bustWidth: 250 } } }),
    );
    await type("Front: Side seam", " ");
    expect(work().pattern.tissue?.pieces.front).toBeUndefined();
    expect(screen.getByText(/not on the pieces of this style: cup width at the bust/)).toBeTruthy();
    await user.click(screen.getByRole("button", { name: "Forget them" }));
    expect(work().pattern.tissue).toBeUndefined();
  });

  it("says so where the chart has lost the size that was measured", async () => {
    await show(on({ size: "13½", pieces: { front: { sideLength: 200 } } }));
    expect(screen.getByText(/not in the chart any more/)).toBeTruthy();
    expect(screen.getByText("Stand-in.")).toBeTruthy();
  });
});

describe("the waist line's note on printed darts", () => {
  const uneven = { ...sampleWork.pattern, length: "waist" as const, chart: unevenChart };
  const tapes = tapesOf({ ...measuresOf(sampleWork.tapes), waistGirth: 800 });
  const note = () => screen.queryByText(/If your tissue prints them equally wide/);

  it("leads to the fields of their mouths", async () => {
    const { user, showing } = await renderWork(<BlendStep />, { pattern: uneven, tapes });
    await user.click(within(invariant(note(), "note")).getByRole("link", { name: "Measure their mouths" }));
    expect(useTissueView.of(showing()).getState().wanted).toEqual({ piece: "front", length: "waistDartMouth" });
  });

  it("goes once the mouths of front and back are measured in two sizes, and not before", async () => {
    const mouths = { waistDartMouth: 30, waistDartMouthNext: 30 };
    const { unmount } = await renderWork(<BlendStep />, {
      pattern: { ...uneven, tissue: { size: "14", pieces: { front: mouths, back: mouths } } },
      tapes,
    });
    expect(note()).toBeNull();
    unmount();
    await renderWork(<BlendStep />, {
      pattern: { ...uneven, tissue: { size: "14", pieces: { front: { waistDartMouth: 50 } } } },
      tapes,
    });
    expect(note()).not.toBeNull();
  });

  it("opens the tape's door at the field that was asked for", async () => {
    const { showing } = await renderWork(<TissueStep />, plain);
    act(() => useTissueView.of(showing()).getState().want({ piece: "front", length: "waistDartMouth" }));
    openDoor();
    expect(document.activeElement).toBe(field("Front: Waist dart’s mouth"));
    expect(useTissueView.of(showing()).getState().wanted).toBeNull();
  });
});
