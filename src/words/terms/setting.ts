/** How a text with lengths in it is set, on the page and on paper. */

const BEFORE_UNIT = /(?<=[\d½¼¾]) (?=(?:mm|cm|in|%)(?![A-Za-z]))/g;
const BEFORE_INCHES = /(?<=[\d½¼¾]) (?=in(?![A-Za-z]))/g;
const BEFORE_FRACTION = /(?<=\d) (?=(?:[½¼¾]|\d+\/\d+))/g;

/** A part of an inch is told in its lowest terms, so the number over the line is odd: "14/16" is the name of a size. */
const FRACTION = /(?<![\d/])(\d*[13579]\/(?:2|4|8|16|32))(?![\d/])/;

/** A number keeps its unit, and its fraction, on its line. */
export const tied = (text: string): string =>
  text.replaceAll(BEFORE_UNIT, "\u00A0").replaceAll(BEFORE_FRACTION, "\u00A0");

/** The same of inches alone, whose "in" begins the next line as a word of its own. */
export const inchesTied = (text: string): string =>
  text.replaceAll(BEFORE_INCHES, "\u00A0").replaceAll(BEFORE_FRACTION, "\u00A0");

/** The text in parts, of which every second one, from the second on, is a fraction: to be drawn as ½ is. */
export const partedAtFractions = (text: string): readonly string[] => text.split(FRACTION);
