/** What the page shows of the library, the saving of the open work, and what it has to say. */
import { createStore, type StoreApi } from "zustand/vanilla";
import { SAVING_WORDS } from "../words/storage";
import type { WorkEntry } from "./library";

export interface Message {
  readonly id: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export interface StorageState {
  readonly state: "saved" | "saving" | "failed";
  readonly words: string;
}

export interface SessionState {
  readonly entries: readonly WorkEntry[];
  readonly openId: string;
  /** Counts the works put on the page. Unlike the id, it stays where the open work goes on under another id. */
  readonly shown: number;
  readonly storage: StorageState;
  readonly messages: readonly Message[];
}

export type SessionStore = StoreApi<SessionState>;

export const createSessionState = (): SessionStore =>
  createStore<SessionState>(() => ({
    entries: [],
    openId: "",
    shown: 0,
    storage: { state: "saved", words: SAVING_WORDS.saved },
    messages: [],
  }));
