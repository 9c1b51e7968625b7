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
export const frameChoice = (label: string, by: "bust" | "chest", length: string): string =>
  `${label}, for ${by === "bust" ? "a bust" : "an upper chest"} of ${length}`;

// Alternatives
export const otherWaysToCutIt = "Other ways to cut it";
export const alternativesAbout =
  "The planner’s own first, then by what they harm: a frame that does not fit most, then what is altered at the bust.";
export const cutThisWay = "cut this way";
export const takeThis = "Take this";
export const takeThisWay = (text: string): string => `Take this: ${text}`;

// BaseSizePickView
export const frame = "Frame";
export const takeAnotherFrame = "Take another frame";

// BlendStep
export const blend = "Blend";

// BustPickView
export const leaveTheBustAsPrinted = "Leave the bust as printed";
export const bust = "Bust";
export const noAlteration = "no alteration";
export const whyThisMuch = "Why this much?";
export const setTheBustAlteration = "Set the bust alteration";
export const bustAlterationHint =
  "The whole change of girth: half of it on the half front. Less than nothing makes it smaller.";

// CupPickView
export const cup = "Cup";
export const asDrafted = "as drafted";
export const whyNoCupVersion = "Why no cup version?";
export const takeAnotherCup = "Take another cup";
export const forADifferenceOf = (label: string, length: string): string => `${label}, for a difference of ${length}`;

// DoubtsHead
export const takeItAgain = "Take it again";

// EaseFields
export const easeWanted = "Ease wanted";
export const easeWantedAbout = "Room between you and the garment. Empty: the pattern’s own.";
export const yourOwn = "your own";
export const thePatterns = "the pattern’s";
export const atThe = (level: string): string => `At the ${level}`;
export const littleEase = (length: string): string =>
  `Less than ${length}: cloth without stretch will strain (common practice).`;

// HowSurePanel
export const howSureThisIs = "How sure this is";
export const whyNoSurer = "Why no surer?";

// LevelPickView
export const pastLinesAbout = "Carried on by the nearest step, so draw it with care and check it on a toile.";
export const pastThePrintedLines = "past the printed lines";
export const setTheLineYourself = (name: string): string => `Set the ${name} line yourself`;
export const theLine = (share: string): string => `the line ${share}`;
export const whyThisLine = "Why this line?";

// Pick
export const yourPick = "your pick";
export const thePlannerWouldTake = (planners: string): string => `The planner would take ${planners}. `;
export const goBackToThat = "Go back to that";

// PrintedDarts
export const measureTheirMouths = "Measure their mouths";
export const whyThis = (label: string): string => `Why ${label}?`;
