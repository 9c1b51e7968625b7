/** What the page remembers of her tissue before anything of it is measured, and the field that a link led to. */
import type { TissueRef } from "../../core/tissue/fitToTissue";
import { storeOfWork } from "../session/ofWork";

export interface TissueView {
  /** The line she is going to measure; null: the base size's. */
  readonly size: string | null;
  /** The field to come to next. */
  readonly wanted: TissueRef | null;
  readonly takeSize: (size: string) => void;
  readonly want: (field: TissueRef | null) => void;
}

export const useTissueView = storeOfWork<TissueView>((set) => ({
  size: null,
  wanted: null,
  takeSize: (size) => set({ size }),
  want: (wanted) => set({ wanted }),
}));
