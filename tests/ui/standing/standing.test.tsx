/** From a base to the next dress, and what her body always asked for on a new pattern: taps, undo, and what is left out. */
import { act, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { memoryLibrary, emptyShelf } from "../../../src/store/memoryLibrary";
import { undo } from "../../../src/store/workStore";
import { App } from "../../../src/ui/app/App";
import { FitStep } from "../../../src/ui/fit/FitStep";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

/** A dress that fits with a sway back of 12 mm, kept as her base. */
const kept = run(
  {
    ...sampleWork,
    name: "Blue dress",
    wearer: "Ada",
    tapes: [{ readings: { bustGirth: [930], waistGirth: [738], hipGirth: [985] } }],
    alterations: [{ kind: "fit", id: "fit-swayBack", fit: "swayBack", amount: 12 }],
  },
  { kind: "beginTrial", id: "t1", day: "2026-11-20" },
  { kind: "setVerdict", trial: "t1", verdict: "keep" },
  { kind: "setBase", trial: "t1", isBase: true },
);

/** A library that keeps it beside what is opened. */
async function withKept() {
  const library = memoryLibrary(emptyShelf());
  await library.save({
    saved: { id: "blue", stamp: "", work: kept, past: [], future: [] },
    stamp: "s",
    time: 1,
    isHistorySaved: false,
  });
  return library;
}

describe("begin from a base", () => {
  it("takes three taps from the page to the second dress, which has body, pattern and alterations and no trials", async () => {
    const { user, work } = await renderWork(<App />, {}, await withKept());
    await user.click(screen.getByRole("button", { name: "Works" }));
    const menu = screen.getByRole("region", { name: "Your works" });
    await user.click(await within(menu).findByRole("button", { name: "Begin from a base…" }));
    await user.click(
      await within(menu).findByRole("button", { name: "Blue dress, trial of 20 November 2026, for Ada" }),
    );
    await waitFor(() => expect(work().name).toBe("Blue dress 2"));
    const { trials: _trials, ...others } = kept;
    expect(work()).toEqual({ ...others, name: "Blue dress 2", begunFrom: { name: "Blue dress", day: "2026-11-20" } });
  });

  it("says so where there is none", async () => {
    const { user } = await renderWork(<App />, {});
    await user.click(screen.getByRole("button", { name: "Works" }));
    await user.click(await screen.findByRole("button", { name: "Begin from a base…" }));
    expect((await screen.findByText(/^None yet/)).textContent).toContain("base");
  });
});

describe("what her body always asked for", () => {
  const other: Partial<Work> = { ...sampleWork, wearer: " ada", tapes: kept.tapes, alterations: [] };
  const fold = async () => {
    const summary = await screen.findByText("What your body always asked for");
    const details = summary.closest("details");
    if (details === null) throw new Error("no fold");
    act(() => {
      details.open = true;
    });
    return within(details);
  };
  const onNew = async (change: Partial<Work> = {}) => {
    // The first visit of this library opens the kept work: the other is made beside it.
    const library = await withKept();
    await library.save({
      saved: { id: "new", stamp: "", work: { ...sampleWork, ...other, ...change }, past: [], future: [] },
      stamp: "s",
      time: 2,
      isHistorySaved: false,
    });
    await library.setPageValue("last-open", "new");
    return renderWork(<FitStep />, {}, library);
  };

  it("is put by one tap, as one step, and then stands in the ledger", async () => {
    const { user, work, store } = await onNew();
    const inside = await fold();
    await user.click(await inside.findByRole("button", { name: /^Take: Take 12 mm out across the back waist/ }));
    expect(work().alterations).toEqual(kept.alterations);
    await inside.findByText(/In the ledger already/);
    act(() => undo(store));
    expect(work().alterations).toEqual([]);
  });

  it("stays left out of this garment, and can be offered again", async () => {
    const { user, work } = await onNew();
    const inside = await fold();
    await user.click(await inside.findByRole("button", { name: /^Not here/ }));
    expect(work().standingLeft).toEqual(["swayBack"]);
    await user.click(await inside.findByRole("button", { name: /^Offer it again/ }));
    expect(work()).not.toHaveProperty("standingLeft");
  });

  it("tells the ease she likes, wants it here by one tap, and forgets it", async () => {
    const { user, work } = await onNew();
    const inside = await fold();
    await inside.findByText(/^Ease at the waist/);
    await user.click(inside.getByRole("button", { name: "Want this ease here" }));
    expect(Object.keys(work().easeWanted).toSorted()).toEqual(["bust", "hip", "waist"]);
    await user.click(inside.getByRole("button", { name: "Forget the ease" }));
    await inside.findByText(/^Forgotten/);
    expect(inside.queryByText(/^Ease at the waist/)).toBeNull();
  });

  it("says nothing to another wearer", async () => {
    await onNew({ wearer: "Bea" });
    await screen.findByRole("heading", { name: "Fit" });
    await act(async () => {
      await new Promise((done) => {
        setTimeout(done, 50);
      });
    });
    expect(screen.queryByText("What your body always asked for")).toBeNull();
  });
});
