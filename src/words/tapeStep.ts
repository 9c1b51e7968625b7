/** The words of the step Tape: her measures, taken and guessed. */

export const readingsAbout =
  "What stands in a field is {measured}: {sure}. Below an empty one, in pencil, stands a {guess}: what your other measures lead one to expect. Nine of ten bodies lie between its two figures; yours may not. Nothing is cut by a guess.";
export const measuredWord = "measured";
export const guessWord = "guess";
export const lastTimeCounts = "Last time {length}, which counts until you take it again.";

export const takenOf = (taken: number, all: number): string => `(${taken} of ${all} taken)`;

// MeasureField
export const reading = "reading ";
export const takeItAgain = "Take it again";
export const guess = "guess …";
export const removeReadingOf = (number: number, short: string): string => `Remove reading ${number} of ${short}`;
export const takeAgain = (short: string): string => `Take ${short} again`;
export const heightHint = "64 or 5 ft 4, as you like.";

// PrintMeasureSheet
export const printAMeasureSheet = "Print a measure sheet";

// TapeDays
export const measureAnew = "Measure anew";
export const backToBefore = "Back to the measures of before";
export const setsKept = (tapes: number): string => `${tapes} sets are kept. Throw an earlier one away to measure anew.`;
export const measuredOn = "Measured on";
export const today = "today";
export const compareWithAnEarlierSet = "Compare with an earlier set";
export const measuresOf = "Measures of";
export const noneTakenTwice = "No measure was taken both times.";
export const measure = "measure";
export const thisWord = "this";
export const earlier = "earlier";
export const difference = "difference";
export const throwAwayEarlier = (day: string): string => `Throw away the earlier, of ${day}`;
export const throwAwayThisOf = (day: string): string => `Throw away this, of ${day}`;
export const daysOfMeasuring = "Days of measuring";

// TapeGuidance
export const seen = (text: string): string => `Seen ${text}`;
export const beforeYouBegin = "Before you begin";
export const fromTheFront = "from the front";
export const fromTheBack = "from the back";
export const fromTheSide = "from the side";
export const fromTheSideAtAWall = "from the side, standing at a wall";

// TapeStep
export const tape = "Tape";
export const about = "Measure over the bra you will wear, the tape snug and level. Taken twice is surer.";
export const readingsTitle = "What is measured, what is guessed";
export const theFour = "The four that a plan is made from";
export const moreMeasures = "More measures";
export const moreAbout =
  "Not needed: without one, the plan keeps the pattern’s own figure, not the guess. What they ask for stands on Fit.";
export const whoseMeasuresTheseAre = "Whose measures these are";
export const notSaid = "not said";
export const whereTheTapeGoes = "Where the tape goes";
export const theGuesses = "The guesses";
export const planNeeds = "What the plan still needs";
export const bothDays = "Measures of both days";
