/** What is written on the pieces on the table. */

// planLabels
export const onTheLine = (text: string): string => `on the ${text} line`;
export const forTheBust = "for the bust";
export const cutOnTheFold = "cut on the fold";
export const cutTwo = "cut two";
export const bustPoint = "bust point";
export const yourBustPoint = "your bust point";
export const yoursProbablyInHere = "yours probably in here";

// overlayInk
export const layOn = (text: string): string => `${text}, lay on`;
