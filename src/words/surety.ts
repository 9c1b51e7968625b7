/** How sure a pick is, in one word. */
import type { Surety } from "../core/sureness/surety";

export const SURETY_WORDS: Readonly<Record<Surety, string>> = {
  sure: "sure",
  fair: "fairly sure",
  open: "open",
  doubted: "doubted",
};
