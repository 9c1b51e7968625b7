/** The words of the list of works, opened from its menu. */

// WorksList
export const demo = (name: string): string => `Demo: ${name}`;
export const workFile = "Work file";
export const listOfBases = "The list of bases";
export const demonstrations = "The demonstrations";
