/** The words of the step Blend: the picks and what they rest on. */

export const beyondChart = "That is {amount} past the end of the chart.";
export const noUpperChest =
  "There is no upper chest on the tape, so your cup cannot be told. {measure}: it makes the most difference of all.";
export const measureIt = "Measure it";
export const bustLarger = "Your bust is {amount} larger than your upper chest.";
export const notDoneYet = "Not done yet: {look}.";
export const lookOnFit = "look at them on Fit";
/** @param by what picked the size; null where it is her own pick */
export const cutOnLine = (label: string, by: "bust" | "both" | null): string =>
  `Neck, shoulders and armhole are cut on the ${label} line${by === null ? "" : `, picked by your ${by === "bust" ? "bust" : "upper chest and bust together"}`}.`;
export const frameChoice = (label: string, by: "bust" | "upper chest", length: string): string =>
  `${label}, for ${by === "bust" ? "a bust" : "an upper chest"} of ${length}`;
