/** What the table, the ledger and the steps show of the open work at the moment. */
import type { Half } from "../../core/decisions/alteration";
import type { DartRef } from "../../core/pattern/piece";
import { storeOfWork } from "./ofWork";

export interface ViewState {
  readonly selectedDart: DartRef | null;
  /** Id of the alteration that is lit in the ledger and on the piece. */
  readonly litAlteration: string | null;
  /** The half of the body that the table shows, where left and right differ. */
  readonly half: Half;
  /** How far the lit alteration is shown as made: 0 before, 1 after. */
  readonly litShare: number;
  readonly selectDart: (dart: DartRef | null) => void;
  readonly lightAlteration: (id: string | null) => void;
  readonly showHalf: (half: Half) => void;
  readonly showShare: (share: number) => void;
}

export const useViewState = storeOfWork<ViewState>((set) => ({
  selectedDart: null,
  litAlteration: null,
  half: "left",
  litShare: 1,
  selectDart: (selectedDart) => set({ selectedDart }),
  // Another alteration is shown as it lies when it is made.
  lightAlteration: (litAlteration) => set({ litAlteration, litShare: 1 }),
  showHalf: (half) => set({ half }),
  showShare: (litShare) => set({ litShare }),
}));
