/** What the plan still needs, which only the plan knows. */
import { createLater } from "../parts/later";

export const PLAN_NOTE = createLater(async () => (await import("./PlanNote")).PlanNote);
