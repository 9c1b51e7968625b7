/** Entries of a set of measures that could not be read: they stay with their set when another is begun, and come back with it. */
import type { Command } from "../../core/plan/commands";
import type { Work } from "../../core/decisions/work";

/** Fields of the newest set; those of the sets before it are kept under the number of their set, the first one's under 1. */
const OF_NEWEST = /^(?:measure\.|taken$)/u;
const keptUnder = (set: number): string => `set.${set}.`;

const moved = (unread: Work["unread"], from: string, to: string): readonly Command[] => {
  const text = unread[from];
  return text === undefined
    ? []
    : [
        { kind: "clearUnread", field: from },
        { kind: "setUnread", field: to, text },
      ];
};

const cleared = (field: string): Command => ({ kind: "clearUnread", field });

const ofNewest = (unread: Work["unread"]): readonly string[] =>
  Object.keys(unread).filter((field) => OF_NEWEST.test(field));

/**
 * Another set is begun.
 *
 * @param sets how many there are before it
 */
export const setAside = (unread: Work["unread"], sets: number): readonly Command[] =>
  ofNewest(unread).flatMap((field) => moved(unread, field, `${keptUnder(sets)}${field}`));

/**
 * A set is taken away, with what could not be read of it; the next older becomes the newest where that one goes.
 *
 * @param sets how many there are with it
 * @param at   its place, the newest first
 */
export function takenAway(unread: Work["unread"], sets: number, at: number): readonly Command[] {
  const fields = Object.keys(unread);
  const of = (set: number): readonly string[] => fields.filter((field) => field.startsWith(keptUnder(set)));
  if (at === 0) {
    const kept = keptUnder(sets - 1);
    return [
      ...ofNewest(unread).map(cleared),
      ...of(sets - 1).flatMap((field) => moved(unread, field, field.slice(kept.length))),
    ];
  }
  const gone = sets - at;
  const younger = Array.from({ length: at - 1 }, (_, above) => gone + 1 + above);
  return [
    ...of(gone).map(cleared),
    ...younger.flatMap((set) =>
      of(set).flatMap((field) => moved(unread, field, keptUnder(set - 1) + field.slice(keptUnder(set).length))),
    ),
  ];
}
