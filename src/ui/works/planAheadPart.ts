/** What is worked out of a work before it is shown, so that the page is never busy for long at once. */
import { createLater } from "../parts/later";

export const PLAN_AHEAD = createLater(async () => (await import("../../core/plan/stepsToPlan")).stepsToPlan);
