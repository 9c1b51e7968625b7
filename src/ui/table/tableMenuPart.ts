import { createLater } from "../parts/later";

/** Nobody asks what lies on a table that is not there yet. */
export const TABLE_MENU = createLater(async () => (await import("./TableMenu")).TableMenu);
