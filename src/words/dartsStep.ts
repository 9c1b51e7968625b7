/** The words of the step Darts: a dart by its figures, what is redrawn of it, what is made of it. */

export const discAbout =
  "Cut your dart out of a round of paper and close the gap: the paper rises to a point. With the same mouth, shorter legs open a wider {angle}; and the wider the angle, the higher the paper stands.";
export const discAngle = "angle";
export const whatNotToDo = "What not to do.";
export const naiveOutcome = (figures: string, angle: string, fullness: string): string =>
  `It would be ${figures}; as sewn it is ${angle} wide, ${fullness} full.`;

// DartFiguresTable
export const figure = "figure";
export const printed = "printed";
export const yourCupAsks = "your cup asks";
export const asDrawn = "as drawn";
export const shortOfTheBustPoint = "Short of the bust point";
export const bustPointOffItsLine = "Bust point off its line";

// DartSums
export const whereWidthWent = "Where did the width go?";
export const sewnWouldChange = (text: string, seamName: string): string =>
  `${text}: the sewn ${seamName} would change by`;
export const takenIn = "taken in";
export const letOut = "let out";
export const amountAt = (what: string, place: string): string => `${what} at the ${place}`;
export const frontAndBackHalvesTogether = ", front and back halves together";
export const finishedSeam = (seamName: string, what: string): string => `Finished ${seamName}${what}`;

// DartSurgery
export const surgeryTitle = "Make something else of it";
export const howMuchOfIt = "How much of it";
export const dartsMadeIntoSomethingElse = "Darts made into something else";
export const takeOut = "Take out";
export const moveItToThe = "Move it to the";
export const leaveItHere = "(leave it here)";
export const theWholeOfIt = "the whole of it";
export const whole = "whole";
export const oneDart = "one dart";
export const seamWithWaistDart = "a seam with the waist dart";
export const sewItAs = "Sew it as";
export const bowItsLegsBy = "Bow its legs by";
export const takeOutOf = (title: string): string => `Take out: ${title}`;

// DartsPanel
export const darts = "Darts";
export const about = "Choose a dart; drag it on the table, or set amounts here.";
export const thisPatternHasNoDarts = "This pattern has no darts.";
export const toLookAt = ", to look at";
export const onYourHalf = (on: string): string => ` on your ${on}`;
export const putBackAsPrinted = (text: string, what: string): string => `Put ${text} back as printed${what}`;
export const dartsByPiece = "Darts by piece";
export const shortenBy = "Shorten by";
export const lessThanLengthens = "less than 0 lengthens";
export const moveItsEndBy = (up: string): string => `Move its end ${up} by`;
export const lessThanNarrows = "less than 0 narrows";
export const moveTheWholeDartBy = (up: string): string => `Move the whole dart ${up} by`;
export const whenItsEndMoves = "When its end moves";
export const movedNearerBy = (centre: string): string => `Moved nearer the ${centre} by`;
export const redrawingOnSeam = "redrawing it on the seam";
export const takingOffCentre = "taking it off the centre seam";
export const itsEnd = "its end";
export const itsMouth = "its mouth";
export const itsPlace = "its place";

// FoldedDisc
export const discTitle = "Why a wider dart is fuller";
export const asPrinted = (text: string): string => `As printed: ${text}`;
export const discTry = "Try a shorter one on paper";
export const discNote = "Shortened on paper only, the mouth held";
export const discMouth = (amount: string): string => `mouth ${amount}`;
export const discAsDrawn = "As drawn";
export const discShorterStill = (amount: string): string => `${amount} shorter still, mouth held`;
export const discShorter = (amount: string, amount2: string, amount3: string): string =>
  `${amount} shorter: ${amount2}, ${amount3} high`;

// GiveBackShares
export const setFreeAt = (place: string): string => `What the dart sets free is taken at the ${place}.`;
export const setFreeTakenAt = "What the dart sets free on its seam is taken at";
export const writeAShare = "Write a share from 0 to 100.";
export const inPerCent = (name: string): string => `${name}, per cent`;

// PointedDart
export const comesOutWrong = "Sewn, it comes out wrong";
export const oneMoment = "One moment…";

// PointedDartQuestions
export const taken = "Taken. ";
export const firstChoice = "First choice. ";
export const mouthAngle = (amount: string, amount2: string, text: string): string =>
  `Mouth ${amount}, angle ${amount2}. ${text}`;
export const theSum = "The sum";
export const takeItBack = "Take it back";
export const whatToDo = "What to do about it";
