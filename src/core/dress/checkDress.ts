/** Claims that every dress is held against. */
import { checkEdges } from "./checkEdges";
import type { SewingAsked } from "../sewing/orderOfSewing";
import type { DressCheck } from "./dressPlan";

export function checkDress(dress: SewingAsked): readonly DressCheck[] {
  return [...checkEdges(dress)];
}
