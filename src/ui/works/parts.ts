/** What of the works' menu is loaded when it is opened. */
import { createLater } from "../parts/later";

export const DEMOS = createLater(async () => (await import("../../document/demo")).demoWorks());
