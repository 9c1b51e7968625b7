/**
 * The one place where the page tells, to who does not see it, what was done. Whatever tells twice of one step is told once: the
 * last word of a moment stands.
 */
import { storeOfWork } from "./ofWork";

export interface SaidState {
  readonly text: string;
  /** Counted, so that the same words are told again when the same is done again. */
  readonly times: number;
  readonly say: (text: string) => void;
}

export const useSaid = storeOfWork<SaidState>((set) => ({
  text: "",
  times: 0,
  say: (text) => set(({ times }) => ({ text, times: times + 1 })),
}));
