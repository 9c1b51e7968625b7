/** What Tape says by the body model: guesses and doubts, and whose bodies they come from. */
import { createLater } from "../parts/later";

export const BODIES = createLater(() => import("./bodies"));
