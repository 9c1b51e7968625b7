/** Rounded to so many decimals, and never minus nought. */
export const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;
