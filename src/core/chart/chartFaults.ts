/** Whether a chart can be drafted from at all. What is wrong, and where, is told by reading the chart. */
import { readChart } from "./readChart";
import type { SizeChart } from "./sizeChart";

/** Number of faults that keep a chart from being used. */
export const chartFaults = (chart: SizeChart): number =>
  readChart(chart).filter((finding) => finding.severity === "blocks").length;
