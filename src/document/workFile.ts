/** Work files: reading one that may be anything, writing one that reads back the same. */
import * as z from "zod/mini";
import { compareSeen } from "../core/decisions/seenAtDart";
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { createDrawings, drawingsOnce } from "./drawingsOnce";
import type { PhotographInFile } from "./photographsFile";
import { checkText, holdsTooMuch, partHoldsTooMuch, type TooMuch } from "./readLimits";
import { workSchema } from "./schema";
import { CURRENT_VERSION, upgradeWork, UPGRADES, type Upgrades } from "./upgrades";

export type WorkFileFailure =
  | { readonly code: "file/not-json" }
  | { readonly code: "file/foreign" }
  | { readonly code: "file/newer"; readonly version: number; readonly known: number }
  | { readonly code: "file/damaged"; readonly places: readonly string[] }
  | TooMuch;

const envelope = z.object({
  bodicewright: z.literal("work"),
  version: z.int().check(z.gte(1)),
  work: z.optional(z.unknown()),
});

/** How many damaged places are named. */
const PLACES_NAMED = 3;

/**
 * Reads a work file.
 *
 * @param text the file's text, whatever it is
 * @returns the work, brought up to the current version; or why it cannot be read. Nothing is changed on a failure.
 */
export function readWorkFile(
  text: string,
  upgrades: Upgrades = UPGRADES,
  current = CURRENT_VERSION,
): Result<Work, WorkFileFailure> {
  const json = parseFile(text);
  if (!json.ok) return json;
  return readWorkData(json.value, upgrades, current);
}

/** Reads what a file of one work holds. */
export function readWorkData(
  data: unknown,
  upgrades: Upgrades = UPGRADES,
  current = CURRENT_VERSION,
): Result<Work, WorkFileFailure> {
  const found = envelope.safeParse(data);
  if (!found.success) return fail({ code: "file/foreign" });
  const { version, work } = found.data;
  if (version > current) return fail({ code: "file/newer", version, known: current });
  const upgraded = upgrade(work, version, current, upgrades);
  return upgraded.ok ? parseWork(upgraded.value) : upgraded;
}

/** An older work that is damaged may be beyond its upgrade, which is written for sound ones. */
function upgrade(
  work: unknown,
  version: number,
  current: number,
  upgrades: Upgrades,
): Result<unknown, WorkFileFailure> {
  try {
    return ok(upgradeWork(work, version, current, upgrades));
  } catch {
    return fail({ code: "file/damaged", places: [WHOLE] });
  }
}

/** Named where the work as a whole is damaged. */
const WHOLE = "work";

/** A work from unknown data of the current version. */
export function parseWork(data: unknown): Result<Work, WorkFileFailure> {
  if (holdsTooMuch(data)) return fail({ code: "file/damaged", places: placesOfTooMuch(data) });
  return isWithTrials(data) ? createDrawings().during(data, parsePlain) : parsePlain(data);
}

const isWithTrials = (data: unknown): boolean => typeof data === "object" && data !== null && "trials" in data;

function parsePlain(data: unknown): Result<Work, WorkFileFailure> {
  const parsed = workSchema.safeParse(data);
  if (parsed.success) return ok(parsed.data);
  const places = parsed.error.issues.map(({ path }) => path.map(String).join(".") || WHOLE);
  return fail({ code: "file/damaged", places: [...new Set(places)].slice(0, PLACES_NAMED) });
}

function placesOfTooMuch(data: unknown): readonly string[] {
  const fields = typeof data === "object" && data !== null && !Array.isArray(data) ? Object.entries(data) : [];
  const [place = WHOLE] =
    fields.length > MOST_FIELDS ? [] : fields.flatMap(([key, part]) => (partHoldsTooMuch(key, part) ? [key] : []));
  return [place];
}

/** More than a work has: with more there are others among them, and no one of them is to blame. */
const MOST_FIELDS = 100;

/** The text of a work file. Equal works give the same text, whatever the order in which their parts were entered. */
export function writeWorkFile(work: Work, photographs: readonly PhotographInFile[] = []): string {
  const file = { bodicewright: "work", version: CURRENT_VERSION, work: drawingsOnce(workInOrder(work)) };
  return `${JSON.stringify(photographs.length === 0 ? file : { ...file, photographs }, null, 2)}\n`;
}

/** An equal work with all its parts in the order in which they are written. */
export function workInOrder(work: Work): Work {
  // The schema puts every part in its own order.
  const parsed = parseWork(work);
  return parsed.ok ? inOrder(parsed.value) : work;
}

/** Entries that are found by what they are of, not by where they stand. */
function inOrder(work: Work): Work {
  const unread = sorted(work.unread);
  return work.seen === undefined ? { ...work, unread } : { ...work, seen: work.seen.toSorted(compareSeen), unread };
}

const sorted = (record: Work["unread"]): Work["unread"] =>
  Object.fromEntries(Object.entries(record).toSorted(([a], [b]) => (a < b ? -1 : 1)));

/** @param most bytes */
export function parseFile(text: string, most?: number): Result<unknown, WorkFileFailure> {
  const checked = checkText(text, most);
  if (!checked.ok) return checked;
  try {
    // A byte order mark is what some editors leave at the start.
    return ok(JSON.parse(text.replace(/^\uFEFF/, "")));
  } catch {
    return fail({ code: "file/not-json" });
  }
}
