/** What is said where there is no plan, and the way to what is missing. */

// FailureNote
export const goTo = (where: string): string => `Go to ${where}`;
export const dropYourOwn = (pick: string): string => `Drop your own ${pick}`;
export const cupVersion = "cup version";
export const cupVersionOfOneHalf = "cup version of one half";
export const waistLine = "waist line";
export const hipLine = "hip line";
export const bustAlteration = "bust alteration";
