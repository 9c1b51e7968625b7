/** Opening a file of outlines: apart from the page, stopped or given up, refused in words; nothing is changed then. */
import { act, createEvent, fireEvent, screen, waitFor } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { undo } from "../../../src/store/workStore";
import { OwnPatternPanel } from "../../../src/ui/ownPattern/OwnPatternPanel";
import {
  readPatternApart,
  type OpenPatternReader,
  type PatternAnswer,
} from "../../../src/ui/ownPattern/readPatternApart";
import { renderWork } from "../renderWork";
import { useFileDrop } from "../../../src/ui/app/useFileDrop";
import { useHashStep } from "../../../src/ui/app/useHashStep";
import { usePageState } from "../../../src/ui/session/pageState";
import { thornfield, workWith } from "./ownFile";

interface Stub {
  readonly open: OpenPatternReader;
  readonly asked: File[];
  closed: number;
  hear: (answer: PatternAnswer | null) => void;
}

/** A worker that answers when the test does. */
function stub(): Stub {
  const made: Stub = {
    asked: [],
    closed: 0,
    hear: () => {},
    open: (hear) => {
      made.hear = hear;
      return { read: (file) => void made.asked.push(file), close: () => void (made.closed += 1) };
    },
  };
  return made;
}

const svg = new File(["<svg/>"], "thornfield.svg", { type: "image/svg+xml" });
const answer: PatternAnswer = { ok: true, value: thornfield() };
function Dropping({ reader }: { readonly reader: OpenPatternReader }) {
  useFileDrop();
  return <OwnPatternPanel reader={reader} />;
}

const input = (): HTMLInputElement => screen.getByLabelText("File with the lines of a pattern");

describe("reading apart from the page", () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it("gives a worker up after five seconds, and ends it", async () => {
    const worker = stub();
    const read = readPatternApart(svg, worker.open, new AbortController().signal);
    await vi.advanceTimersByTimeAsync(4999);
    expect(worker.closed).toBe(0);
    await vi.advanceTimersByTimeAsync(1);
    expect(await read).toEqual({ ok: false, failure: { code: "opening/too-slow" } });
    expect(worker.closed).toBe(1);
  });

  it("refuses a file of more than forty megabytes before a byte of it is read", async () => {
    const worker = stub();
    const large = Object.defineProperty(new File(["x"], "large.svg"), "size", { value: 40_000_001 });
    expect(await readPatternApart(large, worker.open, new AbortController().signal)).toEqual({
      ok: false,
      failure: { code: "opening/too-large", most: 40_000_000 },
    });
    expect(worker.asked).toEqual([]);
  });

  it("says so where a worker breaks or cannot be had", async () => {
    const worker = stub();
    const read = readPatternApart(svg, worker.open, new AbortController().signal);
    worker.hear(null);
    const broke = { ok: false, failure: { code: "opening/broke" } };
    expect(await read).toEqual(broke);
    const none: OpenPatternReader = () => {
      throw new Error("no workers");
    };
    expect(await readPatternApart(svg, none, new AbortController().signal)).toEqual(broke);
  });

  it("ends the worker when she stops it", async () => {
    const worker = stub();
    const stop = new AbortController();
    const read = readPatternApart(svg, worker.open, stop.signal);
    stop.abort();
    expect(await read).toBeNull();
    expect(worker.closed).toBe(1);
  });
});

describe("a file on the page", () => {
  it("is kept with the work as it was drawn; undo takes it back", async () => {
    const worker = stub();
    const { user, work, store } = await renderWork(<OwnPatternPanel reader={worker.open} />);
    expect(screen.getByText(/The file stays on this device/)).toBeTruthy();
    await user.upload(input(), svg);
    expect(screen.getByText("Reading thornfield.svg…")).toBeTruthy();
    await act(async () => worker.hear(answer));
    expect(work().pattern.own).toEqual({ file: "thornfield.svg", drawing: answer.value, pieces: [] });
    expect(await screen.findByRole("group", { name: /^The sheet as drawn/ })).toBeTruthy();
    act(() => undo(store));
    expect(work().pattern.own).toBeUndefined();
    expect(await screen.findByRole("button", { name: "Open a file" })).toBeTruthy();
  });

  it("is opened by being dropped on the page, which it would else take the place of", async () => {
    const worker = stub();
    await renderWork(<Dropping reader={worker.open} />);
    const drop = createEvent.drop(document.body);
    Object.defineProperty(drop, "dataTransfer", { value: { types: ["Files"], files: [svg] } });
    fireEvent(document.body, drop);
    expect(drop.defaultPrevented).toBe(true);
    await waitFor(() => expect(worker.asked).toEqual([svg]));
  });

  it("dropped on another step leads to Tissue, and is read once that is there", async () => {
    const worker = stub();
    window.location.hash = "#blend";
    function Later() {
      useFileDrop();
      useHashStep();
      return usePageState((page) => page.step) === "tissue" ? <OwnPatternPanel reader={worker.open} /> : null;
    }
    await renderWork(<Later />);
    expect(screen.queryByRole("button", { name: "Open a file" })).toBeNull();
    const over = createEvent.dragOver(document.body);
    Object.defineProperty(over, "dataTransfer", { value: { types: ["Files"], files: [] } });
    fireEvent(document.body, over);
    // Else nothing could be let go there.
    expect(over.defaultPrevented).toBe(true);
    const drop = createEvent.drop(document.body);
    Object.defineProperty(drop, "dataTransfer", { value: { types: ["Files"], files: [svg] } });
    fireEvent(document.body, drop);
    expect(drop.defaultPrevented).toBe(true);
    await waitFor(() => expect(worker.asked).toEqual([svg]));
    expect(window.location.hash).toBe("#tissue");
    expect(usePageState.getState().dropped).toBeNull();
  });

  it("that is refused while another is open is told at the head, and has the focus", async () => {
    const worker = stub();
    const { user } = await renderWork(<OwnPatternPanel reader={worker.open} />, workWith(thornfield()));
    await user.upload(input(), new File(["no"], "photo.jpg.svg", { type: "image/svg+xml" }));
    await act(async () => worker.hear({ ok: false, failure: { code: "reading/endless", name: "sleeve" } }));
    const alert = screen.getByRole("alert");
    const panel = screen.getByRole("region", { name: "Your pattern as a file" });
    expect(panel.firstElementChild).toBe(alert);
    expect(document.activeElement).toBe(alert);
    await user.upload(input(), svg);
    expect(screen.queryByRole("alert")).toBeNull();
  });

  it("that is refused changes nothing, and says why", async () => {
    const worker = stub();
    const { user, work } = await renderWork(<OwnPatternPanel reader={worker.open} />);
    const before = work();
    await user.upload(input(), svg);
    await act(async () => worker.hear({ ok: false, failure: { code: "reading/endless", name: "sleeve" } }));
    expect(screen.getByRole("alert").textContent).toBe(
      "In this file “sleeve” is a part of itself, without end. Nothing was changed.",
    );
    expect(work()).toBe(before);
  });

  it("the button keeps the focus meanwhile, and opens no second file", async () => {
    const worker = stub();
    const { user } = await renderWork(<OwnPatternPanel reader={worker.open} />);
    const [open] = screen.getAllByRole("button");
    if (open === undefined) throw new Error("no button");
    const asked = vi.spyOn(input(), "click");
    open.focus();
    await user.keyboard("{Enter}");
    expect(asked).toHaveBeenCalledTimes(1);
    await user.upload(input(), svg);
    asked.mockClear();
    open.focus();
    expect(open.getAttribute("aria-disabled")).toBe("true");
    expect(document.activeElement).toBe(open);
    await user.keyboard("{Enter}");
    expect(asked).not.toHaveBeenCalled();
    await act(async () => worker.hear(answer));
  });

  it("that she stops reading is forgotten", async () => {
    const worker = stub();
    const { user, work } = await renderWork(<OwnPatternPanel reader={worker.open} />);
    await user.upload(input(), svg);
    await user.click(screen.getByRole("button", { name: "Stop reading" }));
    await act(async () => worker.hear(answer));
    expect(work().pattern.own).toBeUndefined();
    expect(screen.queryByText(/^Reading/)).toBeNull();
    expect(screen.queryByRole("alert")).toBeNull();
  });
});
