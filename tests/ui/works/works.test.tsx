import { measuresOf } from "../../../src/core/measures/tape";
import { act, screen, waitFor, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { writeWorkFile } from "../../../src/document/workFile";
import type { Download } from "../../../src/store/download";
import { NEW_STAMP, type Library } from "../../../src/store/library";
import { memoryLibrary } from "../../../src/store/memoryLibrary";
import { App } from "../../../src/ui/app/App";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const DAY = 24 * 60 * 60 * 1000;
const NOON = new Date(2026, 10, 28, 12).getTime();

let library: Library;

/** What is watched is in view as soon as it is. */
class AllInView {
  constructor(private readonly heard: (seen: readonly { isIntersecting: boolean }[]) => void) {}
  observe(): void {
    this.heard([{ isIntersecting: true }]);
  }
  disconnect(): void {}
}

beforeEach(() => {
  library = memoryLibrary();
  vi.spyOn(Date, "now").mockReturnValue(NOON);
  vi.stubGlobal("IntersectionObserver", AllInView);
});

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** A work that was kept before the page was opened. */
async function keep(id: string, work: Partial<Work>, saved = NOON - DAY, binned: number | null = null): Promise<void> {
  const version = { id, stamp: NEW_STAMP, work: { ...sampleWork, ...work }, past: [], future: [] };
  await library.save({ saved: version, stamp: `${id}-1`, time: saved, isHistorySaved: false });
  if (binned !== null) await library.bin(id, binned);
}

const button = (name: string | RegExp): HTMLElement => screen.getByRole("button", { name });
const menu = (): HTMLElement => screen.getByRole("region", { name: "Your works" });
const rows = (): HTMLElement[] => [...menu().querySelectorAll<HTMLElement>(".works-kept > li")];
const names = (): (string | null | undefined)[] =>
  rows().map((row) => row.querySelector(".work-title > span")?.textContent);
const row = (name: string): HTMLElement => {
  const found = rows()[names().indexOf(name)];
  if (found === undefined) throw new Error(`no row ${name}`);
  return found;
};

async function open(given: Download[] = []) {
  const page = await renderWork(<App />, {}, library, { given });
  await page.user.click(button("Works"));
  return page;
}

describe("the first visit", () => {
  it("shows the demonstration, and starts a blank work beside it in one tap", async () => {
    const { user, work } = await renderWork(<App />, {}, library);
    await user.click(button("Start with my own measures"));
    await waitFor(() => expect(work().invented).toBe(false));
    expect(measuresOf(work().tapes)).toEqual({});
    await user.click(button("Works"));
    // The list follows once the new work is saved.
    await waitFor(() => expect(names()).toContain("My bodice"));
    expect(names()).toContain(sampleWork.name);
  });
});

describe("a row", () => {
  it("says whom the work is for and when it was saved, and which is open", async () => {
    await keep("a", { name: "Blouse", wearer: "Anna" }, NOON - DAY);
    await keep("b", { name: "Dress" }, NOON - 400 * DAY);
    await open();
    await within(menu()).findByText("for Anna, saved yesterday");
    // 400 days before 28 November 2026.
    expect(row("Dress").textContent).toContain("saved 24 October 2025");
    expect(rows().filter((one) => one.hasAttribute("aria-current"))).toEqual([row("Blouse")]);
    expect(row("Blouse").textContent).toContain("open now");
    expect(within(row("Blouse")).queryByRole("button", { name: /^Open/ })).toBeNull();
    const opens = within(row("Dress")).getByRole("button", { name: "Open Dress" });
    expect(document.getElementById(opens.getAttribute("aria-describedby") ?? "")?.textContent).toContain("2025");
  });

  it("shows the front in small, which is nothing to a screen reader, and says where there are no pieces yet", async () => {
    const { pattern } = sampleWork;
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Begun", pattern: { ...pattern, chart: { ...pattern.chart, sizes: [] } } }, NOON - 2 * DAY);
    await open();
    await waitFor(() => expect(row("Blouse").querySelector("svg path")).not.toBeNull());
    expect(row("Blouse").querySelector("svg")?.getAttribute("aria-hidden")).toBe("true");
    await within(row("Begun")).findByText("no pieces yet");
  });

  it("tells namesakes apart by the clock, and says which are the very same", async () => {
    const [nine, five] = [9, 17].map((hour) => new Date(2026, 10, 3, hour, 5).getTime());
    await keep("open", { name: "Coat" });
    await keep("a", { name: "Blouse" }, five);
    await keep("b", { name: "Blouse" }, nine);
    await keep("c", { name: "Blouse", unit: "in" }, NOON - 300 * DAY);
    await open();
    await within(menu()).findByText("the same as the one above");
    expect(rows().map((one) => one.querySelector(".aside")?.firstChild?.textContent)).toEqual([
      "saved yesterday",
      "saved 3 November, 17:05",
      "saved 3 November, 09:05",
      expect.stringMatching(/^saved 1 February, /),
    ]);
    expect(rows()[2]?.textContent).toContain("the same as the one above");
    expect(screen.getAllByText(/the same as/)).toHaveLength(1);
  });

  it("opens its work, and the focus is at the menu's button again", async () => {
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Dress" }, NOON - 2 * DAY);
    const { user, work } = await open();
    await user.click(button("Open Dress"));
    await waitFor(() => expect(work().name).toBe("Dress"));
    await waitFor(() => expect(document.activeElement).toBe(button("Works")));
  });

  it("copies its work and opens the copy", async () => {
    const { user, work } = await open();
    await user.click(button(`Copy ${sampleWork.name}`));
    await waitFor(() => expect(work().name).toBe(`${sampleWork.name} (copy)`));
    expect(measuresOf(work().tapes)).toEqual(measuresOf(sampleWork.tapes));
  });
});

describe("many works", () => {
  it("are looked for by name and by whom they are for", async () => {
    for (let at = 0; at < 9; at += 1)
      await keep(`${at}`, { name: `Bodice ${at}`, ...(at === 4 ? { wearer: "Anna" } : {}) });
    const { user } = await open();
    const field = screen.getByRole("searchbox", { name: "Find by name" });
    await user.type(field, "bodice 7");
    expect(names()).toEqual(["Bodice 7"]);
    await user.clear(field);
    await user.type(field, "anna");
    expect(names()).toEqual(["Bodice 4"]);
    await user.type(field, "x");
    expect(within(menu()).getByText(/^No work has that/)).toBeTruthy();
  });

  it("are not looked for where they are few", async () => {
    await open();
    expect(screen.queryByRole("searchbox", { name: "Find by name" })).toBeNull();
  });
});

describe("the bin", () => {
  it("takes the open work, and a message brings it back", async () => {
    const { user, work } = await open();
    await user.click(button(`Put in the bin: ${sampleWork.name}`));
    await waitFor(() => expect(work().name).not.toBe(sampleWork.name));
    await user.click(await screen.findByRole("button", { name: "Bring it back" }));
    await waitFor(() => expect(work().name).toBe(sampleWork.name));
    expect(work().alterations).toEqual(sampleWork.alterations);
  });

  it("takes another, and the focus goes on to the next row", async () => {
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Dress" }, NOON - 2 * DAY);
    await keep("c", { name: "Coat" }, NOON - 3 * DAY);
    const { user } = await open();
    await user.click(button("Put in the bin: Dress"));
    await waitFor(() => expect(names()).toEqual(["Blouse", "Coat"]));
    expect(document.activeElement).toBe(row("Coat"));
    await user.click(screen.getByText("Bin (1)"));
    expect(menu().textContent).toContain("30 days left");
  });

  it("says how long each still lies there, and gives it back", async () => {
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Dress", wearer: "Anna" }, NOON - 40 * DAY, NOON - 12.5 * DAY);
    const { user, work } = await open();
    await user.click(screen.getByText("Bin (1)"));
    // 12 and a half of 30 days are gone.
    expect(within(menu()).getByText("for Anna, 18 days left")).toBeTruthy();
    await user.click(button("Bring back: Dress"));
    await waitFor(() => expect(work().name).toBe("Dress"));
  });

  it("asks once more before it deletes for good, and the answer at hand is to keep it", async () => {
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Dress" }, NOON - 2 * DAY, NOON - DAY);
    await keep("c", { name: "Coat" }, NOON - 3 * DAY, NOON - 2 * DAY);
    const { user } = await open();
    await user.click(screen.getByText("Bin (2)"));
    await user.click(button("Delete for good: Dress"));
    expect(screen.getByRole("group", { name: /^Delete “Dress” for good\?/ })).toBeTruthy();
    expect(document.activeElement).toBe(button("Keep it"));
    await user.keyboard("{Enter}");
    expect(document.activeElement).toBe(button("Delete for good: Dress"));

    await user.keyboard("{Enter}{Escape}");
    expect(document.activeElement).toBe(button("Delete for good: Dress"));
    expect(menu()).toBeTruthy();

    await user.keyboard("{Enter}");
    await user.click(button("Really delete for good"));
    await screen.findByText("Bin (1)");
    expect(await library.peek("b")).toMatchObject({ ok: false });
    expect(document.activeElement?.textContent).toContain("Coat");
  });
});

describe("files", () => {
  it("are opened, and of a foreign one it is said that nothing was changed", async () => {
    const { user, work } = await open();
    const file = new File([writeWorkFile({ ...sampleWork, name: "From a file" })], "mine.json", {
      type: "application/json",
    });
    await user.upload(screen.getByLabelText("Work file"), file);
    await waitFor(() => expect(work().name).toBe("From a file"));

    await user.click(button("Works"));
    await user.upload(
      screen.getByLabelText("Work file"),
      new File(["[1, 2]"], "other.json", { type: "application/json" }),
    );
    expect(await screen.findByText(/^other\.json: /)).toBeTruthy();
    expect(work().name).toBe("From a file");
  });

  it("are handed out: the open work, or all", async () => {
    const given: Download[] = [];
    await keep("a", { name: "Blouse" });
    await keep("b", { name: "Dress" }, NOON - 2 * DAY);
    const { user } = await open(given);
    await user.click(button("Download this work"));
    await waitFor(() => expect(given).toHaveLength(1));
    expect(given[0]?.text).toBe(writeWorkFile({ ...sampleWork, name: "Blouse" }));
    await user.click(button("Works"));
    await user.click(button("Download all my works"));
    await waitFor(() => expect(given).toHaveLength(2));
    expect(given[1]?.text).toContain("Dress");
  });

  it("are offered beside a failure to save", async () => {
    const given: Download[] = [];
    const { user } = await renderWork(<App />, {}, null, { given });
    expect(screen.getByText(/does not let the page keep anything/)).toBeTruthy();
    await user.click(button("Download this work"));
    await waitFor(() => expect(given).toHaveLength(1));
  });
});

describe("how sure the keeping is", () => {
  it.each([
    [true, ["This browser has promised to keep them."]],
    [false, ["This browser may clear them when it runs short of room: keep copies."]],
    [null, []],
  ] as const)("where the browser answers %s", async (promise, words) => {
    const { user, store } = await renderWork(<App />, { invented: false }, library, { promise });
    // It is asked once there is something of her own to keep.
    act(() => store.setState({ work: { ...store.getState().work, name: "Mine" } }));
    await user.click(button("Works"));
    await waitFor(() => expect(names()).toContain("Mine"));
    const said = () =>
      within(menu())
        .queryAllByText(/^This browser/)
        .map(({ textContent }) => textContent);
    await waitFor(() => expect(said()).toEqual(words));
  });
});

describe("the menu", () => {
  it("closes on Escape, by its button and on leaving it, and gives the focus back", async () => {
    const { user } = await open();
    await user.keyboard("{Escape}");
    expect(screen.queryByRole("region", { name: "Your works" })).toBeNull();
    expect(document.activeElement).toBe(button("Works"));
    await user.click(button("Works"));
    await user.click(within(menu()).getByRole("button", { name: "Close" }));
    expect(document.activeElement).toBe(button("Works"));
    await user.keyboard("{Enter}");
    expect(menu()).toBeTruthy();
    await user.tab({ shift: true });
    expect(screen.queryByRole("region", { name: "Your works" })).toBeNull();
  });
});
