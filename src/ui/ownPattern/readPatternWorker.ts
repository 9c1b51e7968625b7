/** Reads a file of outlines away from the page, so that the page never waits, whatever is in it. */
import { readPatternFile } from "../../reading/readPatternFile";
import type { PatternAnswer } from "./readPatternApart";

self.addEventListener("message", ({ data }: MessageEvent<File>) => void answer(data));

async function answer(file: File): Promise<void> {
  const bytes = await file.arrayBuffer().catch(() => null);
  const result: PatternAnswer =
    bytes === null
      ? { ok: false, failure: { code: "opening/out-of-reach" } }
      : readPatternFile({ name: file.name, bytes: new Uint8Array(bytes) });
  self.postMessage(result, { transfer: [] });
}
