import { createLater } from "../parts/later";

export const STANDING = createLater(async () => (await import("./StandingFold")).StandingFold);
