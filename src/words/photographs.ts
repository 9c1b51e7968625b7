/** Photographs of a trial, in words. */
import { dayWords } from "./terms/days";
import { plural } from "./terms/language";

export const PHOTOGRAPH_WORDS = {
  title: "Photographs",
  add: "Add photographs",
  choose: "Photographs to add",
  note: "They stay in this browser on this device, scaled down. They are never sent, and in no file unless you save one with them, those of all its trials. A copy of the work has the very same ones: what is removed here is removed there.",
  save: "Save the work with all its photographs",
  undo: "Bring it back",
  removed: "Photograph removed.",
  notSaved:
    "The file with photographs was not made: you left the trial before all were found. Save it there once more.",
  looking: "Looking for photographs…",
  unavailable: "Photographs cannot be kept or shown here just now. The trial itself is not touched.",
  full: "There is no room for another photograph. The trial itself is not touched.",
} as const;

/** "Trial of 25 November 2026, photograph 2 of 3". */
export const photographName = (day: string | undefined, at: number, of: number): string =>
  `${day === undefined ? "Trial" : `Trial of ${dayWords(day)}`}, photograph ${at + 1} of ${of}`;

export const enlargeLabel = (name: string): string => `Enlarge: ${name}`;
export const removeLabel = (name: string): string => `Remove: ${name}`;

export const unreadableSentence = (count: number): string =>
  plural(count, {
    one: "1 photograph cannot be read any more.",
    other: `${count} photographs cannot be read any more.`,
  });

export const notAddedSentence = (names: readonly string[]): string =>
  `No picture that this browser can read: ${names.join(", ")}.`;
