/** The words of the step Envelope: the pattern, its chart, its cups, what it says of lengths. */
import { plural } from "./terms/language";

export const cupsAbout =
  "How much larger the bust is than the upper chest, as {drafted}. None if the pattern has one front only.";
export const eachVersionDrafted = "each version is drafted";
export const easeAbout = "{ease} counts where the chart prints no finished measures.";
export const easeTerm = "Ease";

export const enteredOf = (count: number): string => (count === 0 ? "(nothing yet)" : `(${count} entered)`);

export const takeSizes = (count: number): string =>
  `Use ${plural(count, { one: "this size", other: `these ${count} sizes` })}`;

// ChartEditor
export const chartAbout = "A line for each size: its name, bust, waist and hip, then Enter. Or paste the whole chart.";
export const putTheSizesInOrder = "Put the sizes in order";
export const printsFinished = "The chart prints finished garment measures too";
export const size = "Size";
export const finishedBust = "Finished bust";
export const finishedWaist = "Finished waist";
export const finishedHip = "Finished hip";
export const sizes = "Sizes";
export const nameOfSize = (number: number): string => `Name of size ${number}`;
export const removeSize = (label: string): string => `Remove size ${label}`;
export const finishedMeasuresBySize = "Finished measures by size";
export const columnOfSize = (column: string, label: string): string => `${column} of size ${label}`;

// ChartFit
export const counting = "Counting…";

// CupEditor
export const cupVersions = "Cup versions";
export const aToD = "A to D";
export const addAVersion = "Add a version";
export const nameOfCupVersion = (number: number): string => `Name of cup version ${number}`;
export const differenceOf = (label: string): string => `Difference of ${label}`;
export const removeCupVersion = (label: string): string => `Remove cup version ${label}`;
export const chartDifference = "The chart’s own bust: larger than the upper chest by";
export const chartDifferenceHint = (length: string): string =>
  `${length} if the envelope does not say (common practice, a B cup).`;

// DemoCharts
export const startFromAnotherChart = "Start from another chart";
export const undoBringsThisOneBack = "Undo brings this one back.";
export const anEmptyChart = "An empty chart";

// EnvelopeStep
export const envelope = "Envelope";
export const about = "What the pattern’s envelope says.";
export const bodyMeasuresBySize = "Body measures by size";
export const howItIsMade = "How it is made";
export const easeDrawnIn = "Ease drawn in";
export const toTheWaist = "To the waist";
export const toTheHip = "With a basque to the hip";
export const strapsWide = "wide, over what is worn under it";
export const centreBack = "Centre back";
export const leftSide = "Left side";
export const pattern = "Pattern";
export const closePaste = "Close paste";
export const pasteAChart = "Paste a chart";
export const style = "Style";
export const straps = "Straps";
export const length = "Length";
export const opensAtThe = "Opens at the";
export const openingRunsBelowTheWaist = "Opening runs below the waist seam by";
export const openingHint = "0 if it ends at the waist. Too short an opening cannot be stepped into.";
export const atLevel = (level: string): string => `At the ${level}`;

// Findings
export const toPutRight = "To put right: ";
export const toLookAt = "To look at: ";

// LengthsSaid
export const lengthsTitle = "What the pattern says of lengths";
export const lengthsAbout =
  "The body it is drafted for, where it prints that. Your own are held against it on Fit; where it says nothing, against our draft’s figure.";
export const figureOfSize = (name: string): string => `${name}, size `;
export const aFigureForEachSize = (name: string): string => `${name}, a figure for each size`;
export const oneForAll = "One for all";
export const bySize = "By size";
export const lengthBySize = (name: string): string => `${name} by size`;

// NewSize
export const nameOfTheNewSize = "Name of the new size";
export const bustOfTheNewSize = "Bust of the new size";
export const waistOfTheNewSize = "Waist of the new size";
export const hipOfTheNewSize = "Hip of the new size";
export const next = "next";

// PasteChart
export const pasteTheChartHere = "Paste the chart here";
export const pasteAbout =
  "From a spreadsheet or a page, with its headings: size, bust, waist, hip, and finished measures if there are any. Sizes may run down or along.";
export const leaveIt = "Leave it";
export const centimetres = "centimetres";
export const inches = "inches";
export const sizesAsReadIn = (what: string): string => `Sizes as read, in ${what}`;
export const toPutRightHead = "To put right";
export const toLookAtHead = "To look at";
export const howItReads = "How it reads";
export const whatChartFits = "What this chart fits";
