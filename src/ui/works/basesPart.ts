import { createLater } from "../parts/later";

export const BASES = createLater(async () => (await import("./Bases")).Bases);
