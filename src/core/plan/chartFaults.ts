/** Whether a chart can be drafted from at all. What is wrong, and where, is told by reading the chart. */
import { FEWEST_SIZES, MOST_SIZES, type SizeChart } from "../chart/sizeChart";

/** Number of faults that keep a chart from being used: too few or many sizes, labels used twice, girths not growing. */
export function chartFaults({ sizes, cups, draftedDifference }: SizeChart): number {
  let faults = sizes.length < FEWEST_SIZES || sizes.length > MOST_SIZES ? 1 : 0;
  sizes.forEach((row, index) => {
    const before = sizes[index - 1];
    if (![row.bust, row.waist, row.hip].every((girth) => Number.isFinite(girth) && girth > 0)) faults += 1;
    if (before !== undefined && !(row.bust > before.bust && row.waist >= before.waist && row.hip >= before.hip)) faults += 1;
  });
  if (new Set(sizes.map((row) => row.label)).size !== sizes.length) faults += 1;
  cups.forEach((cup, index) => {
    const before = cups[index - 1];
    if (!Number.isFinite(cup.difference) || (before !== undefined && cup.difference <= before.difference)) faults += 1;
  });
  if (!Number.isFinite(draftedDifference)) faults += 1;
  return faults;
}
