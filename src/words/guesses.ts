/** The words of the guesses on the step Tape, and whose bodies they come from. */

// WhoseBodies
export const whereTheGuessesComeFrom = "Where the guesses come from";
export const writeWholeYears = "Write whole years, such as 47, or leave it empty.";
export const yourAgeIfYouLike = "Your age, if you like";
export const years = "years";
export const ageAbout = "It only tells how well the survey speaks for you.";
