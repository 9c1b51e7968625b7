import type { Mm } from "../units";

/** The back shoulder is drafted longer by this and eased onto the front (common practice: 3 to 6 mm). */
export const SHOULDER_EASE: Mm = 6;
