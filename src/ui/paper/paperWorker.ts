/** Makes paper away from the page, so that the page never waits. Loaded only when paper is asked for. */
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
    fetched ??= { regular: bytesIn((await regular()).default), bold: bytesIn((await bold()).default) };
    return fetched;
  } catch {
    return null;
  }
}

// Imported like any other part: the page has no leave to connect to anything, and so has no worker of it.
const regular = () => import("@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?inline");
const bold = () => import("@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf?inline");

/** What is written out in a data address. */
const bytesIn = (address: string): Uint8Array =>
  Uint8Array.from(atob(address.slice(address.indexOf(",") + 1)), (sign) => sign.charCodeAt(0));
