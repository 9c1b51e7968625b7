/** What the page shows at the moment. Nothing of it belongs to the work, so nothing of it is saved or undone. */
import { create } from "zustand";
import type { DartRef } from "../../core/pattern/piece";

export const STEPS = ["tape", "envelope", "blend", "darts", "paper"] as const;
export type Step = (typeof STEPS)[number];

export interface ViewState {
  readonly step: Step;
  readonly selectedDart: DartRef | null;
  /** Id of the slip that is lit in the ledger and on the piece. */
  readonly litSlip: string | null;
  readonly setStep: (step: Step) => void;
  readonly selectDart: (dart: DartRef | null) => void;
  readonly lightSlip: (id: string | null) => void;
}

export const useViewState = create<ViewState>()((set) => ({
  step: "tape",
  selectedDart: null,
  litSlip: null,
  setStep: (step) => set({ step }),
  selectDart: (selectedDart) => set({ selectedDart }),
  lightSlip: (litSlip) => set({ litSlip }),
}));
