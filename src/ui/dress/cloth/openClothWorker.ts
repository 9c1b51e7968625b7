import type { ClothAnswer, ClothAsk, OpenClothWorker } from "./clothMessages";

/** The real worker. Whatever keeps it from answering is said as an answer. */
export const openClothWorker: OpenClothWorker = (hear) => {
  const broke = (): void => hear({ kind: "broke", why: "fault" });
  const worker = new Worker(new URL("clothWorker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<ClothAnswer>) => hear(data));
  worker.addEventListener("messageerror", broke);
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    // What the worker itself throws has a message; a worker that could not be fetched is an error and nothing more.
    hear({ kind: "broke", why: event instanceof ErrorEvent && event.message !== "" ? "fault" : "worker" });
  });
  return { ask: (ask: ClothAsk) => worker.postMessage(ask, []), close: () => worker.terminate() };
};
