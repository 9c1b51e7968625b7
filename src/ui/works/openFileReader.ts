/** Reading what the wearer opens: in a worker of its own, which is given up when it takes too long. */
import { fail, type Result } from "../../core/result";
import { LARGEST_WORKS } from "../../document/readLimits";
import type { WorkFileFailure } from "../../document/workFile";
import { readAnyFile, type WorksRead } from "../../document/worksFile";

type FileFailure =
  | WorkFileFailure
  /** Given up. */
  | { readonly code: "file/too-slow" }
  /** The browser does not give its text. */
  | { readonly code: "file/out-of-reach" };

export type FileAnswer = Result<WorksRead, FileFailure>;

interface FileReaderWorker {
  readonly read: (file: File | string) => void;
  readonly close: () => void;
}

/** Starts a worker; `hear` gets its answer, or null where it cannot give one. */
export type OpenFileReader = (hear: (answer: FileAnswer | null) => void) => FileReaderWorker;

/** What comes back is from our own worker, which has parsed it. */
const openFileReader: OpenFileReader = (hear) => {
  const worker = new Worker(new URL("readFileWorker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<FileAnswer>) => hear(data));
  worker.addEventListener("messageerror", () => hear(null));
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    hear(null);
  });
  return { read: (file) => worker.postMessage(file, []), close: () => worker.terminate() };
};

/** ms. A file as large as any that is read takes a few seconds on a slow device. */
const PATIENCE = 20_000;

/**
 * Reads one work or many, and never throws.
 *
 * @param file a file, or its text
 */
export async function readFileApart(file: File | string, open: OpenFileReader = openFileReader): Promise<FileAnswer> {
  // Before a byte of it is read.
  if (typeof file !== "string" && file.size > LARGEST_WORKS)
    return fail({ code: "file/too-large", most: LARGEST_WORKS });
  const answer = await inWorker(file, open);
  return answer ?? onPage(file);
}

/** Null where a worker cannot be had, or ends without an answer. */
function inWorker(file: File | string, open: OpenFileReader): Promise<FileAnswer | null> {
  return new Promise((resolve) => {
    let worker: FileReaderWorker | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const end = (answer: FileAnswer | null): void => {
      clearTimeout(timer);
      worker?.close();
      resolve(answer);
    };
    try {
      worker = open(end);
      timer = setTimeout(() => end(fail({ code: "file/too-slow" })), PATIENCE);
      worker.read(file);
    } catch {
      end(null);
    }
  });
}

async function onPage(file: File | string): Promise<FileAnswer> {
  if (typeof file === "string") return readAnyFile(file);
  const text = await file.text().catch(() => null);
  return text === null ? fail({ code: "file/out-of-reach" }) : readAnyFile(text);
}
