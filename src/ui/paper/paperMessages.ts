/** What the page and the worker that makes paper say to each other. */
import type { Result } from "../../core/result";
import type {
  PaperFailure,
  PaperFile,
  PaperMade,
  PaperPreview,
  PaperProgress,
  PaperRequest,
} from "../../paper/request";

export type PaperAsk =
  | { readonly kind: "preview"; readonly request: PaperRequest }
  | { readonly kind: "make"; readonly request: PaperRequest; readonly file: PaperFile };

export type PaperAnswer =
  | { readonly kind: "previewed"; readonly result: Result<PaperPreview, PaperFailure> }
  | { readonly kind: "progress"; readonly progress: PaperProgress }
  | { readonly kind: "made"; readonly result: Result<PaperMade, PaperFailure> }
  /** No answer came: the worker or the typefaces could not be fetched, or something of ours is at fault. */
  | { readonly kind: "broke"; readonly why: PaperBreak };

export type PaperBreak = "worker" | "typefaces" | "fault";

/** One worker. It does one thing at a time and is closed where it is no longer wanted. */
export interface PaperWorker {
  readonly ask: (ask: PaperAsk) => void;
  readonly close: () => void;
}

/** Starts a worker; `hear` gets every answer. */
export type OpenPaperWorker = (hear: (answer: PaperAnswer) => void) => PaperWorker;
