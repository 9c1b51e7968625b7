import type { OpenPaperWorker, PaperAnswer, PaperAsk } from "./paperMessages";

/** The real worker. Whatever keeps it from answering is said as an answer. */
export const openPaperWorker: OpenPaperWorker = (hear) => {
  const broke = (): void => hear({ kind: "broke", why: "fault" });
  const worker = new Worker(new URL("paperWorker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<PaperAnswer>) => hear(data));
  worker.addEventListener("messageerror", broke);
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    // What the worker itself throws has a message; a worker that could not be fetched is an error and nothing more.
    hear({ kind: "broke", why: event instanceof ErrorEvent && event.message !== "" ? "fault" : "worker" });
  });
  return { ask: (ask: PaperAsk) => worker.postMessage(ask, []), close: () => worker.terminate() };
};
