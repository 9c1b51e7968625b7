import { createLater } from "../parts/later";

export const CHART_FIT = createLater(async () => (await import("./ChartFitView")).ChartFitView);
