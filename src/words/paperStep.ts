/** The words of the step Paper: what is printed, on what, and how it is made. */
import { plural } from "./terms/language";

export const checklistDoubts = (count: number): string =>
  `${plural(count, { one: "One check does not hold yet", other: `${count} checks do not hold yet` })}; the sheet says so too. Look at ${plural(count, { one: "it", other: "them" })} before you cut.`;

// AllowanceFields
export const seamAndHemAllowances = "Seam and hem allowances";

// ChecklistPaper
export const printTheChecklist = "Print the checklist";

// MakeFiles
export const makeTheFile = "Make the file";
export const cancel = "Cancel";
export const saveItAgain = "Save it again";
export const tryAgain = "Try again";
export const makingThe = (text: string): string => `Making the ${text}`;
export const makingPart = (text: string, behind: string): string => `Making the ${text}.${behind}`;

// MeasurePaper
export const withLastTime = "With what was measured last time";
export const printTheMeasureSheet = "Print the measure sheet";

// PaperChoices
export const allSizes = "All sizes";
export const noSizes = "No sizes";
export const withBefore = "Beneath, in dashes and dots: the pieces before your alterations";
export const withSeamAndHemAllowances = "With seam and hem allowances";
export const noAllowances = "The pieces end at the line they are sewn on: add your allowances when you cut.";
export const paper = "Paper";
export const whiteEdgeYourPrinterLeaves = "White edge your printer leaves";
export const lineDrawn = "Line drawn";
export const myOwnLine = "My own line";
export const printedSize = (label: string): string => `Printed size ${label}`;
export const allPrintedSizes = "All printed sizes, one in another";
export const pieces = "Pieces";
export const printedSizesInGreyBeneath = "Printed sizes in grey beneath";

// PaperStep
export const print = "Print";

// PrintRow
export const printDialogue = (sheet: string): string =>
  `In the print dialogue choose ${sheet} and 100 % (“actual size”), not “fit to page”.`;

// SheetPreview
export const showItsHeadAlone = "Show its head alone";
export const showTheWholeSheet = "Show the whole sheet";

// TrialPaper
export const printTheTrialRecord = "Print the trial record";

// TrueScalePaper
export const whatItComesTo = "What it comes to";
export const whenYouPrintIt = "When you print it";
export const pagesMap = "Map of the pages and the pieces on them";
