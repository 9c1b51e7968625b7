/** Telling two works of the same origin apart once each goes its own way. */
import type { Work } from "../core/decisions/work";
import type { WorkState } from "./workStore";

/** Leaves room in a name for what is put behind it. */
const LONGEST_NAME = 190;

export const copyName = (name: string): string => `${name.slice(0, LONGEST_NAME)} (copy)`;

type Versions = Pick<WorkState, "work" | "past" | "future" | "gestureStart">;

/**
 * The open work under another name, and with it every step of its history that had the old one, so that undoing a change
 * does not bring that name back. Works that were the same object still are: a gesture goes on undisturbed.
 */
export function renamed(versions: Versions, name: string): Versions {
  const old = versions.work.name;
  const done = new Map<Work, Work>();
  const rename = (work: Work): Work => {
    if (work.name !== old) return work;
    const known = done.get(work);
    if (known !== undefined) return known;
    const made = { ...work, name };
    done.set(work, made);
    return made;
  };
  return {
    work: rename(versions.work),
    past: versions.past.map(rename),
    future: versions.future.map(rename),
    gestureStart: versions.gestureStart === null ? null : rename(versions.gestureStart),
  };
}
