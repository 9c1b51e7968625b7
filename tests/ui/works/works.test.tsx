import { measuresOf } from "../../../src/core/measures/tape";
import { screen, waitFor, within } from "@testing-library/react";
import * as fakeDatabase from "fake-indexeddb";
import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { writeWorkFile } from "../../../src/document/workFile";
import { openLibrary } from "../../../src/store/browserLibrary";
import type { Library } from "../../../src/store/library";
import { App } from "../../../src/ui/app/App";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

let libraries = 0;
let library: Library;

// Puts a database into the page that has none.
beforeAll(() => {
  for (const [name, part] of Object.entries(fakeDatabase)) if (name.startsWith("IDB")) vi.stubGlobal(name, part);
  vi.stubGlobal("indexedDB", fakeDatabase.indexedDB);
});

beforeEach(async () => {
  libraries += 1;
  const opened = await openLibrary(`works-${libraries}`);
  if (!opened.ok) throw new Error(opened.failure.code);
  library = opened.value;
});

const button = (name: string | RegExp): HTMLElement => screen.getByRole("button", { name });
const menu = (): HTMLElement => screen.getByRole("region", { name: "Your works" });
const names = (): (string | null)[] =>
  within(within(menu()).getByRole("list"))
    .getAllByRole("button")
    .filter((entry) => entry.classList.contains("open-work"))
    .map((entry) => entry.firstChild?.textContent ?? null);

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

describe("the works menu", () => {
  it("copies a work and opens the copy", async () => {
    const { user, work } = await renderWork(<App />, {}, library);
    await user.click(button("Works"));
    await user.click(button(`Copy ${sampleWork.name}`));
    await waitFor(() => expect(work().name).toBe(`${sampleWork.name} (copy)`));
    expect(measuresOf(work().tapes)).toEqual(measuresOf(sampleWork.tapes));
  });

  it("deletes a work and brings it back", async () => {
    const { user, work } = await renderWork(<App />, {}, library);
    await user.click(button("Works"));
    await user.click(button(`Delete ${sampleWork.name}`));
    await waitFor(() => expect(work().name).not.toBe(sampleWork.name));
    await user.click(await screen.findByRole("button", { name: "Bring it back" }));
    await waitFor(() => expect(work().name).toBe(sampleWork.name));
    expect(work().alterations).toEqual(sampleWork.alterations);
  });

  it("opens a file, and says of a foreign one that nothing was changed", async () => {
    const { user, work } = await renderWork(<App />, {}, library);
    await user.click(button("Works"));
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

  it("hands out the open work as a file", async () => {
    const { user } = await renderWork(<App />, {}, library);
    const made: Blob[] = [];
    vi.spyOn(URL, "createObjectURL").mockImplementation((blob) => {
      if (blob instanceof Blob) made.push(blob);
      return "blob:made";
    });
    await user.click(button("Works"));
    await user.click(button("Download this work"));
    expect(await made[0]?.text()).toBe(writeWorkFile(sampleWork));
    vi.restoreAllMocks();
  });

  it("closes on Escape and gives the focus back", async () => {
    const { user } = await renderWork(<App />, {}, library);
    await user.click(button("Works"));
    await user.keyboard("{Escape}");
    expect(screen.queryByRole("region", { name: "Your works" })).toBeNull();
    expect(document.activeElement).toBe(button("Works"));
  });
});
