/** The library of works: where they are saved, each with its history. Every failure is an answer, never an exception. */
import type { Work } from "../core/decisions/work";
import type { Result } from "../core/result";
import type { WorkFileFailure } from "../document/workFile";

export interface SavedWork {
  readonly id: string;
  readonly work: Work;
  readonly past: readonly Work[];
  readonly future: readonly Work[];
  /** Changes with every save, so that a save by another tab is noticed. */
  readonly stamp: string;
}

/** A work not saved yet. */
export const NEW_STAMP = "";

/** What a work is found again by. */
export type SaveReceipt = Pick<SavedWork, "id" | "stamp">;

export interface WorkEntry {
  readonly id: string;
  readonly name: string;
}

export type StorageFailure =
  /** The browser keeps nothing for this page: blocked, private, or too old. */
  | { readonly code: "storage/unavailable"; readonly detail: string }
  | { readonly code: "storage/full"; readonly detail: string }
  | { readonly code: "storage/failed"; readonly detail: string }
  | { readonly code: "storage/missing"; readonly id: string }
  | { readonly code: "storage/damaged"; readonly id: string; readonly why: WorkFileFailure };

export interface Library {
  /** The last saved first. */
  readonly list: () => Promise<Result<readonly WorkEntry[], StorageFailure>>;
  readonly load: (id: string) => Promise<Result<SavedWork, StorageFailure>>;
  /**
   * Saves a work under its id. Where another tab has saved that id since `stamp`, theirs is left alone and this one is
   * saved under a new id, so that neither is lost.
   */
  readonly save: (work: SavedWork) => Promise<Result<SaveReceipt, StorageFailure>>;
  readonly remove: (id: string) => Promise<Result<null, StorageFailure>>;
  readonly lastOpen: () => Promise<Result<string | null, StorageFailure>>;
  readonly setLastOpen: (id: string) => Promise<Result<null, StorageFailure>>;
  readonly close: () => void;
}
