import { createLater } from "../parts/later";

export const OFFLINE = createLater(async () => (await import("./keepPageHere")).keepPageHere);
