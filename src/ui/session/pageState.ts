/**
 * What is about the page and not about the work, and so stays when another work is opened: which step the address names,
 * which sheet Paper shows, whether the ledger is open, how much of the screen the pieces have, whether it works without a
 * network. Whatever speaks of a work belongs into a `storeOfWork`.
 */
import { create } from "zustand";
import type { PaperSheet } from "../../words/paperChoices";

export const STEPS = ["tape", "envelope", "tissue", "blend", "darts", "fit", "trial", "dress", "paper"] as const;
export type Step = (typeof STEPS)[number];

/** What can be printed. */
export type Sheet = PaperSheet;

export interface PageState {
  readonly step: Step;
  /** The sheet that Paper shows and prints. */
  readonly sheet: Sheet;
  readonly ledgerOpen: boolean;
  /** On a phone: whether the pieces stand over the step, where she said so herself; null: as the step has it. */
  readonly piecesChosen: boolean | null;
  /** On a phone: whether the pieces fill the screen. */
  readonly piecesFull: boolean;
  /** On a phone on its side: whether the ledger stands beside the step, in place of the pieces. */
  readonly ledgerBeside: boolean;
  /** Whether she printed before the sheets were loaded, and so has to print again. */
  readonly printedTooSoon: boolean;
  /** A file that was dropped on the page, until it is opened. */
  readonly dropped: File | null;
  /** Whether all that the page is made of lies on the device; "new" for a moment after it has come there. */
  readonly offline: "no" | "new" | "yes";
  /** Takes a new version, where one is there and waits. */
  readonly takeNewVersion: (() => void) | null;
  /** Asks the browser to install the page, where it offers that. */
  readonly install: (() => void) | null;
  readonly setStep: (step: Step) => void;
  readonly showSheet: (sheet: Sheet) => void;
  readonly openLedger: (open: boolean) => void;
  readonly showPieces: (shown: boolean) => void;
  readonly fillWithPieces: (full: boolean) => void;
  readonly askForLedger: (beside: boolean) => void;
  readonly drop: (file: File | null) => void;
  readonly setPrintedTooSoon: (tooSoon: boolean) => void;
}

export const stepOf = (hash: string): Step | undefined => STEPS.find((step) => `#${step}` === hash);

/** The steps that work on the pieces themselves: a phone shows them there until she says otherwise. */
const WITH_PIECES: ReadonlySet<Step> = new Set(["darts", "fit"]);

/** On a phone: whether the pieces stand over the step. */
export const arePiecesShown = ({ step, piecesChosen }: Pick<PageState, "step" | "piecesChosen">): boolean =>
  piecesChosen ?? WITH_PIECES.has(step);

export const usePageState = create<PageState>()((set) => ({
  step: stepOf(window.location.hash) ?? "tape",
  sheet: "checklist",
  ledgerOpen: true,
  piecesChosen: null,
  piecesFull: false,
  ledgerBeside: false,
  printedTooSoon: false,
  dropped: null,
  offline: "no",
  takeNewVersion: null,
  install: null,
  // What was said of printing holds as long as she stays; a step that she asks for is not hidden by the pieces.
  setStep: (step) => set((page) => (page.step === step ? page : { step, printedTooSoon: false, piecesFull: false })),
  showSheet: (sheet) => set({ sheet }),
  openLedger: (ledgerOpen) => set({ ledgerOpen }),
  showPieces: (piecesChosen) => set({ piecesChosen, piecesFull: false, ledgerBeside: false }),
  fillWithPieces: (piecesFull) => set({ piecesFull }),
  askForLedger: (ledgerBeside) =>
    set(ledgerBeside ? { ledgerBeside, ledgerOpen: true, piecesFull: false } : { ledgerBeside }),
  drop: (dropped) => set({ dropped }),
  setPrintedTooSoon: (printedTooSoon) => set({ printedTooSoon }),
}));

/** Whether all that the page is made of should lie on the device. */
export const useIsKeptHere = (): boolean => usePageState((page) => page.offline !== "no");
