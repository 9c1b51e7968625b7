/** The words of the measure sheet, as it is printed. */

// MeasureSheet
export const measure = "Measure";
export const pointsTitle = "The points, and how to find them";
export const centimetres = "centimetres";
export const inches = "inches";
export const sheetIn = (what: string): string => `Measure sheet, in ${what}. These notes stay with you.`;
export const lastTime = "last time";
export const toWriteIn = (what: string): string => `${what}, to write in`;
export const measureSheet = "Measure sheet";
export const date = "Date";
export const measuredBy = "Measured by";
export const testLine = (testSide: string): string => `${testSide}: lay your tape against this line.`;
export const secondReading = "second reading";
