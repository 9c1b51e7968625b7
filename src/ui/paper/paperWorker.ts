/** Makes paper away from the page, so that the page never waits. Loaded only when paper is asked for. */
import boldUrl from "@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf?url";
import regularUrl from "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url";
import { makePaper, previewPaper } from "../../paper/makePaper";
import type { PaperFile } from "../../paper/request";
import type { PaperAnswer, PaperAsk } from "./paperMessages";

interface Typefaces {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

const NONE: Typefaces = { regular: new Uint8Array(), bold: new Uint8Array() };
let fetched: Typefaces | null = null;

self.addEventListener("message", ({ data }: MessageEvent<PaperAsk>) => void answer(data));

async function answer(ask: PaperAsk): Promise<void> {
  try {
    if (ask.kind === "preview") return say({ kind: "previewed", result: previewPaper(ask.request) });
    const typefaces = await typefacesFor(ask.file);
    if (typefaces === null) return say({ kind: "broke", why: "typefaces" });
    const result = makePaper(ask.request, ask.file, typefaces, (progress) => say({ kind: "progress", progress }));
    say({ kind: "made", result }, result.ok ? [result.value.bytes.buffer] : []);
  } catch {
    say({ kind: "broke", why: "fault" });
  }
}

function say(message: PaperAnswer, transfer: Transferable[] = []): void {
  self.postMessage(message, { transfer });
}

/** The typefaces that the file carries in it; null where they cannot be had. */
async function typefacesFor(file: PaperFile): Promise<Typefaces | null> {
  if (file !== "pdf") return NONE;
  try {
    fetched ??= { regular: await bytesAt(regularUrl), bold: await bytesAt(boldUrl) };
    return fetched;
  } catch {
    return null;
  }
}

async function bytesAt(address: string): Promise<Uint8Array> {
  const response = await fetch(address);
  if (!response.ok) throw new TypeError(`${response.status} for ${address}`);
  return new Uint8Array(await response.arrayBuffer());
}
