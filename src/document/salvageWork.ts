/** What can still be read of a damaged work: everything that the schema takes stays, what it refuses goes, and nothing else. */
import type * as z from "zod/mini";
import { LIMITS } from "../core/decisions/limits";
import { isSeenOf } from "../core/decisions/seenAtDart";
import type { Work } from "../core/decisions/work";
import { blankWork } from "./blank";
import { withDrawingsAgain } from "./drawingsOnce";
import { partHoldsTooMuch } from "./readLimits";
import { seenOfDartSchema, workSchema } from "./schema";
import { CURRENT_VERSION, UPGRADES } from "./upgrades";

export interface Salvaged {
  readonly work: Work;
  /** The places that were lost, as in the damaged work: left out, cut short, or as in a new work. */
  readonly lost: readonly string[];
}

type Path = readonly PropertyKey[];
type Fields = Readonly<Record<PropertyKey, unknown>>;

/** What is done in one place of the damaged work. */
type Mend =
  | { readonly do: "leave" }
  | { readonly do: "out" }
  | { readonly do: "put"; readonly value: unknown }
  /** A list without what is beyond so many. */
  | { readonly do: "cut"; readonly most: number };

/** A place that something is done in, or in a place within it. */
interface Place {
  readonly path: Path;
  mend: Mend;
  readonly within: Map<PropertyKey, Place>;
}

/** Every round mends all that is refused or goes up by one; the schema is a dozen places deep. */
const MOST_ROUNDS = 40;

/**
 * @param data    a work of some version as it lay in a store, whatever is there
 * @param version the version it was saved by
 * @returns null where nothing of it can be read, or a newer version saved it
 */
export function salvageWork(data: unknown, version: number): Salvaged | null {
  if (!Number.isInteger(version) || version < 1 || version > CURRENT_VERSION || !isFields(data)) return null;
  const all = withDrawingsAgain(upgradedAsFar(data, version));
  if (!isFields(all)) return null;
  const upgraded = Object.fromEntries(KNOWN.flatMap((key) => (Object.hasOwn(all, key) ? [[key, all[key]]] : [])));
  const unknown = Object.keys(all).filter((key) => !KNOWN.includes(key));
  const unit = upgraded["unit"] === "in" ? "in" : "cm";
  const blank = blankWork(unit);
  const root: Place = { path: [], mend: { do: "leave" }, within: new Map() };
  for (const key of Object.keys(upgraded).filter((one) => partHoldsTooMuch(one, upgraded[one])))
    mendAgain(placeAt(root, [key]), blank);
  for (const [key, most] of [
    ["unread", LIMITS.unread],
    ["seen", LIMITS.seen],
  ] as const)
    leaveOutSurplus(placeAt(root, [key]), upgraded[key], most);
  leaveOutTwins(root, ["trials"], upgraded["trials"]);
  for (const [at, trial] of listOf(upgraded["trials"]).entries()) {
    if (!isFields(trial) || placeIn(root, ["trials", at])?.mend.do === "out") continue;
    leaveOutTwins(root, ["trials", at, "observations"], trial["observations"]);
    const sewn = isFields(trial["sewn"]) ? trial["sewn"] : {};
    leaveOutSurplus(placeAt(root, ["trials", at, "sewn", "seen"]), sewn["seen"], LIMITS.seen);
  }
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const candidate = mended(upgraded, root);
    const parsed = workSchema.safeParse(candidate);
    if (parsed.success)
      return keepsAnything(root, upgraded) ? { work: parsed.data, lost: [...unknown, ...lostIn(root)] } : null;
    const isLast = round >= MOST_ROUNDS - 2;
    // All of them are told of the same candidate: its places are found before the first is mended.
    const places = parsed.error.issues.map(({ path }) => pathBefore(root, upgraded, isLast ? path.slice(0, 1) : path));
    const done = new Set<Place>();
    for (const [at, issue] of parsed.error.issues.entries()) {
      const path = places[at] ?? [];
      if (isLast || !mendAsTold(placeAt(root, path), candidate, issue)) mendUpwards(root, path, blank, done);
    }
  }
  return null;
}

const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const KNOWN: readonly string[] = Object.keys(workSchema.shape);

/** Brought up to date by every step that can be made of it. */
function upgradedAsFar(data: unknown, version: number): unknown {
  let upgraded = data;
  for (let from = version; from < CURRENT_VERSION; from += 1) {
    try {
      upgraded = UPGRADES[from]?.(upgraded) ?? upgraded;
    } catch {
      // A step is written for sound works; what it would have brought up to date is then refused by the schema.
    }
  }
  return upgraded;
}

/** What a check of the whole list refuses, by itself: entries beyond the most, and what is seen of a dart once more. */
function leaveOutSurplus(place: Place, list: unknown, most: number): void {
  if (place.mend.do !== "leave") return;
  if (!Array.isArray(list)) {
    if (!isFields(list)) return;
    const keys = Object.keys(list);
    // The schema leaves that one out unsaid.
    for (const key of [...keys.filter((one) => one === "__proto__"), ...keys.slice(most)])
      placeAt(place, [key]).mend = { do: "out" };
    return;
  }
  const items: readonly unknown[] = list;
  // Places left empty in a list are looked at, too.
  const darts = Array.from(items, (item) => {
    const parsed = seenOfDartSchema.safeParse(item);
    return parsed.success ? parsed.data : null;
  });
  for (const [at, one] of darts.entries()) {
    if (one === null) continue;
    const isFirst = darts.findIndex((other) => other !== null && isSeenOf(other, one, one.half)) === at;
    if (!isFirst) placeAt(place, [at]).mend = { do: "out" };
  }
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Of two with one id the first stays, or a single twin would cost the whole list. */
function leaveOutTwins(root: Place, path: Path, list: unknown): void {
  if (placeIn(root, path)?.mend.do !== undefined && placeIn(root, path)?.mend.do !== "leave") return;
  const ids = listOf(list).map((one) => own(one, "id"));
  for (const [at, id] of ids.entries())
    if (typeof id === "string" && ids.indexOf(id) !== at) placeAt(root, [...path, at]).mend = { do: "out" };
}

/** What an issue itself says can be done: fields too many taken out, what is too long cut. */
function mendAsTold(place: Place, candidate: unknown, issue: z.core.$ZodIssue): boolean {
  if (issue.code === "unrecognized_keys") {
    for (const key of issue.keys) placeAt(place, [key]).mend = { do: "out" };
    return true;
  }
  if (issue.code !== "too_big" || typeof issue.maximum !== "number") return false;
  const value = valueAt(candidate, issue.path);
  if (Array.isArray(value)) place.mend = { do: "cut", most: issue.maximum };
  else if (typeof value === "string") place.mend = { do: "put", value: value.slice(0, issue.maximum) };
  else return false;
  return true;
}

/** Mends a place or, where that was tried before, the one that it lies in: once a round, however much is refused in it. */
function mendUpwards(root: Place, path: Path, blank: Work, done: Set<Place>): void {
  for (let length = path.length; length >= 0; length -= 1) {
    const place = placeAt(root, path.slice(0, length));
    if (done.has(place)) return;
    if (!mendAgain(place, blank)) continue;
    done.add(place);
    return;
  }
}

/** The value of a new work, or nothing where it has none; false where that was tried before and does not help. */
function mendAgain(place: Place, blank: Work): boolean {
  if (place.mend.do === "out") return false;
  const value = valueAt(blank, place.path);
  const isNew = place.mend.do !== "put" || place.mend.value !== value;
  place.mend = value !== undefined && isNew ? { do: "put", value } : { do: "out" };
  return true;
}

function placeAt(from: Place, path: Path): Place {
  let place = from;
  for (const key of path) {
    const known = place.within.get(key);
    const next: Place = known ?? { path: [...place.path, key], mend: { do: "leave" }, within: new Map() };
    if (known === undefined) place.within.set(key, next);
    place = next;
  }
  return place;
}

const own = (of: unknown, key: PropertyKey): unknown =>
  typeof of === "object" && of !== null && Object.hasOwn(of, key) ? Reflect.get(of, key) : undefined;

const valueAt = (of: unknown, path: Path): unknown => path.reduce(own, of);

/** A place of the mended work as it was in the damaged one, where lists were longer. */
function pathBefore(root: Place, original: unknown, path: Path): Path {
  const before: PropertyKey[] = [];
  for (const key of path) {
    const place = placeIn(root, before);
    const list = valueAt(original, before);
    if (typeof key === "number" && Array.isArray(list) && place?.mend.do !== "put") {
      const left = list.flatMap((_, at) => (place?.within.get(at)?.mend.do === "out" ? [] : [at]));
      before.push(left[key] ?? key);
    } else before.push(key);
  }
  return before;
}

const placeIn = (root: Place, path: Path): Place | undefined =>
  path.reduce<Place | undefined>((place, key) => place?.within.get(key), root);

/** The damaged work with everything done that has to be; what nothing is done in stays the very same object. */
function mended(value: unknown, { mend, within }: Place): unknown {
  if (mend.do === "put") return mend.value;
  if (within.size === 0 && mend.do !== "cut") return value;
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value;
    const left = items.flatMap((item, at) => {
      const place = within.get(at);
      if (place === undefined) return [item];
      return place.mend.do === "out" ? [] : [mended(item, place)];
    });
    return mend.do === "cut" ? left.slice(0, mend.most) : left;
  }
  if (!isFields(value)) return value;
  const before = Object.entries(value).flatMap(([key, part]): [string, unknown][] => {
    const place = within.get(key);
    if (place === undefined) return [[key, part]];
    return place.mend.do === "out" ? [] : [[key, mended(part, place)]];
  });
  const added = [...within].flatMap(([key, place]): [PropertyKey, unknown][] =>
    place.mend.do === "put" && !Object.hasOwn(value, key) ? [[key, place.mend.value]] : [],
  );
  return Object.fromEntries([...before, ...added]);
}

/** Whether any field of the work is still its own, if only in part. */
const keepsAnything = ({ mend: whole, within }: Place, of: Fields): boolean =>
  whole.do === "leave" &&
  KNOWN.some((key) => {
    const mend = within.get(key)?.mend.do;
    return Object.hasOwn(of, key) && mend !== "out" && mend !== "put";
  });

/** The places in which something was done; within one that was lost as a whole nothing more is named. */
function lostIn({ path, mend, within }: Place): readonly string[] {
  if (mend.do !== "leave" && mend.do !== "cut") return [path.map(String).join(".")];
  const inside = [...within].toSorted(([a], [b]) => Number(a) - Number(b) || 0).flatMap(([, place]) => lostIn(place));
  return mend.do === "leave" ? inside : [path.map(String).join("."), ...inside];
}
