/** The words of the step Darts: a dart by its figures, what is redrawn of it, what is made of it. */

export const discAbout =
  "Cut your dart out of a round of paper and close the gap: the paper rises to a point. With the same mouth, shorter legs open a wider {angle}; and the wider the angle, the higher the paper stands.";
export const discAngle = "angle";
export const whatNotToDo = "What not to do.";
export const naiveOutcome = (figures: string, angle: string, fullness: string): string =>
  `It would be ${figures}; as sewn it is ${angle} wide, ${fullness} full.`;
