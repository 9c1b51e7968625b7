/**
 * Three-way merging: what one side alone has changed since both set out from the base is taken from that side, what both
 * changed alike is no question, and what they changed differently collides. Whatever is not changed stays the very same object.
 */
import type { Collision } from "../core/decisions/collision";
import { isSame } from "../core/same";

export interface Versions<T> {
  readonly base: T;
  readonly mine: T;
  readonly theirs: T;
}

export interface Merging {
  /** Whose value stands where both changed it differently. */
  readonly prefers: "mine" | "theirs";
  readonly collide: (collision: Collision) => void;
}

export type Merge<T> = (versions: Versions<T>, merging: Merging) => T;

/** The side that alone changed something; `both` where both did, each in its own way. */
export function threeWay<T>({ base, mine, theirs }: Versions<T>, both: () => T): T {
  if (isSame(base, theirs)) return mine;
  return isSame(base, mine) || isSame(mine, theirs) ? theirs : both();
}

/** What stands where two changes collide. */
export function collided<T>(versions: Versions<T>, { prefers, collide }: Merging, collision: Collision): T {
  collide(collision);
  return versions[prefers];
}

/** A value that is one decision. */
export const whole =
  <T>(collision: Collision): Merge<T> =>
  (versions, merging) =>
    threeWay(versions, () => collided(versions, merging, collision));

/** A merge for each field. None can be forgotten. */
export type Parts<T> = { readonly [K in keyof T]-?: Merge<T[K] | undefined> };

/** A record of which each field is merged by itself; one that is absent is one value more. */
export const fields =
  <T extends object>(parts: Parts<T>): Merge<T> =>
  (versions, merging) =>
    threeWay(versions, () => {
      let merged = versions.theirs;
      for (const key in parts) merged = withField(merged, key, parts[key](partOf(versions, key), merging));
      return sharedWith(merged, versions.mine);
    });

const partOf = <T extends object, K extends keyof T>(
  { base, mine, theirs }: Versions<T>,
  key: K,
): Versions<T[K] | undefined> => ({ base: own(base, key), mine: own(mine, key), theirs: own(theirs, key) });

const own = <T extends object, K extends keyof T>(of: T, key: K): T[K] | undefined =>
  Object.hasOwn(of, key) ? of[key] : undefined;

function withField<T extends object, K extends keyof T>(into: T, key: K, value: T[K] | undefined): T {
  if (own(into, key) === value) return into;
  if (value !== undefined) return { ...into, [key]: value };
  const less = { ...into };
  delete less[key];
  return less;
}

/** Entries by name, whatever the names are. */
export const dictionary =
  <V>(part: (name: string) => Merge<V | undefined>): Merge<Readonly<Record<string, V>>> =>
  (versions, merging) =>
    threeWay(versions, () => {
      const names = new Set([...Object.keys(versions.theirs), ...Object.keys(versions.mine)]);
      const merged = [...names].flatMap((name) => {
        const value = part(name)(partOf(versions, name), merging);
        return value === undefined ? [] : [[name, value] as const];
      });
      return Object.fromEntries(merged);
    });

/** The other object itself where it holds the very same values. */
export function sharedWith<T extends object>(made: T, other: T): T {
  const [values, others] = [Object.entries(made), new Map(Object.entries(other))];
  return values.length === others.size && values.every(([key, value]) => others.has(key) && others.get(key) === value)
    ? other
    : made;
}

export type Entries<T> = readonly (readonly [key: string, item: T])[];

export interface KeyedList<T> {
  readonly item: (key: string) => Merge<T | undefined>;
  /** Said where both sides put the same items in orders of their own. */
  readonly order: Collision;
  /** Of two new ones in the same gap, whether the first belongs before the second. */
  readonly isBefore: (a: T, b: T) => boolean;
}

/** A list whose items are found by a key, once each: items by themselves, then their order; new ones stay beside their neighbours. */
export const keyedList =
  <T>({ item, order, isBefore }: KeyedList<T>): ((versions: Versions<Entries<T>>, merging: Merging) => Entries<T>) =>
  (versions, merging) => {
    const base = new Map(versions.base);
    const mine = new Map(versions.mine);
    const theirs = new Map(versions.theirs);
    const kept = new Map<string, T>();
    for (const key of new Set([...base.keys(), ...theirs.keys(), ...mine.keys()])) {
      const parts = { base: base.get(key), mine: mine.get(key), theirs: theirs.get(key) };
      const value = item(key)(parts, merging);
      if (value !== undefined) kept.set(key, value);
    }
    const isShared = (key: string): boolean => kept.has(key) && mine.has(key) && theirs.has(key);
    const orderIn = (map: ReadonlyMap<string, T>): readonly string[] => [...map.keys()].filter(isShared);
    const known = (keys: readonly string[]): readonly string[] => keys.filter((key) => base.has(key));
    const orders = { base: known(orderIn(base)), mine: known(orderIn(mine)), theirs: known(orderIn(theirs)) };
    const ordered = threeWay(orders, () => collided(orders, merging, order));
    const frame = orderIn(isSame(ordered, orders.theirs) ? theirs : mine);
    const run = (keys: readonly string[] | undefined): [string, T][] =>
      (keys ?? []).flatMap((key): [string, T][] => {
        const value = kept.get(key);
        return value === undefined ? [] : [[key, value]];
      });
    const [ofTheirs, ofMine] = [theirs, mine].map((map) =>
      runsAfter(
        [...map.keys()].filter((k) => kept.has(k)),
        isShared,
      ),
    );
    return ["", ...frame].flatMap((key, at) => [
      ...(at === 0 ? [] : run([key])),
      ...zipped(run(ofTheirs?.get(at === 0 ? null : key)), run(ofMine?.get(at === 0 ? null : key)), isBefore),
    ]);
  };

/** What is not shared, by the shared item that it follows; null: it comes before them all. */
function runsAfter(keys: readonly string[], isShared: (key: string) => boolean): ReadonlyMap<string | null, string[]> {
  const runs = new Map<string | null, string[]>();
  let after: string | null = null;
  for (const key of keys) {
    if (isShared(key)) after = key;
    else runs.set(after, [...(runs.get(after) ?? []), key]);
  }
  return runs;
}

/** Two runs made one, each in its own order; the same whichever is called the first. */
function zipped<T>(a: Entries<T>, b: Entries<T>, isBefore: (a: T, b: T) => boolean): Entries<T> {
  const [first, ...others] = a;
  const [second, ...rest] = b;
  if (first === undefined) return b;
  if (second === undefined) return a;
  const comesFirst = isBefore(first[1], second[1]) || (!isBefore(second[1], first[1]) && first[0] <= second[0]);
  return comesFirst ? [first, ...zipped(others, b, isBefore)] : [second, ...zipped(a, rest, isBefore)];
}

/** Works the same thing out only once when asked again, one after the other, as for the steps of a history. */
export function remembering<T>(merge: Merge<T>): Merge<T> {
  let last: { readonly versions: Versions<T>; readonly made: T } | null = null;
  return (versions, merging) => {
    if (last === null || !isSame(last.versions, versions)) last = { versions, made: merge(versions, merging) };
    return last.made;
  };
}
