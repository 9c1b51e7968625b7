import { createLater } from "../parts/later";

/** Hardly ever needed: a work that was saved whole is read by the schema alone. */
export const SALVAGE = createLater(async () => (await import("../../document/salvageWork")).salvageWork);
