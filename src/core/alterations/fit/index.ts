/** All fit alterations, in the order they are offered. To add one: a file beside this, and a line here. */
import type { FitDefinition } from "./definition";
import { lengthBelowBust } from "./lengthBelowBust";

export const FITS = {
  lengthBelowBust,
} as const satisfies Readonly<Record<string, FitDefinition>>;

export type FitName = keyof typeof FITS;

/** The names. The record is only ever built here, so its keys are the names. */
export const FIT_NAMES = Object.keys(FITS) as readonly FitName[] as readonly [FitName, ...FitName[]];

export const fitOf = (name: FitName): FitDefinition => FITS[name];
