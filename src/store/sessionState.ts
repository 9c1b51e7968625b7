/** What the page shows of the library, the saving of the open work, and what it has to say. */
import { createStore, type StoreApi } from "zustand/vanilla";
import { SAVING_WORDS } from "../words/storage";
import type { WorkEntry } from "./library";

export interface MessageAction {
  readonly label: string;
  readonly run: () => void;
}

export interface Message {
  readonly id: string;
  readonly text: string;
  readonly actions: readonly MessageAction[];
  /** Something to take, which can be left for later. */
  readonly isOffer?: true;
}

export interface StorageState {
  readonly state: "saved" | "saving" | "failed";
  readonly words: string;
}

export interface SessionState {
  /** The last saved first, without those in the bin. */
  readonly entries: readonly WorkEntry[];
  /** What lies in the bin, the last put there first. */
  readonly binned: readonly WorkEntry[];
  readonly openId: string;
  /** Counts the works put on the page. Unlike the id, it stays where the open work goes on under another id. */
  readonly shown: number;
  readonly storage: StorageState;
  /** Whether the browser has promised not to clear what is kept; null where it was not asked yet or does not say. */
  readonly isLasting: boolean | null;
  readonly messages: readonly Message[];
}

export type SessionStore = StoreApi<SessionState>;

export const createSessionState = (): SessionStore =>
  createStore<SessionState>(() => ({
    entries: [],
    binned: [],
    openId: "",
    shown: 0,
    storage: { state: "saved", words: SAVING_WORDS.saved },
    isLasting: null,
    messages: [],
  }));
