/** Claims that every dress is held against. */
import type { SewingAsked } from "../sewing/orderOfSewing";
import type { DressCheck } from "./dressPlan";

export function checkDress(_dress: SewingAsked): readonly DressCheck[] {
  return [];
}
