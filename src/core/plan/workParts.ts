/** Changing one part of a work, and keeping all that did not change the very same object. */
import { isSame } from "../same";

/** Another value in one place; the very same object where it holds an equal value there already. */
export function withPart<T extends object, K extends keyof T>(of: T, key: K, value: T[K]): T {
  return isSame(of[key], value) ? of : { ...of, [key]: value };
}

/** Nothing in one place; the very same object where nothing was there. */
export function without<T extends object, K extends keyof T>(from: T, key: K): Omit<T, K> {
  if (!Object.hasOwn(from, key)) return from;
  const { [key]: _gone, ...rest } = from;
  return rest;
}
