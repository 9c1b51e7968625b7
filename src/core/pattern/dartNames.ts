/** Dart names, taken apart and put together: where a dart opens, and which of several it is. */
import { CoreBug } from "../result";
import type { DartHome, DartName } from "./piece";

export const DART_HOMES: readonly DartHome[] = [
  "side",
  "french",
  "waist",
  "underBust",
  "shoulder",
  "armhole",
  "neck",
  "centre",
];

/** "" is the first or only one. */
export type DartNumber = "" | "2" | "3";
const NUMBERS: readonly DartNumber[] = ["", "2", "3"];

export const dartName = (home: DartHome, number: DartNumber = ""): DartName => `${home}Dart${number}`;

export const DART_NAMES: readonly DartName[] = DART_HOMES.flatMap((home) =>
  NUMBERS.map((number) => dartName(home, number)),
);

const PARTS: ReadonlyMap<DartName, { readonly home: DartHome; readonly number: DartNumber }> = new Map(
  DART_HOMES.flatMap((home) => NUMBERS.map((number) => [dartName(home, number), { home, number }] as const)),
);

/** Where a dart of that name opens, and its number. */
export function partsOfDart(name: DartName): { readonly home: DartHome; readonly number: DartNumber } {
  const parts = PARTS.get(name);
  if (parts === undefined) throw new CoreBug(`no dart name: ${name}`);
  return parts;
}

export const homeOf = (name: DartName): DartHome => partsOfDart(name).home;

/** Darts whose mouth stands upright, in the side seam, the armhole or the centre: one end above the other. */
export const opensUpright = (name: DartName): boolean => liesAlongBust(name) || homeOf(name) === "french";

/** Darts that lie along the bust line: folded down, moved up and down. All others stand upright or slant. */
export const liesAlongBust = (name: DartName): boolean => {
  const { home } = partsOfDart(name);
  return home === "side" || home === "armhole" || home === "centre";
};
