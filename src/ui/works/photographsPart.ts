import { createLater } from "../parts/later";

export const PHOTOGRAPHS = createLater(async () => await import("../../store/photographs"));
