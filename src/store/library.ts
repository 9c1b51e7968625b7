/** The library of works: where they are saved, each with its history. Every failure is an answer, never an exception. */
import type { Work } from "../core/decisions/work";
import type { Result } from "../core/result";
import type { WorkFileFailure } from "../document/workFile";
import type { Versions } from "./workStore";

export interface SavedWork extends Versions {
  readonly id: string;
  /** Changes with every save, so that a save by another tab is noticed. */
  readonly stamp: string;
}

/** A work not saved yet. */
export const NEW_STAMP = "";

/** What is known of a saved work without reading it. */
export interface WorkEntry {
  readonly id: string;
  readonly name: string;
  readonly wearer: string | null;
  readonly stamp: string;
  /** When it was saved last: milliseconds since 1970, as all times here. */
  readonly saved: number;
  /** When it was put in the bin; null: it is not in it. */
  readonly binned: number | null;
}

export type StorageFailure =
  /** The browser keeps nothing for this page: blocked, private, or too old. */
  | { readonly code: "storage/unavailable"; readonly detail: string }
  | { readonly code: "storage/full"; readonly detail: string }
  | { readonly code: "storage/failed"; readonly detail: string }
  /** No answer came in time; it may still come. */
  | { readonly code: "storage/silent" }
  /** It did not answer when the page began, and is not asked any more. */
  | { readonly code: "storage/unanswered" }
  | { readonly code: "storage/missing"; readonly id: string }
  | { readonly code: "storage/damaged"; readonly id: string; readonly why: WorkFileFailure };

export interface SaveRequest {
  /** With the stamp of the version that it was made from. */
  readonly saved: SavedWork;
  /** The stamp that it is to have. */
  readonly stamp: string;
  readonly time: number;
  /** Whether the steps back and forward are the ones saved last, which then need not be written. */
  readonly isHistorySaved: boolean;
}

export type SaveOutcome =
  | { readonly kind: "saved" }
  /** It was in the bin and is no longer. */
  | { readonly kind: "broughtBack" }
  /** The version that it was made from is gone with all that was kept: it was saved all the same. */
  | { readonly kind: "savedAfresh" }
  /** Another tab has saved since: nothing was written. Theirs is null where it cannot be read. */
  | { readonly kind: "stale"; readonly theirs: SavedWork | null };

/** What the page remembers beside the works. */
export type PageValue = "last-open" | "uncopied-since" | "reminded" | "forgotten";

export interface Library {
  /** The last saved first, those in the bin too. */
  readonly list: () => Promise<Result<readonly WorkEntry[], StorageFailure>>;
  /** Null where there is none. */
  readonly entry: (id: string) => Promise<Result<WorkEntry | null, StorageFailure>>;
  readonly load: (id: string) => Promise<Result<SavedWork, StorageFailure>>;
  /** The work alone, without its history. */
  readonly peek: (id: string) => Promise<Result<Work, StorageFailure>>;
  /** What lies there, whatever it is. */
  readonly raw: (id: string) => Promise<Result<unknown, StorageFailure>>;
  readonly save: (request: SaveRequest) => Promise<Result<SaveOutcome, StorageFailure>>;
  /** Puts a work in the bin, or takes it out. */
  readonly bin: (id: string, time: number | null) => Promise<Result<null, StorageFailure>>;
  /** Removes a work for good. */
  readonly remove: (id: string) => Promise<Result<null, StorageFailure>>;
  readonly pageValue: (name: PageValue) => Promise<Result<string | null, StorageFailure>>;
  readonly setPageValue: (name: PageValue, value: string | null) => Promise<Result<null, StorageFailure>>;
  /** Makes a value of the one that is kept, at one go: what another tab makes of it comes before or after. */
  readonly changePageValue: (
    name: PageValue,
    change: (kept: string | null) => string | null,
  ) => Promise<Result<null, StorageFailure>>;
  readonly close: () => void;
}
