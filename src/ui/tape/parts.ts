/** What of Tape is loaded after its fields. */
import { createLater } from "../parts/later";

/** What Tape says by the body model: guesses and doubts, and whose bodies they come from. */
export const BODIES = createLater(() => import("./bodies"));

/** What the plan still needs, which only the plan knows. */
export const PLAN_NOTE = createLater(async () => (await import("./PlanNote")).PlanNote);
