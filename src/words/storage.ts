/** What the page says of keeping works, and of files. Words take the codes alone: they know nothing of storage. */
import { workFileFailureSentence, type WorkFileFailureLike } from "./workFile";
import { listWords, plural, counted } from "./terms/language";

export type StorageFailureLike =
  | {
      readonly code:
        | "storage/unavailable"
        | "storage/full"
        | "storage/failed"
        | "storage/silent"
        | "storage/unanswered";
    }
  | { readonly code: "storage/missing" }
  | { readonly code: "storage/damaged"; readonly why: WorkFileFailureLike };

export function storageFailureSentence(failure: StorageFailureLike): string {
  switch (failure.code) {
    case "storage/unavailable":
      return "This browser does not let the page keep anything once it is closed. You can work on; download the work to keep it.";
    case "storage/full":
      return "There is no room left to save in this browser. Download the work to keep it, then empty the bin under Works or delete for good what you no longer need.";
    case "storage/failed":
      return "The last change could not be saved here. You can work on; download the work to be safe.";
    case "storage/silent":
      return "This browser’s storage does not answer, so nothing is saved for the moment. You can work on: it is tried again by itself. Download the work to be safe.";
    case "storage/unanswered":
      return "This browser’s storage did not answer when the page was opened. You can work on, and what you change is put by for the next time, as far as the browser lets it be. Download the work to be safe; load the page again to find your other works.";
    case "storage/missing":
      return "That work is no longer kept in this browser.";
    case "storage/damaged":
      return failure.why.code === "file/newer"
        ? "A work kept here was saved by a newer version of Bodicewright. It was left as it is; reload the page to get that version."
        : "A work kept here is damaged and could not be read whole. It was left as it is, untouched.";
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

/**
 * Two tabs changed the same thing, and neither change is given up.
 *
 * @param collisions what they both changed, in words; none where that cannot be told
 */
export function conflictCopySentence(theirs: string, mine: string, collisions: readonly string[]): string {
  const what = collisions.length === 0 ? "" : ` (${listWords(collisions)})`;
  return `“${entryName(theirs)}” was changed in another tab too${what}. What was changed here is kept beside it, as “${entryName(mine)}”.`;
}

/** Asked before another work takes the place of changes that could not be saved. */
export const UNSAVED_WORDS = {
  text: "The last changes to the open work could not be saved, so it stays open. Download it first, or go on without them.",
  goOn: "Go on without them",
} as const;

export const binnedSentence = (name: string): string =>
  `“${entryName(name)}” was put in the bin. It stays there for 30 days.`;
export const binnedElsewhereSentence = (name: string): string =>
  `“${entryName(name)}”, which is open here, was put in the bin in another tab. It comes back as soon as you change it.`;
export const backFromBinSentence = (name: string): string =>
  `“${entryName(name)}” lay in the bin. As you went on with it, it was taken out again.`;
export const BIN_WORDS = {
  notBinned: "So it could not be put in the bin either.",
  removeForGood: "Delete it for good",
} as const;

/** The open work lies in the library no longer, by her own wish elsewhere. */
export const DELETED_WORDS =
  "This work was deleted in another tab and stands on this page alone. It is kept again as soon as you change it.";

export const keptAgainSentence = (name: string): string =>
  `“${entryName(name)}” was deleted in another tab. As you went on with it, it is kept again.`;

/** What was kept went while the page was open: cleared by hand, or by the browser. */
export const SAVED_AFRESH_WORDS =
  "What this browser kept of this work was cleared while it was open. It has been saved again; other works may be gone.";

/** A saved work that could not be read whole. */
export const DAMAGED_WORDS = {
  open: "Open what can be read",
  download: "Download it as it lies",
  nothing: "Nothing of it could be read. Download it as it lies: somebody who knows such files may find more.",
  notLoaded: "What reads damaged works could not be loaded. Nothing is lost: try again when you are online.",
} as const;

/** Leaves room for the longer words behind it. */
const LONGEST_SALVAGED = 175;

export const salvagedName = (name: string): string => `${name.slice(0, LONGEST_SALVAGED)} (what could be read)`;

/** How many places are named. */
const PLACES_NAMED = 5;

/** @param lost places of the record, such as tapes.0.readings.waistGirth */
export function salvagedSentence(lost: readonly string[]): string {
  const named = lost.slice(0, PLACES_NAMED).join(", ");
  const more = lost.length > PLACES_NAMED ? ` and ${lost.length - PLACES_NAMED} more` : "";
  return `What could be read is open as a work of its own; the damaged one was left as it is. Look through it before you cut. Not readable: ${named}${more}.`;
}

/** Copies on the wearer's own disk. */
export const COPY_WORDS = {
  reminder:
    "You have worked here for a month without a copy on your own disk. A browser can lose what it keeps: save a copy now.",
  all: "Download all my works",
  onlyOpen: "The other works kept here could not be read just now: the file holds the open work alone.",
} as const;

export const severalFilesSentence = (count: number): string =>
  `Too much for one file: it is in ${count}. Keep them all; the browser may ask before the second.`;

export const photographsNotKept = (count: number, fileName: string): string =>
  plural(count, {
    one: `1 photograph of “${fileName}” could not be kept here. Keep the file, and open it again later.`,
    other: `${count} photographs of “${fileName}” could not be kept here. Keep the file, and open it again later.`,
  });

export const leftOutSentence = (names: readonly string[]): string =>
  `Left out of the file, since it could not be read: ${listWords(names.map((name) => `“${entryName(name)}”`))}.`;

/** What came of opening a file of works. */
export function broughtInSentence(
  fileName: string,
  came: { readonly added: number; readonly same: number; readonly unreadable: number; readonly notKept: number },
): string {
  const said = [
    came.added === 0 ? "no new work" : `${counted(came.added, { one: "work", other: "works" })} brought in`,
    ...(came.same === 0 ? [] : [`${counted(came.same, { one: "was", other: "were" })} here already, the very same`]),
    ...(came.unreadable === 0 ? [] : [`${came.unreadable} could not be read`]),
    ...(came.notKept === 0
      ? []
      : [
          `${came.notKept} could not be saved here and ${plural(came.notKept, { one: "was", other: "were" })} left out`,
        ]),
  ];
  return `${fileName}: ${said.join("; ")}.`;
}

/** A file of a work that is kept already. */
export const sameWorkSentence = (name: string): string =>
  `“${entryName(name)}” is here already, the very same, so it was opened and not added again.`;

export const BRING_BACK_WORDS = "Bring it back";

/** A file that could not be opened, by its name. */
export const fileRefusedSentence = (fileName: string, failure: WorkFileFailureLike): string =>
  `${fileName}: ${fileFailureSentence(failure)}`;
