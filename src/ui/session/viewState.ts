/** What the table, the ledger and the steps show of the open work at the moment. */
import type { Half } from "../../core/decisions/alteration";
import type { FitName } from "../../core/decisions/fitNames";
import { isSameDart, type DartRef } from "../../core/pattern/piece";
import { storeOfWork } from "./ofWork";

export interface ViewState {
  readonly selectedDart: DartRef | null;
  /** Id of the alteration that is lit in the ledger and on the piece. */
  readonly litAlteration: string | null;
  /** The half of the body that the table shows, where left and right differ. */
  readonly half: Half;
  /** Where the other half is, while left and right differ: not shown, beside it, or its outline under it. */
  readonly otherHalf: OtherHalf;
  /** What is changed of the dart that is chosen is for the shown half alone. */
  readonly alone: boolean;
  /** What was asked to be changed on the shown half, a dart or a fit, until it is found. */
  readonly sought: Sought | null;
  /** How far the lit alteration is shown as made: 0 before, 1 after. */
  readonly litShare: number;
  readonly selectDart: (dart: DartRef | null) => void;
  readonly lightAlteration: (id: string | null) => void;
  readonly showHalf: (half: Half) => void;
  readonly showOther: (otherHalf: OtherHalf) => void;
  readonly setAlone: (alone: boolean) => void;
  readonly seek: (sought: Sought | null) => void;
  readonly showShare: (share: number) => void;
}

type Sought = "dart" | FitName;

export type OtherHalf = "away" | "beside" | "under";

export const useViewState = storeOfWork<ViewState>((set) => ({
  selectedDart: null,
  litAlteration: null,
  half: "left",
  otherHalf: "away",
  alone: false,
  sought: null,
  litShare: 1,
  // Of another dart it is asked anew which halves it is changed on.
  selectDart: (selectedDart) =>
    set((view) => ({
      selectedDart,
      alone:
        view.alone &&
        selectedDart !== null &&
        view.selectedDart !== null &&
        isSameDart(selectedDart, view.selectedDart),
    })),
  // Another alteration is shown as it lies when it is made.
  lightAlteration: (litAlteration) => set({ litAlteration, litShare: 1 }),
  showHalf: (half) => set({ half }),
  showOther: (otherHalf) => set({ otherHalf }),
  setAlone: (alone) => set({ alone }),
  seek: (sought) => set({ sought }),
  showShare: (litShare) => set({ litShare }),
}));
