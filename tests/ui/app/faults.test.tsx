/** A fault planted in any part of the page: the others live on, and the work can be had. */
import { act, screen, waitFor, within } from "@testing-library/react";
import type { FunctionComponent } from "react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Download } from "../../../src/store/download";
import { memoryLibrary } from "../../../src/store/memoryLibrary";
import { App } from "../../../src/ui/app/App";
import { PageBoundary } from "../../../src/ui/app/PageBoundary";
/* oxlint-disable import/no-unassigned-import -- they are loaded for that alone */
// What a stand-in stands in for, one after the other before any part asks for two at once: the runner keeps one note of which
// it is loading, and of two at once one may wait for itself.
import "../../../src/ui/envelope/EnvelopeStep";
import "../../../src/ui/tissue/TissueStep";
import "../../../src/ui/blend/BlendStep";
import "../../../src/ui/darts/DartsPanel";
import "../../../src/ui/fit/FitStep";
import "../../../src/ui/trial/TrialStep";
import "../../../src/ui/dress/DressStep";
import "../../../src/ui/paper/PaperStep";
import "../../../src/ui/table/Table";
import "../../../src/ui/ledger/Ledger";
/* oxlint-enable import/no-unassigned-import */
import { usePageState } from "../../../src/ui/session/pageState";
import { renderWork } from "../renderWork";

const planted = vi.hoisted(() => new Set<string>());

/** A module whose component fails as long as a fault is planted in it. */
const withFault = vi.hoisted(() => (name: string) => async (original: () => Promise<Record<string, unknown>>) => {
  const module = await original();
  const Component = module[name] as FunctionComponent<object>;
  const Faulty = (props: object) => {
    if (planted.has(name)) throw new Error(`planted in ${name}`);
    return <Component {...props} />;
  };
  return { ...module, [name]: Faulty };
});

vi.mock("../../../src/ui/app/Thread", withFault("Thread"));
vi.mock("../../../src/ui/app/Messages", withFault("Messages"));
vi.mock("../../../src/ui/app/UndoRedo", withFault("UndoRedo"));
vi.mock("../../../src/ui/app/UnitSwitch", withFault("UnitSwitch"));
vi.mock("../../../src/ui/works/WorksMenu", withFault("WorksMenu"));
vi.mock("../../../src/ui/tape/TapeStep", withFault("TapeStep"));
vi.mock("../../../src/ui/envelope/EnvelopeStep", withFault("EnvelopeStep"));
vi.mock("../../../src/ui/tissue/TissueStep", withFault("TissueStep"));
vi.mock("../../../src/ui/blend/BlendStep", withFault("BlendStep"));
vi.mock("../../../src/ui/darts/DartsPanel", withFault("DartsPanel"));
vi.mock("../../../src/ui/fit/FitStep", withFault("FitStep"));
vi.mock("../../../src/ui/trial/TrialStep", withFault("TrialStep"));
vi.mock("../../../src/ui/dress/DressStep", withFault("DressStep"));
vi.mock("../../../src/ui/paper/PaperStep", withFault("PaperStep"));
vi.mock("../../../src/ui/table/Table", withFault("Table"));
vi.mock("../../../src/ui/ledger/Ledger", withFault("Ledger"));

beforeEach(() => {
  vi.spyOn(console, "error").mockImplementation(() => undefined);
});
afterEach(() => {
  planted.clear();
  vi.restoreAllMocks();
});

/** The whole page in a browser that keeps works, and what it hands out. */
async function renderPage() {
  const given: Download[] = [];
  return { ...(await renderWork(<App />, {}, memoryLibrary(), { given })), given };
}

const FILE = { name: expect.stringMatching(/\.bodice\.json$/) };

const GOES_ON = {
  "the header": () => screen.getByRole("heading", { level: 1, name: "Bodicewright" }),
  "the name": () => screen.getByRole("textbox", { name: "Name of this work" }),
  undo: () => screen.getByRole("button", { name: /^Undo/ }),
  "the works": () => screen.getByRole("button", { name: "Works" }),
  "the unit": () => screen.getByRole("radio", { name: "in" }),
  "the thread": () => screen.getByRole("navigation", { name: "Steps of the work" }),
  "the table": () => screen.getByRole("button", { name: "Front" }),
  "the ledger": () => screen.getByRole("heading", { level: 2, name: "Ledger" }),
} as const;

const SHELL = [
  ["WorksMenu", "The list of works", "the works"],
  ["UndoRedo", "Undo and redo", "undo"],
  ["UnitSwitch", "The choice of the unit", "the unit"],
  ["Thread", "The list of steps", "the thread"],
  ["Messages", "What the page has to say", null],
  ["Table", "The table", "the table"],
  ["Ledger", "The ledger", "the ledger"],
] as const;

const STEPS = [
  ["TapeStep", "Tape", "tape"],
  ["EnvelopeStep", "Envelope", "envelope"],
  ["TissueStep", "Tissue", "tissue"],
  ["BlendStep", "Blend", "blend"],
  ["DartsPanel", "Darts", "darts"],
  ["FitStep", "Fit", "fit"],
  ["TrialStep", "Trial", "trial"],
  ["DressStep", "Dress", "dress"],
  ["PaperStep", "Paper", "paper"],
] as const;

/** What is said to have gone wrong, but for that nothing is kept without a library. */
const faultsSaid = (): readonly HTMLElement[] =>
  screen.queryAllByRole("alert").filter((alert) => !alert.matches(".storage"));

async function othersLive(but: string | null): Promise<void> {
  for (const [what, find] of Object.entries(GOES_ON)) if (what !== but) await waitFor(find);
}

describe("a fault in", () => {
  it.each(SHELL)(
    "%s leaves the rest alive, says so in its place, and is gone by trying again",
    async (part, name, own) => {
      planted.add(part);
      const { user } = await renderWork(<App />);
      const alert = await screen.findByText(new RegExp(`^${name} cannot be shown`));
      await othersLive(own);
      const again = within(alert.closest<HTMLElement>("[role=alert]") ?? alert).getByRole("button", {
        name: "Try again",
      });
      planted.clear();
      await user.click(again);
      await othersLive(null);
      expect(faultsSaid()).toEqual([]);
    },
  );

  it.each(STEPS)("%s leaves the other steps and the rest alive", async (part, name, step) => {
    planted.add(part);
    const { user, given } = await renderPage();
    act(() => usePageState.getState().setStep(step));
    const alert = await screen.findByText(`${name} cannot be shown: something in it went wrong.`);
    await othersLive(null);
    expect(alert.closest("main")).toBe(screen.getByRole("main"));
    await user.click(screen.getByRole("button", { name: "Works" }));
    await user.click(await screen.findByRole("button", { name: "Download this work" }));
    expect(given).toMatchObject([FILE]);
  });

  it("the list of works leaves a way to download the work", async () => {
    planted.add("WorksMenu");
    const { user, given } = await renderPage();
    await user.click(screen.getByRole("button", { name: "Download this work" }));
    expect(given).toMatchObject([FILE]);
  });

  it("a press of a button or a promise is said on the page, once, until it is dismissed", async () => {
    const { user } = await renderWork(<App />);
    act(() => void window.dispatchEvent(new ErrorEvent("error", { error: new TypeError("planted") })));
    act(() => {
      const event = new Event("unhandledrejection");
      Object.assign(event, { reason: new Error("planted") });
      window.dispatchEvent(event);
    });
    expect(faultsSaid()).toHaveLength(1);
    expect(faultsSaid()[0]?.textContent).toContain("Something in the page went wrong just now.");
    await user.click(screen.getByRole("button", { name: "Dismiss" }));
    expect(faultsSaid()).toEqual([]);
  });

  it("nothing at all is not said to be one: what browsers tell of sizes, and what was given up", async () => {
    await renderWork(<App />);
    act(() => void window.dispatchEvent(new ErrorEvent("error", { message: "ResizeObserver loop" })));
    act(() => {
      const event = new Event("unhandledrejection");
      Object.assign(event, { reason: new DOMException("given up", "AbortError") });
      window.dispatchEvent(event);
    });
    expect(faultsSaid()).toEqual([]);
  });
});

describe("the whole page", () => {
  it("that cannot be shown saves what is not saved, and offers the work and a new start", async () => {
    const flush = vi.fn<() => Promise<void>>(async () => {});
    const download = vi.fn<() => Promise<void>>(async () => {});
    const Faulty = () => {
      throw new Error("planted");
    };
    const { user } = await renderWork(
      <PageBoundary session={{ flush, download }}>
        <Faulty />
      </PageBoundary>,
    );
    expect(screen.getByRole("alert").textContent).toContain("The page cannot be shown");
    expect(flush).toHaveBeenCalledOnce();
    await user.click(screen.getByRole("button", { name: "Download this work" }));
    expect(download).toHaveBeenCalledOnce();
    expect(screen.getByRole("button", { name: "Load the page again" })).toBeTruthy();
  });
});
