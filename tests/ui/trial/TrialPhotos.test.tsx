/** Photographs beside a trial: added, enlarged, removed and brought back; where their store fails, the trial stands. */
import { act, screen, waitFor } from "@testing-library/react";
import { useState } from "react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail, invariant, ok } from "../../../src/core/result";
import { applyCommand } from "../../../src/core/plan/commands";
import type { Download } from "../../../src/store/download";
import type { Photograph, Photographs } from "../../../src/store/photographs";
import { readAnyFile } from "../../../src/document/worksFile";
import { Messages } from "../../../src/ui/app/Messages";
import { scaledSides } from "../../../src/ui/trial/scalePhotograph";
import { TrialPhotos } from "../../../src/ui/trial/TrialPhotos";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const { trials = [] } = applyCommand(sampleWork, { kind: "beginTrial", id: "t1", day: "2026-11-20" });
const trial = invariant(trials[0], "a trial");

/** A store that is but a list. */
function listed(): Photographs & { readonly list: Photograph[] } {
  const list: Photograph[] = [];
  const none = ok(null);
  return {
    list,
    of: async (_work, one) => ok({ photographs: list.filter(({ trial: of }) => of === one), unreadable: 0 }),
    add: async (_work, one) => {
      list.push(one);
      return none;
    },
    remove: async (id) => {
      list.splice(
        list.findIndex((one) => one.id === id),
        1,
      );
      return none;
    },
    removeWork: async () => none,
    close: () => {},
  };
}

const scale = async (file: Blob) =>
  file.type.startsWith("image/") ? { type: "image/jpeg" as const, bytes: new Uint8Array([1, 2, 3]).buffer } : null;

beforeEach(() => {
  vi.stubGlobal("URL", Object.assign(URL, { createObjectURL: () => "blob:x", revokeObjectURL: () => {} }));
});
afterEach(() => void vi.unstubAllGlobals());

const picture = (name: string): File => new File(["x"], name, { type: "image/png" });

describe("TrialPhotos", () => {
  it("adds several, names each by its day and number, and says where they are kept", async () => {
    const store = listed();
    const { user } = await renderWork(<TrialPhotos trial={trial} photographs={store} scale={scale} />, { trials });
    await screen.findByText(/stay in this browser on this device/);
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png"), picture("b.png")]);
    await waitFor(() => expect(screen.getAllByRole("img").length).toBe(2));
    expect(screen.getByRole("img", { name: "Trial of 20 November 2026, photograph 2 of 2" })).toBeTruthy();
    expect(new Set(store.list.map(({ id }) => id)).size).toBe(2);
  });

  it("shows one that was added while the others were looked for", async () => {
    const store = listed();
    await store.add("w", { id: "t1 5", trial: "t1", added: 5, type: "image/png", bytes: new Uint8Array([4]).buffer });
    const there = await store.of("w", "t1");
    let answer = (): void => {};
    const slow: typeof store = {
      ...store,
      of: () =>
        new Promise((resolve) => {
          answer = () => resolve(there);
        }),
    };
    const { user } = await renderWork(<TrialPhotos trial={trial} photographs={slow} scale={scale} />, { trials });
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    expect(await screen.findAllByRole("img")).toHaveLength(1);
    await act(async () => answer());
    expect(screen.getAllByRole("img")).toHaveLength(2);
  });

  it("tells on the page what became of those that were still being added when she went on", async () => {
    const store = listed();
    let answer = (): void => {};
    const slow = () =>
      new Promise<null>((resolve) => {
        answer = () => resolve(null);
      });
    const Place = () => {
      const [isThere, setIsThere] = useState(true);
      return (
        <>
          <Messages />
          {isThere && <TrialPhotos trial={trial} photographs={store} scale={slow} />}
          <button type="button" onClick={() => setIsThere(false)}>
            Go on
          </button>
        </>
      );
    };
    const { user } = await renderWork(<Place />, { trials });
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    await user.click(screen.getByRole("button", { name: "Go on" }));
    await act(async () => answer());
    expect(screen.getByRole("status").textContent).toContain("a.png");
    expect(screen.getByRole("button", { name: /^Dismiss/ })).toBeTruthy();
  });

  it("enlarges one at a tap, and removes one and brings it back", async () => {
    const store = listed();
    const { user } = await renderWork(<TrialPhotos trial={trial} photographs={store} scale={scale} />, { trials });
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    const face = await screen.findByRole("button", { name: /^Enlarge/ });
    await user.click(face);
    expect(face.getAttribute("aria-expanded")).toBe("true");
    const [kept] = store.list;
    await user.click(screen.getByRole("button", { name: /^Remove/ }));
    await waitFor(() => expect(screen.queryByRole("img")).toBeNull());
    expect(store.list).toEqual([]);
    await user.click(screen.getByRole("button", { name: "Bring it back" }));
    await screen.findByRole("img");
    expect(store.list).toEqual([kept]);
  });

  it("hands out a file with them only where that is asked for", async () => {
    const given: Download[] = [];
    const around = { given };
    const store = listed();
    const { user } = await renderWork(
      <TrialPhotos trial={trial} photographs={store} scale={scale} />,
      { trials },
      null,
      around,
    );
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    await user.click(await screen.findByRole("button", { name: "Save the work with all its photographs" }));
    await waitFor(() => expect(given.length).toBe(1));
    const read = readAnyFile(given[0]?.text ?? "");
    expect(read.ok && read.value.works[0]?.photographs?.map((one) => [one.trial, one.data])).toEqual([["t1", "AQID"]]);
  });

  it("hands out those of all trials, since the file has the whole work; none where some cannot be had", async () => {
    const given: Download[] = [];
    const kept = listed();
    let isRefused = false;
    const store: typeof kept = {
      ...kept,
      of: async (work, one) =>
        isRefused && one === "t2" ? fail({ code: "storage/failed", detail: "" }) : kept.of(work, one),
    };
    const [first] = trials;
    if (first === undefined) throw new Error("no trial");
    await store.add("w", { id: "t2 5", trial: "t2", added: 5, type: "image/png", bytes: new Uint8Array([4]).buffer });
    const { user } = await renderWork(
      <TrialPhotos trial={trial} photographs={store} scale={scale} />,
      { trials: [first, { ...first, id: "t2" }] },
      null,
      { given },
    );
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    const save = await screen.findByRole("button", { name: "Save the work with all its photographs" });
    await user.click(save);
    await waitFor(() => expect(given.length).toBe(1));
    const read = readAnyFile(given[0]?.text ?? "");
    expect(read.ok && read.value.works[0]?.photographs?.map((one) => one.trial).toSorted()).toEqual(["t1", "t2"]);
    isRefused = true;
    await user.click(save);
    await screen.findByText(/^Photographs cannot be kept or shown here just now\./);
    expect(given.length).toBe(1);
  });

  it("says that they cannot be had, and the trial is not touched", async () => {
    const broken = async () => fail({ code: "storage/failed" as const, detail: "" });
    const store = { ...listed(), of: broken, add: broken };
    const { user, work } = await renderWork(<TrialPhotos trial={trial} photographs={store} scale={scale} />, {
      trials,
    });
    await screen.findByText(/The trial itself is not touched/);
    await user.upload(screen.getByLabelText("Photographs to add"), [picture("a.png")]);
    await screen.findByText(/cannot be kept or shown/);
    expect(work().trials).toEqual(trials);
  });
});

describe("scaledSides", () => {
  it("keeps the shape, and makes nothing larger", () => {
    expect(scaledSides(4000, 3000)).toEqual({ width: 1600, height: 1200 });
    expect(scaledSides(3000, 4000)).toEqual({ width: 1200, height: 1600 });
    expect(scaledSides(640, 480)).toEqual({ width: 640, height: 480 });
  });
});
