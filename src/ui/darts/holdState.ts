/** What a dart's end holds when it is next moved, until the wearer chooses otherwise. */
import type { Hold } from "../../core/decisions/alteration";
import { storeOfWork } from "../session/ofWork";

export interface HoldState {
  readonly hold: Hold;
  readonly setHold: (hold: Hold) => void;
}

export const useHold = storeOfWork<HoldState>((set) => ({ hold: "mouth", setHold: (hold) => set({ hold }) }));
