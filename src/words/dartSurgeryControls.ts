/** Where a dart can be moved to, in the trade's words. */
import type { DartHome, PieceName } from "../core/pattern/piece";
import { centreWords } from "./names";

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
