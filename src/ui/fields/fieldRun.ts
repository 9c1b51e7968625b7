/** Fields that are filled in one after the other: whatever holds them says so by `data-run`. */

/** The field that Enter leads to on keys that the screen draws. */
export function nextInRun(input: HTMLInputElement): HTMLInputElement | undefined {
  const all = [...(input.closest("[data-run]")?.querySelectorAll<HTMLInputElement>("input.field-input") ?? [])];
  return all.slice(all.indexOf(input) + 1).find((other) => other.checkVisibility());
}
