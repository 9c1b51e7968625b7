/** What the page says of keeping works, and of files. Words take the codes alone: they know nothing of storage. */
import { workFileFailureSentence, type WorkFileFailureLike } from "./workFile";

export type StorageFailureLike =
  | { readonly code: "storage/unavailable" | "storage/full" | "storage/failed" }
  | { readonly code: "storage/missing" }
  | { readonly code: "storage/damaged"; readonly why: WorkFileFailureLike };

export function storageFailureSentence(failure: StorageFailureLike): string {
  switch (failure.code) {
    case "storage/unavailable":
      return "This browser does not let the page keep anything once it is closed. You can work on; download the work to keep it.";
    case "storage/full":
      return "There is no room left to save in this browser. Download the work to keep it, or delete works you no longer need.";
    case "storage/failed":
      return "The last change could not be saved here. You can work on; download the work to be safe.";
    case "storage/missing":
      return "That work is no longer kept in this browser.";
    case "storage/damaged":
      return failure.why.code === "file/newer"
        ? "A work kept here was saved by a newer version of Bodicewright. It was left as it is; reload the page to get that version."
        : "A work kept here could not be read. It was left as it is, untouched.";
  }
}

export const fileFailureSentence = (failure: WorkFileFailureLike): string => workFileFailureSentence(failure);

/** What a work goes by in a list. One without a name, or a damaged one whose name cannot be read, must still be found. */
export const entryName = (name: string): string => (name.trim() === "" ? "(no name)" : name);

/** Leaves room in a name for what is put behind it. */
const LONGEST_COPIED = 190;

/** What a copy of a work is called. */
export const copyName = (name: string): string => `${name.slice(0, LONGEST_COPIED)} (copy)`;

/** How the saving of the open work stands, where it has not failed. */
export const SAVING_WORDS = { saved: "Saved here", saving: "Saving…" } as const;

/** Two tabs changed the same work, and neither change is given up. */
export const conflictCopySentence = (theirs: string, mine: string): string =>
  `“${entryName(theirs)}” was changed in another tab too. What was changed here is kept beside it, as “${entryName(mine)}”.`;

/** Asked before another work takes the place of changes that could not be saved. */
export const UNSAVED_WORDS = {
  text: "The last changes to the open work could not be saved, so it stays open. Download it first, or go on without them.",
  goOn: "Go on without them",
} as const;

export const deletedSentence = (name: string): string => `“${entryName(name)}” was deleted.`;
export const BRING_BACK_WORDS = "Bring it back";

/** A file that could not be opened, by its name. */
export const fileRefusedSentence = (fileName: string, failure: WorkFileFailureLike): string =>
  `${fileName}: ${fileFailureSentence(failure)}`;
