import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { LARGEST_WORKS } from "../../../src/document/readLimits";
import { writeWorksFile, type WorksRead } from "../../../src/document/worksFile";
import { readFileApart, type FileAnswer, type OpenFileReader } from "../../../src/ui/works/openFileReader";
import { sampleWork } from "../../support/sampleWork";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

interface Stub {
  readonly open: OpenFileReader;
  readonly asked: (File | string)[];
  closed: number;
  hear: (answer: FileAnswer | null) => void;
}

/** A worker that does what the test says, when it is asked. */
function stub(onRead: (stub: Stub) => void = () => {}): Stub {
  const made: Stub = {
    asked: [],
    closed: 0,
    hear: () => {},
    open: (hear) => {
      made.hear = hear;
      return {
        read: (file) => {
          made.asked.push(file);
          onRead(made);
        },
        close: () => void (made.closed += 1),
      };
    },
  };
  return made;
}

const text = writeWorksFile([{ work: sampleWork }]);
const value: WorksRead = { works: [{ work: sampleWork }], unreadable: [] };
const fileOf = (content: string): File => new File([content], "works.json", { type: "application/json" });

describe("readFileApart", () => {
  it("gives what the worker answers, and closes it", async () => {
    const worker = stub(({ hear }) => hear({ ok: true, value: { works: [], unreadable: [] } }));
    const file = fileOf(text);
    expect(await readFileApart(file, worker.open)).toEqual({ ok: true, value: { works: [], unreadable: [] } });
    expect(worker.asked).toEqual([file]);
    expect(worker.closed).toBe(1);
  });

  it("refuses a file by its size before any of it is read", async () => {
    const worker = stub();
    const large = Object.defineProperty(fileOf("x"), "size", { value: LARGEST_WORKS + 1 });
    expect(await readFileApart(large, worker.open)).toEqual({
      ok: false,
      failure: { code: "file/too-large", most: LARGEST_WORKS },
    });
    expect(worker.asked).toEqual([]);
  });

  it("gives a worker up after twenty seconds, and ends it", async () => {
    const worker = stub();
    const answer = readFileApart(text, worker.open);
    await vi.advanceTimersByTimeAsync(19_999);
    expect(worker.closed).toBe(0);
    await vi.advanceTimersByTimeAsync(1);
    expect(await answer).toEqual({ ok: false, failure: { code: "file/too-slow" } });
    expect(worker.closed).toBe(1);
  });

  it.each<[string, OpenFileReader]>([
    [
      "cannot be made",
      () => {
        throw new Error("no workers here");
      },
    ],
    ["ends without an answer", stub(({ hear }) => hear(null)).open],
    [
      "cannot be handed the file",
      stub(() => {
        throw new Error("not cloned");
      }).open,
    ],
  ])("reads on the page where the worker %s", async (_, open) => {
    expect(await readFileApart(text, open)).toEqual({ ok: true, value });
    expect(await readFileApart(fileOf(text), open)).toEqual({ ok: true, value });
    expect(await readFileApart("hello", open)).toEqual({ ok: false, failure: { code: "file/not-json" } });
  });

  it("says where the browser does not give a file's text", async () => {
    const gone = Object.defineProperty(fileOf(text), "text", { value: () => Promise.reject(new Error("moved")) });
    const open = stub(({ hear }) => hear(null)).open;
    expect(await readFileApart(gone, open)).toEqual({ ok: false, failure: { code: "file/out-of-reach" } });
  });

  it("opens the worker of its own where none is handed in", async () => {
    const started: string[] = [];
    vi.stubGlobal(
      "Worker",
      class extends EventTarget {
        constructor(address: URL, { type }: { readonly type: string }) {
          super();
          started.push(`${address.pathname.split("/").at(-1)} ${type}`);
        }
        postMessage(): void {
          this.dispatchEvent(new MessageEvent("message", { data: { ok: true, value } }));
        }
        terminate(): void {
          started.push("ended");
        }
      },
    );
    expect(await readFileApart(text)).toEqual({ ok: true, value });
    expect(started).toEqual(["readFileWorker.ts module", "ended"]);
    vi.unstubAllGlobals();
  });
});
