/** Keeps a number and its unit, or its fraction, on one line. */
const BEFORE_UNIT = /(?<=[\d½¼¾]) (?=(?:mm|cm|in|%)(?![A-Za-z]))/g;
const BEFORE_FRACTION = /(?<=\d) (?=(?:[½¼¾]|\d+\/\d+))/g;

export const tied = (text: string): string => text.replaceAll(BEFORE_UNIT, "\u00A0").replaceAll(BEFORE_FRACTION, "\u00A0");
