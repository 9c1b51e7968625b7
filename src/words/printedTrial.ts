/** The words of the trial record, as it is printed. */

// TrialRecord
export const verdict = "Verdict";
export const keep = "keep";
export const tryAgain = "try again";
export const trialRecord = "Trial record";
export const sewnWith = "Sewn with:";
export const halvesAlike = "Left and right halves are cut alike.";
export const theHalvesDiffer = "The halves differ:";
export const line = "Line";
export const to = "to";
export const yes = "yes";
export const no = "no";
export const theToileOnTheBody = "The toile on the body";
export const because = "Because";
export const trialNo = "Trial no.";
export const toDrawOn = (caption: string): string => `${caption}: to draw on`;
export const placeToWriteIn = "number of the place, to be written in";
export const toBeWrittenIn = "to be written in";
export const beforeItIsRead = "Before it is read";
