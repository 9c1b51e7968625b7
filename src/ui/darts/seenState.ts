/** What the wearer has said she sees of each dart, kept while she looks at another. */
import type { SeenAtDart } from "../../core/pointedDart/pointedDart";
import { storeOfWork } from "../session/ofWork";

export interface SeenState {
  /** By piece and dart. */
  readonly seen: Readonly<Record<string, SeenAtDart>>;
  readonly setSeen: (dart: string, seen: SeenAtDart) => void;
}

export const useSeen = storeOfWork<SeenState>((set) => ({
  seen: {},
  setSeen: (dart, seen) => set((state) => ({ seen: { ...state.seen, [dart]: seen } })),
}));
