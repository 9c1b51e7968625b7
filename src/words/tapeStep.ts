/** The words of the step Tape: her measures, taken and guessed. */

export const readingsAbout =
  "What stands in a field is {measured}: {sure}. Below an empty one, in pencil, stands a {guess}: what your other measures lead one to expect. Nine of ten bodies lie between its two figures; yours may not. Nothing is cut by a guess.";
export const measuredWord = "measured";
export const guessWord = "guess";
export const lastTimeCounts = "Last time {length}, which counts until you take it again.";

export const takenOf = (taken: number, all: number): string => `(${taken} of ${all} taken)`;
