/**
 * Where paper is made: one worker draws previews, another makes files, and either is started when it is first asked for.
 * It goes on while she looks at another step; what comes too late for a newer request is dropped.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Result } from "../../core/result";
import type {
  PaperFailure,
  PaperFile,
  PaperMade,
  PaperPreview,
  PaperProgress,
  PaperRequest,
} from "../../paper/request";
import type { OpenPaperWorker, PaperAnswer, PaperAsk, PaperBreak, PaperWorker } from "./paperMessages";

export type PreviewState =
  | { readonly kind: "none" }
  /** `request` is being drawn; `last` is what was drawn for the request before it. */
  | { readonly kind: "drawing"; readonly request: PaperRequest; readonly last: PaperPreview | null }
  | { readonly kind: "drawn"; readonly request: PaperRequest; readonly result: Result<PaperPreview, PaperFailure> }
  | { readonly kind: "broke"; readonly request: PaperRequest; readonly why: PaperBreak };

export type MakingState =
  | { readonly kind: "none" }
  | (Begun & { readonly kind: "making"; readonly progress: PaperProgress })
  | (Begun & { readonly kind: "made"; readonly made: PaperMade })
  | (Begun & { readonly kind: "failed"; readonly failure: PaperFailure })
  | (Begun & { readonly kind: "broke"; readonly why: PaperBreak })
  | (Begun & { readonly kind: "cancelled" });

interface Begun {
  readonly file: PaperFile;
  /** What was asked for: she may choose anew while it is made. */
  readonly request: PaperRequest;
}

export interface PaperRoomState {
  readonly preview: PreviewState;
  readonly making: MakingState;
}

export interface PaperRoom {
  readonly state: StoreApi<PaperRoomState>;
  /** Draws a preview, in place of one that is still being drawn. */
  readonly preview: (request: PaperRequest) => void;
  /** Drops the preview and its worker: nobody looks at it. */
  readonly leave: () => void;
  /** Makes a file and hands it out; nothing happens while another one is being made. */
  readonly make: (request: PaperRequest, file: PaperFile) => void;
  readonly cancel: () => void;
  /** Hands out once more what was made last. */
  readonly offerAgain: () => void;
  /** Another work is open: a file that is being made is still handed out, then everything is put away. */
  readonly end: () => void;
}

/** @param offer hands the finished file to the wearer */
export function createPaperRoom(open: OpenPaperWorker, offer: (made: PaperMade) => void): PaperRoom {
  const state = createStore<PaperRoomState>()(() => ({ preview: { kind: "none" }, making: { kind: "none" } }));
  const drawer = createDesk(open);
  const maker = createDesk(open);
  let isLeft = false;

  const preview = (request: PaperRequest): void => {
    const was = state.getState().preview;
    state.setState({ preview: { kind: "drawing", request, last: lastOf(was) } });
    // A layout that nobody waits for any longer would only hold up the next.
    if (was.kind === "drawing") drawer.close();
    drawer.ask({ kind: "preview", request }, (answer) => {
      if (answer.kind === "previewed") state.setState({ preview: { kind: "drawn", request, result: answer.result } });
      if (answer.kind === "broke") {
        drawer.close();
        state.setState({ preview: { kind: "broke", request, why: answer.why } });
      }
    });
  };

  const leave = (): void => {
    drawer.close();
    state.setState({ preview: { kind: "none" } });
  };

  const make = (request: PaperRequest, file: PaperFile): void => {
    if (state.getState().making.kind === "making") return;
    const show = (making: MakingState): void => state.setState({ making });
    show({ kind: "making", file, request, progress: { stage: "pieces", share: 0 } });
    maker.ask({ kind: "make", request, file }, (answer) => {
      if (answer.kind === "progress") show({ kind: "making", file, request, progress: answer.progress });
      else if (isLeft) maker.close();
      if (answer.kind === "broke") {
        maker.close();
        show({ kind: "broke", file, request, why: answer.why });
      }
      if (answer.kind !== "made") return;
      if (!answer.result.ok) return show({ kind: "failed", file, request, failure: answer.result.failure });
      show({ kind: "made", file, request, made: answer.result.value });
      offer(answer.result.value);
    });
  };

  const cancel = (): void => {
    const { making } = state.getState();
    if (making.kind !== "making") return;
    maker.close();
    state.setState({ making: { kind: "cancelled", file: making.file, request: making.request } });
  };

  const offerAgain = (): void => {
    const { making } = state.getState();
    if (making.kind === "made") offer(making.made);
  };

  const end = (): void => {
    leave();
    isLeft = true;
    if (state.getState().making.kind !== "making") maker.close();
  };

  return { state, preview, leave, make, cancel, offerAgain, end };
}

function lastOf(preview: PreviewState): PaperPreview | null {
  if (preview.kind === "drawing") return preview.last;
  return preview.kind === "drawn" && preview.result.ok ? preview.result.value : null;
}

interface Desk {
  readonly ask: (ask: PaperAsk, hear: (answer: PaperAnswer) => void) => void;
  readonly close: () => void;
}

/** One worker, opened when it is first needed and again after it was closed. Only the last ask is listened to. */
function createDesk(open: OpenPaperWorker): Desk {
  let worker: PaperWorker | null = null;
  let listener: ((answer: PaperAnswer) => void) | null = null;
  const close = (): void => {
    listener = null;
    worker?.close();
    worker = null;
  };
  const ask = (request: PaperAsk, hear: (answer: PaperAnswer) => void): void => {
    listener = hear;
    try {
      if (worker === null) {
        const opened: PaperWorker = open((answer) => {
          if (worker === opened) listener?.(answer);
        });
        worker = opened;
      }
      worker.ask(request);
    } catch {
      close();
      hear({ kind: "broke", why: "fault" });
    }
  };
  return { ask, close };
}
