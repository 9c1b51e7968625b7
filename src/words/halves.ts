/** The halves of the body, and trying one thing on the left and another on the right. */
import type { Half } from "../core/decisions/alteration";
import { halfWords } from "./fits";

export const ON_WHICH_HALF = "On which half";

export const WHICH_HALVES = [
  { value: "both", label: "both" },
  { value: "left", label: "left" },
  { value: "right", label: "right" },
] as const;

export const anotherWayWords = (other: Half): string => `Try another way on your ${halfWords(other)}`;
/** The same on a slip of the ledger, where there is little room. */
export const OTHER_WAY = "Other half another way";
