/** What of the sewn front is loaded when it is opened. */
import { createLater } from "../parts/later";

export const SEWN = createLater(async () => (await import("./SewnView")).SewnView);
