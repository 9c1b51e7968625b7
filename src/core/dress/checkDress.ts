/** Claims that every dress is held against. */
import type { SewingAsked } from "../sewing/orderOfSewing";
import { checkLining } from "./checkLining";
import type { DressCheck } from "./dressPlan";

export function checkDress(dress: SewingAsked): readonly DressCheck[] {
  return [...checkLining(dress)];
}
