/** What all doors say of options and of files that cannot be read or written. */

// options
export const unknownOption = (arg: string): string => `Unknown option ${arg}. --help shows what there is.`;
export const needsValue = (option: string): string => `${option} needs something behind it. --help shows what.`;
export const twice = (option: string): string => `${option} is there twice: once is enough.`;

// readBytes
export const itIsAFolder = "it is a folder";
export const itIsNotAFile = "it is not a file";
export const itIsFarTooLarge = (what: string): string => `it is far too large for a ${what}`;
export const thereIsNoSuchFile = "there is no such file";
export const itMayNotBeRead = "it may not be read";
export const itCannotBeRead = "it cannot be read";

// writeOut
export const itIsTheWorkFile = "it is the work file itself";
export const thereIsNoSuchFolder = "there is no such folder";
export const notInAFolder = "it does not lie in a folder";
export const itMayNotBeWritten = "it may not be written there";
export const itsNameIsTooLong = "its name is too long";
export const thereIsNoRoomLeft = "there is no room left for it";
export const itCannotBeWritten = "it cannot be written";

// planned
export const workFile = "work file";
