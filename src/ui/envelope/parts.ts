/** What of the envelope is loaded when it is opened. */
import { createLater } from "../parts/later";

export const CHART_FIT = createLater(async () => (await import("./ChartFitView")).ChartFitView);
