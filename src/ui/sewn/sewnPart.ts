import { createLater } from "../parts/later";

export const SEWN = createLater(async () => (await import("./SewnView")).SewnView);
