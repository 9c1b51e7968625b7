/** What is not to be learnt from: keys that this browser keeps beside the works. What cannot be read counts as nothing. */
import type { Library } from "./library";

/** So many are remembered, the last ones: far more than anybody's garments. */
const MOST = 2000;

export const forgottenIn = async (library: Library): Promise<readonly string[]> => (await readIn(library)) ?? [];

/** Null where it could not be read just now, and is not to be written over. */
async function readIn(library: Library): Promise<readonly string[] | null> {
  const kept = await library.pageValue("forgotten");
  if (!kept.ok) return null;
  if (kept.value === null) return [];
  try {
    const keys: unknown = JSON.parse(kept.value);
    return Array.isArray(keys) ? keys.filter((key) => typeof key === "string") : [];
  } catch {
    return [];
  }
}

/** @returns whether it could be kept */
export async function forgetIn(library: Library, keys: readonly string[]): Promise<boolean> {
  const known = await readIn(library);
  if (known === null) return false;
  const all = [...new Set([...known, ...keys])].slice(-MOST);
  return (await library.setPageValue("forgotten", JSON.stringify(all))).ok;
}
