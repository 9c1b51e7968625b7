/** What could not be read stands beside its row, wherever that row goes. */
import type { Command } from "../../core/plan/commands";
import type { Work } from "../../core/decisions/work";

/**
 * Takes entries that could not be read along with their rows.
 *
 * @param rows     how many there were
 * @param from     for each row there is now, where it stood before
 * @param fieldsOf keys of the entries of the row at a place
 */
export function takeAlong(
  unread: Work["unread"],
  rows: number,
  from: readonly number[],
  fieldsOf: (at: number) => readonly string[],
): readonly Command[] {
  return Array.from({ length: rows }, (_, at) => at).flatMap((at) => {
    const stood = from[at];
    const before = stood === undefined ? [] : fieldsOf(stood);
    return fieldsOf(at).map((field, index): Command => {
      const text = unread[before[index] ?? ""];
      return text === undefined ? { kind: "clearUnread", field } : { kind: "setUnread", field, text };
    });
  });
}
