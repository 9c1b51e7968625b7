/** Claims that every dress is held against. */
import type { DressBody } from "../parts/dressBody";
import type { SewingAsked } from "../sewing/orderOfSewing";
import { checkEdges } from "./checkEdges";
import { checkLining } from "./checkLining";
import { checkSkirt } from "./checkSkirt";
import type { DressCheck } from "./dressPlan";

export const checkDress = (dress: SewingAsked, body: DressBody): readonly DressCheck[] => [
  ...checkSkirt(dress, body),
  ...checkLining(dress),
  ...checkEdges(dress),
];
