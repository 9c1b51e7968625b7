import { createLater } from "../parts/later";

export const DEMOS = createLater(async () => (await import("../../document/demo")).demoWorks());
