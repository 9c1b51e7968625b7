import { createLater } from "../parts/later";

export const WORKS_LIST = createLater(async () => (await import("./WorksList")).WorksList);
