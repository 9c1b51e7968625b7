/** Works that go by one name, and what tells them apart where they stand. */
import type { WorkEntry } from "../../store/library";
import { sameAsSaved, WORKS_WORDS } from "../../words/works";
import type { Exactness, MomentWriter } from "../../words/terms/moments";

const EXACTNESSES: readonly Exactness[] = ["day", "minute", "second"];

/** What a row would say of a work if it said nothing of when. */
const nameOf = ({ name, wearer }: WorkEntry): string => JSON.stringify([name.trim().toLowerCase(), wearer]);

/** The others of the same name for the same wearer, itself among them, by id; works that stand alone are left out. */
export function namesakes(entries: readonly WorkEntry[]): ReadonlyMap<string, readonly WorkEntry[]> {
  const groups = new Map<string, WorkEntry[]>();
  for (const entry of entries) {
    const name = nameOf(entry);
    groups.set(name, [...(groups.get(name) ?? []), entry]);
  }
  return new Map(
    [...groups.values()].filter(({ length }) => length > 1).flatMap((group) => group.map(({ id }) => [id, group])),
  );
}

/** When each was saved, by id: as exactly as it takes to tell it from its namesakes. */
export function whenSaid(entries: readonly WorkEntry[], write: MomentWriter): ReadonlyMap<string, string> {
  const groups = namesakes(entries);
  const said = new Map<string, string>();
  for (const entry of entries) {
    const times = (groups.get(entry.id) ?? [entry]).map(({ saved }) => saved);
    const tellsApart = (exactness: Exactness): boolean =>
      new Set(times.map((time) => write(time, exactness))).size === times.length;
    said.set(entry.id, write(entry.saved, EXACTNESSES.find(tellsApart) ?? "second"));
  }
  return said;
}

/**
 * Of works that are the very same as one further up, which one, in words, by id.
 *
 * @param textOf what a work says in all its parts; undefined while that is not known
 */
export function sameSaid(
  entries: readonly WorkEntry[],
  when: ReadonlyMap<string, string>,
  textOf: (entry: WorkEntry) => string | undefined,
): ReadonlyMap<string, string> {
  const said = new Map<string, string>();
  const last = new Map<string, { readonly id: string; readonly at: number }>();
  for (const [at, entry] of entries.entries()) {
    const text = textOf(entry);
    if (text === undefined) continue;
    const before = last.get(text);
    if (before !== undefined) {
      said.set(entry.id, before.at === at - 1 ? WORKS_WORDS.sameAsAbove : sameAsSaved(when.get(before.id) ?? ""));
    }
    last.set(text, { id: entry.id, at });
  }
  return said;
}
