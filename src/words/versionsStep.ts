/** The words of the versions of a work, side by side. */

// LaidOverDrawing
export const dashedAndUnbroken = (older: string, newer: string): string => `${older}, dashed, and ${newer}, unbroken`;

// VersionsView
export const bustAdjustment = "Bust adjustment";
