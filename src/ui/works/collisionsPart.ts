import { createLater } from "../parts/later";

/** What two tabs both changed, in words: they bring the words of all alterations. */
export const COLLISIONS = createLater(async () => (await import("../../words/collisions")).collisionWords);
