/** What is said where pins are meant for a body. */
export const MIND_THE_PINS =
  "Pin a fold on the garment, not towards the body, the heads away from the skin. Mind the pins when you take it off.";

/** Where the fold lies behind, out of one's own reach. */
export const PIN_WITH_HELP =
  "If you pin the fold on the body first, have somebody help, and take the pins out before the garment comes off.";
