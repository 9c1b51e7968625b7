/** What the page shows at the moment. Nothing of it belongs to the work, so nothing of it is saved or undone. */
import type { Half } from "../../core/decisions/alteration";
import { create } from "zustand";
import type { DartRef } from "../../core/pattern/piece";
import type { PaperSheet } from "../../words/paperChoices";

export const STEPS = ["tape", "envelope", "blend", "darts", "fit", "paper"] as const;
export type Step = (typeof STEPS)[number];

/** What can be printed. */
export type Sheet = PaperSheet;

export interface ViewState {
  readonly step: Step;
  readonly selectedDart: DartRef | null;
  /** Id of the slip that is lit in the ledger and on the piece. */
  readonly litSlip: string | null;
  /** The half of the body that the table shows, where left and right differ. */
  readonly half: Half;
  /** How far the lit slip is shown as made: 0 before, 1 after. */
  readonly litShare: number;
  /** The sheet that Paper shows and prints. */
  readonly sheet: Sheet;
  readonly setStep: (step: Step) => void;
  readonly selectDart: (dart: DartRef | null) => void;
  readonly lightSlip: (id: string | null) => void;
  readonly showHalf: (half: Half) => void;
  readonly showShare: (share: number) => void;
  readonly showSheet: (sheet: Sheet) => void;
}

export const useViewState = create<ViewState>()((set) => ({
  step: "tape",
  selectedDart: null,
  litSlip: null,
  half: "left",
  litShare: 1,
  sheet: "checklist",
  setStep: (step) => set({ step }),
  selectDart: (selectedDart) => set({ selectedDart }),
  // Another slip is shown as it lies when it is made.
  lightSlip: (litSlip) => set({ litSlip, litShare: 1 }),
  showHalf: (half) => set({ half }),
  showShare: (litShare) => set({ litShare }),
  showSheet: (sheet) => set({ sheet }),
}));
