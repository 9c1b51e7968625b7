/** What is not to be learnt from: keys that this browser keeps beside the works. What cannot be read counts as nothing. */
import type { Library } from "./library";

/** So many are remembered, the last ones: far more than anybody's garments. */
const MOST = 2000;

export async function forgottenIn(library: Library): Promise<readonly string[]> {
  const kept = await library.pageValue("forgotten");
  return kept.ok ? keysIn(kept.value) : [];
}

function keysIn(kept: string | null): readonly string[] {
  if (kept === null) return [];
  try {
    const keys: unknown = JSON.parse(kept);
    return Array.isArray(keys) ? keys.filter((key) => typeof key === "string") : [];
  } catch {
    return [];
  }
}

/** @returns whether it could be kept */
export async function forgetIn(library: Library, keys: readonly string[]): Promise<boolean> {
  const kept = await library.changePageValue("forgotten", (known) =>
    JSON.stringify([...new Set([...keysIn(known), ...keys])].slice(-MOST)),
  );
  return kept.ok;
}
