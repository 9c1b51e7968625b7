/** What a dart's end holds when it is next moved, until the wearer chooses otherwise. */
import { create } from "zustand";
import type { Hold } from "../../core/plan/work";

export interface HoldState {
  readonly hold: Hold;
  readonly setHold: (hold: Hold) => void;
}

export const useHold = create<HoldState>()((set) => ({ hold: "mouth", setHold: (hold) => set({ hold }) }));
