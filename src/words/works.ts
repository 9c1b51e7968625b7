/** What stands in the list of works: what tells one from another, the bin, and how sure their keeping is. */
import { plural } from "./terms/language";

export const WORKS_WORDS = {
  kept: "Works kept in this browser",
  promised: "This browser has promised to keep them.",
  mayClear: "This browser may clear them when it runs short of room: keep copies.",
  blank: "New blank work",
  fromBase: "Begin from a base…",
  openFile: "Open a file",
  download: "Download this work",
  downloadAll: "Download all my works",
  files:
    "A downloaded file lies on your own disk: a safe copy, or a way to another device. Opening a file of all works brings in those that are not here yet. Such files hold your measures, so share them as you would share those.",
  find: "Find by name",
  found: { none: "No work has that in its name, or in whom it is for." },
  openNow: "open now",
  open: "Open",
  copy: "Copy",
  toBin: "Put in the bin",
  noPieces: "no pieces yet",
  unreadable: "cannot be read",
  sameAsAbove: "the same as the one above",
  bringBack: "Bring back",
  forGood: "Delete for good",
  reallyForGood: "Really delete for good",
  keepIt: "Keep it",
  close: "Close",
} as const;

export const binHeading = (count: number): string => `Bin (${count})`;

/** Whom it is for and when it was saved, as far as they are known. @param when as `momentsFrom` writes it */
export function workSaid(wearer: string | null, when: string): string {
  const saved = when === "" ? "" : `saved ${when}`;
  return [wearer === null || wearer.trim() === "" ? "" : `for ${wearer.trim()}`, saved]
    .filter((part) => part !== "")
    .join(", ");
}

/** @param when as `momentsFrom` writes it */
export const sameAsSaved = (when: string): string => `the same as the one saved ${when}`;

/** @param days begun ones that it still lies in the bin */
export function daysLeftWords(days: number): string {
  if (days < 1) return "goes when the page is next opened";
  return plural(days, { one: "1 day left", other: `${days} days left` });
}

export const reallySentence = (name: string): string => `Delete “${name}” for good? It cannot be brought back.`;
