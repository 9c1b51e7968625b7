/** Reading a file of outlines: in a worker of its own, which is given up when it takes too long or she stops it. */
import type { FileDrawing } from "../../core/decisions/fileDrawing";
import { fail, type Result } from "../../core/result";
import type { ReadingFailure } from "../../reading/readingFailure";

type PatternFailure =
  | ReadingFailure
  | { readonly code: "opening/too-large"; readonly most: number }
  /** Given up. */
  | { readonly code: "opening/too-slow" }
  /** The browser does not give what is in it. */
  | { readonly code: "opening/out-of-reach" }
  /** No worker, or one that broke. */
  | { readonly code: "opening/broke" };

export type PatternAnswer = Result<FileDrawing, PatternFailure>;

interface PatternReaderWorker {
  readonly read: (file: File) => void;
  readonly close: () => void;
}

/** Starts a worker; `hear` gets its answer, or null where it cannot give one. */
export type OpenPatternReader = (hear: (answer: PatternAnswer | null) => void) => PatternReaderWorker;

/** What comes back is from our own worker. */
export const openPatternReader: OpenPatternReader = (hear) => {
  const worker = new Worker(new URL("readPatternWorker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<PatternAnswer>) => hear(data));
  worker.addEventListener("messageerror", () => hear(null));
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    hear(null);
  });
  return { read: (file) => worker.postMessage(file, []), close: () => worker.terminate() };
};

/** ms */
const PATIENCE = 5000;
/** Bytes. */
const LARGEST = 40_000_000;

/**
 * Reads one file, and never throws.
 *
 * @returns null where she stopped it
 */
export function readPatternApart(
  file: File,
  open: OpenPatternReader,
  stop: AbortSignal,
): Promise<PatternAnswer | null> {
  // Before a byte of it is read.
  if (file.size > LARGEST) return Promise.resolve(fail({ code: "opening/too-large", most: LARGEST }));
  return new Promise((resolve) => {
    let worker: PatternReaderWorker | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const end = (answer: PatternAnswer | null): void => {
      clearTimeout(timer);
      worker?.close();
      resolve(answer);
    };
    const broke: PatternAnswer = { ok: false, failure: { code: "opening/broke" } };
    try {
      stop.addEventListener("abort", () => end(null), { once: true });
      worker = open((answer) => end(answer ?? broke));
      timer = setTimeout(() => end(fail({ code: "opening/too-slow" })), PATIENCE);
      worker.read(file);
    } catch {
      end(broke);
    }
  });
}
