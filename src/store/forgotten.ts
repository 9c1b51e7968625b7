/** What is not to be learnt from: keys that this browser keeps beside the works. What cannot be read counts as nothing. */
import * as z from "zod/mini";
import type { Library } from "./library";

/** So many are remembered, the last ones: far more than anybody's garments. */
const MOST = 2000;
const keysSchema = z.array(z.string()).check(z.maxLength(MOST));

export async function forgottenIn(library: Library): Promise<readonly string[]> {
  const kept = await library.pageValue("forgotten");
  if (!kept.ok || kept.value === null) return [];
  try {
    return keysSchema.safeParse(JSON.parse(kept.value)).data ?? [];
  } catch {
    return [];
  }
}

/** @returns whether it could be kept */
export async function forgetIn(library: Library, keys: readonly string[]): Promise<boolean> {
  const all = [...new Set([...(await forgottenIn(library)), ...keys])].slice(-MOST);
  return (await library.setPageValue("forgotten", JSON.stringify(all))).ok;
}
