/** Reads a file of works away from the page, so that the page never waits, whatever is in it. */
import { readAnyFile } from "../../document/worksFile";
import type { FileAnswer } from "./openFileReader";

self.addEventListener("message", ({ data }: MessageEvent<File | string>) => void answer(data));

async function answer(file: File | string): Promise<void> {
  const text = typeof file === "string" ? file : await file.text().catch(() => null);
  const result: FileAnswer = text === null ? { ok: false, failure: { code: "file/out-of-reach" } } : readAnyFile(text);
  self.postMessage(result, { transfer: [] });
}
