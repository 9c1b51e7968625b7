import { act, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { run, undo } from "../../../src/store/workStore";
import type { Work } from "../../../src/core/decisions/work";
import { fail, invariant, ok } from "../../../src/core/result";
import type { PaperFailure, PaperMade, PaperRequest } from "../../../src/paper/request";
import { App } from "../../../src/ui/app/App";
import { usePageState } from "../../../src/ui/session/pageState";
import { PaperStep } from "../../../src/ui/paper/PaperStep";
import { createPaperRoom } from "../../../src/ui/paper/paperRoom";
import { PaperRoomProvider } from "../../../src/ui/paper/usePaperRoom";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";
import { fakeWorkers, madeFile, previewOf, type FakeWorker } from "./fakeWorkers";

async function openSheet(
  sheet: "True-scale pieces" | "Tissue overlay",
  change: Partial<Work> = {},
  ui = <PaperStep />,
) {
  const workers = fakeWorkers();
  const offered: PaperMade[] = [];
  const room = createPaperRoom(workers.open, (made) => void offered.push(made));
  const rendered = await renderWork(<PaperRoomProvider value={() => room}>{ui}</PaperRoomProvider>, change);
  act(() => usePageState.getState().setStep("paper"));
  await rendered.user.click(await screen.findByRole("radio", { name: sheet }));
  const asked = (): PaperRequest => invariant(workers.all.flatMap((worker) => worker.asked).at(-1), "an ask").request;
  /** Waits until the choices have settled and a preview was asked for. */
  const drawer = async (): Promise<FakeWorker> => waitFor(() => workers.lastAsked("preview"));
  const answer = async (result: PaperFailure | number): Promise<void> => {
    const worker = await drawer();
    act(() =>
      worker.say({ kind: "previewed", result: typeof result === "number" ? ok(previewOf(result)) : fail(result) }),
    );
  };
  return { ...rendered, workers, offered, asked, drawer, answer };
}

const tick = (name: string): HTMLInputElement => screen.getByRole("checkbox", { name });
const button = (name: string): HTMLElement => screen.getByRole("button", { name });
const inGroup = (name: string) => within(screen.getByRole("group", { name }));
const say = (worker: FakeWorker, ...answers: Parameters<FakeWorker["say"]>[0][]): void =>
  act(() => {
    for (const answer of answers) worker.say(answer);
  });

describe("the paper of a dress", () => {
  const DRESS = { skirt: { kind: "aLine", length: 600 }, lining: { skirt: true }, edges: { neck: "facing" } } as const;

  it("has its parts beside the bodice, and leaves the basque out where a skirt hangs, until it is asked for", async () => {
    const { asked, drawer } = await openSheet("True-scale pieces", { dress: DRESS });
    await drawer();
    expect(asked().choices.pieces).toEqual(["front", "back"]);
    expect(asked().choices.parts).toEqual(
      expect.arrayContaining(["skirtFront", "skirtBack", "lining-skirtFront", "lining-skirtBack"]),
    );
    expect(screen.getByText(/^Left out, since the dress has something else there/u).textContent).toMatch(
      /front basque and back basque/u,
    );
    fireEvent.click(tick("Front basque"));
    fireEvent.click(inGroup("Lining of the skirt").getByRole("checkbox", { name: "Skirt back" }));
    await waitFor(() => expect(asked().choices.pieces).toEqual(["front", "back", "frontBasque"]));
    expect(asked().choices.parts).toContain("lining-skirtFront");
    expect(asked().choices.parts).not.toContain("lining-skirtBack");
  });

  it("is not part of printed sizes, nor of strips for tissue", async () => {
    const { asked, drawer, user } = await openSheet("True-scale pieces", { dress: DRESS });
    await drawer();
    await user.selectOptions(screen.getByRole("combobox", { name: "Line drawn" }), "Printed size 12");
    await waitFor(() => expect(asked().choices.size).toBe("12"));
    expect(asked().choices.parts).toBeUndefined();
    expect(asked().dress).toBeUndefined();
    expect(screen.queryByRole("group", { name: "Skirt" })).toBeNull();
  });
});

describe("what is asked of the paper", () => {
  it("is everything, on the paper of the checklist, with the usual margin, until she chooses otherwise", async () => {
    const { asked, drawer } = await openSheet("True-scale pieces");
    await drawer();
    expect(asked().choices).toEqual({
      kind: "pieces",
      format: "A4",
      margin: 10,
      size: null,
      pieces: ["front", "back", "frontBasque", "backBasque"],
      under: [],
      before: false,
      allowances: true,
    });
    expect(asked().day).toMatch(/^\d{4}-\d\d-\d\d$/);
  });

  it("follows every choice, asked for once they have settled", async () => {
    const { workers, asked, drawer } = await openSheet("True-scale pieces");
    await drawer();
    fireEvent.click(tick("Back basque"));
    fireEvent.click(inGroup("Printed sizes in grey beneath").getByRole("checkbox", { name: "12" }));
    fireEvent.click(tick("Beneath, in dashes and dots: the pieces before your alterations"));
    fireEvent.click(tick("With seam and hem allowances"));
    await waitFor(() =>
      expect(asked().choices).toMatchObject({
        pieces: ["front", "back", "frontBasque"],
        under: ["12"],
        before: true,
        allowances: false,
      }),
    );
    expect(workers.all.flatMap((worker) => worker.asked)).toHaveLength(2);
  });

  it("takes all printed sizes and none at a touch, and never the one that is drawn", async () => {
    const { user, asked } = await openSheet("True-scale pieces");
    await user.selectOptions(screen.getByRole("combobox", { name: "Line drawn" }), "Printed size 14");
    await user.click(button("All sizes"));
    const sizes = sampleWork.pattern.chart.sizes.map(({ label }) => label).filter((label) => label !== "14");
    await waitFor(() => expect(asked().choices).toMatchObject({ size: "14", under: sizes, before: false }));
    await user.click(button("No sizes"));
    await waitFor(() => expect(asked().choices.under).toEqual([]));
  });

  it("has no printed size for a line on an overlay, which shows what differs from print", async () => {
    const { user, asked } = await openSheet("True-scale pieces");
    await user.selectOptions(screen.getByRole("combobox", { name: "Line drawn" }), "Printed size 14");
    await user.click(screen.getByRole("radio", { name: "Tissue overlay" }));
    expect(screen.queryByRole("combobox", { name: "Line drawn" })).toBeNull();
    await waitFor(() => expect(asked().choices).toMatchObject({ kind: "overlay", size: null }));
    // Coming back, her choice is still there.
    await user.click(screen.getByRole("radio", { name: "True-scale pieces" }));
    expect(screen.getByRole<HTMLSelectElement>("combobox", { name: "Line drawn" }).value).toBe("14");
  });

  it("offers the pieces before the alterations only where something was altered", async () => {
    await openSheet("True-scale pieces", { alterations: [] });
    expect(screen.queryByRole("checkbox", { name: /before your alterations/ })).toBeNull();
  });

  it("outlasts a look at another step", async () => {
    const { user } = await openSheet("True-scale pieces", {}, <App />);
    await user.click(tick("Back"));
    act(() => usePageState.getState().setStep("tape"));
    act(() => usePageState.getState().setStep("paper"));
    expect(tick("Back").checked).toBe(false);
  });
});

describe("what is kept with the work", () => {
  it("is the paper, the margin and her own allowances, each to be undone", async () => {
    const { user, store, work } = await openSheet("True-scale pieces");
    await user.selectOptions(screen.getByRole("combobox", { name: "Paper" }), "A0 roll (84.1 cm wide)");
    await user.type(screen.getByRole("textbox", { name: "White edge your printer leaves" }), "0.8{Enter}");
    await user.type(screen.getByRole("textbox", { name: "Hem" }), "4{Enter}");
    expect(work()).toMatchObject({ sheetFormat: "A0 roll", printerMargin: 8, allowances: { hem: 40 } });
    await user.clear(screen.getByRole("textbox", { name: "Hem" }));
    await user.keyboard("{Enter}");
    expect(work().allowances).toBeUndefined();
    for (let steps = 0; steps < 4; steps += 1) act(() => undo(store));
    expect(work()).toEqual(sampleWork);
  });

  it("takes no allowance that nobody could cut, and keeps what was typed beside the reason", async () => {
    const { user, work } = await openSheet("True-scale pieces");
    const hem = screen.getByRole<HTMLInputElement>("textbox", { name: "Hem" });
    await user.type(hem, "9{Enter}");
    expect(work().allowances).toBeUndefined();
    expect(hem.value).toBe("9");
    expect(screen.getByText(/An allowance can be 8.0 cm at the most/)).toBeTruthy();
    expect(screen.getByText("Seam and hem allowances: an entry is still to be put right")).toBeTruthy();
    const margin = screen.getByRole("textbox", { name: "White edge your printer leaves" });
    await user.type(margin, "3{Enter}");
    expect(work().printerMargin).toBeUndefined();
    expect(screen.getByText(/from 5 mm to 25 mm/)).toBeTruthy();
  });

  it("is read in inches too", async () => {
    const { user, work } = await openSheet("True-scale pieces", { unit: "in", paper: "Letter" });
    const hem = screen.getByRole<HTMLInputElement>("textbox", { name: "Hem" });
    // 30 mm is 1.18 in, and 1 1/8 the nearest eighth.
    expect(hem.placeholder).toBe("1 1/8");
    await user.type(hem, "1 1/2{Enter}");
    expect(work().allowances).toEqual({ hem: 38.1 });
    expect(screen.getByRole<HTMLSelectElement>("combobox", { name: "Paper" }).value).toBe("Letter");
  });

  it("has a field for each seam that the pieces have", async () => {
    await openSheet("True-scale pieces", { pattern: { ...sampleWork.pattern, style: "princessArmhole" } });
    expect(screen.getByRole("textbox", { name: "Princess seam" })).toBeTruthy();
    expect(screen.queryByRole("textbox", { name: "Strap end" })).toBeNull();
  });
});

describe("the preview", () => {
  it("says what it comes to and draws the map", async () => {
    const { answer } = await openSheet("True-scale pieces");
    expect(screen.getByText("Laying the pieces out…")).toBeTruthy();
    await answer(14);
    // The map of the fake is 720 by 1060 mm.
    expect(
      screen.getByText("14 pages with pieces, and a first page with this map. Joined they are about 72 × 106 cm."),
    ).toBeTruthy();
    const map = screen.getByRole("img", { name: "Map of the pages and the pieces on them" });
    expect(map.getAttribute("viewBox")).toBe("0 0 720 1060");
    expect(map.querySelector("path")?.getAttribute("d")).toBe("M0 0L300 0L0 400Z");
    expect(map.textContent).toBe("A1");
  });

  it.each<[PaperFailure, RegExp]>([
    [
      { code: "sheet/piece-too-wide", key: "back", least: 950, width: 821 },
      /The back is too wide for this roll.*95\.0 cm/,
    ],
    [{ code: "sheet/page-too-small", width: 160, height: 247, least: 170 }, /smaller white edge/],
    [{ code: "sheet/too-many-pages", pages: 400, most: 200 }, /400 pages.*larger paper/],
    [{ code: "paper/outline-refused", piece: "front", half: "left" }, /front of the left half.*crosses itself.*ledger/],
    [{ code: "paper/overlay-too-much", pieces: ["front"] }, /true-scale pieces instead/],
    [{ code: "paper/nothing-changed" }, /Nothing here differs/],
  ])("says before anything is made what stands in the way, and what to do: %j", async (failure, words) => {
    const { user, workers, answer } = await openSheet("True-scale pieces");
    await answer(failure);
    expect(screen.getByRole("alert").textContent).toMatch(words);
    const make = button("Make the PDF");
    expect(make.getAttribute("aria-disabled")).toBe("true");
    await user.click(make);
    expect(workers.all.flatMap(({ asked }) => asked).some(({ kind }) => kind === "make")).toBe(false);
  });

  it("lets a drawing be made where only pages stand in the way", async () => {
    const { answer } = await openSheet("True-scale pieces");
    await answer({ code: "sheet/too-many-pages", pages: 400, most: 200 });
    expect(["PDF", "SVG", "DXF"].map((file) => button(`Make the ${file}`).getAttribute("aria-disabled"))).toEqual([
      "true",
      "false",
      "false",
    ]);
  });

  it("asks nobody where no piece is ticked, and says so", async () => {
    const { user } = await openSheet("True-scale pieces");
    for (const name of ["Front", "Back", "Front basque", "Back basque"]) await user.click(tick(name));
    expect(screen.getByRole("alert").textContent).toContain("No piece is chosen.");
    expect(button("Make the SVG").getAttribute("aria-disabled")).toBe("true");
  });

  it("says so where the worker breaks, and tries again at a touch", async () => {
    const { user, workers, drawer, answer } = await openSheet("True-scale pieces");
    say(await drawer(), { kind: "broke", why: "fault" });
    expect(screen.getByRole("alert").textContent).toContain("Nothing of your work is lost");
    await user.click(button("Try again"));
    expect(workers.all).toHaveLength(2);
    await answer(3);
    expect(screen.queryByRole("alert")).toBeNull();
  });

  it("lets its worker go when another sheet is chosen", async () => {
    const { user, drawer } = await openSheet("True-scale pieces");
    const worker = await drawer();
    await user.click(screen.getByRole("radio", { name: "Measure sheet" }));
    expect(worker.closed).toBe(true);
  });
});

describe("making a file", () => {
  it("shows how far it is, keeps the focus, and says where the file is", async () => {
    const { user, workers, offered, answer } = await openSheet("True-scale pieces");
    await answer(14);
    await user.click(button("Make the PDF"));
    expect(document.activeElement).toBe(button("Make the PDF"));
    say(workers.lastAsked("make"), { kind: "progress", progress: { stage: "layout", share: 0.46 } });
    expect(screen.getByRole<HTMLProgressElement>("progressbar", { name: "Making the PDF" }).value).toBeCloseTo(0.46, 9);
    expect(screen.getByText("Laying them out: 46 %")).toBeTruthy();
    say(workers.lastAsked("make"), { kind: "made", result: ok(madeFile("sample.pdf")) });
    expect(offered).toHaveLength(1);
    expect(screen.getByText("sample.pdf is made: 15 pages. Look for it among your downloads.")).toBeTruthy();
    await user.click(button("Save it again"));
    expect(offered).toHaveLength(2);
  });

  it("is stopped by Cancel, and can be begun again", async () => {
    const { user, workers, offered } = await openSheet("True-scale pieces");
    await user.click(button("Make the SVG"));
    const first = workers.lastAsked("make");
    await user.click(button("Cancel"));
    expect(first.closed).toBe(true);
    expect(screen.getByText("The SVG was not made: you stopped it.")).toBeTruthy();
    await user.click(button("Make the SVG"));
    say(workers.lastAsked("make"), { kind: "made", result: ok({ ...madeFile("s.svg"), pages: 1 }) });
    expect(offered.map(({ fileName }) => fileName)).toEqual(["s.svg"]);
  });

  it("says of a file begun before her last change that it shows what was chosen before", async () => {
    const { user, workers } = await openSheet("True-scale pieces");
    await user.click(button("Make the PDF"));
    await user.click(tick("Back"));
    say(workers.lastAsked("make"), { kind: "made", result: ok(madeFile("sample.pdf")) });
    expect(screen.getByText(/sample\.pdf is made.*before your last change/)).toBeTruthy();
  });

  it.each([
    ["worker", /part that makes paper could not be loaded.*connected/],
    ["typefaces", /typefaces for the PDF could not be loaded.*connection/],
    ["fault", /Nothing of your work is lost/],
  ] as const)("says what went wrong and tries again: %s", async (why, words) => {
    const { user, workers, offered } = await openSheet("True-scale pieces");
    await user.click(button("Make the PDF"));
    say(workers.lastAsked("make"), { kind: "broke", why });
    expect(screen.getByRole("alert").textContent).toMatch(words);
    await user.click(button("Try again"));
    say(workers.lastAsked("make"), { kind: "made", result: ok(madeFile("sample.pdf")) });
    expect(offered).toHaveLength(1);
    expect(screen.queryByRole("alert")).toBeNull();
  });
});

describe("said before anything is made", () => {
  it("are the checks that do not hold, and how to print", async () => {
    const { store } = await openSheet("True-scale pieces");
    expect(screen.queryByText(/does not hold yet/)).toBeNull();
    expect(screen.getByText(/100 % \(“actual size”\) in the print dialogue/)).toBeTruthy();
    expect(screen.getByText(/Measure its test square with your tape before you cut anything/)).toBeTruthy();
    // More than the dart holds: the alteration is refused, and its check fails.
    act(() =>
      run(store, {
        kind: "putAlteration",
        alteration: {
          kind: "dartMouth",
          id: "m",
          dart: { piece: "front", dart: "waistDart" },
          inner: -60,
          outer: -60,
          giveBack: { sideSeam: 1 },
        },
      }),
    );
    expect(screen.getByText(/do(es)? not hold yet; the PDF says so too/)).toBeTruthy();
    expect(screen.getByText(/^Left out on the front/)).toBeTruthy();
  });

  it("is that the browser's own print command gives the checklist", async () => {
    const { container } = await openSheet("Tissue overlay", {}, <App />);
    expect(screen.getByText(/The print command of your browser gives the checklist/)).toBeTruthy();
    act(() => void window.dispatchEvent(new Event("beforeprint")));
    expect(container.querySelector(".printed-checklist")?.getAttribute("aria-label")).toBe("Alteration checklist");
    act(() => void window.dispatchEvent(new Event("afterprint")));
    expect(container.querySelector(".printed-checklist")).toBeNull();
    expect(screen.getByRole<HTMLInputElement>("radio", { name: "Tissue overlay" }).checked).toBe(true);
  });

  it("is why there is no plan yet", async () => {
    await openSheet("True-scale pieces", { tapes: [{ readings: {} }] });
    expect(screen.getByText(/The plan still needs your bust/)).toBeTruthy();
    expect(screen.queryByRole("button", { name: "Make the PDF" })).toBeNull();
  });
});

describe("the trial record", () => {
  it("is what the browser prints while it is chosen", async () => {
    const { user } = await renderWork(<App />);
    act(() => usePageState.getState().setStep("paper"));
    await user.click(screen.getByRole("radio", { name: "Trial record" }));
    act(() => void window.dispatchEvent(new Event("beforeprint")));
    expect(screen.getByRole("article", { name: /trial record/i })).toBeTruthy();
  });
});
