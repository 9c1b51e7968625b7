/** The words of the step Envelope: the pattern, its chart, its cups, what it says of lengths. */
import { plural } from "./terms/language";

export const cupsAbout =
  "How much larger the bust is than the upper chest, as {drafted}. None if the pattern has one front only.";
export const eachVersionDrafted = "each version is drafted";
export const easeAbout = "{ease} counts where the chart prints no finished measures.";
export const easeTerm = "Ease";

export const enteredOf = (count: number): string => (count === 0 ? "(nothing yet)" : `(${count} entered)`);

export const useSizes = (count: number): string =>
  `Use ${plural(count, { one: "this size", other: `these ${count} sizes` })}`;
