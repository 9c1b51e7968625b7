import { createLater } from "../parts/later";

export const FRONT_DRAWING = createLater(async () => (await import("./drawFront")).drawFront);
