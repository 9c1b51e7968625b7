/** Beside the controls of dart surgery: where a dart can be moved to, and how far its legs can be bowed. */
import { MOST_BOW } from "../core/dart/bowedLegs";
import type { DartHome, PieceName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { formatMost } from "./terms/length";
import { centreWords } from "./terms/names";

const HOMES: Readonly<Record<Exclude<DartHome, "centre">, string>> = {
  side: "side seam, below the armhole",
  french: "side seam, low down (French dart)",
  waist: "waist seam",
  underBust: "under-bust seam",
  shoulder: "shoulder seam",
  armhole: "armhole",
  neck: "neck edge",
};

export const homeWords = (home: DartHome, piece: PieceName): string =>
  home === "centre" ? `${centreWords(piece)} line` : HOMES[home];

export const bowHint = (unit: LengthUnit): string =>
  `up to ${formatMost(MOST_BOW, unit)} into the dart, for a rounder cup; less than 0 bows them out of it`;
